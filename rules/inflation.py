"""Size against air: sphere volumes, and what a hand pump gives for each stroke.

Diameters are inches, volumes cubic inches, air for a stroke litres. A balloon is taken as a sphere; a
real one is a little longer than wide, so the same air gives a slightly smaller width. Impossible input
raises ValueError with one plain sentence.
"""

import math

from rules.domain import require_not_negative, require_positive, require_within

# 1 in = 2.54 cm exactly (NIST SP 811, appendix B), 1 L = 1000 cm3.
CUBIC_INCHES_A_LITRE = 1000.0 / 2.54**3


def sphere_volume(d: float) -> float:
    """Return the volume of a sphere of diameter d, in3. Source: pi d^3 / 6."""
    require_not_negative("balloon diameter", d)
    return math.pi / 6.0 * d**3


def sphere_diameter(volume: float) -> float:
    """Return the diameter of a sphere of that volume (in3), in. Source: inverse of pi d^3 / 6."""
    require_not_negative("volume", volume, "in3")
    return math.cbrt(6.0 * volume / math.pi)


def stroke_diameter(strokes: float, litres_a_stroke: float, efficiency: float = 1.0) -> float:
    """Return the diameter after a number of pump strokes, in.

    strokes 0 or more (halves allowed); litres_a_stroke above 0, measured at the pump's outlet; efficiency:
    share of it that stays in the balloon, above 0 to 1. Source: derived, conservation of air; the small gauge
    pressure of a balloon (2 to 7 kPa, under 2.5 % of diameter) is left out.
    """
    require_not_negative("number of strokes", strokes, "")
    return sphere_diameter(strokes * _stroke_volume(litres_a_stroke, efficiency))


def strokes_for(d: float, litres_a_stroke: float, efficiency: float = 1.0) -> float:
    """Return the strokes that reach diameter d, not rounded. Source: inverse of stroke_diameter."""
    return sphere_volume(d) / _stroke_volume(litres_a_stroke, efficiency)


def stroke_litres(strokes: float, d: float) -> float:
    """Return the litres that one stroke delivers, from strokes counted to a measured diameter d.

    strokes above 0, d above 0. This calibrates a pump. Source: inverse of stroke_diameter.
    """
    require_positive("number of strokes", strokes, "")
    require_positive("balloon diameter", d)
    return sphere_volume(d) / CUBIC_INCHES_A_LITRE / strokes


def _stroke_volume(litres_a_stroke: float, efficiency: float) -> float:
    require_positive("air for a stroke", litres_a_stroke, "L")
    require_positive("pump efficiency", efficiency, "")
    require_within("pump efficiency", efficiency, 0.0, 1.0)
    return litres_a_stroke * efficiency * CUBIC_INCHES_A_LITRE
