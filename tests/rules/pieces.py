"""Pieces of any kind worked out by the shipped book, for the tests of each kind."""

from typing import Any

from rules.book import load_book
from rules.engine import Estimate, Job, Piece, work
from rules.figure import Figure

BOOK = load_book()


def estimate_of(kind: str, job: dict[str, Any] | None = None, **said: Any) -> Estimate:
    """The estimate of a job of one piece."""
    return work(BOOK, Job([Piece(kind, said)], job or {}))


def figure_of(kind: str, id: str, **said: Any) -> Figure:
    """A figure of one piece; the test fails where there is none."""
    estimate = estimate_of(kind, **said)
    figure = estimate.figure(id, 0)
    assert figure is not None, estimate.trouble(id, 0)
    return figure


def value_of(kind: str, id: str, **said: Any) -> Any:
    """The typical value of such a figure."""
    return figure_of(kind, id, **said).value


def holds(figure: Figure, *counts: float) -> bool:
    """Whether each count lies within low to high."""
    low, high = figure.low, figure.high
    assert low is not None
    assert high is not None
    return all(low <= count <= high for count in counts)
