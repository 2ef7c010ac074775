"""How big other things are is told as not used, and the pieces keep their own sizes."""

import pytest

from tests.grammar.kinds_said import after, heard

WALL = "an 8 by 8 ft wall in white"
GARLAND = "a 12 ft garland in sage for the bar"


@pytest.mark.parametrize("first", [WALL, GARLAND])
@pytest.mark.parametrize(
    "told",
    [
        "leave a gap for a neon sign 3 ft wide",
        "there's a window 4 ft wide behind it",
        "it goes round a mirror 4 ft across",
        "the cake is 2 ft wide",
        "theres a sofa 6 ft long in front",
        "a tv 50 inches wide goes on it",
        "the stage is 20 by 12 ft",
        "half the density",
    ],
)
def test_the_size_of_another_thing_is_told_as_not_used(first: str, told: str) -> None:
    reply = after(f"{first} / {told}")
    assert reply.heard.pieces == after(first).heard.pieces
    assert reply.unread


@pytest.mark.parametrize(
    ("said", "length"),
    [
        (f"{GARLAND} / make it 10 ft", 120),
        (f"{GARLAND} / the garland is 14 ft", 168),
        (f"{GARLAND} / my mistake, 14 ft", 168),
        ("a garland for the bar / the bar is 14 ft long", 168),
        ("a garland across the mantel, 6 ft / the mantel is 7 ft", 84),
    ],
)
def test_a_size_that_is_the_pieces_own_is_taken(said: str, length: float) -> None:
    assert after(said).heard.pieces[0]["length_in"] == pytest.approx(length)


def test_floors_and_tables_are_no_strangers() -> None:
    assert after("a balloon drop over a 20 by 15 ft floor / the floor is 12 by 12 ft").heard.pieces[0]["span_in"] == 144
    tables = after("eight 6 ft tables / the tables are 30 wide").heard.pieces
    assert tables == [heard("runner", count=8, table_length_in=72, table_width_in=30)]


@pytest.mark.parametrize("told", ["and petrol 15", "petrol's 15 pounds", "parking was 12"])
def test_what_money_goes_on_is_no_colour_and_no_number_of_pieces(told: str) -> None:
    reply = after(f"six 6 ft tables in sage and white / {told}")
    assert reply.heard.pieces == after("six 6 ft tables in sage and white").heard.pieces
    assert reply.unread
    assert after("six 6 ft tables in petrol and white").heard.pieces[0]["colours"][0] == {"name": "petrol"}
