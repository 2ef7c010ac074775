"""Which of several pieces of one kind a change is of: the question, and what its answer points at."""

from dataclasses import replace

from assistant.layout import listed
from assistant.meant import EVERY, PLACES, SIZES, meant
from assistant.state import HeardPiece, Pending, State
from assistant.telling import plain
from grammar.reading import Mention, Reading

INCHES = 12  # in a foot


def which_of(mention: Mention, now: State) -> Pending:
    """The question; the change waits in it for the answer."""
    alike = [piece for piece in now.pieces if piece.kind == mention.kind]
    labels = _labels(alike, metric=now.metric)
    text = f"Which {mention.kind}: {listed(labels, 'or')}, or all of them?"
    return Pending(text, mention=mention)


def _labels(alike: list[HeardPiece], *, metric: bool) -> list[str]:
    """What tells the pieces apart: their sizes, else their colours, else how many they are, else their places."""
    sizes = [next((plain(p.facts[f] / INCHES, "ft", metric=metric) for f in SIZES if f in p.facts), "") for p in alike]
    colours = [" and ".join(colour["name"] for colour in p.facts.get("colours", ())) for p in alike]
    counts = [f"{p.facts['count']:g}" if p.facts.get("count", 1) > 1 else "the single one" for p in alike]
    for labels in (sizes, colours, counts, [*PLACES]):
        if all(labels) and len(set(labels)) >= len(alike):
            return labels[: len(alike)]
    return [f"{place}." for place in range(1, len(alike) + 1)]


def answered(reading: Reading, waiting: Mention, pieces: list[HeardPiece]) -> Mention | None:
    """The change, of the pieces that the answer points at; None where it points at none or says something else."""
    alike = [piece for piece in pieces if piece.kind == waiting.kind]
    if len(reading.mentions) != 1 or reading.orders:
        return None
    said = reading.mentions[0]
    if said.kind not in {None, waiting.kind} or said.new or said.removed or said.steps or said.drop:
        return None
    if not said.facts:
        if said.which in EVERY:
            return replace(waiting, which=said.which)
        fits = meant(said.which, alike, -1) if said.which != "it" else []
    else:
        fits = [piece for piece in alike if _is_as_said(piece, said)]
    place = next((at for at, piece in enumerate(alike) if fits and piece is fits[0]), len(PLACES))
    return replace(waiting, which=PLACES[place]) if len(fits) == 1 and place < len(PLACES) else None


def _is_as_said(piece: HeardPiece, said: Mention) -> bool:
    """Whether all that the answer tells is so of the piece: "the white one", "the 7"."""
    for fact, value in said.facts.items():
        held = piece.facts.get(fact, 1 if fact == "count" else None)
        if fact == "colours":
            names = {colour["name"] for colour in held or ()}
            if not {colour["name"] for colour in value} <= names:
                return False
        elif held != value:
            return False
    return True
