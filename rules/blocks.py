"""The blocks of a book as frozen records: facts with their rules, pieces, and remarks."""

from collections.abc import Mapping
from typing import Any

from rules.errors import BookError
from rules.nearest import clause
from rules.packed import Packed
from rules.record import record
from rules.units import UnitError
from rules.values import TYPES, read_quantity, read_table, read_value

JOB = "job"  # in `of`: the fact belongs to the whole job
ANY = "any"  # in `of`: the fact belongs to every kind of piece
REMARKS = ("caution", "clash", "note", "answer")

FACT_KEYS = frozenset(
    "kind of unit type whole words sane usual assume ask short why source is except choices shared show digits by rows "
    "quiet once steps told asked learned".split()
)
EXCEPT_KEYS = frozenset("name when is why source".split())
REMARK_KEYS = frozenset("kind of when text source rank choices drop asked".split())
JOB_KEYS = frozenset("kind shows main tells".split())

Raw = Mapping[str, Any]


@record
class Rule(Packed):
    """One way to work a fact out; `when` is None for the general rule."""

    name: str
    when: str | None
    text: str
    why: str
    source: str


@record
class Spread(Packed):
    """What is taken when nobody said: low, typical and high, as the engine holds them."""

    low: Any
    typical: Any
    high: Any


@record
class Learned(Packed):
    """Where a value comes of jobs that are done: how many, and the figure that was compared.

    `factor` is what that figure is multiplied by, `jobs_factor` what the jobs alone would make it, and `left` the part
    of the book's own spread of it that is left.
    """

    jobs: int
    of: str
    of_piece: str  # the same figure as a piece has it, where the other is the job's
    factor: float
    jobs_factor: float
    left: float


@record
class Fact(Packed):
    """All that the book knows about one fact; see rules/values.py for how values are held."""

    id: str
    file: str
    of: tuple[str, ...]
    type: str
    unit: str
    whole: bool
    words: tuple[str, ...]
    choices: dict[str, tuple[str, ...]]
    sane: tuple[float, float] | None
    usual: tuple[float, ...]
    assume: Spread | None
    from_house: bool
    shared: bool
    quiet: bool
    ask: str
    short: str  # how the list of what was taken names it, with places: "tables {table_height} high"
    why: str
    source: str
    rules: tuple[Rule, ...]
    show: str
    digits: int | None
    by: str
    once: bool  # belongs to one job, and so can be no house rule
    learned: Learned | None  # from jobs that are done
    told: tuple[str, ...]  # how people tell a row of a table: patterns with @ for the place and # for the value
    asked: tuple[str, ...]  # how people ask for the figure, as patterns of words

    @property
    def name(self) -> str:
        """What people call it: the first of its words, else the id with spaces."""
        return self.words[0] if self.words else self.id.replace("_", " ")

    @property
    def is_number(self) -> bool:
        """Whether it is a quantity, and so has a range."""
        return self.type == "quantity"


@record
class Part(Packed):
    """Balloons of one sort in a piece, by the ids of the facts that give size, inflated size and number."""

    name: str
    size: str
    inflated: str
    count: str
    pairs: bool


@record
class PieceKind(Packed):
    """A kind of piece (or the job itself): the figures it shows, the parts it is bought in."""

    id: str
    words: tuple[str, ...]
    parts: tuple[Part, ...]
    shows: tuple[str, ...]
    main: str
    hears: Raw  # a heard name -> the id of the fact it means for this kind
    extra: Raw


@record
class Remark(Packed):
    """A caution, clash, note or answer: a text with places, said when `when` holds (None: always).

    An answer is said only where it is asked for, in a pattern of words of `asked`; a caution may be too.
    """

    id: str
    file: str
    kind: str
    of: tuple[str, ...]
    when: str | None
    text: str
    source: str
    rank: int
    choices: tuple[str, ...]
    drop: tuple[str, ...]
    asked: tuple[str, ...]


def read_fact(id: str, file: str, raw: Raw, from_house: bool) -> Fact:
    """The record of a fact's block; BookError where a value cannot be read."""
    try:
        kind = _text(raw, "type", "quantity")
        unit = _text(raw, "unit", "in" if kind == "sizes" else "hour" if kind == "clock" else "count")
        if kind not in TYPES:
            raise BookError(file, id, f"the type {kind!r} is not known", f"write one of {', '.join(TYPES)}")
        return Fact(
            id=id,
            file=file,
            of=_strings(raw, "of"),
            type=kind,
            unit=unit,
            whole=bool(raw.get("whole", False)),
            words=_strings(raw, "words"),
            choices={name: _strings(raw["choices"], name) for name in raw.get("choices", {})},
            sane=_ends(raw.get("sane"), unit),
            usual=tuple(read_quantity(value, unit) for value in raw.get("usual", ()) if kind != "choice"),
            assume=_spread(raw, kind, unit),
            from_house=from_house,
            shared=bool(raw.get("shared", True)),
            quiet=bool(raw.get("quiet", False)),
            ask=_text(raw, "ask"),
            short=_text(raw, "short"),
            why=_text(raw, "why"),
            source=_text(raw, "source"),
            rules=_rules(raw),
            show=_text(raw, "show", unit),
            digits=raw.get("digits"),
            by=_text(raw, "by", "in"),
            once=bool(raw.get("once", False)),
            learned=Learned(**raw["learned"]) if "learned" in raw else None,
            told=_strings(raw, "told"),
            asked=_strings(raw, "asked"),
        )
    except UnitError as error:
        raise BookError(file, id, clause(error), "write a unit of units.txt that measures the same") from None
    except (ValueError, TypeError, KeyError, AttributeError, ArithmeticError) as error:
        raise BookError(file, id, f"a value cannot be read ({error})", "write it as DEVELOPERS.md shows") from None


def _strings(raw: Raw, key: str) -> tuple[str, ...]:
    found = raw.get(key, ())
    return tuple(_a_text(one) for one in ([found] if isinstance(found, str) else found))


def _text(raw: Raw, key: str, default: str = "") -> str:
    return _a_text(raw.get(key, default))


def _a_text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError(f"{value!r} is no text")
    return value


def _ends(raw: Any, unit: str) -> tuple[float, float] | None:
    if raw is None:
        return None
    low, high = (read_quantity(end, unit) for end in raw)
    return low, high


def _spread(raw: Raw, kind: str, unit: str) -> Spread | None:
    if kind == "table":
        rows = raw.get("rows", ())
        low, typical, high = (
            read_table(rows, column, raw.get("by", "in"), unit, steps=bool(raw.get("steps", False)))
            for column in ("low", "typical", "high")
        )
        return Spread(low, typical, high)
    assume = raw.get("assume")
    if assume is None:
        return None
    if isinstance(assume, Mapping):
        typical = assume["typical"]
        low, high = assume.get("low", typical), assume.get("high", typical)
        return Spread(*(_taken(value, kind, unit) for value in (low, typical, high)))
    value = _taken(assume, kind, unit)
    return Spread(value, value, value)


def _taken(raw: Any, kind: str, unit: str) -> Any:
    """One value of what is taken; a quantity is one number here."""
    return read_quantity(raw, unit) if kind == "quantity" else read_value(raw, kind, unit)


def _rules(raw: Raw) -> tuple[Rule, ...]:
    why, source = _text(raw, "why"), _text(raw, "source")
    found = [
        Rule(
            _text(one, "name"),
            _text(one, "when"),
            str(one.get("is", "")),
            _text(one, "why", why),
            _text(one, "source", source),
        )
        for one in raw.get("except", ())
    ]
    if "is" in raw:
        found.append(Rule("", None, str(raw["is"]), why, source))
    return tuple(found)


def read_piece(id: str, raw: Raw) -> PieceKind:
    """The record of a piece's block, or of the job's."""
    known = ("kind", "words", "parts", "shows", "main", "hears")
    parts = tuple(
        Part(
            _a_text(one["name"]),
            _a_text(one["size"]),
            _a_text(one["inflated"]),
            _a_text(one["count"]),
            bool(one.get("pairs", False)),
        )
        for one in raw.get("parts", ())
    )
    shows = _strings(raw, "shows")
    main = _text(raw, "main", shows[0] if shows else "")
    extra = {key: value for key, value in raw.items() if key not in known}
    return PieceKind(id, _strings(raw, "words"), parts, shows, main, dict(raw.get("hears", {})), extra)


def read_remark(id: str, file: str, raw: Raw) -> Remark:
    """The record of a caution, a clash, a note or an answer."""
    return Remark(
        id=id,
        file=file,
        kind=raw["kind"],
        of=_strings(raw, "of"),
        when=_text(raw, "when") if "when" in raw else None,
        text=_text(raw, "text"),
        source=_text(raw, "source"),
        rank=int(raw.get("rank", 50)),
        choices=_strings(raw, "choices"),
        drop=_strings(raw, "drop"),
        asked=_strings(raw, "asked"),
    )
