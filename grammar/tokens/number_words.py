"""The number words of one language, read from words/numbers.toml into tables that can be looked up at once."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from grammar.record import record
from grammar.tokens.scan import Token
from grammar.word_files import load_words


@record
class Lot:
    """A word that counts in lots: a dozen, a pair."""

    size: int
    alone: bool = False
    vague: bool = False
    form: str = "dozen"
    before_scale: bool = False


@record
class Vague:
    """A word that leaves the number open."""

    value: int
    form: str
    bare: bool = False


@record
class Part:
    """A denominator: `plural` for "thirds", `bare` where it may stand without a numerator."""

    of: int
    plural: bool
    bare: bool = False


@record
class Suffix:
    """A letter that multiplies the digits before it."""

    times: int
    apart: bool = False


@dataclass(frozen=True)
class NumberWords:
    """All tables of the language; words are in lower case, suffixes in their own."""

    cardinals: dict[str, int]
    hundreds: frozenset[str]
    scales: dict[str, int]
    lots: dict[str, Lot]
    vague: dict[str, Vague]
    ones: dict[str, int]
    parts: dict[str, Part]
    unit_ordinals: dict[str, Part]
    suffixes: dict[str, Suffix]
    articles: frozenset[str]
    joins: frozenset[str]
    point: frozenset[str]
    minus: frozenset[str]
    over: tuple[tuple[str, ...], ...]
    of: frozenset[str]
    zero_letters: frozenset[str]
    fraction_endings: frozenset[str]
    ordinal_endings: frozenset[str]
    before_pronoun: frozenset[str]
    not_numbers: frozenset[str]
    starters: frozenset[str]


def _with_slips(table: dict[str, Any], slips: dict[str, str]) -> dict[str, Any]:
    return table | {wrong: table[right] for wrong, right in slips.items() if right in table}


def _parts(block: dict[str, dict[str, Any]]) -> dict[str, Part]:
    found: dict[str, Part] = {}
    for word, row in block.items():
        found[word] = Part(row["of"], plural=False, bare=row.get("bare", False))
        found[row["many"]] = Part(row["of"], plural=True)
    return found


@cache
def number_words(name: str = "numbers.toml") -> NumberWords:
    """The tables of one file of grammar/words. Read once."""
    data = load_words(name)
    slips: dict[str, str] = data["slips"]
    small: dict[str, list[Any]] = data["small_words"]
    cardinals = _with_slips(data["cardinals"], slips)
    scales = {word: int(size) for word, size in _with_slips(data["scales"], slips).items()}
    hundreds = frozenset(_with_slips(data["hundreds"], slips))
    lots = {
        word: Lot(
            row["of"],
            row.get("alone", False),
            row.get("vague", False),
            row.get("form", "dozen"),
            row.get("before_scale", False),
        )
        for word, row in _with_slips(data["lots"], slips).items()
    }
    vague = {word: Vague(row["of"], row["form"], row.get("bare", False)) for word, row in data["vague"].items()}
    parts = _with_slips(_parts(data["denominators"]), slips)
    minus = frozenset(small["minus"])
    articles = frozenset(small["articles"])
    points = frozenset(small["point"])
    letters = frozenset(small["zero_letters"])
    starters = {"-", "+", *cardinals, *scales, *hundreds, *lots, *vague, *data["ones"], *parts, *data["unit_ordinals"]}
    return NumberWords(
        cardinals=cardinals,
        hundreds=hundreds,
        scales=scales,
        lots=lots,
        vague=vague,
        ones=data["ones"],
        parts=parts,
        unit_ordinals=_parts(data["unit_ordinals"]),
        suffixes={word: Suffix(row["times"], row.get("apart", False)) for word, row in data["suffixes"].items()},
        articles=articles,
        joins=frozenset(small["and"]),
        point=points,
        minus=minus,
        over=tuple(tuple(words) for words in small["over"]),
        of=frozenset(small["of"]),
        zero_letters=letters,
        fraction_endings=frozenset(small["fraction_endings"]),
        ordinal_endings=frozenset(small["ordinal_endings"]),
        before_pronoun=frozenset(small["before_pronoun"]),
        not_numbers=frozenset(small["not_numbers"]),
        starters=frozenset(starters | articles | minus | points | letters),
    )


def magnitude(token: Token) -> Fraction | None:
    """The value of a token that is one plain number in digits or one number word; None for any other."""
    if token.value is not None:
        return token.value
    word = number_words().cardinals.get(token.lower)
    return None if word is None else Fraction(word)
