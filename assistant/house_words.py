"""Between what was heard and the blocks of a house file: which facts can be rules, how they are written and told."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import Any

from assistant.house import HouseError, Rule
from grammar.numbers.quantities import read_quantities
from grammar.reading import Reading
from grammar.talk.told import Told, read_told
from grammar.vocabulary import Vocabulary
from rules import Book
from rules.blocks import ANY, JOB, Fact
from rules.record import record
from rules.show import quantity, value_text
from rules.units import UnitError, convert, from_base
from rules.values import look_up, read_quantity, read_value

FINEST = Decimal("0.0001")
FEW_WORDS = 4  # of a turn that is a size and nothing else: "the 5 inch ones"


@record
class Rows:
    """Numbers of the book that were told; where no size was named with a row of a table the next turn may give it."""

    book: Book
    rows: tuple[Told, ...]

    @property
    def lacks_size(self) -> bool:
        """Whether one of them is a row of a table and its place is not known."""
        return any(row.by and row.place is None for row in self.rows)

    @property
    def has_price(self) -> bool:
        """Whether money is among them."""
        return any(len(row.unit) == len("USD") for row in self.rows)

    def rules(self) -> list[Rule]:
        """The rows as rules; HouseError where one is told in another kind of unit."""
        return _rules_of_rows(self.book, self.rows)

    def completed(self, text: str) -> "Rows | None":
        """With the size that a turn names which says nothing else."""
        said = read_quantities(text)
        if len(said) != 1 or said[0].kind not in ("length", "number") or len(text.split()) > FEW_WORDS:
            return None
        size = (said[0].value, said[0].unit or "in")
        return Rows(self.book, tuple(replace(row, place=row.place or size) for row in self.rows))


def rows_told(book: Book, vocabulary: Vocabulary, text: str) -> tuple[Rows, str]:
    """Rows of tables told in a text, and what is left of the text."""
    rows, left = read_told(text, vocabulary.told, vocabulary.nominal)
    return Rows(book, tuple(rows)), left


def _rules_of_rows(book: Book, rows: tuple[Told, ...]) -> list[Rule]:
    rules: list[Rule] = []
    for row in sorted(rows, key=lambda row: bool(row.each_of)):  # what others are shared out by comes first
        fact = book.fact(row.fact) or next(iter(book.facts.get(row.fact, ())), None)
        if fact is None:
            continue
        if row.place is None:
            rules.append(Rule(row.fact, _with_unit(fact, float(_in_fact(row.value, row.unit, fact)))))
            continue
        at = float(_in_unit(row.place[0], row.place[1] or fact.by, fact.by))
        value = row.value
        if row.each_of:
            among = next((rule.value for rule in rules if rule.id == row.each_of and rule.at == at), None)
            value /= Fraction(str(among if among is not None else _looked_up(book, row.each_of, at)))
        rules.append(Rule(row.fact, _plain(_finest(_in_fact(value, row.unit, fact))), at=_plain(at)))
    return rules


def _in_fact(value: Fraction, unit: str, fact: Fact) -> Fraction:
    """A value said in `unit` in the unit of the fact, or "USD" of USD/ft; HouseError where it is another kind."""
    try:
        return _in_unit(value, unit or fact.unit.split("/")[0], fact.unit.split("/")[0])
    except UnitError:
        raise HouseError(f"{fact.name} is told in {fact.unit} here") from None


def _finest(value: Fraction) -> Decimal:
    exact = Decimal(value.numerator) / Decimal(value.denominator)
    return exact.quantize(FINEST, ROUND_HALF_UP).normalize()


def _plain(value: float | Decimal) -> float | int:
    return int(value) if value == int(value) else float(value)


def _in_unit(value: Fraction, unit: str, wanted: str) -> Fraction:
    return value if unit == wanted else Fraction(convert(float(value), unit, wanted)).limit_denominator(10_000)


def _looked_up(book: Book, table: str, at: float) -> float:
    fact = book.fact(table)
    if fact is None or fact.assume is None:
        return 1.0
    return from_base(look_up(fact.assume.typical, read_quantity(at, fact.by)), fact.unit)


def rules_heard(book: Book, reading: Reading, said: str) -> tuple[list[Rule], list[str]]:
    """The facts of a reading as rules, and the names of those that belong to one job."""
    rules: list[Rule] = []
    refused: list[str] = []
    for kind, id, value in _facts(book, reading):
        fact = book.fact(id, kind or JOB) or next(iter(book.facts.get(id, ())), None)
        if fact is None or fact.once or fact.type == "clock":
            refused.append(fact.name if fact is not None else id.replace("_", " "))
            continue
        rules.append(
            Rule(
                id,
                _toml_value(fact, value),
                kind if kind and fact.of != (kind,) else "",
                None,
                said.strip(),
                bool(kind),
            )
        )
    return rules, refused


def _facts(book: Book, reading: Reading) -> Iterator[tuple[str, str, Any]]:
    """(kind or "", id, value) of every fact; a heard name stands for the fact that the piece hears by it."""
    yield from (("", id, value) for id, value in reading.job.items())
    for mention in reading.mentions:
        hears = book.kind_of(mention.kind).hears if mention.kind else {}
        for name, value in mention.facts.items():
            yield mention.kind or "", hears.get(name, name), value


def _toml_value(fact: Fact, value: Any) -> Any:
    if fact.type == "quantity" and isinstance(value, list | tuple):
        low, high = float(value[0]), float(value[-1])
        ends = {"low": low, "typical": (low + high) / 2, "high": high}
        return {name: _with_unit(fact, end) for name, end in ends.items()}
    if fact.type == "quantity":
        return _with_unit(fact, float(value))
    return list(value) if isinstance(value, tuple) else value


def _with_unit(fact: Fact, value: float) -> Any:
    number = Decimal(f"{value:.6f}").normalize()
    return _plain(number) if fact.unit == "count" else f"{number:f} {fact.unit}"


@record
class Kept:
    """A rule with the book it is told by: the book before it was laid over, so that the old value can be told."""

    book: Book
    rule: Rule
    again: bool = False  # whether the house had a rule for it before

    @property
    def fact(self) -> Fact | None:
        """The fact that it is about."""
        kind = self.rule.kind or JOB
        return self.book.fact(self.rule.id, kind) or next(iter(self.book.facts.get(self.rule.id, ())), None)

    @property
    def name(self) -> str:
        """What it is called: "balloon price at 5 in"."""
        fact = self.fact
        name = fact.name if fact is not None else self.rule.id.replace("_", " ")
        if self.rule.at is not None and fact is not None:
            return f"{name} at {quantity(self.rule.at, fact.by)}"
        return f"{name} of a {self.rule.kind}" if self.rule.kind else name

    def told(self, *, was: bool = True) -> str:
        """ "labour rate: $38 an hour (the book: $20)"."""
        fact = self.fact
        if fact is None:
            return self.name
        now, old = self._shown(fact), self._old(fact) if was else ""
        whose = "before" if self.again else "the book"
        return f"{self.name}: {now}{f' ({whose}: {old})' if old and old != now else ''}"

    def _shown(self, fact: Fact) -> str:
        value = self.rule.value
        try:
            if self.rule.at is not None:
                return quantity(from_base(read_quantity(value, fact.unit), fact.unit), fact.unit)
            if isinstance(value, Mapping):
                ends = [
                    value_text(read_quantity(value[end], fact.unit), fact) for end in ("low", "high") if end in value
                ]
                return " to ".join(ends)
            return value_text(read_value(value, fact.type, fact.unit), fact)
        except (ValueError, UnitError, KeyError):
            return str(value)

    def _old(self, fact: Fact) -> str:
        if fact.assume is None or (fact.type == "quantity" and any(rule.when is None for rule in fact.rules)):
            return ""
        if self.rule.at is not None:
            return quantity(_looked_up(self.book, self.rule.id, float(self.rule.at)), fact.unit)
        return value_text(fact.assume.typical, fact)

    def told_by_book(self) -> str:
        """ "labour rate: $20 an hour"."""
        fact = self.fact
        return (
            f"{self.name}: {value_text(fact.assume.typical, fact)}" if fact is not None and fact.assume else self.name
        )

    def is_named(self, names: list[str]) -> bool:
        """Whether the words are one of its names, or the last of its first one ("rate" of "labour rate")."""
        fact = self.fact
        said = " ".join(names)
        return fact is not None and (said in fact.words or (bool(fact.words) and fact.words[0].split()[-1] == said))

    def is_called(self, names: list[str]) -> bool:
        """Whether all of the words name it."""
        fact = self.fact
        words = f"{self.name} {' '.join(fact.words) if fact else ''} {self.rule.id} {self.rule.kind} balloons".lower()
        own = {word.rstrip("s") for word in words.replace("_", " ").replace("-", " ").split()} | {"inch", "inche"}
        return all(name.rstrip("s") in own for name in names)


def kept_rules(book: Book, text: str) -> list[Kept]:
    """The rules of a house file's sound text, in its order; blocks of facts of its own are told by their name."""
    found = [rule for id, raw in tomllib.loads(text).items() for rule in _rules_in(book, id, raw)]
    return [Kept(book, rule) for rule in found]


def _rules_in(book: Book, id: str, raw: Mapping[str, Any]) -> Iterator[Rule]:
    for row in raw.get("rows", ()):
        yield Rule(
            id, row.get("typical"), at=_plain(read_quantity(row["at"], "in")) if _by_inch(book, id) else row["at"]
        )
    if "learned" in raw:
        return
    if "assume" in raw:
        yield Rule(id, raw["assume"])
    elif "rows" not in raw and any(not isinstance(value, dict) for value in raw.values()):
        yield Rule(id, None)
    if id in book.pieces or id in (JOB, ANY):
        for inner, block in raw.items():
            if isinstance(block, dict):
                yield from (replace(rule, kind=id) for rule in _rules_in(book, inner, block))


def _by_inch(book: Book, id: str) -> bool:
    fact = book.fact(id)
    return fact is not None and fact.by == "in"
