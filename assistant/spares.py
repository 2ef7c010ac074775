"""Spares and colours: what going without spares saves, and what more of one colour and less of another comes to."""

import re

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.state import State
from assistant.stock import bags_of
from assistant.telling import worth
from assistant.trying import money, tried, value, variant, with_pieces
from rules import Row, shopping
from rules.apportion import largest_remainder
from rules.buying import PAIR, shared_out

SHIFTED = 0.5  # of its share, what a colour gives up when "less" of it is wanted and no number is named
# A colour's name has an end, and so has the search for it: the time stays linear in the turn.
_MORE = re.compile(
    r"\b(?:more|extra|heavier on(?: the)?)\s+(?P<name>[a-z ]{1,60}?)(?=\s?(?:,|;|:|\?|$|and|less|fewer|than|with))"
)
_LESS = re.compile(
    r"\b(?:less|fewer|lighter on(?: the)?)\s+(?P<name>[a-z ]{1,60}?)(?=\s?(?:,|;|:|\?|\.|$|and|more|does|will|would))"
)


def spares(asked: Asked) -> Blocks | None:
    """What the spares are for, what going without them saves, and when that is nothing."""
    now = asked.now
    share = asked.made.figure("spare")
    with_them = shopping(asked.made)
    if share is None or not with_them:
        return None
    bare = tried(asked.book, with_pieces(now, now.pieces, spare=0))
    without = shopping(bare)
    count = sum(row.with_spares - row.need for row in with_them)
    saved = float(_cost(with_them) - _cost(without))
    over = sum(row.left for row in without)
    price = (value(asked.made, "price") or 0) - (value(bare, "price") or 0)
    if saved > 0:
        fewer = sum(row.bought for row in with_them) - sum(row.bought for row in without)
        skip = f"With none you buy {fewer:,} fewer and save {money(saved, bare)} of bags; "
        skip += f"the price falls by {money(price, bare)}."
    else:
        skip = "With none you buy the same bags: the saving is nil."
    whole = f"Whole bags would still leave {over:,} over." if over else "No bag would leave any over."
    risk = "About one in ten bursts, is a dud or is wanted for a gap; with no spare a gap stays or somebody drives off."
    return [
        paragraph(f"{worth(share)} spare is {count:,} balloons on {sum(r.need for r in with_them):,}.", asked.width),
        paragraph(f"{skip} {whole}", asked.width),
        paragraph(f"{risk} ({share.source[:1].upper()}{share.source[1:]}.)", asked.width),
        paragraph('Say "0 % spare" or "5 % spare" to change it.', asked.width),
    ]


def _cost(rows: list[Row]) -> float:
    return float(sum(row.cost for row in rows))


def recoloured(asked: Asked) -> Blocks | None:
    """More of one colour and less of another: the number of each, the same in all; bags again; the change in price."""
    place = asked.before.focus
    if place is None or place >= len(asked.before.pieces):
        return None
    colours = asked.before.pieces[place].facts.get("colours") or []
    text = asked.reading.text.lower()
    shares = shared_out([(c["name"], c.get("share")) for c in colours])
    more, less = _named(_MORE, text, shares), _named(_LESS, text, shares)
    if more is None or less is None or more == less:
        return None
    moved = shares[less] * SHIFTED
    new = {**shares, more: shares[more] + moved, less: shares[less] - moved}
    listed = [{"name": name, "share": share} for name, share in new.items()]
    was = tried(asked.book, _as_was(asked))
    made = tried(asked.book, variant(_as_was(asked), place, {"colours": listed}))
    total = round(value(made, "balloons", place) or 0)
    counts = [largest_remainder(total, list(each.values()), PAIR) for each in (shares, new)]
    lines = paragraph(f"Half of the {less} turned {more}; the {total:,} balloons stay:", asked.width)
    rows = shopping(made)
    for name, before, after in zip(new, *counts, strict=True):
        told = _bags_of_colour([row for row in rows if row.colour == name])
        changed = f"{after:,} (now {before:,})" if after != before else f"{after:,}"
        lines += paragraph(f"- {name} {changed}{told}", asked.width, "  ")
    gap = _cost(rows) - _cost(shopping(was))
    bought = (
        f"The bags cost {money(abs(gap), made)} {'more' if gap > 0 else 'less'}"
        if abs(gap) >= 0.005
        else "The bags cost the same"
    )
    change = (value(made, "price") or 0) - (value(was, "price") or 0)
    price = "the price stays" if abs(change) < 0.5 else f"the price moves by {money(change, made)}"
    special = (
        "Mirror and metal finishes cost two to three times plain ones, often in smaller bags; tell me their price."
    )
    return [
        lines,
        paragraph(f"{bought}; {price}. {special}", asked.width),
        paragraph(f'To keep it, say "{", ".join(f"{share:.0%} {name}" for name, share in new.items())}".', asked.width),
    ]


def _bags_of_colour(rows: list[Row]) -> str:
    """The bags of one colour: by number in a bag where there is but one size, else how many in all."""
    if len(rows) == 1:
        return f": {bags_of(rows[0])}"
    packs = sum(row.packs for row in rows)
    return f": {packs} bag{'s' if packs != 1 else ''} of its sizes" if rows else ""


def _named(pattern: re.Pattern[str], text: str, shares: dict[str | None, float]) -> str | None:
    """The colour of the piece that the words after "more" or "less" name."""
    found = pattern.search(text)
    words = found["name"].split() if found else []
    return next((name for name in shares if name and (name in " ".join(words) or name.split()[-1] in words)), None)


def _as_was(asked: Asked) -> State:
    """The job before the turn: asking what another share would come to changes nothing."""
    return with_pieces(asked.before, asked.before.pieces)
