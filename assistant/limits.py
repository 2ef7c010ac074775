"""What a job has to fit into, balloons at hand, a budget, hours and crew, a vehicle; and the greatest that fits."""

import math
import re
from collections.abc import Callable
from fractions import Fraction

from assistant.state import State
from assistant.telling import shown
from assistant.trying import SIGNS, tried, value, variant
from grammar.numbers.quantities import quantities_at, read_quantities
from grammar.reading import Reading
from grammar.tokens.scan import scan
from rules import Book, Estimate
from rules.record import record
from rules.units import convert, from_base

ON_HAND = "balloons_on_hand"
INCH, CENTIMETRE = Fraction(1), Fraction(100, 254)
LEAST_LENGTH = 12  # inches: what is shorter is no piece
TOLERANCE = 1e-6
FIRST_REACH = 8  # steps of the first try beyond the least
LOOK_ON = 6  # steps beyond the greatest that fits: clusters and pairs make the count climb in uneven steps


@record
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
            used(reading, quantity.text)
    room = _volume(reading.text) or _vehicle(book, text)
    if room is not None:
        volume, name, said = room
        now.job["room"] = {"volume": volume, "name": name}
        used(reading, said)


def _volume(text: str) -> tuple[float, str, str] | None:
    """A volume in the text: in cubic feet, how it is called, the words it was said in."""
    tokens = scan(text)
    for i in range(len(tokens)):
        for quantity in quantities_at(tokens, i):
            if quantity.kind == "volume":
                return convert(float(quantity.value), quantity.unit, "ft**3"), quantity.text, quantity.text
    return None


def _vehicle(book: Book, text: str) -> tuple[float, str, str] | None:
    """The vehicle of the book that the text names most closely, with its typical room."""
    named = [
        (word, raw)
        for raw in book.others.get("vehicle", {}).values()
        for word in raw["words"]
        if re.search(rf"\b{re.escape(word)}\b", text)
    ]
    if not named:
        return None
    word, raw = max(named, key=lambda one: len(one[0]))
    return float(raw["volume"]["typical"]), str(raw.get("name", word)), word


def used(reading: Reading, words: str) -> None:
    """What was taken here is not reported as unread."""
    taken = set(words.lower().split()) | {"fit", "fits", "in", "hours", "hour"}
    reading.unread = [said for said in reading.unread if not set(said.lower().split()) <= taken]


def limits_of(book: Book, state: State, place: int) -> list[Limit]:
    """All that was said to limit the job, in the order: balloons, money, hours, room."""
    made = tried(book, state)
    piece = state.pieces[place]
    found: list[Limit] = []
    count = piece.facts.get("balloons")
    if count and is_on_hand(book, state, place):
        found.append(Limit("balloons_to_buy", float(count), f"{count:,.0f} balloons", "count"))
    budget = state.job.get("budget")
    if budget:
        amount = float(budget["amount"])
        own = made.step("price")
        unit = SIGNS.get(budget.get("currency") or "", own.fact.unit if own is not None else "USD")
        found.append(Limit("price", amount, shown(amount, unit), unit))
    hours, crew = state.job.get("hours"), int(state.job.get("crew") or 1)
    if hours:
        who = f"{crew} people" if crew > 1 else "one person"
        found.append(Limit("hours_hands_on", hours * crew, f"{shown(hours, 'hour')} of {who}", "hour"))
    room = state.job.get("room")
    if room:
        part = (value(made, "load_share") or 100) / 100
        found.append(Limit("load_volume", room["volume"] * part, f"{part:.0%} of {room['name']}", "ft**3"))
    return found


def is_on_hand(book: Book, state: State, place: int) -> bool:
    """Whether a number of balloons means those at hand; in bunches it is their size where anything else limits them."""
    piece = state.pieces[place]
    heard = book.kind_of(piece.kind).hears.get("balloons")
    alone = "count" not in piece.facts and not any(state.job.get(fact) for fact in ("budget", "hours", "room"))
    return heard == ON_HAND or (heard == "balloons_in_each" and alone)


def over(made: Estimate, limits: list[Limit]) -> list[tuple[Limit, float]]:
    """The limits that a version exceeds, and by how much; one that cannot be worked out is exceeded beyond measure."""
    found = []
    for limit in limits:
        worth = value(made, limit.id)
        gap = (worth if worth is not None else float("inf")) - limit.most
        if gap > TOLERANCE * max(1.0, limit.most):
            found.append((limit, gap))
    return found


def room(made: Estimate, limits: list[Limit]) -> float:
    """What a version leaves of the tightest limit, as a part of that; below 0 where it exceeds one."""
    beyond = over(made, limits)
    if beyond:
        return -max(gap / max(1.0, limit.most) for limit, gap in beyond)
    return min(max(0.0, limit.most - (value(made, limit.id) or 0.0)) / max(1.0, limit.most) for limit in limits)


def greatest(left: Callable[[Fraction], float], least: Fraction, most: Fraction, step: Fraction) -> Fraction | None:
    """The greatest of least, least + step ... most of which something is `left`, None where that is below 0 for least.

    What is left goes down about evenly as the number goes up, so each try is where it would come to nothing; then a few
    steps on, where it goes unevenly.
    """
    rooms: dict[int, float] = {}

    def at(k: int) -> float:
        if k not in rooms:
            rooms[k] = left(least + k * step)
        return rooms[k]

    if at(0) < 0:
        return None
    last = int((most - least) / step)
    low, high = 0, last + 1
    narrow = True  # whether the last try left less than half to look through
    while high - low > 1:
        guess = _guess(rooms, low, high) if narrow else (low + high) // 2
        middle = min(max(guess, low + 1), high - 1)
        before = high - low
        if at(middle) >= 0:
            low = middle
        else:
            high = middle
        narrow = 2 * (high - low) <= before or high > last
    ahead = [k for k in range(low + 1, min(low + LOOK_ON, last) + 1) if at(k) >= 0]
    return least + max(ahead, default=low) * step


def _guess(rooms: dict[int, float], low: int, high: int) -> int:
    """Where nothing would be left, on the line through what was tried last on both sides, or through the first two."""
    if high in rooms:
        first, second = low, high
    elif low:
        first, second = 0, low
    else:
        return FIRST_REACH
    fall = (rooms[first] - rooms[second]) / (second - first)
    if not 0 < fall < math.inf:
        return FIRST_REACH * max(low, 1) if high not in rooms else (low + high) // 2
    return min(low + int(rooms[low] / fall), FIRST_REACH * FIRST_REACH * max(low, 1) if high not in rooms else high)


def steps_of(book: Book, state: State, place: int, fact: str) -> tuple[Fraction, Fraction, Fraction]:
    """The least, the most and the step of a fact to be found: whole pieces, whole inches or centimetres."""
    kind = state.pieces[place].kind
    spec = book.fact(book.kind_of(kind).hears.get(fact, fact), kind)
    low, high = spec.sane if spec is not None and spec.sane else (1.0, 1000.0)
    most = Fraction(round(from_base(high, spec.unit))) if spec is not None else Fraction(1000)
    if spec is None or spec.whole:
        return Fraction(1), most, Fraction(1)
    step = CENTIMETRE if state.metric else INCH
    least = max(Fraction(round(from_base(low, spec.unit))), Fraction(LEAST_LENGTH))
    return -(-least // step) * step, most, step


def largest(book: Book, state: State, place: int, fact: str, limits: list[Limit]) -> State | None:
    """The version with the most of a fact that keeps within every limit."""

    def version(number: Fraction) -> State:
        return variant(state, place, {fact: int(number) if number.denominator == 1 else float(number)})

    least, most, step = steps_of(book, state, place, fact)
    found = greatest(lambda number: room(tried(book, version(number)), limits), least, most, step)
    return version(found) if found is not None else None
