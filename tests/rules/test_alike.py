"""A piece worked out the way one like it went comes to the very figures that it comes to by itself."""

import random
from dataclasses import asdict
from typing import Any

import pytest

from rules import Job, Piece, load_book, work
from rules.book import Book
from tests.rules.small_books import book_of, fact

BOOK = load_book()
DRAWN: dict[str, tuple[float, float]] = {
    "count": (1, 14),
    "table_length": (48, 96),
    "table_height": (24, 40),
    "overhang": (0, 30),
    "max_width": (6, 40),
    "length": (24, 400),
    "span": (40, 200),
    "height": (40, 140),
    "diameter": (30, 100),
    "balloons": (3, 12),
}
ASKED: list[tuple[str, tuple[str, ...], dict[str, Any]]] = [
    ("runner", ("count", "table_length", "max_width"), {}),
    ("runner", ("count", "table_length", "overhang"), {"table_shape": "round"}),
    ("garland", ("length",), {"style": "classic"}),
    ("garland", ("length",), {"colours": [("navy", None), ("gold", None)]}),
    ("arch", ("span", "height"), {}),
    ("column", ("count", "height"), {}),
    ("hoop", ("diameter",), {}),
    ("wall", ("span", "height"), {}),
    ("bouquet", ("count", "balloons"), {}),
]


def drawn(draw: random.Random, names: tuple[str, ...], said: dict[str, Any]) -> dict[str, Any]:
    whole = {"count", "balloons"}
    return {**said, **{n: draw.randint(*map(int, DRAWN[n])) if n in whole else draw.uniform(*DRAWN[n]) for n in names}}


def figures(book: Book, job: Job) -> list[dict[str, Any]]:
    made = work(book, job)
    told = [*made.figures(), *made.cautions(), *made.notes()]
    return [asdict(one) for one in told] + [{"taken": made.taken(p)} for p in (*range(len(job.pieces)), None)]


@pytest.mark.parametrize("seed", range(12))
def test_ways_gone_before_change_no_figure(seed: int) -> None:
    """Against the same job over a book that has worked nothing out: values, ranges, reasons and what was read."""
    draw = random.Random(seed)  # noqa: S311 - examples to try, no secret
    outdoors = [{}, {"outdoors": True, "wind": 12}, {"crew": 3}, {"altitude": 6000}]
    jobs = []
    for _ in range(25):
        kind, names, said = draw.choice(ASKED)
        pieces = [Piece(kind, drawn(draw, names, said))]
        if draw.random() < 0.3:
            other, its, also = draw.choice(ASKED)
            pieces.append(Piece(other, drawn(draw, its, also)))
        jobs.append(Job(pieces, draw.choice(outdoors)))
    BOOK.shapes.clear()
    BOOK.worlds.clear()
    found = [figures(BOOK, job) for job in jobs]
    for job, one in zip(jobs, found, strict=True):
        BOOK.shapes.clear()
        BOOK.worlds.clear()
        assert figures(BOOK, job) == one


def test_a_way_is_found_again_where_a_choice_falls_otherwise() -> None:
    """A step at the other side of a choice is no step of the pattern: the figure names what it then rests on."""
    for length in (30.0, 900.0, 30.0):
        job = Job([Piece("garland", {"length": length, "style": "classic"})])
        warm = figures(BOOK, job)
        BOOK.shapes.clear()
        BOOK.worlds.clear()
        assert figures(BOOK, job) == warm


def test_what_was_assumed_is_worked_out_once_its_condition_holds() -> None:
    """The guide knows the height as assumed; of a longer table another rule gives it."""
    long = '[[a_height.except]]\nname = "long"\nwhen = "table_length > 100"\nis = "36 in"\nwhy = "so"\nsource = "so"\n'
    book = book_of(fact("a_height", assume=30) + long)
    told = [work(book, Job([Piece("runner", {"table_length": n})])).figure("a_height", 0) for n in (90, 120, 90)]
    assert [figure.value for figure in told if figure is not None] == [30, 36, 30]
