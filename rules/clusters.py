"""Clusters of balloons tied on a line: how far apart they lie, how wide they are, how many fill a foot.

Balloons are taken as spheres of inflated diameter d. Lengths are inches, angles radians. A "quad" is a
cluster of four touching balloons in a ring round the line; each next quad is turned by half a step and
nests in the one before. "Fitted" figures come from a frictionless soft-sphere model; no real balloon was
measured. Impossible input raises ValueError with one plain sentence.
"""

import math

from rules.domain import require_not_negative, require_positive, require_whole, require_within
from rules.inflation import sphere_volume
from rules.packing import POURED, spheres_in_net

FOOT = 12.0
QUAD = 4
# A ring of four touching spheres has its centres on a circle of this many diameters (half a square's diagonal).
QUAD_RING = 1.0 / math.sqrt(2.0)
SIZES_UNLIKE_PITCH = 0.46
STRAND_SPACING = 2.09
RING_CROWDING = 0.25


def nested_pitch(n: float, d: float) -> float:
    """Return the distance from one cluster of n balloons to the next along the line, in.

    n whole, 2 or more; d above 0. Source: derived, rings of n equal spheres touching inside and between
    rings, turned half a step (for n = 4 the height of a square antiprism, 2^(-1/4) d). A chain of pairs
    (n = 2) is floppy and may fold to 0.63 d under pull instead of 0.71 d.
    """
    require_whole("number of balloons in a cluster", n, 2)
    require_positive("balloon diameter", d)
    return d * math.sqrt(1.0 - 1.0 / (4.0 * math.cos(math.pi / (2.0 * n)) ** 2))


def turned_pitch(d: float, phi: float) -> float:
    """Return the pitch of quads each turned by phi against the last, in.

    phi from 0 (balloon on balloon, pitch d) to pi/4 (fully nested). Source: derived, four equal spheres touching.
    """
    require_positive("balloon diameter", d)
    require_within("turn from quad to quad", phi, 0.0, math.pi / 4, "rad")
    return d * math.sqrt(math.cos(phi))


def pressed_pitch(d: float, between: float, inside: float) -> float:
    """Return the pitch of nested quads whose balloons flatten where they touch, in.

    between, inside: overlap as a share of d between quads and within a quad, -0.2 (a gap) to 0.3.
    Source: derived, the square antiprism with its two kinds of edges shortened by those shares.
    """
    require_positive("balloon diameter", d)
    require_within("overlap between clusters", between, -0.2, 0.3)
    require_within("overlap inside a cluster", inside, -0.2, 0.3)
    sideways = 1.0 - math.cos(math.pi / 4)
    return d * math.sqrt((1.0 - between) ** 2 - sideways * (1.0 - inside) ** 2)


def alternating_pitch(d1: float, d2: float) -> float:
    """Return the pitch of nested quads that alternate between two sizes, in.

    The smaller is at least 0.46 of the larger, below that every second quad touches past it.
    Source: derived, two touching rings of four spheres turned 45 degrees.
    """
    require_positive("first balloon diameter", d1)
    require_positive("second balloon diameter", d2)
    require_within("ratio of the smaller balloon to the larger", min(d1, d2) / max(d1, d2), 0.46, 1.0)
    return math.sqrt((0.5 + QUAD_RING) * d1 * d2 - (d1 * d1 + d2 * d2) / 4.0)


def mixed_pitch(mean_d: float, cv: float) -> float:
    """Return the pitch of quads with sizes mixed at random inside each quad, in.

    cv: standard deviation of the diameter over its mean, 0 to 0.35. Source: fitted to a frictionless
    soft-sphere model (within 1.7 % rms, 6 % at worst); no real balloon was measured.
    """
    require_within("spread of sizes (standard deviation over mean)", cv, 0.0, 0.35)
    return nested_pitch(QUAD, mean_d) * (1.0 + SIZES_UNLIKE_PITCH * cv * cv)


def free_width(n: float, d: float) -> float:
    """Return the outer width of a hanging garland of n-balloon clusters, in.

    n whole, 2 or more; d above 0. Source: derived, ring of n touching spheres.
    """
    require_whole("number of balloons in a cluster", n, 2)
    require_positive("balloon diameter", d)
    return d * (1.0 + 1.0 / math.sin(math.pi / n))


def resting_width(d: float) -> float:
    """Return the width, and the height, of a quad garland lying on a table, in (2.3066 d).

    Source: derived, the garland rolls until each quad stands on one balloon, 22.5 degrees to either side in turn.
    """
    require_positive("balloon diameter", d)
    return d * (1.0 + 2.0 * QUAD_RING * math.cos(math.pi / 8))


def strands_width(m: float, d: float) -> float:
    """Return the width of m quad garlands lying side by side, in; m whole, 1 or more.

    Source: fitted to a frictionless soft-sphere model (each further strand adds 2.09 d); no real balloon was measured.
    """
    require_whole("number of strands", m, 1)
    return resting_width(d) + STRAND_SPACING * (m - 1) * d


def filler_reach(d: float, f: float) -> float:
    """Return how far a filler balloon stands out from the line to its outer skin, in.

    f: filler diameter, above 0 and not above d. It is flush with the quads at f = 0.4142 d.
    Source: derived, a sphere resting on two touching balloons of one quad.
    """
    require_positive("balloon diameter", d)
    require_positive("filler diameter", f)
    require_within("ratio of filler to balloon", f / d, 0.0, 1.0)
    centre = (d + math.sqrt((d + f) ** 2 - d * d)) / 2.0
    return centre + f / 2.0


def fillers_a_cluster(fullness: float, d: float, f: float) -> float:
    """Return the fillers of diameter f that bring a quad garland to a fullness, as a count for each quad.

    fullness: volume of all balloons over the volume of the cylinder round the bare quads, 0 to 1; bare
    quads have 0.544, so at or below that the answer is 0. Source: derived for the volumes; the fullness to
    aim at is a choice (0.64 matches the one field fact of 14 pairs on 20 quads: calibrated, not measured).
    """
    require_within("fullness", fullness, 0.0, 1.0)
    require_positive("filler diameter", f)
    cylinder = math.pi / 4.0 * free_width(QUAD, d) ** 2 * nested_pitch(QUAD, d)
    room = fullness * cylinder - QUAD * sphere_volume(d)
    return max(0.0, room / sphere_volume(f))


def balloons_a_foot(n: float, m: float, pitch: float) -> float:
    """Return balloons in a foot of garland: n in each cluster and m loose fillers for each cluster, pitch in inches.

    Source: arithmetic; 4 quads' balloons at the nested pitch give 57.08/d.
    """
    require_whole("number of balloons in a cluster", n, 1)
    require_not_negative("number of fillers for each cluster", m, "")
    require_positive("distance from cluster to cluster", pitch)
    return (n + m) * FOOT / pitch


def ring_clusters(arc: float, pitch: float, width: float, axis_diameter: float) -> float:
    """Return the clusters that fill an arc of a ring, not yet rounded to a whole number.

    arc: length along the line; width: of the garland; axis_diameter: of the circle the line lies on, at
    least 1.1 widths. The inner side crowds, so fewer fit than on a straight line. Source: fitted to a
    frictionless soft-sphere model (within 4 %, within 1 % from 2 widths up); no real balloon was measured.
    """
    require_not_negative("length of the arc", arc)
    require_positive("distance from cluster to cluster", pitch)
    require_positive("garland width", width)
    require_positive("ring diameter", axis_diameter)
    if axis_diameter < 1.1 * width:
        raise ValueError(
            f"A garland {width:g} in wide cannot close on a ring {axis_diameter:g} in across; "
            f"the ring must be at least {1.1 * width:g} in."
        )
    return arc / (pitch * (1.0 + RING_CROWDING * width / axis_diameter))


def hexagonal_layer_density(d: float) -> float:
    """Return balloons in a square foot of one flat layer packed like honeycomb; d above 0.

    Source: densest packing of equal circles.
    """
    return square_layer_density(d) * 2.0 / math.sqrt(3.0)


def square_layer_density(d: float) -> float:
    """Return balloons in a square foot of one flat layer in rows and columns; d above 0.

    Source: arithmetic, one for each square of side d.
    """
    require_positive("balloon diameter", d)
    return FOOT * FOOT / (d * d)


def heap_density(width: float, height: float, d: float, fill: float = POURED) -> float:
    """Return balloons in a foot of a loose heap with a half-ellipse for its cross-section.

    width, height: of the heap, in, not below d; fill: share of the room that is balloon, above 0 to 0.74.
    Source: derived; 0.60 lies between random loose (0.55) and random close packing (0.64) of equal spheres.
    """
    require_within("width of the heap", width, d, math.inf, "in")
    require_within("height of the heap", height, d, math.inf, "in")
    return spheres_in_net(math.pi / 4.0 * width * height * FOOT, d, fill)
