"""What is said beside the request, and what is taken back: set aside before words are bound to one another."""

from dataclasses import replace

from grammar.terms import Amount, Term
from grammar.word_files import load_words, placed, word_list

SIZED = frozenset({"NUM", "LEN"})
SEVERAL = 3
ANEW = SIZED | {"BY"}
TOLD = frozenset({"LEN", "COLOUR", "FLAG", "CHOICE", "NEG"})
NAMED = frozenset({"TABLE", "PIECE", "SHAPE", "FOOTER"})
DATING = frozenset({"day", "week"})
COUNTED = frozenset({"NUM", "LEN", "TABLE", "PIECE", "SHAPE", "COLOUR", "BALLOON", "LABEL", "PARTS", "TO", "BY"})


def beside(row: list[Term]) -> list[Term]:
    """The terms with numbers that count nothing, dates, occasions and whatever is taken back made filler or words."""
    types = {term.type for term in row}
    if "NUM" in types:
        row = _some(_unit_ahead(_things(_degrees(_counted_aloud(row)))))
    row = _of_the_job(_gone(_left_off(row)))
    if "LABEL" in types:
        row = _in_all(_telling(_too_low(_winds(row))))
    row = _blown_to(row)
    if "COLOUR" in types:
        row = _placed_colours(row)
    return _hours(_names(_taken_back(_clauses(row))))


def _things(row: list[Term]) -> list[Term]:
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


def _some(row: list[Term]) -> list[Term]:
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
            out[at] = term.moved("WORD", term.text)  # "three are for the kids" says no new number
        elif named and term.text.lower() == "some" and told in TOLD and at + 1 < lead:
            end = lead + 1
            while end + 1 < len(row) and (row[end].type, row[end + 1].type) == ("AND", told):
                end += 2
            out[at:end] = [t.moved("WORD", t.text) for t in row[at:end]]
        counted = counted or term.type == "NUM"
        named = named or (counted and term.type in NAMED)
    return out


def _placed_colours(row: list[Term]) -> list[Term]:
    """ "red on top": where on a piece a colour goes is not worked out."""
    if not any(term.text.lower() in placed("spots") for term in row):
        return row
    out = list(row)
    for at, term in enumerate(row):
        end = at + 1
        while end < len(row) and row[end].type in {"FILL", "PREP", "DET"} and end - at <= SEVERAL:
            end += 1
        run = row[at + 1 : end] if term.type == "COLOUR" else []
        words = " ".join(t.text.lower() for t in run).split()
        spots = [i for i, word in enumerate(words) if word in placed("spots")]
        if spots and words[0] in {"on", "at", "near"} and "of" not in words:
            out[at + 1 : end] = [t.moved("WORD", t.text) for t in run]
    return out


def _is(term: Term) -> bool:
    return term.type == "FILL" and term.text.lower() in placed("told_are")


def _left_off(row: list[Term]) -> list[Term]:
    """ "leave the greenery off", "leave the gold out of it": it is taken away."""
    out, leaving = list(row), placed("leaving")
    for at, term in enumerate(row):
        if term.text.lower() not in leaving:
            continue
        after = [t for t in row[at + 1 : at + 5] if t.type != "DET"]
        if len(after) > 1 and after[0].type in {"FLAG", "COLOUR", "PIECE"} and after[1].text.lower() in placed("off"):
            out[at] = term.moved("REMOVE", "remove")
    return out


def _gone(row: list[Term]) -> list[Term]:
    """ "peach is out", "the gold's gone": it is taken away."""
    if not any(term.type == "COLOUR" for term in row):
        return row
    out: list[Term] = []
    after = -1  # where such an "out" stands, which keeps the colours behind it apart
    for at, term in enumerate(row):
        end = at + 2 if at + 1 < len(row) and row[at + 1].text.lower() in placed("is") else at + 1
        gone = term.type == "COLOUR" and end < len(row) and row[end].text.lower() in placed("gone")
        if gone and (end + 1 == len(row) or row[end + 1].type in {"SEP", "AND"}):
            out.append(Term("REMOVE", "remove", term.start, term.start, ""))
            after = end
        out.append(term.moved("GAP") if at == after else term)
    return out


def _unit_ahead(row: list[Term]) -> list[Term]:
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


def _of_the_job(row: list[Term]) -> list[Term]:
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


def _degrees(row: list[Term]) -> list[Term]:
    """ "it's 95 out": how hot it is."""
    out = list(row)
    for at, term in enumerate(row[1:-1], 1):
        if term.type != "NUM" or row[at - 1].text.lower() not in word_list("it_is"):
            continue
        if row[at + 1].text.lower() in {"out", "outside"} and term.value.value in range(20, 126):
            out[at] = term.moved("TEMP", Amount(term.value.value, "deg"))
    return out


def _winds(row: list[Term]) -> list[Term]:
    """ "the wind might hit 25": what is hit is no heat."""
    out = list(row)
    for at, term in enumerate(row):
        if (term.type, term.value) != ("LABEL", "temperature") or term.text.lower().split()[0] not in placed("hits"):
            continue
        said = [i for i in range(max(at - 4, 0), at) if row[i].text.lower() in word_list("winds")]
        if said:
            out[at], out[said[-1]] = term.moved("LABEL", "wind"), row[said[-1]].moved("FILL", "")
    return out


def _too_low(row: list[Term]) -> list[Term]:
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


def _in_all(row: list[Term]) -> list[Term]:
    """ "nine in total" counts, and "spend on six tables" names no money: a label beside a number that it is not of."""
    out: list[Term] = []
    for at, term in enumerate(row):
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


def _blown_to(row: list[Term]) -> list[Term]:
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


def _telling(row: list[Term]) -> list[Term]:
    """ "12 ft dipping 2 ft": such a word tells the size that follows it, not the one before."""
    out: list[Term] = []
    for at, term in enumerate(row):
        verb = term.type == "LABEL" and out and term.text.lower() in placed("telling")
        if verb and out[-1].type in SIZED and any(t.type in SIZED for t in row[at + 1 : at + 3]):
            out.append(Term("GAP", None, term.start, term.start, ""))
        out.append(term)
    return out


def _clauses(row: list[Term]) -> list[Term]:
    """Where a clause of its own ends: "..., so ten tables", "at the church hall ten tables"."""
    out = list(row)
    for at, term in enumerate(row):
        if (term.type, term.value, term.text.lower()) == ("LABEL", "deposit", "down"):
            out[at] = term.moved("PREP", "place") if at + 1 < len(row) and row[at + 1].type in {"DET", "NTH"} else term
        if term.type not in {"FILL", "SEP", "PREP"}:
            continue
        hummed = term.text == "," and at and row[at - 1].text.lower() in word_list("hums")
        if hummed and next((t.type for t in reversed(row[:at]) if t.type != "FILL"), "") == "NUM":
            out[at] = term.moved("FILL", "")  # "fourteen um, four foot rounds"
        if term.type == "PREP" and term.text.lower() == "up":
            verb = [t.text.lower() for t in row[max(at - 2, 0) : at] if t.type in {"FILL", "WORD", "MAKE", "PRON"}]
            out[at] = term.moved("FILL", "") if set(verb) & placed("done_up") else term  # "knock me up an arch"
        if term.type != "FILL" or not at:
            continue
        if term.text.lower() == "so":
            out[at] = term.moved("SEP", "so")
        elif term.text.lower() in word_list("occasions"):
            first = at
            while first and out[first - 1].type == "FILL" and out[first - 1].value not in placed("links"):
                first -= 1
            if first and out[first - 1].type == "DET":
                first -= 2 if first > 1 and out[first - 2].type == "PREP" else 1
                out[first:at] = [t.moved("FILL", "") for t in out[first:at]]
    return out


def _taken_back(row: list[Term]) -> list[Term]:
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


def _counted_aloud(row: list[Term]) -> list[Term]:
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


def _names(row: list[Term]) -> list[Term]:
    """ "turning 40", "12 Garden Lane", "07700 900123", "3 June 2026": numbers that name or date and count nothing."""
    out = list(row)
    for at, term in enumerate(row):
        if term.type == "DUR" and term.value.unit in DATING and at and row[at - 1].text.lower() == "in":
            out[at] = term.moved("FILL", "")  # "in a fortnight" dates as "on saturday" does
        if term.type not in {"NUM", "CLOCK"}:
            continue
        before = at - 1
        while before >= 0 and row[before].value in placed("named_by"):
            before -= 1
        told = before >= 0 and row[before].text.lower() in word_list("before_name")
        after = [t.text.lower() for t in row[at + 1 : at + 4] if t.type in {"WORD", "FILL", "PIECE", "OF"}]
        dated = bool(set(after) & word_list("after_name")) and all(t.type != "NUM" for t in row[at + 1 : at + 2])
        if _is_a_side(row, at):
            continue  # "the room is 30 by 20"
        if told or dated or _is_dialled(row, at) or (at and out[at - 1].type == "WORD" and _goes_on(row, at)):
            out[at] = term.moved("WORD", term.text)
    return out


def _hours(row: list[Term]) -> list[Term]:
    """ "on saturday at seven", "it's at 7": a bare hour behind a day, a date or the party itself."""
    out = list(row)
    for at, term in enumerate(row):
        if at < 2 or term.type != "NUM" or row[at - 1].text.lower() != "at" or term.value.value not in range(1, 13):
            continue
        day = row[at - 2].text.lower()
        counts = at + 1 < len(row) and row[at + 1].type in COUNTED
        if not counts and (day in word_list("days") or row[at - 2].value == "it" or day.endswith("th")):
            out[at] = term.moved("CLOCK", (int(term.value.value) * 60, False))
    return out


def _is_a_side(row: list[Term], at: int) -> bool:
    """Whether a number is a side of something: one of "30 by 20"."""
    return any(term.type == "BY" for term in (*row[max(0, at - 1) : at], *row[at + 1 : at + 2]))


def _is_dialled(row: list[Term], at: int) -> bool:
    """Digits as of a telephone: a nought first and four of them or more, or bound to such digits."""
    digits = row[at].text
    behind = (
        row[at + 1].text == "-" and row[at + 2 : at + 3] and _is_dialled(row, at + 2) if at + 1 < len(row) else False
    )
    return bool((digits.isdigit() and len(digits) > 3 and digits[0] == "0") or behind)


def _goes_on(row: list[Term], at: int) -> bool:
    """Whether digits go on with those before them that counted nothing: the rest of a number, a year."""
    return row[at].text.isdigit() and len(row[at].text) > 3 and row[at - 1].end == row[at].start


def _is_slip(term: Term) -> bool:
    return term.type == "CORR" or (term.type == "NEG" and term.text.lower() == "no")
