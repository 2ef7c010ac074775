"""Words as speech recognition writes them ("ten feat", "an arc"), where neighbours show which is meant.

Which word may be which, and beside what, is in words/homophones.toml.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache

from grammar.tokens.number_words import magnitude
from grammar.tokens.scan import Token
from grammar.word_files import load_words

Tells = Callable[[Sequence[Token], int], set[str]]
LINKS = frozenset({"and", ",", "&", "in"})  # between colours


@cache
def _likes() -> dict[str, tuple[dict[str, str], ...]]:
    table: dict[str, tuple[dict[str, str], ...]] = {}
    for row in load_words("homophones.toml")["likes"]:
        table[row["said"]] = (*table.get(row["said"], ()), row)
    return table


def sounds(tokens: list[Token], tells: Tells) -> list[Token]:
    """The tokens with such words spelt plainly; `tells` gives the types of the words that begin at a token."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        for row in _likes().get(token.lower, ()):
            if _stands(out, at, row, tells):
                out[at] = replace(token, lower=row["means"])
                break
    return out


def _stands(tokens: list[Token], at: int, row: dict[str, str], tells: Tells) -> bool:
    if "with" in row and all(token.text.lower() != row["with"] for token in tokens):
        return False
    before = "before" not in row or any(_before(tokens, at, place, tells) for place in row["before"].split())
    behind = "behind" not in row or any(_behind(tokens, at, place, tells) for place in row["behind"].split())
    return before and behind


def _before(tokens: list[Token], at: int, place: str, tells: Tells) -> bool:
    if at == 0:
        return False
    token = tokens[at - 1]
    if place == "number":
        return magnitude(token) is not None
    if place == "size":
        return "UNIT" in tells(tokens, at - 1) and at > 1 and magnitude(tokens[at - 2]) is not None
    if place == "colour":
        near = at - 1
        while near > 0 and tokens[near].lower in LINKS:
            near -= 1
        return "COLOUR" in tells(tokens, near)
    return token.lower == place.strip("'")


def _behind(tokens: list[Token], at: int, place: str, tells: Tells) -> bool:
    after = at + 1
    if after >= len(tokens):
        return place == "end"
    if place == "colour":
        while after + 1 < len(tokens) and tokens[after].lower in LINKS:
            after += 1
        return "COLOUR" in tells(tokens, after)
    if place == "number":
        return magnitude(tokens[after]) is not None
    if place == "thing":
        return bool({"TABLE", "SHAPE", "PIECE"} & tells(tokens, after))
    if place == "size-number":
        number = magnitude(tokens[after]) is not None
        return number and after + 1 < len(tokens) and "UNIT" in tells(tokens, after + 1)
    return tokens[after].lower == place.strip("'")
