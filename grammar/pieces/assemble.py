"""Phrases to acts: which piece each phrase belongs to, and what it says of it."""

from fractions import Fraction

from grammar.phrases import Figure, Phrase
from grammar.pieces.added import Added
from grammar.pieces.counts import MORE_OF
from grammar.pieces.denied import REMOVED
from grammar.pieces.draft import Draft
from grammar.pieces.ground import COST, MOST_COUNT, Assembled
from grammar.pieces.heads import is_count, is_size
from grammar.pieces.jobfacts import ALONE
from grammar.pieces.parts import MEASURES
from grammar.pieces.pointing import Pointing
from grammar.pieces.slots import TABLE_KIND
from grammar.reading import Doubt, Reading, Step
from grammar.terms import Amount
from grammar.word_files import placed

EVERY = frozenset({"all", "both"})
COVERED = ("coverage", "coverage_fraction")
FEWEST = 2  # guests to a table, where there are several


class Assembler(Pointing, Added):
    """One turn's phrases, read from left to right."""

    def run(self) -> Assembled:
        """Read all phrases."""
        self._adds_one()
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

    def _on_crew(self, at: int, phrase: Phrase) -> None:
        self.job.set("crew", {"one": 1, "two": 2, "three": 3}[str(phrase.value)], phrase.text)

    def _on_joined(self, at: int, phrase: Phrase) -> None:
        if self._kind() == TABLE_KIND:
            self.current.joined = True

    def _on_corr(self, at: int, phrase: Phrase) -> None:
        self.correcting = True
        self.current.article = False
        if self.context.kinds and not any(draft.named for draft in self.drafts):
            self.changing = True  # "make that two tables": what was said in an earlier turn

    def _on_rest(self, at: int, phrase: Phrase) -> None:
        if self._before(at, "remove", "neg") and len(self.context.kinds) > 1 and not self._after(at, "colour"):
            self.drafts.append(Draft(which="other", named=True, removed=True))  # "keep the arch, lose the rest"
            self.changing = True
        elif not self._rest_of_pieces(at):
            super()._on_rest(at, phrase)

    def _on_make(self, at: int, phrase: Phrase) -> None:
        self.changing = True
        if self._swap_shares(at):
            return
        self.correcting = self.correcting or bool(self.current.named)
        if "instead" in phrase.text.lower() and self.context.topic != REMOVED:
            self.current.instead = True  # right after one was taken away it is in place of that one

    def _on_whatif(self, at: int, phrase: Phrase) -> None:
        self.changing = True

    def _on_add(self, at: int, phrase: Phrase) -> None:
        nxt = self.phrases[at + 1] if at + 1 < len(self.phrases) else None
        if phrase.value == "another" and self._one_more_of_a_size(at):
            return
        if (
            nxt is not None
            and at + 1 not in self.starts
            and (is_size(nxt) or (nxt.kind == "named" and nxt.amounts[0].type == "LEN"))
        ):
            return
        of_job = nxt is not None and nxt.kind in {"named", "label"} and str(nxt.label or nxt.value)
        if of_job and (self.context.job.get(of_job) is not None or of_job in ALONE):
            if nxt is not None and nxt.kind == "label" and phrase.value == "another":  # "one more helper"
                self.job.more(of_job, Figure("NUM", Amount(Fraction(1)), Amount(Fraction(1))))
            return
        if self._makes_another(at, phrase):
            return
        if self.context.kinds and self.current is self.loose and not self.current.empty and self._opens_soon(at):
            self.current.named = True  # "make it twelve and add an arch": the twelve are of what is in hand
        self.current.extend = not self._opens_soon(at)
        self.adding = not self.current.extend or phrase.value == "another"
        self.another = phrase.value == "another"
        if phrase.value == "another" and not self._opens_soon(at):
            if nxt is None or not is_count(nxt):
                self.current.steps.append(Step(fact="count", how="plus", by=1))
            self.changing = True
            self.adding = False

    def _makes_another(self, at: int, phrase: Phrase) -> bool:
        """ "another one in silver", "add two more at 8 ft": a piece like that in hand, but for what is said of it."""
        if not self.context.kinds or self.heads or self.current is not self.loose or not self.current.empty:
            return False
        counted = self._after(at, "amount") and is_count(self.phrases[at + 1])
        rest = self.phrases[at + 1 + counted :]
        sized = self._after(at, "sep", "prep") and any(is_size(p) for p in rest)
        another = phrase.value == "another" and (sized or any(p.kind in {"colour", "choice"} for p in rest))
        if not (another or (counted and any(is_size(p) for p in rest))):
            return False
        self.current.new, self.changing = True, True
        self.current.facts["count"] = self._number(self.phrases[at + 1].amounts[0]) if counted else 1
        if counted:
            self.skip |= {at + 1, at + 2} if self._after(at + 1, "more") else {at + 1}
        return True

    def _on_same(self, at: int, phrase: Phrase) -> None:
        if phrase.value == "all" and self._as_much(at):
            return
        if phrase.value == "sizes" and not (self.current.named and self.current.new):
            return
        if self._same_colours_there(at, phrase) or self._same_colours_as(at, phrase):
            return
        self.changing = self.changing or phrase.value == "swapped"
        if phrase.value != "swapped" or not any(later.kind == "colour" for later in self.phrases[at:]):
            self.current.like = str(phrase.value)  # "swap the colours for navy" names new ones

    def _same_colours_there(self, at: int, phrase: Phrase) -> bool:
        """ "same colours on the arch": those of the other piece that has some."""
        head = next((h for h in self.heads.values() if at < h.first <= at + 2 and h.at == len(self.phrases) - 1), None)
        kind = self._head_kind(head) if head is not None else ""
        here = zip(self.context.kinds, self.context.held, strict=False)
        rows = [facts["colours"] for of, facts in here if of != kind and facts.get("colours")]
        on_it = phrase.value == "colours" or phrase.text.lower().endswith(" on")
        if (
            head is None
            or not on_it
            or kind not in self.context.kinds
            or not rows
            or any(row != rows[0] for row in rows)
        ):
            return False
        draft = Draft(kind=kind, named=True, colours=[dict(colour) for colour in rows[0]])
        self.drafts.append(draft)
        self.skip |= set(range(at + 1, head.at + 1))
        self.starts.pop(head.first, None)
        self.changing = True
        return True

    def _same_colours_as(self, at: int, phrase: Phrase) -> bool:
        """ "the same colours as the arch": those of another piece in hand for the one that is spoken of."""
        head = next((h for h in self.heads.values() if h.first == at + 1), None)
        kind = self._head_kind(head) if head is not None else ""
        rows = zip(self.context.kinds, self.context.held, strict=False)
        row = next((facts["colours"] for of, facts in rows if of == kind and facts.get("colours")), None)
        if (
            head is None
            or phrase.value != "colours"
            or row is None
            or (self._kind() == kind and not self.current.named)
        ):
            return False
        self.current.colours = [dict(colour) for colour in row]
        self.skip |= set(range(at + 1, head.at + 1))
        self.starts.pop(head.first, None)
        self.changing = self.changing or not self.current.named
        return True

    def _on_remove(self, at: int, phrase: Phrase) -> None:
        self.changing = True

    def _on_piece(self, at: int, phrase: Phrase) -> None:
        self.unused.append(phrase)  # a name that stands for no piece here

    def _on_table(self, at: int, phrase: Phrase) -> None:
        self.unused.append(phrase)

    def _on_word(self, at: int, phrase: Phrase) -> None:
        self.unused.append(phrase)

    def _keep_the_rest(self) -> None:
        """ "eight tables, three of them navy": the other five stay as they were said."""
        for whole, total in self.shared_out:
            groups = [d for d in self.drafts if d is not whole and d.kind == whole.kind and d.part_of == total]
            taken = sum(d.facts.get("count", 0) for d in groups)
            if taken < total:
                whole.facts["count"] = int(total - taken)
                continue
            self.drafts = [d for d in self.drafts if d is not whole]
            if taken > total:
                self.doubts.append(
                    Doubt(kind="contradiction", fact="count", options=[int(total), taken], piece=whole.kind)
                )

    def _finish(self) -> Assembled:
        self._keep_the_rest()
        self._let_fall()
        self._part_of_all()
        drafts = [d for d in (self.loose, *self.drafts) if not d.empty or d.named]
        drafts = self._stand_on_tables(self._merge_loose(drafts))
        self._colour_all(drafts)
        self._cover_all(drafts)
        self._none_of_it(drafts)
        if self.sized_alike:  # "..., all 6 ft"
            last = {
                k: v
                for k, v in self.current.facts.items()
                if k in {"table_length", "table_diameter", "length", "height"}
            }
            for draft in drafts:
                draft.facts.update(last)
        self._size_all(drafts)
        self._seat(drafts)
        for draft in drafts:
            sizes, blown = draft.facts.get("sizes"), draft.facts.get("inflated")
            if sizes and blown and max(blown) > max(sizes):
                words = f"blown to {max(blown):g} in"
                self.doubts.append(
                    Doubt(kind="impossible", fact="inflated", value=draft.facts.pop("inflated"), words=words)
                )
        for draft in drafts:
            self._cover_by_share(draft)
            if self.even and len(draft.colours) == self.even:
                for colour in draft.colours:
                    colour["share"] = round(1 / self.even, 4)
            if sum(c.get("share") or 0 for c in draft.colours) > 1.005:
                self.doubts.append(
                    Doubt(kind="contradiction", fact="colours", words="shares over 100 %", piece=draft.kind)
                )
            self._join(draft)
            if (
                draft.new
                and "solve" not in self.orders
                and self._needs_count(draft)
                and "count" not in draft.facts
                and not self.job.facts.get("guests")
            ):
                self.cost += COST["no count"]
        reading = Reading(
            mentions=[d.mention() for d in drafts if not d.empty],
            job=self.job.facts,
            job_drop=self.job.dropped,
            orders=self.orders,
            doubts=[*self.doubts, *self.job.doubts],
            changing=self.changing,
            alternatives="compare" in self.orders,
            topic=self._topic_now(drafts),
            answer=self.answer,
        )
        cost = self.cost + self.job.cost + 0.05 * len(self.unused)
        _refuse_absurd(reading)
        return Assembled(reading, cost, [*self.unused, *self.job.unused])

    def _none_of_it(self, drafts: list[Draft]) -> None:
        """ "actually none" after greenery was put on: what the last turn was about, and nothing else is said."""
        fact = self._spec(self.context.topic) if self.context.topic else None
        only = {phrase.kind for phrase in self.phrases} <= {"corr", "neg", "sep"}
        none = any(phrase.kind == "neg" and phrase.text.lower() in placed("none") for phrase in self.phrases)
        if fact is not None and fact.type == "flag" and only and none and not drafts:
            drafts.append(Draft(named=True, facts={fact.id: False}))

    def _topic_now(self, drafts: list[Draft]) -> str:
        """What the turn was about, for the next one to go on from."""
        if self.topic is not None:
            return self.topic[0]
        if "budget" in self.job.facts:
            return "budget"
        if any(draft.removed for draft in drafts):
            return REMOVED
        steps = [step for draft in drafts for step in draft.steps]
        return (
            f"{MORE_OF} {steps[0].by:g}"
            if len(steps) == 1 and (steps[0].fact, steps[0].how) == ("count", "plus")
            else ""
        )

    def _colour_all(self, drafts: list[Draft]) -> None:
        """ "8 tables and an arch, navy and gold": colours behind the last of new pieces are those of all."""
        bare = drafts[:-1]
        if self.trailing is None or not bare or drafts[-1] is not self.trailing or self.context.kinds:
            return
        plain = all(d.new and d.kind and not d.colours and d.undressed for d in bare)
        if plain and self.trailing.undressed:
            for draft in bare:
                draft.colours = [dict(colour) for colour in self.trailing.colours]

    def _cover_all(self, drafts: list[Draft]) -> None:
        """ "6 tables of 8 ft and 4 of 6 ft, full drop": a coverage behind the last of new tables is that of all."""
        last = drafts[-1] if drafts else None
        if last is None or last is not self.covered or self.context.kinds:
            return
        if all(d.new and d.kind == TABLE_KIND and d.undressed for d in drafts[:-1]):
            for draft in drafts[:-1]:
                draft.facts.update({fact: last.facts[fact] for fact in COVERED if fact in last.facts})

    def _seat(self, drafts: list[Draft]) -> None:
        """ "five tables for eight people": too few for all of the tables, so that many sit at each."""
        if self.seated is None:
            return
        draft, people = self.seated
        too_few = people < FEWEST * draft.facts.get("count", 0)
        if draft in drafts and too_few and self.job.facts.get("guests") == people:
            del self.job.facts["guests"]
            draft.facts["seats"] = int(people)

    def _size_all(self, drafts: list[Draft]) -> None:
        """ "six columns, three in red and three in white, 6 ft": a size behind the last of the parts is that of all."""
        last = drafts[-1] if drafts else None
        parts = [d for d in drafts if last is not None and d.part_of and d.part_of == last.part_of]
        if last is None or len(parts) < len("ab") or any(_sizes(d) for d in parts[:-1]):
            return
        for fact, value in _sizes(last).items():
            at = next((i for i, p in enumerate(self.phrases) if p is last.said.get(fact)), 0)
            if self._before(at, "sep"):
                for draft in parts[:-1]:
                    draft.facts[fact] = value

    def _cover_by_share(self, draft: Draft) -> None:
        """ "8 tables, 2/3 navy and gold": two thirds before colours without shares is how much is covered."""
        first = draft.colours[0] if draft.colours else {}
        if len(draft.colours) > len("ab") and "share" in draft.colours[-1]:
            first = draft.colours[-1]  # "navy ivory and gold two thirds"
        shared = any(set(c) & {"share", "rest", "parts"} for c in draft.colours if c is not first)
        covered = {"coverage", "coverage_fraction"} & set(draft.facts)
        two_thirds = abs(first.get("share", 0) - 2 / 3) < 0.01
        if draft.kind == TABLE_KIND and draft.new and two_thirds and not covered and not shared:
            first.pop("share")
            draft.facts["coverage"] = "two_thirds"

    def _needs_count(self, draft: Draft) -> bool:
        words = self.slots.vocabulary.kinds.get(draft.kind or "")
        return draft.kind == TABLE_KIND or (words is not None and words.number != "count" and "count" in words.needs)

    def _merge_loose(self, drafts: list[Draft]) -> list[Draft]:
        """What was said before anything was named belongs to the first piece, where that one is new."""
        loose = self.loose
        named = [d for d in self.drafts if d.named and not d.removed]
        if loose in drafts and named and not loose.named and not named[0].apart:
            first = named[0]
            for fact, value in loose.facts.items():
                if first.facts.setdefault(fact, value) != value and fact in loose.said:
                    self._leave(loose.said[fact])  # "doors eleven, ten tables"
            alike = [d for d in named[1:] if self.everything or (first.part_of and d.part_of == first.part_of)]
            for draft in alike:
                draft.colours = draft.colours or [dict(c) for c in loose.colours]
                for fact, value in loose.facts.items():
                    draft.facts.setdefault(fact, value)
            first.colours = [*loose.colours, *(c for c in first.colours if c not in loose.colours)]
            first.steps = [*loose.steps, *first.steps]
            first.drop = [*loose.drop, *first.drop]
            first.extend = first.extend or loose.extend
            first.options = first.options or loose.options
            first.like = first.like or loose.like
            if loose.which in EVERY and first.which == "it" and not first.new:
                first.which = loose.which  # "make all of them 8 footers"
            first.joined = first.joined or loose.joined
            return [d for d in drafts if d is not loose]
        return drafts

    def _join(self, draft: Draft) -> None:
        """One table where the word is singular; tables pushed together under one runner are one table."""
        if draft.singular and draft.new and "count" not in draft.facts and not draft.steps:
            draft.facts["count"] = 1
        count, length = draft.facts.get("count"), draft.facts.get("table_length")
        if draft.joined and draft.new and not count and not length and "length" in draft.facts:
            draft.facts["count"] = 1  # "one long run of 40 ft, tables pushed together"
        if draft.joined and count and length:
            draft.facts["table_length"] = count * length / (draft.rows or 1)
            draft.facts["count"] = draft.rows or 1


def _sizes(draft: Draft) -> dict[str, float]:
    """The sizes of a piece by fact, inches."""
    return {k: v for k, v in draft.facts.items() if k.endswith(MEASURES) and isinstance(v, (int, float))}


def _refuse_absurd(reading: Reading) -> None:
    """No number of pieces that nothing could be reckoned with, however it was come by."""
    for mention in reading.mentions:
        count = mention.facts.get("count")
        if isinstance(count, int | float) and count > MOST_COUNT:
            del mention.facts["count"]
            reading.doubts.append(
                Doubt(kind="impossible", fact="count", value=count, piece=mention.kind, words=f"{count:g}")
            )
