"""Facts in, figures out: the trade's rule book, the formulas in it and the engine that works them.

    book = load_book()
    estimate = work(book, Job([Piece("runner", {"count": 8, "table_length": 72})], {}))
    estimate.figure("balloons", 0)

Knows no language and no screen.  Names are imported when first used, so that `import rules` costs nothing.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from rules.book import Book, load_book
    from rules.buying import Row, shopping
    from rules.engine import Estimate, Job, Piece, work
    from rules.errors import BookError
    from rules.figure import Clash, Figure, Influence, Part, Said
    from rules.stock import Stock

_HOMES = {
    "Book": "book",
    "BookError": "errors",
    "Clash": "figure",
    "Estimate": "engine",
    "Figure": "figure",
    "Influence": "figure",
    "Job": "engine",
    "Part": "figure",
    "Piece": "engine",
    "Row": "buying",
    "Said": "figure",
    "Stock": "stock",
    "load_book": "book",
    "shopping": "buying",
    "work": "engine",
}

__all__ = [
    "Book",
    "BookError",
    "Clash",
    "Estimate",
    "Figure",
    "Influence",
    "Job",
    "Part",
    "Piece",
    "Row",
    "Said",
    "Stock",
    "load_book",
    "shopping",
    "work",
]


def __getattr__(name: str) -> Any:
    if name in _HOMES:
        return getattr(import_module(f"rules.{_HOMES[name]}"), name)
    raise AttributeError(f"module 'rules' has no attribute {name!r}")
