"""Whole and decimal numbers in words or digits: "forty five hundred and eight", "3 million", "two point oh five".

A reading is kept for every place where a number could end, so "twenty six" gives 20 and 26. Nothing is decided here.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from grammar.numbers.digits import Cardinal, after_hyphen, digit_groups, suffixed, word_at
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token

MOST_DECIMALS = 12  # spoken decimal places; more is a list of digits, not a quantity


class _Count:
    """Adds up one number, token by token. `room`: what is added to the open group must be smaller."""

    def __init__(self, group: Fraction | None = None, *, digits: bool = False) -> None:
        self.total = Fraction(0)
        self.group = group
        self.room = 0
        self.limit: int | None = None
        self.digits = digits
        self.started = group is not None
        self.nought = False
        self.scale = 1

    @property
    def value(self) -> Fraction:
        return self.total + (self.group or 0)

    def take(self, token: Token, joint: str) -> bool:
        """Whether the token carries the number on; `joint` is what stood before it: "", "-", "," or "and"."""
        words = number_words()
        self.scale = 1
        if token.lower in words.cardinals:
            return self._small(Fraction(words.cardinals[token.lower]), joint)
        if token.kind == "number":
            return self._digits(token, joint)
        if joint in ("and", ",") or self.nought:
            return False
        if token.lower in words.hundreds:
            return self._hundred()
        if token.lower in words.scales:
            return self._scale(words.scales[token.lower])
        return False

    def _small(self, value: Fraction, joint: str) -> bool:
        if not self.started:
            self.nought = value == 0
            self.group = value
        elif value == 0 or self.nought or (joint == "," and self.group is not None):
            return False
        elif self.group is None:
            self.group = value
        elif value < self.room:
            self.group += value
        else:
            return False
        self.room = 10 if value >= 20 else 0
        self.started = True
        return True

    def _digits(self, token: Token, joint: str) -> bool:
        value = token.value
        if value is None or token.divided:
            return False
        if not self.started:
            self.digits, self.group = True, value
        elif not token.whole or value == 0 or not (joint == "and" or (self.digits and joint == "")):
            return False
        elif self.group is None and self.limit is not None and value < self.limit:
            self.group = value
        elif self.group is not None and self.room == 100 and value < 100:
            self.group += value
        else:
            return False
        self.room = 0
        self.started = True
        return True

    def _hundred(self) -> bool:
        if not self.started:
            self.group = Fraction(100)
        elif self.group is not None and 0 < self.group < 100 and self.room != 100:
            self.group *= 100
        else:
            return False
        self.room = 100
        self.started = True
        return True

    def _scale(self, size: int) -> bool:
        if not self.started:
            self.total = Fraction(size)
        elif self.group is not None and self.group > 0 and (self.limit is None or size < self.limit):
            self.total += self.group * size
        elif self.group is None and self.total < size:
            self.total *= size
        else:
            return False
        self.group = None
        self.room = 0
        self.limit = self.scale = size
        self.started = True
        return True


def _joint(tokens: Sequence[Token], i: int) -> tuple[str, int]:
    """What joins a number word to the next one, and where that next one is."""
    here = word_at(tokens, i)
    if here in number_words().joins:
        return "and", i + 1
    if here == "-" and after_hyphen(tokens, i) > i:
        if word_at(tokens, i + 1) in number_words().joins:
            return "and", after_hyphen(tokens, i + 2)
        return "-", i + 1
    if here == ",":
        return ",", i + 1
    return "", i


def carried_on(tokens: Sequence[Token], i: int, seed: Fraction | None, *, digits: bool = False) -> Iterator[Cardinal]:
    """Every longer number that the words from `i` on make of `seed` (None: nothing read yet), shortest first."""
    count = _Count(seed, digits=digits)
    at = i
    while at < len(tokens):
        joint, after = _joint(tokens, at) if count.started else ("", at)
        if after >= len(tokens) or (joint == "," and count.group is not None) or not count.take(tokens[after], joint):
            return
        at = after + 1
        yield Cardinal(at, count.value, count.digits and at == i + 1, count.scale)


def _below_hundred(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, int]]:
    """Numbers of two digits in words at `i`, with "oh five" as 05."""
    words = number_words()
    first = words.cardinals.get(word_at(tokens, i), 0)
    unit_at = after_hyphen(tokens, i + 1)
    unit = words.cardinals.get(word_at(tokens, unit_at), 0)
    if word_at(tokens, i) in words.zero_letters and 0 < unit < 10:
        yield unit_at + 1, unit
    if first >= 10:
        yield i + 1, first
        if first >= 20 and 0 < unit < 10:
            yield unit_at + 1, first + unit


def _pairs(tokens: Sequence[Token], i: int) -> Iterator[Cardinal]:
    """ "three twenty" as 320 and "nineteen seventy three" as 1973."""
    first = number_words().cardinals.get(word_at(tokens, i), 0)
    if 0 < first < 10 or 10 < first <= 20:
        for end, rest in _below_hundred(tokens, after_hyphen(tokens, i + 1)):
            yield Cardinal(end, Fraction(first * 100 + rest))


def _decimals(tokens: Sequence[Token], i: int, whole: Fraction) -> Iterator[Cardinal]:
    """The decimals after a spoken point: digits one by one, or numbers of two digits, "point seventy-five"."""
    if word_at(tokens, i) not in number_words().point:
        return
    words = number_words()
    at, places = i + 1, ""
    while at < len(tokens) and len(places) < MOST_DECIMALS:
        token = tokens[at]
        if token.whole and not places:
            yield _pointed(at + 1, whole, token.lower)
            return
        value = 0 if token.lower in words.zero_letters else words.cardinals.get(token.lower)
        if value is None:
            return
        pairs = list(_below_hundred(tokens, at)) if value else []
        for end, pair in pairs[:-1]:
            yield _pointed(end, whole, places + str(pair))
        at, value = pairs[-1] if pairs else (at + 1, value)
        places += str(value)
        yield _pointed(at, whole, places)


def _pointed(end: int, whole: Fraction, places: str) -> Cardinal:
    return Cardinal(end, whole + Fraction(int(places), 10 ** len(places)))


def cardinals_at(tokens: Sequence[Token], i: int) -> list[Cardinal]:
    """Every whole or decimal number, unsigned, that begins at token `i`. Values are exact."""
    words = number_words()
    start = i
    if word_at(tokens, i) in words.articles:
        if word_at(tokens, i + 1) not in words.scales and word_at(tokens, i + 1) not in words.hundreds:
            return []
        start = i + 1
    found = list(carried_on(tokens, start, None))
    if tokens[start].kind == "number":
        groups = list(digit_groups(tokens, start))
        plain = [c for c in found[:1] + groups if c.digits]
        found += groups
        for group in groups:
            found += carried_on(tokens, group.end, group.value, digits=True)
        for each in plain:
            found += suffixed(tokens, each)
    else:
        found += _pairs(tokens, start)
    spoken = list(_decimals(tokens, start, Fraction(0)))
    for whole in found:
        spoken += _decimals(tokens, whole.end, whole.value)
    for decimal in spoken:
        found.append(decimal)
        found += carried_on(tokens, decimal.end, decimal.value)
    return found
