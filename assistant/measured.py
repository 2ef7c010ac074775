"""A figure asked for by name: "how thick is it", "how much is the deposit". It is told with its reason."""

from assistant.asked import Asked, Blocks
from assistant.why import reason
from grammar.talk.orders import stands_in
from grammar.tokens.scan import Token, scan
from rules import Figure


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
    for kind, piece in ((asked.now.focused.kind if asked.now.focused else "job", asked.now.focus), ("job", None)):
        for fact in asked.book.facts_of(kind):
            for pattern in fact.asked:
                used = stands_in(pattern, tokens)
                figure = asked.made.figure(fact.id, piece) if len(used) > len(best[1] if best else ()) else None
                if figure is not None:
                    best = figure, used
    return best
