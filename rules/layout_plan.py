"""What a planned line of clusters holds: each balloon's size and colour, fillers, foliage, and how good the plan is.

The line runs along x; cluster k (from 0) of n balloons holds place j (from 0) at the angle `angle(k, j, n)`, in
degrees from straight up (on a table) or straight out (on a wall or frame), clockwise as seen along the line. Each next
cluster is turned by half a step, so it nests in the one before. A filler lies in the pocket between places j and j + 1.
"""

from typing import Literal

from rules.record import record

Style = Literal["organic", "spiral", "stripes", "rings"]
STYLES: tuple[Style, ...] = ("organic", "spiral", "stripes", "rings")


@record
class Sort:
    """Balloons to place: inflated diameter and nominal size in inches (0: not told apart), and how many."""

    size_in: float
    count: int
    nominal_in: float = 0.0


@record
class Balloon:
    """One balloon: inflated diameter in inches, colour (None where none was said), nominal size in inches."""

    size_in: float
    colour: str | None
    nominal_in: float = 0.0


@record
class Filler:
    """A balloon of a loose pair: it lies in the pocket of `cluster` between its places `place` and `place` + 1."""

    balloon: Balloon
    pair: int
    cluster: int
    place: int


@record
class Stem:
    """Foliage tucked in beside cluster `cluster`, facing out to `side`: -1 left, 1 right of the line."""

    cluster: int
    side: int


@record
class Measures:
    """How good a plan is; shares 0 to 1, lengths in inches, touches between clusters' balloons (no fillers).

    same_share: touching neighbours of one colour; least_share: no plan can have fewer; blind_share: picking blind.
    bow_in: the sideways bow that the sizes themselves make, first order; wander_in: two standard deviations of the bow
    over `stretch_in` of line where balloons are sized within `within_in` (two standard deviations); drift: how far
    any colour's running count strays from its share, in balloons; mixed_share: clusters of more than one size;
    change_share: neighbouring clusters that differ in sizes; filler_same, filler_touches: fillers against the balloons
    they lie on.
    """

    touches: int
    same: int
    least_share: float
    blind_share: float
    bow_in: float
    wander_in: float
    stretch_in: float
    within_in: float
    drift: float
    mixed_share: float
    change_share: float
    filler_touches: int
    filler_same: int

    @property
    def same_share(self) -> float:
        """The share of touching neighbours that have one colour."""
        return self.same / self.touches if self.touches else 0.0


@record
class Layout:
    """A planned line: clusters in order, each its balloons in order of place, fillers, foliage and the measures."""

    clusters: tuple[tuple[Balloon, ...], ...]
    fillers: tuple[Filler, ...]
    stems: tuple[Stem, ...]
    pitch_in: float
    style: Style
    seed: int
    measures: Measures

    @property
    def counts(self) -> dict[Balloon, int]:
        """How many of each balloon, clusters and fillers together, in order of first use."""
        found: dict[Balloon, int] = {}
        for balloon in (*(b for cluster in self.clusters for b in cluster), *(f.balloon for f in self.fillers)):
            found[balloon] = found.get(balloon, 0) + 1
        return found


def angle(cluster: int, place: int, n: int = 4) -> float:
    """The angle of a place in degrees, 0 to 360: for four, 22.5 + 45 k + 90 j."""
    step = 360.0 / n
    return (step / 4 + step / 2 * cluster + step * place) % 360.0


def pocket_angle(cluster: int, place: int, n: int = 4) -> float:
    """The angle of the pocket between places `place` and `place` + 1, in degrees, 0 to 360."""
    return (angle(cluster, place, n) + 180.0 / n) % 360.0
