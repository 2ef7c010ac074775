"""Sentences of the book filled with an estimate's values, in the speaker's units."""

import re

from rules import Estimate, Figure
from rules.figure import Value
from rules.show import METRIC, quantity, value_text
from rules.units import UnitError, convert

# {id} a value, {id:unit} in a unit, {id~} its range, {id!} a value without which (or at nought) nothing is told,
# {id|one|several} a word that goes with the number.
_PLACE = re.compile(r"\{([a-z_][a-z0-9_]*)(~|!|:[^{}|]+|\|[^{}|]*\|[^{}|]*)?\}")


class Teller:
    """Fills templates for one piece of an estimate, or for the job (piece None)."""

    def __init__(self, estimate: Estimate, piece: int | None, *, metric: bool) -> None:
        self.estimate, self.piece, self.metric = estimate, piece, metric

    def tell(self, template: str) -> str | None:
        """The sentence, or None where a value in it is not known."""
        unknown = False

        def filled(match: re.Match[str]) -> str:
            nonlocal unknown
            text = self._place(match[1], match[2] or "")
            unknown = unknown or text is None
            return text or ""

        text = _PLACE.sub(filled, template)
        return None if unknown else text

    def _place(self, id: str, how: str) -> str | None:
        step = self.estimate.step(id, self.piece)
        if step is None or (how == "!" and not step.value):
            return None
        if how == "~":
            figure = self.estimate.figure(id, self.piece)
            return span(figure, metric=self.metric) if figure is not None else None
        if how.startswith("|"):
            one, several = how[1:].split("|")
            return one if step.value == 1 else several
        try:
            return value_text(step.value, step.fact, self.metric, how[1:] or None)
        except UnitError:
            return value_text(step.value, step.fact, self.metric)


def span(figure: Figure, *, metric: bool = False) -> str:
    """The range of a figure: "1,727 to 2,306"."""
    if figure.low is None or figure.high is None or figure.low == figure.high:
        return worth(figure, metric=metric)
    low, high = shown(figure.low, figure.unit, metric=metric), shown(figure.high, figure.unit, metric=metric)
    head = low.split(" ")[0] if low.split(" ")[1:] == high.split(" ")[1:] else low
    return f"{head} to {high}"


def worth(figure: Figure, *, metric: bool = False) -> str:
    """The value of a figure as people write it."""
    return plain(figure.value, figure.unit, metric=metric)


def plain(value: Value, unit: str, *, metric: bool = False) -> str:
    """A value in its unit as people write it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value.replace("_", " ")
    return shown(value, unit, metric=metric)


def shown(value: float, unit: str, *, metric: bool = False) -> str:
    """A number in its unit, in the metric one for a metric speaker."""
    other = METRIC.get(unit) if metric else None
    return quantity(convert(value, unit, other), other) if other else quantity(value, unit)
