"""What a piece hangs on or lies along, whose size is told beside it: "garland over the cake table, table is 4 ft"."""

from collections.abc import Sequence

from grammar.phrases import Phrase
from grammar.pieces.host_sizes import (
    ALONG,
    goes_along,
    is_counted,
    is_length,
    is_one,
    is_size,
    leads_to_a_place,
    of_the_piece,
)
from grammar.pieces.hosts_ahead import sizes_ahead, table_ahead
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Context
from grammar.vocabulary import Vocabulary

WORDS = 2  # that nobody knows, between "the" and a table
THEY = frozenset({"it", "it's", "they", "they're", "its"})


def hosted(phrases: Sequence[Phrase], vocabulary: Vocabulary, context: Context) -> list[Phrase]:
    """The phrases without tables that another piece only goes along, whose sizes are those of the piece."""
    out = _stands_beside(list(phrases))
    if any(is_runner(phrase) for phrase in out):
        return out
    out, placed = _named_ahead(out, vocabulary)
    out = sizes_ahead(table_ahead(out, vocabulary), vocabulary, context)
    in_hand = goes_along(context.focus, vocabulary) and TABLE_KIND not in context.kinds
    own = bool(ALONG & set(context.known))
    piece = in_hand
    at = 0
    while at < len(out):
        phrase = out[at]
        if phrase.kind == "piece":
            piece, in_hand, placed = True, False, placed and not piece
            own = not goes_along(phrase.value, vocabulary) or (at > 0 and is_length(out[at - 1]))
        elif phrase.kind == "table" and piece:
            lead = _lead(out, at)
            before = out[lead - 1] if lead else None
            round_it = before is not None and before.kind == "shape" and out[lead].kind == "det"  # "round the table"
            if (leads_to_a_place(before) or round_it) and not is_counted(out, lead):
                placed = True
                if before is not None and before.kind in {"label", "shape"}:  # "a swag across the head table"
                    out[lead : at + 1] = _strange(out[lead:at])
                    at = lead
                    continue
            elif (placed or in_hand) and is_one(phrase) and not is_counted(out, lead):
                ahead = lead > 1 and is_size(out[lead - 1]) and out[lead - 2].kind == "pron"
                if ahead or (at + 1 < len(out) and is_size(out[at + 1])):
                    out, at = _taken(out, lead, at, own=own, ahead=ahead)
                    own = True
        at += 1
    return out


def _taken(phrases: list[Phrase], lead: int, at: int, *, own: bool, ahead: bool) -> tuple[list[Phrase], int]:
    """The phrases without the table at `at`, its sizes those of the piece, and the place of the last of them."""
    strange = _strange(phrases[lead:at])
    out = [*phrases[:lead], *strange, *phrases[at + 1 :]]
    size = lead - 1 if ahead else lead + len(strange)
    out[size : size + 1] = of_the_piece(out[size], own=own)
    while size + 1 < len(out) and (is_size(out[size + 1]) or out[size + 1].kind == "word"):
        size += 1
        out[size : size + 1] = of_the_piece(out[size], own=True)
    return out, size


def is_runner(phrase: Phrase) -> bool:
    """Whether a phrase says that tables are dressed: a runner, or a drop to the floor."""
    drop = phrase.kind == "choice" and phrase.value[0] == "coverage" and str(phrase.value[1]).startswith("drop")
    return drop or (phrase.kind == "piece" and phrase.value == TABLE_KIND)


def _lead(phrases: list[Phrase], at: int) -> int:
    """Where "the sweets" or "that" before a table begins."""
    first = at
    while first and at - first < WORDS and phrases[first - 1].kind == "word":
        first -= 1
    pointed = first and phrases[first - 1].kind in {"det", "pron"}
    return first - 1 if pointed and phrases[first - 1].text.lower() not in THEY else first


def _strange(phrases: list[Phrase]) -> list[Phrase]:
    """The words that nobody knows, which stay to be named."""
    return [phrase for phrase in phrases if phrase.kind == "word"]


def _stands_beside(phrases: list[Phrase]) -> list[Phrase]:
    """ "two columns either side of the cake table": the table is where they stand."""
    out: list[Phrase] = []
    for phrase in phrases:
        after_det = out[-1:] and out[-1].kind == "det" and out[-2:-1]
        beside = out[-2:-1] if after_det else out[-1:]
        of = beside and beside[0].kind == "each_side" and beside[0].text.lower().endswith(" of")
        if of and phrase.kind == "table" and any(p.kind == "piece" for p in out) and is_one(phrase):
            out = out[:-1] if after_det else out
            continue
        out.append(phrase)
    return out


def _named_ahead(phrases: list[Phrase], vocabulary: Vocabulary) -> tuple[list[Phrase], bool]:
    """ "something over the buffet table, a garland": the phrases without the place, and whether one was named."""
    heads = [i for i, p in enumerate(phrases) if p.kind in {"piece", "table", "shape", "ones", "footer"}]
    if len(heads) < len("ab") or phrases[heads[0]].kind != "table":
        return phrases, False
    table, piece = heads[:2]
    lead = _lead(phrases, table)
    led = lead and leads_to_a_place(phrases[lead - 1]) and phrases[lead].kind != "amount"
    strand = phrases[piece].kind == "piece" and goes_along(phrases[piece].value, vocabulary)
    sized = any(is_size(p) for p in phrases[table + 1 : piece - 1])
    if not (led and strand and is_one(phrases[table])) or is_counted(phrases, lead) or sized:
        return phrases, False
    return [*phrases[: lead - 1], *_strange(phrases[lead:table]), *phrases[table + 1 :]], True
