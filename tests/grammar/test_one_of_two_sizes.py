"""Pieces of two sizes: said in one breath, pointed at by their size, and some of them taken away or left bare."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column
from tests.grammar.test_traps import tables

TWO = "six 6 ft tables and three 8 ft tables / "
GOLD = [{"name": "gold"}]


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        ("two columns by the stage 7 ft and four little ones at 4 ft", [column(2, 84), column(4, 48)]),
        ("two columns 7 ft high and four at 4 ft", [column(2, 84), column(4, 48)]),
        ("six columns, 3 tall at 7 ft and 3 short at 5", [column(3, 84), column(3, 60)]),
        ("columns, 3 tall at 7 ft and 3 short at 5", [column(3, 84), column(3, 60)]),
        ("six columns / 3 at 7 ft and 3 at 5 ft", [column(3, 84), column(3, 60)]),
        ("6 columns, 3 tall at 7 ft and 3 short at 5 / make the short ones 6", [column(3, 84), column(3, 72)]),
        (
            "two 7 ft columns and four 4 ft columns / little ones gold",
            [column(2, 84), column(4, 48) | {"colours": GOLD}],
        ),
        (TWO + "the 6 ft ones full drop", [tables(6, 72, coverage="drop_both"), tables(3, 96)]),
        (TWO + "full drop on the 6 footers", [tables(6, 72, coverage="drop_both"), tables(3, 96)]),
        (TWO + "make the 6 ft ones 7 ft", [tables(6, 84), tables(3, 96)]),
        (TWO + "lose the 6 ft ones", [tables(3, 96)]),
    ],
)
def test_each_size_is_a_piece_of_its_own(said: str, pieces: list[dict[str, Any]]) -> None:
    reply = after(said)
    assert reply.heard.pieces == pieces
    assert (reply.question, reply.unread) == (None, [])


@pytest.mark.parametrize(
    "last",
    [
        "nothing on the rounds",
        "the rounds get nothing",
        "leave the rounds bare",
        "just the trestles get a runner",
        "runners only on the trestles",
        "only the trestles are dressed",
        "only the trestles",
    ],
)
def test_tables_that_get_nothing_go(last: str) -> None:
    reply = after(f"four 6 ft trestles, three 5 ft rounds and a 6 ft column / {last}")
    assert reply.heard.pieces == [tables(4, 72), column(1, 72)]
    assert (reply.question, reply.unread) == (None, [])


@pytest.mark.parametrize(
    "last",
    [
        "only the long ones get a runner",
        "just the 8 ft ones",
        "only the 8 footers are getting runners",
        "nothing on the 6 ft ones",
        "nothing on the short ones",
    ],
)
def test_tables_of_one_size_alone(last: str) -> None:
    assert after(TWO + last).heard.pieces == [tables(3, 96)]


@pytest.mark.parametrize(
    "last",
    [
        "lose the two at the back",
        "lose the two columns by the door",
        "take those two away",
        "lose the last two",
        "drop the first two",
        "get rid of the pair by the door",
    ],
)
def test_so_many_of_those_in_hand_go(last: str) -> None:
    assert after(f"six 8 ft columns / {last}").heard.pieces == [column(4, 96)]


def test_one_that_is_swapped_is_known_by_its_size() -> None:
    pieces = after("a 6 ft column and two 8 ft columns / swap the 6 ft one for an arch 8 by 8").heard.pieces
    assert [piece["kind"] for piece in pieces] == ["arch", "column"]
    assert pieces[1] == column(2, 96)
