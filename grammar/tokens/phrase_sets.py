"""Sets of phrases, each a tuple of words as the scanner cuts them, found by the first word."""

from collections.abc import Iterable, Iterator, Sequence

from grammar.tokens.scan import scan

Words = tuple[str, ...]


class PhraseSet:
    """Phrases that all mean one thing."""

    def __init__(self, phrases: Iterable[Words]) -> None:
        self.phrases = frozenset(phrases)
        self._by_first: dict[str, list[Words]] = {}
        self._by_last: dict[str, list[Words]] = {}
        for phrase in sorted(self.phrases, key=lambda phrase: (-len(phrase), phrase)):
            self._by_first.setdefault(phrase[0], []).append(phrase)
            self._by_last.setdefault(phrase[-1], []).append(phrase)

    @classmethod
    def of_text(cls, text: str) -> "PhraseSet":
        """The phrases between bars and lines of a text."""
        parts = (part for line in text.splitlines() for part in line.split("|"))
        return cls(tuple(token.lower for token in scan(part)) for part in parts if part.strip())

    def __contains__(self, words: Words) -> bool:
        return words in self.phrases

    def end(self, words: Sequence[str], start: int) -> int | None:
        """Where the longest phrase ends that stands at `start`; None where none does."""
        for phrase in self._by_first.get(words[start], ()) if start < len(words) else ():
            if tuple(words[start : start + len(phrase)]) == phrase:
                return start + len(phrase)
        return None

    def start(self, words: Sequence[str], end: int) -> int | None:
        """Where the longest phrase begins that ends before `end`; None where none does."""
        for phrase in self._by_last.get(words[end - 1], ()) if end else ():
            if len(phrase) <= end and tuple(words[end - len(phrase) : end]) == phrase:
                return end - len(phrase)
        return None

    def spans(self, words: Sequence[str]) -> Iterator[tuple[int, int]]:
        """Where every phrase stands, by where it begins and then the longest first."""
        for start, word in enumerate(words):
            for phrase in self._by_first.get(word, ()):
                if tuple(words[start : start + len(phrase)]) == phrase:
                    yield start, start + len(phrase)
