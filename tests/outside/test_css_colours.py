"""The palette of CSS colours against the package webcolors, which has its own copy of the standard's table."""

import re
from collections.abc import Mapping

import pytest
import webcolors  # type: ignore[import-untyped]

from rules import load_book

# CSS Color Module Level 4 (W3C), section 6.1: the one name that it adds to Level 3, whose table webcolors holds.
ADDED_BY_LEVEL_4 = {"rebeccapurple": "#663399"}
STANDARD = {name: webcolors.name_to_hex(name, spec=webcolors.CSS3) for name in webcolors.names(webcolors.CSS3)}


@pytest.fixture(scope="module")
def palettes() -> Mapping[str, Mapping[str, str]]:
    """Palette -> colour name -> value."""
    return {id: raw["names"] for id, raw in load_book().others["palette"].items()}


def test_names_and_values_are_the_standards(palettes: Mapping[str, Mapping[str, str]]) -> None:
    assert palettes["css_colours"] == STANDARD | ADDED_BY_LEVEL_4


def test_every_colour_has_a_value_that_css_reads(palettes: Mapping[str, Mapping[str, str]]) -> None:
    for names in palettes.values():
        for name, value in names.items():
            assert webcolors.normalize_hex(value) == value, name
            assert re.fullmatch(r"[^\W\d_A-Z]+(?:[ -][^\W\d_A-Z]+)*", name), name
