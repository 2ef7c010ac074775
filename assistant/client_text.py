"""A short text to paste: for the client in plain words, a range or a firm price; for the decorator the counts."""

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.naming import asks, cash, named_pieces
from assistant.price import quoted
from assistant.schedule import clock_only, hours_text, plan_of
from assistant.telling import worth
from assistant.trying import value
from rules import shopping
from rules.quote import Quote

LONGEST = 600
FIRM = ("firm", "fixed", "exact price", "final price", "definite", "set price")
TENS = Decimal(10)
ALLERGY = "Our balloons are latex, so tell me of any allergies."


def client_text(asked: Asked) -> Blocks | None:
    """At most 600 characters for the client: what, where, how much, when; no cost of ours, no word of the trade."""
    made = quoted(asked.made)
    if made is None or not asked.now.pieces:
        return None
    must = [f"Hello! For your party: {_pieces(asked)}.", _sum(asked, made)]
    may = [_pay(made), _times(asked), ALLERGY, "Tell me if it suits and I will keep the date."]
    return [paragraph(_fitted(must, may), asked.width)]


def decorator_text(asked: Asked) -> Blocks | None:
    """The same in the decorator's words: counts, bags, hours, cost and price, in at most 600 characters."""
    made = quoted(asked.made)
    if made is None or not asked.now.pieces:
        return None
    rows = [f"{row.packs} x {row.pack} {row.size_in:g} in {row.colour or 'any'}" for row in shopping(asked.made)]
    balloons, hours = (value(asked.made, id) or 0 for id in ("balloons_all", "hours_hands_on"))
    costs, price = (cash(amount, made.currency) for amount in (made.cost, made.price))
    must = [
        f"{listed(name for _, name in named_pieces(asked.book, asked.now))}: {balloons:,.0f} balloons.",
        f"{hours_text(hours)} of hands; cost {costs}, price {price}.",
    ]
    may = [f"Bags: {', '.join(rows)}.", _times(asked)]
    return [paragraph(_fitted(must, may), asked.width)]


def _fitted(must: list[str], may: list[str]) -> str:
    """All that must be said and as much of the rest as fits."""
    text = " ".join(must)
    for part in may:
        if part and len(text) + 1 + len(part) <= LONGEST:
            text += f" {part}"
    return text if len(text) <= LONGEST else text[: LONGEST - 1].rsplit(" ", 1)[0] + "…"


def _pieces(asked: Asked) -> str:
    return listed(_piece(asked, place, name) for place, name in named_pieces(asked.book, asked.now))


def _piece(asked: Asked, place: int, name: str) -> str:
    """One piece as a client sees it: how many, how big, what colours, with leaves or without."""
    facts = asked.now.pieces[place].facts
    name = name.replace("runner", "table runner").removeprefix("the ")
    if not facts.get("count") or facts["count"] == 1:
        name = f"{'an' if name[0] in 'aeiou' else 'a'} {name}"
    length = asked.made.figure("decor_length", place)
    size = f" {worth(length, metric=asked.now.metric)} long" if length is not None and "runner" in name else ""
    each = " each" if size and "runners" in name else ""
    falls = {
        "drop_both": ", falling to the floor at both ends",
        "drop_one": ", falling to the floor at one end",
        "two_thirds": ", along two thirds of it",
    }.get(str(facts.get("coverage")), "")
    colours = [colour["name"] for colour in facts.get("colours", ())]
    dress = f" in {listed(colours)}" if colours else ""
    leaves = " with greenery" if facts.get("foliage") else ""
    floating = asked.made.step("gas", place)
    air = ", floating on helium" if floating is not None and floating.value == "helium" else ""
    return f"{name}{size}{each}{falls}{dress}{leaves}{air}"


def _sum(asked: Asked, made: Quote) -> str:
    """The range in whole tens, or the firm price to the cent, whichever was asked for."""
    tax = " including tax" if made.tax else " before tax"
    if asks(asked, *FIRM):
        return f"The price is {cash(made.total, made.currency)}{tax}."
    figure = asked.made.figure("price")
    if figure is None or figure.low is None or figure.high is None or figure.low == figure.high:
        return f"The price is {cash(made.total, made.currency)}{tax}."
    share = made.total / made.price if made.price else Decimal(1)
    low = (Decimal(str(figure.low)) * share / TENS).to_integral_value(ROUND_FLOOR) * TENS
    high = (Decimal(str(figure.high)) * share / TENS).to_integral_value(ROUND_CEILING) * TENS
    return (
        f"That would be between {cash(low, made.currency, whole=True)} and "
        f"{cash(high, made.currency, whole=True)}{tax}; the firm price follows when all is settled."
    )


def _pay(made: Quote) -> str:
    part = made.deposit / made.total if made.total else Decimal(0)
    if not part or part == 1:
        return "It is paid when you book." if part else ""
    share = "Half" if abs(part - Decimal("0.5")) < Decimal("0.001") else f"{part:.0%}"
    return f"{share} books the date, the rest is due before the day."


def _times(asked: Asked) -> str:
    day = plan_of(asked.made).day
    if day is None or day.short:
        return ""
    return f"We would come at {clock_only(day.arrive)} and be ready by {clock_only(day.ready)}."
