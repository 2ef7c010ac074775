"""What is said of every job and not of the one in hand: rules to keep, to show and to forget."""

from functools import cache
from typing import Literal

from grammar.record import record
from grammar.tokens.phrase_sets import PhraseSet
from grammar.tokens.scan import Token, scan
from grammar.word_files import load_words

Act = Literal["keep", "habit", "mine", "last", "show", "ask", "forget", "forget all"]
EARLY = 6  # words among which "always" makes a habit of what follows
MARKS = frozenset(":,.!?;'\"")


@record
class Habit:
    """An act, and the words that it is about.

    "keep": asked to be kept; "habit": told as a habit; "mine": may be told of what is the speaker's own, or of one job;
    "last": what was said last; for "ask" and "forget" `rest` names what.
    """

    act: Act
    rest: str = ""


def read_habit(text: str) -> Habit | None:
    """The act on house rules that the turn is or may be; None where it can be none."""
    tokens = scan(text)
    start = _past(tokens, 0, _set("before"))
    line = [token.lower for token in tokens[start:] if token.lower not in MARKS]
    for act, name in (("show", "show"), ("forget all", "forget_all"), ("last", "last")):
        if tuple(line) in _phrases(name):
            return Habit(act)  # type: ignore[arg-type]
    for act, name in (("keep", "keep"), ("forget", "forget"), ("ask", "ask")):
        stop = _phrases(name).end(_lower(tokens), start)
        if stop is not None and stop < len(tokens):
            rest = _rest(text, tokens, stop)
            inner = _told_as_habit(rest) if act == "keep" else None
            return Habit(act, rest if inner is None else inner)  # type: ignore[arg-type]
    habit = _told_as_habit(text)
    if not tokens or _of_one_job(scan(text if habit is None else habit)):
        return None
    return Habit("mine", text) if habit is None else Habit("habit", habit)


def _told_as_habit(text: str) -> str | None:
    """What is always so ("add 12 % spare" of "I always add 12 % spare"); None where no habit is told."""
    tokens = scan(text)
    end = _tail(tokens)
    if end is not None:
        body = text[: tokens[end].start].rstrip(" ,")
        return _told_as_habit(body) or body
    start = _past(tokens, 0, _set("before"))
    words = _lower(tokens)
    for phrases, means in _habits():
        stop = phrases.end(words, start)
        if stop is not None and stop < len(tokens):
            return f"{means} {_rest(text, tokens, stop)}".strip()
    at = next((at for at in range(start, min(start + EARLY, len(tokens))) if tokens[at].lower in _set("within")), None)
    return None if at is None else text[: tokens[at].start] + text[tokens[at].end :]


def is_mine(text: str) -> bool:
    """Whether the turn begins with what is the speaker's own."""
    tokens = scan(text)
    return _phrases("mine").end(_lower(tokens), _past(tokens, 0, _set("before"))) is not None


def is_of_a_rule(rest: str) -> bool:
    """Whether an order to forget names something of the house, be there such a rule or not."""
    return any(token.lower in _set("forget_rule") for token in scan(rest))


def names_of(rest: str) -> list[str]:
    """The words of an order to forget that name what is to be forgotten."""
    return [token.lower for token in scan(rest) if token.lower not in _set("forget_filler") and token.kind != "mark"]


def _of_one_job(tokens: list[Token]) -> bool:
    return any(True for _ in _phrases("one_job").spans(_lower(tokens)))


def _past(tokens: list[Token], at: int, words: frozenset[str]) -> int:
    while at < len(tokens) and (tokens[at].lower in words or tokens[at].lower in MARKS):
        at += 1
    return at


def _lower(tokens: list[Token]) -> list[str]:
    return [token.lower for token in tokens]


def _tail(tokens: list[Token]) -> int | None:
    """The token with which a phrase begins that makes a habit of what stands before it."""
    last = len(tokens)
    while last and tokens[last - 1].lower in MARKS:
        last -= 1
    start = _phrases("behind").start(_lower(tokens[:last]), last)
    return start or None  # what makes a habit of nothing is none


def _rest(text: str, tokens: list[Token], at: int) -> str:
    at = _past(tokens, at, frozenset())
    return text[tokens[at].start :] if at < len(tokens) else ""


@cache
def _phrases(name: str) -> PhraseSet:
    return PhraseSet.of_text(str(load_words("habits.toml")[name]))


@cache
def _habits() -> tuple[tuple[PhraseSet, str], ...]:
    rows = load_words("habits.toml")["habit"]
    return tuple((PhraseSet.of_text(str(row["said"])), str(row["means"])) for row in rows)


@cache
def _set(name: str) -> frozenset[str]:
    return frozenset(str(load_words("habits.toml")[name]).split())
