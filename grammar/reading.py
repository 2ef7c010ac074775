"""What was heard in one turn.  Lengths are inches; shares and fractions run from 0 to 1; other values are in the
unit of their fact."""

from dataclasses import dataclass, field
from typing import Any, Literal

Value = Any  # float, int, str, bool, [low, high], a list of colours or of sizes


@dataclass(slots=True)
class Colour:
    """A colour in the words said, with its share where one was given."""

    name: str
    share: float | None = None


@dataclass(slots=True)
class Step:
    """A change relative to what stands: "add", "times" or "plus" on a fact."""

    fact: str
    how: Literal["times", "plus"]
    by: float


@dataclass(slots=True)
class Mention:
    """A piece that was spoken of, and what was said of it.

    `kind` is None where the turn names none (the piece in focus is meant).  `new` tells that it asks for another
    piece, `which` names what a pronoun points at ("it", "all", "both", "other", "first", "second").  `facts` are
    set, `drop` are taken away (fact, value or None for all of it), `steps` change what stands.
    """

    kind: str | None = None
    new: bool = False
    which: str = "it"
    removed: bool = False
    instead: bool = False
    like: Literal["", "colours", "sizes", "all", "swapped"] = ""
    part_of: float | None = None
    extend: bool = False
    called: str = ""  # what one of several is spoken of as: "outside", "smallest"
    several: bool = False  # named as more than one
    options: dict[str, list[Value]] = field(default_factory=dict)
    facts: dict[str, Value] = field(default_factory=dict)
    drop: list[tuple[str, Value]] = field(default_factory=list)
    steps: list[Step] = field(default_factory=list)
    words: str = ""


@dataclass(slots=True)
class Doubt:
    """Something that was not kept, or that needs an answer.

    `kind`: "either" (two readings are sensible: `options` are fact ids or values), "impossible" (a value outside all
    sense), "contradiction" (two wishes that exclude each other), "vague" (no number in it).
    """

    kind: Literal["either", "impossible", "contradiction", "vague"]
    fact: str = ""
    value: Value = None
    options: list[Value] = field(default_factory=list)
    words: str = ""
    piece: str | None = None


@dataclass(slots=True)
class Reading:
    """One turn, read: acts in order, job facts, orders, what stayed open and what was not used."""

    mentions: list[Mention] = field(default_factory=list)
    job: dict[str, Value] = field(default_factory=dict)
    job_drop: list[str] = field(default_factory=list)
    orders: list[str] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    unread: list[str] = field(default_factory=list)
    unread_as: list[str] = field(default_factory=list)  # the same in the reader's words, where said in others
    said_as: list[tuple[str, str]] = field(default_factory=list)
    changing: bool = False
    alternatives: bool = False
    asks: Literal["", "plain", "supposing"] = ""  # a question by its form
    topic: str = ""
    metric: bool = False
    answer: str = ""
    blank: bool = False
    text: str = ""
    near: dict[str, list[str]] = field(default_factory=dict)


@dataclass(slots=True)
class Context:
    """What the conversation hands to the reader: what is in hand, in focus and being asked."""

    kinds: list[str] = field(default_factory=list)
    focus: str | None = None
    asked: str | None = None
    options: list[str] = field(default_factory=list)
    metric: bool = False
    known: list[str] = field(default_factory=list)
    topic: str = ""
    event_minutes: int | None = None
    intent: str | None = None
    priced: bool = False  # a price was asked for
    sharing: str = ""  # the colour whose share is asked for
    draped: bool = False
    refused: tuple[str, float] | None = None  # the fact and the number of a size that could not be
    held: list[dict[str, Value]] = field(default_factory=list)  # of each of `kinds`
    called: list[str] = field(default_factory=list)  # what each of `kinds` was named, "" where it is like any other
    recent: list[int] = field(default_factory=list)  # which of them the last change was of
    colours: frozenset[str] = frozenset()  # of all pieces in hand
    count: float | None = None
    several: bool = False  # named as more than one, nobody knows how many
    values: dict[str, Value] = field(default_factory=dict)
    budget: dict[str, Any] | None = None
    job: dict[str, Value] = field(default_factory=dict)
    foreign: frozenset[str] = frozenset()  # words of another language that were not put into the reader's
