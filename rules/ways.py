"""The rules of a fact ready to be worked with: each formula compiled when it is first needed, once for each book."""

from functools import cached_property

from rules.blocks import Fact, Rule
from rules.book import Book
from rules.record import record
from rules.written import Closure, Written, closure, written


class Formula:
    """A formula of the book under the name of its place, `slot`; `choices` are the words it may answer with."""

    def __init__(self, text: str, slot: str, choices: frozenset[str] = frozenset()) -> None:
        self.text, self.slot, self.choices = text, slot, choices

    @cached_property
    def exact(self) -> Closure:
        """Works it out as it stands."""
        return closure(self._written.exact)

    @cached_property
    def smooth(self) -> Closure:
        """Works it out without rounding, with the choices that were made at typical values."""
        return closure(self._written.smooth)

    @cached_property
    def is_steady(self) -> bool:
        """Whether it reads the same facts whatever their values, as long as its choices fall alike."""
        return self._written.is_steady

    @cached_property
    def _written(self) -> Written:
        return written(self.text, self.choices)


@record
class Way:
    """One rule of a fact; `when` is None for the general one. `before` are those that are tried before it."""

    rule: Rule
    when: Formula | None
    formula: Formula
    before: tuple["Way", ...] = ()


def ways_of(book: Book, fact: Fact) -> tuple[Way, ...]:
    """The rules of a fact in the order they are tried."""
    key = (fact.file, fact.id, fact.of)
    found: tuple[Way, ...] | None = book.closures.get(key)
    if found is None:
        found = ()
        for number, rule in enumerate(fact.rules):
            found = (*found, _way(fact, rule, number, found))
        book.closures[key] = found
    return found


def condition_of(book: Book, text: str) -> Formula:
    """A condition that belongs to no fact."""
    found: Formula | None = book.closures.get(text)
    if found is None:
        found = book.closures[text] = Formula(text, f"{text} when")
    return found


def _way(fact: Fact, rule: Rule, number: int, before: tuple[Way, ...]) -> Way:
    slot = f"{fact.id} rule {number}"
    when = Formula(rule.when, f"{slot} when") if rule.when is not None else None
    return Way(rule, when, Formula(rule.text, slot, frozenset(fact.choices)), before)
