"""Fuller or leaner than it is: "a bit fuller", "thicker", "too skimpy", where the book has a choice for it."""

from grammar.phrases import Phrase
from grammar.pieces.ground import Ground
from grammar.word_files import placed

FULLNESS = "lushness"  # the choice, its values from the leanest to the fullest
STEPS = {"fuller": 1, "leaner": -1}


class Fullness(Ground):
    """A step in how full a piece is; of a piece that has no such choice the word is reported."""

    def _step_of_fullness(self, phrase: Phrase) -> int:
        """How many steps fuller a word wants it; 0 where it speaks of a width or a size."""
        if phrase.value in STEPS:
            return STEPS[str(phrase.value)]
        word = phrase.text.lower()
        of_it = self._has_fullness()
        return of_it * ((word in placed("thick")) - (word in placed("thin")))

    def _has_fullness(self) -> bool:
        fact = self.slots.vocabulary.fact(FULLNESS, self._kind())
        return fact is not None and self._kind() is not None and fact.belongs(str(self._kind()))

    def _made_fuller(self, at: int, phrase: Phrase) -> bool:
        """ "a bit fuller": the next value of the choice, beginning with the middle one."""
        by = self._step_of_fullness(phrase)
        if not by:
            return False
        fact = self.slots.vocabulary.fact(FULLNESS, self._kind())
        of_another = self._after(at, "word")  # "thinner string"
        if fact is None or not self._has_fullness() or of_another:
            self.unused.append(phrase)
            return True
        if FULLNESS in self.current.facts:
            return True  # "it's skimpy, make it fuller" is one step
        values = list(fact.choices)
        held = self.context.values.get(FULLNESS, values[len(values) // 2])
        place = values.index(held) + by if held in values else -1
        if not 0 <= place < len(values):
            self.unused.append(phrase)  # it is as full as the book knows
            return True
        them = any(p.kind == "make" and p.text.lower().endswith(" them") for p in self.phrases[:at])
        if them and self.current is self.loose and len(self.context.kinds) > 1:
            self.current.which = "all"  # "make them a bit thicker"
        self.correcting = True
        self._set(FULLNESS, values[place], phrase)
        self.changing = True
        return True

    def _fuller_follows(self, at: int) -> bool:
        """ "double it up so it's thicker": the doubling is of the fullness that is told."""
        return any(p.kind == "cmp" and self._step_of_fullness(p) for p in self.phrases[at + 1 :])
