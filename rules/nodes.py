"""The nodes of a formula's tree: frozen, comparable, and silent about values."""

from collections.abc import Iterator

from rules.packed import Packed
from rules.record import record


@record
class Number(Packed):
    """A number in base units, with the unit it was written in ("count" when it had none)."""

    value: float
    unit: str


@record
class Truth(Packed):
    """The word true or false."""

    value: bool


@record
class Word(Packed):
    """A choice that a formula answers with, such as round in a rule for table_shape."""

    text: str


@record
class Name(Packed):
    """The value of another fact."""

    id: str


@record
class Negative(Packed):
    """Minus the operand."""

    of: "Node"


@record
class Arithmetic(Packed):
    """left sign right, where sign is one of + - * /."""

    sign: str
    left: "Node"
    right: "Node"


@record
class Power(Packed):
    """base ^ exponent; the exponent is a plain number written in the formula."""

    base: "Node"
    exponent: float


@record
class Comparison(Packed):
    """left sign right, where sign is one of < <= > >= == !=."""

    sign: str
    left: "Node"
    right: "Node"


@record
class Logic(Packed):
    """Both ("and") or either ("or") of two truths."""

    sign: str
    left: "Node"
    right: "Node"


@record
class Not(Packed):
    """The opposite of a truth."""

    of: "Node"


@record
class If(Packed):
    """One of two answers, by a truth."""

    test: "Node"
    then: "Node"
    other: "Node"


@record
class Is(Packed):
    """Whether a choice or flag has the value named."""

    id: str
    word: str | bool
    same: bool


@record
class Known(Packed):
    """Whether a fact was said, is in the house file or can be worked out; with `said`, whether it was said."""

    id: str
    said: bool


@record
class Call(Packed):
    """A function of rules/functions.py, or a table of the book looked up, applied to its arguments."""

    function: str
    arguments: tuple["Node", ...]


@record
class OverPieces(Packed):
    """total, most or least of a fact over all pieces of the job."""

    how: str
    id: str

    @property
    def key(self) -> str:
        """The name under which the job keeps the answer."""
        return f"{self.how}({self.id})"


Node = (
    Number | Truth | Word | Name | Negative | Arithmetic | Power | Comparison | Logic | Not | If | Is | Known | Call
    | OverPieces
)  # fmt: skip


def children(node: Node) -> tuple[Node, ...]:
    """The nodes that stand directly under `node`, left to right."""
    match node:
        case Negative(of) | Not(of):
            return (of,)
        case Arithmetic(_, left, right) | Comparison(_, left, right) | Logic(_, left, right):
            return (left, right)
        case Power(base, _):
            return (base,)
        case If(test, then, other):
            return (test, then, other)
        case Call(_, arguments):
            return arguments
        case _:
            return ()


def walk(node: Node) -> Iterator[Node]:
    """`node` and every node under it, each parent before its children."""
    yield node
    for child in children(node):
        yield from walk(child)


def with_words(node: Node, words: frozenset[str]) -> Node:
    """`node` with the names in answering position that are choices of the fact turned into Words."""
    match node:
        case Name(id) if id in words:
            return Word(id)
        case If(test, then, other):
            return If(test, with_words(then, words), with_words(other, words))
        case _:
            return node
