"""A view drawn with characters: coloured half blocks, or letters alone where there is no colour.

Each character is a cell as wide as one dot and as high as two; a dot shows the topmost shape at its middle.  In letters
every colour has the letter of the key and things beside the piece have signs of their own.
"""

import math
from collections.abc import Mapping
from itertools import pairwise

from assistant.layout import columns, paragraph
from assistant.sheets.colours import backdrop, ink
from assistant.sheets.shapes import Label, Patch, Point, Round, Scene, Shape, Stroke, View
from assistant.speech import spoken
from assistant.terminal import clean, one_line

SIGNS = {
    "floor": "_", "ceiling": "=", "person": "i", "door": ".", "door edge": ":", "knob": "o", "cloth": ".",
    "cloth edge": ".", "clear strip": " ", "plate": "o", "plate middle": "o", "cutlery": ".", "leg": "|", "leaf": "*",
    "frame": "o", "pole": "|", "base": "_", "string": "|", "stairs": "#", "ribbon": "'", "weight": "u", "stand": "|",
    "net": "~",
}  # fmt: skip
# What a drawing of so few dots shows better without.
LEFT_OUT = frozenset({"cutlery", "plate middle", "knob"})
# Cloth and plates a tone darker than in print, so that white balloons are told from them in few dots.
TONES = {"cloth": "#c9c1b2", "clear strip": "#bdb4a3", "plate": "#ded7ca", "cloth edge": "#9d9484", "door": "#c9c1b2"}
MOST_ROWS = 24  # lines of one view
RESET = "\x1b[0m"
Dot = tuple[str, str] | None  # colour and sign


def plain(scene: Scene, width: int) -> list[str]:
    """The scene in letters: each view under its title, then the key."""
    signs = {swatch.value: swatch.letter for swatch in reversed(scene.key)}
    lines: list[str] = []
    for view in scene.views:
        rows = [_lettered(*pair) for pair in _pairs(_dots(view, width, signs))]
        lines += [spoken(one_line(view.title)), *_trimmed(rows), ""]
    return [*lines, *_key(scene, width)]


def coloured(scene: Scene, width: int, depth: int = 24) -> list[str]:
    """The same lines in colour: as many, and of the same width. depth: 24 bits a colour, or 8 for the 256 of xterm."""
    signs = {swatch.value: swatch.letter for swatch in reversed(scene.key)}
    back = backdrop(swatch.value for swatch in scene.key)
    lines: list[str] = []
    for view in scene.views:
        pairs = list(_pairs(_dots(view, width, signs)))
        kept = len(_trimmed([_lettered(*pair) for pair in pairs]))
        lines += [spoken(one_line(view.title)), *(_painted(*pair, back, depth) for pair in pairs[:kept]), ""]
    return [*lines, *_key(scene, width, depth)]


def _trimmed(rows: list[str]) -> list[str]:
    """Without empty rows at the end."""
    while rows and not rows[-1]:
        rows.pop()
    return rows


def _key(scene: Scene, width: int, depth: int = 0) -> list[str]:
    """What the letters mean, and the notes."""
    lines: list[str] = []
    row: list[str] = []
    entries = [
        (swatch.letter, one_line(clean(swatch.name or spoken("balloons"))), swatch.value) for swatch in scene.key
    ]
    if any(getattr(shape, "role", "") == "leaf" for view in scene.views for shape in view.shapes):
        entries.append(("*", spoken("leaves"), "#6f8f5f"))
    used = 0
    for letter, name, value in entries:
        if row and used + len(name) + 4 > columns(width):
            lines.append("  ".join(row))
            row, used = [], 0
        shown = f"{_code(value, 48, depth)}{_code(ink(value), 38, depth)}{letter}{RESET}" if depth else letter
        row.append(f"{shown} {name}")
        used += len(name) + 4
    lines.append("  ".join(row))
    return [*lines, *(line for note in scene.notes for line in paragraph(clean(note), width))]


# dots ----------------------------------------------------------------------------------------------------------------


def _dots(view: View, width: int, signs: Mapping[str, str]) -> list[list[Dot]]:
    """The view as square dots, rows from the top down, an even number of them."""
    across = columns(width)
    scale = max(view.width / across, view.height / (2 * MOST_ROWS))
    across = min(across, max(math.ceil(view.width / scale), 1))
    down = 2 * max(math.ceil(view.height / scale / 2), 1)
    dots: list[list[Dot]] = [[None] * across for _ in range(down)]
    left, _, _, top = view.box

    def put(column: int, row: int, dot: Dot) -> None:
        if 0 <= row < down and 0 <= column < across:
            dots[row][column] = dot

    for shape in view.shapes:
        if isinstance(shape, Label) or shape.role in LEFT_OUT:
            continue
        sign = SIGNS.get(shape.role) or signs.get(shape.colour, "B")
        for column, row in _covered(shape, left, top, scale):
            put(column, row, (TONES.get(shape.role, shape.colour), sign))
    return dots


def _covered(shape: Shape, left: float, top: float, scale: float) -> set[tuple[int, int]]:
    """The dots (column, row) whose middles the shape covers; of a thin line those that it runs through."""

    def to_dots(point: Point) -> Point:
        return (point[0] - left) / scale - 0.5, (top - point[1]) / scale - 0.5

    if isinstance(shape, Round):
        (x, y), r = to_dots((shape.x, shape.y)), shape.radius / scale
        rows, cols = range(math.ceil(y - r), math.floor(y + r) + 1), range(math.ceil(x - r), math.floor(x + r) + 1)
        return {(c, w) for w in rows for c in cols if (c - x) ** 2 + (w - y) ** 2 <= r * r} or {(round(x), round(y))}
    if isinstance(shape, Stroke):
        found = set()
        for (x0, y0), (x1, y1) in pairwise([to_dots(point) for point in shape.points]):
            steps = max(math.ceil(max(abs(x1 - x0), abs(y1 - y0))), 1)
            parts = [n / steps for n in range(steps + 1)]
            found |= {(math.floor(x0 + (x1 - x0) * n + 0.5), math.floor(y0 + (y1 - y0) * n + 0.5)) for n in parts}
        return found
    if isinstance(shape, Patch):
        return _inside([to_dots(point) for point in shape.points])
    return set()


def _inside(corners: list[Point]) -> set[tuple[int, int]]:
    """Dots whose middles lie in a polygon, by where each row crosses its sides."""
    ys = [y for _, y in corners]
    found = set()
    for row in range(math.ceil(min(ys)), math.floor(max(ys)) + 1):
        crossings = sorted(
            x0 + (row - y0) / (y1 - y0) * (x1 - x0)
            for (x0, y0), (x1, y1) in pairwise([*corners, corners[0]])
            if (y0 <= row) != (y1 <= row)
        )
        for first, last in zip(crossings[::2], crossings[1::2], strict=False):
            found |= {(column, row) for column in range(math.ceil(first), math.floor(last) + 1)}
    return found


# lines ---------------------------------------------------------------------------------------------------------------


def _pairs(dots: list[list[Dot]]) -> list[tuple[list[Dot], list[Dot]]]:
    """Rows two by two: what one line of text shows."""
    return list(zip(dots[::2], dots[1::2], strict=True))


def _lettered(upper: list[Dot], lower: list[Dot]) -> str:
    """One sign for two dots: a balloon's before any other, the upper before the lower."""
    line = ""
    for pair in zip(upper, lower, strict=True):
        signs = [dot[1] for dot in pair if dot]
        line += next((s for s in signs if s.isupper() or s.isdigit()), signs[0] if signs else " ")
    return line.rstrip()


def _painted(upper: list[Dot], lower: list[Dot], back: str, depth: int) -> str:
    """Half blocks: the upper dot in the text's colour, the lower in the ground's."""
    line, last = "", ("", "")
    for above, below in zip(upper, lower, strict=True):
        pair = above[0] if above else back, below[0] if below else back
        if pair != last:
            line += _code(pair[0], 38, depth) + _code(pair[1], 48, depth)
            last = pair
        line += "▀"
    return line + RESET


def _code(value: str, ground: int, depth: int) -> str:
    """The control sequence (ISO 8613-6) for a colour; ground 38 for text, 48 for behind it."""
    r, g, b = int(value[1:3], 16), int(value[3:5], 16), int(value[5:7], 16)
    if depth >= 24:
        return f"\x1b[{ground};2;{r};{g};{b}m"
    return f"\x1b[{ground};5;{_nearest_256(r, g, b)}m"


def _nearest_256(r: int, g: int, b: int) -> int:
    """The nearest of xterm's 216 cube colours and 24 greys."""
    levels = (0, 95, 135, 175, 215, 255)
    cube = [min(range(6), key=lambda n: abs(levels[n] - part)) for part in (r, g, b)]
    grey = min(range(24), key=lambda n: abs(8 + 10 * n - (r + g + b) / 3))
    as_cube = sum((levels[n] - part) ** 2 for n, part in zip(cube, (r, g, b), strict=True))
    as_grey = sum((8 + 10 * grey - part) ** 2 for part in (r, g, b))
    return 232 + grey if as_grey < as_cube else 16 + 36 * cube[0] + 6 * cube[1] + cube[2]
