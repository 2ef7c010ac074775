"""The size of what a piece goes along, told before the piece: "the table is 5 ft, a garland across it"."""

from grammar.phrases import Phrase
from grammar.pieces.host_sizes import goes_along, is_number, is_one, is_size, leads_to_a_place, of_the_piece
from grammar.reading import Context
from grammar.vocabulary import Vocabulary

NEAR = 5  # phrases from a piece to the "it" that it goes along
NOUNS = frozenset({"piece", "table", "shape", "amount", "sides", "named", "ones", "footer", "word"})
HEADS = frozenset({"piece", "table", "shape", "ones", "footer"})


def table_ahead(phrases: list[Phrase], vocabulary: Vocabulary) -> list[Phrase]:
    """ "the table is 5 ft, a garland across it": the phrases without the table, its size behind the piece."""
    table = next((i for i, p in enumerate(phrases) if p.kind in HEADS), None)
    size = next((i for i, p in enumerate(phrases) if is_size(p)), None)
    if table is None or size not in {table - 1, table + 1} or phrases[table].kind != "table" or size is None:
        return phrases
    lead, told = min(table, size), max(table, size)
    lead -= lead > 0 and phrases[lead - 1].kind == "det"
    piece = _next_piece(phrases, told, vocabulary)
    if piece is None or not is_one(phrases[table]) or is_number(phrases, lead):
        return phrases
    behind = _end_of_place(phrases, piece)
    if not behind:
        return phrases
    moved = of_the_piece(phrases[size], own=False)
    return [*phrases[:lead], *phrases[told + 1 : behind], *moved, *phrases[behind:]]


def sizes_ahead(phrases: list[Phrase], vocabulary: Vocabulary, context: Context) -> list[Phrase]:
    """ "the bar is 12 ft, a garland along it": a size before a piece that has none is behind it then."""
    first = next((i for i, p in enumerate(phrases) if p.kind in HEADS), None)
    sizes = [i for i, p in enumerate(phrases[:first]) if is_size(p) or p.kind == "fall"]
    piece = _next_piece(phrases, sizes[-1], vocabulary) if first is not None and sizes else None
    if piece is None or piece != first or context.kinds or any(is_size(p) for p in phrases[piece:]):
        return phrases
    told = any(p.kind in {"choice", "fall"} for p in phrases) or "prep" in {p.kind for p in phrases[: sizes[0]]}
    if sum(is_size(phrases[i]) for i in sizes) != 1 or not (told or _end_of_place(phrases, piece)):
        return phrases
    moved = [p for i in sizes for p in (of_the_piece(phrases[i], own=False) if is_size(phrases[i]) else [phrases[i]])]
    kept = [p for i, p in enumerate(phrases[:piece]) if i not in sizes]
    return [*kept, phrases[piece], *moved, *phrases[piece + 1 :]]


def _next_piece(phrases: list[Phrase], at: int, vocabulary: Vocabulary) -> int | None:
    """The piece without a size of its own that is named in a clause behind `at`, where it goes along something."""
    piece = next((i for i, p in enumerate(phrases) if p.kind == "piece" and i > at), None)
    if piece is None or not goes_along(phrases[piece].value, vocabulary) or is_size(phrases[piece - 1]):
        return None
    clause = any(p.kind in {"sep", "and", "fall"} for p in phrases[at:piece])
    return piece if clause else None


def _end_of_place(phrases: list[Phrase], piece: int) -> int:
    """The end of "across it" or "along the front" behind a piece; nothing where it goes nowhere."""
    for at in range(piece + 1, min(piece + NEAR, len(phrases))):
        phrase = phrases[at]
        led = leads_to_a_place(phrases[at - 1]) or phrases[at - 1].kind == "choice"
        it = phrase.kind == "pron" and (led or phrase.text.lower() == "of it")
        it = it or (phrase.kind == "label" and phrase.text.lower().endswith(" it"))  # "along it"
        front = phrase.kind == "det" and phrase.value == "the" and phrases[at + 1 : at + 2]
        if it or (front and led and phrases[at + 1].kind not in NOUNS):
            return at + 1
    return 0
