"""A full drop is as long as the cloth that the linen trade cuts for the same table.

Linen charts give 90 x 108, 90 x 132 and 90 x 156 in for a full drop on tables of 4, 6 and 8 ft, 30 in wide and 30 in
high (common practice, no published source).  A cloth ends at the floor, so nothing may settle there.
"""

import pint
import pytest

from assistant import Conversation
from rules import Job, Piece, load_book, work

CLOTHS = {4: 108, 6: 132, 8: 156}  # feet of table -> inches of cloth along it
WIDTH_OF_CLOTH = 90


def drop(length: float, height: float, **said: object) -> float:
    """The length of a runner that drops to the floor at both ends with nothing to spare, inches."""
    facts = {"table_length": length, "table_height": height, "coverage": "drop_both", "extra_drop": 0, **said}
    figure = work(load_book(), Job([Piece("runner", {"count": 1, **facts})], {})).figure("decor_length", 0)
    assert figure is not None
    return float(pint.UnitRegistry().Quantity(figure.value, figure.unit).to("in").magnitude)


@pytest.mark.parametrize("feet", CLOTHS)
def test_along_the_table(feet: int) -> None:
    assert drop(12 * feet, 30) == pytest.approx(CLOTHS[feet])


def test_across_the_table() -> None:
    """The cloth's other side, the same rule over 30 in of width."""
    assert drop(30, 30) == pytest.approx(WIDTH_OF_CLOTH)


@pytest.mark.parametrize(("settling", "feet"), [(12, 13), (18, 14), (24, 15)])
def test_what_settles_on_the_floor_comes_on_top(settling: float, feet: float) -> None:
    """12 to 24 in at each end (common practice, no published source): 2, 3 and 4 ft over the 11 ft of cloth."""
    assert drop(72, 30, extra_drop=settling) == pytest.approx(12 * feet)
    assert drop(72, 30, extra_drop=settling) - CLOTHS[6] == pytest.approx(2 * settling)


@pytest.mark.parametrize("feet", CLOTHS)
def test_the_same_in_words(feet: int) -> None:
    said = f"one {feet} ft table 30 in high, full drop, 0 in settling on the floor"
    (figure,) = [one for one in Conversation().say(said).figures if one.id == "decor_length"]
    assert pint.UnitRegistry().Quantity(figure.value, figure.unit).to("in").magnitude == pytest.approx(CLOTHS[feet])
