"""Digits and letters that are put up: "a number 4 on top", "the letters L and M"."""

from grammar.terms import NOUNS, Term
from grammar.word_files import placed

COUNTED = NOUNS | {"BALLOON", "LABEL", "FOOTER", "NUM", "LEN", "ROWS", "BY", "TO"}
BEFORE_SIZES = 3  # terms from "some" to "3 footers"


def digits_to_stand(row: list[Term]) -> list[Term]:
    """ "a number 4 on top", "a big 5", "the number 30": digits that are put up, of which none is counted."""
    out = list(row)
    kinds = any(term.type == "PIECE" for term in row)
    since = next((i for i, term in enumerate(row) if term.text.lower() in placed("digit")), len(row))
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
        told = since < at or (kinds and _on_top(row, at))
        spelt = told and _is_article(row, at - 1)
        if named or spelt or (_is_article(row, first - 1) and said & placed("grand")):
            out[first : at + 1] = [t.unused() for t in row[first : at + 1]]
    return _in_balloons(out)


def _in_balloons(row: list[Term]) -> list[Term]:
    """ "number 40 in balloons, 4 ft high": a digit made of balloons, and how big it is."""
    for at in range(1, len(row) - 1):
        in_balloons = row[at].type == "LEN" and row[at].text.lower().endswith(" in") and row[at + 1].type == "BALLOON"
        if not in_balloons or row[at - 1].text.lower() not in placed("digit"):
            continue
        return [*row[: at - 1], *(t.unused() for t in row[at - 1 : at + 2]), *_unsized(row[at + 2 :])]
    return row


def _unsized(row: list[Term]) -> list[Term]:
    """The terms with the size that comes next, behind small words, made words: it is of what is put up."""
    at = 0
    while at < len(row) and row[at].type in {"FILL", "SEP", "WORD", "AND", "PREP"}:
        at += 1
    if at == len(row) or row[at].type != "LEN" or any(t.type in NOUNS for t in row[at : at + 3]):
        return row
    end = at + 1 + (at + 1 < len(row) and row[at + 1].type == "LABEL")
    return [*row[:at], *(t.unused() for t in row[at:end]), *row[end:]]


def _is_article(row: list[Term], at: int) -> bool:
    return at >= 0 and (row[at].type, row[at].value) == ("DET", "one")


def _on_top(row: list[Term], at: int) -> bool:
    """Whether "a 4 and a 0 on top" goes on from a number: only digits are put on something one by one."""
    after = at + 1
    while [t.type for t in row[after : after + 3]] == ["AND", "DET", "NUM"]:
        after += 3
    return row[at].text.isdigit() and after < len(row) and row[after].type == "PREP"


def letters(row: list[Term]) -> list[Term]:
    """ "the letters L and M": letters that are put up."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() not in placed("letters"):
            continue
        end = at + 1
        while end < len(row) and ((len(row[end].text) == 1 and row[end].text.isalpha()) or row[end].type == "AND"):
            end += 1
        end -= row[end - 1].type == "AND"
        out[at + 1 : end] = [t.unused() for t in row[at + 1 : end]]
        out[end:] = _unsized(out[end:])
    return out
