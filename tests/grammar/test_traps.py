"""Sentences that a careless reader gets wrong: a number beside a number, a word with two trades."""

from typing import Any

import pytest

from assistant import Conversation, Reply


def after(*said: str) -> Reply:
    """The reply to the last of those turns."""
    talk = Conversation()
    return [talk.say(turn) for turn in said][-1]


def pieces(*said: str) -> list[dict[str, Any]]:
    """The pieces held after those turns."""
    return after(*said).heard.pieces


def tables(count: int, length: float, **more: Any) -> dict[str, Any]:
    return {"kind": "runner", "count": count, "table_length_in": length, **more}


ONE_KIND = {
    "eight six foot tables": tables(8, 72),
    "6 six-footers": tables(6, 72),
    "twenty six foot tables": tables(20, 72),
    "twenty six 6 ft tables": tables(26, 72),
    "two two foot tables": tables(2, 24),
    "3 x 6ft tables": tables(3, 72),
    "3 6ft tables": tables(3, 72),
    "one 3x6 ft table": tables(1, 72, table_width_in=36),
    "three 2 ft by 6 ft tables": tables(3, 72, table_width_in=24),
    "eight 6 ft tables, no wait, ten": tables(10, 72),
    "for 6 ft tables": tables(4, 72),
    "ate six foot tables": tables(8, 72),
    "a dozen and a half 6 ft tables": tables(18, 72),
    "two rows of four 6 ft tables": tables(8, 72),
    "86 foot tables": tables(8, 72),
    "1060 inch rounds": {"kind": "runner", "count": 10, "table_shape": "round", "table_diameter_in": 60},
}  # fmt: skip


@pytest.mark.parametrize("said", ONE_KIND)
def test_numbers_beside_numbers(said: str) -> None:
    reply = after(said)
    assert reply.heard.pieces == [ONE_KIND[said]]
    assert reply.question is None
    assert reply.unread == []


@pytest.mark.parametrize("said", ["86 foot tables", "1060 inch rounds", "for 6 ft tables", "ate six foot tables"])
def test_what_was_guessed_is_read_back(said: str) -> None:
    assert "I read" in after(said).text


@pytest.mark.parametrize(
    "said",
    ["two 8s and three 6s", "two 8 footers and three 6 footers", "2 eight-foot and 3 six-foot tables"],
)
def test_two_groups_of_tables(said: str) -> None:
    assert pieces(said) == [tables(2, 96), tables(3, 72)]


def test_a_number_joined_by_and_is_one_number() -> None:
    assert pieces("a drop of one hundred and eight balloons") == [{"kind": "drop", "count": 1, "balloons": 108}]
    assert pieces("one hundred and eight 6 ft tables") == [tables(108, 72)]


def test_balloons_with_no_piece_are_no_piece() -> None:
    reply = after("one hundred and eight balloons")
    assert reply.heard.pieces == []
    assert reply.question


def test_two_thirds_of_the_table_is_a_coverage() -> None:
    assert pieces("eight 6 ft tables, two thirds") == [tables(8, 72, coverage="two_thirds")]


def test_two_thirds_of_a_colour_is_a_share() -> None:
    (piece,) = pieces("eight 6 ft tables, two thirds navy and one third gold")
    assert "coverage" not in piece
    assert [(colour["name"], round(colour["share"], 3)) for colour in piece["colours"]] == [
        ("navy", 0.667),
        ("gold", 0.333),
    ]


def test_two_thirds_of_a_number_is_a_number() -> None:
    assert pieces("two thirds of a dozen 6 ft tables") == [tables(8, 72)]


def test_both_sorts_of_two_thirds_in_one_sentence() -> None:
    (piece,) = pieces("eight 6 ft tables, two thirds of the table, two thirds navy and one third gold")
    assert piece["coverage"] == "two_thirds"
    assert [round(colour["share"], 3) for colour in piece["colours"]] == [0.667, 0.333]


def test_drop_the_arch_takes_it_away() -> None:
    said = "an arch 8 ft wide and 7 ft high and four 6 ft tables"
    assert [piece["kind"] for piece in pieces(said)] == ["arch", "runner"]
    assert pieces(said, "drop the arch") == [tables(4, 72)]


def test_a_drop_may_hang_from_a_table_or_a_ceiling() -> None:
    assert pieces("four 6 ft tables with a drop at one end") == [tables(4, 72, coverage="drop_one")]
    assert pieces("a drop of 200 balloons") == [{"kind": "drop", "count": 1, "balloons": 200}]
    assert pieces("six 6 ft tables", "drop the ends to the floor") == [tables(6, 72, coverage="drop_both")]
