"""The build card: what to blow, which pairs to tie, and the line cluster by cluster in sections that can be carried.

Clusters are numbered from 1 at one end. A cluster's balloons are named clockwise, looking along the line from number
1: from the top right (on a table) or front right, or, in a spiral, from the place that turns with the line.
"""

from collections.abc import Iterator, Sequence
from math import ceil

from assistant.sheets.wanted import number
from rules import Estimate
from rules.buying import colour_shares
from rules.inflation import strokes_for
from rules.layout_plan import Balloon, Filler, Layout, angle, pocket_angle
from rules.line import line_of
from rules.record import record

QUAD = 4
LABELS = {1: ("",), 2: ("S", "L"), 3: ("S", "M", "L"), 4: ("S", "M", "L", "XL"), 5: ("XS", "S", "M", "L", "XL")}
ALL_ROUND = 180.0


@record
class Blow:
    """Balloons of one size and colour for one piece: label of the size, inches, strokes or None, and how many.

    `loose` of them lie in loose pairs; held_in is the nominal size where bigger balloons are held to the size of the
    rest, else 0.
    """

    label: str
    inflated_in: float
    strokes: float | None
    colour: str | None
    count: int
    loose: int
    held_in: float


@record
class Tie:
    """Pairs to tie neck to neck for the clusters: size label, the two colours, how many pairs."""

    label: str
    colours: tuple[str | None, str | None]
    count: int


@record
class Run:
    """Clusters `first` to `last` (from 1), all alike: size label and colour of each balloon, clockwise."""

    first: int
    last: int
    labels: tuple[str, ...]
    colours: tuple[str | None, ...]


@record
class Loose:
    """A loose pair: its first balloon lies in cluster `cluster` (from 1), its second in `second`, at one side.

    side: "left" or "right"; joins: the pair spans two sections, so it goes in when they are joined.
    """

    cluster: int
    second: int
    side: str
    label: str
    colours: tuple[str | None, ...]
    joins: bool


@record
class Section:
    """Clusters to string in one go: its number from 1, first and last cluster, length in inches, runs, pairs, stems."""

    number: int
    strand: int
    first: int
    last: int
    length_in: float
    runs: tuple[Run, ...]
    loose: tuple[Loose, ...]
    stems: tuple[tuple[int, str], ...]


@record
class Card:
    """The build card of one of `count` pieces alike."""

    kind: str
    count: int
    strands: int
    layout: Layout
    blows: tuple[Blow, ...]
    ties: tuple[Tie, ...]
    sections: tuple[Section, ...]
    tail_in: float

    @property
    def n(self) -> int:
        """Balloons in a cluster."""
        return len(self.layout.clusters[0])


def build_card(estimate: Estimate, piece: int) -> Card | None:
    """The card of a piece; None where it has no line of clusters."""
    layout = line_of(estimate, piece)
    if layout is None:
        return None
    labels = _labels(layout)
    strands = max(1, round(number(estimate, piece, "strands")))
    return Card(
        kind=estimate.job.pieces[piece].kind,
        count=max(1, round(number(estimate, piece, "count"))),
        strands=strands,
        layout=layout,
        blows=_blows(estimate, piece, layout, labels),
        ties=_ties(layout, labels),
        sections=tuple(_sections(estimate, piece, layout, labels, strands)),
        tail_in=number(estimate, None, "join_tail"),
    )


def _labels(layout: Layout) -> dict[float, str]:
    """A letter for each inflated size, none where there is but one."""
    sizes = sorted({balloon.size_in for balloon in layout.counts})
    names = LABELS.get(len(sizes)) or tuple(f"{size:.1f} in" for size in sizes)
    return dict(zip(sizes, names, strict=True))


def _blows(estimate: Estimate, piece: int, layout: Layout, labels: dict[float, str]) -> tuple[Blow, ...]:
    loose: dict[Balloon, int] = {}
    for filler in layout.fillers:
        loose[filler.balloon] = loose.get(filler.balloon, 0) + 1
    by_strokes = estimate.step("by_strokes", piece)
    litres = number(estimate, None, "stroke") if by_strokes is not None and by_strokes.value else 0.0
    usual: dict[float, float] = {}
    for part in estimate.parts(piece):
        usual[part.inflated_in] = min(part.size_in, usual.get(part.inflated_in, part.size_in))
    found = []
    for balloon, count in layout.counts.items():
        strokes = round(2 * strokes_for(balloon.size_in, litres)) / 2 if litres else None
        held = balloon.nominal_in if balloon.nominal_in > usual.get(balloon.size_in, balloon.nominal_in) else 0.0
        label = labels[balloon.size_in]
        found.append(Blow(label, balloon.size_in, strokes, balloon.colour, count, loose.get(balloon, 0), held))
    colours = list(colour_shares(estimate, piece))
    return tuple(sorted(found, key=lambda blow: (-blow.inflated_in, blow.held_in, colours.index(blow.colour))))


def _ties(layout: Layout, labels: dict[float, str]) -> tuple[Tie, ...]:
    """Balloons that lie across from one another are tied as a pair; two pairs twisted crosswise make a quad."""
    found: dict[tuple[str, tuple[str | None, str | None]], int] = {}
    for cluster in layout.clusters:
        half = len(cluster) // 2
        for one, other in zip(cluster[:half], cluster[half : 2 * half], strict=True):
            first, second = sorted((one, other), key=lambda balloon: (-balloon.size_in, balloon.colour or ""))
            label = "+".join(filter(None, dict.fromkeys((labels[first.size_in], labels[second.size_in]))))
            key = label, (first.colour, second.colour)
            found[key] = found.get(key, 0) + 1
    ranked = sorted(found.items(), key=lambda item: (item[0][0], -item[1], str(item[0][1])))
    return tuple(Tie(label, colours, count) for (label, colours), count in ranked)


def _sections(
    estimate: Estimate, piece: int, layout: Layout, labels: dict[float, str], strands: int
) -> Iterator[Section]:
    clusters = len(layout.clusters)
    step = number(estimate, piece, "decor_length") * strands / clusters or layout.pitch_in
    longest = number(estimate, None, "section_length")
    numbered = 0
    for strand in range(strands):
        start, end = clusters * strand // strands, clusters * (strand + 1) // strands
        parts = max(1, ceil((end - start) * step / longest - 0.05)) if longest else 1
        for part in range(parts):
            first = start + (end - start) * part // parts
            last = start + (end - start) * (part + 1) // parts
            if first == last:
                continue
            numbered += 1
            yield Section(
                number=numbered,
                strand=strand + 1,
                first=first + 1,
                last=last,
                length_in=(last - first) * step,
                runs=tuple(_runs(layout, labels, first, last)),
                loose=tuple(_loose(layout, labels, first, last)),
                stems=tuple((s.cluster + 1, _side(90.0 * s.side)) for s in layout.stems if first <= s.cluster < last),
            )


def _runs(layout: Layout, labels: dict[float, str], first: int, last: int) -> Iterator[Run]:
    """Neighbouring clusters that read alike, as one run."""
    begun, said = first, read_off(layout, first)
    for k in range(first + 1, last + 1):
        row = read_off(layout, k) if k < last else ()
        if row != said:
            yield Run(begun + 1, k, tuple(labels[b.size_in] for b in said), tuple(b.colour for b in said))
            begun, said = k, row


def read_off(layout: Layout, cluster: int) -> tuple[Balloon, ...]:
    """A cluster's balloons as a helper reads them, clockwise."""
    row = layout.clusters[cluster]
    if layout.style == "spiral":
        return row
    turned = sorted(range(len(row)), key=lambda place: angle(cluster, place, len(row)))
    return tuple(row[place] for place in turned)


def _loose(layout: Layout, labels: dict[float, str], first: int, last: int) -> Iterator[Loose]:
    pairs: dict[int, list[Filler]] = {}
    for filler in layout.fillers:
        pairs.setdefault(filler.pair, []).append(filler)
    for fillers in sorted(pairs.values(), key=lambda two: two[0].cluster):
        one, other = fillers[0], fillers[-1]
        if first <= one.cluster < last:
            n = len(layout.clusters[one.cluster])
            yield Loose(
                cluster=one.cluster + 1,
                second=other.cluster + 1,
                side=_side(pocket_angle(one.cluster, one.place, n)),
                label=_named(fillers, labels),
                colours=tuple(filler.balloon.colour for filler in fillers),
                joins=other.cluster >= last,
            )


def _named(fillers: Sequence[Filler], labels: dict[float, str]) -> str:
    return "+".join(filter(None, dict.fromkeys(labels[filler.balloon.size_in] for filler in fillers)))


def _side(degrees: float) -> str:
    return "right" if degrees % (2 * ALL_ROUND) < ALL_ROUND else "left"
