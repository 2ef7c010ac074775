"""What was done and paid before, which is not known here: "same as last time", "it was 550 last year"."""

from grammar.terms import AMOUNTS, Term
from grammar.word_files import placed

LIKE = 3  # terms from "same" to "the last one"
NEAR = 3  # terms from "was" to what was paid
LATER = ("this time", "this year", "this one", "now")


def last_time(row: list[Term]) -> list[Term]:
    """The terms, with such times, and the numbers that are told of them, made words that are named as not used."""
    if not any(past in term.text.lower() for term in row for past in placed("last")):
        return row
    out = list(row)
    for at, term in enumerate(row):
        last = _end(row, at)
        if last == at:
            continue
        like = any(t.type == "SAME" or t.text.lower() in placed("like") for t in row[max(0, at - LIKE) : at])
        first, end = _clause(row, at, last)
        over = any(" ".join(t.text.lower() for t in row[i : i + 2]).startswith(LATER) for i in range(end, len(row)))
        paid = any(t.text.lower() in placed("was") for t in row[first:end])
        if term.type == "PRON" and not (like or paid):
            continue  # "the last one" may be a piece
        told = [i for i in range(first, end) if row[i].type in AMOUNTS and (over or _was(row, i))]
        for i in told:
            out[i] = row[i].unused()
        if like or told:
            out[at:last] = [t.unused() for t in row[at:last]]
    return out


def _end(row: list[Term], at: int) -> int:
    """The end of "last year", which may be one term or two, or of "the last one"; `at` where no such time begins."""
    words = row[at].text.lower().split()
    if len(words) == 1 and at + 1 < len(row):
        words += row[at + 1].text.lower().split()
        end = at + 2
    else:
        end = at + 1
    if words[:1] == ["the"]:
        words = words[1:]
    past = len(words) > 1 and words[0] in placed("last") and words[1] in placed("times")
    return end if past else at


def _clause(row: list[Term], at: int, last: int) -> tuple[int, int]:
    """Where the clause around a time begins and ends; a comma right behind the time goes on with it."""
    first, end = at, last
    while first and row[first - 1].type != "SEP":
        first -= 1
    opens = first == at and end < len(row) and row[end].type == "SEP"
    end += opens
    while end < len(row) and (row[end].type != "SEP" or _goes_on(row, end)):
        end += 1
    return first, end


def _goes_on(row: list[Term], at: int) -> bool:
    """Whether what follows a comma tells of the past as well: "like last year, that was 420"."""
    return at + 1 < len(row) and row[at + 1].type == "PRON" and _was(row, at + NEAR)


def _was(row: list[Term], at: int) -> bool:
    """Whether a number is told of the past: "was 550", "we paid 400"."""
    money = at < len(row) and row[at].type in {"MONEY", "NUM"}
    return money and any(term.text.lower() in placed("was") for term in row[max(0, at - NEAR) : at])
