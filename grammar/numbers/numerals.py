"""Every way to read a number that begins at a place: whole, decimal, fraction, mixed, dozens, "a few".

The function offers, longest first; which reading is meant only the reader of the whole request can tell. Ordinals
("14th", "the first") are no numbers, save as denominators ("two fifths").
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from grammar.numbers.cardinals import cardinals_at, carried_on
from grammar.numbers.digits import Cardinal, after_hyphen, word_at
from grammar.numbers.fractions import Numeral, fractions_at, parts_at
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token

__all__ = ["Numeral", "numerals_at"]


def numerals_at(tokens: Sequence[Token], i: int) -> list[Numeral]:
    """Every plausible number that begins at token `i`, longest first, each (end, value) once. Never raises."""
    if i >= len(tokens) or (tokens[i].kind != "number" and tokens[i].lower not in number_words().starters):
        return []
    start, sign = _sign(tokens, i)
    if start is None or start >= len(tokens):
        return []
    seen: dict[tuple[int, Fraction], Numeral] = {}
    for found in _unsigned(tokens, start):
        if not _ordinal(tokens, found):
            seen.setdefault((found.end, found.value), replace(found, value=sign * found.value))
    return sorted(seen.values(), key=lambda numeral: -numeral.end)


def _sign(tokens: Sequence[Token], i: int) -> tuple[int | None, int]:
    """Where the unsigned number begins (None: nowhere) and its sign. A sign stands close before digits, free behind."""
    here = tokens[i]
    if here.lower in number_words().minus:
        return i + 1, -1
    if here.lower not in ("-", "+"):
        return i, 1
    free = not here.glued or tokens[i - 1].lower in "([:=$£€"
    if free and i + 1 < len(tokens) and tokens[i + 1].glued and tokens[i + 1].kind == "number":
        return i + 1, -1 if here.lower == "-" else 1
    return None, 1


def _ordinal(tokens: Sequence[Token], found: Numeral) -> bool:
    """Digits with "th" close behind are an ordinal, so are tens with "first" and the like: the 14th, twenty-first."""
    words = number_words()
    after = found.end
    if words.cardinals.get(tokens[after - 1].lower, 0) >= 20:
        part = next((part for _, part in parts_at(tokens, after - 1)), None)
        return part is not None and not part.plural
    return (
        found.form != "fraction"
        and after < len(tokens)
        and tokens[after].glued
        and tokens[after - 1].kind == "number"
        and tokens[after].lower in words.ordinal_endings
    )


def _unsigned(tokens: Sequence[Token], i: int) -> Iterator[Numeral]:
    cardinals = cardinals_at(tokens, i)
    fractions = list(fractions_at(tokens, i, cardinals))
    for cardinal in cardinals:
        yield Numeral(cardinal.end, cardinal.value, "digits" if cardinal.digits else "words")
        yield from _lots_of(tokens, cardinal)
        yield from _mixed(tokens, cardinal)
        yield from _ratio(tokens, cardinal)
    for fraction in fractions:
        yield fraction
        yield from _scaled(tokens, fraction, linked=True)
    yield from _open_words(tokens, i)


def _mixed(tokens: Sequence[Token], whole: Cardinal) -> Iterator[Numeral]:
    """A whole number and a fraction: 2 1/2, 1-1/2, six and a half, a million and a half (of a million)."""
    if whole.value.denominator != 1 or whole.end >= len(tokens):
        return
    link_at = after_hyphen(tokens, whole.end)
    joined = word_at(tokens, link_at) in number_words().joins
    dashed = word_at(tokens, whole.end) == "-" and tokens[whole.end].glued and whole.digits
    at = after_hyphen(tokens, link_at + 1) if joined else whole.end + 1 if dashed else whole.end
    if at >= len(tokens) or (not joined and tokens[at].kind != "number") or (dashed and not tokens[at].glued):
        return
    for part in fractions_at(tokens, at):
        if not 0 < part.value < 1 or (not joined and not _written(tokens, at, part)):
            continue
        mixed = Numeral(part.end, whole.value + part.value * whole.scale, "mixed")
        yield mixed
        if whole.scale == 1:
            yield from _scaled(tokens, mixed, linked=False)
    if not joined and tokens[at].divided:
        yield from _grouped_denominator(tokens, at, whole.value)


def _written(tokens: Sequence[Token], at: int, part: Numeral) -> bool:
    """A fraction in digits and a stroke, not "2 quarters", stands beside a whole number without "and"."""
    return tokens[at].divided or word_at(tokens, at + 1) == "/" or part.end == at + 1


def _grouped_denominator(tokens: Sequence[Token], at: int, whole: Fraction) -> Iterator[Numeral]:
    for cardinal in cardinals_at(tokens, at):
        if 0 < cardinal.value < 1:
            yield Numeral(cardinal.end, whole + cardinal.value, "mixed")


def _ratio(tokens: Sequence[Token], above: Cardinal) -> Iterator[Numeral]:
    """ "one over twenty"."""
    for phrase in number_words().over:
        end = above.end + len(phrase)
        if tuple(word_at(tokens, above.end + k) for k in range(len(phrase))) == phrase and end < len(tokens):
            for below in cardinals_at(tokens, end):
                if below.value:
                    yield Numeral(below.end, above.value / below.value, "ratio")


def _lots_of(
    tokens: Sequence[Token], count: Cardinal, form: str = "dozen", *, vague: bool = False
) -> Iterator[Numeral]:
    """ "two dozen", "five dozens of", "a dozen and a half"."""
    lot = number_words().lots.get(word_at(tokens, after_hyphen(tokens, count.end)))
    if lot is None or count.value == 0:
        return
    end = after_hyphen(tokens, count.end) + 1
    value = count.value * lot.size
    yield from _with_of(tokens, Numeral(end, value, lot.form if form == "dozen" else form, vague))
    if count.value.denominator == 1:
        for mixed in _mixed(tokens, Cardinal(end, value, scale=lot.size)):
            yield replace(mixed, vague=vague)


def _scaled(tokens: Sequence[Token], part: Numeral, *, linked: bool) -> Iterator[Numeral]:
    """ "half a million", "quarter million", "two and a half dozen"."""
    words = number_words()
    at = after_hyphen(tokens, part.end)
    if linked and word_at(tokens, at) in words.of:
        at += 1
    if linked and word_at(tokens, at) in words.articles:
        at += 1
    word = word_at(tokens, at)
    lot = words.lots.get(word)
    size = words.scales.get(word) or (lot.size if lot else 100 if word in words.hundreds else 0)
    if size:
        form = lot.form if lot else part.form
        yield from _with_of(tokens, Numeral(at + 1, part.value * size, form, part.vague))


def _with_of(tokens: Sequence[Token], numeral: Numeral) -> Iterator[Numeral]:
    yield numeral
    if word_at(tokens, numeral.end) in number_words().of:
        yield replace(numeral, end=numeral.end + 1)


def _open_words(tokens: Sequence[Token], i: int) -> Iterator[Numeral]:
    """A dozen, a pair, a few, several, single; "o" for nought after another digit."""
    words = number_words()
    article = tokens[i].lower in words.articles
    at = i + 1 if article else i
    word = word_at(tokens, at)
    lot = words.lots.get(word)
    if lot is not None and (article or lot.alone):
        one = Cardinal(at, Fraction(1))
        vague = lot.vague and not article
        yield from _lots_of(tokens, one, lot.form, vague=vague)
        if lot.before_scale:
            yield from _several_of(tokens, at + 1, lot.size, lot.form)
    few = words.vague.get(word)
    if few is not None and (not article or not few.bare):
        yield from _with_of(tokens, Numeral(at + 1, Fraction(few.value), few.form, vague=True))
        yield from _several_of(tokens, at + 1, few.value, few.form)
    if word in words.ones:
        yield Numeral(at + 1, Fraction(words.ones[word]), "words")
    if i and word in words.zero_letters and (tokens[i - 1].kind == "number" or tokens[i - 1].lower in words.cardinals):
        yield Numeral(i + 1, Fraction(0), "words")


def _several_of(tokens: Sequence[Token], i: int, count: int, form: str) -> Iterator[Numeral]:
    """ "a few hundred", "several dozen", "a couple hundred"."""
    words = number_words()
    vague = form != "couple"
    if word_at(tokens, i) in words.scales or word_at(tokens, i) in words.hundreds:
        for cardinal in carried_on(tokens, i, Fraction(count)):
            yield Numeral(cardinal.end, cardinal.value, form, vague)
    yield from _lots_of(tokens, Cardinal(i, Fraction(count)), form, vague=vague)
