"""What a formula measures, worked out with pint from units.txt: every sum, comparison and call is held to its units."""

from collections.abc import Callable, Sequence
from functools import cache
from typing import Any

import pint

from rules.blocks import Fact
from rules.functions import FUNCTIONS
from rules.nearest import offer
from rules.nodes import (
    Arithmetic,
    Call,
    Comparison,
    If,
    Is,
    Known,
    Logic,
    Name,
    Negative,
    Node,
    Not,
    Number,
    OverPieces,
    Power,
    Truth,
    Word,
)
from rules.record import record
from rules.units import UNITS_FILE


class Mismatch(Exception):
    """A formula that does not measure what it should: what is wrong and how to mend it."""

    def __init__(self, what: str, mend: str) -> None:
        super().__init__(f"{what}; {mend}")
        self.what, self.mend = what, mend


@record
class Measure:
    """What an expression is: its type as in rules/values.py and, for quantities and ranges, its dimension."""

    type: str
    dimension: Any = None  # pint's container of dimensions
    said: str = ""  # how a message names it, with its unit

    @property
    def is_number(self) -> bool:
        """Whether arithmetic may be done with it."""
        return self.type in ("quantity", "clock")


FLAG = Measure("flag", said="a truth")


@cache
def _registry() -> pint.UnitRegistry[Any]:
    return pint.UnitRegistry(str(UNITS_FILE))


@cache
def dimension_of(unit: str) -> Any:
    """The dimension of a unit as pint sees it."""
    return _registry().get_dimensionality(unit)


def measure_of_fact(fact: Fact) -> Measure:
    """What the value of a fact is."""
    dimension = dimension_of(fact.unit) if fact.type in ("quantity", "range", "clock", "table") else None
    unit = f" ({fact.unit})" if dimension is not None else ""
    return Measure(fact.type, dimension, f"{fact.id}{unit}")


@record
class Measurer:
    """Measures formulas; `find` gives the fact that a name means, or raises Mismatch."""

    find: Callable[[str], Fact]

    def measure(self, node: Node) -> Measure:
        """What the formula is; Mismatch where it does not hold together."""
        match node:
            case Truth() | Comparison() | Logic() | Not() | Is() | Known():
                self._truths(node)
                return FLAG
            case Number(_, unit):
                return Measure("quantity", dimension_of(unit), f"a number in {unit}")
            case Word(text):
                return Measure("choice", said=text)
            case Name(id):
                return measure_of_fact(self.find(id))
            case OverPieces(how, id):
                of = measure_of_fact(self.find(id))
                if of.type == "flag":
                    return Measure("quantity", dimension_of("count"), node.key)
                return Measure("quantity", self._number(of, how).dimension, f"{node.key} of {of.said}")
            case Negative(of):
                return self._number(self.measure(of), "-")
            case Arithmetic(sign, left, right):
                return self._arithmetic(sign, self.measure(left), self.measure(right))
            case Power(base, exponent):
                of = self._number(self.measure(base), "^")
                return Measure("quantity", of.dimension**exponent, f"{of.said} ^ {exponent:g}")
            case If(test, then, other):
                self._truth(self.measure(test), "if")
                first, second = self.measure(then), self.measure(other)
                if first.type != second.type or first.dimension != second.dimension:
                    raise Mismatch(
                        f"'if' answers with {first.said} or with {second.said}", "let both answers measure the same"
                    )
                return first
            case Call(name, arguments):
                return self._call(name, [self.measure(argument) for argument in arguments])

    def _truths(self, node: Node) -> None:
        """Holds what is true or false to its units."""
        match node:
            case Comparison(sign, left, right):
                self._alike(self.measure(left), self.measure(right), "compared", sign)
            case Logic(sign, left, right):
                for side in (left, right):
                    self._truth(self.measure(side), sign)
            case Not(of):
                self._truth(self.measure(of), "not")
            case Is(id, word, _):
                self._is(self.find(id), word)
            case Known(id, _):
                self.find(id)

    def _number(self, of: Measure, sign: str) -> Measure:
        if not of.is_number:
            raise Mismatch(f"{of.said} is no quantity, yet stands with {sign!r}", "use a quantity there")
        return of

    def _truth(self, of: Measure, sign: str) -> None:
        if of.type != "flag":
            raise Mismatch(f"{of.said} is neither true nor false, yet stands with {sign!r}", "write a comparison there")

    def _alike(self, left: Measure, right: Measure, verb: str, sign: str) -> None:
        self._number(left, sign)
        self._number(right, sign)
        if left.dimension != right.dimension:
            raise Mismatch(f"{left.said} and {right.said} cannot be {verb}", "bring both to one kind of unit")

    def _arithmetic(self, sign: str, left: Measure, right: Measure) -> Measure:
        if sign in "+-":
            self._alike(left, right, "added" if sign == "+" else "subtracted", sign)
            return left
        first, second = self._number(left, sign).dimension, self._number(right, sign).dimension
        return Measure(
            "quantity", first * second if sign == "*" else first / second, f"{left.said} {sign} {right.said}"
        )

    def _is(self, fact: Fact, word: str | bool) -> None:
        if fact.type == "flag":
            if not isinstance(word, bool):
                raise Mismatch(f"{fact.id} is a flag, never {word!r}", "compare it with true or false")
        elif fact.type == "choice":
            if word not in fact.choices:
                known = ", ".join(fact.choices)
                raise Mismatch(f"{fact.id} is never {word!r}", f"write one of {known}")
        else:
            raise Mismatch(f"{fact.id} is no choice and no flag", "compare quantities with == or <")

    def _call(self, name: str, given: Sequence[Measure]) -> Measure:
        if name not in FUNCTIONS:
            return self._table(name, given)
        function = FUNCTIONS[name]
        if len(given) != len(function.takes):
            takes = f"{len(function.takes)} argument{'' if len(function.takes) == 1 else 's'}"
            raise Mismatch(f"{name} takes {takes}, not {len(given)}", f"write {name}({', '.join(function.takes)})")
        letters: dict[str, Any] = {}
        for wanted, of in zip(function.takes, given, strict=True):
            self._fits(name, wanted, of, letters)
        gives = function.gives
        if gives.startswith("half of "):
            return Measure("quantity", letters[gives[-1]] ** 0.5, f"{name}(...)")
        return Measure("quantity", letters[gives] if gives in letters else dimension_of(gives), f"{name}(...)")

    def _fits(self, name: str, wanted: str, of: Measure, letters: dict[str, Any]) -> None:
        kind, _, unit = wanted.rpartition(" ")
        if wanted in ("sizes", "colours", "flag"):
            fits = of.type == wanted
        elif len(unit) == 1 and unit in "abc":
            fits = of.type == kind if kind else of.is_number
            fits = fits and letters.setdefault(unit, of.dimension) == of.dimension
        else:
            fits = of.is_number and of.dimension == dimension_of(wanted)
        if not fits:
            signature = ", ".join(FUNCTIONS[name].takes)
            raise Mismatch(f"{name} cannot take {of.said}", f"it takes {signature}")

    def _table(self, name: str, given: Sequence[Measure]) -> Measure:
        try:
            fact = self.find(name)
        except Mismatch:
            raise Mismatch(f"the function {name!r} is not known", offer(name, FUNCTIONS)) from None
        if fact.type != "table":
            raise Mismatch(f"{name} is neither a function nor a table", f"write {name} without brackets")
        if len(given) != 1 or given[0].dimension != dimension_of(fact.by):
            raise Mismatch(f"the table {name} is looked up by one value in {fact.by!r}", "give it that alone")
        return Measure("quantity", dimension_of(fact.unit), f"{name}(...) ({fact.unit})")
