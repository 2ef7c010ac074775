"""Small books for tests: a few facts of a runner and of the job, and helpers that build and work with them."""

from typing import Any

from rules.book import Book, build_book, read_blocks
from rules.engine import Estimate, Job, Piece, work

BASE = """
[runner]
kind = "piece"
words = ["runner"]
shows = ["table_length"]
main = "table_length"

[arch]
kind = "piece"
words = ["arch"]

[table_length]
of = ["runner"]
unit = "in"
words = ["length of table"]
why = "a reason"
source = "common practice, no published source"

[shape]
of = ["runner"]
type = "choice"
choices = { round = ["round"], square = ["square"] }
assume = "square"
why = "a reason"
source = "common practice, no published source"

[greenery]
of = ["runner"]
type = "flag"
assume = false
why = "a reason"
source = "common practice, no published source"

[job_hours]
of = ["job"]
unit = "hour"
why = "a reason"
source = "common practice, no published source"
"""

REASON = 'why = "a reason"\nsource = "common practice, no published source"\n'


def book_of(text: str, file: str = "small.toml", base: str = BASE) -> Book:
    """The base book and the blocks of `text` together, unchecked."""
    return build_book([*read_blocks("base.toml", base), *read_blocks(file, text)])


def fact(id: str, unit: str = "in", of: str = "runner", **keys: Any) -> str:
    """One fact's block as TOML; keys as in the book, `is_` for is."""
    lines = [f"{key.rstrip('_')} = {_toml(value)}\n" for key, value in keys.items()]
    return f'[{id}]\nof = ["{of}"]\nunit = "{unit}"\n{REASON}{"".join(lines)}\n'


def _toml(value: Any) -> str:
    match value:
        case bool():
            return str(value).lower()
        case str():
            return f'"{value}"'
        case tuple():
            low, typical, high = value
            return f"{{ low = {low}, typical = {typical}, high = {high} }}"
    return str(value)


def runner(book: Book, said: dict[str, Any], job: dict[str, Any] | None = None) -> Estimate:
    """The estimate of one runner."""
    return work(book, Job([Piece("runner", said)], job or {}))
