"""Tables that only tell where bunches and centrepieces stand, and how many: "12 tables need centrepieces"."""

from grammar.phrases import Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.slots import TABLE_KIND
from grammar.pieces.things import Things
from grammar.word_files import placed

HELD = frozenset({"balloons", "sizes", "gas", "strokes", "inflated"})  # of what stands there, said behind the tables
OF_A_PLACE = frozenset({"count", "seats", "table_shape"})
BARE = OF_A_PLACE | {"table_length", "table_width", "table_height", "table_diameter"}
DRESSED = frozenset({"table_length", "table_diameter", "length"})


class Stood(Things):
    """Pieces that stand on tables."""

    def _stand_on_tables(self, drafts: list[Draft]) -> list[Draft]:
        """The drafts, without tables of which nothing was said but how many they are and what stands on them."""
        if len(drafts) == 1 and self._amends_their_number(drafts[0]):
            kind = self._standing_in_hand()
            other = kind if kind != self.context.focus else None
            return [Draft(kind=other, named=True, facts={"count": drafts[0].facts["count"]})]
        tables = [d for d in drafts if self._is_bare_table(d) and not (d.colours and d is drafts[0])]
        tables += [d for d in self.bearing if d.kind == TABLE_KIND and d.new and d not in tables]
        standing = [d for d in drafts if d.new and not d.removed and self._stands(d)]
        place = self._together(tables)
        taker = self._taker(drafts, tables, standing, place or {})
        if taker is None:
            return drafts
        if tables and place is not None and self._takes_their_number(taker, place):
            for draft in tables:
                self._takes_their_looks(taker, draft)
            return [d for d in drafts if d not in tables]
        if len(drafts) == 1 and self._only_places_in_hand():
            in_hand = {"count": self.context.count, "seats": self.context.values.get("seats")}
            if self._takes_their_number(taker, {k: v for k, v in in_hand.items() if v}):
                taker.instead, taker.which = True, f"kind {TABLE_KIND}"
        return drafts

    def _amends_their_number(self, tables: Draft) -> bool:
        """ "actually 10 tables", where all that is in hand stands on them."""
        kind = self._standing_in_hand()
        standing = bool(kind) and (set(self.context.kinds) == {kind} or (self.changing and kind != self.context.focus))
        unknown = "count" not in self.context.known and self.context.asked != "count"  # "there are 11 tables"
        added = self.phrases[0].kind in {"and", "add"} or (unknown and kind == self.context.focus)
        return standing and not added and self._is_bare_table(tables) and set(tables.facts) == {"count"}

    def _standing_in_hand(self) -> str:
        """The only kind in hand that stands on tables, "" where there is none, or a table of its own."""
        kinds = {kind for kind in self.context.kinds if self._holds_balloons(kind) and self._needs(kind)}
        return kinds.pop() if len(kinds) == 1 and TABLE_KIND not in self.context.kinds else ""

    def _taker(
        self, drafts: list[Draft], tables: list[Draft], standing: list[Draft], place: dict[str, object]
    ) -> Draft | None:
        """The piece that stands on the tables: the one there is, beside them, of several the one that is as many."""
        dressed = [d for d in drafts if d.kind == TABLE_KIND and d not in tables]
        if dressed and not (tables and len(standing) == 1 and drafts[drafts.index(standing[0]) - 1] in tables):
            return None  # but "a sweetheart table to the floor and 8 rounds with centrepieces"
        alike = [d for d in standing if d.facts.get("count") in {None, place.get("count")}]
        chosen = alike if len(standing) > 1 else standing
        if len(chosen) != 1:
            return None
        apart = [d for d in drafts if d not in standing and d not in tables]
        at = drafts.index(chosen[0])
        beside = drafts[max(0, at - 1) : at + 2]
        return chosen[0] if not (apart and tables) or any(d in tables for d in beside) else None

    def _on_bears(self, at: int, phrase: Phrase) -> None:
        self.bearing.append(self.current)

    def _on_named(self, at: int, phrase: Phrase) -> None:
        """ "one per table", "five on each table" of bunches: one on each, or the balloons in it."""
        if phrase.label == "seats" and self.current.named and self._stands(self.current):
            number = self._number(phrase.amounts[0])
            if number == 1:
                self._one_on_each()
                return
            if phrase.text.lower().split()[-3:-1] == ["on", "each"] and "balloons" not in self.current.facts:
                self._set("balloons", number, phrase)
                return
        holding = self._holds_balloons(self._kind()) and self._needs(self._kind()) and not self.current.named
        guests = {"guests", "seats"} & {*self.context.job, *self.context.known, *self.job.facts}
        people = {*phrase.text.lower().split()} & placed("seated")
        if phrase.label == "seats" and holding and not (guests or people) and "balloons" in self.context.known:
            self._set("balloons", self._number(phrase.amounts[0]), phrase)  # "of 3", "five a table would be better"
            return
        super()._on_named(at, phrase)

    def _stands(self, draft: Draft) -> bool:
        return self._holds_balloons(draft.kind) and self._needs(draft.kind)

    def _is_bare_table(self, draft: Draft) -> bool:
        """Whether a draft is of tables that nothing is to be laid along."""
        said = set(draft.facts) <= OF_A_PLACE | HELD and not (draft.drop or draft.steps or draft.removed)
        return draft.new and draft.kind == TABLE_KIND and draft.on_table and said

    def _only_places_in_hand(self) -> bool:
        """Whether all that is in hand is bare tables, each of which gets one, or whose size nobody knows."""
        known = set(self.context.known)
        joined = self.phrases[0].kind in {"and", "add"}
        each = any(p.value == "each" or p.label == "seats" for p in self.phrases) and not joined
        return self.context.kinds == [TABLE_KIND] and (not DRESSED & known or (each and known <= BARE))

    def _together(self, tables: list[Draft]) -> dict[str, object] | None:
        """ "each table gets one, there are 7 tables": what was said of the same tables; None where they differ."""
        place: dict[str, object] = {}
        for draft in tables:
            facts = {k: v for k, v in draft.facts.items() if not (k == "count" and draft.singular)}
            if any(place.get(fact, value) != value for fact, value in facts.items()):
                return None
            place.update(facts)
        return place or ({"count": tables[0].facts["count"]} if tables and "count" in tables[0].facts else {})

    def _takes_their_number(self, taker: Draft, place: dict[str, object]) -> bool:
        """Hand the number of tables, or the seats at each, to what stands on them, one on each."""
        count = place.get("count")
        mine = taker.facts.get("count")
        if mine is not None and mine not in {1, count}:
            return False  # "12 tables and 8 centrepieces" are two numbers
        seats = place.get("seats", taker.facts.get("seats"))
        if seats is not None:
            taker.facts["seats"] = seats
        if count is not None:
            taker.facts["count"] = count
        elif seats is not None and (self.job.facts.get("guests") or self.context.job.get("guests")):
            taker.facts.pop("count", None)  # as many as the tables that the guests need
        return count is not None or seats is not None

    def _takes_their_looks(self, taker: Draft, tables: Draft) -> None:
        """Hand on what was said behind the tables of what stands on them, and name their size as not used."""
        for fact in HELD & set(tables.facts):
            taker.facts.setdefault(fact, tables.facts[fact])
        taker.colours = taker.colours or tables.colours
        self.unused += [phrase for fact, phrase in tables.said.items() if fact not in OF_A_PLACE | HELD]
