"""What stands around the pieces, what they are made of, and words that only their place makes clear."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables

NAVY, GOLD, WHITE = ({"name": name} for name in ("navy", "gold", "white"))

READ = {
    "another piece of the same kind": {
        "garland 10 ft and another 15 ft": [heard("garland", length_in=120), heard("garland", count=1, length_in=180)],
        "two 6 ft columns and another of 7": [column(2, 72), column(1, 84)],
        "three 6 ft tables and a fourth one of 8 ft": [tables(3, 72), tables(1, 96)],
        "a 10 ft garland / another of 12 ft": [
            heard("garland", count=1, length_in=120), heard("garland", count=1, length_in=144),
        ],
    },
    "much less than the piece itself is more of it": {
        "a 10 ft garland and another foot": [heard("garland", count=1, length_in=132)],
    },
    "tables that one long table is made of": {
        "24 ft made of four 6 ft tables": [tables(1, 288)],
        "a 32 ft table made from four 8 footers": [tables(1, 384)],
        "four 6 ft tables making a 24 ft line": [tables(1, 288)],
    },
    "behind a door and a comma another piece begins": {
        "2 columns 7 ft by the door, 20 ft garland on the bar": [column(2, 84), heard("garland", length_in=240)],
    },
    "a ceiling may be said to float": {
        "ceiling of helium balloons room 20 by 25": [heard("ceiling", length_in=300, span_in=240)],
    },
    "a number of things is no weather": {
        "8 runners on 6 ft tables / what if she drops to six tables": [tables(6, 72)],
        "8 runners on 6 ft tables / it drops to 50": [tables(8, 72)],
    },
    "some of those that were counted": {
        "eleven 6 ft tables, three are 8 ft": [tables(8, 72), tables(3, 96)],
        "ten 6 ft tables / four are gold": [tables(6, 72), tables(4, 72, colours=[GOLD])],
        "six columns, three in white and three in gold, 6 ft": [
            {**column(3, 72), "colours": [WHITE]}, {**column(3, 72), "colours": [GOLD]},
        ],
    },
    "how many runners there are, the tables tell; how wide they are, the size before the runner": {
        "a runner on eight 6 ft tables": [tables(8, 72)],
        "eight 6 ft tables with an 11 inch runner": [tables(8, 72, max_width_in=11)],
    },
    "a word that tells a size tells the one behind it": {
        "swag of 12 ft dipping 2 ft": [heard("swag", span_in=144, sag_in=24)],
        "swag between two posts 14 ft apart": [heard("swag", span_in=168)],
        "blow the fives to 4 inches, eight 6 ft tables": [tables(8, 72, sizes_in=[5], inflated_in=[4, 4])],
    },
    "so many times as much": {
        "eight 6 ft tables, three times as much navy as gold": [
            tables(8, 72, colours=[{**NAVY, "share": 0.75}, {**GOLD, "share": 0.25}]),
        ],
    },
    "a colour taken back without a comma": {
        "eight 6 ft tables navy no gold": [tables(8, 72, colours=[GOLD])],
        "eight 6 ft tables, navy, no gold": [tables(8, 72, colours=[NAVY])],
    },
    "a colour that is not wanted, and others": {
        "no navy, gold, eight 6 ft tables": [tables(8, 72, colours=[GOLD])],
        "eight 6 ft tables white, no red, navy or gold": [tables(8, 72, colours=[WHITE])],
        "eight 6 ft tables white no gold no navy": [tables(8, 72, colours=[WHITE])],
    },
    "a table with a name of its own": {
        "a 6 ft table and the cake table 4 ft": [tables(1, 72), tables(1, 48)],
    },
    "slips that their place gives away": {
        "bavy and gold eight 6 ft tables": [tables(8, 72, colours=[NAVY, GOLD])],
        "eight 6 ft tables in hold and white": [tables(8, 72, colours=[GOLD, WHITE])],
        "eight 6 ft tables, white and sliver": [tables(8, 72, colours=[WHITE, {"name": "silver"}])],
        "a 5 ft joop": [heard("hoop", count=1, diameter_in=60)],
        "eight 6 ft tables, hold the greenery": [tables(8, 72, foliage=False)],
    },
    "too few people for all tables sit at each of them": {
        "five 6 ft tables for 8 people": [tables(5, 72, seats=8)],
    },
    "colours and shares that take turns without commas": {
        "eight 6 ft tables navy 60% gold 40%": [
            tables(8, 72, colours=[{**NAVY, "share": 0.6}, {**GOLD, "share": 0.4}]),
        ],
        "60 percent navy gold 40 percent eight 6 ft tables": [
            tables(8, 72, colours=[{**NAVY, "share": 0.6}, {**GOLD, "share": 0.4}]),
        ],
        "eight 6 ft tables, navy 60, gold 40": [
            tables(8, 72, colours=[{**NAVY, "share": 0.6}, {**GOLD, "share": 0.4}]),
        ],
        "eight 6 ft tables in two colours, navy and gold": [tables(8, 72, colours=[NAVY, GOLD])],
        "eight 6 ft tables, navy 3 parts, gold 1 part": [
            tables(8, 72, colours=[{**NAVY, "share": 0.75}, {**GOLD, "share": 0.25}]),
        ],
    },
    "some of a number that is said with them": {
        "half of the twelve 6 ft tables in navy, half in gold": [
            tables(6, 72, colours=[NAVY]), tables(6, 72, colours=[GOLD]),
        ],
        "ten 6 ft tables, half of them navy and half gold": [
            tables(5, 72, colours=[NAVY]), tables(5, 72, colours=[GOLD]),
        ],
        "ten 6 ft tables / half the tables in gold": [tables(5, 72), tables(5, 72, colours=[GOLD])],
        "ten 6 ft tables, four of them get a full drop": [tables(6, 72), tables(4, 72, coverage="drop_both")],
        "two 6 ft columns in navy and gold, half of it navy": [
            {**column(2, 72), "colours": [{**NAVY, "share": 0.5}, {**GOLD, "share": 0.5}]},
        ],
        "four tables of 8 ft, six of six and two of 10": [tables(4, 96), tables(6, 72), tables(2, 120)],
    },
    "a piece that is named once more": {
        "hoop 36 in, hoop 48 in": [heard("hoop", diameter_in=36), heard("hoop", diameter_in=48)],
        "two columns and an arch, columns 6 ft, arch 8 by 7": [
            column(2, 72), heard("arch", count=1, span_in=96, height_in=84),
        ],
        "a 10 ft garland in gold and two matching 6 ft columns": [
            heard("garland", count=1, length_in=120, colours=[GOLD]), {**column(2, 72), "colours": [GOLD]},
        ],
    },
    "sizes said in a roundabout way": {
        "an arch as wide as it's tall, 8 ft": [heard("arch", count=1, span_in=96, height_in=96)],
        "arch, 22 feet of it": [heard("arch", length_in=264)],
        "column 6 ft x 4": [column(4, 72)],
        "wall 8 x 7 x 2": [heard("wall", count=2, span_in=96, height_in=84)],
        "2x 6 ft columns": [column(2, 72)],
        "ten bouquets of 3, 11 inch": [heard("bouquet", count=10, balloons=3, sizes_in=[11])],
        "a dozen centrepieces, four 11 inch each": [heard("centerpiece", count=12, balloons=4, sizes_in=[11])],
        "eight tables eight feet no not eight six feet": [tables(8, 72)],
        "the tables are 8 ft, nine in total": [tables(9, 96)],
    },
    "a number behind the name of one thing is its size, where none follows": {
        "garland 10": [heard("garland", length_in=120)],
        "column 96": [heard("column", height_in=96)],
        "column 4, 6 ft": [column(4, 72)],
        "arch 10, 8 high": [heard("arch", span_in=120, height_in=96)],
        "columns 6, 7 ft": [column(6, 84)],
    },
    "a number with a point, or in the hundreds, may be metric": {
        "column 180 tall": [heard("column", height_in=pytest.approx(70.87, abs=0.01))],
        "12 tables of 2.4": [tables(12, pytest.approx(94.49, abs=0.01))],
        "two 1.8 columns": [column(2, pytest.approx(70.87, abs=0.01))],
    },
    "a round table is asked about as such": {
        "eight round tables / 60": [heard("runner", count=8, table_shape="round", table_diameter_in=60)],
    },
}  # fmt: skip

# The turns -> what is held, and words that are told as not used.
LEFT = {
    "a 10 ft garland, it must go through a 30 inch door": ("30 inch door", heard("garland", count=1, length_in=120)),
    "10 ft garland, door is 32 wide": ("door is 32 wide", heard("garland", length_in=120)),
    "two 7 ft columns, the van is 5 ft long and 4 ft high": ("van is 5 ft long and 4 ft high", column(2, 84)),
    "two 7 ft columns, one either side of a 6 ft door": ("6 ft door", column(2, 84)),
    "two 6 ft columns 10 ft apart": ("10 ft apart", column(2, 72)),
    "10 ft garland, I pay 12 for parking": ("I pay 12", heard("garland", length_in=120)),
    "10 ft garland, 12 for parking": ("12", heard("garland", length_in=120)),
    "ten 6 ft tables, some in gold": ("some in gold", tables(10, 72)),
    "two 6 ft columns, gold at the bottom": ("at the bottom", {**column(2, 72), "colours": [GOLD]}),
    "eight 6 ft tables / three are for the children": ("three", tables(8, 72)),
}  # fmt: skip


@pytest.mark.parametrize(
    ("said", "pieces"), [pytest.param(said, held, id=said) for kind in READ.values() for said, held in kind.items()]
)
def test_it_is_read(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert (reply.question, reply.unread) == (None, [])


@pytest.mark.parametrize("said", LEFT)
def test_it_is_told_as_not_used(said: str) -> None:
    words, piece = LEFT[said]
    reply = after(said)
    assert reply.heard.pieces == [piece]
    assert reply.heard.job.keys() <= {"intent"}
    assert words in reply.unread


def test_a_share_paid_at_booking_is_a_percentage() -> None:
    assert after("a 10 ft garland, half deposit").heard.job == {"deposit_pct": 50}
    assert after("eight 6 ft tables / half down the middle").heard.job.keys() <= {"intent"}


def test_the_most_that_can_be_spent_is_a_budget_and_no_number_of_tables() -> None:
    reply = after("$300 is the most I can spend on six 8 ft tables")
    assert reply.heard.pieces == [tables(6, 96)]
    assert reply.heard.job["budget"] == {"amount": 300, "currency": "$"}


@pytest.mark.parametrize("answer", ["yes", "inches", "inches obviously", "60", "60 in"])
def test_feet_that_only_inches_make_sense_of_are_asked_about_in_one_short_question(answer: str) -> None:
    assert after("six 60 foot rounds").question == "60 foot cannot be the table diameter. 60 inches?"
    reply = after(f"six 60 foot rounds / {answer}")
    assert reply.heard.pieces == [heard("runner", count=6, table_shape="round", table_diameter_in=60)]
    assert (reply.question, reply.unread) == (None, [])


def test_one_size_of_an_arch_is_asked_about_and_the_other_one_after_it() -> None:
    assert after("arch 10").question == "10: wide or high or along the curve?"
    assert after("arch 10 / wide").question == "How high?"


def test_two_ways_are_compared() -> None:
    reply = after("price ten 6 ft tables two ways, full length and two thirds")
    assert reply.heard.job["intent"] == "compare"
    assert [piece["coverage"] for piece in reply.heard.pieces] == ["full", "two_thirds"]


def test_what_is_left_is_split_among_the_other_colours() -> None:
    reply = after("six 6 ft tables, white, navy and gold, 60% white and the rest split")
    assert [colour["share"] for colour in reply.heard.pieces[0]["colours"]] == [0.6, 0.2, 0.2]


def test_a_budget_that_has_become_another_one() -> None:
    assert after("eight 6 ft tables, budget 500 / budget's now 700").heard.job["budget"] == {"amount": 700}


@pytest.mark.parametrize(
    ("said", "pieces", "unread"),
    [
        ("15 ft garland with 3 whatsits", [heard("garland", length_in=180)], ["3 whatsits"]),
        ("15 ft garland with 2 doodahs", [heard("garland", length_in=180)], ["2 doodahs"]),
    ],
)
def test_a_number_of_something_else_is_named(said: str, pieces: list[dict[str, Any]], unread: list[str]) -> None:
    reply = after(said)
    assert (reply.heard.pieces, reply.unread) == (pieces, unread)


def test_a_number_of_children_is_no_hour() -> None:
    assert after("kids party 20 kids 8 tables").heard.job == {"guests": 20}


@pytest.mark.parametrize(
    "said",
    [
        "a doorway its 80 inches high and 36 wide, garland up and over",
        "doorway 80 in high 36 in wide, garland round it",
        "balloons for a doorway about 80 inches high and 36 wide want a garland up and over",
    ],
)
def test_an_opening_may_be_measured_before_the_garland_is_named(said: str) -> None:
    """Twice its height and once its width: 2 x 80 + 36 in."""
    reply = after(said)
    piece = reply.heard.pieces[0]
    assert (piece["kind"], piece["height_in"], piece["span_in"]) == ("garland", 80, 36)
    assert next(f.value for f in reply.figures if f.id == "decor_length") == pytest.approx(196 / 12)
    assert reply.unread == []


def test_as_many_sizes_as_pieces_are_one_each() -> None:
    said = after("3 hoops 4ft 5ft and 6ft").heard.pieces
    assert [(piece["count"], piece["diameter_in"]) for piece in said] == [(1, 48), (1, 60), (1, 72)]
