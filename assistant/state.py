"""What has been said so far: the pieces and the job, as facts."""

from copy import deepcopy
from dataclasses import dataclass, field
from typing import Any

from grammar.reading import Doubt


@dataclass(slots=True)
class HeardPiece:
    """One piece: its kind and only what was said of it."""

    kind: str
    facts: dict[str, Any] = field(default_factory=dict)


@dataclass(slots=True)
class Pending:
    """The question that is open: about which fact of which piece, with what choices."""

    text: str
    fact: str = ""
    piece: int | None = None
    doubt: Doubt | None = None


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
    walked: tuple[str, int | None] | None = None
    section: int = 0
    priced: bool = False  # a price was asked for

    def copy(self) -> "State":
        """A copy that shares nothing."""
        return deepcopy(self)

    @property
    def focused(self) -> HeardPiece | None:
        """The piece that was spoken of last."""
        return self.pieces[self.focus] if self.focus is not None and self.focus < len(self.pieces) else None
