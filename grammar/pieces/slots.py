"""Which fact an amount means, and what it comes to: decided by what is sane for the thing, never by rule order."""

from collections.abc import Callable, Iterable, Sequence

from grammar.phrases import Figure
from grammar.terms import Amount
from grammar.vocabulary import FactWords, PieceWords, Vocabulary

TABLE_KIND = "runner"  # the kind that furniture without a piece stands for
IMPERIAL = ("in", "ft", "m", "cm")
METRIC = ("m", "cm", "mm", "ft", "in")
METRIC_UNITS = frozenset(
    {"m", "cm", "mm", "km", "metre", "meter", "centimetre", "centimeter", "millimetre", "kilometre"}
)
WHOLE_UNITS = frozenset({"count", ""})

Convert = Callable[[float, str, str], float]
HUNDRED = 100  # hardly anything is a hundred inches long, much is a hundred centimetres
QUARTERS = 4  # feet and inches come in halves and quarters, metres with any decimals


class Slots:
    """The vocabulary's facts as places for amounts."""

    def __init__(self, vocabulary: Vocabulary, convert: Convert, *, metric: bool) -> None:
        self.vocabulary = vocabulary
        self.convert = convert
        self.metric = metric

    def words(self, kind: str | None, *, on_table: bool) -> PieceWords | None:
        """The measures that hold for a piece, or for the table under it."""
        if on_table:
            for item in self.vocabulary.furniture:
                if item.piece == kind:
                    return item
        return self.vocabulary.kinds.get(kind or "")

    def fact(self, label: str, kind: str | None, *, on_table: bool) -> FactWords | None:
        """The fact that a label or a role ("width", "height" ...) names for this thing."""
        owner = self.words(kind, on_table=on_table)
        name = label
        if owner is not None and label in owner.measures:
            name = owner.measures[label]
        elif on_table and (piece := self.vocabulary.kinds.get(kind or "")) and label in piece.measures:
            name = piece.measures[label]
        fact = self.vocabulary.fact(name, kind)
        return fact if fact is not None and (kind is None or fact.belongs(kind) or fact.belongs("job")) else None

    def value(self, amount: Amount, fact: FactWords) -> float | None:
        """The amount in the unit of the fact; a missing unit is one that makes a sane value. None where none does."""
        if amount.unit and fact.unit in WHOLE_UNITS:
            return None
        if amount.unit:
            return self.convert(amount.number, amount.unit, fact.unit)
        if fact.unit != "in":
            return amount.number
        fitting = [(unit, v) for unit, v in self._guesses(amount) if fact.fits(v)]
        own = [v for unit, v in fitting if (unit in METRIC_UNITS) is self.metric and _likeness(v, fact)]
        values = own or [v for _, v in fitting]
        tenths = (QUARTERS * amount.value).denominator != 1
        if (tenths or amount.value >= HUNDRED) and any(_likeness(v, fact) > 1 for _, v in fitting):
            values = [v for _, v in fitting]  # "tables of 2.4", "180 tall" are metric, whoever says it
        return max(values, key=lambda v: _likeness(v, fact)) if values else None

    def shared_unit(self, amounts: Sequence[Amount], facts: Sequence[FactWords]) -> str:
        """The one unit that makes sane values of all amounts, the likeliest first; "" where none does."""
        best, most = "", -1
        for unit in METRIC if self.metric else IMPERIAL:
            values = [self.convert(amount.number, unit, "in") for amount in amounts]
            if all(fact.fits(value) for fact, value in zip(facts, values, strict=False)):
                score = sum(_likeness(value, fact) for fact, value in zip(facts, values, strict=False))
                if score > most:
                    best, most = unit, score
        return best

    def _guesses(self, amount: Amount) -> Iterable[tuple[str, float]]:
        for unit in METRIC if self.metric else IMPERIAL:
            yield unit, self.convert(amount.number, unit, "in")

    def both(self, figure: Figure, fact: FactWords) -> tuple[float, float] | None:
        """Low and high of a figure in the unit of the fact."""
        if not isinstance(figure.low, Amount) or not isinstance(figure.high, Amount):
            return None
        high = self.value(figure.high, fact)
        low = self.value(figure.low, fact)
        return None if low is None or high is None else (low, high)

    def is_nominal(self, amount: Amount) -> bool:
        """Whether it is the nominal size of a balloon, in inches."""
        return amount.unit in {"", "in"} and amount.number in self.vocabulary.nominal


def _near_any(value: float, usual: Iterable[float]) -> bool:
    return any(abs(value - u) <= 0.02 * u for u in usual)


def _likeness(value: float, fact: FactWords) -> int:
    """Two for a usual value, one near the range of usual ones, else nought."""
    if not fact.usual:
        return 0
    near = min(fact.usual) * 0.6 <= value <= max(fact.usual) * 1.6
    return 2 if _near_any(value, fact.usual) else int(near)


def is_usual(value: float, fact: FactWords) -> bool:
    """Whether the value is one of those that are common for the fact (within 2 %)."""
    return _near_any(value, fact.usual)


def is_metric(amount: Amount) -> bool:
    """Whether the unit is metric."""
    return amount.unit in METRIC_UNITS
