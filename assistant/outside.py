"""A reply as it is handed out: models of pydantic, with the names and units that the outside relies on."""

from collections.abc import Callable
from functools import cached_property
from typing import TYPE_CHECKING, Any, Self

from pydantic import BaseModel, ConfigDict, Field, PrivateAttr, computed_field

from rules.figure import Value
from rules.world import How

if TYPE_CHECKING:
    from assistant.reply import Reply as Plain


class Figure(BaseModel):
    """One value with its range, its reason and its source; its fields are those of rules.Figure."""

    model_config = ConfigDict(frozen=True, from_attributes=True)

    id: str
    name: str
    piece: int | None
    value: Value
    low: int | float | None
    high: int | float | None
    unit: str
    how: How
    why: str
    source: str
    uses: list[str]


class Heard(BaseModel):
    """Only what was said: pieces in the order spoken, and the job."""

    model_config = ConfigDict(extra="forbid", from_attributes=True)

    pieces: list[dict[str, Any]] = Field(default_factory=list)
    job: dict[str, Any] = Field(default_factory=dict)


class Reply(BaseModel):  # noqa: PLW1641 - no key of anything
    """The answer to one turn.

    text: what the chat prints, plain; heard: what has been said so far, without defaults; unread: words of this turn
    that were not used; question: what is asked back; cautions: the usual ones that apply; figures: all of them, worked
    out when they are first asked for.
    """

    model_config = ConfigDict(extra="forbid")

    text: str
    heard: Heard
    unread: list[str] = Field(default_factory=list)
    question: str | None = None
    cautions: list[str] = Field(default_factory=list)
    _figures: Callable[[], list[Any]] = PrivateAttr(default=list)

    @classmethod
    def of(cls, plain: "Plain") -> Self:
        """The reply as the modules pass it on, for the outside."""
        made = cls(
            text=plain.text,
            heard=Heard(pieces=plain.heard.pieces, job=plain.heard.job),
            unread=plain.unread,
            question=plain.question,
            cautions=plain.cautions,
        )
        made._figures = plain.figures
        return made

    @computed_field  # type: ignore[prop-decorator]
    @cached_property
    def figures(self) -> list[Figure]:
        """All figures, those of each piece and of the job."""
        return [Figure.model_validate(figure) for figure in self._figures()]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Reply) and self.model_dump() == other.model_dump()

    def __getstate__(self) -> dict[Any, Any]:
        self._figures = self.figures.copy  # so that it can be pickled: the figures, not what works them out
        return super().__getstate__()
