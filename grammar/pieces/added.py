"""One more piece like that in hand, but for its size: "and an 8 ft one", "plus a 7 footer", "also two at 8 ft"."""

from grammar.phrases import Figure, Phrase
from grammar.pieces.ground import Ground
from grammar.pieces.heads import is_count, is_size
from grammar.pieces.scaled import WORDS_BETWEEN

SMALL_PART = 2  # what is no more than so much of the size in hand makes it longer: "and another foot"
LINKS = frozenset({"sep", "prep", "of", "cmp", "ones", *WORDS_BETWEEN} - {"det"})
NOUNS = frozenset({"table", "piece", "shape", "balloon", "cmp", "more", "label", "by"})


class Added(Ground):
    """A turn that begins with "and", "plus" or "also" and tells the size of one more."""

    def _adds_one(self) -> None:
        """Open a piece like the one in focus where the turn tells of one more, of a size of its own."""
        at, joined = 0, False
        while self._kind_at(at) in {"and", "add", "sep"}:
            joined = joined or self.phrases[at].kind != "sep"
            another = self.phrases[at].value == "another"
            at += 1
        if not joined or self.context.focus is None or self.context.asked or self.orders:
            return
        number, after = self._how_many(at)
        number = number or (1.0 if another else 0.0)
        while self._kind_at(after) in LINKS or (self._kind_at(after) == "amount" and self._says_one(after)):
            after += 1
        if number and self._in_colours(after):
            looks = {i for i, p in enumerate(self.phrases) if i >= after and p.kind != "ones"}
            self._begin_one(number, set(range(len(self.phrases))) - looks, len(self.phrases))
            return
        size = self.phrases[after] if after < len(self.phrases) else None
        if size is None or not number or not (is_size(size) or size.kind == "footer"):
            return
        end = after + 1 + (self._kind_at(after + 1) == "ones")
        if self._kind_at(end) in NOUNS or not self._great_enough(size, ones=end > after + 1):
            return
        self._begin_one(number, set(range(end)) - {after}, end)
        if size.kind == "footer":
            self.phrases[after] = Phrase("amount", size.terms, amounts=(Figure("LEN", size.value, size.value),))

    def _begin_one(self, number: float, used: set[int], end: int) -> None:
        """So many of their own, like the piece in focus; what is named up to `end` is no other thing."""
        self.current.new, self.changing = True, True
        self.current.facts["count"] = int(number)
        self.skip |= used
        self.starts = {first: head for first, head in self.starts.items() if head.at >= end}
        self.heads = {place: head for place, head in self.heads.items() if place >= end}

    def _in_colours(self, at: int) -> bool:
        """ "and 2 red ones": colours and no more up to the end of the turn."""
        kinds = [phrase.kind for phrase in self.phrases[at:]]
        return kinds[-1:] == ["ones"] and "colour" in kinds and {*kinds} <= {"colour", "and", "sep", "ones"}

    def _how_many(self, at: int) -> tuple[float, int]:
        """The number from a phrase on, 0 where none is said, and where what follows it begins."""
        if self._kind_at(at) == "det" and self.phrases[at].value == "one":
            return 1.0, at + 1
        if self._kind_at(at) == "amount" and is_count(self.phrases[at]):
            return self._number(self.phrases[at].amounts[0]), at + 1 + (self._kind_at(at + 1) == "more")
        return 0.0, at

    def _says_one(self, at: int) -> bool:
        return is_count(self.phrases[at]) and self.phrases[at].text.lower() == "one"

    def _great_enough(self, size: Phrase, *, ones: bool) -> bool:
        """Whether a size is that of a piece, and no more of the one in hand."""
        fact = self._bare_fact()
        figure = size.amounts[0] if size.amounts else Figure("LEN", size.value, size.value)
        both = self.slots.both(figure, fact) if fact is not None else None
        if fact is None or both is None or not fact.fits(both[1]):
            return False
        held = self.context.values.get(fact.id)
        return ones or size.kind == "footer" or not isinstance(held, int | float) or both[1] > held / SMALL_PART
