"""Changes as people make them: what is held after the last turn, decided by what the sentence means."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables


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
        ("20 ft garland / make it 36", heard("garland", length_in=432)),
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
    (garland,) = after("12 ft garland white / add another colour, gold").heard.pieces
    assert [c["name"] for c in garland["colours"]] == ["white", "gold"]
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
