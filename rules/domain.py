"""What a function may be given: one place for the checks and the words of the mathematics modules.

Each check returns nothing and raises ValueError with one plain sentence that names the quantity, its
limit and what was given. Not-a-number and infinity never pass.
"""

import math


def _given(value: float, unit: str) -> str:
    return f"{value:g} {unit}".rstrip() + " was given."


def require_positive(name: str, value: float, unit: str = "in") -> None:
    """Refuse a value that is not more than nothing."""
    if not 0.0 < value < math.inf:
        raise ValueError(f"The {name} must be more than 0 {unit}".rstrip() + f"; {_given(value, unit)}")


def require_not_negative(name: str, value: float, unit: str = "in") -> None:
    """Refuse a value below nothing."""
    if not 0.0 <= value < math.inf:
        raise ValueError(f"The {name} cannot be below 0 {unit}".rstrip() + f"; {_given(value, unit)}")


def require_within(name: str, value: float, low: float, high: float, unit: str = "") -> None:
    """Refuse a value outside low to high, both ends allowed."""
    if not low <= value <= high:
        raise ValueError(
            f"The {name} must lie between {low:g} and {high:g} {unit}".rstrip() + f"; {_given(value, unit)}"
        )


def require_whole(name: str, value: float, least: int) -> None:
    """Refuse a count that is not a whole number, or is below the least one."""
    if not math.isfinite(value) or value != math.floor(value) or value < least:
        raise ValueError(f"The {name} must be a whole number of at least {least}; {_given(value, '')}")
