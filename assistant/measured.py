"""A figure asked for by name: "how thick is it", "how much is the deposit". It is told with its reason."""

from functools import lru_cache

from assistant.asked import Asked, Blocks
from assistant.naming import spoken_of
from assistant.why import reason
from grammar.talk.orders import Patterns
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token, scan
from grammar.word_files import placed
from rules import Book, Figure
from rules.blocks import JOB


def measured(asked: Asked) -> Blocks | None:
    """The figure, where the turn asks for one and changes nothing; the words that ask are then used."""
    now, reading = asked.now, asked.reading
    same = now.pieces and (now.pieces, now.job) == (asked.before.pieces, asked.before.job) and now.pending is None
    if not same or now.intent not in (None, "price"):
        return None
    tokens = scan(reading.text)
    found = _figure(asked, tokens)
    if found is None:
        return None
    figure, used = found
    words = {tokens[at].lower for at in used}
    if now.intent is not None and words.isdisjoint(" ".join(reading.unread_as or reading.unread).lower().split()):
        return None  # "how much is it": the price answers that
    said = zip(reading.unread, reading.unread_as or reading.unread, strict=True)
    reading.unread = [text for text, own in said if not {*own.lower().split()} <= words]
    return reason(asked, figure)


def _figure(asked: Asked, tokens: list[Token]) -> tuple[Figure, frozenset[int]] | None:
    """The figure whose pattern takes most words, that of the piece in focus first."""
    best: tuple[Figure, frozenset[int]] | None = None
    found = list(_patterns(asked.book).standing(tokens))
    for kind, piece in _scopes(asked):
        for (id, of), used in found:
            figure = asked.made.figure(id, piece) if kind in of and len(used) > len(best[1] if best else ()) else None
            if figure is not None:
                best = figure, used
    return best


def _scopes(asked: Asked) -> list[tuple[str, int | None]]:
    """Whose figures are looked through: of what the turn names, else of the piece in focus and then of the others."""
    named = sorted(spoken_of(asked.book, asked.now, asked.reading.text))
    focus = asked.now.focus
    places = named or sorted(range(len(asked.now.pieces)), key=lambda place: place != focus)
    return [*((asked.now.pieces[place].kind, place) for place in places), (JOB, None)]


def asks_figure(book: Book, kinds: set[str], tokens: list[Token]) -> frozenset[int]:
    """The words of a turn that ask for a figure of these kinds, most of them; none where a number is beside them."""
    found = [used for (_, of), used in _patterns(book).standing(tokens) if not kinds.isdisjoint(of)]
    used = max(found, key=len, default=frozenset[int]())
    beside = (token for at, token in enumerate(tokens) if at not in used)
    numbers = any(token.kind == "number" or token.lower in number_words().cardinals for token in beside)
    whether = bool(tokens) and tokens[0].lower in placed("asks_if")
    return frozenset() if numbers and not whether else used


@lru_cache(maxsize=2)  # the shipped book, and that of the house
def _patterns(book: Book) -> Patterns[tuple[str, tuple[str, ...]]]:
    return Patterns(((fact.id, fact.of), pattern) for fact in book.every_fact() for pattern in fact.asked)
