"""What is kept, when and where: numbers that name or date and count nothing, and the hour."""

from grammar.terms import Term
from grammar.word_files import placed, word_list

ORDINAL = frozenset({"st", "nd", "rd", "th"})
DATING = frozenset({"day", "week"})
COUNTED = frozenset({"NUM", "LEN", "TABLE", "PIECE", "SHAPE", "COLOUR", "BALLOON", "LABEL", "PARTS", "TO", "BY"})


def occasion(row: list[Term]) -> list[Term]:
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


def names(row: list[Term]) -> list[Term]:
    """ "turning 40", "12 Garden Lane", "07700 900123", "3 June 2026": numbers that name or date and count nothing."""
    out = list(row)
    for at, term in enumerate(row):
        if term.type == "DUR" and term.value.unit in DATING and at and row[at - 1].text.lower() == "in":
            out[at] = term.moved("FILL", "")  # "in a fortnight" dates as "on saturday" does
        if term.type not in {"NUM", "CLOCK"}:
            continue
        before = at - 1
        while before >= 0 and row[before].value in placed("named_by"):
            before -= 1
        told = before >= 0 and row[before].text.lower() in word_list("before_name")
        after = [t.text.lower() for t in row[at + 1 : at + 4] if t.type in {"WORD", "FILL", "PIECE", "OF"}]
        dated = bool(set(after) & word_list("after_name")) and all(t.type != "NUM" for t in row[at + 1 : at + 2])
        if _is_a_side(row, at):
            continue  # "the room is 30 by 20"
        if told or dated or _is_dialled(row, at) or (at and out[at - 1].type == "WORD" and _goes_on(row, at)):
            out[at] = term.unused()
    return out


def _goes_on(row: list[Term], at: int) -> bool:
    """Whether digits go on with those before them that counted nothing: the rest of a number, a year."""
    return row[at].text.isdigit() and len(row[at].text) > 3 and row[at - 1].end == row[at].start


def _is_a_side(row: list[Term], at: int) -> bool:
    """Whether a number is a side of something: one of "30 by 20"."""
    return any(term.type == "BY" for term in (*row[max(0, at - 1) : at], *row[at + 1 : at + 2]))


def _is_dialled(row: list[Term], at: int) -> bool:
    """Digits as of a telephone: a nought first and four of them or more, or bound to such digits."""
    digits = row[at].text
    behind = (
        row[at + 1].text == "-" and row[at + 2 : at + 3] and _is_dialled(row, at + 2) if at + 1 < len(row) else False
    )
    return bool((digits.isdigit() and len(digits) > 3 and digits[0] == "0") or behind)


def clauses(row: list[Term]) -> list[Term]:
    """Where a clause of its own ends: "..., so ten tables", "at the church hall ten tables"."""
    out = list(row)
    for at, term in enumerate(row):
        if (term.type, term.value, term.text.lower()) == ("LABEL", "deposit", "down"):
            out[at] = term.moved("PREP", "place") if at + 1 < len(row) and row[at + 1].type in {"DET", "NTH"} else term
        if term.type not in {"FILL", "SEP", "PREP"}:
            continue
        hummed = term.text == "," and at and row[at - 1].text.lower() in word_list("hums")
        if hummed and next((t.type for t in reversed(row[:at]) if t.type != "FILL"), "") == "NUM":
            out[at] = term.moved("FILL", "")  # "fourteen um, four foot rounds"
        if term.type == "PREP" and term.text.lower() == "up":
            verb = [t.text.lower() for t in row[max(at - 2, 0) : at] if t.type in {"FILL", "WORD", "MAKE", "PRON"}]
            out[at] = term.moved("FILL", "") if set(verb) & placed("done_up") else term  # "knock me up an arch"
        if term.type != "FILL" or not at:
            continue
        if term.text.lower() == "so":
            out[at] = term.moved("SEP", "so")
        elif term.text.lower() in word_list("occasions"):
            first = at
            while first and out[first - 1].type == "FILL" and out[first - 1].value not in placed("links"):
                first -= 1
            if first and out[first - 1].type == "DET" and not _stands_there(row, first - 1, at):
                first -= 2 if first > 1 and out[first - 2].type == "PREP" else 1
                out[first:at] = [t.moved("FILL", "") for t in out[first:at]]
    return out


def _stands_there(row: list[Term], first: int, at: int) -> bool:
    """Whether an article is of the thing behind the occasion: "a wedding arch", "hung on the church wall"."""
    after = next((t for t in row[at + 1 :] if t.type != "FILL"), None)
    if after is None or after.type != "PIECE":
        return False
    before = row[first - 1] if first else None
    if before is None or before.type == "SEP":
        return row[first].value == "one" and row[at + 1] is after
    onto = before.type == "PREP" and before.text.lower() in placed("onto")
    return onto and any(t.type == "PIECE" for t in row[:first])


def hours(row: list[Term]) -> list[Term]:
    """ "on saturday at seven", "it's at 7": a bare hour behind a day, a date or the party itself."""
    out = list(row)
    for at, term in enumerate(row):
        span = [t.type for t in row[at + 1 : at + 4]]
        dated = at > 0 and row[at - 1].text.lower() in word_list("days") | placed("going_on")
        if dated and term.text.lower() == "from" and span == ["NUM", "TO", "NUM"]:
            ends = at + 4 == len(row) or row[at + 4].type not in COUNTED
            early = all(t.value.value in range(1, 13) for t in row[at + 1 : at + 4 : 2])
            out[at] = term.moved("LABEL", "event_time") if ends and early else term  # "friday from 5 till 10"
        if at < 2 or term.type != "NUM" or row[at - 1].text.lower() != "at" or term.value.value not in range(1, 13):
            continue
        day = row[at - 2].text.lower()
        counts = at + 1 < len(row) and row[at + 1].type in COUNTED
        if not counts and (day in word_list("days") or row[at - 2].value == "it" or day.endswith("th")):
            out[at] = term.moved("CLOCK", (int(term.value.value) * 60, False))
    return out
