"""Which language a turn is in, and the turn in the reader's own words.

Every language is heard at once: a word that only one of them has is of that one, wherever it stands, so that a mixed
sentence is read. A word that two have ("once", "no") is of the language of the sentence: that of most of the words
which tell it, the turn before weighing in.
"""

import unicodedata
from bisect import bisect_right
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import takewhile

from grammar.reading import Reading
from grammar.record import record
from grammar.tokens.rewording import Part, Rewording
from grammar.tokens.scan import Token, scan
from grammar.tokens.spelling import nearest
from grammar.tokens.tongue import MENDED, Tongue, bare

MOST_MENDED = 20  # strange words of one turn that are looked into
CARRIED = 1.5  # words that the language of the turn before is worth


@record
class Heard:
    """A turn: as said, in the reader's words, and its language ("" for the reader's own).

    `answered` is the language to answer in: that of the turn, and once it is another than the reader's own, that one
    until the reader's own is asked for. `foreign` are words of neither language.
    """

    said: str
    text: str
    language: str = ""
    answered: str = ""
    parts: tuple[Part, ...] = ()
    mended: tuple[tuple[str, str], ...] = ()
    foreign: frozenset[str] = frozenset()

    def told(self, reading: Reading) -> Reading:
        """The reading with the words that it names as they were said."""
        if self.parts:
            back = _Back(self)
            unread = [(back.words(words, once=True), words) for words in reading.unread]
            told = [pair for pair in unread if any(char.isalnum() for char in pair[0])]
            reading.unread, reading.unread_as = [said for said, _ in told], [words for _, words in told]
            reading.near = {}
            reading.doubts = [replace(doubt, words=back.words(doubt.words)) for doubt in reading.doubts]
            reading.said_as = [(back.words(text), read) for text, read in reading.said_as]
            reading.said_as = [*self.mended, *((text, read) for text, read in reading.said_as if text != read)]
        return reading


class _Back:
    """The way back from the reader's text to what was said."""

    def __init__(self, heard: Heard) -> None:
        self.said, self.parts = heard.said, sorted(heard.parts, key=lambda part: part.start)
        self.text = heard.text.lower()
        self.ends = [part.end for part in self.parts]
        self.used: dict[str, int] = {}  # where words were found last

    def words(self, words: str, *, once: bool = False) -> str:
        """Words of the reader's text as they were said, where they stand first, or with `once` where they next do."""
        low = words.lower()
        at = self.text.find(low, self.used.get(low, -1) + 1 if once else 0) if words else -1
        if at < 0:
            return words
        if once:
            self.used[low] = at
        over = list(takewhile(lambda part: part.start < at + len(words), self.parts[bisect_right(self.ends, at) :]))
        return self.said[min(part.said[0] for part in over) : max(part.said[1] for part in over)] if over else words


class Ears:
    """Hears turns in any of the `tongues`; `own` gives the words of the reader's own language when first needed."""

    def __init__(
        self, tongues: Sequence[Tongue], own: Callable[[], frozenset[str]], home: Iterable[tuple[str, ...]] = ()
    ) -> None:
        self.tongues = {tongue.code: tongue for tongue in tongues}
        self._called = [
            *((code, called) for code, tongue in self.tongues.items() for called in tongue.called),
            *(("", called) for called in home),
        ]
        self._callers = frozenset(called[0] for _, called in self._called)
        self._own, self._known = own, frozenset[str]()

    @property
    def known(self) -> frozenset[str]:
        """The words of the reader's own language."""
        self._known = self._known or self._own()
        return self._known

    def hear(self, said: str, before: Heard | None = None) -> Heard:
        """A turn, after the turn `before`, None where it is the first."""
        said = said if unicodedata.is_normalized("NFC", said) else unicodedata.normalize("NFC", said)
        tokens = scan(said)
        words = [bare(token.lower) for token in tokens]
        asked = self._asked_for(words)
        if asked is not None:
            language, start, end = asked
            cut = slice(tokens[start].start, tokens[end - 1].end)
            rest = said[: cut.start] + " " * (cut.stop - cut.start) + said[cut.stop :]
            heard = self.hear(rest, Heard("", "", language))
            return replace(heard, said=said, language=language, answered=language)
        language = self._language(words, None if before is None else before.language)
        answered = language or ("" if before is None else before.answered)
        tongue = self.tongues.get(language) or next((t for t in self.tongues.values() if self._has(t, words)), None)
        if tongue is None:
            return Heard(said, said, language, answered)
        return replace(self._put(said, tokens, words, tongue, tongue.code == language), answered=answered)

    def _asked_for(self, words: list[str]) -> tuple[str, int, int] | None:
        """The language that a turn asks for by name ("en español"), and where it does."""
        if self._callers.isdisjoint(words):
            return None
        for code, called in self._called:
            for at in range(len(words) - len(called) + 1):
                if tuple(words[at : at + len(called)]) == called:
                    return code, at, at + len(called)
        return None

    def _language(self, words: list[str], before: str | None) -> str:
        """The language of most of the words that only one has."""
        scores: dict[str, float] = {}
        for code, tongue in self.tongues.items():
            if any(word in tongue.words or word in tongue.weights for word in words):
                scores[code] = sum(self._weight(tongue, word) for word in words)
        if not scores and not before:
            return ""
        others = [word for word in words if word.isalpha() and word in self.known]
        scores[""] = float(sum(1 for word in others if not any(word in t.words for t in self.tongues.values())))
        if before is not None:
            scores[before] = scores.get(before, 0.0) + CARRIED
        return max(scores, key=lambda code: (scores[code], code == (before or "")))

    def _has(self, tongue: Tongue, words: Iterable[str]) -> bool:
        """Whether a word of the language alone is among the words."""
        return any(word in tongue.words and self._tells(tongue, word) for word in words)

    def _tells(self, tongue: Tongue, word: str) -> bool:
        """Whether a word, if it is one of the language, is read as such in a sentence of the reader's own."""
        return tongue.is_plain(word) or word not in self.known

    def _weight(self, tongue: Tongue, word: str) -> float:
        if word in tongue.weights:
            return tongue.weights[word]
        return 1.0 if word in tongue.words and word not in self.known else 0.0

    def _put(self, said: str, tokens: list[Token], words: list[str], tongue: Tongue, whole: bool) -> Heard:
        """The turn with every phrase of the language put into the reader's words; unless it is `whole` of that
        language, only those that have no word of the reader's own."""
        mended = self._mended(tokens, words, tongue) if whole else {}
        words = [mended.get(i, word) for i, word in enumerate(words)]
        text, parts = Rewording(tokens, words, tongue, whole, partial(self._tells, tongue)).text(said)
        read = tuple((tokens[i].text, word) for i, word in mended.items())
        pairs = zip(tokens, words, strict=True) if whole else ()
        foreign = frozenset(t.lower for t, word in pairs if word not in tongue.words and word not in self.known)
        return Heard(said, text, tongue.code if whole else "", parts=parts, mended=read, foreign=foreign)

    def _mended(self, tokens: list[Token], words: list[str], tongue: Tongue) -> Mapping[int, str]:
        """Slips in words of neither language, by place."""
        slips: dict[str, str | None] = {}
        found: dict[int, str] = {}
        for at, word in enumerate(words):
            strange = tokens[at].kind == "word" and word not in tongue.words and word not in self.known
            if strange and len(word) >= MENDED and word.isalpha() and (word in slips or len(slips) < MOST_MENDED):
                if word not in slips:
                    slips[word] = nearest(word, tongue.long, partial(_sense, tongue))
                mended = slips[word]
                if mended is not None and mended not in tongue.cardinals:
                    found[at] = mended
        return found


def _sense(tongue: Tongue, word: str) -> object:
    """What a word of a language comes to by itself, so that two spellings of one thing are no tie."""
    return next((means for words, means in tongue.phrases.get(word, ()) if len(words) == 1), word)
