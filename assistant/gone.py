"""Pieces that were taken away, which may be wanted back: "put the columns back", "no, go with the garland"."""

from assistant.meant import SIZES
from assistant.state import Gone, HeardPiece, State
from grammar.reading import Mention

KEPT = 8  # pieces taken away that may still come back


def put_by(state: State, piece: HeardPiece, instead: str = "") -> None:
    """Keep in mind a piece that goes; `instead` is the kind of the one that takes its place."""
    state.gone = (*state.gone, Gone(piece.kind, piece.facts, piece.called, instead))[-KEPT:]


def brought_back(state: State, mention: Mention) -> HeardPiece | None:
    """The piece that went last of the kind named, where nothing is said of it as of a new one; it stands again.

    What took its place goes.
    """
    anew = "count" in mention.facts or any(fact in SIZES for fact in mention.facts)
    found = next((gone for gone in reversed(state.gone) if gone.kind == mention.kind), None)
    if found is None or anew or mention.instead or mention.like:
        return None
    state.gone = tuple(gone for gone in state.gone if gone is not found)
    piece = HeardPiece(found.kind, dict(found.facts), found.called)
    place = next((i for i, p in enumerate(state.pieces) if p.kind == found.instead), None)
    if place is None:
        state.pieces.append(piece)
    else:
        put_by(state, state.pieces[place], piece.kind)
        state.pieces[place] = piece
    return piece
