"""The planned line of a piece of an estimate: its clusters and loose balloons by size and colour, as bought."""

from rules.apportion import largest_remainder
from rules.buying import colour_shares
from rules.engine import Estimate
from rules.layout_plan import STYLES, Layout, Sort
from rules.pattern import plan
from rules.values import look_up

QUAD, PAIR = 4, 2


def line_of(estimate: Estimate, piece: int, seed: int = 0) -> Layout | None:
    """The plan of one of the pieces alike; None where the piece has no line of clusters or is not known enough.

    The pieces' balloons are shared out to one piece by largest remainder; the smallest of them lie loose, in pairs, and
    the others are in clusters. What stands apart from the line, like a column's topper, is left out.
    """
    clusters, pairs = _whole(estimate, "quads_each", piece), _whole(estimate, "loose_pairs_each", piece)
    parts = sorted((part for part in estimate.parts(piece) if part.pairs), key=lambda part: -part.inflated_in)
    pitch = estimate.step("cluster_pitch", piece)
    if not clusters or not parts or pitch is None or estimate.step("decor_length", piece) is None:
        return None
    n = _whole(estimate, "cluster_size", piece) or QUAD
    room = clusters * n
    counts = largest_remainder(room + PAIR * pairs, [part.count for part in parts])
    body, loose = [], []
    for part, count in zip(parts, counts, strict=True):
        inside = min(count, room)
        room -= inside
        body.append(Sort(part.inflated_in, inside, part.size_in))
        loose.append(Sort(part.inflated_in, count - inside, part.size_in))
    pattern = estimate.step("pattern", piece)
    stems = _whole(estimate, "stems", piece) // max(1, _whole(estimate, "count", piece))
    return plan(
        clusters,
        body,
        list(colour_shares(estimate, piece).items()),
        loose,
        next((style for style in STYLES if pattern is not None and style == pattern.value), "organic"),
        seed,
        n=n,
        stems=stems,
        pitch_in=float(pitch.value),
        within_in=_within(estimate, sum(sort.size_in * sort.count for sort in body) / (clusters * n)),
    )


def _whole(estimate: Estimate, id: str, piece: int) -> int:
    step = estimate.step(id, piece)
    return round(step.value) if step is not None else 0


def _within(estimate: Estimate, size_in: float) -> float:
    """How closely balloons of a size are sized, in."""
    step = estimate.step("sized_within")
    return float(look_up(step.value, size_in)) if step is not None else 0.125
