"""Tables that get nothing, and those that alone get something: "nothing on the rounds", "just these get a runner"."""

from grammar.terms import Term
from grammar.word_files import placed

ON_TABLES = "runner"
TABLES = frozenset({"TABLE", "SHAPE", "FOOTER", "ONES", "PIECE"})
RUN = TABLES | {"LEN", "NUM", "NOMINALS", "COLOUR"}  # what names some tables, behind an article


def bare(row: list[Term]) -> list[Term]:
    """ "nothing on the rounds", "the kids table doesn't need one", "leave the cake table bare": that table goes."""
    for at in range(len(row)):
        first, end = _tables(row, at)
        if end > first and (_nothing_before(row, first, end) or _nothing_behind(row, end)):
            here = row[first].start
            kept = [t for t in row[:first] if t.text.lower() not in placed("nothing") | placed("leaving")]
            kept = [t.moved("FILL", "") if t.type == "PREP" and t is row[first - 1] else t for t in kept]
            stop = next((i for i in range(end, len(row)) if row[i].type in {"SEP", "AND"}), len(row))
            return [*kept, Term("REMOVE", "remove", here, here, ""), *row[first:end], *row[stop:]]
    return row


def _tables(row: list[Term], at: int) -> tuple[int, int]:
    """Where "the 8 ft ones" begins and ends, if it begins at `at`."""
    if row[at].type == "PRON" and row[at].value in placed("by_size"):
        return at, at + 1
    if (row[at].type, row[at].value) != ("DET", "the"):
        return at, at
    end = at + 1
    while end < len(row) and row[end].type in RUN:
        end += 1
    return (at, end) if row[end - 1].type in TABLES else (at, at)


def _nothing_before(row: list[Term], first: int, end: int) -> bool:
    """Whether "nothing on" stands before tables, at the head of the turn, and no more is said of them."""
    before = [t for t in row[:first] if t.type not in {"AND", "SEP"}]
    words = [t.text.lower() for t in before if t.text.lower() not in placed("bearing")]
    led = words[:1] and words[0] in placed("nothing") and words[1:] and before[-1].type in {"PREP", "FILL"}
    return bool(led) and len(words) == len("ab") and (end == len(row) or row[end].type in {"SEP", "AND"})


def _nothing_behind(row: list[Term], end: int) -> bool:
    """Whether "gets nothing", "doesn't need one" or "bare" stands behind tables."""
    words = " ".join(t.text.lower().replace("’", "'") for t in row[end : end + 5]).split()
    needs = words[:1] and words[0] in placed("denies") and words[1:2] and words[1] in placed("wanting")
    gets = words[:1] and words[0] in placed("wanting") | placed("told_are") and words[1:2]
    table = row[end - 1].type != "PIECE"  # "leave the hoop plain" is without leaves
    left = (
        table
        and words[:1]
        and words[0] in placed("left_bare")
        and any(t.text.lower() in placed("leaving") for t in row[:end])
    )
    return bool(
        left
        or (gets and words[1] in placed("nothing"))
        or (needs and words[2:] in (["one"], ["any"], ["anything"], ["a", "runner"]))
    )


def dressed_alone(row: list[Term]) -> list[Term]:
    """ "just the trestles get a runner", "runners only on the rounds": the other tables get none, which is marked."""
    only = next((i for i, t in enumerate(row) if t.text.lower() in placed("alone")), len(row))
    runner = next((i for i, t in enumerate(row) if (t.type, t.value) == ("PIECE", ON_TABLES)), len(row))
    for at in range(only + 1, len(row)):
        first, end = _tables(row, at)
        if end == first:
            continue
        alone = at == only + 1 and end == len(row) and all(t.type in {"FILL", "SEP"} for t in row[:only])
        if alone or (runner < first and row[first - 1].type in {"PREP", "FILL"}):
            here = row[end - 1].end
            return [*row[:end], Term("SOLE", "dressed", here, here, ""), *row[end:]]
        gets = end + 1 < len(row) and row[end].text.lower() in placed("told_are") | placed("wanting")
        stop = end + 2 + (gets and row[end + 1].type == "DET")
        if gets and (runner == stop - 1 or row[end + 1].text.lower() in placed("covered")):
            return [*row[:end], Term("SOLE", "dressed", row[end].start, row[stop - 1].end, ""), *row[stop:]]
    return row
