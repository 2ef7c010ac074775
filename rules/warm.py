"""A quicker start: what is slow to make, and the same each time, taken from whoever can recall it."""

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from typing import Any

from rules.book import Book, lend_book, load_book
from rules.functions import FUNCTIONS, callable_in_base_units
from rules.show import METRIC
from rules.texts import places
from rules.units import Unit, UnitError, every_unit, lend_units, read_unit
from rules.written import Trees, Written, key_of, lend_trees, lend_written, written

Recall = Callable[[str, Callable[[], Any]], Any]
Made = tuple[dict[str, Written], dict[str, Unit]]


def warm(recall: Recall, spoken: Iterable[str] = ()) -> None:
    """Take over the shipped book, its formulas, and its units with those that people speak (`spoken`).

    `recall(name, make)` gives what `make()` gives, or an equal thing that was kept under the name; no figure depends
    on which of the two it was.
    """
    lend_book(lambda read: recall("book", read))
    made: Made = recall("formulas", lambda: _make(spoken))
    formulas, units = made
    lend_written(formulas)
    lend_units(units)
    lend_trees(lambda: recall("trees", _trees))


def _make(spoken: Iterable[str]) -> Made:
    book = load_book()
    formulas = {key_of(text, choices): written(text, choices) for text, choices in book.formulas()}
    for name in FUNCTIONS:
        callable_in_base_units(name)  # reads the units of what it takes and gives
    for unit in (*spoken, *METRIC, *METRIC.values(), *_units_shown(book)):
        with suppress(UnitError):  # some that people speak (stones) are of no use here
            read_unit(unit)
    return formulas, every_unit()


def _trees() -> Trees:
    from rules.formula import write_trees

    return write_trees(text for text, _ in load_book().formulas())


def _units_shown(book: Book) -> Iterator[str]:
    """The units that the texts of the book ask for."""
    for fact in book.every_fact():
        yield fact.show
        for text in (fact.why, fact.short, *(rule.why for rule in fact.rules)):
            yield from (unit for _, unit in places(text) if unit)
    for remark in book.remarks:
        for text in (remark.text, *remark.choices):
            yield from (unit for _, unit in places(text) if unit)
