"""Versions beside each other: each its own job, no sum over them, stacked when narrow, in columns when wide."""

import re

import pytest

from assistant import Conversation, Reply
from assistant.estimating import estimate
from assistant.state import HeardPiece, State
from rules import load_book

BOOK = load_book()
TABLES = "eight 6 ft tables, navy, gold and white"


def say(*said: str, width: int = 40) -> Reply:
    talk = Conversation(width=width)
    return [talk.say(turn) for turn in said][-1]


def flat(reply: Reply) -> str:
    return " ".join(reply.text.split())


def test_each_alternative_is_its_own_job() -> None:
    reply = say(TABLES, "compare two thirds and full drop")
    alone = [say(TABLES, coverage) for coverage in ("two thirds", "full drop")]
    counts = [next(f.value for f in each.figures if f.id == "balloons_all") for each in alone]
    assert [f"{count:,}" in reply.text for count in counts] == [True, True]
    assert f"{sum(int(count) for count in counts):,}" not in reply.text


def test_nothing_of_the_job_is_added_up_over_alternatives() -> None:
    reply = say(TABLES, "compare two thirds and full drop")
    sums = {
        "balloons_all",
        "balloons_to_buy",
        "line_length",
        "hours_hands_on",
        "materials_cost",
        "price",
        "load_volume",
    }
    assert sums & {figure.id for figure in reply.figures if figure.piece is None} == set()
    assert {figure.piece for figure in reply.figures if figure.id == "balloons"} == {0, 1}


def test_alternatives_have_no_sum_even_when_asked_for_by_id() -> None:
    pieces = [HeardPiece("garland", {"length": 120}), HeardPiece("garland", {"length": 240})]
    made = estimate(BOOK, State(pieces=pieces, compared=True))
    assert made.figure("price") is None
    assert made.step("balloons_all") is None
    assert made.figure("labour_rate") is not None
    assert made.figure("balloons", 1) is not None
    assert estimate(BOOK, State(pieces=pieces)).figure("price") is not None


@pytest.mark.parametrize(("width", "stacked"), [(40, True), (76, False)])
def test_stacked_when_narrow_in_columns_when_wide(width: int, stacked: bool) -> None:
    reply = say(TABLES, "compare two thirds, full and full drop", width=width)
    lines = reply.text.splitlines()
    assert max(map(len, lines)) <= width
    assert sum(bool(re.match(r"\s*balloons\b", line)) for line in lines) == (3 if stacked else 1)
    assert [word for word in ("balloons", "buy", "hands", "price", "load") if word not in reply.text] == []


def test_four_fit_a_wide_screen() -> None:
    reply = say("20 ft garland", "give me three options", "compare with full drop and greenery", width=76)
    assert max(map(len, reply.text.splitlines())) <= 76


@pytest.mark.parametrize(("said", "place"), [("the first one", 0), ("take the first", 0), ("take the second", 1)])
def test_one_is_kept_and_the_others_go(said: str, place: int) -> None:
    reply = say(TABLES, "compare two thirds and full drop", said)
    assert [piece["coverage"] for piece in reply.heard.pieces] == [("two_thirds", "drop_both")[place]]
    assert reply.question is None
    assert any(figure.id == "balloons_all" for figure in reply.figures)


@pytest.mark.parametrize("piece", [TABLES, "20 ft garland", "8 ft wide 7 ft high arch", "6 ft column", "ten bouquets"])
@pytest.mark.parametrize("asked", ["good, better, best", "give me three options"])
def test_good_better_best_are_three_that_rise_in_price(piece: str, asked: str) -> None:
    reply = say(piece, asked)
    prices = [float(found.replace(",", "")) for found in re.findall(r"price\s+\$([\d,.]+)", reply.text)]
    assert len(prices) == 3
    assert prices == sorted(prices)
    assert len(set(prices)) == 3
    assert [word in reply.text for word in ("good", "better", "best")] == [True] * 3
    assert len(reply.heard.pieces) == 3


def test_three_versions_are_of_one_piece_at_a_time() -> None:
    reply = say("eight 6 ft tables and a 6 ft column", "good, better, best")
    assert "Of which piece?" in flat(reply)
    assert len(reply.heard.pieces) == 2


def test_a_change_while_they_stand_shows_them_again() -> None:
    reply = say(TABLES, "compare two thirds and full drop", "make it ten tables")
    assert "1." in reply.text
    assert "2." in reply.text
    assert "hours" in reply.text


def test_what_is_asked_of_a_job_is_asked_of_the_one_in_focus() -> None:
    alone = say(TABLES, "full drop", "what's the price per table?")
    assert flat(say(TABLES, "compare two thirds and full drop", "what's the price per table?")) == flat(alone)
