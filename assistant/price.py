"""Money: the price line by line, markup beside margin, and why labour is what it is."""

from decimal import Decimal

from assistant.asked import Asked, Blocks
from assistant.layout import labelled, listed, paragraph
from assistant.levers import per_table
from assistant.naming import asks, cash, digits_of
from assistant.schedule import hours_text
from assistant.telling import shown, worth
from assistant.trying import levers, tried, value, variant
from rules import Estimate
from rules.crew import AFTER, tasks_of
from rules.money import margin_of, markup_of, to_cents
from rules.quote import Quote, quote
from rules.world import ASSUMED

LABELS = {
    "materials_cost": "goods",
    "labour_cost": "labour",
    "travel_cost": "travel",
    "hire_cost": "hire",
    "overhead_cost": "office",
}
FAMILY = frozenset({"price", "labour", "schedule"})
OWN = {  # what rests on memory until the decorator says it, of the job or of the house
    "balloon_price": '"5 inch balloons are 11 cents"',
    "labour_rate": '"my rate is 25 an hour"',
}


def price(asked: Asked) -> Blocks | None:
    """What to ask for it, or or markup against margin, as asked."""
    made = quoted(asked.made)
    if made is None:
        return None
    if asks(asked, "markup or", "margin or", "or margin", "or markup", "mark-up or", "mark up or"):
        return markup_or_margin(asked, made)
    if asks(asked, "per table", "a table", "each table", "per piece"):
        return per_table(asked)
    return _whole(asked, made)


def quoted(estimate: Estimate) -> Quote | None:
    """The quote in the currency that the prices are in, rounded to its smallest coin."""
    step = estimate.step("price")
    return quote(estimate, digits=digits_of(step.fact.unit)) if step is not None else None


def _whole(asked: Asked, made: Quote) -> Blocks:
    figure = asked.made.figure("price")
    ends = ""
    if figure is not None and figure.low is not None and figure.high is not None and figure.low != figure.high:
        low, high = (cash(Decimal(round(end)), made.currency, whole=True) for end in (figure.low, figure.high))
        ends = f" ({low} to {high})"
    tax = f"; {_cash(made.total, made)} with tax" if made.tax else ", before tax"
    head = f"Price {_cash(made.price, made)}{ends}{tax}."
    told = {"balloon_price"} if "own_materials" in asked.now.job else set()
    mine = [
        words for id, words in OWN.items() if id not in told and (step := asked.made.step(id)) and step.how == ASSUMED
    ]
    own = 'Try "is that markup or margin" or "price per table".'
    if mine and asked.before.intent not in FAMILY:
        own = f"From memory, so say your own: {listed(mine, 'or')}."
    return [paragraph(head, asked.width), _rows(asked, made), paragraph(own, asked.width)]


def _rows(asked: Asked, made: Quote) -> list[str]:
    """The lines, which add up; nothing is told twice."""
    width = asked.width
    rows: list[str] = []
    for id, amount in made.costs.items():
        rows += labelled(LABELS[id], f"{_cash(amount, made)}{_note(asked, id)}", width)
    rows += labelled(
        "profit", f"{_cash(made.profit, made)}, {percent(made.markup)} markup = {percent(made.margin)} margin", width
    )
    extras = (("rush", made.rush), ("less", made.discount), ("least", made.raised), ("round", made.rounding))
    for label, amount in extras:
        if amount:
            rows += labelled(label, _cash(amount, made), width)
    if made.rush or made.discount or made.raised:
        rows += labelled("price", f"{_cash(made.price, made)}, {percent(made.kept)} of it kept", width)
    if made.tax:
        on = "" if made.taxed == made.price else f" on {_cash(made.taxed, made)}"
        rows += labelled("tax", f"{_cash(made.tax, made)}, {float(made.tax_rate) * 100:g} %{on}", width)
    rows += labelled("pay", f"{_cash(made.deposit, made)} to book, {_cash(made.balance, made)} later", width)
    return rows


def _note(asked: Asked, id: str) -> str:
    if id == "labour_cost":
        rate = asked.made.figure("labour_rate")
        hours = (value(asked.made, "hours_hands_on") or 0) + (value(asked.made, "hours_taking_down") or 0)
        return f", {hours_text(hours)} at {worth(rate)}" if rate is not None else ""
    if id == "travel_cost":
        rate = asked.made.figure("mileage")
        return f" at {worth(rate)}" if rate is not None else ""
    return ""


# markup and margin ---------------------------------------------------------------------------------------------------


def markup_or_margin(asked: Asked, made: Quote) -> Blocks:
    """Which was used, both figures, and the price under the other reading of the same number."""
    by_margin = "margin" in asked.now.job
    rate = made.margin if by_margin else made.markup
    used, other = ("margin", "markup") if by_margin else ("markup", "margin")
    how = "said" if used in asked.now.job else "taken"
    head = f"A {used} of {percent(rate)}, {how}: that is {percent(made.markup if by_margin else made.margin)} {other}."
    asked_for = made.cost + made.profit
    sums = (
        f"price = cost x (1 + markup): {_cash(made.cost, made)} x {1 + made.markup:.4g} = {_cash(asked_for, made)}; "
        f"margin = profit / price: {_cash(made.profit, made)} / {_cash(asked_for, made)} = {percent(made.margin)}."
    )
    if by_margin:
        wrong = made.cost * (1 + rate)
        last = f"Read as a {percent(rate)} markup ({percent(margin_of(rate))} margin) it is {_cash(wrong, made)}."
    elif rate < 1:
        wrong = made.cost * (1 + markup_of(rate))
        last = f"Read as a {percent(rate)} margin ({percent(markup_of(rate))} markup) it is {_cash(wrong, made)}."
    else:
        last = f"As a margin {percent(rate)} cannot be: no price is all profit. 50 % markup is 33.3 % margin."
    return [paragraph(head, asked.width), paragraph(sums, asked.width), paragraph(last, asked.width)]


# labour --------------------------------------------------------------------------------------------------------------


def why_labour(asked: Asked) -> Blocks | None:
    """Hours by step, people and rate beside the balloons, and the one lever that lowers the hours most."""
    made = quoted(asked.made)
    rate = asked.made.figure("labour_rate")
    if made is None or rate is None:
        return None
    labour, goods = (made.costs.get(id, Decimal(0)) for id in ("labour_cost", "materials_cost"))
    hours = value(asked.made, "hours_hands_on") or 0
    people = round(value(asked.made, "crew") or 1)
    crew = "one person" if people == 1 else f"{people} people, so {hours_text(hours / people)} each"
    sums = f"Labour {_cash(labour, made)}, goods {_cash(goods, made)}"
    head = f"{sums}: {hours_text(hours)} of hands at {worth(rate)}, {crew}."
    steps = [task for task in tasks_of(asked.made) if task.place != AFTER]
    longest = sorted(steps, key=lambda task: -task.hours)[:4]
    told = "; ".join(f"{task.name} {hours_text(task.hours)}" for task in longest)
    balloons = value(asked.made, "balloons_all") or 0
    why = f"A balloon is cheap, but each of the {balloons:,.0f} is sized, tied and placed by hand."
    return [
        paragraph(head, asked.width),
        labelled("steps", told, asked.width),
        paragraph(f"{why} {_lever(asked, hours)}", asked.width),
    ]


def _lever(asked: Asked, hours: float) -> str:
    """The lever of the book that takes most hours off."""
    best: tuple[float, str] | None = None
    for place, piece in enumerate(asked.now.pieces):
        for name, _, facts in levers(asked.book, piece, asked.made, place):
            less = value(tried(asked.book, variant(asked.now, place, facts)), "hours_hands_on")
            if less is not None and less < hours - 0.05 and (best is None or hours - less > best[0]):
                best = (hours - less, name)
    if best is None:
        return ""
    return f"What lowers it most: {best[1]}, {hours_text(best[0])} less."


# words ---------------------------------------------------------------------------------------------------------------


def _cash(amount: Decimal, made: Quote) -> str:
    return cash(to_cents(amount, digits_of(made.currency)), made.currency)


def percent(part: Decimal) -> str:
    return shown(round(float(part) * 100, 1), "percent")
