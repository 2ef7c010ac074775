"""Money in Decimal: rounding to the cent, tax, markup and margin.  Rates are parts of one (0.0625 is 6.25 %).

ValueError where a rate or a price cannot be.
"""

from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal

ONE = Decimal(1)
CENTS = 2  # digits after the point in most currencies (ISO 4217, the minor unit)


def as_decimal(number: float) -> Decimal:
    """A float of the engine as a Decimal, its noise beyond the tenth place left out."""
    return Decimal(str(round(number, 10)))


def to_cents(amount: Decimal, digits: int = CENTS, rounding: str = ROUND_HALF_UP) -> Decimal:
    """An amount with so many digits after the point, a half away from nought unless another rounding is named."""
    return amount.quantize(ONE.scaleb(-digits), rounding)


def to_step(amount: Decimal, step: Decimal, rounding: str = ROUND_HALF_UP) -> Decimal:
    """An amount in whole steps: the nearest 5, 10 or 0.05."""
    if step <= 0:
        raise ValueError("a price is rounded to a step above nought")
    return (amount / step).quantize(ONE, rounding) * step


def tax_on(amount: Decimal, rate: Decimal, digits: int = CENTS) -> Decimal:
    """The tax on an amount, carried to one place past the cent and rounded up where that place is above four.

    Streamlined Sales and Use Tax Agreement, section 324.  Carried means cut off, so that 0.0149 is 0.01.
    """
    if rate < 0:
        raise ValueError("a tax is not below nought")
    carried = (amount * rate).quantize(ONE.scaleb(-digits - 1), ROUND_DOWN)
    return to_cents(carried, digits)


def margin_of(markup: Decimal) -> Decimal:
    """The part of the price that is profit where the cost is marked up by so much: m / (1 + m)."""
    if markup <= -1:
        raise ValueError("a markup leaves some price")
    return markup / (1 + markup)


def markup_of(margin: Decimal) -> Decimal:
    """What is put on the cost where so much of the price is profit: g / (1 - g)."""
    if margin >= 1:
        raise ValueError("a margin is less than the whole price")
    return margin / (1 - margin)
