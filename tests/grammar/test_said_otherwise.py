"""The same wish in other words: groups told apart, what is weighed up, what is gone off, tables that stand as one."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.otherwise_said import ANYWAY, GARLAND, colours


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


@pytest.mark.parametrize("wall", ["flower wall", "sequin wall", "grass wall"])
def test_a_wall_of_something_else_is_named_as_not_used(wall: str) -> None:
    assert after(f"six hoops, 5 ft, and a {wall}").unread == [wall]


def test_a_size_never_becomes_the_width_of_a_table_in_silence() -> None:
    reply = after("i said nine tables its eight, six footers")
    assert reply.question is not None
    assert reply.heard.pieces == [{"kind": "runner", "table_length_in": 72}]


@pytest.mark.parametrize(
    "said", ["ive got 300 balloons what length of garland is that", "what length garland would that make, 300 balloons"]
)
def test_what_length_is_worked_backwards(said: str) -> None:
    assert after(said).heard.job == {"intent": "solve"}


def test_what_length_of_what_is_in_hand_is_not() -> None:
    assert "intent" not in after("a 12 ft garland / what length is it").heard.job


@pytest.mark.parametrize("said", ["35 degrees? celsius", "35 degrees, centigrade", "35 degrees celsius"])
def test_a_scale_may_come_late(said: str) -> None:
    job = after(f"12 ft garland in the garden / will it survive {said}").heard.job
    assert job["temperature_f"] == 95  # 35 x 9 / 5 + 32


@pytest.mark.parametrize("said", ["I've 60 left, how tall will that make", "60 left, how high can it be"])
def test_what_is_left_is_balloons(said: str) -> None:
    reply = after(f"column with 5s and 11s / {said}")
    assert reply.heard.pieces == [heard("column", sizes_in=[5, 11], balloons=60)]
    assert reply.heard.job == {"intent": "solve"}


def test_a_size_brought_down_works_nothing_backwards() -> None:
    reply = after("wall 10 ft wide, 8 ft high / bring the height down to 7")
    assert reply.heard.pieces == [heard("wall", span_in=120, height_in=84)]
    assert reply.heard.job == {"intent": "change"}


def test_what_is_brought_under_a_sum_still_does() -> None:
    assert after("eight 6 ft tables / bring it under $300").heard.job["intent"] == "solve"


def test_a_colour_swapped_for_nothing_stays_and_is_named() -> None:
    reply = after("two arches 9 by 8, peach, rust and cream / can we swap out the rust")
    assert reply.heard.pieces[0]["colours"] == colours("peach", "rust", "cream")
    assert reply.unread == ["rust"]


@pytest.mark.parametrize("said", ["in the same two colours", "the same two colours", "in those colours"])
def test_the_same_two_colours_are_the_same(said: str) -> None:
    reply = after(f"three 5 ft hoops, lilac and silver / two 6 ft columns too, {said}")
    assert reply.heard.pieces[1] == {**column(2, 72), "colours": colours("lilac", "silver")}


def test_a_list_of_what_is_needed_is_for_shopping() -> None:
    assert after("list what I need for two 9 by 8 arches in blush and sage").heard.job == {"intent": "shopping"}
