"""What every part of the assembler shares: the turn, the piece being put together, and how facts are kept."""

from dataclasses import dataclass, field
from typing import Any

from grammar.phrases import Figure, Phrase
from grammar.pieces.draft import Draft, outside
from grammar.pieces.heads import Head, find_heads, is_size
from grammar.pieces.hosts import hosted
from grammar.pieces.jobfacts import JobFacts
from grammar.pieces.openings import openings
from grammar.pieces.slots import TABLE_KIND, Slots, is_usual
from grammar.reading import Context, Doubt, Reading
from grammar.terms import Amount
from grammar.vocabulary import FactWords

COST = {"left over": 4.0, "impossible": 6.0, "contradiction": 3.0, "unusual": 0.4, "no count": 1.6, "odd": 1.0}
MOST_COUNT = 100_000
WHOLE = frozenset({"count", "balloons", "seats"})  # things that nobody halves


@dataclass(slots=True)
class Assembled:
    """A reading, how far-fetched it is, and which terms it made no use of."""

    reading: Reading
    cost: float
    unused: list[Phrase] = field(default_factory=list)


def sagging(phrases: list[Phrase]) -> list[Phrase]:
    """The phrases, with "a 40 cm drop" of a swag read as its sag, not as a ceiling drop."""
    out: list[Phrase] = []
    swag = False
    for phrase in phrases:
        if swag and phrase.kind == "piece" and phrase.value == "drop" and out[-1].kind == "amount":
            size = out.pop()
            phrase = Phrase("named", (*size.terms, *phrase.terms), label="sag", amounts=size.amounts)
        of = 2 if out and out[-1].kind == "of" else 1
        told = out[-of] if swag and len(out) > of else phrase
        if (told.kind, told.value) == ("piece", "drop") and is_size(phrase):  # "it drops 2 ft", "with a drop of 2 ft"
            del out[-of:]
            phrase = Phrase("named", (*told.terms, *phrase.terms), label="sag", amounts=phrase.amounts)
        swag = swag or (phrase.kind == "piece" and phrase.value == "swag")
        out.append(phrase)
    return out


def squared(phrases: list[Phrase], slots: Slots) -> list[Phrase]:
    """The phrases, with "8 foot square" and "8 foot each way" of a piece of two sides read as both of them."""
    out: list[Phrase] = []
    kind = ""
    square = any((phrase.kind, phrase.value) == ("shape", "square") for phrase in phrases)
    for at, phrase in enumerate(phrases):
        kind = str(phrase.value) if phrase.kind == "piece" else "table" if phrase.kind == "table" else kind
        words = slots.vocabulary.kinds.get(kind)
        last = out[-1] if out else phrase
        noun = at + 1 < len(phrases) and phrases[at + 1].kind in {"table", "piece"}
        both = words is not None and len(words.by) == len("ab") and kind != TABLE_KIND and not noun
        if square and last.kind == "each_side" and is_size(phrase):
            out.pop()  # "each side 42 inches"
        elif (both or square) and _each_way(phrase, last):
            size = out.pop() if phrase.kind == "each_side" else phrase
            sides = (size.amounts[0], size.amounts[0]) if both else size.amounts
            phrase = Phrase("sides" if both else "amount", size.terms, amounts=sides)
        if both and (phrase.kind, phrase.value, last.kind) == ("shape", "square", "amount"):
            sides = (last.amounts[0], last.amounts[0])
            phrase = Phrase("sides", (*out.pop().terms, *phrase.terms), amounts=sides)
        out.append(phrase)
    return out


def _each_way(phrase: Phrase, last: Phrase) -> bool:
    """ "3 ft each way", "3 ft on each side": a size that holds for all sides."""
    named = phrase.kind == "named" and phrase.label in {"drop_each", "drive_distance"} and bool(phrase.amounts)
    if named:
        return phrase.amounts[0].type == "LEN" and phrase.text.lower().endswith((" way", " side"))
    return phrase.kind == "each_side" and phrase.value == "each" and is_size(last)


class Ground:
    """What every part of the assembler shares: the turn, the piece being put together, and how facts are kept."""

    def __init__(self, phrases: list[Phrase], slots: Slots, context: Context, orders: list[str]) -> None:
        phrases = openings(squared(sagging(phrases), slots), slots.vocabulary)
        self.phrases = phrases = hosted(phrases, slots.vocabulary, context)
        self.slots = slots
        self.context = context
        self.orders = orders
        self.drafts: list[Draft] = []
        self.current = Draft()  # what belongs to no named piece: the piece in focus
        self.loose = self.current
        self.job = JobFacts(slots, context, orders)
        self.cost = 0.0
        self.unused: list[Phrase] = []
        self.doubts: list[Doubt] = []
        self.heads = {head.at: head for head in find_heads(phrases, slots)}
        self.starts = {head.first: head for head in self.heads.values()}
        self.owner: Head | None = None
        self.correcting = False
        self.changing = False
        self.adding = False
        self.another = False
        self.topic: tuple[str, Any] | None = None
        self.targets: list[Draft] = []
        self.skip: set[int] = set()
        self.falls: list[tuple[Draft, Phrase, float]] = []  # what comes down at the ends, and how long it is in all
        self.paired: Draft | None = None  # a piece that is two because it stands on either side
        self.bearing: list[Draft] = []  # tables that something only stands on
        self.shared_out: list[tuple[Draft, float]] = []  # pieces some of which became another, and how many there were
        self.hint: FactWords | None = None
        self.rows = 0.0
        self.rest_open = False
        self.replacing = -1  # where the colour stands that takes the place of another
        self.plant = ""
        self.sized_alike = False
        self.given: list[dict[str, Any]] = []
        self.last_unit = ""
        self.even = 0
        self.everything = False
        self.last_number = ""
        self.trailing: Draft | None = None  # the piece after which colours stood alone behind a comma
        self.covered: Draft | None = None  # and the one after which a coverage did
        self.answer = ""
        self.seated: tuple[Draft, float] | None = None  # tables "for eight people"
        self.instead_of = ""  # the kind that what is named next takes the place of
        self.exceptions: list[str] = []  # kinds for which what is said of all does not hold

    def _kind(self, draft: Draft | None = None) -> str | None:
        kind = (draft or self.current).kind
        if kind is not None:
            return kind
        return self.context.focus

    def _holds_balloons(self, kind: str | None) -> bool:
        """Whether a bare number amends the balloons of such a piece: in each bouquet, in all of a drop."""
        words = self.slots.vocabulary.kinds.get(kind or "")
        return words is not None and words.number == "balloons"

    def _spec(self, id: str) -> FactWords | None:
        return self.slots.vocabulary.fact(id, self._kind())

    def _need(self, id: str) -> FactWords:
        return self._spec(id) or FactWords(id, ("any",))

    def _before(self, at: int, *kinds: str) -> bool:
        return at > 0 and self.phrases[at - 1].kind in kinds

    def _after(self, at: int, *kinds: str) -> bool:
        return at + 1 < len(self.phrases) and self.phrases[at + 1].kind in kinds

    def _kind_at(self, at: int) -> str:
        return self.phrases[at].kind if 0 <= at < len(self.phrases) else ""

    def _owned(self, at: int) -> bool:
        """Whether a phrase stands before the thing that it is said of: "thinking of nine bunches"."""
        return self.owner is not None and self.owner.first <= at < self.owner.at

    def _number(self, figure: Figure) -> float:
        value = figure.high.number if isinstance(figure.high, Amount) else 0.0
        return int(value) if value == int(value) else value

    def _bare_fact(self) -> FactWords | None:
        draft = self.current
        kind = self._kind()
        if kind is None:
            return None
        on_table = draft.on_table or (not draft.named and self._speaks_of_table())
        if on_table and (
            draft.facts.get("table_shape") == "round"
            or ((not draft.named or draft.part_of or draft.kind is None) and "table_diameter" in self.context.known)
            or ((not draft.named or draft.kind is None) and self.context.values.get("table_shape") == "round")
        ):
            return self._spec("table_diameter")
        words = self.slots.words(kind, on_table=on_table)
        return self._spec(words.bare) if words is not None and words.bare else None

    def _speaks_of_table(self) -> bool:
        """A turn without a name, about a runner whose table is known or asked for."""
        return self.context.focus == TABLE_KIND and "length" not in self.context.known

    def _as_length(self, phrase: Phrase) -> bool:
        fact = self._bare_fact()
        if fact is None:
            return False
        value = self.slots.value(phrase.amounts[0].high, fact)
        if value is None or not is_usual(value, fact):
            return False
        self._set(fact.id, value, phrase)
        return True

    def _leave(self, phrase: Phrase) -> None:
        self.unused.append(phrase)
        self.cost += COST["left over"]

    def _impossible(self, fact: FactWords | None, figure: Figure, phrase: Phrase) -> None:
        value = figure.high.number if isinstance(figure.high, Amount) else None
        self.doubts.append(
            Doubt(kind="impossible", fact=fact.id if fact else "", value=value, words=phrase.text, piece=self._kind())
        )
        self.cost += COST["impossible"]

    def _contradict(self, fact: FactWords, value: Any, phrase: Phrase) -> None:
        if self._of_the_place(phrase):
            self._leave(phrase)
            return
        old = self.current.facts.pop(fact.id, None)
        self.doubts.append(
            Doubt(kind="contradiction", fact=fact.id, options=[old, value], words=phrase.text, piece=self._kind())
        )
        self.cost += COST["contradiction"]

    def _contradict_coverage(self, value: Any, phrase: Phrase) -> None:
        """A coverage beside another; one said as a fraction is told as it was said."""
        facts = self.current.facts
        if "coverage_fraction" in facts:
            facts["coverage"] = facts.pop("coverage_fraction")
        self._contradict(self._need("coverage"), value, phrase)

    def _may_cover_all(self, at: int) -> None:
        """Note that a coverage stands behind a comma, alone or with the runners that it is of."""
        first = at - 1 if self._before(at, "piece") else at
        if self._before(first, "sep"):
            self.covered = self.current

    def _hang(self, fact: str) -> None:
        """What lies on the floor hangs off the ends."""
        if fact == "extra_drop" and not self.context.draped and "coverage" not in self.current.facts:
            self.current.facts["coverage"] = "drop_both"

    def _opens_turn(self) -> bool:
        """Whether nothing was named yet, neither in this turn nor before."""
        return not self.context.kinds and not self.drafts

    def _of_the_place(self, phrase: Phrase) -> bool:
        """ "a 20 ft garland for a doorway 7 ft tall": the size of what the piece hangs on, after its own was said."""
        at = next((i for i, p in enumerate(self.phrases) if p is phrase), 0)
        inside = []
        while at and self.phrases[at].kind in {"named", "amount", "det", "and", "piece"}:
            inside.append(self.phrases[at].text)
            at -= 1
        return bool(inside) and self.phrases[at].kind == "prep" and not set(inside) & set(self.current.words)

    def _set(self, name: str, value: Any, phrase: Phrase, draft: Draft | None = None) -> None:
        """Keep a fact of the current piece, unless it is outside all sense or contradicts what was just said."""
        draft = draft or self.current
        fact = self._spec(name)
        broken = name in WHOLE and value != int(value)
        if broken or (name == "count" and not 0 < value <= MOST_COUNT):
            self.doubts.append(
                Doubt(kind="impossible", fact=name, value=value, words=phrase.text, piece=self._kind(draft))
            )
            self.cost += COST["impossible"]
            return
        if fact is not None and outside(fact, value):
            self.doubts.append(
                Doubt(kind="impossible", fact=name, value=value, words=phrase.text, piece=self._kind(draft))
            )
            self.cost += COST["impossible"]
            return
        old = draft.facts.get(name)
        if old is not None and old != value and not self.correcting:
            if name == "count" and (draft.article and old == 1):
                self.cost += COST["contradiction"]
            elif fact is not None and fact.type == "flag":
                pass
            else:
                if "compare" in self.orders and fact is not None:
                    draft.options.setdefault(name, [old]).append(value)
                    return
                self._contradict(fact or FactWords(name, ("any",)), value, phrase)
                return
        if (
            fact is not None
            and fact.unit == "in"
            and fact.usual
            and isinstance(value, (int, float))
            and not isinstance(value, bool)
            and not is_usual(value, fact)
        ):
            self.cost += COST["unusual"] if value < 2 * max(fact.usual) else COST["contradiction"]
        draft.facts[name] = value
        draft.said[name] = phrase
        draft.words.append(phrase.text)
        self.topic = (name, value)
        self.correcting = False

    def _sizes(self, figures: list[Figure], phrase: Phrase, *, only_if_nominal: bool = False) -> bool:
        """Balloon sizes in nominal inches."""
        sizes = []
        for figure in figures:
            for end in (figure.low, figure.high):
                if not isinstance(end, Amount) or (only_if_nominal and not self.slots.is_nominal(end)):
                    return False
                size = self.slots.convert(end.number, end.unit or "in", "in")
                if size not in sizes:
                    sizes.append(size)
        sizes = [int(s) if s == int(s) else round(s, 3) for s in sizes]
        if not all(s in self.slots.vocabulary.nominal for s in sizes):
            self.cost += COST["odd"] * 2
        old = [] if self.correcting else self.current.facts.get("sizes", [])
        self.current.facts["sizes"] = [*old, *(s for s in sizes if s not in old)]
        self.topic = ("sizes", self.current.facts["sizes"])
        self.correcting = False
        return True

    def _drop_size(self, figure: Figure) -> bool:
        if not isinstance(figure.high, Amount) or not self.slots.is_nominal(figure.high):
            return False
        self.current.drop.append(("sizes", figure.high.number))
        self.changing = True
        return True

    def _head_kind(self, head: Head) -> str:
        if head.kind == "table":
            return TABLE_KIND
        if head.kind == "ones":
            return self._kind() or TABLE_KIND
        if head.kind == "drop" and self.phrases[head.at].text.lower() in {"drop", "drops"}:
            runner = self.current.kind == TABLE_KIND or (not self.current.named and self.context.focus == TABLE_KIND)
            return TABLE_KIND if runner else "drop"
        return head.kind

    def _hand_over(self, giver: Draft, taker: Draft) -> None:
        """What was just said of one piece is of the other."""
        fact = self.topic[0] if self.topic is not None else ""
        if fact == "colours":
            taker.colours, giver.colours = giver.colours, []
        elif fact in giver.facts:
            taker.facts[fact] = giver.facts.pop(fact)

    def _opens_soon(self, at: int) -> bool:
        return any(head.first <= at + 1 <= head.at or head.first == at + 1 for head in self.heads.values())

    def _correct_topic(self, phrase: Phrase) -> bool:
        """ "sorry, 2.2": the size that was said last."""
        fact = self._spec(self.context.topic) if self.context.topic else None
        if fact is None or fact.unit != "in" or self.context.topic not in self.context.known:
            return False
        value = self.slots.value(phrase.amounts[0].high, fact)
        if value is None or outside(fact, value):
            return False
        self._set(fact.id, value, phrase)
        return True
