"""The same wish in other words: groups told apart, what is weighed up, what is gone off, tables that stand as one."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables

M = 39.3701  # inches: the international yard is 0.9144 m
GARLAND = heard("garland", length_in=168)
ONE_EACH = [heard("garland", count=1, length_in=120), heard("garland", count=1, length_in=72)]
SQUARES = [{"kind": "runner", "count": 6, "table_shape": "square", "table_length_in": 36}]


def colours(*names: str) -> list[dict[str, str]]:
    return [{"name": name} for name in names]


ANYWAY = {
    "groups are told apart by a size or a colour, and make up the number that was said": {
        "two garlands, a 10 ft one and a 6 ft one": ONE_EACH,
        "two garlands: a 10 ft and a 6 ft": ONE_EACH,
        "two garlands, one's 10 ft and the other's 6 ft": ONE_EACH,
        "two garlands, one at 10 ft, the other 6 ft": ONE_EACH,
        "couple of garlands, one of 10 ft and another of 6": ONE_EACH,
        "five tables, three 6 footers and two 8 footers": [tables(3, 72), tables(2, 96)],
        "ten tables, a 6 ft one and nine 8 ft ones": [tables(1, 72), tables(9, 96)],
        "two columns, a gold one and a silver one, 6 ft": [
            {**column(1, 72), "colours": colours("gold")},
            {**column(1, 72), "colours": colours("silver")},
        ],
    },
    "of two that are weighed up the one that is said again is meant": {
        "a six foot hoop in organic or classic no yeah organic": [
            heard("hoop", count=1, diameter_in=72, style="organic")
        ],
        "a six foot hoop, classic or organic, actually organic": [
            heard("hoop", count=1, diameter_in=72, style="organic")
        ],
        "six or eight, no eight 6 ft tables": [tables(8, 72)],
        "a 10 ft garland in navy or black, let's say black": [
            heard("garland", count=1, length_in=120, colours=colours("black"))
        ],
    },
    "tables that are pushed together are one": {
        "we're putting four 6 ft tables together as one long top table": [tables(1, 288)],
        "four 6 ft tables lined up as a single long one": [tables(1, 288)],
        "we're pushing three 8 ft tables together, full length": [tables(1, 288, coverage="full")],
        "three 6 ft tables together with a single runner down them": [tables(1, 216)],
    },
    "but putting a job together pushes no tables": {
        "putting together a quote for eight 6 ft tables": [tables(8, 72)],
        "eight 6 ft tables and put it together for me": [tables(8, 72)],
    },
    "each way is every side": {
        "six squares, 3 ft each way": SQUARES,
        "six squares, 3 ft on each side": SQUARES,
        "a wall 8 ft each way": [heard("wall", count=1, span_in=96, height_in=96)],
    },
    "unless it is a road, or what hangs down": {
        "20 miles each way, four square tables 36 inches": [
            {"kind": "runner", "count": 4, "table_shape": "square", "table_length_in": 36}
        ],
        "ten 6 ft tables, 10 inches each side": [tables(10, 72, overhang_in=10)],
    },
    "both of some is two": {
        "full length on the six foot tables both of them": [tables(2, 72, coverage="full")],
        "both of the five foot hoops two thirds": [heard("hoop", count=2, diameter_in=60, coverage="two_thirds")],
    },
    "but both sides are no two tables": {
        "6 ft tables covered both sides, ten of them": [tables(10, 72)],
        "both of us, eight 6 ft tables": [tables(8, 72)],
    },
    "the two of them are all that was named": {
        "garland 10 ft, column 6 ft, the two of them in rust": [
            heard("garland", length_in=120, colours=colours("rust")),
            heard("column", height_in=72, colours=colours("rust")),
        ],
        "garland 10 ft, column 6 ft, all of it rust": [
            heard("garland", length_in=120, colours=colours("rust")),
            heard("column", height_in=72, colours=colours("rust")),
        ],
    },
    "a number is how many there are of what was named as several, and the size of one thing": {
        "hoops, 5 ft across / there'll be three": [heard("hoop", count=3, diameter_in=60)],
        "hoops, 5 ft across / three in all": [heard("hoop", count=3, diameter_in=60)],
        "hoops, 5 ft across / we want 3": [heard("hoop", count=3, diameter_in=60)],
        "a hoop 5 ft / 6": [heard("hoop", count=1, diameter_in=72)],
        "hoops, 5 ft / make it 6": [heard("hoop", diameter_in=72)],
    },
    "a wall that is there is no piece": {
        "a 15 foot garland hung on the church wall": [heard("garland", count=1, length_in=180)],
        "a 15 foot garland against the marquee wall": [heard("garland", count=1, length_in=180)],
        "a wedding arch 9 by 8": [heard("arch", count=1, span_in=108, height_in=96)],
    },
    "not sure how wide is no denial": {
        "two swags not sure how wide maybe nine foot": [heard("swag", count=2, span_in=108)],
        "two columns not sure how tall say seven foot": [column(2, 84)],
    },
    "legs of a garland add up": {
        "garland round the doorway, seven foot up one side, four foot over the top, seven foot back down": [
            heard("garland", length_in=216, place="doorway")
        ],
        "garland round the doorway up 7 ft, across 4 ft, down 7 ft": [heard("garland", length_in=216, place="doorway")],
        "garland round the doorway 7 ft up each side and 4 across the top": [
            heard("garland", length_in=216, place="doorway")
        ],
    },
    "but what the door is, and a way alone, adds nothing": {
        "garland 10 ft long over a door 7 ft high": [heard("garland", length_in=120)],
        "garland 7 ft, going up the stairs": [heard("garland", length_in=84, place="stair")],
    },
    "a table with a name of its own is one": {
        "the cake table's 5 ft, full drop": [tables(1, 60, coverage="drop_both")],
        "her sweetheart table's five foot, full drop": [tables(1, 60, coverage="drop_both")],
    },
    "a curve is measured": {
        "organic arch, 6 metres measured round the curve": [
            heard("arch", length_in=pytest.approx(6 * M), style="organic")
        ],
        "organic arch, 6 metres following the curve": [heard("arch", length_in=pytest.approx(6 * M), style="organic")],
    },
    "a few of a size tell no number of pieces": {
        "twenty foot garland using 5s, 11s and a few 17s": [heard("garland", length_in=240, sizes_in=[5, 11, 17])],
        "twenty foot garland using 5 inch, 11 inch and a few 17 inch": [
            heard("garland", length_in=240, sizes_in=[5, 11, 17])
        ],
        "twenty foot garland using 5s, 11s, a couple of 17s": [heard("garland", length_in=240, sizes_in=[5, 11, 17])],
    },
    "so many a table are those in each centrepiece, once there are some, and seats with guests": {
        "eight centrepieces with 3 balloons / five a table would be better": [
            heard("centerpiece", count=8, balloons=5)
        ],
        "eight centrepieces with 3 balloons, 80 guests / ten per table": [
            heard("centerpiece", count=8, balloons=3, seats=10)
        ],
        "twelve bouquets of 5 / seats 8 per table": [heard("bouquet", count=12, balloons=5, seats=8)],
    },
    "a size said once more is no number": {
        "hoops are five foot not six theyre five four of them": [heard("hoop", count=4, diameter_in=60)],
    },
    "an ear writes another first letter": {
        "senterpieces of three, ten of them": [heard("centerpiece", count=10, balloons=3)],
        "two 6 ft kolumns": [column(2, 72)],
        "airfilled bouquets of three ten of them": [heard("bouquet", count=10, balloons=3, gas="air")],
    },
}


@pytest.mark.parametrize(
    ("said", "pieces"), [(said, pieces) for cases in ANYWAY.values() for said, pieces in cases.items()]
)
def test_other_words_for_the_same_pieces(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces


@pytest.mark.parametrize(
    "said",
    [
        "she's gone off the copper",
        "she doesn't like the copper",
        "not keen on the copper",
        "the copper's a no",
        "the copper's gone",
        "copper's off",
        "no longer want the copper",
        "the copper has to go",
        "scrub the copper",
    ],
)
def test_a_colour_that_is_gone_off_goes(said: str) -> None:
    reply = after(f"garland 14 ft, navy, blush and copper / {said}")
    assert reply.heard.pieces == [{**GARLAND, "colours": colours("navy", "blush")}]
    assert reply.heard.job == {"intent": "change"}


@pytest.mark.parametrize("said", ["rose's garland, 14 ft", "amber's party, garland 14 ft"])
def test_a_person_may_be_called_as_a_colour_is(said: str) -> None:
    assert after(said).heard.pieces == [GARLAND]


@pytest.mark.parametrize(
    "many", ["a handful of", "loads of", "a load of", "lots of", "a bunch of", "a number of", "umpteen"]
)
def test_nobody_knows_how_many_that_is(many: str) -> None:
    reply = after(f"{many} 6 ft columns, peach")
    assert reply.question is not None
    assert reply.heard.pieces == [heard("column", height_in=72, colours=colours("peach"))]


@pytest.mark.parametrize(
    ("said", "piece"),
    [
        ("a bunch of 7 in gold", heard("bouquet", count=1, balloons=7, colours=colours("gold"))),
        ("a 14 ft garland with lots of gold", {**GARLAND, "count": 1, "colours": colours("gold")}),
    ],
)
def test_lots_of_a_colour_and_a_bunch_are_no_such_number(said: str, piece: dict[str, Any]) -> None:
    reply = after(said)
    assert reply.question is None
    assert reply.heard.pieces == [piece]


@pytest.mark.parametrize(
    "said",
    [
        "35 percent on top of materials",
        "35% on materials",
        "I add 35 percent to the materials",
        "plus 35 percent over cost",
        "I put 35% on top of the materials",
    ],
)
def test_what_comes_on_top_of_the_materials_is_a_markup(said: str) -> None:
    reply = after(f"a 9 ft by 8 ft arch, {said}")
    assert reply.heard.job == {"markup_pct": 35}
    assert reply.heard.pieces == [heard("arch", count=1, span_in=108, height_in=96)]


def test_money_that_is_spent_on_materials_is_none() -> None:
    assert "markup_pct" not in after("spend 300 on materials, eight 6 ft tables").heard.job


@pytest.mark.parametrize(
    "said", ["and back again", "back again", "one more back", "go back again", "another step back"]
)
def test_back_again_is_one_more_step_back(said: str) -> None:
    reply = after(f"ten bouquets of 5 / 7 / 9 / go back / {said}")
    assert reply.heard.pieces == [heard("bouquet", count=10, balloons=5)]
    assert reply.heard.job == {"intent": "undo"}


@pytest.mark.parametrize(
    "said",
    [
        "there's 240 in the box, how far will they go",
        "240 in stock, how far will it go",
        "got a bag of 240 here, how long can I go",
        "we've 240 to use up, how much garland is that",
    ],
)
def test_what_is_in_the_box_is_balloons(said: str) -> None:
    reply = after(f"organic garland, 5s and 11s / {said}")
    assert reply.heard.pieces == [heard("garland", style="organic", sizes_in=[5, 11], balloons=240)]
    assert reply.heard.job == {"intent": "solve"}


@pytest.mark.parametrize(
    "said",
    [
        "how many would that get her",
        "how many will that buy",
        "how many can she have",
        "what will that get her",
        "how many is that",
    ],
)
def test_how_many_a_budget_gets_is_worked_backwards(said: str) -> None:
    job = after(f"her budget's 200 quid / 5 ft hoops, half covered / {said}").heard.job
    assert job == {"intent": "solve", "budget": {"amount": 200, "currency": "£"}}


@pytest.mark.parametrize(
    "said",
    [
        "two hundred and forty balloons how many six foot tables",
        "240 balloons how many six foot tables",
        "how many six foot tables out of two hundred and forty balloons",
    ],
)
def test_so_many_balloons_and_how_many_tables_is_worked_backwards(said: str) -> None:
    reply = after(said)
    assert reply.heard.pieces == [{"kind": "runner", "table_length_in": 72, "balloons": 240}]
    assert reply.heard.job == {"intent": "solve"}


@pytest.mark.parametrize(
    "said",
    [
        "starts quarter to eight, hall's open to us from three",
        "it's on at quarter to eight and the hall's open from three",
        "guests come quarter to eight, we have the place from three",
        "starts 7.45, they open up for us at three",
    ],
)
def test_when_it_begins_and_when_we_get_in(said: str) -> None:
    reply = after(f"bash {said}, two swags 4m")
    assert reply.heard.job == {"event_time": "19:45", "setup_from": "15:00"}
    assert reply.heard.pieces[0]["count"] == 2


def test_what_stands_said_once_more_is_a_change_and_a_question_is_none() -> None:
    assert after("eight 6 ft tables, navy and gold / just navy and gold").heard.job == {"intent": "change"}
    assert "intent" not in after("eight 6 ft tables / how many balloons for 6 ft tables").heard.job


@pytest.mark.parametrize(
    "said",
    [
        "leave the 17s out",
        "lose the 17 inch",
        "get rid of the 17 inch ones",
        "the 17s can go",
        "ditch the big ones",
        "cut out the 17 inch balloons",
    ],
)
def test_balloons_of_a_size_go_and_not_the_arch(said: str) -> None:
    reply = after(f"arch 9 by 8 in 5s, 11s and 17s / {said}")
    assert reply.heard.pieces == [heard("arch", span_in=108, height_in=96, sizes_in=[5, 11])]
    assert reply.heard.job == {"intent": "change"}


def test_greenery_can_go_too() -> None:
    assert after("garland 14 ft with greenery / the greenery can go").heard.pieces == [{**GARLAND, "foliage": False}]


@pytest.mark.parametrize(
    "said",
    [
        "how does that stack up against four 6 ft ones",
        "how does that look next to four 6 ft ones",
        "weigh that up against four 6 ft ones",
        "four 6 ft ones by comparison",
        "is that better than four 6 ft ones",
    ],
)
def test_other_words_to_compare(said: str) -> None:
    reply = after(f"two 8 ft columns / {said}")
    assert reply.heard.pieces == [column(2, 96), column(4, 72)]
    assert reply.heard.job == {"intent": "compare"}


def test_against_the_wall_compares_nothing() -> None:
    assert after("garland 14 ft / put it against the wall").heard.job.get("intent") != "compare"


# Misspellings that dictionaries of common misspellings list; from memory, no source opened.
@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        ("fuscia", "fuchsia"),
        ("fushia", "fuchsia"),
        ("baige", "beige"),
        ("teel", "teal"),
        ("peech", "peach"),
        ("corel", "coral"),
        ("saffire", "sapphire"),
    ],
)
def test_a_strange_word_among_colours_is_the_nearest_one(wrong: str, right: str) -> None:
    reply = after(f"a garland 14 ft in {wrong} and white")
    assert reply.heard.pieces == [{**GARLAND, "count": 1, "colours": colours(right, "white")}]
    assert right in reply.text
