"""What holds for some pieces and not for the others: "greenery on the arch only", "all gold except the columns"."""

from grammar.phrases import Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.heads import Head, Role, is_size
from grammar.pieces.parts import Parts
from grammar.pieces.slots import TABLE_KIND
from grammar.word_files import placed

ALIKE = 0.005  # relative: 183 cm is as good as 6 ft
NAMING = frozenset(
    {"neg", "corr", "sole", "pron", "det", "and", "sep", "make", "piece", "table", "ones", "shape", "footer"}
)
TELLS = frozenset(
    {"amount", "sides", "named", "listing", "nominals", "footer", "colour", "choice", "flag", "neg", "cmp"}
)


def called_as(phrase: Phrase) -> str:
    """What a table is named beside other tables, "sweetheart table", "trestle", "round"; "" where it is any table."""
    noun = phrase.text.lower().removesuffix("'s").removesuffix("s")
    return "" if phrase.kind not in {"table", "shape"} or noun in placed("any_table") else noun


class Apart(Parts):
    """Exceptions, and what is of one piece alone."""

    sole = False

    def _on_sole(self, at: int, phrase: Phrase) -> None:
        self.sole = True

    def _is_exception(self, head: Head) -> bool:
        """ "except the arch", "except on the 8 ft ones": some of the pieces that are spoken of."""
        before = head.first - 1
        while self._kind_at(before) == "prep" and self.phrases[before].value != "except":
            before -= 1
        told = self._kind_at(before) == "prep" and self.phrases[before].value == "except"
        kinds = {*self.context.kinds, *(d.kind for d in self.drafts if d.named)}
        return told and (len(kinds) > 1 or bool(self._by_size(head)) or self._is_one_table(head))

    def _by_size(self, head: Head) -> str:
        """The pieces in hand that have the size said before the thing, "" where none is said or several kinds are."""
        run = [p for p in self.phrases[head.first : head.at + 1] if is_size(p) or p.kind == "footer"]
        fact = self._bare_fact()
        if not run or fact is None or len(self.context.kinds) < len("ab"):
            return ""
        size = run[0].amounts[0].high if run[0].amounts else run[0].value
        value = self.slots.value(size, fact)
        return f"size {fact.id} {value:g}" if value is not None else ""

    def _is_one_table(self, head: Head) -> bool:
        """ "the head table", of several in hand."""
        noun = self.phrases[head.at].text.lower()
        several = len(self.context.kinds) == 1 and (self.context.count or 0) > 1
        return several and head.kind == "table" and not noun.endswith("s") and self.phrases[head.at].kind == "table"

    def _one_table(self, head: Head, article: str, counted: bool) -> bool:
        """ "the head table is 8 ft", of several in hand: that one alone."""
        named = len(self.phrases[head.at].text.split()) > 1 and article == "the" and not counted
        told = any(p.kind in TELLS for p in (*self.phrases[: head.first], *self.phrases[head.at + 1 :]))
        mine = head.role is Role.THING or (self._before(head.first, "prep") and self.topic is not None)
        if not (named and told and mine and self._is_one_table(head)) or self.drafts:
            return False
        giver = self.current
        self._part_off(1, self.context.count or 0)
        if self.topic is not None:
            self._hand_over(giver, self.current)
        self.skip |= set(range(head.first, head.at + 1))
        return True

    def _called_table(self, head: Head, article: str, counted: bool) -> bool:
        """ "the sweetheart table to the floor", beside other tables: the piece in hand that was named so."""
        noun = called_as(self.phrases[head.at])
        others = [d for d in self.drafts if not self._is_bare_runner(d)]
        if head.kind != "table" or counted or article == "one" or others or len(self.context.kinds) < len("ab"):
            return False
        if not noun or self.context.called.count(noun) != 1:
            return False
        draft = Draft(kind=TABLE_KIND, which=f"called {noun}", named=True, on_table=True)
        self.drafts = others
        told = any(p.kind in TELLS for p in self.phrases[head.at + 1 :])  # "no, the trestles are 8 ft"
        draft.removed = head.role is Role.REMOVED or (head.role is Role.DENIED and not told)
        held = self.context.held[self.context.called.index(noun)]
        if held.get("table_shape") == "round":
            draft.facts["table_shape"] = "round"  # so that a size of it is how wide it is
        self._speak_of(draft, head)
        self.skip.add(head.at)
        return True

    def _speak_of(self, draft: Draft, head: Head) -> None:
        """What comes, or what was just said where the thing is a place for it, is of a piece in hand."""
        self.drafts.append(draft)
        placed = head.role is Role.PLACE and self.topic is not None
        if placed:
            self._hand_over(self.current, draft)
        self.current = self.loose if placed else draft
        self.changing = True

    def _one_of_that_size(self, head: Head, article: str, counted: bool) -> bool:
        """ "the 6 ft ones full drop", beside others of 8 ft: the piece in hand that has this size."""
        which = self._by_size(head)
        if not which or article != "the" or counted or any(d.named for d in self.drafts) or self._is_exception(head):
            return False
        _, fact, value = which.split()
        kind = "" if head.kind == "ones" else self._head_kind(head)
        rows = zip(self.context.kinds, self.context.held, strict=False)
        fits = [of for of, facts in rows if abs(float(facts.get(fact, 0)) - float(value)) <= ALIKE * float(value)]
        others = any(facts.get(fact) for facts in self.context.held) and len(fits) == 1
        if not others or kind not in {"", *fits}:
            return False
        draft = Draft(which=which, named=True, on_table=self._speaks_of_table(), removed=head.role is Role.REMOVED)
        draft.removed = draft.removed or head.role is Role.DENIED
        self._speak_of(draft, head)
        self.skip |= set(range(head.first, head.at + 1))
        return True

    def _is_bare_runner(self, draft: Draft) -> bool:
        """ "runners on the trestles": of the runners in hand, those that are named by their tables."""
        said = draft.facts or draft.colours or draft.steps or draft.drop or draft.removed
        return draft.kind == TABLE_KIND and draft.which == "it" and not (draft.new or said)

    def _except(self, head: Head, kind: str) -> None:
        """What was said before is of all but this, and so is what follows where nothing was said before."""
        self.skip |= set(range(head.first, head.at + 1))
        one, sized = self._is_one_table(head), self._by_size(head) if len(set(self.context.kinds)) == 1 else ""
        if not one:
            self.exceptions.append(sized or kind)
        if self.topic is None and not one:
            return
        source, (fact, value) = self.current, self.topic or ("", None)
        draft = next((d for d in self.drafts if d.kind == kind and d.named and not sized), None)
        if one:
            self._part_off(1, self.context.count or 0)
            draft = self.current
            draft.apart = True
        elif draft is None:
            draft = Draft(kind=None if sized else kind, which=sized or "it", named=True, on_table=kind == TABLE_KIND)
            draft.apart = True
            self.drafts.append(draft)
        if source is draft:
            self.loose.facts.update({fact: draft.facts.pop(fact)} if fact in draft.facts else {})
        self._deny_there(draft, fact, value)
        self.current = draft

    def _deny_there(self, draft: Draft, fact: str, value: object) -> None:
        spec = self._spec(fact)
        if spec is not None and spec.type == "flag":
            draft.facts[fact] = not value

    def _part_of_all(self) -> None:
        """Say of the pieces that were not named what holds for them."""
        named = [d for d in self.drafts if d.named and d.kind]
        if self.exceptions:
            self._of_all_but(named)
        elif self.sole and not self._tables_alone() and named:
            self._of_these_alone(named)

    def _tables_alone(self) -> bool:
        """ "just the trestles get a runner": of those in hand the others go."""
        by_size = len({*self.context.kinds}) == 1
        pointed = [
            d
            for d in self.drafts
            if d.which.startswith(("called ", "size ")) or (by_size and d.which in {"biggest", "smallest"})
        ]
        dressed = any(p.kind == "sole" and p.value == "dressed" for p in self.phrases)
        alone = all(p.kind in NAMING or i in self.skip for i, p in enumerate(self.phrases))
        if len(pointed) != 1 or len(self.context.kinds) < len("ab") or not (dressed or alone):
            return False
        self.drafts.append(Draft(which=f"but {pointed[0].which}", named=True, removed=True))
        self.changing = True
        return True

    def _of_all_but(self, named: list[Draft]) -> None:
        said, colours = dict(self.loose.facts), self.loose.colours
        flags = {fact: value for fact, value in said.items() if isinstance(value, bool)}
        if self.context.kinds:
            self.loose.which = f"except {' '.join(self.exceptions)}"
            for kind in self.exceptions:
                if flags and not any(d.kind == kind for d in named):
                    facts = {fact: not value for fact, value in flags.items()}
                    self.drafts.append(Draft(kind=kind, named=True, apart=True, facts=facts))
            return
        for draft in named:
            if draft.kind in self.exceptions:
                draft.facts.update({fact: not value for fact, value in flags.items()})
                continue
            draft.facts.update({fact: value for fact, value in said.items() if fact not in draft.facts})
            draft.colours = draft.colours or [dict(colour) for colour in colours]
        self.loose.facts, self.loose.colours = {}, []

    def _of_these_alone(self, named: list[Draft]) -> None:
        """ "greenery on the arch only": none for the others; "just the arch": the others go."""
        fact = self.topic[0] if self.topic is not None else ""
        spec = self._spec(fact)
        having = [d for d in named if fact in d.facts]
        if spec is not None and spec.type == "flag" and having:
            value = having[0].facts[fact]
            for draft in named:
                draft.facts.setdefault(fact, not value)
            if self.context.kinds:
                kinds = " ".join(dict.fromkeys(str(d.kind) for d in named))
                self.drafts.append(Draft(which=f"except {kinds}", named=True, facts={fact: not value}))
        elif len(self.context.kinds) > 1 and all(p.kind in NAMING for p in self.phrases):
            in_hand = [str(d.kind) for d in named if d.kind in self.context.kinds and not d.new]
            if in_hand and len(in_hand) == len(named):
                self.drafts = [Draft(which=f"except {' '.join(in_hand)}", named=True, removed=True)]
                self.changing = True
