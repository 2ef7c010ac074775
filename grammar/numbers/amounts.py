"""Every way to read a number or a quantity at a place of the turn, the likeliest first."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

from grammar.numbers.digits import word_at
from grammar.numbers.quantities import quantities_at
from grammar.numbers.quantity import Quantity
from grammar.numbers.unit_words import unit_words
from grammar.record import record
from grammar.terms import Amount
from grammar.tokens.lexicon import Match, spell
from grammar.tokens.number_words import magnitude, number_words
from grammar.tokens.scan import Token, scan
from grammar.word_files import load_words, placed

FAR_UNITS = frozenset({"mi", "km"})
TYPES = {
    "length": "LEN", "money": "MONEY", "percent": "PCT", "temperature": "TEMP", "speed": "SPEED", "clock": "CLOCK",
    "duration": "DUR", "mass": "OTHER", "volume": "OTHER", "area": "OTHER",
}  # fmt: skip
MASHED, SURE_SOUND, MAYBE_SOUND, SPLIT, OTHER, TORN = 3.5, 0.3, 1.2, 0.2, 0.5, 1.0
LENGTH_WORDS = frozenset("ft foot feet ' m metre metres meter meters cm".split())
PERCENT = frozenset({"%", "percent", "pct"})
POINTED = frozenset("them em 'em those these the our".split())
INCH_WORDS = frozenset('in inch inches "'.split())


@record
class Choice:
    """One reading: a type of term, its value and the token after it; `then` is a second number in the same digits."""

    type: str
    value: Any
    end: int
    cost: float = 0.0
    note: str = ""
    then: "Choice | None" = None
    open: bool = False

    def amount(self, unit: str = "") -> Any:
        """The value; with another unit where one is given."""
        return Amount(self.value.value, unit) if unit and isinstance(self.value, Amount) else self.value


class Amounts:
    """The choices at every place of one turn; `doubtful` where more than one of them is likely."""

    def __init__(
        self,
        tokens: Sequence[Token],
        names: Callable[[int], bool] = bool,
        describes: Callable[[int], bool] = bool,
    ) -> None:
        self.names, self.describes = names, describes
        self.tokens = tokens
        self.doubtful = False
        self._at: dict[int, list[Choice]] = {}
        self.entries: dict[int, list[Match]] = {}  # of the lexicon, and ends of colours, as the lexer looks them up
        self.colours: dict[int, int] = {}

    def at(self, i: int) -> list[Choice]:
        """The choices that begin at token `i`; SKIP means that the word is better left a word."""
        if i not in self._at:
            self._at[i] = self._choices(i) if i < len(self.tokens) else []
        return self._at[i]

    def _choices(self, i: int) -> list[Choice]:
        if self._is_code(i) or self._is_decimals(i):
            return []
        sound = self._sound(i)
        if sound:
            return sound
        found = [
            q for q in self._found(i) if _wanted(q, self.tokens) and not self._names_end(q) and not self._is_span(q)
        ]
        out = _ranked(_sensible(found, self.tokens, self.describes), self.tokens, self.names, self.describes)
        if len(out) > 1:
            self.doubtful = True
        mashed = list(self._mashed(i, out))
        if mashed:
            self.doubtful = True
        return out + mashed

    def _is_code(self, i: int) -> bool:
        """Digits that are part of something else: "1e308", a date "12/6/25"."""
        return self._joined(i, "e") or (self._joined(i, "/") and self.tokens[i].kind == "number")

    def _is_decimals(self, i: int) -> bool:
        """Whether "point" goes on with the number before it: "thirty one point seven"."""
        return self.tokens[i].lower in number_words().point and i > 0 and magnitude(self.tokens[i - 1]) is not None

    def _names_end(self, q: Quantity) -> bool:
        """Whether the last word of a quantity is of a name: "eight feet" and "half arches", "18 ft and six rounds"."""
        last = self.tokens[q.stop - 1].lower
        joined = word_at(self.tokens, q.stop - 2) in number_words().joins and q.kind == "length" and q.doubt == "tail"
        return (last == "half" and self.names(q.stop - 1)) or (joined and last != "half" and self._begins_group(q.stop))

    def _begins_group(self, at: int) -> bool:
        """Whether things are named behind a number: "columns", "little ones", "short at 5"."""
        end = at
        while word_at(self.tokens, end) in placed("of_a_group"):
            end += 1
        if self.names(end) or (end > at and word_at(self.tokens, end) in {"one", "ones"}):
            return True
        if end > at and word_at(self.tokens, end - 1) in placed("lesser"):
            return True  # "3 tall at 7 ft and 3 short"
        return word_at(self.tokens, end) == "at" and bool(quantities_at(self.tokens, end + 1))

    def _is_span(self, q: Quantity) -> bool:
        """ "five to six pumps", "five to six tables": no time of day."""
        between = q.kind == "clock" and q.unit != "24 h" and word_at(self.tokens, q.first + 1) == "to"
        return between and (self.names(q.stop) or word_at(self.tokens, q.stop) in placed("strokes"))

    def _joined(self, i: int, mark: str) -> bool:
        """Whether token `i` is bound to another number by a glued mark, on either side."""
        for first, middle, last in ((i, i + 1, i + 2), (i - 2, i - 1, i)):
            if first >= 0 and last < len(self.tokens) and self.tokens[middle].lower == mark:
                pair = (self.tokens[first], self.tokens[last])
                bound = self.tokens[middle].glued and self.tokens[last].glued and all(t.kind == "number" for t in pair)
                if bound and (mark == "e" or any(t.divided for t in pair)):
                    return True
        return False

    def _found(self, i: int) -> list[Quantity]:
        """The quantities at a token; "an extra foot" is one foot."""
        found = quantities_at(self.tokens, i)
        if not found and i and self.tokens[i - 1].lower in {"extra", "another", "additional"}:
            found = [
                _moved(q, i - 1) for q in quantities_at(scan(f"a {self.tokens[i].lower}"), 0) if q.kind == "length"
            ]
        return found

    def _mashed(self, i: int, out: list[Choice]) -> Iterator[Choice]:
        """ "86 foot", "1060 inch": a number and a size whose digits were run together."""
        token = self.tokens[i]
        if not out or out[0].type != "LEN" or not token.whole or not 2 <= len(token.lower) <= 5:
            return
        for cut in range(1, len(token.lower)):
            count, size = token.lower[:cut], token.lower[cut:]
            if size[0] != "0" and count[0] != "0" and "," not in token.text:
                length = Choice("LEN", Amount(Fraction(size), out[0].value.unit), out[0].end, 0.0, "")
                note = f"{count} of {size} {out[0].value.unit}"
                yield Choice("NUM", Amount(Fraction(count)), out[0].end, MASHED, note, length)

    def _sound(self, i: int) -> list[Choice]:
        """ "ate foot", "to 8 foot tables": a number written as it sounds."""
        table = load_words("homophones.toml")
        for words, value in _sure().get(self.tokens[i].lower, ()):
            if tuple(t.lower for t in self.tokens[i : i + len(words)]) == words:
                end = i + len(words)
                if word_at(self.tokens, end) in str(table["not_before"]).split():
                    continue
                sized = [_choice(q) for q in self._sized(value, end)]
                return [*sized, Choice("NUM", Amount(Fraction(value)), end, SURE_SOUND, str(value))]
        if self.tokens[i].lower == "for" and self._four_each(i, table):
            value = table["maybe"]["for"]
            return [Choice("NUM", Amount(Fraction(value)), i + 1, SURE_SOUND, str(value))]
        value = table["maybe"].get(self.tokens[i].lower)
        if value is None or self.tokens[i].lower == "four" or i + 1 >= len(self.tokens):
            return []
        after = i + 1
        if (
            (self.tokens[i].lower != "for" or i == 0)
            and self.names(after)
            and (not i or self.tokens[i - 1].lower in str(table["opens"]).split())
        ):
            return [Choice("NUM", Amount(Fraction(value)), i + 1, SURE_SOUND, str(value))]
        if i and self.tokens[i - 1].lower not in str(table["opens"]).split():
            unit = self._sized(value, after) if self.tokens[i].lower == "too" else []
            return [_choice(q) for q in unit] if unit else []
        united = self._sized(value, after) if self.tokens[i].lower != "for" else []
        if united:
            return [_choice(q) for q in united]
        counted = self.tokens[after].kind == "number" or self.tokens[after].lower in table["sure"]
        if not counted and not quantities_at(self.tokens, after) and not self.names(after):
            return []
        self.doubtful = True
        return [Choice("SKIP", None, i + 1), Choice("NUM", Amount(Fraction(value)), i + 1, MAYBE_SOUND, str(value))]

    def _four_each(self, i: int, table: Mapping[str, Any]) -> bool:
        """ "for balloons each"."""
        return word_at(self.tokens, i + 1) in table["held"] and word_at(self.tokens, i + 2) in table["each"]

    def _sized(self, value: int, end: int) -> list[Quantity]:
        """A unit right after a number that was written as it sounds."""
        rest = " ".join(t.text for t in self.tokens[end : end + 3])
        found = [q for q in quantities_at(scan(f"{value} {rest}"), 0) if q.kind == "length"]
        return [_moved(q, end - 1) for q in found[:1]]


def _moved(q: Quantity, by: int) -> Quantity:
    return replace(q, first=q.first + by, stop=q.stop + by)


def _wanted(q: Quantity, tokens: Sequence[Token]) -> bool:
    """Leave out what a request for balloons never means: coins, seconds, spoken minutes, "a few"."""
    if q.doubt in {"coin", "minutes"}:
        return False
    if q.doubt == "spoken clock":  # "at six thirty", not "at six thirty foot tables"
        unit = word_at(tokens, q.stop) in LENGTH_WORDS | INCH_WORDS
        return q.value % 5 == 0 and not unit and q.first > 0 and tokens[q.first - 1].lower in placed("before_hour")
    if q.kind == "mass" and q.unit == "stone":
        return False  # "half stone and half ivory"
    if (
        tokens[q.stop - 1].lower == "half"
        and q.stop > q.first + 1
        and (word_at(tokens, q.stop + 1) in number_words().lots or word_at(tokens, q.stop) in placed("covered"))
    ):
        return False  # "nine foot and half a dozen columns", "5 ft half covered"
    if q.kind == "clock" and word_at(tokens, q.stop) in LENGTH_WORDS:
        return False  # "half 6 ft and half 8 ft"
    loose = q.kind == "money" and tokens[q.stop - 1].kind == "number" and not tokens[q.stop - 1].glued
    if loose and any(unit_words().units.find(tokens, q.stop)):
        return False  # "600 quid 20 miles"
    if q.kind == "duration":
        return q.unit != "s" and word_at(tokens, q.stop) not in PERCENT  # "25 an hour and 35 % markup"
    if q.kind == "number" and q.form == "fraction" and 0 < q.value < Fraction(1, 10) and tokens[q.first].kind == "word":
        return False  # "a fortieth"
    if q.kind == "number" and q.form == "words" and 20 < q.value < 100 and "and" in _words(q, tokens):
        return False  # "turning forty and two columns"
    if q.kind == "length" and (q.doubt == "tail" or _is_sum(q, tokens)) and q.value.denominator % 3 == 0:
        return False  # "six foot two thirds" is no size that a ruler shows
    unit_next = q.stop < len(tokens) and tokens[q.stop].lower in LENGTH_WORDS | (
        INCH_WORDS if q.unit == "in" else set()
    )
    if q.kind == "length" and q.doubt == "tail" and unit_next:
        return False  # "5 ft and 6 ft" are two
    if q.kind == "length" and q.doubt == "tail" and tokens[q.stop - 1].lower == "one":
        return False  # "a 10 ft one"
    if q.kind == "length" and q.doubt == "tail" and word_at(tokens, q.stop + 1) in number_words().parts:
        return False  # "ten feet, two-thirds"
    if q.kind == "length" and _is_sum(q, tokens) and _is_another(q, tokens):
        return False
    return q.kind != "length" or "with" not in _words(q, tokens)


def _words(q: Quantity, tokens: Sequence[Token]) -> set[str]:
    """The words of a quantity."""
    return {t.lower for t in tokens[q.first : q.stop]}


def _is_another(q: Quantity, tokens: Sequence[Token]) -> bool:
    """Whether the last part of a sum is of something else: "8 ft, 11 inch balloons", "four foot, 10 inch dip"."""
    behind = word_at(tokens, q.stop)
    return behind in {"balloons", "balloon"} or (behind in placed("hanging") and "," in _words(q, tokens))


def _is_sum(q: Quantity, tokens: Sequence[Token]) -> bool:
    """Whether a length has two units, with a comma between them or not."""
    return sum(t.lower in LENGTH_WORDS | INCH_WORDS for t in tokens[q.first : q.stop]) > 1


def _short_hundred(q: Quantity, tokens: Sequence[Token]) -> bool:
    """ "three twenty foot" as 320 ft, "eleven ninety cm" as 1190: rather a number and a size."""
    if q.kind not in {"length", "number"} or q.stop < q.first + 2:
        return False
    first, second = tokens[q.first], tokens[q.first + 1]
    if first.value is not None and second.value is not None:
        return q.kind == "length" and not second.glued and not second.divided and not second.lower.startswith("0")
    ones, tens = (number_words().cardinals.get(t.lower, 0) for t in (first, second))
    return 0 < ones <= 20 and ones != 10 <= tens


def _sensible(found: list[Quantity], tokens: Sequence[Token], words: Callable[[int], bool]) -> list[Quantity]:
    """Drop readings that a longer one with the same number makes pointless."""
    out: list[Quantity] = []
    for q in found:
        if q.kind == "number":
            measured = [m for m in out if m.kind != "number" and (m.kind != "clock" or m.unit == "24 h")]
            shadowed = any(
                m.stop > q.stop and not _preposition(m, tokens, words) and not _shorter(m, q, found, tokens)
                for m in measured
            )
            if shadowed:
                continue
            longer = [m for m in out if m.kind == "number" and m.stop > q.stop]
            if longer and not _splits(longer[0], q, tokens) and not any(_short_hundred(m, tokens) for m in out):
                continue
        out.append(q)
    return out


def _shorter(measure: Quantity, number: Quantity, found: list[Quantity], tokens: Sequence[Token]) -> bool:
    """Whether the number is only the first part of the number in the measure ("twenty" of "twenty six foot")."""
    full = [n for n in found if n.kind == "number"]
    cut = number.form == "words" or _short_hundred(measure, tokens)
    return bool(full) and number.stop < full[0].stop and cut and measure.value != number.value


def _splits(longer: Quantity, shorter: Quantity, tokens: Sequence[Token]) -> bool:
    """Whether "twenty six" may be "twenty" and "six"; a hyphen, a fraction or "a dozen and a half" is never split."""
    if longer.form == "mixed":  # "ten and two thirds" may be ten, and two thirds of each
        return shorter.value.denominator == 1 and shorter.value >= 2 and longer.value - shorter.value == Fraction(2, 3)
    hyphened = word_at(tokens, shorter.stop) == "-" and tokens[shorter.stop].glued
    if longer.form != "words" or shorter.form != "words" or hyphened:
        return False
    if longer.value.denominator > 1:  # "twenty one point five metre tables"
        return shorter.value >= 20 and shorter.value % 10 == 0 and 1 <= longer.value - shorter.value < 10
    return shorter.value >= 2


def _ranked(
    found: list[Quantity], tokens: Sequence[Token], names: Callable[[int], bool], words: Callable[[int], bool]
) -> list[Choice]:
    """Choices in order: "in" before another word is rather the word; a length whose last number has no unit is open."""
    plain = [q for q in found if not _preposition(q, tokens, words)]
    ordered = plain + [q for q in found if q not in plain]
    first = ordered[0] if ordered else None
    loose = first is not None and first.doubt == "tail" and not tokens[first.stop - 1].glued
    tail = (
        first
        if loose
        and first is not None
        and (names(first.stop) or (word_at(tokens, first.stop) == "of" and word_at(tokens, first.stop + 1) in POINTED))
        else None
    )
    out = []
    for place, q in enumerate(ordered):
        choice = _choice(q)
        counted = tail is not None and q is tail and word_at(tokens, q.stop) == "of"
        torn = first is not None and q.kind == first.kind == "length" and q.first == first.first and place > 0
        cost = (
            (TORN if torn and first is not None and not first.doubt else 0.0)
            + (MASHED if _short_hundred(q, tokens) else 0.0)
            + choice.cost
            + (
                1.5
                if counted
                else 0.1
                if tail is not None and place
                else (TORN if first is not None and first.doubt == "tail" else OTHER)
                if place
                else 0.0
            )
        )
        out.append(replace(choice, cost=cost, open=tail is not None and not counted))
    return out


def _preposition(q: Quantity, tokens: Sequence[Token], words: Callable[[int], bool]) -> bool:
    """Whether "in" after a number is rather the word: "seven in helium", "ten in navy"."""
    if q.kind == "length" and _is_sum(q, tokens):
        return False  # "2 ft 6 in each"
    return q.doubt == "preposition" or (q.kind == "length" and tokens[q.stop - 1].lower == "in" and words(q.stop))


def _choice(q: Quantity) -> Choice:
    if q.vague:
        return Choice("VAGUE", None, q.stop)
    if q.kind == "number":
        share = 0 < q.value < 1
        return Choice("FRAC" if share else "NUM", Amount(q.value), q.stop, 0.0)
    if q.kind == "clock":
        return Choice("CLOCK", (int(q.value), q.unit == "24 h"), q.stop, 0.0)
    kind = TYPES[q.kind]
    if kind == "LEN" and q.unit in FAR_UNITS:
        kind = "FAR"
    return Choice(kind, Amount(q.value, q.unit if kind != "PCT" else ""), q.stop, SPLIT if q.doubt == "share" else 0.0)


@cache
def _sure() -> dict[str, list[tuple[tuple[str, ...], Any]]]:
    """The phrases that are numbers by their sound, by their first word, as the scanner cuts them."""
    found: dict[str, list[tuple[tuple[str, ...], Any]]] = {}
    for phrase, value in load_words("homophones.toml")["sure"].items():
        words = spell(phrase)
        found.setdefault(words[0], []).append((words, value))
    return found
