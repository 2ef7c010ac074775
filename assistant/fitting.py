"""How backwards answers are worded: what fits, what of each limit it takes, what is left, what was not cut."""

from assistant.layout import paragraph
from assistant.limits import Limit
from assistant.state import State
from assistant.telling import shown, worth
from assistant.trying import value
from rules import Estimate

NOUNS = {"runner": "table", "centerpiece": "centrepiece"}
GROWS = ("length", "height", "span", "diameter", "table_length")  # what makes a piece smaller without taking it away


def amount(state: State, place: int, fact: str = "") -> str:
    """ "8 tables", "the garland", "column 6 ft 2 in high"."""
    piece = state.pieces[place]
    noun = NOUNS.get(piece.kind, piece.kind)
    count = int(piece.facts.get("count") or 1)
    several = f"{count} {noun}{'s' if count != 1 else ''}"
    if fact in GROWS and fact in piece.facts:
        role = {"height": " high", "span": " wide", "diameter": " across"}.get(fact, "")
        size = f"{length(float(piece.facts[fact]), state.metric)}{role}"
        return f"{several}, each {size}" if count != 1 else f"{noun} {size}" if role else f"{noun} of {size}"
    number = several if count != 1 or fact == "count" else f"the {noun}"
    return f"{number} of {piece.facts[fact]} balloons" if fact == "balloons" else number


def length(inches: float, metric: bool) -> str:
    """A length as it is measured out: whole inches in feet, or metres to the centimetre."""
    if metric:
        return f"{inches * 0.0254:.2f} m"
    feet, rest = divmod(round(inches), 12)
    return f"{feet} ft {rest} in" if rest and feet else f"{feet} ft" if feet else f"{rest} in"


def lost_words(lost: float, fact: str, state: State, place: int) -> str:
    """What is given up of a fact: "3 tables", "2 ft 4 in"."""
    noun = NOUNS.get(state.pieces[place].kind, state.pieces[place].kind)
    return f"{lost:.0f} {noun}{'s' if lost != 1 else ''}" if fact == "count" else length(lost, state.metric)


def one_more(fact: str, metric: bool) -> str:
    """The next step of a fact."""
    return "One more" if fact in ("count", "balloons") else "A centimetre more" if metric else "An inch more"


def told(made: Estimate, limit: Limit) -> str:
    """The figure that a limit is set to, as people say it."""
    figure = made.figure(limit.id)
    if figure is None:
        return "more than can be told"
    if limit.id == "price":
        return shown(float(figure.value), limit.unit)
    text = worth(figure, metric=made.metric)
    return {"balloons_to_buy": f"{text} balloons with spares", "hours_hands_on": f"{text} of hands"}.get(limit.id, text)


def gap_words(limit: Limit, gap: float, made: Estimate) -> str:
    """How far a figure is from its limit."""
    return f"{gap:,.0f}" if limit.unit == "count" else shown(gap, limit.unit, metric=made.metric)


def used_up(made: Estimate, limits: list[Limit], width: int) -> list[str]:
    """What of each limit is used and what is left of it."""
    lines: list[str] = []
    for limit in limits:
        left = limit.most - (value(made, limit.id) or 0)
        lines += paragraph(f"- {told(made, limit)}: {gap_words(limit, left, made)} left of {limit.words}", width, "  ")
    return lines


def kept(made: Estimate, limits: list[Limit]) -> str:
    """What was not cut to make it fit."""
    spare = made.figure("spare")
    spares = f"{worth(spare)} spares are kept" if spare is not None and spare.value else "No spares, as you said"
    price = next((limit for limit in limits if limit.id == "price"), None)
    own = made.figure("price")
    foreign = price is not None and own is not None and price.unit != own.unit
    labour = " and every hour of hands is paid" if price is not None else ""
    tail = f" The book's prices are taken as {price.unit}." if foreign and price is not None else ""
    return f"{spares}{labour}.{tail}"


def capital(text: str) -> str:
    """The text with its first letter as at the start of a sentence."""
    return text[:1].upper() + text[1:]
