"""What a turn gives back."""

from collections.abc import Callable
from functools import cached_property
from typing import Any

from pydantic import BaseModel, ConfigDict, Field, PrivateAttr, computed_field

from assistant.heard import Heard
from rules.figure import Figure


class Reply(BaseModel):  # noqa: PLW1641 - no key of anything
    """The answer to one turn.

    text: what the chat prints, plain; heard: what has been said so far, without defaults; unread: words of this turn
    that were not used; question: what is asked back; cautions: the usual ones that apply; figures: all of them, worked
    out by the callable `figures` when they are first asked for, as the text holds but a few.
    """

    model_config = ConfigDict(extra="forbid")

    text: str
    heard: Heard
    unread: list[str] = Field(default_factory=list)
    question: str | None = None
    cautions: list[str] = Field(default_factory=list)
    _figures: Callable[[], list[Figure]] = PrivateAttr(default=list)

    def __init__(self, *, figures: Callable[[], list[Figure]] = list, **fields: Any) -> None:
        super().__init__(**fields)
        self._figures = figures

    @computed_field  # type: ignore[prop-decorator]
    @cached_property
    def figures(self) -> list[Figure]:
        """All figures, those of each piece and of the job."""
        return self._figures()

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Reply) and self.model_dump() == other.model_dump()

    def __getstate__(self) -> dict[Any, Any]:
        self._figures = self.figures.copy  # so that it can be pickled: the figures, not what works them out
        return super().__getstate__()
