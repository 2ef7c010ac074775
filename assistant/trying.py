"""Versions of a job tried out beside the one in hand: the same engine on changed facts, nothing kept."""

from collections.abc import Iterator, Mapping
from typing import Any

from assistant.estimating import estimate
from assistant.state import HeardPiece, State
from assistant.telling import shown
from rules import Book, Estimate
from rules.show import MONEY_SIGNS
from rules.units import factor

SIGNS = {sign: code for code, sign in MONEY_SIGNS.items()}


def with_pieces(state: State, pieces: list[HeardPiece], **job: Any) -> State:
    """The job with other pieces and perhaps other facts of its own; a fact of None is taken out."""
    facts = {k: v for k, v in {**state.job, **job}.items() if v is not None}
    return State(pieces=pieces, job=facts, metric=state.metric, focus=0 if pieces else None)


def changed(piece: HeardPiece, facts: Mapping[str, Any]) -> HeardPiece:
    """The piece with facts laid over; one of None is taken out, and what excludes another pushes it out."""
    kept = {
        k: v for k, v in piece.facts.items() if not ("coverage" in facts and k in {"coverage_fraction", "overhang"})
    }
    return HeardPiece(piece.kind, {k: v for k, v in {**kept, **facts}.items() if v is not None})


def variant(state: State, place: int, facts: Mapping[str, Any]) -> State:
    """The whole job with one piece changed."""
    pieces = [changed(piece, facts) if i == place else piece for i, piece in enumerate(state.pieces)]
    return with_pieces(state, pieces)


def tried(book: Book, state: State) -> Estimate:
    """The estimate of a version, in the speaker's units."""
    made = estimate(book, state)
    made.metric = state.metric
    return made


def value(made: Estimate, id: str, piece: int | None = None) -> float | None:
    """The typical value of a number in its fact's unit, without the range, which takes longer; None where unknown."""
    step = made.step(id, piece)
    return None if step is None or isinstance(step.value, str) else float(step.value) / factor(step.fact.unit)


def money(amount: float, made: Estimate) -> str:
    """An amount in the currency that prices are in."""
    step = made.step("price")
    unit = step.fact.unit if step is not None else "USD"
    return shown(amount, unit)


def levers(book: Book, piece: HeardPiece, made: Estimate, place: int) -> Iterator[tuple[str, str, dict[str, Any]]]:
    """What would make a piece plainer: its name, what it does to the look, the facts to lay over."""
    for raw in book.others.get("lever", {}).values():
        if piece.kind not in raw["of"] and "any" not in raw["of"]:
            continue
        have = {fact: _now(made, piece, fact, place) for fact in {**raw["set"], **raw.get("when", {})}}
        fits = all(have[fact] in values for fact, values in raw.get("when", {}).items())
        if fits and any(have[fact] != wanted for fact, wanted in raw["set"].items()):
            yield raw["name"], raw["looks"], dict(raw["set"])


def _now(made: Estimate, piece: HeardPiece, fact: str, place: int) -> Any:
    """The value of a fact as it stands, said or assumed."""
    if fact in piece.facts:
        return piece.facts[fact]
    step = made.step(fact, place)
    if step is None:
        return None
    return [size / factor(step.fact.unit) for size in step.value] if isinstance(step.value, tuple) else step.value
