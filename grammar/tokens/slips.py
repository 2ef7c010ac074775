"""Slips that only their place gives away: "hold and white" for gold, "a 9 ft qrch", "sliver and purple".

A word that is known may be meant, so it is mended only in a row of colours; a strange one also behind "in" or a comma.
"""

from collections.abc import Sequence
from dataclasses import replace

from grammar.tokens.lexicon import Lexicon
from grammar.tokens.number_words import magnitude
from grammar.tokens.scan import Token
from grammar.tokens.sounds import Tells

SHORTEST = 4  # letters
LINKS = frozenset({"and", ",", "&"})  # between colours
LEADS = LINKS | {"in"}
ARTICLES = frozenset({"a", "an", "the", "one"})
THINGS = frozenset({"PIECE", "TABLE", "SHAPE"})


def in_place(tokens: list[Token], lexicon: Lexicon, tells: Tells) -> list[Token]:
    """The tokens with such slips mended; `tells` gives the types of the words that begin at a token."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        short = len(token.lower) < SHORTEST or token.kind != "word" or token.foreign
        if short or (token.text.istitle() and at):
            continue
        if not lexicon.near_names(token.lower) and lexicon.is_everyday(token.lower):
            continue
        if not tells(out, at):
            mended = _mended(out, at, lexicon, tells)
            out[at] = replace(token, lower=mended) if mended else token
    return out


def _mended(tokens: Sequence[Token], at: int, lexicon: Lexicon, tells: Tells) -> str | None:
    """The one name that fits where the word stands."""
    strange = not lexicon.is_everyday(tokens[at].lower)
    found = []
    for name in lexicon.near_names(tokens[at].lower):
        colour = lexicon.names[name] == "COLOUR"
        if (colour and _among_colours(tokens, at, strange, tells)) or (not colour and strange and _counted(tokens, at)):
            found.append(name)
    listed = at > 0 and tokens[at - 1].lower in LEADS  # "verde olivo" may be one name
    if not found and strange and listed and _among_colours(tokens, at, strange, tells):
        return lexicon.near_colour(tokens[at].lower)
    return found[0] if len(found) == 1 else None


def _among_colours(tokens: Sequence[Token], at: int, strange: bool, tells: Tells) -> bool:
    """Whether the word stands where only a colour can, and nothing goes on with it."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind == "mark" or after.lower in LINKS or magnitude(after) is not None
    if not (ends or THINGS & tells(tokens, at + 1)):
        return False
    before = tokens[at - 1].lower if at else ""
    linked = before in LINKS and at > 1 and _is_colour(tokens, at - 2, tells)
    follows = after is not None and after.lower in LINKS and at + 2 < len(tokens) and _is_colour(tokens, at + 2, tells)
    return linked or follows or (strange and before in LEADS)


def _is_colour(tokens: Sequence[Token], at: int, tells: Tells) -> bool:
    return "COLOUR" in tells(tokens, at)


def _counted(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number, a size or an article stands before the word."""
    before = tokens[at - 1] if at else None
    sized = at > 1 and magnitude(tokens[at - 2]) is not None
    return before is not None and (magnitude(before) is not None or before.lower in ARTICLES or sized)
