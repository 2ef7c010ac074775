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
    "longer with a size behind it means that size": {
        "eight 6 ft tables / longer tables, 8 ft": [tables(8, 96)],
        "eight 6 ft tables / make the tables longer, 8 ft": [tables(8, 96)],
        "eight 6 ft tables / bigger ones, 8 ft": [tables(8, 96)],
        "eight 6 ft tables / wider tables, 36 in": [tables(8, 72, table_width_in=36)],
        "eight 6 ft tables / make the runners longer, 8 ft": [tables(8, 72, length_in=96)],
        "a garland 10 ft long / longer, 12": [heard("garland", count=1, length_in=144)],
        "four 6 ft columns / taller, 8, and six of them": [column(6, 96)],
    },
    "longer by a size adds it to the side that is named": {
        "an arch 10 ft wide and 8 ft high / make it 2 ft wider": [heard("arch", count=1, span_in=144, height_in=96)],
        "an arch 10 ft wide and 8 ft high / two feet lower": [heard("arch", count=1, span_in=120, height_in=72)],
        "eight 6 ft tables / make them 2 ft longer": [tables(8, 96)],
    },
    "footers are tables of that length; more of another length are others": {
        "eight 6 ft tables / two more 8 footers": [tables(8, 72), tables(2, 96)],
        "eight 6 ft tables / four more 6 footers": [tables(12, 72)],
    },
}  # fmt: skip

CORRECTIONS = {
    "no between two commas takes back what stands before it": {
        "eight 6 ft tables, two thirds, no, half": [tables(8, 72, coverage_fraction=0.5)],
        "eight 6 ft tables, two thirds, no, full drop": [tables(8, 72, coverage="drop_both")],
        "eight, no, ten 6 ft tables": [tables(10, 72)],
        "eight 6 ft tables, no, 8 ft": [tables(8, 96)],
        "a garland of 2.5 m / sorry, 2.2": [heard("garland", count=1, length_in=pytest.approx(86.6, abs=0.1))],
    },
    "a colour after it stands for the colour before it, and no gold is no gold": {
        "eight 6 ft tables, navy, no, gold": [tables(8, 72, colours=[{"name": "gold"}])],
        "eight 6 ft tables, navy, no wait, gold": [tables(8, 72, colours=[{"name": "gold"}])],
        "eight 6 ft tables, navy and white, sorry, gold": [
            tables(8, 72, colours=[{"name": "navy"}, {"name": "gold"}])
        ],
        "eight 6 ft tables, navy, no gold": [tables(8, 72, colours=[{"name": "navy"}])],
        "eight 6 ft tables with gold, sorry, ten tables": [tables(10, 72, colours=[{"name": "gold"}])],
    },
    "not takes away only what is so": {
        "eight 6 ft tables, full drop / not full drop": [tables(8, 72)],
        "eight 6 ft tables, full drop / no drop": [tables(8, 72)],
        "eight 6 ft tables, two thirds / not full drop": [tables(8, 72, coverage="two_thirds")],
        "tables, not 6 ft, 8 ft, ten of them": [tables(10, 96)],
        "eight tables, not round, 6 ft": [tables(8, 72)],
        "eight 6 ft tables, 5s and 11s / no 11 inch": [tables(8, 72, sizes_in=[5])],
        "six bouquets of 7 with helium / no helium": [heard("bouquet", count=6, balloons=7, gas="air")],
    },
    "that's ten is of those in hand": {
        "eight 6 ft tables / that's ten": [tables(10, 72)],
        "eight 6 ft tables / that's ten tables": [tables(10, 72)],
        "eight 6 ft tables / it's": [tables(8, 72)],
    },
    "not denies what follows it, though no before it would correct": {
        "eight 6 ft tables, two thirds not full drop": [tables(8, 72, coverage="two_thirds")],
    },
    "make it ten tables is of those in hand, whatever was spoken of last": {
        "eight 6 ft tables and four 6 ft columns / make it ten tables": [tables(10, 72), column(4, 72)],
    },
    "no goes for each colour of a row": {
        "eight 6 ft tables, navy, gold and white / drop the navy and gold": [
            tables(8, 72, colours=[{"name": "white"}])
        ],
        "eight 6 ft tables, navy, gold and white / no navy or gold": [tables(8, 72, colours=[{"name": "white"}])],
    },
    "not 24 in wide says what is not so": {
        "eight 6 ft tables, 30 in wide, not 24 in wide": [tables(8, 72, table_width_in=30)],
        "eight 6 ft tables 29 in high, no, 30 in high": [tables(8, 72, table_height_in=30)],
    },
    "a size of balloon is taken out by its name": {
        "eight 6 ft tables, 5s and 11s / drop the 11s": [tables(8, 72, sizes_in=[5])],
        "eight 6 ft tables, 5s and 11s / lose the 5s, add 16s": [tables(8, 72, sizes_in=[11, 16])],
        "eight 6 ft tables, full length, not half": [tables(8, 72, coverage="full")],
    },
    "so it is behind and": {
        "eight 6 ft tables, 5s and 11s / and drop the 11s": [tables(8, 72, sizes_in=[5])],
    },
}  # fmt: skip

TABLES = {
    "a table that turns round has a diameter, whichever is said first": {
        "eight 5 ft tables / round": [heard("runner", count=8, table_shape="round", table_diameter_in=60)],
        "eight tables / round, 60 in": [heard("runner", count=8, table_shape="round", table_diameter_in=60)],
        "eight tables / 60 in, round": [heard("runner", count=8, table_shape="round", table_diameter_in=60)],
        "eight round tables 60 in wide": [heard("runner", count=8, table_shape="round", table_diameter_in=60)],
        "eight round tables, 60 in across": [heard("runner", count=8, table_shape="round", table_diameter_in=60)],
    },
    "across a long table is its width": {
        "eight 6 ft tables, 30 in across": [tables(8, 72, table_width_in=30)],
    },
    "a plain number by a length is how many there are, whichever is said first": {
        "8 x 6 ft tables": [tables(8, 72)],
        "6ft x 8 tables": [tables(8, 72)],
        "a 6 ft x 3 table": [tables(1, 72, table_width_in=36)],
        "ten 6 ft x 3 tables": [tables(10, 72, table_width_in=36)],
    },
    "a table of another size may leave its name to the next": {
        "a six foot and an eight foot table": [tables(1, 72), tables(1, 96)],
        "two 6 ft and three 8 ft tables": [tables(2, 72), tables(3, 96)],
    },
    "sizes after a thing and before the next are of the first": {
        "eight tables, 6 ft long, 30 in wide, arch 8 ft wide and 7 ft high": [
            tables(8, 72, table_width_in=30), heard("arch", span_in=96, height_in=84),
        ],
        "eight tables, 6 ft long, arch 8 ft wide and 7 ft high": [
            tables(8, 72), heard("arch", span_in=96, height_in=84),
        ],
    },
    "the runners lie on the tables that were named": {
        "six foot tables, eight runners": [tables(8, 72)],
        "eight 6 ft tables, runner under 12 in": [tables(8, 72, max_width_in=12)],
    },
    "what is covered": {
        "eight 6 ft tables, half the length": [tables(8, 72, coverage_fraction=0.5)],
        "eight 6 ft tables, 100 %": [tables(8, 72, coverage="full")],
        "eight 6 ft tables, 10 in each end": [tables(8, 72, overhang_in=10)],
        "eight 6 ft tables, full length, drop at both ends": [tables(8, 72, coverage="drop_both")],
    },
    "what lies on the floor hangs off the ends, unless less was said": {
        "eight 6 ft tables, 12 in on the floor": [tables(8, 72, extra_drop_in=12, coverage="drop_both")],
        "eight 6 ft tables, drop at one end, 12 in on the floor": [
            tables(8, 72, extra_drop_in=12, coverage="drop_one")
        ],
    },
    "a size after a comma and before a thing is of that thing": {
        "eight 6 ft tables, 8 ft wide arch 7 ft high": [tables(8, 72), heard("arch", span_in=96, height_in=84)],
        "eight 6 ft tables, 8 ft wide 7 ft high arch": [tables(8, 72), heard("arch", span_in=96, height_in=84)],
        "eight tables, 6 ft long, 8 ft wide arch, 7 ft high": [tables(8, 72), heard("arch", span_in=96, height_in=84)],
        "eight tables 6 ft long 30 in wide, columns 6 ft high": [
            tables(8, 72, table_width_in=30), heard("column", height_in=72),
        ],
    },
    "a drop of tables is their own, at one end where only one was said": {
        "eight 6 ft tables with a drop": [tables(8, 72, coverage="drop_both")],
        "eight 6 ft tables with a drop at one end": [tables(8, 72, coverage="drop_one")],
        "eight 6 ft tables, full length, drop at one end": [tables(8, 72, coverage="drop_one")],
        "eight 6 ft tables, drop at one end, full length": [tables(8, 72, coverage="drop_one")],
    },
    "a runner may be shorter than its table": {
        "eight 6 ft tables, 4 ft runners": [tables(8, 72, length_in=48)],
        "eight 4 ft runners on 6 ft tables": [tables(8, 72, length_in=48)],
        "eight 6 ft tables / the runner longer, 5 ft": [tables(8, 72, length_in=60)],
    },
    "three sizes of a table are its length, width and height": {
        "eight tables 6 ft by 30 in by 29 in": [tables(8, 72, table_width_in=30, table_height_in=29)],
    },
    "sizes before the only thing are its own, whatever opens the turn": {
        "outdoors 8 ft wide 7 ft high arch": [heard("arch", span_in=96, height_in=84)],
    },
}  # fmt: skip

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

# Sentences that cannot be carried out, or could mean two things: a question or the words come back, nothing is changed.
LEFT_AS_IT_WAS = {
    "drop table is no wish of a decorator": {
        "eight 6 ft tables / drop table": [tables(8, 72)],
    },
    "a wall has a size of its own beside that of the garland on it, and columns do not come by the table": {
        "a garland 12 ft long along a 10 ft wall": [heard("garland", count=1, length_in=144)],
        "four 6 ft columns for ten tables": [column(4, 72)],
    },
    "two things were said": {
        "eight or ten 6 ft tables": [heard("runner", table_length_in=72)],
        "an arch 10 or 12 ft wide, 8 ft high": [heard("arch", count=1, height_in=96)],
        "eight 6 ft tables, full drop, no drop": [tables(8, 72)],
        "eight 6 ft tables, half, full drop": [tables(8, 72)],
    },
    "a few, more and less are no numbers": {
        "a few 6 ft tables": [heard("runner", table_length_in=72)],
        "eight 6 ft tables, navy and gold / more gold": [tables(8, 72, colours=[{"name": "navy"}, {"name": "gold"}])],
        "eight 6 ft tables, navy and gold / less navy": [tables(8, 72, colours=[{"name": "navy"}, {"name": "gold"}])],
    },
    "outside all sense": {
        "eight 6 ft tables, 120 % of the length": [tables(8, 72)],
        "arch 10 ft by 900 ft": [heard("arch", span_in=120)],
        "eight 6 ft tables, budget 0": [tables(8, 72)],
        "eight 6 ft tables, budget of minus 50": [tables(8, 72)],
        "eight 6 ft tables, party at 25": [tables(8, 72)],
        "eight 6 ft tables, party at 2 pm, set up from 3 pm": [tables(8, 72)],
    },
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
    "three are not two": {
        "three columns 6 ft, one each side": [heard("column", height_in=72)],
    },
    "the width of a column is not its height": {
        "a column 6 ft wide": [heard("column", count=1)],
        "a column 6 ft tall, 1 ft wide": [column(1, 72)],
    },
    "ten per cent off is a price": {
        "eight 6 ft tables, 10 % off": [tables(8, 72)],
    },
    "seven in each of how many?": {
        "bouquets, 7 each": [heard("bouquet", balloons=7)],
    },
    "a size that was moved to the height leaves the width open": {
        "a wall 8 ft wide / that's the height": [heard("wall", count=1, height_in=96)],
    },
    "no table is so high": {
        "eight 6 ft tables, table height 900 ft": [tables(8, 72)],
    },
    "a centrepiece is not as high as its table is long, nor has a garland two lengths": {
        "a centrepiece for each of ten 6 ft tables": [heard("centerpiece", count=10)],
        "a 10 ft garland for a 6 ft table": [heard("garland", count=1, length_in=120)],
    },
    "how much longer?": {
        "a garland 10 ft long / longer": [heard("garland", count=1, length_in=120)],
        "an arch 10 ft wide and 8 ft high / wider": [heard("arch", count=1, span_in=120, height_in=96)],
        "eight 6 ft tables, two thirds, drop at one end": [tables(8, 72)],
    },
    "a second size of a table is its width where it is the smaller one, else it contradicts the first": {
        "eight 6 ft tables, 8 ft": [heard("runner", count=8)],
        "eight 6 ft tables, 12 ft": [heard("runner", count=8)],
    },
    "two and two are not three, and one and one leave one": {
        "three columns: two 4 ft, two 5 ft": [column(2, 48), column(2, 60)],
        "three columns: one 4 ft, one 5 ft": [heard("column", count=1), column(1, 48), column(1, 60)],
    },
    "nor is the depth of a garland its length": {
        "a garland 2 ft deep": [heard("garland", count=1)],
        "a garland 12 ft long, 2 ft deep": [heard("garland", count=1, length_in=144)],
        "a bouquet of 7, 2 ft wide": [heard("bouquet", count=1, balloons=7)],
    },
}  # fmt: skip


# Why -> a turn after "eight 6 ft tables" -> what is held of the whole job.
OF_THE_JOB = {
    "there and back is twice the way": {"40 miles round trip": {"drive_miles": 20}},
    "three of us work, fourteen of us eat": {
        "three of us": {"crew": 3},
        "fourteen of us": {"guests": 14},
        "how long will it take two people": {"crew": 2, "intent": "schedule"},
        "how long will it take 40 people": {"guests": 40, "intent": "schedule"},
        "how long will it take for 8 guests": {"guests": 8, "intent": "schedule"},
    },
    "more in per cent are spares": {"10 % more": {"spare_pct": 10}, "10 % spare": {"spare_pct": 10}},
    "a party at two is in the afternoon, a set-up before it at nine in the morning": {
        "party at 2, set up from 9": {"event_time": "14:00", "setup_from": "09:00"},
        "party at 9:30": {"event_time": "21:30"},
        "party at 10": {"event_time": "10:00"},
        "party at 24": {"event_time": "00:00"},
        "party at 6, set up from 3": {"event_time": "18:00", "setup_from": "15:00"},
        "party at 1 am, set up from 10 pm": {"event_time": "01:00", "setup_from": "22:00"},
    },
    "a party begins at the first of two times, in the same half of the day as the second where it can": {
        "party from 2 to 4 pm": {"event_time": "14:00"},
        "party from 2 pm until 4 pm": {"event_time": "14:00"},
        "party from 11 to 2 pm": {"event_time": "11:00"},
        "party from 9 to 1 am": {"event_time": "21:00"},
    },
    "a bare wind is in miles where feet are spoken": {
        "wind 20": {"wind_mph": 20},
        "wind 20 km/h": {"wind_mph": pytest.approx(12.43, abs=0.01)},
    },
    "a balloon pump has strokes of its own": {
        "my pump gives 4 inches in two strokes": {"pump_size_in": 4, "pump_strokes": 2},
    },
    "not indoors is outdoors": {"not indoors": {"outdoors": True}, "indoors": {"outdoors": False}},
    "a number after under is money": {"under 600": {"budget": {"amount": 600}}},
}


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


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("change the pink to lilac", ["navy", "gold", "lilac"]),
        ("make the pink lilac", ["navy", "gold", "lilac"]),
        ("replace pink with lilac", ["navy", "gold", "lilac"]),
        ("turn the gold into silver", ["navy", "pink", "silver"]),
        ("swap navy and gold for lilac", ["pink", "lilac"]),
        ("make it pink and lilac", ["pink", "lilac"]),
        ("change to lilac and white", ["lilac", "white"]),
    ],
)
def test_a_colour_in_place_of_one_that_is_held_leaves_the_others(said: str, colours: list[str]) -> None:
    """Whoever names a colour of the row and then another means that one alone; new colours alone are a new row."""
    reply = after(f"15 ft garland, navy, gold and pink / {said}")
    assert [colour["name"] for colour in reply.heard.pieces[0]["colours"]] == colours
    assert not reply.unread


def test_an_exception_is_taken_out_of_what_is_said_of_the_others() -> None:
    """ "All X except two Y" of eight: six of X and two of Y, whether the eight were said before or in the same turn."""
    six, two = heard("runner", count=6, table_length_in=72), heard("runner", count=2, table_length_in=72)
    assert after("eight tables, each six foot, except two which are eight foot").heard.pieces == [
        six,
        {**two, "table_length_in": 96},
    ]
    in_hand = after("eight 6 ft tables / all full length except two which are two thirds")
    assert in_hand.heard.pieces == [{**six, "coverage": "full"}, {**two, "coverage": "two_thirds"}]
    colours = after("eight 6 ft tables / all navy except two in gold").heard.pieces
    assert [[c["name"] for c in piece["colours"]] for piece in colours] == [["navy"], ["gold"]]
    assert [piece["count"] for piece in colours] == [6, 2]


@pytest.mark.parametrize(
    ("said", "covers"),
    [
        ("6 tables of 8 ft and 4 of 6 ft, full drop", ["drop_both", "drop_both"]),
        ("six 8 ft tables and four 6 ft tables, two thirds", ["two_thirds", "two_thirds"]),
        ("six 8 ft tables and four 6 ft tables two thirds", [None, "two_thirds"]),
        ("six 8 ft tables full length and four 6 ft tables, two thirds", ["full", "two_thirds"]),
    ],
)
def test_a_coverage_behind_a_comma_is_of_all_tables_that_have_none(said: str, covers: list[str | None]) -> None:
    """Without the comma it belongs to the last; with it, it closes the list."""
    assert [piece.get("coverage") for piece in after(said).heard.pieces] == covers


@pytest.mark.parametrize("said", ["10 ft garland, 250 tops", "250 max, 10 ft garland", "10 ft garland, max 250"])
def test_a_limit_before_or_behind_its_number_is_a_budget(said: str) -> None:
    """Nobody makes 250 garlands at most."""
    reply = after(said)
    assert reply.heard.job == {"budget": {"amount": 250}}
    assert "count" not in reply.heard.pieces[0]


def test_midnight_is_an_hour_behind_at_and_else_a_colour() -> None:
    """A drop at midnight is not of that colour."""
    assert after("a drop of 200 balloons at midnight").heard.job == {"event_time": "00:00"}
    assert after("garland 12 ft in midnight and gold").heard.pieces[0]["colours"][0]["name"] == "midnight"


@pytest.mark.parametrize(
    ("said", "piece"),
    [
        ("6 ft garland / make it 8", heard("garland", length_in=96)),
        ("2 m garland / make it 3", heard("garland", length_in=118.11023622047244)),
        ("7 ft column / three please", heard("column", count=3, height_in=84)),
        ("two 6 ft columns / how about 8", heard("column", count=8, height_in=72)),
        ("10 ft garland / make it longer by two feet", heard("garland", length_in=144)),
        ("two 6 ft columns / make them taller by a foot", heard("column", count=2, height_in=84)),
        ("eight 6 ft tables, 30 inch drop", heard("runner", count=8, table_length_in=72, overhang_in=30)),
        ("eight 6 ft tables, drop one side only", heard("runner", count=8, table_length_in=72, coverage="drop_one")),
    ],
)
def test_a_size_said_anew_or_by_how_much(said: str, piece: dict[str, Any]) -> None:
    """One thing with a size is made 8 long, not eight times; of two things 8 counts; 3 is no height where 7 was."""
    assert after(said).heard.pieces == [piece]


@pytest.mark.parametrize(
    ("said", "unread"),
    [("two 6 ft columns / parking is 12", "12"), ("10 ft garland for 200", "200"), ("balloon drop for 200", "200")],
)
def test_a_number_of_something_else_counts_no_pieces(said: str, unread: str) -> None:
    """Nobody says what the number is of, so it is named as not used."""
    reply = after(said)
    assert unread in " ".join(reply.unread)
    assert reply.heard.pieces[0].get("count") in {None, 2}


def test_what_is_counted_first_is_a_piece_though_it_stands_behind_on() -> None:
    """ "A price on four columns and a garland" asks for columns, and for no garland that hangs on them."""
    pieces = after("can i get a price on four 7ft columns and a ten foot garland").heard.pieces
    assert [piece["kind"] for piece in pieces] == ["column", "garland"]


@pytest.mark.parametrize(
    ("said", "piece"),
    [
        ("12 foot garland / up it to fourteen / down to thirteen", heard("garland", length_in=156)),
        ("eight 6 ft tables / skip the head table", tables(7, 72)),
        ('garland 16 ft / 5" 11" 16" / drop the 16s', heard("garland", length_in=192, sizes_in=[5, 11])),
        ("12 ft garland / with eucalyptus / without it", heard("garland", length_in=144, foliage=False)),
        ("garland 14 ft / she only wants to pay 120", heard("garland", length_in=168)),
    ],
)
def test_changes_as_people_make_them(said: str, piece: dict[str, Any]) -> None:
    """What is meant by the last turn, and nothing else of the piece."""
    assert after(said).heard.pieces == [piece]


@pytest.mark.parametrize(
    ("said", "piece"),
    [
        ("table runner on an 8 by 30 table", heard("runner", count=1, table_length_in=96, table_width_in=30)),
        ("table 2 by 6", heard("runner", count=1, table_length_in=72, table_width_in=24)),
        ("swags: 3, each four foot, 10 inch dip", heard("swag", count=3, span_in=48, sag_in=10)),
        ("ceiling balloons, 200, with ribbon", heard("ceiling", balloons=200)),
        ("balloon drop, 300", heard("drop", balloons=300)),
    ],
)
def test_numbers_are_of_what_they_can_be_of(said: str, piece: dict[str, Any]) -> None:
    """A table is longer than wide and 30 is its inches; a dip is no part of a width; 200 are balloons, not ceilings."""
    assert after(said).heard.pieces == [piece]


def test_a_colour_is_changed_in_every_piece_that_has_it_and_in_no_other() -> None:
    """Whoever swaps the pink of a job means all of it, wherever she spoke last."""
    said = "10 ft garland in pink and white, arch 8 by 8 in pink, column 6 ft in gold / make the pink lilac"
    colours = [[colour["name"] for colour in piece["colours"]] for piece in after(said).heard.pieces]
    assert [set(names) for names in colours] == [{"white", "lilac"}, {"lilac"}, {"gold"}]


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        ("20 ft garland / cut four feet off it", [heard("garland", length_in=192)]),
        ("arch 8 by 8 / knock a foot off the height", [heard("arch", span_in=96, height_in=84)]),
        ("six columns 6 ft / add two more at 8 ft", [column(6, 72), column(2, 96)]),
        ("eight 6 ft tables / add two 8 ft", [tables(8, 72), tables(2, 96)]),
        ("eight 6 ft tables / no runners on two of them", [tables(6, 72)]),
        ("arch 8 by 8 / another", [heard("arch", count=2, span_in=96, height_in=96)]),
    ],
)
def test_what_is_taken_off_and_what_is_added(said: str, pieces: list[dict[str, Any]]) -> None:
    """Less of a size is not a new size; more of another size are pieces of their own; one arch and another are two."""
    assert after(said).heard.pieces == pieces


def test_another_in_another_colour_is_a_piece_of_its_own() -> None:
    """The first keeps its colour; a little of a colour "with" the others joins them."""
    arches = after("arch 8 by 8, gold / another one in silver").heard.pieces
    assert [[c["name"] for c in piece["colours"]] for piece in arches] == [["gold"], ["silver"]]
    (garland,) = after("garland 18 ft white / with a bit of sage").heard.pieces
    assert [c["name"] for c in garland["colours"]] == ["white", "sage"]


@pytest.mark.parametrize(
    ("said", "job"),
    [
        ("eight 6 ft tables / one more helper", {"crew": 2}),
        ("eight 6 ft tables, two of us / one more pair of hands", {"crew": 3}),
        ("eight 6 ft tables, 80 guests / ten more guests", {"guests": 90}),
        ("eight 6 ft tables / ten more guests", {}),
        ("eight 6 ft tables / the budget went up to 700", {"budget": {"amount": 700}}),
    ],
)
def test_more_of_what_is_of_the_job_counts_no_tables(said: str, job: dict[str, Any]) -> None:
    """Who is alone and gets a helper is two; ten more guests than nobody knows are kept as no number at all."""
    reply = after(said)
    assert {key: value for key, value in reply.heard.job.items() if key != "intent"} == job
    assert reply.heard.pieces == [tables(8, 72)]
