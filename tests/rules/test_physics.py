"""Air, gas, wind, pump and boxes: how they move, that inverses undo, and what is refused."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules import air, gas, inflation, packing, wind

diameters = st.floats(1.0, 60.0)
altitudes = st.floats(-1_500.0, 36_000.0)


@given(low=altitudes, high=altitudes)
def test_air_thins_and_cools_with_height(low: float, high: float) -> None:
    """Temperature, pressure and density all fall."""
    low, high = sorted((low, high))
    assert air.standard_temperature(high) <= air.standard_temperature(low)
    assert air.standard_pressure(high) <= air.standard_pressure(low)
    densities = [air.air_density(air.standard_temperature(ft), air.standard_pressure(ft)) for ft in (low, high)]
    assert densities[1] <= densities[0]


@given(t1=st.floats(250.0, 340.0), t2=st.floats(250.0, 340.0), p1=st.floats(6e4, 1.1e5), p2=st.floats(6e4, 1.1e5))
def test_growth_there_and_back_is_none(t1: float, t2: float, p1: float, p2: float) -> None:
    """Volume and diameter come back to where they were."""
    assert air.volume_growth(t1, p1, t2, p2) * air.volume_growth(t2, p2, t1, p1) == pytest.approx(1.0)
    assert air.diameter_growth(t1, p1, t2, p2) ** 3 == pytest.approx(air.volume_growth(t1, p1, t2, p2))


def test_a_drive_up_a_mile_and_a_night_outdoors() -> None:
    """21.5 % more volume at 5,280 ft at the same warmth; 2.6 % off the diameter from 72 to 32 degrees F."""
    sea, mile = air.standard_pressure(0.0), air.standard_pressure(5_280.0)
    assert air.volume_growth(293.15, sea, 293.15, mile) == pytest.approx(1.215, abs=0.001)
    assert air.diameter_growth(air.kelvin(72.0), sea, air.kelvin(32.0), sea) == pytest.approx(0.974, abs=0.001)


@given(d=diameters, purity=st.floats(0.1, 1.0), fahrenheit=st.floats(20.0, 110.0), feet=st.floats(0.0, 12_000.0))
def test_lift_follows_purity_and_floating_size_undoes_it(
    d: float, purity: float, fahrenheit: float, feet: float
) -> None:
    """Linear in purity; the sphere that just carries a lift is the sphere that has it."""
    lift = gas.gross_lift(gas.balloon_gas(d), purity, fahrenheit, feet)
    assert lift == pytest.approx(purity * gas.gross_lift(gas.balloon_gas(d), 1.0, fahrenheit, feet))
    assert gas.floating_diameter(lift, purity, fahrenheit, feet) == pytest.approx(d)
    assert gas.net_lift(gas.balloon_gas(d), purity, fahrenheit, feet, lift) == pytest.approx(0.0, abs=1e-9)


def test_lift_at_a_party() -> None:
    """29.39 g a cubic foot at 20 degrees C; an 18 in foil holds 0.514 ft3."""
    assert gas.gross_lift(1.0, 1.0, 68.0, 0.0) == pytest.approx(29.39, abs=0.01)
    assert gas.foil_volume(18.0) == pytest.approx(0.5141, abs=0.0001)
    assert gas.foil_diameter(18.0) == pytest.approx(13.73, abs=0.005)


@given(lift=st.floats(0.1, 500.0), d=diameters, mph=st.floats(0.0, 40.0))
def test_leaning_grows_with_wind_and_stays_below_level(lift: float, d: float, mph: float) -> None:
    """Upright in still air, never flat."""
    assert gas.lean_angle(lift, d, 0.0) == 0.0
    assert 0.0 <= gas.lean_angle(lift, d, mph) <= gas.lean_angle(lift, d, mph + 1.0) < math.pi / 2


def test_an_eleven_inch_balloon_in_a_breeze() -> None:
    """45 degrees at 5 mph, 76 at 10."""
    assert math.degrees(gas.lean_angle(9.0, 11.0, 5.0)) == pytest.approx(45, abs=1)
    assert math.degrees(gas.lean_angle(9.0, 11.0, 10.0)) == pytest.approx(76, abs=1)


def test_bigger_balloons_float_longer() -> None:
    """In proportion to diameter."""
    assert gas.float_hours(12.0, 11.0, 22.0) == 24.0


@given(contents=st.floats(5.0, 300.0), usable=st.floats(0.5, 1.0), cylinders=st.integers(0, 50))
def test_cylinders_hold_exactly_what_they_hold(contents: float, usable: float, cylinders: int) -> None:
    """A whole number of cylinders' gas needs that number; a little more needs one more."""
    held = cylinders * contents * usable
    assert gas.cylinders_needed(held, contents, usable) == cylinders
    assert gas.cylinders_needed(held + 0.01 * contents, contents, usable) == cylinders + 1


@given(strokes=st.floats(0.5, 60.0), litres=st.floats(0.1, 1.0), efficiency=st.floats(0.5, 1.0))
def test_pump_inverses(strokes: float, litres: float, efficiency: float) -> None:
    """Strokes come back from the size, litres from both; eight times the strokes are twice the size."""
    d = inflation.stroke_diameter(strokes, litres, efficiency)
    assert inflation.strokes_for(d, litres, efficiency) == pytest.approx(strokes)
    assert inflation.stroke_litres(strokes, d) == pytest.approx(litres * efficiency)
    assert inflation.strokes_for(d, litres) == pytest.approx(strokes * efficiency)
    assert inflation.stroke_diameter(8 * strokes, litres, efficiency) == pytest.approx(2 * d)


@given(mph=st.floats(0.0, 200.0), more=st.floats(0.0, 50.0))
def test_wind_never_weakens_as_it_grows(mph: float, more: float) -> None:
    """Pressure goes with the square, force on the scale never falls."""
    assert wind.velocity_pressure_psf(2 * mph) == pytest.approx(4 * wind.velocity_pressure_psf(mph))
    assert wind.beaufort(mph)[0] <= wind.beaufort(mph + more)[0] <= 12


def test_ballast_with_a_factor() -> None:
    """Moment over lever, times the factor."""
    assert wind.ballast_lb(wind.overturning_moment(4.0, 3.0), 2.0, 1.5) == 9.0


@given(count=st.floats(0.0, 5000.0), d=diameters, fill=st.floats(0.4, 0.74))
def test_nets_undo_boxes(count: float, d: float, fill: float) -> None:
    """The room for a number holds that number; walls only ever take room away."""
    assert packing.spheres_in_net(packing.box_for_spheres(count, d, fill), d, fill) == pytest.approx(count)
    side = 10 * d
    assert packing.spheres_in_box(side, side, side, d, fill) < packing.spheres_in_net(side**3, d, fill)


def test_boxes_and_nets_of_the_trade() -> None:
    """182 of 4.28 in fit a 24 in box; 500 of 9 in need a net of 172.6 ft3."""
    assert math.floor(packing.spheres_in_box(24.0, 24.0, 24.0, 4.28)) == 182
    assert packing.net_volume(500, 9.0) / 1728 == pytest.approx(172.6, abs=0.05)
    assert packing.box_for_spheres(500, 9.0) / 1728 == pytest.approx(184.1, abs=0.05)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: air.kelvin(-460.0), "No temperature lies below -459.67"),
        (lambda: air.standard_pressure(36_001.0), "altitude must lie between -1500 and 36000 ft"),
        (lambda: air.standard_pressure(-1_501.0), "altitude must lie between"),
        (lambda: air.air_density(0.0, 101_325.0), "temperature must be more than 0 K"),
        (lambda: gas.gross_lift(1.0, 1.01, 68.0, 0.0), "purity of the helium must lie between 0 and 1"),
        (lambda: gas.floating_diameter(3.0, 0.0, 68.0, 0.0), "purity of the helium must be more than 0"),
        (lambda: gas.lean_angle(0.0, 11.0, 5.0), "net lift must be more than 0 g"),
        (lambda: gas.cylinders_needed(10.0, 0.0, 0.9), "contents of a cylinder"),
        (lambda: gas.cylinders_needed(10.0, 50.0, 1.01), "usable share must lie between 0 and 1"),
        (lambda: inflation.stroke_diameter(2, 0.0), "air for a stroke must be more than 0 L"),
        (lambda: inflation.stroke_diameter(2, 0.3, 1.01), "pump efficiency must lie between 0 and 1"),
        (lambda: inflation.stroke_litres(0, 4.0), "number of strokes must be more than 0"),
        (lambda: wind.ballast_lb(10.0, 1.0, 0.5), "safety factor must be at least 1"),
        (lambda: wind.drag_lb(10.0, 0.0, 5.0), "drag coefficient must be more than 0"),
        (lambda: wind.beaufort(math.nan), "wind speed cannot be below 0 mph"),
        (lambda: packing.wall_correction(9.0, 4.0), "at least 10 in"),
        (lambda: packing.box_for_spheres(10, 4.0, 0.9), "fill must lie between"),
    ],
)
def test_refusals_are_one_plain_sentence(call: Callable[[], float], words: str) -> None:
    """What was wrong and what was given, ending in a full stop."""
    with pytest.raises(ValueError, match=r"^[A-Z][^\n]*\.$") as caught:
        call()
    assert words in str(caught.value)
