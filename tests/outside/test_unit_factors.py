"""Factors of units against NIST SP 811, SciPy's constants and pint's own registry."""

import math

import pint
import pytest
from scipy import constants

from rules.air import METRES_A_FOOT
from rules.gas import GRAMS_A_POUND, LITRES_A_CUBIC_FOOT
from rules.inflation import CUBIC_INCHES_A_LITRE
from rules.units import convert

# NIST SP 811 (2008), appendix B.8, to the seven digits printed there: from, to, factor.
SP_811 = [
    ("in", "m", 2.54e-2),
    ("ft", "m", 3.048e-1),
    ("yd", "m", 9.144e-1),
    ("mi", "m", 1.609344e3),
    ("ft**2", "m**2", 9.290304e-2),
    ("in**3", "m**3", 1.638706e-5),
    ("ft**3", "m**3", 2.831685e-2),
    ("yd**3", "m**3", 7.645549e-1),
    ("gallon", "m**3", 3.785412e-3),
    ("litre", "m**3", 1.0e-3),
    ("lb", "kg", 4.535924e-1),
    ("oz", "kg", 2.834952e-2),
    ("lbf", "N", 4.448222),
    ("psf", "Pa", 4.788026e1),
    ("psi", "Pa", 6.894757e3),
    ("inHg", "Pa", 3.386389e3),
    ("mmHg", "Pa", 1.333224e2),
    ("mph", "m/s", 4.4704e-1),
    ("knot", "m/s", 5.144444e-1),
    ("kph", "m/s", 2.777778e-1),
]

# The same quantities by SciPy (CODATA and exact definitions).
SCIPY = [
    ("in", "m", constants.inch),
    ("ft", "m", constants.foot),
    ("yd", "m", constants.yard),
    ("mi", "m", constants.mile),
    ("gallon", "m**3", constants.gallon),
    ("litre", "m**3", constants.liter),
    ("lb", "kg", constants.pound),
    ("oz", "kg", constants.ounce),
    ("lbf", "N", constants.lbf),
    ("psi", "Pa", constants.psi),
    ("mph", "m/s", constants.mph),
    ("knot", "m/s", constants.knot),
    ("day", "s", constants.day),
    ("week", "s", constants.week),
]


@pytest.mark.parametrize(("start", "end", "factor"), SP_811)
def test_units_against_sp_811(start: str, end: str, factor: float) -> None:
    """Every digit that NIST SP 811 prints: half a step of its seventh figure is 3e-7 at most here."""
    assert convert(1.0, start, end) == pytest.approx(factor, rel=3.1e-7)


@pytest.mark.parametrize(("start", "end", "factor"), SCIPY)
def test_units_against_scipy(start: str, end: str, factor: float) -> None:
    """To the last digits of a float."""
    assert convert(1.0, start, end) == pytest.approx(factor, rel=1e-14)


@pytest.mark.parametrize(("start", "end"), [(start, end) for start, end, _ in SP_811 if "Hg" not in start])
def test_units_against_pint(start: str, end: str) -> None:
    """Pint's default registry, which every unit of a figure must be readable by."""
    registry = pint.UnitRegistry()
    theirs = registry.Quantity(3.7, "force_pound / foot**2" if start == "psf" else start).to(end).magnitude
    assert convert(3.7, start, end) == pytest.approx(theirs, rel=1e-12)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0), (98.6, 37.0)])
def test_temperatures_against_sp_811(fahrenheit: float, celsius: float) -> None:
    """NIST SP 811, appendix B.9: offset scales, both ways."""
    assert convert(fahrenheit, "degF", "degC") == pytest.approx(celsius, abs=1e-9)
    assert convert(celsius, "degC", "degF") == pytest.approx(fahrenheit, abs=1e-9)
    assert convert(celsius, "degC", "kelvin") == pytest.approx(celsius + 273.15, abs=1e-9)


def test_factors_of_the_mathematics_modules() -> None:
    """The few that stand in the modules themselves, against SciPy's constants and NIST SP 811."""
    assert math.isclose(METRES_A_FOOT, constants.foot, rel_tol=1e-15)
    assert math.isclose(LITRES_A_CUBIC_FOOT, constants.foot**3 / constants.liter, rel_tol=1e-14)
    assert math.isclose(LITRES_A_CUBIC_FOOT, 28.31685, rel_tol=2e-7)
    assert math.isclose(CUBIC_INCHES_A_LITRE, constants.liter / constants.inch**3, rel_tol=1e-14)
    assert math.isclose(GRAMS_A_POUND, constants.pound / constants.gram, rel_tol=1e-14)
