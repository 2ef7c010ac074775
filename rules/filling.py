"""Where loose pairs and foliage go: in pockets that face out, where gaps are widest, evenly along the line."""

from collections.abc import Sequence
from math import floor
from random import Random

from rules.layout_plan import Balloon, Filler, Stem, pocket_angle

SHOULDERS = (67.5, 292.5)  # degrees from straight out: right and left of the line
OCCUPIED = 360.0  # a pocket that holds a filler already comes after all empty ones
PRESENT = 0.25  # weight of a colour's presence in the cluster, beside a touch
BEHIND = 1.0  # weight of how far a colour is behind its share


def fill_pockets(
    clusters: Sequence[Sequence[Balloon]], balloons: Sequence[tuple[Balloon, int]], chance: Random
) -> list[Filler]:
    """Places for loose balloons, two and two in neighbouring clusters, shoulders in turn.

    Each takes, among the balloons left, the colour that least touches and least surrounds its pocket.
    """
    total = sum(count for _, count in balloons)
    pairs = (total + 1) // 2
    width = [sum(balloon.size_in for balloon in cluster) for cluster in clusters]
    held: dict[tuple[int, int], int] = {}
    busy = [0] * len(clusters)
    left = [count for _, count in balloons]
    found: list[Filler] = []
    for pair in range(pairs):
        at = _widest(width, busy, (pair + 0.5) / pairs)
        side = SHOULDERS[pair % 2]
        for cluster in (at, min(at + 1, len(clusters) - 1))[: min(2, total - len(found))]:
            n = len(clusters[cluster])
            place = min(range(n), key=lambda j: (_aside(cluster, j, n, side, held), j))
            held[cluster, place] = held.get((cluster, place), 0) + 1
            busy[cluster] += 1
            chosen = _choose(clusters[cluster], place, balloons, left, len(found), chance)
            left[chosen] -= 1
            found.append(Filler(balloons[chosen][0], pair, cluster, place))
    return found


def _widest(width: Sequence[float], busy: Sequence[int], along: float) -> int:
    """The cluster near a share of the line from which on two neighbours have the widest pockets and fewest fillers."""
    last = max(0, len(width) - 2)
    here = min(last, max(0, round(along * (last + 1) - 0.5)))
    near = [k for k in (here, here - 1, here + 1) if 0 <= k <= last]
    ends = [(k, min(k + 1, len(width) - 1)) for k in near]
    ranked = [(busy[k] + busy[m], -width[k] - width[m], abs(k - here), k) for k, m in ends]
    return min(ranked)[-1]


def _aside(cluster: int, place: int, n: int, side: float, held: dict[tuple[int, int], int]) -> float:
    """How badly a pocket suits a shoulder: degrees off it, and whether it is taken."""
    off = abs(pocket_angle(cluster, place, n) - side) % 360.0
    return min(off, 360.0 - off) + OCCUPIED * held.get((cluster, place), 0)


def _choose(
    cluster: Sequence[Balloon],
    place: int,
    balloons: Sequence[tuple[Balloon, int]],
    left: Sequence[int],
    done: int,
    chance: Random,
) -> int:
    total = sum(count for _, count in balloons)
    under = [cluster[place].colour, cluster[(place + 1) % len(cluster)].colour]
    around = [balloon.colour for balloon in cluster]
    scores = []
    for index, (balloon, count) in enumerate(balloons):
        if left[index]:
            behind = count * (done + 1) / total - (count - left[index])
            score = under.count(balloon.colour) + PRESENT * around.count(balloon.colour) - BEHIND * behind
            scores.append((score + 0.01 * chance.random(), index))
    return min(scores)[1]


def spread_stems(clusters: int, stems: int) -> list[Stem]:
    """Foliage evenly along the line, facing out to either side in turn."""
    return [Stem(min(clusters - 1, floor((i + 0.5) * clusters / stems)), 1 if i % 2 == 0 else -1) for i in range(stems)]
