"""A job as one plain text file that can be read, mailed and brought back in."""

import re
from dataclasses import dataclass
from datetime import UTC, datetime

from assistant.jobs import JobRow, Quote, name_of
from assistant.sheets.files import MARK
from assistant.terminal import is_readable, one_line

HEAD = "festoon job, version 1"
LARGEST = 2_000_000  # bytes of a file that is read
MOST_TURNS = 5000
LONGEST_TURN = 10_000
_TURN = re.compile(r"^[> ]*> ?(.*)$")  # a mail that was answered has more than one mark


class NotAJob(ValueError):
    """The text is no job; str() says why in a clause."""


@dataclass(frozen=True, slots=True)
class Told:
    """What such a file holds."""

    name: str | None
    turns: list[str]


def written(row: JobRow, turns: list[str], quote: Quote | None, told: list[str], book: str, house: str) -> str:
    """The text. `told` are lines about the quote for whoever reads the file; the turns are what is read back."""
    lines = [f"{HEAD}, {MARK}", f"name: {row.name or ''}", f"begun: {_when(row.made)}", f"rule book: {book}"]
    if quote is not None:
        lines.append(f"quoted: {_when(quote.at)}, rule book {quote.book}")
        lines += [f"  {line}" for line in told]
    lines += ["", "What was said, in order; all the rest is for your eyes:", ""]
    lines += [f"> {one_line(turn)}" for turn in turns]
    if house.strip():
        lines += ["", "The house rules then in force:", "", *(f"  {line}" for line in house.splitlines())]
    return "\n".join(lines) + "\n"


def read(data: bytes) -> Told:
    """What the bytes of such a file hold; NotAJob where they are none."""
    if len(data) > LARGEST:
        raise NotAJob("it is too large to be one")
    text = data.decode("utf-8-sig", errors="surrogateescape")
    if not is_readable(text):
        raise NotAJob("it is not plain text (UTF-8)")
    lines = text.splitlines()
    start = next((at for at, line in enumerate(lines) if line.lstrip("> ").startswith("festoon job, version ")), None)
    if start is None:
        raise NotAJob(f'no line in it begins "{HEAD}"')
    if not lines[start].lstrip("> ").startswith(HEAD):
        raise NotAJob("a newer festoon wrote it")
    name: str | None = None
    turns: list[str] = []
    for line in lines[start + 1 :]:
        bare = line.lstrip("> ")
        if name is None and not turns and bare.startswith("name:"):
            name = name_of(bare.removeprefix("name:"))
        elif (found := _TURN.match(line)) and not _is_about(bare) and found[1].strip():
            turns.append(one_line(found[1])[:LONGEST_TURN])
    if not turns:
        raise NotAJob('it holds no turn, a line that begins with ">"')
    if len(turns) > MOST_TURNS:
        raise NotAJob(f"it holds more than {MOST_TURNS:,} turns")
    return Told(name or None, turns)


def _is_about(bare: str) -> bool:
    """Whether a line that an answered mail has marked is one of the file's own headings."""
    return bare.startswith(("begun: ", "rule book: ", "quoted: ", "What was said, in order;", "The house rules then"))


def _when(at: float) -> str:
    return datetime.fromtimestamp(at, UTC).strftime("%Y-%m-%d %H:%M UTC")
