"""From a step of the engine to the figure that is handed out: units, rounding, reasons."""

import math
from decimal import ROUND_HALF_UP, Decimal

from rules.blocks import Fact
from rules.figure import Figure, Value
from rules.functions import down_to_whole, to_nearest, up_to_whole
from rules.show import value_text
from rules.spread import Spread, combine
from rules.texts import fill
from rules.units import dimension, factor, from_base
from rules.world import HOUSE, SAID, Step

CENT = Decimal("0.01")


def figure_of(spread: Spread, step: Step, piece: int | None, uses: list[str], metric: bool) -> Figure:
    """The figure of one step, its range rounded outward where the thing itself is whole."""
    fact = step.fact
    value, low, high = value_of(spread, step)
    return Figure(
        id=step.id,
        name=fact.name,
        piece=piece,
        value=value,
        low=low,
        high=high,
        unit=unit_of(fact),
        how=step.how,
        why=why_of(spread, step, metric),
        source=source_of(step),
        uses=uses,
    )


def unit_of(fact: Fact) -> str:
    """The unit of the fact's figures."""
    return fact.unit if fact.type in ("quantity", "range", "sizes", "table") else "count"


def typical_of(step: Step) -> Value:
    """The value alone, in the fact's unit, rounded as the thing itself is."""
    fact = step.fact
    if fact.type == "flag":
        return bool(step.value)
    if not fact.is_number:
        return step.value if isinstance(step.value, str) else value_text(step.value, fact)
    value = from_base(step.value, fact.unit)
    return to_nearest(value) if fact.whole else _cents(value) if _is_money(fact) else _clean(value)


def value_of(spread: Spread, step: Step) -> tuple[Value, float | None, float | None]:
    """(value, low, high) in the fact's unit; low and high None for what is no quantity."""
    fact = step.fact
    if not fact.is_number:
        return typical_of(step), None, None
    down, up = _reach(spread, step)
    value = from_base(step.value, fact.unit)
    low, high = value - down / factor(fact.unit), value + up / factor(fact.unit)
    if fact.sane is not None:
        ends = [from_base(end, fact.unit) for end in fact.sane]
        low, high = max(low, min(ends[0], value)), min(high, max(ends[1], value))
    if fact.whole:
        whole = to_nearest(value)
        return whole, min(down_to_whole(low), whole), max(up_to_whole(high), whole)
    if _is_money(fact):
        return _cents(value), _cents(low), _cents(high)
    return _clean(value), _clean(low), _clean(high)


def _is_money(fact: Fact) -> bool:
    return dimension(fact.unit).startswith("currency_") and "/" not in fact.unit


def _reach(spread: Spread, step: Step) -> tuple[float, float]:
    """How far below and above typical the value lies, in base units."""
    if step.is_uncertain:
        return step.value - step.low, step.high - step.value
    return combine(spread.moves(step.id))


def why_of(spread: Spread, step: Step, metric: bool) -> str:
    """The reason in one sentence or clause, with the real values in it."""
    shown = value_text(step.value, step.fact, metric)
    if step.how == SAID:
        return f"you said {shown}"
    learned = step.fact.learned
    if step.how == HOUSE and learned is not None:
        jobs = "your last job" if learned.jobs == 1 else f"your last {learned.jobs} jobs"
        measure = learned.of.replace("_", " ")
        return f"{shown}, after {jobs}, which used {learned.jobs_factor:.3g} times what the book says of {measure}"
    text = fill(step.rule.why if step.rule else step.fact.why, spread.world, metric)
    return f"your own house value, {shown}" if step.how == HOUSE else text


def source_of(step: Step) -> str:
    """Where the value or its rule comes from."""
    if step.how == SAID:
        return "said"
    if step.how == HOUSE:
        return step.fact.source or "the house file"
    return step.rule.source if step.rule else step.fact.source


def _clean(value: float) -> float:
    """The value without the noise of float arithmetic (twelve digits)."""
    return float(f"{value:.12g}") if math.isfinite(value) else value


def _cents(value: float) -> float:
    """Money to the cent, a half upward as shops round."""
    return float(Decimal(f"{value:.9f}").quantize(CENT, ROUND_HALF_UP))
