"""Big balloons by their size: "a garland with some 3 footers in it"."""

from grammar.terms import Amount, Term
from grammar.word_files import placed

BEFORE_SIZES = 3  # terms from "some" to "3 footers"
INCHES = 12
MOST_GIANT = 48  # inches
LEAST_GIANT = 16  # inches; "two 36s" beside a piece are balloons, "two 6s" may be tables


def giants(row: list[Term]) -> list[Term]:
    """ "a garland with some 3 footers in it": big balloons by their size, where no table is spoken of."""
    piece = next((i for i, t in enumerate(row) if t.type == "PIECE"), None)
    if piece is None and any(t.text.lower() in placed("into") for t in row) and any(t.type == "PRON" for t in row):
        piece = 0  # "some 3 footers in it", of the piece in hand
    if piece is None or any(t.type in {"TABLE", "SHAPE"} for t in row):
        return row
    out = list(row)
    for at, term in enumerate(row):
        giant = term.type == "FOOTER" or (term.type == "NOMINALS" and term.value.value >= LEAST_GIANT)
        giant = giant or (term.type == "LEN" and _is_giant(row, at))
        if not giant or at < piece:
            continue
        lead = row[max(piece, at - BEFORE_SIZES) : at]
        first = at
        while first > piece and row[first - 1].type == "FILL":
            first -= 1
        some = [first - 1] if first and row[first - 1].type in {"NUM", "VAGUE"} else []
        among = any({*t.text.lower().split()} & placed("among") for t in (*lead, *row[at + 1 : at + 3]))
        if among or not lead:
            inches = INCHES if term.type == "FOOTER" or term.value.unit == "ft" else 1
            out[at] = term.moved("NOMINALS", Amount(term.value.value * inches))
            for i in some:
                out[i] = row[i].unused()
    return out


def _is_giant(row: list[Term], at: int) -> bool:
    """Whether a size is that of "three 36 inch giants" or of "two 3 ft balloons"."""
    after = row[at + 1] if at + 1 < len(row) else None
    inches = row[at].value.value * {"in": 1, "ft": INCHES}.get(row[at].value.unit, 0)
    big = LEAST_GIANT <= inches <= MOST_GIANT and at > 0 and row[at - 1].type in {"NUM", "VAGUE"}
    named = after is not None and (after.type in {"ONES", "BALLOON"} or after.text.lower() in placed("giants"))
    return big and named


def of_the_pieces(row: list[Term]) -> list[Term]:
    """ "six columns in front, 6 footers": how high they are, where no size was said and no table is spoken of."""
    piece = next((i for i, t in enumerate(row) if t.type == "PIECE" and str(t.value) in placed("standing")), len(row))
    if any(term.type in {"TABLE", "SHAPE", "LEN"} for term in row):
        return row
    out = list(row)
    for at in range(piece + 1, len(row)):
        own = row[at].type == "FOOTER" and row[at - 1].type in {"SEP", "PRON", "FILL", "PIECE"}
        if own:
            out[at] = row[at].moved("LEN", Amount(row[at].value.value, "ft"))
    return out
