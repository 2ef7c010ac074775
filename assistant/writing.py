"""Replies in words."""

from assistant.heard import export
from assistant.reply import Reply
from assistant.state import State
from grammar.reading import Reading
from grammar.vocabulary import Vocabulary
from rules import Book, Estimate


class Writer:
    """Lays a reply out for a width."""

    def __init__(self, book: Book, vocabulary: Vocabulary, width: int) -> None:
        self.book, self.vocabulary, self.width = book, vocabulary, width

    def reply(self, before: State, now: State, reading: Reading, made: Estimate) -> Reply:
        """The whole reply."""
        question = now.pending.text if now.pending else None
        figures = made.figures()
        return Reply(text=question or "ok", heard=export(now), unread=reading.unread, question=question,
                     cautions=[c.text for c in made.cautions()], figures=figures)
