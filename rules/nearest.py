"""The nearest known names to one that is not known, for messages that offer them; and messages within messages."""

import difflib
from collections.abc import Iterable


def nearest(name: str, known: Iterable[str], n: int = 3) -> list[str]:
    """Up to n of the known names, the most alike first, the alphabet settling ties; never empty while any are known."""
    names = sorted(set(known))
    return difflib.get_close_matches(name, names, n=n, cutoff=0.5) or difflib.get_close_matches(
        name, names, n=1, cutoff=0.0
    )


def offer(name: str, known: Iterable[str], n: int = 3) -> str:
    """The nearest names as a clause: "the nearest is a", "the nearest are a, b"."""
    found = nearest(name, known, n)
    return f"the nearest {'is' if len(found) == 1 else 'are'} {', '.join(found)}"


def clause(error: Exception) -> str:
    """A message that is a sentence of its own as a clause of another: no capital, no full stop."""
    text = str(error).rstrip(".")
    return text[:1].lower() + text[1:]
