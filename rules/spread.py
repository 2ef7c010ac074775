"""Ranges: how far each figure moves when one uncertain input at a time goes to its low and to its high.

The method is that of JCGM 100:2008 (GUM) 5.1 for independent inputs, taken by steps instead of derivatives (as in
its section 5.1.3, note 2) and on each side on its own: deviations are combined in quadrature.  All runs are smooth:
rounding is left out and choices stay as at typical values, so that rounding neither hides nor exaggerates a spread.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from itertools import islice
from typing import Any, NamedTuple

from rules.world import ARITHMETIC_TROUBLE, SAID, WORKED_OUT, Step, World

LOW, HIGH = 0, 1


class Move(NamedTuple):
    """How far one input moves a figure, in base units: with the input at its low and at its high."""

    leaf: str
    low: float
    high: float

    @property
    def size(self) -> float:
        """The greater of the two moves, without its sign."""
        return max(abs(self.low), abs(self.high))


def combine(moves: Iterable[Move]) -> tuple[float, float]:
    """How far below and above typical a figure lies, both 0 or more: one-sided moves in quadrature."""
    down, up = 0.0, 0.0
    for move in moves:
        down += min(move.low, move.high, 0.0) ** 2
        up += max(move.low, move.high, 0.0) ** 2
    return math.sqrt(down), math.sqrt(up)


@dataclass(slots=True)
class _Run:
    """One run through the steps: the values so far and how many steps (of those that it moves) are done."""

    values: dict[str, Any] = field(default_factory=dict)
    done: int = 0


class Spread:
    """The smooth runs of one world, made when first asked for and carried on when the world has grown.

    An input that is assumed has its fact's id for its name, so that all pieces share it; one that was said has a name
    that only an input alike in fact and range shares.
    """

    def __init__(self, world: World) -> None:
        self.world = world
        self._order: list[Step] = []
        self._smooth: list[Callable[[Any], Any] | None] = []
        self._masks: dict[str, int] = {}
        self.leaves: dict[str, Step] = {}
        self._bits: dict[str, int] = {}
        self._base = _Run()
        self._runs: dict[str, tuple[_Run, _Run]] = {}
        self._ends: dict[str, tuple[dict[str, Any], dict[str, Any]]] = {}  # of an input at its low and at its high
        self._resting: dict[int, list[int]] = {}  # bit of an input -> the places of the steps that rest on it
        self._found: dict[str, list[Move]] = {}
        self.figures: dict[Any, Any] = {}  # those made so far (rules/engine.py)

    def leaves_of(self, id: str) -> list[str]:
        """The names of the uncertain inputs that the figure rests on, in the order they were come upon."""
        if len(self._order) != len(self.world.steps):
            self._grow()
        mask = self._masks.get(id, 0)
        return [leaf for leaf, bit in self._bits.items() if mask & bit]

    def moves(self, id: str) -> list[Move]:
        """How far each uncertain input moves the figure; none for what is no quantity."""
        step = self.world.find(id)
        if step is None or not step.fact.is_number:
            return []
        if id not in self._found:
            leaves = self.leaves_of(id)
            typical: float = self._base.values[id]
            ends = ((leaf, self._ends.get(leaf) or self._at_ends(leaf)) for leaf in leaves)
            self._found[id] = [Move(leaf, low[id] - typical, high[id] - typical) for leaf, (low, high) in ends]
        return self._found[id]

    def at(self, id: str, leaf: str | None = None, side: int = LOW) -> float:
        """The smooth value of a quantity with one input at its low or high, or with all typical."""
        if len(self._order) != len(self.world.steps):
            self._grow()
        if leaf is not None and self._masks.get(id, 0) & self._bits.get(leaf, 0):
            return float((self._ends.get(leaf) or self._at_ends(leaf))[side][id])
        return float(self._base.values[id])

    def _grow(self) -> None:
        """Takes in the steps that the world has made since the last call, and their smooth values."""
        steps = self.world.steps
        if len(self._order) == len(steps):
            return
        self._ends.clear()
        for step in list(steps.values())[len(self._order) :]:
            mask = self._masks[step.id] = self._mask(step)
            while mask:
                bit = mask & -mask
                self._resting.setdefault(bit, []).append(len(self._order))
                mask ^= bit
            self._order.append(step)
            self._smooth.append(self._closure(step))
        values = self._base.values
        values.update(self.world.choices)
        while self._base.done < len(self._order):
            step, closure = self._order[self._base.done], self._smooth[self._base.done]
            values[step.id] = self._typical(step) if closure is None else attempt(closure, values, step.value)
            self._base.done += 1

    def _closure(self, step: Step) -> Callable[[Any], Any] | None:
        """How a step's smooth value is worked out; None for what stays as it is."""
        if step.how != WORKED_OUT or not step.fact.is_number or step.way is None:
            return None
        return step.way.formula.smooth

    def _typical(self, step: Step) -> Any:
        """The smooth value of a step that no formula works out."""
        return step.value

    def _at_end(self, step: Step, _leaf: str, side: int) -> Any:
        """The value of such a step with the input `_leaf`, on which it rests, at one end."""
        end = step.high if side == HIGH else step.low
        left = self._left(step)
        if left == 1.0 or not step.fact.is_number:
            return end
        return step.value + (end - step.value) * left

    def _left(self, step: Step) -> float:
        """How much of the book's range an input still has, where jobs that are done have told what it comes to.

        What was learned of a figure is learned of all inputs together that the figure rests on; what was said of this
        job, and the scatter from job to job that the learned fact itself has, stay whole.
        """
        if step.how == SAID or step.fact.learned is not None or not self.world.book.learned:
            return 1.0
        bit = self._bits.get(step.id, 0)
        for fact in self.world.book.learned:
            learned = fact.learned
            measures = (learned.of, learned.of_piece) if learned is not None and fact.id in self._masks else ()
            if learned is not None and any(self._masks.get(id, 0) & bit for id in measures):
                return learned.left
        return 1.0

    def _bit(self, leaf: str, step: Step) -> int:
        self.leaves.setdefault(leaf, step)
        return self._bits.setdefault(leaf, 1 << len(self._bits))

    def _mask(self, step: Step) -> int:
        if step.is_uncertain:
            return self._bit(f"{step.id} said {step.low:g} to {step.high:g}" if step.how == SAID else step.id, step)
        if not step.fact.is_number:
            return 0
        mask = 0
        for read in step.reads:
            mask |= self._masks.get(read, 0)
        return mask

    def _at_ends(self, leaf: str) -> tuple[dict[str, Any], dict[str, Any]]:
        """The smooth values with one input at its low, and at its high."""
        runs = self._runs.get(leaf)
        if runs is None:
            runs = self._runs[leaf] = _Run(), _Run()
        for side in (LOW, HIGH):
            self._carry_on(runs[side], leaf, side)
        ends = self._ends[leaf] = runs[LOW].values, runs[HIGH].values
        return ends

    def _carry_on(self, run: _Run, leaf: str, side: int) -> None:
        base = self._base.values
        if run.values:  # the order is one, so what is new stands last
            run.values.update(islice(base.items(), len(run.values), None))
        else:
            run.values = base.copy()
        values, order, smooth = run.values, self._order, self._smooth
        places = self._resting[self._bits[leaf]]
        for place in places[run.done :] if run.done else places:
            step, closure = order[place], smooth[place]
            if closure is not None:
                values[step.id] = attempt(closure, values, base[step.id])
            else:
                values[step.id] = self._at_end(step, leaf, side)
        run.done = len(places)


def attempt(closure: Callable[[Any], Any], values: dict[str, Any], otherwise: Any) -> Any:
    """The smooth value, or `otherwise` where an input at its end makes the formula impossible."""
    try:
        return closure(values)
    except ARITHMETIC_TROUBLE:
        return otherwise
