"""A consult turn after turn: sizes in a row, some by where they stand, what hangs on a weight, money taken off."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables

GARLAND = heard("garland", count=1, length_in=120)
GOLD = [{"name": "gold"}]


def hoop(count: int, diameter: float, **facts: Any) -> dict[str, Any]:
    return heard("hoop", count=count, diameter_in=diameter, **facts)


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        ("two hoops, a 4 ft and a 6 ft", [hoop(1, 48), hoop(1, 72)]),
        ("two hoops, a 4 ft one and a 6 ft one", [hoop(1, 48), hoop(1, 72)]),
        ("two columns, a 6 ft and an 8 ft column", [column(1, 72), column(1, 96)]),
        ("three columns at heights 4 5 and 6 ft", [column(1, 48), column(1, 60), column(1, 72)]),
        ("columns at heights 4 5 and 6 ft", [column(1, 48), column(1, 60), column(1, 72)]),
        ("two columns of 7", [column(2, 84)]),
        ("a 5 ft hoop / make that two hoops of 4", [hoop(2, 48)]),
        ("two 6 ft columns / go to 7 and a half", [column(2, 90)]),
        ("a 10 ft garland / a longer one, 12 ft", [{**GARLAND, "length_in": 144}]),
        ("three 5 ft hoops / swap one for a 6 ft", [hoop(2, 60), hoop(1, 72)]),
        ("six 6 ft columns / the two by the door in gold", [column(4, 72), {**column(2, 72), "colours": GOLD}]),
        ("ten 6 ft tables / half the tables full drop", [tables(5, 72), tables(5, 72, coverage="drop_both")]),
        ("ten 6 ft tables / just do half the tables", [tables(5, 72)]),
    ],
)
def test_each_has_the_size_that_is_meant(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert (reply.question, reply.unread) == (None, [])


def test_what_comes_after_a_piece_was_taken_away_stands_in_no_other_place() -> None:
    said = "a 10 ft garland and two 6 ft columns / drop the columns / put a 5 ft hoop there instead"
    assert after(said).heard.pieces == [GARLAND, hoop(1, 60)]


@pytest.mark.parametrize(
    ("said", "unread"),
    [
        ("a wall 8 by 8 ft / leave a 3 ft gap in the middle", "3 ft gap"),
        ("a wall 8 by 8 ft / leave an opening of 2 ft", "opening of 2 ft"),
        ("a wall 8 by 8 ft / thicker please", "thicker"),
    ],
)
def test_what_is_in_no_fact_of_a_wall_is_reported(said: str, unread: str) -> None:
    reply = after(said)
    assert reply.heard.pieces == [heard("wall", count=1, span_in=96, height_in=96)]
    assert unread in reply.unread


def test_a_runner_that_is_to_be_skinnier_is_asked_how_wide_it_shall_be() -> None:
    assert (after("eight 6 ft tables / skinnier").question or "").endswith("for example 10 in.")
    assert after("eight 6 ft tables / skinnier / 9").heard.pieces == [tables(8, 72, max_width_in=9)]


# balloons ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "count"),
    [
        ("ten round tables, each gets three balloons on a weight", 10),
        ("ten 60 inch rounds / each one gets three balloons on a weight", 10),
        ("12 tables, 3 balloons tied to a weight on each", 12),
        ("three balloons on a weight", 1),
    ],
)
def test_balloons_on_a_weight_are_a_bouquet(said: str, count: int) -> None:
    assert after(said).heard.pieces == [heard("bouquet", count=count, balloons=3)]


@pytest.mark.parametrize(
    ("turn", "kinds"),
    [
        ("a centrepiece on each", ["centerpiece"]),
        ("and a centrepiece on each", ["runner", "centerpiece"]),
        ("full length / a centrepiece on each", ["runner", "centerpiece"]),
    ],
)
def test_tables_of_which_nothing_was_dressed_only_bear_what_is_put_on_each(turn: str, kinds: list[str]) -> None:
    pieces = after(f"ten 60 inch rounds / {turn}").heard.pieces
    assert [(piece["kind"], piece["count"]) for piece in pieces] == [(kind, 10) for kind in kinds]


@pytest.mark.parametrize(
    ("said", "sizes"),
    [
        ("some 3 footers in it", [5, 11, 36]),
        ("some 18s in it", [5, 11, 18]),
        ("some 18s in it / make those 24s", [5, 11, 24]),
    ],
)
def test_sizes_that_go_into_it_come_beside_those_it_has(said: str, sizes: list[int]) -> None:
    assert after(f"a 10 ft garland in 5 and 11 inch / {said}").heard.pieces == [{**GARLAND, "sizes_in": sizes}]


@pytest.mark.parametrize("turn", ["mostly black", "mostly black with gold", "more gold", "not too heavy on the gold"])
def test_a_share_without_a_number_is_asked_about_and_takes_no_colour_away(turn: str) -> None:
    reply = after(f"a 10 ft garland in black and gold / {turn}")
    assert [colour["name"] for colour in reply.heard.pieces[0]["colours"]] == ["black", "gold"]
    assert (reply.question or "").startswith("How much ")


def test_most_of_a_colour_with_its_share_has_that() -> None:
    pieces = after("a 10 ft garland in black and gold / mostly black, 80 percent").heard.pieces
    assert pieces[0]["colours"] == [{"name": "black", "share": 0.8}, {"name": "gold", "share": 0.2}]


# money ---------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("turn", ["knock 20 off", "give her 20 off"])
def test_a_sum_off_the_price_takes_no_tables_away(turn: str) -> None:
    reply = after(f"ten 6 ft tables / how much / {turn}")
    assert (reply.heard.pieces, reply.unread) == ([tables(10, 72)], ["20"])
    assert after("ten 6 ft tables / how much / knock two off").heard.pieces == [tables(8, 72)]


def test_a_number_alone_after_a_price_is_what_is_offered() -> None:
    job = after("ten 6 ft tables / how much / can you do 500").heard.job
    assert job == {"budget": {"amount": 500}, "intent": "solve"}
    assert after("ten 6 ft tables / how much / 12").heard.pieces == [tables(12, 72)]


# tables by their name ------------------------------------------------------------------------------------------------

ROUNDS = heard("runner", count=8, table_shape="round", table_diameter_in=60)
SWEETHEART = heard("runner", count=1, table_length_in=48)


@pytest.mark.parametrize(
    ("turn", "pieces"),
    [
        ("the sweetheart table to the floor", [{**SWEETHEART, "coverage": "drop_both"}, ROUNDS]),
        ("gold on the sweetheart table", [{**SWEETHEART, "colours": GOLD}, ROUNDS]),
        ("make the rounds 72 inch", [SWEETHEART, {**ROUNDS, "table_diameter_in": 72}]),
        ("no, the sweetheart table is 5 ft", [{**SWEETHEART, "table_length_in": 60}, ROUNDS]),
        ("skip the sweetheart table", [ROUNDS]),
    ],
)
def test_a_table_with_a_name_is_that_one(turn: str, pieces: list[dict[str, Any]]) -> None:
    assert after(f"a 4 ft sweetheart table and eight 60 inch rounds / {turn}").heard.pieces == pieces


def test_tables_that_are_counted_are_not_the_one_that_has_a_name() -> None:
    said = "sweetheart table 4 ft to the floor and 8 round tables with centrepieces of 3"
    assert after(said).heard.pieces == [
        {**SWEETHEART, "coverage": "drop_both"},
        heard("centerpiece", count=8, balloons=3),
    ]


# one turn after the other --------------------------------------------------------------------------------------------


def garland(length: float, colour: str) -> dict[str, Any]:
    return {**GARLAND, "length_in": length, "colours": [{"name": colour}]}


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        (
            "ten 6 ft tables / half the tables in navy and half in gold",
            [tables(5, 72, colours=[{"name": "navy"}]), tables(5, 72, colours=GOLD)],
        ),
        (
            "six 6 ft tables and two 8 ft / the sixes two thirds, the eights right to the floor",
            [tables(6, 72, coverage="two_thirds"), tables(2, 96, coverage="drop_both")],
        ),
        (
            "three garlands, 6 8 and 10 ft / the longest one in gold, other two white",
            [garland(72, "white"), garland(96, "white"), garland(120, "gold")],
        ),
        (
            "four 6 ft columns / silver on two of them and white on the others",
            [{**column(2, 72), "colours": [{"name": name}]} for name in ("white", "silver")],
        ),
        ("twelve 6 ft tables / and one's a 4 ft", [tables(11, 72), tables(1, 48)]),
        ("nine 6 ft tables / could we skip three of them", [tables(6, 72)]),
        ("one 6 ft column and one 4 ft one / swap the 4 for a 5", [column(1, 72), column(1, 60)]),
        ("a 10 ft garland / another for the fireplace / that one's 6 ft", [GARLAND, {**GARLAND, "length_in": 72}]),
        ("two 5 ft hoops / cancel one / what if the other was 20 percent bigger", [hoop(1, 72)]),
        ("six helium bouquets of 3 / swap the helium for air", [heard("bouquet", count=6, balloons=3, gas="air")]),
        ("a 5 ft hoop / leave a 1 ft gap / forget that, half covered", [hoop(1, 60, coverage_fraction=0.5)]),
        ("a 5 ft hoop / leave a 1 ft gap / no put it back", [hoop(1, 60)]),
    ],
)
def test_a_later_turn_speaks_of_those_in_hand(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert reply.question is None


@pytest.mark.parametrize(
    ("turn", "left"),
    [
        ("they're out of navy, use royal blue", ["silver", "white", "royal blue"]),
        ("we've run out of navy", ["silver", "white"]),
        ("make it out of navy and gold", ["navy", "gold"]),
    ],
)
def test_a_colour_that_cannot_be_had_goes(turn: str, left: list[str]) -> None:
    colours = after(f"a 10 ft garland in navy, silver and white / {turn}").heard.pieces[0]["colours"]
    assert [colour["name"] for colour in colours] == left


def test_the_size_of_what_an_arch_gets_over_is_not_its_own() -> None:
    reply = after("an arch 9 ft wide 8 ft high / it has to clear the door which is 7 ft")
    assert (reply.question, reply.unread) == (None, ["clear", "7 ft"])


def test_what_she_can_stretch_to_is_the_budget() -> None:
    assert after("ten 6 ft tables / she can only stretch to 650").heard.job["budget"] == {"amount": 650}


def test_one_at_each_end_are_two() -> None:
    assert after("a 10 ft garland / and a column each end 6 ft").heard.pieces == [GARLAND, column(2, 72)]


def test_what_makes_them_thicker_is_of_all_of_them() -> None:
    reply = after("columns at heights 4 5 and 6 ft / make them a bit thicker")
    assert [piece["lushness"] for piece in reply.heard.pieces] == ["lush"] * 3
    assert "Fullness: even clusters are as thick as their balloons" in " ".join(reply.text.split())


def test_bigger_balloons_whose_size_follows_are_no_bigger_piece() -> None:
    reply = after("a 10 ft garland / can we have bigger balloons in it, some 18s")
    assert (reply.question, reply.heard.pieces) == (None, [{**GARLAND, "sizes_in": [18]}])


def test_a_word_is_not_offered_in_place_of_itself() -> None:
    assert "did you mean coverage" not in " ".join(after("six 6 ft tables end to end coverage").text.split())


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        (
            "two 7 ft columns / make the left one all gold / and the right all white",
            [{**column(1, 84), "colours": [{"name": name, "share": 1.0}]} for name in ("white", "gold")],
        ),
        (
            "eight 6 ft tables / two more tables / and those two full drop",
            [tables(8, 72), tables(2, 72, coverage="drop_both")],
        ),
        ("six 6 ft tables / the kids table doesn't need one", [tables(5, 72)]),
        ("eight 6 ft tables / can we do every other table", [tables(4, 72)]),
        ("five 8 ft tables, runner 12 inches wide / go narrower, 10", [tables(5, 96, max_width_in=10)]),
        ("a 10 ft garland / make it a foot longer / no leave it", [GARLAND]),
        ("a hoop 5 ft half covered", [hoop(1, 60, coverage_fraction=0.5)]),
        ("a hoop 5 ft half covered in gold", [hoop(1, 60, coverage_fraction=0.5, colours=GOLD)]),
        ("two columns, first 6 ft second 8 ft", [column(1, 72), column(1, 96)]),
        ("two columns, the first one 6 ft and the second one 8 ft", [column(1, 72), column(1, 96)]),
        ("two 6 ft columns / with toppers / take it off one", [column(1, 72) | {"topper": "round"}, column(1, 72)]),
        ("two 6 ft columns / with toppers / take it off", [column(2, 72)]),
        (
            "a 10 ft garland, blue and silver / mostly blue though, 70 30",
            [{**GARLAND, "colours": [{"name": "blue", "share": 0.7}, {"name": "silver", "share": 0.3}]}],
        ),
    ],
)
def test_small_words_tell_which_of_them_and_how_much(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert (reply.question, reply.unread) == (None, [])


def test_half_of_an_odd_number_of_tables_is_none_of_the_table() -> None:
    reply = after("nine 6 ft tables / can we do every other table")
    assert (reply.heard.pieces, reply.unread) == ([tables(9, 72)], ["every other"])


def test_one_side_of_it_answers_no_question_after_its_size() -> None:
    assert "length_in" not in after("a garland / one side in white, other in gold").heard.pieces[0]


def test_what_goes_down_the_sides_is_not_taken_down() -> None:
    assert "strike" not in after("a 10 ft garland / can we take it down the sides, 3 ft each side").heard.job


def test_after_a_change_it_can_be_gone_with() -> None:
    assert after("a 10 ft garland / what if it was 15 ft / go with that").question is None


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        (
            "three tables, one 8 ft two 6 ft / gold on the 8, navy on the 6s",
            [tables(1, 96, colours=GOLD), tables(2, 72, colours=[{"name": "navy"}])],
        ),
        ("two columns, one 6 ft one 8 ft / the 8 in gold", [column(1, 72), {**column(1, 96), "colours": GOLD}]),
        (
            "eleven 6 ft tables / the last three should be gold",
            [tables(8, 72), tables(3, 72, colours=GOLD)],
        ),
        ("four 60 inch rounds / the venue's swapped them for six 6 ft trestles", [tables(6, 72)]),
        ("a garland over the top table 16 ft", [{**GARLAND, "length_in": 192}]),
    ],
)
def test_a_size_with_an_article_is_the_one_of_that_size(said: str, pieces: list[dict[str, Any]]) -> None:
    assert after(said).heard.pieces == pieces
