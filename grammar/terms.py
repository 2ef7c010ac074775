"""Terms: the typed words that the request grammar is written over."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

from grammar.record import record

NOUNS = frozenset({"TABLE", "PIECE", "SHAPE"})
SIZED = frozenset({"NUM", "LEN"})
SHARES = frozenset({"PCT", "FRAC"})
AMOUNTS = frozenset({"NUM", "LEN", "FAR", "MONEY", "PCT", "TEMP", "SPEED", "CLOCK", "DUR", "FRAC", "OTHER"})


@record
class Amount:
    """A quantity as it was said: a magnitude and the name of its unit ("" where none was said)."""

    value: Fraction
    unit: str = ""

    @property
    def number(self) -> float:
        """The magnitude as a float."""
        return float(self.value)


@record
class Term:
    """One typed word or quantity; `start` and `end` count the scanned tokens, `cost` is how far-fetched it is."""

    type: str
    value: Any
    start: int
    end: int
    text: str
    cost: float = 0.0
    said_as: str = ""

    def moved(self, kind: str, value: Any = None) -> "Term":
        """The same words as another type of term."""
        return replace(self, type=kind, value=self.value if value is None else value)

    def unused(self) -> "Term":
        """The same words as one that nothing is made of, which is named as not used."""
        return self.moved("WORD", self.text)
