"""Colours that go and colours that come: denied, taken back, swapped, more or less of one."""

from grammar.phrases import Phrase
from grammar.pieces.draft import Draft
from grammar.pieces.heads import Head, Role
from grammar.pieces.held_shares import HeldShares
from grammar.reading import Doubt
from grammar.word_files import placed


class Swaps(HeldShares):
    """Colours in place of others."""

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
        if not (plain and alone) or phrase.value in self.context.colours:
            return False
        return sum(p.kind == "neg" for p in self.phrases) == 1  # "white no gold no silver" denies both

    def _unwanted(self, at: int, phrase: Phrase) -> bool:
        """ "no gold", "drop the red and the blue", "less gold"."""
        place = at - 2 if at > 1 and self._before(at, "det") else at - 1
        if place < 0 or at == self.replacing:
            return False
        before = self.phrases[place]
        if before.kind == "more" and self._kind_at(place - 1) == "amount":
            return False  # "six more in gold"
        most = before.kind == "word" and before.text.lower() in placed("most_of") and phrase.value in self._held()
        if (before.kind == "more" or most) and self._more_of_it(at, phrase):
            self.unused = [p for p in self.unused if p is not before]
            return True
        if before.kind == "more" and not self.context.colours:
            self.unused.append(before)  # "white with more gold", where nothing has a colour: how much more nobody knows
            return False
        if before.kind == "more" or (most and not phrase.label):
            words = f"{before.text} {phrase.text}"
            self.doubts.append(Doubt(kind="vague", fact="colours", value=phrase.value, words=words))
            self.unused = [p for p in self.unused if p is not before]
            self.skip |= {at + 1} if self._after(at, "colour") else set()  # "more gold than black"
            self.current.extend = self.changing = True
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
        held = self._held()
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

    def _held(self) -> list[str]:
        """The colours of the piece in focus."""
        return [colour["name"] for colour in self.context.values.get("colours", ())]

    def _more_of_it(self, at: int, phrase: Phrase) -> bool:
        """ "heavier on the white, 70 %": the share that it is to have."""
        told = at + 2 if self._after(at, "sep") else at + 1
        if self._split_from(told, str(phrase.value)):
            self.skip |= set(range(at + 1, len(self.phrases)))
            return True
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
        end = at + 1
        while self._kind_at(end) in {"and", "sep"} and self._kind_at(end + 1) == "colour":
            if not (self._holds(phrase.value) and self._holds(self.phrases[end + 1].value)):
                break
            end += 2  # "swap navy and gold for lilac"
        place = self._swap_place(end)
        later = place.at + 1 if place is not None else end + (end in self.heads and self._owned(at))  # "the pink arch"
        while later < len(self.phrases) and self.phrases[later].kind in {"prep", "det", "make", "add", "onhand"}:
            later += 1
        first = at - 2 if at > 1 and self.phrases[at - 1].kind == "det" else at - 1
        verb = self.phrases[first].text.lower() if first >= 0 and self.phrases[first].kind == "make" else ""
        behind = self._kind_at(end) == "make" and first < 1 and self.phrases[end].text.lower().endswith(" be")
        swaps = end == len(self.phrases) and bool({*verb.split()} & placed("swaps"))
        if swaps and phrase.value in self.context.colours and all(p.kind != "colour" for p in self.phrases[:at]):
            self.unused.append(phrase)  # "swap out the rust": for what?
            return True
        if not ({*verb.split()} & placed("replaces") or behind) or self._kind_at(later) != "colour":
            return False
        of_all = verb.endswith((" them", " it", " those", " these"))  # "make them pink and gold" names all anew
        side_by_side = (
            self._holds(phrase.value) and self.phrases[later].value not in self.context.colours and not of_all
        )
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
        if link and self._holds(self.phrases[old].value) and phrase.value not in self.context.colours:
            self.current.drop.append(("colours", self.phrases[old].value))
            self.current.extend, self.changing = True, True
            self.skip |= set(range(at + 1, old + 1))

    def _holds(self, colour: object) -> bool:
        """Whether a colour is in hand, by its name or the last word of it: "sage" of dusty sage."""
        return any(colour in (name, name.split()[-1]) for name in self.context.colours)

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
