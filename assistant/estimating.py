"""From what was said to the engine's input."""

from typing import Any

from assistant.state import HeardPiece, State
from rules import Book, Estimate, Figure, Job, Piece, Stock, work
from rules.values import frozen
from rules.world import Step

NOT_FOR_FIGURES = frozenset({"budget"})
KEPT = 4  # estimates: a turn asks for those of the state before it and after it, more than once each


class Alternatives(Estimate):
    """Versions of which one will be made: each piece has its figures, but nothing is added up over them."""

    def figure(self, id: str, piece: int | None = None) -> Figure | None:
        """The figure, None where it would be a sum over the alternatives."""
        figure = super().figure(id, piece)
        return None if figure is not None and figure.piece is None and self._sums(figure, set()) else figure

    def step(self, id: str, piece: int | None = None) -> Step | None:
        """The raw step, None where it would be a sum over the alternatives."""
        return None if piece is None and self.figure(id) is None else super().step(id, piece)

    def _sums(self, figure: Figure, seen: set[str]) -> bool:
        """Whether a figure of the job rests on pieces, itself or through others."""
        seen.add(figure.id)
        for used in figure.uses:
            if used.partition(".")[0].isdigit():
                return True
            below = super().figure(used) if used not in seen else None
            if below is not None and self._sums(below, seen):
                return True
        return False


def estimate(book: Book, state: State) -> Estimate:
    """The estimate of all pieces that the book can work out, in the order spoken; of alternatives each by itself."""
    return _work(book, _job(book, state), state)


class Estimates:
    """The estimates of one conversation, each state's made once."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._made: dict[Any, Estimate] = {}

    def of(self, state: State, metric: bool | None = None) -> Estimate:
        """The estimate of a state, that of `estimate`; reasons are in metric units where the state or `metric` is."""
        metric = state.metric if metric is None else metric
        job = _job(self.book, state)
        pieces = tuple((piece.kind, frozen(piece.said)) for piece in job.pieces)
        key = (pieces, frozen(job.said), job.stock, state.compared, metric)
        found = self._made.pop(key, None) or _work(self.book, job, state)
        found.metric = metric
        self._made[key] = found
        if len(self._made) > KEPT:
            del self._made[next(iter(self._made))]
        return found


def _job(book: Book, state: State) -> Job:
    """What was said, in the engine's terms."""
    pieces = [Piece(piece.kind, _said(book, piece)) for piece in state.pieces]
    said = {k: v for k, v in state.job.items() if k not in NOT_FOR_FIGURES and book.fact(k) is not None}
    clocks = {k: v / 60 for k, v in said.items() if (f := book.fact(k)) is not None and f.type == "clock"}
    stock = tuple(Stock(item["count"], item.get("size"), item.get("colour")) for item in state.job.get("stock", ()))
    return Job(pieces, {**said, **clocks}, stock)


def _work(book: Book, job: Job, state: State) -> Estimate:
    return Alternatives(book, job) if state.compared and len(job.pieces) > 1 else work(book, job)


def _said(book: Book, piece: HeardPiece) -> dict[str, object]:
    known = {}
    for fact, value in piece.facts.items():
        if book.fact(book.kind_of(piece.kind).hears.get(fact, fact), piece.kind) is None:
            continue
        if fact == "colours":
            value = [(c["name"], c.get("share")) for c in value]
        known[fact] = tuple(value) if isinstance(value, list) and fact in {"strokes", "inflated"} else value
    return known


def workable(book: Book, kind: str) -> bool:
    """Whether the book works this kind out."""
    return bool(book.kind_of(kind).shows)
