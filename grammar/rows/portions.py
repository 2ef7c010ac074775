"""Shares of colours and of things: "60/40 white and gold", "three in four of them", "half of the twelve tables"."""

from dataclasses import replace
from fractions import Fraction

from grammar.terms import NOUNS, Amount, Term
from grammar.word_files import placed

TOLD = frozenset({"COLOUR", "FLAG", "ONHAND", "NEG", "LEN"})
NEARBY = 5
OF_ALL = frozenset({"PRON", "OF", "BALLOON"})  # between a share and its colour: "four out of five balloons cream"
WHOLE = 100
TIMES = {"double": 2.0, "triple": 3.0, "halve": 0.5}


def parts(row: list[Term]) -> list[Term]:
    """ "silver 3 parts, white 2 parts" as "3 parts silver, 2 parts white"."""
    out = list(row)
    for at in range(2, len(row)):
        three = [t.type for t in row[at - 2 : at + 1]]
        if three == ["COLOUR", "NUM", "PARTS"] and not any(t.type == "COLOUR" for t in row[at + 1 : at + 2]):
            out[at - 2 : at + 1] = [row[at - 1], row[at], row[at - 2]]
    return out


def every_other(row: list[Term]) -> list[Term]:
    """ "every other table", "every second one": half of them."""
    for at in range(len(row) - 2):
        if (
            row[at].text.lower() == "every"
            and row[at + 1].text.lower() in placed("alternate")
            and row[at + 2].type == "TABLE"
        ):
            half = Term("FRAC", Amount(Fraction(1, 2)), row[at].start, row[at + 1].end, f"every {row[at + 1].text}")
            the = Term("DET", "the", row[at + 1].end, row[at + 1].end, "")
            return [
                *row[:at],
                half,
                the,
                replace(row[at + 2], text=f"{row[at + 2].text.removesuffix('s')}s"),
                *row[at + 3 :],
            ]
    return row


def half_of(row: list[Term]) -> list[Term]:
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


def _some(share: Term, total: Fraction) -> Term:
    """So many of a total, as a number."""
    return replace(share, type="NUM", value=Amount(share.value.value * total))


def half_of_them(row: list[Term]) -> list[Term]:
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


def half_of_it(row: list[Term]) -> list[Term]:
    """ "half of it gold" as "half gold": a share of a colour, and not of the piece."""
    out: list[Term] = []
    for at, term in enumerate(row):
        of_it = term.type == "PRON" and term.text.lower().startswith("of ") and out and out[-1].type == "FRAC"
        told = next((t.type for t in row[at + 1 :] if t.type != "FILL"), "")
        here = any(t.type in NOUNS for t in out)  # else of those in hand
        if not (of_it and here and told == "COLOUR"):
            out.append(term)
    return out


def ratios(row: list[Term]) -> list[Term]:
    """ "60/40 white and gold", "white, gold and navy 50/30/20": a share for each colour."""
    if not any("/" in term.text for term in row):
        return row
    out = list(row)
    for at, term in enumerate(row):
        last = at
        while last + 1 < len(row) and row[last + 1].start == row[last].end and _slashed(row[last + 1].text):
            last += 1
        ends = "".join(t.text for t in row[at : last + 1]).split("/")
        if not _slashed(term.text) or len(ends) < 2 or not all(e.strip().isdigit() for e in ends):
            continue
        shares = [int(e) for e in ends]
        colours = [i for i, t in enumerate(row) if t.type == "COLOUR" and abs(i - at) <= NEARBY + len(ends)]
        chosen = [i for i in colours if i > at][: len(ends)] or colours[-len(ends) :]
        if sum(shares) == WHOLE and len(chosen) == len(ends):
            out[at : last + 1] = [t.moved("FILL", "ratio") for t in row[at : last + 1]]
            for i, share in zip(chosen, shares, strict=True):
                out[i] = row[i].moved("COLOUR", (row[i].value, share / WHOLE))
    return out


def _slashed(text: str) -> bool:
    """Whether a text is a piece of "50/30/20"."""
    return bool(text.strip()) and all(char.isdigit() or char in "/ " for char in text)


def wholly(row: list[Term]) -> list[Term]:
    """ "cover the hoop completely": all of it."""
    if all(term.text.lower() not in placed("covers") for term in row):
        return row
    out = list(row)
    for at, term in enumerate(row):
        after = row[at + 1].type if at + 1 < len(row) else ""
        alone = after in {"", "SEP", "AND"} and term.text.lower() in placed("wholly")
        noun = next((t for t in row[at + 1 :] if t.type not in {"OF", "DET"}), term)
        whole = noun.type == "PIECE" and not noun.text.lower().endswith("s") and after in {"PIECE", "OF"}
        of_it = whole and term.text.lower() in placed("whole")  # "the whole hoop", "all of the hoop"
        if term.type in {"ALL", "FILL", "WORD"} and (alone or of_it):
            out[at] = term.moved("CHOICE", ("coverage", "full"))
    return out


def as_many(row: list[Term]) -> list[Term]:
    """ "twice as much navy as gold": parts of a whole; without the second colour it says no number of pieces."""
    out = list(row)
    for at, term in enumerate(row[:-1]):
        if term.type != "OPS" or row[at + 1].type != "COLOUR":
            continue
        out[at] = term.unused()
        link = at + 3 if row[at + 2 : at + 3] and row[at + 2].type == "BALLOON" else at + 2
        if [t.type for t in row[link : link + 2]] == ["FILL", "COLOUR"] and row[link].value == "as":
            times = TIMES[str(term.value)]
            shares = (round(times / (times + 1), 4), round(1 / (times + 1), 4))
            out[at], out[link] = term.moved("FILL", "ratio"), row[link].moved("AND", "and")
            for i, share in zip((at + 1, link + 1), shares, strict=True):
                out[i] = row[i].moved("COLOUR", (row[i].value, share))
    return out


def for_every(row: list[Term]) -> list[Term]:
    """ "two white for every gold one": parts of a whole."""
    out = list(row)
    for at, term in enumerate(row):
        if not (term.type == "DET" and term.value == "each" and at and row[at - 1].text.lower() == "for"):
            continue
        before = [i for i in range(at - 1) if row[i].type == "COLOUR"]
        after = [i for i in range(at + 1, min(at + 4, len(row))) if row[i].type == "COLOUR"]
        number = before[-1] - 1 if before else -1
        if after and number >= 0 and row[number].type == "NUM":
            total = row[number].value.value + 1
            out[before[-1]] = row[before[-1]].moved(
                "COLOUR", (row[before[-1]].value, float(row[number].value.value / total))
            )
            out[after[0]] = row[after[0]].moved("COLOUR", (row[after[0]].value, float(1 / total)))
            out[number] = row[number].moved("FILL", "")
            return [t for i, t in enumerate(out) if i == number or t.type != "BALLOON" or not before[-1] < i < at]
    return out


def portions(row: list[Term]) -> list[Term]:
    """ "three in four of them green": a share; "two parts navy": parts stay only before a colour."""
    out: list[Term] = []
    at = 0
    while at < len(row):
        term = row[at]
        link = row[at + 1].text.lower() if at + 2 < len(row) else ""
        if term.type == "NUM" and link in {"in", "out", "out of"}:
            second = _next(row, at + 2) if link == "out" else at + 2
            second += second + 1 < len(row) and row[second].type == "DET"  # "four out of every five"
            after = second + 1
            while after < len(row) and (row[after].type in OF_ALL or row[after].value in placed("links")):
                after += 1
            if second < len(row) and row[second].type == "NUM" and after < len(row) and row[after].type == "COLOUR":
                share = Amount(term.value.value / row[second].value.value)
                if 0 < share.value <= 1:
                    out.append(Term("FRAC", share, term.start, row[second].end, f"{term.text} in {row[second].text}"))
                    at = after
                    continue
        if term.type == "PARTS":
            nxt = _next(row, at + 1)
            ok = out and out[-1].type == "NUM" and nxt < len(row) and row[nxt].type == "COLOUR"
            term = term if ok else term.moved("FILL", "parts")
        out.append(term)
        at += 1
    return out


def _next(row: list[Term], at: int) -> int:
    """The index of the next term that is no link word, or len(row)."""
    while at < len(row) and row[at].type in {"FILL", "OF"} and row[at].value in placed("links"):
        at += 1
    return at
