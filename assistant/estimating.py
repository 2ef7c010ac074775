"""From what was said to the engine's input."""

from assistant.state import HeardPiece, State
from rules import Book, Estimate, Job, Piece, work

NOT_FOR_FIGURES = frozenset({"budget"})


def estimate(book: Book, state: State) -> Estimate:
    """The estimate of all pieces that the book can work out, in the order spoken."""
    pieces = [Piece(piece.kind, _said(book, piece)) for piece in state.pieces]
    said = {k: v for k, v in state.job.items() if k not in NOT_FOR_FIGURES and book.fact(k) is not None}
    clocks = {k: v / 60 for k, v in said.items() if (f := book.fact(k)) is not None and f.type == "clock"}
    return work(book, Job(pieces, {**said, **clocks}))


def _said(book: Book, piece: HeardPiece) -> dict[str, object]:
    known = {}
    for fact, value in piece.facts.items():
        if book.fact(book.kind_of(piece.kind).hears.get(fact, fact), piece.kind) is None:
            continue
        if fact == "colours":
            value = [(c["name"], c.get("share")) for c in value]
        known[fact] = tuple(value) if isinstance(value, list) and fact in {"strokes", "inflated"} else value
    return known


def workable(book: Book, kind: str) -> bool:
    """Whether the book works this kind out."""
    return bool(book.kind_of(kind).shows)
