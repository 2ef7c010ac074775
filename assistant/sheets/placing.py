"""Where each balloon of a piece lies, along its line or in its bunch, and of which colour it is.

A plain packing: clusters of one size, spread evenly, each turned an eighth of a turn from the last; what is left over
fills between them, facing out; colours are dealt so that neighbours differ where the shares allow.  The counts by size
and colour are those of the estimate.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.sheets.wanted import number
from rules import Estimate
from rules.apportion import largest_remainder
from rules.buying import colour_shares

CLUSTER = 4
EIGHTH = math.pi / 4
TURNED = math.pi / 8  # a quad line comes to rest rolled by half an eighth of a turn
SHOULDERS = tuple(math.radians(degrees) for degrees in (22.5, 157.5, 67.5, 112.5))  # where a lying piece is filled
ALL_ROUND = tuple(math.radians(degrees) for degrees in (20, 160, 90, 340, 55, 125, 200))  # where a hanging one is
PAIR = 2
RECENT = 10  # balloons laid before that count as neighbours when a colour is dealt
MOST_DRAWN = 1500  # balloons; of a larger piece only the clusters' outlines are drawn


@dataclass(frozen=True, slots=True)
class Placed:
    """A balloon on a line: inches along it, to its side (left is +) and out of it (up, or towards who looks)."""

    along: float
    side: float
    up: float
    diameter: float
    colour: str | None


@dataclass(frozen=True, slots=True)
class _Spot:
    along: float
    side: float
    up: float
    diameter: float


def on_line(estimate: Estimate, piece: int) -> list[Placed]:
    """The balloons of one of the pieces alike, first to last along its line; [] while they cannot be counted."""
    length = number(estimate, piece, "decor_length")
    sizes = by_diameter(estimate, piece)
    if length <= 0 or not sizes:
        return []
    outer = _outer(estimate, piece, max(d for d, _ in sizes))
    clusters = max(round(number(estimate, piece, "quads_each")), 0)
    many = round(number(estimate, piece, "cluster_size")) or CLUSTER
    balloons = [d for d, count in sizes for _ in range(count)]
    clustered, loose = balloons[: many * clusters], balloons[many * clusters :]
    lying = estimate.job.pieces[piece].kind == "runner"
    strands = max(round(number(estimate, piece, "strands")), 1) if lying else 1
    spots = [*_clusters(clustered, many, strands, length, outer), *_loose(loose, length, outer, lying)]
    return _coloured(estimate, piece, sorted(spots, key=lambda spot: spot.along))


def by_diameter(estimate: Estimate, piece: int) -> list[tuple[float, int]]:
    """Blown diameter in inches and how many in one of the pieces alike, the largest first."""
    alike = max(round(number(estimate, piece, "count")), 1)
    found: dict[float, int] = {}
    for part in estimate.parts(piece):
        found[part.inflated_in] = found.get(part.inflated_in, 0) + round(part.count / alike)
    return sorted(((d, n) for d, n in found.items() if n > 0), reverse=True)


def deal(estimate: Estimate, piece: int, diameters: Sequence[float]) -> list[str | None]:
    """A colour for each balloon in the order laid: the shares kept in each size, neighbours different where they can."""
    shares = colour_shares(estimate, piece)
    left: dict[float, dict[str | None, int]] = {}
    for diameter in dict.fromkeys(diameters):
        total = sum(1 for d in diameters if d == diameter)
        parts = largest_remainder(total, list(shares.values()), PAIR if total % PAIR == 0 else 1)
        left[diameter] = dict(zip(shares, parts, strict=True))
    at_first = {diameter: dict(counts) for diameter, counts in left.items()}
    dealt: list[str | None] = []
    for diameter in diameters:
        here, whole = left[diameter], at_first[diameter]
        recent = dealt[-RECENT:]
        near = {
            name: sum(2.0 if back < CLUSTER else 1.0 for back, old in enumerate(reversed(recent)) if old == name)
            for name in here
        }
        # Least seen nearby, weighed by how much of the colour is still to come.
        best = max(
            (name for name in here if here[name]),
            key=lambda name: (here[name] / whole[name]) * 6 - near[name] / max(shares[name], 1e-6) * 0.4,
        )
        here[best] -= 1
        dealt.append(best)
    return dealt


def _coloured(estimate: Estimate, piece: int, spots: list[_Spot]) -> list[Placed]:
    colours = deal(estimate, piece, [spot.diameter for spot in spots])
    return [Placed(s.along, s.side, s.up, s.diameter, c) for s, c in zip(spots, colours, strict=True)]


def _outer(estimate: Estimate, piece: int, largest: float) -> float:
    """How wide the piece is over all, in."""
    kind = estimate.job.pieces[piece].kind
    return number(estimate, piece, "runner_width" if kind == "runner" else "outer_width") or 2.4 * largest


def _clusters(balloons: list[float], many: int, strands: int, length: float, outer: float) -> Iterator[_Spot]:
    """Clusters at even steps, the sizes spread evenly among them, strands side by side."""
    groups = [balloons[start : start + many] for start in range(0, len(balloons), many)]
    rows = max(math.ceil(len(groups) / strands), 1)
    wide = outer / strands
    for place, group in enumerate(evenly(groups)):
        row, strand = divmod(place, strands)
        aside = wide * (strand - (strands - 1) / 2)
        for j, diameter in enumerate(group):
            angle = TURNED + row * EIGHTH + j * 2 * math.pi / max(len(group), 1)
            reach = min(diameter / 2 / math.sin(math.pi / many), max(wide - diameter, 0) / 2) if many > 1 else 0.0
            yield _Spot((row + 0.5) / rows * length, aside + reach * math.cos(angle), reach * math.sin(angle), diameter)


def _loose(balloons: list[float], length: float, outer: float, lying: bool) -> Iterator[_Spot]:
    """Loose balloons at even steps, standing out where a gap can be seen."""
    angles = SHOULDERS if lying else ALL_ROUND
    for place, diameter in enumerate(balloons):
        angle = angles[place % len(angles)]
        reach = (outer - diameter) / 2
        reach = reach / math.cos(TURNED) if lying else reach
        yield _Spot((place + 0.5) / len(balloons) * length, reach * math.cos(angle), reach * math.sin(angle), diameter)


def evenly(groups: list[list[float]]) -> list[list[float]]:
    """Groups in an order that spreads each kind evenly: item i of n stands at (i + 1/2) / n."""
    totals: dict[float, int] = {}
    for group in groups:
        totals[group[0]] = totals.get(group[0], 0) + 1
    seen: dict[float, int] = {}
    keyed = []
    for group in groups:
        place = seen[group[0]] = seen.get(group[0], -1) + 1
        keyed.append(((place + 0.5) / totals[group[0]], -group[0], group))
    return [group for _, _, group in sorted(keyed)]
