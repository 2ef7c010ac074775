"""Taking what was offered: "do that one then", "the second way", "the cheaper one"."""

from assistant.asked import Asked
from assistant.backwards import offered
from assistant.estimating import estimate
from assistant.price import quoted
from assistant.state import Pending, State
from assistant.trying import tried, with_pieces
from grammar.reading import Reading
from rules import Book

LESS = frozenset({"cheaper", "cheapest", "less"})
MORE = frozenset({"dearer", "dearest", "pricier", "expensive"})
OTHER = frozenset({"second", "other"})
NOTHING = "Nothing is offered that I could take, so all stays as it is. Which one, by its name or size?"


def pick(book: Book, now: State, reading: Reading) -> None:
    """Let what the turn takes stand in place of the piece, or ask which of those compared it is."""
    words = {*reading.text.lower().replace("?", " ").replace(",", " ").split()}
    if now.compared:
        _of_compared(book, now, words)
    elif now.solved:
        _of_offered(book, now, words)
    elif not now.moved:
        now.pending = Pending(NOTHING)  # after a change it stays as it is now


def _of_compared(book: Book, now: State, words: set[str]) -> None:
    prices = [quoted(tried(book, with_pieces(now, [piece]))) for piece in now.pieces]
    known = [(made.price, place) for place, made in enumerate(prices) if made is not None]
    if not words & (LESS | MORE) or len(known) < len(now.pieces):
        now.pending = Pending("Which one, the first or the second?")
        return
    place = (min(known) if words & LESS else max(known))[1]
    now.pieces, now.focus, now.compared = [now.pieces[place]], 0, False


def _of_offered(book: Book, now: State, words: set[str]) -> None:
    """The version that was worked out backwards a turn ago: its first way, or the second where that is said."""
    made = estimate(book, now)
    made.metric = now.metric
    found = offered(Asked(book, 0, now, now, Reading(text=now.solved), made, made))
    at = 1 if words & OTHER else 0
    if at >= len(found):
        now.pending = Pending(NOTHING)
        return
    place, facts = found[at]
    now.pieces[place].facts = {**facts}
    now.solved = ""
