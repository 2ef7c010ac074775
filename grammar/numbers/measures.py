"""Numbers with a unit of measure, in one part or several: "6'4\"", "3 yds, 2 feet and 5 inches", "an hour and a half".

Several parts come out as one exact value in the smallest unit named.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import cast

from grammar.numbers.clock import stopwatch_at
from grammar.numbers.digits import word_at
from grammar.numbers.fractions import Numeral, fractions_at
from grammar.numbers.numerals import numerals_at
from grammar.numbers.quantity import Doubt, Kind, Quantity, place
from grammar.numbers.unit_words import Unit, unit_words
from grammar.record import record
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token

MOST_BETWEEN = 2  # words such as "more" between a number and its unit
MOST_LINKS = 2  # ", and"
COMPOUND = ("length", "duration", "mass")
METRES = frozenset({"m", "cm"})  # behind them "in" is no inch: "1m85 in gold"
SECOND = Unit("duration", "s", Fraction(1))


@record
class _Sum:
    """Parts read so far: total in the kind's first unit, units used, and how the last part was written."""

    total: Fraction
    units: tuple[Unit, ...]
    last: Unit
    end: int
    whole: bool
    sign: int = 1
    form: str = ""
    vague: bool = False
    doubt: Doubt = ""


def unit_links(tokens: Sequence[Token], numeral: Numeral) -> Iterator[tuple[int, bool]]:
    """Where the unit of a number may stand, and whether "of" or an article led there: six-foot, half an inch."""
    words = unit_words()
    at = numeral.end
    yield at, False
    if word_at(tokens, at) == "-":
        yield at + 1, False
    for _ in range(MOST_BETWEEN):
        if word_at(tokens, at) not in words.between:
            break
        at += 1
        yield at, False
    if numeral.form in ("fraction", "mixed", "ratio"):
        for phrase in words.of:
            if all(word_at(tokens, numeral.end + k) == word for k, word in enumerate(phrase)):
                yield numeral.end + len(phrase), True


def _size(unit: Unit) -> Fraction:
    """How large a unit is, in the first unit of its kind."""
    return unit.times * unit_words().sizes[unit.kind][unit.name]


def units_at(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, Unit]]:
    """(end, unit) of every unit named at `i`, longest first, as far as it may stand so written."""
    words = unit_words()
    for end, unit in words.units.find(tokens, i):
        token = tokens[i]
        if unit.word in words.close and not token.glued:
            continue
        if not token.glued and token.kind == "word" and end < len(tokens) and tokens[end].glued and tokens[end].value:
            continue  # "m37" is a name, "2 m37" no length
        letter = words.cased.get(unit.word)
        if letter and unit.kind == "temperature" and token.text != letter and not token.glued:
            continue
        yield end, unit


def measures_at(tokens: Sequence[Token], i: int, numerals: Sequence[Numeral] | None = None) -> Iterator[Quantity]:
    """Every measure that begins at token `i`, in no set order."""
    for first in _first_parts(tokens, i, numerals if numerals is not None else numerals_at(tokens, i)):
        yield _quantity(tokens, i, first)
        for whole in _continued(tokens, first):
            yield _quantity(tokens, i, whole)
    for whole in _unit_first(tokens, i):
        yield _quantity(tokens, i, whole)


def _first_parts(tokens: Sequence[Token], i: int, numerals: Sequence[Numeral]) -> Iterator[_Sum]:
    for numeral in numerals:
        for at, of in unit_links(tokens, numeral):
            for end, unit in units_at(tokens, at):
                if not (of and not unit.name):
                    yield _part(tokens, numeral, at, end, unit, shared=of)
    watch = stopwatch_at(tokens, i)
    if watch is not None:
        yield _Sum(watch[1], (SECOND,), SECOND, watch[0], whole=False, form="digits")
    yield from _one_unit(tokens, i)


def _one_unit(tokens: Sequence[Token], i: int) -> Iterator[_Sum]:
    """ "an hour", "another business day", "all-day": one of the unit, without a number."""
    words = unit_words()
    here = word_at(tokens, i)
    article = here in number_words().articles
    if not article and here not in words.one_of:
        return
    at = i + 2 if word_at(tokens, i + 1) == "-" else i + 1
    if word_at(tokens, at) in words.between and not article:
        at += 1
    for end, unit in units_at(tokens, at):
        if unit.single and unit.kind in COMPOUND and (article or unit.kind == "duration"):
            total = _size(unit)
            yield _Sum(total, (unit,), unit, end, whole=True)


def _unit_first(tokens: Sequence[Token], i: int) -> Iterator[_Sum]:
    """ "minute 45s": a unit of time without a number, taken as one where another part with its unit follows."""
    for end, unit in units_at(tokens, i):
        if unit.kind == "duration" and unit.single:
            first = _Sum(_size(unit), (unit,), unit, end, whole=True)
            for whole in _continued(tokens, first):
                if len(whole.units) > 1 and whole.doubt != "tail":
                    yield whole


def _part(tokens: Sequence[Token], numeral: Numeral, at: int, end: int, unit: Unit, *, shared: bool) -> _Sum:
    words = unit_words()
    doubt: Doubt = ""
    if shared and numeral.form == "fraction" and numeral.value.denominator not in words.ruled:
        doubt = "share"
    elif unit.word == "in" and not tokens[at].glued and _preposition(tokens, end):
        doubt = "preposition"
    elif unit.word == "s" and tokens[at].glued and tokens[at - 1].divided:
        doubt = "share"
    elif end == at + 1 and tokens[at].glued and tokens[at].text in "MG":
        doubt = "capital"
    elif unit.word == "m" and unit.kind == "duration":
        doubt = "minutes"
    sign = -1 if numeral.value < 0 else 1
    total = abs(numeral.value) * _size(unit)
    whole = numeral.value.denominator == 1
    return _Sum(total, (unit,), unit, end, whole, sign, numeral.form, numeral.vague, doubt)


def _preposition(tokens: Sequence[Token], after: int) -> bool:
    """Whether what stands behind "in" shows that it is no inch: "8 in the hall", "3 in 4"."""
    if word_at(tokens, after) in unit_words().after_preposition:
        return True
    for numeral in numerals_at(tokens, after)[:1]:
        units = [(end, unit) for end, unit in units_at(tokens, numeral.end) if unit.kind != "percent"]
        if not units:
            return word_at(tokens, numeral.end) != "x"
        if all(unit.word == "s" for _, unit in units):
            return True  # "9 in 5s and 11s"
        inches = [end for end, unit in units if unit.name == "in" and unit.word != "in"]
        return any(word_at(tokens, end) in unit_words().after_size for end in inches)  # "8 in 11 inch balloons"
    return False


def _continued(tokens: Sequence[Token], before: _Sum) -> Iterator[_Sum]:
    """The sum with every further part that can be said to belong to it."""
    if before.last.kind not in COMPOUND:
        return
    for at, link in _links(tokens, before.end):
        if link == "and":
            yield from _and_fraction(tokens, before, at)
        if before.last.kind == "duration":
            watch = stopwatch_at(tokens, at) if _size(SECOND) < _size(before.last) else None
            if watch is not None:
                units = (*before.units, SECOND)
                yield replace(before, total=before.total + watch[1], units=units, end=watch[0], doubt="")
        if at >= len(tokens):
            continue
        for numeral in numerals_at(tokens, at):
            if numeral.value < 0:
                continue
            yield from _next_part(tokens, before, numeral, link)
            yield from _tail(tokens, before, numeral, at, link)


def _links(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, str]]:
    """Where the next part may begin, and what links it: "", "," , "-" or "and"."""
    words = unit_words()
    at, link = i, ""
    yield at, link
    for _ in range(MOST_LINKS):
        word = word_at(tokens, at)
        if word not in words.links or (word == "." and not tokens[at].glued):
            return
        if word in (",", "-"):
            link = link or word
        elif word != ".":
            link = "and"
        at += 1
        yield at, link


def _next_part(tokens: Sequence[Token], before: _Sum, numeral: Numeral, link: str) -> Iterator[_Sum]:
    words = unit_words()
    for at, of in unit_links(tokens, numeral):
        for end, unit in units_at(tokens, at):
            if unit.kind != before.last.kind or of:
                continue
            smaller = _size(unit) < _size(before.last)
            other = all(_size(unit) != _size(used) for used in before.units)
            tail = words.tails.get(before.last.name)
            counted = unit.kind == "length" and tail is not None and tail.minor == unit.name
            over = counted and tail is not None and numeral.value >= tail.below
            free = unit.kind == "duration" or (link == "and" and before.total < _size(unit))  # not "215 cm and 2 m"
            behind = unit.word == "in" and before.last.name in METRES
            if (smaller or (other and free)) and not over and not behind:
                total = before.total + numeral.value * _size(unit)
                doubt: Doubt = "" if before.doubt == "minutes" else before.doubt
                whole = numeral.value.denominator == 1
                grown = replace(before, total=total, units=(*before.units, unit), last=unit, end=end)
                grown = replace(grown, whole=whole, doubt=doubt)
                yield grown
                yield from _continued(tokens, grown)


def _and_fraction(tokens: Sequence[Token], before: _Sum, at: int) -> Iterator[_Sum]:
    """ "an hour and a half", "three hours and a quarter": a fraction of the unit just named."""
    for part in fractions_at(tokens, at):
        if part.value < 1 and before.whole:
            yield replace(before, total=before.total + part.value * _size(before.last), end=part.end, whole=False)


def _tail(tokens: Sequence[Token], before: _Sum, numeral: Numeral, at: int, link: str) -> Iterator[_Sum]:
    """ "6 ft 4", "1 m 80", "1 hour thirty": a number whose unit goes without saying."""
    words = unit_words()
    tail = words.tails.get(before.last.name)
    if link == "and" and word_at(tokens, at - 1) not in number_words().joins:
        return  # "eight foot plus three arches"
    if tail is None or before.last.times != 1 or not before.whole or numeral.vague or link == ",":
        return
    if (
        word_at(tokens, before.end) == ","
        or numeral.value >= tail.below
        or (numeral.value.denominator != 1 and not tail.fraction)
    ):
        return
    if numeral.form not in ("digits", "words") and not (tail.fraction and numeral.form in ("mixed", "fraction")):
        return
    if tail.digits and (numeral.value < 10 or link or (tokens[at].kind == "number" and len(tokens[at].text) != 2)):
        return
    minor = Unit(before.last.kind, tail.minor, Fraction(1))
    units = (*before.units, minor)
    total = before.total + numeral.value * _size(minor)
    yield replace(before, total=total, units=units, end=numeral.end, whole=False, doubt="tail")


def _quantity(tokens: Sequence[Token], i: int, read: _Sum) -> Quantity:
    sizes = unit_words().sizes[read.last.kind]
    unit = min((used.name for used in read.units), key=lambda name: sizes[name])
    value = read.sign * read.total / sizes[unit]
    if read.last.kind == "duration" and value.denominator > 1000 and unit == "s":
        value = Fraction(round(value * 1_000_000), 1_000_000)  # to the microsecond, as datetime.timedelta
    kind = cast(Kind, read.last.kind)
    return place(tokens, i, read.end, kind, value, unit, form=read.form, vague=read.vague, doubt=read.doubt)
