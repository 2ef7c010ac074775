"""The book's words, handed to the reader: which facts can be said, how, and what is sane."""

from typing import TYPE_CHECKING, Any

from grammar.vocabulary import FactWords, PieceWords, ToldWords, Vocabulary
from rules.units import from_base
from rules.values import read_quantity

if TYPE_CHECKING:
    from rules.blocks import Fact
    from rules.book import Book

SPOKEN = {"quantity", "choice", "flag", "range", "sizes", "colours", "clock"}
NEVER_LABELS = {"count"}  # its words are the pieces' own names


def make_vocabulary(book: "Book") -> Vocabulary:
    """The vocabulary of a book; palettes give the colours, "furniture" blocks what pieces lie on."""
    pieces = tuple(_piece(kind.id, kind.words, kind.extra) for kind in book.pieces.values())
    furniture = tuple(_piece(id, raw.get("words", ()), raw) for id, raw in book.others.get("furniture", {}).items())
    taken = {word for piece in (*pieces, *furniture) for word in piece.words}
    facts = [_fact(book, fact, taken) for fact in book.every_fact() if _can_be_said(fact)]
    facts += _heard_otherwise(book, facts)
    nominal = dict.fromkeys(size for fact in book.facts.get("sizes", ()) for size in _in_unit(fact, fact.usual) or ())
    colours, mods, pairs = _palettes(book)
    return Vocabulary(
        tuple(facts),
        pieces,
        furniture,
        colours,
        mods,
        pairs,
        tuple(sorted(nominal)),
        tuple(_told(fact) for fact in book.every_fact() if fact.told),
        _lent(book),
    )


def _told(fact: "Fact") -> ToldWords:
    return ToldWords(fact.id, fact.by if fact.type == "table" else "", fact.unit, fact.told)


def _can_be_said(fact: "Fact") -> bool:
    """Facts that are inputs, not only worked out."""
    return fact.type in SPOKEN and (fact.assume is not None or all(rule.when is not None for rule in fact.rules))


def _fact(book: "Book", fact: "Fact", taken: set[str]) -> FactWords:
    """The fact under the name that it is heard by."""
    names = {id: heard for kind in fact.of for heard, id in book.kind_of(kind).hears.items()}
    words = () if fact.id in NEVER_LABELS else tuple(w for w in fact.words if w not in taken)
    return FactWords(
        names.get(fact.id, fact.id),
        fact.of,
        fact.type,
        fact.unit,
        words,
        _shown(fact),
        _in_unit(fact, fact.sane),
        _in_unit(fact, fact.usual) or (),
    )


def _shown(fact: "Fact") -> dict[str, tuple[str, ...]]:
    if fact.type == "quantity":
        return {
            str(from_base(read_quantity(value, fact.unit), fact.unit)): tuple(w) for value, w in fact.choices.items()
        }
    return {value: tuple(words) for value, words in fact.choices.items()}


def _in_unit(fact: "Fact", values: tuple[float, ...] | None) -> Any:
    """Values of the engine (base units) in the unit of the fact."""
    if values is None or fact.type not in {"quantity", "range", "sizes"}:
        return None
    return tuple(from_base(value, fact.unit) for value in values)


def _heard_otherwise(book: "Book", facts: list[FactWords]) -> list[FactWords]:
    """Names that are heard as one fact and worked with as another (a piece's `hears`)."""
    have = {fact.id for fact in facts}
    extra: dict[str, FactWords] = {}
    have -= {f.id for f in facts if "any" not in f.of and f.id == "balloons"}
    for kind in book.pieces.values():
        for heard, id in kind.hears.items():
            fact = book.facts[id][0]
            if heard not in have and heard not in extra:
                extra[heard] = FactWords(heard, ("any",), fact.type, fact.unit)
    return list(extra.values())


def _piece(kind: str, words: Any, raw: Any) -> PieceWords:
    return PieceWords(
        kind=kind,
        words=tuple(words),
        measures=dict(raw.get("measures", {})),
        bare=raw.get("bare", ""),
        by=tuple(raw.get("by", ())),
        number=raw.get("number", "count"),
        piece=raw.get("piece", ""),
        needs=tuple(fact for way in raw.get("needs", ()) for fact in way),
        shapes={shape: tuple(names) for shape, names in raw.get("shapes", {}).items()},
    )


def _palettes(book: "Book") -> tuple[tuple[str, ...], frozenset[str], frozenset[tuple[str, str]]]:
    """Colour names, words that may stand before any of them, and shades that join with a hue."""
    names: dict[str, None] = {}
    mods: set[str] = set()
    pairs: set[tuple[str, str]] = set()
    for palette in book.others.get("palette", {}).values():
        names.update(dict.fromkeys(palette["names"]))
        mods.update(palette.get("mods", ()))
        pairs.update((shade, hue) for shade in palette.get("shades", ()) for hue in palette.get("hues", ()))
    return tuple(names), frozenset(mods), frozenset(pairs)


def _lent(book: "Book") -> frozenset[str]:
    """Words of the palettes that name their `language` which no palette of the reader's own has."""
    words: dict[bool, set[str]] = {True: set(), False: set()}
    for palette in book.others.get("palette", {}).values():
        names = (*palette["names"], *palette.get("shades", ()), *palette.get("hues", ()), *palette.get("mods", ()))
        words["language" in palette].update(word for name in names for word in name.split())
    return frozenset(words[True] - words[False])
