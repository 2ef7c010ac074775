"""Bare numbers that count nothing here: of strange things, of money, of an hour that somebody has."""

from grammar.pieces.ground import Ground
from grammar.pieces.parts import MEASURES
from grammar.word_files import placed

LEAST_SUM = 5  # a smaller number taken away is of pieces, whatever the talk is about


class NothingCounted(Ground):
    """Whether a number is of something else than the pieces."""

    def _is_of_a_strange_thing(self, at: int) -> bool:
        """ "a 15 ft garland with 3 whatsits": behind a piece that has its size, of a strange word."""
        led = self._before(at, "onhand", "add", "and") and not self._before(at, "corr")
        in_hand = self.context.kinds and not self.heads and self.context.asked != "count"
        if in_hand and self._after(at, "word") and self.phrases[at + 1].text.lower().endswith("s"):
            return True  # "do I need two trips"
        sized = self.current.named and any(fact.endswith(MEASURES) for fact in self.current.facts)
        return led and sized and self._after(at, "word") and self._kind_at(at + 2) in {"", "sep", "and", "prep"}

    def _is_at_hand(self, at: int) -> bool:
        """ "I've got 150 left": balloons, of which nothing is asked."""
        ours = self._before(at, "onhand") and self.phrases[at - 1].value == "ours" and not self.current.named
        left = self._kind_at(at + 1) == "onhand"  # "left", "from last time"
        return ours and left and bool(self.context.kinds) and not self.context.asked and "solve" not in self.orders

    def _asked_for_a_size(self) -> bool:
        """Whether the open question is for a size: "if I only have one pack" answers none."""
        return str(self.context.asked or "").endswith(MEASURES)

    def _off_the_price(self, at: int, number: float) -> bool:
        """ "give her 20 off", "knock 20 off" once the price was told: a sum, which the book has no fact for."""
        off = self._after(at, "prep") and self.phrases[at + 1].text.lower() == "off"
        ends = self._kind_at(at + 2 if off else at + 1) in {"", "sep", "prep"}
        taken = self._before(at, "remove") and self.context.priced and number >= LEAST_SUM
        return ends and (off or taken)

    def _pays(self, at: int) -> bool:
        """Whether a number is of money for something that is no piece of the estimate."""
        for_it = self._after(at, "prep") and self.phrases[at + 1].value == "for"
        return for_it and self._kind_at(at + 2) == "word" and self.phrases[at + 2].text.lower() in placed("paid_for")
