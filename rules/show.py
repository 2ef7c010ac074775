"""Values as people read them: "14 ft", "3.6 in", "2,016", "10 %", "$120"."""

from typing import Any

from rules.blocks import Fact
from rules.units import convert, dimension, from_base

MONEY_SIGNS = {"USD": "$", "EUR": "€", "GBP": "£", "CAD": "CA$", "AUD": "A$", "NZD": "NZ$", "JPY": "¥", "INR": "₹"}
# How a unit is written after a number where its pint name would read oddly: one, several.
UNIT_WORDS = {
    "count": ("", ""),
    "percent": ("%", "%"),
    "hour": ("hour", "hours"),
    "day": ("day", "days"),
    "week": ("week", "weeks"),
    "min": ("min", "min"),
    "litre": ("L", "L"),
    "degree": ("degree", "degrees"),
    "ft**3": ("cu ft", "cu ft"),
    "m**3": ("m³", "m³"),
    "ft**2": ("sq ft", "sq ft"),
    "m**2": ("m²", "m²"),
    "degF": ("°F", "°F"),
    "degC": ("°C", "°C"),
    "kph": ("km/h", "km/h"),
    "mi": ("mile", "miles"),
    "count/ft": ("a foot", "a foot"),
    "count/ft**2": ("a square foot", "a square foot"),
    "count/m**2": ("a square metre", "a square metre"),
    "g/ft**3": ("g a cu ft", "g a cu ft"),
    "lbf": ("lb", "lb"),
    "lbf/ft**2": ("lb a sq ft", "lb a sq ft"),
    "count/m": ("a metre", "a metre"),
    "count/hour": ("an hour", "an hour"),
}
# How what money is paid for is written after it.
PER = {
    "hour": "an hour",
    "ft": "a foot",
    "ft**3": "a cu ft",
    "m": "a metre",
    "mi": "a mile",
    "km": "a km",
    "count": "each",
}
# The unit that a metric speaker reads instead.
METRIC = {
    "in": "cm",
    "ft": "m",
    "mi": "km",
    "ft**2": "m**2",
    "ft**3": "m**3",
    "lb": "kg",
    "oz": "g",
    "degF": "degC",
    "mph": "kph",
    "count/ft": "count/m",
    "count/ft**2": "count/m**2",
}


def shown_unit(unit: str, metric: bool) -> str:
    """The unit to show a value in that is kept in `unit`."""
    return METRIC.get(unit, unit) if metric else unit


def number(value: float, digits: int | None = None) -> str:
    """A number without needless places: 2,016, 13.5, 3.6, 0.64; `digits` sets the places after the point."""
    size = abs(value)
    places = digits if digits is not None else 0 if size >= 100 else 1 if size >= 3 else 2
    text = f"{value:,.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def quantity(value: float, unit: str, digits: int | None = None) -> str:
    """A number in `unit` with its unit, as people write it."""
    money, _, per = unit.partition("/")
    if dimension(money).startswith("currency_"):
        whole = value == int(value) or abs(value) >= 100
        amount = MONEY_SIGNS.get(money, f"{money} ") + (f"{abs(value):,.0f}" if whole else f"{abs(value):,.2f}")
        return ("-" if value < 0 else "") + amount + (f" {PER.get(per, per)}" if per else "")
    one, several = UNIT_WORDS.get(unit, (unit, unit))
    text = number(value, digits)
    return f"{text} {one if text == '1' else several}".rstrip()


def value_text(value: Any, fact: Fact, metric: bool = False, unit: str | None = None) -> str:
    """A value as the engine holds it (rules/values.py), in `unit`, else in the unit that the fact is shown in."""
    shown = unit or shown_unit(fact.show, metric)
    match fact.type:
        case "quantity":
            if fact.whole:
                return quantity(round(from_base(value, fact.unit)), fact.unit)
            return quantity(convert(from_base(value, fact.unit), fact.unit, shown), shown, fact.digits)
        case "range":
            low, high = (from_base(end, fact.unit) for end in value)
            return quantity(low, fact.unit) if low == high else f"{number(low)} to {quantity(high, fact.unit)}"
        case "sizes":
            return ", ".join(number(from_base(size, fact.unit)) for size in value) + f" {fact.unit}"
        case "flag":
            return "yes" if value else "no"
        case "choice":
            words = fact.choices.get(value)
            return words[0] if words else str(value)
        case "colours":
            return ", ".join(name for name, _ in value)
        case "clock":
            return clock(value)
        case "table":
            rows = dict(reversed(value))  # of a table in steps the upper end of each
            return "; ".join(
                f"{quantity(from_base(at, fact.by), fact.by)}: {quantity(from_base(here, fact.unit), fact.unit)}"
                for at, here in sorted(rows.items())
            )
    return str(value)


def clock(hours: float) -> str:
    """Hours since midnight as HH:MM, to the nearest minute; before midnight it says so."""
    minutes = round(hours * 60)
    days, minutes = divmod(minutes, 24 * 60)
    text = f"{minutes // 60:02d}:{minutes % 60:02d}"
    return (
        text
        if days == 0
        else f"{text} {'the day before' if days == -1 else 'the next day' if days == 1 else f'{days:+d} days'}"
    )
