"""How a piece looks: shape, choices, flags, colours."""

from dataclasses import replace
from typing import Any

from grammar.draft import Draft
from grammar.ground import Ground
from grammar.heads import Head, Role, is_size
from grammar.phrases import Phrase
from grammar.reading import Doubt
from grammar.slots import TABLE_KIND
from grammar.word_files import placed


class Looks(Ground):
    """How a piece looks: shape, choices, flags, colours."""

    def _on_shape(self, at: int, phrase: Phrase) -> None:
        if self._kind() not in {None, TABLE_KIND} or (self._kind() is None and self.current.named):
            return
        if self._before(at, "neg"):
            return
        self._set("table_shape", phrase.value, phrase)
        if not self.current.named:
            self.current.on_table = True
        self._reshape()

    def _reshape(self) -> None:
        """A length said before "round" was its diameter."""
        facts = self.current.facts
        if facts.get("table_shape") == "round" and "table_length" in facts and "table_diameter" not in facts:
            facts["table_diameter"] = facts.pop("table_length")

    def _on_choice(self, at: int, phrase: Phrase) -> None:
        fact, value = phrase.value
        several = value == "full" and len(self.context.kinds) > 1 and phrase.text.lower().startswith("all of")
        if several and self._after(at, "colour", "flag"):
            self.current.which = "all"  # "all of it red and gold"
            return
        said = fact in self.current.facts or f"{fact}_fraction" in self.current.facts
        if said and self._before(at, "neg") and self.phrases[at - 1].value != "not":
            self.correcting = True  # "two thirds, no full drop"
        elif self._before(at, "neg"):
            self._deny_choice(fact, value)
            return
        spec = self._need(fact)
        kind = self._kind()
        if kind is not None and not spec.belongs(kind):
            if not self.current.named and not self.context.kinds:
                return
            self.unused.append(phrase)
            return
        if value == "full" and self.current.joined and phrase.text.lower() == "end to end":
            return  # how the tables stand
        if fact == "coverage" and "overhang" in self.current.facts and "floor" not in phrase.text.lower():
            return  # "hang 8 in over at both ends" says where it hangs
        if fact == "coverage":
            old = self.current.facts.get("coverage", self.current.facts.get("coverage_fraction"))
            if old is not None and old != value and self._refines(old, value):
                return
            self.current.facts.pop("coverage_fraction", None) if self.correcting else None
            if "coverage_fraction" in self.current.facts:
                self._contradict_coverage(value, phrase)
                return
        self._begin_anew(at)
        self._set(fact, value, phrase)
        if fact == "coverage":
            self._may_cover_all(at)
        self._hang(fact)
        self._spread(fact)

    def _begin_anew(self, at: int) -> None:
        """ "helium in the bouquets, air in the columns": what is said of other pieces is not of those before."""
        if self.targets and self._before(at, "sep", "and") and self._after(at, "prep"):
            self.targets = []

    def _spread(self, fact: str) -> None:
        """The same for the other pieces that the turn speaks of as a whole."""
        for draft in self.targets:
            if fact in self.current.facts:
                draft.facts[fact] = self.current.facts[fact]

    def _refines(self, old: Any, value: Any) -> bool:
        """ "full drop, both ends" and "drop at one end": the closer word wins without a contradiction."""
        if {old, value} <= {"drop_both", "drop_one"} and "drop_one" in {old, value}:
            self.current.facts["coverage"] = "drop_one"
            return True
        if old in {"drop_both", "drop_one"} and value == "full":
            return True
        if old == "full" and value in {"drop_both", "drop_one"}:
            self.current.facts["coverage"] = value
            return True
        return False

    def _deny_choice(self, fact: str, value: Any) -> None:
        if fact == "gas" and value == "helium":
            self._set("gas", "air", self.phrases[0])
        elif self.current.facts.get(fact) == value:
            self.current.facts.pop(fact)
        else:
            self.current.drop.append((fact, value))

    def _on_flag(self, at: int, phrase: Phrase) -> None:
        fact, value = phrase.value
        denied = self._before(at, "neg", "remove") or (
            self._before(at, "det", "more") and at > 1 and self.phrases[at - 2].kind in {"neg", "remove"}
        )
        value = bool(value) != denied
        if self.job.owns(fact):
            self.job.facts[fact] = value
            return
        if "compare" in self.orders and len(self.phrases) == 1:
            self.current.options[fact] = [True, False]  # "with and without greenery"
            return
        if denied and self._before(at, "remove"):
            self.changing = True
        self._begin_anew(at)
        self._set(fact, value, phrase)
        self.plant = fact
        self._spread(fact)

    def _on_colour(self, at: int, phrase: Phrase) -> None:
        """A colour in the row, with the share that it has; or one that is taken away, swapped or wanted more of."""
        if self._swapped(at, phrase) or self._unwanted(at, phrase):
            return
        self._in_place_of(at, phrase)
        if phrase.label == "rest" and self.current.part_of and self.current.colours:
            self.current = Draft(which="other", named=True)  # "four in pink, the rest in white"
            self.drafts.append(self.current)
            phrase = replace(phrase, label="")
        entry = self._entry(at, phrase)
        anew = self._taken_back(at, phrase)
        if at == 1 and self._before(at, "and") and not self.current.named and "colours" in self.context.known:
            self.current.extend = True  # "and gold": more of them
        gone = [
            c["name"] for c in self.context.values.get("colours", ()) if ("colours", c["name"]) in self.current.drop
        ]
        if gone and any(p.kind in {"make", "remove"} for p in self.phrases[:at]):
            self.current.extend = True  # "peach is out, go with coral"
        if self.phrases[0].text.lower() == "with" and self.current is self.loose and "colours" in self.context.known:
            self.current.extend = True  # "with a bit of sage"
        alone = self._before(at, "sep") and self.phrases[at - 1].text == "," and not self._owned(at)
        if alone and not anew and not self.current.colours:
            self.trailing = self.current
        name = phrase.value
        same = next((c for c in self.current.colours if name in (c["name"], c["name"].split()[-1])), None)
        if same is not None:
            same.update({k: v for k, v in entry.items() if k != "name"})
        else:
            self.current.colours.append(entry)
        for draft in self.targets:
            if draft is not self.current:
                draft.colours.append(dict(entry))
        self.topic = ("colours", None)

    def _taken_back(self, at: int, phrase: Phrase) -> bool:
        """ "in navy, no, ivory", "navy and gold, sorry, navy and silver": the row is said anew."""
        before = at - 1
        while before >= 0 and self.phrases[before].kind in {"sep", "prep", "make"}:
            before -= 1
        last = before
        while last >= 0 and (self.phrases[last].kind in {"sep", "corr"} or self.phrases[last].text.lower() == "no"):
            last -= 1
        slip = any(p.kind == "corr" or (p.kind == "neg" and self.correcting) for p in self.phrases[last + 1 : at])
        slip = slip or self._said_instead(at, phrase)
        if not slip or not self._before(last + 1, "colour"):
            return False
        new = [phrase.value]
        after = at + 1
        while after < len(self.phrases) and self.phrases[after].kind in {"and", "sep", "colour"}:
            new += [self.phrases[after].value] if self.phrases[after].kind == "colour" else []
            after += 1
        names = [colour["name"] for colour in self.current.colours]
        again = next((names.index(name) for name in new if name in names), len(names) - len(new))
        del self.current.colours[max(again, 0) :]
        self.correcting = False
        return True

    def _ends_a_list(self, at: int) -> bool:
        """Whether a row of colours from here on ends in "or", which leaves two of them side by side."""
        while self._kind_at(at) in {"colour", "sep"}:
            if self._kind_at(at) == self._kind_at(at + 1) == "colour":
                return True
            at += 1
        return False

    def _said_instead(self, at: int, phrase: Phrase) -> bool:
        """ "navy no ivory", dictated without a comma: one colour in place of the one before it."""
        plain = self._before(at, "neg") and self.phrases[at - 1].text.lower() == "no"
        alone = self._kind_at(at - 2) == "colour" and self._kind_at(at - 3) not in {"colour", "and", "sep"}
        alone = alone and sum(p.kind == "neg" for p in self.phrases) == 1  # "white no gold no silver" denies both
        return plain and alone and phrase.value not in self.context.colours

    def _entry(self, at: int, phrase: Phrase) -> dict[str, Any]:
        """A colour with its share, its parts, or "the rest"."""
        entry: dict[str, Any] = {"name": phrase.value}
        if phrase.label == "rest" or (self.rest_open and not phrase.label):
            entry["rest"] = True
        elif phrase.label == "share":
            figure = phrase.amounts[0]
            entry["share"] = figure.high.number / (100 if figure.type == "PCT" else 1)
        elif phrase.label == "parts":
            entry["parts"] = phrase.amounts[0].high.number
        elif phrase.label == "all":
            if len([d for d in self.drafts if d.named]) > 1:
                self._for_all(at)
            elif self.current is self.loose and len(self.context.kinds) > 1:
                self.current.which = "all"  # "make them all gold"
            elif not self._after(at, "and", "sep", "colour"):
                entry["share"] = 1.0
            self.everything = self.everything or self._opens_turn()  # "all navy: six tables and a garland"
        return entry

    def _unwanted(self, at: int, phrase: Phrase) -> bool:
        """ "no gold", "drop the red and the blue", "less gold"."""
        place = at - 2 if at > 1 and self._before(at, "det") else at - 1
        if place < 0 or at == self.replacing:
            return False
        before = self.phrases[place]
        if before.kind == "more" and self._kind_at(place - 1) == "amount":
            return False  # "six more in gold"
        if before.kind == "more" and self._more_of_it(at, phrase):
            return True
        if before.kind == "more":
            self.doubts.append(Doubt(kind="vague", fact="colours", words=f"{before.text} {phrase.text}"))
            self.skip |= {at + 1} if self._after(at, "colour") else set()  # "more gold than black"
            self.changing = True
            return True
        dropped = self.current.drop
        other = place - 1 if before.kind in {"and", "sep"} and place > 0 else place  # "no red, blue or gold"
        last = place - 2 if self._kind_at(place - 1) == "sep" else place - 1
        if (
            before.kind == "gap"
            and self._kind_at(last) == "colour"
            and ("colours", self.phrases[last].value) in dropped
        ):
            self.current.extend = True  # "scratch the silver, do white"
        listed = self.phrases[other].kind == "colour" and ("colours", self.phrases[other].value) in dropped
        if listed and before.kind == "sep" and not self.context.colours:
            listed = self._ends_a_list(at)  # "no ivory, navy" wants navy; "no red, blue or gold" none of them
        if listed and other == place and self._before(place, "neg") and self.phrases[place - 1].value == "not":
            return False  # "not pink peach"
        held = [colour["name"] for colour in self.context.values.get("colours", ())]
        if self._said_instead(at, phrase):
            return False
        if before.value == "not" and phrase.value in held:
            self.current.extend = True  # "lilac instead of pink", "not pink, peach": the others stay
        if before.kind in {"neg", "remove"} or listed:
            dropped.append(("colours", phrase.value))
            self.changing = self.changing or before.kind == "remove"
            self.current.colours = [c for c in self.current.colours if c["name"] != phrase.value]
            return True
        return False

    def _more_of_it(self, at: int, phrase: Phrase) -> bool:
        """ "heavier on the white, 70 %": the share that it is to have."""
        told = at + 2 if self._after(at, "sep") else at + 1
        share = self.phrases[told].amounts[0] if self._kind_at(told) == "amount" else None
        if share is None or share.type not in {"PCT", "FRAC"}:
            return False
        self.current.colours.append(
            {"name": phrase.value, "share": share.high.number / (100 if share.type == "PCT" else 1)}
        )
        self.skip |= set(range(at + 1, told + 1))
        self.topic = ("colours", None)
        self.changing = True
        return True

    def _swapped(self, at: int, phrase: Phrase) -> bool:
        """ "swap the red for burgundy", "make the pink lilac": one colour in place of another, or of others."""
        held = self.context.colours
        end = at + 1
        while self._kind_at(end) in {"and", "sep"} and self._kind_at(end + 1) == "colour":
            if phrase.value not in held or self.phrases[end + 1].value not in held:
                break
            end += 2  # "swap navy and gold for lilac"
        place = self._swap_place(end)
        later = place.at + 1 if place is not None else end + (end in self.heads and self._owned(at))  # "the pink arch"
        while later < len(self.phrases) and self.phrases[later].kind in {"prep", "det", "make", "add", "onhand"}:
            later += 1
        first = at - 2 if at > 1 and self.phrases[at - 1].kind == "det" else at - 1
        verb = self.phrases[first].text.lower() if first >= 0 and self.phrases[first].kind == "make" else ""
        behind = self._kind_at(end) == "make" and first < 1 and self.phrases[end].text.lower().endswith(" be")
        if not ({*verb.split()} & placed("replaces") or behind) or self._kind_at(later) != "colour":
            return False
        of_all = verb.endswith((" them", " it", " those", " these"))  # "make them pink and gold" names all anew
        side_by_side = phrase.value in held and self.phrases[later].value not in held and not of_all
        if phrase.label or not (later > end or side_by_side):
            return False
        if place is not None:
            self.current = Draft(kind=self._head_kind(place), named=True)
            self.drafts.append(self.current)
            self.skip |= set(range(end, place.at + 1))
            self.starts.pop(place.first, None)
        self.current.drop += [("colours", p.value) for p in self.phrases[at:end] if p.kind == "colour"]
        self.skip |= set(range(at + 1, end))
        self.replacing = later
        self.current.extend = True
        if len(self.context.kinds) > 1 and self.current is self.loose and self.current.which == "it":
            self.current.which = f"colour {phrase.value}"  # of every piece that has it
        return True

    def _in_place_of(self, at: int, phrase: Phrase) -> None:
        """ "silver for the gold": a new colour in place of one that is held."""
        old = at + 3 if self._kind_at(at + 2) == "det" else at + 2
        link = self._after(at, "prep") and self.phrases[at + 1].value == "for" and self._kind_at(old) == "colour"
        held = self.context.colours
        if link and self.phrases[old].value in held and phrase.value not in held:
            self.current.drop.append(("colours", self.phrases[old].value))
            self.current.extend, self.changing = True, True
            self.skip |= set(range(at + 1, old + 1))

    def _swap_place(self, at: int) -> Head | None:
        """ "change the pink on the arch to lilac": the one piece that is meant."""
        head = next((h for h in self.heads.values() if h.role is Role.PLACE and h.first == at + 1), None)
        return head if head is not None and self._head_kind(head) in self.context.kinds else None

    def _swap_shares(self, at: int) -> bool:
        """ "swap the white and green percentages": two colours that are held change their shares."""
        run = self.phrases[at + 1 : at + 8]
        end = next((i for i, p in enumerate(run) if p.kind == "word" and p.text.lower() in placed("shares")), None)
        held = [dict(colour) for colour in self.context.values.get("colours", ())]
        if end is None or self.phrases[at].text.lower().split()[0] not in placed("swaps"):
            return False
        named = [p.value for p in run[:end] if p.kind == "colour"]
        pair = [c for c in held if c["name"] in named] if named else held
        if len(pair) != len("ab") or not any(colour.get("share") for colour in pair):
            return False
        pair[0]["share"], pair[1]["share"] = pair[1].get("share"), pair[0].get("share")
        self.current.colours = held
        self.skip |= set(range(at + 1, at + end + 2))
        return True

    def _on_rest(self, at: int, phrase: Phrase) -> None:
        """ "the remainder split between white and silver": the colours that follow share it."""
        shared = any("share" in colour for colour in self.current.colours)
        if shared and all(phrase.kind != "colour" for phrase in self.phrases[at:]):
            for colour in self.current.colours:
                if not colour.keys() & {"share", "parts"}:
                    colour["rest"] = True  # "pink, white and gold, pink 60 %, the rest split"
        self.rest_open = self.rest_open or bool(self.current.colours)

    def _on_neg(self, at: int, phrase: Phrase) -> None:
        """ "two thirds, no, half" corrects; "... with greenery, three without": the plant that was spoken of before."""
        self.correcting = self.correcting or (phrase.text.lower() == "no" and self._after(at, "sep"))
        elsewhere = self._kind_at(at + 1) == "pron" and self.phrases[at + 1].text.lower().startswith("on ")
        last = self._kind_at(at + 1) in {"", "sep", "and", "all", "prep"} or elsewhere
        if last and self.plant:
            held = self.current.facts.pop(self.plant, None) if "compare" in self.orders else None
            if held is not None:
                self.current.options[self.plant] = [held, not held]  # "with greenery versus without"
                return
            self._set(self.plant, False, phrase)
        held = self._spec(self.context.topic or "")
        there = phrase.value == "not" and self._kind_at(at + 1) == "prep" and at + 2 in self.starts
        if there and held is not None and held.type == "flag" and not self.plant:
            self.topic, self.changing = (held.id, False), True  # "not on the columns though"
        it = self._after(at, "pron") and self._kind_at(at + 2) in {"", "sep"}
        if phrase.text.lower() == "without" and (last or it) and held is not None and held.type == "flag":
            self._set(held.id, False, phrase)  # "with greenery?" "without it"
            self.skip.add(at + 1)

    def _on_even(self, at: int, phrase: Phrase) -> None:
        """ "fifty fifty": shares said as numbers; "equal parts" gives none."""
        parts = {"fifty": 2, "thirds": 3, "quarters": 4}.get(str(phrase.value))
        if parts:
            self.even = parts

    def _for_all(self, at: int) -> None:
        """What comes next, or what was just said of the last piece, holds for all of this turn."""
        self.targets = [d for d in self.drafts if d.named]
        last = self.targets[-1]
        self.current = last
        said = self._looks(at - 1) or (self._before(at, "prep") and self._looks(at - 2))
        if not said or self.topic is None:
            return
        fact = self.topic[0]
        for draft in self.targets[:-1]:
            if fact == "colours":
                draft.colours = [dict(c) for c in last.colours]
            elif fact in last.facts:
                draft.facts[fact] = last.facts[fact]

    def _is_share(self, at: int) -> bool:
        """ "all two thirds"."""
        return self._kind_at(at) == "amount" and self.phrases[at].amounts[0].type == "FRAC"

    def _looks(self, at: int) -> bool:
        """Whether a colour, a plant or a choice stands there."""
        return 0 <= at < len(self.phrases) and self.phrases[at].kind in {"colour", "flag", "choice"}

    def _on_all(self, at: int, phrase: Phrase) -> None:
        several = len([d for d in self.drafts if d.named]) > 1
        if self._opens_turn() and not self._after(at, "amount"):
            self.everything = True  # "all with greenery: six tables and a garland"
        place = at + 2 if self._after(at, "onhand", "prep") else at + 1
        led = self._before(at, "make", "corr", "whatif") or (at == 0 and (self._looks(place) or self._is_share(place)))
        if len(self.context.kinds) > 1 and self.current is self.loose and led:
            self.current.which = "all"  # "make them all 6 ft", "all with greenery"
        if several and (self._looks(place) or (self._before(at, "prep") and self._looks(at - 2))):
            self._for_all(at)
        elif several and self._after(at, "amount") and is_size(self.phrases[at + 1]):
            self._for_all(at)
            self.sized_alike = True
