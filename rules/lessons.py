"""From jobs that are done to the book: which fact takes up what was learned, as blocks laid over it."""

from collections.abc import Iterable, Mapping, Sequence

from rules.blocks import JOB
from rules.book import Book
from rules.engine import Estimate
from rules.learning import Done, Way, way_of
from rules.record import record
from rules.units import from_base

LEARNING = "learning"  # the kind of block


@record
class Lesson:
    """What a block of the book says can be learned; `when` narrows it to pieces of one style."""

    id: str
    of: tuple[str, ...]
    when: str | None
    measure: str
    of_piece: str
    lever: str
    power: float
    scatter: float


@record
class Used:
    """One job's part in a lesson: of which kind of piece ("job" for the whole), and what was used."""

    lesson: str
    kind: str
    done: Done


def lessons(book: Book) -> list[Lesson]:
    """All that can be learned, in the order of the book."""
    return [
        Lesson(
            id=id,
            of=tuple(raw["of"]),
            when=raw.get("when"),
            measure=raw["measure"],
            of_piece=raw.get("of_piece", raw["measure"]),
            lever=raw["lever"],
            power=raw["power"],
            scatter=raw["scatter"],
        )
        for id, raw in book.others.get(LEARNING, {}).items()
    ]


def lesson_for(book: Book, estimate: Estimate, measure: str, piece: int | None) -> Lesson | None:
    """The lesson that what was used of a measure is for, where the piece (None: the job) has one."""
    kind = JOB if piece is None else estimate.job.pieces[piece].kind
    fits = (one for one in lessons(book) if one.measure == measure and kind in one.of)
    return next((one for one in fits if estimate.holds(one.when, piece)), None)


def ways(book: Book, used: Sequence[Used]) -> dict[tuple[str, str], Way]:
    """(lesson, kind) -> what was learned, for each that a job has told something of."""
    found: dict[tuple[str, str], Way] = {}
    for lesson in lessons(book):
        for kind in dict.fromkeys(one.kind for one in used if one.lesson == lesson.id):
            done = [one.done for one in used if one.lesson == lesson.id and one.kind == kind]
            found[lesson.id, kind] = way_of(done, lesson.scatter)
    return found


def as_blocks(book: Book, learned: Mapping[tuple[str, str], Way], taken: Iterable[tuple[str, ...]] = ()) -> str:
    """What was learned as a house file's text; `taken` are headings of rules that stand over it."""
    held = set(taken)
    by_id = {lesson.id: lesson for lesson in lessons(book)}
    blocks = []
    for (id, kind), way in learned.items():
        lesson = by_id[id]
        heading = (lesson.lever,) if kind == JOB else (kind, lesson.lever)
        fact = book.fact(lesson.lever, kind)
        if fact is None or heading in held or (lesson.lever,) in held:
            continue
        base = from_base(fact.assume.typical, fact.unit) if fact.assume is not None else 1.0
        ends = sorted(base * end ** (1 / lesson.power) for end in (way.factor, *way.next_job))
        if fact.sane is not None:
            low, high = (from_base(end, fact.unit) for end in fact.sane)
            ends = [min(max(end, low), high) for end in ends]
        blocks.append(
            f"[{'.'.join(heading)}]\n"
            f"assume = {{ low = {ends[0]:.6g}, typical = {ends[1]:.6g}, high = {ends[2]:.6g} }}\n"
            f'learned = {{ jobs = {way.jobs}, of = "{lesson.measure}", of_piece = "{lesson.of_piece}", '
            f"factor = {way.factor:.6g}, jobs_factor = {way.jobs_factor:.6g}, left = {way.left:.6g} }}\n"
            f'source = "what your last {way.jobs} {"job" if way.jobs == 1 else "jobs"} used"\n'
        )
    return "\n".join(blocks)
