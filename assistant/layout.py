"""Lines of a reply: wrapped to a width, labels in a column of their own."""

import textwrap
from collections.abc import Iterable
from functools import lru_cache

from assistant.speech import spoken, spoken_line

INDENT = 7  # columns of the label
WIDEST = 76  # a line longer than this is hard to read, however wide the screen


def columns(width: int) -> int:
    """The columns to lay out for."""
    return max(24, min(width, WIDEST))


def paragraph(text: str, width: int, indent: str = "") -> list[str]:
    """Text wrapped; words longer than the line are broken."""
    return list(_wrapped(" ".join(spoken(text).split()), columns(width), indent))


@lru_cache(maxsize=256)  # many lines come again in the next reply
def _wrapped(text: str, width: int, indent: str = "") -> tuple[str, ...]:
    return tuple(textwrap.wrap(text, width, subsequent_indent=indent)) or ("",)


def labelled(label: str, text: str, width: int) -> list[str]:
    """A label and its text, the text in a column of its own."""
    label, text = spoken(label), spoken(text)
    lines = _wrapped(" ".join(text.split()), max(12, columns(width) - INDENT))
    head = label if len(label) < INDENT else label + " "
    return [f"{head:<{INDENT}}{lines[0]}", *(" " * INDENT + line for line in lines[1:])]


def join(blocks: Iterable[list[str]]) -> str:
    """Blocks of lines with an empty line between, empty blocks left out."""
    return "\n\n".join("\n".join(map(spoken_line, block)) for block in blocks if block)


def listed(items: Iterable[str], last: str = "and") -> str:
    """ "a, b and c"."""
    words = list(items)
    return f" {last} ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else "".join(words)
