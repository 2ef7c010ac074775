"""What else a piece takes, what was offered is taken, and hands for the hours that there are."""

import pytest

from assistant import Conversation
from tests.grammar.kinds_said import after


@pytest.mark.parametrize(
    "said", ["how heavy do the bases need to be", "weights?", "how much weight do they need", "do they need sandbags"]
)
def test_weights_are_those_of_the_book(said: str) -> None:
    """Indoors a column wants 10 lb on its base (rules/book/wind_column.toml); codes and engineers come first."""
    text = " ".join(after(f"two 6 ft columns / {said}").text.split())
    assert "10 lb (5 to 15 lb) each" in text
    assert "licensed engineer" in text


def test_a_bunch_on_helium_pulls_what_its_balloons_lift() -> None:
    """Five 11 in balloons of 9.3 g net each (from memory, no source opened) pull 1.64 oz, times 1.75."""
    talk = Conversation()
    talk.say("6 bouquets of 5 helium")
    reply = talk.say("weights?")
    lift = next(f.value for f in reply.figures if f.id == "net_lift")
    each = next(f.value for f in reply.figures if f.id == "weight_each")
    assert each == pytest.approx(5 * lift / 28.349523 * 1.75, rel=1e-6)
    assert f"{each:.2f} oz" in reply.text


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ("6 bouquets of 5 helium / how long do they float", "12 hours"),
        ("6 bouquets of 5 on air / how long do they last", "10 days"),
        ("6 bouquets of 5 helium / is one tank enough", "Yes."),
        ("60 bouquets of 5 helium / is one tank enough", "of helium to order"),
        ("6 bouquets of 5 on air / what size tank do i need", "no gas is needed"),
    ],
)
def test_floating_and_gas_are_answered(said: str, words: str) -> None:
    reply = after(said)
    assert words in " ".join(reply.text.split())
    assert reply.heard.pieces[0]["balloons"] == 5  # "one tank" counts no balloons


def test_so_many_tanks_are_enough_or_not() -> None:
    talk = Conversation()
    talk.say("200 bouquets of 5 helium")
    need = next(f.value for f in talk.say("how many cylinders").figures if f.id == "cylinders")
    assert need > 1
    assert talk.say(f"are {need - 1} tanks enough").text.startswith("No.")
    assert talk.say(f"are {need} tanks enough").text.startswith("Yes.")


def test_the_hands_for_the_hours_do_it_and_one_fewer_does_not() -> None:
    talk = Conversation()
    talk.say("eight 6 ft tables, full drop")
    reply = talk.say("how many helpers do i need if ive only got 6 hours")
    assert reply.unread == []
    crew = int(reply.text.split(": ")[1].split()[0])
    enough = [talk.say(f"with {n} of us, is 6 hours enough").text for n in (crew, crew - 1)]
    assert [text.startswith("No") for text in enough] == [False, True]


@pytest.mark.parametrize(
    ("said", "coverage"),
    [("the cheaper one", "two_thirds"), ("go with the dearer one", "drop_both"), ("take the cheapest", "two_thirds")],
)
def test_of_two_compared_the_cheaper_one_stays(said: str, coverage: str) -> None:
    reply = after(f"eight 6 ft tables / compare two thirds and full drop / {said}")
    assert [piece["coverage"] for piece in reply.heard.pieces] == [coverage]


def test_which_of_two_compared_is_asked() -> None:
    reply = after("eight 6 ft tables / compare two thirds and full drop / do that one then")
    assert reply.question == "Which one, the first or the second?"
    assert len(reply.heard.pieces) == 2


def test_what_fits_is_taken_and_fits() -> None:
    talk = Conversation()
    for said in ("a 10 ft garland", "budget 60", "what length can she have", "go with that then"):
        reply = talk.say(said)
    assert next(f.value for f in reply.figures if f.id == "price") <= 60
    assert reply.heard.pieces[0]["length_in"] < 120


def test_where_nothing_is_offered_nothing_is_taken() -> None:
    reply = after("a 10 ft garland / do that one then")
    assert reply.question is not None
    assert reply.heard.pieces == [{"kind": "garland", "count": 1, "length_in": 120}]


@pytest.mark.parametrize("said", ["go back to the first", "nah, back to the original one"])
def test_the_first_is_the_first_whole_estimate(said: str) -> None:
    reply = after(f"eight tables / 6 ft / full drop / in gold / {said}")
    assert reply.heard.pieces == [{"kind": "runner", "count": 8, "table_length_in": 72}]
