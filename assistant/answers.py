"""Answers to questions about an estimate: why, how sure, what matters, what was taken, what to buy, help."""

from collections.abc import Callable

from assistant.layout import labelled, listed, paragraph
from assistant.state import State
from assistant.telling import span, worth
from assistant.why import Why
from grammar.reading import Reading
from rules import Book, Estimate, Figure, shopping

Blocks = list[list[str]]

HELP = (
    ("say", "eight 6 ft tables, full drop"),
    ("", "navy, gold and white, a third each"),
    ("change", "make that ten; two thirds; no greenery"),
    ("ask", "why 252; how sure are you; what matters most; what did you assume"),
    ("buy", "shopping list"),
    ("back", "undo; redo; start over"),
)


class Answers:
    """Writes the answer to the order of a turn; None where the plain estimate is the answer."""

    def __init__(self, book: Book, width: int) -> None:
        self.book, self.width = book, width

    def answer(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        """Blocks of lines, or None."""
        table: dict[str, Callable[[State, State, Reading, Estimate, Estimate], Blocks | None]] = {
            "help": self._help,
            "why": self._why,
            "explain": self._why,
            "sure": self._sure,
            "matters": self._matters,
            "assumed": self._assumed,
            "sources": self._sources,
            "cautions": self._cautions,
            "shopping": self._shopping,
            "compare": self._compare,
            "undo": self._undone,
            "reset": self._reset,
        }
        write = table.get(now.intent or "")
        return write(before, now, reading, made, was) if write else None

    def _help(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks:
        return [[line for label, text in HELP for line in labelled(label, text, self.width)]]

    def _undone(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        if before.pieces == now.pieces and before.job == now.job:
            return [["There is nothing to take back."]]
        return None if now.pieces else [["Taken back; nothing is left."]]

    def _reset(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        return None if now.pieces else [["A new job. What is it?"]]

    def _why(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        return Why(self.book, self.width).answer(now, reading, made)

    def _main(self, now: State, made: Estimate) -> tuple[str, int | None]:
        """The figure that a question without a name is about: the focused piece's main one, else the job's."""
        if now.focused is not None and len(now.pieces) == 1:
            return self.book.kind_of(now.focused.kind).main or "balloons", now.focus
        return "balloons_all", None

    def _sure(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        id, piece = self._main(now, made)
        figure = made.figure(id, piece)
        if figure is None:
            return None
        lines = paragraph(
            f"{worth(figure, metric=made.metric)} balloons, {span(figure, metric=made.metric)} about nine times in ten.",
            self.width,
        )
        said = sorted(
            {f.name for p in range(len(now.pieces)) for f in made.figures() if f.how == "said" and f.piece == p}
        )
        return [lines, paragraph(f"Said: {', '.join(said)}.", self.width) if said else [], *self._moves(now, made)]

    def _moves(self, now: State, made: Estimate) -> Blocks:
        id, piece = self._main(now, made)
        rows = made.matters(id, piece)[:3]
        if not rows:
            return [["Nothing in it is uncertain: all was said."]]
        lines = ["What moves it most:"]
        for row in rows:
            text = f"{row.name} ({row.how}): {row.low_change:+,.0f} to {row.high_change:+,.0f} balloons"
            lines += paragraph(f"- {text}", self.width, "  ")
        return [lines, paragraph(f"Tell me the {rows[0].name} and the range shrinks.", self.width)]

    def _matters(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        return self._moves(now, made) if now.pieces else None

    def _assumed(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        if not now.pieces:
            return None
        lines = []
        for place in [*range(len(now.pieces)), None]:
            for figure in made.assumed(place):
                if figure.low == figure.high and made.book.fact(figure.id, _kind(made, place)).quiet:  # type: ignore[union-attr]
                    continue
                lines += paragraph(
                    f"- {figure.name}: {worth(figure, metric=made.metric)} {_range(figure, made.metric)}",
                    self.width,
                    "  ",
                )
        return [["I took:", *dict.fromkeys(lines)], ["Say any of them to change it."]] if lines else None

    def _sources(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        seen: dict[str, list[str]] = {}
        for figure in made.figures():
            if figure.how != "said":
                seen.setdefault(figure.source, []).append(figure.name)
        lines = [
            line
            for source, names in seen.items()
            for line in paragraph(f"- {source}: {listed(names[:3])}", self.width, "  ")
        ]
        return [lines] if lines else None

    def _cautions(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        lines = [line for caution in made.cautions() for line in paragraph(f"- {caution.text}", self.width, "  ")]
        return [lines, paragraph("Local codes and the venue have the last word.", self.width)] if lines else None

    def _shopping(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        rows = shopping(made)
        if not rows:
            return None
        lines: list[str] = []
        for row in rows:
            name = f"{row.size_in:g} in {row.colour or 'any colour'}"
            bags = f"{row.packs} bag{'s' if row.packs != 1 else ''} of {row.pack}"
            lines += paragraph(
                f"- {name}: {bags} ({row.need} and {row.with_spares - row.need} spare, {row.left} left over)",
                self.width,
                "  ",
            )
        spare = made.figure("spare")
        tail = (
            f"Each row rounded up by itself; {worth(spare)} spare. Say another spare or bag size to change it."
            if spare
            else ""
        )
        return [lines, paragraph(tail, self.width)]

    def _compare(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Blocks | None:
        if len(now.pieces) < 2:
            return None
        lines: list[str] = []
        for place, piece in enumerate(now.pieces):
            said = ", ".join(_worded(fact, value) for fact, value in piece.facts.items() if not isinstance(value, list))
            lines += paragraph(f"{place + 1}. {piece.kind}: {said}", self.width, "   ")
            for id, label in (("balloons", "balloons"), ("hours_of_piece", "hands"), ("materials_of_piece", "cost")):
                figure = made.figure(id, place)
                if figure is not None:
                    lines.append(f"   {label:<9}{worth(figure, metric=made.metric)}")
        return [lines]


def _range(figure: Figure, metric: bool) -> str:
    return "" if figure.low == figure.high else f" ({span(figure, metric=metric)})"


def _kind(made: Estimate, place: int | None) -> str:
    return "job" if place is None else made.job.pieces[place].kind


def _worded(fact: str, value: object) -> str:
    if isinstance(value, bool):
        return fact if value else f"no {fact}"
    return f"{fact.replace('_', ' ')} {value:g}" if isinstance(value, (int, float)) else str(value).replace("_", " ")
