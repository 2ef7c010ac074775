"""Which of the pieces in hand a mention without a name means."""

from collections.abc import Sequence

from assistant.state import HeardPiece

SIZES = ("length", "height", "span", "diameter", "table_length", "table_diameter")
PLACES = ("first", "second", "third", "fourth", "fifth")
EVERY = frozenset({"all", "both"})
CONTRARY = {"outside": "inside", "inside": "outside", "left": "right", "right": "left"}
CALLED = frozenset(CONTRARY)  # where one of two stands
NEAR = 0.005  # relative: 183 cm is as good as 6 ft


def meant(which: str, pieces: Sequence[HeardPiece], focus: int, *, sized: bool = False) -> list[HeardPiece]:
    """The pieces in order; none where there is no such piece.  `sized`: a size is told of it.

    `which`: "it" (the one in focus), "all", "both", "other", a place in the row, "smallest", "biggest", "colour NAME",
    "size FACT VALUE" (in the unit of the fact), "called NAME", "except" before kinds or a size, or "but" before
    one of these: the others of that kind.
    """
    word, _, rest = which.partition(" ")
    if word == "except":
        size = meant(rest, pieces, focus) if rest.startswith("size ") else []
        return [p for p in pieces if p not in size and p.kind not in rest.split()]
    if word == "but":
        chosen = meant(rest, pieces, focus)
        return [p for p in pieces if chosen and p.kind == chosen[0].kind and p not in chosen]
    if word == "called":
        return [p for p in pieces if p.called == rest]
    if word == "size":
        fact, value = rest.split()
        return [p for p in pieces if abs(float(p.facts.get(fact, 0)) - float(value)) <= NEAR * float(value)]
    if word == "colour":
        return [
            p for p in pieces if any(rest in (c["name"], c["name"].split()[-1]) for c in p.facts.get("colours", ()))
        ]
    if which in PLACES:
        return list(pieces[PLACES.index(which) : PLACES.index(which) + 1])
    if which in {"last", "left", "right", "middle"} and len(pieces) < len("ab"):
        return []
    if which in CALLED:
        return _called(which, pieces)
    unsized = [p for p in pieces if not _size(p)]
    if which in {"smallest", "biggest"} and sized and len(unsized) == 1:
        return unsized  # "two garlands", "the big one is 15 ft", "the small one 6"
    by_size = sorted(pieces, key=_size)
    found = {
        "all": pieces,
        "both": pieces,
        "other": [p for i, p in enumerate(pieces) if i != focus] or list(pieces),  # the other of two, one of which went
        "middle": pieces[len(pieces) // 2 : len(pieces) // 2 + 1] if len(pieces) % 2 else [],
        "last": pieces[-1:],
        "left": [],
        "right": [],
        "smallest": by_size[:1],
        "biggest": by_size[-1:],
    }
    return list(found.get(which, pieces[focus : focus + 1]))


def _called(which: str, pieces: Sequence[HeardPiece]) -> list[HeardPiece]:
    """The piece that is spoken of so; else the one that is left where the others are."""
    named = [p for p in pieces if p.called == which]
    left = [p for p in pieces if not p.called]
    contrary = any(p.called == CONTRARY[which] for p in pieces)
    return named or (left if contrary and len(left) == 1 else [])


def _size(piece: HeardPiece) -> float:
    """The greatest size said of a piece, inches."""
    return max((float(piece.facts[f]) for f in SIZES if f in piece.facts), default=0.0)
