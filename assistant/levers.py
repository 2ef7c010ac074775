"""What would change the price, the count or the look: cheaper, bigger, to the floor, without spares, a table more."""

from dataclasses import replace

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.naming import spoken_of
from assistant.speech import spoken
from assistant.state import Pending, State
from assistant.telling import worth
from assistant.trying import levers, money, tried, value, variant, with_pieces
from grammar.reading import Reading
from rules import Book, Estimate

MOST_LEVERS = 3
VISIBLY = 0.05  # of its thickness, what a change of size has to make
WIDTHS = ("runner_width", "outer_width", "main_diameter")


def cheaper(asked: Asked) -> Blocks | None:
    """The levers of this job by what each saves, and what each does to the look; no table is lost, no labour cut."""
    price = value(asked.made, "price")
    if price is None:
        return None
    found: list[tuple[float, str, str]] = []
    for place, piece in enumerate(asked.now.pieces):
        for name, looks, facts in levers(asked.book, piece, asked.made, place):
            less = value(tried(asked.book, variant(asked.now, place, facts)), "price")
            if less is not None and less < price - 0.5:
                head = name if len(asked.now.pieces) == 1 else f"{piece.kind}, {name}"
                found.append((price - less, head, looks))
    if asked.now.job.get("drive_distance"):
        less = value(tried(asked.book, with_pieces(asked.now, asked.now.pieces, drive_distance=None)), "price") or price
        found += [(price - less, "the client collects", "it looks the same")] if less < price - 0.5 else []
    if not found:
        return [paragraph("It is as plain as this piece gets; what is left is its size or number.", asked.width)]
    found.sort(key=lambda one: -one[0])
    lines = paragraph(f"Now {money(price, asked.made)}. From the most saved to the least:", asked.width)
    for saved, name, looks in found[:MOST_LEVERS]:
        lines += paragraph(f"- {name}: {money(saved, asked.made)} less; {looks}.", asked.width, "  ")
    last = "Labour is paid in full and spares kept in each; nothing is knocked off the price for its own sake."
    return [lines, paragraph(last, asked.width)]


def least(asked: Asked) -> Blocks | None:
    """The price with every lever of the book pulled that lowers it, and what that leaves to pay for."""
    price = value(asked.made, "price")
    if price is None:
        return None
    state, made, least, names = asked.now, asked.made, price, list[str]()
    for place in range(len(asked.now.pieces)):
        for name, _, facts in list(levers(asked.book, state.pieces[place], made, place)):
            other = variant(state, place, facts)
            trial = tried(asked.book, other)
            lower = value(trial, "price")
            if lower is not None and lower < least - 0.5:
                state, made, least = other, trial, lower
                names.append(name)
    names = list(dict.fromkeys(names))
    if not names:
        head = f"It is as plain as it gets at {money(price, made)}; what is left is its size or number."
    else:
        head = f"About {money(least, made)}, where it is {money(price, asked.made)} now:"
    lines = [line for name in names for line in paragraph(f"- {name}", asked.width, "  ")]
    cost = money(value(made, "cost") or 0, made)
    last = f"Its goods and labour are {cost}; below that you pay to work. Fewer or smaller pieces go lower."
    return [[*paragraph(head, asked.width), *lines], paragraph(last, asked.width)]


# bigger, smaller ------------------------------------------------------------------------------------------------------


def ask_size(_book: Book, now: State, _reading: Reading) -> None:
    """ "Bigger" alone names no size: it is asked for, with an example in the answer."""
    now.pending = Pending('Which size of balloon? For example "9 in balloons".', "", now.focus)


def resized(asked: Asked) -> Blocks | None:
    """The next size up or down beside the one in hand: balloons, thickness, price, and whether it fits the table."""
    piece, place = asked.now.focused, asked.now.focus
    if piece is None or place is None:
        return None
    up = not any(word in asked.reading.text.lower() for word in ("small", "little", "tin"))
    sizes = _sizes(asked.made, place)
    other = _next_size(asked, place, sizes, up=up) if sizes else None
    if other is None:
        return [paragraph("There is no size beyond that in the book; name one in inches.", asked.width)]
    made = tried(asked.book, _of_size(asked.now, place, other))
    now = " and ".join(f"{size:g}" for size in sizes)
    lines = paragraph(f"For example {other:g} in balloons, not {now} in:", asked.width)
    lines += _beside(asked, made, place)
    fits = made.step("fits", place)
    tight = fits is not None and not fits.value
    room = value(made, "side_room", place)
    note = ""
    if tight and room is not None:
        left = f"leaves {room:.0f} in on each side" if room > 0 else "is wider than the table"
        note = f"On the table it {left}: too wide beside place settings."
    elif fits is not None:
        note = "It fits the table beside the place settings."
    rule = "Along a line the count falls about as the balloons grow; over a wall, with the square of it."
    return [lines, paragraph(note, asked.width) if note else [], paragraph(rule, asked.width)]


def _next_size(asked: Asked, place: int, sizes: list[float], *, up: bool) -> float | None:
    """The next usual size, up or down, that makes the piece visibly thicker or thinner."""
    fact = asked.book.fact("sizes", asked.now.pieces[place].kind)
    usual = sorted(fact.usual if fact else (), reverse=not up)
    thick = value(asked.made, _width(asked.made, place), place)
    for size in (s for s in usual if (s > max(sizes) if up else s < min(sizes))):
        other = tried(asked.book, _of_size(asked.now, place, size))
        new = value(other, _width(other, place), place)
        if thick is None or new is None or abs(new - thick) > VISIBLY * thick:
            return size
    return None


def _of_size(state: State, place: int, size: float) -> State:
    return variant(state, place, {"sizes": [size], "inflated": None, "strokes": None})


def _sizes(made: Estimate, place: int) -> list[float]:
    return sorted({part.size_in for part in made.parts(place)})


def _beside(asked: Asked, made: Estimate, place: int) -> list[str]:
    rows = [("balloons", "balloons", place), ("thick", _width(made, place), place), ("hands", "hours_hands_on", None)]
    lines = []
    for label, id, where in [*rows, ("price", "price", None)]:
        was, now = asked.made.figure(id, where), made.figure(id, where)
        if was is not None and now is not None:
            metric = asked.made.metric
            text = f"{worth(now, metric=metric)} (now {worth(was, metric=metric)})"
            lines.append(f"{spoken(label):<10}{spoken(text)}")
    return lines


def _width(made: Estimate, place: int) -> str:
    return next((id for id in WIDTHS if made.step(id, place) is not None), WIDTHS[0])


# to the floor ---------------------------------------------------------------------------------------------------------


def to_the_floor(asked: Asked) -> Blocks | None:
    """What a drop at both ends adds, and at one: length, balloons, price; the height used; what to mind."""
    place = asked.now.focus
    piece = asked.now.focused
    if piece is None or place is None or piece.kind != "runner" or "length" in piece.facts:
        return None
    as_is = _undraped(asked, place)
    before = tried(asked.book, as_is)
    height, pool = value(before, "table_height", place), value(before, "extra_drop", place)
    length, price = value(before, "decor_length", place), value(before, "price")
    if height is None or pool is None or length is None or price is None:
        return None
    lines: list[str] = []
    for coverage, name in (("drop_both", "Both ends"), ("drop_one", "One end")):
        made = tried(asked.book, variant(as_is, place, {"coverage": coverage}))
        longer = (value(made, "decor_length", place) or 0) - length
        more = (value(made, "price") or 0) - price
        count = (value(made, "balloons", place) or 0) - (value(before, "balloons", place) or 0)
        total = money(value(made, "price") or 0, made)
        adds = f"{longer:.1f} ft more a table, {count:,.0f} balloons more, {money(more, made)} more"
        text = f"{name}: {adds}: {total} in all."
        lines += paragraph(text, asked.width)
    how = f"Each end takes the table's height, {height:g} in, and {pool:g} in to settle on the floor."
    mind = (
        "Mind: ends on the floor are tripped over and kicked; tie them to the table legs, and seat nobody at the ends."
    )
    return [lines, paragraph(how, asked.width), paragraph(mind, asked.width)]


def _undraped(asked: Asked, place: int) -> State:
    """The job without the drop that was asked about: as it was before, else covering the whole table."""
    before = asked.before
    was = before.pieces[place].facts.get("coverage") if place < len(before.pieces) else None
    return variant(asked.now, place, {"coverage": None if was in ("drop_both", "drop_one") else was})


# a table more or less -------------------------------------------------------------------------------------------------


def per_table(asked: Asked) -> Blocks | None:
    """The price of each table, what does not divide, and what the next one adds."""
    named = spoken_of(asked.book, asked.now, asked.reading.text)
    if len(named) == 1 and len(asked.now.pieces) > 1:
        asked = _of_one(asked, min(named))
    place = _counted(asked.now)
    price = value(asked.made, "price")
    count = value(asked.made, "count", place) if place is not None else None
    if place is None or price is None or not count:
        return None
    noun = "table" if asked.now.pieces[place].kind == "runner" else "piece"
    fixed = (value(asked.made, "travel_cost") or 0) * (1 + (value(asked.made, "markup") or 0) / 100)
    more = value(tried(asked.book, variant(asked.now, place, {"count": int(count) + 1})), "price") or price
    half = value(tried(asked.book, variant(asked.now, place, {"count": max(1, int(count) // 2)})), "price") or price
    share = (price - fixed) / count
    others = " with all the other pieces" if len(asked.now.pieces) > 1 else ""
    text = f"{money(price / count, asked.made)} a {noun}{others}: {money(price, asked.made)} for {count:,.0f}."
    hours = (value(asked.made, "hours_hands_on") or 0) / count
    has = f"In each: {worth_of(asked, 'balloons_each', place)} balloons, {hours:.1f} hours of hands, laid out."
    if fixed:
        alone = f"each {noun} alone {money(share, asked.made)}"
        apart = f"Of that {money(fixed, asked.made)} is driving, the same however many; {alone}."
    else:
        apart = "Delivery is not in it: tell me the miles, and it stands apart."
    fewer = f"{max(1, int(count) // 2)} would be {money(half, asked.made)}"
    last = f"One more adds {money(more - price, asked.made)}; {fewer}."
    return [
        paragraph(text, asked.width),
        paragraph(has, asked.width),
        paragraph(apart, asked.width),
        paragraph(last, asked.width),
    ]


def _of_one(asked: Asked, place: int) -> Asked:
    """The same question asked of one piece alone."""
    alone = with_pieces(asked.now, [asked.now.pieces[place]])
    return replace(asked, now=alone, made=tried(asked.book, alone))


def worth_of(asked: Asked, id: str, place: int | None) -> str:
    """A figure as people write it, "" where there is none."""
    figure = asked.made.figure(id, place)
    return worth(figure, metric=asked.made.metric) if figure is not None else ""


def _counted(state: State) -> int | None:
    """The piece whose number is asked about: the runner, else the one in focus."""
    runner = next((i for i, piece in enumerate(state.pieces) if piece.kind == "runner"), None)
    return runner if runner is not None else state.focus
