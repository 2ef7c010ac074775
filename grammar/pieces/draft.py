"""A mention while it is being put together."""

from dataclasses import dataclass, field
from typing import Any

from grammar.phrases import Phrase
from grammar.reading import Doubt, Mention, Step
from grammar.vocabulary import FactWords


@dataclass(slots=True)
class Draft:
    """One piece of the turn; `on_table` tells what a bare size belongs to."""

    kind: str | None = None
    new: bool = False
    which: str = "it"
    removed: bool = False
    instead: bool = False
    like: str = ""
    part_of: float | None = None
    extend: bool = False
    called: str = ""  # "outside", "biggest": what one of several is spoken of as
    several: bool = False
    on_table: bool = False
    named: bool = False
    facts: dict[str, Any] = field(default_factory=dict)
    drop: list[tuple[str, Any]] = field(default_factory=list)
    steps: list[Step] = field(default_factory=list)
    colours: list[dict[str, Any]] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    article: bool = False
    joined: bool = False
    apart: bool = False  # an exception to what is said of the others
    rows: float = 0.0
    said: dict[str, Phrase] = field(default_factory=dict)
    singular: bool = False
    options: dict[str, list[Any]] = field(default_factory=dict)
    doubts: list[Doubt] = field(default_factory=list)

    def mention(self) -> Mention:
        """The finished mention."""
        facts = dict(self.facts)
        if self.colours:
            facts["colours"] = finish_shares(self.colours)
        return Mention(
            kind=self.kind,
            new=self.new,
            which=self.which,
            removed=self.removed,
            instead=self.instead,
            like=self.like,  # type: ignore[arg-type]
            part_of=self.part_of,
            extend=self.extend,
            called=self.called,
            several=self.several,
            options=self.options,
            facts=facts,
            drop=self.drop,
            steps=self.steps,
            words=" ".join(self.words),
        )

    @property
    def undressed(self) -> bool:
        """Whether nothing but its number and sizes was said of it, so that what is said of all may be meant for it."""
        return not (set(self.facts) & {"foliage", "style", "coverage", "coverage_fraction", "gas", "sizes"})

    @property
    def empty(self) -> bool:
        """Whether nothing at all was said of it."""
        said = self.facts or self.drop or self.steps or self.colours or self.removed or self.like or self.options
        return not (said or self.named or self.which != "it")


def finish_shares(colours: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Colours with "the rest" worked out, "parts" turned to shares, and repeats joined."""
    out: list[dict[str, Any]] = []
    parts = [c["parts"] for c in colours if c.get("parts")]
    for colour in colours:
        share = colour.get("share")
        if colour.get("parts") and len(parts) == len(colours):
            share = colour["parts"] / sum(parts)
        entry = {"name": colour["name"], "share": share, "rest": colour.get("rest", False)}
        old = next((c for c in out if c["name"] == entry["name"]), None)
        if old is None:
            out.append(entry)
        elif share is not None:
            old["share"] = share
        elif entry["rest"]:
            old["rest"] = True
    if sum(c["share"] or 0 for c in out) > 1.005:
        return [{"name": c["name"]} for c in out]
    given = sum(c["share"] for c in out if c["share"] is not None)
    rest = [c for c in out if c["rest"] and c["share"] is None]
    open_ones = [c for c in out if c["share"] is None]
    if rest and given < 1:
        for colour in rest:
            colour["share"] = round((1 - given) / len(rest), 6)
    elif given and len(open_ones) == 1 and len(out) > 1 and given < 1:
        open_ones[0]["share"] = round(1 - given, 6)
    return [{"name": c["name"], "share": c["share"]} if c["share"] is not None else {"name": c["name"]} for c in out]


def outside(fact: FactWords, value: Any) -> bool:
    """Whether a value, or either end of a range, is beyond what is sane for the fact."""
    ends = value if isinstance(value, (list, tuple)) else (value,)
    return any(isinstance(v, (int, float)) and not isinstance(v, bool) and not fact.fits(v) for v in ends)
