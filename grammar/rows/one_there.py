"""One of several, known by the table where it stands: "one is the top table, make that 5 balloons"."""

from fractions import Fraction

from grammar.terms import Amount, Term
from grammar.word_files import placed

SMALL = frozenset({"SEP", "AND", "FILL", "CORR", "MAKE", "PRON"})  # between the table and what is said of the one there


def one_is_there(row: list[Term]) -> list[Term]:
    """ "one is the top table, make that 5 balloons" as "make the one on the top table 5 balloons"."""
    at = next((i for i, t in enumerate(row) if t.type not in {"AND", "SEP", "FILL"}), len(row))
    end = at + 1
    while end < len(row) and row[end].text.lower() in placed("told_are") | placed("is") | {"for", "on"}:
        end += 1
    ones = at < len(row) and row[at].text.lower().replace("’", "'") == "one's"
    led = ones or (end > at + 1 and row[at].type == "NUM")
    if not led or [t.type for t in row[end : end + 2]] != ["DET", "TABLE"] or row[end].value != "the":
        return _the_one_on(row)
    behind = end + 2
    while behind < len(row) and row[behind].type in SMALL:
        behind += 1
    if behind == end + 2 or behind == len(row):
        return row
    here = row[at].start
    make, article = Term("MAKE", "make", here, here, ""), Term("DET", "the", here, here, "the")
    number = row[at].moved("NUM", Amount(Fraction(1))) if ones else row[at]
    place = Term("PREP", "place", row[at].end, row[at].end, "on")
    return [*row[:at], make, article, number, place, *row[end : end + 2], *row[behind:]]


def _the_one_on(row: list[Term]) -> list[Term]:
    """ "make the one on the top table 5": one of those in hand."""
    out = list(row)
    for at in range(1, len(row) - 2):
        led = row[at - 1].value == "the" and row[at].type == "FILL" and row[at].text.lower() == "one"
        if led and [t.type for t in row[at + 1 : at + 4]] == ["PREP", "DET", "TABLE"]:
            out[at] = row[at].moved("NUM", Amount(Fraction(1)))
    return out
