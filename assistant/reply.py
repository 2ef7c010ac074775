"""What a turn gives back."""

from pydantic import BaseModel, ConfigDict, Field

from assistant.heard import Heard
from rules.figure import Figure


class Reply(BaseModel):
    """The answer to one turn.

    text: what the chat prints, plain; heard: what has been said so far, without defaults; unread: words of this turn
    that were not used; question: what is asked back; cautions: the usual ones that apply; figures: all of them.
    """

    model_config = ConfigDict(extra="forbid")

    text: str
    heard: Heard
    unread: list[str] = Field(default_factory=list)
    question: str | None = None
    cautions: list[str] = Field(default_factory=list)
    figures: list[Figure] = Field(default_factory=list)
