"""Balloons reported by their colours: "we used 410 navy and 450 gold" is 860 balloons."""

from collections.abc import Sequence
from fractions import Fraction

from grammar.tokens.lexicon import Lexicon
from grammar.tokens.scan import Token, scan

LINKS = frozenset({",", "and", "&", "plus"})


def summed(text: str, lexicon: Lexicon) -> str:
    """The text with each row of numbers before colours made one number of balloons; learning goes by all colours."""
    tokens = scan(text)
    out, done, at = "", 0, 0
    while at < len(tokens):
        end, total = _row(tokens, at, lexicon)
        if end > at:
            out += f"{text[done : tokens[at].start]}{total} balloons"
            done = tokens[end - 1].end
        at = max(end, at + 1)
    return out + text[done:]


def _row(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> tuple[int, Fraction]:
    """The end of "410 navy and 450 gold" and what it comes to; `at` where none begins."""
    end, total, first = at, Fraction(0), at
    while first + 1 < len(tokens):
        value, colour = tokens[first].value, lexicon.colour_end(tokens, first + 1)
        if value is None or colour == first + 1:
            break
        end, total = colour, total + value
        first = end
        while first < len(tokens) and tokens[first].lower in LINKS:
            first += 1
    return end, total
