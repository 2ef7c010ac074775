"""No regular expression takes more than linear time, whatever text it is given.

Every expression of the three packages is found in the source and tried on texts made from its own parts: one repeat of
it many times over, then what does not fit. What is held is the growth from a text to one eight times as long.
"""

import ast
import importlib
import itertools
import re
import re._constants as sre
import re._parser as parser
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from assistant import job_words

ROOT = Path(__file__).parents[1]
CALLS = frozenset("compile match search fullmatch sub split findall finditer".split())
SHORT, TIMES = 400, 8
MOST = 30  # by how much time may grow: between 8, linear, and 64, quadratic, as far from both as factors go
LITTLE = 0.02  # seconds of CPU time below which a clock tells nothing
END = "\ue000"  # where the many repeats end
UNFIT = "\x00"
# Made at run time from words of the book, escaped, or from the sentences of a language: found in no module.
AT_RUN_TIME = {"assistant/limits.py", "assistant/job_words.py", "assistant/speech.py"}


def sources() -> Iterator[tuple[str, ast.Module, ModuleType]]:
    for path in sorted(
        path for package in ("grammar", "rules", "assistant") for path in (ROOT / package).rglob("*.py")
    ):
        text = path.read_text(encoding="utf-8")
        where = path.relative_to(ROOT)
        if re.search(r"\bre\.", text) and "import re" in text:
            yield where.as_posix(), ast.parse(text), importlib.import_module(".".join(where.with_suffix("").parts))


def held(value: Any) -> Iterator[re.Pattern[str]]:
    """The expressions that a module's name holds, in tuples too."""
    if isinstance(value, re.Pattern):
        yield value
    elif isinstance(value, tuple | list | dict):
        for one in value.values() if isinstance(value, dict) else value:
            yield from held(one)


def expressions() -> tuple[dict[tuple[str, str], tuple[re.Pattern[str], bool]], set[str]]:
    """By file and text each expression, and whether it is looked for anywhere; and the files with others."""
    found: dict[tuple[str, str], tuple[re.Pattern[str], bool]] = {}
    others: set[str] = set()
    for where, tree, module in sources():
        calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)]
        used: dict[str, set[str]] = {}
        for node in calls:
            if isinstance(node.func.value, ast.Name):
                used.setdefault(node.func.value.id, set()).add(node.func.attr)
        for name, value in vars(module).items():
            only = used.get(name, {"search"}) <= {"match", "fullmatch"}
            for pattern in held(value):
                found[where, pattern.pattern] = pattern, not only
        for node in calls:
            if isinstance(node.func.value, ast.Name) and node.func.value.id == "re" and node.func.attr in CALLS:
                try:
                    text = eval(ast.unparse(node.args[0]), {**vars(module)})  # noqa: S307 - our own source
                except NameError:
                    others.add(where)
                    continue
                if (where, text) not in found:
                    found[where, text] = re.compile(text), node.func.attr not in ("match", "fullmatch")
    for _, pattern in job_words._patterns():  # made when they are first needed
        found["assistant/job_words.py", pattern.pattern] = pattern, False
    return found, others


FOUND, OTHERS = expressions()


def one_of(items: Any) -> str:
    """A character of a class."""
    negated = items[0][0] is sre.NEGATE
    alike = {sre.CATEGORY_DIGIT: "1", sre.CATEGORY_SPACE: " ", sre.CATEGORY_WORD: "a"}
    named = "".join(
        chr(value) if kind is sre.LITERAL else chr(value[0]) if kind is sre.RANGE else alike.get(value, "")
        for kind, value in items
        if kind in (sre.LITERAL, sre.RANGE, sre.CATEGORY)
    )
    return next((char for char in "ax-;" if char not in named), "x") if negated else named[:1] or "x"


def written(tree: Any, pick: int, many: int, which: int, seen: "itertools.count[int]") -> str:
    """A text that the tree fits: of branches the one numbered `pick`, of the repeats the one numbered `which` `many`
    times, with END behind it."""
    out = ""
    for kind, value in tree:
        if kind is sre.LITERAL:
            out += chr(value)
        elif kind is sre.NOT_LITERAL:
            out += "x" if value != ord("x") else "y"
        elif kind is sre.ANY:
            out += "x"
        elif kind is sre.IN:
            out += one_of(value)
        elif kind is sre.BRANCH:
            out += written(value[1][pick % len(value[1])], pick, many, which, seen)
        elif kind is sre.SUBPATTERN:
            out += written(value[3], pick, many, which, seen)
        elif kind is sre.ATOMIC_GROUP:
            out += written(value, pick, many, which, seen)
        elif kind in (sre.MAX_REPEAT, sre.MIN_REPEAT, sre.POSSESSIVE_REPEAT):
            mine = next(seen) == which
            inner = written(value[2], pick, many, which, seen)
            out += inner * many + END if mine and value[1] > 1 else inner * max(1, value[0])
    return out


def texts(pattern: re.Pattern[str], many: int) -> Iterator[str]:
    """Texts on which it might lose its way."""
    tree = parser.parse(pattern.pattern, pattern.flags & ~re.UNICODE)
    for pick in range(3):
        seen = itertools.count()
        whole = written(tree, pick, 1, -1, seen)
        yield (whole or "a") * many + UNFIT
        yield f"{whole} " * many + UNFIT
        for which in range(next(seen)):
            long = written(tree, pick, many, which, itertools.count())
            if END in long:
                yield long.partition(END)[0] + UNFIT
                yield long.replace(END, "") + UNFIT
    for char in sorted({*whole, *" a1\n"}):
        yield char * many + UNFIT


def quickest(take: Callable[[str], object], text: str, times: int) -> float:
    """Seconds of CPU time, the least of so many."""
    spent = []
    for _ in range(times):
        begun = time.thread_time()
        take(text)
        spent.append(time.thread_time() - begun)
    return min(spent)


@pytest.mark.parametrize("key", FOUND, ids=lambda key: key[0])
def test_time_grows_with_the_text_and_no_faster(key: tuple[str, str]) -> None:
    pattern, anywhere = FOUND[key]
    take: Callable[[str], object] = (lambda text: list(pattern.finditer(text))) if anywhere else pattern.match
    for short, long in zip(texts(pattern, SHORT), texts(pattern, SHORT * TIMES), strict=True):
        if quickest(take, long, 1) > LITTLE:  # else even the whole of it is nothing
            assert quickest(take, long, 3) < MOST * quickest(take, short, 3), short[:60]


def test_every_expression_is_tried() -> None:
    assert len(FOUND) > 40
    assert OTHERS <= AT_RUN_TIME


def test_a_runaway_expression_is_seen() -> None:
    FOUND["here", "runaway"] = re.compile(r"\s+$"), True
    with pytest.raises(AssertionError):
        test_time_grows_with_the_text_and_no_faster(("here", "runaway"))
    del FOUND["here", "runaway"]
