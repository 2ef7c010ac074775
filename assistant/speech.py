"""Replies in another language: what the modules say in English, put into it sentence by sentence.

A language is a folder of catalogues in `assistant/replies/`: `[say]` holds whole sentences as the modules and the book
have them, `[parts]` what stands within their gaps, `[joins]` the links of lists, `same` words that are not changed. A
plain TOML catalogue, not gettext: nothing has to be compiled, no setting of the machine picks the language, and a
sentence that the rules have filled already, knowing no language, is found by its gaps.

    "{count} {count|runner|runners}, {decor_length} each." = "{count} {count|camino|caminos} de {decor_length}."

A gap takes any words, `{n}` and `{n2}` a number, `{one}` what is no list, `{colours}` names alone, `{said}` words left
as they are, `{words}` such words within a sentence, `{item}` such words that are no list; `{count|one|several}` goes by
the number in `count`. What has no entry is said in English.
"""

import heapq
import re
import tomllib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from pathlib import Path

from rules.record import record

REPLIES = Path(__file__).with_name("replies")
HOME = "en"  # the language that the modules and the book are written in
MOST_JOINED = 4  # sentences that one entry may hold
LONGEST = 2000  # letters of a text that is looked up
LONGEST_PART = 400  # letters of what is looked up by its gaps
MOST_KNOWN = 5000  # texts of gaps that are remembered

SHORT, LONG = "(.+?)", "(.+)"  # what a gap may hold
WORDS = r"((?:(?![.?!:] ).)+)"  # of one sentence
ONE = r"((?:(?!, | and | or ).)+)"  # no list
_KINDS = {"words": WORDS, "one": ONE, "item": ONE}
AS_SAID = ("said", "words", "item")  # gaps whose words are left as they are
_GAP = re.compile(r"\{([^{}]*)\}")
_NUMBER = re.compile(r"n\d*")
_ENDS = re.compile(r'(?<=[.?!])\s+(?=["A-Z0-9¿¡$£€¥])')
_WORD = re.compile(r"[^\W\d_]+")
_POINT = re.compile(r"(?:-|\d+\.) ")  # of a list
_QUOTED = re.compile(r'"[^"]*"')


@record
class Manner:
    """The language that is spoken by its code ("" for English), and names (of colours) that are never put into it."""

    language: str = ""
    names: frozenset[str] = frozenset()


_ENGLISH = Manner()
_manner: ContextVar[Manner] = ContextVar("manner", default=_ENGLISH)


@contextmanager
def speaking(language: str, names: frozenset[str] = frozenset()) -> Iterator[None]:
    """Say everything in a language."""
    before = _manner.set(Manner(language, names))
    try:
        yield
    finally:
        _manner.reset(before)


class Said(str):
    """A text that is in the language already: its parts were put into it one by one, or are somebody's own words."""

    __slots__ = ()


def language_spoken() -> str:
    """The code of the language that is spoken, as HTML names it."""
    return _manner.get().language or HOME


def spoken(text: str) -> str:
    """A text in the language that is spoken; a sentence that has no entry stays as it is."""
    manner = _manner.get()
    if not manner.language or len(text) > LONGEST or isinstance(text, Said):
        return text
    return " ".join(said or english for english, said in sentences(text, manner))


def spoken_line(line: str) -> str:
    """A line as it stands in a reply, where it is a whole sentence that was not wrapped."""
    manner = _manner.get()
    said = catalogue(manner.language).line(line, manner.names) if manner.language and line[:1].isupper() else None
    return line if said is None else said


def sentences(text: str, manner: Manner) -> list[tuple[str, str | None]]:
    """The sentences of a text, each with what it is in the language, None where that has no entry."""
    words = catalogue(manner.language)
    text = " ".join(text.split())
    point = _POINT.match(text)
    split = _ENDS.split(text[point.end() :] if point else text)
    out: list[tuple[str, str | None]] = [(point[0].strip(), point[0].strip())] if point else []
    at = 0
    while at < len(split):
        for end in range(min(at + MOST_JOINED, len(split)), at, -1):
            english = " ".join(split[at:end])
            said = words.say(english, manner.names)
            if said is not None:
                break
        out.append((english, said))
        at = end
    return out


@record
class Entry:
    """An English text with gaps, as a pattern, and what it is in the language.

    `literals` must all stand in a text; `gaps` names the groups of the pattern.
    """

    english: str
    said: str
    literals: tuple[str, ...]
    pattern: str
    gaps: tuple[str, ...]
    word: str  # the longest word that a text has to hold, "" where there is none

    def ways(self, text: str) -> Iterator[dict[str, str]]:
        """What the gaps may hold, the first as short as can be, then as long as can be; nothing where it is another."""
        if not all(literal in text for literal in self.literals):
            return
        found = _made(self.pattern).fullmatch(text)
        if found is None:
            return
        yield dict(zip(self.gaps, found.groups(), strict=True))
        if self.pattern.count(SHORT) > 1:
            longest = _made(self.pattern.replace(SHORT, LONG)).fullmatch(text)
            if longest is not None and longest.groups() != found.groups():
                yield dict(zip(self.gaps, longest.groups(), strict=True))


ByWord = Mapping[str, list[tuple[int, Entry]]]


class Catalogue:
    """The entries of one language, the most telling first.

    What a gap holds has to be put into the language as well, else its sentence is left in English: no mixture is said.
    """

    def __init__(self, say: Mapping[str, str], parts: Mapping[str, str], joins: Mapping[str, str], same: str) -> None:
        self.whole = _entries(say)
        self.parts = _entries(parts)
        self._whole, self._parts = _by_word(self.whole), _by_word(self.parts)
        self.joins = joins
        self.same = frozenset(same.split())
        self._known: dict[tuple[str, frozenset[str]], str | None] = {}
        self._sentences: dict[tuple[str, frozenset[str]], str | None] = {}

    def say(self, text: str, names: frozenset[str]) -> str | None:
        """A sentence in the language, None where it has no entry."""
        key = (text, names)
        if key not in self._sentences:
            if len(self._sentences) > MOST_KNOWN:
                self._sentences.clear()
            self._sentences[key] = self._sentence(text, names)
        return self._sentences[key]

    def _sentence(self, text: str, names: frozenset[str]) -> str | None:
        if not _WORD.search(text):
            return text
        plain = text.removesuffix(".")
        said = self._said(plain, self._whole, names) or self._part(plain, names)
        if said is None and plain[0].isupper():  # a reason of the book at the head of a line
            low = self._said(plain[0].lower() + plain[1:], self._whole, names)
            said = low and low[0].upper() + low[1:]
        if said is None:
            return None
        at_head = text != plain and not text[0].islower()  # "5 in balloons ..." may begin with a word in the language
        return (said[:1].upper() + said[1:] if at_head else said) + text[len(plain) :]

    def line(self, text: str, names: frozenset[str]) -> str | None:
        """A sentence alone, with nothing of a list or a size in it that might be half of another."""
        plain = text.removesuffix(".")
        said = self._said(plain, self._whole, names)
        return None if said is None else said + text[len(plain) :]

    def _part(self, text: str, names: frozenset[str]) -> str | None:
        """What stands in a gap, None where some of it has no entry."""
        key = (text, names)
        if key not in self._known:
            if len(self._known) > MOST_KNOWN:
                self._known.clear()
            self._known[key] = self._found(text, names)
        return self._known[key]

    def _found(self, text: str, names: frozenset[str]) -> str | None:
        if _QUOTED.fullmatch(text) or all(word in self.same or word in names for word in _WORD.findall(text)):
            return text
        return self._said(text, self._parts, names) or self._joined(text, names)

    def _are_names(self, text: str, names: frozenset[str]) -> bool:
        links = {word for link in self.joins for word in _WORD.findall(link)}
        return all(word in names or word in links for word in _WORD.findall(text))

    def _joined(self, text: str, names: frozenset[str]) -> str | None:
        """A list, both sides of one of its links."""
        if len(text) > LONGEST_PART:
            return None
        for link, said in self.joins.items():
            at = text.find(link)
            while at > 0:
                numbers = link.strip() == "," and not _WORD.search(text[:at])  # of "5, 11, 16 in balloons"
                head = None if numbers else self._part(text[:at], names)
                tail = self._part(text[at + len(link) :], names) if head is not None else None
                if head is not None and tail is not None:
                    return head + said + tail
                at = text.find(link, at + 1)
        return None

    def _said(self, text: str, entries: ByWord, names: frozenset[str]) -> str | None:
        if len(text) > LONGEST_PART:
            return None
        words = {"", *_WORD.findall(text)}
        for _, entry in heapq.merge(*(entries[word] for word in sorted(words) if word in entries)):
            for held in entry.ways(text):
                said = self._filled(entry.said, held, names)
                if said is not None:
                    return said
        return None

    def _filled(self, said: str, held: Mapping[str, str], names: frozenset[str]) -> str | None:
        out, last = "", 0
        for gap in _GAP.finditer(said):
            name, *forms = gap[1].split("|")
            text: str | None = held[name]
            if forms:
                text = forms[0] if text == "1" else forms[-1]
            elif name.startswith("colours") and not self._are_names(held[name], names):
                text = None
            elif not (name.startswith(AS_SAID) or _NUMBER.fullmatch(name)):
                text = self._part(held[name], names)
            if text is None:
                return None
            out += said[last : gap.start()] + text
            last = gap.end()
        return out + said[last:]


@cache
def _made(pattern: str) -> re.Pattern[str]:
    """The pattern of an entry, made when a text may be it: most are never asked for."""
    return re.compile(pattern)


def _entries(table: Mapping[str, str]) -> list[Entry]:
    return sorted((_entry(english, said) for english, said in table.items()), key=_telling)


def _by_word(entries: list[Entry]) -> ByWord:
    """Entries, with their places in the list, by the word that a text has to hold."""
    table: dict[str, list[tuple[int, Entry]]] = {}
    for place, entry in enumerate(entries):
        table.setdefault(entry.word, []).append((place, entry))
    return table


def _telling(entry: Entry) -> tuple[int, str]:
    return -sum(map(len, entry.literals)), entry.english


def _entry(english: str, said: str) -> Entry:
    english, said = english.removesuffix("."), said.removesuffix(".")
    pattern, last = "", 0
    gaps: list[str] = []
    literals: list[str] = []
    for gap in _GAP.finditer(english):
        literals.append(english[last : gap.start()])
        pattern += re.escape(literals[-1])
        name, *forms = gap[1].split("|")
        if forms:
            pattern += f"(?:{'|'.join(map(re.escape, forms))})"
        else:
            gaps.append(name)
            pattern += r"(-?[\d.,]*\d)" if _NUMBER.fullmatch(name) else _KINDS.get(name.rstrip("0123456789"), SHORT)
        last = gap.end()
    literals.append(english[last:])
    pattern += re.escape(literals[-1])
    words = _WORD.findall(_GAP.sub("\0", english).replace("\0", "\u00e6"))  # a gap may go on in letters
    word = max((word for word in words if "\u00e6" not in word), key=len, default="")
    return Entry(english, said, tuple(filter(None, literals)), pattern, tuple(gaps), word)


def gaps_of(text: str) -> set[str]:
    """The names of the gaps of a text, without forms of words."""
    return {gap.split("|")[0] for gap in _GAP.findall(text)}


@cache
def catalogue(language: str, folder: Path = REPLIES) -> Catalogue:
    """The catalogue of a language; an empty one where it has none."""
    tables: dict[str, dict[str, str]] = {"say": {}, "parts": {}, "joins": {}}
    same = ""
    for path in sorted((folder / language).glob("*.toml")):
        read = tomllib.loads(path.read_text(encoding="utf-8"))
        same += read.get("same", "") + " "
        for name, table in tables.items():
            table.update(read.get(name, {}))
    return Catalogue(tables["say"], tables["parts"], tables["joins"], same)
