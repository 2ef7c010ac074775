"""The trade's patterns by name: colours that wind round the line, lie along it, or ring it cluster by cluster.

spiral: each place keeps its colour from cluster to cluster; every cluster is turned half a step, so colours wind round.
stripes: the place shifts back at every second cluster, so each colour runs straight along the line.
rings: clusters of one colour each, in turn.
Counts are kept exactly: where a colour runs out, the next one goes on in its lane. Source: common practice, no
published source.
"""

from collections.abc import Sequence

from rules.layout_plan import Style


def patterned(style: Style, places: Sequence[int], counts: Sequence[int], n: int) -> dict[int, int]:
    """The colour of each balloon of one size: `places` (n k + j, ascending), counts by colour that add up to them."""
    if style == "rings":
        ranked = _rings(counts, n)
        return dict(zip(places, ranked, strict=True))
    shift = 0 if style == "spiral" else 1
    lanes = sorted(places, key=lambda i: ((i % n + shift * (i // n // 2)) % n, i))
    colours = [colour for colour, count in enumerate(counts) for _ in range(count)]
    return dict(zip(lanes, colours, strict=True))


def _rings(counts: Sequence[int], n: int) -> list[int]:
    """Colours in order of place: whole rings in turn at fixed distances, what is over at the end."""
    rings: list[tuple[float, int]] = []
    for colour, count in enumerate(counts):
        whole = count // n
        rings += [((i + 0.5) / whole, colour) for i in range(whole)]
    over = [colour for colour, count in enumerate(counts) for _ in range(count % n)]
    return [*(colour for _, colour in sorted(rings) for _ in range(n)), *over]
