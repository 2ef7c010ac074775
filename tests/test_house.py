"""The house stands as it was drawn: who may import whom, what lies at the top, how large a module may grow."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGES = ("assistant", "grammar", "rules")
MAY_IMPORT = {"assistant": {"assistant", "grammar", "rules"}, "grammar": {"grammar"}, "rules": {"rules"}}
TOP = {
    *PACKAGES,
    "tests",
    "README.md",
    "CHANGELOG.md",
    "DEVELOPERS.md",
    "LICENSE",
    "pyproject.toml",
    ".gitignore",
    ".ci",
}
LONGEST_MODULE = 400
LAYERS = ("tokens", "numbers", "rows", "pieces")  # of grammar, in the order in which a sentence goes through them
# Whoever works in the checkout may have these beside it; none of them is part of the project.
LOCAL = {".git", ".venv", "build", "dist", ".hypothesis", ".mypy_cache", ".pytest_cache", ".ruff_cache", "__pycache__"}
NETWORK = {"ftplib", "http", "imaplib", "poplib", "requests", "smtplib", "socket", "ssl", "urllib", "xmlrpc"}
COMPILES = "rules/compiled.py"  # expressions that it writes itself; see tests/rules/test_formula.py
UNSAFE_CALLS = {"eval", "exec", "compile", "__import__"}
MODULES = sorted(path for package in PACKAGES for path in (ROOT / package).rglob("*.py"))


def name(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def imported(tree: ast.AST, path: Path) -> Iterator[str]:
    """The full dotted names that a module imports, wherever in it, relative and by importlib as well."""
    package = path.relative_to(ROOT).parts[:-1]
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            start = package[: len(package) - node.level + 1] if node.level else ()
            yield ".".join([*start, *filter(None, [node.module])])
        elif isinstance(node, ast.Call) and ast.unparse(node.func).split(".")[-1] in {"import_module", "__import__"}:
            for argument in node.args[:1]:
                yield str(argument.value) if isinstance(argument, ast.Constant) else "an unknown name"


def forbidden(source: str, path: Path) -> list[str]:
    """What a module imports from a part of the house that it must not know."""
    own = path.relative_to(ROOT).parts[0]
    tops = {full.split(".")[0] for full in imported(ast.parse(source), path)}
    return sorted(tops & set(PACKAGES) - MAY_IMPORT[own])


@pytest.mark.parametrize("path", MODULES, ids=name)
def test_imports_run_one_way(path: Path) -> None:
    assert forbidden(path.read_text(encoding="utf-8"), path) == []


@pytest.mark.parametrize(
    ("package", "source", "found"),
    [
        ("grammar", "import rules.book", ["rules"]),
        ("grammar", "def f():\n    from assistant import Reply", ["assistant"]),
        ("rules", "from ..grammar import reader", ["grammar"]),
        ("rules", "import importlib\nimportlib.import_module('grammar.reader')", ["grammar"]),
        ("rules", "from . import book", []),
        ("assistant", "import rules, grammar", []),
    ],
)
def test_the_rule_sees_every_way_to_import(package: str, source: str, found: list[str]) -> None:
    assert forbidden(source, ROOT / package / "module.py") == found


@pytest.mark.parametrize("layer", LAYERS)
def test_no_step_of_the_reading_knows_a_later_one(layer: str) -> None:
    later = {f"grammar.{name}" for name in (*LAYERS[LAYERS.index(layer) + 1 :], "reader")}
    for path in (ROOT / "grammar" / layer).glob("*.py"):
        known = {".".join(full.split(".")[:2]) for full in imported(ast.parse(path.read_text("utf-8")), path)}
        assert not known & later, path


@pytest.mark.parametrize("path", MODULES, ids=name)
def test_no_module_reaches_the_network_or_runs_text(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert {full.split(".")[0] for full in imported(tree, path)} & NETWORK == set()
    calls = {node.func.id for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)}
    assert calls & UNSAFE_CALLS == ({"compile"} if name(path) == COMPILES else set())


@pytest.mark.parametrize("path", MODULES, ids=name)
def test_a_module_says_what_it_is_for_and_stays_small(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= LONGEST_MODULE
    assert not text.strip() or ast.get_docstring(ast.parse(text))


def test_nothing_lies_at_the_top_that_the_house_does_not_name() -> None:
    found = {path.name for path in ROOT.iterdir() if path.suffix != ".egg-info"} - LOCAL
    assert found - TOP == set()
    assert set(PACKAGES) <= found


@pytest.mark.parametrize("package", PACKAGES)
def test_each_package_says_that_it_is_typed(package: str) -> None:
    assert (ROOT / package / "__init__.py").is_file()
    assert (ROOT / package / "py.typed").is_file()


def test_importing_the_assistant_loads_no_library() -> None:
    heavy = "{'lark', 'pint', 'pydantic', 'prompt_toolkit'}"
    script = f"import sys, assistant, grammar; print(sorted(set(sys.modules) & {heavy}))"
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout == "[]\n"
