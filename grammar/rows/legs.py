"""A garland that is told leg by leg: "7 ft up one side, 4 ft over the top and 7 ft back down"."""

from grammar.terms import Amount, Term
from grammar.word_files import placed

OF_A_LEG = frozenset({"FILL", "PREP", "LABEL", "DET", "NTH", "EACH_SIDE", "PRON"})
BETWEEN = frozenset({"SEP", "AND", "FILL", "PRON"})
TWICE = frozenset({"each", "both", "either"})
SIZES = frozenset({"LEN", "NUM"})


def legs(row: list[Term]) -> list[Term]:
    """The terms with the legs of a garland added up; what only comes down at its ends is left as it is."""
    piece = next((i for i, t in enumerate(row) if t.type == "PIECE" and str(t.value) in placed("strung")), None)
    first = next((i for i, t in enumerate(row) if t.type == "LEN"), len(row))
    if piece is None or not piece < first < len(row):
        return row
    ahead = row[first - 1].text.lower() in placed("ways")  # "up 7 ft, across 4 ft, down 7 ft"
    unit, total, ways = row[first].value.unit, row[first].value.value * 0, []
    at = end = first
    while at < len(row) and row[at].type in SIZES and row[at].value.unit in {unit, ""}:
        behind = _end_of_leg(row, at + 1)
        words = " ".join(t.text.lower() for t in row[at - 1 : at] if ahead).split()
        words += [] if ahead else " ".join(t.text.lower() for t in row[at + 1 : behind]).split()
        twice = {*words} & TWICE and {*words} & placed("sides")
        way = next((word for word in words if word in placed("ways")), "side" if twice else "")
        if not way:
            return row
        total += row[at].value.value * (2 if twice else 1)
        ways.append(way)
        end = at + 1 if ahead else behind
        at = next((i for i in range(end, len(row)) if row[i].type not in BETWEEN | OF_A_LEG), len(row))
    falls = ways[1:] == ["down"] or ways[1:] == ["side"]
    if len(ways) < len("ab") or (len(ways) == len("ab") and (falls or not {"up", "side"} & {*ways})):
        return row
    out = [t.moved("FILL", "of") for t in row[first:end]]
    lead = [row[first - 1].moved("FILL", "of")] if ahead else [row[first - 1]]
    return [*row[: first - 1], *lead, row[first].moved("LEN", Amount(total, unit)), *out[1:], *row[end:]]


def _end_of_leg(row: list[Term], at: int) -> int:
    """The end of "up one side" from `at` on."""
    while at < len(row):
        behind = row[at + 1].text.lower() if at + 1 < len(row) else ""
        one_side = row[at].text.lower() == "one" and behind in placed("sides")
        place = row[at].type == "CHOICE" and row[at].value[0] == "place"
        if not (one_side or place or row[at].type in OF_A_LEG):
            break
        at += 1
    return at
