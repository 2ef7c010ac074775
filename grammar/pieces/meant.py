"""Bare numbers that stand for a size: an answer, a correction, "its six", "garland 10"."""

from grammar.phrases import Phrase
from grammar.pieces.heads import is_count, is_size
from grammar.pieces.parts import Parts
from grammar.pieces.slots import TABLE_KIND
from grammar.vocabulary import FactWords

LEADS = frozenset({"", "make", "whatif", "corr", "neg", "sep"})  # before a number that is said alone
BEHIND = frozenset({"", "sep", "gap", "and", "colour", "flag", "onhand"})  # and behind it
SUBJECTS = frozenset({"its", "it's", "they're", "theyre", "they are", "it is", "it"})
FAR_MORE = 3  # times as many: rather how big they are
FEWEST = 4  # a smaller number behind the name of one thing may be how many there are


class Meant(Parts):
    """A number without a unit, where it is a size and no number of things."""

    def _of_a_size(self, at: int, number: float, phrase: Phrase) -> bool:
        """A number that stands for a size: an answer, a correction, "its six"."""
        draft = self.current
        hint, self.hint = self.hint, None
        if (
            hint is not None
            and not self._after(at, "table", "piece", "more", "word", "gap")
            and self._answer(hint.id, phrase)
        ):
            return True  # "longer, 18"
        answer = self.context.asked if not self._after(at, "pron") else None
        if not draft.named and self.correcting and number != int(number) and self._correct_topic(phrase):
            return True
        if self._repeats_length(phrase) or self._resizes(at, number, phrase):
            return True
        one = phrase.text.lower() == "one" and self._kind_at(at + 1) not in {"", "sep"}
        told = not (self._after(at, "word") or one)  # "one small tank", "one side in white" answer nothing
        if not draft.named and answer and answer != "count" and told and self._answer(answer, phrase):
            return True
        bare = self._bare_fact()
        if draft.kind is None and draft.which != "it" and answer and bare is not None and answer == bare.id:
            return self._answer(answer, phrase)  # "the small one 6"
        if self._before(at, "pron") and bare is not None and self._of_the_greater(number, bare, phrase):
            return True
        if self._before(at, "pron") and self._sized_later(at):
            return False
        if self._before(at, "pron") and "count" in draft.facts and self._as_length(phrase):
            return True
        fact = self._bare_fact() if self._before(at, "pron") and self.phrases[at - 1].value in {"both", "all"} else None
        if fact is not None and self._kind() != TABLE_KIND and self._kind_at(at + 1) in {"", "sep"}:
            return self._answer(fact.id, phrase)  # "both 7"
        return self._pronoun_size(at, phrase)

    def _with_a_point(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "8 tables, 1.8", "a 1.5 hoop": no number of things, so a size where none was said."""
        fact = self._bare_fact()
        things = self._owned(at) and not (self._before(at, "det") or (at and is_count(self.phrases[at - 1])))
        if number == int(number) or things or self.context.asked or self._holds_balloons(self._kind()):
            return False
        if fact is None or fact.id in self.current.facts:
            return False
        high = phrase.amounts[0].high
        value = self.slots.value(high, fact) if self.current.named else self._near_held(high.number, fact)
        if value is None or not fact.fits(value) or self._after(at, "pron"):
            return False
        self._set(fact.id, value, phrase)
        return True

    def _near_held(self, number: float, fact: FactWords) -> float | None:
        """ "go to 7 and a half" of what is 6 ft high: the number in the unit that comes near to the size in hand."""
        held = self.context.values.get(fact.id)
        if fact.unit != "in" or not isinstance(held, int | float) or self.orders or self._kind() == TABLE_KIND:
            return None
        units = ("m", "cm") if self.context.metric else ("ft", "in")
        sizes = (self.slots.convert(number, unit, "in") for unit in units)
        return next((size for size in sizes if held / 2 <= size <= 2 * held), None)

    def _of_the_greater(self, number: float, fact: FactWords, phrase: Phrase) -> bool:
        """ "make the short ones 6", of columns of two sizes: the size of those."""
        sizes = sorted({facts[fact.id] for facts in self.context.held if fact.id in facts})
        if self.current.which not in {"smallest", "biggest"} or len(sizes) < len("ab") or self._kind() == TABLE_KIND:
            return False
        held = sizes[0] if self.current.which == "smallest" else sizes[-1]
        units = ("m", "cm") if self.context.metric else ("ft", "in")
        said = (self.slots.convert(number, unit, "in") for unit in units)
        near = next((size for size in said if held / 2 <= size <= 2 * held and fact.fits(size)), None)
        if near is not None:
            self._set(fact.id, near, phrase)
        return near is not None

    def _needs(self, kind: str | None) -> bool:
        """Whether such a piece cannot do without its number."""
        words = self.slots.vocabulary.kinds.get(kind or "")
        return words is not None and "count" in words.needs

    def _resizes(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "make it 8" of a 6 ft garland, "make the garland 8": of one thing in hand that has a size, the new size."""
        fact, kind = self._bare_fact(), self._kind()
        lead = at - 1 if not self._before(at, "det") else at - 2
        for_it = self._kind_at(lead) == "prep" and self.phrases[lead].value == "for"  # "and for 12?"
        alone = (self._kind_at(lead) in LEADS or for_it) and self._kind_at(at + 1) in BEHIND and not self.drafts
        named = self._before(at, "piece", "make") and self.current.named and not self.current.new
        values = [facts for of, facts in zip(self.context.kinds, self.context.held, strict=False) if of == kind]
        one = len(values) == 1 and (named or (alone and len(self.context.kinds) == 1))
        if not one or kind == TABLE_KIND or self._needs(kind) or self.orders or fact is None:
            return False
        if self.context.several and self._kind_at(lead) == "":
            return False  # "hoops, 5 ft across", "there'll be three"
        held, count = values[0].get(fact.id), values[0].get("count") or 1
        them = self._before(at, "make") and self.phrases[at - 1].text.lower().endswith(" them")
        said_last = self.context.intent == "change" and self.context.topic == fact.id  # "8 ft", "nah, 6 is fine"
        rather = said_last or (them and number >= FAR_MORE * count)
        if not isinstance(held, int | float) or (count > 1 and not rather):
            return False
        units, much = (("m", "cm"), 1.5) if self.context.metric else (("ft",), 2.0)  # "make it 2" of 120 cm counts
        much = much if count == 1 else 1.5  # "make them 8" of two that are 7 ft high
        sizes = [self.slots.convert(number, unit, "in") for unit in units] if fact.unit == "in" else []
        near = next((size for size in sizes if held / much <= size <= much * held), None)
        if near is None or not fact.fits(near):
            return False
        self._set(fact.id, near, phrase)
        return True

    def _repeats_length(self, phrase: Phrase) -> bool:
        """ "twelve maybe fourteen foot, let's go fourteen": the number of a size once more."""
        fact = self._bare_fact() if self.correcting and self._kind() != TABLE_KIND else None
        if fact is None or fact.id not in self.current.facts:
            return False
        if self.last_unit not in {"ft", "m", "in", "cm"}:
            return False
        value = self.slots.convert(phrase.amounts[0].high.number, self.last_unit, "in")
        if not fact.fits(value):
            return False
        self._set(fact.id, value, phrase)
        self.current.facts.pop("count", None) if not self.current.article else None
        return True

    def _pronoun_size(self, at: int, phrase: Phrase) -> bool:
        """ "its six": a size of the tables, where the number of them is known or comes later."""
        said = self._before(at, "pron") and self.phrases[at - 1].text.lower() in SUBJECTS
        fact = self._bare_fact() if said else None
        held = self.current.facts.get(fact.id) if fact is not None else None
        value = self.slots.value(phrase.amounts[0].high, fact) if fact is not None else None
        again = held is not None and held == value and self._kind_at(at + 1) != "pron"  # "they're five"
        return again or (said and self._kind() == TABLE_KIND and self._as_length(phrase))

    def _sized_later(self, at: int) -> bool:
        """ "its eight, six footers": the size comes later."""
        return any(phrase.kind == "footer" for phrase in self.phrases[at + 1 :])

    def _answer(self, asked: str, phrase: Phrase) -> bool:
        """A bare number that answers the open question."""
        fact = self._spec(asked)
        if fact is None or fact.type not in {"quantity", "range"}:
            return False
        value = self.slots.value(phrase.amounts[0].high, fact)
        if value is None:
            return False
        self._set(asked, [value, value] if fact.type == "range" else value, phrase)
        return True

    def _behind_its_name(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "garland 10", "a hoop, 60": of one thing that has no size yet, the number behind its name is its size."""
        fact = self._bare_fact()
        if fact is None or not self._names_one(at, number):
            return False
        rest = self.phrases[at + 1 : min((h.first for h in self.heads.values() if h.first > at), default=None)]
        sized = any(is_size(p) or p.kind in {"sides", "pron", "piece"} for p in rest) or fact.id in self.current.facts
        labelled = any(p.kind == "named" and self._role(p.label) == fact.id for p in rest)
        value = self.slots.value(phrase.amounts[0].high, fact)
        if sized or labelled or value is None or not fact.fits(value):
            return False
        self._set(fact.id, value, phrase)
        return True

    def _names_one(self, at: int, number: float) -> bool:
        """Whether a number stands behind the name of one thing: it may be how big that is."""
        head = self.heads.get(at - 1)
        if head is None or self._kind() == TABLE_KIND or self._owned(at):
            return False
        counted = "count" in self.current.facts and not self.current.article
        one = not counted and not self.phrases[at - 1].text.lower().endswith("s") and number >= FEWEST
        return one and not (self._holds_balloons(self._kind()) or "solve" in self.orders or self._after(at, "pron"))

    def _role(self, label: str) -> str:
        """The fact that a label means for the piece."""
        fact = self.slots.fact(label, self._kind(), on_table=False)
        return fact.id if fact is not None else ""
