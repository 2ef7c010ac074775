"""Slips of the fingers: the one known word within a letter or two of what was typed."""

from collections.abc import Callable, Iterable
from functools import cached_property

from grammar.word_files import word_list

FAR = 9.0  # slips: nothing is near
VOWELS = frozenset("aeiou")


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


def beside(a: str, b: str) -> bool:
    """Whether two words of one length differ in one letter alone, for which a neighbouring key was hit."""
    pairs = [x + y for x, y in zip(a, b, strict=True) if x != y]
    rows = word_list("keys")
    return len(pairs) == 1 and any(pairs[0] in row or pairs[0][::-1] in row for row in rows)


def nearest(
    word: str, known: Iterable[str], meaning: Callable[[str], object] = str, *, strict: bool = True
) -> str | None:
    """The single nearest known word, or None where there is none or two are as near with another stem.

    The first letter has to be right: people rarely miss it, and most false friends differ there. Where it is not
    `strict`, so that one of them must be meant, a short word may have another letter.
    """
    return _nearest(word, known, meaning, allowed, strict=strict)[0]


def _nearest(
    word: str,
    known: Iterable[str],
    meaning: Callable[[str], object],
    allow: Callable[[str], int],
    *,
    strict: bool = True,
) -> tuple[str | None, float]:
    """The single nearest word, and how many slips away the nearest ones are."""
    most = allow(word)
    best: list[str] = []
    closest = FAR
    for candidate in known:
        if candidate[0] == word[0]:
            limit = min(most, allow(candidate))
            slips = distance(word, candidate, limit)
            if slips > limit:
                continue
            other = only_substituted(word, candidate) and not (len(word) > 4 and beside(word, candidate))
            if strict and other and len(word) < 6:
                continue  # another word of the language, most likely
            d = slips + 0.5 * other
            if d < closest:
                best, closest = [candidate], d
            elif d == closest:
                best.append(candidate)
    stems = {w.rstrip("s") for w in best}
    meanings = {meaning(w) for w in best}
    return (best[0] if len(stems) == 1 or len(meanings) == 1 else None), closest


def _allowed_plain(word: str) -> int:
    """How many slips a word that is not of the trade may hold: fewer, for there are many more such words."""
    return 0 if len(word) < 5 else 1 if len(word) < 8 else 2


def _bare(word: str) -> str:
    """The letters of a word that are no vowels, as hurried people write it: "grlnd"."""
    return "".join(letter for letter in word if letter not in VOWELS)


class Speller:
    """Mends slips of the fingers: to a word of the trade first, else to a plain word of the language.

    `known` gives every word of the language, asked for once; the words of `fixed` are not mended to, for a guess at a
    number is worse than a question. `meaning` tells which spellings are no tie, for they come to the same.
    """

    def __init__(
        self,
        trade: Iterable[str],
        known: Callable[[], Iterable[str]],
        fixed: Iterable[str],
        meaning: Callable[[str], object],
    ) -> None:
        self.trade = tuple(trade)
        self._known, self._fixed, self._meaning = known, frozenset(fixed), meaning
        self._by_letter: dict[str, tuple[list[str], list[str], list[str]]] = {}  # trade, plain and fixed words
        self._headless: dict[str, list[str]] = {}
        self._skeletons: dict[str, str] = {}
        self._mended: dict[str, str | None] = {}

    def mend(self, word: str) -> str | None:
        """The known word that this one is a slip of; None where it is known itself or nothing is near."""
        if word not in self._mended:
            self._mended[word] = self._found(word) if len(word) > 3 and word.isascii() and word.isalpha() else None
        return self._mended[word]

    @cached_property
    def _words(self) -> frozenset[str]:
        return frozenset(self._known())

    def _sort(self) -> None:
        trade = set(self.trade)
        for word in self.trade:
            self._by_letter.setdefault(word[0], ([], [], []))[0].append(word)
            self._headless.setdefault(word[1:], []).append(word)
        for word in sorted(self.trade, key=len):
            self._skeletons.setdefault(word[0] + _bare(word[1:]), word)
        for word in sorted(self._words - trade):
            if len(word) > 3 and (word in self._fixed or len(word) > 4):
                self._by_letter.setdefault(word[0], ([], [], []))[2 if word in self._fixed else 1].append(word)

    def _found(self, word: str) -> str | None:
        if word in self._words:
            return None
        if not self._by_letter:
            self._sort()
        if _bare(word) == word and word in self._skeletons:
            return self._skeletons[word]
        trade, plain, fixed = self._by_letter.get(word[0], ([], [], []))
        near, slips = _nearest(word, trade, self._meaning, allowed)
        other, further = _nearest(word, plain, self._meaning, _allowed_plain)
        closest = min(slips, further)
        if _nearest(word, fixed, self._meaning, lambda _: 1)[1] <= closest < FAR:
            return None
        if further < slips:
            near = other
        return near if near is not None or closest < 2 else self._first_letter(word)

    def _first_letter(self, word: str) -> str | None:
        """A slip in the first letter of a longer word: "atbles", "olumns", "varamel"."""
        swapped = word[1] + word[0] + word[2:]
        if len(word) < 5:
            return None
        if swapped in self._words and swapped not in self._fixed:
            return swapped
        missed = [right for right in self._headless.get(word[1:], ()) if beside(word, right)] if len(word) > 5 else []
        found = [*self._headless.get(word, ()), *missed]
        return found[0] if len(found) == 1 else self._by_ear(word)

    def _by_ear(self, word: str) -> str | None:
        """A word of the trade that begins with another letter of the same sound: "senterpeice", "kolumn"."""
        pairs = [pair for pair in word_list("sounds") if word[0] in pair] if len(word) > 5 else []
        for pair in pairs:
            heard = pair.replace(word[0], "", 1) + word[1:]
            trade = self._by_letter.get(heard[0], ([], [], []))[0]
            near = heard if heard in trade else _nearest(heard, trade, self._meaning, lambda w: allowed(w) - 1)[0]
            if near is not None:
                return near
        return None


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
