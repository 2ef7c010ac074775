"""What a piece hangs on or lies along, whose size is told beside it: "garland over the cake table, table is 4 ft"."""

from collections.abc import Sequence

from grammar.phrases import Phrase
from grammar.reading import Context
from grammar.slots import TABLE_KIND
from grammar.vocabulary import Vocabulary

ALONG = frozenset({"length", "span"})  # what a bare size is of pieces that go along something
TAKEN = frozenset({"length", "across", "width", "along"})  # labels of the size of the host that the piece covers
SIZES = frozenset({"amount", "sides", "named", "footer"})
WORDS = 2  # that nobody knows, between "the" and a table
THEY = frozenset({"it", "it's", "they", "they're", "its"})
NEAR = 4  # phrases from a piece to the "it" that it goes along


def hosted(phrases: Sequence[Phrase], vocabulary: Vocabulary, context: Context) -> list[Phrase]:
    """The phrases without tables that another piece only goes along, whose sizes are those of the piece."""
    out = _stands_beside(list(phrases))
    out = _told_before(out, vocabulary)
    placed = False
    piece = _strand_in_hand(context, vocabulary)
    own = _is_known(context)
    at = 0
    while at < len(out):
        phrase = out[at]
        if phrase.kind == "piece":
            piece = _goes_along(phrase, vocabulary)
            placed, own = False, at > 0 and _is_length(out[at - 1])
        elif phrase.kind == "table" and piece:
            lead = _lead(out, at)
            before = out[lead - 1] if lead else None
            if _leads_to_a_place(before) and not _counted(out, lead):
                placed = True
                if before is not None and before.kind == "label":  # "a swag across the head table"
                    out[lead : at + 1] = _strange(out[lead:at])
                    at = lead
                    continue
            elif (placed or context.focus) and _is_one(phrase) and not _counted(out, lead):
                behind = at + 1 < len(out) and _is_size(out[at + 1])
                ahead = lead > 1 and _is_size(out[lead - 1]) and out[lead - 2].kind == "pron"
                if behind or ahead:
                    size = lead - 1 if ahead else lead
                    out[lead : at + 1] = strange = _strange(out[lead:at])
                    size += 0 if ahead else len(strange)
                    out[size : size + 1] = _of_the_piece(out[size], own)
                    own, at = True, size
                    while at + 1 < len(out) and out[at + 1].kind in {"named", "and"}:
                        at += 1
                        out[at : at + 1] = _of_the_piece(out[at], own)
        at += 1
    return out


def _strand_in_hand(context: Context, vocabulary: Vocabulary) -> bool:
    """Whether the piece spoken of goes along something, and no tables are in hand."""
    words = vocabulary.kinds.get(context.focus or "")
    return words is not None and words.bare in ALONG and TABLE_KIND not in context.kinds


def _is_known(context: Context) -> bool:
    return bool(ALONG & set(context.known))


def _goes_along(phrase: Phrase, vocabulary: Vocabulary) -> bool:
    words = vocabulary.kinds.get(str(phrase.value))
    return words is not None and words.bare in ALONG and phrase.value != TABLE_KIND


def _leads_to_a_place(phrase: Phrase | None) -> bool:
    return phrase is not None and (phrase.kind == "prep" or (phrase.kind == "label" and phrase.value == "across"))


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


def _is_one(phrase: Phrase) -> bool:
    noun = phrase.text.lower().removesuffix("'s").removesuffix("’s")
    return not noun.endswith("s")


def _counted(phrases: list[Phrase], at: int) -> bool:
    """Whether a number of things or "a" stands before `at`."""
    article = at < len(phrases) and phrases[at].kind == "det" and phrases[at].value == "one"
    return article or _is_number(phrases, at)


def _is_number(phrases: list[Phrase], at: int) -> bool:
    """Whether a number of things stands before `at`."""
    before = phrases[at - 1] if at else None
    return before is not None and before.kind == "amount" and before.amounts[0].type == "NUM"


def _is_size(phrase: Phrase) -> bool:
    return phrase.kind in SIZES and any(figure.type == "LEN" for figure in phrase.amounts)


def _is_length(phrase: Phrase) -> bool:
    return phrase.kind == "amount" and phrase.amounts[0].type == "LEN"


def _of_the_piece(size: Phrase, own: bool) -> list[Phrase]:
    """A size of the host as the piece's length, or left over beside a length of its own."""
    if size.kind == "and":
        return [size]
    if own or (size.kind == "named" and size.label not in TAKEN):
        return [Phrase("word", size.terms)]
    if size.kind == "sides":
        long, *rest = size.amounts
        return [Phrase("amount", size.terms[:1], amounts=(long,)), Phrase("word", size.terms[1:])] if rest else [size]
    return [Phrase("amount", size.terms, amounts=size.amounts)]


def _stands_beside(phrases: list[Phrase]) -> list[Phrase]:
    """ "two columns either side of the cake table": the table is where they stand."""
    out: list[Phrase] = []
    for phrase in phrases:
        after_det = out[-1:] and out[-1].kind == "det" and out[-2:-1]
        beside = out[-2:-1] if after_det else out[-1:]
        of = beside and beside[0].kind == "each_side" and beside[0].text.lower().endswith(" of")
        if of and phrase.kind == "table" and any(p.kind == "piece" for p in out) and _is_one(phrase):
            out = out[:-1] if after_det else out
            continue
        out.append(phrase)
    return out


def _told_before(phrases: list[Phrase], vocabulary: Vocabulary) -> list[Phrase]:
    """ "the table is 5 ft, a garland across it": the size of what the piece goes along, told before the piece."""
    first = next((i for i, p in enumerate(phrases) if p.kind in {"piece", "table", "shape"}), None)
    size = next((i for i, p in enumerate(phrases) if _is_size(p)), None)
    if first is None or size is None or phrases[size].kind == "footer":
        return phrases
    table = phrases[first].kind == "table" and first in {size - 1, size + 1} and _is_one(phrases[first])
    lead = min(first, size)
    lead -= table and lead > 0 and phrases[lead - 1].kind == "det"
    piece = next((i for i, p in enumerate(phrases) if p.kind == "piece" and i > size), None)
    if piece is None or not _goes_along(phrases[piece], vocabulary) or (table and _is_number(phrases, lead)):
        return phrases
    if not table and (first < piece or (size and phrases[size - 1].kind not in {"sep", "choice", "det"})):
        return phrases
    told = max(first, size) if table else size
    between = {p.kind for p in phrases[told + 1 : piece]}
    behind = phrases[piece + 1 : piece + NEAR]
    along = next((i for i, p in enumerate(behind) if p.kind == "pron" and p.value == "it"), None)
    led = along and _leads_to_a_place(behind[along - 1])
    if not between & {"sep", "and"} or _is_size(phrases[piece - 1]) or not led or along is None:
        return phrases
    end = piece + 2 + along
    moved = _of_the_piece(phrases[size], own=False)
    return [*phrases[: lead if table else size], *phrases[told + 1 : end], *moved, *phrases[end:]]
