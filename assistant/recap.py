"""What is in hand in other words: what was said of it, its sizes of balloon, its lengths in another unit."""

import re

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.naming import named_pieces, spoken_of
from assistant.options import worded
from assistant.state import HeardPiece
from assistant.telling import shown, worth
from rules.show import quantity
from rules.units import convert

UNITS = (
    ("cm", re.compile(r"\bcm\b|centimet")),
    ("m", re.compile(r"\bmet(re|er)s?\b|\bmetric\b")),
    ("in", re.compile(r"\binch")),
    ("ft", re.compile(r"\bf(oo|ee)t\b")),
)
LENGTHS = (
    "decor_length",
    "height_overall",
    "width_overall",
    "span",
    "height",
    "runner_width",
    "top_height",
    "outer_width",
)
WAYS = {
    "high": re.compile(r"\b(tall|high|height)\b"),
    "wide": re.compile(r"\b(wide|width|thick|across)\b"),
    "long": re.compile(r"\b(long|length)\b"),
}
OF_WAY = {"high": ("height", "top"), "wide": ("width", "span"), "long": ("length",)}
SMALL, BIG = (
    re.compile(r"\b(small\w*|little|tiny|mini\w*|fill\w*)\b"),
    re.compile(r"\b(big\w*|large\w*|giant\w*|jumbo\w*)\b"),
)


def recap(asked: Asked) -> Blocks | None:
    """What was said so far of each piece, or of the one that is named, and of the job."""
    lines: list[str] = []
    meant = _meant(asked)
    for place, name in named_pieces(asked.book, asked.now):
        if place in meant:
            said = ", ".join(_said(asked, asked.now.pieces[place])) or "nothing else"
            lines += paragraph(f"- {name}: {said}", asked.width, "  ")
    if len(meant) == len(asked.now.pieces):
        for id in asked.now.job:
            figure = asked.made.figure(id)
            if figure is not None:
                lines += paragraph(f"- {figure.name}: {worth(figure, metric=asked.made.metric)}", asked.width, "  ")
    last = 'The rest is taken: "what did you assume".'
    return [[*paragraph("You said:", asked.width), *lines], paragraph(last, asked.width)]


def _said(asked: Asked, piece: HeardPiece) -> list[str]:
    parts = [worded(asked, piece, fact) for fact in piece.facts if fact not in {"colours", "count"}]
    colours = [
        f"{colour['share'] * 100:.0f} % {colour['name']}" if colour.get("share") else str(colour["name"])
        for colour in piece.facts.get("colours", ())
    ]
    return [*filter(None, parts), *([listed(colours)] if colours else [])]


def sizes(asked: Asked) -> Blocks | None:
    """How many balloons of each size there are and how far they are blown; of the size that is named, where one is."""
    text = asked.reading.text.lower()
    named = {float(number) for number in re.findall(r"\d+(?:\.\d+)?", text)}
    lines: list[str] = []
    for place, name in named_pieces(asked.book, asked.now):
        parts = asked.made.parts(place)
        if place not in _meant(asked) or not parts:
            continue
        have = {part.size_in for part in parts}
        wanted = have & named or ({min(have)} if SMALL.search(text) else {max(have)} if BIG.search(text) else have)
        rows = [
            f"{part.count:,} of {part.size_in:g} in, blown to {shown(part.inflated_in, 'in', metric=asked.made.metric)}"
            for part in parts
            if part.size_in in wanted
        ]
        lines += paragraph(f"- {name}: {'; '.join(rows)}", asked.width, "  ")
    last = 'Spares not counted; "shopping list" has the bags.'
    return [lines, paragraph(last, asked.width)] if lines else None


def in_units(asked: Asked) -> Blocks | None:
    """The lengths of what is in hand in the unit that is named, those that were asked for where a way is named."""
    text = asked.reading.text.lower()
    unit = next((unit for unit, words in UNITS if words.search(text)), None)
    if unit is None:
        return None
    ways = [part for way, words in WAYS.items() if words.search(text) for part in OF_WAY[way]]
    lines: list[str] = []
    for place, name in named_pieces(asked.book, asked.now):
        rows = []
        for id in LENGTHS:
            figure = asked.made.figure(id, place)
            if figure is not None and (not ways or any(part in id for part in ways)):
                rows.append(f"{figure.name} {quantity(convert(float(figure.value), figure.unit, unit), unit)}")
        if rows and place in _meant(asked):
            lines += paragraph(f"- {name}: {'; '.join(rows)}", asked.width, "  ")
    return [lines] if lines else None


def _meant(asked: Asked) -> frozenset[int]:
    """The pieces that are named, all of them where none is."""
    return spoken_of(asked.book, asked.now, asked.reading.text) or frozenset(range(len(asked.now.pieces)))
