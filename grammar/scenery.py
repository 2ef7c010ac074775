"""What is told of a scene beside the pieces: whose birthday it is, what stands about, what was done last time."""

from grammar.here_and_there import here_and_there
from grammar.last_time import last_time
from grammar.terms import AMOUNTS, Amount, Term
from grammar.word_files import placed, word_list

NOUNS = frozenset({"TABLE", "PIECE", "SHAPE"})
COUNTED = NOUNS | {"BALLOON", "LABEL", "FOOTER", "NUM", "LEN", "ROWS", "BY", "TO"}
ORDINAL = frozenset({"st", "nd", "rd", "th"})
BEFORE_SIZES = 3  # terms from "some" to "3 footers"
INCHES = 12
MOST_GIANT = 48  # inches
LEAST_GIANT = 16  # inches; "two 36s" beside a piece are balloons, "two 6s" may be tables


def scenery(row: list[Term]) -> list[Term]:
    """The terms with numbers and words of the scene made filler, or words that are named as not used."""
    types = {term.type for term in row}
    row = _occasion(row)
    if "NUM" in types:
        row = here_and_there(_digits_to_stand(row))
    if "PROP" in types:
        row = _letters(row)
    if "COLOUR" in types:
        row = _greens(_hints(_cleared(row)))
    row = _ring_round(row)
    if "PIECE" in types:
        if types & {"TABLE", "SHAPE", "FOOTER"}:
            row = _bearing(row)
        row = _at_a_side(_on_each(row))
    if types & {"FOOTER", "NOMINALS", "LEN"}:
        row = _giants(row)
    if types & {"MONEY", "NUM", "SAME", "LEN", "PRON"}:
        row = last_time(row)
    return row


def _word(term: Term) -> Term:
    """A term that is named as not used."""
    return term.moved("WORD", term.text)


def _occasion(row: list[Term]) -> list[Term]:
    """ "my nan's 90th", "it's a 50th", "his 1st birthday": an ordinal that tells what is kept, no date."""
    out = list(row)
    for at in range(1, len(row) - 1):
        number, end = row[at], row[at + 1]
        if end.text.lower() not in ORDINAL or not number.text.isdigit() or end.start != number.end:
            continue
        after = row[at + 2].text.lower() if at + 2 < len(row) else ""
        whose = row[at - 1].text.lower()
        kept = after in placed("kept")
        alone = whose in placed("whose") or whose.endswith(("'s", "s'")) or row[at - 1].type == "FILL"
        if kept or (alone and whose not in placed("dated") and after not in word_list("after_name") | {"of"}):
            out[at], out[at + 1] = number.moved("FILL", ""), end.moved("FILL", "")
    return out


def _digits_to_stand(row: list[Term]) -> list[Term]:
    """ "a number 4 on top", "a big 5", "the number 30": digits that are put up, of which none is counted."""
    out = list(row)
    kinds = any(term.type == "PIECE" for term in row)
    for at, term in enumerate(row):
        if term.type != "NUM" or at < 1 or (at + 1 < len(row) and row[at + 1].type in COUNTED):
            continue
        first = at
        while first and row[first - 1].type in {"FILL", "WORD", "COLOUR", "PROP"} and at - first <= BEFORE_SIZES:
            first -= 1
            if row[first].text.lower() in placed("digit"):
                break
        said = {row[i].text.lower() for i in range(first, at)}
        named = row[first].text.lower() in placed("digit") and first < at
        told = any(t.text.lower() in placed("digit") for t in row[:at]) or (kinds and _on_top(row, at))
        spelt = told and _is_article(row, at - 1)
        if named or spelt or (_is_article(row, first - 1) and said & placed("grand")):
            out[first : at + 1] = [_word(t) for t in row[first : at + 1]]
    return out


def _on_top(row: list[Term], at: int) -> bool:
    """Whether "a 4 and a 0 on top" goes on from a number: only digits are put on something one by one."""
    after = at + 1
    while [t.type for t in row[after : after + 3]] == ["AND", "DET", "NUM"]:
        after += 3
    return row[at].text.isdigit() and after < len(row) and row[after].type == "PREP"


def _is_article(row: list[Term], at: int) -> bool:
    return at >= 0 and (row[at].type, row[at].value) == ("DET", "one")


def _letters(row: list[Term]) -> list[Term]:
    """ "the letters L and M": letters that are put up."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() not in placed("letters"):
            continue
        end = at + 1
        while end < len(row) and ((len(row[end].text) == 1 and row[end].text.isalpha()) or row[end].type == "AND"):
            end += 1
        end -= row[end - 1].type == "AND"
        out[at + 1 : end] = [_word(t) for t in row[at + 1 : end]]
    return out


def _cleared(row: list[Term]) -> list[Term]:
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
        out[at] = _word(term)
        by = next((i for i in range(at + 1, min(at + 6, len(row))) if row[i].text.lower() == "by"), 0)
        if by and by + 1 < len(row) and row[by + 1].type in AMOUNTS:
            out[at : by + 2] = [_word(t) for t in row[at : by + 2]]
    return out


def _hints(row: list[Term]) -> list[Term]:
    """ "a bit of black", "lots of green", "a few gold ones": how much of a colour, which no number tells."""
    out = list(row)
    for at, term in enumerate(row):
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
        out[at] = _word(term)
        if ones:
            out[after + 1] = row[after + 1].moved("FILL", "")
    return out


def _greens(row: list[Term]) -> list[Term]:
    """ "with greens?": leaves, unless it stands beside another colour."""
    out = list(row)
    for at, term in enumerate(row):
        near = [t.type for t in (*row[max(0, at - 2) : at], *row[at + 1 : at + 3])]
        many = term.type == "COLOUR" and term.value in placed("leaves") and term.text.lower() == f"{term.value}s"
        if many and "COLOUR" not in near:
            out[at] = term.moved("FLAG", ("foliage", True))
    return out


def _ring_round(row: list[Term]) -> list[Term]:
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
            out[at] = _word(term)
    return out


def _giants(row: list[Term]) -> list[Term]:
    """ "a garland with some 3 footers in it": big balloons by their size, where no table is spoken of."""
    piece = next((i for i, t in enumerate(row) if t.type == "PIECE"), None)
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
        some = [first - 1] if row[first - 1].type in {"NUM", "VAGUE"} else []
        among = any(t.text.lower() in placed("among") for t in (*lead, *row[at + 1 : at + 3]))
        if among or not lead:
            inches = INCHES if term.type == "FOOTER" or term.value.unit == "ft" else 1
            out[at] = term.moved("NOMINALS", Amount(term.value.value * inches))
            for i in some:
                out[i] = _word(row[i])
    return out


def _is_giant(row: list[Term], at: int) -> bool:
    """Whether a size is that of "three 36 inch giants" or of "two 3 ft balloons"."""
    after = row[at + 1] if at + 1 < len(row) else None
    inches = row[at].value.value * {"in": 1, "ft": INCHES}.get(row[at].value.unit, 0)
    big = LEAST_GIANT <= inches <= MOST_GIANT and at > 0 and row[at - 1].type in {"NUM", "VAGUE"}
    named = after is not None and (after.type in {"ONES", "BALLOON"} or after.text.lower() in placed("giants"))
    return big and named


def _bearing(row: list[Term]) -> list[Term]:
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
        bears = wanted and end < len(row) and row[end].type == "PIECE"
        noun = at + 1 < len(row) and row[at + 1].type in {"TABLE", "SHAPE"}
        if term.type in {"TABLE", "SHAPE", "FOOTER"} and not noun and (bears or only):
            out.append(Term("BEARS", None, term.end, term.end, ""))
    return out


def _at_a_side(row: list[Term]) -> list[Term]:
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


def _is_next(row: list[Term], at: int, kind: str) -> bool:
    """Whether a term of a type stands at `at`, or behind an article."""
    at += at < len(row) and row[at].type == "DET"
    return at < len(row) and row[at].type == kind


def _on_each(row: list[Term]) -> list[Term]:
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
