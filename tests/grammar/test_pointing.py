"""One of several alike, some and not the others, sizes so many times as great: what is held after the last turn."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables

LEAVES = {"foliage": True}
NONE = {"foliage": False}


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        ("five 6 ft columns / the middle one 9 ft", [column(4, 72), column(1, 108)]),
        ("two 6 ft columns / the one on the left 8 ft", [column(1, 72), column(1, 96)]),
        ("four 7 ft columns / make the last column 5 ft", [column(3, 84), column(1, 60)]),
        ("four 7 ft columns / the third should be a foot taller", [column(3, 84), column(1, 96)]),
        ("six 6 ft tables / full drop on the first one", [tables(5, 72), tables(1, 72) | {"coverage": "drop_both"}]),
        ("three 6 ft columns / lose the right hand one", [column(2, 72)]),
        ("five 6 ft columns / the outer ones 8 ft", [column(3, 72), column(2, 96)]),
        ("three 6 ft columns / one should be 8 ft", [column(2, 72), column(1, 96)]),
        ("eight 6 ft tables / the head table is 8 ft", [tables(7, 72), tables(1, 96)]),
        (
            "10 ft garland and three 6 ft columns / the middle column 8 ft",
            [heard("garland", length_in=120), column(2, 72), column(1, 96)],
        ),
        ("six 6 ft tables / two thirds down the middle", [tables(6, 72) | {"coverage": "two_thirds"}]),
    ],
)
def test_one_of_several_alike_is_split_off(said: str, pieces: list[dict[str, Any]]) -> None:
    """It alone is as said, and the others stay as they were; the middle of a table is no table."""
    assert after(said).heard.pieces == pieces


@pytest.mark.parametrize("said", ["two 6 ft columns / the third one 8 ft", "four 6 ft columns / the middle one 8 ft"])
def test_one_that_there_is_not_is_asked_about(said: str) -> None:
    """Two have no third and four no middle."""
    reply = after(said)
    assert reply.question is not None
    assert [piece["height_in"] for piece in reply.heard.pieces] == [72]


@pytest.mark.parametrize(
    ("said", "piece"),
    [
        ("18 ft garland / half as long", heard("garland", length_in=108)),
        ("18 ft garland / half that", heard("garland", length_in=108)),
        ("18 ft garland / a third shorter", heard("garland", length_in=144)),
        ("18 ft garland / a third longer", heard("garland", length_in=288)),
        ("20 ft garland / 10% longer", heard("garland", length_in=264)),
        ("10 ft garland / half as long again", heard("garland", length_in=180)),
        ("10 ft garland / double it", heard("garland", length_in=240)),
        ("arch 6 by 7 ft / twice as wide", heard("arch", span_in=144, height_in=84)),
        ("arch 6 by 8 ft / half the height", heard("arch", span_in=72, height_in=48)),
        ("swag 12 ft across, 2 ft sag / twice the sag", heard("swag", span_in=144, sag_in=48)),
        ("8 ft hoop / half the size", heard("hoop", diameter_in=48)),
        ("three 6 ft columns / three times as tall", column(3, 216)),
        ("twelve 6 ft tables / half that", tables(6, 72)),
        ("twelve 6 ft tables / a quarter fewer", tables(9, 72)),
        ("drop of 200 balloons / half as many", heard("drop", balloons=100)),
        ("six bouquets of 4 / twice as many in each", heard("bouquet", count=6, balloons=8)),
        ("twelve 6 ft tables / half the length", {**tables(12, 72), "coverage_fraction": 0.5}),
        ("wall 8 ft high and the same wide", heard("wall", span_in=96, height_in=96)),
    ],
)
def test_a_size_so_many_times_as_great(said: str, piece: dict[str, Any]) -> None:
    """A share with a direction is of the size; alone it is of the one size, or of how many there are."""
    reply = after(said)
    assert reply.heard.pieces == [piece]
    assert reply.question is None or "wide" in reply.question


def test_a_table_a_third_shorter_is_asked_about() -> None:
    """It may be the table or the runner on it."""
    reply = after("twelve 6 ft tables / a third shorter")
    assert reply.question is not None
    assert reply.heard.pieces == [tables(12, 72)]


@pytest.mark.parametrize(
    ("said", "leaves"),
    [
        ("greenery on the arch only", [True, False, False]),
        ("only the arch gets greenery", [True, False, False]),
        ("greenery just on the arch and the garland", [True, True, False]),
        ("no greenery except on the garland", [False, True, False]),
        ("everything but the arch gets greenery", [False, True, True]),
        ("greenery on everything except the columns", [True, True, False]),
        ("greenery on the arch, none on the garland", [True, False, None]),
        ("all with greenery / not on the columns though", [True, True, False]),
    ],
)
def test_what_some_have_and_the_others_do_not(said: str, leaves: list[bool | None]) -> None:
    """Said of what is in hand or in the same breath."""
    pieces = "arch 8 by 8 ft, 10 ft garland and two 6 ft columns"
    assert [piece.get("foliage") for piece in after(f"{pieces} / {said}").heard.pieces] == leaves


def test_all_but_some_by_their_size_or_one_table() -> None:
    """Pieces of one kind are told apart by size; one table of several is split off."""
    pieces = after("five 6 ft tables and two 8 ft tables / all full drop except the 8 footers, two thirds on those")
    assert [piece["coverage"] for piece in pieces.heard.pieces] == ["drop_both", "two_thirds"]
    pieces = after("eight 6 ft tables / greenery on all of them except the cake table")
    assert pieces.heard.pieces == [tables(7, 72) | LEAVES, tables(1, 72) | NONE]
    colours = after("arch 8 by 8 ft, 10 ft garland / all gold except the arch in white").heard.pieces
    assert [piece["colours"][0]["name"] for piece in colours] == ["white", "gold"]


@pytest.mark.parametrize(
    ("said", "kinds"),
    [
        ("just the garland then", ["garland"]),
        ("only the arch and the garland", ["arch", "garland"]),
        ("skip the columns / and the arch", ["garland"]),
        ("keep the arch, lose the rest", ["arch"]),
        ("change the arch to a 5 ft hoop", ["hoop", "garland", "column"]),
        ("swap the columns for a 5 ft hoop", ["arch", "garland", "hoop"]),
        ("replace the arch with two 6 ft swags", ["swag", "garland", "column"]),
    ],
)
def test_pieces_that_stay_go_or_give_way(said: str, kinds: list[str]) -> None:
    """What takes the place of a piece stands in its place."""
    pieces = "arch 8 by 8 ft, 10 ft garland and two 6 ft columns"
    assert [piece["kind"] for piece in after(f"{pieces} / {said}").heard.pieces] == kinds


@pytest.mark.parametrize("answer", ["the garland", "the first"])
def test_a_size_that_may_be_of_either_piece_is_asked_about(answer: str) -> None:
    """10 ft is nearer to the garland's 8 than to the columns' 6, which were said last."""
    talk = "an 8 ft garland and two 6 ft columns / make it 10 ft"
    reply = after(talk)
    assert reply.question == "10 ft: the garland or the column?"
    assert [piece.get("length_in", piece.get("height_in")) for piece in reply.heard.pieces] == [96, 72]
    settled = after(f"{talk} / {answer}")
    assert settled.question is None
    assert [piece.get("length_in", piece.get("height_in")) for piece in settled.heard.pieces] == [120, 72]


def test_a_size_is_of_the_piece_spoken_of_last_where_it_is_nearest_to_that() -> None:
    """No question where one of them alone is likely."""
    reply = after("two 6 ft columns and a 10 ft garland / make it 12 ft")
    assert reply.question is None
    assert [piece.get("length_in", piece.get("height_in")) for piece in reply.heard.pieces] == [72, 144]


def test_what_is_changed_must_be_there() -> None:
    """ "The columns", where there are none, are not made."""
    reply = after("10 ft garland / make the columns 7 ft")
    assert reply.question == "There is no column yet, so that was not kept. Which piece is it for?"
    assert reply.heard.pieces == [heard("garland", length_in=120)]
