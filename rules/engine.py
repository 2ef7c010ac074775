"""Estimates: what was said of a job's pieces, worked out by the book into figures with ranges and reasons."""

from dataclasses import field
from typing import Any, TypeVar

from rules import remarks
from rules.alike import Guide
from rules.book import Book
from rules.figure import Clash, Figure, Influence, Part, Said, Value
from rules.figures import figure_of, typical_of, unit_of
from rules.record import record
from rules.show import value_text
from rules.spread import Move, Spread
from rules.texts import fill
from rules.together import JobSpread, JobWorld, job_leaf, over_pieces
from rules.units import factor
from rules.values import frozen
from rules.world import ASSUMED, Step, World

W = TypeVar("W", bound=World)
KEPT_WORLDS = 64
LESSER = 1e-3  # what moves the main figure at all comes before what moves only others


@record
class Piece:
    """A piece as it was said: its kind and values by fact id, each in the fact's own unit.

    Quantities are numbers, or two numbers for a said range; choices are words, flags bools, sizes lists of numbers,
    ranges two numbers, colours lists of (name, share or None), clocks "HH:MM".  None means not said.
    """

    kind: str
    said: dict[str, Any] = field(default_factory=dict)


@record
class Job:
    """The pieces in the order spoken, what was said of the job as a whole, and the balloons at hand (stock.Stock)."""

    pieces: list[Piece] = field(default_factory=list)
    said: dict[str, Any] = field(default_factory=dict)
    stock: tuple[Any, ...] = ()


def work(book: Book, job: Job) -> "Estimate":
    """The estimate of a job: nothing is worked out before it is asked for, and an unchanged piece not again."""
    return Estimate(book, job)


class Estimate:
    """All that can be asked of a job.  `piece` is a place in job.pieces, None the job itself.

    `metric` may be set before asking: reasons are then written in metric units (values keep the facts' own units).
    """

    def __init__(self, book: Book, job: Job, metric: bool = False) -> None:
        self.book, self.job, self.metric = book, job, metric
        self._pieces = [_piece_spread(book, piece, job.said) for piece in job.pieces]
        self._job = JobSpread(_guided(JobWorld(book, job.said, self._pieces)))
        self._figures: dict[bool, list[Figure]] = {}
        self._remarks: dict[tuple[str, bool], list[Said]] = {}

    def figure(self, id: str, piece: int | None = None) -> Figure | None:
        """The figure `id` of a piece or of the job, None when it is not known and cannot be worked out."""
        spread = self._spread(piece)
        step = spread.world.find(id)
        if step is None or self.book.is_of_job(id, spread.world.kind):
            return None if step is None else self.figure(id)
        key = (id, piece, self.metric)
        made: Figure | None = spread.figures.get(key)
        if made is None:
            made = spread.figures[key] = figure_of(spread, step, piece, self._uses(step, spread.world), self.metric)
        return made

    def typical(self, id: str, piece: int | None = None) -> tuple[Value, str] | None:
        """The value and the unit of a figure without its range, which takes longer; None where there is no figure."""
        step = self.step(id, piece)
        return (typical_of(step), unit_of(step.fact)) if step is not None else None

    def step(self, id: str, piece: int | None = None) -> Step | None:
        """The raw step behind a figure, its value in base units: for the modules of rules/ that reckon on."""
        return self._spread(piece).world.find(id)

    def figures(self) -> list[Figure]:
        """The figures that each piece and the job show, each scope followed by all that these were worked out from.

        Asked for before anything else, this costs least: each input is then moved once, with all steps there.
        """
        if self.metric not in self._figures:
            self._figures[self.metric] = self._all_figures()
        return list(self._figures[self.metric])

    def _all_figures(self) -> list[Figure]:
        wanted: dict[tuple[int | None, str], None] = {}
        for piece in self._scopes():
            for id in self._spread(piece).world.shows:
                wanted.setdefault((piece, id))
        queue = list(wanted)
        while queue:
            piece, id = queue.pop(0)
            step = self._spread(piece).world.find(id)
            for used in self._used(step, piece) if step else ():
                if used not in wanted:
                    wanted[used] = None
                    queue.append(used)
        places = {piece: place for place, piece in enumerate(self._scopes())}
        found = (self.figure(id, piece) for piece, id in sorted(wanted, key=lambda key: places[key[0]]))
        return [figure for figure in found if figure is not None]

    def look_ahead(self) -> None:
        """Work out all that is shown, ranges aside: where this comes first, each input is moved but once."""
        for spread in (*self._pieces, self._job):
            for id in spread.world.shows:
                spread.world.find(id)
        for place in range(len(self._pieces)):
            self.parts(place)

    def let_go(self) -> None:
        """Forget what is quickly worked out again: for an estimate that is kept after it has been shown."""
        for spread in (*self._pieces, self._job):
            spread.let_go()

    def holds(self, when: str | None, piece: int | None = None) -> bool:
        """Whether a condition holds for a piece, or for the job; None always does."""
        return self._spread(piece).world.holds(when)

    def missing(self, piece: int | None = None) -> list[str]:
        """The ids of the facts that the figures shown need and nobody knows, in the order they are come upon."""
        from rules.missing import missing_for  # with what reads formulas apart, which nothing else here needs

        world = self._spread(piece).world
        return missing_for(world, world.shows)

    def trouble(self, id: str, piece: int | None = None) -> str | None:
        """Why there is no such figure, in one plain clause; None when there is one."""
        world = self._spread(piece).world
        return None if world.find(id) is not None else world.absent.get(id)

    def explain(self, id: str, piece: int | None = None) -> tuple[Figure, list[Figure]] | None:
        """A figure and the figures it was worked out from directly; None when there is no such figure."""
        figure = self.figure(id, piece)
        if figure is None:
            return None
        step = self._spread(figure.piece).world.find(id)
        found = (self.figure(used, where) for where, used in (self._used(step, figure.piece) if step else ()))
        return figure, [used for used in found if used is not None]

    def matters(self, id: str, piece: int | None = None) -> list[Influence]:
        """The uncertain inputs by how far each moves the figure, the greatest first; [] when there is none."""
        spread = self._spread(piece)
        step = spread.world.find(id)
        if step is None:
            return []
        per = factor(step.fact.unit)
        return [self._influence(move, spread, piece, per) for move in _greatest_first(spread.moves(id))]

    def assumed(self, piece: int | None = None) -> list[Figure]:
        """Every assumed input that the figures shown rest on: those that move the main figure most come first."""
        found = (self.figure(step.id, piece) for step in self._assumed(piece))
        return [figure for figure in found if figure is not None]

    def taken(self, piece: int | None = None) -> list[str]:
        """The same in a few words each, "tables 30 in high", leaving out what the book calls quiet."""
        world = self._spread(piece).world
        steps = (step for step in self._assumed(piece) if not step.fact.quiet)
        return [
            fill(step.fact.short, world, self.metric)
            or f"{step.fact.name} {value_text(step.value, step.fact, self.metric)}"
            for step in steps
        ]

    def _assumed(self, piece: int | None) -> list[Step]:
        spread = self._spread(piece)
        world = spread.world
        rests: dict[str, Step] = {}
        queue = list(world.shows)
        for id in queue:  # which grows as it is gone through
            step = world.find(id) if id not in rests else None
            if step is not None:
                rests[id] = step
                queue += step.reads
                queue += step.reasons
        assumed = [step for step in rests.values() if step.how == ASSUMED]
        pull = self._pulls(spread)
        # An input with a range that moves nothing shown (the price of stems where there are none) is not worth a word.
        telling = [step for step in assumed if pull.get(step.id, 0) > 0 or not step.is_uncertain]
        return sorted(telling, key=lambda step: -pull.get(step.id, 0.0))

    def parts(self, piece: int) -> list[Part]:
        """The balloons of a piece by sort, over all of its count; [] when they cannot be worked out."""
        world = self._spread(piece).world
        found: list[Part] = []
        for part in self.book.kind_of(world.kind).parts:
            steps = [world.find(id) for id in (part.size, part.inflated, part.count)]
            if all(step is not None for step in steps):
                size, inflated, count = (step.value for step in steps if step is not None)
                found.append(
                    Part(name=part.name, size_in=size, inflated_in=inflated, count=round(count), pairs=part.pairs)
                )
        return [part for part in found if part.count > 0]

    def clashes(self) -> list[Clash]:
        """Wishes that contradict one another or cannot be had, piece by piece."""
        return remarks.clashes(self.book, self._worlds(), self.metric)

    def cautions(self) -> list[Said]:
        """Dangers to name, the gravest first; one said of several pieces alike stands once."""
        return self._said("caution")

    def notes(self) -> list[Said]:
        """What else is worth saying, with no danger in it."""
        return self._said("note")

    def answers(self, ids: frozenset[str]) -> list[Said]:
        """The cautions and answers of these ids that hold, in the order of the book's ranks, whatever was said."""
        worlds = self._worlds()
        found = [
            one for kind in ("caution", "answer") for one in remarks.said(self.book, worlds, kind, self.metric, ids)
        ]
        return sorted(found, key=lambda one: one.rank)

    def _said(self, kind: str) -> list[Said]:
        key = (kind, self.metric)
        if key not in self._remarks:
            self._remarks[key] = remarks.said(self.book, self._worlds(), kind, self.metric)
        return self._remarks[key]

    def _worlds(self) -> list[tuple[int | None, World]]:
        return [(piece, self._spread(piece).world) for piece in self._scopes()]

    def _scopes(self) -> list[int | None]:
        return [*range(len(self._pieces)), None]

    def _spread(self, piece: int | None) -> Spread:
        return self._job if piece is None else self._pieces[piece]

    def _used(self, step: Step, piece: int | None) -> list[tuple[int | None, str]]:
        """The (piece, id) of what a step read directly."""
        kind = self._spread(piece).world.kind
        found: list[tuple[int | None, str]] = []
        for id in (*step.reads, *step.reasons):
            looked = over_pieces(id)
            if looked is not None:
                found.extend((place, looked[1]) for place in self._job_world.having(looked[1]))
            else:
                found.append((None if self.book.is_of_job(id, kind) else piece, id))
        return found

    @property
    def _job_world(self) -> JobWorld:
        return self._job.world

    def _uses(self, step: Step, world: World) -> list[str]:
        piece: int | None = None if world is self._job.world else -1
        found: list[str] = []
        for id in (*step.reads, *step.reasons):
            looked = over_pieces(id)
            if looked is not None:
                found.extend(f"{place}.{looked[1]}" for place in self._job_world.having(looked[1]))
            else:
                found.append(f"job.{id}" if piece is not None and self.book.is_of_job(id, world.kind) else id)
        return found

    def _influence(self, move: Move, spread: Spread, piece: int | None, per: float) -> Influence:
        step = spread.leaves[move.leaf]
        where = piece
        if piece is None or self.book.is_of_job(step.id, spread.world.kind):
            where = self._owner(move.leaf) if piece is None else None
        return Influence(
            id=step.id,
            name=step.fact.name,
            piece=where,
            how=step.how,
            low_change=move.low / per,
            high_change=move.high / per,
        )

    def _owner(self, leaf: str) -> int | None:
        """The only piece that rests on the input, None when it is the job's or several pieces share it."""
        owners = []
        for place, piece in enumerate(self._pieces):
            for own, step in piece.leaves.items():
                if job_leaf(own, step, place) == leaf and not self.book.is_of_job(step.id, piece.world.kind):
                    owners.append(place)
        return owners[0] if len(owners) == 1 else None

    def _pulls(self, spread: Spread) -> dict[str, float]:
        """How far each input moves the main figure of its scope, else any figure shown, as a share of the figure."""
        main = self.book.kind_of(spread.world.kind).main
        return spread.pulls({id: 1.0 if id == main else LESSER for id in (main, *spread.world.shows)})


def _greatest_first(moves: list[Move]) -> list[Move]:
    return sorted((move for move in moves if move.size > 0), key=lambda move: -move.size)


def _guided(world: W) -> W:
    """The world, which goes the ways of those like it."""
    world.guide = Guide(world)
    return world


def _piece_spread(book: Book, piece: Piece, job_said: dict[str, Any]) -> Spread:
    """The piece worked out, taken from the book's store when one alike was worked out before."""
    key = (piece.kind, frozen(piece.said), frozen(job_said))
    found: Spread | None = book.worlds.get(key)
    if found is None:
        found = book.worlds[key] = Spread(_guided(World(book, piece.kind, piece.said, job_said)))
        if len(book.worlds) > KEPT_WORLDS:
            book.worlds.popitem(last=False)
    return found
