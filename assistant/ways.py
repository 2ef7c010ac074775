"""Ways out when a job does not fit: all of it plainer, fewer or smaller as planned, or both."""

from collections.abc import Iterator
from typing import Any

from assistant.asked import Asked
from assistant.fitting import GROWS, amount, lost_words
from assistant.limits import Limit, largest, over
from assistant.state import State
from assistant.trying import levers, tried, value, variant
from rules.record import record


@record
class Way:
    """A version that fits: the state it is, what it is called and what is given up for it."""

    state: State
    words: str
    given_up: str


def ways(asked: Asked, state: State, place: int, limits: list[Limit]) -> Iterator[Way]:
    """Versions that fit: all of them but plainer, the dearest first; fewer or smaller as they are; then both."""
    made = tried(asked.book, state)
    single = list(levers(asked.book, state.pieces[place], made, place))
    pairs = [
        (f"{a[0]}, {b[0]}", f"{a[1]}; {b[1]}", {**a[2], **b[2]})
        for i, a in enumerate(single)
        for b in single[i + 1 :]
        if not set(a[2]) & set(b[2])
    ]
    for sort in (single, pairs):
        plainer = []
        for name, looks, facts in sort:
            version = variant(state, place, facts)
            done = tried(asked.book, version)
            if not over(done, limits):
                plainer.append(
                    (value(done, limits[0].id) or 0.0, Way(version, f"{amount(state, place)}, {name}", looks))
                )
        if plainer:
            yield max(plainer, key=lambda one: one[0])[1]
            break
    yield from sorted(
        _fewer(asked, state, place, limits, [("", "", {}), *single]), key=lambda way: -_used(asked, way, limits)
    )


def _fewer(
    asked: Asked, state: State, place: int, limits: list[Limit], plainer: list[tuple[str, str, dict[str, Any]]]
) -> Iterator[Way]:
    """As many or as big as fits, as planned and with each lever."""
    fact = shrinks(asked, state, place)
    for name, looks, facts in plainer if fact else ():
        found = largest(asked.book, variant(state, place, facts), place, fact or "", limits)
        if found is not None and fact is not None:
            lost = float(state.pieces[place].facts.get(fact, 1)) - float(found.pieces[place].facts[fact])
            if lost > 0:
                words = f"{amount(found, place, fact)}{', ' + name if name else ' as planned'}"
                yield Way(found, words, "; ".join(filter(None, [lost_words(lost, fact, state, place), looks])))


def _used(asked: Asked, way: Way, limits: list[Limit]) -> float:
    """How far a version uses up what limits it."""
    return value(tried(asked.book, way.state), limits[0].id) or 0.0


def shrinks(asked: Asked, state: State, place: int) -> str | None:
    """What may be made less of: the number where there are several, else the size."""
    facts = state.pieces[place].facts
    if float(facts.get("count") or (value(asked.made, "count", place) or 1)) > 1:
        return "count"
    return next((fact for fact in GROWS if fact in facts and fact != "table_length"), None)
