"""Plan a line of clusters: which size and colour goes where, so that colours don't clump and the line lies straight.

    layout = plan(20, [(4.28, 80)], [("navy", 0.4), ("gold", 0.3), ("white", 0.3)], [(3.4, 28)])

The same input and seed give the same layout everywhere.
"""

from collections.abc import Sequence
from itertools import pairwise
from random import Random

from rules.bend import bow, wander
from rules.classic import patterned
from rules.clusters import nested_pitch
from rules.dealing import colours_by_sort, deal_sizes
from rules.domain import require_whole
from rules.filling import fill_pockets, spread_stems
from rules.layout_plan import Balloon, Filler, Layout, Measures, Sort, Style
from rules.placing import place_colours
from rules.touch import blind_share, drift, least_same, same_touches, touching

QUAD = 4
STRETCH = 72.0  # inches of line over which the wander from sizing is told
WITHIN = 0.125  # inches that balloons are sized within (two standard deviations), by eye with a sizer

Sizes = Sequence[Sort | tuple[float, int]]
Colours = Sequence[tuple[str | None, float]]


def plan(
    clusters: int,
    sizes: Sizes,
    colours: Colours = ((None, 1.0),),
    fillers: Sizes = (),
    style: Style = "organic",
    seed: int = 0,
    *,
    n: int = QUAD,
    stems: int = 0,
    pitch_in: float | None = None,
    within_in: float = WITHIN,
) -> Layout:
    """Place so many clusters of n balloons, their colours, loose balloons and foliage.

    sizes: inflated inches and how many, n for each cluster in all; colours: name and share (any sum); fillers: loose
    balloons beside the clusters; pitch_in: from cluster to cluster, else nested and touching; within_in: how closely
    balloons are sized, in. Counts by size and colour are kept exactly. Raises ValueError with one plain sentence.
    """
    require_whole("number of clusters", clusters, 1)
    require_whole("number of balloons in a cluster", n, 2)
    require_whole("number of stems", stems, 0)
    body = [_sort(size) for size in sizes if _sort(size).count]
    loose = [_sort(size) for size in fillers if _sort(size).count]
    given = sum(sort.count for sort in body)
    if given != clusters * n:
        raise ValueError(f"{clusters} clusters of {n} take {clusters * n} balloons; sizes for {given} were given.")
    chance = Random(f"{seed}")  # noqa: S311  a plan, not a secret; seeded by text, it is the same on every machine
    counts = colours_by_sort([*body, *loose], [share for _, share in colours])
    names = [name for name, _ in colours]
    hues, placed = _place(clusters, body, counts[: len(body)], names, style, n, chance)
    spare = [
        (Balloon(sort.size_in, name, sort.nominal_in), count)
        for sort, row in zip(loose, counts[len(body) :], strict=True)
        for name, count in zip(names, row, strict=True)
        if count
    ]
    rows = tuple(tuple(placed[n * k : n * k + n]) for k in range(clusters))
    pockets = fill_pockets(rows, spare, chance)
    mean = sum(balloon.size_in for balloon in placed) / len(placed)
    pitch = pitch_in or nested_pitch(n, mean)
    measures = _measure(rows, hues, len(names), pockets, pitch, mean, within_in)
    return Layout(rows, tuple(pockets), tuple(spread_stems(clusters, stems)), pitch, style, seed, measures)


def _sort(size: Sort | tuple[float, int]) -> Sort:
    sort = size if isinstance(size, Sort) else Sort(*size)
    if sort.size_in <= 0 or sort.count < 0:
        raise ValueError("Each size needs inches above 0 and a count of at least 0.")
    return sort


def _place(
    clusters: int,
    body: Sequence[Sort],
    counts: Sequence[Sequence[int]],
    names: Sequence[str | None],
    style: Style,
    n: int,
    chance: Random,
) -> tuple[list[int], list[Balloon]]:
    """The colour by index, and the balloon, of each place.  Sorts blown to one size trade places freely."""
    inches = sorted({sort.size_in for sort in body})
    sorted_counts = list(zip(body, counts, strict=True))
    by_class = [
        [sum(row[hue] for sort, row in sorted_counts if sort.size_in == size) for hue in range(len(names))]
        for size in inches
    ]
    dealt = deal_sizes([sum(row) for row in by_class], n, chance, even=style != "organic")
    classes = [kind for cluster in dealt for kind in cluster]
    if style == "organic":
        hues = place_colours(classes, by_class, touching(clusters, n), n, chance)
    else:
        hues = [0] * len(classes)
        for kind, row in enumerate(by_class):
            places = [i for i, of in enumerate(classes) if of == kind]
            for i, hue in patterned(style, places, row, n).items():
                hues[i] = hue
    nominals = _nominals(body, counts, inches, classes, hues)
    looks = zip(classes, hues, nominals, strict=True)
    return hues, [Balloon(inches[kind], names[hue], nominal) for kind, hue, nominal in looks]


def _nominals(
    body: Sequence[Sort],
    counts: Sequence[Sequence[int]],
    inches: Sequence[float],
    classes: Sequence[int],
    hues: Sequence[int],
) -> list[float]:
    """The nominal size of each balloon: bigger ones held to the size of the rest are spread evenly among them."""
    found = [0.0] * len(classes)
    groups: dict[tuple[int, int], list[int]] = {}
    for i, key in enumerate(zip(classes, hues, strict=True)):
        groups.setdefault(key, []).append(i)
    for (kind, hue), places in groups.items():
        spread = sorted(
            ((i + 0.5) / row[hue], sort.nominal_in)
            for sort, row in zip(body, counts, strict=True)
            if sort.size_in == inches[kind]
            for i in range(row[hue])
        )
        for place, (_, nominal) in zip(places, spread, strict=True):
            found[place] = nominal
    return found


def _measure(
    rows: Sequence[Sequence[Balloon]],
    hues: Sequence[int],
    colours: int,
    pockets: Sequence[Filler],
    pitch: float,
    mean: float,
    within_in: float,
) -> Measures:
    n = len(rows[0])
    touches = touching(len(rows), n)
    all_touches = sum(map(len, touches)) // 2
    counts = [hues.count(hue) for hue in range(colours)]
    sizes = [[balloon.size_in for balloon in row] for row in rows]
    stretch = min(STRETCH, pitch * len(rows))
    kinds = [sorted(row) for row in sizes]
    lie_on = [(f.balloon, rows[f.cluster][m % n]) for f in pockets for m in (f.place, f.place + 1)]
    return Measures(
        touches=all_touches,
        same=same_touches(touches, hues),
        least_share=least_same(counts, len(rows), n) / all_touches,
        blind_share=blind_share(counts),
        bow_in=bow(sizes, pitch),
        wander_in=2 * wander(within_in / 2 / mean, pitch, max(1, round(stretch / pitch))),
        stretch_in=stretch,
        within_in=within_in,
        drift=drift(hues, counts, n),
        mixed_share=sum(row[0] != row[-1] for row in kinds) / len(rows),
        change_share=sum(a != b for a, b in pairwise(kinds)) / max(1, len(rows) - 1),
        filler_touches=len(lie_on),
        filler_same=sum(loose.colour == under.colour for loose, under in lie_on),
    )
