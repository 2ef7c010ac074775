"""Sizes of things that are no pieces: "a neon sign 3 ft wide", "the stage is 20 ft" of a wall that has its size."""

from grammar.reading import Context
from grammar.terms import Term
from grammar.word_files import placed

SIZES = ("length", "span", "height", "diameter", "table_length", "table_diameter")
OF_A_SIZE = frozenset({"LEN", "NUM", "BY", "LABEL"})
SIDES = frozenset({"height", "width", "length", "across", "depth"})
SAYS_ANEW = frozenset({"MAKE", "CORR", "REMOVE", "NEG", "ADD"})


def not_its_own(row: tuple[Term, ...], context: Context) -> tuple[Term, ...]:
    """The terms with sizes of other things made words, where the piece in hand has its own and nothing is asked.

    A size of the place that a piece was said for is the piece's own.
    """
    row = _costs(row)
    settled = bool(context.kinds) and not context.asked and any(context.values.get(size) for size in SIZES)
    if not settled or any(term.type in SAYS_ANEW for term in row):
        return row
    out = list(row)
    at = 0
    while at < len(row):
        end = _end_of_size(row, at)
        if end > at and _is_of_a_thing(row, at, str(context.values.get("place", ""))):
            out[at:end] = [term.unused() for term in row[at:end]]
        at = max(end, at + 1)
    return tuple(out)


def _end_of_size(row: tuple[Term, ...], at: int) -> int:
    """The end of "3 ft wide" or "30 by 20" from `at` on; `at` where none begins."""
    after = row[at + 1] if at + 1 < len(row) else None
    side = after is not None and (after.type == "BY" or (after.type == "LABEL" and after.value in SIDES))
    if row[at].type != "LEN" and not (row[at].type == "NUM" and side):
        return at
    end = at + 1
    while end < len(row) and row[end].type in OF_A_SIZE:
        end += 1
    return end


def _is_of_a_thing(row: tuple[Term, ...], at: int, place: str) -> bool:
    """Whether what stands before a size is another thing: behind an article or at the head of its clause, no piece."""
    noun = at - 1
    while noun >= 0 and row[noun].type == "FILL" and row[noun].text.lower() in placed("links") | placed("which"):
        noun -= 1
    first = noun
    while first > 0 and row[first].type in {"WORD", "PROP"}:
        first -= 1
    if noun < 0 or row[noun].type not in {"WORD", "PROP", "FILL"}:
        return False
    named = row[noun].text.lower()
    if row[noun].type == "FILL":
        first = max(noun - 1, 0)
        if named not in placed("things_around"):
            return False
    heads = row[first].type in {"SEP", "AND"} or (first == 0 and row[0].type in {"WORD", "PROP", "FILL"})
    opens = row[first].type == "DET" or (heads and row[noun].type != "FILL")
    return opens and not (place and place in named)


def _costs(row: tuple[Term, ...]) -> tuple[Term, ...]:
    """ "petrol 15": what it costs to get there, though it is the name of a colour as well."""
    out = list(row)
    for at, term in enumerate(row):
        after = at + 1
        while after < len(row) and row[after].type == "FILL" and row[after].text.lower() in placed("links"):
            after += 1
        if term.text.lower() in placed("spent_on") and after < len(row) and row[after].type in {"NUM", "MONEY"}:
            out[at], out[after] = term.unused(), row[after].unused()
    return tuple(out)
