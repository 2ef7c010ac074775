"""A job as one plain text file that can be read, mailed and brought back in."""

import base64
import json
import zlib
from datetime import UTC, datetime

from assistant.jobs import JobRow, Quote, name_of
from assistant.quotes import thawed
from assistant.sheets.files import MARK
from assistant.speech import spoken
from assistant.terminal import is_readable, one_line
from rules.record import record

HEAD = "festoon job, version 1"
LARGEST = 2_000_000  # bytes of a file that is read
MOST_TURNS = 5000
LONGEST_TURN = 10_000
LARGEST_QUOTE = 1_000_000  # bytes of a quote once it is unpacked
QUOTE_MARK, QUOTE_WIDTH = "| ", 70


class NotAJob(ValueError):
    """The text is no job; str() says why in a clause."""


@record
class Told:
    """What such a file holds."""

    name: str | None
    turns: list[str]
    quote: Quote | None = None


def written(row: JobRow, turns: list[str], quote: Quote | None, told: list[str], book: str, house: str) -> str:
    """The text. `told` are lines about the quote for whoever reads the file; turns and quote are what is read back."""
    lines = [f"{HEAD}, {MARK}", f"name: {row.name or ''}", f"begun: {_when(row.made)}", f"rule book: {book}"]
    if quote is not None:
        lines.append(f"quoted: {_when(quote.at)}, rule book {quote.book}")
        lines += [f"  {spoken(line)}" for line in told]
    lines += ["", spoken("What was said, in order; all the rest is for your eyes:"), ""]
    lines += [f"> {one_line(turn)}" for turn in turns]
    if house.strip():
        lines += ["", spoken("The house rules then in force:"), "", *(f"  {line}" for line in house.splitlines())]
    if quote is not None:
        lines += ["", spoken("The quote once more, as festoon reads it back:"), "", *_packed(quote)]
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
    marks = lines[start].partition(HEAD)[0].count(">")
    name: str | None = None
    turns: list[str] = []
    packed = ""
    for line in (_unmarked(line, marks) for line in lines[start + 1 :]):
        if name is None and not turns and line.startswith("name:"):
            name = name_of(line.removeprefix("name:"))
        elif line.startswith(">") and line.strip("> "):
            turns.append(one_line(line.lstrip("> "))[:LONGEST_TURN])
        elif line.startswith(QUOTE_MARK):
            packed += line.removeprefix(QUOTE_MARK).strip()
    if not turns:
        raise NotAJob('it holds no turn, a line that begins with ">"')
    if len(turns) > MOST_TURNS:
        raise NotAJob(f"it holds more than {MOST_TURNS:,} turns")
    return Told(name or None, turns, _unpacked(packed))


def _packed(quote: Quote) -> list[str]:
    """The quote in letters that no mail program changes, a few to a line."""
    data = json.dumps([quote.at, quote.figures, quote.book, quote.house]).encode()
    letters = base64.b64encode(zlib.compress(data, 9)).decode("ascii")
    return [QUOTE_MARK + letters[at : at + QUOTE_WIDTH] for at in range(0, len(letters), QUOTE_WIDTH)]


def _unpacked(letters: str) -> Quote | None:
    """The quote again; None where there is none, or where it came to harm on the way."""
    try:
        data = zlib.decompressobj().decompress(base64.b64decode(letters, validate=True), LARGEST_QUOTE)
        at, figures, book, house = json.loads(data)
        quote = Quote(float(at), str(figures), str(book), str(house))
        datetime.fromtimestamp(quote.at, UTC)
        thawed(quote.figures)
    except (ValueError, TypeError, AttributeError, KeyError, OverflowError, OSError, RecursionError, zlib.error):
        return None
    return quote


def _unmarked(line: str, marks: int) -> str:
    """The line without so many of the marks that answering a mail puts before it."""
    for _ in range(marks):
        line = line.removeprefix(" ").removeprefix(">").removeprefix(" ")
    return line


def _when(at: float) -> str:
    return datetime.fromtimestamp(at, UTC).strftime("%Y-%m-%d %H:%M UTC")
