"""Working a fact out the way it was worked out before, where the same facts were said with other values.

Which formula applies and what it reads hang on the choices alone.  While these fall alike, the step is known but for
its value, which is always worked out anew; where one falls otherwise the way is found again.
"""

from collections.abc import Iterable
from typing import Any
from weakref import proxy

from rules.ways import Way, ways_of
from rules.world import ARITHMETIC_TROUBLE, ASSUMED, HOUSE, WORKED_OUT, Absent, Step, World, finite, is_known

KEPT_SHAPES = 64  # kinds of piece by what was said of them

Known = dict[str, tuple[Step, dict[str, bool]]]  # by fact: the step, and the choices that fell in it


class _Elsewhere(Exception):
    """A choice falls otherwise than it did."""


class _Values(dict[str, Any]):
    """The values so far, as an exact closure reads them; `choices` are those of the step in hand."""

    def __init__(self, world: World) -> None:
        super().__init__()
        self.world = proxy(world)  # which has the guide that has this, and is to go as soon as nobody has it
        self.choices: dict[str, bool] = {}

    def __missing__(self, id: str) -> Any:
        value = self[id] = self.world.value(id)
        return value

    def known(self, id: str) -> bool:
        return is_known(self.world, id)

    def said(self, id: str) -> bool:
        return id in self.world.given

    def note(self, key: str, test: Any) -> bool:
        holds = bool(test)
        if self.choices.get(key) is not holds:
            raise _Elsewhere
        self.world.choices[key] = holds
        return holds


class Guide:
    """The ways known for worlds of one kind in which the same facts were said, for one more such world."""

    def __init__(self, world: World) -> None:
        shapes = world.book.shapes
        shape = (world.kind, *sorted(world.given))
        self.known: Known = shapes.setdefault(shape, {})
        if len(shapes) > KEPT_SHAPES:
            del shapes[next(iter(shapes))]
        self.values = _Values(world)

    def step(self, id: str) -> Step | None:
        """The step with the values of this world; None where its way is not known, or is another one here."""
        old = self.known.get(id)
        if old is None:
            return None
        before, self.values.choices = self.values.choices, old[1]
        try:
            return _again(old[0], self.values)
        except (_Elsewhere, Absent, *ARITHMETIC_TROUBLE):
            return None
        finally:
            self.values.choices = before

    def learn(self, step: Step, choices: dict[str, bool]) -> None:
        """Take note of a way that was found."""
        self.known[step.id] = step, choices


def _again(old: Step, values: _Values) -> Step | None:
    """The step with other values; None where it has no formula, or where what that reads hangs on values."""
    if old.how == HOUSE:
        return old
    way = old.way
    if way is None:
        ways = ways_of(values.world.book, old.fact)
        return old if old.how == ASSUMED and (not ways or _all_fail(ways, values)) else None
    if not (way.formula.is_steady and _all_fail(way.before, values)):
        return None
    if way.when is not None:
        if not way.when.is_steady:
            return None
        if not way.when.exact(values):
            raise _Elsewhere
    value = way.formula.exact(values)
    if old.fact.is_number:
        value = finite(value, old.fact.name)
    return Step(old.id, old.fact, value, WORKED_OUT, way, old.reads, old.reasons)


def _all_fail(ways: Iterable[Way], values: _Values) -> bool:
    """Whether none of the ways may be gone; False where what they read hangs on values, too."""
    for way in ways:
        if way.when is None or not way.when.is_steady:
            return False
        if way.when.exact(values):
            raise _Elsewhere
    return True
