"""Quantities in a text: every reading at a place, and the likeliest ones along a whole text."""

from collections.abc import Iterator, Sequence
from functools import cache, lru_cache
from itertools import chain

from grammar.numbers.clock import clock_at, stopwatch_at
from grammar.numbers.measures import measures_at, units_at
from grammar.numbers.money import currencies_at, money_at
from grammar.numbers.numerals import numerals_at
from grammar.numbers.quantity import Quantity, longest_first, place
from grammar.numbers.unit_words import money_words, unit_words
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token, scan

PUBLIC = frozenset({"number", "length", "money", "duration"})
ANOTHER = ("another", "-", "+", ":")  # "another tenner", "-$15", ":45"
CODE_MARKS = frozenset("-._")  # what holds a model number or the like together, "AB-12"


def quantities_at(tokens: Sequence[Token], i: int) -> list[Quantity]:
    """Every quantity, plain numbers included, that begins at token `i`, longest first. Never raises.

    Of readings equally long the likelier kind comes first: measures, then money, time of day, number ("pound" is money
    first). Where a text has two readings ("six foot six tables") both are there; `doubt` says what tells against one.
    """
    return longest_first(_readings(tokens, i)) if i < len(tokens) and may_begin(tokens[i]) else []


def may_begin(token: Token) -> bool:
    """Whether a quantity may begin with the token; most words begin none, which is told by the word alone."""
    return token.kind == "number" or token.lower in _openers()


@cache
def _openers() -> frozenset[str]:
    """The words and marks that quantities begin with."""
    numbers, units, money = number_words(), unit_words(), money_words()
    tables = (units.units, units.clock_named, money.signs, money.coins)
    words = (numbers.starters, numbers.parts, numbers.articles, units.one_of, map(str.lower, money.codes))
    return frozenset(chain(*(table.firsts for table in tables), *words, ANOTHER))


def _readings(tokens: Sequence[Token], i: int) -> Iterator[Quantity]:
    numerals = numerals_at(tokens, i)
    measures = list(measures_at(tokens, i, numerals))
    sure = [each for each in measures if each.doubt != "minutes" and each.kind not in ("mass", "temperature")]
    yield from sorted(sure, key=lambda each: each.kind != "length")  # "6ft2" is a height before it is an area
    yield from money_at(tokens, i, numerals)
    yield from measures
    yield from clock_at(tokens, i)
    for numeral in numerals:
        yield place(tokens, i, numeral.end, "number", numeral.value, "", form=numeral.form, vague=numeral.vague)


def read_quantities(text: str) -> list[Quantity]:
    """The numbers, lengths, amounts of money and durations of a text, in order, read without knowing what it is about.

    Where readings differ the longest is taken that the words around it allow. Never raises; time is linear in the text.
    """
    return list(_read(text))


@lru_cache(maxsize=128)
def _read(text: str) -> tuple[Quantity, ...]:
    tokens = scan(text)
    alone = _alone(tokens)
    if alone is not None:
        return (alone,)
    found: list[Quantity] = []
    at = 0
    while at < len(tokens):
        spoiled = _spoiled(tokens, at)
        if spoiled > at:
            at = spoiled
            continue
        best = _best(tokens, at)
        if best is None:
            at += 1
            continue
        if best.kind in PUBLIC:
            found.append(best)
        at = _past_rate(tokens, best)
    return tuple(found)


def _alone(tokens: Sequence[Token]) -> Quantity | None:
    """What a text means that holds nothing else: a coin's name, a unit of time, minutes and seconds on a stopwatch."""
    if not tokens or len(tokens) > 8:
        return None
    for each in money_at(tokens, 0):
        if each.doubt == "coin" and not each.form and each.stop == len(tokens):
            return each
    for end, unit in units_at(tokens, 0):
        if unit.kind == "duration" and unit.single and end == len(tokens) and unit.name != "s":
            return place(tokens, 0, end, "duration", unit.times, unit.name)
    watch = stopwatch_at(tokens, 0, fewest=2)
    if watch is not None and watch[0] == len(tokens):
        return place(tokens, 0, watch[0], "duration", watch[1], "s")
    return None


def _best(tokens: Sequence[Token], i: int) -> Quantity | None:
    code = _code(tokens, i)
    if code and tokens[i - 1].kind == "word":
        return None
    readings = quantities_at(tokens, i)
    if code:
        readings = [each for each in readings if each.kind == "number" and tokens[i - 1].lower == "-"]
    best = next((each for each in readings if _likely(tokens, each)), None)
    if best is not None and best.kind == "length" and best.doubt == "tail":
        times = (each for each in readings if each.kind == "duration" and each.stop == best.stop)
        return next(times, best)  # "2m30": without more to go by rather a time than a length
    return best


def _likely(tokens: Sequence[Token], each: Quantity) -> bool:
    """Whether the words around allow the reading."""
    words = unit_words()
    after = tokens[each.stop] if each.stop < len(tokens) else None
    if each.doubt in ("share", "coin", "preposition", "capital", "spoken clock"):
        return False
    if each.doubt == "tail" and after is not None:
        named = after.kind == "word" and after.lower not in words.no_noun
        return not named and not (after.kind == "number" or (after.glued and after.lower in "-/:"))
    if each.kind == "number" and each.stop == each.first + 1 and each.form == "words" and each.value == 1:
        return each.first == 0 or tokens[each.first - 1].lower not in number_words().before_pronoun
    return True


def _code(tokens: Sequence[Token], i: int) -> bool:
    """Whether the digits at `i` belong to a name that begins with letters, "AB-42", "m37"."""
    if tokens[i].kind != "number":
        return False
    at = i
    while at > 0 and tokens[at].glued:
        before = tokens[at - 1]
        if before.kind == "word":
            held = at > 1 and before.glued and (tokens[at - 2].kind == "number" or tokens[at - 2].lower in CODE_MARKS)
            if not held:
                known = before.lower in number_words().starters or before.lower == "x"
                return not known and not any(True for _ in currencies_at(tokens, at - 1, before=True))
            if tokens[at - 2].kind == "number":
                return False
        elif before.kind == "mark" and before.lower not in CODE_MARKS:
            return False
        at -= 1
    return False


def _spoiled(tokens: Sequence[Token], i: int) -> int:
    """Past numbers behind a stray comma or underscore, ",250", or "NaN": they are none; `i` where there are none."""
    stray = tokens[i].lower in (",", "_") and not tokens[i].glued and i + 1 < len(tokens) and tokens[i + 1].glued
    if not stray and tokens[i].lower not in number_words().not_numbers:
        return i
    at = i + 1
    while at < len(tokens) and tokens[at].kind == "number":
        at += 1
    return at


def _past_rate(tokens: Sequence[Token], each: Quantity) -> int:
    """Past "an hour" or "of a foot" behind a number, which is a rate or a share and no quantity of its own."""
    at = each.stop
    if at < len(tokens) and tokens[at].lower in number_words().of:
        at += 1
    if at + 1 < len(tokens) and tokens[at].lower in number_words().articles:
        for end, unit in units_at(tokens, at + 1):
            if unit.single:
                return end
    return each.stop
