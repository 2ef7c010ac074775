"""What is taken back or away: "four, sorry, nine tables", "leave the gold out", "forget the budget"."""

from fractions import Fraction

from grammar.terms import AMOUNTS, NOUNS, SIZED, Amount, Term
from grammar.word_files import load_words, placed

SEVERAL = 3
ANEW = SIZED | {"BY"}
COUNTED = NOUNS | {"LEN", "FOOTER", "BY", "PRON", "LABEL", "COLOUR", "BALLOON", "MORE"}  # behind a number of things
WEIGHED = frozenset({"CHOICE", "COLOUR", "FLAG", "NUM", "LEN"})
WEIGHING = frozenset({"SEP", "FILL", "MAKE", "DET"})  # between two that are weighed up and the one that is taken


def taken_back(row: list[Term]) -> list[Term]:
    """ "four, sorry, nine tables", "8 six foot no 9 six foot": of what is said anew, only the last was meant."""
    out = [t.moved("CORR", "corr") if _takes_back(row, at) else t for at, t in enumerate(row)]
    at = 0
    while at < len(out):
        end = at
        while end < len(out) and (out[end].type in {"SEP", "FILL"} or _is_slip(out[end])):
            end += 1
        if any(_is_slip(t) for t in out[at:end]):
            again = _said_anew(out, at, end)
            out[at - again : end] = [t.moved("FILL", "of") for t in out[at - again : end]] if again else out[at:end]
        at = end + 1
    return out


def weighed_up(row: list[Term]) -> list[Term]:
    """ "organic or classic, no, organic": of two that are weighed up, the one that is said again is meant."""
    out = list(row)
    for at, term in enumerate(row):
        if term.text.lower() != "or" or not at:
            continue
        first, second = _told(row, at - 1, -1), _told(row, at + 1, 1)
        again = second + 1
        while again < len(row) and (row[again].type in WEIGHING or _is_slip(row[again])):
            again += 1
        if first < 0 or again >= len(row) or row[again].type not in WEIGHED or again == second + 1:
            continue
        denied = row[again].type == "COLOUR" and row[again - 1].type == "NEG"  # "navy or black, no gold"
        if not denied and any(_same(row[again], row[either]) for either in (first, second)):
            out[first:again] = [t.moved("FILL", "of") for t in out[first:again]]
    return out


def _told(row: list[Term], at: int, step: int) -> int:
    """The next term from `at` on that is no small word, in either direction."""
    while 0 <= at < len(row) - 1 and row[at].type in {"FILL", "DET"}:
        at += step
    return at


def _same(one: Term, other: Term) -> bool:
    return (one.type, one.value) == (other.type, other.value)


def _is_slip(term: Term) -> bool:
    return term.type == "CORR" or (term.type == "NEG" and term.text.lower() == "no")


def _said_anew(row: list[Term], at: int, end: int) -> int:
    """How many amounts before `at` are said again, in the same order, from `end` on."""
    first, last = at, end
    while first > 0 and row[first - 1].type in ANEW:
        first -= 1
    while last < len(row) and row[last].type in ANEW:
        last += 1
    for many in range(min(at - first, last - end), 0, -1):
        if [t.type for t in row[at - many : at]] == [t.type for t in row[end : end + many]]:
            return many
    return 0


def _takes_back(row: list[Term], at: int) -> bool:
    """Whether a plain "no" takes back what was said: between commas, or before another number or size."""
    if row[at].type != "NEG" or row[at].text.lower() != "no" or not at or at + 1 == len(row):
        return False
    after = row[at + 1]
    if after.type in SIZED:
        again = any(t.type == after.type for t in row[:at])
        return again and row[at - 1].text.lower() != "with" and all(t.type != "BALLOON" for t in row[at + 2 : at + 4])
    slip = row[at + 2 : at + 3] if after.type == "SEP" else [after]
    return row[at - 1].text == after.text == "," or any(term.type == "CORR" for term in slip)


def more_like(row: list[Term]) -> list[Term]:
    """ "more like 9", "closer to ten": what was said before is put right, and there are no more of it."""
    out = list(row)
    for at in range(len(row) - 2):
        rather = row[at].text.lower() in placed("rather_than_that") and row[at + 1].text.lower() in placed("like_that")
        if rather and row[at + 2].type in AMOUNTS:
            out[at], out[at + 1] = row[at].moved("CORR", "corr"), row[at + 1].moved("FILL", "of")
    return out


def counted_aloud(row: list[Term]) -> list[Term]:
    """ "let me count one two three four five tables": only the last of them is the number."""
    out = list(row)
    numbers = [i for i, t in enumerate(row) if t.type == "NUM"]
    for first, at in enumerate(numbers):
        run = [at]
        for nxt in numbers[first + 1 :]:
            apart = any(t.type not in {"NUM", "FILL", "SEP"} for t in row[run[-1] + 1 : nxt])
            if apart or row[nxt].value.value != row[run[-1]].value.value + 1:
                break
            run.append(nxt)
        if row[at].value.value == 1 and len(run) > SEVERAL:
            for i in run[:-1]:
                out[i] = row[i].moved("FILL", "")
    return out


def denied(row: list[Term]) -> list[Term]:
    """ "eight tables not nine, I had nine in mind": a number that is denied counts nothing, not even said again."""
    out = list(row)
    for at in range(len(row) - 1):
        number = row[at + 1]
        told = (row[at].type, row[at].value, number.type) == ("NEG", "not", "NUM")
        again = told and any(t.type == "NUM" and t.value != number.value for t in row)
        beside = again and at and row[at - 1].type == "NUM"  # "eight not nine 6 ft tables"
        if not again or not (beside or row[at + 2 : at + 3] == [] or row[at + 2].type not in COUNTED):
            continue
        out[at] = row[at].moved("FILL", "of")
        for i, term in enumerate(row):
            counts = row[i + 1 : i + 2] and row[i + 1].type in COUNTED
            if i > at and term.type == "NUM" and term.value == number.value and not (counts and i > at + 1):
                out[i] = term.moved("FILL", "of")
    return out


def not_that(row: list[Term]) -> list[Term]:
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


def is_better(row: list[Term]) -> list[Term]:
    """ "no, 5s are better": what is said instead, and not denied."""
    for at in range(len(row) - 2):
        end = at + 2
        while end < len(row) and row[end].text.lower() in placed("is") | {"are", "would", "be", "look", "looks"}:
            end += 1
        said = row[at].type == "NEG" and row[at].text.lower() == "no" and row[at + 1].type in SIZED | {"NOMINALS"}
        if said and end < len(row) and row[end].text.lower() in placed("is_better"):
            out = [*row[:at], row[at].moved("CORR", "corr"), *row[at + 1 :]]
            out[end] = row[end].moved("FILL", "")
            return out
    return row


def than_thought(row: list[Term]) -> list[Term]:
    """ "double the garland, it's a longer table than I thought": why, which changes nothing more."""
    than = next((i for i, t in enumerate(row) if t.text.lower() == "than"), len(row))
    thought = any(t.text.lower() in placed("thought") for t in row[than + 1 : than + 4])
    first = next((i for i in range(than, -1, -1) if i < len(row) and row[i].type == "SEP"), 0) if thought else 0
    if not first:
        return row
    end = next((i for i in range(than, len(row)) if row[i].type == "SEP"), len(row))
    return [*row[:first], *(t.moved("FILL", "of") for t in row[first:end]), *row[end:]]


def things(row: list[Term]) -> list[Term]:
    """ "what can you do for eight 6 ft tables": no guests; "knock two off", "take three away": less of them."""
    out = list(row)
    for at, term in enumerate(row[:-2]):
        if row[at + 1].type != "NUM":
            continue
        after = row[at + 2]
        if term.type == "LABEL" and term.text.lower().endswith((" for", " of")) and after.type == "LEN":
            out[at] = term.moved("FILL", "for")
        elif term.text.lower() in placed("takes") and after.text.lower() in placed("off"):
            out[at], out[at + 2] = term.moved("REMOVE", "remove"), after.moved("FILL", "")
    return out


def lowered(row: list[Term]) -> list[Term]:
    """ "drop the bunches to 5 each", "cut the tables down to six": changed, and not left out."""
    out = list(row)
    for at, term in enumerate(row):
        if term.type != "REMOVE":
            continue
        end = at + 1
        while end < len(row) and row[end].type in {"DET", "COLOUR", "PRON", "LABEL", *NOUNS}:
            end += 1
        word = row[end].text.lower().split()[-1:] if end < len(row) else []
        below = end + 1 if word == ["down"] and end + 1 < len(row) else end
        to = below + 1 < len(row) and row[below].text.lower().split()[-1:] == ["to"]
        if end > at + 1 and to and row[below + 1].type in SIZED | {"FRAC", "PCT"}:
            out[at] = term.moved("MAKE", "make")
    return out


def left_off(row: list[Term]) -> list[Term]:
    """ "leave the greenery off", "leave the gold out of it": it is taken away."""
    out, leaving = list(row), placed("leaving")
    for at, term in enumerate(row):
        if term.text.lower() not in leaving:
            continue
        after = [t for t in row[at + 1 : at + 5] if t.type != "DET"]
        if (
            len(after) > 1
            and after[0].type in {"FLAG", "COLOUR", "PIECE", "NOMINALS", "CHOICE"}
            and after[1].text.lower() in placed("off")
        ):
            out[at] = term.moved("REMOVE", "remove")
    return out


def of_the_job(row: list[Term]) -> list[Term]:
    """ "forget the budget": what is known of the job, named to be taken away."""
    if not any(term.type in {"REMOVE", "NEG"} for term in row):
        return row
    out, facts = list(row), load_words("places.toml")["job"]
    for at, term in enumerate(row):
        fact = facts.get(term.text.lower()) if term.type in {"FILL", "WORD"} else None
        led = next((t for t in reversed(row[:at]) if t.type not in {"DET", "FILL"}), None)
        last = at + 1 == len(row) or row[at + 1].type in {"SEP", "AND", "MORE"}
        if fact and last and led is not None and led.type in {"REMOVE", "NEG"}:
            out[at] = term.moved("LABEL", fact)
    return out


def so_many_go(row: list[Term]) -> list[Term]:
    """ "lose the last two", "drop the one at the end" as "lose two", "drop one": of several alike any may go."""
    out = list(row)
    for at in range(len(row) - 2):
        which, number = row[at + 1], row[at + 2]
        ends = at + 3 == len(row) or row[at + 3].type in {"SEP", "AND", "PREP"}
        if row[at].type != "REMOVE" or not ends:
            continue
        placed_so = (which.type, which.value) in {("NTH", "last"), ("PRON", "first")} and number.type == "NUM"
        the_one = (which.type, which.value) == ("DET", "the") and number.text.lower() == "one"
        if placed_so or (the_one and at + 3 < len(row)):
            out[at + 1] = which.moved("FILL", "")
            out[at + 2] = number.moved("NUM", Amount(Fraction(1))) if the_one else number
    return out
