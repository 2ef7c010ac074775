"""Balloons at hand, and what of them a job can use: as many as can be, what is named most closely first."""

from collections.abc import Iterable

from rules.record import record

Key = tuple[float, str | None]  # nominal size in inches, colour (None where none was said)
Link = tuple[int, Key]  # the place of an item in the list, and where it is used


@record
class Stock:
    """Balloons at hand: how many, their nominal size in inches and colour, either None where it was not said."""

    count: int
    size_in: float | None = None
    colour: str | None = None

    def serves(self, key: Key) -> bool:
        """Whether they may be used where this size and colour is wanted; where no colour is, any will do."""
        size, colour = key
        return self.size_in in (None, size) and (self.colour is None or colour in (None, self.colour))


def draw(wanted: dict[Key, int], stock: Iterable[Stock]) -> tuple[dict[Key, int], list[Stock]]:
    """How much of each (size, colour) wanted comes from the stock, and what stays of it.

    As many as possible in all; of equal choices what is named most closely goes first. Source: the greatest flow by
    augmenting paths (Ford and Fulkerson).
    """
    items = sorted(stock, key=lambda item: (item.size_in is None) + (item.colour is None))
    flow: dict[Link, int] = {}
    left = [item.count for item in items]
    room = dict(wanted)
    for place in range(len(items)):
        while left[place] and (path := _path(items, flow, room, place)):
            _push(path, flow, room, left)
    used = {key: number - room[key] for key, number in wanted.items()}
    stays = [Stock(rest, item.size_in, item.colour) for rest, item in zip(left, items, strict=True) if rest]
    return used, stays


def _path(items: list[Stock], flow: dict[Link, int], room: dict[Key, int], start: int) -> list[Link]:
    """The shortest chain from an item to a place with room: item, place, the item that gives way there, and so on."""
    chains: list[list[Link]] = [[]]
    heads, seen = [start], {start}
    while chains:
        chain, item = chains.pop(0), heads.pop(0)
        for key, free in room.items():
            if not items[item].serves(key):
                continue
            longer = [*chain, (item, key)]
            if free > 0:
                return longer
            for other in [j for (j, held), n in flow.items() if held == key and n and j not in seen]:
                seen.add(other)
                chains.append(longer)
                heads.append(other)
    return []


def _push(path: list[Link], flow: dict[Link, int], room: dict[Key, int], left: list[int]) -> None:
    """As many along the chain as its narrowest link lets through."""
    given = [flow[path[k + 1][0], path[k][1]] for k in range(len(path) - 1)]
    number = min(left[path[0][0]], room[path[-1][1]], *given) if given else min(left[path[0][0]], room[path[-1][1]])
    for k, (item, key) in enumerate(path):
        flow[item, key] = flow.get((item, key), 0) + number
        if k + 1 < len(path):
            flow[path[k + 1][0], key] -= number
    left[path[0][0]] -= number
    room[path[-1][1]] -= number
