"""What a place says of the pieces there: walls that each get one, posts that are wrapped, a wall wider than a table."""

from fractions import Fraction

from grammar.terms import Amount, Term
from grammar.word_files import placed

TABLES = frozenset({"TABLE", "SHAPE", "FOOTER"})
WITHIN = 6  # terms between a piece and what it is compared with
DROP = "drop"  # balloons that are let fall


def one_for_each(row: list[Term]) -> list[Term]:
    """ "a swag along each of four walls, 15 ft walls": four of them, and the walls are no pieces."""
    first = next((i for i, t in enumerate(row) if t.type == "PIECE"), len(row))
    for at in range(first + 1, len(row) - 1):
        end = at + 1 + (row[at + 1].type == "DET")
        named = [t.type for t in row[end : end + 2]] == ["NUM", "PIECE"]
        each = (row[at].type, row[at].value) == ("DET", "each") or row[at].text.lower() in placed("whole")
        if not (each and named) or row[at - 1].type not in {"PREP", "LABEL"} or row[end + 1].value == row[first].value:
            continue
        place = row[end + 1].text.lower()
        out = [t.moved("FILL", place) if t.text.lower() == place else t for t in row]
        out[at] = row[at].moved("DET", "each")
        one = first - 1 if first and (row[first - 1].type, row[first - 1].value) == ("DET", "one") else first
        rest = [*row[first : first + 1], *out[first + 1 : at], *(t.moved("FILL", "") for t in row[at : end + 1])]
        return [*row[:one], row[end].moved("NUM", row[end].value), *rest, *out[end + 1 :]]
    return row


def wrapped(row: list[Term]) -> list[Term]:
    """ "four pillars wrapped in garland": posts that are there already, each with one garland."""
    for at in range(1, len(row) - 2):
        if row[at].text.lower() not in placed("wraps") or row[at - 1].type != "PIECE":
            continue
        piece = next((i for i in range(at + 1, min(at + 4, len(row))) if row[i].type == "PIECE"), 0)
        if not piece or str(row[piece].value) not in placed("strung"):
            continue
        out = [*row[: at - 1], row[at - 1].moved("FILL", ""), *(t.moved("FILL", "") for t in row[at:piece])]
        rest = list(row[piece:])
        for i in range(1, len(rest) - 1):
            if rest[i].type == "LEN" and (rest[i + 1].type, rest[i + 1].value) == ("LABEL", "height"):
                rest[i], rest[i + 1] = rest[i].unused(), rest[i + 1].unused()  # of the posts
        return [*out, *rest]
    return row


def sticks_out(row: list[Term]) -> list[Term]:
    """ "a wall a foot past each end of the 6 ft table" is two feet wider than the table."""
    piece = next((i for i, t in enumerate(row) if t.type == "PIECE" and str(t.value) in placed("walls")), len(row))
    for at in range(piece + 1, len(row)):
        said = {word for t in row[piece + 1 : at + 3] for word in t.text.lower().split()}
        if row[at].type != "LEN" or not said & placed("sticks_out"):
            continue
        side = next((i for i in range(at + 1, min(at + WITHIN, len(row))) if _is_both_sides(row, i)), 0)
        size = next((i for i in range(side + 1, min(side + WITHIN, len(row))) if row[i].type in {"LEN", "FOOTER"}), 0)
        noun = next((i for i in range(size, min(size + 2, len(row))) if row[i].type in TABLES), 0)
        if not (side and size and noun) or row[at].value.unit not in {row[size].value.unit, "ft", "m"}:
            continue
        if row[at].value.unit != row[size].value.unit:
            continue
        wide = Amount(row[size].value.value + 2 * row[at].value.value, row[size].value.unit)
        here = row[noun].end
        before = [t.moved("FILL", "") if t.text.lower() in placed("sticks_out") else t for t in row[piece + 1 : at]]
        gone = [*before, *(t.moved("FILL", "") for t in row[at : noun + 1])]
        size_of_it = [Term("LEN", wide, row[at].start, here, row[at].text), Term("LABEL", "width", here, here, "wide")]
        return [*row[: piece + 1], *gone, *size_of_it, *row[noun + 1 :]]
    return row


def _is_both_sides(row: list[Term], at: int) -> bool:
    words = " ".join(t.text.lower() for t in row[at : at + 2]).split()
    words = words[1:] if words[:1] and words[0] in placed("sticks_out") else words
    return words[:1] != [] and words[0] in placed("two_sides") and bool({*words[1:]} & placed("sides"))


def coming_down(row: list[Term]) -> list[Term]:
    """ "balloons dropping on it", "balloons come down at midnight": a drop of balloons."""
    if any(term.type == "PIECE" or term.type in TABLES for term in row):
        return row
    for at in range(len(row) - 1):
        verb = at + 1
        while verb < len(row) and row[verb].type == "FILL" and row[verb].text.lower() in placed("told_are"):
            verb += 1
        words = " ".join(t.text.lower() for t in row[verb : verb + 2]).split()
        falls = words[:1] and words[0] in placed("raining")
        comes = len(words) > 1 and words[0] in placed("comes") and words[1] == "down"
        if row[at].type == "BALLOON" and (falls or comes):
            end = verb + (1 if falls else 2)
            piece = Term("PIECE", DROP, row[at].end, row[end - 1].end, "balloon drop")
            return [*row[: at + 1], piece, *row[end:]]
    return row


def floor_ahead(row: list[Term]) -> list[Term]:
    """ "the dance floor's 20 by 15, a drop over it": the sides, said ahead of it, are those of the floor below."""
    drop = next((i for i, t in enumerate(row) if t.type == "PIECE"), len(row))
    by = next((i for i in range(1, drop) if row[i].type == "BY"), 0)
    if drop == len(row) or row[drop].value != DROP or not by or any(t.type in TABLES for t in row[:drop]):
        return row
    if not any({*t.text.lower().split()} & placed("floors") for t in row[by:drop]) and row[by - 2 : by - 1]:
        lead = " ".join(t.text.lower().replace("’", "'").removesuffix("'s") for t in row[: by - 1])
        if not {*lead.replace("'s", "").split()} & placed("floors"):
            return row
    return [*row[: by - 1], row[drop], *row[by - 1 : drop], *row[drop + 1 :]]


def part_of_it(row: list[Term]) -> list[Term]:
    """ "the top third of the hoop", "just the bottom half": so much of it."""
    out = list(row)
    for at in range(len(row) - 1):
        spot = row[at].text.lower().split()[-1:]
        share = _share(row[at + 1])
        coloured = next((t.type for t in reversed(row[:at]) if t.type not in {"FILL", "PREP", "DET"}), "") == "COLOUR"
        if spot and spot[0] in placed("halves") and share and coloured and row[at].type == "FILL":
            out[at + 1] = row[at + 1].unused()  # "gold on the top half": where a colour goes is not worked out
        elif spot and spot[0] in placed("halves") and row[at].type in {"FILL", "LABEL", "NTH"} and share:
            of = row[at + 2 : at + 3] and row[at + 2].type == "OF"
            strung = any(t.type == "PIECE" and str(t.value) in placed("strung") for t in row[:at])
            if strung and of:
                out[at], out[at + 1] = row[at].unused(), row[at + 1].unused()  # where on the wall it goes
                out[at + 2] = row[at + 2].moved("PREP", "place")
            elif row[at].type != "LABEL":
                out[at] = row[at].moved("FILL", "")
                out[at + 1] = row[at + 1].moved("FRAC", Amount(share))
    return out


def _share(term: Term) -> Fraction | None:
    if term.type == "FRAC":
        return Fraction(term.value.value)
    return {"third": Fraction(1, 3), "quarter": Fraction(1, 4)}.get(term.text.lower())
