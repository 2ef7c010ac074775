"""What the book says where it is asked for: a danger, how a thing is fixed, or that it is not worked out."""

from collections.abc import Callable
from functools import lru_cache

from assistant.asked import Asked, Blocks
from assistant.layout import paragraph
from assistant.measured import asks_figure
from assistant.naming import named_pieces, spoken_of
from assistant.state import State
from grammar.reading import Reading
from grammar.talk.orders import Patterns, find_orders, hinted
from grammar.tokens.scan import Token, scan
from grammar.word_files import placed
from rules import Book
from rules.blocks import ANY, JOB

INTENT = "told"
HOW_MANY = frozenset({"count", "balloons"})  # "what if one gets away" tells no number
MOST = 4  # remarks of one answer


def hear(book: Book, now: State, reading: Reading) -> None:
    """Let a turn that asks for a remark or a figure of the book be that and nothing else.

    Not where an order takes more of its words, nor where it supposes something or tells a size.
    """
    says_nothing = _says_nothing(reading)
    if not now.pieces or not reading.text or not (reading.asks or says_nothing):
        return
    tokens = scan(reading.text)
    size, _ = _asked_for(book, tokens, now)
    kinds = {JOB, *(piece.kind for piece in now.pieces)}
    figures = len(asks_figure(book, kinds, tokens)) if reading.asks == "plain" else 0
    orders = find_orders(tokens)
    least = orders[0].size if orders else 0
    plain = reading.asks == "plain"
    told_sizes = [v for m in reading.mentions for fact, v in m.facts.items() if fact not in HOW_MANY]
    tells = any(isinstance(v, int | float) and not isinstance(v, bool) for v in told_sizes)
    may_be = (plain or says_nothing or (reading.asks and not tells)) if size > 1 else plain and says_nothing
    if size and size >= max(least, figures) and may_be:
        reading.orders = [INTENT]
    elif figures > least:
        reading.orders, reading.mentions, reading.doubts, reading.job, reading.changing = [], [], [], {}, False
    elif plain and not orders and not reading.orders and not figures and says_nothing:
        reading.orders = [intent for intent in [hinted(tokens, _names(now))] if intent]


def _names(now: State) -> frozenset[str]:
    """The last word of each colour in hand, which hints at what there is of it."""
    return frozenset(colour["name"].split()[-1] for piece in now.pieces for colour in piece.facts.get("colours", ()))


def _says_nothing(reading: Reading) -> bool:
    """Whether a turn tells nothing of the job beside what it may ask."""
    said = any(m.facts or m.steps or m.drop or m.removed or m.new for m in reading.mentions)
    return not (said or reading.job or reading.changing)


def unanswered(asked: Asked, answer_to: Callable[[str], Blocks | None]) -> Blocks | None:
    """What the words of a question hint at, else that nothing answers it; None where the turn sets something."""
    reading = asked.reading
    if not reading.asks or not asked.same or asked.is_new or any(m.facts or m.steps for m in reading.mentions):
        return None
    tokens = scan(reading.text)
    if asked.now.intent != INTENT and (found := told(asked)):
        return found
    supposed = not placed("conditions").isdisjoint(token.lower for token in tokens)
    hint = "" if supposed else hinted(tokens, _names(asked.now))
    found = answer_to(hint) if hint and hint != asked.now.intent else None
    none = "I have no answer to that, so all stays as it is. Ask me what it costs or earns, how many, how long it takes"
    none += " or lasts, what to buy, how it is fixed, whether wind or heat allows it."
    return found or [paragraph(none, asked.width)]


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
