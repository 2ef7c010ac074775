"""Working a fact out the way it was worked out before, where the same facts were said with other values.

Which formula applies and what it reads hang on the choices alone.  While these fall alike, the step is known but for
its value, which is always worked out anew; where one falls otherwise the way is found again.
"""

from typing import Any, NamedTuple
from weakref import proxy

from rules.ways import Way, ways_of
from rules.world import ARITHMETIC_TROUBLE, ASSUMED, HOUSE, WORKED_OUT, Absent, Step, World, finite, is_known
from rules.written import Closure

KEPT_SHAPES = 64  # kinds of piece by what was said of them


class _Course(NamedTuple):
    """The way of one fact: what it came to last, the choices that fell, and what is to be worked out anew."""

    old: Step
    choices: dict[str, bool]
    barred: tuple[Closure, ...] = ()  # conditions that must not hold again
    when: Closure | None = None  # one that must
    formula: Closure | None = None


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
        self.known: dict[str, _Course | None]
        self.fixed: dict[str, Step]  # those among them that are the same whatever the values
        self.known, self.fixed = shapes.setdefault(shape, ({}, {}))
        if len(shapes) > KEPT_SHAPES:
            del shapes[next(iter(shapes))]
        self.values = _Values(world)

    def step(self, id: str) -> Step | None:
        """The step with the values of this world; None where its way is not known, or is another one here."""
        course = self.known.get(id)
        if course is None:
            return None
        old, choices, barred, when, formula = course
        values = self.values
        before, values.choices = values.choices, choices
        try:
            for one in barred:
                if one(values):
                    return None
            if when is not None and not when(values):
                return None
            if formula is None:
                return old
            value = formula(values)
            if old.fact.is_number:
                value = finite(value, old.fact)
        except (_Elsewhere, Absent, *ARITHMETIC_TROUBLE):
            return None
        finally:
            values.choices = before
        return Step(old.id, old.fact, value, WORKED_OUT, old.way, old.reads, old.reasons)

    def learn(self, step: Step, choices: dict[str, bool]) -> None:
        """Take note of a way that was found."""
        course = self.known[step.id] = _course(self.values.world, step, choices)
        if course is not None and course.formula is None and not course.barred:
            self.fixed[step.id] = step


def _course(world: World, step: Step, choices: dict[str, bool]) -> _Course | None:
    """The way of a step; None where what it reads hangs on values."""
    way = step.way
    if step.how == HOUSE:
        return _Course(step, choices)
    if way is None:
        before = ways_of(world.book, step.fact)
        barred = _conditions(before)
        return _Course(step, choices, barred) if step.how == ASSUMED and barred is not None else None
    barred = _conditions(way.before)
    if barred is None or not way.formula.is_steady or (way.when is not None and not way.when.is_steady):
        return None
    return _Course(step, choices, barred, way.when.exact if way.when is not None else None, way.formula.exact)


def _conditions(ways: tuple[Way, ...]) -> tuple[Closure, ...] | None:
    """The conditions of ways; None where one has none, or reads what hangs on values."""
    whens = [way.when for way in ways if way.when is not None and way.when.is_steady]
    return tuple(when.exact for when in whens) if len(whens) == len(ways) else None
