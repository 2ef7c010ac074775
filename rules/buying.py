"""What to buy: balloons of a job by size and colour, with spares, in whole bags."""

from dataclasses import dataclass

from rules.apportion import largest_remainder
from rules.engine import Estimate
from rules.functions import to_nearest, up_to_whole
from rules.values import look_up

PAIR = 2


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the shopping list.

    size_in is the nominal size in inches; colour is None where none was said; need is what the pieces hold,
    with_spares what to have at hand, packs the bags of `pack` balloons to buy, left what they leave over.
    """

    size_in: float
    colour: str | None
    need: int
    with_spares: int
    pack: int
    packs: int

    @property
    def left(self) -> int:
        """Balloons over after the spares."""
        return self.packs * self.pack - self.with_spares


def shopping(estimate: Estimate) -> list[Row]:
    """The rows to buy, by size and then in the order the colours were named; [] while nothing can be counted.

    Colours are shared out in each piece by Hamilton's method, pairs kept whole; spares are added to each row, rounded
    up, since a bag of one colour cannot stand in for another.
    """
    spare = _spare(estimate)
    needs: dict[tuple[float, str | None], int] = {}
    for place in range(len(estimate.job.pieces)):
        shares = _shares(estimate, place)
        for size, (count, pairs) in _by_size(estimate, place).items():
            parts = largest_remainder(count, list(shares.values()), PAIR if pairs else 1)
            for colour, part in zip(shares, parts, strict=True):
                needs[size, colour] = needs.get((size, colour), 0) + part
    order = {key: place for place, key in enumerate(needs)}
    ordered = sorted(needs, key=lambda key: (key[0], order[key]))
    return [_row(estimate, size, colour, needs[size, colour], spare) for size, colour in ordered if needs[size, colour]]


def _row(estimate: Estimate, size: float, colour: str | None, need: int, spare: float) -> Row:
    with_spares = up_to_whole(need * (1 + spare))
    pack = _pack(estimate, size)
    return Row(size, colour, need, with_spares, pack, up_to_whole(with_spares / pack))


def _spare(estimate: Estimate) -> float:
    step = estimate.step("spare")
    return float(step.value) if step is not None else 0.0


def _pack(estimate: Estimate, size: float) -> int:
    step = estimate.step("pack_size")
    return max(1, to_nearest(look_up(step.value, size))) if step is not None else 1


def _by_size(estimate: Estimate, place: int) -> dict[float, tuple[int, bool]]:
    """Nominal size -> (how many balloons, whether they go in pairs), over all parts of a piece."""
    found: dict[float, tuple[int, bool]] = {}
    for part in estimate.parts(place):
        count, pairs = found.get(part.size_in, (0, True))
        found[part.size_in] = (count + part.count, pairs and part.pairs)
    return found


def _shares(estimate: Estimate, place: int) -> dict[str | None, float]:
    """Colour -> its share; colours without one get equal parts of what the others leave."""
    step = estimate.step("colours", place)
    if step is None or not step.value:
        return {None: 1.0}
    given = {name: share for name, share in step.value if share is not None}
    bare = [name for name, share in step.value if share is None]
    left = max(0.0, 1.0 - sum(given.values()))
    found: dict[str | None, float] = {
        name: given[name] if name in given else left / len(bare) for name, _ in step.value
    }
    return found if any(found.values()) else dict.fromkeys(found, 1.0)
