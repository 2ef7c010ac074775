"""Falls at the ends of a garland, added to its length when all of it was said."""

from grammar.phrases import Figure, Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.lengths import Lengths
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Step

LENGTH = "length"


class Falls(Lengths):
    """What comes down at the ends."""

    def _on_fall(self, at: int, phrase: Phrase) -> None:
        amount, sides = phrase.value
        figure = Figure("LEN", amount, amount)
        if self._kind() == TABLE_KIND:
            named = Phrase("named", phrase.terms, label="drop_each", amounts=(figure,))
            self._drop_each(figure, named, at)
            return
        fact = self._bare_fact()
        both = self.slots.both(figure, fact) if fact is not None else None
        if fact is None or both is None or fact.id != LENGTH:
            self._leave(phrase)
            return
        self.falls.append((self.current, phrase, sides * both[1]))

    def _on_both_sides(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """ "and 2 ft each side" of a garland in hand; said in place of another fall it is left over."""
        fact = self._bare_fact()
        in_hand = not self.current.named and fact is not None and fact.id == LENGTH and LENGTH in self.context.known
        if not (in_hand and self._after(at, "each_side")) or self._kind() == TABLE_KIND:
            return super()._on_both_sides(at, figure, phrase)
        self.skip.add(at + 1)
        both = self.slots.both(figure, self._need(LENGTH))
        if both is None or any(p.kind in {"make", "corr"} for p in self.phrases[:at]):
            self._leave(Phrase(phrase.kind, (*phrase.terms, *self.phrases[at + 1].terms), amounts=phrase.amounts))
        else:
            self.falls.append((self.current, phrase, 2 * both[1]))
        return True

    def _let_fall(self) -> None:
        """Add each fall to the length of its piece, said in this turn or before; without one it is left over."""
        for draft, phrase, inches in self.falls:
            if LENGTH in draft.facts:
                draft.facts[LENGTH] += inches
            elif self._has_length(draft):
                draft.steps.append(Step(fact=LENGTH, how="plus", by=inches))
                self.changing = True
            else:
                self._leave(phrase)

    def _has_length(self, draft: Draft) -> bool:
        return not draft.new and LENGTH in self.context.known
