"""Requests put together from the book's own words, each with the reading that it must have.

What must be heard is written down beside the words as they are chosen, so the reader has no part in it. Number words
are num2words', sizes are exact in inches (25.4 mm, yard and pound agreement of 1959). The same seed gives the same
requests.

A request is: pieces (each a head that names it, and what else is said of it in any order), facts of the job, fillers,
corrections, and then perhaps a later turn. It is typed or dictated: dictated ones have their numbers in words and no
punctuation.
"""

import random
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from num2words import num2words  # type: ignore[import-untyped]

from assistant.vocabulary import make_vocabulary
from grammar.vocabulary import FactWords
from rules import load_book
from tests.phrases_score import Phrase

VOCABULARY = make_vocabulary(load_book())
LOTS = {2: ("a couple of", "a pair of"), 6: ("half a dozen",), 12: ("a dozen",), 24: ("two dozen",)}
OPENERS = (
    "hi", "hi there,", "ok so", "right,", "morning,", "um", "so", "hello, can you do", "I need", "we need", "she wants",
    "the client wants", "please could I have", "I'd like", "can I get", "need", "looking for", "thinking of",
)  # fmt: skip
CLOSERS = ("please", "thanks", "thank you", "if possible", "cheers", "for a wedding", "for saturday", "for my sister")
SLIPS = ("no wait", "no, make that", "sorry", "I mean", "scratch that", "no", "hang on", "or rather", "actually")
TABLES = ("tables", "tables", "tables", "trestle tables", "trestles", "banquet tables", "guest tables", "long tables")
NUMBERED = frozenset("a an one two three four five six seven eight nine ten half quarter".split())
STRIPPED = str.maketrans("", "", ",.;:?!")


@dataclass
class Part:
    """Some words and the fields that they give."""

    text: str
    gives: dict[str, Any] = field(default_factory=dict)


@dataclass
class Piece:
    """One piece: the words that name it, further words in any order, and all fields together."""

    head: Part
    more: list[Part]
    plural: str

    @property
    def kind(self) -> str:
        """The kind of piece."""
        return str(self.head.gives["kind"])

    def heard(self) -> dict[str, Any]:
        """The fields that must be heard."""
        out = dict(self.head.gives)
        for part in self.more:
            out |= part.gives
        return out


def requests(seed: int, count: int) -> Iterator[Phrase]:
    """So many requests, always the same ones for a seed."""
    for number in range(count):
        yield Maker(random.Random(f"{seed} {number}")).phrase(f"g{seed}-{number}")  # noqa: S311  no secret hangs on it


class Maker:
    """Makes one request."""

    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.spoken = chance.random() < 0.3
        self.several = False
        self.metric = chance.random() < 0.25

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
        return Phrase(id, tuple(turns), tuple(heard), facts, (), False, frozenset())

    # choices ---------------------------------------------------------------------------------------------------------

    def pick(self, *options: Any) -> Any:
        """One of the options."""
        return self.chance.choice(options)

    def maybe(self, share: float) -> bool:
        """True as often as the share says."""
        return self.chance.random() < share

    # numbers and sizes -----------------------------------------------------------------------------------------------

    def number(self, n: int, *, lots: bool = False) -> str:
        """A whole number as it is typed or said; `lots` lets "a dozen" stand for it."""
        if lots and n in LOTS and self.maybe(0.5):
            return str(self.pick(*LOTS[n]))
        if self.spoken or self.maybe(0.3):
            return str(num2words(n)).replace("-", self.pick(" ", "-") if not self.spoken else " ")
        return str(n)

    def counted(self, n: int) -> str:
        """A number of things, sometimes after a slip that is taken back."""
        text = self.number(n, lots=True)
        if n > 2 and self.maybe(0.06):
            wrong = self.pick(*(k for k in range(2, 13) if k != n))
            slip = self.pick(*SLIPS)
            comma = "" if self.spoken else ","
            return f"{self.number(wrong)}{comma} {slip}{comma if self.maybe(0.5) else ''} {self.number(n)}"
        return text

    def size(self, inches: int) -> tuple[str, float]:
        """A size in words, and the inches that the words come to (metric ones are rounded to 5 cm)."""
        if self.metric:
            return self.metric_size(inches)
        feet, over = divmod(inches, 12)
        forms: list[str] = []
        if feet and not over:
            name = self.number(feet)
            forms += [f"{name} foot", f"{name} ft", f"{name} feet"]
            forms += [] if self.spoken else [f"{feet}ft", f"{feet}'", f"{name}-foot", f"{feet}-ft"]
        if feet and over == 6:
            name = self.number(feet)
            forms += [f"{name} and a half feet", f"{name} foot six"]
            forms += (
                []
                if self.spoken
                else [f"{feet}.5 ft", f"{feet} 1/2 ft", f"{feet}'6\"", f"{feet} ft 6 in", f"{feet}½ ft"]
            )
        if not feet or over or inches <= 72:
            name = self.number(inches)
            forms += [f"{name} inches", f"{name} inch"]
            forms += [] if self.spoken else [f'{inches}"', f"{inches} in", f"{inches}in"]
        return str(self.pick(*forms)), float(inches)

    def metric_size(self, inches: int) -> tuple[str, float]:
        """The nearest five centimetres."""
        cm = max(5, round(inches * 2.54 / 5) * 5)
        metres = Fraction(cm, 100)
        name = f"{float(metres):g}"
        forms = []
        if cm >= 100:
            said = str(num2words(float(metres))) if metres.denominator > 1 else self.number(int(metres))
            forms += [f"{said} metres", f"{said} meters"]
            forms += [] if self.spoken else [f"{name} m", f"{name}m", f"{name} metres"]
        if cm < 100 or not self.spoken:
            said = self.number(cm)
            forms += [f"{said} cm", f"{said} centimetres"]
        return str(self.pick(*forms)), cm / 2.54

    # pieces ----------------------------------------------------------------------------------------------------------

    def piece(self) -> Piece:
        """A piece of any kind that has a head here."""
        kind = self.pick(
            "runner", "runner", "runner", "garland", "arch", "column", "wall", "hoop", "swag", "bouquet", "centerpiece"
        )
        head, plural = getattr(self, f"_{kind}")()
        return Piece(head, self.looks(kind, head), plural)

    def named(self, kind: str) -> tuple[str, str]:
        """A name of the piece for one and for many."""
        words = next(p.words for p in VOCABULARY.pieces if p.kind == kind)
        pairs = [(w, f"{w}s") for w in words if f"{w}s" in words] + [(w, f"{w}es") for w in words if f"{w}es" in words]
        one, many = self.pick(*pairs)
        return str(one), str(many)

    def some(self, kind: str, most: int = 6) -> tuple[str, str, dict[str, Any]]:
        """ "three arches": the number with the noun apart, and the fields."""
        one, many = self.named(kind)
        n = self.pick(1, 1, *range(1, most + 1))
        if n == 1:
            article = self.pick("a", "a", "one")
            if article == "a" and one[0] in "aeio":
                article = "an"
            return article, one, {"kind": kind, "count": 1}
        return self.counted(n), many, {"kind": kind, "count": n}

    def _runner(self) -> tuple[Part, str]:
        n = self.pick(*range(2, 31))
        number = self.counted(n)
        gives: dict[str, Any] = {"kind": "runner", "count": n}
        shape = self.pick("long", "long", "long", "round", "square")
        noun = self.pick(*TABLES)
        if shape == "round":
            size, gives["table_diameter_in"] = self.size(self.pick(36, 48, 60, 66, 72))
            gives["table_shape"] = "round"
            forms = [
                f"{number} {size} rounds",
                f"{number} {size} round tables",
                f"{number} round tables, {size} across",
            ]
        elif shape == "square":
            size, gives["table_length_in"] = self.size(self.pick(30, 36, 48))
            gives["table_shape"] = "square"
            forms = [f"{number} {size} square tables", f"{number} square tables, {size} each"]
        else:
            size, gives["table_length_in"] = self.size(self.pick(48, 60, 72, 72, 72, 96, 96, 78, 120))
            forms = [
                f"{number} {size} {noun}", f"{number} {size} {noun}", f"runners for {number} {size} {noun}",
                f"{number} {noun}, {size} each", f"{number} {noun} {size} long", f"{size} {noun}, {number} of them",
                f"{number} {noun} at {size}", f"{number} {noun}, each {size} long",
                f"{size} {noun} and there are {number}",
                f"the {noun} are {size} long and there are {number} of them",
            ]  # fmt: skip
            if self.maybe(0.15) and not self.metric:
                wide, gives["table_width_in"] = self.size(self.pick(24, 30, 36))
                forms = [f"{number} {size} by {wide} {noun}", f"{number} {noun} that are {size} by {wide}"]
        if self.spoken:
            forms = [form for form in forms if "," not in form.replace(number, "")]
        return Part(str(self.pick(*forms)), gives), "tables"

    def _garland(self) -> tuple[Part, str]:
        number, noun, gives = self.some("garland", 4)
        size, gives["length_in"] = self.size(12 * self.pick(*range(4, 31)))
        return Part(str(self.pick(f"{number} {size} {noun}", f"{number} {noun} {size} long")), gives), "garlands"

    def _two_sides(self, kind: str) -> tuple[Part, str]:
        number, noun, gives = self.some(kind, 3)
        wide, gives["span_in"] = self.size(12 * self.pick(*range(5, 13)))
        high, gives["height_in"] = self.size(12 * self.pick(*range(6, 10)))
        forms = [
            f"{number} {noun} {wide} wide and {high} high", f"{number} {noun} {high} tall and {wide} wide",
            f"{number} {noun} {wide} wide by {high} high", f"{number} {noun} {wide} by {high}",
            f"{number} {wide} by {high} {noun}",
        ]  # fmt: skip
        return Part(str(self.pick(*forms)), gives), f"{kind}s"

    def _arch(self) -> tuple[Part, str]:
        return self._two_sides("arch")

    def _wall(self) -> tuple[Part, str]:
        return self._two_sides("wall")

    def _column(self) -> tuple[Part, str]:
        number, noun, gives = self.some("column")
        size, gives["height_in"] = self.size(12 * self.pick(4, 5, 6, 7, 8))
        forms = [f"{number} {size} {noun}", f"{number} {noun} {size} tall", f"{number} {noun} {size} high"]
        return Part(str(self.pick(*forms)), gives), "columns"

    def _hoop(self) -> tuple[Part, str]:
        number, noun, gives = self.some("hoop", 4)
        size, gives["diameter_in"] = self.size(12 * self.pick(3, 4, 5, 6))
        forms = [f"{number} {size} {noun}", f"{number} {noun} {size} across", f"{number} {noun} {size} in diameter"]
        return Part(str(self.pick(*forms)), gives), "hoops"

    def _swag(self) -> tuple[Part, str]:
        number, noun, gives = self.some("swag", 4)
        size, gives["span_in"] = self.size(12 * self.pick(*range(8, 21)))
        forms = [f"{number} {size} {noun}", f"{number} {noun} {size} wide", f"{number} {noun} {size} across"]
        head = str(self.pick(*forms))
        if self.maybe(0.5):
            sag, gives["sag_in"] = self.size(self.pick(12, 18, 24))
            head += f" with {sag} of sag"
        return Part(head, gives), "swags"

    def _bunches(self, kind: str, words: tuple[str, str]) -> tuple[Part, str]:
        n, each = self.pick(*range(2, 21)), self.pick(3, 5, 7, 9)
        number, inside = self.counted(n), self.number(each)
        forms = [f"{number} {words[1]} of {inside}", f"{number} {words[1]} with {inside} balloons in each"]
        return Part(str(self.pick(*forms)), {"kind": kind, "count": n, "balloons": each}), words[1]

    def _bouquet(self) -> tuple[Part, str]:
        return self._bunches("bouquet", self.pick(("bouquet", "bouquets"), ("bunch", "bunches")))

    def _centerpiece(self) -> tuple[Part, str]:
        return self._bunches("centerpiece", self.pick(("centrepiece", "centrepieces"), ("centerpiece", "centerpieces")))

    # what else is said of a piece ------------------------------------------------------------------------------------

    def looks(self, kind: str, head: Part) -> list[Part]:
        """Up to four further things, none of which contradicts another."""
        makers = [self.colours, self.foliage]
        if kind == "runner":
            makers += [self.coverage, self.width]
        if kind in {"garland", "arch"}:
            makers += [self.sizes, self.style]
        if kind in {"bouquet", "centerpiece"}:
            makers = [self.colours, self.gas]
        if kind == "hoop":
            makers += [self.style]
        chosen = self.chance.sample(makers, self.pick(0, 1, 1, 2, min(3, len(makers))))
        return [made for maker in chosen if (made := maker(head)) is not None]

    def colour_names(self, count: int) -> list[str]:
        """Colours of different words, so that no two of them can be taken for one."""
        english = [c for c in VOCABULARY.colours if not set(c.split()) & VOCABULARY.lent]
        names = self.chance.sample([c for c in english if " " not in c or not self.spoken], 12)
        out: list[str] = []
        for name in names:
            taken = {word for old in out for word in old.split()}
            plant = name.split()[0] in {"eucalyptus", "confetti", "fern", "moss", "clear"}
            pair = self.spoken and (name in VOCABULARY.colour_mods or any(name in p for p in VOCABULARY.colour_pairs))
            if not plant and not pair and not taken & set(name.split()):
                out.append(name)
        return out[:count]

    def colours(self, head: Part) -> Part | None:
        """A row of colours, with or without shares."""
        names = self.colour_names(self.pick(1, 2, 2, 3))
        if len(names) == 2 and self.maybe(0.3):
            first = self.pick(60, 70, 75, 80)
            a, b = names
            shares = {a: first / 100, b: 1 - first / 100}
            forms = [(f"{first}% {a} and {100 - first}% {b}", shares), (f"half {a} and half {b}", {a: 0.5, b: 0.5})]
            forms += [(f"{first} percent {a} the rest {b}", shares)]
            text, given = self.pick(*forms)
            if self.spoken:
                text = str(text).replace("%", " percent")
                text = " ".join(str(num2words(int(w))).replace("-", " ") if w.isdigit() else w for w in text.split())
            return Part(text, {"colours": [{"name": n, "share": round(s, 4)} for n, s in given.items()]})
        gives = {"colours": [{"name": name} for name in names]}
        comma = " " if self.spoken else ", "
        row = names[0] if len(names) == 1 else f"{comma.join(names[:-1])} and {names[-1]}"
        return Part(self.pick("", "in ", "in ") + row if len(names) > 1 else f"in {row}", gives)

    def foliage(self, head: Part) -> Part:
        """Greenery or none."""
        fact = next(f for f in VOCABULARY.facts if f.id == "foliage")
        word = self.pick(*fact.words)
        if self.maybe(0.5):
            return Part(f"with {word}", {"foliage": True})
        return Part(self.pick(f"no {word}", f"without {word}"), {"foliage": False})

    def coverage(self, head: Part) -> Part | None:
        """Any of the book's words for how much of a table is covered."""
        if head.gives.get("table_shape") == "round":
            return None
        fact = _fact("coverage", "runner")
        value = self.pick(*fact.choices)
        word = str(self.pick(*fact.choices[value]))
        if any(w in word for w in ("round", "ring", "circle")):
            word = str(fact.choices[value][0])
        return Part(word, {"coverage": value})

    def width(self, head: Part) -> Part | None:
        """How wide the tables are."""
        if "table_width_in" in head.gives or head.gives.get("table_shape"):
            return None
        text, inches = self.size(self.pick(24, 30, 36))
        return Part(f"{text} wide", {"table_width_in": inches})

    def sizes(self, head: Part) -> Part:
        """Sizes of balloons."""
        if self.spoken or self.maybe(0.4):
            return Part(f"{self.number(11)} inch balloons", {"sizes_in": [11]})
        text, sizes = self.pick(
            ("5s and 11s", [5, 11]), ("5, 11 and 17 inch balloons", [5, 11, 17]), ('11" balloons', [11])
        )
        return Part(text, {"sizes_in": sizes})

    def style(self, head: Part) -> Part:
        """Organic or classic."""
        value = self.pick("organic", "classic")
        return Part(value, {"style": value})

    def gas(self, head: Part) -> Part:
        """What they are filled with."""
        return Part(self.pick("helium", "helium filled"), {"gas": "helium"})

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
        if facts:
            ahead = self.maybe(0.3) and not self.spoken
            text = f"{facts}, {text}" if ahead else self.glue(text, facts)
        if self.maybe(0.4):
            text = f"{self.pick(*OPENERS)} {text}"
        if self.maybe(0.2):
            text = f"{text} {self.pick(*CLOSERS)}"
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
            return text + self.pick(", ", ", ", ", ", "; ") + more
        first = more.split(maxsplit=1)[0]
        if (
            first.isdigit()
            or first in NUMBERED
            or first.startswith(
                ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety", "twel", "thir")
            )
        ):
            return f"{text} and they're {more}"
        return f"{text} {more}"

    def finish(self, text: str) -> str:
        """Dictation has no punctuation and no capitals."""
        if self.spoken:
            return " ".join(text.lower().translate(STRIPPED).split())
        return text.upper() if self.maybe(0.03) else text

    # a later turn ----------------------------------------------------------------------------------------------------

    def later(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        """A turn that changes or asks something; `heard` and `job` are brought up to it."""
        turns = [self._ask, self._recolour_all, self._add_piece]
        if len(pieces) == 1:
            turns += [self._renumber, self._resize, self._recolour, self._replant, self._undo]
        else:
            turns += [self._remove, self._recolour_named]
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
        heard[0]["count"] = n
        job["intent"] = "change"
        number = self.number(n)
        if heard[0]["kind"] in {"bouquet", "centerpiece"}:
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
            )
        )

    def _recolour(self, pieces: list[Piece], heard: list[dict[str, Any]], job: dict[str, Any]) -> str:
        part = self.colours(pieces[0].head)
        assert part is not None
        heard[0]["colours"] = part.gives["colours"]
        job["intent"] = "change"
        bare = part.text.removeprefix("all ").removeprefix("in ")
        return str(self.pick(f"in {bare}", f"make it {bare}", f"actually {bare}", f"change the colours to {bare}"))

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


def _fact(id: str, kind: str) -> FactWords:
    fact = VOCABULARY.fact(id, kind)
    assert fact is not None
    return fact
