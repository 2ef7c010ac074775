"""Clusters: how pitch, width and density move, and what is refused."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules import clusters

diameters = st.floats(1.0, 60.0)


@given(d=diameters, n=st.integers(2, 40))
def test_nested_clusters_lie_nearer_than_a_diameter(d: float, n: int) -> None:
    """From 0.707 d for pairs up to the limit of two straight rows, 0.866 d."""
    assert math.sqrt(0.5) * d <= clusters.nested_pitch(n, d) * (1 + 1e-12)
    assert clusters.nested_pitch(n, d) < clusters.nested_pitch(n + 1, d) < math.sqrt(0.75) * d


@given(d=diameters, turn=st.floats(0.0, math.pi / 4))
def test_turning_quads_nests_them(d: float, turn: float) -> None:
    """Between balloon on balloon and fully nested."""
    assert clusters.nested_pitch(4, d) * (1 - 1e-12) <= clusters.turned_pitch(d, turn) <= d


@given(d=diameters, share=st.floats(0.0, 0.3))
def test_pressing_between_shortens_and_inside_lengthens(d: float, share: float) -> None:
    """Untouched it is the nested pitch; each overlap moves it its own way."""
    nested = clusters.nested_pitch(4, d)
    assert clusters.pressed_pitch(d, 0.0, 0.0) == pytest.approx(nested)
    assert clusters.pressed_pitch(d, share, 0.0) <= nested * (1 + 1e-12)
    assert clusters.pressed_pitch(d, 0.0, share) >= nested * (1 - 1e-12)


@given(d1=diameters, ratio=st.floats(0.47, 1.0))
def test_alternating_sizes_lie_nearer_than_their_mean(d1: float, ratio: float) -> None:
    """Symmetric in the two sizes, never above the pitch of their mean, and real in its whole domain."""
    d2 = d1 * ratio
    pitch = clusters.alternating_pitch(d1, d2)
    assert pitch == pytest.approx(clusters.alternating_pitch(d2, d1))
    assert 0 < pitch <= clusters.nested_pitch(4, (d1 + d2) / 2) * (1 + 1e-12)


def test_mixed_sizes_lie_further_apart() -> None:
    """One per cent at a spread of a seventh, none for equal sizes."""
    assert clusters.mixed_pitch(4.0, 0.0) == clusters.nested_pitch(4, 4.0)
    assert clusters.mixed_pitch(4.0, 1 / 7) / clusters.nested_pitch(4, 4.0) == pytest.approx(1.0094, abs=0.0001)


@given(d=diameters)
def test_widths_in_order(d: float) -> None:
    """On the table it is lower than it hangs wide; a second strand adds less than the first."""
    assert clusters.resting_width(d) < clusters.free_width(4, d)
    assert clusters.strands_width(1, d) == clusters.resting_width(d)
    assert clusters.strands_width(2, d) < 2 * clusters.resting_width(d)


def test_two_strands_at_the_usual_size() -> None:
    """The model's two and three strands at 4.28 in: 18.8 and 27.8 in."""
    assert clusters.strands_width(2, 4.28) == pytest.approx(18.8, abs=0.05)
    assert clusters.strands_width(3, 4.28) == pytest.approx(27.8, abs=0.05)


@given(d=diameters, share=st.floats(0.05, 1.0))
def test_fillers_stand_proud_above_their_flush_size(d: float, share: float) -> None:
    """Flush at 0.4142 d, proud above it, sunk below it."""
    reach, skin = clusters.filler_reach(d, share * d), clusters.free_width(4, d) / 2
    assert (reach > skin) == (share > math.sqrt(2) - 1) or math.isclose(reach, skin, rel_tol=1e-9)


@given(fullness=st.floats(0.0, 1.0), more=st.floats(0.0, 0.2), d=diameters, share=st.floats(0.3, 1.0))
def test_fuller_needs_no_fewer_fillers(fullness: float, more: float, d: float, share: float) -> None:
    """Never below nothing, none at the fullness of bare quads, growing with fullness."""
    fillers = clusters.fillers_a_cluster(fullness, d, share * d)
    assert 0.0 <= fillers <= clusters.fillers_a_cluster(min(1.0, fullness + more), d, share * d)
    assert clusters.fillers_a_cluster(0.544, d, share * d) == 0.0


@given(arc=st.floats(0.0, 1000.0), width=st.floats(5.0, 40.0), wide=st.floats(1.1001, 1e6))
def test_a_ring_takes_fewer_than_a_straight_line(arc: float, width: float, wide: float) -> None:
    """Fewer on a small ring, the straight number on a huge one."""
    held = clusters.ring_clusters(arc, 3.6, width, wide * width)
    assert held <= arc / 3.6
    assert clusters.ring_clusters(arc, 3.6, width, 1e9) == pytest.approx(arc / 3.6, rel=1e-6)


@pytest.mark.parametrize(
    ("widths", "spread"), [(1.42, 1.193), (1.97, 1.138), (2.39, 1.107), (3.53, 1.074), (5.25, 1.046), (6.34, 1.033)]
)
def test_crowding_on_a_ring_against_the_model_it_was_fitted_to(widths: float, spread: float) -> None:
    """Spacing over straight spacing in the frictionless soft-sphere model, by ring diameter in garland widths."""
    assert 36.0 / clusters.ring_clusters(36.0, 1.0, 10.0, 10.0 * widths) == pytest.approx(spread, rel=0.015)


def test_a_heap_by_its_volume() -> None:
    """12 by 6 in of 4 in balloons at 0.60: 12.15 a foot."""
    assert clusters.heap_density(12.0, 6.0, 4.0) == pytest.approx(12.15)


@pytest.mark.parametrize(
    ("within", "beyond"),
    [
        (lambda: clusters.pressed_pitch(4.0, 0.3, 0.0), lambda: clusters.pressed_pitch(4.0, 0.301, 0.0)),
        (lambda: clusters.pressed_pitch(4.0, 0.0, 0.3), lambda: clusters.pressed_pitch(4.0, 0.0, 0.301)),
        (lambda: clusters.pressed_pitch(4.0, 0.0, -0.2), lambda: clusters.pressed_pitch(4.0, 0.0, -0.201)),
        (lambda: clusters.mixed_pitch(4.0, 0.35), lambda: clusters.mixed_pitch(4.0, 0.351)),
        (lambda: clusters.filler_reach(4.0, 4.0), lambda: clusters.filler_reach(4.0, 4.01)),
        (lambda: clusters.fillers_a_cluster(1.0, 4.0, 4.0), lambda: clusters.fillers_a_cluster(1.01, 4.0, 4.0)),
        (lambda: clusters.balloons_a_foot(1, 0, 4.0), lambda: clusters.balloons_a_foot(0, 0, 4.0)),
        (
            lambda: clusters.ring_clusters(9.0, 3.6, 10.0, 11.001),
            lambda: clusters.ring_clusters(9.0, 3.6, 10.0, 10.999),
        ),
        (lambda: clusters.heap_density(4.0, 4.0, 4.0), lambda: clusters.heap_density(4.0, 4.0, 4.0, 0.0)),
    ],
)
def test_limits_stand_where_the_docstrings_say(within: Callable[[], float], beyond: Callable[[], float]) -> None:
    """The last value inside gives a length or a count, the first one outside is refused."""
    assert within() > 0
    with pytest.raises(ValueError, match=r"given|cannot"):
        beyond()


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: clusters.nested_pitch(1, 4.0), "number of balloons in a cluster must be a whole number of at least 2"),
        (lambda: clusters.nested_pitch(4.5, 4.0), "4.5 was given"),
        (lambda: clusters.nested_pitch(4, 0.0), "balloon diameter must be more than 0 in"),
        (lambda: clusters.nested_pitch(4, math.nan), "balloon diameter must be more than 0 in; nan in was given"),
        (lambda: clusters.turned_pitch(4.0, 1.0), "turn from quad to quad"),
        (lambda: clusters.pressed_pitch(4.0, 0.5, 0.0), "overlap between clusters must lie between -0.2 and 0.3"),
        (lambda: clusters.alternating_pitch(5.0, 2.0), "ratio of the smaller balloon"),
        (lambda: clusters.mixed_pitch(4.0, 0.5), "spread of sizes"),
        (lambda: clusters.filler_reach(4.0, 5.0), "ratio of filler to balloon"),
        (lambda: clusters.fillers_a_cluster(1.2, 4.0, 4.0), "fullness must lie between 0 and 1"),
        (lambda: clusters.balloons_a_foot(4, 0, 0.0), "distance from cluster to cluster"),
        (lambda: clusters.ring_clusters(10.0, 3.6, 10.0, 10.5), "ring 10.5 in across; the ring must be at least 11 in"),
        (lambda: clusters.heap_density(3.0, 6.0, 4.0), "width of the heap"),
        (lambda: clusters.strands_width(0, 4.0), "number of strands"),
    ],
)
def test_refusals_are_one_plain_sentence(call: Callable[[], float], words: str) -> None:
    """What was wrong and what was given, ending in a full stop."""
    with pytest.raises(ValueError, match=r"^[A-Z][^\n]*\.$") as caught:
        call()
    assert words in str(caught.value)
