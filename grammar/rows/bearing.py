"""Tables that only bear what is named with them, and places that a piece goes along."""

from dataclasses import replace

from grammar.terms import Term
from grammar.word_files import placed

ON_TABLES = "runner"  # what dresses the tables themselves
BUNCH = "bouquet"  # what balloons on a weight make


def ring_round(row: list[Term]) -> list[Term]:
    """ "a ring round the middle of each table": how balloons lie there, and no hoop."""
    out = list(row)
    for at, term in enumerate(row):
        if term.type not in {"PIECE", "SHAPE"} or term.text.lower().split()[0] not in placed("ringed"):
            continue
        end = at + 1
        while end < len(row) and (row[end].type in {"BALLOON", "OF"} or row[end].text.lower() in placed("about")):
            end += 1
        around = any(t.text.lower() in placed("about") for t in row[at + 1 : end])
        spot = end < len(row) and (row[end].type in {"DET", "NTH"} or row[end].text.lower().split()[-1:] == ["the"])
        measured = at and row[at - 1].type in {"LEN", "NUM"}
        where = " ".join(t.text.lower() for t in row[end : end + 3]).split()
        tables = any(t.type in {"TABLE", "SHAPE"} for t in (*row[:at], *row[end : end + 3]))
        if around and spot and not measured and (tables or {*where} & placed("of_a_table")):
            first = at - 1 if at and row[at - 1].type == "DET" else at
            out[first:end] = [t.moved("FILL", "") for t in row[first:end]]
            out[at] = term.unused()
    return out


def bearing(row: list[Term]) -> list[Term]:
    """ "eight 60 in rounds need centrepieces": tables that only bear what follows, marked behind them."""
    out: list[Term] = []
    only = any(t.text.lower() in placed("alone") and _is_next(row, at + 1, "PIECE") for at, t in enumerate(row))
    for at, term in enumerate(row):
        out.append(term)
        end = at + 1
        while end < len(row) and (row[end].type in {"SEP", "PRON"} or row[end].text.lower() in placed("bearing")):
            end += 1
        wanted = {t.text.lower() for t in row[at + 1 : end]} & placed("wanting")
        while end < len(row) and row[end].type in {"DET", "COLOUR", "AND", "CHOICE", "BALLOON"}:
            end += 1
        bears = wanted and end < len(row) and row[end].type == "PIECE" and row[end].value != ON_TABLES
        noun = at + 1 < len(row) and row[at + 1].type in {"TABLE", "SHAPE"}
        if term.type in {"TABLE", "SHAPE", "FOOTER"} and not noun and (bears or only):
            out.append(Term("BEARS", None, term.end, term.end, ""))
    return out


def _is_next(row: list[Term], at: int, kind: str) -> bool:
    """Whether a term of a type stands at `at`, or behind an article."""
    at += at < len(row) and row[at].type == "DET"
    return at < len(row) and row[at].type == kind


def at_a_side(row: list[Term]) -> list[Term]:
    """ "up one side of the backdrop": a part of something that the piece named before goes along."""
    out = list(row)
    for at in range(1, len(row) - 2):
        of = row[at].type == "OF" and row[at - 1].text.lower().split()[-1:] and row[at + 1].type == "DET"
        part = of and row[at - 1].text.lower().split()[-1] in placed("part_of")
        thing = row[at + 2].type == "PIECE" and row[at + 1].value == "the"
        if part and thing and any(t.type == "PIECE" and t.value != row[at + 2].value for t in row[: at - 1]):
            out[at] = row[at].moved("PREP", "place")
            if at > 1 and row[at - 2].type == "NUM":
                out[at - 2] = row[at - 2].moved("FILL", "")
    return out


def weighted(row: list[Term]) -> list[Term]:
    """ "three balloons on a weight" as "a bouquet of three", one on each where "each gets" them."""
    if any(term.type == "PIECE" for term in row):
        return row
    for at, term in enumerate(row[:-2]):
        balloons = at + 1
        while row[balloons].type in {"COLOUR", "AND"} and balloons + 1 < len(row):
            balloons += 1
        end = balloons + 1
        while end < len(row) and (row[end].type in {"PREP", "DET"} or row[end].text.lower() in placed("held_by")):
            end += 1
        held = end < len(row) and row[end].text.lower() in placed("weights")
        if term.type != "NUM" or row[balloons].type != "BALLOON" or not held:
            continue
        here = term.start
        each = any(t.text.lower().split()[:1] == ["each"] or t.value == "each" for t in row)
        there = [Term("PREP", "place", here, here, ""), Term("DET", "each", here, here, "")] if each else []
        bunch = [Term("DET", "one", here, here, ""), Term("PIECE", BUNCH, here, here, "bouquet")]
        of = Term("OF", "of", here, here, "")
        before = [t.moved("FILL", "") if t.value in {"each", "it"} else t for t in row[:at]]
        return [*before, *bunch, of, term, *there, *row[at + 1 : balloons], *row[end + 1 :]]
    return row


def top_table(row: list[Term]) -> list[Term]:
    """ "over the top table": the table is called so, and nothing goes over its top."""
    out = list(row)
    for at, term in enumerate(row[:-1]):
        if term.type == "LABEL" and term.text.lower() == "over the top" and row[at + 1].type == "TABLE":
            text = f"top {row[at + 1].text}"
            the = Term("DET", "the", term.start, term.end, "the")
            out[at : at + 2] = [term.moved("PREP", "place"), the, replace(row[at + 1], text=text)]
    return out


def on_each(row: list[Term]) -> list[Term]:
    """ "a bunch of five on each table": so many balloons in it, and not so many people at the table."""
    out: list[Term] = []
    for at, term in enumerate(row):
        if term.text.lower() == "per" and at and row[at - 1].type == "PIECE" and _is_next(row, at + 1, "TABLE"):
            out.append(term.moved("DET", "each"))  # "one centrepiece per table"
            continue
        before = [t.type for t in row[max(0, at - 3) : at]]
        if before == ["TABLE", "OF", "NUM"] and term.type == "PIECE" and any(t.value == "guests" for t in row):
            out.append(Term("SEP", ",", term.start, term.start, ""))  # "80 guests tables of 10 centrepieces of 3"
        led = before == ["PIECE", "OF", "NUM"]
        words = term.text.lower().split()
        if led and (term.type, term.value) == ("LABEL", "seats") and words[-1] in placed("seated_at"):
            out += [
                Term("PREP", "place", term.start, term.start, ""),
                Term("DET", "each", term.start, term.start, ""),
                Term("TABLE", "table", term.start, term.end, term.text),
            ]
        else:
            out.append(term)
    return out
