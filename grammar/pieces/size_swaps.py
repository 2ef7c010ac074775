"""One size of balloons in place of another that is in hand: "make those 11s 18s", "24s instead of the 11s"."""

from grammar.phrases import Phrase
from grammar.pieces.ground import Ground
from grammar.word_files import placed

ADDED = "sizes added"  # the topic of a turn that put a size beside those in hand
BETWEEN = frozenset({"det", "prep", "neg", "make", "pron", "sep"})


class SizeSwaps(Ground):
    """Two sizes side by side, of which one is in hand and the other is not."""

    def _swaps_sizes(self, at: int, phrase: Phrase) -> bool:
        """The size in hand goes, the other comes; the rest of them stay."""
        held = self.context.values.get("sizes") or []
        later = at + 1
        while self._kind_at(later) in BETWEEN:
            later += 1
        verb = self.changing or any(p.kind == "neg" for p in self.phrases[at:later])
        if later == len(self.phrases) and self._those_last(at, held):
            first, second = held[-1], phrase.value.number
        elif self._kind_at(later) != "nominals" or self.drafts or not verb:
            return False
        else:
            first, second = (self.phrases[place].value.number for place in (at, later))
        if (first in held) == (second in held) or not self.slots.is_nominal(phrase.value):
            return False
        old, new = (first, second) if first in held else (second, first)
        if new not in self.slots.vocabulary.nominal:
            return False
        self.current.drop.append(("sizes", old))
        self.current.facts["sizes"] = [int(new)]
        self.current.extend = self.changing = True
        self.topic = ("sizes", self.current.facts["sizes"])
        self.skip |= set(range(at + 1, later + 1))
        return True

    def _those_last(self, at: int, held: list[int]) -> bool:
        """ "5 and 11 inch", "some 18s in it", "make those 24s": of several sizes the one that came last."""
        led = self._before(at, "make") and self.phrases[at - 1].text.lower().split()[-1] in placed("those")
        return led and len(held) > 1 and self.context.topic == ADDED
