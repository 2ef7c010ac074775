"""Placing colours so that touching neighbours seldom share one: place by place, then by trades of two balloons.

Balloons trade only with balloons of their own size class, so counts by size and colour never change, and neither does
how straight the line lies. Time grows with the number of balloons.
"""

from collections.abc import Sequence
from random import Random

BEHIND = 1.0  # weight of how far a colour is behind its share, in touches for a balloon
LEFT = 2.0  # weight of a colour's share of what is left of its size
WHIM = 0.2  # weight of chance, so that no order repeats
REACH = 8  # clusters to each side that a balloon trades within
SWEEPS = 20  # at most; fewer on a very long line
FEWEST_SWEEPS = 9
FULL_SWEEPS = 2400  # balloons up to which all sweeps are made
BACK = 1  # sweeps within which a balloon does not take back a colour in an equal trade
IDLE = 8  # sweeps without a better plan after which to stop
SMALL = 24  # balloons up to which the whole is tried many times
TRIES = 16

Counts = Sequence[Sequence[int]]


def place_colours(
    classes: Sequence[int], counts: Counts, touches: Sequence[Sequence[int]], n: int, chance: Random
) -> list[int]:
    """The colour of each balloon; classes: size class of each, counts: by class and colour, touches as in touch.py."""
    best: list[int] = []
    least = -1
    for _ in range(TRIES if len(classes) <= SMALL else 1):
        colours = _one_by_one(classes, counts, touches, chance)
        same = _trade(colours, classes, touches, n, len(counts[0]), chance)
        if least < 0 or same < least:
            best, least = list(colours), same
        if not least:
            break
    return best


def _one_by_one(classes: Sequence[int], counts: Counts, touches: Sequence[Sequence[int]], chance: Random) -> list[int]:
    """Each place takes the colour with the least of: touches so far, how far it is ahead, how little of it is left."""
    hues = range(len(counts[0]))
    left = [list(row) for row in counts]
    rest = [sum(row) for row in counts]
    share = [sum(row[hue] for row in counts) / len(classes) for hue in hues]
    used = [0] * len(share)
    colours = [-1] * len(classes)
    whim = chance.random
    for i, kind in enumerate(classes):
        beside = [colours[m] for m in touches[i] if m < i]
        row, over = left[kind], rest[kind]
        best, chosen = 0.0, -1
        for hue in hues:
            if row[hue]:
                behind = share[hue] * (i + 1) - used[hue]
                score = beside.count(hue) - BEHIND * behind - LEFT * row[hue] / over + WHIM * whim()
                if chosen < 0 or score < best:
                    best, chosen = score, hue
        colours[i] = chosen
        row[chosen] -= 1
        rest[kind] -= 1
        used[chosen] += 1
    return colours


def _trade(
    colours: list[int], classes: Sequence[int], touches: Sequence[Sequence[int]], n: int, hues: int, chance: Random
) -> int:
    """Trade colours while that helps; leaves the best found in `colours` and returns its same-colour touches.

    A trade that changes nothing is allowed, unless it takes one of the two back to a colour that it had a moment ago:
    so clashes wander along the line until they meet and dissolve.
    """
    around = _around(colours, touches, hues)
    now = sum(row[colour] for row, colour in zip(around, colours, strict=True)) // 2
    best, kept = now, list(colours)
    lately = [[-BACK] * hues for _ in colours]  # the sweep in which a balloon last gave up a colour
    partners = _partners(classes, n)
    idle = 0
    for sweep in range(max(FEWEST_SWEEPS, min(SWEEPS, SWEEPS * FULL_SWEEPS // len(colours)))):
        since = sweep - BACK
        for i, row in enumerate(around):
            mine = colours[i]
            own = row[mine]
            if not own:
                continue
            near = partners[i]
            turn = int(chance.random() * len(near))
            gain, found = 1, -1
            for m in near[turn:] + near[:turn]:
                other = colours[m]
                if other == mine:
                    continue
                beside = around[m]
                change = row[other] - own + beside[mine] - beside[other]
                if change < gain + 2:
                    if m in touches[i]:  # each counts the other among the neighbours of its new colour
                        change -= 2
                    if change < gain and (change < 0 or (lately[i][other] < since and lately[m][mine] < since)):
                        gain, found = change, m
            if found >= 0:
                other = colours[found]
                _swap(i, found, colours, around, touches)
                lately[i][mine] = lately[found][other] = sweep
                now += gain
        idle += 1
        if now < best:
            best, kept, idle = now, list(colours), 0
        if not best or idle >= IDLE:
            break
    colours[:] = kept
    return best


def _around(colours: Sequence[int], touches: Sequence[Sequence[int]], hues: int) -> list[list[int]]:
    """For each balloon how many of its neighbours have each colour."""
    found = [[0] * hues for _ in colours]
    for i, others in enumerate(touches):
        for m in others:
            found[i][colours[m]] += 1
    return found


def _swap(i: int, m: int, colours: list[int], around: list[list[int]], touches: Sequence[Sequence[int]]) -> None:
    """Trade the colours of two balloons, and tell their neighbours."""
    mine, other = colours[i], colours[m]
    for k in touches[i]:
        around[k][mine] -= 1
        around[k][other] += 1
    for k in touches[m]:
        around[k][other] -= 1
        around[k][mine] += 1
    colours[i], colours[m] = other, mine


def _partners(classes: Sequence[int], n: int) -> list[list[int]]:
    """For each balloon those of its class within reach; balloons of one cluster and class share one list."""
    by_class: dict[int, list[list[int]]] = {}
    clusters = len(classes) // n
    for kind in dict.fromkeys(classes):
        by_class[kind] = [[i for i in range(n * k, n * k + n) if classes[i] == kind] for k in range(clusters)]
    found: list[list[int]] = [[] for _ in classes]
    for k in range(clusters):
        window = slice(max(0, k - REACH), k + REACH + 1)
        shared: dict[int, list[int]] = {}
        for i in range(n * k, n * k + n):
            kind = classes[i]
            if kind not in shared:
                shared[kind] = [m for cluster in by_class[kind][window] for m in cluster]
            found[i] = shared[kind]
    return found
