"""The job as a scope of its own: total(x), most(x) and least(x) look at its pieces, at typical values and moved."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any

from rules.blocks import JOB, Fact
from rules.book import Book
from rules.functions import OVER_PIECES
from rules.spread import LOW, Spread
from rules.world import WORKED_OUT, Absent, Step, World

OVER = "over pieces"  # in place of a kind


@cache
def over_pieces(key: str) -> tuple[str, str] | None:
    """("total", "balloons") for the key "total(balloons)"; None for the id of a fact."""
    how, bracket, rest = key.partition("(")
    return (how, rest[:-1]) if bracket and how in OVER_PIECES else None


class JobWorld(World):
    """The facts of the job, over the pieces given."""

    def __init__(self, book: Book, said: Mapping[str, Any], pieces: Sequence[Spread]) -> None:
        super().__init__(book, JOB, said, {})
        self.pieces = pieces
        self._having: dict[str, list[int]] = {}

    def having(self, id: str) -> list[int]:
        """The places of the pieces that have a value for a fact of their own called `id`."""
        if id not in self._having:
            self._having[id] = [
                place
                for place, piece in enumerate(self.pieces)
                if not self.book.is_of_job(id, piece.world.kind) and piece.world.find(id) is not None
            ]
        return self._having[id]

    def nothing_of(self, id: str) -> str:
        """Why the fact has no value, whatever the others are; "" where it may have one."""
        return "" if over_pieces(id) is not None else super().nothing_of(id)

    def _step(self, id: str, choices: dict[str, bool]) -> Step:
        looked = over_pieces(id)
        if looked is None:
            return super()._step(id, choices)
        how, over = looked
        values = [float(self.pieces[place].world.value(over)) for place in self.having(over)]
        return Step(id, self._fact_over(id, over), gather(how, values, over), WORKED_OUT)

    def _fact_over(self, key: str, id: str) -> Fact:
        """A stand-in for the fact that a look over the pieces works out."""
        stand_in = self.book.looked_up.get((key, OVER))
        if stand_in is None:
            facts = self.book.facts.get(id)
            if not facts:
                raise Absent(key, f"nothing is known of {id.replace('_', ' ')}")
            stand_in = replace(facts[0], id=key, type="quantity", rules=(), assume=None)
            self.book.looked_up[key, OVER] = stand_in
        return stand_in


class JobSpread(Spread):
    """Ranges of the job's facts: an input that pieces share moves in all of them at once."""

    world: JobWorld

    def __init__(self, world: JobWorld) -> None:
        super().__init__(world)
        self._own: dict[str, dict[int, str]] = {}  # a name of the job's -> by place of a piece, that of the piece

    def _typical(self, step: Step) -> Any:
        return self._gathered(step, None, LOW)

    def _at_end(self, step: Step, _leaf: str, side: int) -> Any:
        return self._gathered(step, _leaf, side)

    def _gathered(self, step: Step, leaf: str | None, side: int) -> Any:
        looked = over_pieces(step.id)
        if looked is None:
            return super()._typical(step) if leaf is None else super()._at_end(step, leaf, side)
        how, id = looked
        own = self._own.get(leaf, {}) if leaf is not None else {}
        pieces = self.world.pieces
        return gather(how, [pieces[at].at(id, own.get(at), side) for at in self.world.having(id)], id)

    def _mask(self, step: Step) -> int:
        looked = over_pieces(step.id)
        if looked is None:
            return super()._mask(step)
        mask = 0
        for place in self.world.having(looked[1]):
            piece = self.world.pieces[place]
            for leaf in piece.leaves_of(looked[1]):
                known = piece.leaves[leaf]
                name = job_leaf(leaf, known, place)
                self._own.setdefault(name, {})[place] = leaf
                mask |= self._bit(name, known)
        return mask


def job_leaf(leaf: str, step: Step, place: int) -> str:
    """The name under which the job knows an uncertain input of the piece at `place`."""
    return leaf if step.fact.shared else f"{place}.{leaf}"


def gather(how: str, values: Sequence[float], id: str) -> float:
    """The total (0 of none), the most or the least of the values; Absent for most and least of none."""
    if how == "total":
        return sum(values)
    if not values:
        raise Absent(id, f"no piece has {id.replace('_', ' ')}")
    return max(values) if how == "most" else min(values)
