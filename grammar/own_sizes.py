"""Sizes of what is named right before them: "toppers 3 ft", and of things that nobody knows: "sign 2 ft"."""

from grammar.ground import Ground
from grammar.heads import is_size
from grammar.parts import MEASURES
from grammar.phrases import Figure, Phrase

OPENS = frozenset({"", "det", "sep", "and", "add"})


class OwnSizes(Ground):
    """A size behind a name that is neither a piece nor a table is not of the piece in hand."""

    def _of_its_own(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """Keep the size of a part, or leave that of a stranger."""
        return self._of_a_part(at, figure, phrase) or self._of_something_else(at, phrase)

    def _of_a_part(self, at: int, figure: Figure, phrase: Phrase) -> bool:
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

    def _of_something_else(self, at: int, phrase: Phrase) -> bool:
        """ "sign 2 ft", "the plinths are 3 ft" where the piece has its size: named as not used."""
        stranger = self._before(at, "word") and self._kind_at(at - 2) in OPENS and not self._owned(at)
        open_ = self.context.asked or self.orders or self.correcting or self.hint is not None
        if not stranger or open_ or not is_size(phrase) or self.heads or self._kind_at(at + 1) in {"balloon", "cmp"}:
            return False
        held = {*self.context.known, *self.current.facts}
        if not self.context.kinds or not any(name.endswith(MEASURES) for name in held):
            return False
        self._leave(phrase)
        return True
