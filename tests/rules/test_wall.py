"""The wall: balloons by area, packed square, like honeycomb, or mixed."""

import pytest

from tests.rules.pieces import estimate_of, figure_of, holds, value_of

EIGHT = {"span": 96, "height": 96}


def test_a_width_and_a_height_are_enough() -> None:
    estimate = estimate_of("wall", **EIGHT)
    assert estimate.missing(0) == []
    for id in ("balloons_each", "cluster_pitch", "quads_each", "outer_width", "height_overall", "wall_depth"):
        assert estimate.figure(id, 0).value > 0, id
    for id in ("line_length", "hours_hands_on", "materials_cost", "load_volume"):
        assert estimate.figure(id).value > 0, id
    assert set(estimate_of("wall").missing(0)) & {"span", "height"}


def test_mixed() -> None:
    """Three to seven balloons a square foot, five typical: 8 by 8 ft takes about 200 to 450 (from memory)."""
    figure = figure_of("wall", "balloons_a_square_foot", **EIGHT)
    assert figure.value == pytest.approx(5, abs=0.3)
    assert 3 <= figure.low < figure.high <= 7
    assert figure.high <= 2 * figure.low


@pytest.mark.parametrize(("inflated", "a_square_foot"), [(9, 1.78), (10, 1.44), (11, 1.19)])
def test_pairs_show_one_balloon_for_each_square(inflated: float, a_square_foot: float) -> None:
    """144 / d^2 for the front; a wall of quads, two deep, has twice that."""
    said = {"sizes": [11], "inflated": [inflated, inflated], **EIGHT}
    pairs = value_of("wall", "balloons_a_square_foot", layers=1, **said)
    assert pairs == pytest.approx(a_square_foot, abs=0.005)
    assert value_of("wall", "balloons_a_square_foot", **said) == pytest.approx(2 * pairs)
    honeycomb = value_of("wall", "balloons_a_square_foot", layers=1, packing="honeycomb", **said)
    assert honeycomb == pytest.approx(166.277 / inflated**2, rel=1e-4)


def test_classic_unsaid_size_is_honest() -> None:
    figure = figure_of("wall", "balloons_each", style="classic", **EIGHT)
    assert figure.high <= 2 * figure.low
    assert holds(figure, 64 * 2 * 144 / 10**2, 64 * 2 * 144 / 9**2)


def test_part_of_it_and_greenery() -> None:
    assert value_of("wall", "area", coverage="two_thirds", **EIGHT) == pytest.approx(64 * 2 / 3)
    assert value_of("wall", "stems", foliage=True, **EIGHT) == 32
    assert value_of("wall", "stems", **EIGHT) == 0


def test_parts_add_up() -> None:
    estimate = estimate_of("wall", count=3, sizes=[5, 9, 11, 18], **EIGHT)
    assert sum(part.count for part in estimate.parts(0)) == estimate.figure("balloons", 0).value
