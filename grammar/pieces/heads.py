"""Which phrases name a thing, and which of the other phrases belong to it."""

from dataclasses import dataclass
from enum import Enum

from grammar.phrases import Phrase
from grammar.pieces.slots import Slots
from grammar.terms import Amount

BEFORE = frozenset(
    {
        "amount",
        "sides",
        "listing",
        "det",
        "shape",
        "choice",
        "colour",
        "nominals",
        "footer",
        "balloon",
        "even",
        "more",
        "named",
        "word",
        "all",
    }
)
JOB_LABELS = frozenset({"setup_from", "event_time", "guests", "seats", "crew", "budget", "strokes"})


class Role(Enum):
    """What a naming phrase does in the turn."""

    THING = "a piece or its table"
    PLACE = "where another piece goes"
    DENIED = "what is not wanted"
    REMOVED = "what is to be taken away"


@dataclass(slots=True)
class Head:
    """A phrase that names a thing: its place, where the phrases that go before it begin, and its role."""

    at: int
    first: int
    kind: str  # a kind of piece, "table" for furniture, "ones" for "the 6 ft ones"
    role: Role = Role.THING
    prep: str = ""
    implied: bool = False  # only a size stands for it: "a six foot and an eight foot table"


def is_count(phrase: Phrase) -> bool:
    """A plain whole number."""
    if phrase.kind != "amount" or phrase.amounts[0].type != "NUM":
        return False
    high = phrase.amounts[0].high
    return not isinstance(high, Amount) or high.value.denominator == 1


def is_size(phrase: Phrase) -> bool:
    """A length without a label."""
    return phrase.kind == "amount" and phrase.amounts[0].type == "LEN"


def find_heads(phrases: list[Phrase], slots: Slots) -> list[Head]:
    """All naming phrases in order, each with its run of phrases before it."""
    for phrase in phrases:
        if phrase.kind == "named" and phrase.label in slots.vocabulary.of_the_job:
            phrase.kind = "told"  # of the whole job, so never of the thing that follows
    heads = _found(phrases, slots)
    for phrase in phrases:
        if phrase.kind == "told":
            phrase.kind = "named"
    return heads


def _found(phrases: list[Phrase], slots: Slots) -> list[Head]:
    heads: list[Head] = []
    for at, _phrase in enumerate(phrases):
        kind = _kind(phrases, at, slots)
        if kind:
            low = heads[-1].at + 1 if heads else 0
            head = Head(at, _first(phrases, at, low, touches=bool(heads)), kind)
            heads += [*_implied(phrases, head, low), head]
    for head in heads:
        _settle(head, phrases)
    return heads


def _kind(phrases: list[Phrase], at: int, slots: Slots) -> str:
    phrase = phrases[at]
    after = phrases[at + 1] if at + 1 < len(phrases) else None
    if phrase.kind == "piece" and phrase.value == "drop" and after is not None and after.kind in {"table", "piece"}:
        return ""  # "drop table" names no ceiling drop
    if phrase.kind == "piece":
        return str(phrase.value)
    if phrase.kind == "table" and _drops_table(phrases, at):
        return ""
    if phrase.kind in {"table", "ones"}:
        return phrase.kind
    if phrase.kind == "shape":
        noun = phrase.text.lower().endswith("s") and not (after and after.kind == "table")
        return "table" if noun else ""
    if phrase.kind == "footer":
        return "" if after and after.kind in {"table", "piece", "shape", "ones"} else "table"
    if phrase.kind == "nominals":
        counted = at > 0 and is_count(phrases[at - 1])
        fact = slots.fact("length", "runner", on_table=True)
        if counted and fact is not None and not (after and after.kind == "balloon"):
            return "table" if slots.value(phrase.value, fact) is not None else ""
    return ""


def _drops_table(phrases: list[Phrase], at: int) -> bool:
    """ "drop table": no table is meant to be dressed, nor all of them to be taken away."""
    return at > 0 and phrases[at - 1].kind == "piece" and phrases[at - 1].value == "drop"


def _first(phrases: list[Phrase], at: int, low: int, *, touches: bool) -> int:
    """Where the run of phrases that describe the thing at `at` begins."""
    first = at
    while first > low and _describes(phrases, first - 1, low):
        first -= 1
    if touches and first == low and first < at:
        # no comma between: only what follows the last article or number is the new thing's
        starts = [i for i in range(first, at) if phrases[i].kind == "det" or is_count(phrases[i])]
        return starts[0] if starts else at
    return _with_measures(phrases, first, at, low)


def _implied(phrases: list[Phrase], head: Head, low: int) -> list[Head]:
    """The thing of another size that stands before "and" without its name."""
    size = head.first - 2
    joined = size > low and phrases[head.first - 1].kind == "and" and is_size(phrases[size])
    if joined and any(is_size(p) for p in phrases[head.first : head.at]):
        start = phrases[size - 1]
        if start.kind == "det" or is_count(start):
            return [Head(size, size - 1, head.kind, implied=True)]
    return []


def _with_measures(phrases: list[Phrase], first: int, at: int, low: int) -> int:
    """ "a 10 ft wide by 8 ft high arch": labels go before a thing only after an article, a comma or at the start."""
    measured = [i for i in range(first, at) if phrases[i].kind == "named"]
    if first > 0 and phrases[first - 1].kind == "prep":
        return first
    if not measured or first == 0 or low == 0 or phrases[first].kind == "det" or is_count(phrases[first]):
        return first
    commas = [i for i in range(first - 1, measured[-1]) if phrases[i].kind == "sep"]
    return (commas or measured)[-1] + 1


def _describes(phrases: list[Phrase], at: int, low: int) -> bool:
    phrase = phrases[at]
    if phrase.kind == "named":
        return phrase.label not in JOB_LABELS
    if phrase.kind == "amount":
        return phrase.amounts[0].type in {"NUM", "LEN", "FRAC", "FAR"}
    if phrase.kind in BEFORE:
        return True
    if phrase.kind == "of":
        return at > low and is_size(phrases[at - 1])
    if phrase.kind == "flag":  # "an outdoor arch", "a greenery garland"
        return at > low and phrases[at - 1].kind == "det" and phrases[at - 1].value == "one"
    if phrase.kind in {"and", "sep"} and low < at + 1 < len(phrases):
        around = {phrases[at - 1].kind if at > low else "", phrases[at + 1].kind}
        return around in ({"colour"}, {"named"})
    return False


def _settle(head: Head, phrases: list[Phrase]) -> None:
    """Find out from the word before the thing whether it is wanted, denied, removed or only a place."""
    before = head.first - 1
    while before >= 0 and (phrases[before].kind == "of" or phrases[before].text in {"(", ")"}):
        before -= 1
    if before < 0:
        return
    phrase = phrases[before]
    if (phrase.kind == "table" and _drops_table(phrases, before)) or _drops_table(phrases, before + 1):
        head.role = Role.REMOVED
    elif phrase.kind == "prep":
        head.role, head.prep = Role.PLACE, str(phrase.value)
    elif (
        phrase.kind == "neg"
        and phrases[before].text.lower() == "no"
        and any(is_count(p) for p in phrases[head.first : head.at])
    ):
        head.role = Role.THING  # "ten, no twelve tables": a correction
    elif phrase.kind == "neg":
        head.role = Role.DENIED
    elif phrase.kind == "remove":
        head.role = Role.REMOVED
