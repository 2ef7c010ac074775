"""Labels that go with another number than the nearest, or with none."""

from grammar.terms import NOUNS, SIZED, Amount, Term
from grammar.word_files import load_words, placed, word_list

COUNTABLE = NOUNS | {"FOOTER", "ONES", "BALLOON"}


def degrees(row: list[Term]) -> list[Term]:
    """ "it's 95 out", "35 degrees? celsius": how hot it is."""
    out = list(row)
    for at, term in enumerate(row[:-1]):
        if term.type != "TEMP" or term.value.unit:
            continue
        scale = next((t for t in row[at + 1 :] if t.type not in {"SEP", "FILL"}), term)
        unit = load_words("places.toml")["scales"].get(scale.text.lower())
        if unit:
            out[at] = term.moved("TEMP", Amount(term.value.value, unit))
            out[row.index(scale)] = scale.moved("FILL", "")
    for at, term in enumerate(row[1:-1], 1):
        if term.type != "NUM" or row[at - 1].text.lower() not in word_list("it_is"):
            continue
        if row[at + 1].text.lower() in {"out", "outside"} and term.value.value in range(20, 126):
            out[at] = term.moved("TEMP", Amount(term.value.value, "deg"))
    return out


def winds(row: list[Term]) -> list[Term]:
    """ "the wind might hit 25": what is hit is no heat."""
    out = list(row)
    for at, term in enumerate(row):
        gusts = (term.type, term.value) == ("LABEL", "wind") and term.text.lower().split()[0] in placed("gusts")
        if (
            gusts
            and all(t.type in {"NUM", "SPEED"} for t in row[max(at - 1, 0) : at + 2 : 2])
            and 0 < at < len(row) - 1
        ):
            out[at - 1] = row[at - 1].moved("FILL", "of")  # "15 gusting 25": the gusts count
        if (term.type, term.value) != ("LABEL", "temperature") or term.text.lower().split()[0] not in placed("hits"):
            continue
        said = [i for i in range(max(at - 4, 0), at) if row[i].text.lower() in word_list("winds")]
        if said:
            out[at], out[said[-1]] = term.moved("LABEL", "wind"), row[said[-1]].moved("FILL", "")
    return out


def of_things(row: list[Term]) -> list[Term]:
    """ "she drops to six tables": a number of things is none of what the weather is like."""
    out = list(row)
    for at, term in enumerate(row):
        if term.type != "LABEL" or term.value not in placed("of_the_weather"):
            continue
        number = _next_kept(row, at + 1)
        noun = _next_kept(row, number + 1)
        if number < len(row) and row[number].type == "NUM" and noun < len(row) and row[noun].type in COUNTABLE:
            out[at] = term.moved("FILL", "of")
    return out


def _next_kept(row: list[Term], at: int) -> int:
    """The index of the next term that is no filler, or len(row)."""
    while at < len(row) and row[at].type == "FILL":
        at += 1
    return at


def too_low(row: list[Term]) -> list[Term]:
    """ "knock up a 7 ft arch": a label that takes no number as small as those beside it is none."""
    least = load_words("speech.toml")["least"]
    out: list[Term] = []
    for at, term in enumerate(row):
        lowest = least.get(f"LABEL.{term.value}") if term.type == "LABEL" else None
        if lowest is not None:
            before = [t.value.value for t in row[max(at - 1, 0) : at] if t.type in SIZED]
            after = [t.value.value for t in row[at + 1 : at + 3] if t.type in SIZED]
            if after and max(after) >= lowest and before and max(before) < lowest:
                out.append(Term("GAP", None, term.start, term.start, ""))  # "bunches of five we're at 6000 feet"
            elif before + after and max(before + after) < lowest:
                term = term.moved("FILL", "")
        out.append(term)
    return out


def in_all(row: list[Term]) -> list[Term]:
    """ "nine in total" counts, and "spend on six tables" names no money: a label beside a number that it is not of."""
    out: list[Term] = []
    for at, term in enumerate(row):
        spent = (term.type, term.value) == ("LABEL", "markup") and term.text.lower().startswith("on ")
        if spent and _last_type(out) == "NUM":
            term = term.unused()  # "300 on materials"
        on_so_many = [t.text.lower() for t in row[at + 1 : at + 2]] == ["on"] and row[at + 2 : at + 3]
        if term.type == "LABEL" and term.text.lower() in placed("in_all") and _last_type(out) == "NUM":
            term = term.moved("FILL", "of")
        out.append(term)
        if (term.type, term.value) == ("LABEL", "budget") and on_so_many and on_so_many[0].type == "NUM":
            out.append(Term("GAP", None, term.end, term.end, ""))
    return out


def _last_type(row: list[Term]) -> str:
    """The type of the last term that is no filler."""
    return next((term.type for term in reversed(row) if term.type != "FILL"), "")


def blown_to(row: list[Term]) -> list[Term]:
    """ "blow the fives to four inches": how big balloons are blown, whatever stands between."""
    for at, term in enumerate(row):
        if term.text.lower() in placed("blowing"):
            end = at + 1
            while end < len(row) and row[end].type in {"DET", "NOMINALS", "BALLOON", "PRON"}:
                end += 1
            if [t.type for t in row[end : end + 2]] == ["FILL", "LEN"] and row[end].text.lower() == "to":
                return [*row[:at], term.moved("FILL", "of"), *row[at + 1 : end], _inflated(row[end]), *row[end + 1 :]]
    return row


def _inflated(term: Term) -> Term:
    return term.moved("LABEL", "inflated")


def telling(row: list[Term]) -> list[Term]:
    """ "12 ft dipping 2 ft": such a word tells the size that follows it, not the one before."""
    out: list[Term] = []
    for at, term in enumerate(row):
        verb = term.type == "LABEL" and out and term.text.lower() in placed("telling")
        if verb and out[-1].type in SIZED and any(t.type in SIZED for t in row[at + 1 : at + 3]):
            out.append(Term("GAP", None, term.start, term.start, ""))
        out.append(term)
    return out


def unit_ahead(row: list[Term]) -> list[Term]:
    """ "in feet, 7": the number is of the unit said before it."""
    out = list(row)
    units = load_words("places.toml")["ahead"]
    for at, term in enumerate(row):
        unit = units.get(term.text.lower())
        alone = next((i for i in range(at + 1, len(row)) if row[i].type not in {"FILL", "SEP", "PRON"}), None)
        led = at and row[at - 1].text.lower() == "in" and term.type == "FILL"
        if unit and led and alone == len(row) - 1 and row[alone].type == "NUM":
            out[alone] = row[alone].moved("LEN", Amount(row[alone].value.value, unit))
    return out
