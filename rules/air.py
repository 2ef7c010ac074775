"""Air and helium: the standard atmosphere, densities, and how a sealed balloon grows with height and heat.

Altitudes are geometric feet, temperatures kelvin, pressures pascals (absolute), densities kg/m3. Gases
are taken as ideal and the air as dry; that is within 0.1 % where people hold parties. Impossible input
raises ValueError with one plain sentence.
"""

import math

from rules.domain import require_positive, require_within

METRES_A_FOOT = 0.3048  # exact, NIST SP 811
# Defining constants of the U.S. Standard Atmosphere, 1976 (to 11 km the same as ISO 2533:1975).
SEA_LEVEL_KELVIN = 288.15
SEA_LEVEL_PASCALS = 101_325.0
LAPSE_KELVIN_A_METRE = 0.0065
STANDARD_GRAVITY = 9.80665
EARTH_RADIUS_METRES = 6_356_766.0
AIR_KG_A_MOLE = 0.0289644
ATMOSPHERE_GAS_CONSTANT = 8.31432
# Molar gas constant of the 2019 SI (exact) and the standard atomic weight of helium.
GAS_CONSTANT = 8.31446261815324
HELIUM_KG_A_MOLE = 0.004002602

LOWEST_FEET = -1_500.0
HIGHEST_FEET = 36_000.0


def kelvin(fahrenheit: float) -> float:
    """Return degrees Fahrenheit as kelvin; above absolute zero. Source: NIST SP 811, exact."""
    if not -459.67 < fahrenheit < math.inf:
        raise ValueError(f"No temperature lies below -459.67 degrees F; {fahrenheit:g} was given.")
    return (fahrenheit + 459.67) / 1.8


def geopotential_altitude(altitude_ft: float) -> float:
    """Return the geopotential altitude (m) of a geometric one (ft, -1,500 to 36,000).

    Source: U.S. Standard Atmosphere, 1976, equation 18.
    """
    require_within("altitude", altitude_ft, LOWEST_FEET, HIGHEST_FEET, "ft")
    metres = altitude_ft * METRES_A_FOOT
    return EARTH_RADIUS_METRES * metres / (EARTH_RADIUS_METRES + metres)


def standard_temperature(altitude_ft: float) -> float:
    """Return the standard atmosphere's temperature at an altitude, K. Source: U.S. Standard Atmosphere, 1976."""
    return SEA_LEVEL_KELVIN - LAPSE_KELVIN_A_METRE * geopotential_altitude(altitude_ft)


def standard_pressure(altitude_ft: float) -> float:
    """Return the standard atmosphere's pressure at an altitude, Pa. Source: U.S. Standard Atmosphere, 1976."""
    power = STANDARD_GRAVITY * AIR_KG_A_MOLE / (ATMOSPHERE_GAS_CONSTANT * LAPSE_KELVIN_A_METRE)
    return SEA_LEVEL_PASCALS * math.pow(standard_temperature(altitude_ft) / SEA_LEVEL_KELVIN, power)


def air_density(temperature: float, pressure: float) -> float:
    """Return the density of dry air, kg/m3. Source: ideal gas, constants of the U.S. Standard Atmosphere, 1976."""
    _require_state(temperature, pressure)
    return pressure * AIR_KG_A_MOLE / (ATMOSPHERE_GAS_CONSTANT * temperature)


def helium_density(temperature: float, pressure: float) -> float:
    """Return the density of pure helium, kg/m3. Source: ideal gas with the molar gas constant of the SI."""
    _require_state(temperature, pressure)
    return pressure * HELIUM_KG_A_MOLE / (GAS_CONSTANT * temperature)


def volume_growth(from_temperature: float, from_pressure: float, to_temperature: float, to_pressure: float) -> float:
    """Return the factor by which a sealed slack balloon's volume changes between two states. Source: ideal gas law."""
    _require_state(from_temperature, from_pressure)
    _require_state(to_temperature, to_pressure)
    return from_pressure / to_pressure * to_temperature / from_temperature


def diameter_growth(from_temperature: float, from_pressure: float, to_temperature: float, to_pressure: float) -> float:
    """Return the factor by which the diameter changes: the cube root of volume_growth."""
    return math.cbrt(volume_growth(from_temperature, from_pressure, to_temperature, to_pressure))


def _require_state(temperature: float, pressure: float) -> None:
    require_positive("temperature", temperature, "K")
    require_positive("pressure", pressure, "Pa")
