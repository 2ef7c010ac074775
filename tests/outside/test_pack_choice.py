"""The choice of packs against SciPy's integer programming (HiGHS) and against enumeration; the book's own bags too."""

import itertools
import random
from decimal import Decimal

import numpy as np
import pytest
from scipy import optimize

from rules import Job, Piece, load_book, shopping, work
from rules.buying import packs_of
from rules.packs import choose_packs


def solve(costs: list[float], rows: list[list[float]], low: list[float], high: list[float]) -> float:
    """Return the least cost of a whole-number programme, by HiGHS."""
    result = optimize.milp(
        c=costs,
        integrality=np.ones(len(costs)),
        bounds=optimize.Bounds(0, np.inf),
        constraints=optimize.LinearConstraint(np.array(rows, dtype=float), low, high),
    )
    assert result.success, result.message
    return float(result.fun)


@pytest.mark.parametrize("seed", range(12))
def test_cost_then_leftover_then_packs_against_milp(seed: int) -> None:
    """Three programmes in turn: least money, then least bought at that money, then fewest packs at both."""
    draw = random.Random(seed)  # noqa: S311 - examples to try, no secret
    sizes = sorted(draw.sample([2, 3, 5, 10, 15, 25, 50, 72, 100], draw.randint(2, 4)))
    cents = [size * draw.randint(6, 30) + draw.randint(0, 200) for size in sizes]
    need = draw.choice([1, 17, 99, 108, 252, 501, 2016])
    bought_row = [float(size) for size in sizes]
    money_row = [float(price) for price in cents]
    money = solve(money_row, [bought_row], [need], [np.inf])
    bought = solve(bought_row, [bought_row, money_row], [need, 0], [np.inf, money + 0.5])
    packs = solve([1.0] * len(sizes), [bought_row, money_row], [need, 0], [bought + 0.5, money + 0.5])
    ours = choose_packs(need, sizes, [Decimal(price) / 100 for price in cents])
    assert sum(n * price for n, price in zip(ours, cents, strict=True)) == pytest.approx(money)
    assert sum(n * size for n, size in zip(ours, sizes, strict=True)) == pytest.approx(bought)
    assert sum(ours) == pytest.approx(packs)


@pytest.mark.parametrize("need", [1, 7, 43, 44, 89])
def test_least_left_over_against_enumeration(need: int) -> None:
    """Without prices, every way to buy is tried: the numbers 6, 9 and 20 of the classic coin problem."""
    sizes = [6, 9, 20]
    ways = itertools.product(*(range(-(-need // size) + 1) for size in sizes))
    totals = [(sum(n * s for n, s in zip(way, sizes, strict=True)), sum(way)) for way in ways]
    ours = choose_packs(need, sizes)
    best = min(total for total in totals if total[0] >= need)
    assert (sum(n * s for n, s in zip(ours, sizes, strict=True)), sum(ours)) == best


def test_the_frobenius_number_is_the_last_that_leaves_a_rest() -> None:
    """The coin problem for 6, 9 and 20 (a well-known puzzle): 43 cannot be made, every larger number can."""

    def left(need: int) -> int:
        return sum(n * s for n, s in zip(choose_packs(need, [6, 9, 20]), [6, 9, 20], strict=True)) - need

    assert left(43) == 1
    assert [left(need) for need in range(44, 200)] == [0] * 156


@pytest.mark.parametrize("size", [5, 11, 16, 18, 24, 36])
@pytest.mark.parametrize("count", [1, 3, 8, 23])
def test_the_bags_of_the_book_against_milp(size: int, count: int) -> None:
    """Each row of a shopping list is the cheapest way to have that many, and of the cheapest leaves the least over."""
    colours = [("navy", 0.5), ("gold", 0.3), ("white", 0.2)]
    estimate = work(
        load_book(), Job([Piece("garland", {"length": 40 * count, "sizes": [size], "colours": colours})], {})
    )
    packs = packs_of(estimate, size)
    cents = [float(pack.price * 100) for pack in packs]
    held = [float(pack.holds) for pack in packs]
    rows = shopping(estimate)
    assert rows
    for row in rows:
        money = solve(cents, [held], [row.with_spares], [np.inf])
        bought = solve(held, [held, cents], [row.with_spares, 0], [np.inf, money + 0.5])
        assert float(row.cost * 100) == pytest.approx(money)
        assert row.bought == pytest.approx(bought)
