"""Dealing sizes and colours: how many balloons of which size get which colour, and which cluster is of which size."""

from collections.abc import Sequence
from itertools import chain, zip_longest
from random import Random

from rules.apportion import largest_remainder
from rules.layout_plan import Sort

PAIR = 2


def colours_by_sort(sorts: Sequence[Sort], shares: Sequence[float]) -> list[list[int]]:
    """For each sort how many of each colour.

    Colours are shared out over all balloons of one nominal size by largest remainder, pairs kept whole, as they are
    bought; then each sort of that size takes its part of every colour, and the last takes what is left.
    """
    found: list[list[int]] = [[] for _ in sorts]
    for nominal in dict.fromkeys(_kind(sort) for sort in sorts):
        places = [place for place, sort in enumerate(sorts) if _kind(sort) == nominal]
        left = largest_remainder(sum(sorts[place].count for place in places), shares, PAIR)
        for place in places:
            parts = largest_remainder(sorts[place].count, left) if any(left) else [0] * len(left)
            found[place] = parts
            left = [had - part for had, part in zip(left, parts, strict=True)]
    return found


def _kind(sort: Sort) -> float:
    return sort.nominal_in or sort.size_in


def deal_sizes(counts: Sequence[int], n: int, chance: Random, *, even: bool = False) -> list[list[int]]:
    """For each cluster the size class of each of its n places; counts by class add up to whole clusters.

    Whole clusters of one class, spread evenly along the line but never at a fixed distance (`even`: at a fixed one).
    What does not fill a cluster goes in facing pairs, odd ones last, into the clusters at the ends of the line, where
    a lean bends nothing.
    """
    mixed = _mixed(counts, n)
    whole: list[tuple[float, int]] = []
    for size, count in enumerate(counts):
        clusters = count // n
        whole += [((i + (0.5 if even else chance.random())) / clusters, size) for i in range(clusters)]
    middle = [[size] * n for _, size in sorted(whole)]
    # The most mixed of them ends the line; the others lie at its two ends in turn.
    return [*mixed[1::2], *middle, *reversed(mixed[0::2])]


def _mixed(counts: Sequence[int], n: int) -> list[list[int]]:
    """Clusters of what whole clusters leave, the most mixed first: equal sizes at facing places."""
    over = [count % n for count in counts]
    singles = [size for size, count in enumerate(over) if count % PAIR]
    pairs = [size for size, count in enumerate(over) for _ in range(count // PAIR)]
    row = [size for size in pairs for _ in range(PAIR)] + singles
    order = [place for place in chain(*zip_longest(range((n + 1) // 2), range((n + 1) // 2, n))) if place is not None]
    found = []
    for start in range(0, len(row), n):
        cluster = [0] * n
        for place, size in zip(order, row[start : start + n], strict=True):
            cluster[place] = size
        found.append(cluster)
    return found[::-1]
