"""The files of grammar/words, each read once.

The files at the top are the reader's own language; a folder beside them is another language, see `grammar.tongue`.
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

WORDS = Path(__file__).parent / "words"

Words = Mapping[str, Any]

_files: dict[str, Words] = {}


def load_words(name: str) -> Words:
    """One file of grammar/words, as it stands; not to be changed."""
    if name not in _files:
        _files[name] = tomllib.loads((WORDS / name).read_text(encoding="utf-8"))
    return _files[name]


def read_all() -> dict[str, Words]:
    """Every file of the reader's own language by name."""
    return {path.name: load_words(path.name) for path in sorted(WORDS.glob("*.toml"))}


def lend_words(files: Mapping[str, Words]) -> None:
    """Take files as `read_all` gave them in another process, in place of reading them."""
    _files.update(files)


@cache
def placed(name: str) -> frozenset[str]:
    """The small words of places.toml under `name`."""
    return frozenset(str(load_words("places.toml")[name]).split())


@cache
def word_list(name: str) -> frozenset[str]:
    """The plain words of filler.toml under `name`."""
    return frozenset(str(load_words("filler.toml")[name]).split())
