"""What a mention changes of one piece: facts set, taken away, stepped, exchanged."""

from typing import Any

from assistant.colours import exchanged, mixed, without
from assistant.state import HeardPiece, State
from grammar.reading import Mention
from grammar.vocabulary import Vocabulary

WHOLE = frozenset({"count", "balloons"})
EXCLUSIVE = (
    frozenset({"coverage", "coverage_fraction"}),
    frozenset({"markup", "margin"}),
)


class Changes:
    """Carries out what is said of a piece."""

    def __init__(self, state: State, vocabulary: Vocabulary) -> None:
        self.state = state
        self.vocabulary = vocabulary
        self.missed: list[Mention] = []
        self.chosen = False
        self.refused = False
        self.too_many: tuple[float, float] | None = None
        self.unclear: Mention | None = None

    def _drop_piece(self, piece: HeardPiece) -> None:
        self.state.pieces = [p for p in self.state.pieces if p is not piece]
        self.state.focus = len(self.state.pieces) - 1 if self.state.pieces else None

    def _change(self, piece: HeardPiece, mention: Mention) -> None:
        facts = piece.facts
        swapped = self._exchange(facts, mention)
        for fact, value in mention.facts.items():
            if swapped and fact == "colours":
                continue
            self._exclude(facts, fact)
            if fact == "sizes" and mention.extend:
                value = [*facts.get("sizes", []), *(s for s in value if s not in facts.get("sizes", []))]
            if fact == "colours":
                value = mixed(facts.get("colours", []), value, extend=mention.extend)
            facts[fact] = value
            self._follow(facts, fact)
        for fact, value in mention.drop:
            if not (swapped and fact == "colours"):
                self._drop(facts, fact, value)
        for step in mention.steps:
            old = facts.get(step.fact)
            if old is None:
                if step.fact == "count" and step.how == "plus":
                    words = self.vocabulary.kinds.get(piece.kind)
                    counted = words is None or "count" in words.needs
                    old = 0 if counted or not any(p is piece for p in self.state.pieces) else 1  # an arch is one
                else:
                    self.missed.append(mention)
                    continue
            new = old * step.by if step.how == "times" else old + step.by
            new = int(new) if new == int(new) else round(new, 6)
            standing = any(p is piece for p in self.state.pieces)
            if step.fact in WHOLE and new != int(new):
                self.missed.append(mention)  # no part of a balloon
                continue
            if step.fact == "count" and (new < 0 or (new == 0 and not standing)):
                self.too_many = (step.by, old)
            elif step.fact == "count" and new == 0:
                self._drop_piece(piece)
            else:
                facts[step.fact] = new

    def _exchange(self, facts: dict[str, Any], mention: Mention) -> bool:
        """ "swap ivory for white": one colour in place of another that has a share, which stays; whether it was so."""
        held, said = facts.get("colours", []), mention.facts.get("colours", [])
        gone = [value for fact, value in mention.drop if fact == "colours"]
        shared = any(colour.get("share") for colour in held)
        new = len(said) == 1 and said[0].keys() == {"name"} and said[0]["name"] not in {c["name"] for c in held}
        if not (mention.extend and shared and new and len(gone) == 1 and gone[0]):
            return False
        facts["colours"] = exchanged(held, said, gone[0])
        return True

    def _exclude(self, facts: dict[str, Any], fact: str) -> None:
        for group in EXCLUSIVE:
            if fact in group:
                for other in group - {fact}:
                    facts.pop(other, None)

    def _follow(self, facts: dict[str, Any], fact: str) -> None:
        """A table that turns round has a diameter, one that turns square or long has a length."""
        if fact == "table_shape":
            round_now = facts[fact] == "round"
            have, want = ("table_length", "table_diameter") if round_now else ("table_diameter", "table_length")
            if have in facts and want not in facts:
                facts[want] = facts.pop(have)
        elif fact == "table_length" and "table_diameter" in facts:
            facts.pop("table_diameter")
            if facts.get("table_shape") == "round":
                facts.pop("table_shape")
        elif fact == "table_diameter":
            facts.pop("table_length", None)

    def _drop(self, facts: dict[str, Any], fact: str, value: Any) -> None:
        if fact == "colours" and value is not None:
            facts["colours"] = without(facts.get("colours", []), value)
        elif fact == "sizes" and value is not None:
            facts["sizes"] = [s for s in facts.get("sizes", []) if s != value]
        elif value is None or facts.get(fact) == value:
            facts.pop(fact, None)
        if facts.get(fact) == []:
            facts.pop(fact)
