"""Lengths with and without a label, sides, lists of balloon sizes."""

import math
from dataclasses import replace

from grammar.phrases import Figure, Phrase
from grammar.pieces.draft import Draft, outside
from grammar.pieces.ground import COST
from grammar.pieces.heads import is_size
from grammar.pieces.own_sizes import OwnSizes
from grammar.pieces.sides import Sides
from grammar.pieces.size_swaps import ADDED, SizeSwaps
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Doubt
from grammar.terms import Amount
from grammar.vocabulary import FactWords
from grammar.word_files import placed

ROLES = frozenset({"width", "length", "height", "across", "depth", "along"})
SIZES_OPEN = "size"  # what is asked where no size is known and there is more than one way to tell it
IN_INCHES = frozenset({"span", "height", "length", "diameter", "table_length", "table_width", "sag"})


class Lengths(Sides, OwnSizes, SizeSwaps):
    """Lengths with a label, sides, lists of balloon sizes."""

    def _on_amount(self, at: int, phrase: Phrase) -> None:
        figure = phrase.amounts[0]
        if figure.type == "NUM":
            self._on_number(at, figure, phrase)
        elif figure.type == "LEN":
            self._on_length(at, figure, phrase)
        elif figure.type in {"FRAC", "PCT"}:
            self._share_of_piece(at, phrase)
        elif not self.job.amount(at, phrase, self.phrases):
            self._leave(phrase)

    def _on_number(self, at: int, figure: Figure, phrase: Phrase) -> None:
        if not self._owned(at) and self._pair(at, phrase):
            return
        if self._of_a_stranger(at):
            self._leave(phrase)
        elif not (
            self._which_way(at, figure, phrase)
            or self._answers_size(figure, phrase)
            or self._meets_hint(at, figure, phrase)
        ):
            self._count(at, phrase)

    def _on_length(self, at: int, figure: Figure, phrase: Phrase) -> None:
        if self._of_its_own(at, figure, phrase):
            return
        if self._pair(at, phrase) or (self._before(at, "neg") and self.phrases[at - 1].value == "not"):
            return
        place = at - 1 if self._before(at, "det") else at
        if self._before(place, "neg", "remove") and self._drop_size(figure):
            return
        if self._on_both_sides(at, figure, phrase) or self._sizes_in_a_row(at, phrase) or self._in_balloons(at, phrase):
            return
        if self._taken_off(at, figure) or self._put_on(at, figure) or self._of_a_part(at, figure, phrase):
            return
        if self._is_its_drop(at):
            self.skip.add(at + 1)
            self._drop_each(figure, phrase, at)
        elif self._after(at, "balloon"):
            self._sizes([figure], phrase)
        else:
            self._length(figure, phrase, at)

    def _of_a_part(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """ "a 3 ft topper", "toppers 3 ft": the size of what was chosen, where the book has a fact of that name."""
        bare = self._bare_fact()
        has_size = bare is None or bare.id in self.current.facts or bare.id in self.context.known
        before = at - 1 if has_size else -1
        while has_size and self._kind_at(before) in {"det", "onhand", "prep"}:
            before -= 1  # "topped with a 3 ft balloon"
        for place in (at + 1, before):
            if self._kind_at(place) == "choice" and not self._owned(at):
                fact = self._spec(f"{self.phrases[place].value[0]}_size")
                value = self.slots.value(figure.high, fact) if fact is not None else None
                if fact is not None and value is not None:
                    self._set(fact.id, value, phrase)
                    return True
        return False

    def _answers_size(self, figure: Figure, phrase: Phrase) -> bool:
        """A bare number where the size was asked for, which can be told in more than one way: one of them is meant."""
        kind = self._kind()
        if self.context.asked != SIZES_OPEN or self.current.named or kind is None or self._holds_balloons(kind):
            return False
        unit = self.slots.shared_unit([figure.high], [self._need("length")])
        size = Amount(figure.high.value, unit or "ft")
        self._ask_which(Figure("LEN", size, size), phrase, kind)
        return True

    def _which_way(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """ "arch 10": a size of one thing that can be meant in more than one way, where none follows."""
        kind = self._kind()
        words = self.slots.vocabulary.kinds.get(kind or "")
        if self._bare_fact() is not None or words is None or not self._names_one(at, self._number(figure)):
            return False
        rest = self.phrases[at + 1 :]
        other = [side for side in words.by if side not in {self._role(p.label) for p in rest if p.kind == "named"}]
        if len(other) == 1 < len(words.by):  # "arch 10, 8 high"
            value = self.slots.value(figure.high, self._need(other[0]))
            self._set(other[0], value, phrase) if value is not None else self._leave(phrase)
            return True
        if any(p.kind in {"sides", "named", "amount"} for p in rest):
            return False
        unit = self.slots.shared_unit([figure.high], [self._need("length")])
        size = Amount(figure.high.value, unit or "ft")
        self._ask_which(Figure("LEN", size, size), phrase, str(kind))
        return True

    def _of_a_stranger(self, at: int) -> bool:
        """ "parking is 12": a number with a word before it that nobody knows, and nothing behind it to count."""
        known = self._owned(at) or self.context.asked or self.orders or self.correcting or self.hint is not None
        if self.context.kinds and self.phrases[at].text.lower() == "one" and self._after(at, "word"):
            return True  # "does one small tank do it"
        counts = self._kind_at(at + 1) not in {"", "sep", "and"}
        return bool(self._before(at, "word") and self.context.kinds and not known and not counts)

    def _meets_hint(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """ "longer, 12": a bare number that counts nothing, where a size was announced."""
        hint = self.hint
        value = self.slots.value(figure.high, hint) if hint is not None and not self._owned(at) else None
        if hint is None or value is None or hint.type != "quantity" or self._after(at, "word", "gap"):
            return False
        self.hint = None
        self._set(hint.id, value, phrase)
        return True

    def _on_listing(self, at: int, phrase: Phrase) -> None:
        if self._one_each(phrase):
            return
        if not self._sizes(list(phrase.amounts), phrase, only_if_nominal=not self._after(at, "balloon")):
            for figure in phrase.amounts:
                self._on_amount(at, Phrase("amount", phrase.terms, amounts=(figure,)))

    def _pair(self, at: int, phrase: Phrase) -> bool:
        """ "two garlands, 8 ft and 12 ft", "two columns, 6 and 7 ft": one of each length."""
        other = self.phrases[at + 2] if self._after(at, "and") and at + 2 < len(self.phrases) else None
        if other is None or not is_size(other) or self._kind_at(at + 3) in {"balloon", "cmp", "more"}:
            return False
        if at in self.heads or at + 2 in self.heads or any(at < h.first <= at + 2 for h in self.heads.values()):
            return False
        both = Phrase("listing", (*phrase.terms, *other.terms), amounts=(*phrase.amounts, *other.amounts))
        if not self._one_each(both):
            return False
        self.skip |= {at + 1, at + 2}
        return True

    def _one_each(self, phrase: Phrase) -> bool:
        """ "three garlands of 8, 10 and 12 feet": one of each length."""
        base, fact = self.current, self._bare_fact()
        count = base.facts.get("count") if base.named else self.context.count
        if fact is None or count != len(phrase.amounts) or base.part_of:
            return False
        unit = phrase.amounts[-1].high.unit
        values = [self.slots.value(Amount(f.high.value, f.high.unit or unit), fact) for f in phrase.amounts]
        if any(v is None or not fact.fits(v) for v in values):
            return False
        for value in values:
            kind = base.kind or self.context.focus
            clone = Draft(kind=kind, new=base.new, on_table=base.on_table, named=True, part_of=float(len(values)))
            clone.facts = {**base.facts, "count": 1, fact.id: value}
            clone.colours = [dict(c) for c in base.colours]
            self.drafts.append(clone)
        if base in self.drafts:
            self.drafts.remove(base)
        self.current = self.drafts[-1]
        return True

    def _on_nominals(self, at: int, phrase: Phrase) -> None:
        """ "5s and 11s": balloon sizes."""
        figure = Figure("NUM", phrase.value, phrase.value)
        if not self.current.named and self._speaks_of_table() and not self.slots.is_nominal(phrase.value):
            self._length(Figure("LEN", phrase.value, phrase.value), phrase, at)  # "what if they're 72s"
            return
        if self._swaps_sizes(at, phrase):
            return
        place = at - 1 if self._before(at, "det") else at
        if self._before(place, "neg", "remove") and self._drop_size(figure):
            return
        if self.current.on_table and not self.slots.is_nominal(phrase.value):
            self._length(Figure("LEN", phrase.value, phrase.value), phrase, at)
        elif not self._sizes([figure], phrase, only_if_nominal=True):
            self._leave(phrase)
        elif self._after(at, "pron") and not self.drafts:
            self.current.extend = True  # "some 18s in it": beside those that it has
            self.topic = (ADDED, None)

    def _on_footer(self, at: int, phrase: Phrase) -> None:
        self._length(Figure("LEN", phrase.value, phrase.value), phrase, at)

    def _on_label(self, at: int, phrase: Phrase) -> None:
        """A label without its amount: the next bare size is meant for it."""
        on_table = self.current.on_table or (
            self._kind() == TABLE_KIND and not self.current.named and self._speaks_of_table()
        )
        fact = self.slots.fact(str(phrase.value), self._kind(), on_table=on_table)
        place = at - 1 if self._before(at, "det") else at
        if self._before(place, "remove", "neg") and self.context.job.get(str(phrase.value)) is not None:
            self.job.dropped.append(str(phrase.value))  # "forget the budget"
            self.changing = True
            return
        topic = self.context.topic
        moved = self.context.values.get(topic)
        if (
            fact is not None
            and self._before(at, "pron", "det")
            and phrase.value in ROLES
            and topic in IN_INCHES
            and moved is not None
            and fact.id != topic
        ):
            self.current.facts[fact.id] = moved  # "that's the height": what was just said was meant for this
            self.current.drop.append((topic, None))
            return
        alone = self._before(at, "more") and self._kind_at(at - 2) != "amount" and self.context.kinds
        if fact is not None and alone and not self._size_follows(at) and not self.orders:
            self.doubts.append(Doubt(kind="vague", words=f"{self.phrases[at - 1].text} {phrase.text}"))
            self.changing = True
        elif fact is not None and fact.unit == "in":
            self.hint = fact
            if self.context.options and fact.id in self.context.options:
                self.answer = fact.id

    def _on_named(self, at: int, phrase: Phrase) -> None:
        """An amount with a label: a fact of the job, or of the piece or its table."""
        figure = phrase.amounts[-1]
        if self._before(at, "neg") and self.phrases[at - 1].value == "not":
            return
        if phrase.label == "guests" and self._before(at, "of") and self._kind_at(at - 2) == "table":
            self._set("seats", self._number(figure), phrase)  # "tables of 8 people"
            return
        if phrase.label == "labour_rate" and self._pays_for_another_thing(at, phrase):
            self._leave(phrase)
            return
        if phrase.label == "guests" and self._before(at, "prep") and self._kind_at(at - 2) == "table":
            self.seated = (self.current, self._number(figure))
        if phrase.label in {"guests", "crew"} or self.job.owns(phrase.label):
            if self.job.named(at, phrase, self.phrases):
                self.topic = (phrase.label, None)
                return
            self._leave(phrase)
            return
        draft = self.current
        kind = self._kind()
        narrow = phrase.label in {"width", "across"} and self._is_limited(at)  # "12 inches wide max": the runner
        of_table = kind == TABLE_KIND and not draft.named and not narrow and self._speaks_of_table()
        on_table = draft.on_table or of_table
        if figure.type in {"FRAC", "PCT"} and phrase.label in ROLES:
            share = figure.high.number / (100 if figure.type == "PCT" else 1)
            in_hand = self.context.kinds and not draft.new
            if not (in_hand and self._scale(phrase.label, share, set(), replace(phrase, kind="label"))):
                self._share_of_piece(at, phrase)  # "half the length"
            return
        if kind is None and not self.context.kinds:
            self._name_by_fact(phrase.label)
            kind, draft = self._kind(), self.current
            on_table = draft.on_table
        if phrase.label == "drop_each":
            self._drop_each(figure, phrase, at)
            return
        fact = self.slots.fact(phrase.label, kind, on_table=on_table)
        if fact is not None and phrase.label == "across" and on_table and draft.facts.get("table_shape") != "round":
            fact = self._across(figure, fact)
        if fact is not None and phrase.label == "width" and on_table and draft.facts.get("table_shape") == "round":
            fact = self._need("table_diameter")
        if fact is None:
            bare = self._bare_fact()
            upright = bare is not None and bare.id == "height" and phrase.label in {"width", "across", "depth"}
            if kind is None or upright or phrase.label not in ROLES - {"depth"}:
                self._leave(phrase)
            else:
                self._bare_figure(figure, phrase)
            return
        self._named_fact(fact, figure, phrase)

    def _is_limited(self, at: int) -> bool:
        """Whether a size is the most that it may be."""
        return any(self._kind_at(i) == "limit" and self.phrases[i].value == "most" for i in (at - 1, at + 1) if i >= 0)

    def _pays_for_another_thing(self, at: int, phrase: Phrase) -> bool:
        """ "I pay 12 for parking": money, but not for work."""
        for_it = self._after(at, "prep") and self.phrases[at + 1].value == "for" and self._kind_at(at + 2) == "word"
        return for_it and self.phrases[at + 2].text.lower() not in placed("hands")

    def _name_by_fact(self, label: str) -> None:
        """ "table height 29" before any table was named: only one kind of piece has such a fact."""
        fact = self.slots.vocabulary.fact(label)
        of_the_pump = label == "strokes" and "pump_size" in self.job.facts
        if fact is not None and fact.of == (TABLE_KIND,) and not of_the_pump:
            draft = Draft(kind=TABLE_KIND, new=True, named=True, on_table=True)
            self.drafts.append(draft)
            self.current = draft

    def _across(self, figure: Figure, fact: FactWords) -> FactWords:
        """ "60 in across": the diameter of a round table, the width of a long one whose length is known."""
        if "table_length" in self.current.facts:
            return self._need("table_width")
        return fact

    def _named_fact(self, fact: FactWords, figure: Figure, phrase: Phrase) -> None:
        both = self.slots.both(figure, fact)
        if both is None:
            self._impossible(fact, figure, phrase)
            return
        if fact.id == "strokes" and "pump_size" in self.job.facts:
            self.job.set("pump_strokes", both[1], phrase.text)  # "my pump gives 4 inches in two strokes"
            return
        if fact.type == "range":
            self._set(fact.id, [_tidy(both[0]), _tidy(both[1])], phrase)
        elif figure.single:
            self._set(fact.id, _tidy(both[1]), phrase)
            self._hang(fact.id)
        else:
            self.doubts.append(
                Doubt(kind="either", fact=fact.id, options=[_tidy(both[0]), _tidy(both[1])], words=phrase.text)
            )

    def _on_both_sides(self, at: int, figure: Figure, phrase: Phrase) -> bool:
        """ "10 in each side", "3 ft down each side": what hangs over, after the size of the thing itself."""
        fact = self._bare_fact()
        if not self._after(at, "each_side") or fact is None or fact.id not in self.current.facts:
            return False
        self.skip.add(at + 1)
        self._drop_each(figure, phrase, at)
        return True

    def _drop_each(self, figure: Figure, phrase: Phrase, at: int) -> None:
        """ "10 in each end": an overhang of a runner, or what comes down on each side of a garland."""
        kind = self._kind()
        if kind == TABLE_KIND:
            fact, table = self._need("overhang"), self._bare_fact()
            both = self.slots.both(figure, fact)
            if both is not None and outside(fact, both[1]) and table is not None and table.id not in self.current.facts:
                self._bare_figure(figure, phrase)  # "tables at 8 ft over both ends"
                self._set("coverage", "drop_both", phrase)
                self.cost += COST["contradiction"]
                return
            self._named_fact(fact, figure, phrase)
            return
        bare = self._bare_fact()
        both = self.slots.both(figure, bare) if bare is not None else None
        if bare is not None and both is not None and bare.id in self.current.facts:
            self.current.facts[bare.id] += 2 * both[1]
            return
        if self.current.article and self.current.facts.get("count") == 1 and str(kind) not in placed("strung"):
            self.current.facts["count"] = 2  # "a column each end, 6 foot"
        self._bare_figure(figure, phrase)


def _tidy(value: float) -> float:
    return value if not math.isfinite(value) else int(value) if value == int(value) else round(value, 4)
