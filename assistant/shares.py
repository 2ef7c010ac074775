"""What each piece is of the whole: its balloons, hours and price, what the job is without it, which takes most."""

import re

from assistant.asked import Asked, Blocks
from assistant.fitting import capital
from assistant.layout import listed, paragraph
from assistant.levers import cheaper, per_table
from assistant.naming import named_pieces, spoken_of
from assistant.price import price, why_labour
from assistant.telling import worth
from assistant.trying import money, tried, value, with_pieces
from rules import Estimate

WITHOUT = re.compile(
    r"\b(without|sav(es?|ing)|drop(s|ping)?|leav(es?|ing) out|los(es?|ing)|cut(s|ting)?|skip(s|ping)?)\b"
    r"|(n'?t|\bnot) (have|want|do|get|bother)\b"
)
LEAST = re.compile(r"\b(least|quickest|fastest|cheapest|fewest|easiest|shortest)\b")
MOST = re.compile(r"\b(most|longest|dearest|biggest|slowest|priciest|expensive|hardest)\b")
HOURS = re.compile(r"\b(time|long(est)?|hours?|quick(est)?|slow(est)?|fast(est)?|work|eas\w+|hard\w*)\b")
BALLOONS = re.compile(r"\bballoons?\b")


def shares(asked: Asked) -> Blocks | None:
    """Each piece as a job of its own beside the whole, the one that was asked about first."""
    pieces = asked.now.pieces
    if len(pieces) < 2:
        return _of_one(asked)
    alone = [tried(asked.book, with_pieces(asked.now, [piece])) for piece in pieces]
    names = dict(named_pieces(asked.book, asked.now))
    head = _head(asked, alone, names)
    if head is None:
        return None
    lines: list[str] = []
    for place, made in enumerate(alone):
        parts = [f"{_told(made, 'balloons_all')} balloons", f"{_told(made, 'hours_hands_on')} of hands"]
        parts.append(money(value(made, "price") or 0, made))
        lines += paragraph(f"- {names[place]}: {', '.join(parts)}", asked.width, "  ")
    last = "Each as if made alone: bags and driving are shared, so the parts need not add up."
    return [paragraph(head, asked.width), lines, paragraph(last, asked.width)]


def _of_one(asked: Asked) -> Blocks | None:
    """Of a job of one piece: what could be left out, what takes the time, each of several alike, or the price."""
    if WITHOUT.search(asked.reading.text.lower()):
        return cheaper(asked)
    if HOURS.search(asked.reading.text.lower()):
        return why_labour(asked)
    several = (value(asked.made, "count", 0) or 1) > 1
    return per_table(asked) if several else price(asked)


def _head(asked: Asked, alone: list[Estimate], names: dict[int, str]) -> str | None:
    """The sentence that answers; None where the price of the whole is not known."""
    text = asked.reading.text.lower()
    total = value(asked.made, "price")
    if total is None:
        return None
    meant = sorted(spoken_of(asked.book, asked.now, text))
    if WITHOUT.search(text) and 0 < len(meant) < len(names):
        rest = [piece for place, piece in enumerate(asked.now.pieces) if place not in meant]
        less = value(tried(asked.book, with_pieces(asked.now, rest)), "price") or 0
        gone = listed(names[place] for place in meant)
        saved, now = money(total - less, asked.made), money(total, asked.made)
        return f"Without {gone}: {money(less, asked.made)}, {saved} less than {now}."
    if MOST.search(text) or LEAST.search(text):
        id = "hours_hands_on" if HOURS.search(text) else "balloons_all" if BALLOONS.search(text) else "price"
        pick = min if LEAST.search(text) and not re.search(r"\bmost\b", text) else max
        place = pick(range(len(alone)), key=lambda at: value(alone[at], id) or 0)
        noun = {"hours_hands_on": " of hands", "balloons_all": " balloons", "price": ""}[id]
        return f"{capital(names[place])}: {_told(alone[place], id)}{noun} of {_told(asked.made, id)} in all."
    if len(meant) == 1:
        own_price = value(alone[meant[0]], "price") or 0
        count = value(asked.made, "count", meant[0]) or 1
        each = f", {money(own_price / count, asked.made)} each" if count > 1 else ""
        own = f"{money(own_price, asked.made)} made alone{each}"
        return f"{capital(names[meant[0]])}: {own}; all together {money(total, asked.made)}."
    return f"All together {money(total, asked.made)}."


def _told(made: Estimate, id: str) -> str:
    figure = made.figure(id)
    return worth(figure, metric=made.metric) if figure is not None else "no"
