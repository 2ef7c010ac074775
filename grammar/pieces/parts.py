"""Some of the pieces in hand or just named that become pieces of their own."""

from functools import cached_property

from grammar.phrases import Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.ground import COST
from grammar.pieces.heads import is_count, is_size
from grammar.pieces.slots import TABLE_KIND
from grammar.pieces.without import Without
from grammar.terms import Amount
from grammar.word_files import placed

MUCH_SMALLER = 4  # "another 2 ft" beside a 10 ft garland is two feet more of it
MEASURES = ("length", "height", "span", "diameter", "width")
TOLD = frozenset({"colour", "choice", "flag"})
PLACES = frozenset({"det", "table", "piece", "word", "prep", "shape"})
DESCRIBED = frozenset({"coverage", "coverage_fraction", "foliage"})


class Parts(Without):
    """Numbers that split: "two of those", "one 4 ft, one 5 ft", "the other four"."""

    def _partition(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "four in pink and four in white" of the eight in hand: numbers that make up all of them."""
        total = self.context.count
        if self.heads or self.context.asked == "count" or total is None or self._told_in_all != total:
            return False
        self._part_off(number, total)
        return True

    @cached_property
    def _told_in_all(self) -> float:
        """What the numbers of the turn come to, where there are several and something is told of each; else nothing."""
        numbers = [i for i, p in enumerate(self.phrases) if is_count(p)]
        told = all(self._kind_at(i + 1) in TOLD or self._kind_at(i + 2) in TOLD or self._at_a_size(i) for i in numbers)
        return sum(self._number(self.phrases[i].amounts[0]) for i in numbers) if told and len(numbers) > 1 else 0.0

    def _at_a_size(self, at: int) -> bool:
        """Whether "three" goes on with "at 7 ft"."""
        return self._after(at, "prep") and self._kind_at(at + 2) == "amount" and is_size(self.phrases[at + 2])

    def _part_off(self, number: float, total: float, kind: str = "") -> None:
        """So many of those in hand, of the kind in focus where none is named, become a piece of their own."""
        kind = kind or self.context.focus or ""
        draft = Draft(kind=kind, named=True, part_of=total, on_table=kind == TABLE_KIND)
        draft.facts["count"] = int(number)
        self.drafts.append(draft)
        self.current = draft
        self.changing = True

    def _other_so_many(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "the other four": as many again of the thing just spoken of, of another make."""
        which = self.phrases[at - 1].value if self._before(at, "pron") else ""
        if which == "first" and self.context.kinds:
            return self._other_part(number)
        if which != "other":
            return False
        if not self.current.named:
            if self._other_colours(number):
                return True
            return (at + 1 == len(self.phrases) and self._other_colours_stay(number)) or self._other_part(number)
        base = self.current
        clone = Draft(kind=base.kind, new=base.new, on_table=base.on_table, named=True, part_of=base.part_of)
        sized = any(is_size(p) for p in self.phrases[at + 1 : at + 3])
        kept = {k: v for k, v in base.facts.items() if k not in DESCRIBED and not (sized and k.endswith(MEASURES))}
        clone.facts = {**kept, "count": number}
        self.drafts.append(clone)
        self.current = clone
        return True

    def _other_colours(self, number: float) -> bool:
        """ "half navy, the rest split between the other two": the colours in hand share what is left."""
        said = {colour["name"] for colour in self.current.colours}
        others = [c["name"] for c in self.context.values.get("colours", ()) if c["name"] not in said]
        if not self.rest_open or len(others) != number:
            return False
        self.current.colours += [{"name": name, "rest": True} for name in others]
        return True

    def _other_part(self, number: float) -> bool:
        """ "six stay like that, the other four ...": so many of the pieces in hand become another piece."""
        total = self.context.count
        if total is None or not 0 < number < total or self.context.asked == "count":
            return False
        if self.current.facts.get("count") == total - number:
            del self.current.facts["count"]
            self.current.named = bool(self.current.facts)  # "six full length, ..."
        self._part_off(number, total)
        return True

    def _part(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "two of those are 72s", "make one of them gold": some of the pieces in hand become another piece."""
        now = self.current
        in_hand = (
            now.kind == self.context.focus and not now.new and "count" not in now.facts
        )  # "the tables, two of them"
        total = self.context.count
        if self._excepted(at) and not self.heads and total is not None and 0 < number < total:
            self._part_off(number, total)
            self.current.apart = True  # "all navy except two in gold": the navy is of the others
            return True
        if self._one_alone(at, number):
            self._part_off(1, total or 0)
            return True
        if self._stand_there(at, number, total or 0):
            return True
        if not self._after(at, "pron") or (now.named and not in_hand) or self.context.asked == "count":
            return False
        words = self.phrases[at + 1].text.lower()
        more = at + 2 < len(self.phrases) and self.phrases[at + 2].kind not in {"sep", "and"}
        if not words.startswith("of") or not more or total is None or not 0 < number < total:
            return False
        self._part_off(number, total)
        again = at + 2
        if (
            self._kind_at(again) == "amount"
            and is_count(self.phrases[again])
            and self._number(self.phrases[again].amounts[0]) == total
        ):
            self.skip.add(again)  # "three of those six in gold"
        return True

    def _stand_there(self, at: int, number: float, total: float) -> bool:
        """ "make the two on the head table 7", "the three by the door in gold": some, by where they stand."""
        the = self._before(at, "det") and self.phrases[at - 1].value == "the"
        there = self._after(at, "prep") and self.phrases[at + 1].value == "place"
        those = the and self.phrases[at - 1].text.lower() in placed("those")  # "those two full drop"
        if not (the and (there or those)) or self.drafts or self.context.asked or not 0 < number < total:
            return False
        end = at + 2 if there else at + 1
        while self._kind_at(end) in PLACES:
            end += 1
        end += self._kind_at(end) in {"onhand", "make"}  # "should have 5"
        if self._kind_at(end) not in TOLD | {"amount", "sides", "named", "neg"}:
            return False
        self._part_off(number, total)
        self.skip |= set(range(at + 1, end))
        self.starts = {first: head for first, head in self.starts.items() if not at < head.at < end}
        self.heads = {place: head for place, head in self.heads.items() if not at < place < end}
        return True

    def _size_for_size(self, at: int, number: float) -> bool:
        """ "swap the 4 for a 5": the piece in hand that is 4 ft is to be 5 ft."""
        the = self._before(at, "det") and self.phrases[at - 1].value == "the" and self._kind_at(at - 2) == "make"
        swap = the and {*self.phrases[at - 2].text.lower().split()} & placed("replaces")
        new = at + 3 if self._kind_at(at + 2) == "det" else at + 2
        fact = self._bare_fact()
        if not swap or not self._after(at, "prep") or self._kind_at(new) != "amount" or fact is None:
            return False
        for unit in ("ft", "m", "in", "cm"):
            old = self.slots.convert(number, unit, "in")
            if any(facts.get(fact.id) == old for facts in self.context.held):
                to = self.phrases[new].amounts[0].high
                draft = Draft(which=f"size {fact.id} {old:g}", named=True, on_table=self._kind() == TABLE_KIND)
                draft.facts[fact.id] = self.slots.convert(to.number, to.unit or unit, "in")
                self.drafts.append(draft)
                self.skip |= set(range(at + 1, new + 1))
                self.changing = True
                return True
        return False

    def _one_alone(self, at: int, number: float) -> bool:
        """ "one should be 6 ft", "one in gold", "swap one for a 6 ft one": one of several in hand."""
        if number != 1 or at > 1 or self.heads or self.orders:
            return False
        opens = at == 0 or (at == 1 and self.phrases[0].kind in {"make", "corr", "and"})
        wearing = self._kind_at(at + 1) in {"onhand", "prep", "neg"} and self._kind_at(at + 2) in TOLD
        told = (
            wearing
            or self._kind_at(at + 1) in {"make", "cmp", *TOLD, "neg"}
            or (self._kind_at(at + 1) == "prep" and self.phrases[at + 1].value == "for" and opens and at == 1)
        )
        several = (self.context.count or 0) > 1 and len(self.context.kinds) == 1 and not self.context.asked
        alone = sum(is_count(phrase) for phrase in self.phrases) == 1
        return bool(opens and told and several and alone)

    def _excepted(self, at: int) -> bool:
        """Whether a number follows "except"."""
        return self._before(at, "prep") and self.phrases[at - 1].value == "except"

    def _some_of(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "three of the tables navy": some of those that were named become a piece of their own."""
        head = self.heads.get(at + 3)
        the = self._kind_at(at + 2) == "det" and self.phrases[at + 2].value == "the"
        if head is None or not the or self._kind_at(at + 1) != "of" or self._kind_at(at + 4) in {"", "sep", "and"}:
            return False
        kind = TABLE_KIND if head.kind == "table" else head.kind
        whole = next((d for d in self.drafts if d.kind == kind and d.named), None)
        if whole is not None and number < whole.facts.get("count", 0):
            follower = self.phrases[at + 4]
            self._cut_off(whole, number, follower, sized=is_size(follower))
        elif whole is None and kind in self.context.kinds:
            self.drafts.append(Draft(kind=kind, named=True, part_of=number, on_table=kind == TABLE_KIND))
            self.current = self.drafts[-1]
            self.current.facts["count"] = int(number)
            self.changing = True
        else:
            return False
        self.skip |= {at + 1, at + 2, at + 3}
        self.starts.pop(head.first, None)
        return True

    def _grouped(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "three columns: one 4 ft, one 5 ft and one 6 ft": each group is a piece of its own."""
        draft = self.current
        owned = self._owned(at)
        total = draft.facts.get("count")
        nxt = at + 1
        while nxt < len(self.phrases) and self.phrases[nxt].kind in {"pron", "of", "prep"}:
            nxt += 1
        nxt += self._kind_at(nxt) == "det" and self._kind_at(nxt + 1) == "choice"  # "five of them get a full drop"
        if self._another_size(at, nxt, number):
            return True
        if (
            owned
            or (self.correcting and not self._after(at, "pron"))
            or not draft.named
            or total is None
            or nxt >= len(self.phrases)
            or nxt in self.heads
        ):
            return False
        but = self._excepted(at)
        if not but and self._further_size(at, number):
            return True
        follower = self.phrases[nxt]
        sized = (
            is_size(follower)
            or follower.kind == "sides"
            or (
                follower.kind == "named"
                and follower.amounts[0].type in {"LEN", "NUM"}
                and follower.label in {"length", "height", "width", "across"}
            )
        )
        covered = but and follower.kind == "amount" and follower.amounts[0].type == "FRAC"
        described = (covered or follower.kind in {"onhand", "choice", "flag", "neg", "colour"}) and at > 0
        told = sized or (described and (but or self._before(at, "sep", "and")))
        if not told or (number > total and not draft.part_of):
            return False
        self.correcting = False
        another = (
            sized
            and not but
            and not draft.part_of
            and not self._after(at, "pron")
            and any(k.endswith(MEASURES) for k in draft.said)
        )
        if another:  # "eight tables at 6 ft, two at 8 ft"
            self._one_more_piece(draft, number)
        else:
            self._cut_off(draft, number, follower, sized=sized)
        return True

    def _one_more_piece(self, draft: Draft, number: float) -> None:
        self.current = Draft(kind=draft.kind, new=draft.new, on_table=draft.on_table, named=True)
        self.current.facts["count"] = number
        self.drafts.append(self.current)

    def _cut_off(self, draft: Draft, number: float, follower: Phrase, *, sized: bool) -> None:
        """So many of a piece, or of what another group left of it, become one of their own."""
        total = draft.part_of or float(draft.facts["count"])
        origin = self.shared_out[-1][0] if draft.part_of and self.shared_out else draft
        clone = Draft(kind=draft.kind, new=draft.new, on_table=draft.on_table, named=True, part_of=total)
        clone.facts = {
            k: v for k, v in origin.facts.items() if not (sized and k.endswith(MEASURES)) and k not in DESCRIBED
        }
        clone.facts["count"] = number
        clone.colours = [] if follower.kind == "colour" else [dict(c) for c in origin.colours]
        if draft.part_of is None and draft.new:
            self.shared_out.append((draft, total))
        self.drafts.append(clone)
        self.current = clone

    def _rest_of_pieces(self, at: int) -> bool:
        """ "three are 8 ft and the rest 6 ft": the pieces that no group was told of."""
        sized = at + 1 < len(self.phrases) and is_size(self.phrases[at + 1])
        if not self.shared_out or not self.current.part_of or not sized:
            return False
        whole, total = self.shared_out[-1]
        left = total - sum(d.facts.get("count", 0) for d in self.drafts if d.part_of == total and d.kind == whole.kind)
        if left <= 0:
            return False
        rest = Draft(kind=whole.kind, new=whole.new, on_table=whole.on_table, named=True, part_of=total)
        rest.facts = {k: v for k, v in whole.facts.items() if not k.endswith(MEASURES)} | {"count": int(left)}
        rest.colours = [dict(colour) for colour in whole.colours]
        self.drafts.append(rest)
        self.current = rest
        return True

    def _further_size(self, at: int, number: float) -> bool:
        """ "eight 6 ft tables and two 8 ft": more of them beside those that have a size."""
        draft, fact = self.current, self._bare_fact()
        sized = fact is not None and fact.id in draft.facts and self._before(at, "and", "sep")
        led = self._after(at, "of") or (self._after(at, "prep") and self.phrases[at + 1].text.lower() == "at")
        place = at + 2 if led else at + 1
        if not sized or draft.part_of or self._kind_at(place) != "amount" or not is_size(self.phrases[place]):
            return False
        self._one_more_piece(draft, number)
        self.cost += COST["odd"]
        return True

    def _one_more_of_a_size(self, at: int) -> bool:
        """ "a 10 ft garland and another 15 ft", "... and another of 15": one more, unless it is much smaller."""
        draft, fact = self.current, self._bare_fact()
        place = at + 2 if self._after(at, "of", "prep", "pron", "sep") else at + 1
        phrase = self.phrases[place] if place < len(self.phrases) else None
        if phrase is None or place in self.heads or any(h.first <= place < h.at for h in self.heads.values()):
            return False
        in_hand = not draft.named and draft.empty and self._after(at, "of") and not self.context.asked
        values = self.context.values if in_hand else draft.facts if draft.named and draft.new else {}
        held = values.get(fact.id) if fact is not None else None
        if fact is None or held is None or not (is_size(phrase) or (place > at + 1 and is_count(phrase))):
            return False
        amount = phrase.amounts[0].high
        value = self.slots.value(Amount(amount.value, amount.unit or self.last_unit), fact)
        if value is None or not fact.fits(held if in_hand else value):
            return False
        if value <= held / MUCH_SMALLER and not self._after(at, "of"):
            self._set(fact.id, held + value, phrase, Draft(kind=draft.kind))  # is it still such a thing?
            draft.facts[fact.id] = held + value
        else:
            like = Draft(kind=self._kind(), new=True, on_table=self._kind() == TABLE_KIND) if in_hand else draft
            self._one_more_piece(like, 1)
            self._set(fact.id, value, phrase)
        self.skip |= set(range(at + 1, place + 1))
        return True

    def _another_size(self, at: int, nxt: int, number: float) -> bool:
        """ "and one 15 ft" after some of another size: one more piece of that kind."""
        begins = (
            at == 1 and self.phrases[0].kind in {"and", "add"} and not self.current.named and not self.context.asked
        )
        if not begins or self.context.focus is None or nxt >= len(self.phrases) or not is_size(self.phrases[nxt]):
            return False
        draft = Draft(kind=self.context.focus, new=True, named=True, on_table=self.context.focus == TABLE_KIND)
        draft.facts["count"] = number
        self.drafts.append(draft)
        self.current = draft
        return True
