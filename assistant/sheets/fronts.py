"""Arch, column, wall, hoop, swag and garland from the front, with a person and a door or ceiling beside them."""

import math

from assistant.sheets import curves, props
from assistant.sheets.curves import Curve
from assistant.sheets.placing import by_diameter, deal, evenly, on_line
from assistant.sheets.shapes import Round, Shape, Stroke, View, bounds
from assistant.sheets.strung import Paint, from_front, leaves
from assistant.sheets.wanted import number, share_covered, tall, value, yardstick
from rules import Estimate

GAP = 14.0  # between things that stand side by side, in
MOST_BALLOONS = 6000  # a larger wall is not drawn: nothing could be seen of it


def arch_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """The arch with a person under it where one fits, a door beside it."""
    width, height = number(estimate, piece, "arch_width"), number(estimate, piece, "arch_height")
    if width <= 0 or height <= 0:
        return None
    shape = str(value(estimate, piece, "shape"))
    bends = {"catenary": curves.catenary, "parabola": curves.parabola, "round_top": curves.round_top}
    if shape in ("square", "one_leg"):
        line = curves.frame(width, height, 1 if shape == "one_leg" else 2)
    else:
        line = bends.get(shape, curves.ellipse)(width, height)
    outer = number(estimate, piece, "outer_width")
    person = yardstick(estimate, "person")
    fits = number(estimate, piece, "clear_width") > 30 and number(estimate, piece, "headroom") > person
    half = (width + outer) / 2
    middle: list[Shape] = []
    if value(estimate, piece, "place") == "doorway":
        middle = props.door(0, yardstick(estimate, "door_width"), yardstick(estimate, "door_height"))
    elif fits:
        middle = props.person(0, person)
    return _scaled(estimate, middle, _hung(estimate, piece, line, paint, outer), half, height + outer / 2, alone=fits)


def hoop_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """The ring standing on the floor, its frame showing where it is bare."""
    across, outer = number(estimate, piece, "diameter"), number(estimate, piece, "outer_width")
    if across <= 0:
        return None
    line = curves.ring(across, outer / 2)
    frame: list[Shape] = [Stroke(line.points, props.STAND, 1.2, "frame")]
    return _scaled(estimate, frame, _hung(estimate, piece, line, paint, outer), (across + outer) / 2, across + outer)


def column_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """One column, or two with a person between them."""
    high, outer = number(estimate, piece, "height"), number(estimate, piece, "outer_width")
    if high <= 0:
        return None
    pair = number(estimate, piece, "count") >= 2
    apart = outer / 2 + GAP + 10 if pair else 0.0
    shapes: list[Shape] = []
    for x in (-apart, apart) if pair else (0.0,):
        shapes.append(Stroke(((x, 0), (x, high)), props.STAND, 1.5, "pole"))
        shapes.append(Stroke(((x - outer / 3, 0.8), (x + outer / 3, 0.8)), props.STAND, 1.6, "base"))
        shapes += _hung(estimate, piece, Curve([(x, 0), (x, high)]), paint, outer)
        shapes += _topper(estimate, piece, x, high, paint)
    between = props.person(0, yardstick(estimate, "person")) if pair else []
    over = number(estimate, piece, "topper_diameter") if value(estimate, piece, "topper") != "none" else 0.0
    return _scaled(estimate, between, shapes, apart + outer / 2, high + over, alone=pair)


def _topper(estimate: Estimate, piece: int, x: float, high: float, paint: Paint) -> list[Shape]:
    kind = value(estimate, piece, "topper")
    if kind in (None, "none"):
        return []
    radius = number(estimate, piece, "topper_diameter") / 2
    step = estimate.step("colours", piece)
    first = step.value[0][0] if step is not None and step.value else None
    return [Round(x, high + radius, radius, paint(first), "balloon" if kind == "round" else "foil")]


def wall_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """The front layer of the wall: bigger balloons in rows, the small ones over the gaps between them."""
    wide, high = number(estimate, piece, "span"), number(estimate, piece, "height")
    sizes = by_diameter(estimate, piece)
    if wide <= 0 or high <= 0 or not 0 < sum(n for _, n in sizes) <= MOST_BALLOONS:
        return None
    share = share_covered(estimate, piece)
    big = [d for d, n in sizes for _ in range(n) if d > sizes[-1][0]] or [d for d, n in sizes for _ in range(n)]
    small = [d for d, n in sizes for _ in range(n)][len(big) :]
    covered = wide * share
    spots = []
    for group, shift in ((big, 0.0), (small, 0.5)):
        grid = _grid(len(group), covered, high, shift)
        spots += [(_kept(x, d, covered), _kept(y, d, high), d) for (x, y), d in zip(grid, evenly(group), strict=True)]
    spots.sort(key=lambda spot: spot[1])
    dealt = sorted(zip(spots, deal(estimate, piece, spots), strict=True), key=lambda pair: -pair[0][2])
    shapes: list[Shape] = [Round(x - wide / 2, y, d / 2, paint(colour)) for (x, y, d), colour in dealt]
    stems = round(number(estimate, piece, "stems") / max(number(estimate, piece, "count"), 1))
    green: list[Shape] = [
        props.leaf(x - wide / 2, y, 2.4 * place, 11) for place, (x, y) in enumerate(_grid(stems, covered, high, 0.25))
    ]
    return _scaled(estimate, [], [*shapes, *green], wide / 2, high)


def _kept(at: float, diameter: float, room: float) -> float:
    """A balloon's middle moved so that it stands out of the room by a tenth of itself at most."""
    inside = 0.4 * diameter
    return min(max(at, inside), max(room - inside, inside))


def _grid(count: int, wide: float, high: float, shift: float) -> list[tuple[float, float]]:
    """Places in rows over a rectangle, every other row set off by half a step; shift: in steps, to lie between."""
    if not count:
        return []
    rows = max(round(math.sqrt(count * high / wide)), 1)
    found = []
    for row in range(rows):
        first, last = count * row // rows, count * (row + 1) // rows
        for n in range(last - first):
            aside = 0.25 if row % 2 else -0.25
            x = (n + 0.5 + aside + shift * 0.5) / (last - first)
            found.append((x % 1.0 * wide, min((row + 0.5 + shift) / rows, 0.97) * high))
    return found


def swag_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """Loops that hang from the ceiling."""
    span, sag = number(estimate, piece, "span"), number(estimate, piece, "bay_sag")
    if span <= 0:
        return None
    outer, rise = number(estimate, piece, "outer_width"), number(estimate, piece, "end_rise")
    room = max(yardstick(estimate, "room_height"), yardstick(estimate, "person") + sag + outer / 2 + 12) + rise
    top = room - outer / 2 - rise
    bays = max(round(number(estimate, piece, "bays")), 1)
    line = curves.loops(span, sag, bays, rise, top)
    half = span / 2 + outer / 2
    strings: list[Shape] = []
    for place in range(bays + 1):
        x = span * (place / bays - 0.5)
        strings.append(Stroke(((x, top + rise * place / bays), (x, room)), props.RIBBON, 0.5, "string"))
    back: list[Shape] = [props.ceiling(-half, half, room), *strings]
    return _scaled(estimate, back, _hung(estimate, piece, line, paint, outer), half, room, in_front=True)


def garland_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """Straight along, in loops where draped, or up the stairs."""
    outer, length = number(estimate, piece, "outer_width"), number(estimate, piece, "length")
    steps = round(number(estimate, piece, "steps"))
    if not length and not steps:
        return None
    back: list[Shape] = []
    level = yardstick(estimate, "hung_garland")
    if steps and not length:
        rise, run = number(estimate, piece, "riser"), number(estimate, piece, "going")
        half = steps * run / 2
        stair = [(-half + run * (n + corner), rise * (n + 1)) for n in range(steps) for corner in (0, 1)]
        back.append(Stroke(((-half, 0), *stair, (half, 0)), props.STAND, 1.2, "stairs"))
        line = Curve([(-half, 30.0), (half, steps * rise + 30.0)])
        level = steps * rise + 30.0
    else:
        half = length / 2
        extra = number(estimate, piece, "drape_extra")
        line = Curve([(-half, level), (half, level)])
        if extra > 1:
            count = max(round(length / 60), 1)
            sag = length / count * math.sqrt(3 / 8 * (extra - 1))  # a flat parabola is 8/3 (sag/span)^2 longer
            line = curves.loops(length, sag, count, 0.0, level)
    return _scaled(
        estimate, back, _hung(estimate, piece, line, paint, outer), half + outer / 4, level + outer / 2, in_front=True
    )


def _hung(estimate: Estimate, piece: int, line: Curve, paint: Paint, outer: float) -> list[Shape]:
    """The balloons and foliage along a line, or along the part of it that is covered."""
    line = line.part(share_covered(estimate, piece))
    stems = round(number(estimate, piece, "stems") / max(number(estimate, piece, "count"), 1))
    placed = on_line(estimate, piece)
    length = number(estimate, piece, "decor_length") or line.length
    return [*leaves(stems, line, outer), *from_front(placed, line, length, paint)]


def _scaled(
    estimate: Estimate,
    back: list[Shape],
    decor: list[Shape],
    half: float,
    top: float,
    alone: bool = False,
    in_front: bool = False,
) -> View:
    """The piece between a door and a person; `alone`: a person is in it already; `in_front`: both stand below it."""
    person, wide, high = (yardstick(estimate, id) for id in ("person", "door_width", "door_height"))
    left, right = -half - GAP - wide / 2, half + GAP + person * 0.18
    if in_front and half * 2 > wide + 40:
        left, right = -half + wide / 2 + 6, half - 16
    beside = props.door(left, wide, high)
    if not alone:
        beside += props.person(right, person)
    around = bounds([*beside, *decor])
    ends = min(left - wide / 2, -half, around[0]) - 4, max(half, around[2]) + 4
    shapes = [props.floor(*ends), *beside, *back, *decor]
    return View(
        f"From the front; the person is {tall(estimate)}", (ends[0], -3, ends[1], max(top, around[3]) + 3), shapes
    )
