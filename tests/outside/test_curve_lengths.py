"""Curve lengths against numerical integration, elliptic integrals, root finders and published worked answers."""

import math
from collections.abc import Callable
from itertools import pairwise

import pytest
from scipy import integrate, optimize, special

from rules.catenary import catenary_sag, catenary_swag, uneven_swag
from rules.curves import (
    arch_height_for,
    arch_span_for,
    catenary_arch,
    circular_arc,
    drape_along_floor,
    drape_over_edge,
    drape_to_floor,
    half_ellipse,
    parabola_arch,
    post_wrap,
    quarter_ellipse,
    ring,
    round_top_arch,
    s_fall,
    spiral_stair,
    stair,
    wave,
)
from rules.elliptic import complete_elliptic_e


def path_length(
    x: Callable[[float], float], y: Callable[[float], float], z: Callable[[float], float], end: float
) -> float:
    """Integrate the speed of a path from 0 to end, slopes by central differences: knows none of our formulas."""
    step = 1e-5

    def speed(t: float) -> float:
        return math.dist(*([f(t + way) for f in (x, y, z)] for way in (-step, step))) / (2 * step)

    length, _ = integrate.quad(speed, 0, end, epsabs=1e-10, epsrel=1e-10, limit=400)
    return float(length)


def level(_: float) -> float:
    """Stay in the plane."""
    return 0.0


@pytest.mark.parametrize("m", [0.0, 1e-12, 0.1, 0.36, 0.5, 0.9, 0.999, 1 - 1e-12, 1.0])
def test_elliptic_integral_against_scipy(m: float) -> None:
    """SciPy's ellipe (Cephes), an independent polynomial method."""
    assert complete_elliptic_e(m) == pytest.approx(float(special.ellipe(m)), rel=1e-14)


def test_elliptic_integral_against_a_printed_table() -> None:
    """Abramowitz and Stegun, table 17.1: E at m = 0.5."""
    assert complete_elliptic_e(0.5) == pytest.approx(1.350643881, abs=5e-10)


def test_quarter_ellipse_against_the_earth() -> None:
    """Geodetic Reference System 1980 (Moritz): equator to pole is 10 001 965.7293 m on half-axes a and b."""
    assert quarter_ellipse(6_356_752.3141, 6_378_137.0) == pytest.approx(10_001_965.7293, abs=2e-4)


@pytest.mark.parametrize(("width", "height"), [(120, 96), (96, 96), (72, 108), (144, 96), (240, 120), (10, 400)])
def test_half_ellipse_against_integration(width: float, height: float) -> None:
    """SciPy quad along the ellipse by its angle."""
    half = width / 2
    numerical = path_length(lambda t: half * math.cos(t), lambda t: height * math.sin(t), level, math.pi)
    assert half_ellipse(width, height) == pytest.approx(numerical, rel=1e-8)


@pytest.mark.parametrize(("width", "height"), [(96, 96), (144, 96), (240, 48), (100, 1)])
def test_parabola_against_integration(width: float, height: float) -> None:
    """SciPy quad along y = 4hx(w - x)/w^2."""
    numerical = path_length(lambda x: x, lambda x: 4 * height * x * (width - x) / width**2, level, width)
    assert parabola_arch(width, height) == pytest.approx(numerical, rel=1e-8)


@pytest.mark.parametrize(("down", "out", "crests"), [(12.0, 96.0, 3.0), (30.0, 24.0, 0.5), (4.0, 200.0, 7.0)])
def test_wave_against_integration(down: float, out: float, crests: float) -> None:
    """SciPy quad along a cosine."""
    numerical = path_length(lambda x: x, lambda x: down / 2 * math.cos(2 * math.pi * crests * x / out), level, out)
    assert wave(out, down, crests) == pytest.approx(numerical, rel=1e-8)
    if crests == 0.5:
        assert s_fall(down, out) == pytest.approx(numerical, rel=1e-8)


@pytest.mark.parametrize(("turns", "diameter", "climb"), [(4.0, 5.0, 84.0), (0.75, 72.0, 108.0)])
def test_helix_against_integration(turns: float, diameter: float, climb: float) -> None:
    """SciPy quad along a helix; the spiral stair is the same curve by radius and angle."""
    angle, radius = 2 * math.pi * turns, diameter / 2
    numerical = path_length(
        lambda t: radius * math.cos(t), lambda t: radius * math.sin(t), lambda t: climb * t / angle, angle
    )
    assert post_wrap(turns, diameter, climb) == pytest.approx(numerical, rel=1e-8)
    assert spiral_stair(radius, angle, climb) == pytest.approx(numerical, rel=1e-8)


@pytest.mark.parametrize(
    ("turns", "girth", "climb", "length"),
    [(10, 4, 9, 41), (4, 4, 12, 20), (6, 8, 20, 52), (6, 20, 90, 150), (7, 20, 105, 175)],
)
def test_helix_against_published_puzzles(turns: int, girth: float, climb: float, length: float) -> None:
    """School contests with whole-number answers: ten turns on 4 in round, 9 in long take 41 in; TIMSS 1995: 20 cm."""
    assert post_wrap(turns, girth / math.pi, climb) == pytest.approx(length, rel=1e-14)


@pytest.mark.parametrize(("span", "sag"), [(240.0, 48.0), (120.0, 12.0), (72.0, 60.0), (96.0, 0.5)])
def test_swag_against_brentq_and_integration(span: float, sag: float) -> None:
    """SciPy brentq for the parameter, then quad along the hyperbolic cosine."""
    c = optimize.brentq(lambda k: k * (math.cosh(span / 2 / k) - 1) - sag, span / 200, span * 200, xtol=1e-12)
    numerical, _ = integrate.quad(lambda x: math.cosh(x / c), -span / 2, span / 2)
    assert catenary_swag(span, sag) == pytest.approx(numerical, rel=1e-8)
    assert catenary_arch(span, sag) == pytest.approx(numerical, rel=1e-8)


@pytest.mark.parametrize(
    ("span", "rise", "dip", "guess"),
    [(144.0, 36.0, 24.0, (48.0, 58.0)), (144.0, 90.0, 1.0, (48.0, 15.0)), (100.0, 10.0, 200.0, (15.0, 49.0))],
)
def test_uneven_swag_against_two_equations(span: float, rise: float, dip: float, guess: tuple[float, float]) -> None:
    """SciPy fsolve for parameter and lowest point together, from the two heights."""

    def misses(unknowns: tuple[float, float]) -> list[float]:
        c, low = unknowns
        return [c * (math.cosh(low / c) - 1) - dip, c * (math.cosh((span - low) / c) - 1) - dip - rise]

    (c, low), _, found, message = optimize.fsolve(misses, guess, xtol=1e-13, full_output=True)
    assert found == 1, message
    assert 0 < low < span
    length = c * (math.sinh(low / c) + math.sinh((span - low) / c))
    assert uneven_swag(span, rise, dip) == pytest.approx(length, rel=1e-9)


def test_swag_against_a_statics_course() -> None:
    """A statics course, cables 6.7 example 1: a 140 m line between level points 120 m apart sags 31.70 m."""
    assert catenary_sag(120.0, 140.0) == pytest.approx(31.70, abs=0.006)
    assert catenary_swag(120.0, 31.70) == pytest.approx(140.0, abs=0.006)


def test_swag_of_the_unit_catenary() -> None:
    """Hyperbolic tables (Abramowitz and Stegun 4.5): cosh 1 = 1.543080635, sinh 1 = 1.175201194."""
    assert catenary_swag(2.0, 0.543080634815) == pytest.approx(2 * 1.175201193644, rel=1e-12)


@pytest.mark.parametrize(("span", "length"), [(240.0, 264.0), (72.0, 74.0), (96.0, 400.0)])
def test_sag_against_brentq(span: float, length: float) -> None:
    """SciPy brentq on the catenary's two textbook equations."""
    c = optimize.brentq(lambda k: 2 * k * math.sinh(span / 2 / k) - length, span / 100, span * 100, xtol=1e-12)
    assert catenary_sag(span, length) == pytest.approx(c * (math.cosh(span / 2 / c) - 1), rel=1e-8)


def test_small_sag_against_the_engineers_series() -> None:
    """Engineering handbooks: length = span (1 + 8/3 u^2 - 32/5 u^4), u = sag/span, for flat parabolas."""
    u = 0.05
    assert parabola_arch(1.0, u) == pytest.approx(1 + 8 / 3 * u**2 - 32 / 5 * u**4, abs=1e-6)


@pytest.mark.parametrize(("length", "span"), [(264.0, 144.0), (250.0, 96.0), (500.0, 480.0)])
def test_arch_inverses_against_brentq(length: float, span: float) -> None:
    """SciPy brentq on SciPy's own ellipse: half an ellipse is 2a E(e^2) by its longer half-axis a."""

    def ellipse(width: float, height: float) -> float:
        longer, shorter = max(width / 2, height), min(width / 2, height)
        return float(2 * longer * special.ellipe(1 - (shorter / longer) ** 2))

    height = optimize.brentq(lambda h: ellipse(span, h) - length, 1e-9, length, xtol=1e-12)
    assert arch_height_for(length, span) == pytest.approx(height, rel=1e-9)
    width = optimize.brentq(lambda w: ellipse(w, height) - length, 1e-9, length, xtol=1e-12)
    assert arch_span_for(length, height) == pytest.approx(width, rel=1e-9)


@pytest.mark.parametrize(("width", "height"), [(120.0, 36.0), (60.0, 30.0), (60.0, 50.0)])
def test_circular_arc_against_a_circle_through_three_points(width: float, height: float) -> None:
    """The sagitta theorem (Euclid III.35): radius from chord and height, on both sides of half a circle."""
    radius = height / 2 + width**2 / (8 * height)
    angle = 2 * math.asin(width / 2 / radius)
    expected = radius * (angle if height <= width / 2 else 2 * math.pi - angle)
    assert circular_arc(width, height) == pytest.approx(expected, rel=1e-9)


def test_three_ways_to_a_half_circle() -> None:
    """Handbook: a half circle 20 ft wide is 31.4159 ft round."""
    for arch in (half_ellipse, circular_arc, round_top_arch):
        assert arch(20.0, 10.0) == pytest.approx(31.4159, abs=0.00005)


@pytest.mark.parametrize(("inches", "feet"), [(36, 9.42), (48, 12.57), (60, 15.71), (72, 18.85), (84, 21.99)])
def test_rings_against_a_circumference_table(inches: float, feet: float) -> None:
    """Engineers' table of circumferences of circles, to two decimals."""
    assert ring(inches) / 12 == pytest.approx(feet, abs=0.0051)


def test_a_stair_against_pythagoras() -> None:
    """Euclid I.47 on 8 and 15: a flight rising 96 in over a run of 180 in is 204 in along the rail."""
    assert stair(96.0, 180.0) == pytest.approx(204.0, rel=1e-15)


@pytest.mark.parametrize(("top", "cloth"), [(48.0, 108.0), (72.0, 132.0), (96.0, 156.0)])
def test_full_drop_against_linen_charts(top: float, cloth: float) -> None:
    """Full-drop cloths for 30 in high tables are 108, 132 and 156 in long (common practice, four linen charts)."""
    assert drape_to_floor(top, 2, 30.0) == pytest.approx(cloth)


def test_the_drape_of_a_thick_line_against_integration() -> None:
    """A polyline of 200 000 steps: along the top, a quarter turn of the axis about the edge, straight down."""
    axis, drop = 4.936, 12.0
    corner = [math.pi / 2 * k / 200_000 for k in range(200_001)]
    points = [(axis * math.sin(t), axis * math.cos(t)) for t in corner]
    length = 72.0 + sum(math.dist(p, q) for p, q in pairwise(points)) + drop
    assert drape_over_edge(72.0, 1, drop, axis) == pytest.approx(length, rel=1e-9)


def test_the_drape_along_the_floor_against_a_polyline() -> None:
    """The axis by coordinates: round the edge, down, round the foot, out along the floor; both ends alike."""
    axis, height, run, steps = 4.0, 30.0, 20.0, 20_000
    turn = [math.pi / 2 * k / steps for k in range(steps + 1)]
    edge = [(axis * math.sin(t), height + axis * math.cos(t)) for t in turn]
    foot = [(2 * axis - axis * math.cos(t), 2 * axis - axis * math.sin(t)) for t in turn]
    # The foot turns about (2 axis, 2 axis): from straight down at x = axis to level at y = axis.
    points = [(0.0, height + axis), *edge, *foot, (run, axis)]
    one_end = sum(math.dist(p, q) for p, q in pairwise(points))
    assert drape_along_floor(72.0, 2, height, run, axis) == pytest.approx(72.0 + 2 * one_end, rel=1e-8)
