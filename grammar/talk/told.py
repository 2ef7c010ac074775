"""Numbers of the book told in whole clauses: "5 inch balloons are 11 cents, bags of 100", "a quad takes 15 seconds"."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from grammar.numbers.quantities import read_quantities
from grammar.numbers.quantity import Quantity, place
from grammar.record import record
from grammar.talk.orders import STOPS, Item, first_words, items_of, match
from grammar.tokens.scan import Token, scan
from grammar.vocabulary import ToldWords

PLACE, VALUE, SHARE = "@", "#", "&"
BREAKS = frozenset({",", "and", ";", "but", "while"})
LENGTH, MONEY, NUMBER, NOMINAL, DURATION = "#length", "#money", "#number", "#nominal", "#duration"
CENTS = "#cents"  # a number with two places and no sign, which is money where money is told
TIMES = frozenset({"s", "min", "hour", "day"})


@record
class Told:
    """One number: `value` in `unit` as it was said ("USD", "in", ""); `place` None where the turn names none.

    `fact`: its id; `by`: the unit of the place, "" for what is no table; `each_of`: the table that says among how many
    the value is shared out, "" where that is settled. `share`: the number at "&", where the pattern has one; it is
    reckoned in already for "#/&" and "#*&". `end`: where the value ends in the text.
    """

    fact: str
    by: str
    place: tuple[Fraction, str] | None
    value: Fraction
    unit: str
    each_of: str = ""
    share: Fraction | None = None
    end: int = 0


@record
class _Pattern:
    items: tuple[Item, ...]
    place: int | None
    value: int
    share: int | None
    how: str  # what follows the "#": "/&", "*&" or "/" and a table's name
    each_of: str


def read_told(text: str, told: Sequence[ToldWords], nominal: Sequence[float]) -> tuple[list[Told], str]:
    """The numbers told in a text, and the text without the words that tell them. Never raises.

    A place that is named once holds for what follows it. `nominal` are the sizes, in inches, that a number without a
    unit may be.
    """
    told = _likely(told, {token.lower for token in scan(text)})
    if not told:
        return [], text
    words, said = _words(text, nominal)
    found: list[tuple[int, Told]] = []
    used: set[int] = set()
    for words_of in told:
        at = 0
        while at < len(words):
            best = max(_at(words, said, at, words_of, nominal), key=lambda each: len(each[0]), default=None)
            if best is None:
                at += 1
                continue
            indices, one = best
            used |= indices
            found.append((words[at][0], one))
            at = next((k for k, (index, _) in enumerate(words) if index > max(indices)), len(words))
    found.sort(key=lambda each: each[0])
    rows = [one for _, one in found]
    for k, row in enumerate(rows):
        if row.by and row.place is None:
            others = (other.place for other in (*reversed(rows[:k]), *rows[k + 1 :]) if other.place)
            rows[k] = replace(row, place=next(others, None) or _size_before(found[k][0], words, said, used, nominal))
    return rows, _without(text, used, words)


def _size_before(
    end: int, words: list[tuple[int, Token]], said: dict[int, Quantity], used: set[int], nominal: Sequence[float]
) -> tuple[Fraction, str] | None:
    """The size of balloons that was named last before a word, which is used up by it."""
    for index, token in reversed(words):
        size = said.get(index)
        if index < end and size is not None and token.lower in (LENGTH, NOMINAL):
            used.add(index)
            return (size.value, size.unit) if _is_size(size, nominal) else None
    return None


def _is_size(size: Quantity, nominal: Sequence[float]) -> bool:
    """Whether balloons are sold in that size."""
    return float(size.value) in nominal and size.unit in ("", "in")


def _words(text: str, nominal: Sequence[float]) -> tuple[list[tuple[int, Token]], dict[int, Quantity]]:
    """The tokens with each quantity as one token that says its kind, and the quantities by token index."""
    tokens = scan(text)
    said = {q.first: q for q in read_quantities(text)}
    words: list[tuple[int, Token]] = []
    at = 0
    while at < len(tokens):
        token, quantity = tokens[at], said.get(at)
        plural = tokens[at + 1] if at + 1 < len(tokens) and tokens[at + 1].lower in ("s", "'s") else None
        if plural is not None and plural.glued and token.value is not None and float(token.value) in nominal:
            said[at] = place(tokens, at, at + 1, "number", token.value, "")  # "the 11s" are no seconds
            words.append((at, Token(token.text, NOMINAL, token.start, plural.end, "number", token.glued)))
            at += 2
            continue
        rate = quantity is not None and quantity.kind == "duration" and not quantity.form and quantity.value == 1
        if quantity is not None and not rate:  # "an hour" is a word of a rate
            bare = quantity.kind == "number" and float(quantity.value) in nominal
            exact = quantity.kind == "number" and "." in token.text and len(token.text.split(".")[1]) == len("00")
            kind = NOMINAL if bare else CENTS if exact else f"#{quantity.kind}"
            words.append((at, Token(token.text, kind, quantity.start, quantity.end, "number", token.glued)))
            at = quantity.stop
            continue
        lower = ";" if token.lower in BREAKS else token.lower
        words.append((at, Token(token.text, lower, token.start, token.end, token.kind, token.glued)))
        at += 1
    return words, said


def _at(
    words: list[tuple[int, Token]],
    said: dict[int, Quantity],
    at: int,
    table: ToldWords,
    nominal: Sequence[float],
) -> Iterator[tuple[set[int], Told]]:
    """Every way in which the table's patterns stand from word `at` on."""
    if words[at][1].lower in STOPS:
        return
    begin = _firsts(table)
    for pattern in (*begin.get(words[at][1].lower, ()), *(() if at else begin.get("^", ()))):
        found = match(words, at, pattern.items)
        if found is None or found[0][1] != words[at][0]:
            continue  # nothing before it is passed over
        here = dict(found)
        value = said[here[pattern.value]]
        size = said[here[pattern.place]] if pattern.place in here else None
        if size is not None and not _is_size(size, nominal):
            continue
        share = said[here[pattern.share]].value if pattern.share is not None else None
        if value.value <= 0 or (share is not None and share <= 0):
            continue
        by = (share or Fraction(1)) ** {"/&": -1, "*&": 1}.get(pattern.how, 0)
        yield (
            {index for _, index in found},
            Told(
                table.id,
                table.by,
                (size.value, size.unit) if size else None,
                value.value * by,
                value.unit,
                pattern.each_of,
                share,
                value.end,
            ),
        )


@lru_cache(maxsize=256)
def _firsts(table: ToldWords) -> dict[str, tuple[_Pattern, ...]]:
    """The table's patterns by the words that they may begin with."""
    found: dict[str, list[_Pattern]] = {}
    for pattern in patterns(table):
        for word in dict.fromkeys(first_words(pattern.items)):
            found.setdefault(word, []).append(pattern)
    return {word: tuple(rows) for word, rows in found.items()}


_Need = tuple[frozenset[str], ...]  # choices of plain words, one of each of which stands wherever a pattern fits


def _likely(told: Sequence[ToldWords], words: set[str]) -> list[ToldWords]:
    """The tables of which some pattern may fit a text of these words; of most turns none."""
    needs, always = _needs(tuple(told))
    here = (need for word in words & needs.keys() for need in needs[word])
    found = always | {at for at, need in here if all(map(words.intersection, need))}
    return [told[at] for at in sorted(found)]


@lru_cache(maxsize=64)
def _needs(told: tuple[ToldWords, ...]) -> tuple[dict[str, set[tuple[int, _Need]]], frozenset[int]]:
    """What the patterns of the tables need, by the words of the rarer choice, and the tables that need nothing."""
    found: dict[str, set[tuple[int, _Need]]] = {}
    always: set[int] = set()
    for at, table in enumerate(told):
        for pattern in patterns(table):
            must = [item.words for item in pattern.items if not item.optional]
            need = tuple(words for words in must if all(map(str.isalpha, words)))
            if not need:
                always.add(at)
            for word in min(need, key=lambda words: (len(words), sorted(words)), default=()):
                found.setdefault(word, set()).add((at, need))
    return found, frozenset(always)


@lru_cache(maxsize=256)
def patterns(table: ToldWords) -> tuple[_Pattern, ...]:
    """The table's patterns with their places found; ValueError where one holds no value."""
    made = []
    for text in table.told:
        items = list(items_of(text))
        at = share = value = None
        how = each_of = ""
        for k, item in enumerate(items):
            (word, *others) = item.words
            if others:
                continue
            if word == PLACE:
                at, items[k] = k, Item(frozenset({LENGTH, NOMINAL}), item.optional)
            elif word == SHARE:
                share, items[k] = k, Item(frozenset({NUMBER, NOMINAL}), item.optional)
            elif word.startswith(VALUE):
                how = word.removeprefix(VALUE)
                each_of = how.strip("/*" + SHARE)
                value, items[k] = k, Item(_kinds(table.unit), item.optional)
        if value is None:
            raise ValueError(f"the pattern {text!r} of {table.id} has no #")
        made.append(_Pattern(tuple(items), at, value, share, how, each_of))
    return tuple(made)


def _kinds(unit: str) -> frozenset[str]:
    """The kinds of quantity that may be a value in the unit."""
    above = unit.split("/", maxsplit=1)[0]
    if len(above) == len("USD") and above.isupper():
        return frozenset({MONEY, CENTS})
    if above in TIMES:
        return frozenset({DURATION})
    return frozenset({LENGTH, NOMINAL}) if above in ("in", "ft") else frozenset({NUMBER, NOMINAL})


def _without(text: str, used: set[int], words: list[tuple[int, Token]]) -> str:
    letters = list(text)
    for index, token in words:
        if index in used:
            letters[token.start : token.end] = " " * (token.end - token.start)
    return "".join(letters)
