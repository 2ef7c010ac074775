"""Clusters, layers and boxes against polyhedron references, sphere-packing literature and bare coordinates."""

import itertools
import math

import pytest
from scipy import constants, optimize

from rules.clusters import (
    alternating_pitch,
    balloons_a_foot,
    filler_reach,
    fillers_a_cluster,
    free_width,
    heap_density,
    hexagonal_layer_density,
    nested_pitch,
    pressed_pitch,
    resting_width,
    square_layer_density,
    turned_pitch,
)
from rules.inflation import sphere_diameter, sphere_volume, stroke_diameter
from rules.packing import DENSEST, SHAKEN, box_for_spheres, spheres_in_box, spheres_in_net


def ring_of(n: int, diameter: float, turn: float = 0.0, height: float = 0.0) -> list[tuple[float, float, float]]:
    """Centres of n spheres that touch in a ring, found from the chord alone."""
    radius = optimize.brentq(lambda r: 2 * r * math.sin(math.pi / n) - diameter, diameter / 4, n * diameter)
    angles = (turn + 2 * math.pi * k / n for k in range(n))
    return [(radius * math.cos(a), radius * math.sin(a), height) for a in angles]


@pytest.mark.parametrize(
    ("n", "height"),
    [
        (3, math.sqrt(2 / 3)),  # regular octahedron between opposite faces
        (4, 2 ** (-1 / 4)),  # OEIS A381756; square antiprism x4o || o4x, height 0.840896
        (5, 0.850650808),  # pentagonal antiprism: the icosahedron's middle, sqrt((5 + sqrt 5)/10)
    ],
)
def test_pitch_against_heights_of_antiprisms(n: int, height: float) -> None:
    """Published heights of uniform antiprisms with unit edges."""
    assert nested_pitch(n, 1.0) == pytest.approx(height, abs=1e-9)


def test_pitch_against_the_circumradius_of_the_square_antiprism() -> None:
    """Published circumradius 0.82266438800803628873 for unit edges: height follows by Pythagoras."""
    height = 2 * math.sqrt(0.82266438800803628873**2 - 0.5)
    assert nested_pitch(4, 4.28) == pytest.approx(4.28 * height, rel=1e-12)


@pytest.mark.parametrize("n", [2, 3, 4, 5, 6])
def test_pitch_against_touching_coordinates(n: int) -> None:
    """Rings placed by coordinates at our pitch: every nearest pair is exactly one diameter apart."""
    lower = ring_of(n, 5.0)
    upper = ring_of(n, 5.0, math.pi / n, nested_pitch(n, 5.0))
    gaps = [math.dist(p, q) for p, q in itertools.product(lower, upper)]
    assert min(gaps) == pytest.approx(5.0, rel=1e-12)
    assert sum(math.isclose(gap, 5.0, rel_tol=1e-9) for gap in gaps) == 2 * n


@pytest.mark.parametrize("degrees", [0, 20, 45])
def test_turned_pitch_against_touching_coordinates(degrees: float) -> None:
    """Quads turned less than half a step, by coordinates."""
    turn = math.radians(degrees)
    upper = ring_of(4, 5.0, turn, turned_pitch(5.0, turn))
    assert min(math.dist(p, q) for p in ring_of(4, 5.0) for q in upper) == pytest.approx(5.0, rel=1e-12)


@pytest.mark.parametrize(("d1", "d2"), [(5.0, 5.0), (5.0, 4.0), (5.0, 2.5)])
def test_alternating_pitch_against_touching_coordinates(d1: float, d2: float) -> None:
    """Two sizes touch at half the sum of their diameters."""
    upper = ring_of(4, d2, math.pi / 4, alternating_pitch(d1, d2))
    assert min(math.dist(p, q) for p in ring_of(4, d1) for q in upper) == pytest.approx((d1 + d2) / 2, rel=1e-12)


def test_pressed_pitch_against_shortened_edges() -> None:
    """Rings whose neighbours are 0.98 d apart, with 0.94 d between the rings."""
    upper = ring_of(4, 0.98 * 5.0, math.pi / 4, pressed_pitch(5.0, 0.06, 0.02))
    assert min(math.dist(p, q) for p in ring_of(4, 0.98 * 5.0) for q in upper) == pytest.approx(0.94 * 5.0, rel=1e-12)


@pytest.mark.parametrize(("n", "ratio"), [(2, 2.0), (3, 2.1547005), (4, 2.4142136), (5, 2.7013016), (6, 3.0)])
def test_width_against_circles_packed_in_a_circle(n: int, ratio: float) -> None:
    """Published table of the smallest circle round n unit circles; up to 6 the circles lie in a ring."""
    assert free_width(n, 1.0) == pytest.approx(ratio, abs=1e-7)


def test_resting_attitude_is_the_lowest_one() -> None:
    """By coordinates: in no attitude of two nested quads does the line lie lower than half our width."""

    def axis_height(roll: float) -> float:
        quads = ring_of(4, 1.0, roll) + ring_of(4, 1.0, roll + math.pi / 4)
        return 0.5 - min(y for _, y, _ in quads)

    lowest = min(axis_height(math.radians(tenth / 10)) for tenth in range(900))
    assert resting_width(1.0) == pytest.approx(2 * lowest, rel=1e-5)


def test_filler_against_touching_coordinates() -> None:
    """A filler touches two neighbours of the quad when its centre lies at our reach less its own radius."""
    centre = filler_reach(5.0, 3.4) - 1.7
    gaps = sorted(math.dist((centre, 0, 0), p) for p in ring_of(4, 5.0, math.pi / 4))
    assert gaps[0] == pytest.approx(gaps[1]) == pytest.approx((5.0 + 3.4) / 2, rel=1e-12)


def test_the_runner_of_the_trade() -> None:
    """Common practice, no published source: 6 ft is 20 quads and 14 loose pairs, 18 balloons to the foot."""
    quad, pair = 4.28, 4.28 / 2 ** (1 / 3)
    fillers = fillers_a_cluster(0.64, quad, pair)
    assert round(72 / nested_pitch(4, quad)) == 20
    assert 20 * fillers / 2 == pytest.approx(14, abs=0.5)
    assert balloons_a_foot(4, fillers, nested_pitch(4, quad)) == pytest.approx(18, abs=0.1)


def test_a_pole_of_the_trade() -> None:
    """Common practice, no published source: 216 balloons of 8 in cover about 30 ft of pole."""
    assert balloons_a_foot(4, 0, nested_pitch(4, 8.0)) * 30 == pytest.approx(216, rel=0.02)


def test_layers_against_the_densest_packings_of_circles() -> None:
    """Thue: circles cover at most pi/sqrt 12 = 0.9069 of a plane; in rows and columns pi/4 = 0.7854."""
    circle = math.pi / 4 * 4.0**2 / 144
    assert hexagonal_layer_density(4.0) * circle == pytest.approx(0.9069, abs=0.00001)
    assert square_layer_density(4.0) * circle == pytest.approx(0.7854, abs=0.00001)


def test_no_packing_is_closer_than_the_densest() -> None:
    """Hales 2005 (Kepler): 0.74048; quads on a line, boxes, heaps all stay below it."""
    assert pytest.approx(0.74048, abs=0.00001) == DENSEST
    with pytest.raises(ValueError, match="fill must lie between"):
        spheres_in_net(1000.0, 5.0, 0.75)
    quads = 4 * sphere_volume(1.0) / (math.pi / 4 * free_width(4, 1.0) ** 2 * nested_pitch(4, 1.0))
    assert quads < DENSEST
    assert heap_density(30.0, 8.0, 4.0) * sphere_volume(4.0) / (math.pi / 4 * 30 * 8 * 12) < DENSEST


def test_shaken_fill_against_measured_ball_bearings() -> None:
    """Scott and Kilgour 1969: random close packing of steel balls 0.6366; our default within 1 %."""
    assert pytest.approx(0.6366, rel=0.01) == SHAKEN
    count = spheres_in_net(1728.0, 1.0)
    assert box_for_spheres(count, 1.0, 0.6366) == pytest.approx(1728.0, rel=0.01)


@pytest.mark.parametrize("side", [4, 5, 8])
def test_a_box_holds_less_than_dense_and_more_than_loose_cubes(side: int) -> None:
    """Between half of the cubic lattice (side^3 spheres in a side^3 box) and Hales' bound on the volume."""
    held = spheres_in_box(side, side, side, 1.0)
    assert side**3 / 2 < held < DENSEST * side**3 / (math.pi / 6)


@pytest.mark.parametrize(
    ("inches", "cubic_feet"), [(5, 0.0379), (9, 0.2209), (11, 0.4033), (12, 0.5236), (18, 1.7671), (36, 14.1372)]
)
def test_sphere_volumes_against_a_handbook(inches: float, cubic_feet: float) -> None:
    """Engineers' handbooks: volume of a sphere is 0.5236 times the cube of its diameter."""
    assert sphere_volume(inches) / 1728 == pytest.approx(cubic_feet, abs=0.00006)
    assert sphere_volume(inches) == pytest.approx(0.5236 * inches**3, rel=3e-6)


def test_strokes_against_si_constants() -> None:
    """SciPy's litre and inch: two strokes of 0.336 L make a 4.28 in sphere."""
    volume = 2 * 0.336 * constants.liter / constants.inch**3
    assert stroke_diameter(2, 0.336) == pytest.approx(math.cbrt(volume * 6 / math.pi), rel=1e-12)
    assert sphere_diameter(volume) == pytest.approx(4.28, abs=0.005)
