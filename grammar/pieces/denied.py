"""What is denied or taken away: pieces, facts, one of several."""

from dataclasses import replace

from grammar.phrases import Phrase
from grammar.pieces.apart import Apart
from grammar.pieces.draft import Draft
from grammar.pieces.falls import Falls
from grammar.pieces.heads import Head, Role, is_count
from grammar.pieces.looks import Looks
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Step

REMOVED = "removed"  # the topic of a turn that took a piece away


class Denied(Falls, Looks, Apart):
    """What is not wanted, or no longer."""

    def _on_colour(self, at: int, phrase: Phrase) -> None:
        super()._on_colour(at, replace(phrase, label="") if self._other_half(phrase) else phrase)

    def _other_half(self, phrase: Phrase) -> bool:
        """ "half the tables in navy and half in gold": the second share is of the tables, too."""
        total, taken = self.context.count or 0, self.current.facts.get("count", 0)
        shared = phrase.label == "share" and phrase.amounts[0].type == "FRAC" and self.current.part_of == total
        number = round(total * phrase.amounts[0].high.number, 4) if shared else 0
        if not (self.current.colours and number and number == int(number) and taken + number <= total):
            return False
        self._part_off(int(number), total)
        return True

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
        if head.kind == "drop" and kind == TABLE_KIND:
            self._no_drop(head)
            return
        count = next((p for p in before if is_count(p)), None)
        exists = kind in self.context.kinds
        named = next((d for d in self.drafts if d.kind == kind and d.named), None)
        self.changing = self.changing or exists
        if not exists and named is None:
            if head.role is Role.REMOVED and (self.context.kinds or not self._wants_another(kind)):
                self.drafts.append(Draft(kind=kind, named=True, removed=True))
            return
        draft = named or Draft(kind=kind, named=True)
        if named is None:
            self.drafts.append(draft)
        number = self._number(count.amounts[0]) if count is not None else None
        all_of_them = any(p.kind == "det" for p in before) and number not in range(1, self._most(kind))
        if number is not None and head.role is Role.REMOVED and not all_of_them:
            draft.steps.append(Step(fact="count", how="plus", by=-number))
        elif exists and self._some_without(head):
            pass
        elif exists and self._one_of_several(head, kind):
            draft.steps.append(Step(fact="count", how="plus", by=-1))  # "skip the head table"
        elif exists:
            draft.removed = True
        else:
            self.drafts.remove(draft)
            self.bearing.append(draft)
        self.current = draft if draft in self.drafts else self.loose

    def _most(self, kind: str) -> int:
        """The greatest number in hand of one kind."""
        rows = zip(self.context.kinds, self.context.held, strict=False)
        return max((int(facts.get("count", 1)) for of, facts in rows if of == kind), default=0)

    def _wants_another(self, kind: str) -> bool:
        """ "forget columns, she wants a hoop": what was never there is only denied."""
        return any(self._head_kind(head) != kind and head.role is Role.THING for head in self.heads.values())

    def _some_without(self, head: Head) -> bool:
        """ "no runners on two of them": so many fewer."""
        at = head.at + 2
        some = self._after(head.at, "prep") and self._kind_at(at) == "amount" and is_count(self.phrases[at])
        number = self._number(self.phrases[at].amounts[0]) if some else 0
        if not some or self._kind_at(at + 1) not in {"pron", "of"} or number >= (self.context.count or 0):
            return False
        self.drafts[-1].steps.append(Step(fact="count", how="plus", by=-number))
        self.skip |= {head.at + 1, at, at + 1}
        return True

    def _one_of_several(self, head: Head, kind: str) -> bool:
        """Whether one table is named where several are in hand."""
        noun = self.phrases[head.at].text.lower()
        several = kind == self.context.focus and (self.context.count or 1) > 1
        return several and head.kind == "table" and not noun.endswith("s")

    def _no_drop(self, head: Head) -> None:
        """ "no drop" of a runner takes the drop away; right after a drop it contradicts it."""
        said = self.current.facts.get("coverage")
        if said in {"drop_both", "drop_one"}:
            self._contradict(self._need("coverage"), "full", self.phrases[head.at])
        else:
            self.current.drop += [("coverage", "drop_both"), ("coverage", "drop_one")]
