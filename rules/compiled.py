"""Formulas to Python: each tree becomes one expression, compiled once, over what it reads its values from.

The exact way takes every rounding and notes which way each choice falls: it wants `note`, `known` and `said` beside
the values.  The smooth way leaves rounding out and takes the choices from the values, by the names they were noted
under; it has no steps, so it says how far a figure moves when an input does.
"""

import marshal
from itertools import count
from types import CodeType

from rules.formula import parse
from rules.functions import FUNCTIONS
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
    Word,
    walk,
    with_words,
)
from rules.written import Closure, Written, closure


def compile_node(node: Node, name: str, smooth: bool = False) -> Closure:
    """The function of a tree; choices in it are noted under `name` and a number."""
    return closure(_compiled(node, name, smooth))


def write(text: str, choices: frozenset[str]) -> Written:
    """The formula compiled; `choices` are the words that it may answer with."""
    node = with_words(parse(text), choices) if choices else parse(text)
    steady = not any(isinstance(one, Logic) for one in walk(node))
    return Written(_compiled(node, text, smooth=False), _compiled(node, text, smooth=True), steady)


def _compiled(node: Node, name: str, smooth: bool) -> bytes:
    text = _Writer(name, smooth).text(node)
    made = compile(f"lambda v: {text}", "<formula>", "eval")
    (code,) = (one for one in made.co_consts if isinstance(one, CodeType))
    return marshal.dumps(code)


class _Writer:
    """Writes trees as expressions over `v`, what values are read from."""

    def __init__(self, name: str, smooth: bool) -> None:
        self.name, self.smooth, self.numbers = name, smooth, count(1)

    def text(self, node: Node) -> str:
        match node:
            case Number(value) | Truth(value):
                return repr(value)
            case Word(word):
                return repr(word)
            case Name(id):
                return f"v[{id!r}]"
            case OverPieces():
                return f"v[{node.key!r}]"
            case Negative(of):
                return f"-{self.part(of)}"
            case Arithmetic(sign, left, right) | Comparison(sign, left, right) | Logic(sign, left, right):
                return f"{self.part(left)} {sign} {self.part(right)}"
            case Power(base, exponent):
                return f"pow_({self.text(base)}, {exponent!r})"
            case Not(of):
                return f"not {self.part(of)}"
            case Is(id, word, same):
                return f"v[{id!r}] {'==' if same else '!='} {word!r}"
            case Known(id, said):
                return f"v.{'said' if said else 'known'}({id!r})"
            case If():
                return self.choice(node)
            case Call(name, arguments):
                return self.call(name, arguments)

    def part(self, node: Node) -> str:
        """The node where it stands beside a sign."""
        whole = isinstance(node, Name | OverPieces | Call | Power | Known | Truth | Word)
        return self.text(node) if whole else f"({self.text(node)})"

    def choice(self, node: If) -> str:
        key = f"{self.name} if {next(self.numbers)}"
        then, other = self.part(node.then), self.part(node.other)
        test = f"v[{key!r}]" if self.smooth else f"v.note({key!r}, {self.text(node.test)})"
        return f"{then} if {test} else {other}"

    def call(self, name: str, arguments: tuple[Node, ...]) -> str:
        if name not in FUNCTIONS:
            (at,) = arguments
            return f"look_up_(v[{name!r}], {self.text(at)})"
        if self.smooth and FUNCTIONS[name].rounding:
            return f"({self.text(arguments[0])})"
        return f"{name}({', '.join(map(self.text, arguments))})"
