"""Units without waiting for pint: reads units.txt (pint's own notation) and converts exactly.

Pint reads the same file when a book is checked (rules/dimensions.py) and a test holds the two readers to the same
answers; here it is left out because importing it takes longer than working out an estimate.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

from rules.nearest import offer

UNITS_FILE = Path(__file__).with_name("units.txt")

_PART = re.compile(r"\s*(?:(?P<number>\d+(?:\.\d+)?)|(?P<name>[A-Za-z_%]\w*))\s*(?:(?:\*\*|\^)\s*(?P<power>\d+))?\s*")


class UnitError(ValueError):
    """An unknown unit, or two units that measure different things; the message is one plain sentence."""


@dataclass(frozen=True, slots=True)
class Unit:
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


@cache
def _definitions() -> dict[str, str]:
    """Every name, symbol and alias in units.txt -> the right-hand side of its definition."""
    found: dict[str, str] = {}
    for line in UNITS_FILE.read_text(encoding="utf-8").splitlines():
        text = line.partition("#")[0].strip()
        if text:
            name, meaning, *others = (part.strip() for part in text.split("="))
            found.update(dict.fromkeys([name, *others], meaning))
    return found


@cache
def read_unit(text: str) -> Unit:
    """The unit that `text` names: a name of units.txt, or a product such as "ft**3" or "USD/hour".

    Raises UnitError, naming the nearest units, when a name is not known.
    """
    names = _definitions()
    if text in names:
        meaning, _, offset = names[text].partition("; offset:")
        if meaning.startswith("["):
            inside = meaning[1:-1]
            return Unit(Fraction(1), Fraction(0), ((inside, 1),) if inside else ())
        unit = _product(meaning, text)
        return Unit(unit.factor, Fraction(offset.strip() or 0), unit.powers)
    if not re.search(r"[*/^]", text):
        raise UnitError(f"The unit {text!r} is not known; {offer(text, names)}.")
    return _product(text, text)


def _product(meaning: str, whole: str) -> Unit:
    factor, powers, at, sign = Fraction(1), dict[str, int](), 0, 1
    while True:
        part = _PART.match(meaning, at)
        if part is None:
            raise UnitError(f"The unit {whole!r} cannot be read.")
        power = sign * int(part["power"] or 1)
        if part["number"]:
            factor *= Fraction(part["number"]) ** power
        else:
            unit = read_unit(part["name"])
            factor *= unit.factor**power
            for name, n in unit.powers:
                powers[name] = powers.get(name, 0) + n * power
        at = part.end()
        if at == len(meaning):
            return Unit(factor, Fraction(0), tuple(sorted((name, n) for name, n in powers.items() if n)))
        if meaning[at] not in "*/":
            raise UnitError(f"The unit {whole!r} cannot be read.")
        sign = 1 if meaning[at] == "*" else -1
        at += 1


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
