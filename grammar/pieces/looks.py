"""How a piece looks: shape, choices, flags, colours."""

from dataclasses import replace
from typing import Any

from grammar.phrases import Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.heads import is_size
from grammar.pieces.slots import TABLE_KIND
from grammar.pieces.swaps import Swaps
from grammar.rows.called import CALLED
from grammar.word_files import placed


class Looks(Swaps):
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
        of_all = value == "full" and phrase.text.lower().startswith("all of") and self._after(at, "colour", "flag")
        if of_all and len(self.context.kinds) > 1:
            self.current.which = "all"  # "all of it red and gold"
            return
        if of_all and len([d for d in self.drafts if d.named]) > 1:
            self._for_all(at)
            return
        place = at - 2 if self._before(at, "det") else at - 1
        gone = self._kind_at(place) == "remove" and self.phrases[place].text.lower() != "take"
        if gone and self.context.values.get(fact) == value:
            self.current.drop.append((fact, value))  # "forget the toppers"
            self.changing = True
            return
        if self._exchanged(at):
            self.correcting = True
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

    def _exchanged(self, at: int) -> bool:
        """ "swap the helium for air": the second of two choices."""
        verb = any({*p.text.lower().split()} & placed("replaces") for p in self.phrases[:at] if p.kind == "make")
        return (
            verb
            and self._before(at, "prep")
            and self.phrases[at - 1].value == "for"
            and self._kind_at(at - 2) == "choice"
        )

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
            if self.current.part_of or (self.current.named and self.current.new):
                self.current.called = CALLED[value]  # "two arches, one outside": either may be spoken of so
                value = value or bool(self.job.facts.get(fact))
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
        if parts and not self._even_of_held(parts, phrase):
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
        place = at + 1
        while self._kind_at(place) in {"onhand", "prep", "det"}:
            place += 1
        opens = at == 0 or (at == 1 and self.phrases[0].kind == "pron")  # "they all get the full drop"
        led = self._before(at, "make", "corr", "whatif") or (opens and (self._looks(place) or self._is_share(place)))
        behind = self._before(at, "prep") and at + 1 == len(self.phrases) and self._looks(at - 2)  # "gold for all"
        led = led or behind or len(self.phrases) == 1
        if len(self.context.kinds) > 1 and self.current is self.loose and led:
            self.current.which = "all"  # "make them all 6 ft", "all with greenery"
        if several and (self._looks(place) or (self._before(at, "prep") and self._looks(at - 2))):
            self._for_all(at)
        elif several and self._after(at, "amount") and is_size(self.phrases[at + 1]):
            self._for_all(at)
            self.sized_alike = True
