"""A change of one of several pieces of a kind waits until it is told which of them is meant."""

import pytest

from tests.grammar.kinds_said import after

TWO = "a 10 ft garland and a 12 ft garland in sage"


@pytest.mark.parametrize(
    ("answer", "lengths"),
    [
        ("the 12 ft one", [120, 168]),
        ("the 10 ft one", [168, 144]),
        ("the first", [168, 144]),
        ("the second one", [120, 168]),
        ("the sage one", [120, 168]),
        ("the shorter one", [168, 144]),
        ("both", [168, 168]),
        ("all of them", [168, 168]),
        ("all", [168, 168]),
    ],
)
def test_the_answer_lets_the_change_be_made(answer: str, lengths: list[float]) -> None:
    reply = after(f"{TWO} / make the garland 14 ft / {answer}")
    assert [piece["length_in"] for piece in reply.heard.pieces] == lengths
    assert reply.question is None
    assert "intent" not in reply.heard.job  # it only answers what was asked


def test_another_turn_lets_the_change_go() -> None:
    reply = after(f"{TWO} / make the garland 14 ft / add a 7 ft column")
    assert [piece.get("length_in") for piece in reply.heard.pieces] == [120, 144, None]


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (f"{TWO} / make the garland 14 ft", "10 ft or 12 ft"),
        ("8 runners on 6 ft tables, navy / one of them in white / make them 8 footers", "navy or white"),
        ("a 3 m garland and a 4 m garland / make the garland 5 m", "3 m or 4 m"),
    ],
)
def test_the_question_names_what_tells_them_apart(said: str, told: str) -> None:
    question = after(said).question
    assert question is not None
    assert told in question


def test_all_of_them_needs_no_question() -> None:
    said = "8 runners on 6 ft tables, navy / one of them in white / make all of them 8 footers"
    assert [piece["table_length_in"] for piece in after(said).heard.pieces] == [96, 96]
