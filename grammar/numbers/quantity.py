"""What was read: one quantity with its kind, exact value, unit and place."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Literal

from grammar.record import record
from grammar.tokens.scan import Token

Kind = Literal[
    "number", "length", "money", "duration", "mass", "volume", "area", "speed", "percent", "temperature", "clock"
]
Doubt = Literal["", "tail", "share", "preposition", "coin", "minutes", "capital", "spoken clock"]


@record
class Quantity:
    """One quantity of a text.

    `value` is exact, in `unit`: a name that pint reads, an ISO 4217 code for money, "" for a plain number and for
    degrees without a scale. A clock time is in minutes after midnight; its unit is "24 h", or "12 h" where the speaker
    left morning or afternoon open.
    `start`, `end`: half-open place in the text; `first`, `stop`: half-open token indices.
    `vague`: "a few"; `form`: that of the number (see Numeral), "" where there was none ("an hour").
    `doubt`: why another reading may be as likely: the last number had no unit of its own ("tail"), a fraction of a
    unit that no ruler shows, or with a plural's s ("share"), "in" before more words ("preposition"), a coin's name that
    is also a word ("coin"), "m" for minutes ("minutes"), a capital that could be a million ("capital"), a time in words
    that could be a number ("spoken clock").
    """

    kind: Kind
    value: Fraction
    unit: str
    start: int
    end: int
    text: str
    first: int
    stop: int
    form: str = ""
    vague: bool = False
    doubt: Doubt = ""

    @property
    def clock(self) -> str:
        """A clock time as HH:MM."""
        minutes = int(self.value) % 1440
        return f"{minutes // 60:02d}:{minutes % 60:02d}"


def place(
    tokens: Sequence[Token],
    first: int,
    stop: int,
    kind: Kind,
    value: Fraction,
    unit: str,
    *,
    form: str = "",
    vague: bool = False,
    doubt: Doubt = "",
) -> Quantity:
    """A quantity made of the tokens `first` to `stop`."""
    start, end = tokens[first].start, tokens[stop - 1].end
    parts: list[str] = []
    at = start
    for token in tokens[first:stop]:
        parts.append(" " if token.start > at else "")
        parts.append(token.text)
        at = token.end
    return Quantity(kind, value, unit, start, end, "".join(parts), first, stop, form, vague, doubt)


def longest_first(found: Iterable[Quantity]) -> list[Quantity]:
    """The quantities in order of their length in tokens, each reading once; equal lengths keep their order."""
    unique: dict[tuple[str, Fraction, str, int], Quantity] = {}
    for each in found:
        unique.setdefault((each.kind, each.value, each.unit, each.stop), each)
    return sorted(unique.values(), key=lambda each: -each.stop)
