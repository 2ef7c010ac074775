"""What a client has to spend, what is fuller, whose size it is, one more, and by how much of what: as people say it."""

from typing import Any

import pytest

from tests.grammar.kinds_said import after, column, heard
from tests.grammar.test_traps import tables

GARLAND = heard("garland", count=1, length_in=120)


def pieces(said: str) -> list[dict[str, Any]]:
    return after(said).heard.pieces


# money ----------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "said",
    [
        "she's only got 350",
        "shes got 350",
        "they have 350 for it",
        "the client only has 350",
        "we've only got 350",
        "i've got 350",
        "350 tops",
        "max 350",
        "they won't go above 350",
        "can't spend more than 350",
        "350 is her limit",
    ],
)
def test_after_a_price_what_there_is_to_spend_is_money(said: str) -> None:
    reply = after(f"a 10 ft garland / how much is that / {said}")
    assert reply.heard.job["budget"] == {"amount": 350}
    assert reply.heard.pieces == [GARLAND]


def test_a_budget_goes_on_in_the_money_that_it_was_said_in() -> None:
    job = after("a 10 ft garland, budget £300 / she's only got 250").heard.job
    assert job["budget"] == {"amount": 250, "currency": "£"}


def test_balloons_in_hand_are_balloons_where_they_are_the_topic() -> None:
    reply = after("a 10 ft garland / i've only got 140 balloons / how long can it be / i've got 180")
    assert reply.heard.pieces == [{**GARLAND, "balloons": 180}]
    assert "budget" not in reply.heard.job


def test_a_third_person_may_have_pieces_too() -> None:
    assert pieces("eight 6 ft tables / they've got 12") == [tables(12, 72)]


@pytest.mark.parametrize(
    "said",
    ["a 10 ft garland / 350", "an arch 9 by 8 ft / 100", "two 6 ft columns / we've got 400"],
)
def test_a_number_that_nobody_wants_so_many_of_is_asked_about(said: str) -> None:
    reply = after(said)
    assert reply.question is not None
    assert reply.question.endswith(".")
    assert " of what? " in reply.question
    assert reply.heard.pieces[0].get("count") in {1, 2}


def test_numbers_that_add_up_to_a_hundred_are_shares_of_nothing_here() -> None:
    reply = after("one 6 ft table / 60 40")
    assert reply.unread == ["60 40"]
    assert reply.heard.pieces[0]["count"] == 1


@pytest.mark.parametrize(
    ("said", "count"),
    [("two 6 ft columns / 12", 12), ("ten 6 ft tables / 24", 24), ("one 6 ft table / make it 20", 20)],
)
def test_a_number_that_may_be_wanted_is_a_count(said: str, count: int) -> None:
    assert pieces(said)[0]["count"] == count


@pytest.mark.parametrize(
    ("said", "shares"),
    [
        ("60 40", [0.6, 0.4]),
        ("60/40", [0.6, 0.4]),
        ("make it 70-30", [0.7, 0.3]),
        ("70 to 30", [0.7, 0.3]),
        ("80 20 split", [0.8, 0.2]),
    ],
)
def test_numbers_that_make_a_hundred_are_shares_of_the_colours_in_hand(said: str, shares: list[float]) -> None:
    colours = pieces(f"ten 6 ft tables in navy and gold / {said}")[0]["colours"]
    assert [colour["share"] for colour in colours] == shares


def test_numbers_that_do_not_make_a_hundred_are_no_shares() -> None:
    reply = after("ten 6 ft tables in navy and gold / 60 30")
    assert [colour.get("share") for colour in reply.heard.pieces[0]["colours"]] == [None, None]


# looks ----------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "lushness"),
    [
        ("fuller", "lush"),
        ("a bit thicker please", "lush"),
        ("bit skimpy isn't it, make it fuller", "lush"),
        ("double it up so it's thicker", "lush"),
        ("it looks thin", "lush"),
        ("skimpier", "lean"),
        ("not so full", "lean"),
        ("thinner", "lean"),
        ("fuller / skimpier", "usual"),
    ],
)
def test_fuller_is_a_step_in_how_full_a_mixed_piece_is(said: str, lushness: str) -> None:
    assert pieces(f"a 10 ft garland / {said}") == [{**GARLAND, "lushness": lushness}]


@pytest.mark.parametrize("said", ["eight 6 ft tables / a bit fuller", "lush 10 ft garland / fuller"])
def test_what_cannot_be_fuller_is_reported(said: str) -> None:
    assert any("fuller" in words for words in after(said).unread)


@pytest.mark.parametrize(
    ("said", "height"), [("taller, like 7 and a half", 90), ("a bit taller / 8", 96), ("taller / 7 and a half", 90)]
)
def test_a_size_that_is_to_be_greater_may_follow(said: str, height: float) -> None:
    assert pieces(f"two 6 ft columns / {said}") == [column(2, height)]


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("without the gold ones", ["pink", "white"]),
        ("lose the pink and gold ones", ["white"]),
        ("skip the gold balloons", ["pink", "white"]),
        ("no gold / just the other two", ["pink", "white"]),
    ],
)
def test_ones_of_a_colour_that_go_are_balloons(said: str, left: list[str]) -> None:
    got = pieces(f"a 10 ft garland in pink, white and gold / {said}")
    assert [[colour["name"] for colour in piece["colours"]] for piece in got] == [left]


def test_ones_of_a_colour_that_is_a_whole_piece_are_that_piece() -> None:
    got = pieces("an 8 ft garland in navy and two 6 ft columns in gold / lose the gold ones")
    assert [piece["kind"] for piece in got] == ["garland"]


# whose size -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "sizes"),
    [
        ("two hoops, one for outside and one for in / inside one 4 ft / outside one 6 ft", [48, 72]),
        ("two hoops / the outside one is 6 ft / the other 4 ft", [48, 72]),
        ("two hoops, one big one small / big one 6 ft / small one 4", [48, 72]),
        ("two hoops / the small one is 4 ft / the big one 6 ft", [72, 48]),
        ("two hoops / left one 4 ft / right one 6 ft", [72, 48]),
        ("an indoor hoop 4 ft and an outdoor one 6 ft / the outdoor one 7 ft", [48, 84]),
    ],
)
def test_each_of_two_has_its_own_size(said: str, sizes: list[float]) -> None:
    """What is left of a split comes first."""
    assert [piece["diameter_in"] for piece in pieces(said)] == sizes


def test_a_place_that_no_piece_is_called_by_is_asked_about() -> None:
    assert after("a wall 8 by 8 ft and two 6 ft columns / the outside one in gold").question is not None


@pytest.mark.parametrize(
    ("said", "got"),
    [
        ("two 6 ft columns with toppers / toppers 3 ft", {**column(2, 72), "topper": "round", "topper_size_in": 36}),
        ("two 6 ft columns / with a 3 ft topper", {**column(2, 72), "topper": "round", "topper_size_in": 36}),
        ("two 6 ft columns / poles are 7 ft", column(2, 72)),
        ("a 10 ft garland / sign 2 ft", GARLAND),
    ],
)
def test_a_size_behind_a_name_is_of_what_is_named(said: str, got: dict[str, Any]) -> None:
    reply = after(said)
    assert reply.heard.pieces == [got]
    assert "topper" in said or reply.unread != []


# one more, by how much ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "more"),
    [
        ("and a 7 ft one", {"count": 1, "diameter_in": 84}),
        ("plus a 7 footer", {"count": 1, "diameter_in": 84}),
        ("also a 7 ft", {"count": 1, "diameter_in": 84}),
        ("and another one 7 ft", {"count": 1, "diameter_in": 84}),
        ("and two more at 7 ft", {"count": 2, "diameter_in": 84}),
        ("oh and a bigger one, 7 ft", {"count": 1, "diameter_in": 84}),
    ],
)
def test_and_a_size_is_one_more_like_it(said: str, more: dict[str, Any]) -> None:
    first = heard("hoop", count=1, diameter_in=60, colours=[{"name": "white"}])
    assert pieces(f"a 5 ft hoop in white / {said}") == [first, {**first, **more}]


@pytest.mark.parametrize(
    ("said", "length"), [("and another 2 ft", 144), ("plus two feet", 144), ("and make it 8 ft", 96)]
)
def test_and_a_small_length_is_more_of_it(said: str, length: float) -> None:
    assert pieces(f"a 10 ft garland / {said}") == [{**GARLAND, "length_in": length}]


@pytest.mark.parametrize(
    ("said", "got"),
    [
        ("five bouquets of 10 / 20 percent fewer balloons in each", heard("bouquet", count=5, balloons=8)),
        ("a drop of 500 balloons / 20% fewer", heard("drop", count=1, balloons=400)),
        ("a drop of 500 balloons / half the balloons", heard("drop", count=1, balloons=250)),
        ("ten 6 ft tables / 10 percent fewer tables", tables(9, 72)),
        ("a 10 ft garland / make it 10% longer", {**GARLAND, "length_in": 132}),
    ],
)
def test_a_share_fewer_is_of_what_it_names(said: str, got: dict[str, Any]) -> None:
    assert pieces(said) == [got]


@pytest.mark.parametrize(
    "said", ["with 10 percent less balloons", "twice the balloons", "20% cheaper", "20% more greenery", "10% less"]
)
def test_a_share_of_what_is_in_no_fact_is_reported(said: str) -> None:
    reply = after(f"a 10 ft garland / {said}")
    assert reply.heard.pieces == [GARLAND]
    assert said.removeprefix("with ") in reply.unread


@pytest.mark.parametrize(
    ("said", "sizes"),
    [
        ("make those 11s 18s instead", [5, 18]),
        ("swap the 11s for 18s", [5, 18]),
        ("24s instead of the 11s", [5, 24]),
        ("make those 24s", [24]),
    ],
)
def test_one_size_of_balloons_takes_the_place_of_another(said: str, sizes: list[int]) -> None:
    assert pieces(f"a 10 ft garland in 5 and 11 inch / {said}") == [{**GARLAND, "sizes_in": sizes}]


# colours that go on ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "colours"),
    [
        ("half and half", ["white:0.5", "gold:0.5"]),
        ("more gold / like 60 percent", ["white:0.4", "gold:0.6"]),
        ("more gold / two thirds", ["white:0.333333", "gold:0.666667"]),
    ],
)
def test_shares_are_of_the_colours_in_hand(said: str, colours: list[str]) -> None:
    """And none of them is how much of the piece is covered."""
    (piece,) = pieces(f"a 10 ft garland in white and gold / {said}")
    assert [f"{c['name']}:{c['share']:g}" for c in piece["colours"]] == colours
    assert {"coverage", "coverage_fraction"}.isdisjoint(piece)


def test_halves_of_three_colours_are_reported() -> None:
    assert after("a 10 ft garland in white, pink and gold / half and half").unread == ["half and half"]


def test_same_colours_are_those_of_the_other_piece() -> None:
    got = pieces("two 7 ft columns in gold / and an arch 12 ft wide 9 ft high / same colours")
    assert [piece["colours"] for piece in got] == [[{"name": "gold"}]] * 2


@pytest.mark.parametrize("said", ["one gold one silver", "one gold, one silver", "one in gold and one in silver"])
def test_one_and_one_are_the_two(said: str) -> None:
    got = pieces(f"two 7 ft columns / {said}")
    assert got == [{**column(1, 84), "colours": [{"name": name}]} for name in ("gold", "silver")]


# numbers alone --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "got"),
    [
        ("two 6 ft columns / what about 8 ft / nah, 6 is fine", column(2, 72)),
        ("two 6 ft columns / or 8 ft / stick with the 6", column(2, 72)),
        ("two 6 ft columns / what about 8 ft / make it 3", column(3, 96)),
        ("two 6 ft columns / how about 8", column(8, 72)),
        ("two 7 ft columns / and make them 8", column(2, 96)),
        ("two 7 ft columns / make them 3", column(3, 84)),
        ("a 10 ft garland / price / and for 12?", {**GARLAND, "length_in": 144}),
        ("four 6 ft columns / and 2 spare ones", column(6, 72)),
    ],
)
def test_a_number_after_a_size_is_the_size_that_it_is_near(said: str, got: dict[str, Any]) -> None:
    assert pieces(said) == [got]


@pytest.mark.parametrize("said", ["one with greenery", "one of them with greenery"])
def test_one_of_two_alone_is_dressed(said: str) -> None:
    got = pieces(f"two 5 ft hoops / {said}")
    hoop = heard("hoop", count=1, diameter_in=60)
    assert got == [hoop, {**hoop, "foliage": True}]


def test_and_some_of_another_colour_are_more_pieces() -> None:
    hoop = heard("hoop", diameter_in=60)
    pink, red = ({**hoop, "count": 2, "colours": [{"name": name}]} for name in ("pink", "red"))
    assert pieces("two 5 ft hoops in pink / and 2 red ones") == [pink, red]


def test_what_she_has_of_the_things_in_hand_is_their_number() -> None:
    assert pieces("eight 6 ft tables / how much / she's got 10 tables") == [tables(10, 72)]


def test_a_choice_that_is_forgotten_is_no_longer_said() -> None:
    assert pieces("two 6 ft columns with toppers / forget the toppers") == [column(2, 72)]


def test_what_is_thinner_may_be_something_else() -> None:
    reply = after("a 10 ft garland / thinner string")
    assert (reply.heard.pieces, reply.unread) == ([GARLAND], ["thinner string"])
