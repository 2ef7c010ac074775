"""What an estimate hands out: figures and, beside them, what moves them, what they are made of, and remarks."""

from dataclasses import dataclass

from rules.record import record
from rules.world import How

Value = bool | int | float | str


@dataclass(frozen=True, slots=True)  # truly, as strangers get it
class Figure:
    """One value with its range, its reason and its source.

    value, low and high are in `unit`, readable by a plain pint registry; money has its ISO 4217 code instead.  low
    and high are None for what is no quantity.  `piece` is the place of its piece in the job, None for the job itself.
    `uses` names what it was worked out from: an id of the same scope, or "job.id" or "0.id" from another.
    """

    id: str
    name: str
    piece: int | None
    value: Value
    low: int | float | None
    high: int | float | None
    unit: str
    how: How
    why: str
    source: str
    uses: list[str]


@record
class Influence:
    """How far an uncertain input moves a figure, in the figure's unit, with the input at its low and at its high.

    `piece` is None where the input is the job's own or shared by several pieces.
    """

    id: str
    name: str
    piece: int | None
    how: How
    low_change: float
    high_change: float


@record
class Said:
    """A caution or a note; `piece` is the place of the piece it is said of, None for the job."""

    id: str
    piece: int | None
    text: str
    source: str
    rank: int


@record
class Clash:
    """Wishes that cannot both be had: what clashes, what the choices are, and the facts that are not kept."""

    id: str
    piece: int | None
    text: str
    choices: list[str]
    drop: list[str]


@record
class Part:
    """Balloons of one sort in all pieces alike: nominal and inflated size in inches, and how many."""

    name: str
    size_in: float
    inflated_in: float
    count: int
    pairs: bool
