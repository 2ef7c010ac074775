"""A unit taken back: "garland 12 metres", then "feet, I meant feet"."""

from collections.abc import Callable, Sequence

from grammar.number_words import magnitude
from grammar.reading import Context, Mention, Reading
from grammar.scan import Token
from grammar.unit_words import unit_words

SAID = ("m", "ft", "cm", "in")  # units that the number may have been said in, the largest first
WHOLE = 0.01  # how near to a whole or half number it then has to be


def mend_unit(
    reading: Reading, tokens: Sequence[Token], context: Context, convert: Callable[[float, str, str], float]
) -> None:
    """Give the size that was said last the unit that a turn names, where the turn says nothing else but that."""
    value = context.values.get(context.topic)
    if not reading.changing or not isinstance(value, (int, float)) or _says_more(reading, tokens):
        return
    found = [u.name for i in range(len(tokens)) for _, u in unit_words().units.find(tokens, i) if u.kind == "length"]
    said = next((unit for unit in SAID if unit not in found and _is_round(convert(value, "in", unit))), None)
    if found and said is not None:
        meant = convert(convert(value, "in", said), found[0], "in")
        reading.mentions.append(Mention(facts={context.topic: round(meant, 4)}))


def _says_more(reading: Reading, tokens: Sequence[Token]) -> bool:
    acts = (
        reading.job
        or reading.orders
        or reading.doubts
        or reading.unread
        or any(m.facts or m.steps for m in reading.mentions)
    )
    return bool(acts) or any(magnitude(token) is not None for token in tokens)


def _is_round(number: float) -> bool:
    return number >= 1 and abs(2 * number - round(2 * number)) < WHOLE
