"""The pieces of made requests, each a head that names it and what else is said of it in any order."""

from dataclasses import dataclass
from typing import Any

from num2words import num2words  # type: ignore[import-untyped]

from tests.grammar.made_words import VOCABULARY, Part, Speaker, fact_of

TABLES = ("tables", "tables", "tables", "trestle tables", "trestles", "banquet tables", "guest tables", "long tables")


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


class PieceMaker(Speaker):
    """Makes pieces."""

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
        elif shape == "long" and "table_width_in" not in gives and self.does("restart", 0.5):
            number = self.number(n)
            wrong, _ = self.size(self.pick(48, 60, 72, 96))
            less = self.number(self.pick(*(k for k in range(2, 13) if k != n)))
            forms = [
                f"{number} {wrong}{self.slip()} {size} {noun}", f"{less} {size} {noun}, no, make that {number}",
                f"{less} {noun}{self.slip()} {number} {noun}, {size} each", f"{less} {size} {noun}, no, {number}",
                f"{number} {wrong} {noun}{self.slip()} {size} {noun}",
            ]  # fmt: skip
        head = str(self.pick(*forms))
        if self.does("hums", 0.3) and head.startswith(f"{number} ") and not number.startswith("a "):
            head = f"{number} {self.hum()}{head.removeprefix(number).lstrip()}"
        return Part(head, gives), "tables"

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
        if len(names) == 1 and self.does("restart", 0.5):
            wrong = next(name for name in self.colour_names(3) if not set(name.split()) & set(row.split()))
            no = ", no wait," if self.spoken else ", no,"
            slip = self.pick(no, ", sorry,", ", I mean", ", make that", ", no wait,")
            return Part(f"in {wrong}{slip} {row}", gives)
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
        fact = fact_of("coverage", "runner")
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
