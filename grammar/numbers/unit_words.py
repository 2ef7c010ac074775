"""Units, money and clock words: words/units.toml and words/money.toml as tables found by their first word."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any, Generic, TypeVar

from grammar.record import record
from grammar.tokens.scan import Token, words_of
from grammar.word_files import load_words

T = TypeVar("T")


class PhraseTable(Generic[T]):
    """Phrases and what they mean. The same phrase may mean several things; the first added comes first."""

    def __init__(self, rows: Iterable[tuple[str, T]]) -> None:
        self._by_first: dict[str, list[tuple[tuple[str, ...], bool, T]]] = {}
        for phrase, meaning in rows:
            words = words_of(phrase)
            close = len(words) > 1 and " " not in phrase
            self._by_first.setdefault(words[0], []).append((words, close, meaning))
        for entries in self._by_first.values():
            entries.sort(key=lambda entry: -len(entry[0]))

    @property
    def firsts(self) -> frozenset[str]:
        """The words that phrases begin with."""
        return frozenset(self._by_first)

    def find(self, tokens: Sequence[Token], i: int) -> Iterable[tuple[int, T]]:
        """(end, meaning) of every phrase at token `i`, longest first. One written without spaces must stand so."""
        entries = self._by_first.get(tokens[i].lower) if i < len(tokens) else None
        return self._standing(entries, tokens, i) if entries else ()  # most words begin none

    @staticmethod
    def _standing(
        entries: Iterable[tuple[tuple[str, ...], bool, T]], tokens: Sequence[Token], i: int
    ) -> Iterator[tuple[int, T]]:
        for words, close, meaning in entries:
            end = i + len(words)
            if end <= len(tokens) and all(
                tokens[i + k].lower == words[k] and (tokens[i + k].glued or not close) for k in range(1, len(words))
            ):
                yield end, meaning


@record
class Unit:
    """What a unit's word means: `times` of the pint unit `name`; `single` for the name of one of it."""

    kind: str
    name: str
    times: Fraction
    single: bool = False
    word: str = ""


@record
class Tail:
    """What a bare number behind a unit counts: inches behind feet, minutes behind hours."""

    minor: str
    below: int
    fraction: bool = False
    digits: int = 0


@dataclass(frozen=True)
class UnitWords:
    """The tables of words/units.toml."""

    units: PhraseTable[Unit]
    sizes: dict[str, dict[str, Fraction]]
    tails: dict[str, Tail]
    between: frozenset[str]
    one_of: frozenset[str]
    links: frozenset[str]
    close: frozenset[str]
    cased: dict[str, str]
    after_preposition: frozenset[str]
    after_size: frozenset[str]
    no_noun: frozenset[str]
    of: tuple[tuple[str, ...], ...]
    ruled: frozenset[int]
    clock: dict[str, PhraseTable[int]]
    clock_named: PhraseTable[int]


def _unit_rows(blocks: Sequence[dict[str, Any]]) -> Iterator[tuple[str, Unit]]:
    for block in blocks:
        kind, name, times = block["kind"], block["unit"], Fraction(block.get("times", 1))
        for key in ("one", "many", "short"):
            for word in block[key]:
                yield word, Unit(kind, name, times, key == "one", word)


@cache
def unit_words() -> UnitWords:
    """The tables of units. Read once."""
    data = load_words("units.toml")
    words: dict[str, Any] = data["words"]
    clock: dict[str, Any] = data["clock"]
    return UnitWords(
        units=PhraseTable(_unit_rows(data["units"])),
        sizes={kind: {unit: Fraction(size) for unit, size in row.items()} for kind, row in data["sizes"].items()},
        tails={
            row["unit"]: Tail(row["minor"], row["below"], row.get("fraction", False), row.get("digits", 0))
            for row in data["tails"]
        },
        between=frozenset(words["between"]),
        one_of=frozenset(words["one_of"]),
        links=frozenset(words["links"]),
        close=frozenset(words["close"]),
        cased=words["cased"],
        after_preposition=frozenset(words["after_preposition"]),
        after_size=frozenset(words["after_size"]),
        no_noun=frozenset(words["no_noun"]),
        of=tuple(tuple(phrase) for phrase in words["of"]),
        ruled=frozenset(words["ruled"]),
        clock={
            key: PhraseTable((phrase, sign) for phrase in clock[key])
            for key, sign in (("am", 0), ("pm", 12), ("sharp", 0), ("past", 1), ("to", -1), ("minutes", 1), ("span", 0))
        },
        clock_named=PhraseTable(clock["named"].items()),
    )


@record
class Currency:
    """One currency, by its ISO 4217 code."""

    code: str
    point_groups: bool = False


@dataclass(frozen=True)
class MoneyWords:
    """The tables of words/money.toml; coins are (code, hundredths)."""

    currencies: dict[str, Currency]
    signs: PhraseTable[str]
    names: PhraseTable[str]
    single_names: frozenset[str]
    minor: PhraseTable[str]
    coins: PhraseTable[tuple[str, int]]
    behind: PhraseTable[str]
    multiples: dict[str, int]
    links: frozenset[str]
    close: frozenset[str]
    codes: frozenset[str]
    spoken: frozenset[str]
    wordlike: frozenset[str]

    def code(self, token: Token) -> str | None:
        """The ISO 4217 code that a token is: in capitals (a slip at the end forgiven), or a well-known one."""
        upper = token.lower.upper()
        capital = len(token.text) == 3 and token.text[:2].isupper()
        return upper if upper in self.codes and (capital or token.lower in self.spoken) else None


@cache
def money_words() -> MoneyWords:
    """The tables of money. Read once."""
    data = dict(load_words("money.toml"))
    words: dict[str, Any] = data.pop("words")

    def rows(key: str) -> list[tuple[str, str]]:
        return [(phrase, code) for code, block in data.items() for phrase in block.get(key, [])]

    return MoneyWords(
        currencies={code: Currency(code, block.get("point_groups", False)) for code, block in data.items()},
        signs=PhraseTable(rows("signs")),
        names=PhraseTable(rows("names")),
        single_names=frozenset(phrase for phrase, _ in rows("names") if not phrase.endswith("s")),
        minor=PhraseTable(rows("minor")),
        coins=PhraseTable(
            (phrase, (code, worth)) for code, block in data.items() for phrase, worth in block.get("coins", {}).items()
        ),
        behind=PhraseTable(rows("behind")),
        multiples=words["multiples"],
        links=frozenset(words["links"]),
        close=frozenset(words["close"]),
        codes=frozenset(words["codes"].split()),
        spoken=frozenset(words["spoken"]),
        wordlike=frozenset(words["wordlike"]),
    )
