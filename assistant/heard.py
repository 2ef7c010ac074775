"""What was heard, in the names and units that the outside relies on."""

from typing import Any

from assistant.state import State
from grammar.vocabulary import Vocabulary
from rules.record import record

# Facts whose outside name is not their id, or id and unit.
NAMES = {
    "temperature": "temperature_f", "altitude": "altitude_ft", "wind": "wind_mph", "drive_distance": "drive_miles",
    "spare": "spare_pct", "markup": "markup_pct", "margin": "margin_pct", "deposit": "deposit_pct", "tax": "tax_pct",
    "sizes": "sizes_in", "inflated": "inflated_in",
}  # fmt: skip
# Questions about a figure that are all a walk through it.
OUTSIDE_INTENTS = {
    "sure": "explain", "matters": "explain", "assumed": "explain", "sources": "explain", "spares": "why",
    "cheaper": "price", "drape": "price", "each_table": "price", "resize": "change", "recolour": "change",
    "labour": "why", "calendar": "schedule", "weights": "explain", "lasting": "explain", "gas": "shopping",
    "pick": "change", "shares": "price", "earnings": "price", "least": "solve", "instead": "compare", "restore": "undo",
    "recap": "explain", "sizes": "explain", "units": "explain", "told": "explain",
}  # fmt: skip
PLAIN = "estimate"  # as it stands
CLOCKS = frozenset({"event_time", "setup_from"})


@record
class Held:
    """Only what was said: pieces in the order spoken, and the job."""

    pieces: list[dict[str, Any]]
    job: dict[str, Any]


def export(state: State, vocabulary: Vocabulary) -> Held:
    """The state under its outside names."""
    pieces = [
        {"kind": piece.kind, **{outside_name(k, piece.kind, vocabulary): v for k, v in piece.facts.items()}}
        for piece in state.pieces
    ]
    job = {outside_name(k, "job", vocabulary): clock(v) if k in CLOCKS else v for k, v in state.job.items()}
    if state.intent and state.intent != PLAIN:
        job["intent"] = OUTSIDE_INTENTS.get(state.intent, state.intent)
    return Held(pieces=pieces, job=job)


def outside_name(fact: str, kind: str, vocabulary: Vocabulary) -> str:
    """A fact's name outside: lengths in inches end in _in."""
    spec = vocabulary.fact(fact, kind)
    in_inches = spec is not None and spec.type == "quantity" and spec.unit == "in"
    return NAMES.get(fact) or (f"{fact}_in" if in_inches else fact)


def clock(minutes: Any) -> Any:
    """Minutes after midnight as HH:MM."""
    return f"{int(minutes) // 60:02d}:{int(minutes) % 60:02d}" if isinstance(minutes, (int, float)) else minutes
