"""Where each balloon of a piece lies and of which colour it is: on a line as planned, elsewhere dealt out.

Lines of clusters come from the planner of the rules, so the picture shows what the build card says.  Walls, bunches and
drops have no line: their balloons are dealt colours that differ from their neighbours' where the shares allow.
"""

import math
from bisect import bisect_right
from collections.abc import Sequence
from random import Random

from assistant.sheets.wanted import number
from rules import Estimate
from rules.apportion import largest_remainder
from rules.buying import colour_shares
from rules.layout_plan import angle, pocket_angle
from rules.line import line_of
from rules.record import record

PAIR = 2
TURNED = math.pi / 8  # a quad line comes to rest rolled by half an eighth of a turn
NEIGHBOURS = 40  # balloons dealt before that are looked at, of which those that touch count
CLOSE = 1.25  # two balloons are neighbours when their middles are no more than this many radii sums apart
MOST_CLUSTERS = 1500  # a longer line is not drawn: nothing could be seen of it
Spot = tuple[float, float, float]  # x, y, diameter


@record
class Placed:
    """A balloon on a line: inches along it, to its left side (+) and out of it (up, or towards who looks)."""

    along: float
    side: float
    up: float
    diameter: float
    colour: str | None


def by_diameter(estimate: Estimate, piece: int) -> list[tuple[float, int]]:
    """Blown diameter in inches and how many in one of the pieces alike, the largest first; toppers left out."""
    alike = max(round(number(estimate, piece, "count")), 1)
    found: dict[float, int] = {}
    for part in estimate.parts(piece):
        if part.name != "topper":
            found[part.inflated_in] = found.get(part.inflated_in, 0) + round(part.count / alike)
    return sorted(((d, n) for d, n in found.items() if n > 0), reverse=True)


def on_line(estimate: Estimate, piece: int) -> list[Placed]:
    """The balloons of one of the pieces alike, in order along its line; [] while they cannot be placed."""
    length = number(estimate, piece, "decor_length")
    if length <= 0 or not 0 < number(estimate, piece, "quads_each") <= MOST_CLUSTERS:
        return []
    layout = line_of(estimate, piece)
    if layout is None:
        return []
    kind = estimate.job.pieces[piece].kind
    largest = max(balloon.size_in for balloon in layout.counts)
    outer = number(estimate, piece, "runner_width" if kind == "runner" else "outer_width") or 2.4 * largest
    strands = max(round(number(estimate, piece, "strands")), 1) if kind == "runner" else 1
    many, wide = len(layout.clusters[0]), outer / strands
    starts = [len(layout.clusters) * strand // strands for strand in range(strands + 1)]
    found: list[Placed] = []

    def put(cluster: float, degrees: float, diameter: float, colour: str | None, reach: float) -> None:
        strand = bisect_right(starts, int(cluster)) - 1
        rows = starts[strand + 1] - starts[strand]
        aside = wide * (strand - (strands - 1) / 2)
        turn = math.radians(degrees)
        along = min(cluster - starts[strand] + 0.5, rows - 0.5) / rows * length
        found.append(Placed(along, aside - reach * math.sin(turn), reach * math.cos(turn), diameter, colour))

    for k, cluster in enumerate(layout.clusters):
        for j, balloon in enumerate(cluster):
            tied = balloon.size_in / 2 / math.sin(math.pi / many)
            reach = min(tied, max(wide - balloon.size_in, balloon.size_in / 2) / 2)
            put(k, angle(k, j, many), balloon.size_in, balloon.colour, reach)
    for filler in layout.fillers:
        f = filler.balloon.size_in
        reach = (wide / (math.cos(TURNED) if kind == "runner" else 1) - f) / 2
        # On a lying runner a filler rests on its quad; hung, it closes the gap to the next.
        put(
            filler.cluster + (0.0 if kind == "runner" else 0.5),
            pocket_angle(filler.cluster, filler.place, many),
            f,
            filler.balloon.colour,
            reach,
        )
    return sorted(found, key=lambda placed: placed.along)


def deal(estimate: Estimate, piece: int, spots: Sequence[Spot]) -> list[str | None]:
    """A colour for each balloon, in the order given: shares kept in each size, neighbours different where they can."""
    shares = colour_shares(estimate, piece)
    left: dict[float, dict[str | None, int]] = {}
    for diameter in dict.fromkeys(d for _, _, d in spots):
        total = sum(1 for _, _, d in spots if d == diameter)
        parts = largest_remainder(total, list(shares.values()), 1 if total % PAIR else PAIR)
        left[diameter] = dict(zip(shares, parts, strict=True))
    at_first = {diameter: dict(counts) for diameter, counts in left.items()}
    dealt: list[str | None] = []
    chance = Random("deal")  # noqa: S311  looks, not secrets: it keeps colours from falling into rows
    for place, (x, y, diameter) in enumerate(spots):
        here, whole = left[diameter], at_first[diameter]
        near = dict.fromkeys(here, 0)
        for back in range(max(place - NEIGHBOURS, 0), place):
            other_x, other_y, other = spots[back]
            if math.hypot(x - other_x, y - other_y) < CLOSE * (diameter + other) / 2 and dealt[back] in near:
                near[dealt[back]] += 1
        wish = {name: 3 * here[name] / max(whole[name], 1) + chance.uniform(0, 1.6) for name in here}
        best = max((name for name in here if here[name]), key=lambda name: wish[name] - near[name])
        here[best] -= 1
        dealt.append(best)
    return dealt


def evenly(diameters: Sequence[float]) -> list[float]:
    """Diameters in an order that spreads each evenly: item i of n stands at (i + 1/2) / n."""
    keyed = []
    for diameter in dict.fromkeys(diameters):
        total = sum(1 for d in diameters if d == diameter)
        keyed += [((place + 0.5) / total, -diameter, diameter) for place in range(total)]
    return [diameter for _, _, diameter in sorted(keyed)]
