"""Pieces, sums and sizes in the words of a reply."""

import re
from collections.abc import Iterator
from decimal import Decimal

from assistant.asked import Asked
from assistant.state import State
from rules import Book

LOCALE = "en_US"


def named_pieces(book: Book, state: State) -> Iterator[tuple[int, str]]:
    """Each piece's place and what to call it: "8 runners", "the arch"."""
    for place, piece in enumerate(state.pieces):
        count = piece.facts.get("count")
        noun = noun_of(book, piece.kind, count or 1)
        yield place, f"{count} {noun}" if count and count != 1 else f"the {noun}"


def spoken_of(book: Book, state: State, text: str) -> frozenset[int]:
    """The places of the pieces whose kind a text names."""
    said = f" {re.sub(r'[^a-z0-9]+', ' ', text.lower())} "
    return frozenset(
        place
        for place, piece in enumerate(state.pieces)
        if any(f" {word} " in said for word in book.kind_of(piece.kind).words)
    )


def noun_of(book: Book, kind: str, count: float) -> str:
    """ "runner" or "runners", "arches"."""
    noun = {"centerpiece": "centrepiece"}.get(kind, kind)
    words = book.kind_of(kind).words
    if count == 1:
        return noun
    several = [f"{noun}es", f"{noun}s"] if noun.endswith(("ch", "sh", "s")) else [f"{noun}s", f"{noun}es"]
    return next((word for word in several if word in words), several[0])


def cash(amount: Decimal, currency: str, *, whole: bool = False) -> str:
    """An amount in an ISO 4217 currency, as people write it: "$1,234.50", "¥1,235"; `whole` leaves the cents out."""
    from babel.numbers import format_currency

    if whole:
        return str(format_currency(amount, currency, format="¤#,##0", locale=LOCALE, currency_digits=False))
    return str(format_currency(amount, currency, locale=LOCALE))


def digits_of(currency: str) -> int:
    """Digits after the point of an ISO 4217 currency: 2, 0 for the yen."""
    from babel.numbers import get_currency_precision

    return int(get_currency_precision(currency))


def asks(asked: Asked, *words: str) -> bool:
    """Whether the turn holds one of the words."""
    text = f" {asked.reading.text.lower()} "
    return any(word in text for word in words)
