"""The parts of a picture: shapes in inches, x to the right, y up from the floor (from the near edge, seen from above).

Later shapes lie over earlier ones. `role` says what a shape is, so that a renderer can draw it in its own way.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field

from rules.record import record

Point = tuple[float, float]


@record
class Round:
    """A disc: a balloon, a plate, a head."""

    x: float
    y: float
    radius: float
    colour: str
    role: str = "balloon"


@record
class Patch:
    """A filled polygon."""

    points: tuple[Point, ...]
    colour: str
    role: str


@record
class Stroke:
    """A line through points, `width` inches thick."""

    points: tuple[Point, ...]
    colour: str
    width: float
    role: str


@record
class Label:
    """A few words, centred on x, standing on y."""

    x: float
    y: float
    text: str


Shape = Round | Patch | Stroke | Label


@dataclass(slots=True)
class View:
    """One look at a piece; `box` is left, bottom, right, top in inches."""

    title: str
    box: tuple[float, float, float, float]
    shapes: list[Shape] = field(default_factory=list)

    @property
    def width(self) -> float:
        """Inches across."""
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        """Inches from bottom to top."""
        return self.box[3] - self.box[1]


@record
class Swatch:
    """A colour of the key: name as said (None where none was), value as #rrggbb, the letter that stands for it."""

    name: str | None
    value: str
    letter: str


@dataclass(slots=True)
class Scene:
    """A piece as it will look: a title, views and the key to the colours."""

    title: str
    views: list[View]
    key: list[Swatch]
    notes: list[str] = field(default_factory=list)


def box(left: float, bottom: float, right: float, top: float) -> tuple[Point, ...]:
    """The four corners of an upright rectangle."""
    return (left, bottom), (right, bottom), (right, top), (left, top)


def bounds(shapes: Iterable[Shape]) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of shapes, in inches; zeros for none."""
    corners: list[Point] = []
    for shape in shapes:
        if isinstance(shape, Round):
            corners += [
                (shape.x - shape.radius, shape.y - shape.radius),
                (shape.x + shape.radius, shape.y + shape.radius),
            ]
        elif isinstance(shape, Label):
            corners.append((shape.x, shape.y))
        else:
            corners += shape.points
    if not corners:
        return 0.0, 0.0, 0.0, 0.0
    xs, ys = zip(*corners, strict=True)
    return min(xs), min(ys), max(xs), max(ys)
