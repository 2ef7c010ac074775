"""Two to four versions beside each other: under one another on a narrow screen, in columns on a wide one."""

import textwrap
from typing import Any

from assistant.asked import Asked, Blocks
from assistant.fitting import NOUNS
from assistant.layout import columns, paragraph
from assistant.speech import spoken
from assistant.state import HeardPiece, State
from assistant.stock import bags_of
from assistant.telling import worth
from assistant.trying import changed, money, tried, value, with_pieces
from grammar.reading import Reading
from rules import Book, Estimate, shopping
from rules.show import METRIC, quantity
from rules.units import convert

MOST = 4
LABEL = 10  # columns of the row's name
NARROWEST = 16  # columns of one version
# What is told of each version: the figure of the piece or (job) of it as a job of its own, and how it is called.
UNSAID = {"count": 1}  # what is as good as said
ROWS = (("balloons", "balloons_all"), ("hands", "hours_hands_on"), ("price", "price"), ("load", "load_volume"))
FRAMES = ("rods", "arch_bases", "frames", "stands")
ALIKE = {"length": "decor_length", "diameter": "decor_length"}  # a size not said is taken from the other's
ORDINALS = ("first", "second", "third", "fourth")


def lay_out(book: Book, now: State, _reading: Reading) -> None:
    """ "Good, better, best": three versions of the one piece in hand take its place, from plain to rich."""
    rungs = _rungs(book, now.pieces[0].kind) if len(now.pieces) == 1 else []
    if rungs:
        now.pieces = [changed(now.pieces[0], rung) for rung in rungs]
        now.focus, now.compared = 0, True


def _rungs(book: Book, kind: str) -> list[dict[str, Any]]:
    return next((list(raw["rungs"]) for raw in book.others.get("rungs", {}).values() if kind in raw["of"]), [])


def choices(asked: Asked) -> Blocks | None:
    """The three versions, where there are some; else which piece they are wanted of."""
    if asked.now.compared:
        return side_by_side(asked)
    if len(asked.now.pieces) > 1:
        return [paragraph("Of which piece? I set out three versions of one at a time; the others stay.", asked.width)]
    return None


def side_by_side(asked: Asked) -> Blocks | None:
    """The versions, each estimated as a job of its own, with what differs; None where there is but one."""
    pieces = asked.now.pieces[:MOST]
    if not asked.now.compared or len(pieces) < 2:
        return None
    left = [f"{len(asked.now.pieces) - MOST} more are not shown."] if len(asked.now.pieces) > MOST else []
    keep = " or ".join(f'"the {which}"' for which in ORDINALS[:2])
    return [*_beside(asked, pieces), left, paragraph(f"Say {keep} to keep one.", asked.width)]


def instead(asked: Asked) -> Blocks | None:
    """ "Is it cheaper as a garland?": the piece in hand beside another of as much, which is not kept."""
    piece = asked.now.focused or asked.now.pieces[0]
    text = f" {' '.join(asked.reading.text.lower().replace('?', ' ').split())} "
    kinds = [kind for kind, block in asked.book.pieces.items() if any(f" {word} " in text for word in block.words)]
    kind = next((kind for kind in kinds if kind != piece.kind), None)
    if kind is None:
        return None
    other = _on_one_basis(asked, [piece, HeardPiece(kind)])[1][1]
    if value(tried(asked.book, with_pieces(asked.now, [other])), "price") is None:
        return [paragraph('How big would it be? Say "compare it with", and its size.', asked.width)]
    last = "Nothing is changed; say which one to go with."
    return [*_beside(asked, [piece, HeardPiece(kind)]), paragraph(last, asked.width)]


def _beside(asked: Asked, pieces: list[HeardPiece]) -> Blocks:
    taken, pieces = _on_one_basis(asked, pieces)
    made = [tried(asked.book, with_pieces(asked.now, [piece])) for piece in pieces]
    titles = _titles(asked, pieces)
    rows = _table(made)
    wide = columns(asked.width) >= LABEL + len(pieces) * NARROWEST
    table = _in_columns(titles, rows, columns(asked.width)) if wide else _stacked(titles, rows, asked.width)
    return [table, _difference(made, asked.width), taken]


def still_compared(asked: Asked) -> Blocks | None:
    """While alternatives stand, a change is answered with all of them again."""
    return side_by_side(asked)


# the same basis -------------------------------------------------------------------------------------------------------


def _on_one_basis(asked: Asked, pieces: list[HeardPiece]) -> tuple[list[str], list[HeardPiece]]:
    """Colours said of one hold for all; a size that was not said is the other's length, and that is told."""
    colours = next((p.facts["colours"] for p in pieces if p.facts.get("colours")), None)
    based: list[HeardPiece] = []
    told: list[str] = []
    for piece in pieces:
        facts = {"colours": colours} if colours and "colours" not in piece.facts else {}
        fact = next(iter(asked.book.kind_of(piece.kind).extra.get("needs", [[None]])[0]), None)
        length = _other_length(asked, piece, pieces) if fact in ALIKE and fact not in piece.facts else None
        if fact and length:
            facts[fact] = length
            feet = tried(asked.book, with_pieces(asked.now, [changed(piece, facts)])).figure("decor_length", 0)
            shown = worth(feet, metric=asked.now.metric) if feet else ""
            told += paragraph(f"I took the {piece.kind} as long as the other, {shown}; say its size.", asked.width)
        based.append(changed(piece, facts))
    return told, based


def _other_length(asked: Asked, piece: HeardPiece, pieces: list[HeardPiece]) -> float | None:
    """The length along the decor of another alternative, inches."""
    for other in pieces:
        if other is not piece:
            feet = value(tried(asked.book, with_pieces(asked.now, [other])), "decor_length", 0)
            if feet:
                return convert(feet, "ft", "in")
    return None


# the table ------------------------------------------------------------------------------------------------------------


def _table(made: list[Estimate]) -> list[tuple[str, list[str]]]:
    """Rows of a label and what each version has there; a row that none has is left out."""
    rows = [(label, [_worth(each, id) for each in made]) for label, id in ROWS]
    rows.insert(1, ("buy", [_bags(each) for each in made]))
    frames = [", ".join(filter(None, (_counted(each, id) for id in FRAMES))) for each in made]
    rows.insert(2, ("frame", [frame or "none" for frame in frames] if any(frames) else ["" for _ in frames]))
    return [(label, [cell or "-" for cell in cells]) for label, cells in rows if any(cells)]


def _worth(made: Estimate, id: str) -> str:
    figure = made.figure(id)
    return worth(figure, metric=made.metric) if figure is not None else ""


def _bags(made: Estimate) -> str:
    rows = shopping(made)
    if len(rows) == 1:
        return bags_of(rows[0])
    packs = sum(row.packs for row in rows)
    return f"{packs} bags in {len(rows)} sorts" if rows else ""


def _counted(made: Estimate, id: str) -> str:
    number = value(made, id, 0)
    noun = {"arch_bases": "base"}.get(id, id.removesuffix("s"))
    return f"{number:g} {noun}{'s' if number != 1 else ''}" if number else ""


def _stacked(titles: list[str], rows: list[tuple[str, list[str]]], width: int) -> list[str]:
    lines: list[str] = []
    for place, title in enumerate(titles):
        lines += paragraph(f"{place + 1}. {title}", width, "   ")
        lines += [line for label, cells in rows for line in _row(label, cells[place], width)]
    return lines


def _row(label: str, cell: str, width: int) -> list[str]:
    label, cell = spoken(label), spoken(cell)
    parts = textwrap.wrap(cell, columns(width) - 3 - LABEL) or [""]
    return [f"   {label:<{LABEL}}{parts[0]}", *(" " * (3 + LABEL) + part for part in parts[1:])]


def _in_columns(titles: list[str], rows: list[tuple[str, list[str]]], width: int) -> list[str]:
    each = (width - LABEL) // len(titles)
    lines: list[str] = []
    for label, cells in [("", [f"{i + 1}. {title}" for i, title in enumerate(titles)]), *rows]:
        label = spoken(label)
        wrapped = [textwrap.wrap(spoken(cell), each - 1) or [""] for cell in cells]
        for k in range(max(map(len, wrapped))):
            parts = [f"{cell[k] if k < len(cell) else '':<{each}}" for cell in wrapped]
            lines.append(f"{label if k == 0 else '':<{LABEL}}{''.join(parts)}".rstrip())
    return lines


# what differs ---------------------------------------------------------------------------------------------------------


def _titles(asked: Asked, pieces: list[HeardPiece]) -> list[str]:
    """Each version by what it has that others have not; their kind where that differs or all else is alike."""
    kinds = {piece.kind for piece in pieces}
    facts = list(dict.fromkeys(fact for piece in pieces for fact in piece.facts))
    differ = [f for f in facts if len({repr(piece.facts.get(f, UNSAID.get(f))) for piece in pieces}) > 1]
    names = ("good", "better", "best") if asked.now.intent == "choices" else ()
    titles = []
    for place, piece in enumerate(pieces):
        alone = {"colours", "count"} if len(kinds) > 1 and piece.facts.get("count", 1) == 1 else {"colours"}
        words = [worded(asked, piece, fact) for fact in differ if fact in piece.facts and fact not in alone]
        told = ", ".join(dict.fromkeys(word for word in words if word))
        if len(kinds) > 1 or not told:
            told = f"{piece.kind} {told}".strip()
        titles.append(f"{names[place]}: {told}" if place < len(names) else told)
    return titles


def worded(asked: Asked, piece: HeardPiece, fact: str) -> str:
    """A fact that was said of a piece, in a few words: "two thirds", "10 ft long"."""
    value = piece.facts[fact]
    if fact == "count":
        noun = NOUNS.get(piece.kind, piece.kind)
        return f"{value:g} {noun}{'s' if value != 1 else ''}"
    spec = asked.book.fact(asked.book.kind_of(piece.kind).hears.get(fact, fact), piece.kind)
    if isinstance(value, bool):
        name = {"foliage": "greenery"}.get(fact, fact.replace("_", " "))
        return name if value else f"no {name}"
    if isinstance(value, list):
        return f"{' and '.join(f'{each:g}' for each in value if isinstance(each, int | float))} in balloons"
    if isinstance(value, int | float) and spec is not None:
        unit = spec.show or spec.unit
        other = METRIC.get(unit) if asked.now.metric else None
        told = quantity(convert(float(value), spec.unit, other or unit), other or unit)
        role = {"length": "long", "height": "high", "span": "wide", "diameter": "across"}.get(fact, "")
        name = fact.replace("_", " ")
        return f"{told} {role or name}" if role or unit == "count" else f"{name} {told}"
    choice = spec.choices.get(str(value), ()) if spec is not None else ()
    return choice[0] if choice else str(value).replace("_", " ")


def _difference(made: list[Estimate], width: int) -> list[str]:
    """Which is the cheapest, and what the others cost and take beyond it."""
    prices = [value(each, "price") for each in made]
    known = [price for price in prices if price is not None]
    if len(known) < len(made):
        return []
    least = min(range(len(known)), key=lambda i: known[i])
    text = [f"The {ORDINALS[least]} is cheapest."]
    for place, price in enumerate(known):
        if place != least:
            more = (value(made[place], "hours_hands_on") or 0) - (value(made[least], "hours_hands_on") or 0)
            hours = f", {abs(more):.1f} hours {'more' if more >= 0 else 'less'}"
            text.append(f"The {ORDINALS[place]} is {money(price - known[least], made[place])} dearer{hours}.")
    return paragraph(" ".join(text), width)
