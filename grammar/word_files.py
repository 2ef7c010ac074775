"""The files of grammar/words, each read once.

The files at the top are the reader's own language; a folder beside them is another, see `grammar.tokens.tongue`.
"""

import re
import tomllib
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path
from typing import Any

WORDS = Path(__file__).parent / "words"

Words = Mapping[str, Any]

_files: dict[str, Words] = {}
_own: list[frozenset[str]] = []  # one, once it is known


def load_words(name: str) -> Words:
    """One file of grammar/words, as it stands; not to be changed."""
    if name not in _files:
        _files[name] = tomllib.loads((WORDS / name).read_text(encoding="utf-8"))
    return _files[name]


def read_all() -> dict[str, Words]:
    """Every file of the reader's own language by name."""
    return {path.name: load_words(path.name) for path in sorted(WORDS.glob("*.toml"))}


def own_words() -> frozenset[str]:
    """Every word that stands in these files."""
    if not _own:
        texts = " ".join(text for words in read_all().values() for text in _texts(words))
        _own.append(frozenset(re.findall(r"[^\W\d_]+", texts)))
    return _own[0]


def lend_words(files: Mapping[str, Words], own: frozenset[str]) -> None:
    """Take files as `read_all`, and words as `own_words`, gave them in another process, in place of reading them."""
    _files.update(files)
    _own[:] = [own]


def _texts(words: object) -> Iterable[str]:
    """Every string of a word file, keys and values, in lower case."""
    if isinstance(words, str):
        yield words.lower()
    elif isinstance(words, Mapping):
        for key, value in words.items():
            yield from (str(key).lower(), *_texts(value))
    elif isinstance(words, list):
        for value in words:
            yield from _texts(value)


@cache
def placed(name: str) -> frozenset[str]:
    """The small words of places.toml under `name`."""
    return frozenset(str(load_words("places.toml")[name]).split())


@cache
def word_list(name: str) -> frozenset[str]:
    """The plain words of filler.toml under `name`."""
    return frozenset(str(load_words("filler.toml")[name]).split())
