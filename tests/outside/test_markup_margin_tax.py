"""Money against what is published: markup and margin, sales tax to the cent, the mileage rate, currencies' cents."""

from decimal import Decimal
from fractions import Fraction

import pytest

from assistant.naming import cash, digits_of
from rules.engine import Job, Piece, work
from rules.money import margin_of, markup_of, tax_on
from rules.quote import quote
from tests.rules.pieces import BOOK


@pytest.mark.parametrize(
    ("markup", "margin"),
    [("0.5", "0.3333"), ("1", "0.5"), ("1.5", "0.6"), ("2", "0.6667"), ("0.25", "0.2"), ("0.4286", "0.3")],
)
def test_markup_and_margin_in_bookkeepers_tables(markup: str, margin: str) -> None:
    """The pairs of retail bookkeeping tables: 25 % is 20 %, 50 % is 33.3 %, 100 % is 50 %, 150 % is 60 %."""
    assert margin_of(Decimal(markup)).quantize(Decimal("0.001")) == Decimal(margin).quantize(Decimal("0.001"))
    assert abs(markup_of(Decimal(margin)) - Decimal(markup)) < Decimal("0.001")


@pytest.mark.parametrize("percent", [1, 7, 33, 50, 87, 99])
def test_markup_and_margin_undo_one_another(percent: int) -> None:
    """In exact fractions, by the definitions: profit over cost, profit over price."""
    margin = Fraction(percent, 100)
    assert abs(Fraction(markup_of(Decimal(percent) / 100)) - margin / (1 - margin)) < Fraction(1, 10**20)
    assert abs(margin_of(markup_of(Decimal(percent) / 100)) - Decimal(percent) / 100) < Decimal("1e-20")


@pytest.mark.parametrize(
    ("amount", "rate", "tax"),
    [
        ("10.99", "0.0625", "0.69"),  # 0.686875: the third place is 6
        ("1.00", "0.0625", "0.06"),  # 0.0625: the third place is 2
        ("0.90", "0.05", "0.05"),  # 0.045: a five goes up
        ("2.99", "0.015", "0.04"),  # 0.04485: carried to 0.044, so it stays
        ("0.99", "0.0151", "0.01"),  # 0.014949: carried to 0.014; rounding twice would give 0.02
        ("100.00", "0.0825", "8.25"),
        ("19.95", "0.07", "1.40"),  # 1.3965
        ("0.07", "0.07", "0.00"),  # 0.0049
    ],
)
def test_tax_by_the_streamlined_agreement(amount: str, rate: str, tax: str) -> None:
    """Section 324: carried to the third decimal place, up to the next cent where that is greater than four."""
    assert tax_on(Decimal(amount), Decimal(rate)) == Decimal(tax)


def test_the_agreement_s_rule_digit_by_digit() -> None:
    """The same section done on the written digits: ".d1d2d3", up when d3 is above four."""
    for cents in range(1, 400, 7):
        for mills in (50, 62, 70, 83, 101):
            exact = cents * mills  # hundred-thousandths
            third = exact // 100  # thousandths, the rest cut off
            expected = third // 10 + (third % 10 > 4)
            assert tax_on(Decimal(cents) / 100, Decimal(mills) / 1000) == Decimal(expected) / 100


@pytest.mark.parametrize("rate", [0.67, 0.70, 0.725])
def test_the_mileage_rate_is_the_published_one(rate: float) -> None:
    """IRS standard mileage rates for business: 67 cents in 2024, 70 in 2025, 72.5 in 2026."""
    figure = work(BOOK, Job([Piece("runner", {"count": 1, "table_length": 72})], {})).figure("mileage")
    assert figure is not None
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low <= rate <= figure.high
    assert (figure.low, figure.value, figure.high) == (0.67, 0.70, 0.725)
    driven = quote(
        work(BOOK, Job([Piece("runner", {"count": 1, "table_length": 72})], {"drive_distance": 25, "mileage": rate}))
    )
    assert driven is not None
    assert driven.costs["travel_cost"] == Decimal(str(50 * rate)).quantize(Decimal("0.01"))


def test_two_and_a_half_times_is_150_percent_markup() -> None:
    """The trade's rule: materials 60 and labour 100 are sold for 400, 60 % of it kept (common practice)."""
    job = Job([Piece("runner", {"count": 1, "table_length": 72})], {})
    hours = work(BOOK, job).figure("hours_hands_on")
    assert hours is not None
    said = {"own_materials": 60, "labour_rate": 100 / hours.value}
    made = quote(work(BOOK, Job(job.pieces, said)))
    assert made is not None
    assert made.price == 400
    assert made.margin == Decimal("0.6")


@pytest.mark.parametrize(("code", "digits"), [("USD", 2), ("EUR", 2), ("GBP", 2), ("JPY", 0), ("KWD", 3), ("CHF", 2)])
def test_minor_units_of_iso_4217(code: str, digits: int) -> None:
    """ISO 4217 table A.1, minor unit."""
    assert digits_of(code) == digits


def test_amounts_as_the_cldr_writes_them() -> None:
    """Unicode CLDR, English (United States)."""
    assert cash(Decimal("1234.5"), "USD") == "$1,234.50"
    assert cash(Decimal(1235), "JPY") == "¥1,235"
    assert cash(Decimal("1234.5"), "GBP") == "£1,234.50"
    assert cash(Decimal(1230), "EUR", whole=True) == "€1,230"
