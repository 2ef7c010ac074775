"""One turn, safely: whatever is said and whatever goes wrong, a plain sentence comes back and the talk goes on.

The chat and the command both speak to a conversation through `Turns`; they share its limits and its sentences.
"""

import json
import os
import threading
from collections.abc import Callable
from functools import cache
from typing import TYPE_CHECKING, Any, Protocol

from assistant.terminal import NARROW, clean, is_readable, one_line
from rules.record import record

if TYPE_CHECKING:
    from pathlib import Path

    from assistant.cache import Cache
    from assistant.house import HouseRules
    from assistant.jobs import JobBook

LONGEST_TURN = 10_000
LONGEST_LEAVING = 40  # letters of a line that may ask to leave
LEAVING = frozenset({"quit", "exit", "bye"})

NOT_TEXT = "That was not readable text (UTF-8), so nothing of it was kept; please type it again."
TOO_LONG = (
    f"That is longer than the {LONGEST_TURN:,} characters that a turn may have, so nothing of it was kept; "
    "please say it in shorter pieces."
)
BROKEN = (
    "Something went wrong inside festoon, so that turn was not kept and all before it was; "
    "please say it in other words."
)
BEGUN_ANEW = (
    "Something went wrong inside festoon and what was said before could not be kept either; please begin again."
)
STOPPED = "Stopped: that turn was not kept, and all before it was."


class Answer(Protocol):
    """What the front needs of a reply; `assistant.reply.Reply` is one."""

    @property
    def text(self) -> str: ...
    @property
    def heard(self) -> Any: ...
    @property
    def unread(self) -> list[str]: ...
    @property
    def question(self) -> str | None: ...
    def model_dump(self, *, mode: str) -> dict[str, Any]: ...


class Talk(Protocol):
    """What the front needs of a conversation; `assistant.Conversation` is one."""

    width: int
    folder: "Path | None"  # where sheets are written

    def reply_to(self, text: str, /) -> Answer: ...
    def painted(self, text: str, depth: int, /) -> str: ...
    def told(self, sentence: str, /) -> str: ...
    def leaves(self, text: str, /) -> bool: ...
    def complete(self, before: str, /) -> list[str]: ...
    def status(self) -> str: ...
    def take_up(self, other: Any, /) -> None: ...


MakeTalk = Callable[[int], Talk]


def make_conversation(width: int) -> Talk:
    """A new conversation with the shipped book, its replies laid out for so many columns.

    The first is slow to make; what the user's cache holds makes it quicker.
    """
    _warm_up()
    from assistant import Conversation

    return Conversation(width=width, folder=_here(), jobs=_job_book(), house=_house_rules())


@cache
def _house_rules() -> "HouseRules | None":
    """The user's house rules, read once; FESTOON_NO_HOUSE=1 turns them off."""
    if os.environ.get("FESTOON_NO_HOUSE"):
        return None
    from assistant.cache import remembered
    from assistant.house import HouseRules, users_house_file

    return HouseRules(users_house_file(), remembered(_kept_between_starts()))


@cache
def _job_book() -> "JobBook | None":
    """The user's job book, opened once; FESTOON_NO_JOBS=1 turns it off."""
    if os.environ.get("FESTOON_NO_JOBS"):
        return None
    from assistant.jobs import users_job_book

    return users_job_book()


def _here() -> "Path | None":
    """The current folder, None where it is gone."""
    from pathlib import Path

    try:
        return Path.cwd()
    except OSError:
        return None


@cache
def _warm_up() -> None:
    from assistant.cache import warm_up

    warm_up(_kept_between_starts())


@cache  # its key is the hash of all that is kept from
def _kept_between_starts() -> "Cache | None":
    from assistant.cache import open_cache

    return open_cache()


@record
class Turn:
    """What came of one turn: `text` is safe to print, `reply` is None where the turn was refused or failed."""

    text: str
    answered: bool
    reply: Answer | None

    def as_json(self) -> str:
        """The reply as one line of JSON in plain ASCII; {"error": sentence} where there is none."""
        document = {"error": self.text} if self.reply is None else self.reply.model_dump(mode="json")
        return json.dumps(document, ensure_ascii=True)


class Turns:
    """A conversation that survives its own failures.

    `make` is called when first needed, in whichever thread asks first, so a screen can be drawn before it. With
    FESTOON_DEBUG set, an unexpected exception is raised instead of being turned into a sentence.
    """

    def __init__(self, make: MakeTalk, width: int = NARROW) -> None:
        self.width = width
        self._make = make
        self._talk: Talk | None = None
        self._lock = threading.Lock()

    def load(self) -> Talk:
        """The conversation, made now if it was not yet; raises whatever making it raises."""
        with self._lock:
            if self._talk is None:
                self._talk = self._make(self.width)
            return self._talk

    def take(self, said: str) -> Turn:
        """One turn. Never raises, but for KeyboardInterrupt, after which the turn is not kept either."""
        if len(said) > LONGEST_TURN:
            return self._refused(TOO_LONG)
        if not is_readable(said):
            return self._refused(NOT_TEXT)
        said = one_line(said)
        try:
            talk = self.load()
            talk.width = self.width
            reply = talk.reply_to(said)
        except Exception:  # the last guard between a mistake of ours and the person's evening
            if os.environ.get("FESTOON_DEBUG"):
                raise
            return self._refused(BROKEN if self._go_back() else BEGUN_ANEW)
        except KeyboardInterrupt:
            self._go_back()
            raise
        return Turn(clean(reply.text).rstrip("\n"), answered=is_answered(said, reply), reply=reply)

    def painted(self, text: str, depth: int) -> str:
        """The last reply with its picture, if it holds one, in so many bits of colour; 0: as it is."""
        talk = self._talk
        try:
            return text if talk is None or not depth else talk.painted(text, depth)
        except Exception:  # noqa: BLE001  a picture in letters is a picture
            return text

    def complete(self, before: str) -> list[str]:
        """Words that could end the text before the cursor; none while the conversation is not there yet."""
        talk = self._talk
        try:
            return [] if talk is None else [word for word in map(one_line, talk.complete(before)) if word]
        except Exception:  # noqa: BLE001  help with typing must never stop the typing
            return []

    def status(self) -> str:
        """The job so far in one line, "" while there is none."""
        talk = self._talk
        try:
            return "" if talk is None else one_line(self.told(talk.status()))
        except Exception:  # noqa: BLE001  as above
            return ""

    def told(self, sentence: str) -> str:
        """A sentence of the front's own in the language of the talk, as it is before there is one."""
        talk = self._talk
        try:
            return sentence if talk is None else talk.told(sentence)
        except Exception:  # noqa: BLE001  any language is better than none
            return sentence

    def leaves(self, said: str) -> bool:
        """Whether the words ask to end the talk, in any language that is heard."""
        try:
            return said.strip().lower() in LEAVING or (len(said) <= LONGEST_LEAVING and self.load().leaves(said))
        except Exception:  # noqa: BLE001  the turn itself has words for what is wrong
            return False

    def _refused(self, sentence: str) -> Turn:
        return Turn(self.told(sentence), answered=False, reply=None)

    def _go_back(self) -> bool:
        """Forget a turn that failed half-way: the same words in a new conversation give the same job as before it.

        False where that fails too, and the conversation begins anew rather than go on half-changed.
        """
        try:
            talk = self._make(self.width)
            if self._talk is not None:
                talk.take_up(self._talk)
        except Exception:  # noqa: BLE001  what worked before does not now
            self._talk = None
            return False
        self._talk = talk
        return True


def is_answered(said: str, reply: Answer) -> bool:
    """Whether a turn got an answer: no question is open, something is held, and some word of the turn was used."""
    if reply.question is not None or not _holds_something(reply.heard):
        return False
    return bool(set(_words(said)) - {word for unread in reply.unread for word in _words(unread)})


def _holds_something(heard: Any) -> bool:
    job = dict(heard.job or {})
    return bool(heard.pieces) or any(value not in (None, [], {}) for value in job.values())


def _words(text: str) -> list[str]:
    return "".join(char if char.isalnum() else " " for char in text.lower()).split()
