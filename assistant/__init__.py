"""The conversation: what a decorator says, turn by turn, and what is answered.

from assistant import Conversation
talk = Conversation()
reply = talk.say("eight 6 ft tables, full drop, 30 in wide")
print(reply.text)
"""

from importlib import import_module

TYPE_CHECKING = False  # that of `typing`, which a start that only prints the version does without
if TYPE_CHECKING:
    from assistant.conversation import Conversation
    from assistant.outside import Reply

__all__ = ["Conversation", "Reply"]

_HOMES = {"Conversation": "conversation", "Reply": "outside"}


def __getattr__(name: str) -> object:
    if name in _HOMES:
        return getattr(import_module(f"assistant.{_HOMES[name]}"), name)
    raise AttributeError(f"module 'assistant' has no attribute {name!r}")
