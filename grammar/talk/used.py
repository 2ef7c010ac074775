"""What a job that is done really used, as people report it: "the runner took 121", "eleven popped"."""

import re
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Literal

from grammar.record import record
from grammar.talk.told import read_told
from grammar.tokens.phrase_sets import PhraseSet
from grammar.tokens.scan import Token, scan
from grammar.vocabulary import ToldWords
from grammar.word_files import load_words

Measure = Literal["balloons", "hours", "lost", "left", "bags", "days"]
HOURS = {"hour": Fraction(1), "min": Fraction(1, 60), "s": Fraction(1, 3600)}
# table of patterns -> what is measured, and the unit of its "#"
TABLES: dict[str, tuple[Measure, str]] = {
    "hands": ("hours", "count"),
    "hours": ("hours", "hour"),
    "bags": ("bags", "count"),
    "lost": ("lost", "count"),
    "left": ("left", "count"),
    "balloons": ("balloons", "count"),
}
# what counts only beside a number that was found by the tables above: "..., the runners 900", "..., five hours for two"
BESIDE: dict[str, tuple[Measure, str]] = {"beside_hours": ("hours", "hour"), "beside": ("balloons", "count")}
CENT = Fraction(100)
FINE = Fraction(1000)  # shares of a hundred are kept as so many of a hundred thousand, which no one is half of
BREAK = re.compile(r"[,;.!]")
WITH = re.compile(r"\bwith(?= \S+ of us\b)", re.IGNORECASE)  # "5 hours with two of us" is no 5 hours 2
ON = re.compile(r"\b(?:on|in|into|onto)\b", re.IGNORECASE)  # what a number is on is what it is for
AND = re.compile(r"\b(?:and|but|then)\b", re.IGNORECASE)


@record
class Report:
    """One number of a report: balloons or hours; hours are of all hands together where `of_all_hands`.

    `out_of`: among how many were lost, None where that was not said. `each`: whether the balloons are of each piece or
    of all, None where that was not said. `beside`: a number alone, that counts where it names a piece. `around`: the
    words beside it, which may name the piece.
    """

    measure: Measure
    value: Fraction
    of_all_hands: bool = False
    out_of: Fraction | None = None
    beside: bool = False
    each: bool | None = None
    around: str = ""


def read_reports(text: str, nominal: Sequence[float]) -> tuple[list[Report], str]:
    """What a turn reports, and what is left of its text; none for a turn that asks. Never raises."""
    text = WITH.sub("for ", text)
    tokens = scan(text)
    none, left = _none_lost(text)
    asks = not tokens or (tokens[0].lower in _words("not_first") and not none)
    if asks or any(token.lower == "?" for token in tokens):
        return [], text
    share, left = _lost_share(left)
    found, left = _read(left, TABLES, nominal)
    if found:
        more, left = _read(left, BESIDE, nominal)
        found |= {end: replace(one, beside=True) for end, one in more.items() if end not in found}
    ends = sorted(found)
    cuts = [0, *(_cut(left, one, other) for one, other in pairwise(ends)), len(left)]
    reports = [_of(found[end], left[cuts[k] : cuts[k + 1]]) for k, end in enumerate(ends)]
    reports += share
    reports += [Report("lost", Fraction(0))] if none else []
    return (reports, _without_phrases(left, "of_each", "of_all")) if reports else ([], text)


def each_said(text: str) -> bool | None:
    """Whether the words mean each piece (True) or all together (False); None where they tell neither."""
    if _find(text, "of_each"):
        return True
    return False if _find(text, "of_all") else None


def _read(text: str, tables: dict[str, tuple[Measure, str]], nominal: Sequence[float]) -> tuple[dict[int, Report], str]:
    """What the tables find, by where the number ends; the text is left whole where a number was found in vain."""
    tokens = scan(text)
    found: dict[int, Report] = {}
    for id, (measure, unit) in tables.items():
        told, left = read_told(text, _table(id, unit), nominal)
        fit = [one for one in told if _fits(measure, one.unit, next((t for t in tokens if t.start >= one.end), None))]
        if len(fit) < len(told) or any(one.end in found for one in fit):
            continue  # "we needed ten tables" wants tables
        text = left
        for one in fit:
            report = Report(measure, one.value, of_all_hands=id == "hands" or one.share is not None)
            if measure == "hours":
                days = one.unit not in HOURS and id != "hands"
                report = replace(report, measure="days") if days else report
                report = replace(report, value=one.value * HOURS.get(one.unit, Fraction(1)))
            elif measure == "lost":
                report = Report(measure, one.value, out_of=one.share)
            found[one.end] = report
    return found, text


def _fits(measure: Measure, unit: str, following: Token | None) -> bool:
    """Whether what stands behind the number leaves it a number of balloons."""
    if unit or measure in ("hours", "bags") or following is None or following.lower in _words("behind"):
        return True
    return measure == "lost" and following.lower in _words("lost_behind")


def _cut(left: str, end: int, other: int) -> int:
    """Where the words beside one number end and those beside the next begin."""
    between = left[end:other]
    found = BREAK.search(between) or AND.search(between)
    return end + found.start() if found else end


def _of(report: Report, around: str) -> Report:
    return replace(report, each=each_said(around), around=ON.sub("for", _without_phrases(around, "of_each", "of_all")))


def _lost_share(text: str) -> tuple[list[Report], str]:
    """What part of the balloons the text says was lost ("5 % popped"), and the text without that."""
    tokens = scan(text)
    for k, (number, sign) in enumerate(pairwise(tokens)):
        near = tokens[max(k - 3, 0) : k + 8]
        lost = next((token for token in near if token.lower in _words("lost_words")), None)
        if lost is not None and number.value is not None and sign.lower in ("%", "percent"):
            report = Report("lost", Fraction(number.value) * FINE, out_of=CENT * FINE)
            for start, end in ((number.start, sign.end), (lost.start, lost.end)):
                text = text[:start] + " " * (end - start) + text[end:]
            return [report], text
    return [], text


def _none_lost(text: str) -> tuple[bool, str]:
    """Whether the text says that none was lost, and the text without that."""
    return bool(_find(text, "none_lost")), _without_phrases(text, "none_lost")


def _find(text: str, name: str) -> list[tuple[int, int]]:
    """Where phrases of the list stand in the text."""
    tokens = scan(text)
    spans = _phrases(name).spans([token.lower for token in tokens])
    return [(tokens[start].start, tokens[end - 1].end) for start, end in spans]


def _without_phrases(text: str, *names: str) -> str:
    """The text with blanks for phrases of the lists."""
    for start, end in (place for name in names for place in _find(text, name)):
        text = text[:start] + " " * (end - start) + text[end:]
    return text


def answer_said(text: str) -> bool | None:
    """Yes or no, where the turn is nothing else."""
    words = tuple(token.lower for token in scan(text) if token.kind != "mark")
    return True if words in _phrases("yes") else False if words in _phrases("no") else None


def each_answered(text: str) -> bool | None:
    """Whether a turn that says nothing else means each or all."""
    said = each_said(text)
    words = tuple(token.lower for token in scan(text) if token.kind != "mark")
    return (
        said if said is not None else True if words in _phrases("each") else False if words in _phrases("all") else None
    )


def is_said(name: Literal["show", "forget_all", "forget_last"], text: str) -> bool:
    """Whether the turn asks to show what was learned, or to forget it."""
    return tuple(token.lower for token in scan(text) if token.kind != "mark") in _phrases(name)


@cache
def _words(name: str) -> frozenset[str]:
    return frozenset(str(load_words("used.toml")[name]).split())


@cache
def _phrases(name: str) -> PhraseSet:
    return PhraseSet.of_text(str(load_words("used.toml")[name]))


@cache
def _table(name: str, unit: str) -> tuple[ToldWords, ...]:
    """The patterns of the list."""
    return (ToldWords(name, "", unit, tuple(load_words("used.toml")[name])),)
