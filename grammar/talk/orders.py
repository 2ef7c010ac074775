"""What is asked for: patterns of words/orders.toml found in the words of a turn."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cache
from typing import Generic, TypeVar

from grammar.record import record
from grammar.tokens.lexicon import HYPHENS
from grammar.tokens.number_words import magnitude, number_words
from grammar.tokens.scan import Token
from grammar.word_files import load_words, placed

GAP = 6  # words that "~" may stand for
LEAST_MONEY = 20  # what nothing is brought down to
STOPS = frozenset({".", "!", ";", "?"})
MONEY_SIGNS = frozenset("$£€")
K = TypeVar("K")
SIGNS = frozenset({"~", "^", "$", "#", "##"})
NUMBERS = frozenset({"#", "##"})  # any number; the second is used up by the order


@record
class Order:
    """An intent, the tokens that say so, and whether the whole turn is used up by them."""

    intent: str
    used: frozenset[int]
    rank: int
    size: int


@record
class Item:
    """One place of a pattern: words of which one must stand there ("~", "^", "$", "#" as documented in the file)."""

    words: frozenset[str]
    optional: bool = False


class Patterns(Generic[K]):
    """Patterns of words, each with what it stands for, found by the words that they may begin with."""

    def __init__(self, patterns: Iterable[tuple[K, str]]) -> None:
        self._by_first: dict[str, list[tuple[K, str]]] = {}
        self._read: dict[str, tuple[tuple[K, tuple[Item, ...], frozenset[str]], ...]] = {}
        for key, text in patterns:
            for word in first_words(_items(text)):
                self._by_first.setdefault(word, []).append((key, text))

    def _begun_by(self, word: str) -> tuple[tuple[K, tuple[Item, ...], frozenset[str]], ...]:
        if word not in self._by_first:
            return ()
        if word not in self._read:
            rows = ((key, items_of(text)) for key, text in self._by_first[word])
            self._read[word] = tuple((key, items, _needed(items)) for key, items in rows)
        return self._read[word]

    def standing(self, tokens: Sequence[Token]) -> Iterator[tuple[K, frozenset[int]]]:
        """What stands in the words, once for each place where it begins, with the tokens that say it."""
        words = [(i, t) for i, t in enumerate(tokens) if t.lower not in HYPHENS and t.lower not in {",", "'", '"'}]
        present = {token.lower for _, token in words}
        for at, (_, token) in enumerate(words):
            for key, items, needed in (*self._begun_by(token.lower), *(self._begun_by("^") if at == 0 else ())):
                found = None if needed and needed.isdisjoint(present) else match(words, at, items)
                if found is not None:
                    yield key, frozenset(index for k, index in found if "#" not in items[k].words)


def _needed(items: Sequence[Item]) -> frozenset[str]:
    """Words of which one has to stand in the turn: the fewest that a place behind the first wants."""
    wanted = [item.words for item in items[1:] if not item.optional and item.words.isdisjoint(SIGNS)]
    return min(wanted, key=len, default=frozenset())


@cache
def _orders() -> Patterns[tuple[int, str]]:
    """The patterns of the orders with their rank and intent."""
    rows = enumerate(load_words("orders.toml").items())
    return Patterns(((rank, intent), text) for rank, (intent, order) in rows for text in order["say"])


def _items(pattern: str) -> Iterator[Item]:
    for part in pattern.split():
        words = part.removesuffix("?") if len(part) > 1 else part
        yield Item(frozenset(words.split("|")), words != part)


def items_of(pattern: str) -> tuple[Item, ...]:
    """The places of a pattern: words between spaces, "a|b" a choice, "a?" may be missing."""
    return tuple(_items(pattern))


def first_words(items: Iterable[Item]) -> Iterator[str]:
    """The words that a pattern may begin with."""
    for item in items:
        yield from item.words
        if not item.optional and "~" not in item.words:  # a gap may be none
            break


def find_orders(tokens: Sequence[Token]) -> list[Order]:
    """Each intent that the words hold, the best match first (most words used, then rank)."""
    best: dict[str, Order] = {}
    for (rank, intent), used in _orders().standing(tokens):
        old = best.get(intent)
        size = max(len(used), old.size if old else 0)
        best[intent] = Order(intent, used | (old.used if old else frozenset()), rank, size)
    return sorted(best.values(), key=lambda order: (-order.size, order.rank))


@cache
def _hints() -> dict[str, frozenset[str]]:
    """The words that hint at each intent."""
    return {
        intent: frozenset(str(order.get("hints", "")).split()) for intent, order in load_words("orders.toml").items()
    }


def hinted(tokens: Sequence[Token], colours: frozenset[str] = frozenset()) -> str:
    """The intent most of whose hints stand in the words, "" where none does; the first of several in the file.

    A colour hints at what is bought of it, in whatever number it is said.
    """
    words = {token.lower for token in tokens}
    words |= {"colour"} if words & (colours | {f"{colour}s" for colour in colours}) else set()
    found = {intent: len(hints & words) for intent, hints in _hints().items()}
    best = max(found, key=lambda intent: found[intent])
    return best if found[best] else ""


def in_talk(orders: list[Order], tokens: Sequence[Token], topic: str) -> list[Order]:
    """The orders, with "does it fit?" right after a budget taken for the money and not for the car."""
    first = {tokens[min(order.used)].lower for order in orders if order.intent == "solve" and order.used}
    if first & placed("bringing") and not {token.lower for token in tokens}.isdisjoint(placed("sides_named")):
        orders = [order for order in orders if order.intent != "solve"]  # "bring the height down to 7"
    orders = [order for order in orders if not _down_to_so_many(order, tokens)]
    plain = {token.lower for token in tokens if token.kind == "word"} <= placed("fitting")
    if topic == "budget" and plain:
        return [replace(order, intent="solve") if order.intent == "transport" else order for order in orders]
    return orders


def _down_to_so_many(order: Order, tokens: Sequence[Token]) -> bool:
    """ "knock it down to four", "get it down to 6 ft": so few are no money."""
    last = max(order.used, default=0)
    words = [token.lower for token in tokens[last:]]
    number = 1 if words[:1] == ["to"] and tokens[last - 1].lower == "down" else 2 if words[:2] == ["down", "to"] else 0
    said = magnitude(tokens[last + number]) if 0 < number < len(words) else None
    return order.intent in {"solve", "cheaper"} and said is not None and said < LEAST_MONEY


def match(words: list[tuple[int, Token]], at: int, items: tuple[Item, ...], k: int = 0) -> list[tuple[int, int]] | None:
    """(item, token index) of each item of items[k:] that stands from word `at` on, or None."""
    if k == len(items):
        return []
    item = items[k]
    if "~" in item.words:
        for skip in range(GAP + 1):
            rest = match(words, at + skip, items, k + 1)
            if rest is not None:
                return rest
            if at + skip >= len(words) or words[at + skip][1].lower in STOPS:
                return None
        return None
    if "^" in item.words:
        return match(words, at, items, k + 1) if at == 0 else None
    if "$" in item.words and all(token.lower in STOPS for _, token in words[at:]):
        return []
    if at < len(words):
        index, token = words[at]
        number = token.kind == "number" or token.text in MONEY_SIGNS or token.lower in number_words().cardinals
        if (token.lower in item.words and token.lower != "$") or ((item.words & NUMBERS) and number):
            rest = match(words, at + 1, items, k + 1)
            if rest is not None:
                return [(k, index), *rest]
    return match(words, at, items, k + 1) if item.optional else None


@cache
def _places(pattern: str) -> tuple[Item, ...]:
    return items_of(pattern)


def stands_in(pattern: str, tokens: Sequence[Token]) -> frozenset[int]:
    """The tokens that say the pattern, where they stand first; none where they do not."""
    words = [(i, t) for i, t in enumerate(tokens) if t.lower not in HYPHENS and t.lower not in {",", "'", '"'}]
    for at in range(len(words)):
        found = match(words, at, _places(pattern))
        if found is not None:
            return frozenset(index for _, index in found)
    return frozenset()
