"""The formula language: text -> a tree of frozen nodes, each distinct text parsed once.

See formula.lark for what may be written.  The tree says nothing about values; rules/compiled.py turns it into Python
closures and rules/dimensions.py checks what it measures.
"""

import pickle
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rules.functions import OVER_PIECES
from rules.nearest import clause
from rules.nodes import (
    Arithmetic,
    Call,
    Comparison,
    If,
    Is,
    Known,
    Logic,
    Name,
    Negative,
    Node,
    Not,
    Number,
    OverPieces,
    Power,
    Truth,
)
from rules.units import UnitError, to_base
from rules.written import trees

if TYPE_CHECKING:
    from lark import Lark


LONGEST = 2_000  # letters of a formula
DEEPEST = 100  # levels of a formula: what works with trees goes down them by calls


class FormulaError(ValueError):
    """A formula that cannot be read; the message is one plain sentence without its place in the book."""


def write_trees(texts: Iterable[str]) -> dict[str, bytes]:
    """The trees of the formulas as bytes, each by its own text, for `lend_trees` in another process."""
    return {text: pickle.dumps(parse(text), pickle.HIGHEST_PROTOCOL) for text in texts}


@cache
def parse(text: str) -> Node:
    """The tree of a formula; FormulaError in one plain sentence when it cannot be read."""
    if text in trees():
        kept: Node = pickle.loads(trees()[text])  # noqa: S301 - lent by the caller's own store
        return kept
    if len(text) > LONGEST:
        raise FormulaError(f"{text[:20]!r}... is longer than {LONGEST:,} letters; share it out among facts")
    from lark.exceptions import UnexpectedCharacters, UnexpectedEOF, UnexpectedInput, UnexpectedToken, VisitError

    try:
        tree = _parser().parse(text)
        if _is_deep(tree):
            raise FormulaError(f"{text[:20]!r}... goes more than {DEEPEST} levels deep; share it out among facts")
        return _builder().transform(tree)  # type: ignore[no-any-return]
    except VisitError as error:
        if isinstance(error.orig_exc, FormulaError | UnitError):
            raise FormulaError(f"in {text!r}: {clause(error.orig_exc)}") from None
        raise
    except UnexpectedInput as error:
        match error:
            case UnexpectedToken(token=token) if token.type != "$END":
                said = f"{str(token)!r} does not fit after {text[: token.start_pos].strip()!r}"
            case UnexpectedCharacters(char=sign):
                said = f"the sign {sign!r} has no meaning in a formula"
            case UnexpectedToken() | UnexpectedEOF():
                said = "it breaks off at the end"
            case _:
                said = "it is not written as a formula"
        raise FormulaError(f"{text!r} cannot be read: {said}") from None


def _is_deep(tree: Any) -> bool:
    """Whether a tree of lark's has more levels than may be; without calls, as it may be too deep for them."""
    level = [tree]
    for _ in range(DEEPEST):
        level = [child for one in level for child in getattr(one, "children", ())]
        if not level:
            return False
    return True


@cache
def _parser() -> "Lark":
    from lark import Lark

    grammar = Path(__file__).with_name("formula.lark").read_text(encoding="utf-8")
    return Lark(grammar, start="formula", parser="lalr", maybe_placeholders=False)


@cache
def _builder() -> Any:  # noqa: C901 (one short method a grammar label)
    from lark import Transformer, v_args

    @v_args(inline=True)
    class Builder(Transformer[Any, Node]):
        """One method a grammar label; builds the frozen nodes."""

        def number(self, digits: str) -> Node:
            return Number(float(digits), "count")

        def quantity(self, digits: str, unit: str) -> Node:
            return Number(to_base(float(digits), str(unit)), str(unit))

        def percentage(self, digits: str) -> Node:
            return Number(to_base(float(digits), "percent"), "percent")

        def true(self, _: str) -> Node:
            return Truth(True)

        def false(self, _: str) -> Node:
            return Truth(False)

        def name(self, name: str) -> Node:
            return Name(str(name))

        def word(self, name: str) -> str | bool:
            return {"true": True, "false": False}.get(str(name), str(name))

        def negative(self, _: str, of: Node) -> Node:
            return Negative(of)

        def arithmetic(self, left: Node, sign: str, right: Node) -> Node:
            return Arithmetic(str(sign), left, right)

        def exponent(self, digits: str) -> float:
            return float(digits)

        def negative_exponent(self, digits: str) -> float:
            return -float(digits)

        def power(self, base: Node, exponent: float) -> Node:
            return Power(base, exponent)

        def comparison(self, left: Node, sign: str, right: Node) -> Node:
            return Comparison(str(sign), left, right)

        def is_word(self, name: str, word: str | bool) -> Node:
            return Is(str(name), word, same=True)

        def is_not_word(self, name: str, word: str | bool) -> Node:
            return Is(str(name), word, same=False)

        def either(self, left: Node, right: Node) -> Node:
            return Logic("or", left, right)

        def both(self, left: Node, right: Node) -> Node:
            return Logic("and", left, right)

        def denial(self, of: Node) -> Node:
            return Not(of)

        def choice(self, test: Node, then: Node, other: Node) -> Node:
            return If(test, then, other)

        def known(self, name: str) -> Node:
            return Known(str(name), said=False)

        def said(self, name: str) -> Node:
            return Known(str(name), said=True)

        def call(self, function: str, *arguments: Node) -> Node:
            if function not in OVER_PIECES:
                return Call(str(function), arguments)
            if len(arguments) == 1 and isinstance(arguments[0], Name):
                return OverPieces(str(function), arguments[0].id)
            raise FormulaError(f"{function} takes the name of one fact")

    return Builder()
