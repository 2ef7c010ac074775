"""What has been said so far: the pieces and the job, as facts."""

from dataclasses import dataclass, field, replace
from typing import Any

from grammar.reading import Doubt, Mention
from rules.record import record


@dataclass(slots=True)
class HeardPiece:
    """One piece: its kind and only what was said of it."""

    kind: str
    facts: dict[str, Any] = field(default_factory=dict)
    called: str = ""  # what it is spoken of as, where there are several: "outside"
    several: bool = False  # named as more than one


@record
class Gone:
    """A piece that was taken away, and the kind of the one that was put in its place, "" where none was."""

    kind: str
    facts: dict[str, Any]
    called: str = ""
    instead: str = ""


@dataclass(slots=True)
class Pending:
    """The question that is open: about which fact of which piece, with what choices."""

    text: str
    fact: str = ""
    piece: int | None = None
    doubt: Doubt | None = None
    mention: Mention | None = None  # the change that waits for the answer


@dataclass(slots=True)
class State:
    """All that a turn may change; a turn works on a copy, so that undo is one copy back."""

    pieces: list[HeardPiece] = field(default_factory=list)
    job: dict[str, Any] = field(default_factory=dict)
    loose: dict[str, Any] = field(default_factory=dict)
    focus: int | None = None
    metric: bool = False
    topic: str = ""
    pending: Pending | None = None
    intent: str | None = None
    compared: bool = False
    moved: bool = False  # the last turn changed what stood
    idle: bool = False  # of the last turn some words were not used, and nothing changed
    walked: tuple[str, int | None] | None = None
    section: int = 0
    priced: bool = False  # a price was asked for
    gone: tuple[Gone, ...] = ()  # the last of them went last
    solved: str = ""  # the words of the turn whose answer offered something that fits

    def copy(self) -> "State":
        """A copy that shares nothing that a turn changes."""
        pieces = [HeardPiece(piece.kind, _copied(piece.facts), piece.called, piece.several) for piece in self.pieces]
        return replace(self, pieces=pieces, job=_copied(self.job), loose=_copied(self.loose))

    @property
    def focused(self) -> HeardPiece | None:
        """The piece that was spoken of last."""
        return self.pieces[self.focus] if self.focus is not None and self.focus < len(self.pieces) else None


def restored(now: State, past: list[State]) -> State | None:
    """What is in hand with the pieces that were taken off last put back in their places; None where none were."""
    kinds = [piece.kind for piece in now.pieces]
    for at in range(len(past) - 1, -1, -1):
        after = past[at + 1] if at + 1 < len(past) else now
        had = [piece.kind for piece in past[at].pieces]
        if len(had) > len(after.pieces) and any(kind not in kinds for kind in had):
            back = now.copy()
            for place, piece in enumerate(past[at].copy().pieces):
                if piece.kind not in kinds:
                    back.pieces.insert(min(place, len(back.pieces)), piece)
            back.focus = len(back.pieces) - 1 if back.focus is None else back.focus
            back.pending = None
            return back
    return None


def _copied(value: Any) -> Any:
    """Dicts and lists anew, all the way down; deepcopy takes ten times as long, and this is done at every turn."""
    if isinstance(value, dict):
        return {key: _copied(inner) for key, inner in value.items()}
    return [_copied(inner) for inner in value] if isinstance(value, list) else value
