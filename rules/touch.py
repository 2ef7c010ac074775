"""Which balloons of a line of clusters touch, and how few touching neighbours can share a colour.

Balloon i = n k + j is place j of cluster k. It touches its two neighbours in the ring and, since each cluster nests in
the one before, two balloons of each neighbouring cluster: for quads 12 N - 8 touches in all.
"""

from collections.abc import Mapping, Sequence
from functools import cache
from math import ceil
from operator import add

from rules.domain import require_whole

LARGEST_RING = 6  # rings that the bound is worked out for; beyond, the number of on/off rings makes it slow
WORKED_OUT = 16  # clusters worked out one by one; from there on the least cost repeats every two clusters
ROUNDING = 1e-9


def touching(clusters: int, n: int = 4) -> list[list[int]]:
    """The balloons that each balloon touches, in ascending order."""
    require_whole("number of clusters", clusters, 1)
    require_whole("number of balloons in a cluster", n, 2)
    found: list[set[int]] = [set() for _ in range(clusters * n)]
    for k in range(clusters):
        for j in range(n):
            here = n * k + j
            others = [n * k + (j + 1) % n]
            if k + 1 < clusters:
                others += [n * (k + 1) + j, n * (k + 1) + (j - 1) % n]
            for other in others:
                found[here].add(other)
                found[other].add(here)
    return [sorted(others) for others in found]


def same_touches(touches: Sequence[Sequence[int]], colours: Sequence[int]) -> int:
    """How many touching neighbours have one colour; colours by balloon."""
    return sum(colours[i] == colours[m] for i, others in enumerate(touches) for m in others) // 2


def least_same(counts: Sequence[int], clusters: int, n: int = 4) -> int:
    """No plan of `clusters` clusters with so many balloons of each colour has fewer same-colour touches.

    Each colour for itself: on or off at every place, the least of (touches - price x balloons) over all lines, found
    exactly by dynamic programming over rings, bounds the touches of the exact count for any price. Source: Lagrangian
    bound; for long lines of quads it is the convex hull (0, 0) (1, 0) (1.5, 0.5) (2.5, 3.5) (3, 6) (4, 12) of touches
    against balloons a cluster. Above six balloons a cluster only 0 is returned.
    """
    if n > LARGEST_RING:
        return 0
    return sum(
        max(0, ceil(max(_least_cost(price, clusters, n) + price * count for price in range(n + 3)) - ROUNDING))
        for count in counts
    )


def blind_share(counts: Sequence[int]) -> float:
    """The share of touches within one colour to expect if balloons are picked blind from so many of each."""
    total = sum(counts)
    return sum(count * (count - 1) for count in counts) / (total * (total - 1)) if total > 1 else 0.0


def drift(colours: Sequence[int], counts: Sequence[int], n: int) -> float:
    """How far any colour's running count, cluster by cluster, strays from its share, in balloons."""
    total = len(colours)
    worst = 0.0
    for colour, count in enumerate(counts):
        running = 0
        for end in range(n, total + 1, n):
            running += colours[end - n : end].count(colour)
            worst = max(worst, abs(running - count * end / total))
    return worst


def _least_cost(price: int, clusters: int, n: int) -> int:
    """The least of (same touches - price x balloons) over every on/off line of so many clusters."""
    costs = _least_costs(price, n)
    if clusters <= WORKED_OUT:
        return costs[clusters - 1]
    # Min-plus powers of a matrix become periodic; for these rings the period is one or two (tests go to 60 clusters).
    pairs, odd = divmod(clusters - WORKED_OUT, 2)
    even_step, odd_step = costs[-1] - costs[-2], costs[-2] - costs[-3]
    return costs[-1] + pairs * (even_step + odd_step) + odd * odd_step


@cache
def _least_costs(price: int, n: int) -> tuple[int, ...]:
    own, between = _rings(n)
    worth = [touches - price * ring.bit_count() for ring, touches in enumerate(own)]
    best = worth
    found = [min(best)]
    for _ in range(WORKED_OUT - 1):
        best = [min(map(add, best, between[ring])) + worth[ring] for ring in range(1 << n)]
        found.append(min(best))
    return tuple(found)


@cache
def _rings(n: int) -> tuple[list[int], list[list[int]]]:
    """For every on/off ring its touches inside; and between each ring and each that may come before it."""
    one = touching(2, n)
    inside: Mapping[int, list[int]] = {j: [m for m in one[j] if m < j] for j in range(n)}
    before: Mapping[int, list[int]] = {j: [m for m in one[n + j] if m < n] for j in range(n)}
    masks = [sum(1 << m for m in before[j]) for j in range(n)]
    own = [sum(ring >> m & 1 for j in range(n) if ring >> j & 1 for m in inside[j]) for ring in range(1 << n)]
    between = [
        [sum((last & masks[j]).bit_count() for j in range(n) if ring >> j & 1) for last in range(1 << n)]
        for ring in range(1 << n)
    ]
    return own, between
