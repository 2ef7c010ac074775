"""So many per cent more or fewer of something: "10 percent less balloons", "a third fewer tables", "20 % more gold"."""

from grammar.phrases import Phrase
from grammar.pieces.ground import Ground
from grammar.reading import Doubt, Step

BETWEEN = frozenset({"det", "of", "gap"})
THINGS = frozenset({"table", "piece", "ones"})


class Portions(Ground):
    """A change by a share of what it names; where that is in no fact of the piece, it is reported."""

    def _portion(self, at: int, phrase: Phrase, share: float) -> bool:
        """A share before "more" or "fewer" and what these are of, or before the balloons themselves."""
        more = self.phrases[at + 1] if self._after(at, "more") else None
        place = at + 1 + (more is not None)
        while self._kind_at(place) in BETWEEN:
            place += 1
        target = self._kind_at(place)
        if not self.context.kinds or self._owned(at):
            return False
        if more is None:
            strange = target == "word" and phrase.amounts[0].type == "PCT"
            of_all = target == "balloon" and phrase.amounts[0].type == "FRAC"
            return (of_all and self._of_balloons_held(share, at, place)) or (strange and self._unheard(at, at))
        times = 1 + share if more.value == "more" else 1 - share
        if target == "colour":
            words = " ".join(p.text for p in self.phrases[at : place + 1])
            self.doubts.append(Doubt(kind="vague", fact="colours", value=self.phrases[place].value, words=words))
            self.skip |= set(range(at + 1, place + 1))
            self.changing = True
            return True
        if target in THINGS:
            return self._of_pieces_held(times, at, place)
        if target == "flag":
            return self._unheard(at, place)
        if "balloons" in self.context.values and target in {"", "sep", "balloon", "each_holds", "prep"}:
            return self._of_balloons_held(times, at, place if target == "balloon" else at + 1)
        if more.value == "more" or (target != "balloon" and phrase.amounts[0].type == "FRAC"):
            return False  # spares, or the size of the piece
        return self._unheard(at, place if target == "balloon" else at + 1)

    def _of_balloons_held(self, times: float, at: int, last: int) -> bool:
        """So many times the balloons that were said; those that are worked out follow from the piece."""
        held = self.context.values.get("balloons")
        if not isinstance(held, int | float) or held * times != round(held * times, 6):
            return self._unheard(at, last)
        self.current.steps.append(Step(fact="balloons", how="times", by=times))
        self.skip |= set(range(at + 1, last + 1))
        self.changing = True
        return True

    def _of_pieces_held(self, times: float, at: int, place: int) -> bool:
        """So many times the pieces in hand, where that is a whole number of them."""
        head = self.heads.get(place)
        count = self.context.count
        if head is None or self._head_kind(head) != self.context.focus or not count:
            return self._unheard(at, place)
        if round(count * times, 6) != int(round(count * times, 6)):
            return self._unheard(at, place)
        self.current.steps.append(Step(fact="count", how="times", by=times))
        self._pass_over(at, place)
        self.changing = True
        return True

    def _unheard(self, at: int, last: int) -> bool:
        """Name the words as not used."""
        for phrase in self.phrases[at : last + 1]:
            self._leave(phrase)
        self._pass_over(at, last)
        return True

    def _pass_over(self, at: int, last: int) -> None:
        self.skip |= set(range(at + 1, last + 1))
        self.starts = {first: head for first, head in self.starts.items() if not at < head.at <= last}
