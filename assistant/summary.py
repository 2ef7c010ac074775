"""The job in hand in a few words: "8 runners, 1 arch"."""

from assistant.state import HeardPiece, State
from rules import Book


def summary(book: Book, state: State) -> str:
    """Each piece by its number and name."""
    return ", ".join(_counted(book, piece) for piece in state.pieces)


def _counted(book: Book, piece: HeardPiece) -> str:
    words = book.kind_of(piece.kind).words
    noun, count = (words[0] if words else piece.kind), piece.facts.get("count")
    return f"{count} {noun}{'s' if count != 1 and not noun.endswith('s') else ''}" if count else noun
