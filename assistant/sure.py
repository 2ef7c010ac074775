"""How sure the numbers are: what was said and what taken, the range on balloons and hours, what to measure."""

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.telling import span, worth

MOST_SAID, MOST_MOVERS = 5, 2


def how_sure(asked: Asked) -> Blocks | None:
    """The ranges, the inputs by how they came, what moves them most and how to narrow it."""
    figure = asked.made.figure(*asked.main)
    if figure is None:
        return None
    metric = asked.made.metric
    ends = f"{span(figure, metric=metric)} about nine times in ten"
    head = f"{worth(figure, metric=metric)} balloons, {ends}; nothing is exact to the balloon."
    hours = asked.made.figure("hours_hands_on")
    work = f"Hands {worth(hours)}, {span(hours)}." if hours is not None and hours.value else ""
    said = list(dict.fromkeys(f.name for f in asked.made.figures() if f.how == "said" and f.piece is not None))
    taken = [f.name for f in asked.made.assumed(asked.now.focus)]
    lines = paragraph(f"{head} {work}", asked.width)
    inputs = paragraph(f"Said: {listed(said[:MOST_SAID])}.", asked.width) if said else []
    inputs += (
        paragraph(f"Taken: {listed(list(dict.fromkeys(taken))[: MOST_MOVERS + 1])} and more.", asked.width)
        if taken
        else []
    )
    return [lines, inputs, *_narrower(asked)]


def _narrower(asked: Asked) -> Blocks:
    """What moves the count most, and what to measure or time."""
    rows = asked.made.matters(*asked.main)[:MOST_MOVERS]
    first = "A first job you time replaces the pace I took."
    if not rows:
        return [paragraph(f"Nothing in the count is uncertain: all was said. {first}", asked.width)]
    lines = ["What moves it most:"]
    for row in rows:
        text = f"{row.name} ({row.how}): {row.low_change:+,.0f} to {row.high_change:+,.0f} balloons"
        lines += paragraph(f"- {text}", asked.width, "  ")
    return [lines, paragraph(f"Measure the {rows[0].name} and the range shrinks. {first}", asked.width)]
