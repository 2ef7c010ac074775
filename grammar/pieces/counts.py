"""Bare numbers: of pieces, of balloons, of seats, or a size in disguise."""

from dataclasses import replace

from grammar.phrases import Figure, Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.fullness import Fullness
from grammar.pieces.ground import COST
from grammar.pieces.heads import is_count, is_size
from grammar.pieces.held_shares import HeldShares
from grammar.pieces.jobfacts import LEAST_BUDGET
from grammar.pieces.meant import LEADS, Meant
from grammar.pieces.nothing_counted import NothingCounted
from grammar.pieces.portion import Portions
from grammar.pieces.purse import Purse
from grammar.pieces.scaled import TIMES, Scaled
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Doubt, Step
from grammar.word_files import placed

MOST_DROPS = 12
MORE_OF = "more"  # the topic of a turn that asked for so many more or fewer
MOST_HANDS = 12


class Counts(Meant, Scaled, Purse, HeldShares, Fullness, Portions, NothingCounted):
    """Bare numbers: of pieces, of balloons, of seats, or a size in disguise."""

    def _count(self, at: int, phrase: Phrase) -> None:
        """A bare number: each way it may be meant is tried in turn, the number of pieces last."""
        figure = phrase.amounts[0]
        number = self._number(figure)
        if self._before(at, "neg"):
            if self.phrases[at - 1].value == "not":
                return
            self.correcting = True
        owned = self._owned(at)
        ways = (
            self._not_a_count,
            self._partition,
            self._other_so_many,
            self._shares_of_held,
            self._of_the_purse,
            self._of_the_job,
            self._with_a_point,
            self._of_balloons,
            self._behind_its_name,
            self._some_of,
            self._part,
            self._grouped,
            self._in_each,
            self._more,
        )
        if any(way(at, number, phrase) for way in ways):
            return
        if figure.either or not figure.single:
            low = self._number(Figure("NUM", figure.low, figure.low))
            self.doubts.append(Doubt(kind="either", fact="count", options=[low, number], words=phrase.text))
            return
        if self.rows and self._before(at, "of"):
            self.current.rows = self.rows
            number, self.rows = number * self.rows, 0.0
        if self._before(at, "onhand") and self._asked_for_a_size():
            self._leave(phrase)
            return
        if owned or not self._of_a_size(at, number, phrase):
            name = self._counted(at, owned=owned)
            if name == "count" and self._no_count(at, number, phrase):
                return
            self.last_number = name
            if name == "count" and self.paired is self.current:
                self.current.facts.pop("count", None)  # "columns either side, four of them"
            if self.current.facts.get(name) == number:
                self.cost += COST["contradiction"]  # "half a dozen two foot six tables" are not six of two foot
            self._set(name, number, phrase)

    def _not_a_count(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "one for each of the tables" counts nothing by itself; "take away three" takes away."""
        if self._after(at, "each_side") and self.current.facts.get("count") == 2 * number > number:
            self.skip.add(at + 1)
            return True  # "four columns, two each side"
        if self.current.joined and self._after(at, "piece") and number == 1:
            return True  # "pushed together, one runner"
        det = self.phrases[at + 2].value if self._after(at, "prep") and self._kind_at(at + 2) == "det" else "one"
        if number == 1 and det != "one":
            return self._stand_there(at, number, self.context.count or 0) or True
        if self._size_for_size(at, number):
            return True
        if self._off_the_price(at, number):
            self._leave(phrase)
            return True
        skipped = self._before(at, "neg") and self.phrases[at - 1].text.lower() in placed("skips")
        some = self._before(at, "det") and self._kind_at(at - 2) == "remove" and 0 < number < (self.context.count or 0)
        ends = self._kind_at(at + 1) in {"", "sep", "and", "prep"}
        if (self._before(at, "remove") or skipped or (some and ends)) and not self._after(at, "table", "piece", "ones"):
            self._step(-number)  # "take away three", "lose the two at the back"
            return True
        if self._kind_at(at + 1) == "of" and self._kind_at(at + 2) == "det" and self.phrases[at + 2].value == "each":
            self.drafts.append(Draft(which="all", named=True, facts={"count": number}))  # "two of each"
            return True
        by = self._before(at, "more") and self.phrases[at - 1].text.lower().endswith(" by")
        if not by and self._by_so_many(at, number, phrase):
            return True
        if self._is_of_a_strange_thing(at) or self._is_at_hand(at):
            self._leave(phrase)
            return True
        for_so_many = self._before(at, "prep") and self.phrases[at - 1].value == "for" and number >= LEAST_BUDGET
        alone = self._kind() != TABLE_KIND and self._kind_at(at + 1) in {"", "sep", "and"}
        if self._pays(at):
            self._leave(phrase)  # "12 for parking"
            return True
        if for_so_many and alone and not (self._needs(self._kind()) or self.job.number(at, phrase, self.phrases)):
            self._leave(phrase)  # "a garland for 200": guests or money, but no garlands
            return True
        return False

    def _by_so_many(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "less two", "another two", "minus two", "less the two by the bar": so many more or fewer than there are."""
        definite = self._before(at, "det")
        word = at - 2 if definite else at - 1
        kind = self._kind_at(word)
        if kind == "more" and not self._after(at, "table", "piece"):
            more = self.phrases[word].value == "more"
        elif (kind == "add" and self._kind_at(at + 1) in {"", "sep", "and"}) or self._spare_ones(word):
            more = True
        elif kind == "neg" and self.phrases[word].text.lower() == "minus":
            more = False
        elif phrase.text.lower().startswith("minus") and not (self._before(at, "make") or self._owned(at)):
            more = False  # scanned as a number below nothing, which "make it minus two" means
        else:
            return False
        if more and definite:
            return False
        self._step(abs(number) if more else -abs(number))
        self.correcting = False
        return True

    def _spare_ones(self, at: int) -> bool:
        """ "and 2 spare ones": more of those in hand."""
        turn = [phrase.kind for phrase in self.phrases]
        return at == 0 and turn == ["and", "amount", "word", "ones"] and bool(self.context.kinds)

    def _step(self, by: float) -> None:
        """So many more or fewer: pieces, or balloons where they are too many for pieces."""
        many = abs(by) > MOST_DROPS and self._holds_balloons(self._kind()) and not self._needs(self._kind())
        self.current.steps.append(Step(fact="balloons" if many else "count", how="plus", by=by))
        self.changing = True
        before, _, much = self.context.topic.partition(" ")
        if before == MORE_OF and not many and self.correcting and by * float(much) > 0:
            self.current.steps.append(Step(fact="count", how="plus", by=-float(much)))  # "one more", "no, two more"

    def _of_the_job(self, at: int, number: float, phrase: Phrase) -> bool:
        """A budget: said as such, or amended."""
        moved = self._before(at, "make") and self.phrases[at - 1].text.lower().startswith("move")
        if moved and self.context.event_minutes is not None and not self.current.named:
            return self.job.named(at, replace(phrase, label="event_time"), self.phrases)
        alone = self._before(at, "onhand", "prep", "whatif") and self._kind_at(at + 1) in {"", "sep"}
        if self.context.intent == "schedule" and alone and number <= MOST_HANDS and not self.current.named:
            self.job.set("crew", int(number), phrase.text)  # "two of us, how long?" "and with three?"
            return True
        known = (self.context.budget or {}).get("amount", 0)
        alike = known and known / 4 <= number <= known * 4 and number > 4 * (self.context.count or 0)
        led = self._kind_at(at - 1) in LEADS and self._kind_at(at + 1) in {"", "sep"}
        amended = (self.context.topic == "budget" or alike) and led and not self.current.named
        if amended and number >= LEAST_BUDGET:
            self.job.facts["budget"] = {**(self.context.budget or {}), "amount": number}
            return True
        guests = self.context.job.get("guests") or 0
        if self.context.topic == "guests" and led and not self.current.named and guests / 2 <= number <= guests * 2:
            self.job.set("guests", int(number), phrase.text)  # "80 guests", "90 now"
            return True
        return self.job.number(at, phrase, self.phrases)

    def _of_balloons(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "seven balloons", "three 11 inch balloons", "from 150", "no, six hundred"."""
        again = self.correcting and self.last_number == "balloons" and not self._after(at, "table", "piece", "pron")
        described = self._after(at, "amount", "listing", "nominals", "colour", "choice")
        said = self._after(at, "balloon") or (described and self._kind_at(at + 2) == "balloon")
        if not (again or said or self._of_a_size_each(at) or (not self.current.named and self._stock(at))):
            return False
        if not (again or said) and self._of_a_size_each(at):
            self._sizes([self.phrases[at + 1].amounts[0]], self.phrases[at + 1])
            self.skip.add(at + 1)
        self.last_number = "balloons"
        self._set("balloons", number, phrase)
        return True

    def _of_a_size_each(self, at: int) -> bool:
        """ "four 11 inch each": of bouquets or centrepieces that were counted, so many balloons in each."""
        counted = self._holds_balloons(self._kind()) and "count" in self.current.facts and self._after(at, "amount")
        size = self.phrases[at + 1].amounts[0].high if counted and is_size(self.phrases[at + 1]) else None
        each = self._kind_at(at + 2) == "each_holds" or (
            self._kind_at(at + 2) == "det" and self.phrases[at + 2].value == "each"
        )
        return each and size is not None and self.slots.is_nominal(size)

    def _in_each(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "bouquets of seven", "five in each", "tables of eight": what one of them holds."""
        kind = self._kind()
        if number != int(number) and self._holds_balloons(kind):
            return False
        if self._holds_balloons(kind) and (
            self._after(at, "each_holds") or (self._before(at, "of") and self.current.named and not self._owned(at))
        ):
            self._set("balloons", number, phrase)
            return True
        if number != int(number) and self._before(at, "of") and self._kind_at(at - 2) == "table":
            return self._as_length(phrase)  # "tables of 2.4"
        if (
            self._before(at, "of")
            and self._kind_at(at - 2) == "piece"
            and kind != TABLE_KIND
            and self._as_length(phrase)
        ):
            return True  # "two swags of 9"
        of = self._before(at, "of") or (self._before(at, "prep") and self.phrases[at - 1].value == "for")
        tables = kind == TABLE_KIND and self._kind_at(at - 2) in {"table", "shape"}
        if tables and of and not self._after(at, "table", "piece"):
            self._set("seats", number, phrase)
            return True
        return False

    def _counted(self, at: int, *, owned: bool) -> str:
        """What a bare number amends: the pieces, or the balloons in each or in all."""
        draft = self.current
        words = self.slots.vocabulary.kinds.get(self._kind() or "")
        of_them = self._after(at, "pron") and self.phrases[at + 1].text.lower().startswith("of")
        if (
            words is not None
            and words.number != "count"
            and not owned
            and self.context.asked != "count"
            and not of_them
        ) and (not draft.named or "count" in draft.facts or "count" in self.context.known):
            return words.number
        mine = owned or draft.named
        if mine and self._holds_balloons(self._kind()) and not self._needs(self._kind()) and self._many(at):
            return "balloons"  # "a 500 balloon drop"
        if "solve" in self.orders and not owned and (self._before(at, "onhand") or draft.kind is None):
            return "balloons"
        return "count"

    def _many(self, at: int) -> bool:
        """Whether a number is too great for pieces and has to be of balloons."""
        return self._number(self.phrases[at].amounts[0]) > MOST_DROPS

    def _stock(self, at: int) -> bool:
        """ "I've only got 180": on hand, where working backwards."""
        if "solve" in self.orders:
            return self._before(at, "onhand") or self._after(at, "onhand")  # "240 in the box"
        if self.context.intent == "solve" and "balloons" in self.context.known:
            return True
        sized = any(is_size(p) or p.kind in {"nominals", "balloon"} for p in self.phrases[at + 1 : at + 3])
        return self._before(at, "onhand") and sized

    def _moved_by(self, at: int, number: float, phrase: Phrase) -> None:
        self.changing = True
        sign = 1 if self.phrases[at - 1].value == "more" else -1
        label = next((str(p.value) for p in reversed(self.phrases[:at]) if p.kind == "label"), "")
        if not self.job.more(label, phrase.amounts[0], sign=sign):
            self.current.steps.append(Step(fact="count", how="plus", by=sign * number))

    def _more(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "two more", "three fewer", "the guest list is up by ten"."""
        if self._before(at, "more") and self.phrases[at - 1].text.lower().endswith(" by"):
            self._moved_by(at, number, phrase)
            return True
        if not self._after(at, "more"):
            return False
        of_job = self._kind_at(at + 2) == "label" and self.phrases[at + 2].value
        sign = 1 if self.phrases[at + 1].value == "more" else -1
        if of_job and self.job.owns(str(of_job)):
            if not self.job.more(str(of_job), phrase.amounts[0], sign=sign):
                self._leave(phrase)  # more than is not known
            self.skip |= {at + 1, at + 2}
            self.changing = True
            return True
        if sign > 0 and self.context.kinds and self.current is self.loose and self._kind_at(at + 2) == "colour":
            self.current.new, self.changing = True, True  # "and six more in gold": pieces of their own
            self.current.facts["count"] = int(number)
            self.skip.add(at + 1)
            return True
        self._step(sign * number)
        return True

    def _on_vague(self, at: int, phrase: Phrase) -> None:
        """ "a few": how many is that?"""
        self.current.article = False
        self.doubts.append(Doubt(kind="vague", fact="count", words=phrase.text, piece=self._kind()))

    def _on_row_count(self, at: int, phrase: Phrase) -> None:
        self.rows = self._number(phrase.amounts[0])

    def _on_per_row_of(self, at: int, phrase: Phrase) -> None:
        if self.rows:
            self.current.facts["count"] = self.rows * self._number(phrase.amounts[0])
            self.rows = 0.0

    def _on_per_row(self, at: int, phrase: Phrase) -> None:
        if self.rows and "count" in self.current.facts:
            self.current.facts["count"] *= self.rows
            self.current.rows = self.rows
            self.rows = 0.0

    def _on_each_holds(self, at: int, phrase: Phrase) -> None:
        self._on_per_row(at, phrase)

    def _on_each_side(self, at: int, phrase: Phrase) -> None:
        """ "one each side" is two; "five down each side" is twice five."""
        dropped = self._kind() == TABLE_KIND and self._before(at, "piece") and self.phrases[at - 1].value == "drop"
        hangs = self._before(at, "named") and self.phrases[at - 1].label == "overhang"
        if dropped or hangs or self._before(at, "choice"):
            return  # "a drop each side", "hang 10 inches each side"
        fact = self._bare_fact()
        if (
            self._after(at, "amount")
            and fact is not None
            and self.current.facts.get(fact.id)
            and not self.current.on_table
        ):
            both = self.slots.both(self.phrases[at + 1].amounts[0], fact)
            if is_size(self.phrases[at + 1]) and both is not None:
                self.current.facts[fact.id] += 2 * both[1]  # "it comes down each side three foot"
                self.skip.add(at + 1)
                return
        counted = self.current.facts.get("count")
        if phrase.value == "each" and counted and not self.current.article:
            self.current.facts["count"] = 2 * counted
        else:
            self.correcting = self.correcting or counted in {None, 1}
            self._set("count", 2, phrase)
            self.paired = self.current if counted is None else None

    def _one_on_each(self) -> bool:
        """ "a centrepiece on each": as many as there are tables."""
        tables = next((d.facts.get("count") for d in reversed(self.drafts) if d.kind == TABLE_KIND), None)
        tables = tables or (self.context.count if self.context.focus == TABLE_KIND else None)
        one = self.current.named and self.current.kind != TABLE_KIND and self.current.facts.get("count", 1) == 1
        if one and tables:
            self.current.facts["count"] = tables
        return bool(one and tables)

    def _turn(self, at: int) -> None:
        """ "the other way round": the two sides in hand change places, unless they are said anew."""
        words = self.slots.vocabulary.kinds.get(self._kind() or "")
        sides = words.by if words else ()
        held = [self.context.values.get(side) for side in sides]
        if len(held) == len("ab") and None not in held and not any(p.amounts for p in self.phrases[at:]):
            self.current.facts.update(zip(sides, reversed(held), strict=True))
            self.changing = True

    def _on_ops(self, at: int, phrase: Phrase) -> None:
        if phrase.value == "turn":
            self._turn(at)
            return
        if self._fuller_follows(at):
            return
        place = at + 2 if self._after(at, "det") else at + 1
        if self._kind_at(place) == "balloon" and self.context.kinds and phrase.value in TIMES:
            self._of_balloons_held(TIMES[str(phrase.value)], at, place)
            return
        if not self._multiplied(at, str(phrase.value)):
            self._scale_all(TIMES[str(phrase.value)])

    def _on_det(self, at: int, phrase: Phrase) -> None:
        if phrase.text.lower() == "the same" and self._as_much(at):
            return
        if phrase.value == "each" and self._before(at, "prep", "piece") and self._one_on_each():
            return
        if phrase.value == "each" and self._holds_balloons(self._kind()) and self.current.named:
            facts = self.current.facts
            before = self.phrases[at - 1] if at else None
            if (
                before is not None
                and is_count(before)
                and "balloons" not in facts
                and facts.get("count") == self._number(before.amounts[0])
            ):
                facts["balloons"] = facts.pop("count")
