"""The column: clusters on a pole, with or without a topper (common practice, no published source)."""

import pytest

from rules.buying import shopping
from tests.rules.pieces import estimate_of, figure_of, holds, value_of


def test_a_height_is_enough() -> None:
    estimate = estimate_of("column", count=2, height=72)
    assert estimate.missing(0) == []
    assert estimate.figure("balloons", 0).value == 2 * estimate.figure("balloons_each", 0).value
    assert estimate.figure("stands", 0).value == 2
    assert estimate.figure("materials_cost").value > 0
    assert estimate.figure("load_volume").value > 0
    assert "height" in estimate_of("column").missing(0)


@pytest.mark.parametrize("said", [{"sizes": [11]}, {"inflated": [10, 10]}, {}])
def test_six_and_a_half_feet(said: dict) -> None:
    """One recipe has 32 balloons of 11 in; touching quads of 10 in balloons make 37."""
    figure = figure_of("column", "balloons_each", height=78, **said)
    assert holds(figure, 32, 37, 38)
    assert figure.high <= 2 * figure.low


def test_quads_a_foot() -> None:
    """1.59, 1.43 and 1.30 quads a foot at 9, 10 and 11 in."""
    for inflated, quads in ((9, 1.59), (10, 1.43), (11, 1.30)):
        pitch = value_of("column", "cluster_pitch", height=72, sizes=[11], inflated=[inflated, inflated])
        assert 12 / pitch == pytest.approx(quads, abs=0.005)


def test_mixed_column() -> None:
    """One recipe of 7 ft 3 in takes 17 balloons of 11 in and 52 of 5 in."""
    figure = figure_of("column", "balloons_each", height=87, sizes=[5, 11])
    assert holds(figure, 17 + 52)
    assert figure.high <= 2 * figure.low


def test_clusters_of_five() -> None:
    four, five = (value_of("column", "balloons_each", height=72, sizes=[11], cluster_size=n) for n in (4, 5))
    assert five / four == pytest.approx(5 / 4, abs=0.03)


def test_topper() -> None:
    bare = estimate_of("column", count=2, height=72)
    topped = estimate_of("column", count=2, height=72, topper="round")
    assert topped.figure("balloons", 0).value == bare.figure("balloons", 0).value + 2
    assert topped.figure("height_overall", 0).value == 72 + 32
    assert [(row.size_in, row.need) for row in shopping(topped)][-1] == (36, 2)
    assert topped.figure("materials_of_piece", 0).value > bare.figure("materials_of_piece", 0).value
    foil = estimate_of("column", count=2, height=72, topper="foil", topper_size=34)
    assert [row.size_in for row in shopping(foil)] == [11], "a foil is no latex balloon"
    assert foil.figure("balloons", 0).value == topped.figure("balloons", 0).value
    assert foil.figure("height_overall", 0).value == 72 + 34


def test_hours() -> None:
    """An expert's column of 32 balloons takes 15 minutes, 25 to 40 are usual (the latter from memory)."""
    figure = figure_of("column", "hours_of_piece", height=78, sizes=[11])
    assert figure.low * 60 <= 25 <= figure.high * 60


def test_part_of_the_pole() -> None:
    assert value_of("column", "decor_length", height=72, coverage="two_thirds") == pytest.approx(4)
