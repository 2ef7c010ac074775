"""Pieces that are called by where they stand: "the inside one", "outside one is 3 m wide", "right one in white"."""

from grammar.terms import Term

CALLED = {True: "outside", False: "inside"}
BEFORE = frozenset({"SEP", "AND", "MAKE", "WHATIF", "CORR", "FILL", "ADD"})
SIZES = frozenset({"LEN", "NUM", "BY"})
THINGS = frozenset({"TABLE", "PIECE", "SHAPE", "BALLOON", "FOOTER", "MORE"})
SIDES = frozenset({"left", "right"})
TOLD = frozenset({"ALL", "COLOUR", "LEN", "CMP"})
ONE = frozenset({"one", "one's"})


def called_ones(row: list[Term]) -> list[Term]:
    """The terms, with "outside one" read as a word that points, and "an outdoor one" as one more of the kind."""
    out: list[Term] = []
    at = 0
    while at < len(row):
        term = row[at]
        one = row[at + 1] if at + 1 < len(row) and row[at + 1].text.lower() in ONE else None
        called = _place(term, row[at + 2 :]) if one is not None else ""
        article = out[-1].value if out and out[-1].type == "DET" else ""
        if one is not None and called in CALLED.values() and article == "one":
            out += [one.moved("ONES", "ones"), term]  # "and an outdoor one 10 by 8"
            at += 2
            continue
        side = term.text.lower() if term.text.lower() in SIDES and out and out[-1].text.lower() == "the" else ""
        if side and one is None and _is_told(row[at + 1 :]):
            out.pop()
            out.append(Term("PRON", side, term.start, term.end, term.text))  # "and the right all white"
            at += 1
            continue
        if one is not None and called and (article == "the" or not out or out[-1].type in BEFORE):
            if article:
                out.pop()
            out.append(Term("PRON", called, term.start, one.end, f"{term.text} {one.text}"))
            at += 2
            continue
        out.append(term)
        at += 1
    return out


def _is_told(after: list[Term]) -> bool:
    """Whether something that may be of one piece follows at once."""
    return next((t.type for t in after if t.text.lower() not in {"in", "is"}), "") in TOLD


def _place(term: Term, after: list[Term]) -> str:
    """Where a thing stands that is called by a term, "" where the term is no place."""
    if term.type == "FLAG" and isinstance(term.value, tuple) and term.value[0] == "outdoors":
        return CALLED[bool(term.value[1])]
    noun = next((t.type for t in after if t.type not in SIZES), "")
    counts = noun in THINGS  # "right, one 6 ft table"
    return "right" if term.type == "FILL" and term.text.lower() == "right" and not counts else ""
