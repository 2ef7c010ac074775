"""Balloons at hand: "I have two bags of white 5s and 40 navy 11s", heard with a job in hand, and taken off the list.

The words are few and stand in one order, so they are read by themselves before the reader would take them for a change.
"""

import re
from typing import Any

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.state import State
from assistant.telling import worth
from assistant.trying import money
from grammar.numbers.quantities import read_quantities
from grammar.reading import Reading
from grammar.vocabulary import Vocabulary
from rules import Book, Job, Row, Stock, shopping, work
from rules.buying import packs_of, unused

Item = dict[str, Any]  # count, and size (inches) and colour where they were said

_LEADS = r"(?:(?:and|well|oh|ok|okay|so|also|by the way|btw|actually)[, ]+)*"
_ALREADY = r"(?:already|still|also|both|about|only|just)"
_HAVE = re.compile(
    rf"^{_LEADS}(?:(?:i|we)(?:'ve| have| already have| still have| also have)?(?: {_ALREADY})*(?: got)?(?: {_ALREADY})*"
    r"|(?:there's|there is|there are)(?: still| already)?|in stock:?|at hand:?|on hand:?|stock:?)\s+(?P<rest>.+)$"
)
_OWNS = re.compile(r"\b(?:have|got|'ve|there's|there is|there are|stock|hand)\b|'ve\b")
_ASKS = re.compile(r"\?|\b(?:can|could|will|would|how|what|which|is|enough|do|does|need|want|to|for)\b")
_SIZE = re.compile(r"\b(\d{1,2}(?:\.\d+)?)(?:(?:\s*-)?\s*(?:inch(?:es|ers?)?|ins?)\b|\s*\"|'?s\b)")
_BAGS = re.compile(r"\b(?:bag|pack|packet)s?\b(?:\s+of\s+(\d+)\b(?!\s*(?:\"|-?\s*in|'?s\b)))?")
_ONE = re.compile(r"^(?:an?|one)\b")
_ONLY_BAGS = re.compile(
    r"\b(?:bags|packs|packets) of (\d{1,4})\b(?!\s*(?:\"|-?\s*in|'?s\b))|\buse (\d{1,4})[ -]?(?:packs?|bags?|count)\b"
)
_FILLERS = frozenset(
    "a an of the some in at on my our latex balloon balloons ones round rounds left over leftover leftovers spare "
    "going from last time job party home stock cupboard garage shed store van here hand already still unopened".split()
)
LONGEST_COLOUR = 3  # words
USUAL_SIZE = 11.0  # of a bag whose size was not said, inches


def read_stock(text: str, vocabulary: Vocabulary, book: Book, state: State) -> Reading | None:
    """A turn that tells what is at hand, as a reading that asks for the shopping list; None where it is none.

    Only with pieces in hand, in a plain statement, and where each thing named has a number and a colour or a size: all
    else ("I've got 300, how long can it be?") is the reader's.
    """
    line = " ".join(text.lower().replace("\u2019", "'").split()).rstrip(".!")
    found = _HAVE.match(line) if _OWNS.search(line) and not _ASKS.search(line) else None
    if found is None or not state.pieces:
        return None
    parts = re.split(r",|;|\band\b|\bplus\b|\+", found["rest"])
    items = [_item(part.strip(), vocabulary, book) for part in parts if part.strip()]
    if not items or not all(items):
        return None
    kept = {_key(item): item for item in state.job.get("stock", ())}
    kept.update({_key(item): item for item in items if item is not None})
    return Reading(job={"stock": list(kept.values())}, orders=["shopping"], text=text)


def _key(item: Item) -> tuple[Any, Any]:
    return item.get("size"), item.get("colour")


def _item(words: str, vocabulary: Vocabulary, book: Book) -> Item | None:
    size = _SIZE.search(words)
    rest = words[: size.start()] + " " + words[size.end() :] if size else words
    bags = _BAGS.search(rest)
    rest = rest[: bags.start()] + " " + rest[bags.end() :] if bags else rest
    colour = _colour(rest, vocabulary)
    numbers = [q for q in read_quantities(rest) if q.kind == "number" and q.value == int(q.value)]
    count = int(numbers[0].value) if numbers else 1 if bags and _ONE.match(rest.strip()) else 0
    for said in (numbers[0].text if numbers else "", colour or ""):
        rest = rest.replace(said, " ", 1) if said else rest
    if count < 1 or (size is None and colour is None) or not set(re.findall(r"[a-z0-9]+", rest)) <= _FILLERS:
        return None
    inches = float(size[1]) if size else None
    if bags:
        count *= int(bags[1]) if bags[1] else packs_of(work(book, Job()), inches or USUAL_SIZE)[0].holds
    item: Item = {"count": count}
    if inches is not None:
        item["size"] = int(inches) if inches == int(inches) else inches
    return {**item, "colour": colour} if colour else item


def _colour(text: str, vocabulary: Vocabulary) -> str | None:
    """The longest colour name in the words."""
    words = re.findall(r"[a-z]+", text)
    known = set(vocabulary.colours)
    for length in range(LONGEST_COLOUR, 0, -1):
        for at in range(len(words) - length + 1):
            name = " ".join(words[at : at + length])
            head, _, tail = name.partition(" ")
            if name in known or (tail and head in vocabulary.colour_mods and tail in known):
                return name
            if (head, tail) in vocabulary.colour_pairs:
                return name
    return None


# the shopping list ---------------------------------------------------------------------------------------------------


def shopping_list(asked: Asked) -> Blocks | None:
    """Bags by size and colour: what is needed with spares, what is at hand, the bags, what is left over, the cost."""
    if asked.now.compared and len(asked.now.pieces) > 1:
        return [paragraph('Say which one to keep, "the first one"; then I list what to buy for it.', asked.width)]
    only = _ONLY_BAGS.search(asked.reading.text.lower()) if not asked.reading.job.get("stock") else None
    holds = int(only[1] or only[2]) if only else 0
    rows = shopping(asked.made, holds or None)
    if not rows:
        return None
    rows = _asked_for(asked, rows)
    lines: list[str] = []
    for row in rows:
        lines += paragraph(f"- {row.size_in:g} in {row.colour or 'any colour'}: {_told(row)}", asked.width, "  ")
    return [lines, _cost(asked, rows), _not_used(asked), _tail(asked)]


def _asked_for(asked: Asked, rows: list[Row]) -> list[Row]:
    """The rows of the colours that the turn names, all of them where it names none."""
    said = f" {' '.join(re.findall('[a-z]+', asked.reading.text.lower()))} "
    return [row for row in rows if row.colour and f" {row.colour.lower()}" in said] or rows


def _told(row: Row) -> str:
    spare = row.with_spares - row.need
    held = f", {row.at_hand:,} at hand" if row.at_hand else ""
    return f"{bags_of(row)} ({row.need:,} and {spare:,} spare{held}; {row.left:,} left over)"


def bags_of(row: Row) -> str:
    """ "11 bags of 100, 1 of 25"."""
    if not row.bags:
        return "none to buy"
    (holds, packs), *more = row.bags
    first = f"{packs:,} bag{'s' if packs != 1 else ''} of {holds}"
    return ", ".join([first, *(f"{packs:,} of {holds}" for holds, packs in more)])


def _cost(asked: Asked, rows: list[Row]) -> list[str]:
    """What the bags come to, and the range that the book's own prices stand for."""
    figure, cost = asked.made.step("balloon_price"), float(sum(row.cost for row in rows))
    if figure is None or not cost:
        return []
    own = figure.how != "assumed"
    tail = "at your prices." if own else "at the book's prices, from memory; yours replace them."
    return paragraph(f"In all {'' if own else 'about '}{money(cost, asked.made)}, {tail}", asked.width)


def _not_used(asked: Asked) -> list[str]:
    left = [stock_words(item) for item in unused(asked.made)]
    return paragraph(f"At hand and not used here: {listed(left)}.", asked.width) if left else []


def stock_words(item: Stock) -> str:
    """ "40 navy 11 in"."""
    size = f"{item.size_in:g} in" if item.size_in is not None else ""
    return " ".join(filter(None, [f"{item.count:,}", item.colour, size]))


def _tail(asked: Asked) -> list[str]:
    share = asked.made.figure("spare")
    if share is None:
        return []
    text = f'Each row rounded up by itself; {worth(share)} spare. Say "20 % spare", or "bags of 50", to change it.'
    return paragraph(text, asked.width)
