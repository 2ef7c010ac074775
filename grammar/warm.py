"""A quicker start: what is slow to make, and the same each time, taken from whoever can recall it."""

from collections.abc import Callable
from typing import Any

from grammar.phrases import lend_parser, write_parser
from grammar.tokens.tongue import lend_tongues, read_tongues
from grammar.word_files import WORDS, lend_words, load_words, own_words, read_all

Recall = Callable[[str, Callable[[], Any]], Any]


def warm(recall: Recall) -> None:
    """Take over the word files and the parser of requests.

    `recall(name, make)` gives what `make()` gives, or an equal thing that was kept under the name; nothing that is
    read afterwards depends on which of the two it was.
    """
    lend_words(*recall("words", lambda: (read_all(), own_words())))
    lend_tongues(recall("tongues", lambda: read_tongues(WORDS)))
    lend_parser(recall("request", write_parser))


def spoken_units() -> list[str]:
    """The pint names of the units that the reader knows words for."""
    return sorted({str(block["unit"]) for block in load_words("units.toml")["units"] if block["unit"]})
