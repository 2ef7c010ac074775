"""One size of balloons in place of another that is in hand: "make those 11s 18s", "24s instead of the 11s"."""

from grammar.phrases import Phrase
from grammar.pieces.ground import Ground

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
        if self._kind_at(later) != "nominals" or self.drafts or not verb:
            return False
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
