"""A price line by line, in Decimal: what it costs, what is put on, tax, deposit and balance; the lines add up."""

from decimal import ROUND_HALF_UP, Decimal

from rules.engine import Estimate
from rules.money import CENTS, as_decimal, margin_of, tax_on, to_cents, to_step
from rules.record import record
from rules.units import factor

COSTS = ("materials_cost", "labour_cost", "travel_cost", "hire_cost", "overhead_cost")
NOUGHT = Decimal(0)


@record
class Quote:
    """All amounts are whole cents of `currency` (ISO 4217); rates are parts of one.

    costs by figure id; cost their sum; profit what the markup puts on; rush, discount (below nought), raised (to the
    least order) and rounding (to the step) lead from cost + profit to price; taxed the part of the price that is
    taxed; total = price + tax = deposit + balance.
    """

    currency: str
    costs: dict[str, Decimal]
    markup: Decimal
    profit: Decimal
    rush: Decimal
    discount: Decimal
    raised: Decimal
    rounding: Decimal
    price: Decimal
    taxed: Decimal
    tax_rate: Decimal
    tax: Decimal
    deposit: Decimal
    balance: Decimal

    @property
    def cost(self) -> Decimal:
        """What the job costs the decorator."""
        return sum(self.costs.values(), NOUGHT)

    @property
    def margin(self) -> Decimal:
        """The markup said as a part of the price, before rush, discount and the least order."""
        return margin_of(self.markup)

    @property
    def kept(self) -> Decimal:
        """The part of the final price that is not cost."""
        return (self.price - self.cost) / self.price if self.price else NOUGHT

    @property
    def total(self) -> Decimal:
        """What the client pays."""
        return self.price + self.tax


def quote(
    estimate: Estimate, *, digits: int = CENTS, step: Decimal | None = None, rounding: str = ROUND_HALF_UP
) -> Quote | None:
    """The quote of a job, None where its cost is not known.

    digits: of the currency after the point (ISO 4217); step: what the price is rounded to, a cent where None; rounding:
    the decimal module's mode for every line but the tax, which has its own rule (rules/money.py).
    """

    def cents(amount: Decimal) -> Decimal:
        return to_cents(amount, digits, rounding)

    costs = {id: cents(as_decimal(value)) for id in COSTS if (value := _value(estimate, id)) is not None}
    markup = _value(estimate, "markup")
    if "materials_cost" not in costs or "labour_cost" not in costs or markup is None:
        return None
    costs = {id: amount for id, amount in costs.items() if amount}
    cost = sum(costs.values(), NOUGHT)
    rate = as_decimal(markup)
    profit = cents(cost * rate)
    rush = cents((cost + profit) * _rate(estimate, "rush"))
    discount = -cents((cost + profit + rush) * _rate(estimate, "discount"))
    asked = cost + profit + rush + discount
    least = as_decimal(_value(estimate, "minimum_order") or 0.0)
    raised = max(cents(least) - asked, NOUGHT)
    price = to_step(asked + raised, step, rounding) if step else asked + raised
    taxed = cents(price * as_decimal(value if (value := _value(estimate, "taxed_share")) is not None else 1.0))
    tax_rate = _rate(estimate, "tax")
    tax = tax_on(taxed, tax_rate, digits)
    deposit = cents((price + tax) * _rate(estimate, "deposit"))
    known = estimate.step("price")
    return Quote(
        currency=known.fact.unit if known is not None else "USD",
        costs=costs,
        markup=rate,
        profit=profit,
        rush=rush,
        discount=discount,
        raised=raised,
        rounding=price - asked - raised,
        price=price,
        taxed=taxed,
        tax_rate=tax_rate,
        tax=tax,
        deposit=deposit,
        balance=price + tax - deposit,
    )


def _value(estimate: Estimate, id: str) -> float | None:
    """A number of the job, money in its currency, a percentage as a part of one."""
    step = estimate.step(id)
    if step is None:
        return None
    return float(step.value) / (1.0 if step.fact.unit == "percent" else factor(step.fact.unit))


def _rate(estimate: Estimate, id: str) -> Decimal:
    return as_decimal(_value(estimate, id) or 0.0)
