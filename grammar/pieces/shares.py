"""Shares of a piece: how much of it is covered, or how many of several are meant."""

from typing import Any

from grammar.phrases import Phrase
from grammar.pieces.bare import Bare
from grammar.pieces.heads import is_size
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Doubt, Step
from grammar.rows.hundreds import HUNDRED
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
        if self._answers_share(at, value) or self._of_the_one_added(at, value):
            return
        if self._portion(at, phrase, value) or self._scaled(at, phrase, value):
            return
        strange = self._after(at, "word") or (self._after(at, "det") and self._kind_at(at + 2) == "word")
        if strange and figure.type == "FRAC" and self.context.kinds and not self.current.named:
            self._leave(phrase)  # "half the density": of what nobody knows
            return
        if figure.type == "PCT" and self.job.percent(at, phrase, self.phrases):
            return
        if self._after(at, "prep") and self.phrases[at + 1].text.lower() == "off":
            self._taken_off_the_price(at, phrase)
            return
        if figure.type == "FRAC" and self._of_the_pieces(at, value):
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

    def _taken_off_the_price(self, at: int, phrase: Phrase) -> None:
        """ "10 % off", "5 % off for cash": a discount; a share off anything else is left over."""
        figure = phrase.amounts[0]
        if figure.type == "PCT" and self._kind_at(at + 2) in {"", "sep", "and", "prep", "pron"}:
            self.job.set("discount", figure.high.number, phrase.text)
            self.changing = True
        else:
            self._leave(phrase)

    def _on_split(self, at: int, phrase: Phrase) -> None:
        """ "make it 60 40": the shares of as many colours, in the order said."""
        colours = self.current.colours or self.context.values.get("colours") or ()
        if len(colours) != len(phrase.value):
            self._leave(phrase)
            return
        pairs = zip(colours, phrase.value, strict=True)
        self.current.colours = [{"name": colour["name"], "share": share / HUNDRED} for colour, share in pairs]
        self.topic = ("colours", None)
        self.changing = True

    def _of_the_one_added(self, at: int, share: float) -> bool:
        """ "throw some gold in, maybe a fifth": the share of the colour that was just added."""
        behind = self._before(at, "sep") and self._kind_at(at - 2) == "colour"
        colours = self.current.colours
        if not (behind and self.current.extend and len(colours) == 1 and set(colours[0]) == {"name"} and share < 1):
            return False
        colours[0]["share"] = share
        return True

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

    def _of_the_pieces(self, at: int, share: float) -> bool:
        """ "half the tables in gold": so many of those in hand, of which something is told."""
        place = at + 2 if self._after(at, "of") else at + 1
        head = self.heads.get(place + 1)
        the = self._kind_at(place) == "det" and self.phrases[place].value == "the"
        told = self._kind_at(head.at + 1) if head is not None else ""
        if head is None or not the or told not in {"colour", "flag", "onhand", "neg", "choice", "", "sep"}:
            return False
        kind, total = TABLE_KIND if head.kind == "table" else head.kind, self.context.count or 0
        number = round(total * share, 4)
        several = self.phrases[head.at].text.lower().endswith("s") and 0 < number < total
        if kind != self.context.focus or not several:
            return False
        if number != int(number):
            self._leave(self.phrases[at])  # half of nine tables
            self.skip |= {*range(at + 1, head.at + 1)}
            self.starts.pop(head.first, None)
            return True
        if told in {"", "sep"}:
            self.current.steps.append(Step(fact="count", how="times", by=share))  # "just do half the tables"
            self.changing = True
        else:
            self._part_off(number, total)
        self.skip |= {*range(at + 1, head.at + 1)}
        self.starts.pop(head.first, None)
        return True
