"""Cases worked by hand: what is said, and the figures that must come out.

A file tests/cases/<piece>.toml holds blocks

    [[case]]
    say     = ["a curtain 6 ft wide and 7 ft high"]      # the turns; the last reply counts
    by_hand = "how the figures were reached without the program"
    figures = { strands_each = 9, line_of_piece = "72 ft" }   # of the first piece
    job     = { balloons_all = 540 }                          # of the whole job

A bare number is in the figure's own unit; a text is a number and any unit of the same sort.
"""

import math
import tomllib
from dataclasses import dataclass
from functools import cache
from typing import Any

import pint

from assistant import Conversation
from rules import Book, Figure

CLOSE = 1e-6  # relative: cases are exact, floats are not
FIRST, JOB = 0, None


@dataclass(frozen=True, slots=True)
class Case:
    """One case of a file."""

    say: tuple[str, ...]
    by_hand: str
    figures: dict[str, Any]
    job: dict[str, Any]

    def __str__(self) -> str:
        return " / ".join(self.say)


def read_cases(text: str) -> list[Case]:
    """The cases of one file's text; KeyError where a case lacks what it must have."""
    return [
        Case(tuple(raw["say"]), raw["by_hand"], raw.get("figures", {}), raw.get("job", {}))
        for raw in tomllib.loads(text)["case"]
    ]


def faults(case: Case, book: Book | None = None) -> list[str]:
    """What comes out otherwise than written, a line each; every figure at fault is named with both values."""
    talk = Conversation(book)
    reply = [talk.say(turn) for turn in case.say][-1]
    if reply.question is not None or reply.unread:
        return [f"not understood: {reply.question or reply.unread}"]
    got = {(figure.id, figure.piece): figure for figure in reply.figures}
    found: list[str] = []
    for place, wanted in ((FIRST, case.figures), (JOB, case.job)):
        for id, value in wanted.items():
            figure = got.get((id, place))
            if figure is None:
                found.append(f"{id}: there is no such figure")
            elif not _agrees(value, figure):
                found.append(f"{id}: {_worth(figure)} {figure.unit}, not {value}")
    return found


def _agrees(wanted: Any, figure: Figure) -> bool:
    if isinstance(figure.value, (bool, str)) or isinstance(wanted, bool):
        return bool(figure.value == wanted)
    if isinstance(wanted, str):
        wanted = _units().Quantity(wanted).to(figure.unit).magnitude
    return math.isclose(float(wanted), float(figure.value), rel_tol=CLOSE)


def _worth(figure: Figure) -> str:
    return f"{figure.value:g}" if isinstance(figure.value, float) else str(figure.value)


@cache
def _units() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()
