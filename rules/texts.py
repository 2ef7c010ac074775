"""Texts of the book with places in them, "it runs the whole table, {table_length}", filled with the real values."""

import re
from collections.abc import Iterator

from rules.show import value_text
from rules.units import UnitError
from rules.world import World

_PLACE = re.compile(r"\{([a-z_][a-z0-9_]*)(?::([^{}]+))?\}", re.IGNORECASE)


def places(text: str) -> Iterator[tuple[str, str | None]]:
    """The (id, unit or None) of each place in a text."""
    for found in _PLACE.finditer(text):
        yield found[1], found[2]


def fill(text: str, world: World, metric: bool = False) -> str:
    """The text with each place filled; a fact without a value reads "unknown"."""
    if "{" not in text:
        return text

    def filled(found: re.Match[str]) -> str:
        step = world.find(found[1])
        if step is None:
            return "unknown"
        try:
            return value_text(step.value, step.fact, metric, found[2])
        except UnitError:
            return value_text(step.value, step.fact, metric)

    return _PLACE.sub(filled, text)
