"""Loose balloons in bags, boxes and nets: how many fit, how much room a number takes.

Lengths are inches, volumes cubic inches. Balloons are taken as equal spheres; a mixture of sizes packs a
little closer. Impossible input raises ValueError with one plain sentence.
"""

import math

from rules.domain import require_not_negative, require_positive, require_within
from rules.inflation import sphere_volume

# Shares of the room that is sphere. The densest possible is pi/sqrt(18) = 0.7405 (Hales 2005).
SHAKEN = 0.64  # random close packing: Scott and Kilgour 1969 measured 0.637
POURED = 0.60
DENSEST = math.pi / math.sqrt(18.0)
WALL_LOSS = 0.30
LEAST_SIDES = 2.5


def wall_correction(side: float, d: float) -> float:
    """Return the share of the fill that a pair of walls leaves, for walls a side apart; side at least 2.5 d.

    Source: fitted to a frictionless soft-sphere model (within 2.6 %, sides 2.5 to 8 d); no real balloon was measured.
    """
    require_positive("balloon diameter", d)
    if not LEAST_SIDES * d <= side < math.inf:
        raise ValueError(
            f"A side of {side:g} in is too narrow to reckon with {d:g} in balloons; "
            f"it must be at least {LEAST_SIDES * d:g} in, below that count them by hand."
        )
    return 1.0 - WALL_LOSS * d / side


def spheres_in_box(length: float, width: float, height: float, d: float, fill: float = SHAKEN) -> float:
    """Return the balloons that a box holds, not rounded; each side at least 2.5 d, fill above 0 to 0.74."""
    walls = math.prod(wall_correction(side, d) for side in (length, width, height))
    return walls * spheres_in_net(length * width * height, d, fill)


def spheres_in_net(volume: float, d: float, fill: float = SHAKEN) -> float:
    """Return the balloons that a wide net or bag of that volume holds, not rounded, walls left out."""
    require_not_negative("volume", volume, "in3")
    require_positive("balloon diameter", d)
    _require_fill(fill)
    return fill * volume / sphere_volume(d)


def box_for_spheres(count: float, d: float, fill: float = POURED) -> float:
    """Return the room that a number of loose balloons takes in boxes or bags, in3, walls left out.

    count 0 or more; fill: share of the room that is balloon, above 0 to 0.74. Source: random packings of equal
    spheres lie between 0.55 (loose) and 0.64 (close).
    """
    require_not_negative("number of balloons", count, "")
    _require_fill(fill)
    return count * sphere_volume(d) / fill


def net_volume(count: float, d: float, fill: float = SHAKEN) -> float:
    """Return the volume of a drop net for a number of balloons, in3: as box_for_spheres, settled closer."""
    return box_for_spheres(count, d, fill)


def _require_fill(fill: float) -> None:
    require_positive("fill", fill, "")
    require_within("fill", fill, 0.0, DENSEST)
