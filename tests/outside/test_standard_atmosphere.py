"""Air and helium against the published standard atmosphere and against CoolProp's equations of state."""

import math
from itertools import pairwise

import pytest
from CoolProp.CoolProp import PropsSI

from rules.air import (
    air_density,
    diameter_growth,
    helium_density,
    kelvin,
    standard_pressure,
    standard_temperature,
    volume_growth,
)

FEET_A_METRE = 1 / 0.3048

# U.S. Standard Atmosphere, 1976 (NOAA-S/T 76-1562), Table I, geometric altitude: m, K, bar, kg/m3,
# as reprinted in Mechanical Engineers' Handbook, volume 4, thermophysical properties of fluids, Table 6 (which
# rounds the 0.81935 of 4000 m once more, to 0.8194).
TABLE_1976 = [
    (0, 288.15, 1.0133, 1.2250),
    (1000, 281.65, 0.8988, 1.1117),
    (2000, 275.15, 0.7950, 1.0066),
    (3000, 268.66, 0.7012, 0.9093),
    (4000, 262.17, 0.6166, 0.8194),
    (5000, 255.68, 0.5405, 0.7364),
    (10000, 223.25, 0.2650, 0.4135),
]

# U.S. Standard Atmosphere in customary units: ft, degrees F, psi (a standard engineering data table).
TABLE_FEET = [(0, 59.0, 14.696), (5000, 41.17, 12.228), (10000, 23.36, 10.108), (15000, 5.55, 8.297)]

# Five states of parties: a cold marquee, a cool hall, a warm room at height, a hot day, a car in the sun.
STATES = [(273.15, 101_325.0), (293.15, 101_325.0), (298.15, 83_400.0), (311.15, 100_000.0), (333.15, 90_000.0)]


@pytest.mark.parametrize(("metres", "kelvins", "bar", "density"), TABLE_1976)
def test_the_1976_table_by_metres(metres: float, kelvins: float, bar: float, density: float) -> None:
    """Every printed digit of the table agrees."""
    feet = metres * FEET_A_METRE
    temperature, pressure = standard_temperature(feet), standard_pressure(feet)
    assert temperature == pytest.approx(kelvins, abs=0.0051)
    assert pressure / 1e5 == pytest.approx(bar, abs=0.000051)
    assert air_density(temperature, pressure) == pytest.approx(density, abs=0.000055)


@pytest.mark.parametrize(("feet", "fahrenheit", "psi"), TABLE_FEET)
def test_the_1976_table_by_feet(feet: float, fahrenheit: float, psi: float) -> None:
    """The same atmosphere in feet, degrees Fahrenheit and psi (1 psi = 6894.757 Pa, NIST SP 811)."""
    assert standard_temperature(feet) == pytest.approx(kelvin(fahrenheit), abs=0.01)
    assert standard_pressure(feet) / 6894.757 == pytest.approx(psi, abs=0.0011)


@pytest.mark.parametrize(("temperature", "pressure"), STATES)
def test_air_density_against_coolprop(temperature: float, pressure: float) -> None:
    """CoolProp's reference equation of state for dry air."""
    assert air_density(temperature, pressure) == pytest.approx(
        PropsSI("D", "T", temperature, "P", pressure, "Air"), rel=1e-3
    )


@pytest.mark.parametrize(("temperature", "pressure"), STATES)
def test_helium_density_against_coolprop(temperature: float, pressure: float) -> None:
    """CoolProp's reference equation of state for helium."""
    assert helium_density(temperature, pressure) == pytest.approx(
        PropsSI("D", "T", temperature, "P", pressure, "Helium"), rel=1e-3
    )


def test_gas_densities_of_a_thermodynamics_textbook() -> None:
    """Sonntag, Borgnakke, Van Wylen, Fundamentals of Thermodynamics, 5th edition, at 25 degrees C and 100 kPa."""
    assert air_density(298.15, 100_000.0) == pytest.approx(1.169, abs=0.0006)
    assert helium_density(298.15, 100_000.0) == pytest.approx(0.1615, abs=0.0001)


@pytest.mark.parametrize(
    ("celsius", "density"), [(35, 1.1455), (25, 1.1839), (20, 1.2041), (15, 1.2250), (0, 1.2922), (-10, 1.3413)]
)
def test_air_against_temperature(celsius: float, density: float) -> None:
    """The printed table of dry air at one atmosphere (encyclopedia, density of air)."""
    assert air_density(celsius + 273.15, 101_325.0) == pytest.approx(density, abs=0.00011)


@pytest.mark.parametrize(("start", "end"), list(pairwise(STATES)))
def test_growth_of_a_sealed_balloon_against_coolprop(start: tuple[float, float], end: tuple[float, float]) -> None:
    """The same mass of helium: CoolProp's density before over its density after is the growth in volume."""
    before, after = (PropsSI("D", "T", state[0], "P", state[1], "Helium") for state in (start, end))
    assert volume_growth(*start, *end) == pytest.approx(before / after, rel=2e-4)
    assert diameter_growth(*start, *end) == pytest.approx(math.cbrt(before / after), rel=1e-4)


@pytest.mark.parametrize(
    ("fahrenheit", "kelvins"), [(32.0, 273.15), (212.0, 373.15), (-459.6699, 5.6e-5), (68.0, 293.15)]
)
def test_fixed_points_of_the_fahrenheit_scale(fahrenheit: float, kelvins: float) -> None:
    """NIST SP 811, appendix B.9: T/K = (t/F + 459.67)/1.8."""
    assert kelvin(fahrenheit) == pytest.approx(kelvins, abs=1e-6)
