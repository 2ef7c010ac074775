"""What is asked for: patterns of words/orders.toml found in the words of a turn."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from grammar.lexicon import HYPHENS
from grammar.number_words import number_words
from grammar.scan import Token
from grammar.word_files import load_words

GAP = 6  # words that "~" may stand for
STOPS = frozenset({".", "!", ";", "?"})
MONEY_SIGNS = frozenset("$£€")
NUMBERS = frozenset({"#", "##"})  # any number; the second is used up by the order


@dataclass(frozen=True, slots=True)
class Order:
    """An intent, the tokens that say so, and whether the whole turn is used up by them."""

    intent: str
    used: frozenset[int]
    rank: int
    size: int


@dataclass(frozen=True, slots=True)
class Item:
    """One place of a pattern: words of which one must stand there ("~", "^", "$", "#" as documented in the file)."""

    words: frozenset[str]
    optional: bool = False


@cache
def patterns() -> tuple[tuple[int, str, tuple[Item, ...]], ...]:
    """Every pattern with its rank and intent."""
    rows = []
    for rank, (intent, table) in enumerate(load_words("orders.toml").items()):
        for text in table["say"]:
            items = []
            for part in str(text).split():
                optional = part.endswith("?") and len(part) > 1
                items.append(
                    Item(frozenset(part.removesuffix("?").split("|") if optional else part.split("|")), optional)
                )
            rows.append((rank, intent, tuple(items)))
    return tuple(rows)


@cache
def firsts() -> dict[str, tuple[tuple[int, str, tuple[Item, ...]], ...]]:
    """Patterns by the words that they may begin with."""
    table: dict[str, list[tuple[int, str, tuple[Item, ...]]]] = {}
    for row in patterns():
        for item in row[2]:
            for word in item.words:
                table.setdefault(word, []).append(row)
            if not item.optional:
                break
    return {word: tuple(rows) for word, rows in table.items()}


def find_orders(tokens: Sequence[Token]) -> list[Order]:
    """Each intent that the words hold, the best match first (most words used, then rank)."""
    words = [(i, t) for i, t in enumerate(tokens) if t.lower not in HYPHENS and t.lower not in {",", "'", '"'}]
    best: dict[str, Order] = {}
    for at, (_, token) in enumerate(words):
        rows = firsts().get(token.lower, ())
        if at == 0:
            rows = (*rows, *firsts().get("^", ()))
        for rank, intent, items in rows:
            used = _match(words, at, items, 0)
            if used is not None:
                old = best.get(intent)
                size = max(len(used), old.size if old else 0)
                best[intent] = Order(intent, frozenset(used) | (old.used if old else frozenset()), rank, size)
    return sorted(best.values(), key=lambda order: (-order.size, order.rank))


def _match(words: list[tuple[int, Token]], at: int, items: tuple[Item, ...], k: int) -> list[int] | None:
    """Token indices that items[k:] use from word `at` on, or None."""
    if k == len(items):
        return []
    item = items[k]
    if "~" in item.words:
        for skip in range(GAP + 1):
            rest = _match(words, at + skip, items, k + 1)
            if rest is not None:
                return rest
            if at + skip >= len(words) or words[at + skip][1].lower in STOPS:
                return None
        return None
    if "^" in item.words:
        return _match(words, at, items, k + 1) if at == 0 else None
    if "$" in item.words:
        return [] if all(token.lower in STOPS for _, token in words[at:]) else None
    if at < len(words):
        index, token = words[at]
        number = token.kind == "number" or token.text in MONEY_SIGNS or token.lower in number_words().cardinals
        if token.lower in item.words or ((item.words & NUMBERS) and number):
            rest = _match(words, at + 1, items, k + 1)
            if rest is not None:
                return rest if "#" in item.words else [index, *rest]
    return _match(words, at, items, k + 1) if item.optional else None
