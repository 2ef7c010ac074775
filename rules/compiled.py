"""Formulas as Python closures, put together once from the nodes of rules/formula.py; nothing is ever eval'ed.

A closure takes one argument, the values: anything that gives the value of a fact by its id.  Two kinds are made.
An exact one reads from a Reader (rules/world.py), which works facts out as they are asked for and notes each choice
made.  A smooth one reads from a plain dict in which all this already stands: rounding is left out and every choice
stays as it was noted, so that only quantities move when an input is moved.
"""

import math
import operator
from collections.abc import Callable
from itertools import count
from typing import Any

from rules.functions import FUNCTIONS, callable_in_base_units
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
)
from rules.values import look_up

Closure = Callable[[Any], Any]

_ARITHMETIC: dict[str, Callable[[Any, Any], Any]] = {
    "+": operator.add,
    "-": operator.sub,
    "*": operator.mul,
    "/": operator.truediv,
}
_COMPARISONS: dict[str, Callable[[Any, Any], Any]] = {
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
    "==": operator.eq,
    "!=": operator.ne,
}


def compile_node(node: Node, slot: str, smooth: bool = False) -> Closure:
    """The closure of a formula; `slot` names the formula, so that the choices in it can be noted and kept."""
    return _Compiler(slot, smooth).closure(node)


class _Compiler:
    def __init__(self, slot: str, smooth: bool) -> None:
        self.slot, self.smooth, self.numbers = slot, smooth, count(1)

    def closure(self, node: Node) -> Closure:
        match node:
            case Number(value) | Truth(value) | Word(value):
                return lambda _values: value
            case Name(id):
                return operator.itemgetter(id)
            case OverPieces():
                return operator.itemgetter(node.key)
            case Negative(of):
                inner = self.closure(of)
                return lambda values: -inner(values)
            case Arithmetic(sign, left, right):
                return self._two(_ARITHMETIC[sign], left, right)
            case Power(base, exponent):
                inner = self.closure(base)
                return lambda values: math.pow(inner(values), exponent)
            case Comparison(sign, left, right):
                return self._two(_COMPARISONS[sign], left, right)
            case Logic(sign, left, right):
                first, second = self.closure(left), self.closure(right)
                if sign == "and":
                    return lambda values: first(values) and second(values)
                return lambda values: first(values) or second(values)
            case Not(of):
                inner = self.closure(of)
                return lambda values: not inner(values)
            case Is(id, word, same):
                return lambda values: (values[id] == word) is same
            case Known(id, said):
                return (lambda values: values.said(id)) if said else (lambda values: values.known(id))
            case If():
                return self._choice(node)
            case Call(name, arguments):
                return self._call(name, arguments)

    def _two(self, sign: Callable[[Any, Any], Any], left: Node, right: Node) -> Closure:
        first, second = self.closure(left), self.closure(right)
        if isinstance(right, Number):
            after = right.value
            return lambda values: sign(first(values), after)
        if isinstance(left, Number):
            before = left.value
            return lambda values: sign(before, second(values))
        return lambda values: sign(first(values), second(values))

    def _choice(self, node: If) -> Closure:
        key = f"{self.slot} if {next(self.numbers)}"
        then, other = self.closure(node.then), self.closure(node.other)
        if self.smooth:
            return lambda values: then(values) if values[key] else other(values)
        test = self.closure(node.test)

        def choose(values: Any) -> Any:
            holds = bool(test(values))
            values.note(key, holds)
            return then(values) if holds else other(values)

        return choose

    def _call(self, name: str, arguments: tuple[Node, ...]) -> Closure:
        inner = [self.closure(argument) for argument in arguments]
        if name not in FUNCTIONS:
            (at,) = inner
            return lambda values: look_up(values[name], at(values))
        if self.smooth and FUNCTIONS[name].rounding:
            return inner[0]
        function = callable_in_base_units(name)
        if len(inner) == 1:
            only = inner[0]
            return lambda values: function(only(values))
        return lambda values: function(*[argument(values) for argument in inner])
