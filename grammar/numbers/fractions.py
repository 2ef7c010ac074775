"""Fractions in figures and words (3/8, 3/8ths, a half, three quarters), and the Numeral that all readings come as."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from grammar.numbers.cardinals import cardinals_at
from grammar.numbers.digits import Cardinal, after_hyphen, word_at
from grammar.record import record
from grammar.tokens.number_words import Part, number_words
from grammar.tokens.scan import Token


@record
class Numeral:
    """A number that ends before token `end`.

    `form` is digits, words, fraction, mixed, ratio, dozen, couple, few or several; `vague` where the speaker left the
    number open and `value` is only what the word most often means.
    """

    end: int
    value: Fraction
    form: str
    vague: bool = False


def fractions_at(tokens: Sequence[Token], i: int, cardinals: Sequence[Cardinal] | None = None) -> Iterator[Numeral]:
    """Fractions at `i`: 3/8, 3/8ths, 1 / 2, a half, three quarters, one twenty-fifth, a 1000th of a."""
    if i >= len(tokens):
        return
    words = number_words()
    token = tokens[i]
    if token.value is not None:
        yield from _written_fraction(tokens, i, token.value)
    if token.lower in words.articles:
        for end, part in parts_at(tokens, after_hyphen(tokens, i + 1)):
            if not part.plural:
                yield Numeral(end, Fraction(1, part.of), "fraction")
    elif token.lower in words.parts and words.parts[token.lower].bare:
        yield Numeral(i + 1, Fraction(1, words.parts[token.lower].of), "fraction")
    for cardinal in cardinals if cardinals is not None else cardinals_at(tokens, i):
        if cardinal.value.denominator == 1 and cardinal.value > 0:
            for end, part in parts_at(tokens, after_hyphen(tokens, cardinal.end)):
                if _agrees(int(cardinal.value), part):
                    yield Numeral(end, cardinal.value / part.of, "fraction")


def _written_fraction(tokens: Sequence[Token], i: int, value: Fraction) -> Iterator[Numeral]:
    words = number_words()
    after = word_at(tokens, i + 1)
    close = bool(after) and tokens[i + 1].glued
    if tokens[i].divided:
        if close and after in words.fraction_endings:
            yield Numeral(i + 2, value, "fraction")
        yield Numeral(i + 1, value, "fraction")
        return
    if not tokens[i].whole:
        return
    if after == "/" and i + 2 < len(tokens) and tokens[i + 2].whole:
        below = tokens[i + 2].value
        if below:
            yield Numeral(i + 3, value / below, "fraction")
    of_one = word_at(tokens, i + 2) in words.of and word_at(tokens, i + 3) in words.articles
    if close and after in words.ordinal_endings and of_one and value > 2:
        yield Numeral(i + 2, 1 / value, "fraction")


def parts_at(tokens: Sequence[Token], i: int) -> Iterator[tuple[int, Part]]:
    """Denominators at `i`, "twenty-first" before plain ones."""
    words = number_words()
    tens = words.cardinals.get(word_at(tokens, i), 0)
    if tens >= 20:
        at = after_hyphen(tokens, i + 1)
        unit = words.parts.get(word_at(tokens, at)) or words.unit_ordinals.get(word_at(tokens, at))
        if unit is not None and unit.of < 10 and not unit.bare:
            yield at + 1, Part(tens + unit.of, unit.plural)
    plain = words.parts.get(word_at(tokens, i))
    if plain is not None:
        yield i + 1, plain


def _agrees(numerator: int, part: Part) -> bool:
    """One third, two thirds, and the slip "two third" for small numbers, but never "twenty third"."""
    if numerator == 1:
        return not part.plural
    return part.plural or numerator < part.of <= 10
