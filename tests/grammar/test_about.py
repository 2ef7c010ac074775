"""A colour that is asked about changes nothing: as a question is meant, not as its words might be."""

import pytest

from tests.grammar.kinds_said import after

HELD = "ten 6 ft tables in navy, gold and white"
COLOURS = [{"name": "navy"}, {"name": "gold"}, {"name": "white"}]


@pytest.mark.parametrize(
    "asked",
    [
        "how many gold",
        "how many of them are gold?",
        "how many navy balloons do i need",
        "how much gold is that",
        "how many bags of white",
        "how many navy and gold do I need",
        "is there enough gold",
        "does the gold cost more",
        "how much silver do i need",
        "¿cuántos dorados necesito?",
    ],
)
def test_what_is_asked_of_a_colour_leaves_the_colours(asked: str) -> None:
    assert after(f"{HELD} / {asked}").heard.pieces[0]["colours"] == COLOURS


def test_how_many_of_a_colour_is_told_by_the_shopping_list() -> None:
    told = after(f"{HELD} / how many gold do i need")
    assert told.heard.job["intent"] == "shopping"
    assert "gold" in told.text
    assert told.unread == []


def test_a_colour_that_nothing_has_is_told_as_not_used() -> None:
    assert after("two 7 ft columns in red and white / how much sand").unread == ["sand"]


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("how many gold and white balloons for a 10 ft garland", ["gold", "white"]),
        (f"{HELD} / what if they were silver", ["silver"]),
        (f"{HELD} / make it gold and white, how many then", ["gold", "white"]),
        (f"{HELD} / how much if it's all white", ["white"]),
    ],
)
def test_a_colour_that_is_told_is_taken(said: str, colours: list[str]) -> None:
    assert [colour["name"] for colour in after(said).heard.pieces[-1]["colours"]] == colours
