"""Sizes of the parts of a piece: "toppers 3 ft"."""

from grammar.phrases import Figure, Phrase
from grammar.pieces.ground import Ground


class OwnSizes(Ground):
    """A size beside the name of a part is not that of the piece in hand."""

    def _of_its_own(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """ "toppers 3 ft", "a 3 ft topper": a choice whose fact has a size of its own."""
        for place in (at - 1, at + 1):
            if self._kind_at(place) != "choice" or self._owned(at) != self._owned(place):
                continue
            fact = self.slots.vocabulary.by_id.get(f"{self.phrases[place].value[0]}_size", ())
            spec = next((f for f in fact if f.belongs(self._kind() or "")), None)
            both = self.slots.both(figure, spec) if spec is not None else None
            if spec is not None and both is not None and spec.fits(both[1]):
                self._set(spec.id, both[1], phrase)
                self.changing = self.changing or bool(self.context.kinds)
                return True
        return False
