"""Sizes of what a piece goes round: "a garland around a doorway 7 ft high and 3 ft wide", "around a 4 ft hoop"."""

from collections.abc import Sequence
from dataclasses import replace

from grammar.phrases import Phrase
from grammar.vocabulary import Vocabulary
from grammar.word_files import placed

AROUND = "around_"  # before a role in a piece's `measures`: the role of what the piece goes round
HEIGHT, WIDTH, ACROSS = "height", "width", "across"
OWN = frozenset({"length", "along"})  # labels of the piece's own length
ENDS = frozenset({"piece", "table", "add"})


def openings(phrases: Sequence[Phrase], vocabulary: Vocabulary) -> list[Phrase]:
    """The phrases, with the sizes of what a piece goes round labelled as such.

    What is round has one size, an opening two; one size of a thing of unknown outline is no length and is left over.
    Beside a length of the piece's own such sizes are left over.
    """
    out = list(phrases)
    at = 0
    while at < len(out):
        words = vocabulary.kinds.get(str(out[at].value)) if out[at].kind == "piece" else None
        denied = any(phrase.kind in ("neg", "remove") for phrase in out[max(0, at - 2) : at])
        if words is not None and not denied and AROUND + ACROSS in words.measures:
            stop = next((k for k in range(at + 1, len(out)) if out[k].kind in ENDS), len(out))
            moved = _told_ahead(out, at, stop)
            out, at, stop = (moved, at - 2, stop) if moved is not out else (out, at, stop)
            own = _has_length(out[:at]) or any(phrase.label in OWN for phrase in out[at:stop])
            out[at + 1 :] = _sides(out[at + 1 : stop], own) + out[stop:]
            out[at + 1 :] = _disc(out[at + 1 :], own) if own else _round(_disc(out[at + 1 :], own))
        at += 1
    return out


def _told_ahead(phrases: list[Phrase], at: int, stop: int) -> list[Phrase]:
    """ "a doorway 80 in high and 36 wide, a garland up and over": the sizes behind the piece that goes round it."""
    before = [phrase for phrase in phrases[:at] if phrase.label in {HEIGHT, WIDTH}]
    behind = phrases[at + 1 : stop]
    sized = any(phrase.amounts for phrase in behind) or len(before) != len({phrase.label for phrase in before})
    others = any(phrase.kind in ENDS or (phrase.amounts and phrase not in before) for phrase in phrases[:at])
    led = any({*phrase.text.lower().split()} & placed("goes_round") for phrase in behind)
    if len(before) != len("ab") or sized or others or not led:
        return phrases
    kept = [phrase for phrase in phrases[:at] if phrase not in before]
    return [*kept, phrases[at], *before, *phrases[at + 1 :]]


def _sides(phrases: list[Phrase], own: bool) -> list[Phrase]:
    """Height and width, where both are said; left over beside a length of the piece's own."""
    if not {HEIGHT, WIDTH} <= {phrase.label for phrase in phrases}:
        return phrases
    labels = {HEIGHT: AROUND + HEIGHT, WIDTH: AROUND + WIDTH}
    if own:
        return [Phrase("word", phrase.terms) if phrase.label in labels else phrase for phrase in phrases]
    return [replace(phrase, label=labels.get(phrase.label, phrase.label)) for phrase in phrases]


def _disc(phrases: list[Phrase], own: bool) -> list[Phrase]:
    """ "round a circular mirror 4 ft across": the size is that of the thing, not of what goes round it."""
    end = 1
    while end < len(phrases) and phrases[end].kind in {"det", "shape", "word"}:
        end += 1
    circle = any(phrase.kind == "shape" and phrase.value == "round" for phrase in phrases[1:end])
    if circle and phrases[0].kind in {"prep", "shape"} and end < len(phrases) and phrases[end].label == ACROSS:
        size = Phrase("word", phrases[end].terms) if own else replace(phrases[end], label=AROUND + ACROSS)
        return [*phrases[:end], size, *phrases[end + 1 :]]
    return phrases


def _round(phrases: list[Phrase]) -> list[Phrase]:
    """What stands behind "around" and an article."""
    if len(phrases) < len("around a size".split()) or not _goes_round(phrases):
        return phrases
    end = 2
    while end < len(phrases) and phrases[end].kind == "shape":
        end += 1
    if end == len(phrases):
        return phrases
    size = phrases[end]
    after = end + 1
    while after < len(phrases) and phrases[after].kind == "shape":
        after += 1
    ring = after < len(phrases) and phrases[after].kind == "piece" and phrases[after].value == "hoop"
    table = after < len(phrases) and phrases[after].kind == "table"
    circle = ring or any(phrase.kind == "shape" and phrase.value == "round" for phrase in phrases[2:after])
    if size.kind == "sides" and len(size.amounts) == 2:
        pair = [
            replace(size, kind="named", label=AROUND + role, amounts=(one,))
            for role, one in zip((WIDTH, HEIGHT), size.amounts, strict=True)
        ]
        return [*phrases[:2], *pair, *phrases[after:]]
    if not _is_length(size):
        return phrases
    if circle:
        last = after + (ring or table)
        whole = tuple(term for phrase in phrases[2:last] for term in phrase.terms)
        return [*phrases[:2], Phrase("named", whole, label=AROUND + ACROSS, amounts=size.amounts), *phrases[last:]]
    if table or (after < len(phrases) and phrases[after].kind == "piece"):
        return phrases
    return [*phrases[:2], Phrase("word", size.terms), *phrases[after:]]


def _goes_round(phrases: list[Phrase]) -> bool:
    """ "around a ...": without an article it would mean about."""
    first, second = phrases[:2]
    around = (first.kind == "prep" and first.value == "around") or (first.kind == "shape" and first.value == "round")
    return around and second.kind == "det"


def _has_length(before: list[Phrase]) -> bool:
    """ "a 20 ft ..."."""
    return bool(before) and _is_length(before[-1])


def _is_length(phrase: Phrase) -> bool:
    return phrase.kind == "amount" and phrase.amounts[0].type == "LEN"
