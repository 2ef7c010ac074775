"""Checks of formulas and texts: names, what is measured, circles, places."""

from collections.abc import Iterator

from rules.blocks import ANY, JOB, Fact, PieceKind
from rules.book import Book
from rules.dimensions import Measurer, Mismatch, measure_of_fact
from rules.errors import BookError
from rules.formula import FormulaError, parse
from rules.functions import FUNCTIONS
from rules.nearest import clause, offer
from rules.nodes import Call, Is, Known, Name, Node, OverPieces, walk, with_words
from rules.texts import places
from rules.units import UnitError, read_unit


def check_rules(book: Book) -> Iterator[BookError]:
    """Mistakes in the rules, remarks and texts of a book whose blocks are sound."""
    found: dict[str, BookError] = {}
    for error in _all(book):
        found.setdefault(str(error), error)
    if found:
        return iter(found.values())
    return _circles(book)


def _all(book: Book) -> Iterator[BookError]:
    for fact in book.every_fact():
        for kind in _kinds(book, fact.of):
            yield from _Place(book, kind, fact.file, fact.id).fact(fact)
    for remark in book.remarks:
        for kind in _kinds(book, remark.of):
            place = _Place(book, kind, remark.file, remark.id)
            if remark.when is not None:
                yield from place.formula(remark.when, "flag")
            for text in (remark.text, *remark.choices):
                yield from place.text(text)
            yield from place.names(remark.drop)
    for block in book.blocks:
        if block.kind == "piece":
            yield from _Place(book, block.id, block.file, block.id).piece(book.pieces[block.id])
        elif block.kind == JOB:
            yield from _Place(book, JOB, block.file, block.id).names(tuple(block.raw.get("shows", ())))


def _kinds(book: Book, of: tuple[str, ...]) -> list[str]:
    """The kinds of piece that `of` names, with "any" spelt out."""
    named = [kind for kind in of if kind != ANY]
    return [*named, *(kind for kind in book.pieces if ANY in of and kind not in named)]


class _Place:
    """One block as one kind of piece sees it."""

    def __init__(self, book: Book, kind: str, file: str, block: str) -> None:
        self.book, self.kind, self.file, self.block = book, kind, file, block

    def fact(self, fact: Fact) -> Iterator[BookError]:
        for rule in fact.rules:
            if rule.when is not None:
                yield from self.formula(rule.when, "flag")
            yield from self.formula(rule.text, fact.type, fact)
            yield from self.text(rule.why)
        for text in (fact.why, fact.ask, fact.short):
            yield from self.text(text)

    def piece(self, piece: PieceKind) -> Iterator[BookError]:
        parts = [id for part in piece.parts for id in (part.size, part.inflated, part.count)]
        heard = [str(id) for id in piece.hears.values()]
        yield from self.names((*piece.shows, *([piece.main] if piece.main else []), *parts, *heard))

    def names(self, ids: tuple[str, ...]) -> Iterator[BookError]:
        for id in ids:
            try:
                self._find(id)
            except Mismatch as wrong:
                yield self._error(wrong.what, wrong.mend)

    def formula(self, text: str, wanted_type: str, fact: Fact | None = None) -> Iterator[BookError]:
        try:
            node = parse(text)
            if fact is not None:
                node = with_words(node, frozenset(fact.choices))
            self._over_pieces(node)
            measured = Measurer(self._find).measure(node)
            wanted = measure_of_fact(fact) if fact is not None else None
            if measured.type != wanted_type and {measured.type, wanted_type} != {"quantity", "clock"}:
                raise Mismatch(f"{text!r} gives a {measured.type}, not a {wanted_type}", "mend the formula or the type")
            if wanted is not None and wanted.dimension is not None and measured.dimension != wanted.dimension:
                raise Mismatch(
                    f"{text!r} gives {measured.dimension or 'a plain number'}, but {wanted.said} measures "
                    f"{wanted.dimension or 'a plain number'}",
                    "mend the formula or the unit",
                )
        except FormulaError as error:
            yield self._error(clause(error), "write it as DEVELOPERS.md shows")
        except Mismatch as wrong:
            yield self._error(wrong.what, wrong.mend)

    def text(self, text: str) -> Iterator[BookError]:
        for id, unit in places(text):
            try:
                fact = self._find(id)
                if unit is not None and read_unit(unit).powers != read_unit(fact.unit).powers:
                    raise Mismatch(f"{id} is in {fact.unit!r}, not to be shown in {unit!r}", "name a unit that fits")
            except Mismatch as wrong:
                yield self._error(f"the text has a place for {id!r}: {wrong.what}", wrong.mend)
            except UnitError as unknown:
                yield self._error(f"the text has a place for {id!r}: {clause(unknown)}", "write a unit of units.txt")

    def _find(self, id: str) -> Fact:
        fact = self.book.fact(id, self.kind)
        if fact is not None:
            return fact
        if self.kind == JOB and id in self.book.facts:
            return self.book.facts[id][0]  # only total() and its like may name it; _over_pieces sees to that
        known = {f.id for f in [*self.book.facts_of(self.kind), *self.book.facts_of(JOB)]}
        whose = "the job" if self.kind == JOB else self.kind
        raise Mismatch(f"{id!r} is not known for {whose}", offer(id, known))

    def _over_pieces(self, node: Node) -> None:
        for part in walk(node):
            match part:
                case OverPieces(how, id) if self.kind != JOB:
                    raise Mismatch(
                        f"a piece cannot look over all pieces with {how}({id})", 'make it a fact of = ["job"]'
                    )
                case Name(id) | Is(id, _, _) | Known(id, _) if self.kind == JOB and not self._of_job(id):
                    if id in self.book.facts:
                        raise Mismatch(f"{id} belongs to pieces, not to the job", f"write total({id}) or most({id})")
                case Name(id) if self.kind != JOB and self.book.is_of_job(id, self.kind) and _totals(self.book, id):
                    raise Mismatch(
                        f"{id} looks over all pieces, so no piece can rest on it", "make it a fact of the job"
                    )

    def _of_job(self, id: str) -> bool:
        return self.book.fact(id, JOB) is not None

    def _error(self, what: str, mend: str) -> BookError:
        return BookError(self.file, self.block, what, mend)


def _totals(book: Book, id: str, seen: frozenset[str] = frozenset()) -> bool:
    """Whether a fact of the job looks over the pieces, itself or through others."""
    if id in seen:
        return False
    return any(name.endswith(")") or _totals(book, name, seen | {id}) for name in _reads(book, JOB, id))


def _reads(book: Book, kind: str, id: str) -> list[str]:
    """All that any rule of a fact may read, in order; "total(x)" for a look over the pieces."""
    fact = book.fact(id, kind)
    found: dict[str, None] = {}
    for rule in fact.rules if fact else ():
        for text in (rule.when, rule.text):
            for node in walk(with_words(parse(text), frozenset(fact.choices if fact else ()))) if text else ():
                match node:
                    case Name(name) | Is(name, _, _) | Known(name, _):
                        found[name] = None
                    case OverPieces():
                        found[node.key] = None
                    case Call(name, _) if name not in FUNCTIONS:
                        found[name] = None
    return list(found)


def _circles(book: Book) -> Iterator[BookError]:
    seen: set[tuple[str, ...]] = set()
    for kind in [*book.pieces, JOB]:
        done: set[str] = set()
        for fact in book.facts_of(kind):
            chain = _circle(book, kind, fact.id, [], done)
            if chain and tuple(sorted(chain)) not in seen:
                seen.add(tuple(sorted(chain)))
                what = f"it needs itself: {' needs '.join(chain)}"
                yield BookError(fact.file, chain[0], what, "let one of them be said or assumed")


def _circle(book: Book, kind: str, id: str, path: list[str], done: set[str]) -> list[str] | None:
    if id in path:
        return [*path[path.index(id) :], id]
    if id in done:
        return None
    for name in _reads(book, kind, id):
        chain = _circle(book, kind, name, [*path, id], done)
        if chain:
            return chain
    done.add(id)
    return None
