"""What may happen to it: balloons that burst, colours that fade, helium wanted or not."""

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.naming import named_pieces
from assistant.price import quoted
from assistant.telling import shown, span, worth
from assistant.trying import money, tried, value, variant
from rules import shopping

FLOATS_AS = ("bouquet", "centerpiece")
FRAMED = ("runner", "garland", "arch", "column", "wall", "hoop", "swag")


def bursts(asked: Asked) -> Blocks | None:
    """The spares there are, how a gap is filled, who stays, and that it is no new charge."""
    rows = shopping(asked.made)
    spare = asked.made.figure("spare")
    if not rows or spare is None:
        return None
    extra = sum(row.with_spares - row.need for row in rows)
    over = sum(row.left for row in rows)
    head = f"{extra:,} spares are in it, {worth(spare)} in each size and colour; whole bags leave {over:,} more."
    how = "A gap is filled on the spot with small balloons tucked in; bring the pump and a few of each colour."
    who = "No one stays unless the estimate says so: leave spares with whoever minds the room, or price a visit."
    return [
        paragraph(head, asked.width),
        paragraph(how, asked.width),
        paragraph(f"{who} It is no new charge.", asked.width),
    ]


def colours(asked: Asked) -> Blocks | None:
    """What stretching, time, heat and sun do to a colour, and what two layers would take."""
    balloons = value(asked.made, "balloons_all")
    head = "Close, not the same: latex gets lighter as it stretches, and turns matt with time, heat and sun."
    how = "Filled a little under it looks deeper; a sizer keeps all of one shade; bags keep the shine a day or two."
    two = "Two layers give special shades"
    twice = (
        f", at twice the balloons: {2 * balloons:,.0f} in place of {balloons:,.0f}"
        if balloons
        else ", at twice the balloons"
    )
    last = f"{two}{twice}; say so and count them. Try one of each colour at full size first."
    return [paragraph(head, asked.width), paragraph(how, asked.width), paragraph(last, asked.width)]


def helium(asked: Asked) -> Blocks | None:
    """Whether helium is needed, and what it would take and cost beside air."""
    if not asked.now.pieces:
        return None
    framed = [name for place, name in named_pieces(asked.book, asked.now) if asked.now.pieces[place].kind in FRAMED]
    blocks: Blocks = []
    if framed:
        text = (
            f"Not for {listed(framed)}: on tables, frames or poles none is needed; air lasts days there, helium hours."
        )
        blocks.append(paragraph(text, asked.width))
    blocks += [
        block
        for place, piece in enumerate(asked.now.pieces)
        if piece.kind in FLOATS_AS
        for block in _beside(asked, place)
    ]
    if not any(piece.kind in FLOATS_AS for piece in asked.now.pieces):
        more = "Where floating is wanted, add bouquets: gas, ribbon and a weight for each, filled on the day."
        per = asked.made.figure("helium_price")
        cost = f" Gas {worth(per)} ({span(per)}), from memory." if per is not None else ""
        blocks.append(paragraph(f"{more}{cost}", asked.width))
    blocks.append(paragraph("5 in latex does not float. Never breathe helium in; weight every balloon.", asked.width))
    return blocks


def _beside(asked: Asked, place: int) -> Blocks:
    """A piece on helium beside the same on air: gas, ribbon, weights, life and price."""
    floating = tried(asked.book, variant(asked.now, place, {"gas": "helium"}))
    standing = tried(asked.book, variant(asked.now, place, {"gas": "air"}))
    dear, plain = quoted(floating), quoted(standing)
    gas, life = floating.figure("helium_of_piece", place), floating.figure("float_time", place)
    ribbon, weights = floating.figure("ribbon_of_piece", place), floating.figure("weights", place)
    if dear is None or plain is None or gas is None or life is None:
        return []
    metric = asked.made.metric
    name = dict(named_pieces(asked.book, asked.now))[place]
    more = float(dear.price - plain.price)
    sums = [money(amount, floating) for amount in (float(dear.price), float(plain.price), abs(more))]
    head = f"{name} on helium: {sums[0]}, on air {sums[1]}: {sums[2]} {'more' if more >= 0 else 'less'}."
    head = head[:1].upper() + head[1:]
    parts = [f"{worth(gas, metric=metric)} of gas"]
    parts += [f"{worth(ribbon, metric=metric)} of ribbon"] if ribbon is not None else []
    parts += [f"{worth(weights)} weights"] if weights is not None else []
    days = floating.figure("life_indoors")
    air = f" against {worth(days)} on air" if days is not None else ""
    take = f"It takes {', '.join(parts)}; floats about {shown(float(life.value), life.unit)}{air}. Fill on the day."
    return [paragraph(head, asked.width), paragraph(take, asked.width)]
