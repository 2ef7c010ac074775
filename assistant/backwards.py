"""Working backwards: from balloons, money, hours or a vehicle to what fits, on the same engine as forwards."""

from fractions import Fraction
from typing import Any

from assistant.asked import Asked, Blocks
from assistant.fitting import GROWS, NOUNS, amount, capital, gap_words, kept, one_more, told, used_up
from assistant.layout import listed, paragraph
from assistant.limits import Limit, is_on_hand, largest, limits_of, over, steps_of
from assistant.state import State
from assistant.trying import levers, tried, value, variant, with_pieces
from assistant.ways import shrinks, ways


def solve(asked: Asked) -> Blocks | None:
    """What fits into what there is; None where nothing limits it or the piece cannot be worked out."""
    place = asked.now.focus
    if place is None or place >= len(asked.now.pieces):
        return None
    piece = asked.now.pieces[place]
    limits = limits_of(asked.book, asked.now, place)
    if not limits:
        return None
    state, place = _to_try(asked, place, limits)
    fact = _unknown(asked, state, place)
    if fact is not None:
        return _how_much(asked, state, place, fact, limits)
    if value(tried(asked.book, state), asked.book.kind_of(piece.kind).main or "balloons", place) is None:
        return None
    return _yes_or_no(asked, state, place, limits)


def _to_try(asked: Asked, place: int, limits: list[Limit]) -> tuple[State, int]:
    """The job to try out: the whole of it, or the piece alone where balloons are at hand for it or others compete."""
    pieces = list(asked.now.pieces)
    piece = pieces[place]
    if "balloons" in piece.facts and is_on_hand(asked.book, asked.now, place):
        facts = {fact: said for fact, said in piece.facts.items() if fact != "balloons"}
        pieces[place] = type(piece)(piece.kind, facts)
    if asked.now.compared or limits[0].id == "balloons_to_buy":
        return with_pieces(asked.now, [pieces[place]]), 0
    return with_pieces(asked.now, pieces), place


def offered(asked: Asked) -> list[tuple[int, dict[str, Any]]]:
    """What the answer offers, the first way and the second: the place of the piece, and its facts in that version."""
    place = asked.now.focus
    limits = limits_of(asked.book, asked.now, place) if place is not None else []
    if place is None or not limits:
        return []
    state, at = _to_try(asked, place, limits)
    fact = _unknown(asked, state, at)
    if fact is not None:
        found = largest(asked.book, state, at, fact, limits)
        return [(place, found.pieces[at].facts)] if found is not None else []
    if not over(tried(asked.book, state), limits):
        return []
    return [(place, way.state.pieces[at].facts) for way in list(ways(asked, state, at, limits))[:2]]


# how much -------------------------------------------------------------------------------------------------------------


def _unknown(asked: Asked, state: State, place: int) -> str | None:
    """The fact to be found: the one asked for by name, else the one that is needed and was not said."""
    piece = state.pieces[place]
    text = asked.reading.text.lower().replace("how many balloons", "")
    on_table = "table_length" in piece.facts or "table_diameter" in piece.facts
    found: list[str] = []
    for raw in asked.book.others.get("unknown", {}).values():
        fits = piece.kind in raw["of"] or "any" in raw["of"]
        if fits and not (on_table and raw["fact"] == "length") and any(word in text for word in raw["asked"]):
            found.append(str(raw["fact"]))
    needs = asked.book.kind_of(piece.kind).extra.get("needs", [])
    lacking = min(([fact for fact in way if fact not in piece.facts] for way in needs), key=len, default=[])
    found += lacking if len(lacking) == 1 else []
    for fact in sorted(dict.fromkeys(found), key=lambda fact: fact in piece.facts):
        probe = variant(state, place, {fact: float(steps_of(asked.book, state, place, fact)[0])})
        if value(tried(asked.book, probe), "balloons_all") is not None:
            return fact
    return None


def _how_much(asked: Asked, state: State, place: int, fact: str, limits: list[Limit]) -> Blocks:
    found = largest(asked.book, state, place, fact, limits)
    if found is None:
        return _impossible(asked, state, place, fact, limits)
    made = tried(asked.book, found)
    other = _another(asked, state, place, fact, found, limits)
    within = listed([limit.words for limit in limits])
    head = f"{capital(amount(found, place, fact))} from {within}."
    step = steps_of(asked.book, state, place, fact)[2]
    grown = Fraction(found.pieces[place].facts[fact]).limit_denominator(1000) + step
    more = variant(found, place, {fact: int(grown) if grown.denominator == 1 else float(grown)})
    beyond = over(tried(asked.book, more), limits)
    gap = gap_words(*beyond[0], made) if beyond else ""
    much = f"would be {gap} too much" if gap.strip("$£€ ")[:1] not in ("", "0") else "does not fit"
    binds = f" {one_more(fact, state.metric)} {much}." if beyond else " More is beyond what such a piece can be."
    return [
        paragraph(head, asked.width),
        used_up(made, limits, asked.width),
        paragraph(f"{kept(made, limits)}{binds}", asked.width),
        paragraph(other, asked.width) if other else [],
    ]


def _another(asked: Asked, state: State, place: int, fact: str, found: State, limits: list[Limit]) -> str:
    """A second way: the lever that stretches it furthest, else going without spares, which is said and not done."""
    best: tuple[float, str] | None = None
    made = tried(asked.book, found)
    for name, looks, facts in levers(asked.book, state.pieces[place], made, place):
        stretched = "coverage" in facts and fact in GROWS  # a longer piece with bare line in it is no more
        if stretched or ("sizes" in facts and limits[0].id == "balloons_to_buy"):
            continue
        other = largest(asked.book, variant(state, place, facts), place, fact, limits)
        if other is not None and float(other.pieces[place].facts[fact]) > float(found.pieces[place].facts[fact]):
            size = float(other.pieces[place].facts[fact])
            if best is None or size > best[0]:
                best = size, f"A second way: {name}, {amount(other, place, fact)}; {looks}."
    if best is not None:
        return best[1]
    bare = with_pieces(state, state.pieces, spare=0)
    other = largest(asked.book, bare, place, fact, limits)
    if other is None or other.pieces == found.pieces:
        return ""
    return f"A second way: no spares at all, {amount(other, place, fact)}, and nothing to mend a gap with."


def _impossible(asked: Asked, state: State, place: int, fact: str, limits: list[Limit]) -> Blocks:
    """Not even the least of it fits: why, and what comes nearest."""
    least = variant(state, place, {fact: float(steps_of(asked.book, state, place, fact)[0])})
    made = tried(asked.book, least)
    (limit, gap), *_ = over(made, limits)
    more = f"{gap_words(limit, gap, made)} more than {limit.words}"
    why = f"No: even {amount(least, place, fact)} takes {told(made, limit)}, {more}."
    near = _nearest(asked, least, place, limits)
    return [paragraph(why, asked.width), paragraph(near, asked.width)]


def _nearest(asked: Asked, state: State, place: int, limits: list[Limit]) -> str:
    """The plainest version, whether it fits or by how much it does not."""
    made = tried(asked.book, state)
    tries = []
    for name, looks, facts in levers(asked.book, state.pieces[place], made, place):
        version = tried(asked.book, variant(state, place, facts))
        beyond = over(version, limits)
        tries.append((sum(gap / limit.most for limit, gap in beyond), name, looks, version))
    if not tries:
        return "Nothing plainer is known that would come nearer; more of what limits it would."
    best = min(tries, key=lambda one: one[0])
    head = "That fits" if best[0] == 0 else "Nearest, and still too much"
    return f"{head}: {best[1]}, {told(best[3], limits[0])}; {best[2]}."


# yes or no ------------------------------------------------------------------------------------------------------------


def _yes_or_no(asked: Asked, state: State, place: int, limits: list[Limit]) -> Blocks:
    made = tried(asked.book, state)
    beyond = over(made, limits)
    if not beyond:
        spare = [
            f"{told(made, one)}, {gap_words(one, one.most - (value(made, one.id) or 0), made)} under {one.words}"
            for one in limits
        ]
        return [
            paragraph(f"Yes: {listed(spare)}.", asked.width),
            paragraph(_room_for(asked, state, place, limits), asked.width),
        ]
    limit, gap = beyond[0]
    lines = [
        paragraph(
            f"No: as it stands {told(made, limit)}, {gap_words(limit, gap, made)} over {limit.words}.", asked.width
        )
    ]
    found = list(ways(asked, state, place, limits))[:2]
    if not found:
        return [*lines, paragraph(_nearest(asked, _smallest(asked, state, place), place, limits), asked.width)]
    for head, way in zip(("What fits", "A second way"), found, strict=False):
        done = tried(asked.book, way.state)
        lines.append(paragraph(f"{head}: {way.words}, {told(done, limit)}. Given up: {way.given_up}.", asked.width))
    return [*lines, paragraph(kept(made, limits), asked.width)]


def _room_for(asked: Asked, state: State, place: int, limits: list[Limit]) -> str:
    """What more would fit as well."""
    fact = "count" if state.pieces[place].kind in NOUNS else shrinks(asked, state, place)
    found = largest(asked.book, state, place, fact, limits) if fact else None
    if fact is None or found is None or found.pieces == state.pieces:
        return "It is about the most that fits."
    return f"The most that fits: {amount(found, place, fact)}."


def _smallest(asked: Asked, state: State, place: int) -> State:
    fact = shrinks(asked, state, place)
    return variant(state, place, {fact: float(steps_of(asked.book, state, place, fact)[0])}) if fact else state
