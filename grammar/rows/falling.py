"""What comes down at the ends of a garland: "5 ft, and it drops 3 ft each side", "let it trail down one end 2 m"."""

from grammar.terms import Amount, Term
from grammar.word_files import placed

FALLS = {"one": 1, "both": 2}
LEADS = 4  # terms that may stand before the verb, the size or the side
BREAKS = frozenset({"SEP", "AND", "COLOUR", "TABLE", "SHAPE", "NUM", "MONEY", "BY", "TO", "FOOTER", "ROWS"})
SIDES = frozenset({"length", "width", "height", "across", "along", "depth"})
NOUNS = frozenset({"TABLE", "SHAPE"})


def falling(row: list[Term]) -> list[Term]:
    """The terms with each fall at the sides made one term, whose value is its size and at how many sides it is.

    Only where no table is what the turn is about: a runner has falls of its own.
    """
    if not any(term.type == "LEN" for term in row):
        return row
    row = [term.moved("FILL", "") if _goes_down_a_side(row, at) else term for at, term in enumerate(row)]
    words = {word for term in row for word in term.text.lower().split()}
    if words.isdisjoint(placed("sides")) and words.isdisjoint(placed("handed")):
        return row
    out: list[Term] = []
    at = 0
    while at < len(row):
        found = _fall(row, at, out) if _of_a_strand(row, at) else None
        if found is None:
            out.append(row[at])
            at += 1
            continue
        if out and out[-1].type == "NUM" and out[-1].text.lower() in placed("to_do"):
            out[-1] = out[-1].moved("FILL", "")  # "I want it to drop" says no two
        term, at = found
        out.append(term)
    return out


def _goes_down_a_side(row: list[Term], at: int) -> bool:
    """ "can we take it down the sides": it hangs there, and is not taken down."""
    after = [t.text.lower() for t in row[at + 1 : at + 3]]
    return row[at].type == "FLAG" and row[at].text.lower().endswith("down") and bool({*after} & placed("sides"))


def _of_a_strand(row: list[Term], at: int) -> bool:
    """Whether what was named last is strung along something; nothing named leaves it to what is in hand."""
    last = next((t for t in reversed(row[:at]) if t.type == "PIECE" and not _is_verb(t)), None)
    if last is not None:
        return str(last.value) in placed("strung")
    return not any(term.type in NOUNS for term in row)


def _is_verb(term: Term) -> bool:
    return bool({*term.text.lower().split()} & placed("falling"))


def _fall(row: list[Term], at: int, out: list[Term]) -> tuple[Term, int] | None:
    """A fall that begins at `at`, and the index behind it."""
    size = side = -1
    sides = 0
    last = next((t for t in reversed(out) if t.type not in {"AND", "SEP", "FILL", "DET"}), None)
    goes_on = last is not None and last.type == "FALL"  # "2 ft on the left and 3 on the right"
    verb = at if goes_on else -1
    end = at
    while end < len(row) and end - at < 2 * LEADS:
        term = row[end]
        found, many = _side(row, end)
        if found > end and side < 0:
            if verb < 0 and (_is_verb(term) or "down" in " ".join(t.text.lower() for t in row[end:found]).split()):
                verb = end
            side, sides, end = end, many, found
        elif term.type == "LEN" or (goes_on and term.type == "NUM"):
            if size >= 0 or (end + 1 < len(row) and row[end + 1].type == "LABEL" and row[end + 1].value in SIDES):
                return None
            size, end = end, end + 1
        elif verb < 0 and (_is_verb(term) or term.text.lower() == "down"):
            verb, end = end, end + 1
        elif _breaks(term):
            break
        else:
            end += 1
        if min(verb, size, side) >= 0:
            break
    if min(verb, size, side) != at:
        return None
    if size < verb and end < len(row) and row[end].type == "LEN":
        return None  # "garland 6 ft, comes down each side 3 ft"
    text = " ".join(t.text for t in row[at:end] if t.text)
    amount = row[size].value
    if not amount.unit and last is not None:
        amount = Amount(amount.value, last.value[0].unit)
    return Term("FALL", (amount, sides), row[at].start, row[end - 1].end, text), end


def _breaks(term: Term) -> bool:
    """Whether what was said of a fall ends before such a term."""
    if {*term.text.lower().split()} & placed("settling"):
        return True
    return term.type in BREAKS or (term.type == "PIECE" and not _is_verb(term))


def _side(row: list[Term], at: int) -> tuple[int, int]:
    """The index behind "down each side", "on the left", and how many sides that is; `at` where none begins there."""
    words: list[str] = []
    best, many = at, 0
    for end in range(at, min(at + LEADS, len(row))):
        words += row[end].text.lower().replace("-", " ").split()
        if row[end].type == "SEP":
            break
        found = _sides(words)
        if found:
            best, many = end + 1, found
    return best, many


def _sides(words: list[str]) -> int:
    """How many sides the words name, from the first to the last of them."""
    rest = words[:-1] if words[-1:] == ["of"] else words
    while rest and rest[0] in placed("to_a_side") | placed("falling"):
        rest = rest[1:]
    led = len(rest) < len(words)
    if rest and rest[-1] in placed("sides"):
        if rest[:-1] and set(rest[:-1]) <= placed("two_sides"):
            return FALLS["both"]
        if rest[:-1] and set(rest[:-1]) <= placed("one_side"):
            return FALLS["one"]
    return FALLS["one"] if led and len(rest) == 1 and rest[0] in placed("handed") else 0
