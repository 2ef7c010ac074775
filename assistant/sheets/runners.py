"""The table runner from above, with place settings and the clear strip, and from the side, with the drop."""

import math

from assistant.sheets import props
from assistant.sheets.curves import Curve, ring
from assistant.sheets.placing import Placed, on_line
from assistant.sheets.shapes import Patch, Point, Round, Shape, Stroke, View, box
from assistant.sheets.strung import Paint, from_front, from_side, leaves
from assistant.sheets.wanted import number, value, yardstick
from rules import Estimate

MARGIN = 4.0
FROM_EDGE = 1.5  # a plate lies about this far from the edge, in


def runner_views(estimate: Estimate, piece: int, paint: Paint) -> list[View]:
    """The table from above, and from the side where its size is known."""
    placed = on_line(estimate, piece)
    if not placed:
        return []
    table = _Table(estimate, piece)
    views = [_from_above(estimate, piece, table, placed, paint)]
    if table.known and not table.ring:
        views.append(_from_side(estimate, piece, table, placed, paint))
    return views


class _Table:
    """What the runner lies on, its middle at (0, 0), the length along x."""

    def __init__(self, estimate: Estimate, piece: int) -> None:
        self.round = value(estimate, piece, "table_shape") == "round"
        self.long = number(estimate, piece, "table_diameter" if self.round else "table_length")
        self.known = self.long > 0
        width = number(estimate, piece, "table_width")
        self.wide = self.long if self.round else width or min(self.long, 30.0)
        self.high = number(estimate, piece, "table_height") or yardstick(estimate, "table_top")
        self.ring = value(estimate, piece, "ring") is True
        self.length = number(estimate, piece, "decor_length")
        coverage = str(value(estimate, piece, "coverage")) if not number(estimate, piece, "coverage_fraction") else ""
        said = number(estimate, piece, "length") > 0
        drops = coverage.startswith("drop") and not said
        self.drops = 0 if not drops else 1 if coverage == "drop_one" else 2
        self.hang = number(estimate, piece, "overhang") if not drops else self.high
        self.settles = number(estimate, piece, "extra_drop") if drops else 0.0

    @property
    def top(self) -> tuple[float, float]:
        """Where on the table the runner begins and ends."""
        reach = min(self.long, self.length) / 2 if not self.drops and not self.hang else self.long / 2
        return -reach, reach

    def line_above(self) -> Curve:
        """The runner's line as seen from above."""
        if not self.known:
            return Curve([(-self.length / 2, 0), (self.length / 2, 0)])
        if self.ring and self.round:
            return ring(self.long, -self.long / 2)
        if self.ring:
            a, b = self.long / 2, self.wide / 2
            return Curve([(-a, -b), (-a, b), (a, b), (a, -b), (-a, -b)])
        return Curve([(self.top[0], 0.0), (self.top[1], 0.0)])


def _on_top(placed: list[Placed], table: _Table) -> tuple[list[Placed], float]:
    """The balloons that lie on the table, counted from its end, and the length of that part."""
    if table.ring or not table.known:
        return placed, table.length
    first = (table.length - (table.top[1] - table.top[0])) / (1 if table.drops == 1 else 2)
    if table.drops == 1:  # the end on the left of the picture stays on the table
        first = 0.0
    long = table.top[1] - table.top[0]
    on = [Placed(p.along - first, p.side, p.up, p.diameter, p.colour) for p in placed if 0 <= p.along - first <= long]
    return on, long


def _from_above(estimate: Estimate, piece: int, table: _Table, placed: list[Placed], paint: Paint) -> View:
    line = table.line_above()
    on, long = _on_top(placed, table)
    wide = number(estimate, piece, "runner_width") or 12.0
    shapes: list[Shape] = []
    if table.known:
        shapes += _top(estimate, piece, table)
    stems = round(number(estimate, piece, "stems") / max(number(estimate, piece, "count"), 1))
    shapes += leaves(round(stems * long / table.length), line, wide)
    if table.drops or (table.hang and not table.ring):
        shapes += _ends_above(table, placed, paint)
    shapes += from_front(on, line, long, paint)
    out = wide * 0.7 if table.drops or table.hang or table.ring or not table.known else 0.0
    half_long = max(table.long, 0 if table.known else table.length) / 2 + out + MARGIN
    half_wide = max(table.wide if table.known else wide, wide) / 2 + (wide / 2 if table.ring else 0) + MARGIN
    if stems:
        half_wide = max(half_wide, wide + MARGIN)
    title = "From above, with place settings" if table.known else "From above"
    return View(title, (-half_long, -half_wide, half_long, half_wide), shapes)


def _ends_above(table: _Table, placed: list[Placed], paint: Paint) -> list[Shape]:
    """What hangs over the edge, seen from above: as far out as the runner is thick."""
    shapes: list[Shape] = []
    first = 0.0 if table.drops == 1 else (table.length - table.long) / 2
    for spot in sorted(placed, key=lambda p: -abs(p.along - first - table.long / 2)):
        if 0 <= spot.along - first <= table.long or (table.drops == 1 and spot.along < table.long):
            continue
        side = -1 if spot.along < first else 1
        out = spot.up + spot.diameter * 0.5
        shapes.append(Round(side * (table.long / 2 + max(out, 0)), spot.side, spot.diameter / 2, paint(spot.colour)))
    return shapes


def _top(estimate: Estimate, piece: int, table: _Table) -> list[Shape]:
    """Cloth, clear strip, place settings."""
    a, b = table.long / 2, table.wide / 2
    outline: tuple[Point, ...] = box(-a, -b, a, b)
    if table.round:
        outline = tuple((a * math.cos(t * math.pi / 36), a * math.sin(t * math.pi / 36)) for t in range(72))
    shapes: list[Shape] = [Patch(outline, props.CLOTH, "cloth")]
    clear = number(estimate, piece, "clear_strip")
    one_sided = value(estimate, piece, "one_sided") is True
    if clear > 0 and not table.round and not table.ring:
        low = -b + number(estimate, piece, "cover_depth")
        shapes.append(Patch(box(-a, low, a, low + clear), props.CLEAR, "clear strip"))
    shapes.append(Stroke((*outline, outline[0]), props.CLOTH_EDGE, 0.8, "cloth edge"))
    for x, y, facing in _places(estimate, piece, table, one_sided):
        shapes += props.setting(x, y, facing, yardstick(estimate, "plate"))
    return shapes


def _places(estimate: Estimate, piece: int, table: _Table, one_sided: bool) -> list[tuple[float, float, float]]:
    """Where plates lie: as many as sit there where that was said, else as many as have room."""
    seats = round(number(estimate, piece, "seats"))
    wide, plate = yardstick(estimate, "setting_width"), yardstick(estimate, "plate")
    back = FROM_EDGE + plate / 2
    if table.ring:
        return []
    if table.round:
        seats = seats or max(round(math.pi * (table.long - 2 * back) / wide), 2)
        angles = [(n + 0.5) / seats * 2 * math.pi for n in range(seats)]
        reach = table.long / 2 - back
        return [(reach * math.cos(t), reach * math.sin(t), t) for t in angles]
    sides = 1 if one_sided else 2
    most = max(int(table.long // wide), 1)
    each = min(math.ceil(seats / sides), most + 1) if seats else most
    found = []
    for side in (-1, 1)[:sides]:
        for n in range(each):
            x = ((n + 0.5) / each - 0.5) * table.long
            found.append((x, side * (table.wide / 2 - back), side * math.pi / 2))
    return found


def _from_side(estimate: Estimate, piece: int, table: _Table, placed: list[Placed], paint: Paint) -> View:
    thick = number(estimate, piece, "runner_height") or 10.0
    rise = thick * 0.42  # the line runs a little below the middle: loose pairs stand on top
    line = _line_beside(table, rise)
    out = rise + table.settles
    left = -table.long / 2 - (out + thick / 2 if table.drops == 2 else thick if table.hang else 0) - MARGIN
    right = table.long / 2 + (out + thick / 2 if table.drops else thick if table.hang else 0) + MARGIN
    shapes: list[Shape] = [props.floor(left, right), *props.table_side(-table.long / 2, table.long / 2, table.high)]
    stems = round(number(estimate, piece, "stems") / max(number(estimate, piece, "count"), 1))
    shapes += leaves(stems, line, thick * 0.9)
    shapes += from_side(placed, line, table.length, paint)
    title = "From the side, with the drop" if table.drops else "From the side"
    return View(title, (left, -2, right, table.high + thick + (5 if stems else 2)), shapes)


def _line_beside(table: _Table, rise: float) -> Curve:
    """Along the table top, over an edge and down where it drops, and out along the floor."""
    left, right = table.top
    level = table.high + rise
    middle: list[Point] = [(left, level), (right, level)]
    if not table.drops and not table.hang:
        return Curve(middle)
    foot = rise if table.drops else table.high - table.hang

    def end(side: int) -> list[Point]:
        x = side * (table.long / 2 + rise)
        corner = [
            (side * table.long / 2 + side * rise * math.sin(t), table.high + rise * math.cos(t))
            for t in (math.pi / 8, math.pi / 4, 3 * math.pi / 8)
        ]
        return [*corner, (x, table.high), (x, foot), *([(x + side * table.settles, foot)] if table.settles else [])]

    start = list(reversed(end(-1))) if table.drops != 1 else []
    return Curve([*start, *middle, *end(1)])
