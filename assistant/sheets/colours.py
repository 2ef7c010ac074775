"""Colours for pictures: a name's CSS value, what stands out against it, and what it must stand out against.

Contrast is the ratio of relative luminances, 1 to 21 (Web Content Accessibility Guidelines 2.2, W3C).
"""

import re
from collections.abc import Iterable, Iterator

from rules import Book

WHITE, BLACK = "#ffffff", "#000000"
SEEN = 3.0  # least contrast of a shape with what is round it: guideline 1.4.11
# Where no colour was said the balloons are of these, so that none is promised.
NEUTRALS = ("#cfc7ba", "#b3a999", "#e4ded3")
# Paper, a mid and a dark tone: a drawing on a screen takes the one that its colours stand out from best.
BACKDROPS = ("#f3efe6", "#75726c", "#22242a")
LIGHTER = frozenset({"light", "pale", "pastel", "soft", "baby", "icy", "powder"})
DARKER = frozenset({"dark", "deep", "rich"})
DULLER = frozenset({"dusty", "dusky", "muted", "vintage", "antique", "smoky", "smokey", "dull", "burnt"})
_HEX = re.compile(r"#(?:[0-9a-f]{3}|[0-9a-f]{6})")
Rgb = tuple[int, int, int]


def value_of(book: Book, name: str) -> str | None:
    """The colour's value as #rrggbb; a name of several words that no palette holds is mixed from those it does."""
    name = " ".join(name.lower().split())
    if _HEX.fullmatch(name):
        return name if len(name) == 7 else "#" + "".join(2 * digit for digit in name[1:])
    known = {
        word: value for palette in book.others.get("palette", {}).values() for word, value in palette["names"].items()
    }
    if found := known.get(name) or known.get(name.replace(" ", "")):
        return str(found)
    words = name.split()
    # The last words name the colour, those before it shade it ("very pale dusty pink").
    for start in range(1, len(words)):
        base = known.get(" ".join(words[start:]))
        if base is not None:
            return _shaded(str(base), words[:start])
    return str(known[words[0]]) if words and words[0] in known else None


def _shaded(value: str, words: list[str]) -> str:
    for word in reversed(words):
        towards = WHITE if word in LIGHTER else BLACK if word in DARKER else "#8c8480" if word in DULLER else None
        if towards is not None:
            value = mixed(value, towards, 0.35)
    return value


def rgb(value: str) -> Rgb:
    """Red, green and blue of #rrggbb, 0 to 255."""
    return int(value[1:3], 16), int(value[3:5], 16), int(value[5:7], 16)


def mixed(one: str, other: str, part: float) -> str:
    """A colour with that part, 0 to 1, of another in it."""
    return "#" + "".join(f"{round(a + (b - a) * part):02x}" for a, b in zip(rgb(one), rgb(other), strict=True))


def luminance(value: str) -> float:
    """Relative luminance, 0 to 1, by the guidelines' definition."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (part / 255 for part in rgb(value))]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def ink(value: str) -> str:
    """Black or white, whichever reads better on the colour; one of them always has a contrast above 4.5."""
    return max((BLACK, WHITE), key=lambda colour: contrast(colour, value))


def edge(value: str, paper: str = WHITE) -> str:
    """The colour darkened until its edge is seen on the paper."""
    part = 0.25
    while contrast(mixed(value, BLACK, part), paper) < SEEN and part < 1:
        part += 0.05
    return mixed(value, BLACK, min(part, 1.0))


def backdrop(values: Iterable[str]) -> str:
    """The backdrop that the least visible of the colours stands out from best, whatever the screen's own colour."""
    values = list(values)
    return max(BACKDROPS, key=lambda back: min((contrast(value, back) for value in values), default=1.0))


def letters(names: Iterable[str]) -> Iterator[str]:
    """A capital for each name, its own first letter where that is free, each only once; then digits, then "?"."""
    taken: set[str] = set()
    for name in names:
        own = [char for char in name.upper() if "A" <= char <= "Z"]
        rest = [*own, *"ABCDEFGHIJKLMNOPQRSTUVWXYZ", *"123456789"]
        letter = next((char for char in rest if char not in taken), "?")
        taken.add(letter)
        yield letter
