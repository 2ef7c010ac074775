"""Which pieces go along something, what leads to it, and what its size is to the piece."""

from collections.abc import Sequence

from grammar.phrases import Figure, Phrase
from grammar.pieces.slots import TABLE_KIND
from grammar.terms import Amount
from grammar.vocabulary import Vocabulary

ALONG = frozenset({"length", "span"})  # what a bare size is of pieces that go along something
TAKEN = frozenset({"length", "across", "width", "along"})  # labels of the size of the host that the piece covers
SIZES = frozenset({"amount", "sides", "named", "footer"})


def goes_along(kind: object, vocabulary: Vocabulary) -> bool:
    """Whether such a piece is as long as what it goes along."""
    words = vocabulary.kinds.get(str(kind))
    return words is not None and words.bare in ALONG and kind != TABLE_KIND


def leads_to_a_place(phrase: Phrase | None) -> bool:
    """Whether a phrase is the "over" of "over the table"."""
    return phrase is not None and (phrase.kind == "prep" or (phrase.kind == "label" and phrase.value == "across"))


def is_one(phrase: Phrase) -> bool:
    """Whether a table is named as one."""
    return not phrase.text.lower().removesuffix("'s").removesuffix("’s").endswith("s")


def is_number(phrases: Sequence[Phrase], at: int) -> bool:
    """Whether a number of things stands before `at`."""
    before = phrases[at - 1] if at else None
    return before is not None and before.kind == "amount" and before.amounts[0].type == "NUM"


def is_counted(phrases: Sequence[Phrase], at: int) -> bool:
    """Whether a number of things or "a" stands before `at`."""
    article = at < len(phrases) and phrases[at].kind == "det" and phrases[at].value == "one"
    return article or is_number(phrases, at)


def is_size(phrase: Phrase) -> bool:
    """Whether a phrase tells a size, or two."""
    sized = any(figure.type == "LEN" for figure in phrase.amounts) or phrase.kind == "sides"
    return phrase.kind in SIZES and sized


def is_length(phrase: Phrase) -> bool:
    """Whether a phrase is a size without a label."""
    return phrase.kind == "amount" and phrase.amounts[0].type == "LEN"


def of_the_piece(size: Phrase, *, own: bool) -> list[Phrase]:
    """A size of the host as the piece's length, or left over beside a length of its own."""
    if own or (size.kind == "named" and size.label not in TAKEN):
        return [Phrase("word", size.terms)]
    if size.kind != "sides":
        return [Phrase("amount", size.terms, amounts=size.amounts)]
    long = size.amounts[0]
    unit = next((f.high.unit for f in (long, *reversed(size.amounts)) if f.high.unit), "ft")
    length = Amount(long.high.value, unit)
    return [Phrase("amount", size.terms[:1], amounts=(Figure("LEN", length, length),)), Phrase("word", size.terms[1:])]
