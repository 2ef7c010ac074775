"""Sizes by sizes: "6 ft by 30 in"."""

from grammar.phrases import Figure, Phrase
from grammar.pieces.shares import Shares
from grammar.pieces.slots import TABLE_KIND
from grammar.terms import Amount


class Sides(Shares):
    """Sizes that come in twos."""

    def _on_sides(self, at: int, phrase: Phrase) -> None:
        """ "A by B": a number of tables and their length, or two sides (and a height) of one thing."""
        draft = self.current
        kind = self._kind()
        figures = phrase.amounts
        first, second = figures[0], figures[1]
        if first.type == "LEN" and second.type == "NUM":
            first, second = second, first  # "6 ft x 8 tables"
        noun = self.owner if self.owner is not None and at < self.owner.at else None
        plural = noun is not None and self.phrases[noun.at].text.lower().endswith("s")
        table = draft.on_table or (kind == TABLE_KIND and not draft.named)
        number = self._number(first)
        if (
            first.type == "NUM"
            and number == int(number)
            and "count" not in draft.facts
            and len(figures) == 2
            and second.type == "LEN"
            and (plural or (noun is None and table and not draft.named and first is figures[0]))
            and " x " in f" {phrase.terms[1].text.lower()} "
        ):
            self._set("count", number, phrase)
            self._bare_figure(second, phrase)
            return
        unit = next((f.high.unit for f in reversed(figures) if f.high.unit), "")
        lengths = [Amount(f.high.value, f.high.unit or unit) for f in figures]
        words = self.slots.words(kind, on_table=table)
        names = list(words.by) if words is not None else []
        if not names:
            if not self._so_many_times(first, second, phrase):
                self._leave(phrase)
            return
        if not any(amount.unit for amount in lengths):
            shared = self.slots.shared_unit(lengths, [self._need(name) for name in names])
            lengths = [Amount(amount.value, shared) for amount in lengths]
        if table and not lengths[0].unit and self._is_longer(lengths[1], lengths[0], names):
            lengths[:2] = lengths[1], lengths[0]
        elif names[:2] == ["length", "span"] or (table and lengths[0].unit):
            lengths[:2] = sorted(lengths[:2], key=lambda a: -self._inches(a))
        if table and draft.facts.get("table_shape") == "round" and len(lengths) == 2 and lengths[0] != lengths[1]:
            self._contradict(self._need("table_diameter"), [a.number for a in lengths], phrase)
            return
        if len(figures) > len(names):
            self._times_more(figures[len(names) :], phrase)
        for name, amount in zip(names, lengths, strict=False):
            fact = self._need(name)
            value = self.slots.value(amount, fact)
            if value is None:
                self._impossible(fact, Figure("LEN", amount, amount), phrase)
            else:
                self._set(name, value, phrase)

    def _times_more(self, figures: tuple[Figure, ...], phrase: Phrase) -> None:
        """ "arch 8x8 x2": behind all sides, so many of them."""
        if len(figures) == 1 and figures[0].type == "NUM" and "count" not in self.current.facts:
            self._set("count", self._number(figures[0]), phrase)
        else:
            self._leave(phrase)

    def _so_many_times(self, first: Figure, second: Figure, phrase: Phrase) -> bool:
        """ "column 6 ft x 4": of a piece with one size, so many."""
        size, many = (second, first) if first.type == "NUM" else (first, second)
        if (
            size.type != "LEN"
            or many.type != "NUM"
            or len(phrase.amounts) != len("ab")
            or "count" in self.current.facts
        ):
            return False
        self._set("count", self._number(many), phrase)
        self._bare_figure(size, phrase)
        return True

    def _is_longer(self, one: Amount, other: Amount, names: list[str]) -> bool:
        """Whether of two sides in units of their own, "8 by 30", the other cannot be the longer one."""
        long, wide = (self.slots.value(a, self._need(name)) for a, name in zip((other, one), names, strict=False))
        return long is None or wide is None or long < wide

    def _inches(self, amount: Amount) -> float:
        return self.slots.convert(amount.number, amount.unit or "ft", "in")
