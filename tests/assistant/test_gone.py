"""A piece that was taken away comes back as it was, where it is named and nothing is said of a new one."""

import pytest

from tests.grammar.kinds_said import after

BOTH = "garland 9 ft in sage, two columns 5 ft"


@pytest.mark.parametrize(
    "said",
    [
        "drop the columns / put the columns back",
        "drop the columns / actually keep the columns",
        "no columns / ok put the columns back in",
        "drop the columns / undo",
    ],
)
def test_it_comes_back_with_all_that_was_said_of_it(said: str) -> None:
    assert after(f"{BOTH} / {said}").heard.pieces == after(BOTH).heard.pieces


def test_what_took_its_place_goes() -> None:
    reply = after("garland 9 ft in sage / what about a backdrop instead, 8 by 8 / no go with the garland")
    assert reply.heard.pieces == after("garland 9 ft in sage").heard.pieces


def test_what_is_said_with_it_is_kept() -> None:
    piece = after(f"{BOTH} / drop the garland / put the garland back in gold").heard.pieces[-1]
    assert (piece["length_in"], [colour["name"] for colour in piece["colours"]]) == (108, ["gold"])


@pytest.mark.parametrize(("said", "count"), [("add two columns", 2), ("what about a column 7 ft", 1)])
def test_a_new_one_is_new(said: str, count: int) -> None:
    piece = after(f"{BOTH} / drop the columns / {said}").heard.pieces[-1]
    assert (piece["count"], piece.get("height_in")) == (count, 84 if count == 1 else None)
