"""The arch: its curve, its bounds, the rules of thumb beside it, and room to pass."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rules.curves import arch_longest, arch_shortest
from tests.rules.pieces import estimate_of, figure_of, holds, value_of

FOOT = 12


@pytest.mark.parametrize(
    ("width", "height", "feet"), [(10, 8, 20.693), (12, 8, 22.103), (8, 8, 19.377), (16, 8, 25.133), (20, 10, 31.416)]
)
def test_half_ellipse(width: float, height: float, feet: float) -> None:
    """Half the circumference of an ellipse; 20 by 10 ft is half a circle."""
    assert value_of("arch", "decor_length", span=width * FOOT, height=height * FOOT) == pytest.approx(feet, abs=0.001)


@pytest.mark.parametrize(
    ("shape", "feet"),
    [("ellipse", 22.103), ("catenary", 21.266), ("parabola", 20.930), ("square", 28), ("round_top", 4 + 18.850)],
)
def test_shapes(shape: str, feet: float) -> None:
    """12 ft wide, 8 ft high."""
    found = value_of("arch", "decor_length", span=144, height=96, shape=shape)
    assert found == pytest.approx(feet, abs=0.001)


@settings(max_examples=60, deadline=None)
@given(
    width=st.floats(12, 600),
    height=st.floats(12, 400),
    shape=st.sampled_from([None, "ellipse", "catenary", "parabola", "round_top", "square"]),
)
def test_bounds_always_hold(width: float, height: float, shape: str | None) -> None:
    """Never below two straight lines over the top, never above the box round it, at low and high too."""
    figure = figure_of("arch", "decor_length", span=width, height=height, shape=shape)
    shortest, longest = arch_shortest(width, height) / FOOT, arch_longest(width, height) / FOOT
    assert shortest * (1 - 1e-9) <= figure.value <= longest * (1 + 1e-9)
    assert figure.high <= longest * (1 + 1e-9)


def test_rules_of_thumb_stand_in_the_reason_when_far_off() -> None:
    tall = figure_of("arch", "decor_length", span=6 * FOOT, height=8 * FOOT).why
    assert "2H + W, would give 22 ft, 21 % more" in tall
    wide = figure_of("arch", "decor_length", span=10 * FOOT, height=8 * FOOT).why
    assert "W + H, would give 18 ft, 13 % less and shorter than two straight lines" in wide
    for width in (8, 12, 16):
        assert "rule of thumb" not in figure_of("arch", "decor_length", span=width * FOOT, height=8 * FOOT).why
    assert value_of("arch", "folk_error", span=12 * FOOT, height=8 * FOOT) == pytest.approx(9.5, abs=0.05)


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"length": 16 * FOOT, "sizes": [11]}, (96,)),
        ({"length": 20 * FOOT, "sizes": [11]}, (120,)),
        ({"span": 6 * FOOT, "height": 8 * FOOT, "inflated": [8, 8]}, (130, 132, 157)),
        ({"span": 6 * FOOT, "height": 8 * FOOT, "sizes": [8]}, (130, 132, 157)),
    ],
)
def test_counts_that_are_told(said: dict, told: tuple[float, ...]) -> None:
    """Common practice, no published source: arches of 16 and 20 ft, and one 8 ft tall and 6 ft wide."""
    figure = figure_of("arch", "balloons_each", **said)
    assert holds(figure, *told)
    assert figure.high <= 2 * figure.low


def test_by_length_alone_or_with_one_measure() -> None:
    alone = estimate_of("arch", length=20 * FOOT)
    assert alone.missing(0) == []
    assert alone.figure("arch_height", 0).value == pytest.approx(alone.figure("arch_width", 0).value)
    assert value_of("arch", "arch_height", length=20.6931 * FOOT, span=120) == pytest.approx(96, abs=0.01)
    assert value_of("arch", "arch_width", length=20.6931 * FOOT, height=96) == pytest.approx(120, abs=0.01)
    assert value_of("arch", "decor_length", length=20 * FOOT, span=120) == pytest.approx(20)


def test_without_sizes_it_asks() -> None:
    assert set(estimate_of("arch").missing(0)) & {"span", "height"}
    assert "height" in estimate_of("arch", span=120).missing(0)


def test_headroom_and_the_way_through() -> None:
    """ADA 307.4 keeps 80 in of headroom, 403.5.1 36 in of way."""
    low = estimate_of("arch", span=10 * FOOT, height=8 * FOOT)
    assert low.figure("clear_width", 0).value == pytest.approx(120 - low.figure("outer_width", 0).value)
    assert 75 < low.figure("headroom", 0).value < 80
    assert any(caution.text.startswith("Headroom") for caution in low.cautions())
    high = estimate_of("arch", span=12 * FOOT, height=10 * FOOT)
    assert not any(caution.text.startswith("Headroom") for caution in high.cautions())
    narrow = estimate_of("arch", span=4 * FOOT, height=8 * FOOT)
    assert any(caution.text.startswith("Way through") for caution in narrow.cautions())
    wall = estimate_of("arch", span=4 * FOOT, height=8 * FOOT, place="wall")
    assert not any(caution.text.startswith(("Way through", "Headroom")) for caution in wall.cautions())


def test_a_square_arch_keeps_its_height_over_the_whole_way() -> None:
    square = estimate_of("arch", span=120, height=96, shape="square")
    assert square.figure("headroom", 0).value == pytest.approx(square.figure("clear_height", 0).value)


@settings(max_examples=30, deadline=None)
@given(width=st.floats(80, 300), height=st.floats(60, 200), shape=st.sampled_from(["ellipse", "parabola", "round_top"]))
def test_headroom_is_never_above_the_middle(width: float, height: float, shape: str) -> None:
    estimate = estimate_of("arch", span=width, height=height, shape=shape)
    assert 0 <= estimate.figure("headroom", 0).value <= estimate.figure("clear_height", 0).value * (1 + 1e-9)


def test_frame() -> None:
    standing = estimate_of("arch", span=120, height=96)
    assert standing.figure("rods", 0).value == 5
    assert standing.figure("arch_bases", 0).value == 2
    wall = estimate_of("arch", span=120, height=96, place="wall")
    assert wall.figure("rods", 0).value == wall.figure("arch_bases", 0).value == 0
    assert wall.figure("materials_of_piece", 0).value > standing.figure("materials_of_piece", 0).value, "hooks"


def test_overall_size() -> None:
    estimate = estimate_of("arch", span=120, height=96, sizes=[11], inflated=[10, 10])
    assert estimate.figure("height_overall", 0).value == pytest.approx(96 + 12.071, abs=0.001)
    assert estimate.figure("width_overall", 0).value == pytest.approx(120 + 24.142, abs=0.001)


@pytest.mark.parametrize(
    ("said", "id"),
    [
        ({"length": 200, "span": 120, "height": 96}, "length_impossible"),
        ({"length": 100, "span": 120}, "length_too_short"),
        ({"length": 150, "height": 96}, "length_too_low"),
        ({"span": 240, "height": 96, "shape": "round_top"}, "legs_too_short"),
    ],
)
def test_clashes(said: dict, id: str) -> None:
    assert [clash.id for clash in estimate_of("arch", **said).clashes()] == [id]
