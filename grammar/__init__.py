"""Words to a Reading: what was said, without knowing what follows from it."""

from typing import Any

__all__ = ["read_quantities"]


def __getattr__(name: str) -> Any:
    if name == "read_quantities":
        from grammar.numbers.quantities import read_quantities

        return read_quantities
    raise AttributeError(name)
