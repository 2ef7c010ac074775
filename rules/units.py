"""Units by pint, from units.txt: exact factors, asked of pint once and then used as plain numbers.

Importing pint takes longer than working out an estimate, so what it says of a unit may be lent from an earlier run
(rules/warm.py); pint is then not imported at all unless an unusual unit turns up.
"""

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rules.nearest import offer
from rules.packed import Packed
from rules.record import record

if TYPE_CHECKING:
    import pint

UNITS_FILE = Path(__file__).with_name("units.txt")

_NAME = r"[A-Za-z_%]\w*"
_FACTOR = rf"{_NAME}(?:\s*(?:\*\*|\^)\s*[1-9])?"
_PRODUCT = re.compile(rf"\s*{_FACTOR}(?:\s*[*/]\s*{_FACTOR}){{0,5}}\s*")


class UnitError(ValueError):
    """An unknown unit, or two units that measure different things; the message is one plain sentence."""


@record
class Unit(Packed):
    """How a unit stands to the base units: base value = value * factor + offset."""

    factor: Fraction
    offset: Fraction
    powers: tuple[tuple[str, int], ...]  # dimension name -> exponent, sorted by name

    @property
    def dimension(self) -> str:
        """The dimension as text: "length", "length**3", "currency_USD/time"; "count" for a plain number."""
        over = [_power(name, n) for name, n in self.powers if n > 0]
        under = [_power(name, -n) for name, n in self.powers if n < 0]
        return "/".join([" * ".join(over) or "count", *under])


def _power(name: str, n: int) -> str:
    return name if n == 1 else f"{name}**{n}"


_read: dict[str, Unit] = {}  # by text, as far as it was asked for or lent


@cache
def _registry() -> "pint.UnitRegistry[Any]":
    import pint

    return pint.UnitRegistry(str(UNITS_FILE), non_int_type=Fraction)


@cache
def _names() -> tuple[str, ...]:
    """Every name, symbol and alias of units.txt; not the differences that pint adds to degrees by itself."""
    return tuple(name for name in _registry() if not name.startswith(("delta_", "Δ")))


def read_unit(text: str) -> Unit:
    """The unit that `text` names: a name of units.txt, or a product such as "ft**3" or "USD/hour".

    Raises UnitError, naming the nearest units, when a name is not known.
    """
    unit = _read.get(text)
    if unit is None:
        unit = _read[text] = _ask_pint(text)
    return unit


def _ask_pint(text: str) -> Unit:
    names = _names()
    if not re.search(r"[*/^]", text) and text not in names:
        raise UnitError(f"The unit {text!r} is not known; {offer(text, names)}.")
    if not _PRODUCT.fullmatch(text):
        raise UnitError(f"The unit {text!r} cannot be read.")
    for name in re.findall(_NAME, text):
        if name not in names:  # pint itself would take a plural for its singular, known or not
            raise UnitError(f"The unit {name!r} is not known; {offer(name, names)}.")
    import pint

    try:
        # Zero and one of it in base units: a temperature's zero lies elsewhere.
        zero, one = (_registry().Quantity(Fraction(n), text).to_base_units() for n in (0, 1))
        measures = one.dimensionality
        float(one.magnitude)  # what is too large for a float is no unit to reckon in
    except (pint.PintError, ValueError, TypeError, KeyError, ArithmeticError):
        raise UnitError(f"The unit {text!r} cannot be read.") from None
    powers = ((str(name).strip("[]"), int(str(n))) for name, n in measures.items())
    return Unit(Fraction(one.magnitude - zero.magnitude), Fraction(zero.magnitude), tuple(sorted(powers)))


def every_unit() -> dict[str, Unit]:
    """Each name of units.txt, and each product that was asked for so far, for `lend_units` in another process."""
    return {name: read_unit(name) for name in (*_names(), *_read)}


def lend_units(units: Mapping[str, Unit]) -> None:
    """Take units that `every_unit` gave in place of asking pint."""
    _read.update(units)


@cache
def dimension(unit: str) -> str:
    """The dimension of `unit` as text ("length", "length**3", "count"); UnitError when it is not known."""
    return read_unit(unit).dimension


@cache
def factor(unit: str) -> float:
    """How many base units (inch, gram, hour, kelvin, count, or one of the currency) make one `unit`."""
    return float(read_unit(unit).factor)


@cache
def _offset(unit: str) -> float:
    return float(read_unit(unit).offset)


def to_base(value: float, unit: str) -> float:
    """`value`, in `unit`, in base units; degrees Fahrenheit and Celsius become kelvin."""
    return value * factor(unit) + _offset(unit)


def from_base(value: float, unit: str) -> float:
    """`value`, in base units, in `unit`."""
    return (value - _offset(unit)) / factor(unit)


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """`value`, in `from_unit`, in `to_unit`; UnitError when they measure different things."""
    if from_unit == to_unit:
        return value
    start, end = read_unit(from_unit), read_unit(to_unit)
    if start.powers != end.powers:
        raise UnitError(
            f"{from_unit} measures {start.dimension} and {to_unit} measures {end.dimension}; they do not convert."
        )
    if start.offset == end.offset:
        return value * float(start.factor / end.factor)
    return from_base(to_base(value, from_unit), to_unit)
