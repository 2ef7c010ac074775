"""Which packs to buy: the least money, then the least left over, then the fewest packs, exactly."""

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from math import gcd, lcm

from rules.domain import require_not_negative, require_whole

Price = Decimal | float | int


def choose_packs(need: int, sizes: Sequence[int], prices: Sequence[Price] | None = None) -> list[int]:
    """Return how many packs of each size to buy for at least need pieces, in the order of sizes.

    need: 0 or more; sizes: pieces in a pack, whole, 1 or more, no size twice; prices: of one pack of each size in any
    one currency, 0 or more, taken as the decimals they print as; without them only what is left over and
    the number of packs count. The choice is exact, and the same for the same input. ValueError for
    impossible input, in one plain sentence. Source: integer programming, by dynamic programming.
    """
    require_whole("number needed", need, 0)
    _require_sizes(sizes)
    scores = _scores(need, sizes, prices)
    chosen = [0] * len(sizes)

    # Of any `size` packs of other kinds, some add up to a multiple of the thriftiest pack's size and may be
    # swapped for it at no loss. So the others never cover more than `span`, and what exceeds it is settled.
    thriftiest = min(range(len(sizes)), key=lambda i: (Fraction(scores[i], sizes[i]), i))
    span = sizes[thriftiest] * max(sizes)
    chosen[thriftiest] = max(0, need - span) // sizes[thriftiest]
    remaining = need - chosen[thriftiest] * sizes[thriftiest]

    step = gcd(*sizes)  # packs come to multiples of it, so between two of them nothing changes
    whole = [size // step for size in sizes]
    remaining = -(-remaining // step)
    best = [0] * (remaining + 1)
    last = [0] * (remaining + 1)
    for pieces in range(1, remaining + 1):
        best[pieces], last[pieces] = min(
            (best[max(0, pieces - size)] + score, index)
            for index, (size, score) in enumerate(zip(whole, scores, strict=True))
        )
    while remaining > 0:
        chosen[last[remaining]] += 1
        remaining -= whole[last[remaining]]
    return chosen


def _require_sizes(sizes: Sequence[int]) -> None:
    if not sizes:
        raise ValueError("There are no packs to choose from; name at least one pack size.")
    for size in sizes:
        require_whole("pack size", size, 1)
    if len(set(sizes)) < len(sizes):
        raise ValueError("A pack size is named twice; keep the cheaper one.")


def _scores(need: int, sizes: Sequence[int], prices: Sequence[Price] | None) -> list[int]:
    """Return one whole number for each pack that ranks money before pieces before packs when summed."""
    if prices is None:
        prices = [0] * len(sizes)
    if len(prices) != len(sizes):
        raise ValueError(f"There are {len(sizes)} pack sizes but {len(prices)} prices; give one price for each size.")
    for price in prices:
        require_not_negative("price of a pack", float(price), "")
    coins = _in_coins(tuple(prices))
    # No sensible choice has more packs than need, nor more pieces than need and one pack on top.
    piece = need + 2
    coin = piece * (need + max(sizes) + 2)
    return [price * coin + size * piece + 1 for price, size in zip(coins, sizes, strict=True)]


@lru_cache(maxsize=256)
def _in_coins(prices: tuple[Price, ...]) -> tuple[int, ...]:
    """The prices as whole numbers of the greatest coin that pays each of them."""
    money = [Fraction(str(price)) for price in prices]
    smallest = lcm(*(price.denominator for price in money))
    return tuple(int(price * smallest) for price in money)
