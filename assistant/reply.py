"""What a turn gives back."""

from collections.abc import Callable
from dataclasses import field
from typing import TYPE_CHECKING, Any

from assistant.heard import Held
from rules.figure import Figure
from rules.record import record

if TYPE_CHECKING:
    from assistant.outside import Reply as Outside


@record
class Reply:
    """The answer to one turn, as it goes from module to module and to the command.

    text: what the chat prints, plain; heard: what has been said so far, without defaults; unread: words of this turn
    that were not used; question: what is asked back; cautions: the usual ones that apply; figures: works out all of
    them, as the text holds but a few.
    """

    text: str
    heard: Held
    unread: list[str] = field(default_factory=list)
    question: str | None = None
    cautions: list[str] = field(default_factory=list)
    figures: Callable[[], list[Figure]] = list

    def outside(self) -> "Outside":
        """The same for those outside, with all that pydantic offers, which takes longer to import than to answer."""
        from assistant.outside import Reply as Outside

        return Outside.of(self)

    def model_dump(self, *, mode: str) -> dict[str, Any]:
        """The same as plain data; mode "json" for what JSON can hold."""
        return self.outside().model_dump(mode=mode)
