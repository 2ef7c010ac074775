"""Curves: the bounds of every arch, inverses, and what is refused."""

import math
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from rules import curves
from rules.elliptic import complete_elliptic_e

sides = st.floats(0.5, 2000.0)
ARCHES = [curves.half_ellipse, curves.parabola_arch, curves.catenary_arch]


@pytest.mark.parametrize("arch", ARCHES, ids=lambda arch: arch.__name__)
@given(width=sides, height=sides, more=st.floats(0.01, 100.0))
def test_every_arch_keeps_its_bounds_and_grows(arch: curves.Arch, width: float, height: float, more: float) -> None:
    """Never shorter than two straight lines nor longer than the box; more with every inch of width or height."""
    length = arch(width, height)
    assert curves.arch_shortest(width, height) <= length * (1 + 1e-12)
    assert length <= curves.arch_longest(width, height) * (1 + 1e-12)
    assert length < arch(width + more, height)
    assert length < arch(width, height + more)


@given(width=sides, extra=st.floats(0.0, 500.0))
def test_arches_on_legs_keep_their_bounds(width: float, extra: float) -> None:
    """Round tops and door frames, and a plain door frame is the box itself."""
    height = width / 2 + extra
    for length in (curves.round_top_arch(width, height), curves.door_frame(width, height, width / 2)):
        assert curves.arch_shortest(width, height) <= length * (1 + 1e-12)
        assert length <= curves.arch_longest(width, height) * (1 + 1e-12)
    assert curves.door_frame(width, height) == curves.arch_longest(width, height)
    assert curves.round_top_arch(width, height) == pytest.approx(curves.door_frame(width, height, width / 2))


@given(width=sides, height=sides)
def test_order_of_the_arches(width: float, height: float) -> None:
    """A parabola is never longer than the catenary of the same size, nor that longer than the box."""
    assert curves.parabola_arch(width, height) <= curves.catenary_arch(width, height) * (1 + 1e-9)


@pytest.mark.parametrize("arch", ARCHES, ids=lambda arch: arch.__name__)
@given(width=st.floats(10.0, 500.0), height=st.floats(10.0, 500.0))
def test_inverses_of_arches(arch: curves.Arch, width: float, height: float) -> None:
    """The height and the width come back from the length of line."""
    length = arch(width, height)
    assert curves.arch_height_for(length, width, arch) == pytest.approx(height, rel=1e-7)
    assert arch(curves.arch_span_for(length, height, arch), height) == pytest.approx(length, rel=1e-9)


@given(span=sides, sag=st.floats(0.0, 5000.0))
def test_sag_and_length_undo_one_another(span: float, sag: float) -> None:
    """From dead level to very deep; the length is what comes back exactly."""
    length = curves.catenary_swag(span, sag)
    assert math.hypot(span, 2 * sag) <= length * (1 + 1e-12)
    assert length <= (span + 2 * sag) * (1 + 1e-12)
    assert curves.catenary_swag(span, curves.catenary_sag(span, length)) == pytest.approx(length, rel=1e-9)


@given(span=sides, rise=st.floats(0.0, 500.0), dip=st.floats(0.0, 500.0), more=st.floats(0.1, 50.0))
def test_uneven_swags_are_longer_than_the_straight_line(span: float, rise: float, dip: float, more: float) -> None:
    """Never below the straight line, growing with the dip; level supports give the level swag."""
    length = curves.uneven_swag(span, rise, dip)
    assert math.hypot(span, rise) <= length * (1 + 1e-12)
    assert length < curves.uneven_swag(span, rise, dip + more)
    assert curves.uneven_swag(span, 0.0, dip) == curves.catenary_swag(span, dip)


@given(down=st.floats(0.0, 500.0), out=st.floats(0.0, 500.0))
def test_cascades_between_the_straight_line_and_the_corner(down: float, out: float) -> None:
    """The two half-axes may be swapped."""
    length = curves.quarter_ellipse(down, out)
    assert math.hypot(down, out) <= length * (1 + 1e-12)
    assert length <= (down + out) * (1 + 1e-12)
    assert length == curves.quarter_ellipse(out, down)


@given(length=sides, height=st.floats(0.0, 500.0), crests=st.floats(0.0, 20.0))
def test_waves_between_the_straight_line_and_the_zigzag_box(length: float, height: float, crests: float) -> None:
    """Two heights a wave is the most that waving can add."""
    line = curves.wave(length, height, crests)
    assert math.hypot(length, 2 * height * crests) <= line * (1 + 1e-9)
    assert line <= (length + 2 * height * crests) * (1 + 1e-12)


@given(top=st.floats(0.0, 500.0), height=st.floats(20.0, 60.0), axis=st.floats(0.0, 10.0), run=st.floats(20.0, 60.0))
def test_drapes_add_up(top: float, height: float, axis: float, run: float) -> None:
    """Flat lines are plain sums; each end adds alike; running along the floor is longer than stopping at it."""
    assert curves.drape_to_floor(top, 2, height) == pytest.approx(top + 2 * height)
    one, two = (curves.drape_over_edge(top, ends, height, axis) for ends in (1, 2))
    assert two - one == pytest.approx(one - top, abs=1e-9)
    assert curves.drape_along_floor(top, 1, height, run) == pytest.approx(top + height + run)
    assert curves.drape_along_floor(top, 2, height, run, axis) >= curves.drape_to_floor(top, 2, height, axis) - 1e-9


def test_bounds_of_a_three_four_five_arch() -> None:
    """Two slopes of 5 over a width of 6 and a height of 4; up, across and down is 14."""
    assert curves.arch_shortest(6.0, 4.0) == 10.0
    assert curves.arch_longest(6.0, 4.0) == 14.0


def test_the_folk_rule_can_be_impossible() -> None:
    """Twice the height for tall, once for wide; 10 by 8 ft comes out shorter than two straight lines."""
    assert curves.folk_arch(72.0, 96.0) == 2 * 96 + 72
    assert curves.folk_arch(96.0, 96.0) == 1.5 * 96 + 96
    assert curves.folk_arch(120.0, 96.0) == 216.0 < curves.arch_shortest(120.0, 96.0)


@given(share=st.floats(0.0, 1.0))
def test_part_of_a_ring(share: float) -> None:
    """In proportion to the share."""
    assert curves.ring(60.0, share) == pytest.approx(share * curves.ring(60.0))


def test_ellipses_flattened_to_lines() -> None:
    """No height is the width once, no width is the height twice; a point is nothing."""
    assert curves.half_ellipse(100.0, 0.0) == 100.0
    assert curves.half_ellipse(0.0, 50.0) == 100.0
    assert curves.half_ellipse(0.0, 0.0) == 0.0
    assert complete_elliptic_e(0.0) == math.pi / 2


@given(length=st.floats(10.0, 500.0), span=st.floats(10.0, 500.0))
def test_a_line_that_only_just_spans_stands_nowhere(length: float, span: float) -> None:
    """Shorter than the span is refused; equal to it gives no height."""
    assert curves.arch_height_for(span, span) == 0.0
    assert curves.catenary_sag(span, span) == 0.0
    assume(length < span)
    with pytest.raises(ValueError, match="must be longer than the span"):
        curves.arch_height_for(length, span)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: curves.half_ellipse(-1.0, 5.0), "width cannot be below 0 in; -1 in was given"),
        (lambda: curves.half_ellipse(5.0, math.inf), "height cannot be below 0 in; inf in was given"),
        (lambda: curves.parabola_arch(0.0, 5.0), "width must be more than 0 in"),
        (lambda: curves.round_top_arch(100.0, 49.0), "needs a height of at least 50 in"),
        (lambda: curves.door_frame(48.0, 96.0, 30.0), "corner radius must lie between 0 and 24 in"),
        (lambda: curves.catenary_swag(0.0, 5.0), "span must be more than 0 in"),
        (lambda: curves.catenary_swag(10.0, -5.0), "sag cannot be below 0 in"),
        (lambda: curves.catenary_sag(100.0, 90.0), "cannot span 100 in"),
        (lambda: curves.arch_span_for(100.0, 60.0), "must be longer than 120 in"),
        (lambda: curves.ring(60.0, 1.5), "share of the ring must lie between 0 and 1"),
        (lambda: curves.drape_over_edge(72.0, 3, 30.0), "number of ends that fall"),
        (lambda: curves.drape_to_floor(72.0, 2, 30.0, 31.0), "height of the line above the table"),
        (lambda: curves.drape_along_floor(72.0, 2, 30.0, 5.0, 4.0), "height of the line above the table"),
        (lambda: curves.wave(0.0, 5.0, 1.0), "length must be more than 0 in"),
        (lambda: complete_elliptic_e(1.01), "elliptic parameter"),
    ],
)
def test_refusals_are_one_plain_sentence(call: Callable[[], float], words: str) -> None:
    """What was wrong and what was given, ending in a full stop."""
    with pytest.raises(ValueError, match=r"^[A-Z][^\n]*\.$") as caught:
        call()
    assert words in str(caught.value)
