"""How made requests say numbers and sizes: the words, and beside them the values that they must come to.

Number words are num2words', sizes are exact in inches (25.4 mm, yard and pound agreement of 1959).
"""

import random
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from num2words import num2words  # type: ignore[import-untyped]

from assistant.vocabulary import make_vocabulary
from grammar.vocabulary import FactWords
from rules import load_book

VOCABULARY = make_vocabulary(load_book())
LOTS = {2: ("a couple of", "a pair of"), 6: ("half a dozen",), 12: ("a dozen",), 24: ("two dozen",)}
SLIPS = ("no wait", "no, make that", "sorry", "I mean", "scratch that", "no", "hang on", "or rather", "actually")
HUMS = ("um", "er", "like", "uh", "you know", "let's see")

# What a speaker does beside asking plainly, and how many of all do it.
WAYS = {"british": 0.15, "typo": 0.2, "restart": 0.1, "hums": 0.12, "aside": 0.1}


@dataclass
class Part:
    """Some words and the fields that they give."""

    text: str
    gives: dict[str, Any] = field(default_factory=dict)


class Speaker:
    """One who asks: typed or dictated, in feet or metres, and with ways of their own."""

    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.spoken = chance.random() < 0.3
        self.metric = chance.random() < 0.25
        self.ways = {way for way, share in WAYS.items() if chance.random() < share}
        self.heard_as: set[str] = set()

    def does(self, way: str, share: float = 1.0) -> bool:
        """Whether it is spoken in a way here; a way that was made use of is kept in `heard_as`."""
        if way in self.ways and self.maybe(share):
            self.heard_as.add(way)
            return True
        return False

    def pick(self, *options: Any) -> Any:
        """One of the options."""
        return self.chance.choice(options)

    def maybe(self, share: float) -> bool:
        """True as often as the share says."""
        return self.chance.random() < share

    def number(self, n: int, *, lots: bool = False) -> str:
        """A whole number as it is typed or said; `lots` lets "a dozen" stand for it."""
        if lots and n in LOTS and self.maybe(0.9 if self.does("british") else 0.5):
            return str(self.pick(*LOTS[n]))
        if self.spoken or self.maybe(0.3):
            return str(num2words(n)).replace("-", self.pick(" ", "-") if not self.spoken else " ")
        return str(n)

    def counted(self, n: int) -> str:
        """A number of things, sometimes after a slip that is taken back."""
        text = self.number(n, lots=True)
        if n > 2 and (self.does("restart", 0.4) or self.maybe(0.06)):
            wrong = self.pick(*(k for k in range(2, 13) if k != n))
            return f"{self.number(wrong)}{self.slip()} {self.number(n)}"
        return text

    def slip(self) -> str:
        """Words that take back what was said before them."""
        comma = "" if self.spoken else self.pick(",", ",", "")
        return f"{comma} {self.pick(*SLIPS)}{comma if self.maybe(0.5) else ''}"

    def hum(self) -> str:
        """A sound or a word that says nothing, or none."""
        return f"{self.pick(*HUMS)}{'' if self.spoken else self.pick('', ',')} " if self.does("hums", 0.6) else ""

    def size(self, inches: int) -> tuple[str, float]:
        """A size in words, and the inches that the words come to (metric ones are rounded to 5 cm)."""
        if self.metric:
            return self.metric_size(inches)
        feet, over = divmod(inches, 12)
        forms: list[str] = []
        if feet and not over:
            name = self.number(feet)
            forms += [f"{name} foot", f"{name} ft", f"{name} feet"]
            forms += [] if self.spoken else [f"{feet}ft", f"{feet}'", f"{name}-foot", f"{feet}-ft"]
        if feet and over == 6:
            name = self.number(feet)
            forms += [f"{name} and a half feet", f"{name} foot six"]
            forms += (
                []
                if self.spoken
                else [f"{feet}.5 ft", f"{feet} 1/2 ft", f"{feet}'6\"", f"{feet} ft 6 in", f"{feet}½ ft"]
            )
        if not feet or over or inches <= 72:
            name = self.number(inches)
            forms += [f"{name} inches", f"{name} inch"]
            forms += [] if self.spoken else [f'{inches}"', f"{inches} in", f"{inches}in"]
        return str(self.pick(*forms)), float(inches)

    def metric_size(self, inches: int) -> tuple[str, float]:
        """The nearest five centimetres."""
        cm = max(5, round(inches * 2.54 / 5) * 5)
        metres = Fraction(cm, 100)
        name = f"{float(metres):g}"
        forms = []
        if cm >= 100:
            said = str(num2words(float(metres))) if metres.denominator > 1 else self.number(int(metres))
            forms += [f"{said} metres", f"{said} meters"]
            if self.does("british"):
                whole, over = cm // 100, cm % 100
                forms += [f"{said} metre"] * 2
                forms += [f"{self.number(whole)} and a half metres", f"{self.number(whole)} metre fifty"] * (over == 50)
                forms += [f"{self.number(whole)} metre {num2words(over)}"] * (over >= 20)
                forms += [] if self.spoken else [f"{whole}m{over:02}"] * (over >= 20)
            forms += [] if self.spoken else [f"{name} m", f"{name}m", f"{name} metres"]
        if cm < 100 or not self.spoken:
            said = self.number(cm)
            forms += [f"{said} cm", f"{said} centimetres"]
        return str(self.pick(*forms)), cm / 2.54


def fact_of(id: str, kind: str) -> FactWords:
    """The words of a fact of a piece."""
    fact = VOCABULARY.fact(id, kind)
    assert fact is not None
    return fact
