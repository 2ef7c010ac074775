"""Sayings put into the order that the grammar reads: "silver 3 parts", "half of the twelve tables in red"."""

from dataclasses import replace
from fractions import Fraction

from grammar.called import called_ones
from grammar.terms import AMOUNTS, Amount, Term
from grammar.word_files import load_words, placed

BOTH = frozenset({"width", "height", "length", "across"})  # labels of two sides that are alike
NOUNS = frozenset({"TABLE", "PIECE", "SHAPE"})
IN_TWOS = NOUNS | {
    "LEN",
    "NUM",
    "COLOUR",
    "BALLOON",
    "FOOTER",
    "ONES",
    "ROWS",
    "MORE",
    "LABEL",
    "SEP",
    "CHOICE",
}
TOLD = frozenset({"COLOUR", "FLAG", "ONHAND", "NEG", "LEN"})
WITHIN = 6  # terms from an article or number to its noun


def recast(row: list[Term]) -> list[Term]:
    """The terms, each such saying put as others say it."""
    types = {term.type for term in row}
    if "PARTS" in types:
        row = _parts(row)
    if "SAME" in types:
        row = _matching(row)
    if "FRAC" in types:
        row = _half_of_it(_half_of_them(_half_of(row)))
    if types & {"CORR", "NEG"}:
        row = _not_that(row)
    if "SHAPE" in types:
        row = _rounded(row)
    if "LEN" in types:
        row = _by_so_much(row)
    if "NUM" in types:
        row = [_two_people(term, row[at + 1 : at + 2]) for at, term in enumerate(row)]
    if "OPS" in types:
        row = [_two_of(term, row[at + 1 : at + 2]) for at, term in enumerate(row)]
    if types & {"FLAG", "FILL"}:
        row = called_ones(row)
    if "ONES" in types:
        row = _one_and_one(row)
    return _so_many_of(_as_wide_as_high(_colours_counted(row)))


def _two_of(term: Term, after: list[Term]) -> Term:
    """ "2x arch": two of them, and not twice what there is."""
    named = bool(after) and after[0].type in NOUNS | {"LEN"}
    return term.moved("NUM", Amount(Fraction(2))) if term.text.lower().replace(" ", "") == "2x" and named else term


def _one_and_one(row: list[Term]) -> list[Term]:
    """ "one gold one silver": the second "one" counts, too, and is no "gold one"."""
    out = list(row)
    for at in range(3, len(row)):
        kinds = [term.type for term in row[at - 3 : at + 1]]
        one = row[at - 3].text.lower() == "one" and row[at - 1].text.lower() == "one"
        if one and kinds == ["NUM", "COLOUR", "ONES", "COLOUR"]:
            out[at - 1] = row[at - 1].moved("NUM", row[at - 3].value)
    return out


def _colours_counted(row: list[Term]) -> list[Term]:
    """ "in 2 colours, navy and gold": a number of colours is none of pieces."""
    out = list(row)
    for at in range(len(row) - 1):
        if row[at].type == "NUM" and row[at + 1].type == "FILL" and row[at + 1].text.lower() in placed("colours"):
            out[at] = row[at].moved("FILL", "of")
    return out


def _parts(row: list[Term]) -> list[Term]:
    """ "silver 3 parts, white 2 parts" as "3 parts silver, 2 parts white"."""
    out = list(row)
    for at in range(2, len(row)):
        three = [t.type for t in row[at - 2 : at + 1]]
        if three == ["COLOUR", "NUM", "PARTS"] and not any(t.type == "COLOUR" for t in row[at + 1 : at + 2]):
            out[at - 2 : at + 1] = [row[at - 1], row[at], row[at - 2]]
    return out


def _matching(row: list[Term]) -> list[Term]:
    """ "two matching columns" as "two columns matching"."""
    for at, term in enumerate(row):
        noun = at + 1
        while noun < len(row) and row[noun].type in {"NUM", "LEN"} and noun - at < WITHIN:
            noun += 1
        if term.type == "SAME" and term.value == "colours" and noun < len(row) and row[noun].type in NOUNS:
            return [*row[:at], *row[at + 1 : noun + 1], term, *row[noun + 1 :]]
    return row


def _half_of(row: list[Term]) -> list[Term]:
    """ "half of the twelve 6 ft tables in red, half in green" as "twelve 6 ft tables, six in red, six in green"."""
    for at, term in enumerate(row):
        count = at + 1
        while count < len(row) and row[count].type in {"OF", "DET", "FILL"}:
            count += 1
        noun = count + 1
        while noun < len(row) and row[noun].type in {"LEN", "SHAPE"}:
            noun += 1
        counted = count > at + 1 and row[count : count + 1] and row[count].type == "NUM"
        if term.type != "FRAC" or not counted or row[noun : noun + 1] == [] or row[noun].type not in NOUNS:
            continue
        total, of = row[count].value.value, term.value.value
        if (total * of).denominator != 1:
            continue
        rest = [t if t.type != "FRAC" or t.value.value + of > 1 else _some(t, total) for t in row[noun + 1 :]]
        comma = Term("SEP", ",", row[noun].end, row[noun].end, ",")
        return [*row[:at], *row[count : noun + 1], comma, _some(term, total), *rest]
    return row


def _half_of_them(row: list[Term]) -> list[Term]:
    """ "ten 6 ft tables, half of them gold, half white" as "ten 6 ft tables, five of them gold, five white"."""
    for at, term in enumerate(row[:-2]):
        if term.type == "COLOUR":
            break  # "navy and gold, half of them navy": of the balloons
        them = row[at + 1].type == "PRON" and row[at + 1].text.lower().startswith("of ")
        total = _counted(row[:at]) if term.type == "FRAC" and them else None
        told = next((t.type for t in row[at + 2 :] if t.type != "FILL"), "")
        if total is None or told not in TOLD or (total * term.value.value).denominator != 1:
            continue
        of = term.value.value
        rest = [t if t.type != "FRAC" or t.value.value + of > 1 else _some(t, total) for t in row[at + 1 :]]
        return [*row[:at], _some(term, total), *rest]
    return row


def _half_of_it(row: list[Term]) -> list[Term]:
    """ "half of it gold" as "half gold": a share of a colour, and not of the piece."""
    out: list[Term] = []
    for at, term in enumerate(row):
        of_it = term.type == "PRON" and term.text.lower().startswith("of ") and out and out[-1].type == "FRAC"
        told = next((t.type for t in row[at + 1 :] if t.type != "FILL"), "")
        here = any(t.type in NOUNS for t in out)  # else of those in hand
        if not (of_it and here and told == "COLOUR"):
            out.append(term)
    return out


def _counted(row: list[Term]) -> Fraction | None:
    """How many things were named last, where there are several."""
    for at in range(len(row) - 1, -1, -1):
        if row[at].type != "NUM":
            continue
        noun = at + 1
        while noun < len(row) and row[noun].type in {"LEN", "SHAPE"}:
            noun += 1
        several: Fraction = row[at].value.value
        return several if noun < len(row) and row[noun].type in NOUNS and several > 1 else None
    return None


def _some(share: Term, total: Fraction) -> Term:
    """So many of a total, as a number."""
    return replace(share, type="NUM", value=Amount(share.value.value * total))


def _not_that(row: list[Term]) -> list[Term]:
    """ "eight feet, no not eight, six feet": what is denied is no number of its own."""
    out = list(row)
    for at in range(1, len(row) - 1):
        slip, denied = row[at - 1], row[at]
        twice = slip.type == "NEG" and at > 1 and row[at - 2].type == "NEG"  # "no, not eight"
        if not (slip.type == "CORR" or twice) or not slip.text.lower().endswith("not") or denied.type != "NUM":
            continue
        if any(t.type in {"NUM", "LEN"} and t.value.value == denied.value.value for t in row[: at - 1]):
            out[at] = denied.moved("FILL", "of")
            if twice:
                out[at - 2], out[at - 1] = row[at - 2].moved("CORR", "corr"), slip.moved("FILL", "of")
    return out


def _as_wide_as_high(row: list[Term]) -> list[Term]:
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


def _so_many_of(row: list[Term]) -> list[Term]:
    """ "four tables of 8 feet and six of six": sizes of one unit."""
    unit = ""
    out = list(row)
    for at, term in enumerate(row):
        if at < 2 or row[at - 1].type != "OF":
            continue
        if term.type == "LEN" and row[at - 2].type in NOUNS | {"NUM"}:
            unit = term.value.unit
        ends = at + 1 == len(row) or row[at + 1].type in {"SEP", "AND", "COLOUR"}
        if unit and term.type == "NUM" and row[at - 2].type == "NUM" and ends:
            out[at] = term.moved("LEN", Amount(term.value.value, unit))
    return out


def _rounded(row: list[Term]) -> list[Term]:
    """ "round it to 500", "round up": a verb and no shape; the number is told as not used."""
    out = list(row)
    for at in range(len(row) - 1):
        leads = at == 0 or row[at - 1].type not in {"NUM", "LEN", "DET", "OF", "PREP", "COLOUR", "SHAPE"}
        if (
            row[at].text.lower() != "round"
            or not leads
            or row[at + 1].text.lower().split(" ")[0] not in placed("rounding")
        ):
            continue
        out[at] = row[at].moved("FILL", "of")
        end = at + 1
        while end < len(row) and row[end].type not in {"SEP", "AND", "PIECE", "TABLE"}:
            out[end] = (
                row[end].moved("WORD", row[end].text) if row[end].type in AMOUNTS else row[end].moved("FILL", "of")
            )
            end += 1
    return out


def _by_so_much(row: list[Term]) -> list[Term]:
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


def _two_people(term: Term, after: list[Term]) -> Term:
    """ "a couple getting married", "the couple want gold": no number of things."""
    counts = bool(after) and (after[0].type in IN_TWOS or after[0].text.lower() == "of")
    alone = term.type == "NUM" and term.text.lower().split(" ")[-1] == "couple"
    return term.moved("FILL", "couple") if alone and after and not counts else term
