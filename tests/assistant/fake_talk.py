"""A conversation small enough to see through: it echoes what it was told, so the tests are of the front alone."""

from dataclasses import dataclass, field
from pathlib import Path
from types import SimpleNamespace
from typing import Any


@dataclass
class FakeReply:
    text: str
    pieces: list[str]
    unread: list[str] = field(default_factory=list)
    question: str | None = None

    @property
    def heard(self) -> Any:
        return SimpleNamespace(pieces=self.pieces, job=None)

    def model_dump(self, *, mode: str) -> dict[str, Any]:
        return {"text": self.text, "heard": {"pieces": self.pieces}, "unread": self.unread, "question": self.question}


class FakeTalk:
    """Keeps every turn. "ask" asks, "crash" fails and "stop" is interrupted half-way, "gibberish" is not read."""

    def __init__(self, width: int) -> None:
        self.width = width
        self.folder: Path | None = None
        self.turns: list[str] = []

    def reply_to(self, text: str, /) -> FakeReply:
        if "crash" in text:
            raise ZeroDivisionError(text)
        if "stop" in text:
            raise KeyboardInterrupt
        self.turns.append(text)
        if text == "gibberish":
            self.turns.pop()
            return FakeReply("I could not use: gibberish", list(self.turns), unread=["gibberish"])
        return FakeReply(
            f"{len(self.turns)} at {self.width}: {text}",
            list(self.turns),
            question="How long?" if "ask" in text else None,
        )

    def painted(self, text: str, depth: int, /) -> str:
        return f"{text} in {depth} bits"

    def complete(self, before: str, /) -> list[str]:
        return [word for word in ("garland", "gold", "table") if word.startswith(before.rsplit(" ", maxsplit=1)[-1])]

    def status(self) -> str:
        return f"{len(self.turns)} turns" if self.turns else ""

    def take_up(self, other: "FakeTalk", /) -> None:
        self.turns = list(other.turns)
