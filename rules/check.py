"""Checks a book whole: every block, name, unit, range, word and text; mistakes come back as values with their mend.

Run by the tests on the shipped book and by load_book on a house file; not at every start.
"""

from collections.abc import Iterator
from itertools import combinations

from rules.blocks import ANY, EXCEPT_KEYS, FACT_KEYS, JOB, JOB_KEYS, REMARK_KEYS, REMARKS, Fact
from rules.book import Block, Book
from rules.errors import BookError
from rules.nearest import clause, nearest, offer
from rules.show import quantity
from rules.units import UnitError, from_base, read_unit

KINDS = ("fact", "piece", JOB, *REMARKS)


def check_book(book: Book, over: Book | None = None) -> list[BookError]:
    """Every mistake in the book, in the order of its files; [] when it is sound.

    Where it is laid over another that is known to be sound, and says no more than other values of what that has, its
    formulas and texts are that one's and are not gone through again.
    """
    found: list[BookError] = []
    for check in (_kinds, _keys, _whole, _scopes, _ranges, _words):
        found.extend(check(book))
    # A formula can only be measured when the blocks themselves are sound.
    if found or (over is not None and _says_only_values(book, over)):
        return found
    from rules.check_rules import check_rules  # with pint, which most house files do without

    return list(check_rules(book))


def _says_only_values(book: Book, sound: Book) -> bool:
    """Whether nothing differs but values: no fact in what it measures, how it is worked out or what is told of it."""
    if (book.pieces, book.job, book.remarks, book.others) != (sound.pieces, sound.job, sound.remarks, sound.others):
        return False
    return all(
        any(
            _but_for_values(fact) == _but_for_values(old) and {*fact.of} <= {*old.of} for old in sound.facts.get(id, ())
        )
        for id, facts in book.facts.items()
        for fact in facts
    )


def _but_for_values(fact: Fact) -> tuple[object, ...]:
    return fact.type, fact.unit, fact.by, fact.choices, fact.rules, fact.why, fact.ask, fact.short, fact.show


def _error(block: Block | Fact, what: str, mend: str) -> BookError:
    return BookError(block.file, block.id, what, mend)


def _kinds(book: Book) -> Iterator[BookError]:
    near = {kind: nearest(kind, KINDS, 1) for kind in {block.kind for block in book.blocks} if kind not in KINDS}
    for block in book.blocks:
        close = [kind for kind in near.get(block.kind, ()) if kind[:3] == block.kind[:3]]
        if close:
            yield _error(block, f"the kind {block.kind!r} is not known", f"write {close[0]!r}, or a name less like it")


def _keys(book: Book) -> Iterator[BookError]:
    known = {"fact": FACT_KEYS, JOB: JOB_KEYS, **dict.fromkeys(REMARKS, REMARK_KEYS)}
    for block in book.blocks:
        allowed = known.get(block.kind)
        if allowed is None:
            continue
        excepts = block.raw.get("except", ()) if block.kind == "fact" else ()
        for keys, names in [(block.raw, allowed), *((one, EXCEPT_KEYS) for one in excepts)]:
            for key in keys:
                if key not in names:
                    yield _error(block, f"the key {key!r} is not known", offer(key, names, 1))


def _whole(book: Book) -> Iterator[BookError]:
    """What every block must have."""
    for block in book.blocks:
        needs: list[tuple[bool, str, str]] = []
        if block.kind == "fact":
            needs = [
                ("of" not in block.raw, "it belongs to no piece", 'write of = ["runner"] or of = ["job"]'),
                (not block.raw.get("why"), "it has no why", "write why = with the reason in a few words"),
                (
                    not block.raw.get("source"),
                    "it has no source",
                    "name it, or write 'common practice, no published source'",
                ),
                (
                    block.raw.get("type", "quantity") in ("quantity", "table") and "unit" not in block.raw,
                    "it has no unit",
                    'write unit = "in", or "count" for a plain number',
                ),
                (
                    block.raw.get("type") == "choice" and not block.raw.get("choices"),
                    "it has nothing to choose from",
                    "write choices = { name = [words] }",
                ),
                (
                    any(
                        not one.get("name") or "is" not in one or not one.get("when")
                        for one in block.raw.get("except", ())
                    ),
                    "an exception lacks its name, its 'when' or its 'is'",
                    "write all three",
                ),
            ]
        elif block.kind in REMARKS:
            needs = [
                ("of" not in block.raw, "it belongs to no piece", 'write of = ["any"] or of = ["job"]'),
                (not block.raw.get("text"), "it has no text", "write text = with one sentence"),
                (
                    block.kind == "answer" and not block.raw.get("asked"),
                    "nothing asks for it",
                    "write asked = [patterns of words]",
                ),
                (
                    block.kind in ("caution", "answer") and not block.raw.get("source"),
                    "it has no source",
                    "name it, or write 'common practice, no published source'",
                ),
            ]
        yield from (_error(block, what, mend) for lacks, what, mend in needs if lacks)


def _scopes(book: Book) -> Iterator[BookError]:
    kinds = {*book.pieces, JOB, ANY}
    for block in book.blocks:
        if block.kind in ("fact", *REMARKS):
            for kind in block.raw.get("of", ()):
                if kind not in kinds:
                    yield _error(block, f"no piece is called {kind!r}", offer(kind, kinds, 1))
    for facts in book.facts.values():
        for first, second in combinations(facts, 2):
            both = set(first.of) & set(second.of) or {ANY} & {*first.of, *second.of} - {JOB}
            if both and not (first.from_house or second.from_house):  # the house may say more of one piece
                yield _error(second, f"{first.file} already says this of {min(both)}", "keep one of the two")
            elif first.is_number and second.is_number and not _same_unit(first, second):
                yield _error(
                    second, f"its unit is {second.unit!r}, in {first.file} {first.unit!r}", "measure both alike"
                )
    seen: dict[str, str] = {}
    for block in book.blocks:
        if block.kind == "piece":
            if block.id in seen:
                yield _error(block, f"{seen[block.id]} already has this piece", "keep one of the two")
            seen[block.id] = block.file


def _same_unit(first: Fact, second: Fact) -> bool:
    try:
        return read_unit(first.unit).powers == read_unit(second.unit).powers
    except UnitError:
        return False


def _ranges(book: Book) -> Iterator[BookError]:
    for fact in book.every_fact():
        try:
            read_unit(fact.unit), read_unit(fact.show)
        except UnitError as error:
            yield _error(fact, clause(error), "write a unit of units.txt")
            continue
        yield from _range(fact)


def _range(fact: Fact) -> Iterator[BookError]:
    sane, assume = fact.sane, fact.assume
    if sane is not None and sane[0] >= sane[1]:
        yield _error(fact, f"what is sane runs {_list(fact, sane)}", "write the lower first")
        return
    if fact.type == "table" and assume is not None:
        if not assume.typical:
            yield _error(fact, "the table has no rows", "write rows = [{ at = 5, typical = 4 }]")
        for (at, low), (_, typical), (_, high) in zip(assume.low, assume.typical, assume.high, strict=True):
            if not low <= typical <= high:
                row = quantity(from_base(at, fact.by), fact.by)
                yield _error(
                    fact, f"the row at {row} runs {_list(fact, (low, typical, high))}", "write low <= typical <= high"
                )
            elif sane is not None and not sane[0] <= low <= high <= sane[1]:
                row = quantity(from_base(at, fact.by), fact.by)
                yield _error(
                    fact,
                    f"the row at {row} runs {_list(fact, (low, high))}, outside what is sane, {_list(fact, sane)}",
                    "widen 'sane' or mend the row",
                )
    if fact.is_number and assume is not None:
        values = (assume.low, assume.typical, assume.high)
        if not values[0] <= values[1] <= values[2]:
            yield _error(fact, f"the range runs {_list(fact, values)}", "write low <= typical <= high")
        elif sane is not None and not sane[0] <= values[0] <= values[2] <= sane[1]:
            yield _error(
                fact,
                f"the range runs {_list(fact, values)}, outside what is sane, {_list(fact, sane)}",
                "widen 'sane' or mend the range",
            )
    if sane is not None:
        for value in fact.usual:
            if not sane[0] <= value <= sane[1]:
                yield _error(
                    fact,
                    f"the usual {_list(fact, (value,))} is outside what is sane, {_list(fact, sane)}",
                    "widen 'sane' or drop it",
                )
    if fact.type == "choice" and assume is not None and assume.typical not in fact.choices:
        yield _error(
            fact, f"it takes {assume.typical!r}, which is no choice", f"write one of {', '.join(fact.choices)}"
        )


def _list(fact: Fact, values: tuple[float, ...]) -> str:
    return ", ".join(f"{from_base(value, fact.unit):g}" for value in values)


def _words(book: Book) -> Iterator[BookError]:
    for kind in [*book.pieces, JOB]:
        facts = [*book.facts_of(kind), *(book.facts_of(JOB) if kind != JOB else [])]
        yield from _claims(
            [
                (word, fact.id, fact.file)
                for fact in facts
                for word in [*fact.words, *(w for ws in fact.choices.values() for w in ws)]
            ]
        )
    files = {block.id: block.file for block in book.blocks if block.kind == "piece"}
    yield from _claims([(word, piece.id, files[piece.id]) for piece in book.pieces.values() for word in piece.words])
    for kind, blocks in book.others.items():
        where = {block.id: block.file for block in book.blocks if block.kind == kind}
        yield from _claims([(str(word), id, where[id]) for id, raw in blocks.items() for word in raw.get("words", ())])


def _claims(claims: list[tuple[str, str, str]]) -> Iterator[BookError]:
    owner: dict[str, str] = {}
    for word, id, file in claims:
        first = owner.setdefault(word.lower(), id)
        if first != id:
            yield BookError(
                file, id, f"the word {word!r} already belongs to [{first}]", "give one of the two another word"
            )
