"""Wind against ASCE 7, the National Weather Service's scale, NASA's drag equation and statics."""

import pytest
from scipy import constants

from rules.wind import ballast_lb, beaufort, drag_lb, overturning_moment, velocity_pressure_psf

PSF = constants.lbf / constants.foot**2


@pytest.mark.parametrize(("mph", "psf"), [(10, 0.256), (15, 0.576), (20, 1.024), (25, 1.6), (30, 2.304), (100, 25.6)])
def test_velocity_pressure_against_asce_7(mph: float, psf: float) -> None:
    """ASCE 7: q = 0.00256 V^2 with exposure, topographic and directionality factors of 1."""
    assert velocity_pressure_psf(mph) == pytest.approx(psf, rel=1e-12)


def test_velocity_pressure_of_a_published_design_example() -> None:
    """An ASCE 7-05 example: 100 mph with Kz 0.90 and Kd 0.85 is 19.58 psf."""
    assert velocity_pressure_psf(100.0) * 0.90 * 0.85 == pytest.approx(19.58, abs=0.005)


def test_velocity_pressure_against_bernoulli_in_si() -> None:
    """Half density times speed squared, standard air of 1.225 kg/m3, SciPy's constants: within half a per cent."""
    bernoulli = 0.5 * 1.225 * (20 * constants.mph) ** 2 / PSF
    assert velocity_pressure_psf(20.0) == pytest.approx(bernoulli, rel=5e-3)


def test_drag_against_the_drag_equation_in_si() -> None:
    """NASA Glenn, drag equation; flat plate 1.28, an arch's front of 30 ft2 in 15 mph."""
    newtons = 0.5 * 1.225 * (15 * constants.mph) ** 2 * 1.28 * 30 * constants.foot**2
    assert drag_lb(30.0, 1.28, 15.0) == pytest.approx(newtons / constants.lbf, rel=5e-3)


# U.S. National Weather Service, Beaufort wind scale: force, lowest and highest whole mph.
BANDS = [
    (1, 1, 3),
    (2, 4, 7),
    (3, 8, 12),
    (4, 13, 18),
    (5, 19, 24),
    (6, 25, 31),
    (7, 32, 38),
    (8, 39, 46),
    (9, 47, 54),
    (10, 55, 63),
    (11, 64, 73),
]


@pytest.mark.parametrize(("force", "low", "high"), BANDS)
def test_beaufort_against_the_weather_service(force: int, low: float, high: float) -> None:
    """Both ends of every printed band."""
    assert beaufort(low)[0] == beaufort(high)[0] == force


def test_ends_of_the_beaufort_scale() -> None:
    """Below 1 mph is calm, 74 mph and above a hurricane (National Weather Service)."""
    assert beaufort(0.9) == (0, "calm")
    assert beaufort(74.0) == beaufort(95.0) == (12, "hurricane")


@pytest.mark.parametrize(("force", "metres_a_second"), [(3, 4.5), (5, 9.5), (7, 15.5), (10, 26.0)])
def test_beaufort_against_the_empirical_law(force: int, metres_a_second: float) -> None:
    """The World Meteorological Organization's v = 0.836 B^1.5 m/s falls into the band of its force."""
    assert 0.836 * force**1.5 == pytest.approx(metres_a_second, rel=0.04)
    assert beaufort(0.836 * force**1.5 / constants.mph)[0] == force


@pytest.mark.parametrize(("mph", "pounds"), [(10, 9), (15, 21), (20, 37), (25, 58)])
def test_ballast_by_balance_of_moments(mph: float, pounds: float) -> None:
    """By hand: a column 6 ft by 22 in on a 22 in base, push at 3 ft, weight 11 in from the tipping edge, Cd 1."""
    push = drag_lb(6 * 22 / 12, 1.0, mph)
    assert ballast_lb(overturning_moment(push, 3.0), 11 / 12) == pytest.approx(pounds, abs=0.7)
