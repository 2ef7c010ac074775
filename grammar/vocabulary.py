"""What the reader knows of the trade: names of pieces, facts, choices and colours, and which values are sane.

The assistant fills it from the rule book, so that a word stands beside the fact that it names; the grammar itself
holds only the words of the language.  Lengths are inches throughout.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from grammar.record import record

Span = tuple[float, float]


@record
class FactWords:
    """One fact as people name it.

    `sane` bounds what is accepted, `usual` lists values that make a reading likelier, both in `unit`.
    `choices` maps each value of a choice (or "true"/"false" of a flag) to its words.
    """

    id: str
    of: tuple[str, ...]
    type: str = "quantity"
    unit: str = ""
    words: tuple[str, ...] = ()
    choices: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    sane: Span | None = None
    usual: tuple[float, ...] = ()

    def belongs(self, kind: str) -> bool:
        """Whether a piece of this kind (or "job") can have the fact."""
        return kind in self.of or ("any" in self.of and kind != "job")

    def fits(self, value: float) -> bool:
        """Whether the value is within the sane bounds."""
        return self.sane is None or self.sane[0] <= value <= self.sane[1]


@record
class PieceWords:
    """One kind of piece, or a piece of furniture that a piece lies on.

    `measures` maps the roles of measure words (width, height, length, across, along ...) to facts; `bare` is the fact
    that one size without a role means ("" where it has to be asked); `by` are the facts of "A by B", in order;
    `number` is the fact that a bare number amends.  Furniture has `piece`, the kind that it stands for.
    """

    kind: str
    words: tuple[str, ...]
    measures: Mapping[str, str] = field(default_factory=dict)
    bare: str = ""
    by: tuple[str, ...] = ()
    number: str = "count"
    piece: str = ""
    needs: tuple[str, ...] = ()
    shapes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, eq=False)  # one of a kind, and asked for at every turn
class ToldWords:
    """A number of the book that can be told in whole clauses: `unit` is that of its value.

    Of a table one row is told at a time, and `by` is the unit of its place; else `by` is empty. Each of `told` is a
    pattern as in words/orders.toml, with "@" for the place and "#" for the value; "#/&" is a value shared out among the
    number at "&", "#/" with a table's name one among as many as that table says there.
    """

    id: str
    by: str
    unit: str
    told: tuple[str, ...]


@dataclass(frozen=True)
class Vocabulary:
    """All names together, with look-ups by word and by id."""

    facts: tuple[FactWords, ...]
    pieces: tuple[PieceWords, ...]
    furniture: tuple[PieceWords, ...] = ()
    colours: tuple[str, ...] = ()
    colour_mods: frozenset[str] = frozenset()
    colour_pairs: frozenset[tuple[str, str]] = frozenset()
    nominal: tuple[float, ...] = ()
    told: tuple[ToldWords, ...] = ()
    lent: frozenset[str] = frozenset()  # words of colours that another language has and the reader's own has not

    @cached_property
    def by_id(self) -> Mapping[str, tuple[FactWords, ...]]:
        """Facts by id; one id may stand for several facts, of different kinds of piece."""
        table: dict[str, tuple[FactWords, ...]] = {}
        for fact in self.facts:
            table[fact.id] = (*table.get(fact.id, ()), fact)
        return table

    @cached_property
    def of_the_job(self) -> frozenset[str]:
        """The ids of the facts that the job has."""
        return frozenset(fact.id for fact in self.facts if "job" in fact.of)

    def fact(self, id: str, kind: str | None = None) -> FactWords | None:
        """The fact of that id that a piece of this kind or the job has; for no kind, or none of its own, the first."""
        found = self.by_id.get(id, ())
        if kind is None:
            return next((f for f in found if "any" in f.of), found[0] if found else None)
        return next((f for f in found if f.belongs(kind)), found[0] if found else None)

    @cached_property
    def kinds(self) -> Mapping[str, PieceWords]:
        """Kinds of piece by name."""
        return {piece.kind: piece for piece in self.pieces}

    def of(self, kind: str) -> Iterable[FactWords]:
        """The facts that a piece of this kind (or the job) can have."""
        return (fact for fact in self.facts if fact.belongs(kind))
