"""Sentences by kind, each with what a person who hears it would write down, for the tests of the kinds of speech.

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
    "so much off is a discount": {
        "10 % off": {"discount": 10},
        "take 10 % off": {"discount": 10},
        "5 percent off": {"discount": 5},
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
