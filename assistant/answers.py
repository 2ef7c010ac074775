"""Answers to short questions about an estimate: how sure, what matters, what was taken, what to buy, help."""

from assistant.asked import Asked, Blocks
from assistant.layout import labelled, listed, paragraph
from assistant.telling import span, worth
from rules import Estimate, Figure

HELP = (
    ("say", "eight 6 ft tables, full drop"),
    ("", "navy, gold and white, a third each"),
    ("change", "make that ten; two thirds; no greenery"),
    ("ask", "why 252; how sure are you; what matters most; what did you assume"),
    ("price", "price; price per table; can I do it for 600; any way to make it cheaper"),
    ("time", "how long will it take; when do we have to start; three of us"),
    ("plan", "shopping list; will it fit in a van; cautions; what if it's windy"),
    ("show", "draw it; build card; compare it with two thirds; give me three options"),
    ("client", "something to send her; make a client sheet"),
    ("keep", "save it as a name; my jobs; remember: my rate is 38 an hour"),
    ("after", "we used 900 balloons; eleven popped; what did you learn"),
    ("back", "undo; redo; estimate; start over"),
)
MOST_MOVERS = 3


def help_with(asked: Asked) -> Blocks:
    """What can be said, by example."""
    return [[line for label, text in HELP for line in labelled(label, text, asked.width)]]


def undone(asked: Asked) -> Blocks | None:
    """Nothing but a word where nothing is left; else the estimate that stands again."""
    if asked.before.pieces == asked.now.pieces and asked.before.job == asked.now.job:
        return [["There is nothing to take back."]]
    return None if asked.now.pieces else [["Taken back; nothing is left."]]


def begun_anew(asked: Asked) -> Blocks | None:
    """A word, unless the turn goes on with a piece."""
    return None if asked.now.pieces else [["A new job. What is it?"]]


def how_sure(asked: Asked) -> Blocks | None:
    """The range, what was said, and what moves it most."""
    figure = asked.made.figure(*asked.main)
    if figure is None:
        return None
    metric = asked.made.metric
    ends = span(figure, metric=metric)
    lines = paragraph(f"{worth(figure, metric=metric)} balloons, {ends} about nine times in ten.", asked.width)
    said = sorted({f.name for f in asked.made.figures() if f.how == "said" and f.piece is not None})
    return [lines, paragraph(f"Said: {', '.join(said)}.", asked.width) if said else [], *_movers(asked)]


def _movers(asked: Asked) -> Blocks:
    rows = asked.made.matters(*asked.main)[:MOST_MOVERS]
    if not rows:
        return [["Nothing in it is uncertain: all was said."]]
    lines = ["What moves it most:"]
    for row in rows:
        text = f"{row.name} ({row.how}): {row.low_change:+,.0f} to {row.high_change:+,.0f} balloons"
        lines += paragraph(f"- {text}", asked.width, "  ")
    return [lines, paragraph(f"Say the {rows[0].name} and the range shrinks.", asked.width)]


def what_matters(asked: Asked) -> Blocks | None:
    """The inputs by how far each moves the number."""
    return _movers(asked) if asked.now.pieces else None


def what_was_taken(asked: Asked) -> Blocks | None:
    """Every assumption with its range, but those that the book calls quiet and certain."""
    lines: dict[str, None] = {}  # each once
    for place in [*range(len(asked.now.pieces)), None]:
        for figure in asked.made.assumed(place):
            if _has_range(figure) or not _quiet(asked.made, figure, place):
                ends = f" ({span(figure, metric=asked.made.metric)})" if _has_range(figure) else ""
                lines[f"- {figure.name}: {worth(figure, metric=asked.made.metric)}{ends}"] = None
    if not lines:
        return None
    taken = [line for text in lines for line in paragraph(text, asked.width, "  ")]
    return [[*paragraph("I took:", asked.width), *taken], paragraph("Say any of them to change it.", asked.width)]


def _has_range(figure: Figure) -> bool:
    return figure.low != figure.high


def _quiet(made: Estimate, figure: Figure, place: int | None) -> bool:
    fact = made.book.fact(figure.id, "job" if place is None else made.job.pieces[place].kind)
    return fact is not None and fact.quiet


def sources(asked: Asked) -> Blocks | None:
    """Where the numbers come from, each source with a few of its figures."""
    seen: dict[str, list[str]] = {}
    for figure in asked.made.figures():
        if figure.how != "said":
            seen.setdefault(figure.source, []).append(figure.name)
    lines: list[str] = []
    for source, names in seen.items():
        lines += paragraph(f"- {source}: {listed(dict.fromkeys(names[:3]))}", asked.width, "  ")
    return [lines] if lines else None


def cautions(asked: Asked) -> Blocks | None:
    """The usual cautions that apply, whole."""
    lines = [line for caution in asked.made.cautions() for line in paragraph(f"- {caution.text}", asked.width, "  ")]
    last = paragraph("Local codes and the venue have the last word.", asked.width)
    return [lines, last] if lines else None
