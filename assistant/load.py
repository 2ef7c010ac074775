"""What goes in the vehicle: room taken against room there is, trips, and what to make on site instead."""

import math

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.naming import named_pieces, noun_of
from assistant.telling import shown, span, worth
from rules import Book, Figure
from rules.record import record

ROOM = "ft**3"


@record
class Vehicle:
    """A vehicle's room for load in cubic feet, low, typical and high."""

    name: str
    low: float
    typical: float
    high: float
    source: str


def vehicles(book: Book) -> list[tuple[Vehicle, tuple[str, ...]]]:
    """The vehicles of the book with the words for them, the smallest first."""
    found = []
    for raw in book.others.get("vehicle", {}).values():
        volume = raw["volume"]
        vehicle = Vehicle(raw["name"], volume["low"], volume["typical"], volume["high"], raw["source"])
        found.append((vehicle, tuple(raw["words"])))
    return sorted(found, key=lambda pair: pair[0].typical)


def vehicle_named(book: Book, text: str) -> Vehicle | None:
    """The vehicle that the text names by its longest name, None where it names none."""
    padded = f" {' '.join(text.lower().replace('?', ' ').replace(',', ' ').replace('-', ' ').split())} "
    said = [(len(word), vehicle) for vehicle, words in vehicles(book) for word in words if f" {word} " in padded]
    return max(said, key=lambda pair: pair[0])[1] if said else None


def transport(asked: Asked) -> Blocks | None:
    """Whether it fits, in how many trips, and what to inflate there if it does not."""
    load = asked.made.figure("load_volume")
    share = asked.made.figure("load_share")
    if load is None or share is None or not load.value:
        return None
    vehicle = _own(asked) or vehicle_named(asked.book, asked.reading.text)
    usable = float(share.value) / 100
    if vehicle is None:
        return _which(asked, load, usable)
    metric = asked.made.metric
    room = vehicle.typical * usable
    trips = _trips(float(load.value), room)
    best = _trips(float(load.low or load.value), vehicle.high * usable)
    worst = _trips(float(load.high or load.value), vehicle.low * usable)
    count = f"{trips} trips" if trips > 1 else "one trip"
    if best != worst:
        count += f" ({best} to {worst})"
    head = f"{'Yes' if trips == 1 else 'Not at once'}: {count} with {vehicle.name}."
    why = (
        f"Made up, all takes {worth(load, metric=metric)} ({span(load, metric=metric)}); of its "
        f"{shown(vehicle.typical, ROOM, metric=metric)} about {shown(room, ROOM, metric=metric)} can be used uncrushed."
    )
    blocks = [paragraph(head, asked.width), paragraph(why, asked.width)]
    if trips > 1:
        blocks.append(paragraph(_instead(asked, room), asked.width))
    own = "" if vehicle.source == OWN_SAID else 'Say your own, "cargo room 120 cubic feet". '
    blocks.append(paragraph(f"{own}Room: {vehicle.source}.", asked.width))
    return blocks


OWN_SAID = "you said it"


def _own(asked: Asked) -> Vehicle | None:
    said = asked.made.figure("own_room")
    if said is None:
        return None
    room = float(said.value)
    return Vehicle("your vehicle", room, room, room, OWN_SAID)


def _trips(load: float, room: float) -> int:
    return max(1, math.ceil(load / room - 1e-9))


def _which(asked: Asked, load: Figure, usable: float) -> Blocks:
    """The smallest vehicle that takes all at once, where none was named."""
    metric = asked.made.metric
    fits = next((v for v, _ in vehicles(asked.book) if v.typical * usable >= float(load.value)), None)
    head = f"Made up, it takes {worth(load, metric=metric)} ({span(load, metric=metric)}), not crushed."
    if fits is None:
        tail = "No single vehicle in the book takes it at once: string or inflate it on site."
    else:
        tail = f"In one trip: {fits.name}, about {shown(fits.typical, ROOM, metric=metric)}, filled to {usable:.0%}."
    last = "Lengths of 3 to 6 ft go through doors. What do you drive?"
    return [paragraph(head, asked.width), paragraph(tail, asked.width), paragraph(last, asked.width)]


def _instead(asked: Asked, room: float) -> str:
    """What to make on site so that the rest goes in one trip: the bulkiest pieces first, one by one."""
    parts = []
    for place, _ in named_pieces(asked.book, asked.now):
        volume = asked.made.figure("volume_of_piece", place)
        count = asked.made.figure("count", place)
        many = max(1, round(float(count.value))) if count is not None and not isinstance(count.value, str) else 1
        if volume is not None and volume.value:
            parts.append((float(volume.value) / many, many, asked.now.pieces[place].kind))
    over = sum(each * many for each, many, _ in parts) - room
    told = []
    for each, many, kind in sorted(parts, reverse=True):
        there = min(many, max(0, math.ceil(over / each - 1e-9)))
        over -= there * each
        if there:
            told.append(f"{there} of {many} {noun_of(asked.book, kind, many)}" if many > 1 else f"the {kind}")
    return f"For one trip, inflate {' and '.join(told)} on site; uninflated balloons take next to no room."
