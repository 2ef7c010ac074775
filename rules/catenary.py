"""Lines that hang by their own weight: swags, and the catenary arch that is a swag upside down.

Lengths are inches (any one unit of length does). c is the catenary's parameter, the radius of its lowest
point. Source of all formulas: the catenary y = c (cosh(x/c) - 1). Impossible input raises ValueError
with one plain sentence.
"""

import math

from rules.domain import require_not_negative, require_positive
from rules.roots import increasing_root

# Below this share of the span a sag lengthens the line by less than a float can hold.
STRAIGHT = 1e-9


def catenary_swag(span: float, sag: float) -> float:
    """Return the length of a line hung between two level points, in; span above 0, sag 0 or more."""
    require_not_negative("sag", sag)
    return uneven_swag(span, 0.0, sag)


def catenary_arch(width: float, height: float) -> float:
    """Return the length of an arch shaped as a hanging line turned over, in; width above 0, height 0 or more."""
    require_positive("width", width)
    require_not_negative("height", height)
    return catenary_swag(width, height)


def uneven_swag(span: float, rise: float, dip: float) -> float:
    """Return the length of a line hung between two points of unequal height, in.

    span: level distance, above 0; rise: how much higher the upper point is, 0 or more; dip: how far the
    lowest point of the line hangs below the lower point, 0 or more.
    """
    require_positive("span", span)
    require_not_negative("rise", rise)
    require_not_negative("dip", dip)
    drop = dip + rise
    if drop <= STRAIGHT * span:
        return span

    def reach(c: float) -> float:
        return _half_span(c, dip) + _half_span(c, drop)

    # A parabola of the same c reaches further than the catenary, so its c is a lower limit.
    low = (span / (math.sqrt(dip) + math.sqrt(drop))) ** 2 / 2.0
    high = 2.0 * low
    while reach(high) < span:
        low, high = high, 2.0 * high
    c = increasing_root(reach, span, low, high)
    # A line as good as straight must not come out shorter than straight by the last digit of a float.
    return max(math.hypot(span, rise), math.sqrt(dip * (dip + 2.0 * c)) + math.sqrt(drop * (drop + 2.0 * c)))


def catenary_sag(span: float, length: float) -> float:
    """Return the sag of a line of that length hung between two level points, in; length not below the span."""
    require_positive("span", span)
    require_positive("length of the line", length)
    if length < span:
        raise ValueError(f"A line {length:g} in long cannot span {span:g} in; it must be at least as long as the span.")
    ratio = length / span
    if ratio == 1.0:
        return 0.0
    # With u = span / 2c the ratio is sinh(u)/u, which is not below 1 + u^2/6 nor below (e^u - 1)/2u.
    limit = math.sqrt(6.0 * (ratio - 1.0))
    limit = min(limit, math.log1p(2.0 * ratio * limit))
    u = increasing_root(lambda v: math.sinh(v) / v if v else 1.0, ratio, 0.0, limit)
    return span * math.sinh(u / 2.0) ** 2 / u if u else 0.0


def _half_span(c: float, drop: float) -> float:
    """Return how far sideways a catenary runs from its lowest point while it climbs by drop: c acosh(1 + drop/c)."""
    z = drop / c
    return c * math.log1p(z + math.sqrt(z * (2.0 + z)))
