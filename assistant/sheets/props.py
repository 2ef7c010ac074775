"""Things drawn beside a piece to show how big it is: a person, a door, tables from above and from the side."""

import math

from assistant.sheets.shapes import Label, Patch, Point, Round, Shape, Stroke, box

FLOOR, PERSON, DOOR, DOOR_EDGE = "#d8d2c6", "#8d929b", "#efe9de", "#a89f90"
CLOTH, CLOTH_EDGE, CLEAR, PLATE, CUTLERY = "#f4f0e8", "#b9b1a3", "#e6dfd0", "#ffffff", "#9aa0a6"
WOOD, STAND, RIBBON, LEAF = "#8a7355", "#9aa0a6", "#9d968b", "#6f8f5f"
# The outline of a person with a height of 1, feet at 0, right half from the crotch up; arms hang at the sides.
_HALF = (
    (0.0, 0.45), (0.02, 0.0), (0.09, 0.0), (0.095, 0.05), (0.08, 0.25), (0.1, 0.48), (0.095, 0.6), (0.125, 0.72),
    (0.135, 0.6), (0.14, 0.46), (0.175, 0.46), (0.172, 0.62), (0.16, 0.76), (0.13, 0.815), (0.035, 0.84), (0.03, 0.88),
)  # fmt: skip
HEAD = 0.065  # radius


def floor(left: float, right: float, y: float = 0.0) -> Stroke:
    """The line that all stands on."""
    return Stroke(((left, y), (right, y)), FLOOR, 1.5, "floor")


def ceiling(left: float, right: float, y: float) -> Stroke:
    """The line that things hang from."""
    return Stroke(((left, y), (right, y)), FLOOR, 1.5, "ceiling")


def person(x: float, height: float, label: str = "", y: float = 0.0) -> list[Shape]:
    """Somebody standing at x, with the height written above."""
    half = [(px * height, py * height) for px, py in _HALF]
    outline: list[Point] = [(x + px, y + py) for px, py in half] + [(x - px, y + py) for px, py in reversed(half)]
    shapes: list[Shape] = [
        Patch(tuple(outline), PERSON, "person"),
        Round(x, y + height * (1 - HEAD), height * HEAD, PERSON, "person"),
    ]
    return [*shapes, Label(x, y + height + 2, label)] if label else shapes


def door(x: float, width: float, height: float, label: str = "") -> list[Shape]:
    """A closed door with its middle at x."""
    half = width / 2
    corners = box(x - half, 0, x + half, height)
    shapes: list[Shape] = [
        Patch(corners, DOOR, "door"),
        Stroke((*corners, corners[0]), DOOR_EDGE, 1.2, "door edge"),
        Round(x + half * 0.72, height * 0.45, 1.3, DOOR_EDGE, "knob"),
    ]
    return [*shapes, Label(x, height + 2, label)] if label else shapes


def table_side(left: float, right: float, height: float, cloth: float = 9.0) -> list[Shape]:
    """A table from the side: top, a short cloth, legs."""
    inset = min(4.0, (right - left) / 8)
    legs = [Stroke(((x, 0), (x, height)), WOOD, 1.8, "leg") for x in (left + inset, right - inset)]
    hem = box(left, height - cloth, right, height)
    return [*legs, Patch(hem, CLOTH, "cloth"), Stroke((*hem, hem[0]), CLOTH_EDGE, 0.7, "cloth edge")]


def table_foot(x: float, across: float, height: float) -> list[Shape]:
    """A round table from the side, on one foot."""
    hem = box(x - across / 2, height - 9, x + across / 2, height)
    return [
        Stroke(((x, 0), (x, height)), WOOD, 3, "leg"),
        Stroke(((x - 10, 0.9), (x + 10, 0.9)), WOOD, 1.8, "leg"),
        Patch(hem, CLOTH, "cloth"),
        Stroke((*hem, hem[0]), CLOTH_EDGE, 0.7, "cloth edge"),
    ]


def setting(x: float, y: float, facing: float, plate: float) -> list[Shape]:
    """A plate with a knife and a fork; facing: the angle from the plate to the guest, radians."""
    across = (-math.sin(facing), math.cos(facing))
    inward = (math.cos(facing), math.sin(facing))
    shapes: list[Shape] = []
    for side in (-1, 1):
        cx, cy = x + side * across[0] * (plate / 2 + 2.2), y + side * across[1] * (plate / 2 + 2.2)
        ends = ((cx - inward[0] * 4, cy - inward[1] * 4), (cx + inward[0] * 4, cy + inward[1] * 4))
        shapes.append(Stroke(ends, CUTLERY, 0.7, "cutlery"))
    return [
        *shapes,
        Round(x, y, plate / 2, PLATE, "plate"),
        Round(x, y, plate / 3, CLOTH, "plate middle"),
    ]


def leaf(x: float, y: float, facing: float, long: float) -> Patch:
    """A leaf that points away from (x, y)."""
    c, s = math.cos(facing), math.sin(facing)
    outline = ((0.0, 0.0), (0.3, 0.16), (0.65, 0.13), (1.0, 0.0), (0.65, -0.13), (0.3, -0.16))
    points = tuple((x + long * (u * c - v * s), y + long * (u * s + v * c)) for u, v in outline)
    return Patch(points, LEAF, "leaf")
