"""Working a world out the way that another was, in which the same facts were said with other values.

Which formula applies and what it reads hang on the choices alone.  As long as these fall alike, each step is taken at
once, in the order of the other world, without finding the way to it again; from the first that falls otherwise on the
world works out by itself what it is asked for.  Every value is worked out anew: only the way is known already.
"""

from collections.abc import Iterable
from typing import Any

from rules.ways import Way, ways_of
from rules.world import ARITHMETIC_TROUBLE, ASSUMED, HOUSE, WORKED_OUT, Absent, Step, World, finite, is_known

KEPT_SHAPES = 64  # kinds of piece by what was said of them


class _Elsewhere(Exception):
    """A choice falls otherwise than in the other world."""


class _Values(dict[str, Any]):
    """The values so far, as an exact closure reads them."""

    def __init__(self, world: World, choices: dict[str, bool]) -> None:
        super().__init__()
        self.world, self.choices = world, choices

    def __missing__(self, id: str) -> Any:
        value = self[id] = self.world.value(id)
        return value

    def known(self, id: str) -> bool:
        return is_known(self.world, id)

    def said(self, id: str) -> bool:
        return id in self.world.given

    def note(self, key: str, holds: bool) -> None:
        if self.choices.get(key) is not holds:
            raise _Elsewhere
        self.world.choices[key] = holds


def follow(world: World) -> None:
    """Take the steps of the last world of this kind in which the same facts were said, as far as they go alike."""
    shapes = world.book.shapes
    shape = (world.kind, *sorted(world.given))
    known = shapes.pop(shape, None)
    shapes[shape] = world.steps, world.choices
    if len(shapes) > KEPT_SHAPES:
        del shapes[next(iter(shapes))]
    if known is None:
        return
    steps, choices = known
    values = _Values(world, choices)
    try:
        for old in steps.values():
            if old.id not in world.steps:
                step = _again(world, old, values)
                if step is None:
                    world.value(old.id)
                else:
                    world.steps[old.id] = step
                    values[old.id] = step.value
    except (_Elsewhere, Absent, *ARITHMETIC_TROUBLE):
        return


def _again(world: World, old: Step, values: _Values) -> Step | None:
    """The step with the values of this world; None where it has no formula, or what that reads hangs on values."""
    if old.how == HOUSE or (old.how == ASSUMED and not old.fact.rules):
        return old
    way = old.way
    if way is None:
        return old if old.how == ASSUMED and _all_fail(ways_of(world.book, old.fact), values) else None
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
