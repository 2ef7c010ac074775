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


@pytest.mark.parametrize(
    "asked",
    [
        "how long is each runner",
        "how wide is a runner?",
        "ok and how many balloons in each runner",
        "what does one runner weigh",
        "is that with greenery?",
        "are those full length",
        "does it have greenery",
    ],
)
def test_what_is_asked_of_a_piece_in_hand_changes_none(asked: str) -> None:
    assert after(f"{HELD} / {asked}").heard.pieces == after(HELD).heard.pieces


@pytest.mark.parametrize(
    ("said", "pieces"),
    [
        ("how many would it be with greenery", 1),
        ("how many for a 12 ft garland", 2),
        ("what about a garland", 2),
        ("how about a runner for one 8 ft table", 2),
    ],
)
def test_what_is_asked_of_something_new_is_taken(said: str, pieces: int) -> None:
    held = after(f"{HELD} / {said}").heard.pieces
    assert len(held) == pieces
    assert pieces > 1 or held[0]["foliage"] is True


@pytest.mark.parametrize(
    "said", ["round it to 500", "round it up", "can you round that down to 450", "ok round up to 600"]
)
def test_a_sum_that_is_rounded_is_no_table_and_no_number_of_them(said: str) -> None:
    assert after(f"{HELD} / {said}").heard.pieces == after(HELD).heard.pieces


def test_round_tables_stay_round() -> None:
    held = after("nine round ones, 5 ft, it's for tables").heard.pieces
    assert held[0]["table_shape"] == "round"
    assert after("eight tables, round, they're 60 inch").heard.pieces[0]["table_diameter_in"] == 60


@pytest.mark.parametrize(
    "asked",
    [
        "what's the gap either side",
        "what did i say for the garland",
        "is it all in gold",
        "which of them are full drop",
        "what is the drop at each end",
    ],
)
def test_a_question_without_a_number_puts_nothing_in(asked: str) -> None:
    assert after(f"{HELD} / {asked}").heard.pieces == after(HELD).heard.pieces


@pytest.mark.parametrize(
    ("asked", "kinds"),
    [
        ("how much for a garland", ["runner", "garland"]),
        ("what if there's greenery", ["runner"]),
        ("what about a 12 ft garland", ["runner", "garland"]),
    ],
)
def test_a_question_may_still_suppose_something(asked: str, kinds: list[str]) -> None:
    pieces = after(f"{HELD} / {asked}").heard.pieces
    assert [piece["kind"] for piece in pieces] == kinds
    assert pieces != after(HELD).heard.pieces
