"""What the book says where it is asked for: a danger, how a thing is fixed, or that it is not worked out."""

from functools import lru_cache

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.measured import asks_figure
from assistant.naming import named_pieces, spoken_of
from assistant.state import State
from grammar.reading import Reading
from grammar.talk.orders import Patterns, find_orders
from grammar.tokens.scan import Token, scan
from rules import Book
from rules.blocks import ANY, JOB

INTENT = "told"
MOST = 4  # remarks of one answer


def hear(book: Book, now: State, reading: Reading) -> None:
    """Let a turn that asks for a remark or a figure of the book be that and nothing else.

    Not where an order takes more of its words, nor where it supposes something or tells a size.
    """
    if not now.pieces or not reading.text:
        return
    tokens = scan(reading.text)
    size, _ = _asked_for(book, tokens, now)
    kinds = {JOB, *(piece.kind for piece in now.pieces)}
    figures = len(asks_figure(book, kinds, tokens)) if reading.asks == "plain" else 0
    orders = find_orders(tokens)
    least = orders[0].size if orders else 0
    if size and size >= max(least, figures) and (reading.asks or _says_nothing(reading)):
        reading.orders = [INTENT]
    elif figures > least:
        reading.orders, reading.mentions, reading.doubts, reading.job, reading.changing = [], [], [], {}, False


def _says_nothing(reading: Reading) -> bool:
    """Whether a turn tells nothing of the job beside what it may ask."""
    said = any(m.facts or m.steps or m.drop or m.removed or m.new for m in reading.mentions)
    return not (said or reading.job or reading.changing)


def unanswered(asked: Asked) -> Blocks | None:
    """A question that nothing answers, said plainly, with what can be asked; None where it only names what there is."""
    if asked.reading.asks == "supposing" and any(m.facts or m.steps for m in asked.reading.mentions):
        return None
    told = "I have no answer to that, so all stays as it is. Ask me what it costs or earns, how many, how long it takes"
    return [paragraph(f"{told} or lasts, what to buy, how it is fixed, whether wind or heat allows it.", asked.width)]


def told(asked: Asked) -> Blocks | None:
    """The remarks that are asked for, of the pieces that are spoken of, each with its source."""
    _, ids = _asked_for(asked.book, scan(asked.reading.text), asked.now)
    found = asked.made.answers(ids)
    meant = spoken_of(asked.book, asked.now, asked.reading.text)
    if any(one.piece in meant for one in found):
        found = [one for one in found if one.piece is None or one.piece in meant]
    names = dict(named_pieces(asked.book, asked.now))
    blocks: Blocks = []
    for one in found[:MOST]:
        several = len({other.text for other in found if other.id == one.id}) > 1 and one.piece is not None
        lines = paragraph(
            f"{names[one.piece]}: {one.text}" if several and one.piece is not None else one.text, asked.width
        )
        if lines not in blocks:
            blocks.append(lines)
    sources = list(dict.fromkeys(one.source for one in found[:MOST]))
    return [*blocks, paragraph(f"Source: {sources[0]}.", asked.width) if len(sources) == 1 else []] if blocks else None


def _asked_for(book: Book, tokens: list[Token], now: State) -> tuple[int, frozenset[str]]:
    """The remarks that concern what is in hand and whose patterns take most words, with the number of those."""
    kinds = {JOB, ANY, *(piece.kind for piece in now.pieces)}
    size, ids = 0, frozenset[str]()
    for (id, of), used in _patterns(book).standing(tokens):
        if kinds.isdisjoint(of) or len(used) < size:
            continue
        ids = ids | {id} if len(used) == size else frozenset({id})
        size = len(used)
    return size, ids


@lru_cache(maxsize=2)  # the shipped book, and that of the house
def _patterns(book: Book) -> Patterns[tuple[str, tuple[str, ...]]]:
    return Patterns(((one.id, one.of), pattern) for one in book.remarks for pattern in one.asked)
