"""Wind on decor: pressure, push, overturning, ballast, and the Beaufort scale.

Wind speeds are mph, areas square feet, forces pounds-force, levers and heights feet. Impossible input
raises ValueError with one plain sentence.
"""

import math
from bisect import bisect_right

from rules.domain import require_not_negative, require_positive, require_within

# ASCE 7 velocity pressure in still-standard sea-level air, psf for each (mph)^2, exposure factors all 1.
VELOCITY_PRESSURE = 0.00256

# Lowest whole mph of each force, and its name: U.S. National Weather Service.
BEAUFORT = (
    (0, "calm"),
    (1, "light air"),
    (4, "light breeze"),
    (8, "gentle breeze"),
    (13, "moderate breeze"),
    (19, "fresh breeze"),
    (25, "strong breeze"),
    (32, "near gale"),
    (39, "gale"),
    (47, "strong gale"),
    (55, "storm"),
    (64, "violent storm"),
    (74, "hurricane"),
)


def velocity_pressure_psf(mph: float) -> float:
    """Return the pressure of wind brought to rest, psf; mph 0 or more. Source: ASCE 7, 0.00256 V^2."""
    require_not_negative("wind speed", mph, "mph")
    return VELOCITY_PRESSURE * mph * mph


def drag_lb(area_ft2: float, cd: float, mph: float) -> float:
    """Return the push of the wind on an area seen from the front, lb.

    cd: drag coefficient, above 0 (sphere 0.47, cylinder 1.2, flat plate 1.28). Source: drag equation.
    """
    require_not_negative("area", area_ft2, "ft2")
    require_positive("drag coefficient", cd, "")
    return velocity_pressure_psf(mph) * area_ft2 * cd


def overturning_moment(force_lb: float, height_ft: float) -> float:
    """Return the moment that tips a piece over its base, lb ft; height_ft: of the push above the floor."""
    require_not_negative("push", force_lb, "lb")
    require_not_negative("height of the push", height_ft, "ft")
    return force_lb * height_ft


def ballast_lb(moment: float, lever: float, factor: float = 1.0) -> float:
    """Return the weight on the base that holds against a moment, lb.

    moment: lb ft; lever: from the weight's centre to the edge it would tip over, ft, above 0; factor: of
    safety, 1 or more. The piece's own weight is left out. Source: statics.
    """
    require_not_negative("moment", moment, "lb ft")
    require_positive("lever", lever, "ft")
    if not factor >= 1.0:
        raise ValueError(f"A safety factor must be at least 1; {factor:g} was given.")
    return moment * factor / lever


def beaufort_force(mph: float) -> int:
    """Return the Beaufort force alone, 0 to 12. Source: as beaufort."""
    return beaufort(mph)[0]


def beaufort_top(force: float) -> float:
    """Return the highest whole mph of a Beaufort force, 0 to 12; of force 12, which has none, its lowest.

    Source: U.S. National Weather Service, Beaufort wind scale.
    """
    require_within("Beaufort force", force, 0.0, 12.0)
    place = math.ceil(force)
    return float(BEAUFORT[place + 1][0] - 1 if place + 1 < len(BEAUFORT) else BEAUFORT[place][0])


def beaufort(mph: float) -> tuple[int, str]:
    """Return the Beaufort force, 0 to 12, and its name; a speed between two whole mph counts as the lower.

    Source: U.S. National Weather Service, Beaufort wind scale.
    """
    require_not_negative("wind speed", mph, "mph")
    force = bisect_right(BEAUFORT, mph, key=lambda band: band[0]) - 1
    return force, BEAUFORT[force][1]
