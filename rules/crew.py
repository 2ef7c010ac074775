"""Hands-on hours step by step, and how long a crew takes by the clock where not everything divides."""

from collections.abc import Mapping, Sequence
from typing import Any

from rules.engine import Estimate
from rules.record import record

VENUE, WORKSHOP, AFTER = "venue", "workshop", "after"
LEAST = 1e-6  # hours below which a step is none


@record
class Task:
    """A step of the work: hands-on hours, where it is done, and what it waits for ("pump", "packer" or nothing)."""

    name: str
    hours: float
    place: str
    waits: str = ""


@record
class Clock:
    """Hours by the clock, and what holds the crew up: "pump", "packer" or "" where hands alone do."""

    hours: float
    held_by: str


def tasks_of(estimate: Estimate) -> list[Task]:
    """The steps of all pieces in the order of the book's tasks, taking down last; they add up to the hands-on hours."""
    blocks = list(estimate.book.others.get("task", {}).values())
    found: dict[tuple[int, str, str], float] = {}
    names: dict[int, str] = dict(enumerate(str(block["name"]) for block in blocks))
    for piece in range(len(estimate.job.pieces)):
        left = value(estimate, "hours_of_piece", piece)
        there = filled_there(estimate, piece)
        by_hand = _is(estimate, "by_strokes", piece)
        for order, block in enumerate(blocks):
            hours = min(_part(estimate, block, piece), left) if block["figure"] else left
            left -= hours
            place = VENUE if there else str(block["place"])
            waits = "" if by_hand and block.get("waits") == "pump" else str(block.get("waits", ""))
            key = (order, place, waits)
            found[key] = found.get(key, 0.0) + hours
    tasks = [Task(names[order], hours, place, waits) for (order, place, waits), hours in sorted(found.items())]
    strike = value(estimate, "hours_at_the_venue") * value(estimate, "strike_share")
    return [*(task for task in tasks if task.hours > LEAST), *([Task("take down", strike, AFTER)] if strike else [])]


def filled_there(estimate: Estimate, piece: int) -> bool:
    """Whether a piece is filled where it hangs: helium, or as said."""
    return _is(estimate, "filled_on_site", None) or floats(estimate, piece)


def floats(estimate: Estimate, piece: int) -> bool:
    """Whether a piece is filled with helium."""
    step = estimate.step("gas", piece)
    return step is not None and step.value == "helium"


def clock_of(tasks: Sequence[Task], estimate: Estimate) -> Clock:
    """The hours by the clock of steps that are done side by side by the crew of the job."""
    return clock_time(
        tasks,
        crew=max(1, round(value(estimate, "crew") or 1)),
        inflators=max(1, round(value(estimate, "inflators") or 1)),
        packers=max(1, round(value(estimate, "packers") or 1)),
        loss=value(estimate, "crew_loss"),
        pauses=value(estimate, "pauses"),
    )


def clock_time(
    tasks: Sequence[Task], crew: int, inflators: int = 1, packers: int = 1, loss: float = 0.0, pauses: float = 0.0
) -> Clock:
    """The least time in which a crew can do the steps: no one is at two places, and no pump or line serves two.

    loss: the part of the time that each further person costs; pauses: the part that is rest.  ValueError for no crew.
    """
    if min(crew, inflators, packers) < 1:
        raise ValueError("it takes one person at least")
    total = sum(task.hours for task in tasks)
    ways = [(total / crew * (1 + loss * (crew - 1)), "")]
    for name, many in (("pump", inflators), ("packer", packers)):
        waiting = sum(task.hours for task in tasks if task.waits == name)
        ways.append((waiting / min(many, crew), name))
    longest = max(ways, key=lambda way: way[0])
    return Clock(longest[0] * (1 + pauses), longest[1])


def value(estimate: Estimate, id: str, piece: int | None = None) -> float:
    """A number as the engine holds it (hours, parts of one), nought where it is not known."""
    step = estimate.step(id, piece)
    return 0.0 if step is None or isinstance(step.value, str) else float(step.value)


def _part(estimate: Estimate, block: Mapping[str, Any], piece: int) -> float:
    hours = value(estimate, str(block["figure"]), piece)
    if "share" in block:
        return hours * value(estimate, str(block["share"]))
    return hours * (1 - value(estimate, str(block["rest"]))) if "rest" in block else hours


def _is(estimate: Estimate, id: str, piece: int | None) -> bool:
    step = estimate.step(id, piece)
    return step is not None and step.value is True
