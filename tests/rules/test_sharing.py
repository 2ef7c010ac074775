"""Whole shares and packs: sums are exact, the choice is best, ties are settled by order."""

import itertools
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules.apportion import largest_remainder
from rules.packs import choose_packs

share_lists = st.lists(st.floats(0.0, 100.0), min_size=1, max_size=8).filter(any)


@given(total=st.integers(0, 3000), shares=share_lists, step=st.integers(1, 4))
def test_shares_add_up_in_whole_steps(total: int, shares: list[float], step: int) -> None:
    """The sum is exact, and all but one part are whole steps."""
    parts = largest_remainder(total, shares, step)
    assert sum(parts) == total
    assert min(parts) >= 0
    assert sum(part % step != 0 for part in parts) == (1 if total % step else 0)


@given(total=st.integers(0, 3000), shares=share_lists)
def test_no_part_is_a_whole_one_from_its_quota(total: int, shares: list[float]) -> None:
    """Hamilton's method keeps to the quota."""
    whole = sum(shares)
    for part, share in zip(largest_remainder(total, shares), shares, strict=True):
        assert abs(part - total * share / whole) < 1 + 1e-9


def test_ties_go_to_the_first_named() -> None:
    """Three equal shares of 100; a half each of three; decimals count as printed, so 0.1 and 0.7 of 15 tie."""
    assert largest_remainder(100, [1, 1, 1]) == [34, 33, 33]
    assert largest_remainder(3, [0.5, 0.5]) == [2, 1]
    assert largest_remainder(15, [0.1, 0.2, 0.7]) == [2, 3, 10]
    assert largest_remainder(15, [0.7, 0.2, 0.1]) == [11, 3, 1]


def test_pairs_stay_together() -> None:
    """Navy, gold and white on 108 and 109 balloons; the odd one goes last, to who is furthest short."""
    assert largest_remainder(108, [0.5, 0.3, 0.2], step=2) == [54, 32, 22]
    assert largest_remainder(109, [0.5, 0.3, 0.2], step=2) == [54, 33, 22]
    assert largest_remainder(1, [0.2, 0.8], step=2) == [0, 1]
    assert largest_remainder(109, [50, 30, 20], step=2) == [54, 33, 22]
    assert largest_remainder(109, [0.05, 0.03, 0.02], step=2) == [54, 33, 22]


@pytest.mark.parametrize(
    ("total", "shares", "step", "words"),
    [
        (-1, [1.0], 1, "number to share out must be a whole number of at least 0"),
        (10, [], 1, "nothing to share by"),
        (10, [0.0, 0.0], 1, "nothing to share by"),
        (10, [1.0, -0.5], 1, "share cannot be below 0"),
        (10, [1.0, float("nan")], 1, "share cannot be below 0; nan was given"),
        (10, [1.0], 0, "step must be a whole number of at least 1"),
    ],
)
def test_sharing_refuses_in_a_plain_sentence(total: int, shares: list[float], step: int, words: str) -> None:
    """What was wrong and what was given."""
    with pytest.raises(ValueError, match=words):
        largest_remainder(total, shares, step)


@st.composite
def pack_problems(draw: st.DrawFn) -> tuple[int, list[int], list[int]]:
    """Small enough to try every way to buy."""
    sizes = draw(st.lists(st.integers(2, 9), min_size=1, max_size=3, unique=True))
    prices = [draw(st.integers(0, 40)) for _ in sizes]
    return draw(st.integers(0, 30)), sizes, prices


@given(problem=pack_problems())
def test_no_way_to_buy_is_better(problem: tuple[int, list[int], list[int]]) -> None:
    """Every way is tried: money first, then what is left over, then the number of packs."""
    need, sizes, prices = problem

    def rank(way: tuple[int, ...]) -> tuple[int, int, int]:
        return (
            sum(n * price for n, price in zip(way, prices, strict=True)),
            sum(n * size for n, size in zip(way, sizes, strict=True)),
            sum(way),
        )

    ways = itertools.product(*(range(-(-need // size) + 1) for size in sizes))
    enough = [way for way in ways if rank(way)[1] >= need]
    assert rank(tuple(choose_packs(need, sizes, prices))) == min(map(rank, enough))


@given(need=st.integers(0, 60), more=st.integers(0, 40_000), cents=st.integers(1, 500))
def test_a_great_need_is_bought_like_a_small_one(need: int, more: int, cents: int) -> None:
    """Whole turns of the thriftiest pack on top change nothing but its number."""
    sizes, prices = [7, 10], [Decimal(cents) / 100, Decimal(cents + 20) / 100]
    thriftiest = min(range(2), key=lambda i: (prices[i] / sizes[i], -sizes[i]))
    small = choose_packs(need + 200, sizes, prices)
    great = choose_packs(need + 200 + more * sizes[thriftiest], sizes, prices)
    small[thriftiest] += more
    assert great == small


@given(need=st.integers(0, 5000), sizes=st.lists(st.integers(1, 100), min_size=1, max_size=5, unique=True))
def test_packs_always_cover_the_need(need: int, sizes: list[int]) -> None:
    """Enough, and never a whole pack too many."""
    packs = choose_packs(need, sizes)
    bought = sum(n * size for n, size in zip(packs, sizes, strict=True))
    assert need <= bought
    assert all(bought - size < need for n, size in zip(packs, sizes, strict=True) if n)


def test_packs_of_the_trade() -> None:
    """A big bag dear by the piece is left alone; equal money takes what leaves less over, then fewer packs."""
    assert choose_packs(2218, [100]) == [23]
    assert choose_packs(120, [25, 100], [Decimal("3.50"), Decimal("12.00")]) == [1, 1]
    assert choose_packs(60, [50, 100], [6, 12]) == [0, 1]
    assert choose_packs(0, [50, 100], [6, 12]) == [0, 0]


@pytest.mark.parametrize(
    ("need", "sizes", "prices", "words"),
    [
        (-1, [50], None, "number needed must be a whole number of at least 0"),
        (10, [], None, "no packs to choose from"),
        (10, [0], None, "pack size must be a whole number of at least 1"),
        (10, [50, 50], None, "named twice"),
        (10, [50, 100], [5], "2 pack sizes but 1 prices"),
        (10, [50], [-5], "price of a pack cannot be below 0"),
    ],
)
def test_packs_refuse_in_a_plain_sentence(need: int, sizes: list[int], prices: list[int] | None, words: str) -> None:
    """What was wrong and what was given."""
    with pytest.raises(ValueError, match=words):
        choose_packs(need, sizes, prices)
