"""A quicker start: what is slow to make, and the same each time, taken from whoever can recall it."""

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from typing import Any

from rules.book import Book, lend_book, load_book
from rules.formula import lend_trees, write_trees
from rules.functions import FUNCTIONS, callable_in_base_units
from rules.show import METRIC
from rules.texts import places
from rules.units import Unit, UnitError, every_unit, lend_units, read_unit

Recall = Callable[[str, Callable[[], Any]], Any]
Made = tuple[dict[str, bytes], dict[str, Unit]]


def warm(recall: Recall, spoken: Iterable[str] = ()) -> None:
    """Take over the shipped book, the trees of its formulas, and its units with those that people speak (`spoken`).

    `recall(name, make)` gives what `make()` gives, or an equal thing that was kept under the name; no figure depends
    on which of the two it was.
    """
    lend_book(lambda read: recall("book", read))
    made: Made = recall("formulas", lambda: _make(spoken))
    trees, units = made
    lend_trees(trees)
    lend_units(units)


def _make(spoken: Iterable[str]) -> Made:
    book = load_book()
    trees = write_trees(book.formulas())
    for name in FUNCTIONS:
        callable_in_base_units(name)  # reads the units of what it takes and gives
    for unit in (*spoken, *METRIC, *METRIC.values(), *_units_shown(book)):
        with suppress(UnitError):  # some that people speak (stones) are of no use here
            read_unit(unit)
    return trees, every_unit()


def _units_shown(book: Book) -> Iterator[str]:
    """The units that the texts of the book ask for."""
    for fact in book.every_fact():
        yield fact.show
        for text in (fact.why, fact.short, *(rule.why for rule in fact.rules)):
            yield from (unit for _, unit in places(text) if unit)
    for remark in book.remarks:
        for text in (remark.text, *remark.choices):
            yield from (unit for _, unit in places(text) if unit)
