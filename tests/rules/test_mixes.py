"""Mixed sizes: shares that add up, the body, and what is blown to what."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules import mixes

nominal = st.lists(st.sampled_from([5.0, 6.0, 9.0, 10.0, 11.0, 12.0, 16.0, 18.0, 24.0, 36.0]), min_size=1, max_size=5)


@given(sizes=nominal, fillers=st.floats(0, 0.85))
def test_shares_rise_to_the_whole(sizes: list[float], fillers: float) -> None:
    """Every size has its share, none is negative, and together they are all of it."""
    sizes = sorted(set(sizes))
    steps = [mixes.share_up_to(sizes, place, fillers, 0.08, 0.01) for place in range(len(sizes) + 2)]
    assert steps[0] == 0
    assert steps == sorted(steps)
    assert steps[len(sizes)] == pytest.approx(1) == steps[-1]


@pytest.mark.parametrize(
    ("sizes", "body"),
    [([5, 11, 16], 11), ([5, 9, 11, 18], 11), ([5, 16], 16), ([5], 5), ([5, 36], 5), ([36], 36), ([16, 36], 16)],
)
def test_body(sizes: list[float], body: float) -> None:
    assert mixes.body_size(sizes) == body


def test_shares_of_the_usual_mix() -> None:
    """Half fillers, a few big ones, the rest the body; classes that are absent leave their share to the body."""

    def shares(sizes: list[float]) -> list[float]:
        ends = [mixes.share_up_to(sizes, place, 0.5, 0.08, 0.01) for place in range(len(sizes) + 1)]
        return [after - before for before, after in pairwise(ends)]

    assert shares([5, 11, 16]) == pytest.approx([0.5, 0.42, 0.08])
    assert shares([5, 11]) == pytest.approx([0.5, 0.5])
    assert shares([11, 16]) == pytest.approx([0.92, 0.08])
    assert shares([5, 9, 11, 18, 36]) == pytest.approx([0.5, 0.205, 0.205, 0.08, 0.01])
    assert mixes.filler_part([11, 16], 0.5) == 0
    assert mixes.filler_part([5, 11], 0.5) == 0.5


def test_blown_size() -> None:
    assert mixes.blown_size([11], 1, 8, 10, 9.5) == 9
    assert mixes.blown_size([5, 11], 1, 4, 10, 3) == 4
    assert mixes.blown_size([5, 11], 2, 4, 10, 3) == 10
    assert mixes.blown_size([5, 11, 16], 1, 9, 9, 4) == 4, "a single size is the body's"
    assert mixes.blown_size([5, 11, 16], 2, 9, 9, 4) == 9
    assert mixes.blown_size([11], 1, 14, 14, 9.5) == 11, "never above nominal"


def test_places_beyond_the_last() -> None:
    assert mixes.size_at([5, 11], 4) == 11
    assert mixes.alike_up_to([5, 11], 1) == 0.5
    assert mixes.alike_up_to([5, 11], 4) == 1


def test_no_size_is_refused() -> None:
    with pytest.raises(ValueError, match="name at least one"):
        mixes.body_size([])
