"""Mixed sizes: which size is the body of a piece, how many balloons are of each size, how big each is blown.

Sizes are nominal balloon sizes in inches, given in ascending order; a place in that order counts from 1. Balloons
fall into four classes by nominal size: small (up to 7 in), middle (up to 13 in), large (up to 20 in) and giant. The
body is the greatest size of the middle class or, where there is none, of the large, small or giant one. Impossible
input raises ValueError with one plain sentence. Source: common practice, no published source.
"""

from bisect import bisect_left
from collections.abc import Sequence

from rules.domain import require_positive, require_whole, require_within

SMALL, MIDDLE, LARGE, GIANT = range(4)
_TOPS = (7.0, 13.0, 20.0)
_BODY_ORDER = (MIDDLE, LARGE, SMALL, GIANT)


def size_at(sizes: Sequence[float], place: float) -> float:
    """Return the size at a place, in; beyond the last it is the last; place whole, 1 or more."""
    require_whole("place among the sizes", place, 1)
    _require_sizes(sizes)
    return sizes[min(int(place), len(sizes)) - 1]


def body_size(sizes: Sequence[float]) -> float:
    """Return the size that the piece is mainly made of, in."""
    return max(_body(sizes))


def share_up_to(sizes: Sequence[float], place: float, fillers: float, large: float, giant: float) -> float:
    """Return the share by count of the balloons at the places up to and with `place`, 0 to 1.

    fillers, large, giant: shares that sizes below the body, large and giant sizes above it take where there are any, 0
    or more and together below 1; the body has the rest. The sizes of one class share alike.
    """
    require_whole("place among the sizes", place, 0)
    require_within("share of small and big balloons together", fillers + large + giant, 0.0, 1.0)
    body = _class(_body(sizes)[0])
    groups = [_class(size) for size in sizes]
    below = sum(kind < body for kind in groups)
    above = {kind: share for kind, share in ((LARGE, large), (GIANT, giant)) if kind > body and kind in groups}
    taken = (fillers if below else 0.0) + sum(above.values())
    found = 0.0
    for kind in groups[: int(place)]:
        if kind < body:
            found += fillers / below
        else:
            found += above.get(kind, 1.0 - taken) / groups.count(kind)
    return min(found, 1.0)


def filler_part(sizes: Sequence[float], fillers: float) -> float:
    """Return the share by count of balloons below the body's class: `fillers`, or 0 where no size is that small."""
    body = _class(_body(sizes)[0])
    return fillers if any(_class(size) < body for size in sizes) else 0.0


def alike_up_to(sizes: Sequence[float], place: float) -> float:
    """Return the share of the balloons at the places up to and with `place` where all sizes have alike, 0 to 1."""
    require_whole("place among the sizes", place, 0)
    _require_sizes(sizes)
    return min(place / len(sizes), 1.0)


def blown_size(sizes: Sequence[float], place: float, first: float, last: float, usual: float) -> float:
    """Return what the size at a place is blown to, in, never above its nominal size.

    first, last: the range that was said, in. One size alone takes the middle of it. Of several, the smallest take
    first and the greatest last, the others by their nominal size; where first and last are one, the body takes it
    and the others keep their usual size.
    """
    require_positive("inflated size", first)
    size = size_at(sizes, place)
    if len(sizes) == 1:
        blown = (first + last) / 2.0
    elif first == last:
        blown = first if size == body_size(sizes) else usual
    else:
        blown = first + (last - first) * (size - sizes[0]) / (sizes[-1] - sizes[0])
    return min(blown, size)


def _class(size: float) -> int:
    return bisect_left(_TOPS, size)


def _body(sizes: Sequence[float]) -> list[float]:
    """The sizes of the class that the body comes from."""
    _require_sizes(sizes)
    groups = {_class(size) for size in sizes}
    body = next(kind for kind in _BODY_ORDER if kind in groups)
    return [size for size in sizes if _class(size) == body]


def _require_sizes(sizes: Sequence[float]) -> None:
    if not sizes:
        raise ValueError("There is no balloon size; name at least one.")
