"""What is said around a colour: how much of it no number tells, where on a piece it goes, what is no colour."""

from grammar.terms import AMOUNTS, Term
from grammar.word_files import placed

SEVERAL = 3
GOING = frozenset({"COLOUR", "NOMINALS", "FLAG"})
NEAR = 4  # terms from "leave" to "gap"


def cleared(row: list[Term]) -> list[Term]:
    """ "it has to clear the door by a foot": what an arch gets over is no colour."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() not in placed("clearing") or term.type not in {"COLOUR", "WORD", "FILL"}:
            continue
        after = row[at + 1] if at + 1 < len(row) else None
        high = after is not None and after.type == "LEN" and after.value.unit != "in"  # "the arch must clear 7 ft"
        over = high or (after is not None and (after.type in {"PRON", "DET"} or after.text.lower() == "by"))
        if not over and not (at and row[at - 1].text.lower() == "to"):
            continue
        out[at] = term.unused()
        by = next((i for i in range(at + 1, min(at + 6, len(row))) if row[i].text.lower() == "by"), 0)
        if by and by + 1 < len(row) and row[by + 1].type in AMOUNTS:
            out[at : by + 2] = [t.unused() for t in row[at : by + 2]]
    return out


def left_open(row: list[Term]) -> list[Term]:
    """ "leave a 3 ft gap": a part without balloons is no size of the piece."""
    out = list(row)
    for at, term in enumerate(row):
        if term.type != "LABEL" or term.text.lower().split()[0] not in placed("gaps"):
            continue
        led = [i for i in range(max(at - NEAR, 0), at) if row[i].text.lower() in placed("leaving")]
        sized = [i for i in range(max(at - 1, 0), min(at + 2, len(row))) if row[i].type in AMOUNTS]
        if led and sized:
            for i in range(led[-1], max(sized[-1], at) + 1):
                out[i] = row[i].unused() if row[i].type != "DET" else row[i].moved("FILL", "")
    return out


def hints(row: list[Term]) -> list[Term]:
    """ "a bit of black", "lots of green", "a few gold ones": how much of a colour, which no number tells."""
    out = list(row)
    strung = any(term.type == "PIECE" for term in row) and all(term.type not in {"TABLE", "SHAPE"} for term in row)
    for at, term in enumerate(row):
        if strung and term.type == "VAGUE" and at + 1 < len(row) and _of_balloons(row[at + 1]):
            out[at] = term.unused()  # "5s and a few 17s"
            continue
        said = {*term.text.lower().split()} & placed("hints")
        after = at + 1
        while after < len(row) and (row[after].type in {"OF", "DET"} or row[after].text.lower() in placed("little")):
            after += 1
        coloured = after < len(row) and row[after].type == "COLOUR"
        if not (coloured and said) or term.type not in {"FILL", "VAGUE", "WORD", "NUM"}:
            continue
        ones = row[after + 1 : after + 2] and row[after + 1].type in {"ONES", "BALLOON"}
        if term.type in {"VAGUE", "NUM"} and (not ones or any(t.type in {"TABLE", "SHAPE"} for t in row)):
            continue
        out[at] = term.unused()
        if ones:
            out[after + 1] = row[after + 1].moved("FILL", "")
    return out


def put_in(row: list[Term]) -> list[Term]:
    """ "throw some gold in": one more colour."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() not in placed("puts_in") or term.type not in {"WORD", "FILL", "PREP"}:
            continue
        end = at + 1
        while end < len(row) and row[end].type in {"FILL", "DET", "COLOUR", "AND"} and row[end].text.lower() != "in":
            end += 1
        last = end < len(row) and row[end].text.lower() == "in"
        ends = end + 1 == len(row) or (end + 1 < len(row) and row[end + 1].type in {"SEP", "AND"})
        if last and ends and any(t.type == "COLOUR" for t in row[at + 1 : end]):
            out[at], out[end] = term.moved("ADD", "add"), row[end].moved("FILL", "")
    return out


def _of_balloons(term: Term) -> bool:
    """Whether a size is one of balloons: "17s", "17 inch"."""
    return term.type == "NOMINALS" or (term.type == "LEN" and term.value.unit == "in")


def greens(row: list[Term]) -> list[Term]:
    """ "with greens?": leaves, unless it stands beside another colour."""
    out = list(row)
    for at, term in enumerate(row):
        near = [t.type for t in (*row[max(0, at - 2) : at], *row[at + 1 : at + 3])]
        many = term.type == "COLOUR" and term.value in placed("leaves") and term.text.lower() == f"{term.value}s"
        leaves = term.type == "COLOUR" and term.value in placed("leaves") and "FLAG" in near[-2:]
        if leaves and row[at + 1].type == "FLAG":
            out[at] = term.moved("FILL", "")  # "with fern leaves"
        elif many and "COLOUR" not in near:
            out[at] = term.moved("FLAG", ("foliage", True))
    return out


def colours_counted(row: list[Term]) -> list[Term]:
    """ "in 2 colours, navy and gold": a number of colours is none of pieces."""
    out = list(row)
    for at in range(len(row) - 1):
        if row[at].type == "NUM" and row[at + 1].type == "FILL" and row[at + 1].text.lower() in placed("colours"):
            out[at] = row[at].moved("FILL", "of")
    return out


def placed_colours(row: list[Term]) -> list[Term]:
    """ "red on top": where on a piece a colour goes is not worked out."""
    if not any(term.text.lower() in placed("spots") for term in row):
        return row
    out = list(row)
    for at, term in enumerate(row):
        end = at + 1
        while end < len(row) and row[end].type in {"FILL", "PREP", "DET"} and end - at <= SEVERAL:
            end += 1
        run = row[at + 1 : end] if term.type == "COLOUR" else []
        words = " ".join(t.text.lower() for t in run).split()
        spots = [i for i, word in enumerate(words) if word in placed("spots")]
        if spots and words[0] in {"on", "at", "near"} and "of" not in words:
            out[at + 1 : end] = [t.unused() for t in run]
    return out


def gone(row: list[Term]) -> list[Term]:
    """ "peach is out", "the gold's gone", "the gold has to go": it is taken away."""
    if not any(term.type in GOING for term in row):
        return row
    row = [t.moved("REMOVE", "remove") if _has_no_more(row, at) else t for at, t in enumerate(row)]
    out: list[Term] = []
    after = -1  # where such an "out" stands, which keeps the colours behind it apart
    for at, term in enumerate(row):
        end = at + 2 if at + 1 < len(row) and row[at + 1].text.lower() in placed("is") else at + 1
        must = _past(row, at + 1, placed("must"))
        goes = must > at + 1 and row[must : must + 1] and row[must].text.lower() == "go"
        no = [t.text.lower() for t in row[end : end + 2]] == ["a", "no"]
        end = must if goes else end + no
        gone = term.type in GOING and end < len(row) and (goes or no or row[end].text.lower() in placed("gone"))
        if gone and (end + 1 == len(row) or row[end + 1].type in {"SEP", "AND"}):
            out.append(Term("REMOVE", "remove", term.start, term.start, ""))
            after = end
        out.append(term.moved("GAP") if at == after else term)
    return out


def _past(row: list[Term], at: int, words: frozenset[str] | set[str]) -> int:
    """The next term from `at` on that is none of the words."""
    while at < len(row) and row[at].text.lower() in words:
        at += 1
    return at


def _has_no_more(row: list[Term], at: int) -> bool:
    """Whether "out of" says that a colour cannot be had: "they're out of navy", "sold out of the gold"."""
    led = row[at - 1].text.lower().replace("’", "'") if at else ""
    lacks = led in placed("is") | placed("ran") or led.endswith(("'re", "'s"))
    after = row[at + 1 + (at + 1 < len(row) and row[at + 1].type == "DET") :]
    return row[at].text.lower() == "out of" and lacks and bool(after) and after[0].type == "COLOUR"
