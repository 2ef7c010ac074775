"""Amounts of money: a sign or code before or behind, names, coins, change ("twelve dollars and sixty")."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from grammar.numbers.digits import word_at
from grammar.numbers.fractions import Numeral, fractions_at
from grammar.numbers.measures import unit_links
from grammar.numbers.numerals import numerals_at
from grammar.numbers.quantity import Doubt, Quantity, place
from grammar.numbers.unit_words import money_words
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token


def money_at(tokens: Sequence[Token], i: int, numerals: Sequence[Numeral] | None = None) -> Iterator[Quantity]:
    """Every amount of money that begins at token `i`, in no set order; the unit is the ISO 4217 code."""
    yield from _sign_first(tokens, i)
    for numeral in numerals if numerals is not None else numerals_at(tokens, i):
        for at, _ in unit_links(tokens, numeral):
            yield from _number_first(tokens, i, numeral, at)
        yield from _number_first(tokens, i, numeral, _multiple(tokens, _dash(tokens, numeral.end))[0])
    yield from _no_number(tokens, i)


def currencies_at(tokens: Sequence[Token], i: int, *, before: bool) -> Iterator[tuple[int, str]]:
    """(end, code) of every sign, name or code at `i`; names only behind an amount (`before` false)."""
    words = money_words()
    if i >= len(tokens):
        return
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    of_the_next = not before and not tokens[i].glued and after is not None and after.glued and after.kind == "number"
    if not of_the_next:  # "a bag of 100 $17.99"
        yield from words.signs.find(tokens, i)
    if not before:
        yield from words.names.find(tokens, i)
    code = words.code(tokens[i])
    if code is None:
        return
    if code in words.wordlike and before and not (i + 1 < len(tokens) and tokens[i + 1].glued):
        return
    end = i + 1
    for sign_end, _ in words.signs.find(tokens, end):
        end = max(end, sign_end)
    yield end, code


def _dash(tokens: Sequence[Token], i: int) -> int:
    """Past the dash that stands for no cents, "5,-"."""
    return i + 2 if word_at(tokens, i) in (",", ".") and word_at(tokens, i + 1) == "-" else i


def _multiple(tokens: Sequence[Token], i: int) -> tuple[int, int]:
    """Past letters for thousands and millions, and what they multiply by."""
    factor = money_words().multiples.get(word_at(tokens, i), 0)
    if factor and (tokens[i].glued or len(tokens[i].text) > 1 or tokens[i].text in "kKbB"):
        return i + 1, factor
    return i, 1


def _amounts(tokens: Sequence[Token], i: int, code: str) -> Iterator[tuple[int, Fraction, Numeral]]:
    words = money_words()
    currency = words.currencies.get(code)
    for numeral in numerals_at(tokens, i):
        token = tokens[numeral.end - 1]
        if currency is not None and currency.point_groups and numeral.end == i + 1 and _point_group(token):
            yield numeral.end, numeral.value * 1000, numeral
        end, factor = _multiple(tokens, _dash(tokens, numeral.end))
        yield end, numeral.value * factor, numeral


def _point_group(token: Token) -> bool:
    """Written like 1.299, which where points set thousands apart is a thousand and more."""
    head, point, tail = token.lower.partition(".")
    return bool(point) and len(tail) == 3 and 0 < len(head) <= 3 and head != "0"


def _sign_first(tokens: Sequence[Token], i: int) -> Iterator[Quantity]:
    """ "$20", "US$9 and twelve", "EUR 125", "-$15"."""
    minus = tokens[i].lower == "-" and i + 1 < len(tokens) and tokens[i + 1].glued
    start = i + 1 if minus else i
    for end, code in currencies_at(tokens, start, before=True):
        if end >= len(tokens):
            continue
        for stop, value, numeral in _amounts(tokens, end, code):
            amount = -value if minus else value
            for refined_end, refined in _refined(tokens, stop, code):
                yield place(tokens, i, refined_end, "money", amount, refined, form=numeral.form, vague=numeral.vague)
                yield from _with_change(tokens, i, refined_end, amount, refined, numeral)


def _refined(tokens: Sequence[Token], i: int, code: str) -> Iterator[tuple[int, str]]:
    """What else may be said of the currency behind "$50": the code, the country, the name once more."""
    yield i, code
    if i >= len(tokens):
        return
    words = money_words()
    exact = words.code(tokens[i])
    if exact is not None and exact not in words.wordlike:
        yield i + 1, exact
    for end, country in words.behind.find(tokens, i):
        if tokens[i].text.isupper() and code == country:
            yield end, country
    for end, named in words.names.find(tokens, i):
        if named == code or code == "USD":
            yield end, named


def _number_first(tokens: Sequence[Token], i: int, numeral: Numeral, at: int) -> Iterator[Quantity]:
    """ "20 euros", "10k$", "12-cent", "five nickels"."""
    words = money_words()
    factor = 1
    if at < len(tokens) and at > numeral.end:
        _, factor = _multiple(tokens, _dash(tokens, numeral.end))
    for end, code in currencies_at(tokens, at, before=False):
        value = numeral.value * factor
        currency = words.currencies.get(code)
        if currency is not None and currency.point_groups and numeral.end == i + 1 and _point_group(tokens[i]):
            value *= 1000
        yield place(tokens, i, end, "money", value, code, form=numeral.form, vague=numeral.vague)
        yield from _with_change(tokens, i, end, value, code, numeral)
    if factor > 1:
        return
    for end, code in words.minor.find(tokens, at):
        if _minor_stands(tokens, at):
            yield place(tokens, i, end, "money", numeral.value / 100, code, form=numeral.form, vague=numeral.vague)
            break
    for end, (code, worth) in words.coins.find(tokens, at):
        doubt: Doubt = "coin" if tokens[at].lower in number_words().parts else ""
        value = numeral.value * worth / 100
        yield place(tokens, i, end, "money", value, code, form=numeral.form, vague=numeral.vague, doubt=doubt)


def _minor_stands(tokens: Sequence[Token], i: int) -> bool:
    """A letter for cents is small, and for some close behind the digits."""
    token = tokens[i]
    if len(token.text) == 1 and token.text.isupper():
        return False
    return token.glued or token.lower not in money_words().close


def _no_number(tokens: Sequence[Token], i: int) -> Iterator[Quantity]:
    """ "a dollar", "a penny", "a grand", "another tenner"; a coin's name alone."""
    words = money_words()
    here = word_at(tokens, i)
    article = here in number_words().articles or here == "another"
    at = i + 1 if article else i
    doubt: Doubt = "" if article else "coin"
    for end, (code, worth) in words.coins.find(tokens, at):
        if not word_at(tokens, at).endswith("s"):
            unsure: Doubt = "coin" if word_at(tokens, at) in number_words().parts else doubt
            yield place(tokens, i, end, "money", Fraction(worth, 100), code, doubt=unsure)
    if not article:
        return
    for end, code in words.names.find(tokens, at):
        if " ".join(token.lower for token in tokens[at:end]) in words.single_names:
            one = Numeral(end, Fraction(1), "")
            yield place(tokens, i, end, "money", one.value, code)
            yield from _with_change(tokens, i, end, one.value, code, one)
    for end, code in words.minor.find(tokens, at):
        if len(word_at(tokens, at)) > 1 and not word_at(tokens, at).endswith("s") and word_at(tokens, at) != "pence":
            yield place(tokens, i, end, "money", Fraction(1, 100), code)
            break


def _with_change(
    tokens: Sequence[Token], i: int, end: int, value: Fraction, code: str, numeral: Numeral
) -> Iterator[Quantity]:
    """The amount with its hundredths, named or not, or with a fraction: "15 dollars 50", "$20 and 43c"."""
    words = money_words()
    if value.denominator != 1:
        return
    linked = word_at(tokens, end) in words.links
    sign = -1 if value < 0 else 1
    if linked and word_at(tokens, end) != ",":
        for part in fractions_at(tokens, end + 1):
            if part.value < 1:
                yield place(tokens, i, part.end, "money", value + sign * part.value, code, form=numeral.form)
    at = end + 1 if linked else end
    if at >= len(tokens):
        return
    for change in numerals_at(tokens, at):
        if change.value <= 0 or change.vague or change.form not in ("digits", "words"):
            continue
        total = value + sign * change.value / 100
        hyphen = change.end + 1 if word_at(tokens, change.end) == "-" else change.end
        for stop, of in words.minor.find(tokens, hyphen):
            if (of == code or _shares_minor(tokens, hyphen, code)) and _minor_stands(tokens, hyphen):
                yield place(tokens, i, stop, "money", total, code, form=numeral.form)
        if change.value < 100 and change.value.denominator == 1 and word_at(tokens, end) != ",":
            yield place(tokens, i, change.end, "money", total, code, form=numeral.form, doubt="tail")


def _shares_minor(tokens: Sequence[Token], i: int, code: str) -> bool:
    return any(owner == code for _, owner in money_words().minor.find(tokens, i))
