"""Units as the engine holds them against pint reading the same file, and conversions by hand."""

import math

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules.units import UNITS_FILE, UnitError, convert, dimension, factor, from_base, read_unit, to_base

NAMES = [
    part.strip()
    for line in UNITS_FILE.read_text(encoding="utf-8").splitlines()
    if (text := line.partition("#")[0].strip())
    for place, part in enumerate(text.split("="))
    if place != 1 and part.strip() != "%"
]


@pytest.fixture(scope="module")
def own_registry() -> pint.UnitRegistry:
    return pint.UnitRegistry(str(UNITS_FILE))


@pytest.mark.parametrize("name", NAMES)
def test_pint_reads_the_same(name: str, own_registry: pint.UnitRegistry) -> None:
    by_pint = own_registry.Quantity(3.0, name).to_base_units().magnitude
    assert to_base(3.0, name) == pytest.approx(by_pint, rel=1e-12)


@pytest.mark.parametrize("unit", ["ft**3", "USD/hour", "count/ft", "lbf/ft**2", "in*in", "kg * m / s ** 2"])
def test_pint_reads_products_the_same(unit: str, own_registry: pint.UnitRegistry) -> None:
    assert factor(unit) == pytest.approx(own_registry.Quantity(1.0, unit).to_base_units().magnitude, rel=1e-12)


def test_every_name_but_money_and_a_few_is_plain_pint() -> None:
    """Figures carry these units, and others read them with pint's own registry (NIST SP 811 is its source)."""
    plain = pint.UnitRegistry()
    for unit in (
        "in",
        "ft",
        "yd",
        "m",
        "cm",
        "ft**3",
        "litre",
        "lb",
        "g",
        "hour",
        "min",
        "s",
        "mph",
        "lbf",
        "count",
        "percent",
    ):
        theirs = plain.Quantity(1.0, unit)
        assert convert(1.0, unit, unit) == theirs.magnitude
    for ours, to in (("ft", "m"), ("lb", "g"), ("litre", "ft**3"), ("mph", "m/s"), ("gal", "litre"), ("psi", "Pa")):
        assert convert(7.0, ours, to) == pytest.approx(plain.Quantity(7.0, ours).to(to).magnitude, rel=1e-9)


@pytest.mark.parametrize(
    ("value", "unit", "to", "expected"),
    [
        (6, "ft", "in", 72),
        (1.8, "m", "in", 70.86614173228347),
        (212, "degF", "degC", 100),
        (0, "degC", "kelvin", 273.15),
        (-40, "degC", "degF", -40),
        (1, "ft**3", "litre", 28.316846592),
        (10, "percent", "count", 0.1),
        (2, "dozen", "count", 24),
        (90, "min", "hour", 1.5),
        (1, "knot", "kph", 1.852),
        (30, "USD/hour", "USD/min", 0.5),
    ],
)
def test_convert(value: float, unit: str, to: str, expected: float) -> None:
    assert convert(value, unit, to) == pytest.approx(expected, rel=1e-12)


def test_whole_inches_stay_whole() -> None:
    assert to_base(6, "ft") == 72.0
    assert all(to_base(feet, "ft") == feet * 12 for feet in range(1, 2000))
    assert all(math.ceil(from_base(to_base(n, "cm"), "cm") - 1e-9) == n for n in range(1, 500))


def test_dimensions_in_words() -> None:
    assert dimension("ft") == "length"
    assert dimension("ft**3") == "length**3"
    assert dimension("percent") == dimension("count") == "count"
    assert dimension("USD/hour") == "currency_USD/time"
    assert dimension("USD") != dimension("EUR")


def test_an_unknown_unit_names_near_ones() -> None:
    with pytest.raises(UnitError, match=r"The unit 'inchs' is not known; the nearest are inches, inch"):
        read_unit("inchs")


def test_unlike_units_do_not_convert() -> None:
    with pytest.raises(UnitError, match=r"ft measures length and hour measures time; they do not convert\."):
        convert(1, "ft", "hour")


@pytest.mark.parametrize("text", ["", "ft +", "2 ft 3", "ft**", "*ft", "ft ft", "ft**0", "g * ft ^ 0"])
def test_what_is_no_unit_says_so(text: str) -> None:
    with pytest.raises(UnitError):
        read_unit(text)


@given(st.floats(-1e6, 1e6), st.sampled_from([("ft", "m"), ("degF", "degC"), ("lb", "kg"), ("ft**3", "litre")]))
def test_there_and_back(value: float, units: tuple[str, str]) -> None:
    assert convert(convert(value, *units), *reversed(units)) == pytest.approx(value, rel=1e-9, abs=1e-6)
