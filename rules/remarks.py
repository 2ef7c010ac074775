"""Cautions, notes, answers and clashes: which of the book's remarks hold for a job, with their texts filled in."""

from collections.abc import Iterator, Sequence

from rules.blocks import Remark
from rules.book import Book
from rules.figure import Clash, Said
from rules.texts import fill
from rules.texts import places as slots
from rules.world import World

Places = Sequence[tuple[int | None, World]]  # each piece by its place in the job, the job itself under None


def holding(
    book: Book, places: Places, kind: str, ids: frozenset[str] | None = None
) -> Iterator[tuple[Remark, int | None, World]]:
    """The remarks of one kind that hold, by rank and then piece by piece; of them those of `ids`, where given."""
    found = [
        (rank, place, remark)
        for place, (_, world) in enumerate(places)
        for rank, remark in book.remarks_of(kind, world.kind)
        if (ids is None or remark.id in ids) and world.holds(remark.when)
    ]
    for _, place, remark in sorted(found, key=lambda each: each[:2]):
        yield (remark, *places[place])


def clashes(book: Book, places: Places, metric: bool) -> list[Clash]:
    """The wishes that contradict one another or cannot be had."""
    return [
        Clash(
            id=remark.id,
            piece=piece,
            text=fill(remark.text, world, metric),
            choices=[fill(choice, world, metric) for choice in remark.choices],
            drop=list(remark.drop),
        )
        for remark, piece, world in holding(book, places, "clash")
    ]


def said(book: Book, places: Places, kind: str, metric: bool, ids: frozenset[str] | None = None) -> list[Said]:
    """The remarks that hold, of `ids` where given; one said of several pieces in the same words stands once."""
    found: dict[tuple[str, str], Said] = {}
    for remark, piece, world in holding(book, places, kind, ids):
        if kind == "answer" and any(world.find(id) is None for id, _ in slots(remark.text)):
            continue  # of a piece that lacks a size
        text = fill(remark.text, world, metric)
        one = Said(id=remark.id, piece=piece, text=text, source=remark.source, rank=remark.rank)
        found.setdefault((remark.id, text), one)
    return list(found.values())
