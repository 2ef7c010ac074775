"""Slips of the fingers: the one known word within a letter or two of what was typed."""

from collections.abc import Callable, Iterable


def distance(a: str, b: str, most: int) -> int:
    """Letters to add, drop, change or swap with the next (optimal string alignment); `most` + 1 where it is more."""
    if abs(len(a) - len(b)) > most:
        return most + 1
    before, last = [0] * (len(b) + 1), list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        row = [i] + [0] * len(b)
        for j, y in enumerate(b, 1):
            row[j] = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (x != y))
            if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                row[j] = min(row[j], before[j - 2] + 1)
        if min(row) > most:
            return most + 1
        before, last = last, row
    return last[-1]


def only_substituted(a: str, b: str) -> bool:
    """Whether two words of one length differ by other letters in the same places ("rang", "ring"), not by a swap."""
    return len(a) == len(b) and sorted(a) != sorted(b)


def allowed(word: str) -> int:
    """How many slips a word of this length may hold: none under four letters, one under seven, else two."""
    return 0 if len(word) < 4 else 1 if len(word) < 7 else 2


def nearest(word: str, known: Iterable[str], meaning: Callable[[str], object] = str) -> str | None:
    """The single nearest known word, or None where there is none or two are as near with another stem.

    The first letter has to be right: people rarely miss it, and most false friends differ there.
    """
    most = allowed(word)
    best: list[str] = []
    closest = most + 1
    for candidate in known:
        if candidate[0] == word[0]:
            limit = min(most, allowed(candidate))
            d = distance(word, candidate, limit)
            if len(word) < 6 and only_substituted(word, candidate):
                continue  # another word of the language, most likely
            if d > limit:
                continue
            if d < closest:
                best, closest = [candidate], d
            elif d == closest and d <= most:
                best.append(candidate)
    if not best or closest > most:
        return None
    stems = {w.rstrip("s") for w in best}
    meanings = {meaning(w) for w in best}
    return best[0] if len(stems) == 1 or len(meanings) == 1 else None


def suggestions(word: str, known: Iterable[str], most: int = 2) -> list[str]:
    """Up to `most` known words that a reader may have meant, nearest first."""
    limit = max(1, len(word) // 3)
    letters = set(word)
    near = (  # each letter that only one of the two has is a slip of its own
        w
        for w in known
        if abs(len(w) - len(word)) <= limit and len(letters.difference(w)) <= limit and len(set(w) - letters) <= limit
    )
    scored = sorted((distance(word, w, limit), w) for w in near)
    return [w for d, w in scored if d <= limit][:most]
