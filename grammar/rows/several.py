"""How many of several are meant: "two matching columns", "one gold one silver", "some in gold", "5 bags of 100"."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from grammar.record import record
from grammar.terms import NOUNS, SIZED, Amount, Term
from grammar.word_files import placed

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
WITHIN = 6  # terms from an article or number to its noun
ORDINALS = frozenset({"first", "second", "third", "fourth"})
TOLD = frozenset({"LEN", "COLOUR", "FLAG", "CHOICE", "NEG"})
NAMED = frozenset({"TABLE", "PIECE", "SHAPE", "FOOTER"})
TOLD_APART = frozenset({"LEN", "FOOTER", "COLOUR"})  # by what a group of several is told from the others


def matching(row: list[Term]) -> list[Term]:
    """ "two matching columns" as "two columns matching"."""
    for at, term in enumerate(row):
        noun = at + 1
        while noun < len(row) and row[noun].type in {"NUM", "LEN"} and noun - at < WITHIN:
            noun += 1
        if term.type == "SAME" and term.value == "colours" and noun < len(row) and row[noun].type in NOUNS:
            return [*row[:at], *row[at + 1 : noun + 1], term, *row[noun + 1 :]]
    return row


def two_people(row: list[Term]) -> list[Term]:
    """ "a couple getting married", "the couple want gold": no number of things."""
    return [_two_people(term, row[at + 1 : at + 2]) for at, term in enumerate(row)]


def both_ends(row: list[Term]) -> list[Term]:
    """ "covered both sides", "both of us": not two of the pieces."""
    out = list(row)
    for at, term in enumerate(row):
        after = " ".join(t.text.lower() for t in row[at + 1 : at + 3])
        if (term.type, term.value) == ("PRON", "both") and after.startswith(("sides", "ends", "of us")):
            out[at] = term.moved("FILL", "")
    return out


def _two_people(term: Term, after: list[Term]) -> Term:
    counts = bool(after) and (after[0].type in IN_TWOS or after[0].text.lower() == "of")
    alone = term.type == "NUM" and term.text.lower().split(" ")[-1] == "couple"
    return term.moved("FILL", "couple") if alone and after and not counts else term


def two_of(row: list[Term]) -> list[Term]:
    """ "2x arch": two of them, and not twice what there is."""
    return [_two_of(term, row[at + 1 : at + 2]) for at, term in enumerate(row)]


def _two_of(term: Term, after: list[Term]) -> Term:
    named = bool(after) and after[0].type in NOUNS | {"LEN"}
    return term.moved("NUM", Amount(Fraction(2))) if term.text.lower().replace(" ", "") == "2x" and named else term


def one_and_one(row: list[Term]) -> list[Term]:
    """ "one gold one silver", "one 6 ft one 8 ft": the second "one" counts, too, and is no "gold one"."""
    out = list(row)
    for at in range(3, len(row)):
        kinds = [term.type for term in row[at - 3 : at + 1]]
        one = row[at - 3].text.lower() == "one" and row[at - 1].text.lower() == "one"
        if one and kinds in (["NUM", "COLOUR", "ONES", "COLOUR"], ["NUM", "LEN", "ONES", "LEN"]):
            out[at - 1] = row[at - 1].moved("NUM", row[at - 3].value)
    return out


def one_of_each(row: list[Term]) -> list[Term]:
    """ "two hoops, a 4 ft and a 6 ft", "two hoops, a 4 ft one and a 6 ft one": each article counts one of them."""
    places = [i for i in range(len(row) - 1) if row[i].value == "one" and row[i + 1].type == "LEN"]
    named = next((i for i in range(1, len(row)) if row[i].type == "PIECE" and row[i - 1].type == "NUM"), len(row))
    if len(places) < len("ab") or places[0] < named or row[named - 1].value.value != len(places):
        return row
    nouns = [i + 2 for i in places if row[i + 2 : i + 3] and _names_it(row[i + 2], row[named])]
    ends = {i + 2 + (i + 2 in nouns) for i in places}
    if any(i < len(row) and row[i].type not in {"SEP", "AND", "COLOUR", "FILL"} for i in ends):
        return row
    one = Amount(Fraction(1))
    counted = [term.moved("NUM", one) if i in places else term for i, term in enumerate(row)]
    return [term for i, term in enumerate(counted) if i not in nouns]


def _names_it(term: Term, piece: Term) -> bool:
    return term.type == "ONES" or (term.type, term.value) == ("PIECE", piece.value)


def sizes_in_turn(row: list[Term]) -> list[Term]:
    """ "columns at heights 4 5 and 6 ft": one of each size, as with commas between them."""
    at = next((i for i, term in enumerate(row) if term.type == "PIECE" and term.text.lower().endswith("s")), len(row))
    first = at + 1
    while first < len(row) and row[first].type in {"PREP", "LABEL", "FILL", "OF"}:
        first += 1
    last = first
    while last < len(row) and (row[last].type in {"NUM", "AND", "SEP"} or _goes_on(row, last)):
        last += 1
    sizes = [i for i in range(first, last) if row[i].type in SIZED]
    bare = any(later == sooner + 1 for sooner, later in pairwise(sizes))  # no comma was heard
    if last >= len(row) or row[last].type != "LEN" or not bare:
        return row
    number = Amount(Fraction(len(sizes) + 1))
    counted = at > 0 and row[at - 1].type == "NUM"
    if counted and row[at - 1].value.value != number.value:
        return row
    out = [*row[:at], *([] if counted else [Term("NUM", number, row[at].start, row[at].start, "")]), row[at]]
    for place in (*sizes, last):
        comma = Term("SEP", ",", row[place].start, row[place].start, "")
        out += [comma, row[place]]
    return [*out, *row[last + 1 :]]


def _goes_on(row: list[Term], at: int) -> bool:
    """Whether a size at `at` is followed by another one: "4 ft 5 ft and 6 ft"."""
    after = at + 2 if at + 1 < len(row) and row[at + 1].type == "AND" else at + 1
    return row[at].type == "LEN" and after < len(row) and row[after].type == "LEN"


def one_is(row: list[Term]) -> list[Term]:
    """ "and one's a 4 ft": one of those in hand, and no "ones"."""
    at = next((i for i, t in enumerate(row) if t.type not in {"AND", "SEP", "FILL", "CORR", "ADD"}), len(row))
    told = [t.type for t in row[at + 1 : at + 3] if t.type not in {"FILL", "DET"}][:1]
    if at == len(row) or row[at].text.lower().replace("’", "'") != "one's" or told not in (["LEN"], ["COLOUR"]):
        return row
    end = row[at].end
    one = Term("NUM", Amount(Fraction(1)), row[at].start, end, row[at].text)
    rest = row[at + 2 :] if row[at + 1].type == "DET" else row[at + 1 :]
    return [*row[:at], one, Term("MAKE", "make", end, end, ""), *rest]


def matching_one(row: list[Term]) -> list[Term]:
    """ "and a matching one on the window, 4 ft": another."""
    out = list(row)
    for at in range(len(row) - 2):
        one = row[at].value == "one" and row[at + 1].type == "SAME" and row[at + 1].text.lower() == "matching"
        if one and row[at + 2].text.lower() == "one":
            out[at] = row[at].moved("ADD", "another")
            out[at + 1], out[at + 2] = row[at + 1].moved("FILL", ""), row[at + 2].moved("FILL", "")
    return out


def first_and_second(row: list[Term]) -> list[Term]:
    """ "two arches, first 8 by 7 second 10 by 8" as "two arches, one 8 by 7, one 10 by 8"."""
    named = next((i for i in range(1, len(row)) if row[i].type == "PIECE" and row[i - 1].type == "NUM"), len(row))
    places = [i for i in range(named + 1, len(row) - 1) if ORDINALS & {*row[i].text.lower().split()}]
    told = all(row[i].type in {"FILL", "PRON", "NTH"} and row[i + 1].type in {"LEN", "NUM"} for i in places)
    if len(places) < len("ab") or not told or row[named - 1].value.value != len(places):
        return row
    out: list[Term] = []
    for at, term in enumerate(row):
        if at in places:
            out.append(Term("SEP", ",", term.start, term.start, ""))
            term = term.moved("NUM", Amount(Fraction(1)))
        out.append(term)
    return out


def the_other_two(row: list[Term]) -> list[Term]:
    """ "the longest one in gold, other two white": the others, without an article."""
    out = list(row)
    for at in range(1, len(row) - 1):
        if row[at].type == "FILL" and row[at].text.lower() == "other" and row[at + 1].type == "NUM":
            out[at] = row[at].moved("PRON", "other")
    return out


def colours_on_some(row: list[Term]) -> list[Term]:
    """ "silver on two of them and white on the others" as "two of them silver and the others white"."""
    out: list[Term] = []
    at = 0
    while at < len(row):
        end = at
        while end < len(row) and row[end].type == "COLOUR":
            end += 2 if [t.type for t in row[end + 1 : end + 3]] == ["AND", "COLOUR"] else 1
        some = end + 1
        while some < len(row) and row[some].type == "NUM":
            some += 1
        pointed = some < len(row) and row[some].type == "PRON" and (some > end + 1 or row[some].value == "other")
        if end > at and row[end : end + 1] and row[end].text.lower() == "on" and pointed:
            out += [*row[end + 1 : some + 1], *row[at:end]]
            at = some + 1
        else:
            out.append(row[at])
            at += 1
    return out


def tall_at(row: list[Term]) -> list[Term]:
    """ "three tall at 7 ft and three short at 5" as "three at 7 ft and three at 5 ft"."""
    out, unit = list(row), ""
    for at in range(1, len(row) - 1):
        size = row[at + 1]
        before = at - 1
        while before >= 0 and row[before].text.lower() in placed("of_a_group"):
            before -= 1
        if row[at].text.lower() != "at" or before < 0 or size.type not in {"LEN", "NUM"}:
            continue
        if row[before].type == "NUM" and size.type == "LEN":
            out[before + 1 : at] = [t.moved("FILL", "") for t in row[before + 1 : at]]
        if row[before].type in {"NUM", "ONES"} and size.type == "NUM" and unit:
            out[before + 1 : at] = [t.moved("FILL", "") for t in row[before + 1 : at]]
            out[at + 1] = size.moved("LEN", Amount(size.value.value, unit))
        unit = size.value.unit if size.type == "LEN" else unit
    return out


def so_many_of(row: list[Term]) -> list[Term]:
    """ "four tables of 8 feet and six of six": sizes of one unit."""
    unit = ""
    out = list(row)
    for at, term in enumerate(row):
        if at < 2 or row[at - 1].type != "OF":
            continue
        if term.type == "LEN" and row[at - 2].type in NOUNS | {"NUM"}:
            unit = term.value.unit
        ends = at + 1 == len(row) or row[at + 1].type in {"SEP", "AND", "COLOUR"}
        if unit and term.type == "NUM" and row[at - 2].type in {"NUM", "ADD"} and ends:
            out[at] = term.moved("LEN", Amount(term.value.value, unit))
    return out


def some(row: list[Term]) -> list[Term]:
    """ "eleven 6 ft tables, three are 8 ft": three of them; "some in gold" of them: nobody knows how many."""
    if not any(term.text.lower() == "some" or _is(term) for term in row):
        return row
    out = list(row)
    counted = False
    named = all(term.type not in NAMED for term in row)  # "four are gold": of what is in hand
    for at, term in enumerate(row):
        lead = at + 1
        while lead < len(row) and {*row[lead].text.lower().split()} <= placed("told_of"):
            lead += 1
        told = row[lead].type if lead < len(row) else ""
        if named and term.type == "NUM" and told in TOLD and at + 1 < lead and _is(row[at + 1]):
            out[at + 1] = replace(row[at + 1], type="PRON", value="it", text="of them")
        elif named and term.type == "NUM" and told == "PREP" and at + 1 < lead and _is(row[at + 1]):
            out[at] = term.unused()  # "three are for the kids" says no new number
        elif named and term.text.lower() == "some" and told in TOLD and at + 1 < lead:
            end = lead + 1
            while end + 1 < len(row) and (row[end].type, row[end + 1].type) == ("AND", told):
                end += 2
            out[at:end] = [t.unused() for t in row[at:end]]
        counted = counted or term.type == "NUM"
        named = named or (counted and term.type in NAMED)
    return out


def crowds(row: list[Term]) -> list[Term]:
    """ "loads of 6 ft tables", "a bunch of columns": nobody knows how many."""
    for at, term in enumerate(row[:-2]):
        of = row[at + 1].text.lower() == "of" and term.text.lower() in placed("crowds")
        if not of or (at and row[at - 1].type == "NUM"):
            continue
        noun = at + 2
        while noun < len(row) and row[noun].type in {"LEN", "COLOUR", "FILL", "CHOICE"} and noun - at < WITHIN:
            noun += 1
        if noun < len(row) and row[noun].type in NAMED and row[noun].text.lower().endswith("s"):
            first = at - 1 if at and row[at - 1].type == "DET" else at
            text = " ".join(t.text for t in row[first : at + 2])
            return [*row[:first], Term("VAGUE", None, row[first].start, row[at + 1].end, text), *row[at + 2 :]]
    return row


def groups(row: list[Term]) -> list[Term]:
    """ "two garlands, a 10 ft one and a 6 ft one" as "two garlands, one 10 ft and one 6 ft"."""
    for noun in range(1, len(row)):
        number = row[noun - 1].value.value if row[noun - 1].type == "NUM" else Fraction(0)
        parts = _parts(row, noun + 1) if number > 1 and row[noun].type in NOUNS else []
        if len(parts) < len("ab") or sum(part.many for part in parts) != number:
            continue
        if all(row[p.first].type == "NUM" and row[p.told].type in {"LEN", "COLOUR"} and not p.ones for p in parts):
            continue  # "one 10 ft, one 6 ft" is read as it stands
        out = list(row)
        unit = next((row[part.told].value.unit for part in parts if row[part.told].type == "LEN"), "")
        for part in parts:
            out[part.first : part.told] = [t.moved("FILL", "of") for t in row[part.first : part.told]]
            out[part.first] = row[part.first].moved("NUM", Amount(Fraction(part.many)))
            told = row[part.told]
            size = Amount(told.value.value, unit) if told.type == "NUM" else told.value
            out[part.told] = told.moved("LEN", size) if told.type in {"FOOTER", "NUM"} else told
            out[part.told + 1 : part.end] = [t.moved("FILL", "of") for t in row[part.told + 1 : part.end]]
        return out
    return row


@record
class _Part:
    """One group of several: where it begins, what it is told by, and of how many it is."""

    first: int
    told: int
    many: int
    ones: bool  # whether it ends in "one"

    @property
    def end(self) -> int:
        """The index behind it."""
        return self.told + 1 + self.ones


def _parts(row: list[Term], at: int) -> list[_Part]:
    """Groups such as "a 10 ft one" from a term on, with none but small words between."""
    found: list[_Part] = []
    while at < len(row):
        if row[at].type in {"SEP", "AND", "FILL"}:
            at += 1
            continue
        many, told = _how_many(row[at]), at + 1
        while told < len(row) and (row[told].type in {"FILL", "OF", "PREP"}):
            told += 1
        sized = any(row[part.told].type == "LEN" for part in found)  # "two at six foot and one at eight"
        kinds = TOLD_APART | {"NUM"} if sized and told > at + 1 else TOLD_APART
        if not many or told >= len(row) or row[told].type not in kinds:
            break
        found.append(_Part(at, told, many, [t.type for t in row[told + 1 : told + 2]] == ["ONES"]))
        at = found[-1].end
    return found


def _how_many(term: Term) -> int:
    """How many a group is of by the word that it begins with, 0 where none does."""
    if term.type == "NUM" and term.value.value.denominator == 1:
        return int(term.value.value)
    one = (term.type, term.value) in {("DET", "one"), ("DET", "the"), ("PRON", "other"), ("ADD", "another")}
    return int(one or term.text.lower() == "one's")


def _is(term: Term) -> bool:
    return term.type == "FILL" and term.text.lower() in placed("told_are")


def left(row: list[Term]) -> list[Term]:
    """ "I've 60 left, how tall will that make": what there is."""
    out = list(row)
    for at in range(1, len(row)):
        ends = at + 1 == len(row) or row[at + 1].type == "SEP"
        if row[at].text.lower() == "left" and row[at].type == "FILL" and row[at - 1].type == "NUM" and ends:
            out[at] = row[at].moved("ONHAND", "onhand")
    return out


def bags(row: list[Term]) -> list[Term]:
    """ "5 bags of 100", "5 packs of 50 balloons": so many balloons."""
    out: list[Term] = []
    at = 0
    while at < len(row):
        term = row[at]
        pack = at + 2 < len(row) and (row[at + 1].type, row[at + 1].value) == ("LABEL", "pack_size")
        many = term.value.value if term.type == "NUM" else Fraction((term.type, term.value) == ("DET", "one"))
        if pack and many:
            inner = row[at + 2]
            if inner.type == "NUM":
                number = Amount(many * inner.value.value)
                out.append(Term("NUM", number, term.start, inner.end, f"{term.text} bags of {inner.text}"))
                out.append(Term("BALLOON", "balloon", inner.end, inner.end, ""))
                at += 4 if row[at + 3 : at + 4] and row[at + 3].type == "BALLOON" else 3
                continue
        out.append(term)
        at += 1
    return out
