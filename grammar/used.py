"""What a job that is done really used, as people report it: "the runner took 121", "eleven popped"."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal

from grammar.scan import scan
from grammar.told import read_told
from grammar.vocabulary import ToldWords
from grammar.word_files import load_words

Measure = Literal["balloons", "hours", "lost", "left"]
HOURS = {"hour": Fraction(1), "min": Fraction(1, 60), "s": Fraction(1, 3600), "day": Fraction(24)}
UNITS = {"balloons": "count", "hours": "hour", "lost": "count", "left": "count"}


@dataclass(frozen=True, slots=True)
class Report:
    """One number of a report: balloons or hours; hours are of all hands together where `of_all_hands`.

    `out_of`: among how many were lost, None where that was not said.
    """

    measure: Measure
    value: Fraction
    of_all_hands: bool = False
    out_of: Fraction | None = None


def read_reports(text: str, nominal: Sequence[float]) -> tuple[list[Report], str]:
    """What a turn reports, and what is left of its text; none for a turn that asks. Never raises."""
    tokens = scan(text)
    if not tokens or tokens[0].lower in _words("not_first") or any(token.lower == "?" for token in tokens):
        return [], text
    told, left = read_told(text, _patterns(), nominal)
    reports = []
    for one in told:
        measure: Measure = one.fact  # type: ignore[assignment]
        following = next((token.lower for token in tokens if token.start >= one.end), "")
        if measure in ("balloons", "left") and following and following not in _words("behind"):
            continue  # "we needed ten tables" wants tables
        value = one.value * HOURS.get(one.unit, Fraction(1)) if measure == "hours" else one.value
        all_hands = measure == "hours" and one.share is not None
        reports.append(Report(measure, value, all_hands, one.share if measure == "lost" else None))
    return (reports, left) if reports else ([], text)


def answer_said(text: str) -> bool | None:
    """Yes or no, where the turn is nothing else."""
    words = tuple(token.lower for token in scan(text) if token.kind != "mark")
    return True if words in _phrases("yes") else False if words in _phrases("no") else None


def is_said(name: Literal["show", "forget_all", "forget_last"], text: str) -> bool:
    """Whether the turn asks to show what was learned, or to forget it."""
    return tuple(token.lower for token in scan(text) if token.kind != "mark") in _phrases(name)


@cache
def _patterns() -> tuple[ToldWords, ...]:
    words = load_words("used.toml")
    return tuple(ToldWords(id, "", unit, tuple(words[id])) for id, unit in UNITS.items())


@cache
def _words(name: str) -> frozenset[str]:
    return frozenset(str(load_words("used.toml")[name]).split())


@cache
def _phrases(name: str) -> frozenset[tuple[str, ...]]:
    text = str(load_words("used.toml")[name])
    parts = [part for line in text.splitlines() for part in line.split("|") if part.strip()]
    return frozenset(tuple(token.lower for token in scan(part)) for part in parts)
