"""One here and one there: "two garlands, one for the bar 10 ft, one for the mantel 5 ft"."""

from fractions import Fraction

from grammar.terms import Amount, Term

WITHIN = 5  # terms from "one" to its size
LEADS = frozenset({"PREP", "CHOICE", "BY"})
PLACE = LEADS | {"DET", "FILL", "WORD", "LABEL", "SEP"}


def here_and_there(row: list[Term]) -> list[Term]:
    """The terms, with where each of several goes left out between its number and its size."""
    groups = [group for at in range(len(row)) if (group := _group(row, at))]
    if len(groups) < len("ab"):
        return row
    out = list(row)
    for first, size in groups:
        for i in range(first + 1, size):
            out[i] = row[i].moved("FILL", "")
    for first, _ in reversed(groups):
        if row[first].type == "ONES":  # "10 ft one for the mantel": no "10 ft one"
            comma = Term("SEP", ",", row[first].start, row[first].start, "")
            out[first : first + 1] = [comma, row[first].moved("NUM", Amount(Fraction(1)))]
    return out


def _group(row: list[Term], at: int) -> tuple[int, int] | None:
    """Where "one for the bar 10 ft" begins and where its size stands."""
    one = row[at].text.lower() == "one" and row[at].type in {"NUM", "ONES"}
    if not one or at + 1 >= len(row) or row[at + 1].type not in LEADS:
        return None
    end = at + 1
    while end < len(row) and end - at <= WITHIN and row[end].type in PLACE:
        end += 1
    place = "SEP" not in {term.type for term in row[at + 1 : end - 1]}  # a comma only right before the size
    return (at, end) if place and end < len(row) and row[end].type == "LEN" else None
