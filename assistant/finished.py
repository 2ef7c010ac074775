"""Finished jobs: what was really used is kept with the job, compared with the book, and learned from."""

import math
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.aside import aside
from assistant.estimating import estimate
from assistant.job_words import is_undo
from assistant.jobs import JobBook, JobBookError, UsedRow
from assistant.layout import listed, paragraph
from assistant.reply import Reply
from assistant.state import HeardPiece
from assistant.used_colours import summed
from grammar.numbers.quantities import read_quantities
from grammar.reading import Context, Mention, Reading
from grammar.talk.used import Report, answer_said, each_answered, is_said, read_reports
from rules import Book, Estimate, Figure, load_book
from rules.blocks import JOB
from rules.learning import Done, Way, way_of
from rules.lessons import Lesson, Used, as_blocks, lesson_for, lessons, ways
from rules.record import record

if TYPE_CHECKING:
    from assistant.conversation import Conversation

FEW_HANDS = 12  # more than these are no crew
HALF = 0.5  # none lost of so many is taken for half of one (Jeffreys' rule for a share, from memory)
NO_JOB = "Which job was that? Open it, or say what it was; then I can compare."
NOTHING = 'Nothing is learned yet; when a job is done say, for instance, "the runner took 121" or "eleven popped".'
WHO = "For how many of you? Say a number; with one it is those hours alone."
IN_BALLOONS = "Say that in balloons; how many a bag held was not said. Nothing was kept."
IN_HOURS = "Say that in hours of work; a day is as long as you make it. Nothing was kept."
BY_ITSELF = "Say what was used in a turn of its own; nothing was kept or changed."
NOT_USED = "That was not kept."


@record
class _Told:
    """One number of a report beside what the book expected of it."""

    lesson: Lesson
    kind: str
    name: str
    done: Done

    def row(self, said: str) -> UsedRow:
        done = self.done
        return UsedRow(self.lesson.id, self.kind, done.used, done.expected, done.low, done.high, said)


@record
class _Waiting:
    """What waits for the next turn: reports, of which that `at` lacks something, or numbers that are very odd."""

    said: str
    reports: tuple[Report, ...] = ()
    at: int = 0
    odd: tuple[_Told, ...] = ()


class Finished:
    """What one user's finished jobs tell; kept in the job book, or in memory where there is none."""

    def __init__(self, talk: "Conversation", jobs: JobBook | None) -> None:
        self.talk = talk
        self.waiting: _Waiting | None = None
        self.last: tuple[list[UsedRow], list[UsedRow]] | None = None  # what the last turn kept, and what it dropped
        self._memory: list[UsedRow] = []
        try:
            self._memory = jobs.used() if jobs is not None else []
        except JobBookError:
            self._memory = []
        if self._memory:
            talk.habits.rules.more = self.learned

    # turns -----------------------------------------------------------------------------------------------------------

    def take(self, text: str) -> Reply | None:
        """The answer to a report, or to a question about what was learned; None for any other turn."""
        waiting, self.waiting = self.waiting, None
        last, self.last = self.last, None
        self._look_again()
        if last is not None and is_undo(text):
            return self._forget(last[0], "Taken back.", last[1])
        if is_said("show", text):
            self.last = last
            return self._show()
        if is_said("forget_all", text) or (is_said("forget_last", text) and self._memory):
            end = self._memory[-1:]
            rows = [row for row in self._memory if is_said("forget_all", text) or _together(row, end[0])]
            if not rows:
                return self._say(NOTHING, "learned")
            self.last = [], rows
            return self._forget(rows, "Forgotten.")
        if waiting is not None and (reply := self._go_on(waiting, text)) is not None:
            return reply
        reports, left = read_reports(summed(text, self.talk.reader.lexicon), self.talk.vocabulary.nominal)
        if not reports:
            return None
        return self._reported(reports, left, text)

    def _go_on(self, waiting: _Waiting, text: str) -> Reply | None:
        """The next turn's word on what waits."""
        if waiting.odd:
            said = answer_said(text)
            return (
                None
                if said is None
                else self._keep(list(waiting.odd), waiting.said)
                if said
                else self._say(NOT_USED, "used")
            )
        report = waiting.reports[waiting.at]
        if report.measure == "hours":
            numbers = read_quantities(text)
            if len(numbers) != 1 or not 1 <= numbers[0].value <= FEW_HANDS:
                return None
            report = replace(report, value=report.value * numbers[0].value, of_all_hands=True)
        else:
            each = each_answered(text)
            if each is None:
                return None
            report = replace(report, each=each)
        reports = list(waiting.reports)
        reports[waiting.at] = report
        return self._compare(reports, waiting.said)

    def _reported(self, reports: list[Report], left: str, text: str) -> Reply | None:
        reading = self.talk.reader.read(left, Context()) if any(map(str.isalnum, left)) else Reading()
        wishes = bool(reading.orders) or bool(set(reading.job) - {"crew"})
        if not self.talk.state.pieces:
            others = wishes or any(set(mention.facts) - {"count"} for mention in reading.mentions)
            return None if others else self._say(NO_JOB, "used")
        if wishes:
            return self._say(BY_ITSELF, "used")
        crew = reading.job.get("crew") or self.talk.state.job.get("crew")
        if crew:
            reports = [
                replace(one, value=one.value * int(crew), of_all_hands=True)
                if one.measure == "hours" and not one.of_all_hands
                else one
                for one in reports
            ]
        return self._compare(reports, text, [*reading.unread, *(doubt.words for doubt in reading.doubts)])

    def _about(self, report: Report, made: Estimate) -> list[int] | None:
        """The pieces that the words beside a number name, all of them where they name none; None where none is such."""
        text = report.around
        reading = self.talk.reader.read(text, Context()) if any(map(str.isalnum, text)) else Reading()
        named = [mention for mention in reading.mentions if mention.kind or set(mention.facts) - {"count"}]
        pieces = self.talk.state.pieces
        if not named:
            return [] if report.beside else list(range(len(pieces)))
        fit = [p for p, piece in enumerate(pieces) if any(_is_such(m, piece, made, p) for m in named)]
        return fit or None

    def _compare(self, reports: list[Report], text: str, unread: Sequence[str] = ()) -> Reply:
        """Put numbers beside what the book, without anything learned, expected."""
        made = estimate(self._book_alone(), self.talk.state)
        told: list[_Told] = []
        for at, report in enumerate(reports):
            if report.measure in ("bags", "days"):
                return self._say(IN_BALLOONS if report.measure == "bags" else IN_HOURS, "used")
            if report.measure == "hours" and not report.of_all_hands:
                self.waiting = _Waiting(text, tuple(reports), at)
                return self._say(WHO, "used")
            if report.measure == "hours":
                told += self._beside("hours_hands_on", None, made, float(report.value))
            elif report.measure == "lost":
                told += self._lost(report, made)
            else:
                places = self._about(report, made)
                if places is None:
                    return self._say(
                        f"No piece of this job is that: {' '.join(report.around.split())}. {BY_ITSELF}", "used"
                    )
                ways = [list(self._balloons(report, places, made, each)) for each in _readings(report, places, made)]
                sound = [way for way in ways if not any(map(self._is_odd, way))]
                if len(sound) > 1:
                    self.waiting = _Waiting(text, tuple(reports), at)
                    return self._say(f"Is {_number(float(report.value))} for one of them, or for all?", "used")
                told += (sound or sorted(ways, key=_distance) or [[]])[0]
        if not told:
            return self._say("The book has no number to compare that with.", "used")
        odd = [one for one in told if self._is_odd(one)]
        if odd:
            self.waiting = _Waiting(text, odd=tuple(told))
            names = listed(
                f"{one.name} {_number(one.done.used)}, where {_number(one.done.expected)} was expected" for one in odd
            )
            return self._say(f"{names}: that is far off. Shall I learn from it? yes or no", "used")
        return self._keep(told, text, unread)

    def _balloons(self, report: Report, places: list[int], made: Estimate, each: bool) -> Iterator[_Told]:
        """The number as that of each piece, or of all pieces together, which then differ from the book alike."""
        used = float(report.value)
        all_of = {p: made.figure("balloons", p) for p in places}
        expected = sum(float(figure.value) for figure in all_of.values() if figure is not None)
        if report.measure == "left":
            bought = made.figure("balloons_to_buy")
            used = float(bought.value) - used if bought is not None else 0.0
        if expected <= 0 or used <= 0:
            return
        for place, figure in all_of.items():
            one = made.figure("balloons_each", place)
            whole = float(figure.value) if figure is not None else 0.0
            if each and one is not None and float(one.value) > 0:
                yield from self._beside("balloons", place, made, used * whole / float(one.value))
            elif figure is not None:
                yield from self._beside("balloons", place, made, used if each else used * whole / expected)

    def _lost(self, report: Report, made: Estimate) -> Iterator[_Told]:
        whole = made.figure("balloons_all")
        out_of = float(report.out_of) if report.out_of else float(whole.value) if whole is not None else 0.0
        if out_of > 0 and out_of >= float(report.value):
            yield from self._beside("loss_rate", None, made, 100 * max(float(report.value), HALF) / out_of)

    def _beside(self, measure: str, place: int | None, made: Estimate, used: float) -> Iterator[_Told]:
        figure = made.figure(measure, place)
        lesson = lesson_for(made.book, made, measure, place)
        if lesson is None or figure is None or not _has_range(figure):
            return
        kind = JOB if place is None else made.job.pieces[place].kind
        name = kind if measure == "balloons" else figure.name
        yield _Told(lesson, kind, name, Done(used, float(figure.value), figure.low or 0.0, figure.high or 0.0))

    def _is_odd(self, told: _Told) -> bool:
        doubt = self.talk.book.fact("learning_doubt")
        known = self._ways().get((told.lesson.id, told.kind))
        before = known or way_of([], told.lesson.scatter, told.done.spread)
        return doubt is not None and doubt.assume is not None and before.oddness(told.done) > doubt.assume.typical

    # keeping ---------------------------------------------------------------------------------------------------------

    def _keep(self, told: list[_Told], said: str, unread: Sequence[str] = ()) -> Reply:
        job = self.talk.desk.job if self.talk.desk is not None else None
        new = {(one.lesson.id, one.kind): one.done.expected for one in told}
        old = [row for row in self._memory if row.job == (job or 0) and (row.lesson, row.kind) in new]
        if job is None:  # without a job book the same job is known by what was expected of it
            old = [row for row in old if row.expected == new[row.lesson, row.kind]]
        try:
            rows = self._change(old, [one.row(said) for one in told])
        except JobBookError as error:
            return self._say(f"That was not kept, because {error}.", "used")
        self.last = rows, old
        known = self._ways()
        lines = ["Kept with this job:"]
        for one in told:
            way = known[one.lesson.id, one.kind]
            lines += paragraph(f"- {one.name}: {_compared(one)}; {_taken(way)}", self.talk.width, "  ")
        lines += paragraph(f"Not used: {', '.join(unread)}.", self.talk.width) if unread else []
        return replace(aside(self.talk, lines, "used"), unread=list(unread))

    def _forget(self, rows: list[UsedRow], said: str, back: list[UsedRow] | None = None) -> Reply:
        try:
            self._change(rows, back or [])
        except JobBookError as error:
            return self._say(f"That was not forgotten, because {error}.", "learned")
        return self._say(said, "learned")

    def _change(self, drop: list[UsedRow], keep: list[UsedRow]) -> list[UsedRow]:
        """Forget rows and keep others, in the book as well; those kept, as the book numbers them."""
        desk = self.talk.desk
        if desk is not None:
            desk.book.drop_used([row.id for row in drop if row.id])
            told_of = [(row.job or desk.job, row) for row in keep]
            for job in dict.fromkeys(job for job, _ in told_of):
                if job is not None:
                    desk.book.keep_used(job, [row for of, row in told_of if of == job])
            keep = desk.book.used()[-len(keep) :] if keep else []
        self._memory = [*(row for row in self._memory if row not in drop), *keep]
        self._lay()
        return keep

    def _look_again(self) -> None:
        """Take up what another chat told, and leave what went with a job that was put away."""
        desk = self.talk.desk
        if desk is None or desk.book.path is None:
            return
        try:
            rows = desk.book.used()
        except JobBookError:
            return
        if rows != self._memory:
            self._memory = rows
            self._lay()

    def _lay(self) -> None:
        rules = self.talk.habits.rules
        rules.more = self.learned
        self.talk.use(rules.again().book)

    def _ways(self) -> dict[tuple[str, str], Way]:
        return ways(load_book(), [_used(row) for row in self._memory])

    def learned(self, text: str) -> str:
        """What is learned as blocks beside a house file's text, whose own rules stand over it."""
        if not self._memory:
            return ""
        try:
            rules = tomllib.loads(text)
        except tomllib.TOMLDecodeError:
            rules = {}
        taken = [
            (id, *inner)
            for id, raw in rules.items()
            for inner in [(), *((key,) for key in raw if isinstance(raw, dict))]
        ]
        return as_blocks(load_book(), self._ways(), taken)

    def _book_alone(self) -> Book:
        """The book with the house rules and nothing learned."""
        rules = self.talk.habits.rules
        return rules.lay(rules.text).book if self._memory else self.talk.book

    def _show(self) -> Reply:
        lines = []
        for (id, kind), way in self._ways().items():
            lesson = next(one for one in lessons(self.talk.book) if one.id == id)
            name = kind if lesson.measure == "balloons" else lesson.measure.replace("_", " ")
            low, high = way.range
            text = f"- {name}: {_taken(way)} ({low:.2f} to {high:.2f} times)"
            lines += paragraph(text, self.talk.width, "  ")
        if not lines:
            return self._say(NOTHING, "learned")
        last = 'Say "forget the last one" or "forget what you learned".'
        return aside(self.talk, ["Learned from your jobs:", *lines, "", *paragraph(last, self.talk.width)], "learned")

    def _say(self, text: str, intent: str) -> Reply:
        return aside(self.talk, paragraph(text, self.talk.width), intent)


def _together(row: UsedRow, other: UsedRow) -> bool:
    """Whether one turn told both."""
    return (row.job, row.said) == (other.job, other.said)


def _used(row: UsedRow) -> Used:
    return Used(row.lesson, row.kind, Done(row.used, row.expected, row.low, row.high))


def _is_such(mention: Mention, piece: HeardPiece, made: Estimate, place: int) -> bool:
    """Whether a piece is what was spoken of: of that kind, and with nothing said of it that it is not."""
    return mention.kind in (None, piece.kind) and all(
        _holds(fact, value, piece, made, place) for fact, value in mention.facts.items() if fact != "count"
    )


def _holds(fact: str, value: object, piece: HeardPiece, made: Estimate, place: int) -> bool:
    said = list(piece.facts.values())
    if isinstance(value, list):
        return any(all(one in other for one in value) for other in said if isinstance(other, list))
    step = made.step(fact, place)
    return value in said or (step is not None and step.value == value)


def _readings(report: Report, places: list[int], made: Estimate) -> list[bool]:
    """Whether the number may be each piece's, all pieces' together, or either."""
    if report.measure == "left":
        return [False]
    if report.each is not None:
        return [report.each]
    one, whole = (made.figure(id, places[0]) if len(places) == 1 else None for id in ("balloons_each", "balloons"))
    several = one is not None and whole is not None and 0 < float(one.value) < float(whole.value)
    return [False, True] if several else [False]


def _distance(way: list[_Told]) -> float:
    """How far what was used is from what was expected; an empty one is furthest."""
    return max((abs(one.done.log_ratio) for one in way), default=math.inf)


def _has_range(figure: Figure) -> bool:
    return figure.low is not None and figure.high is not None and 0 < figure.low < figure.high


def _number(value: float) -> str:
    return f"{value:,.0f}" if value >= 100 else f"{value:,.3g}"


def _compared(told: _Told) -> str:
    unit = " hours" if told.lesson.measure.startswith("hours") else " %" if told.lesson.measure == "loss_rate" else ""
    return f"{_number(told.done.used)}{unit}, the book {_number(told.done.expected)}"


def _taken(way: Way) -> str:
    """ "your last 4 jobs 9 % more, from now on 6 % more"."""
    jobs = "this one job" if way.jobs == 1 else f"your {way.jobs} jobs"
    return f"{jobs} {_more(way.jobs_factor)}, taken from now on {_more(way.factor)}"


def _more(factor: float) -> str:
    percent = round(100 * abs(factor - 1))
    return f"{percent} % {'more' if factor > 1 else 'less'}" if percent else "as the book"
