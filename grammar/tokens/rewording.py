"""A turn of another language put into the reader's words: at each place the longest phrase or number that fits."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from grammar.record import record
from grammar.tokens.scan import Token
from grammar.tokens.tongue import COLOUR, NUMBER, REST, Phrase, Run, Tongue

OPENING = frozenset('¿¡("')
Slots = list[tuple[str, str]]


@record
class Part:
    """A run of characters of the text in the reader's words, and where the words it stands for were said."""

    start: int
    end: int
    said: tuple[int, int]


@dataclass(slots=True)
class Rewording:
    """One turn: its tokens, its words bare of accents, and which of them `may` be read as this language's.

    `whole` tells that the turn is in this language, not in another that has only words of it.
    """

    tokens: Sequence[Token]
    words: Sequence[str]
    tongue: Tongue
    whole: bool
    may: Callable[[str], bool]
    _runs: dict[int, Run | None] = field(default_factory=dict)

    def text(self, said: str) -> tuple[str, tuple[Part, ...]]:
        """The turn in the reader's words, and what each part of it stands for."""
        out, at, last = "", 0, 0
        parts: list[Part] = []
        while at < len(self.tokens):
            end, text = self._found(at) or (at + 1, self.tokens[at].text)
            gap = said[last : self.tokens[at].start] or self._gap(out, at, text)
            start = len(out) + len(gap)
            last = self.tokens[end - 1].end
            out += gap + text
            parts.append(Part(start, len(out), (self.tokens[at].start, last)))
            at = end
        return out + said[last:], tuple(parts)

    def _gap(self, out: str, at: int, text: str) -> str:
        """A space where words came to stand side by side, or where a row of sizes has none ("5,11 y 17")."""
        touching = text != self.tokens[at].text and out[-1:].isalnum() and text[:1].isalnum()
        return " " if touching or (self.whole and out.endswith(",")) else ""

    def _found(self, at: int) -> tuple[int, str] | None:
        """What the longest phrase or number at a word comes to, and where it ends."""
        token = self.tokens[at]
        if token.kind == "word" and len(token.text) == 1 and token.glued and self.tokens[at - 1].lower not in OPENING:
            return None  # "1e9" is no "one and nine"
        if not self.whole and token.text[:1].isupper():
            return None  # a name, most likely: "Los Angeles"
        best: tuple[int, str] | None = None
        for phrase in self.tongue.phrases_at(self.words, at):
            if not self.whole and not all(map(self.may, phrase[0])):
                continue
            end, slots, rest = self._follow(at, phrase)
            if end and (best is None or end > best[0]):
                best = end, _filled(phrase[1], slots, rest)
        if self.whole or (token.kind == "word" and self.may(self.words[at])):
            run = self._run(at)
            if run is not None and (best is None or run.end > best[0]):
                best = run.end, run.digits
        return best

    def _run(self, at: int) -> Run | None:
        if at not in self._runs:
            self._runs[at] = self.tongue.number_at(self.tokens, self.words, at)
        return self._runs[at]

    def _colour(self, at: int) -> tuple[int, str] | None:
        """The longest name of a colour at a word, and where it ends."""
        for words, means in self.tongue.phrases.get(self.words[at], ()):
            if means in self.tongue.colours and tuple(self.words[at : at + len(words)]) == words:
                return at + len(words), means
        return None

    def _follow(self, at: int, phrase: Phrase) -> tuple[int, Slots, str]:
        """Where a phrase that begins at a word ends (0 where it does not), what its slots hold, and what follows."""
        slots: Slots = []
        for word in phrase[0]:
            if at >= len(self.words):
                return 0, [], ""
            if word == REST:
                return len(self.tokens), slots, _written(self.tokens[at:])
            if word == NUMBER:
                run = self._run(at)
                if run is None:
                    return 0, [], ""
                slots.append((NUMBER, run.digits))
                at = run.end
            elif word == COLOUR:
                colour = self._colour(at)
                if colour is None:
                    return 0, [], ""
                slots.append((COLOUR, colour[1]))
                at = colour[0]
            elif self.words[at] == word:
                at += 1
            else:
                return 0, [], ""
        return at, slots, ""


def _written(tokens: Sequence[Token]) -> str:
    return "".join((" " if i and not token.glued else "") + token.text for i, token in enumerate(tokens))


def _filled(means: str, slots: Slots, rest: str) -> str:
    for mark, held in slots:
        means = means.replace(mark, held, 1)
    return means.replace(REST, rest)
