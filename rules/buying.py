"""What to buy: balloons of a job by size and colour, with spares, less what is at hand, in whole bags."""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

from rules.apportion import largest_remainder
from rules.engine import Estimate
from rules.functions import to_nearest, up_to_whole
from rules.packs import choose_packs
from rules.record import record
from rules.stock import Stock, draw
from rules.values import look_up

PAIR = 2
CENT = Decimal("0.01")
# The bags of a size: the fact with the number in one, and the fact that says how much dearer its balloons are.
BAGS = (("pack_size", None), ("small_pack", "small_pack_dearer"), ("smallest_pack", "smallest_pack_dearer"))


@record
class Pack:
    """A bag that balloons are sold in: how many it holds and what it costs, in the book's currency."""

    holds: int
    price: Decimal


@record
class Row:
    """One line of the shopping list.

    size_in is the nominal size in inches; colour is None where none was said; need is what the pieces hold,
    with_spares what to have ready, at_hand how many of those are there already, bags the whole bags to buy as (balloons
    in one, how many), the biggest first, cost what they come to, left what is over in the end.
    """

    size_in: float
    colour: str | None
    need: int
    with_spares: int
    at_hand: int
    bags: tuple[tuple[int, int], ...]
    cost: Decimal

    @property
    def bought(self) -> int:
        """Balloons in the bags."""
        return sum(holds * packs for holds, packs in self.bags)

    @property
    def left(self) -> int:
        """Balloons over after the spares."""
        return self.at_hand + self.bought - self.with_spares

    @property
    def pack(self) -> int:
        """Balloons in the biggest of the bags, 0 where none is bought."""
        return self.bags[0][0] if self.bags else 0

    @property
    def packs(self) -> int:
        """Bags of all sizes together."""
        return sum(packs for _, packs in self.bags)


def shopping(estimate: Estimate, bag: int | None = None) -> list[Row]:
    """The rows to buy, by size and then in the order the colours were named; [] while nothing can be counted.

    Colours are shared out in each piece by Hamilton's method, pairs kept whole; spares are added to each row, rounded
    up, since a bag of one colour cannot stand in for another. What is at hand (job.stock) comes off first. Then the
    bags of the book are chosen for the least money, then the least left over; `bag` allows bags of that number only.
    """
    spare = _spare(estimate)
    needs: dict[tuple[float, str | None], int] = {}
    for place in range(len(estimate.job.pieces)):
        shares = colour_shares(estimate, place)
        for size, (count, pairs) in _by_size(estimate, place).items():
            parts = largest_remainder(count, list(shares.values()), PAIR if pairs else 1)
            for colour, part in zip(shares, parts, strict=True):
                needs[size, colour] = needs.get((size, colour), 0) + part
    order = {key: place for place, key in enumerate(needs)}
    keys = [key for key in sorted(needs, key=lambda key: (key[0], order[key])) if needs[key]]
    ready = {key: up_to_whole(needs[key] * (1 + spare)) for key in keys}
    used, _ = draw(ready, estimate.job.stock)
    return [_row(estimate, key, needs[key], ready[key], used[key], bag) for key in keys]


def unused(estimate: Estimate) -> list[Stock]:
    """What is at hand and this job does not take, item by item."""
    ready = {(row.size_in, row.colour): row.with_spares for row in shopping(estimate)}
    return draw(ready, estimate.job.stock)[1]


def packs_of(estimate: Estimate, size_in: float) -> list[Pack]:
    """The bags that balloons of a nominal size (inches) are sold in, the biggest first, each number once."""
    found: dict[int, Pack] = {}
    for number, dearer in BAGS:
        step = estimate.step(number)
        if step is not None:
            holds = max(1, to_nearest(look_up(step.value, size_in)))
            found.setdefault(holds, Pack(holds, _price(estimate, size_in, holds, dearer)))
    return sorted(found.values(), key=lambda pack: -pack.holds) or [Pack(1, Decimal(0))]


def _row(estimate: Estimate, key: tuple[float, str | None], need: int, ready: int, used: int, bag: int | None) -> Row:
    packs = packs_of(estimate, key[0])
    if bag is not None:
        packs = [next((p for p in packs if p.holds == bag), Pack(bag, _price(estimate, key[0], bag, None)))]
    chosen = choose_packs(ready - used, [pack.holds for pack in packs], [pack.price for pack in packs])
    bags = tuple((pack.holds, count) for pack, count in zip(packs, chosen, strict=True) if count)
    cost = sum((pack.price * count for pack, count in zip(packs, chosen, strict=True)), Decimal(0))
    return Row(key[0], key[1], need, ready, used, bags, cost)


def _price(estimate: Estimate, size_in: float, holds: int, dearer: str | None) -> Decimal:
    """What a bag costs: the balloons in it, dearer by the part that the fact `dearer` says; to the cent."""
    each = estimate.step("balloon_price")
    more = estimate.step(dearer) if dearer else None
    price = holds * (look_up(each.value, size_in) if each else 0.0) * (1 + (float(more.value) if more else 0.0))
    return Decimal(str(price)).quantize(CENT, ROUND_HALF_UP)


def _spare(estimate: Estimate) -> float:
    step = estimate.step("spare")
    return float(step.value) if step is not None else 0.0


def _by_size(estimate: Estimate, place: int) -> dict[float, tuple[int, bool]]:
    """Nominal size -> (how many balloons, whether they go in pairs), over all parts of a piece."""
    found: dict[float, tuple[int, bool]] = {}
    for part in estimate.parts(place):
        count, pairs = found.get(part.size_in, (0, True))
        found[part.size_in] = (count + part.count, pairs and part.pairs)
    return found


def colour_shares(estimate: Estimate, place: int) -> dict[str | None, float]:
    """Colour -> its share in a piece; colours without one get equal parts of what the others leave."""
    step = estimate.step("colours", place)
    return shared_out(step.value) if step is not None and step.value else {None: 1.0}


def shared_out(colours: Sequence[tuple[str, float | None]]) -> dict[str | None, float]:
    """Colours with or without a share, as shares of all (0 to 1, any sum)."""
    given = {name: share for name, share in colours if share is not None}
    bare = [name for name, share in colours if share is None]
    left = max(0.0, 1.0 - sum(given.values()))
    found: dict[str | None, float] = {name: given[name] if name in given else left / len(bare) for name, _ in colours}
    return found if any(found.values()) else dict.fromkeys(found, 1.0)
