"""A unit said by itself: "garland 12 metres", then "feet, I meant feet"; "the budget is 300", then "euros"."""

from collections.abc import Callable, Sequence

from grammar.numbers.money import currencies_at
from grammar.numbers.unit_words import unit_words
from grammar.pieces.jobfacts import SIGNS
from grammar.reading import Context, Mention, Reading
from grammar.tokens.number_words import magnitude
from grammar.tokens.scan import Token
from grammar.word_files import placed

SAID = ("m", "ft", "cm", "in")  # units that the number may have been said in, the largest first
WHOLE = 0.01  # how near to a whole or half number it then has to be


def mend_unit(
    reading: Reading, tokens: Sequence[Token], context: Context, convert: Callable[[float, str, str], float]
) -> None:
    """Give the size that was said last the unit that a turn names, where the turn says nothing else but that."""
    _mend_currency(reading, tokens, context)
    if context.refused is not None and not _says_more(reading, tokens):
        _mend_refused(reading, tokens, context, convert)
        return
    value = context.values.get(context.topic)
    if not isinstance(value, (int, float)):
        return
    if not reading.changing or reading.unread or _says_more(reading, tokens):
        return
    found = [u.name for i in range(len(tokens)) for _, u in unit_words().units.find(tokens, i) if u.kind == "length"]
    said = next((unit for unit in SAID if unit not in found and _is_round(convert(value, "in", unit))), None)
    if found and said is not None:
        meant = convert(convert(value, "in", said), found[0], "in")
        reading.mentions.append(Mention(facts={context.topic: round(meant, 4)}))


def _mend_refused(
    reading: Reading, tokens: Sequence[Token], context: Context, convert: Callable[[float, str, str], float]
) -> None:
    """Give a size that could not be the unit that a turn names, or inches where it only agrees: "60 inches?" "yes"."""
    units = [u.name for i in range(len(tokens)) for _, u in unit_words().units.find(tokens, i) if u.kind == "length"]
    agreed = any(token.lower in placed("agrees") for token in tokens)
    fact, number = context.refused or ("", 0.0)
    if fact == "table_length" and context.values.get("table_shape") == "round":
        fact = "table_diameter"
    if units or (agreed and context.asked):
        value = convert(number, units[0] if units else "in", "in")
        reading.mentions.append(Mention(facts={context.asked or fact: round(value, 4)}))


def _mend_currency(reading: Reading, tokens: Sequence[Token], context: Context) -> None:
    """Give a budget that was said without a currency the one that a turn names, where it says nothing else."""
    if not context.budget or context.budget.get("currency") or _says_more(reading, tokens):
        return
    named = [code for i in range(len(tokens)) for _, code in currencies_at(tokens, i, before=False)]
    if named:
        reading.job["budget"] = {**context.budget, "currency": SIGNS.get(named[0], named[0])}
        reading.unread = []


def _says_more(reading: Reading, tokens: Sequence[Token]) -> bool:
    acts = reading.job or reading.orders or reading.doubts or any(m.facts or m.steps for m in reading.mentions)
    return bool(acts) or any(magnitude(token) is not None for token in tokens)


def _is_round(number: float) -> bool:
    return number >= 1 and abs(2 * number - round(2 * number)) < WHOLE
