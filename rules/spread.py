"""Ranges: how far each figure moves when one uncertain input at a time goes to its low and to its high.

The method is that of JCGM 100:2008 (GUM) 5.1 for independent inputs, taken by steps instead of derivatives (as in
its section 5.1.3, note 2) and on each side on its own: deviations are combined in quadrature.  All runs are smooth:
rounding is left out and choices stay as at typical values, so that rounding neither hides nor exaggerates a spread.
"""

import math
from bisect import bisect_left
from collections.abc import Callable, Iterable, Mapping
from itertools import chain, islice
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


class _Run(NamedTuple):
    """The smooth values with one input at its low, and at its high."""

    low: dict[str, Any]
    high: dict[str, Any]


class Spread:
    """The smooth runs of one world, made when first asked for and carried on when the world has grown.

    An input that is assumed has its fact's id for its name, so that all pieces share it; one that was said has a name
    that only an input alike in fact and range shares.
    """

    def __init__(self, world: World) -> None:
        self.world = world
        self._order: list[tuple[str, Callable[[Any], Any] | None, Step]] = []
        self._masks: dict[str, int] = {}
        self.leaves: dict[str, Step] = {}
        self._bits: dict[str, int] = {}
        self._sets: dict[int, list[str]] = {}  # names of inputs by their bits together
        self._alike: dict[int, list[int]] = {}  # places of the steps that rest on the same inputs, by the bits of these
        self._resting: dict[int, list[list[int]]] = {}  # the same lists, by the bit of each of the inputs
        self._base: dict[str, Any] = {}
        self._runs: dict[str, _Run] = {}  # carried on since the world has grown last
        self._begun: dict[str, tuple[_Run, int]] = {}  # all, with the number of steps that each has taken in
        self._found: dict[str, list[Move]] = {}
        self._ends: dict[tuple[str, str], tuple[float, float]] = {}  # by figure and input, as a job looked at them
        self.figures: dict[Any, Any] = {}  # those made so far (rules/engine.py)

    def leaves_of(self, id: str) -> list[str]:
        """The names of the uncertain inputs that the figure rests on, in the order they were come upon."""
        if len(self._order) != len(self.world.steps):
            self._grow()
        mask = self._masks.get(id, 0)
        found = self._sets.get(mask)
        if found is None:
            found = self._sets[mask] = [name for name, bit in self._bits.items() if mask & bit]
        return found

    def moves(self, id: str) -> list[Move]:
        """How far each uncertain input moves the figure; none for what is no quantity."""
        found = self._found.get(id)
        if found is None:
            step = self.world.find(id)
            if step is None or not step.fact.is_number:
                return []
            leaves = self.leaves_of(id)
            typical: float = self._base[id]
            runs = self._runs
            found = self._found[id] = []
            for leaf in leaves:
                low, high = runs.get(leaf) or self._run(leaf)
                found.append(Move(leaf, low[id] - typical, high[id] - typical))
        return found

    def pulls(self, weights: Mapping[str, float]) -> dict[str, float]:
        """How far each input moves any of these figures at most, as a share of the figure times its weight; by fact."""
        shown: list[tuple[str, int, float, float]] = []
        for id, weight in weights.items():
            step = self.world.find(id)
            if step is None or not step.fact.is_number:
                continue
            if len(self._order) != len(self.world.steps):
                self._grow()
            typical = self._base[id]
            shown.append((id, self._masks.get(id, 0), typical, weight / (abs(typical) or 1.0)))
        found: dict[str, float] = {}
        for leaf, bit in self._bits.items():
            mine = [row for row in shown if row[1] & bit]
            if not mine:
                continue
            low, high = self._runs.get(leaf) or self._run(leaf)
            most = max(max(abs(low[id] - typical), abs(high[id] - typical)) * share for id, _, typical, share in mine)
            name = self.leaves[leaf].id
            found[name] = max(most, found.get(name, -1.0))
        return found

    def at(self, id: str, leaf: str | None = None, side: int = LOW) -> float:
        """The smooth value of a quantity with one input, known here, at its low or high, or with all typical."""
        if len(self._order) != len(self.world.steps):
            self._grow()
        if leaf is None:
            value: float = self._base[id]
            return value
        ends = self._ends.get((id, leaf))
        if ends is None:
            low, high = self._runs.get(leaf) or self._run(leaf)
            ends = self._ends[id, leaf] = low[id], high[id]
        return ends[side]

    def let_go(self) -> None:
        """Forget the runs, which take up room, and are quickly made again should more be asked for."""
        self._runs.clear()
        self._begun.clear()

    def _grow(self) -> None:
        """Takes in the steps that the world has made since the last call, and their smooth values."""
        order, values, alike = self._order, self._base, self._alike
        values.update(self.world.choices)
        self._runs.clear()
        for step in list(self.world.steps.values())[len(order) :]:
            mask = self._masks[step.id] = self._mask(step)
            if mask:
                (alike.get(mask) or self._new_kind(mask)).append(len(order))
            worked = step.how == WORKED_OUT and step.way is not None and step.fact.is_number
            closure = step.way.formula.smooth if worked and step.way is not None else None
            order.append((step.id, closure, step))
            if closure is None:
                values[step.id] = self._typical(step)
                continue
            try:
                values[step.id] = closure(values)
            except ARITHMETIC_TROUBLE:
                values[step.id] = step.value

    def _new_kind(self, mask: int) -> list[int]:
        """A list for the steps that rest on just these inputs."""
        places = self._alike[mask] = []
        while mask:
            bit = mask & -mask
            self._resting.setdefault(bit, []).append(places)
            mask ^= bit
        return places

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
        bit = self._bits.get(leaf)
        if bit is None:
            bit = self._bits[leaf] = 1 << len(self._bits)
            self.leaves[leaf] = step
        return bit

    def _mask(self, step: Step) -> int:
        if step.is_uncertain:
            return self._bit(f"{step.id} said {step.low:g} to {step.high:g}" if step.how == SAID else step.id, step)
        if not step.fact.is_number:
            return 0
        mask = 0
        for read in step.reads:
            mask |= self._masks.get(read, 0)
        return mask

    def _run(self, leaf: str) -> _Run:
        """The run with this input at its ends, carried on through all steps."""
        base, order, bit = self._base, self._order, self._bits[leaf]
        made, done = self._begun.get(leaf, (None, 0))
        if made is None:
            made = _Run(base.copy(), base.copy())
        else:
            for values in made:  # the order is one, so what is new stands last
                values.update(islice(base.items(), len(values), None))
        self._runs[leaf], self._begun[leaf] = made, (made, len(order))
        low, high = made
        places = sorted(chain.from_iterable(self._resting[bit]))
        for place in places[bisect_left(places, done) :]:
            id, closure, step = order[place]
            if closure is None:
                low[id], high[id] = self._at_end(step, leaf, LOW), self._at_end(step, leaf, HIGH)
                continue
            try:
                low[id] = closure(low)
            except ARITHMETIC_TROUBLE:  # the input at its end makes the formula impossible
                low[id] = base[id]
            try:
                high[id] = closure(high)
            except ARITHMETIC_TROUBLE:
                high[id] = base[id]
        return made
