"""Text made safe for a terminal: nothing that somebody typed can move the cursor, recolour or reverse the screen.

The control sequences are those of ECMA-48 (5th ed., sections 5.4 and 8.3); the marks that reorder text are those of
Unicode Standard Annex 9, which are all of the general category Cf.
"""

import os
import re
import shutil
import unicodedata
from collections.abc import Mapping
from typing import TextIO

NARROW = 40

# Possessive and disjoint parts: time stays linear however long and however broken the text is.
_SEQUENCE = re.compile(
    r"(?:\x1b\[|\x9b)[0-?]*+[ -/]*+[@-~]"  # control sequence
    r"|(?:\x1b[\]PX^_]|[\x9d\x90\x98\x9e\x9f])[^\x00-\x1f\x7f-\x9f]*+(?:\x07|\x1b\\|\x9c)"  # control string
    r"|\x1b(?:[ -/]*+[0-~])?"  # two-character escape, or an escape that leads nowhere
)
_LINE_BREAK = re.compile("\r\n|[\r\x0b\x0c\x85\u2028\u2029]")
# The joiners hold together the parts of one emoji or of one Persian or Indic word; they move nothing.
_HARMLESS = frozenset("\n\u200c\u200d")
_DROPPED_CATEGORIES = frozenset({"Cc", "Cf"})
_REPLACEMENT = "\N{REPLACEMENT CHARACTER}"


def clean(text: str) -> str:
    """The text with every control sequence, control character and direction mark taken out.

    Line breaks of any kind become a newline, a tab becomes a space, a lone surrogate (a byte that was no UTF-8) becomes
    U+FFFD. Nothing else is changed, and cleaning twice changes nothing more.
    """
    if text.isprintable():
        return text
    text = _LINE_BREAK.sub("\n", _SEQUENCE.sub("", text)).replace("\t", " ")
    return "".join(map(_safe, text))


def one_line(text: str) -> str:
    """`clean`, with all white space, line breaks too, turned to single spaces."""
    return " ".join(clean(text).split())


def shorten(text: str, columns: int) -> str:
    """The text on one line, cut to at most that many characters, with an ellipsis where something was cut."""
    text = one_line(text)
    return text if len(text) <= columns else text[: max(columns - 1, 0)].rstrip() + "…"


def columns_of(stream: TextIO) -> int:
    """How many columns a reply written to that stream has: the terminal's, or 40 where it is no terminal."""
    return shutil.get_terminal_size((NARROW, 24)).columns if stream.isatty() else NARROW


def colour_depth(stream: TextIO, environ: Mapping[str, str] = os.environ) -> int:
    """How many bits of colour pictures on that stream may have: 24, 8, or 0 where they are to be plain.

    Plain where the stream is no terminal, the terminal is dumb or unknown, or NO_COLOR is set (no-color.org).
    """
    kind = environ.get("TERM", "").lower()
    if environ.get("NO_COLOR") or not stream.isatty() or kind == "dumb":
        return 0
    if environ.get("COLORTERM", "").lower() in ("truecolor", "24bit") or environ.get("WT_SESSION"):
        return 24
    return 8 if "256" in kind or kind.startswith(("xterm", "screen", "tmux", "alacritty", "foot")) else 0


def is_readable(text: str) -> bool:
    """Whether every byte that the text came from was UTF-8 (what was not arrives as a lone surrogate, PEP 383)."""
    return not any("\ud800" <= char <= "\udfff" for char in text)


def _safe(char: str) -> str:
    category = unicodedata.category(char)
    if category == "Cs":
        return _REPLACEMENT
    return "" if category in _DROPPED_CATEGORIES and char not in _HARMLESS else char
