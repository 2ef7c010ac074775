"""Lines that pieces follow, as points close together: where one is after so many inches, and which way it faces."""

import math
from bisect import bisect_right
from collections.abc import Callable, Sequence
from itertools import accumulate, pairwise

from assistant.sheets.shapes import Point

STEPS = 160


class Curve:
    """A line through points; `length` in inches."""

    def __init__(self, points: Sequence[Point]) -> None:
        kept = [points[0], *(after for before, after in pairwise(points) if math.dist(before, after) > 1e-9)]
        self.points: tuple[Point, ...] = tuple(kept if len(kept) > 1 else [kept[0], (kept[0][0] + 1e-3, kept[0][1])])
        self._at = [0.0, *accumulate(math.dist(a, b) for a, b in pairwise(self.points))]
        self.length = self._at[-1]

    def at(self, along: float) -> tuple[Point, Point]:
        """The point after so many inches and the unit vector to its left (up, where the line runs to the right)."""
        place = min(max(bisect_right(self._at, along) - 1, 0), len(self.points) - 2)
        (x0, y0), (x1, y1) = self.points[place], self.points[place + 1]
        long = self._at[place + 1] - self._at[place]
        part = (along - self._at[place]) / long
        return (x0 + (x1 - x0) * part, y0 + (y1 - y0) * part), (-(y1 - y0) / long, (x1 - x0) / long)

    def part(self, share: float, start: float = 0.0) -> "Curve":
        """A share of the line, from a share of the way on."""
        ends = self.length * start, self.length * min(start + share, 1.0)
        inner = [point for point, at in zip(self.points, self._at, strict=True) if ends[0] < at < ends[1]]
        return Curve([self.at(ends[0])[0], *inner, self.at(ends[1])[0]])


def traced(function: Callable[[float], Point], first: float = 0.0, last: float = 1.0) -> Curve:
    """The line that a function of one parameter draws."""
    return Curve([function(first + (last - first) * step / STEPS) for step in range(STEPS + 1)])


def ellipse(width: float, height: float) -> Curve:
    """Half an ellipse standing on its ends, left to right, its middle at x = 0."""
    return traced(lambda t: (-width / 2 * math.cos(math.pi * t), height * math.sin(math.pi * t)))


def parabola(width: float, height: float) -> Curve:
    """A parabola standing on its ends."""
    return traced(lambda t: (width * (t - 0.5), height * (1 - (2 * t - 1) ** 2)))


def catenary(width: float, height: float) -> Curve:
    """A hanging chain turned over; hanging where the height is below 0."""
    deep = abs(height)
    if deep < 1e-6:
        return Curve([(-width / 2, 0.0), (width / 2, 0.0)])
    low, high = 1e-6, 40.0  # half the width over the chain's parameter: (cosh u - 1) / u grows with u
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if (math.cosh(middle) - 1) / middle < 2 * deep / width else (low, middle)
    a = width / 2 / low
    sign = math.copysign(1.0, height)
    return traced(lambda t: (width * (t - 0.5), sign * (deep - a * (math.cosh(width * (t - 0.5) / a) - 1))))


def round_top(width: float, height: float) -> Curve:
    """Straight legs under half a circle."""
    half = width / 2
    leg = max(height - half, 0.0)
    top = [
        (-half * math.cos(math.pi * n / STEPS), leg + half * math.sin(math.pi * n / STEPS)) for n in range(STEPS + 1)
    ]
    return Curve([(-half, 0.0), *top, (half, 0.0)])


def frame(width: float, height: float, legs: int = 2) -> Curve:
    """Up, across and, with two legs, down again."""
    points = [(-width / 2, 0.0), (-width / 2, height), (width / 2, height), (width / 2, 0.0)]
    return Curve(points if legs > 1 else points[:3])


def ring(diameter: float, bottom: float = 0.0) -> Curve:
    """A circle from its lowest point up the left side and round."""
    half = diameter / 2
    return traced(lambda t: (-half * math.sin(2 * math.pi * t), bottom + half - half * math.cos(2 * math.pi * t)))


def loops(span: float, sag: float, count: int, rise: float, top: float) -> Curve:
    """Hanging chains side by side from x = -span/2 at the height `top`, the far end `rise` higher, each `sag` deep."""
    each = span / count
    points: list[Point] = []
    for place in range(count):
        hung = catenary(each, -sag).points
        left = -span / 2 + each * (place + 0.5)
        points += [(left + x, top + y + rise * (left + x + span / 2) / span) for x, y in hung]
    return Curve(points)
