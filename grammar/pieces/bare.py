"""A length without a label: the thing's own size, a balloon size, a step, or something to ask about."""

from grammar.phrases import Figure, Phrase
from grammar.pieces.counts import Counts
from grammar.pieces.draft import outside
from grammar.pieces.fullness import STEPS
from grammar.pieces.ground import COST
from grammar.pieces.heads import is_size
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Doubt, Step
from grammar.terms import Amount
from grammar.vocabulary import FactWords
from grammar.word_files import placed

SHORTEST = 13  # inches; no bouquet or centrepiece is lower
LEAST_WIDE = 18  # inches; a smaller size behind that of a table is not how wide it is
NARROW = 24  # inches; no runner is as short, but most are as wide
LESS = frozenset("narrower thinner skinnier slimmer lower shorter smaller shallower".split())
MOST_CHANGED = 2.0  # times: a size said anew is seldom further from the one that was held
AS_LIKELY = 1.15
FEW_SIZES = 3  # that stand in a row: two may be of a table


class Bare(Counts):
    """Lengths without a label."""

    def _length(self, figure: Figure, phrase: Phrase, at: int = -1) -> None:
        """A length without a label."""
        draft = self.current
        if at > 0 and self.phrases[at - 1].text.lower() == "at" and self.job.high_ground(figure):
            return
        self.last_unit = figure.high.unit if isinstance(figure.high, Amount) else ""
        if at >= 0 and self._after(at, "cmp") and self._compared_step(figure, at):
            return
        asked = self._spec(self.context.asked or "")
        if asked is not None and asked.id == "table_length" and draft.facts.get("table_shape") == "round":
            asked = self._bare_fact()  # "how long?" "round, 60 in"
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
                self._set(hint.id, list(both) if hint.type == "range" else both[1], phrase)
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
                self._set("extra_drop", both[1], phrase)
                return
        if at > 0 and self._before(at, "limit") and self._kind() == TABLE_KIND and not draft.on_table:
            fact = self._need("max_width")
            both = self.slots.both(figure, fact)
            if both is not None and fact.fits(both[1]):
                self._set(fact.id, both[1], phrase)
                return
        if at >= 0 and self._after(at, "more"):
            self._step_length(figure, phrase, more=self.phrases[at + 1].value == "more")
            return
        if at >= 0 and self._before(at, "add") and self._lengthens(figure):
            self._step_length(figure, phrase, more=True)
            return
        self._bare_figure(figure, phrase)

    def _lengthens(self, figure: Figure) -> bool:
        """Whether a size is too small beside that of the piece in hand to be of another such piece: "add a foot"."""
        fact = self._bare_fact()
        held = self.context.values.get(fact.id) if fact is not None and not self.current.named else None
        both = self.slots.both(figure, fact) if fact is not None else None
        return isinstance(held, (int, float)) and both is not None and both[1] <= held / 2

    def _compared_step(self, figure: Figure, at: int) -> bool:
        """ "a foot wider", "6 inches lower"."""
        word = self.phrases[at + 1]
        on_table = self._kind() == TABLE_KIND and (self.current.on_table or self._speaks_of_table())
        fact = self.slots.fact(str(word.value), self._kind(), on_table=on_table) or self._bare_fact()
        if fact is None or not isinstance(figure.high, Amount):
            return False
        by = self.slots.convert(figure.high.number, figure.high.unit or "in", "in")
        less = word.text.lower() in placed("less")
        self.current.steps.append(Step(fact=fact.id, how="plus", by=-by if less else by))
        self.changing = True
        return True

    def _on_cmp(self, at: int, phrase: Phrase) -> None:
        if phrase.value in {"later", "earlier"}:
            return
        if self._before(at, "amount") and is_size(self.phrases[at - 1]):
            return
        if (phrase.value in STEPS or not self._size_follows(at)) and self._made_fuller(at, phrase):
            return
        by = self._kind_at(at + 1) == "prep" and self.phrases[at + 1].text.lower() == "by"
        sized = by and self._after(at + 1, "amount") and is_size(self.phrases[at + 2])
        if sized and self._compared_step(self.phrases[at + 2].amounts[0], at - 1):
            self.skip.add(at + 2)  # "longer by two feet"
            return
        on_table = self.current.on_table or (
            self._kind() == TABLE_KIND and not self.current.named and self._speaks_of_table()
        )
        hint = self.slots.fact(str(phrase.value), self._kind(), on_table=on_table)
        if self._after(at, "balloon") and any(p.kind in {"nominals", "listing"} for p in self.phrases[at:]):
            return  # "bigger balloons in it, some 18s": the size follows
        if phrase.value == "width" and {"max_width"} <= set(self.context.known) - {"table_width"}:
            hint = self.slots.fact("width", self._kind(), on_table=False)  # the runner whose width was said
        if phrase.text.lower().split()[-1] in placed("thick") | placed("thin"):
            hint = self.slots.fact("width", self._kind(), on_table=False) if self._kind() == TABLE_KIND else None
            if hint is None:
                self.unused.append(phrase)  # how thick a wall is, is in no fact
                return
        if self._size_follows(at):
            self.hint = hint
            self.changing = True
        elif not self.orders:
            sized = hint is not None and hint.unit == "in"
            self.doubts.append(Doubt(kind="vague", value=hint.id if hint and sized else None, words=phrase.text))
            self.changing = True

    def _size_follows(self, at: int) -> bool:
        """ "wider, say 36 in", "wider tables, 36 in", "longer, 12"."""
        nxt = at + 1
        while self._kind_at(nxt) in {"sep", "table", "piece", "ones", "det", "make", "prep"}:
            nxt += 1
        phrase = self.phrases[nxt] if nxt < len(self.phrases) else None
        number = phrase is not None and phrase.kind == "amount" and phrase.amounts[0].type == "NUM"
        return phrase is not None and (is_size(phrase) or (number and nxt not in self.starts))

    def _step_length(self, figure: Figure, phrase: Phrase, *, more: bool) -> None:
        """ "a foot more", "another foot", "6 inches less": of the thing's own size, where it has one."""
        fact = self._bare_fact()
        both = self.slots.both(figure, fact) if fact is not None else None
        if fact is None or both is None:
            self._leave(phrase)  # wide or high?
            return
        self.current.steps.append(Step(fact=fact.id, how="plus", by=both[1] if more else -both[1]))
        self.changing = True

    def _taken_off(self, at: int, figure: Figure) -> bool:
        """ "cut four feet off it", "knock a foot off the height": less of a size that is known."""
        if not self._after(at, "prep") or self.phrases[at + 1].text.lower() not in placed("off"):
            return False
        place = next((i for i in (at + 2, at + 3) if self._kind_at(i) == "label"), 0)
        label = str(self.phrases[place].value)
        fact = self.slots.fact(label, self._kind(), on_table=False) if place else self._bare_fact()
        both = self.slots.both(figure, fact) if fact is not None else None
        if fact is None or both is None or fact.id not in self.context.known or self.current.named:
            return False
        self.current.steps.append(Step(fact=fact.id, how="plus", by=-both[1]))
        self.skip |= set(range(at + 1, max(place, at + 1) + 1))
        self.changing = True
        return True

    def _put_on(self, at: int, figure: Figure) -> bool:
        """ "add a foot to the width", "put 6 inches on the height": more of a size that is known."""
        place = at + 1
        while self._kind_at(place) in {"prep", "det"}:
            place += 1
        led = self._before(at, "add") or (
            self._after(at, "prep") and self.phrases[at + 1].text.lower() in {"on", "onto"}
        )
        if not led or place == at + 1 or self._kind_at(place) != "label" or self.current.named:
            return False
        fact = self.slots.fact(str(self.phrases[place].value), self._kind(), on_table=self._speaks_of_table())
        both = self.slots.both(figure, fact) if fact is not None else None
        if fact is None or both is None or fact.id not in self.context.known:
            return False
        self.current.steps.append(Step(fact=fact.id, how="plus", by=both[1]))
        self.skip |= set(range(at + 1, place + 1))
        self.changing = True
        return True

    def _sizes_in_a_row(self, at: int, phrase: Phrase) -> bool:
        """ "5" 11" 16"": sizes of balloons one after the other."""
        end = at
        while self._kind_at(end) == "amount" and is_size(self.phrases[end]) and self._is_balloons(self.phrases[end]):
            end += 1
        if end - at < FEW_SIZES:
            return False
        self.skip |= set(range(at + 1, end))
        return self._sizes([p.amounts[0] for p in self.phrases[at:end]], phrase, only_if_nominal=True)

    def _in_balloons(self, at: int, phrase: Phrase) -> bool:
        """ "seven each in 11 inch": the balloons that it is made of."""
        behind_in = at > 0 and (self.phrases[at - 1].kind, self.phrases[at - 1].value) == ("gap", "in")
        return behind_in and self._sizes([phrase.amounts[0]], phrase, only_if_nominal=True)

    def _is_balloons(self, phrase: Phrase) -> bool:
        size = phrase.amounts[0].high
        return isinstance(size, Amount) and size.unit == "in" and self.slots.is_nominal(size)

    def _is_its_drop(self, at: int) -> bool:
        """ "30 inch drop", "a 10 inch drop at each end": what hangs down of a runner, where its table has a size."""
        held = {*self.current.facts, *self.context.known} & {"table_length", "table_diameter", "length"}
        if not held or self._kind() != TABLE_KIND or not self._after(at, "piece", "choice"):
            return False
        word, words = self.phrases[at + 1], self.phrases[at + 1].text.lower()
        both = word.value == ("coverage", "drop_both") and words.startswith("drop") and "the" not in words.split()
        return word.value == "drop" or both

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
        if self._five_in(figure, phrase):
            return
        if (
            self._holds_balloons(kind)
            and self._is_small(figure)
            and self._sizes([figure], phrase, only_if_nominal=True)
        ):
            return  # "ten bouquets of 3, 11 inch"
        if fact is not None and self._of_either(figure, phrase):
            return
        if fact is not None:
            both = self.slots.both(figure, fact)
            if kind == TABLE_KIND and fact.id == "length" and both is not None and both[1] <= NARROW:
                self._set("max_width", both[1], phrase)  # "with an 11 inch runner"
                return
            free = fact.id not in draft.facts or self.correcting
            if both is not None and fact.fits(both[1]) and (free or draft.facts[fact.id] == both[1]):
                self._set(fact.id, both[1], phrase)
                return
        if self._sizes([figure], phrase, only_if_nominal=True):
            return
        for other in self._others(kind):
            both = self.slots.both(figure, other)
            narrow = both is not None and LEAST_WIDE <= both[1] <= draft.facts.get("table_length", both[1])
            if both is not None and narrow and other.fits(both[1]) and other.id not in draft.facts:
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

    def _is_small(self, figure: Figure) -> bool:
        """Whether a length in inches is too small for a bouquet, but not for its balloons."""
        size = figure.high
        return isinstance(size, Amount) and size.unit == "in" and size.number < SHORTEST

    def _five_in(self, figure: Figure, phrase: Phrase) -> bool:
        """ "twelve bouquets with five in": so many in each, where the number is a word and nothing else tells it."""
        number = phrase.text.lower().split()
        said = len(number) == len("ab") and number[1] == "in" and number[0].isalpha()
        facts = self.current.facts
        if not said or not self._needs(self._kind()) or "balloons" in facts or "count" not in facts:
            return False
        self._set("balloons", self._number(figure), phrase)
        return True

    def _of_either(self, figure: Figure, phrase: Phrase) -> bool:
        """ "make it 10 ft" after a garland and columns in one breath: a size nearer to that of the one not in focus."""
        loose = self.current is self.loose and self.loose.which == "it" and not self.drafts
        kinds = [self.context.kinds[at] for at in self.context.recent]
        if not loose or self.context.asked or self.orders or not 1 < len(set(kinds)) == len(kinds):
            return False
        fits: dict[str, tuple[str, float]] = {}
        far: dict[str, float] = {}
        for at, kind in zip(self.context.recent, kinds, strict=True):
            words = self.slots.words(kind, on_table=kind == TABLE_KIND)
            fact = self.slots.vocabulary.fact(words.bare, kind) if words is not None and words.bare else None
            held = self.context.held[at].get(fact.id) if fact is not None else None
            both = self.slots.both(figure, fact) if fact is not None else None
            if fact is not None and both is not None and isinstance(held, int | float) and fact.fits(both[1]):
                fits[kind] = fact.id, both[1]
                far[kind] = max(both[1] / held, held / both[1])
        mine = far.pop(self.context.focus or "", 0.0)
        if not far or min(far.values()) > min(mine * AS_LIKELY, MOST_CHANGED):
            return False
        self.doubts.append(Doubt(kind="either", value=fits, options=list(fits), words=phrase.text))
        self.changing = True
        return True

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
        options = list(dict.fromkeys((*words.by, *words.measures.values())))
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
        along = next((f for f in free if f[0] == words.measures.get("along")), None)
        here = next((i for i, p in enumerate(self.phrases) if p is phrase), len(self.phrases))
        if along is not None and self._after(here, "pron") and self.phrases[here + 1].text.lower() == "of it":
            self._set(along[0], along[1], phrase)  # "22 feet of it"
            return
        sure = half if taken else free if len(fits) == 1 else []  # no wall is 50 ft high
        if sure:
            self._set(sure[0][0], sure[0][1], phrase)
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
