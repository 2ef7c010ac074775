"""Small words between terms: which of them bind two terms together, and which carry nothing.

The grammar looks one term ahead; what needs a longer look is settled here, so that it can stay total.
"""

from grammar.terms import AMOUNTS, SHARES, SIZED, Term
from grammar.word_files import load_words, placed

THINGS = frozenset({"PIECE", "TABLE", "ONES"})
LEADING = frozenset({"DET", "PREP"})
OPENING = frozenset({"SEP", "FLAG", "MAKE", "CORR", "NEG"})  # before "only the arch"
LINKING = frozenset({"FILL", "OF", "DET", "PREP", "ONHAND", "PRON"})
LISTED = 3  # sizes or numbers in a row


def alone(row: list[Term]) -> list[Term]:
    """ "everything but the arch" is except it; "greenery on the arch only", "just the garland" are of it alone."""
    out, alone = list(row), placed("alone")
    for at, term in enumerate(row):
        if term.type != "FILL" or (term.text.lower() not in alone and term.text.lower() != "but"):
            continue
        before = next((t for t in reversed(row[:at]) if t.type != "FILL"), None)
        after = [t for t in row[at + 1 : at + 9] if t.type != "FILL"][:4]
        named = bool(after) and (after[0].type in THINGS or (after[0].type in LEADING and _names(after[1:])))
        if term.text.lower() == "but":
            whole = before is not None and (before.type, before.value) in {("PRON", "all"), ("ALL", "all")}
            out[at] = term.moved("PREP", "except") if whole and named else term
            continue
        opens = before is None or before.type in OPENING
        ahead = opens and named and after[0].value in {"the", "place", "for"}
        behind = before is not None and before.type in THINGS and (not after or after[0].type in {"SEP", "FLAG"})
        out[at] = term.moved("SOLE") if ahead or behind else term
    return out


def _names(terms: list[Term]) -> bool:
    """Whether a thing is named next, or behind an article."""
    led = next((t for t in terms if t.type not in {"DET", "LEN", "NUM"}), None)
    return led is not None and led.type in THINGS | {"FOOTER", "SHAPE"}


def props(row: list[Term]) -> list[Term]:
    """ "72 gold chairs": the number and the colour are those of a thing that is not worked out."""
    out: list[Term] = []
    for at, term in enumerate(row):
        made_of = at and row[at - 1].text.lower() in placed("no_balloons")
        beside = bool(made_of) and any(t.type in THINGS for t in row[:at])  # "six hoops and a flower wall"
        bare = row[at + 1 : at + 2] and row[at + 1].type not in {"LEN", "NUM", "BY"}
        beside = beside or bool(made_of and bare and any(t.type == "PIECE" for t in row[at + 1 :]))
        if term.type == "PIECE" and beside and row[at - 1].type == "PROP":
            out[-1] = Term("WORD", term.value, out[-1].start, term.end, f"{out[-1].text} {term.text}")
            continue
        if term.type == "PROP":
            while out and (
                out[-1].type in {"COLOUR", "NUM", "PROP", "WORD"} or out[-1].value == "one" or _adjective(out[-1])
            ):
                if out[-1].type == "DET":
                    out.pop()
                    break
                last = out.pop()
                out_term = last.unused()
                term = Term("WORD", term.value, out_term.start, term.end, f"{last.text} {term.text}")
                if last.type == "NUM":
                    break
            term = term.moved("WORD")
        out.append(term)
    return out


def _adjective(term: Term) -> bool:
    """Filler that belongs to a thing that is not worked out: "mini" of "mini cupcakes"."""
    return (
        term.type == "FILL"
        and isinstance(term.value, str)
        and term.value not in placed("links") | {"and", "or", "with", ""}
    )


def between(row: list[Term]) -> list[Term]:
    """ "between 3 and 4 inches" is a span."""
    out: list[Term] = []
    for at, term in enumerate(row):
        span = term.type == "AND" and len(out) > 1 and out[-1].type in AMOUNTS and at + 1 < len(row)
        if span and row[at + 1].type in AMOUNTS and "between" in f"{out[-2].text} {out[-2].value}".lower():
            term = term.moved("TO", "to")
        out.append(term)
    return out


def drop_links(row: list[Term]) -> list[Term]:
    """Link words between a label and its amount, a share and its colour, an amount and "of"."""
    out: list[Term] = []
    for at, term in enumerate(row):
        if term.type in LINKING and _linked(term):
            nxt = _next(row, at + 1)
            while nxt < len(row) and row[nxt].type == "PREP" and row[nxt].text.lower() in placed("links"):
                nxt = _next(row, nxt + 1)  # "doors are at one"
            before = out[-1].type if out else ""
            after = row[nxt].type if nxt < len(row) else ""
            bound_before = len(out) > 2 and out[-3].type == "LABEL"
            taken = len(out) > 1 and out[-2].type in AMOUNTS and not bound_before
            bound = (
                (before == "LABEL" and after in AMOUNTS and not taken)
                or (before in AMOUNTS and after == "LABEL" and term.type not in {"PREP", "DET"})
                or (before in SHARES | {"PARTS", "REST", "ALL"} and after == "COLOUR")
                or (before in SHARES and term.text.lower() == "of it" and after == "COLOUR")
                or (before == "COLOUR" and after in SHARES)
            )
            if bound:
                continue
        out.append(term)
    return out


def _linked(term: Term) -> bool:
    """Whether a word of those types may stand between two terms that belong together."""
    text = term.text.lower()
    return term.type == "OF" or term.value == "one" or text == "of it" or text in placed("links")


def _next(row: list[Term], at: int) -> int:
    """The index of the next term that is no link word, or len(row)."""
    while at < len(row) and row[at].type in {"FILL", "OF"} and row[at].value in placed("links"):
        at += 1
    return at


def gaps(row: list[Term]) -> list[Term]:
    """Filler that is no link, between a label and an amount, keeps them apart."""
    out: list[Term] = []
    for at, term in enumerate(row):
        anew = out and out[-1].type == "SEP" and term.text.lower() in placed("rather")
        if anew and at + 1 < len(row) and row[at + 1].type == "CHOICE":
            out.append(term.moved("CORR", "corr"))  # "no helium, just air"
            continue
        if anew and at + 1 < len(row) and row[at + 1].type == "COLOUR":
            out.append(term.moved("GAP"))  # "no gold, just ivory"
            continue
        if term.type == "FILL" and term.text.lower() == "in" and _size_behind(row, at + 1):
            out.append(term.moved("GAP", "in"))  # "make it 8 in 11 inch balloons"
            continue
        if term.type == "FILL" and out and out[-1].type in SHARES and term.text.lower() in placed("covered"):
            out.append(term.moved("GAP"))  # "half covered in blush"
            continue
        if term.text.lower() == "again" and out and out[-1].type == "LABEL":
            out.append(term.moved("GAP"))  # "half as long again"
            continue
        if term.type == "FILL" and out and at + 1 < len(row):
            pair = {out[-1].type, row[at + 1].type}
            anew = (
                row[at + 1].type == "COLOUR" and pair <= {"COLOUR", "SEP"} and term.text.lower() in placed("do_instead")
            )
            binds = anew or ("LABEL" in pair and pair & AMOUNTS) or ("COLOUR" in pair and pair & SHARES)
            apart = term.value not in placed("links") and binds
            out.append(term.moved("GAP") if apart else term)
        else:
            if out and _unlike(out[-1], term):
                out.append(Term("GAP", None, term.start, term.start, ""))
            out.append(term)
    return out


def _size_behind(row: list[Term], at: int) -> bool:
    """Whether a size of balloons stands there: one in inches that no label or thing follows, or "11s"."""
    if at < len(row) and row[at].type == "NOMINALS":
        return True
    after = row[at + 1].type if at + 1 < len(row) else ""
    return at < len(row) and row[at].type == "LEN" and row[at].value.unit == "in" and after in {"", "SEP", "BALLOON"}


def _unlike(first: Term, second: Term) -> bool:
    """Whether a label and an amount beside it do not go together: guests and an hour."""
    if "LABEL" not in {first.type, second.type}:
        return False
    label, amount = (first, second) if first.type == "LABEL" else (second, first)
    if first.type == "NUM" and label.value in {"event_time", "setup_from"}:
        return True  # "sweet sixteen party": an hour stands after its word, or has "pm"
    near = load_words("speech.toml")["near"].get(f"LABEL.{label.value}")
    return amount.type in AMOUNTS and near is not None and amount.type not in near


def bind(row: list[Term]) -> list[Term]:
    """BY and TO stay between amounts, commas between bare sizes become LIST, a share after its colour is marked."""
    kept = [t for t in row if t.type != "FILL"]
    out: list[Term] = []
    for at, term in enumerate(kept):
        before = out[-1].type if out else ""
        after = kept[at + 1].type if at + 1 < len(kept) else ""
        if term.type == "PREP" and term.text.lower() == "by" and before == "LABEL" and after in SIZED:
            continue  # "10 ft wide by 8 ft high"
        if term.type == "BY" and not out and after == "LEN":
            term = term.moved("LABEL", "width")
        if term.type in {"BY", "TO"}:
            pair = before in SIZED and after in SIZED if term.type == "BY" else before in AMOUNTS and after in AMOUNTS
            if not pair or (term.type == "TO" and not _same_sort(before, after)):
                if term.value == "and" or term.value == "or":
                    out.append(term.moved("AND"))
                continue
        elif term.type in {"SEP", "AND"} and term.value not in {".", ";", "?"} and before in SIZED and after in SIZED:
            if _a_list(kept, at):
                term = term.moved("LIST")
        elif term.type in SHARES and before == "COLOUR":
            shared = len(out) > 1 and out[-2].type in SHARES | {"ALL", "REST", "PARTS"}  # "25 % white, two thirds"
            if after == "COLOUR":
                shared = shared or not _each_behind(kept, at)
                if shared and len(out) > 1 and out[-2].type in SHARES:
                    out.append(term)  # "60 % navy 40 % gold"
                    continue
            rather = Term("GAP" if shared or _of_the_piece(row, term) else "SHARED", None, term.end, term.end, "")
            out += [rather, term] if rather.type == "GAP" else [term, rather]
            continue
        out.append(term)
    return out


def _a_list(row: list[Term], at: int) -> bool:
    """Whether a comma at `at` stands in a row of bare sizes: "5, 11 and 17 inch", "2 m, 3 m and 4 m"."""
    first, last = at - 1, at + 1
    while first > 1 and row[first - 1].type in {"SEP", "AND", "LIST"} and row[first - 2].type in SIZED:
        first -= 2
    while last + 2 < len(row) and row[last + 1].type in {"SEP", "AND"} and row[last + 2].type in SIZED:
        if row[last].type == "LEN" and row[last + 2].value.unit != row[last].value.unit:
            break  # "11 and 5 inch, 10 ft garland"
        last += 2
    following = row[last + 1].type if last + 1 < len(row) else ""
    items = row[first : last + 1 : 2]
    units = {term.value.unit for term in items}
    counted = items[-1].type == "LEN" and all(term.type == "NUM" for term in items[:-1])
    if len(items) >= LISTED and (counted or (len(units) == 1 and all(term.type == "LEN" for term in items))):
        return True
    if following in {"LABEL", "TABLE", "SHAPE"}:
        return False  # "six tables at 48 in, 24 in wide"
    here = row[at - 1]
    return items[-1].type == "LEN" and items[-1].value.unit == "in" and (here.type == "NUM" or here.value.unit == "in")


def _each_behind(row: list[Term], at: int) -> bool:
    """Whether shares and colours take turns from the share at `at` on, and end with a share: "navy 60 % gold 40 %"."""
    while at + 2 < len(row) and row[at + 1].type == "COLOUR" and row[at + 2].type in SHARES | {"REST"}:
        at += 2
    return at + 1 == len(row) or row[at + 1].type != "COLOUR"


def _of_the_piece(row: list[Term], share: Term) -> bool:
    """Whether what follows a share says that it is of the piece: "navy and white two thirds covered"."""
    at = next(i for i, term in enumerate(row) if term is share)
    return at + 1 < len(row) and row[at + 1].text.lower() in placed("covered")


def _same_sort(before: str, after: str) -> bool:
    return before == after or {before, after} <= {"NUM", "LEN", "CLOCK"} or (before == "NUM")
