"""How far a line of clusters bends sideways: by the sizes planned, and by sizing that scatters from hand to hand.

A balloon bigger than the rest pushes its neighbours apart on its side, so the line turns away from it. Lengths are
inches. Source: theory of small turns that add up along the line, with one constant fitted to a frictionless soft-sphere
model (on the cautious side, 12 to 47 % above it); no real balloon was measured.
"""

from collections.abc import Sequence
from math import radians, sin, sqrt

from rules.domain import require_not_negative, require_positive, require_whole
from rules.layout_plan import angle

TURN_BY_SCATTER = 0.877  # sideways turn of a quad, in rad, for each unit of cv among its four balloons; fitted
TURN = TURN_BY_SCATTER / sqrt(2.0)  # the same for one balloon at the side: four of them add up to sqrt(2)


def wander(cv: float, pitch: float, clusters: int) -> float:
    """The standard deviation of the sideways bow at mid length, in: 0.127 cv pitch clusters^1.5.

    cv: standard deviation of the diameters over their mean. The line is straight between its ends.
    """
    require_not_negative("scatter of sizes", cv, "")
    require_positive("distance from cluster to cluster", pitch)
    require_whole("number of clusters", clusters, 1)
    return TURN_BY_SCATTER * cv * pitch * sqrt(clusters**3 / 48.0)


def turns(sizes: Sequence[Sequence[float]]) -> list[float]:
    """The sideways turn of each cluster, rad, positive away from the right; sizes by cluster and place, in."""
    everything = [size for cluster in sizes for size in cluster]
    mean = sum(everything) / len(everything)
    found = []
    for k, cluster in enumerate(sizes):
        n = len(cluster)
        here = sum(cluster) / n
        if all(size == cluster[0] for size in cluster):
            found.append(0.0)
        else:
            sides = (sin(radians(angle(k, j, n))) * (size - here) for j, size in enumerate(cluster))
            found.append(TURN * 4.0 / n * sum(sides) / mean)
    return found


def bow(sizes: Sequence[Sequence[float]], pitch: float) -> float:
    """The greatest distance sideways from the straight line between the ends, in, that the sizes make by themselves.

    First order: a turn at each cluster, steps of `pitch` between them. Whole clusters of one size make none.
    """
    require_positive("distance from cluster to cluster", pitch)
    heading, path = 0.0, [0.0]
    for turn in turns(sizes)[:-1]:
        heading += turn
        path.append(path[-1] + pitch * heading)
    last = max(len(path) - 1, 1)
    return max(abs(at - path[-1] * place / last) for place, at in enumerate(path))
