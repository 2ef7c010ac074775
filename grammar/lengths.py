"""Lengths with and without a label, sides, lists of balloon sizes, shares of a piece."""

import math
from typing import Any

from grammar.counts import Counts
from grammar.draft import Draft, outside
from grammar.ground import COST
from grammar.heads import is_size
from grammar.phrases import Figure, Phrase
from grammar.reading import Doubt, Step
from grammar.slots import TABLE_KIND
from grammar.terms import Amount
from grammar.vocabulary import FactWords

ROLES = frozenset({"width", "length", "height", "across", "depth", "along"})
IN_INCHES = frozenset({"span", "height", "length", "diameter", "table_length", "table_width", "sag"})
LESS = frozenset("narrower thinner skinnier slimmer lower shorter smaller shallower".split())


class Lengths(Counts):
    """Lengths with and without a label, sides, lists of balloon sizes, shares of a piece."""

    def _on_amount(self, at: int, phrase: Phrase) -> None:
        figure = phrase.amounts[0]
        if figure.type == "NUM":
            self._count(at, phrase)
        elif figure.type == "LEN":
            if self._before(at, "neg") and self.phrases[at - 1].value == "not":
                return
            if self._before(at, "neg", "remove") and self._drop_size(figure):
                return
            if self._after(at, "balloon") or (self._after(at, "word") and False):
                self._sizes([figure], phrase)
            else:
                self._length(figure, phrase, at)
        elif figure.type in {"FRAC", "PCT"}:
            self._share_of_piece(at, phrase)
        elif not self.job.amount(at, phrase, self.phrases):
            self._leave(phrase)

    def _length(self, figure: Figure, phrase: Phrase, at: int = -1) -> None:
        """A length without a label."""
        draft = self.current
        self.last_unit = figure.high.unit if isinstance(figure.high, Amount) else ""
        if at >= 0 and self._after(at, "cmp") and self._compared_step(figure, at):
            return
        asked = self._spec(self.context.asked or "")
        if not draft.named and asked is not None and asked.type == "quantity" and asked.unit == "in":
            both = self.slots.both(figure, asked)
            if both is not None and not outside(asked, both[1]):
                self._set(asked.id, both[1], phrase)
                return
        corrected = at > 0 and self._before(at, "corr") and not draft.named and self._correct_topic(phrase)
        if corrected:
            return
        if self.hint is not None:
            hint, self.hint = self.hint, None
            both = self.slots.both(figure, hint)
            if both is not None and not outside(hint, both[1]):
                self._set(hint.id, both[1], phrase)
                return
        dropped = draft.facts.get("coverage") in {"drop_both", "drop_one"} or self.context.draped
        if (
            at >= 0
            and self._kind() == TABLE_KIND
            and dropped
            and (self._before(at, "more", "add") or self._after(at, "more"))
        ):
            both = self.slots.both(figure, self._need("extra_drop"))
            if both is not None:
                self.skip.add(at + 1) if self._after(at, "more") else None
                self._set("extra_drop", both[1], phrase)
                return
        if at > 0 and self._before(at, "limit") and self._kind() == TABLE_KIND and not draft.on_table:
            fact = self._need("max_width")
            both = self.slots.both(figure, fact)
            if both is not None and fact.fits(both[1]):
                self._set(fact.id, both[1], phrase)
                return
        if at > 0 and at + 1 < len(self.phrases) and self.phrases[at + 1].kind == "more":
            self._step_length(figure, at)
            return
        self._bare_figure(figure, phrase)

    def _compared_step(self, figure: Figure, at: int) -> bool:
        """ "a foot wider", "6 inches lower"."""
        word = self.phrases[at + 1]
        on_table = self._kind() == TABLE_KIND and (self.current.on_table or self._speaks_of_table())
        fact = self.slots.fact(str(word.value), self._kind(), on_table=on_table) or self._bare_fact()
        if fact is None or not isinstance(figure.high, Amount):
            return False
        by = self.slots.convert(figure.high.number, figure.high.unit or "in", "in")
        less = word.text.lower() in LESS
        self.current.steps.append(Step(fact=fact.id, how="plus", by=-by if less else by))
        self.skip.add(at + 1)
        self.changing = True
        return True

    def _step_length(self, figure: Figure, at: int) -> None:
        fact = self._bare_fact()
        word = self.phrases[at + 1]
        self.skip.add(at + 1)
        if fact is not None:
            both = self.slots.both(figure, fact)
            if both is not None:
                self.current.steps.append(
                    Step(fact=fact.id, how="plus", by=both[1] if word.value == "more" else -both[1])
                )

    def _bare(self, phrase: Phrase, *, optional: bool = False) -> None:
        fact = self._bare_fact()
        if optional and (fact is None or fact.id in self.current.facts):
            return
        self._bare_figure(phrase.amounts[0], phrase)

    def _bare_figure(self, figure: Figure, phrase: Phrase) -> None:
        """Place a bare size: the thing's own bare fact, a balloon size, or another fact that it fits; else leave it."""
        draft = self.current
        kind = self._kind()
        fact = self._bare_fact()
        if kind is None:
            self._wait(figure, phrase)
            return
        if fact is not None and figure.either:
            both = self.slots.both(figure, fact)
            self.doubts.append(
                Doubt(kind="either", fact=fact.id, options=list(both or ()), words=phrase.text, piece=kind)
            )
            return
        if fact is not None:
            both = self.slots.both(figure, fact)
            free = fact.id not in draft.facts or self.correcting
            if both is not None and fact.fits(both[1]) and (free or draft.facts[fact.id] == both[1]):
                self._set(fact.id, both[1], phrase)
                return
        if self._sizes([figure], phrase, only_if_nominal=True):
            return
        for other in self._others(kind):
            both = self.slots.both(figure, other)
            if both is not None and other.fits(both[1]) and other.id not in draft.facts:
                self._set(other.id, both[1], phrase)
                self.cost += COST["odd"]
                return
        if fact is None:
            self._ask_which(figure, phrase, kind)
        elif fact.id in draft.facts:
            both = self.slots.both(figure, fact)
            if both is not None and fact.fits(both[1]):
                self._contradict(fact, both[1], phrase)
            else:
                self._impossible(fact, figure, phrase)
        else:
            self._impossible(fact, figure, phrase)

    def _others(self, kind: str) -> list[FactWords]:
        """Further facts that a second bare size may mean: the width after the length of a table."""
        if not self.current.on_table:
            return []
        shape = self.current.facts.get("table_shape")
        names = [] if shape == "round" else ["table_width"]
        return [self._need(n) for n in names if n in self.slots.vocabulary.by_id]

    def _ask_which(self, figure: Figure, phrase: Phrase, kind: str) -> None:
        """One size of a thing that has none of its own: which way is it meant?"""
        words = self.slots.vocabulary.kinds[kind]
        options = [name for name in dict.fromkeys((*words.by, *words.measures.values()))]
        fits = []
        draft = self.current
        for name in options:
            fact = self._spec(name)
            both = self.slots.both(figure, fact) if fact is not None and fact.unit == "in" else None
            if fact is not None and both is not None and fact.fits(both[1]):
                fits.append((name, both[1]))
        free = [f for f in fits if f[0] not in draft.facts]
        half = [f for f in free if f[0] in words.by]
        taken = [f for f in words.by if f in draft.facts]
        if taken and half:
            self._set(half[0][0], half[0][1], phrase)
            return
        if not fits:
            fact = self._spec(options[0]) if options else None
            self._impossible(fact, figure, phrase)
            return
        self.cost += COST["odd"] * 2
        self.doubts.append(
            Doubt(
                kind="either",
                fact=fits[0][0],
                value=fits[0][1],
                options=[f[0] for f in fits],
                words=phrase.text,
                piece=kind,
            )
        )

    def _wait(self, figure: Figure, phrase: Phrase) -> None:
        """A size before anything was named: kept as the reader's best guess is left to the conversation."""
        small = isinstance(figure.high, Amount) and figure.high.unit == "in" and figure.high.number <= 18
        if not (small and self._sizes([figure], phrase, only_if_nominal=True)):
            self._leave(phrase)

    def _on_sides(self, at: int, phrase: Phrase) -> None:
        """ "A by B": a number of tables and their length, or two sides (and a height) of one thing."""
        draft = self.current
        kind = self._kind()
        figures = phrase.amounts
        first, second = figures[0], figures[1]
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
            and (plural or (noun is None and table and not draft.named))
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
            self._leave(phrase)
            return
        if table or kind == "drop":
            sizes = sorted(lengths[:2], key=lambda a: -self._inches(a))
            lengths[:2] = sizes
        if table and draft.facts.get("table_shape") == "round" and len(lengths) == 2 and lengths[0] != lengths[1]:
            self._contradict(self._need("table_diameter"), [a.number for a in lengths], phrase)
            return
        for name, amount in zip(names, lengths, strict=False):
            fact = self._need(name)
            value = self.slots.value(amount, fact)
            if value is None:
                self._impossible(fact, Figure("LEN", amount, amount), phrase)
            else:
                self._set(name, value, phrase)

    def _inches(self, amount: Amount) -> float:
        return self.slots.convert(amount.number, amount.unit or "ft", "in")

    def _on_listing(self, at: int, phrase: Phrase) -> None:
        if self._one_each(phrase):
            return
        if not self._sizes(list(phrase.amounts), phrase, only_if_nominal=not self._after(at, "balloon")):
            for figure in phrase.amounts:
                self._on_amount(at, Phrase("amount", phrase.terms, amounts=(figure,)))

    def _one_each(self, phrase: Phrase) -> bool:
        """ "three garlands of 8, 10 and 12 feet": one of each length."""
        base, fact = self.current, self._bare_fact()
        if fact is None or base.on_table or base.facts.get("count") != len(phrase.amounts) or base.part_of:
            return False
        unit = phrase.amounts[-1].high.unit
        values = [self.slots.value(Amount(f.high.value, f.high.unit or unit), fact) for f in phrase.amounts]
        if any(v is None or not fact.fits(v) for v in values):
            return False
        for value in values:
            clone = Draft(kind=base.kind, new=base.new, named=True, part_of=float(len(values)))
            clone.facts = {**base.facts, "count": 1, fact.id: value}
            clone.colours = [dict(c) for c in base.colours]
            self.drafts.append(clone)
        self.drafts.remove(base)
        self.current = self.drafts[-1]
        return True

    def _on_nominals(self, at: int, phrase: Phrase) -> None:
        """ "5s and 11s": balloon sizes."""
        figure = Figure("NUM", phrase.value, phrase.value)
        if self._before(at, "neg", "remove"):
            if self._drop_size(figure):
                return
        if self.current.on_table and not self.slots.is_nominal(phrase.value):
            self._length(Figure("LEN", phrase.value, phrase.value), phrase, at)
        elif not self._sizes([figure], phrase, only_if_nominal=True):
            self._leave(phrase)

    def _on_footer(self, at: int, phrase: Phrase) -> None:
        self._length(Figure("LEN", phrase.value, phrase.value), phrase, at)

    def _on_label(self, at: int, phrase: Phrase) -> None:
        """A label without its amount: the next bare size is meant for it."""
        on_table = self.current.on_table or (
            self._kind() == TABLE_KIND and not self.current.named and self._speaks_of_table()
        )
        fact = self.slots.fact(str(phrase.value), self._kind(), on_table=on_table)
        topic = self.context.topic
        moved = self.context.values.get(topic)
        if (
            fact is not None
            and self._before(at, "pron")
            and topic in IN_INCHES
            and moved is not None
            and fact.id != topic
        ):
            self.current.facts[fact.id] = moved  # "that's the height": what was just said was meant for this
            self.current.drop.append((topic, None))
            return
        if fact is not None and fact.unit == "in":
            self.hint = fact
            if self.context.options and fact.id in self.context.options:
                self.answer = fact.id

    def _on_named(self, at: int, phrase: Phrase) -> None:
        """An amount with a label: a fact of the job, or of the piece or its table."""
        figure = phrase.amounts[-1]
        if self._before(at, "neg") and self.phrases[at - 1].value == "not":
            return
        if phrase.label in {"guests", "crew"} or self.job.owns(phrase.label):
            if self.job.named(at, phrase, self.phrases):
                self.topic = (phrase.label, None)
                return
            self._leave(phrase)
            return
        draft = self.current
        kind = self._kind()
        on_table = draft.on_table or (kind == TABLE_KIND and not draft.named and self._speaks_of_table())
        if figure.type not in {"NUM", "LEN", "FRAC"}:
            self._leave(phrase)
            return
        if phrase.label == "drop_each":
            self._drop_each(figure, phrase, at)
            return
        fact = self.slots.fact(phrase.label, kind, on_table=on_table)
        if fact is not None and phrase.label == "across" and on_table and draft.facts.get("table_shape") != "round":
            fact = self._across(figure, fact)
        if fact is not None and phrase.label == "width" and on_table and draft.facts.get("table_shape") == "round":
            fact = self._need("table_diameter")
        if fact is None:
            if kind is None or phrase.label not in ROLES:
                self._leave(phrase)
            else:
                self._bare_figure(figure, phrase)
            return
        self._named_fact(fact, figure, phrase)

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
        else:
            self.doubts.append(
                Doubt(kind="either", fact=fact.id, options=[_tidy(both[0]), _tidy(both[1])], words=phrase.text)
            )

    def _drop_each(self, figure: Figure, phrase: Phrase, at: int) -> None:
        """ "10 in each end": an overhang of a runner, or what comes down on each side of a garland."""
        kind = self._kind()
        if kind == TABLE_KIND:
            fact = self._need("overhang")
            self._named_fact(fact, figure, phrase)
            return
        bare = self._bare_fact()
        both = self.slots.both(figure, bare) if bare is not None else None
        if bare is not None and both is not None and bare.id in self.current.facts:
            self.current.facts[bare.id] += 2 * both[1]
            return
        self._bare_figure(figure, phrase)

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
            self._contradict(self._need("coverage"), said[1], phrase)
            facts.pop("coverage_fraction", None)
            return
        facts.pop("coverage", None)
        facts.pop("coverage_fraction", None)
        self.correcting = self.correcting or old is not None
        self._set(said[0], said[1], phrase)

    def _on_cmp(self, at: int, phrase: Phrase) -> None:
        if self._before(at, "amount") and is_size(self.phrases[at - 1]):
            return
        on_table = self.current.on_table or (
            self._kind() == TABLE_KIND and not self.current.named and self._speaks_of_table()
        )
        hint = self.slots.fact(str(phrase.value), self._kind(), on_table=on_table)
        if hint is not None and any(is_size(p) for p in self.phrases[at + 1 : at + 3]):
            self.hint = hint
            self.changing = True
        elif not self.orders:
            self.doubts.append(Doubt(kind="vague", words=phrase.text))
            self.changing = True


def _tidy(value: float) -> float:
    return value if not math.isfinite(value) else int(value) if value == int(value) else round(value, 4)
