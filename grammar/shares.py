"""Shares of a piece: how much of it is covered, or how many of several are meant."""

from typing import Any

from grammar.bare import Bare
from grammar.heads import is_size
from grammar.phrases import Phrase
from grammar.reading import Doubt
from grammar.terms import Amount


class Shares(Bare):
    """A fraction or a percentage without a colour."""

    def _share_of_piece(self, at: int, phrase: Phrase) -> None:
        """A fraction without a colour: how much of the piece is covered."""
        figure = phrase.amounts[0]
        kind = self._kind()
        fact = self._spec("coverage")
        if not isinstance(figure.high, Amount):
            return
        value = figure.high.number / (100 if figure.type == "PCT" else 1)
        if figure.type == "PCT" and self.job.percent(at, phrase, self.phrases):
            return
        if self._after(at, "prep") and self.phrases[at + 1].text.lower() == "off":
            self._leave(phrase)  # a price, not a table
            return
        total = self.current.part_of or self.current.facts.get("count")
        sized = figure.type == "FRAC" and self._after(at, "amount") and is_size(self.phrases[at + 1])
        if sized and total and (total * value).is_integer() and self._grouped(at, int(total * value), phrase):
            return  # "ten tables, half 6 ft and half 8 ft"
        if figure.type == "FRAC" and self.context.count and self._part(at, self.context.count * value, phrase):
            return
        if self._before(at, "neg") and self.phrases[at - 1].value == "not":
            return
        self.correcting = self.correcting or self._before(at, "neg")
        if fact is not None and value > 1 and figure.type == "PCT":
            self.doubts.append(Doubt(kind="impossible", fact="coverage", value=value, words=phrase.text, piece=kind))
            return
        if fact is None or not (kind is None or fact.belongs(kind)) or not 0 < value <= 1:
            self._leave(phrase)
            return
        self._cover(value, phrase)
        self._may_cover_all(at)

    def _cover(self, value: float, phrase: Phrase) -> None:
        facts = self.current.facts
        said: tuple[str, Any] = ("coverage_fraction", round(value, 4))
        if abs(value - 2 / 3) < 0.01:
            said = ("coverage", "two_thirds")
        elif value == 1:
            said = ("coverage", "full")
        old = facts.get("coverage", facts.get("coverage_fraction"))
        if old is not None and "compare" in self.orders and old != said[1]:
            self.current.options.setdefault("coverage", [old]).append(said[1])
            return
        if old is not None and old != said[1] and not self.correcting:
            self._contradict_coverage(said[1], phrase)
            return
        facts.pop("coverage", None)
        facts.pop("coverage_fraction", None)
        self.correcting = self.correcting or old is not None
        self._set(said[0], said[1], phrase)
