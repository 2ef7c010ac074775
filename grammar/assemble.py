"""Phrases to acts: which piece each phrase belongs to, and what it says of it."""

import math
from dataclasses import dataclass, field
from typing import Any

from grammar.draft import Draft, outside
from grammar.heads import Head, Role, find_heads, is_count, is_size
from grammar.jobfacts import JobFacts
from grammar.phrases import Figure, Phrase
from grammar.reading import Context, Doubt, Reading, Step
from grammar.slots import TABLE_KIND, Slots, is_usual
from grammar.terms import Amount
from grammar.vocabulary import FactWords

COUNTABLE_BY_BALLOON = frozenset({"bouquet", "centerpiece", "drop"})
COST = {"left over": 4.0, "impossible": 6.0, "contradiction": 3.0, "unusual": 0.6, "no count": 1.6, "odd": 1.0}
MOST_COUNT = 100_000


@dataclass(slots=True)
class Assembled:
    """A reading, how far-fetched it is, and which terms it made no use of."""

    reading: Reading
    cost: float
    unused: list[Phrase] = field(default_factory=list)


class Assembler:
    """One turn's phrases, read from left to right."""

    def __init__(self, phrases: list[Phrase], slots: Slots, context: Context, orders: list[str]) -> None:
        self.phrases = phrases
        self.slots = slots
        self.context = context
        self.orders = orders
        self.drafts: list[Draft] = []
        self.current = Draft()  # what belongs to no named piece: the piece in focus
        self.loose: list[Draft] = [self.current]
        self.job = JobFacts(slots, context, orders)
        self.cost = 0.0
        self.unused: list[Phrase] = []
        self.doubts: list[Doubt] = []
        self.heads = {head.at: head for head in find_heads(phrases, slots)}
        self.starts = {head.first: head for head in self.heads.values()}
        self.owner: Head | None = None
        self.correcting = False
        self.changing = False
        self.adding = False
        self.topic: tuple[str, Any] | None = None
        self.targets: list[Draft] = []
        self.skip: set[int] = set()
        self.hint: FactWords | None = None
        self.rows = 0.0
        self.last_number = ""
        self.answer = ""

    # the walk --------------------------------------------------------------------------------------------------------

    def run(self) -> Assembled:
        """Read all phrases."""
        at = 0
        while at < len(self.phrases):
            if at in self.starts:
                self._open(self.starts[at])
            if at not in self.skip:
                phrase = self.phrases[at]
                if at in self.heads:
                    self._head(self.heads[at], phrase)
                else:
                    step = getattr(self, f"_on_{phrase.kind}", None)
                    if step is not None:
                        step(at, phrase)
            at += 1
        self.job.settle()
        return self._finish()

    def _kind(self, draft: Draft | None = None) -> str | None:
        kind = (draft or self.current).kind
        if kind is not None:
            return kind
        return self.context.focus

    def _spec(self, id: str) -> FactWords | None:
        return self.slots.vocabulary.fact(id, self._kind())

    def _need(self, id: str) -> FactWords:
        return self._spec(id) or FactWords(id, ("any",))

    def _before(self, at: int, *kinds: str) -> bool:
        return at > 0 and self.phrases[at - 1].kind in kinds

    def _after(self, at: int, *kinds: str) -> bool:
        return at + 1 < len(self.phrases) and self.phrases[at + 1].kind in kinds

    # things ----------------------------------------------------------------------------------------------------------

    def _open(self, head: Head) -> None:
        """Settle which piece the phrases from here on belong to."""
        self.owner = head
        kind = self._head_kind(head)
        before = [p for p in self.phrases[head.first : head.at]]
        counted = any(is_count(p) for p in before) or self.phrases[head.at].kind == "nominals"
        article = next((str(p.value) for p in before if p.kind == "det"), "")
        if head.role is Role.PLACE and self._is_place(head, kind, counted):
            self._place(head, kind, article)
            return
        if head.role is Role.DENIED or head.role is Role.REMOVED:
            self._deny(head, kind, before)
            return
        self.targets = []
        if head.kind == "ones" and self.current.named and not counted:
            return
        known = kind in self.context.kinds and not any(d.kind == kind and d.named for d in self.drafts)
        if self._same(head, kind, counted, article):
            draft = self.current
        else:
            draft = Draft(kind=None if head.kind == "ones" else kind)
            self.drafts.append(draft)
            definite = article in {"the", ""} and not self.adding and not (counted and article != "the")
            fresh = self.adding or not known or not definite
            if known and counted and not self.adding and (self.changing or self.context.focus == kind):
                fresh = False if self.changing else fresh
            if known and self.context.asked and kind == self.context.focus and not self.adding:
                fresh = False
            draft.new = fresh and head.kind != "ones"
            if head.kind == "ones":
                draft.new = self.adding
            self.current = draft
        draft.named = True
        draft.on_table = head.kind == "table" or (head.kind == "ones" and kind == TABLE_KIND)
        draft.article = article == "one"
        if article == "one" and counted:
            self.cost += COST["contradiction"]
        if article == "one" and not counted and "count" not in draft.facts:
            draft.facts["count"] = 1
        noun = self.phrases[head.at].text.lower()
        draft.singular = head.kind == "table" and self.phrases[head.at].kind == "table" and not noun.endswith("s")
        self.adding = False

    def _head_kind(self, head: Head) -> str:
        if head.kind == "table":
            return TABLE_KIND
        if head.kind == "ones":
            return self._kind() or TABLE_KIND
        if head.kind == "drop" and self.phrases[head.at].text.lower() in {"drop", "drops"}:
            runner = self.current.kind == TABLE_KIND or (not self.current.named and self.context.focus == TABLE_KIND)
            return TABLE_KIND if runner else "drop"
        return head.kind

    def _same(self, head: Head, kind: str, counted: bool, article: str) -> bool:
        """Whether the thing is the one that was spoken of just before in this turn."""
        now = self.current
        if not now.named or now.kind != kind:
            return False
        if self.adding:
            return False
        if head.kind == "table" or head.kind == TABLE_KIND:
            sized = any(is_size(p) or p.kind in {"nominals", "footer"} for p in self.phrases[head.first : head.at + 1])
            has_size = any(f in now.facts for f in ("table_length", "table_diameter"))
            if head.kind != "table" and not counted and article != "one":
                return True
            if head.kind != "table" and counted:
                return "count" not in now.facts or not any(f in now.facts for f in ("table_length", "table_diameter", "length"))
            return not (counted and "count" in now.facts and not self.correcting) and not (sized and has_size and counted)
        return not counted and article != "one"

    def _is_place(self, head: Head, kind: str, counted: bool) -> bool:
        if head.prep == "for" and head.kind == "table":
            return bool(self.current.named and self.current.kind not in {None, TABLE_KIND})
        if kind == TABLE_KIND:
            return bool(self.current.named and self.current.kind != TABLE_KIND) or self._attribute_before(head)
        if head.prep == "for":
            return bool(self.current.named)
        return True

    def _attribute_before(self, head: Head) -> bool:
        """ "greenery on the tables": the thing only says where something goes that was just named."""
        known = TABLE_KIND in self.context.kinds or any(d.kind == TABLE_KIND and d.named for d in self.drafts)
        return known and self.topic is not None and not any(is_count(p) or is_size(p) for p in self.phrases[head.first : head.at])

    def _place(self, head: Head, kind: str, article: str) -> None:
        """A thing that only says where: it may be the target of what was just said, or tell how many."""
        for i in range(head.first, head.at + 1):
            self.skip.add(i)
        run = self.phrases[head.first : head.at]
        if head.prep in {"for", "place"} and kind == TABLE_KIND and self.current.kind != TABLE_KIND and self.current.named:
            count = next((p for p in run if is_count(p)), None)
            each = any(p.kind == "det" and p.value == "each" for p in run) or article == "each"
            if count is not None and (each or "count" in self.current.facts) and self.current.facts.get("count", 1) == 1:
                self._set("count", self._number(count.amounts[0]), count)
            bare = next((p for p in run if is_size(p)), None)
            if bare is not None:
                self._bare(bare, optional=True)
            return
        target = self._find(kind)
        if target is None or self.topic is None:
            return
        fact, value = self.topic
        if not self.targets:
            source = self.current
            if source is not target:
                self._take_back(source, fact)
        self.targets.append(target)
        if value == "removed":
            self._unset(target, fact)
        else:
            target.facts[fact] = value

    def _find(self, kind: str) -> Draft | None:
        """The mention of this kind in the turn, made if the job in hand has one."""
        for draft in self.drafts:
            if draft.kind == kind:
                return draft
        if kind in self.context.kinds:
            draft = Draft(kind=kind, named=True)
            self.drafts.append(draft)
            return draft
        return None

    def _take_back(self, draft: Draft, fact: str) -> None:
        draft.facts.pop(fact, None)
        draft.drop = [d for d in draft.drop if d[0] != fact]

    def _unset(self, draft: Draft, fact: str) -> None:
        spec = self._spec(fact)
        if spec is not None and spec.type == "flag":
            draft.facts[fact] = False
        else:
            draft.drop.append((fact, None))

    def _deny(self, head: Head, kind: str, before: list[Phrase]) -> None:
        """ "but not a garland", "lose the arch", "no columns", "take two tables away"."""
        for i in range(head.first, head.at + 1):
            self.skip.add(i)
        count = next((p for p in before if is_count(p)), None)
        exists = kind in self.context.kinds
        named = next((d for d in self.drafts if d.kind == kind and d.named), None)
        self.changing = self.changing or exists
        if not exists and named is None:
            if head.role is Role.REMOVED:
                self.drafts.append(Draft(kind=kind, named=True, removed=True))
            return
        draft = named or Draft(kind=kind, named=True)
        if named is None:
            self.drafts.append(draft)
        article = any(p.kind == "det" for p in before)
        number = self._number(count.amounts[0]) if count is not None else None
        if number is not None and head.role is Role.REMOVED and not article:
            draft.steps.append(Step(fact="count", how="plus", by=-number))
        elif exists:
            draft.removed = True
        else:
            self.drafts.remove(draft)
        self.current = draft if draft in self.drafts else self.loose[0]

    def _head(self, head: Head, phrase: Phrase) -> None:
        """The naming word itself: a shape or a size may stand in it."""
        self.current.words.append(phrase.text)
        if head.kind == "drop" and self._head_kind(head) == TABLE_KIND:
            self._set("coverage", "drop_both", phrase)
        if phrase.kind == "shape":
            self._set("table_shape", phrase.value, phrase)
            self._reshape()
        elif phrase.kind == "footer" or phrase.kind == "nominals":
            amount = phrase.value
            if phrase.kind == "nominals" and not amount.unit:
                amount = Amount(amount.value, "" if phrase.kind == "nominals" else "ft")
            self._length(Figure("LEN", amount, amount), phrase)

    # amounts ---------------------------------------------------------------------------------------------------------

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

    def _number(self, figure: Figure) -> float:
        value = figure.high.number if isinstance(figure.high, Amount) else 0.0
        return int(value) if value == int(value) else value

    def _count(self, at: int, phrase: Phrase) -> None:
        """A bare number: of pieces, of balloons, or a size in disguise."""
        figure = phrase.amounts[0]
        number = self._number(figure)
        draft = self.current
        kind = self._kind()
        if self._before(at, "neg") and self.phrases[at - 1].value == "not":
            return
        if self._before(at, "neg"):
            self.correcting = True
        if number == 1 and self._after(at, "prep") and at + 2 < len(self.phrases) and self.phrases[at + 2].kind == "det":
            return
        if self.job.number(at, phrase, self.phrases):
            return
        if self.correcting and self.last_number == "balloons" and not self._after(at, "table", "piece", "pron"):
            self._set("balloons", number, phrase)
            return
        if self._after(at, "balloon") or (
            self._after(at, "amount", "listing", "nominals") and at + 2 < len(self.phrases) and self.phrases[at + 2].kind == "balloon"
        ) or (self._after(at, "colour", "choice") and at + 2 < len(self.phrases) and self.phrases[at + 2].kind == "balloon"):
            self._set("balloons", number, phrase)
            self.last_number = "balloons"
            return
        if self._part(at, number, phrase) or self._grouped(at, number):
            return
        if self._after(at, "each_holds") and kind in COUNTABLE_BY_BALLOON:
            self._set("balloons", number, phrase)
            return
        if self._before(at, "of") and self._before(at - 1, "table") and kind == TABLE_KIND and not self._after(at, "table", "amount"):
            self._set("seats", number, phrase)
            return
        if self._before(at, "of") and kind in COUNTABLE_BY_BALLOON and draft.named:
            self._set("balloons", number, phrase)
            return
        if self._after(at, "more"):
            self._more(at, number, 1)
            return
        if self._before(at, "more") and not self._after(at, "table", "piece"):
            return
        if figure.either or not figure.single:
            self.doubts.append(Doubt(kind="either", fact="count", options=[self._number(Figure("NUM", figure.low, figure.low)), number], words=phrase.text))
            return
        if self.rows and self._before(at, "of"):
            number, self.rows = number * self.rows, 0.0
        owned = self.owner is not None and at < self.owner.at and at >= self.owner.first
        if not draft.named and self._stock(at):
            self._set("balloons", number, phrase)
            return
        answer = self.context.asked if not self._after(at, "pron") else None
        if not owned and not draft.named and self.correcting and number != int(number) and self._correct_topic(phrase):
            return
        if not owned and self._repeats_length(phrase):
            return
        if not owned and not draft.named and answer and answer != "count" and self._answer(answer, phrase):
            return
        if not owned and self._before(at, "pron") and "count" in draft.facts and self._as_length(phrase):
            return
        if not owned and self._pronoun_size(at, phrase, number):
            return
        name = "count"
        words = self.slots.vocabulary.kinds.get(kind or "")
        if words is not None and words.number != "count" and not owned and self.context.asked != "count":
            holds_count = "count" in draft.facts or "count" in self.context.known
            if not draft.named or holds_count:
                name = words.number
        if self.orders and "solve" in self.orders and not owned and (self._before(at, "onhand") or draft.kind is None):
            name = "balloons"
        self.last_number = name
        self._set(name, number, phrase)

    def _correct_topic(self, phrase: Phrase) -> bool:
        """ "sorry, 2.2": the size that was said last."""
        fact = self._spec(self.context.topic) if self.context.topic else None
        if fact is None or fact.unit != "in" or self.context.topic not in self.context.known:
            return False
        value = self.slots.value(phrase.amounts[0].high, fact)
        if value is None:
            return False
        self._set(fact.id, value, phrase)
        return True

    def _repeats_length(self, phrase: Phrase) -> bool:
        """ "twelve maybe fourteen foot, let's go fourteen": the number of a size once more."""
        fact = self._bare_fact() if self.correcting and self._kind() != TABLE_KIND else None
        if fact is None or fact.id not in self.current.facts:
            return False
        old = self.current.facts[fact.id]
        unit = min(("in", "ft", "cm", "m"), key=lambda u: abs(self.slots.convert(phrase.amounts[0].high.number, u, "in") - old))
        value = self.slots.convert(phrase.amounts[0].high.number, unit, "in")
        if not fact.fits(value):
            return False
        self._set(fact.id, value, phrase)
        self.current.facts.pop("count", None) if not self.current.article else None
        return True

    def _part(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "two of those are 72s", "make one of them gold": some of the pieces in hand become another piece."""
        if not self._after(at, "pron") or self.current.named or self.context.asked == "count":
            return False
        words = self.phrases[at + 1].text.lower()
        total = self.context.count
        more = at + 2 < len(self.phrases) and self.phrases[at + 2].kind not in {"sep", "and"}
        if not words.startswith("of") or not more or total is None or not 0 < number < total:
            return False
        draft = Draft(kind=self.context.focus, named=True, part_of=total, on_table=self.context.focus == TABLE_KIND)
        draft.facts["count"] = int(number)
        self.drafts.append(draft)
        self.current = draft
        self.changing = True
        return True

    def _stock(self, at: int) -> bool:
        """ "I've only got 180": on hand, where working backwards."""
        if "solve" in self.orders:
            return self._before(at, "onhand")
        if self.context.intent == "solve" and "balloons" in self.context.known:
            return True
        sized = is_size(self.phrases[at + 1]) if at + 1 < len(self.phrases) else False
        return self._before(at, "onhand") and (sized or self._after(at, "nominals", "balloon"))

    def _pronoun_size(self, at: int, phrase: Phrase, number: float) -> bool:
        """ "its six": a size of the tables, where the number of them is known or comes later."""
        if not self._before(at, "pron") or self.phrases[at - 1].value != "it" or "'s" in self.phrases[at - 1].text.replace("its", "'s")[:0]:
            return False
        if self.phrases[at - 1].text.lower().startswith(("of", "them", "em")):
            return False
        said = self.phrases[at - 1].text.lower() in {"its", "it's", "they're", "theyre", "they are", "it is", "it"}
        return said and self._kind() == TABLE_KIND and self._as_length(phrase)

    def _as_length(self, phrase: Phrase) -> bool:
        fact = self._bare_fact()
        if fact is None:
            return False
        value = self.slots.value(phrase.amounts[0].high, fact)
        if value is None or not is_usual(value, fact):
            return False
        self._set(fact.id, value, phrase)
        return True

    def _answer(self, asked: str, phrase: Phrase) -> bool:
        """A bare number that answers the open question."""
        fact = self._spec(asked)
        if fact is None or fact.type not in {"quantity", "range"}:
            return False
        value = self.slots.value(phrase.amounts[0].high, fact)
        if value is None:
            return False
        self._set(asked, value, phrase)
        return True

    def _more(self, at: int, number: float, sign: int) -> None:
        word = self.phrases[at + 1]
        self.skip.add(at + 1)
        self.changing = True
        by = number if word.value == "more" else -number
        self.current.steps.append(Step(fact="count", how="plus", by=by * sign))

    def _grouped(self, at: int, number: float) -> bool:
        """ "three columns: one 4 ft, one 5 ft and one 6 ft": each group is a piece of its own."""
        draft = self.current
        owned = self.owner is not None and self.owner.first <= at < self.owner.at
        total = draft.facts.get("count")
        nxt = at + 1
        while nxt < len(self.phrases) and self.phrases[nxt].kind in {"pron", "of", "prep"}:
            nxt += 1
        if owned or not draft.named or total is None or nxt >= len(self.phrases) or nxt in self.heads:
            return False
        follower = self.phrases[nxt]
        sized = is_size(follower) or (follower.kind == "named" and follower.amounts[0].type in {"LEN", "NUM"} and follower.label in {"length", "height", "width", "across"})
        if not sized or number > total or draft.part_of:
            if not (sized and draft.part_of):
                return False
        base = draft
        clone = Draft(kind=base.kind, new=base.new, on_table=base.on_table, named=True, part_of=base.part_of or float(total))
        clone.facts = {k: v for k, v in base.facts.items() if not k.endswith(("length", "height", "span", "diameter", "width"))}
        clone.facts["count"] = number
        clone.colours = [dict(c) for c in base.colours]
        if base.part_of is None and base in self.drafts:
            self.drafts.remove(base)
        self.drafts.append(clone)
        self.current = clone
        return True

    def _length(self, figure: Figure, phrase: Phrase, at: int = -1) -> None:
        """A length without a label."""
        draft = self.current
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
        if at >= 0 and self._kind() == TABLE_KIND and dropped and (self._before(at, "more", "add") or self._after(at, "more")):
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

    def _on_vague(self, at: int, phrase: Phrase) -> None:
        """ "a few": how many is that?"""
        self.current.article = False
        self.doubts.append(Doubt(kind="vague", fact="count", words=phrase.text, piece=self._kind()))

    def _step_length(self, figure: Figure, at: int) -> None:
        fact = self._bare_fact()
        word = self.phrases[at + 1]
        self.skip.add(at + 1)
        if fact is not None:
            both = self.slots.both(figure, fact)
            if both is not None:
                self.current.steps.append(Step(fact=fact.id, how="plus", by=both[1] if word.value == "more" else -both[1]))

    def _bare(self, phrase: Phrase, *, optional: bool = False) -> None:
        fact = self._bare_fact()
        if optional and (fact is None or fact.id in self.current.facts):
            return
        self._bare_figure(phrase.amounts[0], phrase)

    def _bare_fact(self) -> FactWords | None:
        draft = self.current
        kind = self._kind()
        if kind is None:
            return None
        on_table = draft.on_table or (not draft.named and self._speaks_of_table())
        if on_table and (draft.facts.get("table_shape") == "round" or ((not draft.named or draft.part_of) and "table_diameter" in self.context.known)):
            return self._spec("table_diameter")
        words = self.slots.words(kind, on_table=on_table)
        return self._spec(words.bare) if words is not None and words.bare else None

    def _speaks_of_table(self) -> bool:
        """A turn without a name, about a runner whose table is known or asked for."""
        return self.context.focus == TABLE_KIND and "length" not in self.context.known

    def _bare_figure(self, figure: Figure, phrase: Phrase) -> None:
        """Place a bare size: the thing's own bare fact, a balloon size, or another fact that it fits; else leave it."""
        draft = self.current
        kind = self._kind()
        fact = self._bare_fact()
        if kind is None:
            self._wait(figure, phrase)
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
        self.doubts.append(
            Doubt(kind="either", fact=fits[0][0], value=fits[0][1], options=[f[0] for f in fits], words=phrase.text, piece=kind)
        )

    def _wait(self, figure: Figure, phrase: Phrase) -> None:
        """A size before anything was named: kept as the reader's best guess is left to the conversation."""
        small = isinstance(figure.high, Amount) and figure.high.unit == "in" and figure.high.number <= 18
        if not (small and self._sizes([figure], phrase, only_if_nominal=True)):
            self._leave(phrase)

    def _leave(self, phrase: Phrase) -> None:
        self.unused.append(phrase)
        self.cost += COST["left over"]

    def _impossible(self, fact: FactWords | None, figure: Figure, phrase: Phrase) -> None:
        value = figure.high.number if isinstance(figure.high, Amount) else None
        self.doubts.append(Doubt(kind="impossible", fact=fact.id if fact else "", value=value, words=phrase.text, piece=self._kind()))
        self.cost += COST["impossible"]

    def _contradict(self, fact: FactWords, value: Any, phrase: Phrase) -> None:
        old = self.current.facts.pop(fact.id, None)
        self.doubts.append(Doubt(kind="contradiction", fact=fact.id, options=[old, value], words=phrase.text, piece=self._kind()))
        self.cost += COST["contradiction"]

    # setting ---------------------------------------------------------------------------------------------------------

    def _set(self, name: str, value: Any, phrase: Phrase, draft: Draft | None = None) -> None:
        """Keep a fact of the current piece, unless it is outside all sense or contradicts what was just said."""
        draft = draft or self.current
        fact = self._spec(name)
        if name == "count" and (value != int(value) or not 0 < value <= MOST_COUNT):
            self.doubts.append(Doubt(kind="impossible", fact="count", value=value, words=phrase.text, piece=self._kind(draft)))
            self.cost += COST["impossible"]
            return
        if fact is not None and outside(fact, value):
            self.doubts.append(Doubt(kind="impossible", fact=name, value=value, words=phrase.text, piece=self._kind(draft)))
            self.cost += COST["impossible"]
            return
        old = draft.facts.get(name)
        if old is not None and old != value and not self.correcting:
            if name == "count" and (draft.article and old == 1):
                self.cost += COST["contradiction"]
            elif fact is not None and fact.type in {"flag"}:
                pass
            else:
                if "compare" in self.orders and fact is not None:
                    draft.options.setdefault(name, [old]).append(value)
                    return
                self._contradict(fact or FactWords(name, ("any",)), value, phrase)
                return
        if fact is not None and fact.usual and isinstance(value, (int, float)) and not isinstance(value, bool) and not is_usual(value, fact):
            self.cost += COST["unusual"]
        draft.facts[name] = value
        draft.words.append(phrase.text)
        self.topic = (name, value)
        self.correcting = False

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
        if not self._sizes(list(phrase.amounts), phrase, only_if_nominal=not self._after(at, "balloon")):
            for figure in phrase.amounts:
                self._on_amount(at, Phrase("amount", phrase.terms, amounts=(figure,)))

    def _sizes(self, figures: list[Figure], phrase: Phrase, *, only_if_nominal: bool = False) -> bool:
        """Balloon sizes in nominal inches."""
        sizes = []
        for figure in figures:
            for end in (figure.low, figure.high):
                if not isinstance(end, Amount) or (only_if_nominal and not self.slots.is_nominal(end)):
                    return False
                size = self.slots.convert(end.number, end.unit or "in", "in")
                if size not in sizes:
                    sizes.append(size)
        sizes = [int(s) if s == int(s) else round(s, 3) for s in sizes]
        if not all(s in self.slots.vocabulary.nominal for s in sizes):
            self.cost += COST["odd"] * 2
        old = [] if self.correcting else self.current.facts.get("sizes", [])
        self.current.facts["sizes"] = [*old, *(s for s in sizes if s not in old)]
        self.topic = ("sizes", self.current.facts["sizes"])
        self.correcting = False
        return True

    def _drop_size(self, figure: Figure) -> bool:
        if not isinstance(figure.high, Amount) or not self.slots.is_nominal(figure.high):
            return False
        self.current.drop.append(("sizes", figure.high.number))
        self.changing = True
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
        on_table = self.current.on_table or (self._kind() == TABLE_KIND and not self.current.named and self._speaks_of_table())
        fact = self.slots.fact(str(phrase.value), self._kind(), on_table=on_table)
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
        if phrase.label in {"length", "width", "height", "across", "depth"} and self._grouped_named(at):
            pass
        fact = self.slots.fact(phrase.label, kind, on_table=on_table)
        if fact is not None and phrase.label == "across" and on_table and draft.facts.get("table_shape") != "round":
            fact = self._across(figure, fact)
        if fact is not None and phrase.label == "width" and on_table and draft.facts.get("table_shape") == "round":
            fact = self._need("table_diameter")
        if fact is None:
            if kind is None:
                self._leave(phrase)
            else:
                self._bare_figure(figure, phrase)
            return
        if self._after(at, "more", "cmp") and False:
            return
        self._named_fact(fact, figure, phrase)

    def _grouped_named(self, at: int) -> bool:
        return False

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
            self.doubts.append(Doubt(kind="either", fact=fact.id, options=[_tidy(both[0]), _tidy(both[1])], words=phrase.text))

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
        if old is not None and old != said[1] and not self.correcting:
            self._contradict(self._need("coverage"), said[1], phrase)
            facts.pop("coverage_fraction", None)
            return
        facts.pop("coverage", None)
        facts.pop("coverage_fraction", None)
        self.correcting = self.correcting or old is not None
        self._set(said[0], said[1], phrase)

    # words -----------------------------------------------------------------------------------------------------------

    def _on_det(self, at: int, phrase: Phrase) -> None:
        if phrase.value == "each" and self._kind() in COUNTABLE_BY_BALLOON and self.current.named:
            facts = self.current.facts
            before = self.phrases[at - 1] if at else None
            if before is not None and is_count(before) and "balloons" not in facts and facts.get("count") == self._number(before.amounts[0]):
                facts["balloons"] = facts.pop("count")

    def _on_shape(self, at: int, phrase: Phrase) -> None:
        if self._kind() != TABLE_KIND and self.current.named:
            return
        if self._before(at, "neg"):
            return
        self._set("table_shape", phrase.value, phrase)
        if not self.current.named:
            self.current.on_table = True
        self._reshape()

    def _reshape(self) -> None:
        """A length said before "round" was its diameter."""
        facts = self.current.facts
        if facts.get("table_shape") == "round" and "table_length" in facts and "table_diameter" not in facts:
            facts["table_diameter"] = facts.pop("table_length")

    def _on_choice(self, at: int, phrase: Phrase) -> None:
        fact, value = phrase.value
        if self._before(at, "neg") and (fact in self.current.facts or f"{fact}_fraction" in self.current.facts):
            self.correcting = True
        elif self._before(at, "neg"):
            self._deny_choice(fact, value, str(self.phrases[at - 1].value))
            return
        spec = self._need(fact)
        kind = self._kind()
        if kind is not None and not spec.belongs(kind):
            if not self.current.named and not self.context.kinds:
                return
            self.unused.append(phrase)
            return
        if fact == "coverage":
            old = self.current.facts.get("coverage", self.current.facts.get("coverage_fraction"))
            if old is not None and old != value and self._refines(old, value):
                return
            self.current.facts.pop("coverage_fraction", None) if self.correcting else None
            if "coverage_fraction" in self.current.facts:
                self._contradict(spec, value, phrase)
                self.current.facts.pop("coverage_fraction", None)
                return
        self._set(fact, value, phrase)
        self._spread(fact)

    def _spread(self, fact: str) -> None:
        """The same for the other pieces that the turn speaks of as a whole."""
        for draft in self.targets:
            if fact in self.current.facts:
                draft.facts[fact] = self.current.facts[fact]

    def _refines(self, old: Any, value: Any) -> bool:
        """ "full drop, both ends" and "drop at one end": the closer word wins without a contradiction."""
        if {old, value} <= {"drop_both", "drop_one"} and "drop_one" in {old, value}:
            self.current.facts["coverage"] = "drop_one"
            return True
        if old in {"drop_both", "drop_one"} and value == "full":
            return True
        if old == "full" and value in {"drop_both", "drop_one"}:
            self.current.facts["coverage"] = value
            return True
        return False

    def _deny_choice(self, fact: str, value: Any, how: str) -> None:
        if fact == "gas" and value == "helium":
            self._set("gas", "air", self.phrases[0])
        elif fact == "coverage" and how == "no":
            self.current.drop.append((fact, value))
        elif self.current.facts.get(fact) == value:
            self.current.facts.pop(fact)

    def _on_flag(self, at: int, phrase: Phrase) -> None:
        fact, value = phrase.value
        denied = self._before(at, "neg", "remove") or (
            self._before(at, "det", "more") and at > 1 and self.phrases[at - 2].kind in {"neg", "remove"}
        )
        value = bool(value) != denied
        if self.job.owns(fact):
            self.job.facts[fact] = value
            return
        if denied and self._before(at, "remove"):
            self.changing = True
        self._set(fact, value, phrase)
        self._spread(fact)

    def _on_colour(self, at: int, phrase: Phrase) -> None:
        before = self.phrases[at - 1] if at else None
        if before is not None and before.kind == "det" and at > 1:
            before = self.phrases[at - 2]
        if before is not None and before.kind in {"neg", "remove"}:
            self.current.drop.append(("colours", phrase.value))
            self.changing = self.changing or before.kind == "remove"
            self.current.colours = [c for c in self.current.colours if c["name"] != phrase.value]
            return
        if before is not None and before.kind in {"and", "sep"} and self.current.drop and self.current.drop[-1][0] == "colours" and at > 2 and self.phrases[at - 2].kind == "colour":
            self.current.drop.append(("colours", phrase.value))
            return
        entry: dict[str, Any] = {"name": phrase.value}
        if phrase.label == "share":
            figure = phrase.amounts[0]
            entry["share"] = figure.high.number / (100 if figure.type == "PCT" else 1)
        elif phrase.label == "parts":
            entry["parts"] = phrase.amounts[0].high.number
        elif phrase.label == "rest":
            entry["rest"] = True
        elif phrase.label == "all":
            if len([d for d in self.drafts if d.named]) > 1:
                self._for_all(at)
            elif not self._after(at, "and", "sep", "colour"):
                entry["share"] = 1.0
        same = next((c for c in self.current.colours if c["name"] == phrase.value or c["name"].split()[-1] == phrase.value), None)
        if same is not None:
            same.update({k: v for k, v in entry.items() if k != "name"})
        else:
            self.current.colours.append(entry)
        for draft in self.targets:
            if draft is not self.current:
                draft.colours.append(dict(entry))
        self.topic = ("colours", None)

    def _on_rest(self, at: int, phrase: Phrase) -> None:
        self.topic = self.topic

    def _on_row_count(self, at: int, phrase: Phrase) -> None:
        self.rows = self._number(phrase.amounts[0])

    def _on_per_row_of(self, at: int, phrase: Phrase) -> None:
        if self.rows:
            self.current.facts["count"] = self.rows * self._number(phrase.amounts[0])
            self.rows = 0.0

    def _on_per_row(self, at: int, phrase: Phrase) -> None:
        if self.rows and "count" in self.current.facts:
            self.current.facts["count"] *= self.rows
            self.rows = 0.0

    def _on_each_holds(self, at: int, phrase: Phrase) -> None:
        self._on_per_row(at, phrase)

    def _on_each_side(self, at: int, phrase: Phrase) -> None:
        """ "one each side" is two; "five down each side" is twice five."""
        counted = self.current.facts.get("count")
        if phrase.value == "each" and counted and not self.current.article:
            self.current.facts["count"] = 2 * counted
        else:
            self.correcting = True
            self._set("count", 2, phrase)

    def _on_joined(self, at: int, phrase: Phrase) -> None:
        if self._kind() == TABLE_KIND:
            self.current.joined = True

    def _on_corr(self, at: int, phrase: Phrase) -> None:
        self.correcting = True
        self.current.article = False

    def _on_make(self, at: int, phrase: Phrase) -> None:
        self.changing = True
        self.correcting = self.correcting or bool(self.current.named)
        if "instead" in phrase.text.lower():
            self.current.instead = True

    def _on_whatif(self, at: int, phrase: Phrase) -> None:
        self.changing = True

    def _on_add(self, at: int, phrase: Phrase) -> None:
        nxt = self.phrases[at + 1] if at + 1 < len(self.phrases) else None
        if nxt is not None and at + 1 not in self.starts and (is_size(nxt) or (nxt.kind == "named" and nxt.amounts[0].type == "LEN")):
            return
        self.current.extend = not self._opens_soon(at)
        self.adding = not self.current.extend or phrase.value == "another"
        if phrase.value == "another" and not self._opens_soon(at):
            self.current.steps.append(Step(fact="count", how="plus", by=1))
            self.changing = True
            self.adding = False

    def _opens_soon(self, at: int) -> bool:
        return any(head.first <= at + 1 <= head.at or head.first == at + 1 for head in self.heads.values())

    def _on_same(self, at: int, phrase: Phrase) -> None:
        self.current.like = str(phrase.value)

    def _on_ops(self, at: int, phrase: Phrase) -> None:
        by = {"double": 2.0, "triple": 3.0, "halve": 0.5}[str(phrase.value)]
        self.current.steps.append(Step(fact="count", how="times", by=by))
        self.changing = True

    def _on_cmp(self, at: int, phrase: Phrase) -> None:
        if self._before(at, "amount") and is_size(self.phrases[at - 1]):
            return
        on_table = self.current.on_table or (self._kind() == TABLE_KIND and not self.current.named and self._speaks_of_table())
        hint = self.slots.fact(str(phrase.value), self._kind(), on_table=on_table)
        if hint is not None and any(is_size(p) for p in self.phrases[at + 1 : at + 3]):
            self.hint = hint
            self.changing = True
        elif not self.orders:
            self.doubts.append(Doubt(kind="vague", words=phrase.text))
            self.changing = True

    def _on_pron(self, at: int, phrase: Phrase) -> None:
        if phrase.value in {"all", "both"}:
            if len([d for d in self.drafts if d.named]) > 1:
                self._for_all(at)
            elif not self.current.named:
                self.current.which = str(phrase.value)
        elif phrase.value in {"other", "first", "second", "smallest", "biggest"} and not self.drafts:
            self.current.which = str(phrase.value)
        if self._before(at, "remove"):
            self._remove_it(at, phrase)

    def _for_all(self, at: int) -> None:
        """What comes next, or what was just said of the last piece, holds for all of this turn."""
        self.targets = [d for d in self.drafts if d.named]
        last = self.targets[-1]
        self.current = last
        said = self._before(at, "colour", "flag", "choice") or (at > 1 and self._before(at, "prep", "for") and self.phrases[at - 2].kind in {"colour", "flag"})
        if not said or self.topic is None:
            return
        fact = self.topic[0]
        for draft in self.targets[:-1]:
            if fact == "colours":
                draft.colours = [dict(c) for c in last.colours]
            elif fact in last.facts:
                draft.facts[fact] = last.facts[fact]

    def _on_all(self, at: int, phrase: Phrase) -> None:
        if len([d for d in self.drafts if d.named]) > 1 and self._after(at, "choice", "flag", "colour"):
            self._for_all(at)

    def _remove_it(self, at: int, phrase: Phrase) -> None:
        """ "take it off the tables", "remove it", "lose them"."""
        self.changing = True
        nxt = self.phrases[at + 1] if at + 1 < len(self.phrases) else None
        if nxt is not None and nxt.kind == "prep":
            self.topic = (self.context.topic or "foliage", "removed")
            return
        self.current.removed = True

    def _on_remove(self, at: int, phrase: Phrase) -> None:
        self.changing = True

    def _on_word(self, at: int, phrase: Phrase) -> None:
        self.unused.append(phrase)

    # the end ---------------------------------------------------------------------------------------------------------

    def _finish(self) -> Assembled:
        drafts = [d for d in (self.loose[0], *self.drafts) if not d.empty or d.named]
        drafts = self._merge_loose(drafts)
        for draft in drafts:
            if sum(c.get("share") or 0 for c in draft.colours) > 1.005:
                self.doubts.append(Doubt(kind="contradiction", fact="colours", words="shares over 100 %", piece=draft.kind))
            self._join(draft)
            if draft.new and self._needs_count(draft) and "count" not in draft.facts and not self.job.facts.get("guests"):
                self.cost += COST["no count"]
        reading = Reading(
            mentions=[d.mention() for d in drafts if not d.empty],
            job=self.job.facts,
            orders=self.orders,
            doubts=[*self.doubts, *self.job.doubts],
            changing=self.changing,
            alternatives="compare" in self.orders,
            topic=self.topic[0] if self.topic else "",
            answer=self.answer,
        )
        cost = self.cost + self.job.cost + 0.05 * len(self.unused)
        return Assembled(reading, cost, [*self.unused, *self.job.unused])

    def _needs_count(self, draft: Draft) -> bool:
        words = self.slots.vocabulary.kinds.get(draft.kind or "")
        return draft.kind == TABLE_KIND or (words is not None and words.number != "count" and "count" in words.needs)

    def _merge_loose(self, drafts: list[Draft]) -> list[Draft]:
        """What was said before anything was named belongs to the first piece, where that one is new."""
        loose = self.loose[0]
        named = [d for d in self.drafts if d.named and not d.removed]
        if loose in drafts and named and not loose.named:
            first = named[0]
            for fact, value in loose.facts.items():
                first.facts.setdefault(fact, value)
            first.colours = [*loose.colours, *(c for c in first.colours if c not in loose.colours)]
            first.steps = [*loose.steps, *first.steps]
            first.drop = [*loose.drop, *first.drop]
            first.options = first.options or loose.options
            first.like = first.like or loose.like
            first.joined = first.joined or loose.joined
            return [d for d in drafts if d is not loose]
        return drafts

    def _join(self, draft: Draft) -> None:
        """One table where the word is singular; tables pushed together under one runner are one table."""
        if draft.singular and draft.new and "count" not in draft.facts and not draft.steps:
            draft.facts["count"] = 1
        count, length = draft.facts.get("count"), draft.facts.get("table_length")
        if draft.joined and count and length:
            draft.facts["table_length"] = count * length
            draft.facts["count"] = 1


def _tidy(value: float) -> float:
    return value if not math.isfinite(value) else int(value) if value == int(value) else round(value, 4)
