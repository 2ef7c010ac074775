"""What goes by its colour: "without the gold ones", "lose the white balloons"."""

from collections.abc import Sequence
from typing import Any

from grammar.pieces.draft import Draft
from grammar.pieces.ground import Ground
from grammar.pieces.heads import Head, Role, is_size


class Without(Ground):
    """A colour that is taken away, said as the things of that colour."""

    def _colour_goes(self, head: Head) -> bool:
        """ "without the gold ones": that colour of a piece of several, else the piece that is all in it."""
        if head.kind != "ones" or head.role not in {Role.DENIED, Role.REMOVED}:
            return False
        run = self.phrases[head.first : head.at]
        named = [str(p.value) for p in run if p.kind == "colour"]
        held = [colour["name"] for colour in self.context.values.get("colours", ())]
        if not named or not {*named} <= self.context.colours:
            return False
        self.skip |= set(range(head.first, head.at + 1))
        self.changing = True
        if {*named} < {*held}:
            self.loose.drop += [("colours", name) for name in named]
            self.topic = ("colours", None)
            return True
        for name in named:
            having = [row for row in map(_names, self.context.held) if name in row]
            if having == [[name]] and len(self.context.held) > 1:
                self.drafts.append(Draft(which=f"colour {name}", named=True, removed=True))
            else:
                self.drafts.append(Draft(which=f"colour {name}", named=True, drop=[("colours", name)]))
        return True

    def _size_goes(self, head: Head) -> bool:
        """ "get rid of the 17 inch ones": balloons of that size."""
        if head.kind != "ones" or head.role not in {Role.DENIED, Role.REMOVED}:
            return False
        run = self.phrases[head.first : head.at]
        said = [p.amounts[0].high if p.amounts else p.value for p in run if p.kind == "nominals" or is_size(p)]
        sizes = [size.number for size in said if self.slots.is_nominal(size)]
        if not self._sizes_go(sizes):
            return False
        self.skip |= set(range(head.first, head.at + 1))
        return True

    def _sizes_go(self, sizes: Sequence[float]) -> bool:
        """Take balloons of some sizes away, where the one thing in hand is made of several."""
        held = self.context.values.get("sizes", ())
        if not sizes or not {*sizes} < {*held} or (self.context.count or 1) > 1:
            return False
        self.loose.drop += [("sizes", size) for size in sizes]
        self.changing = True
        return True

    def _other_colours_stay(self, number: float) -> bool:
        """ "just the other two", once a colour was taken away: as many as are left, so nothing changes."""
        left = [c for c in self.context.colours if ("colours", c) not in self.current.drop]
        dropped = any(fact == "colours" for fact, _ in self.current.drop)
        topic = dropped or self.context.topic == "colours"
        stays = topic and len(left) == number
        self.changing = self.changing or stays
        return stays


def _names(facts: dict[str, Any]) -> list[str]:
    """The colours of a piece."""
    return [colour["name"] for colour in facts.get("colours", ())]
