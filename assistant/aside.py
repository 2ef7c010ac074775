"""Replies that are about the tool and not about the estimate: the job book's and the house rules'."""

from typing import TYPE_CHECKING

from assistant.estimating import workable
from assistant.heard import export
from assistant.layout import join
from assistant.reply import Reply
from assistant.speech import spoken
from assistant.state import State
from grammar.reading import Reading

if TYPE_CHECKING:
    from assistant.conversation import Conversation


def aside(talk: "Conversation", lines: list[str], intent: str, *, estimate: bool = False) -> Reply:
    """Lines of our own, with what is in hand unchanged; with `estimate` what the job comes to below them."""
    if estimate and any(workable(talk.book, piece.kind) for piece in talk.state.pieces):
        talk.state.intent = None
        reply = talk.writer().reply(State(), talk.state, Reading(), *(2 * [talk.estimates.of(talk.state)]))
        lines = [*lines, "", reply.text]
    now = talk.state.copy()
    now.intent = intent
    return Reply(
        text=join([lines]),
        heard=export(now, talk.vocabulary),
        question=spoken(now.pending.text) if estimate and now.pending else None,
        figures=talk.estimates.of(now).figures,
    )
