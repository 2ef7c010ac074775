"""Times of day: 14:30, 2pm, half seven, quarter past two, ten to five, ten o'clock, noon."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from grammar.numbers.cardinals import cardinals_at
from grammar.numbers.digits import after_hyphen, word_at
from grammar.numbers.quantity import Doubt, Quantity, place
from grammar.numbers.unit_words import unit_words
from grammar.tokens.number_words import magnitude, number_words
from grammar.tokens.scan import Token

NOON = 12
CLOCK_FIELDS = (Fraction(1), Fraction(60), Fraction(3600), Fraction(86400))  # seconds in s, min, h, d


def clock_at(tokens: Sequence[Token], i: int) -> Iterator[Quantity]:
    """Every time of day that begins at token `i`, in minutes after midnight."""
    for end, minutes in unit_words().clock_named.find(tokens, i):
        yield place(tokens, i, end, "clock", Fraction(minutes), "24 h")
    for end, hour, minute, doubt in _times(tokens, i):
        yield from _with_half(tokens, i, end, hour, minute, doubt)


def _times(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, int, int, Doubt | None]]:
    """(end, hour, minute, doubt); a doubt of None asks for am, pm or o'clock to follow."""
    yield from _digital(tokens, i)
    yield from _relative(tokens, i)
    hour = _whole(tokens, i)
    if hour is None or not 0 <= hour <= 24:
        return
    if 1 <= hour <= NOON:
        yield i + 1, hour, 0, None
        for end, minute in _minutes(tokens, i + 1):
            spoken = tokens[i].kind == "word"
            yield end, hour, minute, "spoken clock" if spoken else None


def _digital(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, int, int, Doubt | None]]:
    token = tokens[i]
    if token.value is None or token.divided:
        return
    if token.whole and word_at(tokens, i + 1) == ":" and i + 2 < len(tokens):
        minute = tokens[i + 2]
        close = tokens[i + 1].glued and minute.glued
        more = word_at(tokens, i + 3) == ":" and tokens[i + 3].glued
        if close and not more and minute.whole and len(minute.text) == 2 and token.value <= 24:
            yield i + 3, int(token.value), int(minute.value or 0), ""
    hour, point, after = token.lower.partition(".")
    if point and hour.isdigit() and len(hour) <= 2 and len(after) == 2:
        yield i + 1, int(hour), int(after), None


def _relative(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, int, int, Doubt | None]]:
    """ "half seven" and "half past seven" (7:30), "quarter to two", "ten past five"."""
    words = unit_words().clock
    at = i + 1 if word_at(tokens, i) in number_words().articles else i
    part = number_words().parts.get(word_at(tokens, at))
    minute = _whole(tokens, at)
    if part is not None and part.bare and not part.plural:
        end, minutes, named = at + 1, 60 // part.of, True
    elif minute is not None and 0 < minute < 60 and at == i:
        counts = [c for c in cardinals_at(tokens, at) if c.value.denominator == 1 and 0 < c.value < 60]
        best = max(counts, key=lambda c: c.end, default=None)
        if best is None:  # "1/1"
            return
        stop = next((stop for stop, _ in words["minutes"].find(tokens, best.end)), best.end)
        end, minutes, named = stop, int(best.value), stop > best.end
    else:
        return
    hour_at, sign = end, 0
    for key in ("past", "to"):
        for stop, direction in words[key].find(tokens, end):
            hour_at, sign = stop, direction
    hour = _whole(tokens, hour_at) if hour_at < len(tokens) else None
    if sign < 0 and i and any(words["span"].find(tokens, i - 1)):
        return  # "from 5 till 10"
    if hour is None or not 1 <= hour <= NOON or (sign == 0 and (minutes != 30 or at != i or part is None)):
        return
    total = (hour * 60 + (sign or 1) * minutes) % 720
    if named or minutes % 5 == 0:  # nobody says "seven to ten" of a clock
        doubt: Doubt = "" if named or sign > 0 else "spoken clock"
        yield hour_at + 1, total // 60 or NOON, total % 60, doubt


def _minutes(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, int]]:
    """Minutes of two figures behind the hour: "six thirty", "six oh five", "6 30"."""
    if i >= len(tokens):
        return
    token = tokens[i]
    if token.lower in number_words().zero_letters:
        unit = _whole(tokens, after_hyphen(tokens, i + 1))
        if unit is not None and 0 < unit < 10:
            yield after_hyphen(tokens, i + 1) + 1, unit
    elif token.kind == "word" or len(token.text) == 2:
        for cardinal in cardinals_at(tokens, after_hyphen(tokens, i)):
            if 10 <= cardinal.value < 60 and cardinal.value.denominator == 1:
                yield cardinal.end, int(cardinal.value)


def _whole(tokens: Sequence[Token], i: int) -> int | None:
    value = magnitude(tokens[i]) if i < len(tokens) else None
    return int(value) if value is not None and value.denominator == 1 else None


def _with_half(
    tokens: Sequence[Token], i: int, end: int, hour: int, minute: int, doubt: Doubt | None
) -> Iterator[Quantity]:
    """The time with its half of the day, where one is said."""
    words = unit_words().clock
    if minute > 59 or hour > 24:
        return
    sharp = next((stop for stop, _ in words["sharp"].find(tokens, end)), 0) if minute == 0 else 0
    if hour <= NOON:
        for table in ("am", "pm"):
            for stop, plus in words[table].find(tokens, sharp or end):
                value = (hour % NOON + plus) * 60 + minute
                yield place(tokens, i, stop, "clock", Fraction(value), "24 h")
    if sharp or doubt is not None:
        sure = hour > NOON or hour == 0 or (tokens[i].text.startswith("0") and tokens[i].kind == "number")
        value = hour % 24 * 60 + minute
        yield place(tokens, i, sharp or end, "clock", Fraction(value), "24 h" if sure else "12 h", doubt=doubt or "")


def stopwatch_at(tokens: Sequence[Token], i: int, fewest: int = 3) -> tuple[int, Fraction] | None:
    """(end, seconds) of a time in `fewest` or more fields, [[d:]h:]m:s or :s; seconds may have decimals."""
    fields: list[Fraction] = []
    at = i
    if word_at(tokens, i) == ":":
        fields.append(Fraction(0))
        at = i + 1
    while at < len(tokens) and len(fields) < len(CLOCK_FIELDS):
        token = tokens[at]
        if token.value is None or token.divided or (fields and not token.glued):
            return None
        fields.append(token.value)
        at += 1
        if not token.whole or word_at(tokens, at) != ":" or not tokens[at].glued:
            break
        at += 1
    if len(fields) < fewest or word_at(tokens, at - 1) == ":":
        return None
    return at, sum((value * size for value, size in zip(reversed(fields), CLOCK_FIELDS, strict=False)), Fraction(0))
