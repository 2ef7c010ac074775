"""What a place and small words say of the pieces: walls in turn, posts, floors, digits that are put up, one of them."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables

SIX = "six 6 ft tables and three 8 ft tables / "
DROPPED = [tables(6, 72, coverage="drop_both"), tables(3, 96, coverage="drop_both")]


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        ("a swag along each of four walls, 20 ft", [heard("swag", count=4, span_in=240)]),
        ("a swag along each of four walls, 15 ft walls", [heard("swag", count=4, span_in=180)]),
        ("balloons dropping at midnight, 300 of them", [heard("drop", balloons=300)]),
        ("300 balloons falling at midnight", [heard("drop", balloons=300)]),
        ("20 by 15 ft dance floor with balloons dropping on it", [heard("drop", length_in=240, span_in=180)]),
        ("the dance floor's 20 by 15, balloon drop over it", [heard("drop", length_in=240, span_in=180)]),
        ("a 5 ft hoop, cover the top third", [heard("hoop", count=1, diameter_in=60, coverage_fraction=0.3333)]),
        (
            "a wall 7 ft high, a foot past each end of the 6 ft table",
            [heard("wall", count=1, height_in=84, span_in=96)],
        ),
        (
            "a wall should stick out 2 ft each side of the 8 ft table, 7 ft high",
            [heard("wall", count=1, height_in=84, span_in=144)],
        ),
        (
            "12 ft garland over the arch / take it down the sides as well, 3 ft each side",
            [heard("garland", length_in=216)],
        ),
        ("for tables we've got eight 6 ft ones", [tables(8, 72)]),
        (SIX + "all get the full drop", DROPPED),
        (SIX + "full drop for all", DROPPED),
        (SIX + "they all get the full drop", DROPPED),
        ("doorway's 3 ft wide and 7 ft high / garland over it, 10 ft", [heard("garland", length_in=120)]),
        (
            "a 6 ft garland / and a matching one on the window, 4 ft",
            [heard("garland", count=1, length_in=72), heard("garland", count=1, length_in=48)],
        ),
        ("six 5 ft columns / knock it down to four", [column(4, 60)]),
        ("a 6 ft column / get it down to 5 ft", [column(1, 60)]),
        (
            "6 columns / 3 of those 6 in gold",
            [heard("column", count=3), heard("column", count=3, colours=[{"name": "gold"}])],
        ),
        (
            "a wall 8 by 8 white and gold / drop the white, less is more",
            [heard("wall", count=1, span_in=96, height_in=96, colours=[{"name": "gold"}])],
        ),
    ],
)
def test_a_place_says_how_many_and_how_big(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert (reply.heard.pieces, reply.unread) == (pieces, [])


@pytest.mark.parametrize(
    "last",
    [
        "one is the top table, make that 5 balloons",
        "one is for the top table, make it 5",
        "one's the top table, that gets 5",
        "make the one on the top table 5 balloons",
        "the one on the top table should have 5",
    ],
)
def test_one_is_known_by_its_table(last: str) -> None:
    pieces = after(f"12 centrepieces of 3 / {last}").heard.pieces
    assert pieces == [heard("centerpiece", count=11, balloons=3), heard("centerpiece", count=1, balloons=5)]


@pytest.mark.parametrize(
    ("last", "count"),
    [
        ("she might want 4 bunches", 4),
        ("she needs 4 bouquets", 4),
        ("she's after 4 bunches now", 4),
        ("they would like 4 bunches", 4),
        ("she also wants 4 bunches", 10),
        ("she wants another 4 bunches", 10),
        ("and 4 more bunches", 10),
    ],
)
def test_so_many_are_wanted_in_all_or_besides(last: str, count: int) -> None:
    assert after(f"6 bouquets of 2 / {last}").heard.pieces == [heard("bouquet", count=count, balloons=2)]


def test_one_size_of_balloons_is_of_all_pieces_alike() -> None:
    said = "a wall 8 by 8 and a wall 6 by 6 / can i get away with 11s only"
    assert [piece["sizes_in"] for piece in after(said).heard.pieces] == [[11], [11]]


def test_no_before_what_is_better_denies_nothing() -> None:
    assert after("a wall 8 by 8 / with 11s only / no 5s are better").heard.pieces[0]["sizes_in"] == [5]


@pytest.mark.parametrize(
    ("said", "asked"),
    [
        ("a column every 10 ft down a 60 ft aisle", "every 10 ft"),
        ("a centrepiece every 6 ft", "every 6 ft"),
        ("four pillars wrapped in garland each 9 ft tall", "How long"),
    ],
)
def test_what_only_the_place_would_tell_is_asked(said: str, asked: str) -> None:
    reply = after(said)
    assert asked in (reply.question or "")
    assert len(reply.heard.pieces) == 1


@pytest.mark.parametrize("last", ["number 40 in balloons, 4 ft high", "the letters L and M, 3 ft tall"])
def test_what_is_put_up_is_no_size_of_the_piece_in_hand(last: str) -> None:
    reply = after(f"a 6 ft column / {last}")
    assert reply.heard.pieces == [column(1, 72)]
    assert reply.unread


def test_a_party_from_an_hour_to_another() -> None:
    reply = after("six 6 ft tables / friday from 5 till 10")
    assert (reply.heard.job["event_time"], reply.question) == ("17:00", None)


@pytest.mark.parametrize(
    ("said", "last"),
    [
        ("a wall 10 by 8 / swap the wall for an arch same size", heard("arch", count=1, span_in=120, height_in=96)),
        ("a wall 10 by 8 / and an arch the same size", heard("arch", count=1, span_in=120, height_in=96)),
        (
            "four 6 ft tables and a 9 ft garland / the tables gold / double the garland",
            heard("garland", count=1, length_in=216),
        ),
        ("a 9 ft garland / make it 10, it's a longer table than I thought", heard("garland", count=1, length_in=120)),
        ("six 6 ft tables and three 8 ft tables / coral", tables(3, 96, colours=[{"name": "coral"}])),
    ],
)
def test_what_is_told_beside_another_is_its_own(said: str, last: dict[str, Any]) -> None:
    reply = after(said)
    assert (reply.heard.pieces[-1], reply.question) == (last, None)
