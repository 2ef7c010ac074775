"""What a job has to fit into, balloons at hand, a budget, hours and crew, a vehicle; and the greatest that fits."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from assistant.state import HeardPiece, State
from assistant.telling import shown
from assistant.trying import money, tried, value
from grammar.quantities import quantities_at, read_quantities
from grammar.reading import Reading
from grammar.scan import scan
from rules import Book, Estimate
from rules.units import convert

ON_HAND = "balloons_on_hand"
TOLERANCE = 1e-6
LOOK_ON = 6  # steps beyond the greatest that fits: clusters and pairs make the count climb in uneven steps
CREW = re.compile(r"\b(\w+) of us\b")


@dataclass(frozen=True, slots=True)
class Limit:
    """The most that a figure of the job may be, with the words for it ("400 balloons", "$300")."""

    id: str
    most: float
    words: str
    unit: str


def hear(book: Book, now: State, reading: Reading) -> None:
    """Hours and a vehicle's room named beside what is to fit into them are kept with the job, and count as read."""
    text = reading.text.lower()
    for quantity in read_quantities(reading.text):
        if quantity.kind == "duration":
            now.job["hours"] = round(convert(float(quantity.value), quantity.unit, "hour"), 3)
            _used(reading, quantity.text)
    tokens = scan(reading.text)
    for i in range(len(tokens)):
        volume = next((q for q in quantities_at(tokens, i) if q.kind == "volume"), None)
        if volume is not None:
            now.job["room"] = {"volume": convert(float(volume.value), volume.unit, "ft**3"), "name": volume.text}
            _used(reading, volume.text)
    vehicle = _vehicle(book, text)
    if vehicle is not None and "room" not in reading.job:
        name, raw = vehicle
        now.job.setdefault("room", {}) if any(q in text for q in ("cubic", "litre")) else now.job.pop("room", None)
        now.job["room"] = now.job.get("room") or {"volume": float(raw["volume"]["typical"]), "name": name}
        _used(reading, name)


def _vehicle(book: Book, text: str) -> tuple[str, Any] | None:
    named = [
        (word, raw)
        for raw in book.others.get("vehicle", {}).values()
        for word in raw["words"]
        if re.search(rf"\b{re.escape(word)}\b", text)
    ]
    return max(named, key=lambda one: len(one[0])) if named else None


def _used(reading: Reading, words: str) -> None:
    """What was taken here is not reported as unread."""
    taken = set(words.lower().split()) | {"fit", "fits", "in", "hours", "hour"}
    reading.unread = [said for said in reading.unread if not set(said.lower().split()) <= taken]


def limits_of(book: Book, state: State, place: int) -> list[Limit]:
    """All that was said to limit the job, in the order: balloons, money, hours, room."""
    made = tried(book, state)
    piece = state.pieces[place]
    found: list[Limit] = []
    count = piece.facts.get("balloons")
    if count and is_on_hand(book, piece):
        found.append(Limit("balloons_to_buy", float(count), f"{count:,.0f} balloons", "count"))
    budget = state.job.get("budget")
    if budget:
        amount = float(budget["amount"])
        found.append(Limit("price", amount, money(amount, made, budget.get("currency")), "USD"))
    hours, crew = state.job.get("hours"), int(state.job.get("crew") or 1)
    if hours:
        who = f"{crew} people" if crew > 1 else "one person"
        found.append(Limit("hours_hands_on", hours * crew, f"{shown(hours, 'hour')} of {who}", "hour"))
    room = state.job.get("room")
    if room:
        part = (value(made, "load_share") or 100) / 100
        found.append(Limit("load_volume", room["volume"] * part, f"{part:.0%} of the {room['name']}", "ft**3"))
    return found


def is_on_hand(book: Book, piece: HeardPiece) -> bool:
    """Whether a number of balloons means those at hand: it does but in bunches and drops, which it is the size of."""
    heard = book.kind_of(piece.kind).hears.get("balloons")
    return heard == ON_HAND or (heard == "balloons_in_each" and "count" not in piece.facts)


def over(made: Estimate, limits: list[Limit]) -> list[tuple[Limit, float]]:
    """The limits that a version exceeds, and by how much; one that cannot be worked out is exceeded beyond measure."""
    found = []
    for limit in limits:
        worth = value(made, limit.id)
        gap = (worth if worth is not None else float("inf")) - limit.most
        if gap > TOLERANCE * max(1.0, limit.most):
            found.append((limit, gap))
    return found


def greatest(fits: Callable[[Fraction], bool], least: Fraction, most: Fraction, step: Fraction) -> Fraction | None:
    """The greatest of least, least + step ... most that fits, None where least does not.

    By halving, as what is asked for grows with the number; then a few steps on, where it grows unevenly.
    """
    if not fits(least):
        return None
    low, high = 0, int((most - least) / step)
    reach = 1
    while reach <= high and fits(least + reach * step):
        low, reach = reach, reach * 2
    high = min(high, reach)
    while high - low > 1:
        middle = (low + high) // 2
        if fits(least + middle * step):
            low = middle
        else:
            high = middle
    if low + 1 == high and high < reach and fits(least + high * step):
        low = high
    ahead = [k for k in range(low + 1, low + 1 + LOOK_ON) if least + k * step <= most and fits(least + k * step)]
    return least + max(ahead, default=low) * step
