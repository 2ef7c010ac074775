"""What a job earns: the profit, what it comes to an hour, where it breaks even, at the price in hand or another."""

import re
from decimal import Decimal

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.naming import cash, spoken_of
from assistant.price import percent, quoted
from assistant.schedule import hours_text
from assistant.trying import tried, value, with_pieces
from grammar.numbers.quantities import read_quantities

OTHER = re.compile(r"\b(charg\w*|ask\w*|quot\w*|at|for|say|said|sell\w*|took|take|got|get|pays?|paid)\b")
EVEN = re.compile(r"\bbreak\w*[- ]?even\b|\bcover my costs\b|\blos(e|ing) money\b")


def earnings(asked: Asked) -> Blocks | None:
    """The profit of the price in hand, or of the one that was named; an hour of it; and what just covers the costs."""
    meant = spoken_of(asked.book, asked.now, asked.reading.text)
    estimate = asked.made
    if len(meant) == 1 and len(asked.now.pieces) > 1:
        estimate = tried(asked.book, with_pieces(asked.now, [asked.now.pieces[min(meant)]]))
    made = quoted(estimate)
    if made is None:
        return None
    named = _named(asked.reading.text)
    price = made.price if named is None else named
    profit = price - made.cost
    share = percent(profit / price) if price else "0 %"
    if named is None and EVEN.search(asked.reading.text.lower()):
        head = f"Break even is {cash(made.cost, made.currency)}: goods, labour and driving, no profit."
    elif profit < 0:
        head = f"At {cash(price, made.currency)} you lose {cash(-profit, made.currency)}."
    elif named is None:
        head = f"Profit {cash(profit, made.currency)} of {cash(price, made.currency)}, a margin of {share}."
    else:
        head = f"At {cash(price, made.currency)}: profit {cash(profit, made.currency)}, a margin of {share}."
    labour = made.costs.get("labour_cost", Decimal(0))
    hours = (value(estimate, "hours_hands_on") or 0) + (value(estimate, "hours_taking_down") or 0)
    lines: list[str] = []
    if hours:
        mine = profit + labour
        rate = cash((mine / Decimal(hours)).quantize(Decimal("0.01")), made.currency)
        text = f"Where all the hands are yours: {cash(mine, made.currency)} for {hours_text(hours)}, {rate} an hour."
        lines = paragraph(text, asked.width)
    costs = f"Goods {cash(made.costs.get('materials_cost', Decimal(0)), made.currency)}"
    costs += f", labour {cash(labour, made.currency)}; below {cash(made.cost, made.currency)} it loses."
    last = "Before tax. Prices and paces are from memory until you say yours."
    return [paragraph(head, asked.width), lines, paragraph(costs, asked.width), paragraph(last, asked.width)]


def _named(text: str) -> Decimal | None:
    """The price that the turn names: of money, or a bare number behind a verb of asking."""
    for quantity in read_quantities(text):
        if quantity.kind == "money" or (quantity.kind == "number" and OTHER.search(text.lower())):
            return Decimal(str(float(quantity.value))) if quantity.value > 0 else None
    return None
