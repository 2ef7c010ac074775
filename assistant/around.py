"""The piece and the people: whether guests see over it, whether it takes up seats, whether it clears the ceiling."""

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.naming import named_pieces
from assistant.telling import shown, worth
from assistant.trying import value
from grammar.numbers.quantities import read_quantities
from rules.units import convert

SIGHT = "common practice, no published source"


def sight(asked: Asked) -> Blocks | None:
    """The height of what stands on the tables against the sight line of those who sit."""
    low, high = asked.made.figure("sight_low"), asked.made.figure("sight_high")
    lines: list[str] = []
    clear = True
    for place, name in named_pieces(asked.book, asked.now):
        top = asked.made.figure("runner_height", place) or asked.made.figure("top_height", place)
        if top is None or low is None or high is None:
            continue
        under = asked.made.figure("clear_under", place)
        over = float(top.value) <= float(low.value) or (under is not None and float(under.value) >= float(high.value))
        clear = clear and over
        span = worth(top, metric=asked.made.metric)
        where = f"from {worth(under, metric=asked.made.metric)} to {span}" if under is not None else f"{span} high"
        lines += paragraph(f"- {name}: {where} above the table", asked.width, "  ")
    if not lines or low is None or high is None:
        return None
    head = "Yes, they see each other." if clear else "Not well: it stands between their eyes."
    ends = f"{shown(low.low or 0, 'in')} to {shown(low.high or 0, 'in')}"
    line = f"Seated guests see over {worth(low)} ({ends}), and under what begins at {worth(high)}."
    lower = "To lower it: smaller balloons or quads alone; or lift it above heads on stands."
    return [[head], lines, paragraph(line, asked.width), paragraph(f"{lower} Sight line: {SIGHT}.", asked.width)]


def seats(asked: Asked) -> Blocks | None:
    """Whether a runner takes places: across a round it reaches two; the length that keeps them all."""
    for place, piece in enumerate(asked.now.pieces):
        if piece.kind != "runner":
            continue
        if "table_diameter" in piece.facts or piece.facts.get("table_shape") == "round":
            return _round(asked, place)
        return _long(asked, place)
    return [
        paragraph("A piece on the floor or in the air takes no seat; keep 36 in clear where people walk.", asked.width)
    ]


def _round(asked: Asked, place: int) -> Blocks:
    made, width = asked.made, asked.width
    across, depth = value(made, "table_diameter", place), value(made, "cover_depth", place)
    length = made.figure("decor_length", place)
    if across is None or depth is None or length is None:
        return [paragraph("How wide across are the round tables?", width)]
    free = max(across - 2 * depth, 0)
    inches = convert(float(length.value), length.unit, "in")
    said = value(made, "seats", place)
    tables = value(made, "count", place) or 1
    if inches <= free + 0.1:
        head = f"No: {shown(inches, 'in')} stays within the {shown(free, 'in')} that the places leave free."
        lost = 0
    else:
        head = f"Yes, two at each: a runner {shown(inches, 'in')} long across a round reaches the place at either end."
        lost = 2
    left = f"Of {said:g} seats {said - lost:g} are left, {tables * (said - lost):,.0f} in all." if said and lost else ""
    ask = "How many sit at each table?" if not said and lost else ""
    keep = f"To keep them all: {shown(free, 'in')} long, or a ring or a low centrepiece in the middle."
    why = f"A place wants {shown(depth, 'in')} from the edge."
    return [
        paragraph(head, width),
        paragraph(f"{left}{ask}", width) if left or ask else [],
        paragraph(f"{keep} {why}", width),
    ]


def _long(asked: Asked, place: int) -> Blocks:
    made, width = asked.made, asked.width
    side, depth = made.figure("side_room", place), made.figure("cover_depth", place)
    ends = (
        str(asked.now.pieces[place].facts.get("coverage", "")).startswith("drop")
        or "overhang" in asked.now.pieces[place].facts
    )
    if side is None or depth is None:
        return []
    fits = float(side.value) >= float(depth.value) - 0.1
    head = "Not along the sides." if fits else "No seat, but it crowds the plates."
    room = f"It leaves {worth(side)} on each side; a place wants {worth(depth)}."
    last = (
        "At the ends it hangs where someone would sit: two seats less at each table." if ends else "The ends stay free."
    )
    return [paragraph(f"{head} {room}", width), paragraph(last, width)]


def overhead(asked: Asked) -> Blocks | None:
    """The height of floating or standing bunches against the ceiling, and air on sticks or stands instead."""
    ceiling = _ceiling(asked)
    metric = asked.made.metric
    lines: list[str] = []
    touching = ribbons = False
    for place, name in named_pieces(asked.book, asked.now):
        top = asked.made.figure("top_height", place) or asked.made.figure("height_overall", place)
        if top is None:
            continue
        on_table = 30.0 if asked.now.pieces[place].kind == "centerpiece" else 0.0
        inches = convert(float(top.value), top.unit, "in") + on_table
        ribbon = asked.made.figure("ribbon_length", place)
        ribbons = ribbons or ribbon is not None
        with_ribbon = f", ribbon {worth(ribbon, metric=metric)} and all" if ribbon is not None else ""
        told = f"- {name}: top at {_feet(inches, metric=metric)}{with_ribbon}"
        if ceiling is not None:
            gap = ceiling - inches
            touching = touching or gap < 0
            told += f"; {shown(abs(gap), 'in', metric=metric)} {'too high' if gap < 0 else 'below the ceiling'}"
        lines += paragraph(told, asked.width, "  ")
    if not lines:
        return None
    if ceiling is None:
        head = "How high is the ceiling? Against that:"
    else:
        height = _feet(ceiling, metric=metric)
        head = f"They stay clear of {height}."
        if touching:
            shorter = "shorten the ribbons" if ribbons else "make it lower"
            head = f"{'They' if ribbons else 'It'} would touch under {height}: {shorter}."
    last = "Hot lamps, fans and rough plaster burst balloons."
    if ribbons:
        last = f"Else air on sticks or stands, which lasts. {last}"
    keep = asked.made.figure("sprinkler_room")
    clear = f"Keep {worth(keep)} below sprinklers; the venue and local codes decide." if keep is not None else ""
    return [paragraph(head, asked.width), lines, paragraph(last, asked.width), paragraph(clear, asked.width)]


def _ceiling(asked: Asked) -> float | None:
    """The height of the ceiling in inches: as named in the question, else as said before."""
    said = [q for q in read_quantities(asked.reading.text) if q.kind == "length"]
    if said:
        return convert(float(said[0].value), said[0].unit, "in")
    known = asked.made.figure("ceiling_height")
    return convert(float(known.value), known.unit, "in") if known is not None else None


def _feet(inches: float, *, metric: bool) -> str:
    return shown(inches / 12, "ft", metric=metric)
