"""Naming words: which piece a phrase belongs to, places, and what is denied or taken away."""

from grammar.phrases import Figure, Phrase
from grammar.pieces.apart import called_as
from grammar.pieces.denied import REMOVED, Denied
from grammar.pieces.draft import Draft
from grammar.pieces.ground import COST
from grammar.pieces.heads import Head, Role, is_count, is_size
from grammar.pieces.parts import MEASURES
from grammar.pieces.slots import TABLE_KIND
from grammar.word_files import placed


class Things(Denied):
    """Naming words: which piece a phrase belongs to, places, and what is denied or taken away."""

    def _open(self, head: Head) -> None:
        """Settle which piece the phrases from here on belong to."""
        self.owner = head
        kind = self._head_kind(head)
        before = list(self.phrases[head.first : head.at])
        counted = any(is_count(p) for p in before) or self.phrases[head.at].kind == "nominals"
        article = next((str(p.value) for p in reversed(before) if p.kind == "det"), "")  # "the client wants an arch"
        if self._called_table(head, article, counted):
            return
        if not self._gives_way(head, kind) and self._one_of_that_size(head, article, counted):
            return
        placed = head.role is Role.PLACE and self._placed(head, kind, counted)
        if not placed and not self._pointed_out(head, kind, article, counted):
            self._name(head, kind, article, counted)

    def _placed(self, head: Head, kind: str, counted: bool) -> bool:
        """Whether the thing only tells where something goes, or where it does not."""
        if self._is_exception(head):
            self._except(head, kind)
        elif head.kind == "ones" and self._coloured_ones(head):
            pass
        elif self._is_place(head, kind, counted):
            self._place(head, kind)
        else:
            return False
        return True

    def _pointed_out(self, head: Head, kind: str, article: str, counted: bool) -> bool:
        """Whether the thing is one in hand that something else is done with: dressed, replaced, taken away."""
        if (
            self._colour_goes(head)
            or self._size_goes(head)
            or self._gives_way(head, kind)
            or self._one_table(head, article, counted)
        ):
            return True
        known = kind in self.context.kinds or any(d.kind == kind for d in self.drafts)
        if self.targets and known and article == "the" and not counted and self._before(head.first, "and"):
            self._place(head, kind)  # "gold on the arch and the tables"
            return True
        if known and self._goes_too(head, article, counted):
            head.role = Role.REMOVED
        if head.role in {Role.DENIED, Role.REMOVED}:
            self._deny(head, kind, list(self.phrases[head.first : head.at]))
            return True
        return False

    def _name(self, head: Head, kind: str, article: str, counted: bool) -> None:
        """The draft of what is named, and what its own words say of it."""
        before = list(self.phrases[head.first : head.at])
        self.targets = []
        if head.kind == "ones" and self._coloured_ones(head):
            return
        told = self.phrases[head.at + 1 : head.at + 3] if self._after(head.at, "flag") else []
        sized = any(is_size(p) or p.kind == "sides" for p in (*before, *told))  # "an outdoor one 10 by 8"
        if head.kind == "ones" and self.current.named and not counted and not (article == "one" and sized):
            return
        known = kind in self.context.kinds and not any(d.kind == kind and d.named for d in self.drafts)
        again = next((d for d in reversed(self.drafts) if d.kind == kind and d.named), None)
        if again is not None and self._corrects(head):
            draft = self.current = again
            self._say_anew(head, before)
        elif self._other_table(head, again):
            self.adding = True
            draft = self.current = self._opened(head, kind, "one", counted=counted, known=known)
            article = "one"
        elif self._same(head, kind, counted, article):
            draft = self.current
            if draft.article and counted and head.kind == "table" and draft.facts.get("count") == 1:
                del draft.facts["count"]  # "a runner on eight tables": there are as many as there are tables
        elif again is not None and not counted and not self.adding and (article == "the" or self._bare_of(again, head)):
            draft = self.current = again
        else:
            draft = self.current = self._opened(head, kind, article, counted=counted, known=known)
        if self.instead_of:
            draft.new, draft.instead, draft.which, self.instead_of = True, True, self.instead_of, ""
        draft.named = True
        draft.on_table = head.kind == "table" or (head.kind == "ones" and kind == TABLE_KIND)
        draft.called = draft.called or (called_as(self.phrases[head.at]) if draft.new and head.kind == "table" else "")
        draft.article = article == "one" or (draft.article and article == "each")
        if self.another and not counted and "count" not in draft.facts:
            draft.facts["count"] = 1
        self.another = False
        measure = next((p.text.lower() for p in before if is_size(p)), "")
        if not article and not counted and measure.startswith(("a ", "an ")):
            article = "one"  # "a metre and a half hoop"
        if article == "one" and counted:
            self.cost += COST["contradiction"]
        hangs = head.kind == "drop" and kind == TABLE_KIND
        in_hand = draft.which.startswith("called ")  # "the trestles get a runner"
        if article == "one" and not counted and not (hangs or in_hand) and "count" not in draft.facts:
            draft.facts["count"] = 1
        noun = self.phrases[head.at].text.lower().removesuffix("'s")  # "the cake table's 5 ft"
        if self.loose.which == "both" and self._two_of_them(draft):
            self.loose.which = "it"  # "both of the 5 ft hoops"
        draft.several = draft.several or (head.kind != "ones" and noun.endswith("s"))
        draft.singular = (draft.singular and head.kind == TABLE_KIND) or (
            head.kind == "table" and self.phrases[head.at].kind == "table" and not noun.endswith("s")
        )
        self.adding = False

    def _two_of_them(self, draft: Draft) -> bool:
        """ "5 ft hoops, both of them": there are two."""
        several = draft.new and "count" not in draft.facts and not self.context.kinds
        if several:
            draft.facts["count"] = len("ab")
        return several

    def _gives_way(self, head: Head, kind: str) -> bool:
        """ "swap the columns for an arch": the piece in hand that another one takes the place of."""
        verb = self.phrases[head.first - 1].text.lower().split() if self._before(head.first, "make") else []
        link = 2 if self._after(head.at, "prep", "onhand") else 1  # "swap ... for", "change ... to"
        other = next((h for h in self.heads.values() if h.first == head.at + link), None)
        if other is None or not {*verb} & placed("replaces") or kind not in self.context.kinds:
            return False
        if other.kind == "ones" or self._head_kind(other) == kind:
            return False
        sized = self._by_size(head) if len({*self.context.kinds}) == 1 else ""
        self.instead_of, other.role, self.changing = sized or f"kind {kind}", Role.THING, True
        self.skip |= set(range(head.first, other.first))
        return True

    def _goes_too(self, head: Head, article: str, counted: bool) -> bool:
        """ "and the arch", after something was taken away."""
        alone = all(
            p.kind in {"and", "add", "det", "sep"} for p in (*self.phrases[: head.at], *self.phrases[head.at + 1 :])
        )
        return alone and self.context.topic == REMOVED and article == "the" and not counted

    def _opened(self, head: Head, kind: str, article: str, *, counted: bool, known: bool) -> Draft:
        """A draft of its own for what is named: a new piece, or one in hand."""
        several = head.kind == "ones" and self.current.named
        draft = Draft(kind=None if head.kind == "ones" and not several else kind)
        self.drafts.append(draft)
        definite = article in {"the", "each", ""} and not self.adding and not (counted and article != "the")
        fresh = self.adding or not known or not definite
        if known and counted and not self.adding and (self.changing or self.context.focus == kind):
            fresh = False if self.changing else fresh
        has = self._before(head.first, "onhand") and self.phrases[head.first - 1].value == "theirs"
        asked = bool(self.context.asked) and kind == self.context.focus
        if known and (asked or (has and counted)) and not self.adding:  # "she's got ten tables": of those in hand
            fresh = False
        of_tables = head.kind == "drop" and kind == TABLE_KIND  # "and a 30 inch drop": of those in hand
        draft.new = fresh and head.kind != "ones" and not (known and of_tables)
        verb = self.phrases[head.first - 1].text.lower() if self._before(head.first, "make") else ""
        if verb in placed("replaces") and article == "the" and not known and self.context.kinds:
            draft.new, draft.which = False, "known"  # "make the columns 7 ft" speaks of some in hand
        if head.kind == "ones":
            draft.new = self.adding or several
        return draft

    def _corrects(self, head: Head) -> bool:
        """Whether what was said before was taken back right before the thing: "..., no, nine tables"."""
        before = head.first - 1
        while before >= 0 and self.phrases[before].kind == "sep":
            before -= 1
        return before >= 0 and self.phrases[before].kind == "corr"

    def _say_anew(self, head: Head, before: list[Phrase]) -> None:
        """Forget the number and the size of the thing where they are said once more."""
        facts = self.current.facts
        if any(is_count(p) for p in before):
            facts.pop("count", None)
        sized = any(is_size(p) or p.kind in {"sides", "footer"} for p in (*before, self.phrases[head.at]))
        bare = self._bare_fact()
        if sized and bare is not None:
            facts.pop(bare.id, None)
        self.correcting = False

    def _coloured_ones(self, head: Head) -> bool:
        """ "the gold ones": a piece in hand, by its colour."""
        run = self.phrases[head.first : head.at]
        colour = next((p for p in run if p.kind == "colour"), None)
        definite = any(p.kind == "det" and p.value == "the" for p in run)
        more_than_that = any(is_count(p) or (is_size(p) and not definite) for p in run)  # "make them gold 8 ft ones"
        if colour is None or not self.context.kinds or more_than_that:
            return False
        for i in range(head.first, head.at + 1):
            self.skip.add(i)
        meant = Draft(which=f"colour {colour.value}", named=True, on_table=self._speaks_of_table())
        self.drafts.append(meant)
        placed = head.role is Role.PLACE and self.topic is not None
        if placed:
            self._hand_over(self.current, meant)
        self.current = self.loose if placed else meant
        self.changing = True
        return True

    def _same(self, head: Head, kind: str, counted: bool, article: str) -> bool:
        """Whether the thing is the one that was spoken of just before in this turn."""
        now = self.current
        if not now.named or now.kind != kind:
            return False
        if self.adding:
            return False
        if head.kind == "drop":
            return True  # "with a drop": the tables' own
        runner_on_it = head.kind == TABLE_KIND and now.on_table and (not counted or now.joined)
        if (head.prep and now.article) or runner_on_it:
            return True
        if head.kind == "table" or head.kind == TABLE_KIND:
            sized = any(is_size(p) or p.kind in {"nominals", "footer"} for p in self.phrases[head.first : head.at + 1])
            has_size = any(f in now.facts for f in ("table_length", "table_diameter"))
            if head.kind != "table" and counted:
                return "count" not in now.facts or not any(
                    f in now.facts for f in ("table_length", "table_diameter", "length")
                )
            brings = counted or article == "one"
            if counted and now.called and not (head.prep or self._before(head.first, "pron")) and self._several(head):
                return False  # "sweetheart table to the floor and 8 rounds"
            if brings and not head.prep and "length" in now.facts and not now.on_table:
                return False  # "a head table runner 18 ft and six rounds"
            counted_twice = brings and "count" in now.facts and not self.correcting
            return not counted_twice and not (sized and has_size and brings)
        if counted and self._counts_it_late(head):
            return True
        return not counted and article != "one" and not self._names_another(head)

    def _counts_it_late(self, head: Head) -> bool:
        """ "bunches of six, helium, fifteen bunches": the number of what was named without one."""
        run, after = self.phrases[head.first : head.at], self.phrases[head.at + 1 : head.at + 2]
        sized = any(is_size(p) or p.kind in {"sides", "named", "of"} for p in (*run, *after))
        late = self._before(head.first, "sep") and not sized and self.current.several
        return late and "count" not in self.current.facts

    def _several(self, head: Head) -> bool:
        """Whether more than one of what is named is counted."""
        return any(is_count(p) and self._number(p.amounts[0]) > 1 for p in self.phrases[head.first : head.at])

    def _other_table(self, head: Head, again: Draft | None) -> bool:
        """ "a 6 ft table and the cake table 4 ft": a table with a name of its own, and a size as the other one has."""
        noun = self.phrases[head.at].text.lower()
        if again is None or head.kind != "table" or len(noun.split()) == 1 or noun.endswith("s"):
            return False
        called = {word.lower() for word in again.words}
        sized = self._after(head.at, "amount") and is_size(self.phrases[head.at + 1])
        has_size = any(fact in again.facts for fact in ("table_length", "table_diameter"))
        return sized and has_size and noun not in called and not self.context.kinds

    def _bare_of(self, again: Draft, head: Head) -> bool:
        """ "two columns and an arch, columns 6 ft, arch 8 by 7": named once more for its size, which was not said."""
        sized = self._after(head.at, "amount", "sides", "named") and not is_count(self.phrases[head.at + 1])
        plain = head.first == head.at and not any(fact.endswith(MEASURES) for fact in again.facts)
        return plain and sized and again is not self.current

    def _names_another(self, head: Head) -> bool:
        """ "hoop 36 in, hoop 48 in": named anew behind a comma, with a size that it has already."""
        fact = self._bare_fact()
        sized = self._after(head.at, "amount") and is_size(self.phrases[head.at + 1])
        known = fact is not None and fact.id in self.current.facts
        return sized and known and not self.context.kinds and self._before(head.first, "sep", "and")

    def _is_place(self, head: Head, kind: str, counted: bool) -> bool:
        if head.prep == "for" and head.kind == "table":
            return bool(self.current.named and self.current.kind not in {None, TABLE_KIND})
        if kind == TABLE_KIND:
            return bool(self.current.named and self.current.kind != TABLE_KIND) or self._attribute_before(head)
        if head.prep == "for":
            return bool(self.current.named)
        alone = len(self.heads) == 1 and not self.context.kinds  # a place for nothing is the thing itself
        first = counted and not any(draft.named for draft in self.drafts)  # "a price on four columns and an arch"
        return not alone and not first

    def _attribute_before(self, head: Head) -> bool:
        """ "greenery on the tables": the thing only says where something goes that was just named."""
        known = TABLE_KIND in self.context.kinds or any(d.kind == TABLE_KIND and d.named for d in self.drafts)
        fact = self._spec(self.topic[0]) if self.topic is not None else None
        told = self.topic is not None and self.topic[0] == "colours"
        attribute = told or (fact is not None and fact.type in {"flag", "choice"})
        return known and attribute and not any(is_count(p) or is_size(p) for p in self.phrases[head.first : head.at])

    def _dresses(self, head: Head) -> bool:
        """ "tables and a garland, greenery on the tables": where the plant goes, not where the garland lies."""
        look = head.first - 2
        while look > 0 and self.phrases[look].kind in {"colour", "and"}:
            look -= 1
        phrase = self.phrases[look]
        if phrase.kind in {"flag", "choice"} or (phrase.kind == "amount" and phrase.amounts[0].type == "FRAC"):
            look -= 1
        said = look < head.first - 2 and look >= 0 and self.phrases[look].kind == "sep"
        return said and self._attribute_before(head)

    def _place(self, head: Head, kind: str) -> None:
        """A thing that only says where: it may be the target of what was just said, or tell how many."""
        for i in range(head.first, head.at + 1):
            self.skip.add(i)
        run = self.phrases[head.first : head.at]
        if (
            head.prep in {"for", "place", "around"}
            and kind == TABLE_KIND
            and self.current.kind != TABLE_KIND
            and self.current.named
            and not self._dresses(head)
        ):
            count = next((p for p in run if is_count(p)), None)
            named = max((h.at for h in self.heads.values() if h.at < head.first), default=head.at)
            several = self.phrases[named].text.lower().endswith("s")  # "garlands for six tables"
            each = any((p.kind == "det" and p.value == "each") or p.kind == "all" for p in run)
            if (
                count is not None
                and (each or several or "count" in self.current.facts or self._needs(self.current.kind))
                and self.current.facts.get("count", 1) == 1
            ):
                self.current.facts.pop("count", None)  # "one bouquet on each of 11 tables"
                self._set("count", self._number(count.amounts[0]), count)
            elif count is not None:
                self.unused.append(count)
            elif each:
                self._one_on_each()
            self._along([p for p in run if is_size(p)])  # a centrepiece is not as high as its table is long
            return
        target = self._find(kind)
        if target is None:
            self._along(run)
        if target is None or self.topic is None:
            return
        target.options, self.current.options = {**self.current.options, **target.options}, {}
        fact, value = self.topic
        source, first = self.current, not self.targets
        self.targets.append(target)
        if fact == "colours":
            self._give_colours(source, target, first=first)
            return
        if first and source is not target:
            self._take_back(source, fact)
        if value == "removed":
            self._unset(target, fact)
        else:
            target.facts[fact] = value

    def _along(self, run: list[Phrase]) -> None:
        """ "a garland along a 10 ft wall": the size of the place is that of the piece, where it has none of its own."""
        fact = self._bare_fact()
        for phrase in run:
            if not (is_size(phrase) or phrase.kind == "named"):
                continue
            if fact is not None and fact.id in {"length", "span"} and fact.id not in self.current.facts:
                self._bare_figure(phrase.amounts[0], phrase)
            else:
                self._leave(phrase)

    def _give_colours(self, source: Draft, target: Draft, *, first: bool) -> None:
        """ "gold on the arch and the tables": the colours just said are those of other pieces."""
        if first:
            self.given = [dict(colour) for colour in source.colours]
            if source is not target:
                source.colours = []
        target.colours = [dict(colour) for colour in self.given]
        target.extend = target.extend or source.extend

    def _head(self, head: Head, phrase: Phrase) -> None:
        """The naming word itself: a shape or a size may stand in it."""
        if head.implied:
            self._length(phrase.amounts[0], phrase, head.at)
            return
        self.current.words.append(phrase.text)
        if head.kind == "drop" and self._head_kind(head) == TABLE_KIND:
            self._set("coverage", "drop_both", phrase)
        if phrase.kind == "shape":
            self._set("table_shape", phrase.value, phrase)
            self._reshape()
        elif phrase.kind == "footer" or phrase.kind == "nominals":
            self._length(Figure("LEN", phrase.value, phrase.value), phrase)
