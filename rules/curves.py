"""Lengths of the curves that garlands follow: arches, rings, stairs, wraps, drapes, and their inverses.

Lengths are inches, angles radians; any one unit of length does. Hanging lines are in rules.catenary,
ellipses and waves in rules.elliptic, and both are handed on from here. Impossible input raises
ValueError with one plain sentence. Sources are elementary geometry unless a docstring says otherwise.
"""

import math
from collections.abc import Callable

from rules.catenary import catenary_arch, catenary_sag, catenary_swag, uneven_swag
from rules.domain import require_not_negative, require_positive, require_within
from rules.elliptic import half_ellipse, quarter_ellipse, s_fall, wave
from rules.roots import increasing_root

__all__ = [
    "arch_height_for",
    "arch_longest",
    "arch_shortest",
    "arch_span_for",
    "catenary_arch",
    "catenary_sag",
    "catenary_swag",
    "circular_arc",
    "door_frame",
    "drape_along_floor",
    "drape_over_edge",
    "drape_to_floor",
    "folk_arch",
    "half_ellipse",
    "parabola_arch",
    "post_wrap",
    "quarter_ellipse",
    "ring",
    "round_top_arch",
    "s_fall",
    "spiral_stair",
    "stair",
    "uneven_swag",
    "wave",
]

Arch = Callable[[float, float], float]


def parabola_arch(width: float, height: float) -> float:
    """Return the length of a parabola over width, height high (or hanging as deep), in; width above 0.

    Source: arc length of a parabola, width/2 (sqrt(1 + q^2) + asinh(q)/q) with q = 4 height/width.
    """
    require_positive("width", width)
    require_not_negative("height", height)
    q = 4.0 * height / width
    return width / 2.0 * (math.hypot(1.0, q) + math.asinh(q) / q) if q else width


def round_top_arch(width: float, height: float) -> float:
    """Return the length of two straight legs under a half circle, in; height at least half the width."""
    require_positive("width", width)
    require_positive("height", height)
    if height < width / 2.0:
        raise ValueError(
            f"A round top {width:g} in wide needs a height of at least {width / 2.0:g} in; {height:g} in was given."
        )
    return 2.0 * (height - width / 2.0) + math.pi * width / 2.0


def door_frame(width: float, height: float, corner: float = 0.0) -> float:
    """Return the length up, across and down a door frame, in; corner: radius of its two rounded corners."""
    require_positive("width", width)
    require_positive("height", height)
    require_within("corner radius", corner, 0.0, min(width / 2.0, height), "in")
    return 2.0 * height + width - (4.0 - math.pi) * corner


def circular_arc(width: float, height: float) -> float:
    """Return the length of a part of a circle over width, height high, in; beyond half the width it bulges outwards."""
    require_positive("width", width)
    require_positive("height", height)
    half = width / 2.0
    radius = (half * half + height * height) / (2.0 * height)
    return 4.0 * radius * math.atan2(height, half)


def folk_arch(width: float, height: float) -> float:
    """Return the line length that the trade's rule of thumb gives an arch, in.

    Twice the height plus the width for a tall arch, one and a half heights plus the width for equal sides,
    height plus width for a wide one. The last can be shorter than two straight lines to the top: a rule to
    show beside the real length, not to build by. Source: common practice, no published source.
    """
    require_positive("width", width)
    require_positive("height", height)
    heights = 2.0 if height > width else 1.5 if height == width else 1.0
    return heights * height + width


def arch_shortest(width: float, height: float) -> float:
    """Return the two straight lines over the top point, in: no arch of that width and height is shorter."""
    require_not_negative("width", width)
    require_not_negative("height", height)
    return 2.0 * math.hypot(height, width / 2.0)


def arch_longest(width: float, height: float) -> float:
    """Return up, across and down the box, in: no arch that stays inside it without turning inwards is longer."""
    require_not_negative("width", width)
    require_not_negative("height", height)
    return 2.0 * height + width


def arch_height_for(length: float, span: float, arch: Arch = half_ellipse) -> float:
    """Return the height of an arch over a span that uses up a length of line, in; length not below the span.

    arch: a function of width and height that grows with both and keeps between arch_shortest and
    arch_longest. Source: inverse by bisection.
    """
    require_positive("length of the line", length)
    require_positive("span", span)
    if length < span:
        raise ValueError(f"A line {length:g} in long cannot arch over {span:g} in; it must be longer than the span.")
    highest = math.sqrt((length - span) * (length + span)) / 2.0
    return increasing_root(lambda height: arch(span, height), length, (length - span) / 2.0, highest)


def arch_span_for(length: float, height: float, arch: Arch = half_ellipse) -> float:
    """Return the width of an arch of a height that uses up a length of line, in; length over twice the height.

    arch: as for arch_height_for. Source: inverse by bisection.
    """
    require_positive("length of the line", length)
    require_positive("height", height)
    if length <= 2.0 * height:
        raise ValueError(
            f"A line {length:g} in long cannot stand {height:g} in high; it must be longer than {2.0 * height:g} in."
        )
    widest = math.sqrt((length - 2.0 * height) * (length + 2.0 * height))
    return increasing_root(lambda width: arch(width, height), length, length - 2.0 * height, widest)


def ring(diameter: float, share: float = 1.0) -> float:
    """Return the length round a ring, or round a share (0 to 1) of it, in; diameter: where the line lies."""
    require_positive("ring diameter", diameter)
    require_within("share of the ring", share, 0.0, 1.0)
    return math.pi * diameter * share


def stair(rise: float, run: float) -> float:
    """Return the length along a straight stair or rail, in; rise and run: of the whole flight, 0 or more."""
    require_not_negative("rise", rise)
    require_not_negative("run", run)
    return math.hypot(rise, run)


def post_wrap(turns: float, diameter: float, climb: float) -> float:
    """Return the length of a helix round a post, in; diameter: where the line lies; climb: from end to end."""
    require_not_negative("number of turns", turns, "")
    require_positive("post diameter", diameter)
    require_not_negative("climb", climb)
    return math.hypot(math.pi * diameter * turns, climb)


def spiral_stair(radius: float, angle: float, climb: float) -> float:
    """Return the length along the rail of a spiral stair, in; angle: turned from bottom to top, radians."""
    require_positive("rail radius", radius)
    return post_wrap(angle / (2.0 * math.pi), 2.0 * radius, climb)


def drape_over_edge(top: float, ends: float, drop: float, axis: float = 0.0) -> float:
    """Return the length of a line along a table top and over its ends, in.

    top: length along the top; ends: how many fall, 0, 1 or 2; drop: below the table top at each of them;
    axis: height of the line above the surface (0 for a flat-backed piece, half the garland's height for a
    rolled one), which rounds each edge in a quarter circle. Source: derived.
    """
    require_not_negative("length along the top", top)
    require_within("number of ends that fall", ends, 0, 2)
    require_not_negative("drop", drop)
    require_not_negative("height of the line above the table", axis)
    return top + ends * (math.pi * axis / 2.0 + drop)


def drape_to_floor(top: float, ends: float, height: float, axis: float = 0.0) -> float:
    """Return the length of a line whose falling ends just touch the floor, in; height: of the table, at least axis."""
    require_within("height of the line above the table", axis, 0.0, height, "in")
    return drape_over_edge(top, ends, height - axis, axis)


def drape_along_floor(top: float, ends: float, height: float, run: float, axis: float = 0.0) -> float:
    """Return the length of a line whose ends fall to the floor and run on along it, in.

    run: from the table's edge to the end of the line on the floor, at least twice axis; height at least
    twice axis. Source: derived, a quarter circle at the edge and another at the floor.
    """
    require_within("height of the line above the table", axis, 0.0, min(height, run) / 2.0, "in")
    floor_turn = math.pi * axis / 2.0 + run - 2.0 * axis
    return drape_over_edge(top, ends, height - 2.0 * axis, axis) + ends * floor_turn
