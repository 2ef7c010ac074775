"""Figures as they were quoted, frozen, and what has changed since."""

import json
from dataclasses import asdict

from assistant.layout import listed
from assistant.telling import worth
from rules import Estimate, Figure

# What a quote is told by, in this order.
TOLD = ("price", "price_with_tax", "balloons_all", "balloons_to_buy", "hours_hands_on", "materials_cost")
BRIEFLY = ("price", "balloons_all")
NEAR = 1e-9  # relative: what differs less came of rounding in the file
MOST_CAUSES = 8


def frozen(made: Estimate) -> str:
    """The figures of the estimate that a quote keeps, as JSON: results and every input. "" without price."""
    price = made.figure("price")
    if price is None or not price.value:
        return ""
    kept = [f for id in TOLD if (f := made.figure(id)) is not None]
    kept += [f for f in made.figures() if f.how != "worked out" and f.id not in TOLD]
    return json.dumps([asdict(figure) for figure in kept])


def thawed(text: str) -> list[Figure]:
    """The figures again."""
    return [Figure(**row) for row in json.loads(text)]


def told(text: str, metric: bool = False) -> str:
    """ "price 1,234 USD, balloons 2,016"."""
    return listed([f"{f.name} {worth(f, metric=metric)}" for f in thawed(text) if f.id in BRIEFLY])


def rows(text: str, metric: bool = False) -> list[str]:
    """The numbers quoted, one a line."""
    return [f"{figure.name}: {worth(figure, metric=metric)}" for figure in thawed(text) if figure.id in TOLD]


def changes(text: str, made: Estimate, metric: bool = False) -> tuple[list[str], list[str]]:
    """What the quote is told by and has changed, "price: 1,200, now 1,300"; and the inputs that brought it about."""
    old = {(f.id, f.piece): f for f in thawed(text)}
    results = []
    for id in TOLD:
        was, now = old.pop((id, None), None), made.figure(id)
        untaxed = id == "price_with_tax" and now is not None and _same(now, made.figure("price") or now)
        if was is not None and now is not None and not untaxed and not _same(was, now):
            results.append(f"{now.name}: {worth(was, metric=metric)}, now {worth(now, metric=metric)}")
    inputs = {(f.id, f.piece): f for f in made.figures() if f.how != "worked out" and f.id not in TOLD}
    causes = []
    for key in dict.fromkeys([*inputs, *old]):
        was, now = old.get(key), inputs.get(key)
        if was is None and now is not None:
            causes.append(f"{now.name}: {worth(now, metric=metric)}, {now.how}, new")
        elif now is None and was is not None:
            causes.append(f"{was.name}: was {worth(was, metric=metric)}, no longer used")
        elif was is not None and now is not None and not _same(was, now):
            causes.append(f"{now.name}: {worth(was, metric=metric)}, now {worth(now, metric=metric)}, {now.how}")
    return results, causes[:MOST_CAUSES]


def _same(a: Figure, b: Figure) -> bool:
    if isinstance(a.value, bool | str) or isinstance(b.value, bool | str):
        return a.value == b.value
    return abs(a.value - b.value) <= NEAR * max(abs(a.value), abs(b.value))
