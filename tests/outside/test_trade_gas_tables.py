"""Gas tables of the trade and of suppliers against what the book works out (common practice, no published source)."""

import pytest

from rules.book import load_book
from rules.engine import Job, Piece, work
from rules.wind import BEAUFORT, beaufort_force, beaufort_top

BOOK = load_book()


def helium_for(balloons: int, size: float = 11):
    return work(BOOK, Job([Piece("ceiling", {"balloons": balloons, "sizes": [size]})], {})).figure("helium_volume")


@pytest.mark.parametrize(("cubic_metres", "balloons"), [(0.6, 50), (1.2, 100), (3.5, 300), (9.1, 800)])
def test_cylinders_of_a_gas_supplier(cubic_metres: float, balloons: int) -> None:
    """A supplier's table of 11 in balloons to a cylinder."""
    figure = helium_for(balloons)
    assert figure.low <= cubic_metres / 0.3048**3 <= figure.high


@pytest.mark.parametrize(("size", "cubic_feet"), [(9, 0.25), (11, 0.5), (12, 0.55), (16, 1.5), (36, 15)])
def test_the_trades_chart_of_gas(size: float, cubic_feet: float) -> None:
    """Gas for each balloon by the chart the trade passes on."""
    figure = helium_for(100, size)
    assert figure.low <= 100 * cubic_feet <= figure.high
    assert figure.high <= 2 * figure.low


@pytest.mark.parametrize(("size", "grams"), [(11, 10), (12, 11), (16, 34), (36, 339)])
def test_the_trades_chart_of_net_lift(size: float, grams: float) -> None:
    """Net lift by the chart the trade passes on; its 6 g for 9 in is more than its own 0.25 cu ft of gas can give."""
    piece = Piece("ceiling", {"balloons": 1, "sizes": [size]})
    figure = work(BOOK, Job([piece], {})).figure("net_lift", 0)
    assert figure.low <= grams <= figure.high


def test_the_top_of_each_beaufort_band() -> None:
    """The U.S. National Weather Service's bands meet: one mph above the top is the next force."""
    for force in range(12):
        assert beaufort_force(beaufort_top(force)) == force
        assert beaufort_force(beaufort_top(force) + 1) == force + 1
    assert beaufort_top(12) == BEAUFORT[12][0]
    with pytest.raises(ValueError, match="Beaufort force must lie between 0 and 12"):
        beaufort_top(13)
