"""Another language than the reader's own: a folder of data that puts its words into the reader's.

`language.toml` names the language and says how its numbers are made and which words weigh how much in telling it from
another; in the other files `[words]` maps words of the reader to the patterns that mean them, "|" between patterns:

    "table runner" = "camino{,s} de mesa | caminito{,s}"

"{a,b}" is a choice of endings, "#" any number and "@" any colour on both sides, "..." at the end what follows, kept as
it stands; a key "-" takes words that say nothing. Accents may be typed or left out. Keys of `colours.toml` are colours.
"""

import re
import tomllib
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from grammar.record import record
from grammar.tokens.scan import Token, scan
from grammar.word_files import WORDS

NUMBER, COLOUR, REST, NOTHING = "#", "@", "...", "-"
SLOTS = frozenset({NUMBER, COLOUR, REST})
MENDED = 5  # letters of the shortest word whose spelling is mended
LONGEST = 24  # words of one number
GROUP = 1000  # scales below it count within a group of digits ("hundred"), the others end one


# Words of the language, bare of accents, and the reader's words for them.
Phrase = tuple[tuple[str, ...], str]


@record
class Run:
    """A number found in a text: how it is written in digits, and the token after it."""

    digits: str
    end: int


@record
class Tongue:
    """One language, ready to be looked into.

    `weights` are of words that tell the language, 1 where none is given; `plain` words are read in any sentence.
    """

    code: str
    name: str
    called: tuple[tuple[str, ...], ...]
    cardinals: Mapping[str, int]
    scales: Mapping[str, int]
    joins: Mapping[str, Mapping[str, Any]]
    points: frozenset[str]
    comma: bool
    weights: Mapping[str, float]
    plain: frozenset[str]
    phrases: Mapping[str, tuple[Phrase, ...]]  # by their first word, longest first
    colours: frozenset[str]
    words: frozenset[str]
    long: tuple[str, ...]  # those whose spelling is mended to

    def is_plain(self, word: str) -> bool:
        """Whether a word is so much of this language that it is read in a sentence of another."""
        return word in self.plain

    def phrases_at(self, words: Sequence[str], at: int) -> Iterator[Phrase]:
        """The phrases that may begin at a word, longest first; a number may stand for the first word."""
        yield from self.phrases.get(words[at], ())
        if words[at][0].isdigit() or words[at] in self.cardinals or words[at] in self.scales:
            yield from self.phrases.get(NUMBER, ())

    def number_at(self, tokens: Sequence[Token], words: Sequence[str], at: int) -> Run | None:
        """The longest number that begins at a token, in words, in digits or in both ("2 mil")."""
        if tokens[at].kind == "number":
            decimal = self._decimal(tokens, at)
            if decimal is not None:
                return decimal
            start, end = tokens[at].value, at + 1
            if start is None or end >= len(words) or words[end] not in self.scales:
                return Run(tokens[at].lower, end)
        else:
            start, end = None, at
        value, end = self._counted(words, start, end)
        if end == at:
            return None
        digits = str(value)
        if end + 1 < len(words) and words[end] in self.points and words[end + 1] in self.cardinals:
            part, after = self._counted(words, None, end + 1)
            digits, end = f"{digits}.{part}", after
        return Run(digits, end)

    def _decimal(self, tokens: Sequence[Token], at: int) -> Run | None:
        """ "1,5" where a comma is the language's decimal sign, and no row of sizes goes on after it."""
        row = tokens[at : at + 3]
        if not self.comma or len(row) < 3 or not row[0].whole or row[1].lower != "," or not row[2].whole:
            return None
        glued = row[1].glued and row[2].glued and len(row[2].lower) < 3
        after = tokens[at + 3 : at + 5]
        listed = len(after) == 2 and after[1].kind == "number" and not _is_plain_word(after[0], self.joins)
        return None if listed or not glued else Run(f"{row[0].lower}.{row[2].lower}", at + 3)

    def _counted(self, words: Sequence[str], start: Fraction | None, at: int) -> tuple[int | Fraction, int]:
        """The value of number words from `at` on, and the word after them; `start` was counted before."""
        total: int | Fraction = 0
        group: int | Fraction | None = start
        least = 0  # the scale that ended the last group
        last = min(len(words), at + LONGEST)
        while at < last:
            word, joined = words[at], False
            join = self.joins.get(word)
            if join is not None and group is not None and join["above"] <= group % 100 and group % 10 == 0:
                if at + 1 >= len(words) or not 0 < self.cardinals.get(words[at + 1], 0) <= join["below"]:
                    break
                at, word, joined = at + 1, words[at + 1], True
            if word in self.cardinals:
                value = self.cardinals[word]
                if group is not None and (group % 10 ** len(str(value)) or not group or not value):
                    if joined:
                        at -= 1
                    break
                group = (group or 0) + value
            elif word in self.scales:
                scale = self.scales[word]
                if scale < GROUP:
                    group = (group if group is not None else 1) * scale
                elif least and scale >= least and group is not None:
                    total, group, least = (total + group) * scale, None, scale
                elif least and scale >= least:
                    total, least = total * scale, scale
                else:
                    total, group, least = total + (group if group is not None else 1) * scale, None, scale
            else:
                break
            at += 1
        whole = total + (group or 0)
        return (int(whole) if whole == int(whole) else whole), at


def bare(word: str) -> str:
    """A word in lower case without its accents; a lone accent stays as it is, so that a word is never empty."""
    if word.isascii():
        return word.lower()
    return "".join(c for c in unicodedata.normalize("NFD", word.lower()) if not unicodedata.combining(c)) or word


def read_tongue(folder: Path) -> Tongue:
    """The language of a folder; KeyError or ValueError where its files are not of the shape above."""
    about = tomllib.loads((folder / "language.toml").read_text(encoding="utf-8"))
    by_first: dict[str, list[Phrase]] = {}
    words: set[str] = set()
    colours: set[str] = set()
    for path in sorted(folder.glob("*.toml")):
        table = tomllib.loads(path.read_text(encoding="utf-8")).get("words", {})
        if path.name == "colours.toml":
            colours.update(table)
        for means, patterns in table.items():
            for pattern in patterns.split("|"):
                for phrase in _phrases(pattern, "" if means == NOTHING else means):
                    by_first.setdefault(phrase[0][0], []).append(phrase)
                    words.update(phrase[0])
    numbers = about["numbers"]
    cardinals = {bare(word): int(value) for word, value in numbers["cardinals"].items()}
    scales = {bare(word): int(value) for word, value in numbers["scales"].items()}
    every = frozenset(word for word in words if word.isalpha()) | cardinals.keys() | scales.keys()
    return Tongue(
        code=folder.name,
        name=about["name"],
        called=tuple(tuple(bare(word) for word in text.split()) for text in about["called"]),
        cardinals=cardinals,
        scales=scales,
        joins={bare(word): join for word, join in numbers.get("joins", {}).items()},
        points=frozenset(map(bare, numbers.get("points", ()))),
        comma=numbers.get("decimal_comma", False),
        weights={bare(word): float(weight) for word, weight in about.get("weights", {}).items()},
        plain=frozenset(map(bare, about.get("plain", ()))),
        phrases={first: tuple(sorted(found, key=_order)) for first, found in by_first.items()},
        colours=frozenset(colours),
        words=every,
        long=tuple(sorted(word for word in every if len(word) >= MENDED)),
    )


def _order(phrase: Phrase) -> tuple[int, int]:
    """The longest first; of two as long the one with more words of its own."""
    return -len(phrase[0]), sum(word in SLOTS for word in phrase[0])


def _is_plain_word(token: Token, joins: Mapping[str, object]) -> bool:
    return token.kind == "word" and token.lower not in joins


def _phrases(pattern: str, means: str) -> Iterator[Phrase]:
    for text in _spread(pattern.strip()):
        words = tuple(
            word
            for part in text.split()
            for word in ((part,) if part in SLOTS else tuple(bare(t.lower) for t in scan(part)))
        )
        if words:
            yield words, means


def _spread(pattern: str) -> Iterator[str]:
    """A pattern with each of its choices in turn."""
    found = re.search(r"\{([^{}]*)\}", pattern)
    if found is None:
        yield pattern
        return
    for choice in found[1].split(","):
        yield from _spread(pattern[: found.start()] + choice + pattern[found.end() :])


@cache
def tongues() -> tuple[Tongue, ...]:
    """Every other language, by its folder's name."""
    return _lent[0] if _lent else read_tongues(WORDS)


def read_tongues(folder: Path) -> tuple[Tongue, ...]:
    """The languages whose folders stand in a folder."""
    return tuple(read_tongue(path.parent) for path in sorted(folder.glob("*/language.toml")))


_lent: list[tuple[Tongue, ...]] = []


def lend_tongues(made: tuple[Tongue, ...]) -> None:
    """Take languages as `read_tongues` gave them in another process."""
    _lent[:] = [made]
    tongues.cache_clear()
