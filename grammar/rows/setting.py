"""What stands around the pieces: doors to get through, posts to hang between, tables that one long table is made of."""

from grammar.terms import AMOUNTS, Term
from grammar.word_files import placed

SIDES = frozenset({"NUM", "LEN", "BY", "LABEL", "OF"})
NOUNS = frozenset({"TABLE", "SHAPE"})
STRANGE = frozenset({"FILL", "WORD", "PROP"})
APART = 4  # words between "between" and how far apart the two stand
MADE = 6  # words between a length and the tables that it is made of


def around(row: list[Term]) -> list[Term]:
    """The terms with what is said of the surroundings told from what is said of the pieces."""
    if not any(term.type in {"LEN", "NUM"} for term in row):
        return row
    return _pushed(_made_of(_between_two(_passed(_spaced(_doorway_ahead(row))))))


def led_by_tables(row: list[Term]) -> list[Term]:
    """ "for tables we've got eight 6 ft ones": what is counted behind it is the tables."""
    noun = next((i for i, t in enumerate(row) if t.type in NOUNS), len(row))
    lead = [t for t in row[:noun] if t.type not in {"FILL", "SEP", "DET"}]
    four = len(lead) == 1 and lead[0].type in {"NUM", "PREP"} and lead[0].text.lower() == "for"
    led = noun < len(row) and (four or (not lead and any(t.text.lower() == "for" for t in row[:noun])))
    ones = next((i for i in range(noun + 1, len(row)) if row[i].type in NOUNS | {"PIECE", "ONES", "SEP"}), len(row))
    if not led or ones == len(row) or row[ones].type != "ONES" or not any(t.type == "NUM" for t in row[noun:ones]):
        return row
    out = [t.moved("FILL", "") if t.type in {"NUM", "PREP", "DET"} else t for t in row[:noun]]
    rest = [t.moved("FILL", "") if t.type in {"ONHAND", "PRON"} else t for t in row[noun + 1 : ones]]
    return [*out, row[noun].moved("FILL", ""), *rest, row[ones].moved("TABLE", row[noun].value), *row[ones + 1 :]]


def _doorway_ahead(row: list[Term]) -> list[Term]:
    """ "a doorway 80 in high and 36 wide, a garland up and over": where the garland goes, behind it."""
    piece = next((i for i, t in enumerate(row) if t.type == "PIECE" and str(t.value) in placed("strung")), None)
    if piece is None or not any(term.text.lower() in placed("doorways") for term in row[:piece]):
        return row
    if not any({*term.text.lower().split()} & placed("goes_round") for term in row[piece + 1 :]):
        return row
    end = row[piece].end
    return [*row[: piece + 1], Term("CHOICE", ("place", "doorway"), end, end, ""), *row[piece + 1 :]]


def _spaced(row: list[Term]) -> list[Term]:
    """ "a column every 10 ft": how far they stand from one another, no size of them; how many that are is asked."""
    out = list(row)
    for at in range(len(row) - 1):
        every = row[at].text.lower() == "every" and row[at + 1].type == "LEN"
        noun = next((term.type for term in row[at + 2 : at + 4] if term.type not in {"FILL", "COLOUR"}), "")
        if every and noun not in NOUNS | {"PIECE", "BY", "LABEL"}:
            out[at], out[at + 1] = row[at].unused(), row[at + 1].unused()
            if at and row[at - 1].text.lower() == "one":
                out[at - 1] = row[at - 1].moved("FILL", "")  # "7 columns, one every 10 ft"
            piece = next((i for i in range(at) if row[i].type == "PIECE"), at)
            if piece < at and (not piece or row[piece - 1].type not in {"NUM", "LEN", "COLOUR"}):
                out[piece - 1 : piece] = [t.moved("FILL", "") if t.type == "DET" else t for t in row[piece - 1 : piece]]
                text = f"{row[at].text} {row[at + 1].text}"
                out[at] = Term("VAGUE", None, row[at].start, row[at + 1].end, text)
                out[at + 1] = row[at + 1].moved("FILL", "")
            for i in range(at + 3, len(row) - 1):
                if (row[i - 1].type, row[i].type) == ("DET", "LEN") and row[i + 1].type in STRANGE:
                    out[i] = row[i].unused()  # "down a 60 ft aisle"
    return out


def _pushed(row: list[Term]) -> list[Term]:
    """ "we're pushing three 8 ft tables together": they stand as one."""
    out, verb, tables = list(row), False, False
    for at, term in enumerate(row):
        verb = verb or term.text.lower() in placed("pushing")
        tables = tables or (verb and term.type in NOUNS | {"FOOTER"})
        if tables and term.text.lower() == "together":
            out[at] = term.moved("JOINED", "joined")
    return out


def _passed(row: list[Term]) -> list[Term]:
    """ "through a 30 inch door", "the door is 32 wide": a size that the pieces only have to get through."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() not in placed("passed") or term.value == "":  # set aside already
            continue
        first, last = at, at + 1
        while first and row[first - 1].type in SIDES:
            first -= 1
        lead = first - 1 if first and row[first - 1].type == "DET" else first
        through = lead > 0 and (row[lead - 1].text.lower() in placed("getting_through") or _has_size(row[:lead]))
        gone_through = through and (first < at or _end_of_sizes(row, at + 1) > at + 1)
        told = _tells_size(row, at) if _sized(row[:first], term.text.lower()) else at
        if told > at:
            last = told
        elif gone_through:
            last = _end_of_sizes(row, at + 1)
        else:
            continue
        span = range(first if through else at, last)
        out[span[0] : last] = [row[i].unused() for i in span]
    return out


def _sized(row: list[Term], door: str) -> bool:
    """Whether a piece has its size before the door is spoken of, and none was to go over the door."""
    over = any(door in term.text.lower().split() for term in row)
    return any(term.type == "LEN" for term in row) and not over


def _has_size(row: list[Term]) -> bool:
    """Whether the thing that is spoken of has its size already: "two 7 ft columns, one either side of a 6 ft door"."""
    noun = next((i for i in range(len(row) - 1, -1, -1) if row[i].type in NOUNS | {"PIECE"}), None)
    return noun is not None and any(t.type in {"LEN", "BY"} for t in row[max(0, noun - 3) :])


def _tells_size(row: list[Term], at: int) -> int:
    """The end of "is 32 wide" behind `at`; `at` where no size is told."""
    end = at + 1
    while end < len(row) and row[end].type in {"FILL", "SEP"} and row[end].value in placed("links") | {"which", ","}:
        end += 1
    told = _end_of_sizes(row, end)
    anew = "SEP" in {term.type for term in row[at:end]} and told < len(row) and row[told].type in NOUNS | {"PIECE"}
    return told if at + 1 < end < told and not anew else at  # "by the door, 20 ft garland on the bar"


def _end_of_sizes(row: list[Term], at: int) -> int:
    """The end of a row of sizes, "5 ft wide and 4 ft high", that begins at `at`."""
    while at < len(row) and (row[at].type in SIDES or (row[at].type == "AND" and _is_side(row, at + 1))):
        at += 1
    return at


def _is_side(row: list[Term], at: int) -> bool:
    """Whether "4 ft high" begins at `at`: a size with its label, and not the number of another piece."""
    return [t.type for t in row[at : at + 2]] in (["LEN", "LABEL"], ["NUM", "LABEL"])


def _between_two(row: list[Term]) -> list[Term]:
    """ "a swag between two posts 14 ft apart": how wide it hangs; sizes apart of other things are of no piece."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() != "apart" or not at or row[at - 1].type not in {"LEN", "NUM"}:
            continue
        near = range(max(0, at - APART - 1), at - 1)
        start = next((i for i in near if row[i].text.lower() == "between"), None)
        if start is None:
            out[at - 1], out[at] = row[at - 1].unused(), term.unused()
            continue
        out[at] = term.moved("LABEL", "across")
        for i in range(start + 1, at - 1):
            if row[i].type in {"NUM", "WORD", "PROP", "PIECE"}:
                out[i] = row[i].moved("FILL", "between")
    return out


def _made_of(row: list[Term]) -> list[Term]:
    """ "24 foot made of four 6 foot tables", "four 6 ft tables making 24 ft": tables that stand as one."""
    out = list(row)
    for at in range(len(row) - 1):
        if row[at].type != "NUM" or row[at + 1].type not in {"LEN", "FOOTER"}:
            continue
        noun = at + 2 if row[at + 2 : at + 3] and row[at + 2].type in NOUNS else at + 1
        run = row[at].value.value * row[at + 1].value.value
        before = next((i for i in range(at - 1, max(at - MADE, 0) - 1, -1) if row[i].type in AMOUNTS), None)
        after = next((i for i in range(noun + 1, min(noun + MADE, len(row))) if row[i].type in AMOUNTS), None)
        if before is not None and _is_run(row, before, run, at + 1) and _joins(row[before + 1 : at], "made_of"):
            first = before - 1 if before and row[before - 1].type == "DET" else before
            out[first:at] = [term.moved("FILL", "of") for term in row[first:at]]
        elif after is not None and _is_run(row, after, run, at + 1) and _sums(row, noun + 1, after):
            end = (
                after + 2 if row[after + 1 : after + 2] and row[after + 1].text.lower() in placed("runs") else after + 1
            )
            out[noun + 1 : end] = [term.moved("FILL", "of") for term in row[noun + 1 : end]]
        else:
            continue
        return [*out[: noun + 1], Term("JOINED", "joined", row[noun].end, row[noun].end, ""), *out[noun + 1 :]]
    return row


def _sums(row: list[Term], start: int, at: int) -> bool:
    """Whether tables before `start` stand together and are as long as is said at `at`: "in a row, 30 ft in all"."""
    said = " ".join(term.text.lower() for term in row[start:at])
    in_line = any(words in said for words in ("in a row", "in a line", "in one line", "end to end"))
    return in_line or _joins(row[start:at], "making")


def _is_run(row: list[Term], at: int, run: object, each: int) -> bool:
    """Whether the length at `at` is that of all tables together."""
    term = row[at]
    same = term.type == "LEN" and term.value.value == run and term.value.unit == row[each].value.unit
    return bool(same)


def _joins(between: list[Term], place: str) -> bool:
    """Whether the words between a run and its tables say that the one is made of the other, and name no other piece."""
    said = {word for term in between for word in term.text.lower().split()}
    return bool(said & placed(place)) and all(term.type not in {"PIECE", "COLOUR", "SEP"} for term in between)
