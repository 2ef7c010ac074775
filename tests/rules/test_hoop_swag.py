"""Hoops and swags: lengths by geometry, shares of the ring, loops between supports."""

import pytest

from tests.rules.pieces import estimate_of, figure_of, value_of


@pytest.mark.parametrize(("inches", "feet"), [(36, 9.42), (48, 12.57), (60, 15.71), (72, 18.85), (84, 21.99)])
def test_once_round_the_ring(inches: float, feet: float) -> None:
    assert value_of("hoop", "decor_length", diameter=inches) == pytest.approx(feet, abs=0.005)


def test_share_of_the_ring() -> None:
    assert value_of("hoop", "decor_length", diameter=72, coverage_fraction=0.6) == pytest.approx(135.7168 / 12)
    note = [note.text for note in estimate_of("hoop", diameter=72).notes()]
    assert any("whole ring" in text for text in note)
    assert not estimate_of("hoop", diameter=72, coverage="full").notes()


def test_the_inner_side_crowds() -> None:
    """Clusters lie 1 + 0.25 w/D times as far apart on a ring as on a straight line."""
    straight = value_of("garland", "cluster_pitch", length=120, sizes=[5])
    ring = estimate_of("hoop", diameter=48, sizes=[5])
    stretch = 1 + 0.25 * ring.figure("outer_width", 0).value / 48
    assert ring.figure("cluster_pitch", 0).value == pytest.approx(straight * stretch)


def test_a_small_hoop_takes_small_balloons() -> None:
    """A 24 in hoop took two sprays of four quads of 5 in balloons, 32 in all: 27 of its 75 in."""
    figure = figure_of("hoop", "balloons_each", diameter=24, coverage_fraction=0.36)
    assert [part.size_in for part in estimate_of("hoop", diameter=24).parts(0)] == [5]
    assert figure.low <= 32 <= figure.high
    crowded = estimate_of("hoop", diameter=24, sizes=[11])
    assert any(note.text.startswith("Size") for note in crowded.notes())


def test_swag_hangs_as_a_catenary() -> None:
    """20 ft span, 4 ft sag: 21.994 ft; supports 3 ft apart in height, 12 ft, 2 ft below the lower: 14.459 ft."""
    assert value_of("swag", "decor_length", span=240, sag=48) == pytest.approx(21.9944, abs=0.0005)
    uneven = value_of("swag", "decor_length", span=144, sag=24, end_rise=36)
    assert uneven == pytest.approx(14.459125, abs=1e-5)
    assert value_of("swag", "bay_sag", span=240, length=22 * 12) == pytest.approx(4.006016 * 12, abs=1e-4)


def test_several_loops() -> None:
    three = estimate_of("swag", span=360, sag=12, bays=3)
    assert three.figure("decor_length", 0).value == pytest.approx(3 * 10.261869, abs=1e-4)
    assert three.figure("hang_points", 0).value == 4


def test_a_span_is_enough() -> None:
    estimate = estimate_of("swag", count=2, span=120)
    assert estimate.missing(0) == []
    assert estimate.figure("line_length").value == pytest.approx(2 * (estimate.figure("decor_length", 0).value + 3))
    assert estimate.figure("decor_length", 0).low < estimate.figure("decor_length", 0).high
    assert "span" in estimate_of("swag").missing(0)
    assert "diameter" in estimate_of("hoop").missing(0)


@pytest.mark.parametrize(
    ("said", "id"),
    [
        ({"span": 240, "length": 200}, "length_below_span"),
        ({"span": 240, "length": 400, "sag": 12}, "length_and_sag"),
    ],
)
def test_clashes(said: dict, id: str) -> None:
    assert [clash.id for clash in estimate_of("swag", **said).clashes()] == [id]
