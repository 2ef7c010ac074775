"""Numbers that add up to a hundred: "navy and gold, 60 40", "make it 70-30"."""

import itertools
from collections.abc import Iterator

from grammar.terms import Term
from grammar.word_files import placed

HUNDRED = 100
NOUNS = frozenset({"TABLE", "PIECE", "SHAPE", "BALLOON", "FOOTER", "LABEL", "ROWS", "ONES"})
LEAST = 2


def hundreds(row: list[Term]) -> list[Term]:
    """The terms, with such numbers beside as many colours made their shares, and those without colours one term."""
    row = _halves(_beside_colours(row))
    out = list(row)
    for first, end, numbers in reversed(list(_runs(row))):
        colours = [i for i, t in enumerate(row) if t.type == "COLOUR" and isinstance(t.value, str)]
        after = [i for i in colours if i >= end]
        before = [i for i in colours if i < first]
        many = len(numbers)
        if len(after) >= many and _touch(row, end, after[0]):
            chosen = after[:many]
        elif len(before) >= many and _touch(row, before[-1] + 1, first):
            chosen = before[-many:]
        elif colours or any(t.type in NOUNS for t in row):
            continue
        else:
            text = " ".join(t.text for t in row[first:end])
            out[first:end] = [Term("SPLIT", numbers, row[first].start, row[end - 1].end, text)]
            continue
        led = first - 1 if first and row[first - 1].text.lower() in placed("shares") else first
        out[led:end] = [t.moved("FILL", "ratio") for t in row[led:end]]
        for i, share in zip(chosen, numbers, strict=True):
            out[i] = row[i].moved("COLOUR", (row[i].value, share / HUNDRED))
    return out


def _halves(row: list[Term]) -> list[Term]:
    """ "make it 50 50" of the two colours in hand."""
    if any(t.type in NOUNS | {"COLOUR"} for t in row):
        return row
    return [t.moved("SPLIT", (50, 50)) if t.type == "EVEN" and t.text[:2] == "50" else t for t in row]


def _beside_colours(row: list[Term]) -> list[Term]:
    """ "60 percent sage and 40 white": a number beside a colour is a share where the others are."""
    kept = [i for i, t in enumerate(row) if t.type not in {"FILL", "SEP", "AND", "OF"}]
    pairs = [pair for pair in itertools.pairwise(kept) if "COLOUR" in {row[i].type for i in pair}]
    numbers = {i for pair in pairs for i in pair if row[i].type in {"NUM", "PCT"}}
    shares = sum(row[i].value.value for i in numbers) == HUNDRED and any(row[i].type == "PCT" for i in numbers)
    return [t.moved("PCT") if shares and i in numbers else t for i, t in enumerate(row)]


def _runs(row: list[Term]) -> Iterator[tuple[int, int, tuple[int, ...]]]:
    """Where such numbers begin and end, and which they are."""
    at = 0
    while at < len(row):
        end, numbers = at, []
        while end < len(row) and row[end].type in {"NUM", "PCT"}:
            numbers += _of(row[end])
            end += 1
            joined = end
            while joined < len(row) and row[joined].text.lower() in placed("split_by"):
                joined += 1
            if joined < len(row) and row[joined].type in {"NUM", "PCT"}:
                end = joined
        counts = end < len(row) and row[end].type in NOUNS
        if len(numbers) >= LEAST and sum(numbers) == HUNDRED and not counts:
            yield at, end, tuple(int(n) for n in numbers)
        at = max(end, at + 1)


def _of(term: Term) -> list[int]:
    """The numbers of "60/40", which may be read as one, or the number itself."""
    parts = term.text.split("/")
    written = len(parts) > 1 and all(part.strip().isdigit() for part in parts)
    return [int(part) for part in parts] if written else [term.value.value]


def _touch(row: list[Term], first: int, last: int) -> bool:
    """Whether nothing that has numbers of its own stands between a run of numbers and its colours."""
    return all(term.type in {"FILL", "SEP", "AND", "DET", "PRON", "OF", "GAP"} for term in row[first:last])


def adding_up(row: list[Term]) -> list[Term]:
    """ "40 white 60 green": numbers before colours that make up a hundred are shares."""
    kept = [i for i, t in enumerate(row) if t.type not in {"FILL", "SEP", "AND"}]
    pairs = [(a, b) for a, b in itertools.pairwise(kept) if row[a].type == "NUM" and row[b].type == "COLOUR"]
    behind = [(b, a) for a, b in itertools.pairwise(kept) if row[a].type == "COLOUR" and row[b].type == "NUM"]
    if sum(row[a].value.value for a, _ in behind) == HUNDRED:  # "navy 60, green 40"
        pairs = behind
    if len(pairs) < LEAST or sum(row[a].value.value for a, _ in pairs) != HUNDRED:
        return row
    shares = {a for a, _ in pairs}
    return [t.moved("PCT") if i in shares else t for i, t in enumerate(row)]
