"""How backwards answers are worded: what fits, what of each limit it takes, what is left, what was not cut."""

from assistant.layout import paragraph
from assistant.limits import Limit
from assistant.state import State
from assistant.telling import shown, worth
from assistant.trying import money, value
from rules import Estimate

NOUNS = {"runner": "table", "centerpiece": "centrepiece"}
GROWS = ("length", "height", "span", "diameter", "table_length")  # what makes a piece smaller without taking it away


def amount(state: State, place: int, fact: str = "") -> str:
    """ "8 tables", "a garland of 16 ft 8 in"."""
    piece = state.pieces[place]
    noun = NOUNS.get(piece.kind, piece.kind)
    count = int(piece.facts.get("count") or 1)
    number = f"{count} {noun}{'s' if count != 1 else ''}" if count != 1 or fact == "count" else f"the {noun}"
    if fact in GROWS and fact in piece.facts:
        role = {"height": " high", "span": " wide", "diameter": " across"}.get(fact, "")
        each = "each " if count != 1 else ""
        return (
            f"{number if count != 1 else noun}, {each}{length(float(piece.facts[fact]), state.metric)}{role}".replace(
                ", ", " of ", 1
            )
        )
    return f"{number} of {piece.facts[fact]} balloons" if fact == "balloons" else number


def length(inches: float, metric: bool) -> str:
    if metric:
        return f"{inches * 0.0254:.2f} m"
    feet, rest = divmod(round(inches), 12)
    return f"{feet} ft {rest} in" if rest and feet else f"{feet} ft" if feet else f"{rest} in"


def lost_words(lost: float, fact: str, state: State, place: int) -> str:
    noun = NOUNS.get(state.pieces[place].kind, state.pieces[place].kind)
    return f"{lost:.0f} {noun}{'s' if lost != 1 else ''}" if fact == "count" else length(lost, state.metric)


def one_more(fact: str, metric: bool) -> str:
    return "One more" if fact in ("count", "balloons") else "A centimetre more" if metric else "An inch more"


def told(made: Estimate, limit: Limit) -> str:
    """The figure that a limit is set to, as people say it."""
    figure = made.figure(limit.id)
    if figure is None:
        return "more than can be told"
    text = worth(figure, metric=made.metric)
    return {"balloons_to_buy": f"{text} balloons with spares", "hours_hands_on": f"{text} of hands"}.get(limit.id, text)


def gap_words(limit: Limit, gap: float, made: Estimate) -> str:
    if limit.id == "price":
        return money(gap, made)
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
    labour = " and every hour of hands is paid" if any(limit.id == "price" for limit in limits) else ""
    return f"{spares}{labour}."


def capital(text: str) -> str:
    return text[:1].upper() + text[1:]
