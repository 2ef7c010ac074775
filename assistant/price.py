"""Money: the price line by line, markup beside margin, the price of a table, and why labour is what it is."""

from decimal import Decimal

from assistant.asked import Asked, Blocks
from assistant.layout import labelled, paragraph
from assistant.naming import asks, cash, digits_of, noun_of
from assistant.schedule import hours_text
from assistant.state import State
from assistant.telling import shown, worth
from assistant.trying import levers, tried, value, variant
from rules import Estimate
from rules.crew import AFTER, tasks_of
from rules.money import margin_of, markup_of, to_cents
from rules.quote import Quote, quote

LABELS = {
    "materials_cost": "goods",
    "labour_cost": "labour",
    "travel_cost": "travel",
    "hire_cost": "hire",
    "overhead_cost": "office",
}
FIXED = ("travel_cost", "hire_cost")
FROM_MEMORY = ("own_materials", "labour_rate")
FAMILY = frozenset({"price", "labour", "schedule"})
OWN = 'Prices are first ones, from memory: say yours, "materials cost 180", "labour 25 an hour".'


def price(asked: Asked) -> Blocks | None:
    """What to ask for it, or markup against margin, or a table's part of it, as asked."""
    made = quoted(asked.made)
    if made is None:
        return None
    if asks(asked, "markup or", "margin or", "or margin", "or markup", "mark-up or", "mark up or"):
        return markup_or_margin(asked, made)
    if asks(asked, "per table", "each table", "a table", "per piece", "next table", "one more table", "extra table"):
        return per_table(asked, made)
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
    own = OWN if _own_wanted(asked) else 'Say "is that markup or margin" or "price per table".'
    return [paragraph(head, asked.width), _rows(asked, made), paragraph(own, asked.width)]


def _rows(asked: Asked, made: Quote) -> list[str]:
    """The lines, which add up; nothing is told twice."""
    width = asked.width
    rows: list[str] = []
    for id, amount in made.costs.items():
        rows += labelled(LABELS[id], f"{_cash(amount, made)}{_note(asked, id)}", width)
    rows += labelled(
        "profit", f"{_cash(made.profit, made)}, {_percent(made.markup)} markup = {_percent(made.margin)} margin", width
    )
    extras = (("rush", made.rush), ("less", made.discount), ("least", made.raised), ("round", made.rounding))
    for label, amount in extras:
        if amount:
            rows += labelled(label, _cash(amount, made), width)
    if made.rush or made.discount or made.raised:
        rows += labelled("price", f"{_cash(made.price, made)}, {_percent(made.kept)} of it kept", width)
    if made.tax:
        on = "" if made.taxed == made.price else f" on {_cash(made.taxed, made)}"
        rows += labelled("tax", f"{_cash(made.tax, made)}, {_percent(made.tax_rate)}{on}", width)
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
    head = (
        f"A {used} of {_percent(rate)}, {how}: that is {_percent(made.markup if by_margin else made.margin)} {other}."
    )
    sums = (
        f"price = cost x (1 + markup): {_cash(made.cost, made)} x {1 + made.markup:.4g} = {_cash(made.cost + made.profit, made)}; "
        f"margin = profit / price: {_cash(made.profit, made)} / {_cash(made.cost + made.profit, made)} = {_percent(made.margin)}."
    )
    if by_margin:
        wrong = made.cost * (1 + rate)
        last = f"Read as a markup of {_percent(rate)} ({_percent(margin_of(rate))} margin) it would be {_cash(wrong, made)}."
    elif rate < 1:
        wrong = made.cost * (1 + markup_of(rate))
        last = f"Read as a margin of {_percent(rate)} ({_percent(markup_of(rate))} markup) it would be {_cash(wrong, made)}."
    else:
        last = f"As a margin {_percent(rate)} cannot be: no price is all profit. 50 % markup is 33.3 % margin."
    return [paragraph(head, asked.width), paragraph(sums, asked.width), paragraph(last, asked.width)]


# a table -------------------------------------------------------------------------------------------------------------


def per_table(asked: Asked, made: Quote) -> Blocks | None:
    """The total shared out, what comes once for all apart, and what one more would add."""
    place, count = _counted(asked.now)
    if count is None or place is None:
        return [
            paragraph(
                f"The whole is {_cash(made.price, made)}; it is one piece, so there is nothing to share.", asked.width
            )
        ]
    kind = asked.now.pieces[place].kind
    noun = "table" if kind == "runner" else noun_of(asked.book, kind, 1)
    fixed = to_cents(sum((made.costs.get(id, Decimal(0)) for id in FIXED), Decimal(0)) * (1 + made.markup))
    each = made.price / count
    head = f"{_cash(each, made)} a {noun}: {_cash(made.price, made)} for {count}, before tax."
    once = "Travel and hire are in it once"
    if fixed:
        apart = f"{once}, {_cash(fixed, made)}; without it {_cash((made.price - fixed) / count, made)} a {noun}."
    else:
        apart = f"{once} when you say them (how far, what hire); none is in it yet."
    more = tried(asked.book, variant(asked.now, place, {"count": count + 1}))
    after = quoted(more)
    adds = f"One more adds {_cash(after.price - made.price, made)}." if after is not None else ""
    goods = value(asked.made, "balloons_each", place)
    holds = f"Each has about {goods:,.0f} balloons, made, laid and settled." if goods else ""
    half = f"So half the {noun}s is not half the price." if fixed else ""
    return [
        paragraph(head, asked.width),
        paragraph(holds, asked.width),
        paragraph(f"{apart} {adds} {half}", asked.width),
    ]


def _counted(state: State) -> tuple[int | None, int | None]:
    places = [state.focus] if state.focus is not None else []
    for place in [*places, *range(len(state.pieces))]:
        count = state.pieces[place].facts.get("count") if place is not None and place < len(state.pieces) else None
        if isinstance(count, int | float) and count > 1:
            return place, int(count)
    return None, None


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
    head = f"Labour {_cash(labour, made)}, goods {_cash(goods, made)}: {hours_text(hours)} of hands at {worth(rate)}, {crew}."
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


def _own_wanted(asked: Asked) -> bool:
    """Whether to ask for the decorator's own prices: where they rest on memory, and not a second time running."""
    return asked.before.intent not in FAMILY and not all(id in asked.now.job for id in FROM_MEMORY)


def _cash(amount: Decimal, made: Quote) -> str:
    return cash(to_cents(amount, digits_of(made.currency)), made.currency)


def _percent(part: Decimal) -> str:
    return shown(round(float(part) * 100, 1), "percent")
