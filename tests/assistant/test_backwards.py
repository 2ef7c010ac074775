"""Backwards, then forwards: what is said to fit does, the next step does not, and nothing is cut in silence."""

import random
import re
from fractions import Fraction

import pytest

from assistant import Conversation, Reply
from assistant.limits import Limit, greatest, largest, limits_of, over
from assistant.state import HeardPiece, State
from assistant.trying import tried, value, variant
from rules import load_book

BOOK = load_book()


def told(*said: str) -> tuple[Reply, str]:
    talk = Conversation()
    replies = [talk.say(turn) for turn in said]
    return replies[-1], " ".join(replies[-1].text.split())


@pytest.mark.parametrize("seed", range(40))
def test_the_greatest_that_fits_against_trying_every_step(seed: int) -> None:
    draw = random.Random(seed)  # noqa: S311 - examples to try, no secret
    least, step = Fraction(draw.randint(1, 12)), draw.choice([Fraction(1), Fraction(100, 254)])
    most, edge = least + draw.randint(0, 400) * step, Fraction(draw.randint(0, 420))
    every = [least + k * step for k in range(int((most - least) / step) + 1)]
    assert greatest(lambda x: float(edge - x), least, most, step) == max((x for x in every if x <= edge), default=None)


def test_a_step_that_does_not_fit_between_others_is_looked_over() -> None:
    assert greatest(lambda x: float(20 - x) if x != 18 else -1.0, Fraction(1), Fraction(100), Fraction(1)) == 20


# A piece, the fact to be found, and the part of each limit that keeps it below the greatest that the book allows.
CASES = [
    ("garland", {}, "length", 1),
    ("garland", {"style": "classic", "sizes": [11]}, "length", 1),
    ("arch", {"span": 96}, "height", 1),
    ("column", {}, "height", 0.12),
    ("hoop", {}, "diameter", 0.5),
    ("wall", {"span": 96}, "height", 1),
    ("runner", {"table_length": 72, "coverage": "drop_both"}, "count", 1),
    ("bouquet", {"balloons": 6}, "count", 1),
]
LIMITS = [("balloons_to_buy", 437), ("price", 612.0), ("hours_hands_on", 9.5), ("load_volume", 260.0)]


@pytest.mark.parametrize(("kind", "facts", "fact", "part"), CASES)
@pytest.mark.parametrize(("id", "most"), LIMITS)
def test_backwards_then_forwards_agrees(
    kind: str, facts: dict[str, object], fact: str, part: float, id: str, most: float
) -> None:
    """The version found keeps the limit, and the next inch, table or bunch breaks it: nothing larger was missed."""
    state = State(pieces=[HeardPiece(kind, dict(facts))])
    found = largest(BOOK, state, 0, fact, [Limit(id, most * part, "", "count")])
    assert found is not None
    assert (value(tried(BOOK, found), id) or 0) <= most * part
    more = variant(found, 0, {fact: found.pieces[0].facts[fact] + 1})
    assert (value(tried(BOOK, more), id) or 0) > most * part


@pytest.mark.parametrize("balloons", [57, 150, 240, 333, 400, 1000])
def test_a_garland_found_from_balloons_uses_all_but_a_pair(balloons: int) -> None:
    """Said again forwards it takes, with spares, what was at hand, within one pair and its spare."""
    state = State(pieces=[HeardPiece("garland")])
    found = largest(BOOK, state, 0, "length", [Limit("balloons_to_buy", balloons, "", "count")])
    assert found is not None
    forwards = value(tried(BOOK, found), "balloons_to_buy")
    assert forwards is not None
    assert balloons - 3 <= forwards <= balloons


def test_each_way_out_of_a_budget_fits_it_when_said_forwards() -> None:
    _, text = told("eight 6 ft tables", "can I do it for $500?")
    for amount in re.findall(r"\$([\d,]+)\. Given up", text):
        assert float(amount.replace(",", "")) <= 500
    facts = {"count": 8, "table_length": 72, "coverage": "two_thirds"}
    price = value(tried(BOOK, State(pieces=[HeardPiece("runner", facts)])), "price")
    assert price is not None
    assert price <= 500
    assert f"${price:,.0f}" in text


@pytest.mark.parametrize(
    ("said", "holds"),
    [
        ("how long a garland can I make from 400 balloons?",
         ["garland of", "from 400 balloons", "spares are kept", "second way"]),
        ("how many 6 ft tables can I cover with 500 balloons", ["4 tables from 500 balloons", "second way"]),
        ("how tall a column from 100 balloons", ["column", "high from 100 balloons"]),
        ("how long a garland can two of us make in 3 hours?", ["3 hours of 2 people", "hours of hands"]),
        ("how many 6 ft tables can two of us do in 6 hours?", ["11 tables from 6 hours of 2 people"]),
        ("how long a garland fits in a hatchback", ["75% of a hatchback", "cu ft left"]),
        ("6 ft tables, full drop, budget 500, how many can I do",
         ["2 tables from $500", "every hour of hands is paid"]),
        ("how big a hoop from 150 balloons", ["hoop", "across from 150 balloons"]),
    ],
)  # fmt: skip
def test_what_fits_is_told_with_what_is_left_and_what_is_kept(said: str, holds: list[str]) -> None:
    reply, text = told(said)
    assert [part for part in holds if part.lower() not in text.lower()] == []
    assert reply.heard.job["intent"] == "solve"
    assert reply.question is None
    assert reply.unread == []


def test_limits_together_all_hold() -> None:
    state = State(
        pieces=[HeardPiece("garland", {"balloons": 900})], job={"budget": {"amount": 300}, "hours": 4, "crew": 2}
    )
    limits = limits_of(BOOK, state, 0)
    assert [limit.id for limit in limits] == ["balloons_to_buy", "price", "hours_hands_on"]
    found = largest(BOOK, state, 0, "length", limits)
    assert found is not None
    assert over(tried(BOOK, found), limits) == []


def test_what_cannot_be_done_says_why_and_what_comes_nearest() -> None:
    _, text = told("how many 6 ft tables with a full drop can I do with 100 balloons?")
    assert text.startswith("No: even 1 table takes 278 balloons with spares, 178 more than 100 balloons.")
    assert "That fits: two thirds of each table" in text


def test_a_budget_in_another_currency_is_said_to_be_taken_so() -> None:
    _, text = told("eight 6 ft tables", "can I do it for £300?")
    assert "£300" in text
    assert "$" not in text
    assert "taken as GBP" in text


def test_a_new_number_solves_anew() -> None:
    _, text = told("how long a garland can two of us make in 3 hours?", "and with three of us?")
    assert "3 hours of 3 people" in text


def test_solving_keeps_nothing_that_was_not_said() -> None:
    reply, _ = told("how long a garland can I make from 400 balloons?")
    assert reply.heard.pieces == [{"kind": "garland", "count": 1, "balloons": 400}]
