"""Sizes and shapes said the long way round: "as wide as it's tall, 8 feet", "shorten it by 2 ft", "round it to 500"."""

from grammar.terms import AMOUNTS, Term
from grammar.word_files import load_words, placed

BOTH = frozenset({"width", "height", "length", "across"})  # labels of two sides that are alike
WITHIN = 6  # terms from an article or number to its noun


def rounded(row: list[Term]) -> list[Term]:
    """ "round it to 500", "round up": a verb and no shape; the number is told as not used."""
    out = list(row)
    for at in range(len(row) - 1):
        leads = at == 0 or row[at - 1].type not in {"NUM", "LEN", "DET", "OF", "PREP", "COLOUR", "SHAPE", "PIECE"}
        if (
            row[at].text.lower() != "round"
            or not leads
            or row[at + 1].text.lower().split(" ")[0] not in placed("rounding")
        ):
            continue
        out[at] = row[at].moved("FILL", "of")
        end = at + 1
        while end < len(row) and row[end].type not in {"SEP", "AND", "PIECE", "TABLE"}:
            out[end] = row[end].unused() if row[end].type in AMOUNTS else row[end].moved("FILL", "of")
            end += 1
    return out


def by_so_much(row: list[Term]) -> list[Term]:
    """ "shorten it by 2 ft" as "2 ft shorter"."""
    verbs = load_words("places.toml")["by_so_much"]
    for at in range(len(row) - 3):
        verb = verbs.get(row[at].text.lower())
        by = at + 2 if row[at + 1].type == "PRON" else at + 3
        named = row[at + 1].type == "PRON" or (row[at + 1].type, row[at + 2].type) == ("DET", "PIECE")
        if verb is None or not named or by + 1 >= len(row) or row[by].text.lower() != "by" or row[by + 1].type != "LEN":
            continue
        fact, said = verb.split()
        step = Term("CMP", fact, row[by + 1].end, row[by + 1].end, said)
        between = [term.moved("FILL", "of") if term.type == "PRON" else term for term in row[at + 1 : by]]
        verbless = row[at].moved("FILL", "of")
        return [*row[:at], verbless, *between, row[by].moved("FILL", "of"), row[by + 1], step, *row[by + 2 :]]
    return row


def as_wide_as_high(row: list[Term]) -> list[Term]:
    """ "as wide as it's tall, 8 feet" as "8 feet square"."""
    for at in range(len(row) - 2):
        if row[at].text.lower() != "as" or row[at + 1].type != "LABEL" or row[at + 1].value not in BOTH:
            continue
        end = at + 2
        while end < len(row) and row[end].type in {"FILL", "PRON"}:
            end += 1
        if end >= len(row) or row[end].type != "LABEL" or row[end].value not in BOTH - {row[at + 1].value}:
            continue
        size = next((i for i in range(end + 1, min(end + WITHIN, len(row))) if row[i].type == "LEN"), None)
        if size is not None:
            said = [t.moved("FILL", "of") for t in row[at : end + 1]]
            square = Term("SHAPE", "square", row[size].end, row[size].end, "square")
            return [*row[:at], *said, *row[end + 1 : size + 1], square, *row[size + 1 :]]
    return row
