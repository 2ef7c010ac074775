"""The rule book: every block of the TOML files in rules/book/, and of the user's house file laid over it."""

import hashlib
import tomllib
from collections import OrderedDict
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from pathlib import Path
from typing import Any

from rules.blocks import ANY, JOB, REMARKS, Fact, PieceKind, Raw, Remark, read_fact, read_piece, read_remark
from rules.errors import BookError
from rules.nearest import offer
from rules.record import record
from rules.values import read_quantity

BOOK_FOLDER = Path(__file__).with_name("book")
HOUSE_FILE = "house.toml"
_VALUES = frozenset({"assume", "is", "rows", "except"})  # what a block gives a fact its value by


@record
class Block:
    """One top-level table of a file as it was written."""

    file: str
    id: str
    raw: Raw
    from_house: bool = False

    @property
    def kind(self) -> str:
        """What the block holds: "fact" unless it says otherwise."""
        return str(self.raw.get("kind", "fact"))


@dataclass(eq=False)
class Book:
    """What the trade knows, ready to be worked with; made by load_book and not changed afterwards."""

    blocks: tuple[Block, ...]
    version: str
    facts: dict[str, tuple[Fact, ...]] = field(default_factory=dict)
    pieces: dict[str, PieceKind] = field(default_factory=dict)
    job: PieceKind = field(default_factory=lambda: read_piece(JOB, {}))
    remarks: tuple[Remark, ...] = ()
    others: dict[str, dict[str, Raw]] = field(default_factory=dict)
    looked_up: dict[tuple[str, str], Fact | None] = field(default_factory=dict, repr=False)  # facts by id and kind
    concerning: dict[tuple[str, str], list[tuple[int, Remark]]] = field(default_factory=dict, repr=False)
    closures: dict[Any, Any] = field(default_factory=dict, repr=False)  # formulas compiled so far (rules/world.py)
    shapes: dict[Any, Any] = field(default_factory=dict, repr=False)  # the ways that worlds went (rules/alike.py)
    worlds: OrderedDict[Any, Any] = field(
        default_factory=OrderedDict, repr=False
    )  # pieces worked out (rules/engine.py)

    def __getstate__(self) -> dict[str, Any]:
        """Without the blocks as written, which only checking needs, and without what can be worked out again."""
        empty: dict[str, Any] = {
            "blocks": (),
            "looked_up": {},
            "concerning": {},
            "closures": {},
            "shapes": {},
            "worlds": OrderedDict(),
        }
        return {**self.__dict__, **empty}

    def fact(self, id: str, kind: str = JOB) -> Fact | None:
        """The fact `id` as a piece of that kind knows it: its own, else the job's, else None."""
        key = (id, kind)
        if key not in self.looked_up:
            self.looked_up[key] = self._look_up(id, kind)
        return self.looked_up[key]

    def _look_up(self, id: str, kind: str) -> Fact | None:
        jobs: Fact | None = None
        for fact in self.facts.get(id, ()):
            if kind in fact.of or (ANY in fact.of and kind != JOB):
                return fact
            if JOB in fact.of:
                jobs = fact
        return jobs

    def is_of_job(self, id: str, kind: str) -> bool:
        """Whether the fact that a piece of that kind knows as `id` belongs to the whole job."""
        fact = self.fact(id, kind)
        return fact is not None and JOB in fact.of and kind not in fact.of

    def formulas(self) -> list[tuple[str, frozenset[str]]]:
        """Every formula of the facts with the words it may answer with, and every condition, each once."""
        facts = list(self.every_fact())
        whens = [*(rule.when for fact in facts for rule in fact.rules), *(one.when for one in self.remarks)]
        rules = ((rule.text, frozenset(fact.choices)) for fact in facts for rule in fact.rules)
        return list(dict.fromkeys([*rules, *((when, frozenset[str]()) for when in whens if when)]))

    def remarks_of(self, kind: str, piece: str) -> list[tuple[int, Remark]]:
        """The cautions, notes or clashes that concern a kind of piece or the job, each with its place by rank."""
        found = self.concerning.get((kind, piece))
        if found is None:
            found = self.concerning[kind, piece] = [
                (place, remark)
                for place, remark in enumerate(self.remarks)
                if remark.kind == kind and (piece in remark.of or (ANY in remark.of and piece != JOB))
            ]
        return found

    @cached_property
    def learned(self) -> tuple[Fact, ...]:
        """The facts whose value comes of jobs that are done."""
        return tuple(fact for fact in self.every_fact() if fact.learned is not None)

    def every_fact(self) -> Iterator[Fact]:
        """All facts, in the order of the files."""
        for facts in self.facts.values():
            yield from facts

    def facts_of(self, kind: str) -> list[Fact]:
        """The facts that belong to one kind of piece itself, or with "job" to the job."""
        return [f for f in self.every_fact() if kind in f.of or (ANY in f.of and kind != JOB)]

    def kind_of(self, kind: str) -> PieceKind:
        """The block of a kind of piece or of the job; an empty one when the book has none."""
        return self.job if kind == JOB else self.pieces.get(kind) or read_piece(kind, {})


def load_book(house_text: str | None = None, folder: Path = BOOK_FOLDER) -> Book:
    """The book in `folder`, with the house file's text laid over it when given.

    The shipped book is taken as checked (the tests check it whole); with a house file the whole is checked here and
    the first BookError is raised.  BookError too when a file is not TOML.
    """
    if house_text is None:
        return _shipped(folder)
    blocks, text = _read_folder(folder)
    book = build_book([*blocks, *read_blocks(HOUSE_FILE, house_text, from_house=True)], text + house_text)
    from rules.check import check_book

    for error in check_book(book, over=_shipped(folder)):
        raise error
    return book


_lent: list[Callable[[Callable[[], Book]], Book]] = []


def lend_book(recall: Callable[[Callable[[], Book]], Book]) -> None:
    """Take for the shipped book what this gives, called with what would read the folder, when it is first needed."""
    _lent[:] = [recall]


@lru_cache(maxsize=8)
def _shipped(folder: Path) -> Book:
    def read() -> Book:
        return build_book(*_read_folder(folder))

    return _lent[0](read) if _lent and folder == BOOK_FOLDER else read()


@lru_cache(maxsize=2)
def _read_folder(folder: Path) -> tuple[list[Block], str]:
    texts = {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.toml"))}
    return [block for name, text in texts.items() for block in read_blocks(name, text)], "".join(texts.values())


def read_blocks(file: str, text: str, from_house: bool = False) -> list[Block]:
    """The blocks of one TOML text; BookError when it is not TOML or a block is not a table."""
    try:
        tables = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        said = str(error).replace(" (", ", ").rstrip(")")
        raise BookError(
            file, "", f"the file is not valid TOML: {said[:1].lower()}{said[1:]}", "mend that line"
        ) from None
    except (ValueError, RecursionError):
        raise BookError(
            file, "", "a number is too long in it, or too much stands inside one another", "mend it"
        ) from None
    for id, raw in tables.items():
        if not isinstance(raw, dict):
            raise BookError(file, id, "it stands outside a block", f"write it under a heading such as [{id}]")
        of = raw.get("of", [])
        if not (isinstance(of, list) and all(isinstance(kind, str) for kind in of)):
            raise BookError(file, id, "its 'of' is no list of pieces", 'write of = ["runner"], for example')
    blocks = [Block(file, id, raw, from_house) for id, raw in tables.items()]
    return [one for block in blocks for one in _of_a_piece(block)] if from_house else blocks


def _of_a_piece(block: Block) -> list[Block]:
    """A house block [garland.sizes] is the block "sizes" of the garland alone; any other stays as it is."""
    inner = {id: raw for id, raw in block.raw.items() if isinstance(raw, dict) and set(raw) & _VALUES}
    rest = {key: value for key, value in block.raw.items() if key not in inner}
    own = [Block(block.file, id, {**raw, "of": [block.id]}, block.from_house) for id, raw in inner.items()]
    return [*([Block(block.file, block.id, rest, block.from_house)] if rest or not own else []), *own]


def build_book(blocks: list[Block], text: str = "") -> Book:
    """A book made of blocks, house blocks laid over the others of the same id; BookError where one is unreadable."""
    merged = _lay_over(blocks)
    book = Book(tuple(merged), hashlib.sha256((text or repr(merged)).encode("utf-8", "surrogatepass")).hexdigest()[:12])
    remarks: list[Remark] = []
    for block in merged:
        kind = block.kind
        if kind == "fact":
            fact = read_fact(block.id, block.file, block.raw, block.from_house)
            book.facts[block.id] = (*book.facts.get(block.id, ()), fact)
        elif kind == "piece":
            book.pieces[block.id] = _read(read_piece, block, block.id, block.raw)
        elif kind == JOB:
            book.job = _read(_job_with, block, book.job, block.raw)
        elif kind in REMARKS:
            remarks.append(_read(read_remark, block, block.id, block.file, block.raw))
        else:
            _read(tuple, block, block.raw.get("words", ()))
            book.others.setdefault(kind, {})[block.id] = block.raw
    book.remarks = tuple(sorted(remarks, key=lambda remark: remark.rank))
    return book


def _job_with(job: PieceKind, raw: Raw) -> PieceKind:
    """The job with what one more block of it shows and tells."""
    both = {"shows": [*job.shows, *raw.get("shows", ())], "tells": [*job.extra.get("tells", ()), *raw.get("tells", ())]}
    return read_piece(JOB, {"main": job.main, **raw, **both})


def _read(reader: Any, block: Block, *arguments: Any) -> Any:
    try:
        return reader(*arguments)
    except (KeyError, ValueError, TypeError, AttributeError, ArithmeticError) as error:
        what = f"a value is missing or cannot be read ({error})"
        raise BookError(block.file, block.id, what, "write it as DEVELOPERS.md shows") from None


def _lay_over(blocks: list[Block]) -> list[Block]:
    """The book's blocks, each with what the house says of it laid over; house blocks of their own at the end.

    A house value takes the place of the book's rules as well: what the decorator says of the house is not worked out.
    """
    house = [block for block in blocks if block.from_house]
    known = {block.id for block in blocks if not block.from_house}
    for block in house:
        if block.id not in known and block.kind == "fact" and "of" not in block.raw:
            hint = offer(block.id, known) if known else 'write of = ["job"] to add one'
            raise BookError(block.file, block.id, "the book has no such block", hint)
    house.sort(key=lambda block: "of" not in block.raw)  # what is said of one piece comes before what is said of all
    by_id: dict[str, list[Block]] = {}
    for block in house:
        by_id.setdefault(block.id, []).append(block)
    out: list[Block] = []
    seen: set[int] = set()
    for block in (block for block in blocks if not block.from_house):
        left: Block | None = block
        for over in by_id.get(block.id, ()):
            if left is not None and _same_fact(left, over):
                seen.add(id(over))
                own, left = _split(left, over)
                out.append(_over(own, over))
        if left is not None:
            out.append(left)
    return out + [block for block in house if id(block) not in seen]


def _split(block: Block, over: Block) -> tuple[Block, Block | None]:
    """The part of a block that the house block is about, and what is left of it."""
    mine, theirs = block.raw.get("of", ()), over.raw.get("of")
    if theirs is None or not (set(mine) - set(theirs)) or ANY in theirs:
        return block, None
    rest = [kind for kind in mine if kind not in theirs]
    return (
        Block(block.file, block.id, {**block.raw, "of": list(theirs)}),
        Block(block.file, block.id, {**block.raw, "of": rest}),
    )


def _over(block: Block, over: Block) -> Block:
    """A block with the house block laid over it; of a table the rows at the same place alone."""
    own_rule = "is" in over.raw or "except" in over.raw
    kept = {k: v for k, v in block.raw.items() if not (own_rule and k in ("is", "except"))}
    own_value = "assume" in over.raw or "rows" in over.raw
    said = {"source": "the house file", **over.raw} if own_value or own_rule else dict(over.raw)
    if "of" in said:
        said["of"] = block.raw.get("of", said["of"])
    if "rows" in said:
        try:
            said["rows"] = _rows(block.raw, over.raw)
        except (ValueError, TypeError, KeyError, AttributeError):
            what = "a row of the table cannot be read"
            raise BookError(over.file, over.id, what, "write rows = [{ at = 5, typical = 4 }]") from None
    return Block(over.file, block.id, {**kept, **said}, from_house=own_value)


def _rows(block: Raw, over: Raw) -> list[Raw]:
    by = block.get("by", "in")
    own = {read_quantity(row["at"], by): row for row in over["rows"]}
    return [*(row for row in block.get("rows", ()) if read_quantity(row["at"], by) not in own), *own.values()]


def _same_fact(block: Block, over: Block) -> bool:
    """Whether the house block is about this fact, for some of the pieces that have it."""
    mine = block.raw.get("of", ())
    return "of" not in over.raw or bool(set(over.raw["of"]) & set(mine)) or (ANY in mine and JOB not in over.raw["of"])
