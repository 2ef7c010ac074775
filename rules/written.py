"""Formulas that an earlier run compiled or read apart, for one that wants to work with them at once.

Nothing here imports what formulas are read and compiled with, which a start does without as long as all is lent.
"""

import marshal
import math
from collections.abc import Callable, Mapping
from types import CodeType, FunctionType
from typing import Any, NamedTuple

from rules.functions import FUNCTIONS, callable_in_base_units
from rules.values import look_up

Closure = Callable[[Any], Any]
Trees = Mapping[str, bytes]  # pickled, by the text of the formula

# What an expression names besides the functions of formulas, which join when they are first called for.
_NAMES: dict[str, Any] = {"look_up_": look_up, "pow_": math.pow, "inf": math.inf, "__builtins__": {}}


class Written(NamedTuple):
    """A formula compiled, as bytes: the exact and the smooth way, and whether both always read the same facts.

    It is steady where no "and" or "or" is in it, as their second half is read or not as the first half tells.
    """

    exact: bytes
    smooth: bytes
    is_steady: bool


_written: dict[str, Written] = {}
_trees: dict[str, bytes] = {}
_lenders: list[Callable[[], Trees]] = []  # not yet asked


def closure(code: bytes) -> Closure:
    """The function of a formula that was compiled."""
    made: CodeType = marshal.loads(code)  # noqa: S302 - compiled here, or lent by the caller's own store
    for name in made.co_names:
        if name in FUNCTIONS and name not in _NAMES:
            _NAMES[name] = callable_in_base_units(name)
    return FunctionType(made, _NAMES)


def key_of(text: str, choices: frozenset[str]) -> str:
    """The name of a formula that may answer with the words `choices`."""
    return " | ".join((text, *sorted(choices)))


def written(text: str, choices: frozenset[str] = frozenset()) -> Written:
    """The formula compiled; `choices` are the words that it may answer with."""
    key = key_of(text, choices)
    if key not in _written:
        from rules.compiled import write

        _written[key] = write(text, choices)
    return _written[key]


def lend_written(formulas: Mapping[str, Written]) -> None:
    """Take formulas compiled in another process with the same Python, by `key_of`. They are run: lend nothing else."""
    _written.update(formulas)


def lend_trees(lender: Callable[[], Trees]) -> None:
    """Take trees of formulas in place of reading these apart; the lender is asked when one is first wanted.

    They are unpickled: lend nothing from elsewhere.
    """
    _lenders.append(lender)


def trees() -> Trees:
    """The trees that were lent."""
    while _lenders:
        _trees.update(_lenders.pop()())
    return _trees
