"""Which facts must still be asked for before another can be worked out."""

from rules.compiled import compile_node
from rules.formula import parse
from rules.nodes import If, Known, Name, Node, OverPieces, children
from rules.world import ARITHMETIC_TROUBLE, Absent, Reader, World


def missing_for(world: World, ids: tuple[str, ...]) -> list[str]:
    """The facts without a value, a rule or a default that `ids` rest on, in the order they are come upon."""
    search = _Search(world)
    for id in ids:
        search.fact(id)
    return list(search.found)


class _Search:
    """Follows the way the world would go, but past the first gap, so that all gaps are found in one go."""

    def __init__(self, world: World) -> None:
        self.world = world
        self.found: dict[str, None] = {}
        self.seen: set[str] = set()

    def fact(self, id: str) -> None:
        if id in self.seen or self.world.find(id) is not None:
            return
        self.seen.add(id)
        fact = self.world.book.fact(id, self.world.kind)
        if fact is None or id in self.world.given:
            return
        for rule in fact.rules:
            when = parse(rule.when) if rule.when is not None else None
            before = len(self.found)
            if when is None or self._holds(when):
                self.formula(parse(rule.text))
                return
            if len(self.found) > before:
                return
        self.found[id] = None

    def formula(self, node: Node) -> None:
        match node:
            case Name(id):
                self.fact(id)
            case Known() | OverPieces():
                return
            case If(test, then, other):
                before = len(self.found)
                holds = self._holds(test)
                if len(self.found) == before:
                    self.formula(then if holds else other)
            case _:
                for child in children(node):
                    self.formula(child)

    def _holds(self, test: Node) -> bool:
        """Whether the condition holds; a gap in it is added to those found."""
        try:
            return bool(compile_node(test, "missing")(Reader(self.world, {}, {})))
        except Absent as absent:
            self.fact(absent.id)
            return False
        except ARITHMETIC_TROUBLE:
            return False
