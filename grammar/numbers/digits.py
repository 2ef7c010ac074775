"""Numbers in digits over more than one token (10 000, 1,3, 10^3, 1.2M), and what all whole numbers are read into."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from grammar.record import record
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token

MOST_GROUPS = 6  # groups of three digits set apart by spaces


LARGEST_POWER = 30


@record
class Cardinal:
    """A number that ends before token `end`. `scale` is the size that its last word named ("million"), else 1."""

    end: int
    value: Fraction
    digits: bool = False
    scale: int = 1


def word_at(tokens: Sequence[Token], i: int) -> str:
    """The folded token at `i`, "" past the end."""
    return tokens[i].lower if i < len(tokens) else ""


def after_hyphen(tokens: Sequence[Token], i: int) -> int:
    """The index past a hyphen that joins two words at `i`, else `i`."""
    if 0 < i < len(tokens) - 1 and tokens[i].lower == "-" and tokens[i + 1].kind == "word":
        return i + 1
    return i


def digit_groups(tokens: Sequence[Token], i: int) -> Iterator[Cardinal]:
    """Digits set apart by spaces (10 000), by a decimal comma (1,3), raised to a power, or with a letter (1.2M)."""
    token = tokens[i]
    if token.value is None:
        return
    at, digits = i + 1, token.lower
    while token.whole and len(token.text) <= 3 and token.value and at < len(tokens) and at - i < MOST_GROUPS:
        group = tokens[at]
        head = group.lower.partition(".")[0]
        if group.value is None or group.start - tokens[at - 1].end != 1 or len(head) != 3 or not head.isdigit():
            break
        digits += group.lower
        at += 1
        yield Cardinal(at, Fraction(digits), digits=True)
        if not group.whole:
            break
    if at > i + 1:
        yield from _comma(tokens, at, digits)
    yield from _comma(tokens, i + 1, token.lower)
    yield from _power(tokens, i)


def _comma(tokens: Sequence[Token], i: int, digits: str) -> Iterator[Cardinal]:
    """A comma close between digits: of decimals after a whole number, of groups after a point or in a fraction."""
    if i + 1 >= len(tokens) or tokens[i].lower != "," or not tokens[i].glued:
        return
    after = tokens[i + 1]
    more = word_at(tokens, i + 2) in (",", "/") and tokens[i + 2].glued
    if not after.glued or not after.whole or more or not after.text.isdigit():
        return
    if digits.isdigit():
        yield Cardinal(i + 2, Fraction(f"{digits}.{after.lower}"), digits=True)
    elif digits[-1].isdigit():
        yield Cardinal(i + 2, Fraction(digits + after.lower), digits=True)


def _power(tokens: Sequence[Token], i: int) -> Iterator[Cardinal]:
    """ "1.5e6", "10^3" and "2 x 10^3", with small whole exponents."""
    base = tokens[i].value
    if base is None:
        return
    at, factor = i + 1, Fraction(1)
    if word_at(tokens, at) in ("x", "*", "×", "·") and word_at(tokens, at + 1) == "10":
        at, factor, base = at + 2, base, Fraction(10)
    mark = word_at(tokens, at)
    if mark not in ("e", "^") or not tokens[at].glued or (mark == "e" and at > i + 1):
        return
    if mark == "e":
        factor, base = base, Fraction(10)
    at += 1
    sign = -1 if word_at(tokens, at) == "-" else 1
    if word_at(tokens, at) in ("-", "+"):
        at += 1
    if at < len(tokens) and tokens[at].whole and tokens[at].glued:
        exponent = tokens[at].value or Fraction(0)
        if exponent <= LARGEST_POWER and base < 10**6 and (base or sign > 0):
            yield Cardinal(at + 1, factor * base ** (sign * int(exponent)), digits=True)


def suffixed(tokens: Sequence[Token], plain: Cardinal) -> Iterator[Cardinal]:
    """Digits with a letter that multiplies them."""
    if plain.end < len(tokens):
        suffix = number_words().suffixes.get(tokens[plain.end].text)
        if suffix is not None and (tokens[plain.end].glued or suffix.apart):
            yield Cardinal(plain.end + 1, plain.value * suffix.times, digits=True)
