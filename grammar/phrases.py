"""Terms to phrases by the grammar of request.lark."""

import io
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from lark import Lark, Transformer, UnexpectedInput
from lark import Token as LarkToken
from lark.lexer import Lexer as LarkLexer

from grammar.record import record
from grammar.terms import Amount, Term


@dataclass(slots=True)
class Phrase:
    """A small group of terms.

    `kind` is that of the grammar ("amount", "sides", "named", "colour", ...) or the type of a lone term in lower case;
    `value` depends on it; `label` is the fact or role that a named amount has.
    """

    kind: str
    terms: tuple[Term, ...]
    value: Any = None
    label: str = ""
    amounts: tuple["Figure", ...] = field(default=())

    @property
    def text(self) -> str:
        """The words, as typed."""
        return " ".join(t.text for t in self.terms if t.text)


@record
class Figure:
    """One amount or a span of two, of one type of term."""

    type: str
    low: Any
    high: Any
    either: bool = False

    @property
    def single(self) -> bool:
        """Whether it is one value."""
        return bool(self.low == self.high)


class _Feed(LarkLexer):
    """Hands lark terms that are made already."""

    def __init__(self, conf: object) -> None:
        pass

    def lex(self, data: list[Term]) -> Iterator[LarkToken]:  # type: ignore[override]
        for term in data:
            yield LarkToken(term.type, term)


class _Build(Transformer[LarkToken, list[Phrase]]):
    """Phrases from the tree; every method gets terms or figures in the order said."""

    def start(self, items: list[Phrase]) -> list[Phrase]:
        return items

    def figure(self, items: list[LarkToken]) -> Phrase:
        term = _term(items[0])
        return Phrase("figure", (term,), amounts=(Figure(term.type, term.value, term.value),))

    def exact(self, items: list[Phrase]) -> Phrase:
        return Phrase("amount", items[0].terms, amounts=items[0].amounts)

    def span(self, items: list[Any]) -> Phrase:
        low, link, high = items[0], _term(items[1]), items[2]
        a, b = low.amounts[0], high.amounts[0]
        first = a.low
        if a.type == "NUM" and b.type == "LEN" and isinstance(first, Amount):
            first = Amount(first.value, b.low.unit)
        figure = Figure(b.type if a.type != b.type else a.type, first, b.high, link.text.lower() == "or")
        return Phrase("amount", (*low.terms, link, *high.terms), amounts=(figure,))

    def sides(self, items: list[Any]) -> Phrase:
        parts = [p for p in items if isinstance(p, Phrase)]
        return Phrase("sides", _terms(items), amounts=tuple(p.amounts[0] for p in parts))

    def listing(self, items: list[Any]) -> Phrase:
        parts = [p for p in items if isinstance(p, Phrase)]
        return Phrase("listing", _terms(items), amounts=tuple(p.amounts[0] for p in parts))

    def named(self, items: list[Any]) -> Phrase:
        label = next(_term(t) for t in items if not isinstance(t, Phrase))
        part = next(p for p in items if isinstance(p, Phrase))
        return Phrase("named", _terms(items), label=str(label.value), amounts=part.amounts)

    def rate(self, items: list[Any]) -> Phrase:
        part = next(p for p in items if isinstance(p, Phrase))
        return Phrase("named", _terms(items), label="labour_rate", amounts=part.amounts)

    def rows(self, items: list[Any]) -> Phrase:
        kind = "row_count" if _term(items[1]).type == "ROWS" else "per_row_of"
        return Phrase(kind, _terms(items), amounts=items[0].amounts)

    def plain_colour(self, items: list[LarkToken]) -> Phrase:
        term = _term(items[0])
        if isinstance(term.value, tuple):  # the share of a ratio
            amount = Amount(Fraction(str(term.value[1])))
            return Phrase(
                "colour", (term,), value=term.value[0], label="share", amounts=(Figure("FRAC", amount, amount),)
            )
        return Phrase("colour", (term,), value=term.value)

    def shared_colour(self, items: list[Any]) -> Phrase:
        return Phrase("colour", _terms(items), value=_term(items[1]).value, label="share", amounts=(_share(items[0]),))

    def colour_shared(self, items: list[Any]) -> Phrase:
        return Phrase("colour", _terms(items), value=_term(items[0]).value, label="share", amounts=(_share(items[1]),))

    def parts_colour(self, items: list[Any]) -> Phrase:
        return Phrase("colour", _terms(items), value=_term(items[2]).value, label="parts", amounts=items[0].amounts)

    def rest_colour(self, items: list[LarkToken]) -> Phrase:
        return Phrase("colour", _terms(items), value=_term(items[1]).value, label="rest")

    def all_colour(self, items: list[LarkToken]) -> Phrase:
        return Phrase("colour", _terms(items), value=_term(items[1]).value, label="all")

    def single(self, items: list[LarkToken]) -> Phrase:
        return _lone(_term(items[0]))


def _term(token: Any) -> Term:
    term: Term = token.value if isinstance(token, LarkToken) else token
    return term


def _terms(items: list[Any]) -> tuple[Term, ...]:
    out: list[Term] = []
    for item in items:
        out.extend(item.terms if isinstance(item, Phrase) else (_term(item),))
    return tuple(out)


def _share(item: Any) -> Figure:
    if isinstance(item, Phrase):
        return item.amounts[0]
    term = _term(item)
    return Figure(term.type, term.value, term.value)


def _lone(term: Term) -> Phrase:
    return Phrase(term.type.lower(), (term,), value=term.value)


_written: list[bytes] = []  # the parser as it was written down before, if anybody has lent it


@cache
def parser() -> Lark:
    """The parser of request.lark, made once: from what was lent, which takes a tenth of the time, or anew."""
    if _written:
        return Lark.load(io.BytesIO(_written[0]))
    text = (Path(__file__).parent / "request.lark").read_text(encoding="utf-8")
    return Lark(text, parser="lalr", lexer=_Feed, transformer=_Build(), maybe_placeholders=False)


def write_parser() -> bytes:
    """The parser as bytes that `lend_parser` takes in another process with the same grammar and the same lark."""
    out = io.BytesIO()
    parser().save(out)
    return out.getvalue()


def lend_parser(written: bytes) -> None:
    """Make the parser from what `write_parser` gave, unless it is there already."""
    _written[:] = [written]


def phrases(terms: list[Term]) -> list[Phrase]:
    """The phrases of a row of terms.

    The grammar takes any row; should it ever not, each term stands alone, so that nothing said is lost.
    """
    try:
        result: list[Phrase] = parser().parse(terms)  # type: ignore[assignment]
    except UnexpectedInput:
        return [_lone(t) for t in terms]
    return result
