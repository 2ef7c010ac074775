"""Balloons on a line, drawn from two sides: each balloon's place on the line turned into shapes in depth order."""

import math
from collections.abc import Callable

from assistant.sheets.curves import Curve
from assistant.sheets.placing import Placed
from assistant.sheets.props import leaf
from assistant.sheets.shapes import Round, Shape

Paint = Callable[[str | None], str]  # a colour's name -> its value
LEAF_LONG = 0.42  # of the piece's width


def from_front(placed: list[Placed], curve: Curve, length: float, paint: Paint) -> list[Shape]:
    """As seen with `side` across the line and `up` towards the eye."""
    return _drawn([(p, p.side, p.up) for p in placed], curve, length, paint)


def from_side(placed: list[Placed], curve: Curve, length: float, paint: Paint) -> list[Shape]:
    """As seen with `up` across the line and the right side of it towards the eye."""
    return _drawn([(p, p.up, -p.side) for p in placed], curve, length, paint)


def _drawn(spots: list[tuple[Placed, float, float]], curve: Curve, length: float, paint: Paint) -> list[Shape]:
    shapes: list[Shape] = []
    for spot, across, _ in sorted(spots, key=lambda found: (found[2], found[0].along)):
        (x, y), (nx, ny) = curve.at(spot.along / length * curve.length)
        shapes.append(Round(x + nx * across, y + ny * across, spot.diameter / 2, paint(spot.colour)))
    return shapes


def leaves(stems: int, curve: Curve, width: float) -> list[Shape]:
    """Foliage at even steps, on the two sides in turn, pointing out and a little onward."""
    shapes: list[Shape] = []
    for place in range(stems):
        (x, y), (nx, ny) = curve.at((place + 0.5) / stems * curve.length)
        side = 1 if place % 2 else -1
        start = 0.28 * width * side
        facing = math.atan2(ny * side, nx * side)
        foot = x + nx * start, y + ny * start
        shapes += [leaf(*foot, facing + turn, LEAF_LONG * width * (1 - abs(turn) / 3)) for turn in (-0.6, 0.0, 0.6)]
    return shapes
