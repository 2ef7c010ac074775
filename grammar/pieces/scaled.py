"""Sizes in hand made so many times as great: "half as long", "a third shorter", "twice the width", "half that"."""

from grammar.phrases import Phrase
from grammar.pieces.ground import Ground
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Doubt, Step
from grammar.vocabulary import FactWords
from grammar.word_files import placed

WORDS_BETWEEN = frozenset({"gap", "det"})  # "half as long", "half the height"
TIMES = {"double": 2.0, "triple": 3.0, "halve": 0.5, "twofold": 2.0, "halved": 0.5}
WHOLE = frozenset({"twofold", "halved"})  # of the size, however it is called
END = frozenset({"", "sep", "and"})


class Scaled(Ground):
    """A share or a multiple that changes a size of what is in hand."""

    def _scaled(self, at: int, phrase: Phrase, share: float) -> bool:
        """ "half as long", "a third shorter", "10 % wider", "half that length", "half that"."""
        if not self.context.kinds or self.current.new or self._owned(at):
            return False
        place = at + 1
        pointed = self._kind_at(place) == "pron" and self.phrases[place].text.lower() in placed("pointing")
        while self._kind_at(place) in WORDS_BETWEEN or (pointed and place == at + 1):
            place += 1
        kind = self._kind_at(place)
        if pointed and kind in END:
            self.skip.add(at + 1)
            return self._scale_all(share)
        word = self.phrases[place] if kind else phrase
        if kind == "more" and self._kind_at(place + 1) in END and phrase.amounts[0].type == "FRAC":
            self.skip |= set(range(at + 1, place + 1))
            return self._scale_all(1 + share if word.value == "more" else 1 - share)
        if kind not in {"label", "cmp"}:
            return False
        if kind == "label":
            again = self._kind_at(place + 1) == "gap" and self.phrases[place + 1].text.lower() == "again"
            factor = 1 + share if again else share
        else:
            factor = 1 - share if word.text.lower() in placed("less") else 1 + share
        return self._scale(str(word.value), factor, set(range(at + 1, place + 1)), word)

    def _as_much(self, at: int) -> bool:
        """ "and the same again wide": the size that was said last, in another direction."""
        topic = self.topic[0] if self.topic is not None else self.context.topic
        value = self.current.facts.get(topic, self.context.values.get(topic))
        role = str(self.phrases[at + 1].value) if self._kind_at(at + 1) == "label" else ""
        fact = self.slots.fact(role, self._kind(), on_table=self.current.on_table) if role else None
        if fact is None or fact.unit != "in" or fact.id == topic or not isinstance(value, int | float):
            return False
        self._set(fact.id, value, self.phrases[at + 1])
        self.skip.add(at + 1)
        return True

    def _multiplied(self, at: int, value: str) -> bool:
        """ "twice as wide", "double the length", "half the size"; of all that is in hand where nothing is named."""
        times = TIMES[value]
        if value in WHOLE:
            return self._scale_all(times)
        if self._kind_at(at + 1) == "label":
            return self._scale(str(self.phrases[at + 1].value), times, {at + 1}, self.phrases[at + 1])
        return self._one_with_a_size() is not None and self._scale_all(times)

    def _scale(self, role: str, times: float, used: set[int], word: Phrase) -> bool:
        """So many times the size that is called so, whatever it is."""
        kind = self._kind()
        on_table = kind == TABLE_KIND and (self.current.on_table or self._speaks_of_table())
        fact = self._bare_fact() if role == "size" else self.slots.fact(role, kind, on_table=on_table)
        if fact is None or fact.unit != "in":
            return False
        if kind == TABLE_KIND and fact.id == "table_length":
            if word.kind == "label":
                return False  # so much of the table is covered
            self.doubts.append(Doubt(kind="vague", words=word.text))  # the table, or the runner on it?
        else:
            self.current.steps.append(Step(fact=fact.id, how="times", by=times))
        self.skip |= used
        self.changing = True
        return True

    def _scale_all(self, times: float) -> bool:
        """Of one thing with a size its size, of several how many there are."""
        fact = self._one_with_a_size()
        words = self.slots.vocabulary.kinds.get(self._kind() or "")
        loose = words is not None and "count" not in words.needs and "balloons" in self.context.known
        name = fact.id if fact is not None else "balloons" if loose or self._each_holds_follows() else "count"
        self.current.steps.append(Step(fact=name, how="times", by=times))
        self.changing = True
        return True

    def _each_holds_follows(self) -> bool:
        """ "twice as many in each"."""
        return any(phrase.kind == "each_holds" for phrase in self.phrases)

    def _one_with_a_size(self) -> FactWords | None:
        """The size of the one piece in hand, where it has one and is not counted."""
        kinds = [self._head_kind(head) for head in self.heads.values()]  # "double the garland", beside tables
        kind = kinds[0] if len(kinds) == 1 and self.context.kinds.count(kinds[0]) == 1 else self._kind() or ""
        mine = kind == self._kind() or kind not in self.context.kinds
        values = self.context.values if mine else self.context.held[self.context.kinds.index(kind)]
        words = self.slots.vocabulary.kinds.get(kind)
        fact = self._bare_fact() if mine or words is None else self._spec(words.bare or "")
        counted = words is None or "count" in words.needs or values.get("count") not in {None, 1}
        held = values.get(fact.id) if fact is not None else None
        return None if counted or not isinstance(held, int | float) else fact
