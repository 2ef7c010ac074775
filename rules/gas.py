"""Helium: what it lifts, what a balloon holds, how it leans in wind, how many cylinders it takes.

Volumes are cubic feet, diameters inches, masses and lifts grams, temperatures degrees Fahrenheit,
altitudes geometric feet, wind mph, angles radians. Impossible input raises ValueError with one plain
sentence.
"""

import math

from rules.air import METRES_A_FOOT, air_density, helium_density, kelvin, standard_pressure
from rules.domain import require_not_negative, require_positive, require_within
from rules.inflation import sphere_diameter, sphere_volume
from rules.wind import drag_lb

CUBIC_INCHES_A_CUBIC_FOOT = 1728.0
LITRES_A_CUBIC_FOOT = 1000.0 * METRES_A_FOOT**3
GRAMS_A_POUND = 453.59237
# A balloon stays below the speed at which a sphere's drag drops (Reynolds number 4e4 to 2.5e5).
SPHERE_DRAG = 0.47
# First and second lemniscate constants: flat radius and half thickness of the inflated disc, as parts of its radius.
LEMNISCATE_A = 1.3110287771460599
LEMNISCATE_B = 0.5990701173677961


def lift_a_cubic_foot(purity: float, temperature_f: float, altitude_ft: float) -> float:
    """Return the lift of a cubic foot of balloon gas, g.

    purity: share of helium, 0 to 1, the rest taken as air. Source: Archimedes, densities of rules.air.
    """
    require_within("purity of the helium", purity, 0.0, 1.0)
    state = kelvin(temperature_f), standard_pressure(altitude_ft)
    # kg/m3 is g/L.
    return purity * (air_density(*state) - helium_density(*state)) * LITRES_A_CUBIC_FOOT


def gross_lift(volume_ft3: float, purity: float, temperature_f: float, altitude_ft: float) -> float:
    """Return the lift of a volume of balloon gas before the balloon's own mass, g; volume 0 or more."""
    require_not_negative("volume", volume_ft3, "ft3")
    return volume_ft3 * lift_a_cubic_foot(purity, temperature_f, altitude_ft)


def net_lift(volume_ft3: float, purity: float, temperature_f: float, altitude_ft: float, mass_g: float) -> float:
    """Return the lift left when the balloon carries itself, g, below 0 where it sinks; mass_g: of skin and ribbon."""
    require_not_negative("mass of the balloon", mass_g, "g")
    return gross_lift(volume_ft3, purity, temperature_f, altitude_ft) - mass_g


def floating_diameter(mass_g: float, purity: float, temperature_f: float, altitude_ft: float) -> float:
    """Return the diameter of the sphere that just floats with that mass, in; purity above 0.

    Source: inverse of net_lift.
    """
    require_not_negative("mass of the balloon", mass_g, "g")
    require_positive("purity of the helium", purity, "")
    volume_ft3 = mass_g / lift_a_cubic_foot(purity, temperature_f, altitude_ft)
    return sphere_diameter(volume_ft3 * CUBIC_INCHES_A_CUBIC_FOOT)


def balloon_gas(d: float) -> float:
    """Return the gas in a round balloon of inflated diameter d, ft3.

    Source: sphere. The trade's chart (common practice, no published source) says 24 % more for an 11 in
    balloon, a gas supplier's table no more than 4 %.
    """
    return sphere_volume(d) / CUBIC_INCHES_A_CUBIC_FOOT


def foil_diameter(flat_diameter: float) -> float:
    """Return the inflated diameter of a round foil balloon, in; flat_diameter: of the empty disc, above 0.

    Source: Paulsen 1994, "What is the shape of a mylar balloon?", American Mathematical Monthly 101.
    """
    require_positive("flat diameter", flat_diameter)
    return flat_diameter / LEMNISCATE_A


def foil_thickness(flat_diameter: float) -> float:
    """Return the thickness through the middle of an inflated round foil balloon, in. Source: as foil_diameter."""
    return foil_diameter(flat_diameter) * LEMNISCATE_B


def foil_volume(flat_diameter: float) -> float:
    """Return the gas in a round foil balloon, ft3: 2/3 pi times flat radius times inflated radius squared.

    Source: as foil_diameter.
    """
    inflated_radius = foil_diameter(flat_diameter) / 2.0
    return 2.0 / 3.0 * math.pi * flat_diameter / 2.0 * inflated_radius**2 / CUBIC_INCHES_A_CUBIC_FOOT


def lean_angle(net_lift_g: float, d: float, wind_mph: float) -> float:
    """Return how far a tethered balloon leans from upright in a steady wind, radians, 0 to pi/2.

    net_lift_g above 0. Source: derived, push of the wind on a sphere against net lift; the string is left out.
    """
    require_positive("net lift", net_lift_g, "g")
    require_positive("balloon diameter", d)
    front_ft2 = math.pi / 4.0 * (d / 12.0) ** 2
    return math.atan2(drag_lb(front_ft2, SPHERE_DRAG, wind_mph) * GRAMS_A_POUND, net_lift_g)


def float_hours(known_hours: float, known_d: float, d: float) -> float:
    """Return the hours a balloon floats, from what another size of the same make does; all above 0.

    Source: derived, gas is lost through the surface and held in the volume, so time goes with diameter. A
    rule of proportion, not a measurement: thickness of skin and share of lift to spare are left out.
    """
    require_positive("known floating time", known_hours, "h")
    require_positive("known balloon diameter", known_d)
    require_positive("balloon diameter", d)
    return known_hours * d / known_d


def cylinders_needed(gas_ft3: float, contents_ft3: float, usable: float) -> int:
    """Return the whole cylinders for a volume of gas; usable: share that can be got out, above 0 to 1.

    Source: arithmetic. A shortfall below a billionth of a cylinder is rounding and buys no further one.
    """
    require_not_negative("gas needed", gas_ft3, "ft3")
    require_positive("contents of a cylinder", contents_ft3, "ft3")
    require_positive("usable share", usable, "")
    require_within("usable share", usable, 0.0, 1.0)
    return math.ceil(gas_ft3 / (contents_ft3 * usable) - 1e-9)
