"""Touching neighbours, and the least of them that can share a colour, against counting and exhaustive search."""

from collections.abc import Iterator
from itertools import product

import pytest

from rules.touch import blind_share, drift, least_same, same_touches, touching


def test_quads_touch_twelve_times_less_eight_at_the_ends() -> None:
    for clusters in (1, 2, 20):
        assert sum(map(len, touching(clusters, 4))) // 2 == 12 * clusters - 8


def test_touching_is_mutual_and_within_a_balloon_diameter() -> None:
    # Nested rings of unit spheres: those that touch, and no others, are a diameter apart.
    from math import cos, dist, pi, sin, sqrt

    n, clusters = 4, 5
    pitch = 2 ** (-1 / 4)
    middles = [
        (pitch * k, cos(a) / sqrt(2), sin(a) / sqrt(2))
        for k in range(clusters)
        for a in (pi / 8 + pi / 4 * k + pi / 2 * j for j in range(n))
    ]
    near = [[m for m, q in enumerate(middles) if m != i and dist(p, q) < 1.001] for i, p in enumerate(middles)]
    assert near == touching(clusters, n)


def arrangements(counts: tuple[int, ...]) -> Iterator[list[int]]:
    """Every different row of so many balloons of each colour."""
    if not any(counts):
        yield []
        return
    for hue, count in enumerate(counts):
        if count:
            for rest in arrangements((*counts[:hue], count - 1, *counts[hue + 1 :])):
                yield [hue, *rest]


@pytest.mark.parametrize("counts", [(4, 4), (5, 3), (6, 2), (3, 3, 2), (8,), (2, 2, 2, 2), (5, 4, 3)])
def test_the_bound_is_never_above_the_best_there_is(counts: tuple[int, ...]) -> None:
    clusters = sum(counts) // 4
    touches = touching(clusters)
    best = min(same_touches(touches, row) for row in arrangements(counts))
    assert best - 2 <= least_same(counts, clusters) <= best


@pytest.mark.parametrize("n", [2, 3, 4, 5])
def test_the_bound_holds_for_one_colour_in_rings_of_any_size(n: int) -> None:
    clusters = 2
    touches = touching(clusters, n)
    for count in range(2 * n + 1):
        rows = (row for row in product((0, 1), repeat=2 * n) if sum(row) == count)
        best = min(sum(row[i] and row[m] for i, others in enumerate(touches) for m in others) // 2 for row in rows)
        bound = least_same([count], clusters, n)
        assert best - 2 <= bound <= best


@pytest.mark.parametrize(
    ("shares", "percent"),
    [
        ((0.4, 0.3, 0.3), 9.9),
        ((0.4, 0.3, 0.2, 0.1), 8.0),
        ((0.25, 0.25, 0.25, 0.25), 0.0),
        ((0.6, 0.4), 33.4),
        ((0.7, 0.2, 0.1), 41.3),
        ((0.8, 0.2), 59.6),
    ],
)
def test_long_lines_come_to_the_many_colour_bound(shares: tuple[float, ...], percent: float) -> None:
    # The reference bound was found with a price on each of several colours at once, over all rings of colours.
    clusters = 60
    counts = [round(240 * share) for share in shares]
    assert 100 * least_same(counts, clusters) / (12 * clusters - 8) == pytest.approx(percent, abs=0.6)


def test_long_lines_follow_the_convex_hull() -> None:
    hull = {0: 0, 1: 0, 1.5: 0.5, 2.5: 3.5, 3: 6, 4: 12}
    clusters = 2000
    for balloons, touches in hull.items():
        found = least_same([round(balloons * clusters)], clusters) / clusters
        assert found == pytest.approx(touches, abs=0.02)


@pytest.mark.parametrize("price", range(7))
def test_the_cost_of_longer_lines_goes_on_as_it_began(price: int) -> None:
    # Worked out ring by ring to sixty clusters, on its own; the module stops at sixteen and goes on by twos.
    from rules.touch import _least_cost

    touches = touching(2)
    rings = list(product((0, 1), repeat=4))
    inside = [sum(r[i] and r[m] for i in range(4) for m in touches[i] if m < i) for r in rings]
    best: list[float] = []
    for clusters in range(1, 61):
        if clusters == 1:
            best = [inside[b] - price * sum(ring) for b, ring in enumerate(rings)]
        else:
            best = [
                min(
                    best[a] + sum(ring[i] and last[m] for i in range(4) for m in touches[4 + i] if m < 4)
                    for a, last in enumerate(rings)
                )
                + inside[b]
                - price * sum(ring)
                for b, ring in enumerate(rings)
            ]
        assert _least_cost(price, clusters, 4) == min(best)


def test_blind_picking_and_drift() -> None:
    assert blind_share([8]) == 1
    assert blind_share([400, 300, 300]) == pytest.approx(0.34, abs=0.001)
    assert blind_share([1]) == 0
    assert drift([0, 0, 0, 0, 1, 1, 1, 1], [4, 4], 4) == 2
    assert drift([0, 0, 1, 1, 0, 0, 1, 1], [4, 4], 4) == 0
