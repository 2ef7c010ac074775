"""The row of colours of a piece, when some come and others go."""

from typing import Any

from grammar.pieces.draft import finish_shares

Row = list[dict[str, Any]]


def mixed(held: Row, said: Row, *, extend: bool) -> Row:
    """The colours held and said: what has only a part of the whole leaves the others in."""
    given = [colour.get("share") for colour in said]
    part = all(given) and sum(filter(None, given)) < 0.995
    anew = {colour["name"]: colour for colour in said}
    if not (extend or part) or {colour["name"] for colour in held} <= set(anew):
        return said
    if not any(given):
        return [*held, *(colour for colour in said if colour not in held)]
    names = [colour["name"] for colour in held]
    return finish_shares([anew.pop(name, {"name": name}) for name in names] + list(anew.values()))


def exchanged(held: Row, said: Row, gone: str) -> Row:
    """The colours held, with the one colour said in place of the one that goes, and with its share."""
    return [
        {**colour, "name": said[0]["name"]} if gone in (colour["name"], colour["name"].split()[-1]) else colour
        for colour in held
    ]


def without(held: Row, name: str) -> Row:
    """The colours without one, by its name or the last word of it; and all shares, which no longer make a whole."""
    left = [c for c in held if c["name"] != name and c["name"].split()[-1] != name]
    return [{"name": c["name"]} for c in left] if any(c.get("share") for c in left) else left
