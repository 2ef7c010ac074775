"""Pieces that are called by where they stand: "the inside one", "outside one is 3 m wide"."""

from grammar.terms import Term

CALLED = {True: "outside", False: "inside"}
BEFORE = frozenset({"SEP", "AND", "MAKE", "WHATIF", "CORR", "FILL", "ADD"})


def called_ones(row: list[Term]) -> list[Term]:
    """The terms, with "outside one" read as a word that points where no "one" stands before it."""
    out: list[Term] = []
    at = 0
    while at < len(row):
        term = row[at]
        one = row[at + 1] if at + 1 < len(row) else None
        place = term.type == "FLAG" and isinstance(term.value, tuple) and term.value[0] == "outdoors"
        article = bool(out) and out[-1].type == "DET" and out[-1].value == "the"
        opens = article or not out or out[-1].type in BEFORE
        if place and opens and one is not None and one.text.lower() in {"one", "one's"}:
            if article:
                out.pop()
            out.append(Term("PRON", CALLED[bool(term.value[1])], term.start, one.end, f"{term.text} {one.text}"))
            at += 2
            continue
        out.append(term)
        at += 1
    return out
