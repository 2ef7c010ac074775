"""Lengths of ellipses and waves, exact, by the arithmetic-geometric mean. Lengths are inches."""

import math

from rules.domain import require_not_negative, require_positive, require_within


def complete_elliptic_e(m: float) -> float:
    """Return the complete elliptic integral of the second kind E(m), parameter m = k^2 from 0 to 1.

    Source: NIST DLMF 19.8 (arithmetic-geometric mean).
    """
    require_within("elliptic parameter", m, 0.0, 1.0)
    if m == 1.0:
        return 1.0
    arithmetic, geometric = 1.0, math.sqrt(1.0 - m)
    weight, removed = 0.5, 0.5 * m
    # The gap squares at every step, so a gap of 1e-8 is gone to the last bit after one step more.
    while arithmetic - geometric > 1e-8 * arithmetic:
        half_gap = (arithmetic - geometric) / 2.0
        arithmetic, geometric = (arithmetic + geometric) / 2.0, math.sqrt(arithmetic * geometric)
        weight *= 2.0
        removed += weight * half_gap * half_gap
    return math.pi / (arithmetic + geometric) * (1.0 - removed)


def quarter_ellipse(down: float, out: float) -> float:
    """Return the length of a quarter of an ellipse with half-axes down and out: a cascade over an edge, in.

    Both 0 or more. Source: longer half-axis times E(1 - (shorter/longer)^2), NIST DLMF 19.30.
    """
    require_not_negative("fall", down)
    require_not_negative("reach", out)
    longer, shorter = max(down, out), min(down, out)
    if longer == 0.0:
        return 0.0
    ratio = shorter / longer
    return longer * complete_elliptic_e((1.0 - ratio) * (1.0 + ratio))


def half_ellipse(width: float, height: float) -> float:
    """Return the length of an arch shaped as the upper half of an ellipse, in; width and height 0 or more."""
    require_not_negative("width", width)
    require_not_negative("height", height)
    return 2.0 * quarter_ellipse(height, width / 2.0)


def wave(length: float, height: float, crests: float) -> float:
    """Return the length of a line that waves like a cosine, in.

    length: straight distance, above 0; height: crest to trough, 0 or more; crests: whole waves in that
    distance, 0 or more (halves allowed). Source: arc length of a cosine, derived, with E of NIST DLMF 19.2.8.
    """
    require_positive("length", length)
    require_not_negative("height", height)
    require_not_negative("number of waves", crests, "")
    slope = math.pi * height * crests / length
    stretch = math.hypot(1.0, slope)
    return 2.0 * length / math.pi * stretch * complete_elliptic_e((slope / stretch) ** 2)


def s_fall(down: float, out: float) -> float:
    """Return the length of a soft S that falls by down while it moves out, in; out above 0. Source: half a wave."""
    return wave(out, down, 0.5)
