"""Kinds of speech, a few sentences of each: what a person who hears them would write down, and why.

Lengths are inches. `/` stands between two turns.
"""

from typing import Any

import pytest

from assistant import Conversation, Reply
from tests.grammar.test_traps import tables


def after(said: str) -> Reply:
    """The reply to the last of the turns."""
    talk = Conversation()
    return [talk.say(turn) for turn in said.split(" / ")][-1]


def column(count: int, height: float) -> dict[str, Any]:
    return {"kind": "column", "count": count, "height_in": height}


def heard(kind: str, **facts: Any) -> dict[str, Any]:
    return {"kind": kind, **facts}


# Why -> the turns -> the pieces that are held after them.
MORE_AND_FEWER = {
    "minus takes from the number that was just said": {
        "eight 6 ft tables minus two": [tables(6, 72)],
        "six columns 6 ft high, minus one": [column(5, 72)],
    },
    "and from the number that stands, where it begins a turn": {
        "eight 6 ft tables / minus two": [tables(6, 72)],
        "eight 6 ft tables / less two": [tables(6, 72)],
        "eight 6 ft tables / minus the two by the bar": [tables(6, 72)],
        "eight 6 ft tables / less the two by the bar": [tables(6, 72)],
        "ten 6 ft tables, less the two by the bar": [tables(8, 72)],
        "eight 6 ft tables / take away three": [tables(5, 72)],
    },
    "another two are two more, not one more nor two in all": {
        "eight 6 ft tables / another two": [tables(10, 72)],
        "eight 6 ft tables / an extra two": [tables(10, 72)],
        "eight 6 ft tables / plus two": [tables(10, 72)],
        "eight 6 ft tables plus two": [tables(10, 72)],
        "eight 6 ft tables and another two": [tables(10, 72)],
        "eight 6 ft tables / another": [tables(9, 72)],
        "eight 6 ft tables / two extra": [tables(10, 72)],
        "five bouquets of 7 / another two": [heard("bouquet", count=7, balloons=7)],
    },
    "fifty more of a drop are balloons, for nobody hangs fifty drops; one more is a drop": {
        "a drop of 200 balloons / 50 more": [heard("drop", count=1, balloons=250)],
        "a drop of 200 balloons / another 50": [heard("drop", count=1, balloons=250)],
        "a drop of 200 balloons / 50 less": [heard("drop", count=1, balloons=150)],
        "a drop of 200 balloons / one more": [heard("drop", count=2, balloons=200)],
        "five bouquets of 7 / 20 more": [heard("bouquet", count=25, balloons=7)],
    },
    "a length more or less is added to the thing's own size": {
        "four 6 ft columns / 1 ft more": [column(4, 84)],
        "four 6 ft columns / a foot less": [column(4, 60)],
        "four 6 ft columns / make them a foot more": [column(4, 84)],
        "four 6 ft columns / 6 inches extra": [column(4, 78)],
        "eight 6 ft tables / 6 in more": [tables(8, 78)],
        "a garland 10 ft long / two feet less": [heard("garland", count=1, length_in=96)],
    },
    "another foot is a foot more, but another ten feet beside a garland of ten is a new size": {
        "four 6 ft columns / another foot": [column(4, 84)],
        "four 6 ft columns / add a foot": [column(4, 84)],
        "a 10 ft garland / plus 12 ft": [heard("garland", count=1, length_in=144)],
    },
}  # fmt: skip

# Sentences that cannot be carried out, or could mean two things: a question or the words come back, nothing is changed.
LEFT_AS_IT_WAS = {
    "no number of tables is below one": {
        "eight 6 ft tables / make it minus three": [tables(8, 72)],
        "eight 6 ft tables / minus ten": [tables(8, 72)],
        "two 6 ft tables less the two by the bar": [tables(2, 72)],
    },
    "a foot more of a wall may be its width or its height": {
        "a wall 8 ft wide and 7 ft high / a foot more": [heard("wall", count=1, span_in=96, height_in=84)],
        "an arch 10 ft wide and 7 ft high / make it a foot more": [
            heard("arch", count=1, span_in=120, height_in=84)
        ],
    },
}  # fmt: skip


def sentences(*kinds: dict[str, dict[str, list[dict[str, Any]]]]) -> list[Any]:
    return [
        pytest.param(said, pieces, id=said)
        for kind in kinds
        for why, examples in kind.items()
        for said, pieces in examples.items()
    ]


@pytest.mark.parametrize(("said", "pieces"), sentences(MORE_AND_FEWER))
def test_it_is_heard_as_it_was_meant(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert (reply.question, reply.unread) == (None, [])


@pytest.mark.parametrize(("said", "pieces"), sentences(LEFT_AS_IT_WAS))
def test_what_cannot_be_meant_is_told_and_changes_nothing(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert reply.question or reply.unread
