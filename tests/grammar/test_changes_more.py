"""Further changes as people make them: colours, counts beside sizes, the job, and what goes on from the turn before."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables


def _colours(said: str) -> list[list[str]]:
    """The names of each piece's colours, a share behind a colon."""
    return [
        [c["name"] + (f":{c['share']:g}" if "share" in c else "") for c in piece.get("colours", ())]
        for piece in after(said).heard.pieces
    ]


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("change the pink on the arch to lilac", [["white", "lilac"], ["pink", "gold"]]),
        ("swap the pink on the garland for teal", [["pink", "white"], ["gold", "teal"]]),
        ("make the pink arch lilac", [["white", "lilac"], ["pink", "gold"]]),
        ("change the pink to lilac", [["white", "lilac"], ["gold", "lilac"]]),
    ],
)
def test_a_colour_is_replaced_where_it_is_said(said: str, colours: list[list[str]]) -> None:
    """On the one piece that is named; without a name on every piece that has it."""
    got = _colours(f"arch 8 by 8 ft in pink and white and 10 ft garland in pink and gold / {said}")
    assert [set(names) for names in got] == [set(names) for names in colours]


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("white 70%", ["white:0.7", "gold:0.3"]),
        ("heavier on the white, 70%", ["white:0.7", "gold:0.3"]),
        ("half of it white", ["white:0.5", "gold:0.5"]),
        ("20% silver", ["white", "gold", "silver:0.2"]),
        ("scratch the gold, do silver", ["white", "silver"]),
        ("gold is out, go with silver", ["white", "silver"]),
        ("no not gold silver", ["white", "silver"]),
        ("leave the gold off", ["white"]),
        ("gold out, silver in", ["white", "silver"]),
        ("silver for the gold", ["white", "silver"]),
        ("the gold should be silver", ["white", "silver"]),
    ],
)
def test_a_part_of_the_whole_leaves_the_other_colours_in(said: str, colours: list[str]) -> None:
    """A share under one is no whole row of colours, and what comes for one colour leaves the others."""
    assert _colours(f"12 ft garland, white and gold / {said}") == [colours]


def test_more_of_a_colour_without_a_share_is_asked_about() -> None:
    assert after("12 ft garland, white and gold / heavier on the white").question is not None


@pytest.mark.parametrize(
    ("said", "piece"),
    [
        ("10 ft garland / make it 8 in 11 inch balloons", heard("garland", length_in=96, sizes_in=[11])),
        ("six 8 ft tables / do ten in 5 inch", tables(10, 96) | {"sizes_in": [5]}),
        ("6 bouquets of 5 / 7 each in 11 inch", heard("bouquet", count=6, balloons=7, sizes_in=[11])),
        (
            "10 ft garland and two 6 ft columns / lose the columns and make the garland 14",
            heard("garland", length_in=168),
        ),
        ("two columns 1.8 m / in feet, 7", column(2, 84)),
        ("two 6 ft columns / both 7", column(2, 84)),
        ("two 6 ft columns / put 6 inches on the height", column(2, 78)),
        ("arch 8 by 9 ft / add a foot to the width", heard("arch", span_in=108, height_in=108)),
        ("10 ft garland / make it 9 in 5s and 11s", heard("garland", length_in=108, sizes_in=[5, 11])),
        ("arch, 8 ft / high / and the same again wide", heard("arch", height_in=96, span_in=96)),
        ("six 60 foot rounds / inches I mean", heard("runner", count=6, table_shape="round", table_diameter_in=60)),
        ("two 6 ft columns / make it for", column(4, 72)),
        ("6 ft hoop / 5 ft's all they had", heard("hoop", diameter_in=60)),
        ("arch 8 by 8 ft / width's ten", heard("arch", span_in=120, height_in=96)),
        ("12 ft garland / 16 ft / undo / no put it to 14", heard("garland", length_in=168)),
        ("five bouquets of 7 / one more / no, two more", heard("bouquet", count=7, balloons=7)),
        ("table 72 in 30 inch wide", heard("runner", count=1, table_length_in=72, table_width_in=30)),
        ("twelve bouquets of 3 / float them", heard("bouquet", count=12, balloons=3, gas="helium")),
        ("8 helium bouquets of 5 / no point in helium, just air", heard("bouquet", count=8, gas="air", balloons=5)),
    ],
)
def test_a_number_is_of_what_it_can_be_of(said: str, piece: dict[str, Any]) -> None:
    """ "In" before a size of balloons is no inch; a number said anew keeps the unit; a step said anew is one step."""
    assert after(said).heard.pieces == [piece]


def test_many_pieces_at_once() -> None:
    """ "All" of several pieces, each in its own place, and one more like the last."""
    two = after("two 5 ft columns and two 7 ft columns / make them all 6 ft").heard.pieces
    assert two == [column(2, 72), column(2, 72)]
    assert _colours("arch 8 by 8 ft and two 6 ft columns / all of it red and gold") == [["red", "gold"]] * 2
    gas = after("6 bouquets of 5 and two 6 ft columns / helium in the bouquets, air in the columns").heard.pieces
    assert [piece["gas"] for piece in gas] == ["helium", "air"]
    hoops = after("a 5 ft hoop in white / another one, 4 ft").heard.pieces
    assert [(hoop["diameter_in"], hoop["colours"]) for hoop in hoops] == [
        (60, [{"name": "white"}]),
        (48, [{"name": "white"}]),
    ]
    assert _colours("12 ft garland in navy, arch 8 by 8 ft / same colours on the arch") == [["navy"], ["navy"]]
    assert _colours("six 6 ft tables in navy / and two more in gold") == [["navy"], ["gold"]]
    runners = after("four 6 ft tables, two thirds / same for six 8 ft tables").heard.pieces
    assert runners == [tables(4, 72) | {"coverage": "two_thirds"}, tables(6, 96) | {"coverage": "two_thirds"}]


@pytest.mark.parametrize(
    ("said", "job"),
    [
        ("two of us, how long / and with three?", {"crew": 3, "intent": "schedule"}),
        ("could we do it for $350 / what about 500", {"budget": {"amount": 500, "currency": "$"}, "intent": "solve"}),
        ("budget 300 / forget the budget", {"intent": "change"}),
        ("it'll be 98 out there", {"temperature_f": 98, "intent": "change"}),
        ("in navy / full drop / undo / and again", {"intent": "undo"}),
    ],
)
def test_what_is_of_the_job_goes_on_from_the_turn_before(said: str, job: dict[str, Any]) -> None:
    reply = after(f"ten 8 ft tables / {said}")
    assert reply.heard.pieces == [tables(10, 96)]
    assert reply.heard.job == job


@pytest.mark.parametrize(
    ("said", "job"),
    [
        ("budget 500 / 450", {"budget": {"amount": 450}, "intent": "change"}),
        ("80 guests / 90 now", {"guests": 90, "intent": "change"}),
    ],
)
def test_a_number_alone_near_one_of_the_job_is_that_one_anew(said: str, job: dict[str, Any]) -> None:
    """Nobody who has eight tables wants 450 of them."""
    reply = after(f"eight 6 ft tables, {said}")
    assert (reply.heard.pieces, reply.heard.job) == ([tables(8, 72)], job)


def test_one_of_two_said_side_by_side_is_chosen() -> None:
    """A comparison begun from nothing ends with a choice as well."""
    assert after("a 5 ft hoop or a 6 ft hoop, which is cheaper / ok the 6 ft").heard.pieces == [
        heard("hoop", count=1, diameter_in=72)
    ]
    with_and_without = after("five 8 ft tables / with greenery versus without")
    assert [piece["foliage"] for piece in with_and_without.heard.pieces] == [True, False]


@pytest.mark.parametrize(
    ("said", "length"),
    [
        ("cut it by 2 ft", 120),
        ("shorten it by 18 inches", 126),
        ("lengthen the garland by a foot", 156),
        ("extend it by half a metre", 144 + 50 / 2.54),
        ("cut it to 10 ft", 120),
    ],
)
def test_a_verb_may_change_a_size_by_so_much(said: str, length: float) -> None:
    held = after(f"a 12 ft garland in sage / {said}").heard.pieces
    assert [piece["length_in"] for piece in held] == [pytest.approx(length, abs=0.01)]


def test_she_wants_it_by_eleven_is_no_number_of_pieces() -> None:
    held = after("a 12 ft garland in sage / she wants it by 11").heard
    assert held.pieces[0].get("count", 1) == 1
    assert held.job["event_time"] == "11:00"


@pytest.mark.parametrize(
    ("said", "count"),
    [
        ("eleven 5 ft round tables / do you reckon one small tank does it", 11),
        ("a couple getting married want runners on three 8 ft tables", 3),
        ("a couple of 8 ft tables", 2),
        ("a couple 8 footers", 2),
    ],
)
def test_people_and_strange_things_are_not_counted(said: str, count: int) -> None:
    held = after(said).heard.pieces
    assert [piece["count"] for piece in held] == [count]


def test_no_part_of_a_balloon_is_kept() -> None:
    told = after("ten bouquets of 3 / pop a fourth balloon in each")
    assert told.heard.pieces[0]["balloons"] == 3
    assert told.question is not None


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("sage and ivory 70 30 / swap ivory for white", [["sage:0.7", "white:0.3"]]),
        ("70 % dusty sage and 30 % ivory / change the sage to navy", [["navy:0.7", "ivory:0.3"]]),
        ("dusty sage and ivory / silver for the sage", [["ivory", "silver"]]),
        ("light pink, hot pink and white / swap the pink for red", [["white", "red"]]),
    ],
)
def test_a_colour_goes_by_the_last_word_of_its_name_and_leaves_its_share(said: str, colours: list[list[str]]) -> None:
    assert _colours(f"12 ft garland in {said}") == colours


@pytest.mark.parametrize(
    ("said", "facts"),
    [
        ("7 ft garland / actually more like 9", {"length_in": 108}),
        ("8 tables of 6 ft / closer to ten", {"count": 10}),
        ("8 tables of 6 ft / more like ten tables", {"count": 10}),
        ("8 runners on 6 ft tables / each one 12 inches wide max", {"max_width_in": 12}),
        ("8 runners on 6 ft tables / tables are 30 inches wide", {"table_width_in": 30}),
    ],
)
def test_a_size_or_number_is_put_right_or_limited(said: str, facts: dict[str, float]) -> None:
    piece = after(said).heard.pieces[0]
    assert {fact: piece.get(fact) for fact in facts} == facts
    assert len(after(said).heard.pieces) == 1


@pytest.mark.parametrize(("said", "tax"), [("total with 8.25 tax", 8.25), ("vat is 20", 20), ("tax 8.875 %", 8.875)])
def test_a_tax_needs_no_sign(said: str, tax: float) -> None:
    reply = after(f"arch 8 by 7 ft / {said}")
    assert reply.heard.job["tax_pct"] == tax
    assert "length_in" not in reply.heard.pieces[0]


@pytest.mark.parametrize(
    ("said", "facts"),
    [
        ("20 bunches of 7 helium / drop the bunches to 5 each", {"count": 20, "balloons": 5}),
        ("8 tables 6 ft / drop the tables to six", {"count": 6}),
        ("8 tables 6 ft / cut the tables down to six", {"count": 6}),
        ("12 ft garland / drop the garland to 10 ft", {"length_in": 120}),
        ("two columns, they're 6 footers", {"count": 2, "height_in": 72}),
        ("8 tables, 6 footers", {"count": 8, "table_length_in": 72}),
        ("8 tables 6 ft / do we need a cherry picker", {"colours": None}),
    ],
)
def test_what_is_lowered_stays_and_footers_are_of_what_was_named(said: str, facts: dict[str, float]) -> None:
    pieces = after(said).heard.pieces
    assert len(pieces) == 1
    assert {fact: pieces[0].get(fact) for fact in facts} == facts


def test_from_one_hour_till_another_is_no_time_of_day() -> None:
    assert "event_time" not in after("8 tables 6 ft / friday night is free from 5 till 10").heard.job
    assert after("party at five till ten").heard.job["event_time"] == "21:55"


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("14 ft garland in sage and white / throw some gold in, maybe a fifth", [["sage", "white", "gold:0.2"]]),
        ("10 ft garland in sage / put some gold in", [["sage", "gold"]]),
        ("arch 8 by 8 ft in red / hoop 6 ft / with the same colours as the arch", [["red"], ["red"]]),
        ("arch 8 by 8 ft in red, hoop 6 ft same colours as the arch", [["red"], ["red"]]),
        ("8 tables 6 ft / put gold in the middle", [["gold"]]),
    ],
)
def test_a_colour_is_put_in_or_taken_over(said: str, colours: list[list[str]]) -> None:
    assert _colours(said) == colours


@pytest.mark.parametrize(
    ("said", "job"),
    [
        ("balloon drop 200 balloons / maybe 15 gusting 25", {"wind_mph": 25}),
        ("balloon drop 200 balloons / the ceiling's 9ft", {"ceiling_height": 9}),
        ("hoop 6 ft / do i need two trips then", {}),
        ("wall 6 ft wide / what runs out first if i only have one pack each", {}),
    ],
)
def test_numbers_of_other_things_leave_the_piece(said: str, job: dict[str, float]) -> None:
    reply = after(said)
    assert {fact: value for fact, value in reply.heard.job.items() if fact != "intent"} == job
    assert reply.heard.pieces == after(said.partition(" / ")[0]).heard.pieces


FIVE_METRES = heard("garland", length_in=pytest.approx(196.85, abs=0.01))


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        (
            "5 m garland / i've got 150 mixed left from last time",
            [FIVE_METRES],
        ),
        ("5 m garland / fence is 1.2 high", [FIVE_METRES]),
        ("6 centrepieces of 3 / drop the tables to 5", [heard("centerpiece", count=5, balloons=3)]),
        ("8 runners on 6 ft tables / what if i only do the head of each table", [tables(8, 72)]),
    ],
)
def test_what_is_at_hand_or_around_is_none_of_the_pieces(said: str, pieces: list[dict[str, Any]]) -> None:
    assert after(said).heard.pieces == pieces


def test_none_takes_back_what_was_put_on_last() -> None:
    assert after("arch 8 by 7 ft / greenery on it / actually none").heard.pieces[0]["foliage"] is False
