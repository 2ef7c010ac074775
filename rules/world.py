"""One scope worked out at typical values: the facts of a piece (with those of the job it uses), or of the job.

Each fact is worked out when it is first asked for, in the order said > house > rules > assumed, and leaves a Step:
its value, how it came about, what it read.  Nothing here knows ranges; rules/spread.py moves the inputs afterwards.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal

from rules.blocks import JOB, Fact, Rule
from rules.book import Book
from rules.nearest import clause
from rules.values import read_value
from rules.ways import Formula, Way, condition_of, ways_of

if TYPE_CHECKING:
    from rules.alike import Guide

How = Literal["said", "assumed", "house", "worked out"]
SAID: How = "said"
HOUSE: How = "house"
ASSUMED: How = "assumed"
WORKED_OUT: How = "worked out"
ARITHMETIC_TROUBLE = (ZeroDivisionError, OverflowError, ValueError, TypeError, IndexError)


class Absent(Exception):
    """A fact has no value; `trouble` says why in one plain clause."""

    def __init__(self, id: str, trouble: str) -> None:
        super().__init__(trouble)
        self.id, self.trouble = id, trouble


def _plain(error: Exception) -> str:
    """What went wrong in arithmetic, as a plain clause."""
    if isinstance(error, ZeroDivisionError):
        return "it divides by nothing"
    if isinstance(error, OverflowError) or str(error).startswith("math "):
        return "a number in it is outside what can be reckoned with"
    return clause(error)


@dataclass(slots=True)
class Step:
    """How one fact got its value."""

    id: str
    fact: Fact
    value: Any
    how: How
    way: Way | None = None
    reads: tuple[str, ...] = ()  # by the formula
    reasons: tuple[str, ...] = ()  # by the conditions that chose the formula
    low: Any = None  # of an uncertain input
    high: Any = None

    @property
    def rule(self) -> Rule | None:
        """The rule that worked it out."""
        return self.way.rule if self.way is not None else None

    @property
    def is_uncertain(self) -> bool:
        """Whether it is an input that may be lower or higher."""
        return self.low is not None and self.low != self.high


@dataclass(slots=True)
class Reader:
    """What an exact closure reads from: notes each fact read and each choice made."""

    world: "World"
    reads: dict[str, None]
    choices: dict[str, bool]

    def __getitem__(self, id: str) -> Any:
        self.reads[id] = None
        return self.world.value(id)

    def known(self, id: str) -> bool:
        return is_known(self.world, id)

    def said(self, id: str) -> bool:
        return id in self.world.given

    def note(self, key: str, test: Any) -> bool:
        holds = self.choices[key] = self.world.choices[key] = bool(test)
        return holds


class World:
    """One scope.  `kind` is a kind of piece or "job"; `said` holds raw values in the facts' own units."""

    def __init__(self, book: Book, kind: str, said: Mapping[str, Any], job_said: Mapping[str, Any]) -> None:
        self.book, self.kind = book, kind
        self.given = self._given(said, job_said)
        self.steps: dict[str, Step] = {}  # in the order worked out: what a step reads stands before it
        self.choices: dict[str, bool] = {}
        self.absent: dict[str, str] = {}
        self._at_work: list[str] = []
        self.guide: Guide | None = None  # who may know the way to a fact

    def _given(self, said: Mapping[str, Any], job_said: Mapping[str, Any]) -> dict[str, Any]:
        hears = self.book.kind_of(self.kind).hears
        mine = {hears.get(heard, heard): value for heard, value in said.items()}
        jobs = {id: value for id, value in job_said.items() if self.book.is_of_job(id, self.kind) or self.kind == JOB}
        return {id: value for id, value in {**jobs, **mine}.items() if value is not None}

    @cached_property
    def shows(self) -> tuple[str, ...]:
        """The ids of the facts that an estimate of this scope shows."""
        return self.book.kind_of(self.kind).shows

    def value(self, id: str) -> Any:
        """The typical value in base units; raises Absent when there is none."""
        step = self.steps.get(id) or self._work_out(id)
        return step.value

    def find(self, id: str) -> Step | None:
        """How the fact got its value, or None when it has none."""
        step = self.steps.get(id)
        if step is not None or id in self.absent:
            return step
        if self.guide is None or id not in self.guide.known:
            trouble = self.nothing_of(id)
            if trouble:  # most that is asked for in vain
                self.absent[id] = trouble
                return None
        try:
            return self._work_out(id)
        except Absent:
            return None

    def _work_out(self, id: str) -> Step:
        guide = self.guide
        if guide is not None and id in guide.fixed:
            step = self.steps[id] = guide.fixed[id]
            return step
        if id in self.absent:
            raise Absent(id, self.absent[id])
        if id in self._at_work:
            raise Absent(id, f"{' needs '.join([*self._at_work[self._at_work.index(id) :], id])}, a circle")
        self._at_work.append(id)
        try:
            step = (guide.step(id) if guide is not None else None) or self._step(id, {})
        except Absent as absent:
            self.absent[id] = absent.trouble
            raise Absent(id, absent.trouble) from None
        finally:
            self._at_work.pop()
        self.steps[id] = step
        return step

    def _step(self, id: str, choices: dict[str, bool]) -> Step:
        """The step as it is found by trying each rule; `choices` takes up those that fall in it."""
        trouble = self.nothing_of(id)
        fact = self.book.fact(id, self.kind)
        if trouble or fact is None:
            raise Absent(id, trouble)
        if id in self.given:
            return self._said(fact, self.given[id])
        if fact.from_house and fact.assume is not None:
            return Step(id, fact, fact.assume.typical, HOUSE, low=fact.assume.low, high=fact.assume.high)
        reasons: dict[str, None] = {}
        for way in ways_of(self.book, fact):
            if way.when is None or self._holds(way.when, reasons, choices):
                return self._learned(self._by_way(fact, way, reasons, choices), choices)
        if fact.assume is not None:
            assume = fact.assume
            return self._learned(Step(id, fact, assume.typical, ASSUMED, low=assume.low, high=assume.high), choices)
        raise Absent(id, f"{fact.name} is not known")

    def _learned(self, step: Step, choices: dict[str, bool]) -> Step:
        if self.guide is not None:
            self.guide.learn(step, choices)
        return step

    def nothing_of(self, id: str) -> str:
        """Why the fact has no value, whatever the others are; "" where it may have one."""
        fact = self.book.fact(id, self.kind)
        if fact is None:
            return f"nothing is known of {id.replace('_', ' ')}"
        return "" if id in self.given or fact.rules or fact.assume is not None else f"{fact.name} is not known"

    def _said(self, fact: Fact, raw: Any) -> Step:
        try:
            value = read_value(raw, fact.type, fact.unit)
        except ValueError as error:
            raise Absent(fact.id, f"{fact.name} cannot be read: {error}") from None
        if fact.is_number and isinstance(value, tuple):
            low, high = value
            return Step(fact.id, fact, (low + high) / 2, SAID, low=low, high=high)
        return Step(fact.id, fact, value, SAID)

    def _holds(self, when: Formula, reasons: dict[str, None], choices: dict[str, bool]) -> bool:
        return bool(self._run(when, Reader(self, reasons, choices)))

    def _by_way(self, fact: Fact, way: Way, reasons: dict[str, None], choices: dict[str, bool]) -> Step:
        reader = Reader(self, {}, choices)
        value = self._run(way.formula, reader, fact)
        if fact.is_number:
            value = finite(value, fact)
        others = tuple(reason for reason in reasons if reason not in reader.reads)
        return Step(fact.id, fact, value, WORKED_OUT, way, tuple(reader.reads), others)

    def _run(self, formula: Formula, reader: Reader, fact: Fact | None = None) -> Any:
        try:
            return formula.exact(reader)
        except ARITHMETIC_TROUBLE as error:
            name = fact.name if fact is not None else formula.slot
            raise Absent(name, f"{name} cannot be worked out: {_plain(error)}") from None

    def holds(self, when: str | None) -> bool:
        """Whether a remark's condition holds; None always does, one that reads an absent fact does not."""
        if when is None:
            return True
        try:
            return self._holds(condition_of(self.book, when), {}, {})
        except Absent:
            return False


def is_known(world: World, id: str) -> bool:
    """Whether a fact was said, is in the house file or can be worked out, and is not assumed."""
    step = world.find(id)
    return step is not None and step.how != ASSUMED


def finite(value: Any, fact: Fact) -> float:
    """The value as a number; Absent where it has no end."""
    number = float(value)
    if not math.isfinite(number):
        raise Absent(fact.name, f"{fact.name} cannot be worked out: it has no end")
    return number
