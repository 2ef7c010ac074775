"""Text to tokens: words, digit numbers and marks, each with its place in the text.

Folding keeps one character for one character, so that places hold: typographic quotes and primes become ' and ",
dashes and the minus sign become -, full-width and styled letters and digits become plain ones (the compatibility
folding of Unicode Standard Annex 15, where it gives one character).
"""

import re
import unicodedata
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from grammar.record import record

Kind = Literal["word", "number", "mark"]

LONGEST_LITERAL = 40  # digits; a longer run is no quantity that anybody means, and is kept as a word

_FOLDED = {
    **dict.fromkeys("\u2018\u2019\u201a\u201b\u2032\u02b9\u02bc\u00b4`\uff07", "'"),
    **dict.fromkeys("\u201c\u201d\u201e\u201f\u2033\u02ba\uff02", '"'),
    **dict.fromkeys("\u2010\u2011\u2012\u2013\u2212\ufe63\uff0d", "-"),
    **dict.fromkeys("\u2044\u2215\uff0f", "/"),
    "\u00ba": "\u00b0",  # the ordinal sign typed for a degree sign
}


class _Fold(dict[int, str]):
    """A translation table that works out a character when it is first met."""

    def __missing__(self, code: int) -> str:
        char = chr(code)
        if char in _FOLDED:
            folded = _FOLDED[char]
        elif code < 128 or unicodedata.combining(char):
            folded = char
        elif unicodedata.category(char) in ("Cf", "Cc"):
            folded = " "  # joiners, direction marks and the like carry no meaning here
        elif unicodedata.decomposition(char).startswith("<super>"):
            folded = char  # a raised 2 is no digit
        else:
            plain = unicodedata.normalize("NFKC", char)
            folded = plain if len(plain) == 1 else char
        self[code] = folded
        return folded


_FOLD = _Fold()

# Fractions that Unicode has as one character, from the character database itself.
VULGAR = {
    chr(code): Fraction(unicodedata.numeric(chr(code))).limit_denominator(100)
    for code in (*range(0xBC, 0xBF), *range(0x2150, 0x215F), 0x2189)
}
_V = "".join(VULGAR)
_LETTER = "[^\\W\\d_²³]"

# Every alternative starts with a digit, a point or a fraction sign and never backs up over more than one digit group.
_TOKEN = re.compile(
    rf"""
    (?P<vulgar> [0-9]* [{_V}] )
  | (?P<fraction> [0-9]++ / [0-9]++ (?! [/0-9] | \.[0-9] ) )
  | (?P<grouped> [0-9]{{1,3}} (?: (?:,[0-9]{{3}})++ | (?:'[0-9]{{3}})++ ) (?![0-9]) (?:\.[0-9]++)?
               | [0-9]{{1,2}} (?:,[0-9]{{2}}(?=,))++ ,[0-9]{{3}} (?![0-9]) (?:\.[0-9]++)? )
  | (?P<pointed> [0-9]{{1,3}} (?: (?:\.[0-9]{{3}}){{2,}}+ (?![.0-9]) (?:,[0-9]++)?
                                | (?:\.[0-9]{{3}})++ ,[0-9]{{1,2}} (?![0-9]) ) )
  | (?P<plain> [0-9]++ (?:_[0-9]++)*+ (?:\.[0-9]++)? | (?<![^\W_])(?<!\.) \.[0-9]++ )
  | (?P<word> {_LETTER}++ (?:'{_LETTER}++)*+ )
  | (?P<mark> \S )
    """,
    re.VERBOSE,
)


@record
class Token:
    """One piece of the text.

    `text` as written; `lower` folded and in lower case; `start`, `end` the half-open place in the text;
    `glued` true where nothing stands between it and the token before; `value` only for a number.
    """

    text: str
    lower: str
    start: int
    end: int
    kind: Kind
    glued: bool
    value: Fraction | None = None
    foreign: bool = False  # a word of another language, whose spelling is not mended

    @property
    def whole(self) -> bool:
        """A number written with digits alone (grouped or not), neither a decimal nor a fraction."""
        return self.kind == "number" and self.lower.isdigit()

    @property
    def divided(self) -> bool:
        """A number written as a fraction, 3/8 or 2½."""
        return self.kind == "number" and not self.lower.replace(".", "", 1).isdigit()


def fold(text: str) -> str:
    """The text in the one spelling of quotes, dashes and letters that tokens are read in; same length."""
    return text.translate(_FOLD)


def scan(text: str) -> list[Token]:
    """The tokens of a text, in order, white space left out. Never raises; takes time linear in the text."""
    return list(_scanned(text))


def words_of(phrase: str) -> tuple[str, ...]:
    """The tokens of a phrase as lower-case words."""
    if phrase.isascii() and phrase.replace(" ", "").isalpha():
        return tuple(phrase.lower().split())  # what the scanner would come to, and nearly all phrases that are known
    return tuple(token.lower for token in scan(phrase))


@lru_cache(maxsize=128)  # a turn is cut for each that wants to know what it says
def _scanned(text: str) -> tuple[Token, ...]:
    folded = fold(text)
    tokens: list[Token] = []
    last_end = -1
    for match in _TOKEN.finditer(folded):
        start, end = match.span()
        shape = match.lastgroup or "mark"
        lower = match[0].lower()
        value: Fraction | None = None
        kind: Kind = "mark"
        if shape in ("word", "mark"):
            kind = "word" if shape == "word" else "mark"
        elif end - start > LONGEST_LITERAL:
            kind = "word"
        else:
            lower, value = _literal(shape, lower)
            kind = "word" if value is None else "number"
        tokens.append(Token(text[start:end], lower, start, end, kind, start == last_end, value))
        last_end = end
    return tuple(tokens)


def _literal(shape: str, written: str) -> tuple[str, Fraction | None]:
    """A digit literal in its plain spelling and its value; no value for a division by nothing."""
    if shape == "vulgar":
        whole = written[:-1]
        return written, VULGAR[written[-1]] + (int(whole) if whole else 0)
    if shape == "fraction":
        above, _, below = written.partition("/")
        return written, Fraction(int(above), int(below)) if int(below) else None
    if shape == "pointed":
        written = written.replace(".", "").replace(",", ".")
    plain = written.replace(",", "").replace("'", "").replace("_", "")
    return plain, Fraction(plain)
