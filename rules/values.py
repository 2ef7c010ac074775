"""Values of facts: what each type holds inside the engine, and how the book and the speaker write it.

Inside, a quantity is a float in base units, a choice or text a str, a flag a bool, a range two floats, sizes a tuple
of floats, colours a tuple of (name, share or None), a clock the hours since midnight, and a table of the book a
tuple of (at, value) pairs.
"""

import re
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Any

from rules.units import UnitError, read_unit, to_base

TYPES = ("quantity", "choice", "flag", "colours", "sizes", "range", "text", "clock", "table")

_WRITTEN = re.compile(r"(-?\d+(?:\.\d+)?)\s*(\S.*)?")
_CLOCK = re.compile(r"(\d{1,2}):(\d{2})")


def read_quantity(raw: Any, unit: str) -> float:
    """A number in `unit`, or text such as "30 in", as a float in base units.

    ValueError when it is no number, UnitError when its unit is not known or measures something else.
    """
    if isinstance(raw, str):
        found = _WRITTEN.fullmatch(raw.strip())
        if found is None:
            raise ValueError(f"{raw!r} is not a number with a unit")
        written = (found[2] or unit).strip()
        if read_unit(written).powers != read_unit(unit).powers:
            raise UnitError(f"{raw!r} does not measure the same as {unit}")
        return to_base(float(found[1]), written)
    if isinstance(raw, bool) or not isinstance(raw, int | float):
        raise ValueError(f"{raw!r} is not a number")
    return to_base(float(raw), unit)


def read_value(raw: Any, kind: str, unit: str) -> Any:
    """A value of a fact of type `kind` as the engine holds it; ValueError in one short clause when it does not fit.

    A quantity given as two numbers (low, high) comes back as a range of two floats.
    """
    match kind:
        case "quantity" if isinstance(raw, list | tuple):
            return _two(raw, unit)
        case "quantity":
            return read_quantity(raw, unit)
        case "range" if isinstance(raw, list | tuple):
            return _two(raw, unit)
        case "range":
            return (read_quantity(raw, unit),) * 2
        case "sizes" if isinstance(raw, list | tuple):
            return tuple(sorted(read_quantity(size, unit) for size in raw))
        case "flag" if isinstance(raw, bool):
            return raw
        case "choice" | "text" if isinstance(raw, str):
            return raw
        case "clock" if isinstance(raw, int | float):
            return float(raw)
        case "clock" if isinstance(raw, str) and (found := _CLOCK.fullmatch(raw)):
            return int(found[1]) + int(found[2]) / 60
        case "colours" if isinstance(raw, list | tuple):
            return tuple(_colour(colour) for colour in raw)
    raise ValueError(f"{raw!r} is no {kind}")


def read_table(
    rows: Iterable[Mapping[str, Any]], column: str, by: str, unit: str, *, steps: bool = False
) -> tuple[tuple[float, float], ...]:
    """One column (low, typical or high) of a table's rows as (at, value) pairs, ascending, in base units.

    With `steps` a row holds for all from the row before it up to itself, and nothing lies between two rows.
    """
    table = sorted((read_quantity(row["at"], by), read_quantity(row.get(column, row["typical"]), unit)) for row in rows)
    if not steps or not table:
        return tuple(table)
    before = [table[0], *((last, value) for (last, _), (_, value) in pairwise(table))]
    return tuple(pair for two in zip(before, table, strict=True) for pair in two)


def look_up(table: tuple[tuple[float, float], ...], at: float) -> float:
    """The value of a table at a point: straight lines between its rows, the end rows beyond them."""
    before = table[0]
    for here in table:
        if at <= here[0]:
            if here is before or here[0] == before[0]:
                return here[1]
            return before[1] + (here[1] - before[1]) * (at - before[0]) / (here[0] - before[0])
        before = here
    return before[1]


def _two(raw: Iterable[Any], unit: str) -> tuple[float, float]:
    ends = [read_quantity(end, unit) for end in raw]
    if len(ends) == 1:
        ends *= 2
    if len(ends) != 2 or ends[0] > ends[1]:
        raise ValueError("a range is two numbers, the lower first")
    return ends[0], ends[1]


def _colour(raw: Any) -> tuple[str, float | None]:
    match raw:
        case str():
            return raw, None
        case {"name": str(name)}:
            share = raw.get("share")
            return name, None if share is None else float(share)
        case [str(name), share]:
            return name, None if share is None else float(share)
    raise ValueError(f"{raw!r} is no colour")


def frozen(raw: Any) -> Any:
    """`raw`, made of lists, dicts and plain values, as something hashable."""
    if isinstance(raw, Mapping):
        return tuple(sorted((str(key), frozen(value)) for key, value in raw.items()))
    if isinstance(raw, list | tuple):
        return tuple(frozen(value) for value in raw)
    return raw
