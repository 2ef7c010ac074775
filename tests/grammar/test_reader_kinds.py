"""Kinds of speech, a few sentences of each: what a person who hears them would write down, and why."""

from typing import Any

import pytest

from assistant import Conversation
from tests.grammar.kinds_said import (
    CORRECTIONS,
    LEFT_AS_IT_WAS,
    MORE_AND_FEWER,
    OF_THE_JOB,
    TABLES,
    after,
    column,
    heard,
)
from tests.grammar.test_traps import tables

PLACES = {
    "pieces for so many tables are one for each": {
        "garlands for six 6 ft tables": [heard("garland", count=6, length_in=72)],
        "a garland for six 6 ft tables": [heard("garland", count=6, length_in=72)],
        "a garland for a 6 ft table": [heard("garland", count=1, length_in=72)],
        "centrepieces of 5 for ten tables": [heard("centerpiece", count=10, balloons=5)],
        "a centrepiece for each of ten tables": [heard("centerpiece", count=10)],
    },
    "a garland is as long as what it runs along, and what it hangs down on each side": {
        "a garland along a 10 ft wall": [heard("garland", count=1, length_in=120)],
        "a 6 ft garland with 2 ft each end": [heard("garland", count=1, length_in=120)],
    },
    "all that opens a turn is of everything named after it": {
        "all navy: eight 6 ft tables and a 10 ft garland": [
            tables(8, 72, colours=[{"name": "navy"}]),
            heard("garland", count=1, length_in=120, colours=[{"name": "navy"}]),
        ],
        "all with greenery, eight 6 ft tables and a 10 ft garland": [
            tables(8, 72, foliage=True), heard("garland", count=1, length_in=120, foliage=True),
        ],
        "all eight 6 ft tables in navy and a 10 ft garland in gold": [
            tables(8, 72, colours=[{"name": "navy"}]),
            heard("garland", count=1, length_in=120, colours=[{"name": "gold"}]),
        ],
    },
    "them all, with two pieces in hand, are both": {
        "eight 6 ft tables, navy and a 10 ft garland, gold / make them all white": [
            tables(8, 72, colours=[{"name": "white"}]),
            heard("garland", count=1, length_in=120, colours=[{"name": "white"}]),
        ],
    },
    "it is what was spoken of last, off the piece that is named": {
        "eight 6 ft tables and a 10 ft garland with greenery / take it off the garland": [
            tables(8, 72), heard("garland", count=1, length_in=120, foliage=False),
        ],
    },
    "and one more of another size is one more piece": {
        "two 12 ft garlands / and one 15 ft": [
            heard("garland", count=2, length_in=144), heard("garland", count=1, length_in=180),
        ],
    },
    "a number with its balloons, or with each, is what one holds": {
        "a 500 balloon drop": [heard("drop", balloons=500)],
        "six bouquets, seven each": [heard("bouquet", count=6, balloons=7)],
        "seven balloons each, six bouquets": [heard("bouquet", count=6, balloons=7)],
    },
    "the gold ones are those in hand that are gold; two gold ones to add are new": {
        "eight 6 ft tables in gold and four 8 ft tables in navy / the gold 6 ft ones two thirds": [
            tables(8, 72, colours=[{"name": "gold"}], coverage="two_thirds"),
            tables(4, 96, colours=[{"name": "navy"}]),
        ],
        "eight 6 ft tables in gold and four 8 ft tables in navy / make the gold ones 5 ft": [
            tables(8, 60, colours=[{"name": "gold"}]), tables(4, 96, colours=[{"name": "navy"}]),
        ],
        "eight 6 ft tables in gold / make them navy 8 ft ones": [tables(8, 96, colours=[{"name": "navy"}])],
        "eight 6 ft tables, navy / add two gold ones": [
            tables(8, 72, colours=[{"name": "navy"}]), tables(2, 72, colours=[{"name": "gold"}]),
        ],
    },
    "the second lot is the second piece; a bare size of it is its tables' length": {
        "eight 6 ft tables and four 8 ft tables in navy / the second lot 10 ft": [
            tables(8, 72), tables(4, 120, colours=[{"name": "navy"}]),
        ],
        "a garland 8 ft and a garland 10 ft in gold / make the second 12 ft": [
            heard("garland", count=1, length_in=96),
            heard("garland", count=1, length_in=144, colours=[{"name": "gold"}]),
        ],
    },
    "greenery is wanted with the, some or more before it, and not after without or no more": {
        "eight 6 ft tables / add the greenery": [tables(8, 72, foliage=True)],
        "eight 6 ft tables with more greenery": [tables(8, 72, foliage=True)],
        "eight 6 ft tables with greenery / no more greenery": [tables(8, 72, foliage=False)],
        "eight 6 ft tables without any greenery": [tables(8, 72, foliage=False)],
    },
    "each side is twice, one each side is two": {
        "a column each side, 6 ft": [column(2, 72)],
        "two 6 ft columns on each side of the door": [column(4, 72)],
        "five columns 6 ft down each side": [column(10, 72)],
        "columns, one each side of the door, 6 ft": [column(2, 72)],
        "five 6 ft tables down each side": [tables(10, 72)],
    },
    "what hangs down on each side is added to a garland, and hangs over the edge of a table": {
        "a 6 ft garland, 2 ft each side": [heard("garland", count=1, length_in=120)],
        "a garland 6 ft across, 3 ft down each side": [heard("garland", count=1, length_in=144)],
        "a mantel garland 6 ft wide that comes down each side three foot": [
            heard("garland", count=1, length_in=144, place="mantel")
        ],
        "eight 6 ft tables, 10 in each side": [tables(8, 72, overhang_in=10)],
        "eight 6 ft tables, a drop on each side": [tables(8, 72, coverage="drop_both")],
    },
    "what is for all, or on both, is of each thing that was named": {
        "eight 6 ft tables and a 10 ft garland, greenery for all": [
            tables(8, 72, foliage=True), heard("garland", count=1, length_in=120, foliage=True),
        ],
        "eight 6 ft tables and a 10 ft garland, all with greenery": [
            tables(8, 72, foliage=True), heard("garland", count=1, length_in=120, foliage=True),
        ],
        "eight 6 ft tables, two 6 ft columns, organic for both": [
            tables(8, 72, style="organic"), heard("column", count=2, height_in=72, style="organic"),
        ],
    },
    "of what has no width a length or a height is its size": {
        "a garland 10 ft wide": [heard("garland", count=1, length_in=120)],
        "a column 6 ft long": [column(1, 72)],
    },
    "colours before a thing are its own, colours behind the last are those of all": {
        "four 6 ft columns, navy and gold arch 8 ft wide and 7 ft high": [
            column(4, 72), heard("arch", span_in=96, height_in=84, colours=[{"name": "navy"}, {"name": "gold"}]),
        ],
        "four 6 ft columns and an arch 8 ft wide and 7 ft high, navy": [
            {**column(4, 72), "colours": [{"name": "navy"}]},
            heard("arch", count=1, span_in=96, height_in=84, colours=[{"name": "navy"}]),
        ],
    },
    "a length of it is its length": {
        "12 ft of garland": [heard("garland", length_in=144)],
        "two 8 ft lengths of garland": [heard("garland", count=2, length_in=96)],
    },
    "some of them become a piece of their own, more than there are a new number": {
        "eight 6 ft tables / two of them navy": [tables(6, 72), tables(2, 72, colours=[{"name": "navy"}])],
        "eight 6 ft tables / half of them navy": [tables(4, 72), tables(4, 72, colours=[{"name": "navy"}])],
        "eight 6 ft tables / three of them 8 ft": [tables(5, 72), tables(3, 96)],
        "eight 6 ft tables / all of them navy": [tables(8, 72, colours=[{"name": "navy"}])],
        "eight 6 ft tables / ten of them": [tables(10, 72)],
    },
    "on this and the other is on both": {
        "eight 6 ft tables, two 6 ft columns and a 10 ft garland / gold on the tables and the columns": [
            tables(8, 72, colours=[{"name": "gold"}]),
            {**column(2, 72), "colours": [{"name": "gold"}]},
            heard("garland", count=1, length_in=120),
        ],
        "eight 6 ft tables, a 10 ft garland and two 6 ft columns, gold on the garland and the tables": [
            tables(8, 72, colours=[{"name": "gold"}]),
            heard("garland", count=1, length_in=120, colours=[{"name": "gold"}]),
            column(2, 72),
        ],
        "eight 6 ft tables and a 10 ft garland / greenery on the tables and the garland": [
            tables(8, 72, foliage=True), heard("garland", count=1, length_in=120, foliage=True),
        ],
    },
    "pieces of one kind and many sizes share a colour that was said before them": {
        "navy, three garlands of 8, 10 and 12 ft": [
            heard("garland", count=1, length_in=length, colours=[{"name": "navy"}]) for length in (96, 120, 144)
        ],
    },
    "a swag over a table is as wide as it, and tables of eight people seat eight": {
        "swags for ten 6 ft tables": [heard("swag", count=10, span_in=72)],
        "ten 6 ft tables of 8 people": [tables(10, 72, seats=8)],
        "ten 6 ft tables with 8 people at each": [tables(10, 72, seats=8)],
    },
    "what was asked for is what a size means": {
        "a wall 7 ft high / 9 ft": [heard("wall", count=1, height_in=84, span_in=108)],
        "a wall 7 ft high / 9": [heard("wall", count=1, height_in=84, span_in=108)],
    },
    "that's all says nothing of anything": {
        "eight 6 ft tables and a 10 ft garland, that's all": [tables(8, 72), heard("garland", count=1, length_in=120)],
        "eight 6 ft tables and a 10 ft garland, all good": [tables(8, 72), heard("garland", count=1, length_in=120)],
    },
    "some of them are taken from those that were said; the rest stay as they were": {
        "eight 6 ft tables, two of them 8 ft": [tables(6, 72), tables(2, 96)],
        "eight 6 ft tables, three navy": [tables(5, 72), tables(3, 72, colours=[{"name": "navy"}])],
        "eight 6 ft tables, three navy, five gold": [
            tables(3, 72, colours=[{"name": "navy"}]), tables(5, 72, colours=[{"name": "gold"}]),
        ],
        "eight 6 ft tables, three with greenery": [tables(5, 72), tables(3, 72, foliage=True)],
        "eight 6 ft tables, three with greenery, five without": [
            tables(3, 72, foliage=True), tables(5, 72, foliage=False),
        ],
        "eight tables, six 6 ft, two 8 ft": [tables(6, 72), tables(2, 96)],
        "ten tables, seven are 6 ft and the other three are 8 ft": [tables(7, 72), tables(3, 96)],
        "three columns: one 4 ft, one 5 ft and one 6 ft": [column(1, 48), column(1, 60), column(1, 72)],
    },
    "so many of another size come beside those that have a size": {
        "eight 6 ft tables and two 8 ft": [tables(8, 72), tables(2, 96)],
        "eight 6 ft tables, two 8 ft and one 10 ft": [tables(8, 72), tables(2, 96), tables(1, 120)],
        "two 12 ft garlands and one 15 ft": [
            heard("garland", count=2, length_in=144), heard("garland", count=1, length_in=180),
        ],
    },
    "three of the tables are three of those in hand, of whatever was spoken last": {
        "ten 6 ft tables / three of the tables navy": [tables(7, 72), tables(3, 72, colours=[{"name": "navy"}])],
        "ten 6 ft tables / the tables, two of them navy": [tables(8, 72), tables(2, 72, colours=[{"name": "navy"}])],
        "ten 6 ft tables / make it eight 6 ft tables, two of them navy": [
            tables(6, 72), tables(2, 72, colours=[{"name": "navy"}]),
        ],
        "ten 6 ft tables and a 10 ft garland, three of the tables navy": [
            tables(7, 72),
            heard("garland", count=1, length_in=120),
            tables(3, 72, colours=[{"name": "navy"}]),
        ],
        "ten 6 ft tables and four 6 ft columns / two of the columns are 8 ft": [
            tables(10, 72), column(2, 72), column(2, 96),
        ],
        "ten 6 ft tables / lose three of the tables": [tables(7, 72)],
    },
    "a round garland is no round table": {
        "a round garland 10 ft long": [heard("garland", count=1, length_in=120)],
    },
    "what is said after a comma to be on the tables is theirs, not the garland's": {
        "eight 6 ft tables and a 10 ft garland, greenery on the tables": [
            tables(8, 72, foliage=True), heard("garland", count=1, length_in=120),
        ],
        "eight 6 ft tables and a 10 ft garland, navy and gold on the tables": [
            tables(8, 72, colours=[{"name": "navy"}, {"name": "gold"}]), heard("garland", count=1, length_in=120),
        ],
        "eight 6 ft tables and four 6 ft columns, two thirds on the tables": [
            tables(8, 72, coverage="two_thirds"), column(4, 72),
        ],
        "a 10 ft garland, navy, on the tables": [
            heard("garland", count=1, length_in=120, colours=[{"name": "navy"}])
        ],
    },
    "two pieces of two sizes are one of each, also where the first size leaves its unit to the second": {
        "two garlands, 8 ft and 12 ft": [
            heard("garland", count=1, length_in=96), heard("garland", count=1, length_in=144),
        ],
        "two columns, 6 and 7 ft": [column(1, 72), column(1, 84)],
        "two garlands of 30 and 40 in": [
            heard("garland", count=1, length_in=30), heard("garland", count=1, length_in=40),
        ],
        "two garlands, 8 ft and 12 ft columns": [
            heard("garland", count=2, length_in=96), heard("column", height_in=144),
        ],
    },
    "runners that are counted beside tables that are counted are others": {
        "eight 6 ft tables and two runners 12 ft long": [tables(8, 72), heard("runner", count=2, length_in=144)],
    },
}  # fmt: skip


def sentences(*kinds: dict[str, dict[str, list[dict[str, Any]]]]) -> list[Any]:
    return [
        pytest.param(said, pieces, id=said)
        for kind in kinds
        for why, examples in kind.items()
        for said, pieces in examples.items()
    ]


@pytest.mark.parametrize(("said", "pieces"), sentences(MORE_AND_FEWER, CORRECTIONS, TABLES, PLACES))
def test_it_is_heard_as_it_was_meant(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert (reply.question, reply.unread) == (None, [])


@pytest.mark.parametrize(
    "turn",
    ["two more", "minus two", "make it ten", "8 ft", "the first lot 8 ft", "make the gold ones 8 ft", "without gold"],
)
def test_a_turn_that_changes_what_stands_is_a_change(turn: str) -> None:
    assert after(f"eight 6 ft tables, gold / {turn}").heard.job["intent"] == "change"


@pytest.mark.parametrize(("said", "pieces"), sentences(LEFT_AS_IT_WAS))
def test_what_cannot_be_meant_is_told_and_changes_nothing(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert reply.question or reply.unread


@pytest.mark.parametrize(
    ("said", "job"), [pytest.param(said, job, id=said) for kind in OF_THE_JOB.values() for said, job in kind.items()]
)
def test_what_is_of_the_whole_job(said: str, job: dict[str, Any]) -> None:
    reply = after(f"eight 6 ft tables / {said}")
    assert reply.heard.pieces == [tables(8, 72)]
    assert {name: value for name, value in reply.heard.job.items() if name in {"intent", *job}} == {
        "intent": "change",
        **job,
    }


def test_a_bare_wind_is_in_kilometres_where_metres_are_spoken() -> None:
    assert after("five 180 cm tables outside, wind 20").heard.job["wind_mph"] == pytest.approx(12.43, abs=0.01)


def test_a_set_up_from_one_time_to_another_begins_at_the_first() -> None:
    assert after("eight 6 ft tables, set up from 9 to 11").heard.job == {"setup_from": "09:00"}
    assert after("eight 6 ft tables, set up from 9 to 11 am").heard.job == {"setup_from": "09:00"}


def test_two_things_said_of_the_coverage_are_both_named() -> None:
    assert after("eight 6 ft tables, half, full drop").question == (
        "You said two things for the coverage: 50 % or full drop. Which one?"
    )


def test_a_set_up_after_the_party_is_told_with_both_times() -> None:
    assert after("eight 6 ft tables, party at 2 pm, set up from 3 pm").question == (
        "Set-up from 15:00 is not before the party at 14:00; I kept neither. When are they?"
    )


def test_a_size_that_nobody_knows_cannot_be_made_more_and_is_asked_for() -> None:
    talk = Conversation()
    talk.say("eight 6 ft tables")
    reply = talk.say("a foot wider")
    assert reply.question == "I do not know the table width yet, so that was not kept. What shall it be?"
    assert talk.say("30 in").heard.pieces == [tables(8, 72, table_width_in=30)]


def test_only_the_ways_that_a_size_can_be_meant_are_asked_about() -> None:
    """Nobody stands an arch 50 ft high: sane heights end below that."""
    assert after("an arch, 12 ft").question == "12 ft: wide or high or along the curve?"
    assert after("an arch, 50 ft").question == "50 ft: wide or along the curve?"
    reply = after("a wall, 50 ft")
    assert reply.heard.pieces == [heard("wall", count=1, span_in=600)]
    assert reply.question == "How high?"
