"""Why a number is what it is: the sentence of the book, what it was worked out from, one level at a time."""

from collections.abc import Iterator

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.telling import shown, span, worth
from grammar.numbers.quantities import read_quantities
from rules import Figure

MOST_INPUTS = 6
SHORTEST_WORD = 4


def why(asked: Asked) -> Blocks | None:
    """The reason of the figure that the turn asks about, its inputs, range and source."""
    figure = _figure(asked)
    return reason(asked, figure) if figure is not None else None


def reason(asked: Asked, figure: Figure) -> Blocks:
    """The reason of a figure, its inputs, range and source."""
    metric, width = asked.made.metric, asked.width
    explained = asked.made.explain(figure.id, figure.piece)
    inputs = [used for used in explained[1] if used.id != figure.id] if explained else []
    head = f"{_capital(figure.name)}: {worth(figure, metric=metric)}. {_capital(figure.why)}."
    rows: list[str] = []
    for used in inputs[:MOST_INPUTS]:
        given = "" if used.how == "worked out" else f", {used.how}"
        rows += paragraph(f"- {used.name}: {worth(used, metric=metric)}{given}", width, "  ")
    ways = [paragraph(text, width) for text in _learned(asked, figure)]
    ends = f"Range: {span(figure, metric=metric)}. " if figure.low != figure.high else ""
    deeper = next((used for used in inputs if used.how == "worked out"), None)
    return [
        paragraph(head, width),
        rows,
        *ways,
        paragraph(f"{ends}Source: {figure.source}.", width),
        paragraph(f'Say "why {deeper.name}" to go on.', width) if deeper else [],
    ]


def _learned(asked: Asked, figure: Figure) -> Iterator[str]:
    """What the book says of the figure, what finished jobs came to, and what is taken."""
    kind = "job" if figure.piece is None else asked.made.job.pieces[figure.piece].kind
    for fact in asked.book.learned:
        learned = fact.learned
        step = asked.made.step(fact.id, figure.piece)
        if learned is None or step is None or step.fact is not fact or isinstance(figure.value, str | bool):
            continue
        if figure.id.startswith((learned.of, learned.of_piece)) and (kind in fact.of or figure.piece is None):
            alone = figure.value / learned.factor
            jobs = "last job" if learned.jobs == 1 else f"last {learned.jobs} jobs"
            metric = asked.made.metric
            book, used = (shown(alone * by, figure.unit, metric=metric) for by in (1, learned.jobs_factor))
            yield f"The book about {book}, your {jobs} about {used}, taken {worth(figure, metric=metric)}."


def _figure(asked: Asked) -> Figure | None:
    """By the number named, else by the name, else the number of balloons in the piece in focus."""
    focus = asked.now.focus
    figures = sorted(asked.made.figures(), key=lambda figure: figure.piece != focus)
    text = asked.reading.text.lower()
    for quantity in read_quantities(text):
        if any(char.isdigit() for char in quantity.text):
            match = next((f for f in figures if _is(f, float(quantity.value))), None)
            if match is not None:
                return match
    named = [f for f in figures if f.name.lower() in text]
    if named:
        best = max(named, key=lambda f: len(f.name))
        each = asked.made.figure("balloons_each", best.piece) if best.id == "balloons" else None
        return each if each is not None and each.value == best.value else best  # of one piece "184 for each of 1"
    for figure in figures:
        kind = "job" if figure.piece is None else asked.made.job.pieces[figure.piece].kind
        fact = asked.book.fact(figure.id, kind)
        if fact is not None and any(word.lower() in text for word in fact.words if len(word) >= SHORTEST_WORD):
            return figure
    if asked.now.focused is None:
        return asked.made.figure("balloons_all")
    return asked.made.figure("balloons_each", focus) or asked.made.figure(*asked.main)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _is(figure: Figure, value: float) -> bool:
    """Whether a number that was named is the figure's, as shown."""
    if isinstance(figure.value, bool | str) or value == 0:
        return False
    return abs(float(figure.value) - value) <= 0.005 * max(abs(value), 1)
