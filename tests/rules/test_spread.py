"""Ranges: by hand, against Monte Carlo, against the `uncertainties` library and a worked example of JCGM 100."""

import math
import random
import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from rules.engine import Job, Piece, work
from rules.spread import Move, combine
from tests.rules.small_books import book_of, fact, runner

INPUTS = (
    fact("a_width", assume=(8, 10, 12))
    + fact("b_width", assume=(19, 20, 22))
    + fact("c_width", assume=(4, 4, 7))
    + fact("turns", "count", "job", assume=(1, 2, 3))
)


def range_of(formula: str, unit: str = "in", said: dict | None = None, **keys):
    book = book_of(INPUTS + fact("result", unit, is_=formula, **keys))
    figure = runner(book, said or {}).figure("result", 0)
    return figure.low, figure.value, figure.high


def test_an_input_keeps_its_own_range() -> None:
    assert range_of("b_width") == (19, 20, 22)


def test_by_hand_one_input_at_a_time() -> None:
    """a + b: 2 and 1 below, 2 and 2 above, in quadrature."""
    low, value, high = range_of("a_width + b_width")
    assert (low, value, high) == pytest.approx((30 - math.sqrt(4 + 1), 30, 30 + math.sqrt(4 + 4)))


def test_an_input_that_lowers_the_result_swaps_its_ends() -> None:
    low, value, high = range_of("b_width - a_width")
    assert (low, value, high) == pytest.approx((10 - math.sqrt(1 + 4), 10, 10 + math.sqrt(4 + 4)))


def test_an_input_with_room_on_one_side_only() -> None:
    assert range_of("c_width * 2") == pytest.approx((8, 8, 14))


def test_an_input_that_counts_twice_is_one_input() -> None:
    assert range_of("a_width + a_width") == pytest.approx((16, 20, 24))
    assert range_of("a_width - a_width + b_width") == pytest.approx((19, 20, 22))


def test_a_said_value_has_no_spread_and_a_said_range_has_its_own() -> None:
    assert range_of("a_width + b_width", said={"a_width": 10}) == pytest.approx((29, 30, 32))
    assert range_of("a_width", said={"a_width": (9, 13)}) == pytest.approx((9, 11, 13))


def test_rounding_neither_hides_nor_exaggerates() -> None:
    """19..22 over 7 is 2.71..3.14: rounded one by one it would not move at all."""
    low, value, high = range_of("round(b_width / 7 in)", "count", whole=True)
    assert (low, value, high) == (2, 3, 4)
    low, value, high = range_of("round(b_width / 7 in) * 100", "count")
    assert (low, value, high) == pytest.approx((300 - 100 / 7, 300, 300 + 200 / 7))


def test_choices_stay_as_at_typical() -> None:
    assert range_of("if b_width > 19.5 in then b_width else 500 in") == pytest.approx((19, 20, 22))


def test_a_whole_range_is_rounded_outward() -> None:
    low, value, high = range_of("b_width / 3 in", "count", whole=True)
    assert (low, value, high) == (6, 7, 8)


def test_never_below_what_is_sane() -> None:
    assert range_of("a_width * 10 - 78 in", sane=[5, 500])[0] == 5


def test_against_uncertainties_on_a_linear_case() -> None:
    """The uncertainties library propagates standard deviations linearly: exact where the formula is linear."""
    a, b = ufloat(10, 2), ufloat(20, 1.5)
    book = book_of(
        fact("a", assume=(8, 10, 12)) + fact("b", assume=(18.5, 20, 21.5)) + fact("r", is_="3 * a - 2 * b + a / 4")
    )
    figure = runner(book, {}).figure("r", 0)
    theirs = 3 * a - 2 * b + a / 4
    assert figure.value == pytest.approx(theirs.nominal_value)
    assert figure.high - figure.value == pytest.approx(theirs.std_dev)
    assert figure.value - figure.low == pytest.approx(theirs.std_dev)


def test_against_uncertainties_on_a_product() -> None:
    """Small spreads make a product nearly linear; the two agree to a tenth of a per cent of the spread."""
    a, b = ufloat(10, 0.02), ufloat(20, 0.03)
    book = book_of(
        fact("a", assume=(9.98, 10, 10.02)) + fact("b", assume=(19.97, 20, 20.03)) + fact("r", "in**2", is_="a * b")
    )
    figure = runner(book, {}).figure("r", 0)
    assert figure.high - figure.value == pytest.approx((a * b).std_dev, rel=1e-3)


def test_against_monte_carlo() -> None:
    """Low to high means about nine in ten: inputs normal with their ends at 1.645 deviations, 5 % beyond each."""
    book = book_of(INPUTS + fact("result", "in**2", is_="a_width * (b_width + 12 in) / turns"))
    figure = runner(book, {"b_width": (18, 22)}).figure("result", 0)
    rng = random.Random(20)  # noqa: S311 (draws for a test, no secret)

    def draw(low: float, high: float) -> float:
        return rng.gauss((low + high) / 2, (high - low) / 2 / 1.645)

    book_narrow = book_of(
        fact("a", assume=(9, 10, 11))
        + fact("b", assume=(18, 20, 22))
        + fact("c", "count", assume=(1.9, 2, 2.1))
        + fact("r", "in**2", is_="a * (b + 12 in) / c")
    )
    narrow = runner(book_narrow, {}).figure("r", 0)
    drawn = sorted(draw(9, 11) * (draw(18, 22) + 12) / draw(1.9, 2.1) for _ in range(40_000))
    assert narrow.value == pytest.approx(statistics.median(drawn), rel=0.01)
    assert narrow.low == pytest.approx(drawn[2_000], rel=0.015)
    assert narrow.high == pytest.approx(drawn[38_000], rel=0.015)
    assert figure.low < narrow.low < narrow.high < figure.high


def test_jcgm_100_example_h1_end_gauge() -> None:
    """JCGM 100:2008, H.1.4: components of 25, 9.7, 2.9 and 16.6 nm combine to 32 nm."""
    down, up = combine(Move(str(size), -size, size) for size in (25.0, 9.7, 2.9, 16.6))
    assert round(down) == round(up) == 32


@given(st.lists(st.tuples(st.floats(-100, 100), st.floats(-100, 100)), max_size=8))
def test_a_combination_lies_between_the_greatest_and_the_sum(ends: list[tuple[float, float]]) -> None:
    moves = [Move("x", low, high) for low, high in ends]
    down, up = combine(moves)
    tops = [max(low, high, 0) for low, high in ends]
    assert max(tops, default=0) <= up + 1e-6
    assert up <= sum(tops) + 1e-6
    assert down >= 0


SHARED = fact("a_width", assume=(8, 10, 12)) + fact("all", of="job", is_="total(a_width)")


def test_an_assumed_input_is_the_same_unknown_in_all_pieces() -> None:
    """Shared: 3 pieces move together, 30 +- 6, not +- 2 * sqrt(3)."""
    estimate = work(book_of(SHARED), Job([Piece("runner", {})] * 3, {}))
    figure = estimate.figure("all")
    assert (figure.low, figure.value, figure.high) == pytest.approx((24, 30, 36))
    (influence,) = estimate.matters("all")
    assert (influence.id, influence.piece, influence.low_change, influence.high_change) == ("a_width", None, -6, 6)


def test_an_input_of_each_piece_on_its_own() -> None:
    book = book_of(SHARED.replace("assume", "shared = false\nassume", 1))
    pieces = [Piece("runner", {"table_length": length}) for length in (1, 2, 3)]
    estimate = work(book, Job(pieces, {}))
    figure = estimate.figure("all")
    assert figure.high == pytest.approx(30 + 2 * math.sqrt(3))
    assert [influence.piece for influence in estimate.matters("all")] == [0, 1, 2]


def test_a_job_input_moves_the_job_and_its_pieces_at_once() -> None:
    text = fact("rate", "count", "job", assume=(1, 2, 4)) + fact("part", is_="table_length * rate")
    text += fact("all", of="job", is_="total(part) * rate")
    estimate = work(
        book_of(text), Job([Piece("runner", {"table_length": 10}), Piece("runner", {"table_length": 20})], {})
    )
    figure = estimate.figure("all")
    assert (figure.low, figure.value, figure.high) == pytest.approx((30, 120, 480))


def test_what_matters_most_comes_first() -> None:
    book = book_of(INPUTS + fact("result", is_="a_width + b_width * turns"))
    found = runner(book, {}).matters("result", 0)
    assert [(one.id, one.low_change, one.high_change) for one in found] == [
        ("turns", -20, 20),
        ("b_width", -2, 4),
        ("a_width", -2, 2),
    ]
    assert [one.piece for one in found] == [None, 0, 0]


def test_figures_asked_for_later_are_taken_in() -> None:
    """The runs are carried on when the estimate has grown since they were made."""
    book = book_of(
        INPUTS
        + fact("first", is_="a_width * 2")
        + fact("second", is_="first + b_width")
        + fact("third", is_="second + a_width")
    )
    estimate = runner(book, {})
    assert estimate.figure("first", 0).high == 24
    assert estimate.figure("second", 0).high == pytest.approx(40 + math.sqrt(16 + 4))
    assert estimate.figure("third", 0).high == pytest.approx(50 + math.sqrt(36 + 4))


def test_an_end_that_makes_the_formula_impossible_is_left_out() -> None:
    book = book_of(fact("a", assume=(0, 1, 2)) + fact("r", "count", is_="4 in / a"))
    figure = runner(book, {}).figure("r", 0)
    assert (figure.low, figure.value, figure.high) == (2, 4, 4)
