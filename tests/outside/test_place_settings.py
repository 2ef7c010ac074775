"""What place settings leave free along the middle of a table.

An American household cookery handbook, Setting the Covers: a cover is 15 in deep from the edge.  Guests on both sides
of tables 30, 36, 42 and 48 in wide leave 0, 6, 12 and 18 in.
"""

import pint
import pytest

from rules import Estimate, Job, Piece, load_book, work

COVER = 15  # in
LEFT_FREE = {30: 0, 36: 6, 42: 12, 48: 18}


def laid(width: float, **said: object) -> Estimate:
    return work(load_book(), Job([Piece("runner", {"count": 1, "table_length": 72, "table_width": width, **said})], {}))


def inches(estimate: Estimate, id: str) -> float:
    figure = estimate.figure(id, 0)
    assert figure is not None
    return float(pint.UnitRegistry().Quantity(figure.value, figure.unit).to("in").magnitude)


def test_the_cover_taken_is_the_handbooks() -> None:
    assert inches(laid(30), "cover_depth") == COVER


@pytest.mark.parametrize("width", LEFT_FREE)
def test_guests_on_both_sides(width: int) -> None:
    assert inches(laid(width), "clear_strip") == pytest.approx(LEFT_FREE[width])


@pytest.mark.parametrize("width", [18, 30])
def test_guests_on_one_side(width: int) -> None:
    assert inches(laid(width, one_sided=True), "clear_strip") == pytest.approx(width - COVER)


def test_a_strip_is_never_less_than_nothing() -> None:
    assert inches(laid(24), "clear_strip") == 0


@pytest.mark.parametrize("width", LEFT_FREE)
def test_a_runner_is_said_to_fit_only_where_the_settings_leave_room(width: int) -> None:
    estimate = laid(width)
    tells = any(note.id in {"room_tight", "room_none"} for note in estimate.notes())
    assert tells == (inches(estimate, "runner_width") > LEFT_FREE[width])
