"""Words that point: "the other one", "both", "it", "the middle one", "the left column"."""

from grammar.phrases import Phrase
from grammar.pieces.apart import TELLS
from grammar.pieces.counts import MORE_OF
from grammar.pieces.draft import Draft
from grammar.pieces.heads import Head, is_count
from grammar.pieces.parts import MEASURES
from grammar.pieces.slots import TABLE_KIND
from grammar.pieces.stood import Stood
from grammar.reading import Step
from grammar.word_files import placed

THAT_IS = frozenset({"that's", "thats", "that is", "it's", "its", "it is", "they're", "those are"})
ONE_MORE = frozenset({"that one", "that one's", "this one", "this one's"})
SOME = frozenset({"other", "first", "last"})
PLACES = {"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5}
ENDS = frozenset({"last", "left", "right", "ends"})  # of a row of any length
SIDES = frozenset({"left", "right"})
BY_NAME = frozenset({"outside", "inside"})
BY_SIZE = frozenset({"smallest", "biggest"})
SIZED_ONES = {
    "biggest": {"big", "long", "tall", "taller", "bigger", "larger", "longer"},
    "smallest": {"small", "short", "little", "shorter", "smaller"},
}
WHICH = frozenset({"other", "middle", *BY_SIZE, *BY_NAME, *PLACES, *ENDS})


class Pointing(Stood):
    """Words that point at pieces in hand, at one of several that are alike, or at those of this turn."""

    def _on_pron(self, at: int, phrase: Phrase) -> None:
        if self._balloons_go(at, phrase):
            return
        if phrase.value in {"all", "both"}:
            self._on_every(at, phrase)
        elif (
            phrase.value in SOME
            and len(self.context.kinds) == 1
            and at + 1 < len(self.phrases)
            and is_count(self.phrases[at + 1])
        ):
            pass  # "the other four": see parts
        elif at == 0 and phrase.text.lower() in ONE_MORE and self.context.topic == f"{MORE_OF} 1" and self._told(at):
            self._part_off(1, self.context.count or 0)  # "another for the fireplace" "that one's 1.8 m"
        elif phrase.value == "other" and self._others_in_hand(at):
            self._select("other", at)
            self.skip.add(at + 1)
        elif phrase.value in {"biggest", "smallest"} and not self.context.kinds:
            self._select_here(str(phrase.value), at)
        elif phrase.value in WHICH and self.context.kinds:
            if self._one_of_them(str(phrase.value), at):
                return
            self._select(str(phrase.value), at)
        elif at == 0 and phrase.text.lower() in THAT_IS and self._counts_those_in_hand(at):
            self.changing = self.correcting = True  # "that's two tables": of those in hand
        if self._before(at, "remove"):
            self._remove_it(at, phrase)
        elif phrase.value == "it" and self._after(at, "prep") and not any(d.named for d in self.drafts):
            self._put_it()

    def _on_every(self, at: int, phrase: Phrase) -> None:
        """ "both in gold", "centrepieces on all of them"."""
        if self._before(at, "prep") and self._stands(self.current) and self._one_on_each():
            return
        if len([d for d in self.drafts if d.named]) > 1:
            self._for_all(at)
        elif not self.current.named:
            self.current.which = str(phrase.value)
            self.everything = not self.context.kinds
        elif phrase.value == "both":
            self._two_of_them(self.current)

    def _balloons_go(self, at: int, phrase: Phrase) -> bool:
        """ "ditch the big ones": the biggest balloons that were said."""
        held = sorted(self.context.values.get("sizes", ())) if phrase.value in BY_SIZE else []
        if not (held and self._before(at, "remove", "neg")):
            return False
        return self._sizes_go([held[-1] if phrase.value == "biggest" else held[0]])

    def _open(self, head: Head) -> None:
        """Settle whose the phrases from here on are; "short one" points as "the short one" does."""
        word = self.phrases[head.at].text.lower().split()[0]
        which = next((which for which, words in SIZED_ONES.items() if word in words), "")
        several = len(self.context.kinds) > 1 or (self.context.count or 0) > 1
        bare = head.kind == "ones" and head.first == head.at and not self.drafts
        if not (which and several and bare):
            super()._open(head)
            return
        self.skip.add(head.at)
        if not self._one_of_them(which, head.at):
            self._select(which, head.at)

    def _told(self, at: int) -> bool:
        """Whether several are in hand, and something that may be of one of them follows."""
        return (self.context.count or 0) > 1 and any(p.kind in TELLS for p in self.phrases[at + 1 :])

    def _others_in_hand(self, at: int) -> bool:
        """ "the other two" of three pieces in hand, one of which was just spoken of."""
        counted = at + 1 < len(self.phrases) and is_count(self.phrases[at + 1])
        others = len(self.context.kinds) - 1
        return counted and others > 1 and self._number(self.phrases[at + 1].amounts[0]) == others

    def _count(self, at: int, phrase: Phrase) -> None:
        pointed = self._kind_at(at + 1) in {"", "sep", "and", "colour", "choice"} and is_count(phrase)
        if not (pointed and not self._owned(at) and self._of_that_size(at, phrase)):
            super()._count(at, phrase)  # but "blush on the 8" is of the one that is 8 ft

    def _on_nominals(self, at: int, phrase: Phrase) -> None:
        if not self._of_that_size(at, phrase):
            super()._on_nominals(at, phrase)

    def _of_that_size(self, at: int, phrase: Phrase) -> bool:
        """ "the sixes two thirds, the eights to the floor": those in hand that are 6 ft, of pieces of several sizes."""
        fact = self._bare_fact()
        the = self._before(at, "det") and self.phrases[at - 1].value == "the"
        if fact is None or not the or len(self.context.kinds) < len("ab"):
            return False
        said = phrase.amounts[0].high if phrase.amounts else phrase.value
        size = self.slots.convert(said.number, said.unit or "ft", "in")
        if sum(facts.get(fact.id) == size for facts in self.context.held) != 1:
            return False
        self._select(f"size {fact.id} {size:g}", at - 1)
        return True

    def _counts_those_in_hand(self, at: int) -> bool:
        """ "... two tables", where there are tables."""
        run = self.phrases[at + 1 : at + 3]
        if len(run) < len("two tables".split()) or not is_count(run[0]):
            return False
        kind = TABLE_KIND if run[1].kind == "table" else str(run[1].value) if run[1].kind == "piece" else ""
        return kind in self.context.kinds

    def _select(self, which: str, at: int) -> None:
        """ "the second lot", "on the long ones": the piece that is meant, for what comes or for what was just said."""
        draft = Draft(which=which, named=True, on_table=self._speaks_of_table())
        led = self._before(at, "prep") or self.phrases[at].text.lower().startswith("on ")
        placed = led and self.topic is not None
        if placed:
            self._hand_over(self.current, draft)
        self.drafts.append(draft)
        self.current = self.loose if placed else draft
        self.changing = True

    def _select_here(self, which: str, at: int) -> None:
        """ "three 8 ft and five 6 ft tables, gold on the long ones": one of those named in this turn."""
        ordered = sorted((draft for draft in self.drafts if draft.named), key=_greatest)
        if len(ordered) < len("ab"):
            return
        meant = ordered[0] if which == "smallest" else ordered[-1]
        if self._before(at, "prep") and self.topic == ("colours", None) and meant is not self.current:
            meant.colours, self.current.colours = self.current.colours, []
        self.trailing = None
        self.current = meant

    def _put_it(self) -> None:
        """ "put it on the columns too": the plant or the make that was spoken of last."""
        fact = self._spec(self.context.topic) if self.context.topic else None
        if fact is not None and fact.type == "flag":
            self.topic = (fact.id, True)
            self.changing = True

    def _remove_it(self, at: int, phrase: Phrase) -> None:
        """ "take it off the tables", "remove it", "lose them"."""
        self.changing = True
        nxt = self.phrases[at + 1] if at + 1 < len(self.phrases) else None
        forgets = self.phrases[at - 1].text.lower() in placed("forgets") and phrase.text.lower() == "that"
        if forgets and nxt is not None and nxt.kind == "sep" and any(p.kind in TELLS for p in self.phrases[at + 2 :]):
            return  # "forget that, half covered": what was said before, and not the piece
        if nxt is not None and nxt.kind == "prep" and self._off_some(at + 2):
            return
        fact = self._spec(self.context.topic or "")
        off = nxt is not None and nxt.text.lower() == "off" and at + 2 == len(self.phrases)
        if off and fact is not None and fact.type in {"flag", "choice"}:
            self._unset(self.current, fact.id)  # "put a topper on", "take it off"
        if nxt is not None and nxt.kind == "prep":
            self.topic = (self.context.topic or "foliage", "removed")
            return
        self.current.removed = True

    def _off_some(self, at: int) -> bool:
        """ "take it off one": what was put on last goes from so many of them."""
        number = self._number(self.phrases[at].amounts[0]) if self._kind_at(at) == "amount" else 0
        total, fact = self.context.count or 0, self._spec(self.context.topic or "")
        ends = self._kind_at(at + 1) in {"", "sep", "pron"} and is_count(self.phrases[at]) if number else False
        if fact is None or fact.type not in {"flag", "choice"} or not ends or not 0 < number < total:
            return False
        self._part_off(number, total)
        self._unset(self.current, fact.id)
        self.skip |= {at, at + 1}
        return True

    def _on_nth(self, at: int, phrase: Phrase) -> None:
        """ "the left column 5 ft", "the third should be 10 ft": one of several that are alike."""
        ring = phrase.value == "middle" and self._before(at, "prep") and self.context.values.get("ring")
        if ring and self.phrases[at - 1].text.lower() in {"down", "along"}:
            self._set("ring", False, phrase)  # "round the edge", "no, down the middle"
            self.changing = True
            return
        head = self.heads.get(at + 1)
        kind = self._head_kind(head) if head is not None else ""
        alike = kind in self.context.kinds and not self.phrases[at + 1].text.lower().endswith("s")
        if alike and head is not None and self._one_of_them(str(phrase.value), at + 1, kind):
            self.skip.add(at + 1)
            self.starts.pop(head.first, None)
        elif self._last_so_many(at, str(phrase.value)):
            self.skip.add(at + 1)
        elif head is None and phrase.value in {*PLACES, "last"}:
            self._one_of_them(str(phrase.value), at)

    def _last_so_many(self, at: int, which: str) -> bool:
        """ "the last three should be silver": so many of those in hand."""
        number = self._number(self.phrases[at + 1].amounts[0]) if self._after(at, "amount") else 0
        total = self.context.count or 0
        told = any(p.kind in TELLS for p in self.phrases[at + 2 :])
        if which not in {"first", "last"} or not number or not is_count(self.phrases[at + 1]) or not told:
            return False
        if number >= total or self._kind_at(at + 2) in {"table", "piece"}:
            return False
        self._part_off(number, total)
        return True

    def _one_of_them(self, which: str, end: int, kind: str = "") -> bool:
        """One of several pieces alike is meant, or the two at the ends: it alone is what comes, or goes."""
        kinds = self.context.kinds
        at = kinds.index(kind) if kind in kinds else 0
        several = kinds.count(kind) > 1 if kind else len(kinds) > 1 and which not in {"left", "right", "ends"}
        total = self.context.held[at].get("count") if kind and self.context.held else self.context.count
        named = which in BY_NAME or (which in BY_SIZE and not self._has_size(at))
        if total is None or total < len("ab") or several or not (named or which in {"middle", *PLACES, *ENDS}):
            return False
        number = len("ab") if which == "ends" else PLACES.get(which, 1)
        if number > total or (which == "middle" and total % 2 == 0):
            return False
        taken = number if which == "ends" else 1
        first = end - 2 if self._kind_at(end - 1) in {"det", "nth"} else end - 1
        if self._kind_at(first) == "remove":
            self.current.steps.append(Step(fact="count", how="plus", by=-taken))
            self.changing = True
            return True
        placed = self._kind_at(first) == "prep" and self.topic is not None
        if not (placed or any(later.kind in TELLS for later in self.phrases[end + 1 :])):
            return False
        before = self.current
        self._part_off(taken, total, kind)
        self.current.called = which if named or which in SIDES else ""
        if placed:
            self._hand_over(before, self.current)
        return True

    def _has_size(self, at: int) -> bool:
        """Whether a piece in hand has a size, so that none of several alike is bigger."""
        held = self.context.held[at] if at < len(self.context.held) else {}
        return any(name.endswith(MEASURES) for name in held)


def _greatest(draft: Draft) -> float:
    """The greatest size of a piece, inches."""
    sizes = [v for k, v in draft.facts.items() if k.endswith(MEASURES) and isinstance(v, (int, float))]
    return float(max(sizes, default=0.0))
