"""Prices in Decimal: every line is whole cents and the lines add up, whatever was said and however it is rounded."""

from decimal import ROUND_CEILING, ROUND_DOWN, ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rules.engine import Job, Piece, work
from rules.money import margin_of, markup_of, tax_on, to_step
from rules.quote import Quote, quote
from tests.rules.pieces import BOOK

TABLES = Piece("runner", {"count": 8, "table_length": 72})
CENT = Decimal("0.01")


def quote_of(piece: Piece = TABLES, **said: object) -> Quote:
    made = quote(work(BOOK, Job([piece], said)))
    assert made is not None
    return made


def adds_up(made: Quote) -> bool:
    steps = (made.cost, made.profit, made.rush, made.discount, made.raised, made.rounding)
    return sum(steps, Decimal(0)) == made.price and made.deposit + made.balance == made.price + made.tax == made.total


@settings(max_examples=40, derandomize=True, deadline=None, database=None)
@given(
    st.fixed_dictionaries(
        {},
        optional={
            "markup": st.integers(0, 300),
            "rush": st.integers(0, 60),
            "discount": st.integers(0, 40),
            "tax": st.decimals(0, 20, places=3).map(float),
            "deposit": st.integers(0, 100),
            "overhead": st.integers(0, 30),
            "hire": st.integers(0, 500),
            "minimum_order": st.integers(0, 3000),
            "drive_distance": st.integers(0, 90),
            "labour_rate": st.decimals(10, 60, places=2).map(float),
        },
    ),
    st.sampled_from([ROUND_HALF_UP, ROUND_HALF_EVEN, ROUND_DOWN, ROUND_CEILING]),
    st.sampled_from([None, Decimal("0.05"), Decimal(1), Decimal(5), Decimal(10)]),
    st.sampled_from([0, 2, 3]),
)
def test_the_lines_add_up_in_every_rounding(
    said: dict[str, float], rounding: str, step: Decimal | None, digits: int
) -> None:
    made = quote(work(BOOK, Job([TABLES], said)), digits=digits, step=step, rounding=rounding)
    assert made is not None
    assert adds_up(made)
    if step is not None:
        assert made.price % step == 0


@pytest.mark.parametrize("said", [{}, {"tax": 8.25, "rush": 25}, {"discount": 15, "hire": 80, "overhead": 12}])
def test_the_figure_price_is_the_quote_to_the_cent(said: dict[str, float]) -> None:
    figure = work(BOOK, Job([TABLES], said)).figure("price")
    made = quote_of(**said)
    assert figure is not None
    assert abs(Decimal(str(figure.value)) - made.price) < Decimal("0.05")
    assert "price" in {one.id for one in work(BOOK, Job([TABLES], said)).figures()}


def test_a_small_job_is_raised_to_the_least_order() -> None:
    small = Piece("runner", {"count": 1, "table_length": 48, "coverage": "two_thirds"})
    made = quote_of(small, minimum_order=500)
    assert made.price == 500
    assert made.raised > 0
    assert adds_up(made)


def test_what_is_taxed_is_a_setting() -> None:
    whole, goods, work_free = (
        quote_of(tax=10, **said) for said in ({}, {"tax_on_materials": True}, {"labour_untaxed": True})
    )
    assert whole.taxed == whole.price
    share = goods.costs["materials_cost"] / goods.cost
    assert abs(goods.taxed - goods.price * share) < CENT * 5
    assert abs(work_free.taxed - work_free.price * (1 - work_free.costs["labour_cost"] / work_free.cost)) < CENT * 5
    assert goods.tax < whole.tax


def test_own_prices_win_and_taking_down_is_paid_where_said() -> None:
    assert quote_of(own_materials=180).costs["materials_cost"] == 180
    assert quote_of(strike=True).costs["labour_cost"] > quote_of().costs["labour_cost"]


def test_impossible_rates_are_refused() -> None:
    for wrong in (
        lambda: markup_of(Decimal(1)),
        lambda: margin_of(Decimal(-1)),
        lambda: tax_on(Decimal(1), Decimal(-1)),
    ):
        with pytest.raises(ValueError, match="a"):
            wrong()
    with pytest.raises(ValueError, match="step"):
        to_step(Decimal(1), Decimal(0))
