"""Requests put together from the book's own words, each with the reading that it must have.

What must be heard is written down beside the words as they are chosen, so the reader has no part in it. The same seed
gives the same requests.

A request is: pieces (each a head that names it, and what else is said of it in any order), facts of the job, fillers,
corrections, and then perhaps a later turn. It is typed or dictated: dictated ones have their numbers in words and no
punctuation. Some speakers slip with their fingers, start anew, hum, talk of other things or are British; the tags of a
phrase tell which of these it has (made_words.WAYS).
"""

import random
from collections.abc import Iterator
from typing import Any

from tests.grammar.made_pieces import Piece, PieceMaker
from tests.grammar.made_slips import with_slips
from tests.grammar.made_words import Part
from tests.phrases_score import Phrase

OPENERS = (
    "hi", "hi there,", "ok so", "right,", "morning,", "um", "so", "hello, can you do", "I need", "we need", "she wants",
    "the client wants", "please could I have", "I'd like", "can I get", "need", "looking for", "thinking of",
)  # fmt: skip
BRITISH_OPENERS = (
    "right then,", "I reckon we want", "we're after", "could you do us", "hiya,", "evening,", "morning love,", "g'day,",
    "I reckon", "can you sort us", "we could do with", "after", "she fancies", "could you knock up",
)  # fmt: skip
CLOSERS = ("please", "thanks", "thank you", "if possible", "cheers", "for a wedding", "for saturday", "for my sister")
BRITISH_CLOSERS = (
    "ta", "for a do in a fortnight", "in the marquee", "for my nan's do", "at the village hall", "for the fete",
    "for a hen do", "in a fortnight", "cheers love", "if that's alright", "for the christening", "this arvo",
)  # fmt: skip
# What is said beside the request, and the words of it that must be named as not used: ages and the like.
ASIDES = (
    ("it's for my nan's 80th", ""), ("she's turning forty", "turning forty"), ("my dad's turning 60", "turning 60"),
    ("my daughter's getting married", ""), ("it's a surprise", ""), ("I've no idea what she'll say", ""),
    ("they've only just decided", ""), ("it's at the church hall", ""), ("her mum's paying", ""),
    ("we did the same last year", ""), ("it's for a baby shower", ""), ("the party's on saturday", ""),
    ("hope that makes sense", ""), ("she's been thinking about it for weeks", ""), ("they want it to look lovely", ""),
)  # fmt: skip
NUMBERED = frozenset("a an one two three four five six seven eight nine ten half quarter".split())
TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety", "twel", "thir")
STRIPPED = str.maketrans("", "", ",.;:?!")


def requests(seed: int, count: int) -> Iterator[Phrase]:
    """So many requests, always the same ones for a seed."""
    for number in range(count):
        yield Maker(random.Random(f"{seed} {number}")).phrase(f"g{seed}-{number}")  # noqa: S311  no secret hangs on it


class Maker(PieceMaker):
    """Makes one request."""

    several = False
    unused: tuple[str, ...] = ()

    def phrase(self, id: str) -> Phrase:
        """A request, with a later turn in two of five."""
        pieces = [self.piece() for _ in range(self.pick(1, 1, 1, 1, 2, 2, 3))]
        if len({piece.kind for piece in pieces}) < len(pieces):
            pieces = pieces[:1]
        job = self.job_parts() if self.maybe(0.3) else []
        turns = [self.opening(pieces, job)]
        heard = [piece.heard() for piece in pieces]
        facts = {key: value for part in job for key, value in part.gives.items()}
        if self.maybe(0.4):
            turns.append(self.later(pieces, heard, facts))
        unread = self.unused if len(turns) == 1 else ()
        return Phrase(id, tuple(turns), tuple(heard), facts, unread, False, frozenset(self.heard_as))

    # the job ---------------------------------------------------------------------------------------------------------

    def job_parts(self) -> list[Part]:
        """One or two facts of the whole job."""
        n, m = self.pick(2, 3, 4), self.pick(*range(5, 61, 5))
        money = self.pick(*range(200, 1501, 50))
        sign = self.pick("$", "£")
        hour = self.pick(1, 2, 3, 4, 5, 6, 7)
        before = self.pick(9, 10, 11)
        guests = self.pick(*range(30, 201, 10))
        name = self.number
        paid = {"budget": {"amount": money, "currency": sign}}
        word = {"$": "dollars", "£": "pounds"}[sign]
        if sign == "£" and self.does("british"):
            word = "quid"
        if self.does("british", 0.3):
            said = [Part(f"party at half {name(hour)}", {"event_time": f"{hour + 12}:30"})]
            early = Part(f"we can get in from half {name(before)}", {"setup_from": f"{before:02}:30"})
            return [*said, early] if self.maybe(0.5) else said
        typed = [
            [Part(f"budget {sign}{money}", paid)], [Part(f"under {sign}{money}", paid)],
            [Part(f"{m} miles away", {"drive_miles": m})], [Part(f"{m}% spare", {"spare_pct": m})],
            [Part(f"{m}% markup", {"markup_pct": m})], [Part(f"{m}% margin", {"margin_pct": m})],
            [Part(f"party at {hour} pm", {"event_time": f"{hour + 12}:00"})],
            [Part(f"{sign}{m} an hour", {"labour_rate": m})],
            [Part(f"party at {hour}", {"event_time": f"{hour + 12}:00"}),
             Part(f"set up from {before} am", {"setup_from": f"{before:02}:00"})],
        ]  # fmt: skip
        said = [
            [Part(f"the budget is {name(money)} {word}", paid)],
            [Part(f"there's {name(n)} of us to set up", {"crew": n})],
            [Part("it's outdoors", {"outdoors": True})], [Part("outside", {"outdoors": True})],
            [Part(f"it's {name(m)} miles away", {"drive_miles": m})],
            [Part(f"for {name(guests)} guests", {"guests": guests})],
            [Part(f"it's {name(80)} degrees", {"temperature_f": 80})] if not self.metric else [],
            [Part(f"the wind is {name(10)} miles an hour", {"wind_mph": 10})],
            [Part(f"we're at {name(6000)} feet elevation", {"altitude_ft": 6000})],
        ]  # fmt: skip
        return list(self.pick(*(group for group in (said if self.spoken else said + typed) if group)))

    # putting it together ---------------------------------------------------------------------------------------------

    def opening(self, pieces: list[Piece], job: list[Part]) -> str:
        """The first turn."""
        self.several = len(pieces) > 1
        text = self.join([self.told(piece) for piece in pieces])
        if self.several and not any(piece.more for piece in pieces) and not self.spoken:
            names = self.colour_names(2)
            for piece in pieces:
                piece.head.gives["colours"] = [{"name": name} for name in names]
            text += self.pick(", ", ", all in ", ", everything in ") + " and ".join(names)
        facts = " and ".join(part.text for part in job)
        ahead = bool(facts) and self.maybe(0.3) and not self.spoken
        if facts:
            text = f"{facts}, {text}" if ahead else self.glue(text, facts)
        if self.does("aside"):
            aside, unused = self.pick(*ASIDES)
            self.unused += (unused,) if unused else ()
            text = f"{aside}{self.pick(' so', ' and') if self.spoken else self.pick(' so', ', so', '.', ' and')} {text}"
        elif self.maybe(0.4):
            openers = BRITISH_OPENERS if self.does("british") else OPENERS
            asks = ("can", "could", "hello, can", "please could")  # "can I get under $500 ..." would ask what fits
            text = f"{self.pick(*(o for o in openers if not (ahead and o.startswith(asks))))} {text}"
        if self.maybe(0.2):
            text = f"{text} {self.pick(*(BRITISH_CLOSERS if self.does('british') else CLOSERS))}"
        return self.finish(text)

    def told(self, piece: Piece) -> str:
        """One piece with what is said of it."""
        text = piece.head.text
        for part in piece.more:
            if "colours" in part.gives and self.several:  # behind a comma they would be those of all
                text += f" in {part.text.removeprefix('in ')}"
            else:
                text = self.glue(text, part.text)
        return text

    def join(self, groups: list[str]) -> str:
        """Several pieces in one row."""
        text = groups[0]
        for group in groups[1:]:
            link = (
                self.pick(" and ", " plus ", " and also ")
                if self.spoken
                else self.pick(", ", ", and ", ", plus ", "; ", " and ")
            )
            text += link + group
        return text

    def glue(self, text: str, more: str) -> str:
        """Words behind others; in speech a size is never followed by a number, which would be one with it."""
        if not self.spoken:
            return text + self.pick(", ", ", ", ", ", "; ") + self.hum() + more
        first = more.split(maxsplit=1)[0]
        if first.isdigit() or first in NUMBERED or first.startswith(TENS):
            return f"{text} and they're {more}"
        return f"{text} {self.hum()}{more}"

    def finish(self, text: str) -> str:
        """Dictation has no punctuation and no capitals, and no slips of the fingers."""
        if self.spoken:
            return " ".join(text.lower().translate(STRIPPED).split())
        if "typo" in self.ways:
            spoilt = with_slips(text, self.chance)
            self.heard_as |= {"typo"} if spoilt != text else set()
            text = spoilt
        return text.upper() if self.maybe(0.03) else text

    # a later turn ----------------------------------------------------------------------------------------------------

    def later(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        """A turn that changes or asks something; `heard` and `job` are brought up to it."""
        turns = [self._ask, self._recolour_all, self._add_piece]
        if len(pieces) == 1:
            turns += [self._renumber, self._resize, self._recolour, self._replant, self._undo, self._widen]
        else:
            turns += [self._remove, self._recolour_named, self._recolour_nth]
        return self.finish(self.pick(*turns)(pieces, heard, job))

    def _ask(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        text, job["intent"] = self.pick(
            ("why so many balloons?", "why"), ("what will it cost?", "price"), ("shopping list", "shopping"),
            ("how long will it take?", "schedule"), ("will it fit in my car?", "transport"),
            ("how much is that", "price"),
        )  # fmt: skip
        return str(text)

    def _undo(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        heard.clear()
        job.clear()
        job["intent"] = "undo"
        return str(self.pick("undo", "undo that"))

    def _renumber(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        n = self.pick(*(k for k in range(2, 16) if k != heard[0]["count"]))
        single = heard[0]["count"] == 1 and heard[0]["kind"] != "runner"  # whose size a number alone may be
        heard[0]["count"] = n
        job["intent"] = "change"
        number = self.number(n)
        if single or heard[0]["kind"] in {"bouquet", "centerpiece"}:
            return f"make it {number} {pieces[0].plural}"
        return str(
            self.pick(
                f"make it {number}",
                f"actually {number} {pieces[0].plural}",
                f"no, {number}",
                f"make that {number}",
                f"change it to {number} {pieces[0].plural}",
                f"what if there were {number}",
                number,
            )
        )

    def _resize(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        kind = heard[0]["kind"]
        job["intent"] = "change"
        name, role = {
            "garland": ("length_in", "long"),
            "column": ("height_in", "high"),
            "hoop": ("diameter_in", "across"),
        }.get(kind, ("", ""))
        if kind == "runner" and "table_diameter_in" not in heard[0] and heard[0].get("table_shape") != "square":
            name, role = "table_length_in", "long"
        if not name:
            return self._recolour(pieces, heard, job)
        size, inches = self.size(int(heard[0][name] // 12 + 1) * 12)
        heard[0][name] = inches
        return str(
            self.pick(
                f"make them {size}",
                f"actually {size} {role}",
                f"what if they were {size} {role}",
                f"sorry, {size} {role}",
                f"they should be {size}",
                f"can they be {size} {role} instead",
                *([f"no they're {size}"] if "table_width_in" not in heard[0] else []),
            )
        )

    def _widen(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        if heard[0]["kind"] != "runner" or heard[0].get("table_shape"):
            return self._recolour(pieces, heard, job)
        size, wide = self.size(self.pick(24, 30, 36, 42))
        if wide == heard[0].get("table_width_in"):
            return self._recolour(pieces, heard, job)
        heard[0]["table_width_in"] = wide
        job["intent"] = "change"
        return str(self.pick(f"make them {size} wide", f"they're {size} wide", f"what if they were {size} wide"))

    def _recolour(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        part = self.colours(pieces[0].head)
        assert part is not None
        heard[0]["colours"] = part.gives["colours"]
        job["intent"] = "change"
        bare = part.text.removeprefix("all ").removeprefix("in ")
        it, would = ("it", "it should be") if heard[0].get("count") == 1 else ("them", "they should be")
        return str(
            self.pick(
                f"in {bare}",
                f"make {it} {bare}",
                f"actually {bare}",
                f"change the colours to {bare}",
                f"do {it} in {bare}",
                f"{would} {bare}",
            )
        )

    def _recolour_all(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        names = self.colour_names(2)
        for one in heard:
            one["colours"] = [{"name": name} for name in names]
        job["intent"] = "change"
        row = " and ".join(names)
        return str(self.pick(f"all of them in {row}", f"everything in {row}", f"make them all {row}"))

    def _recolour_named(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        at = self.pick(*range(len(pieces)))
        names = self.colour_names(2)
        heard[at]["colours"] = [{"name": name} for name in names]
        job["intent"] = "change"
        return f"make the {pieces[at].plural} {' and '.join(names)}"

    def _recolour_nth(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        at = self.pick(0, 1)
        names = self.colour_names(2)
        heard[at]["colours"] = [{"name": name} for name in names]
        job["intent"] = "change"
        which = f"the {('first', 'second')[at]} {'one' if heard[at].get('count') == 1 else 'ones'}"
        row = " and ".join(names)
        return str(self.pick(f"{which} in {row}", f"make {which} {row}", f"and {which} should be {row}"))

    def _replant(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        job["intent"] = "change"
        if heard[0].get("foliage") is True:
            heard[0]["foliage"] = False
            return str(self.pick("no greenery", "without the greenery", "lose the greenery"))
        heard[0]["foliage"] = True
        return str(self.pick("add greenery", "with greenery", "put some greenery in"))

    def _add_piece(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        new = self.piece()
        if any(new.kind == piece.kind for piece in pieces):
            return self._ask(pieces, heard, job)
        heard.append(new.heard())
        job["intent"] = "change"
        return f"{self.pick('add', 'and', 'plus', 'also')} {self.told(new)}"

    def _remove(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        at = self.pick(*range(len(pieces)))
        heard.pop(at)
        job["intent"] = "change"
        return f"{self.pick('lose', 'take out', 'scrap', 'forget', 'remove')} the {pieces[at].plural}"
