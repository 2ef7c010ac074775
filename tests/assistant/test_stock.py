"""Balloons at hand: how the turn is read, what comes off the list, which bags are bought."""

import random

import numpy as np
import pytest
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_flow

from assistant import Conversation
from assistant.state import HeardPiece, State
from assistant.stock import bags_of, read_stock
from assistant.vocabulary import make_vocabulary
from rules import Job, Piece, Row, Stock, load_book, shopping, work
from rules.buying import packs_of, unused
from rules.stock import draw

BOOK = load_book()
WORDS = make_vocabulary(BOOK)
TABLES = State(pieces=[HeardPiece("runner", {"count": 8, "table_length": 72})])
RUNNER = Piece("runner", {"count": 8, "table_length": 72, "colours": [("navy", None), ("white", None)]})


def heard(text: str, state: State = TABLES) -> list[dict[str, object]] | None:
    reading = read_stock(text, WORDS, BOOK, state)
    return None if reading is None else list(reading.job["stock"])


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("I have two bags of white 5s and 40 navy 11s",
         [{"count": 200, "size": 5, "colour": "white"}, {"count": 40, "size": 11, "colour": "navy"}]),
        ("I've already got 300 white 5 inch balloons", [{"count": 300, "size": 5, "colour": "white"}]),
        ("there are 60 gold 11\" left over from the last job", [{"count": 60, "size": 11, "colour": "gold"}]),
        ("we have a bag of 50 rose gold 11 inch", [{"count": 50, "size": 11, "colour": "rose gold"}]),
        ("we still have a dozen dusty pink 5s at home", [{"count": 12, "size": 5, "colour": "dusty pink"}]),
        ("I've got 3 packs of navy blue", [{"count": 300, "colour": "navy blue"}]),
        ("I have a bag of 36 inch", [{"count": 2, "size": 36}]),
    ],
)  # fmt: skip
def test_what_is_at_hand_is_heard(text: str, items: list[dict[str, object]]) -> None:
    assert heard(text) == items


@pytest.mark.parametrize(
    "text",
    [
        "I've only got 180, how long can it be", "I have 250 dollars", "I have ten 5 ft tables", "I have 60 guests",
        "I have to leave at 6", "I've got twenty gold chairs", "we have ten white tables",
        "I have 5 bags of 100 balloons",
        "I want 40 navy 11s", "can I use 40 navy 11s?", "navy 11s", "I have", "I have navy", "",
    ],
)  # fmt: skip
def test_what_is_no_stock_is_left_to_the_reader(text: str) -> None:
    assert heard(text) is None


def test_without_a_piece_in_hand_it_is_left_to_the_reader() -> None:
    assert heard("I have two bags of white 5s", State()) is None


def test_a_second_saying_replaces_the_same_and_adds_the_new() -> None:
    state = TABLES.copy()
    state.job["stock"] = heard("I have 40 navy 11s and 10 white 5s")
    assert heard("I have 60 navy 11s and a bag of gold 5s", state) == [
        {"count": 60, "size": 11, "colour": "navy"},
        {"count": 10, "size": 5, "colour": "white"},
        {"count": 100, "size": 5, "colour": "gold"},
    ]


def rows_with(*stock: Stock) -> list[Row]:
    return shopping(work(BOOK, Job([RUNNER], {}, stock)))


def test_stock_comes_off_its_own_size_and_colour_alone() -> None:
    bare, held = rows_with(), rows_with(Stock(200, 5, "white"), Stock(40, 11, "navy"))
    (navy, white), (navy_then, white_then) = held, bare
    assert navy == navy_then
    assert white.at_hand == 200
    assert white.with_spares == white_then.with_spares
    assert white.bought + 200 == white.with_spares + white.left
    assert white.cost < white_then.cost
    assert unused(work(BOOK, Job([RUNNER], {}, (Stock(200, 5, "white"), Stock(40, 11, "navy"))))) == [
        Stock(40, 11, "navy")
    ]


def test_more_than_is_needed_buys_nothing_and_stays() -> None:
    navy, white = rows_with(Stock(5000, 5, "white"))
    assert (white.bags, white.bought, white.left, bags_of(white)) == ((), 0, 0, "none to buy")
    assert navy.bought > 0


def test_what_is_named_closely_is_drawn_first() -> None:
    wanted: dict[tuple[float, str | None], int] = {(5.0, "white"): 100, (5.0, "navy"): 100}
    used, left = draw(wanted, [Stock(120, 5), Stock(80, None, "white"), Stock(10, 5, "white"), Stock(7, 11)])
    assert used == {(5.0, "white"): 100, (5.0, "navy"): 100}
    assert sum(item.count for item in left) == 120 + 80 + 10 + 7 - 200
    assert Stock(7, 11) in left


def test_one_gives_way_where_another_can_only_go_there() -> None:
    wanted: dict[tuple[float, str | None], int] = {(5.0, "white"): 100, (11.0, "white"): 100}
    used, left = draw(wanted, [Stock(100, None, "white"), Stock(100, 5)])
    assert used == {(5.0, "white"): 100, (11.0, "white"): 100}
    assert left == []


@pytest.mark.parametrize("seed", range(25))
def test_as_many_are_used_as_can_be_against_scipy(seed: int) -> None:
    """The greatest flow from items to places, by scipy.sparse.csgraph.maximum_flow."""
    draws = random.Random(seed)  # noqa: S311 - examples to try, no secret
    sizes, colours = [5.0, 11.0, 16.0], ["white", "navy", "gold"]
    wanted: dict[tuple[float, str | None], int] = {
        (size, colour): draws.randint(0, 60) for size in sizes for colour in colours if draws.random() < 0.7
    }
    stock = [
        Stock(draws.randint(1, 80), draws.choice([None, *sizes]), draws.choice([None, *colours]))
        for _ in range(draws.randint(0, 6))
    ]
    used, left = draw(wanted, stock)
    count = 2 + len(stock) + len(wanted)
    graph = np.zeros((count, count), dtype=np.int32)
    for i, item in enumerate(stock):
        graph[0, 1 + i] = item.count
        for j, key in enumerate(wanted):
            graph[1 + i, 1 + len(stock) + j] = item.count if item.serves(key) else 0
    for j, number in enumerate(wanted.values()):
        graph[1 + len(stock) + j, count - 1] = number
    best = maximum_flow(csr_matrix(graph), 0, count - 1).flow_value
    assert sum(used.values()) == best
    assert sum(item.count for item in stock) - sum(item.count for item in left) == best
    assert all(0 <= used[key] <= wanted[key] for key in wanted)


def test_a_job_without_colours_takes_any_colour() -> None:
    (row,) = shopping(work(BOOK, Job([Piece("runner", {"count": 1, "table_length": 72})], {}, (Stock(30, 5, "red"),))))
    assert row.at_hand == 30


@pytest.mark.parametrize("size", [5, 9, 11, 12, 16, 18, 24, 36])
def test_each_size_is_sold_in_bags_of_falling_number_and_rising_price_each(size: float) -> None:
    packs = packs_of(work(BOOK, Job([RUNNER], {})), size)
    holds = [pack.holds for pack in packs]
    assert holds == sorted(set(holds), reverse=True)
    each = [pack.price / pack.holds for pack in packs]
    assert each == sorted(each)


def test_a_bag_size_that_is_named_is_the_only_one() -> None:
    rows = shopping(work(BOOK, Job([RUNNER], {})), 72)
    assert {holds for row in rows for holds, _ in row.bags} == {72}
    assert all(0 <= row.left < 72 for row in rows)


def test_the_stock_is_in_the_conversation() -> None:
    talk = Conversation()
    talk.say("eight 6 ft tables, navy, gold and white")
    before = shopping(work(BOOK, Job([Piece("runner", {"count": 8, "table_length": 72})], {})))
    reply = talk.say("I have two bags of white 5s and 40 navy 11s")
    text = " ".join(reply.text.split())
    assert before
    assert "200 at hand" in text
    assert "At hand and not used here: 40 navy 11 in." in text
    assert reply.unread == []
    assert reply.question is None
    assert [(piece["kind"], piece["count"]) for piece in reply.heard.pieces] == [("runner", 8)]
    assert "at hand" not in talk.say("undo").text
    assert "at hand" not in talk.say("shopping list").text
