"""Why a number is what it is: the sentence of the book, what it was worked out from, one level at a time."""

from assistant.layout import paragraph
from assistant.state import State
from assistant.telling import span, worth
from grammar.quantities import read_quantities
from grammar.reading import Reading
from rules import Book, Estimate, Figure

MOST_INPUTS = 6


class Why:
    """Finds the figure that is asked about and walks its reasons."""

    def __init__(self, book: Book, width: int) -> None:
        self.book, self.width = book, width

    def answer(self, now: State, reading: Reading, made: Estimate) -> list[list[str]] | None:
        """The reason of the figure asked for; `now.walked` remembers where the walk stands."""
        figure = self._asked(now, reading, made)
        if figure is None:
            return None
        now.walked = (figure.id, figure.piece)
        explained = made.explain(figure.id, figure.piece)
        inputs = [used for used in explained[1] if used.id != figure.id] if explained else []
        head = f"{_capital(figure.name)}: {worth(figure, metric=made.metric)}. {_capital(figure.why)}."
        lines = [paragraph(head, self.width)]
        rows: list[str] = []
        for used in inputs[:MOST_INPUTS]:
            given = "" if used.how == "worked out" else f", {used.how}"
            rows += paragraph(f"- {used.name}: {worth(used, metric=made.metric)}{given}", self.width, "  ")
        lines.append(rows)
        if figure.low is not None and figure.low != figure.high:
            lines.append(paragraph(f"Range: {span(figure, metric=made.metric)}. Source: {figure.source}.", self.width))
        else:
            lines.append(paragraph(f"Source: {figure.source}.", self.width))
        deeper = next((u for u in inputs if u.how == "worked out"), None)
        if deeper is not None:
            lines.append(paragraph(f'Say "why {deeper.name}" to go on.', self.width))
        return lines

    def _asked(self, now: State, reading: Reading, made: Estimate) -> Figure | None:
        """By the number named, else by the name, else the main figure of the piece in focus."""
        figures = made.figures()
        text = reading.text.lower()
        here = [f for f in figures if f.piece == now.focus] + [f for f in figures if f.piece != now.focus]
        for quantity in (q for q in read_quantities(text) if any(c.isdigit() for c in q.text)):
            match = next((f for f in here if _is(f, float(quantity.value))), None)
            if match is not None:
                return match
        named = [f for f in here if f.name.lower() in text]
        if named:
            return max(named, key=lambda f: len(f.name))
        facts = [made.book.fact(f.id, made.job.pieces[f.piece].kind if f.piece is not None else "job") for f in here]
        for figure, fact in zip(here, facts, strict=True):
            if fact is not None and any(word.lower() in text for word in fact.words if len(word) > 3):
                return figure
        if now.focused is None:
            return made.figure("balloons_all")
        kind = self.book.kind_of(now.focused.kind)
        return made.figure("balloons_each", now.focus) or made.figure(kind.main or "balloons", now.focus)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _is(figure: Figure, value: float) -> bool:
    if isinstance(figure.value, (bool, str)):
        return False
    return abs(float(figure.value) - value) <= 0.005 * max(abs(value), 1) and value != 0
