"""A house file as it may really be: what is sound of it is laid over the book, what is not is left out and named."""

import re
import tomllib
from pathlib import Path

from rules.book import BOOK_FOLDER, HOUSE_FILE, Book, load_book
from rules.errors import BookError
from rules.record import record

_HEADING = re.compile(r"\s*\[\[?\s*([^\].\s\"']++|\"[^\"]*\"|'[^']*')")
_LINE = re.compile(r"at line (\d+)")


@record
class Fault:
    """A block that was left out: the line it begins in or breaks off at, and what is wrong with it."""

    line: int
    error: BookError

    def __str__(self) -> str:
        """One sentence, "line 4: [labour_rate] ...; ..."."""
        block = f"[{self.error.block}] " if self.error.block else ""
        return f"line {self.line}: {block}{self.error.what}; {self.error.mend}."


@record
class House:
    """The book with the house rules laid over it, the text of those that hold, and the faults of the others."""

    book: Book
    text: str
    faults: tuple[Fault, ...] = ()


@record
class _Part:
    """A block of the file with the lines that belong to it, and the number of its first line."""

    id: str
    line: int
    text: str


def read_house(text: str, folder: Path = BOOK_FOLDER) -> House:
    """The book in `folder` with all of the house file's text laid over it that is sound. Never raises."""
    parts, faults = _parts(text)
    while parts:
        kept = "\n".join(part.text for part in parts)
        laid = _laid(kept, folder)
        if isinstance(laid, Book):
            return House(laid, kept, tuple(faults))
        guilty = [part for part in parts if part.id == laid.block and laid.file == HOUSE_FILE]
        # What a house block breaks elsewhere in the book is its fault too: the first without which the book is sound.
        guilty = guilty or [part for part in parts if isinstance(_laid(part.text, folder), BookError)][:1] or parts[-1:]
        for part in guilty:
            parts.remove(part)
            faults.append(Fault(part.line, laid))
    return House(load_book(folder=folder), "", tuple(sorted(faults, key=lambda fault: fault.line)))


def _laid(text: str, folder: Path) -> Book | BookError:
    """The book with the text laid over it, or the first mistake in it."""
    try:
        return load_book(text, folder)
    except BookError as error:
        return error


def _parts(text: str) -> tuple[list[_Part], list[Fault]]:
    """The blocks of the file that are TOML, each by itself, and the faults of those that are not."""
    parts: list[_Part] = []
    faults: list[Fault] = []
    seen: set[str] = set()
    for id, line, lines in _cut(text):
        try:
            tables = tomllib.loads(lines)
        except tomllib.TOMLDecodeError as error:
            at = int(found[1]) if (found := _LINE.search(str(error))) else 1
            said = str(error).split(" (")[0]
            what = f"it is not valid TOML, {said[:1].lower()}{said[1:]}"
            faults.append(Fault(line + at - 1, BookError(HOUSE_FILE, id, what, "mend that line")))
            continue
        except (ValueError, RecursionError):
            what = "a number is too long in it, or too much stands inside one another"
            faults.append(Fault(line, BookError(HOUSE_FILE, id, what, "mend it")))
            continue
        loose = [key for key, value in tables.items() if not isinstance(value, dict)]
        if loose:
            outside = BookError(HOUSE_FILE, loose[0], "it stands outside a block", "write it under a heading")
            faults.append(Fault(line, outside))
        elif seen & set(tables):
            faults.append(Fault(line, BookError(HOUSE_FILE, id, "it stands there twice", "keep one of the two")))
        elif tables:
            parts.append(_Part(next(iter(tables)), line, lines))
        seen |= set(tables)
    return parts, faults


def _cut(text: str) -> list[tuple[str, int, str]]:
    """(id, first line's number, lines) of each run of lines under headings of one id, what is before them first."""
    cut: list[tuple[str, int, list[str]]] = [("", 1, [])]
    for number, line in enumerate(text.splitlines(), 1):
        found = _HEADING.match(line)
        id = found[1].strip("\"'") if found else cut[-1][0]
        again = line.strip() in cut[-1][2] and not line.strip().startswith("[[")
        if found and (id != cut[-1][0] or again):
            cut.append((id, number, []))
        cut[-1][2].append(line)
    return [(id, number, "\n".join(lines) + "\n") for id, number, lines in cut if any(map(str.strip, lines))]
