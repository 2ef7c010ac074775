"""Conversations written as text: "> " before what was said, then the exact reply at 40 columns.

Lines before the first "> " are a heading in plain words and are kept as they are.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from assistant import Conversation, Reply

WIDTH = 40  # the narrowest screen that replies are laid out for
MARK = "> "


@dataclass(frozen=True, slots=True)
class Turn:
    """What was said and what was answered."""

    said: str
    reply: str


@dataclass(frozen=True, slots=True)
class Dialogue:
    """One conversation from its first turn on, under a heading."""

    heading: str
    turns: tuple[Turn, ...]

    @property
    def said(self) -> list[str]:
        """The turns of the person alone."""
        return [turn.said for turn in self.turns]

    def __str__(self) -> str:
        """The text that `read_dialogue` reads as this dialogue."""
        blocks = [self.heading] if self.heading else []
        blocks += [f"{MARK}{turn.said}\n{turn.reply}".rstrip() for turn in self.turns]
        return "\n\n".join(blocks) + "\n"


def read_dialogue(text: str) -> Dialogue:
    """The dialogue that a text holds; blank lines around a reply do not count."""
    heading, *spoken = ("\n" + text).split(f"\n{MARK}")
    turns = (block.partition("\n") for block in spoken)
    return Dialogue(heading.strip(), tuple(Turn(said, reply.strip("\n")) for said, _, reply in turns))


def hold(said: Iterable[str], width: int = WIDTH) -> list[Reply]:
    """The replies to a whole conversation with the shipped book."""
    talk = Conversation(width=width)
    return [talk.say(turn) for turn in said]


def held_anew(dialogue: Dialogue) -> Dialogue:
    """The same turns with the replies that the program gives today."""
    replies = hold(dialogue.said)
    turns = zip(dialogue.said, replies, strict=True)
    return Dialogue(dialogue.heading, tuple(Turn(said, reply.text.rstrip("\n")) for said, reply in turns))


_FENCE = re.compile(r"(?<=^```text\n)> .*?(?=^```$)", re.MULTILINE | re.DOTALL)


def dialogues_in(markdown: str) -> list[Dialogue]:
    """The dialogues that stand in fenced blocks of plain text, one conversation to a block."""
    return [read_dialogue(block) for block in _FENCE.findall(markdown)]


def with_dialogues_anew(markdown: str) -> str:
    """The same page with the replies that the program gives today."""
    return _FENCE.sub(lambda block: str(held_anew(read_dialogue(block[0]))), markdown)
