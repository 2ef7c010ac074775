"""All words that mean something to the reader, found by their first word, longest first."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from functools import cache, cached_property

from grammar.record import record
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token, words_of
from grammar.tokens.spelling import Speller, beside, nearest
from grammar.vocabulary import Vocabulary
from grammar.word_files import load_words, own_words, word_list

HYPHENS = frozenset("-‐‑–")


@record
class Entry:
    """Words that stand for one term."""

    words: tuple[str, ...]
    type: str
    value: object


@record
class Match:
    """An entry found in a text; `end` is exclusive."""

    entry: Entry
    end: int


def spell(text: str) -> tuple[str, ...]:
    """A phrase as the tuple of lower-case words that the scanner makes of it, hyphens left out."""
    return tuple(word for word in words_of(text) if word not in HYPHENS)


def owner(word: str) -> str:
    """ "table" of "table's", "" where the word is no possessive."""
    return word[:-2] if word.endswith("'s") else ""


@cache
def order_words() -> frozenset[str]:
    """Every word of the patterns of orders.toml: none of them is a slip of another."""
    texts = " ".join(text for table in load_words("orders.toml").values() for text in table["say"])
    return frozenset(re.split(r"[ |?]+", texts))


class Lexicon:
    """Speech words and the trade's vocabulary together."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        speech = load_words("speech.toml")
        self.near: Mapping[str, object] = speech["near"]
        self._by_first: dict[str, list[Entry]] = {}
        self._near_names: dict[str, list[str]] = {}
        self._near_colours: dict[str, str | None] = {}
        for kind, values in speech.items():
            if kind not in {"near", "least", "own_language"}:
                for value, phrases in values.items():
                    self._add(kind, value, phrases)
        self._add_trade(vocabulary)
        for entries in self._by_first.values():
            entries.sort(key=lambda entry: -len(entry.words))
        self._known = (
            word_list("filler") | word_list("common") | word_list("props") | frozenset(self._by_first) | order_words()
        )
        self._mendable = self._single_words()
        lengths = [block for block in load_words("units.toml")["units"] if block["kind"] == "length"]
        units = {word for block in lengths for word in (*block["one"], *block["many"])} - set(self._mendable)
        self._speller = Speller(
            (*self._mendable, *sorted(units)), self.every_word, number_words().starters, self._meaning
        )

    def _add(self, kind: str, value: object, phrases: Iterable[str]) -> None:
        for phrase in phrases:
            words = spell(phrase)
            if words:
                self._by_first.setdefault(words[0], []).append(Entry(words, kind, value))

    def _add_trade(self, vocabulary: Vocabulary) -> None:
        for piece in vocabulary.pieces:
            self._add("PIECE", piece.kind, piece.words)
        for item in vocabulary.furniture:
            self._add("TABLE", item.kind, item.words)
            for shape, phrases in item.shapes.items():
                self._add("SHAPE", shape, phrases)
        self._add("COLOUR", None, vocabulary.colours)
        for fact in vocabulary.facts:
            if fact.type == "choice":
                for choice, phrases in fact.choices.items():
                    self._add("CHOICE", (fact.id, choice), phrases)
            elif fact.type == "flag":
                self._add("FLAG", (fact.id, True), (*fact.words, *fact.choices.get("true", ())))
                self._add("FLAG", (fact.id, False), fact.choices.get("false", ()))
            elif fact.type in {"quantity", "range", "clock"}:
                self._add("LABEL", fact.id, fact.words)
                for value, phrases in fact.choices.items():  # words that mean a value: "just to the floor"
                    self._add("CHOICE", (fact.id, float(value)), phrases)

    def _meaning(self, word: str) -> object:
        """What a single word stands for, so that two spellings of one thing are no tie."""
        return next(((e.type, e.value) for e in self._by_first.get(word, ()) if len(e.words) == 1), word)

    def _single_words(self) -> tuple[str, ...]:
        """Words that a slip of the fingers may be mended to: those of pieces, colours, choices, flags and labels."""
        kinds = {"PIECE", "TABLE", "SHAPE", "COLOUR", "CHOICE", "FLAG", "LABEL", "BALLOON"}
        return tuple(
            sorted(
                {
                    word
                    for es in self._by_first.values()
                    for e in es
                    if e.type in kinds
                    for word in e.words
                    if len(word) > 3 and word not in self.vocabulary.lent
                }
            )
        )

    def spelt(self, tokens: Sequence[Token]) -> list[Token]:
        """The tokens with slips of the fingers mended; names, and words of another language, stay as they are."""
        return [self._spelt(token) for token in tokens]

    def _spelt(self, token: Token) -> Token:
        word = token.lower
        if token.kind != "word" or token.foreign or word in self._known or word in self.vocabulary.lent:
            return token
        mended = self._speller.mend(word)
        if mended is None:
            return token
        name = token.text.istitle() and token.start > 0 and (mended not in self._mendable or mended[0] != word[0])
        return token if name else replace(token, lower=mended)

    @property
    def mendable(self) -> tuple[str, ...]:
        """The words that a slip may be mended to."""
        return self._mendable

    def is_everyday(self, word: str) -> bool:
        """Whether a word is known, of the trade or not, so that it is no slip."""
        return word in self._known

    def colour_end(self, tokens: Sequence[Token], start: int) -> int:
        """The end of "light blue", "dusty sage green" or "navy blue" from `start` on; `start` where none begins."""
        at = start
        while at + 1 < len(tokens) and tokens[at].lower in self.vocabulary.colour_mods:
            at += 1
        end = self._colour_name(tokens, at)
        return end if end > at else start

    def _colour_name(self, tokens: Sequence[Token], at: int) -> int:
        longest = at
        for entry in self._by_first.get(tokens[at].lower, ()):
            if entry.type == "COLOUR":
                longest = max(longest, self._follow(tokens, at, entry.words))
        if at + 1 < len(tokens) and (tokens[at].lower, tokens[at + 1].lower) in self.vocabulary.colour_pairs:
            longest = max(longest, at + 2)
        return longest

    @cached_property
    def names(self) -> Mapping[str, str]:
        """Names of one word, of pieces, tables, shapes and colours, with their type."""
        kinds = {"PIECE", "TABLE", "SHAPE", "COLOUR"}
        entries = (e for es in self._by_first.values() for e in es if e.type in kinds and len(e.words) == 1)
        return {e.words[0]: e.type for e in entries if e.words[0] not in self.vocabulary.lent}

    @cached_property
    def _by_tail(self) -> Mapping[str, list[str]]:
        """Those names by what follows their first letter."""
        tails: dict[str, list[str]] = {}
        for name in self.names:
            tails.setdefault(name[1:], []).append(name)
        return tails

    def near_names(self, word: str) -> list[str]:
        """The names that differ in the first letter by a neighbouring key, or by two letters that changed places."""
        if word not in self._near_names:
            swaps = (word[:i] + word[i + 1] + word[i] + word[i + 2 :] for i in range(len(word) - 1))
            missed = [name for name in self._by_tail.get(word[1:], ()) if beside(name, word)]
            self._near_names[word] = [*missed, *(name for name in swaps if name != word and name in self.names)]
        return self._near_names[word]

    def near_colour(self, word: str) -> str | None:
        """The colour of one word that is nearest to a strange one which can only be a colour; None where two are."""
        if word not in self._near_colours:
            colours = [name for name, kind in self.names.items() if kind == "COLOUR"]
            self._near_colours[word] = nearest(word, colours, self._meaning, strict=False)
        return self._near_colours[word]

    @cached_property
    def colour_words(self) -> frozenset[str]:
        """Each word of a name of a colour."""
        named = (*self.vocabulary.colours, *self.vocabulary.colour_mods, *map(" ".join, self.vocabulary.colour_pairs))
        return frozenset(word for name in named for word in name.split())

    @cached_property
    def _every_word(self) -> frozenset[str]:
        trade = {word for entries in self._by_first.values() for entry in entries for word in entry.words}
        return (own_words() | trade | self._known) - self.vocabulary.lent

    def every_word(self) -> frozenset[str]:
        """All words of the reader's own language: those of its files and those of the trade."""
        return self._every_word

    def is_filler(self, word: str) -> bool:
        """Whether a word may be passed over."""
        return word in word_list("filler") or owner(word) in word_list("filler")

    def matches(self, tokens: Sequence[Token], start: int) -> list[Match]:
        """Entries that begin at `start`, longest first."""
        found = list(self._exact(tokens, start, tokens[start].lower))
        if not found and (base := owner(tokens[start].lower)):
            found = [m for m in self._exact(tokens, start, base) if m.entry.type in {"PIECE", "TABLE", "LABEL"}]
        return found

    def _exact(self, tokens: Sequence[Token], start: int, first: str) -> Iterable[Match]:
        for entry in self._by_first.get(first, ()):
            end = self._follow(tokens, start, entry.words)
            if end:
                yield Match(entry, end)

    def _follow(self, tokens: Sequence[Token], start: int, words: tuple[str, ...]) -> int:
        """The end of `words` from `start` on (the first word is taken as matched), 0 where they do not stand there."""
        at = start + 1
        for word in words[1:]:
            if at + 1 < len(tokens) and tokens[at].lower in HYPHENS and tokens[at + 1].kind == "word":
                at += 1
            if at >= len(tokens) or tokens[at].lower != word:
                return 0
            at += 1
        return at
