"""The reader: a turn's text to a Reading.

Where numbers can be read apart in more than one way ("twenty six foot tables"), every way is read through, and what
is sane for the thing decides; two ways that are as good end in a doubt, to be asked about.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

from grammar.numbers.amounts import Amounts
from grammar.numbers.unit_words import unit_words
from grammar.phrases import phrases
from grammar.pieces.assemble import Assembler
from grammar.pieces.ground import Assembled
from grammar.pieces.slots import Slots, is_metric
from grammar.pieces.unit_meant import mend_unit
from grammar.reading import Context, Doubt, Reading
from grammar.record import record
from grammar.rows.about import asked_about, asks_only, left_alone
from grammar.rows.in_hand import of_those_in_hand
from grammar.rows.lexer import Lexer, Row
from grammar.rows.passes import settled
from grammar.rows.strangers import not_its_own
from grammar.talk.orders import Order, find_orders, in_talk, stands_in
from grammar.terms import Term
from grammar.tokens.ears import Ears
from grammar.tokens.lexicon import Lexicon
from grammar.tokens.number_words import number_words
from grammar.tokens.scan import Token, scan
from grammar.tokens.slips import in_place
from grammar.tokens.sounds import sounds
from grammar.tokens.spelling import suggestions
from grammar.tokens.tongue import tongues
from grammar.vocabulary import Vocabulary
from grammar.word_files import load_words, placed

# Where a number may be of the size or of the things ("six foot six tables"), costs nearer than this are both sensible.
CLOSE = 2.3
UNITS = ("footers", "footer", "foot", "feet", "ft", "inches", "inch")
MIXED_ORDERS = 2  # orders of one turn that are kept


@record
class _Try:
    row: Row
    made: Assembled
    cost: float


class Reader:
    """Reads turns against one vocabulary; holds no state between turns.

    `convert(value, from_unit, to_unit)` turns magnitudes of named units into others.
    """

    def __init__(self, vocabulary: Vocabulary, convert: Callable[[float, str, str], float]) -> None:
        self.lexicon = Lexicon(vocabulary)
        self.lexer = Lexer(self.lexicon)
        self.vocabulary = vocabulary
        self.convert = _safely(convert)
        home = tuple(tuple(text.split()) for text in load_words("speech.toml")["own_language"]["called"])
        self.ears = Ears(tongues(), self.lexicon.every_word, home)

    def read(self, text: str, context: Context | None = None) -> Reading:
        """What a turn says, given what is in hand. Never raises for any text."""
        context = context or Context()
        typed = apart(scan(text))
        if context.foreign:
            typed = [replace(token, foreign=token.lower in context.foreign) for token in typed]
        tokens = sounds(self.lexicon.spelt(typed), self._tells)
        tokens = in_place(tokens, self.lexicon, self._tells)
        if not tokens:
            return Reading()
        orders = in_talk(self._orders(tokens), tokens, context.topic)
        used = frozenset(i for order in orders for i in order.used)
        asked = asked_about(tokens, self.lexicon, context)
        intents = [order.intent for order in orders] or ["shopping"] * any(asked.values())
        amounts = Amounts(tokens, lambda i: self._names(tokens, i), lambda i: self._describes(tokens, i))
        tries: list[_Try] = []
        for row in self.lexer.rows(amounts, used):
            made = self._assemble(row, context, intents, asked)
            tries.append(_Try(row, made, row.cost + made.cost + _dangling(row, context)))
            if len(tries) == 1 and made.cost == 0 and not amounts.doubtful:
                break
        reading = self._choose(tries, tokens, text)
        mend_unit(reading, tokens, context, self.convert)
        asks_only(reading, tokens, context)
        unused = {*" ".join(reading.unread).split()}
        mended = [(a.text, b.lower) for a, b in zip(typed, tokens, strict=True) if a.lower != b.lower]
        reading.said_as += [pair for pair in mended if pair[0] not in unused and not self.lexicon.is_filler(pair[1])]
        return reading

    def _orders(self, tokens: list[Token]) -> list[Order]:
        kept: list[Order] = []
        for order in find_orders(tokens):
            told = _of_the_past(tokens, order) or order.used <= stands_in("less is more", tokens)
            if not told and not any(order.used & other.used for other in kept) and len(kept) < MIXED_ORDERS:
                kept.append(order)
        return kept

    def _tells(self, tokens: Sequence[Token], at: int) -> set[str]:
        """The types of the words that begin at a token; "UNIT" where it is a unit of length."""
        unit = {"UNIT"} if any(u.kind == "length" for _, u in unit_words().units.find(tokens, at)) else set()
        colour = {"COLOUR"} if self.lexicon.colour_end(tokens, at) > at else set()
        return unit | colour | {m.entry.type for m in self.lexicon.matches(tokens, at)}

    def _names(self, tokens: list[Token], at: int) -> bool:
        """Whether a thing to count is named at a token."""
        return at < len(tokens) and any(
            m.entry.type in {"PIECE", "TABLE", "SHAPE"} for m in self.lexicon.matches(tokens, at)
        )

    def _describes(self, tokens: list[Token], at: int) -> bool:
        """Whether a colour, a choice or an article stands at a token."""
        if at >= len(tokens):
            return False
        if self.lexicon.colour_end(tokens, at) > at + 1:
            return True  # "7 in hot pink"
        found = {m.entry.type for m in self.lexicon.matches(tokens, at)}
        return bool(found & {"COLOUR", "CHOICE", "DET", "PRON"}) and not found & {"LABEL", "SHAPE", "TABLE"}

    def _assemble(self, row: Row, context: Context, orders: list[str], asked: dict[int, bool]) -> Assembled:
        terms = settled(of_those_in_hand(not_its_own(left_alone(row.terms, asked), context), context))
        metric = context.metric or any(is_metric(t.value) for t in terms if t.type in {"LEN", "FAR"})
        slots = Slots(self.vocabulary, self.convert, metric=metric)
        made = Assembler(phrases(terms), slots, replace(context, metric=metric), orders).run()
        made.reading.metric = metric
        return made

    def _choose(self, tries: list[_Try], tokens: list[Token], text: str) -> Reading:
        best = min(tries, key=lambda t: t.cost)
        reading = best.made.reading
        rivals = [
            t for t in tries if t is not best and t.cost - best.cost < CLOSE and not _alike(t.made.reading, reading)
        ]
        open_ones = [rival for rival in rivals if best.row.differs(rival.row)]
        if open_ones:
            reading.doubts.append(_either(reading, open_ones[0].made.reading))
        reading.text = text
        reading.blank = not any(t.kind != "mark" for t in tokens)
        reading.said_as = [(t.text, t.said_as) for t in best.row.terms if t.said_as]
        reading.unread, reading.near = self._unread(best, tokens)
        return reading

    def _unread(self, best: _Try, tokens: list[Token]) -> tuple[list[str], dict[str, list[str]]]:
        """Runs of words that nothing used, and for each strange word the nearest known ones."""
        spots: list[tuple[int, int]] = []
        for phrase in best.made.unused:
            spots += [(t.start, t.end) for t in phrase.terms if t.end > t.start]
        runs: list[tuple[int, int]] = []
        for start, end in sorted(set(spots)):
            if runs and start <= runs[-1][1]:
                runs[-1] = (runs[-1][0], max(end, runs[-1][1]))
            else:
                runs.append((start, end))
        words = [_written(tokens, start, end) for start, end in runs]
        near: dict[str, list[str]] = {}
        for start, end in spots:
            for token in tokens[start:end]:
                if token.kind == "word" and token.text not in near and not self.lexicon.is_everyday(token.lower):
                    found = suggestions(token.lower, self.lexicon.mendable)
                    near[token.text] = [word for word in found if word != token.lower]
        return [w for w in words if w], {word: found for word, found in near.items() if found}


def _dangling(row: Row, context: Context) -> float:
    """The cost of a "to" that begins a conversation before sized things: "to 6 foot columns" are two."""
    first = row.terms[0]
    if context.kinds or first.type == "NUM" or first.text.lower() not in placed("to_do"):
        return 0.0
    things = row.terms[2] if len(row.terms) > len("ab") and row.terms[1].type == "LEN" else first
    return CLOSE + CLOSE if things.type == "PIECE" and things.text.lower().endswith("s") else 0.0


def apart(tokens: list[Token]) -> list[Token]:
    """ "sixfoot" and "tenft" as a number and a unit."""
    out: list[Token] = []
    for token in tokens:
        cut = _glued_unit(token.lower) if token.kind == "word" else 0
        if token.lower.removesuffix("'s") in UNITS and token.lower.endswith("'s"):
            cut = len(token.lower) - len("'s")  # "5 ft's enough"
        if cut:
            middle = token.start + cut
            out.append(replace(token, text=token.text[:cut], lower=token.lower[:cut], end=middle))
            out.append(replace(token, text=token.text[cut:], lower=token.lower[cut:], start=middle, glued=True))
        else:
            out.append(token)
    return out


def _glued_unit(word: str) -> int:
    for unit in UNITS:
        if word.endswith(unit) and word[: -len(unit)] in number_words().cardinals:
            return len(word) - len(unit)
    return 0


def _of_the_past(tokens: Sequence[Token], order: Order) -> bool:
    """Whether what would be asked is told instead: "the price was 550 last time"."""
    at = max(order.used, default=0) + 1
    was = at + 1 < len(tokens) and tokens[at].lower in placed("was")
    return was and (tokens[at + 1].kind == "number" or tokens[at + 1].lower in number_words().cardinals)


def _safely(convert: Callable[[float, str, str], float]) -> Callable[[float, str, str], float]:
    """A conversion that gives "not a number" where the units do not go together, so that such a reading never wins."""

    def safe(value: float, from_unit: str, to_unit: str) -> float:
        try:
            return convert(value, from_unit, to_unit)
        except (ValueError, OverflowError):
            return math.nan

    return safe


def _written(tokens: list[Token], start: int, end: int) -> str:
    out = ""
    for token in tokens[start:end]:
        out += token.text if token.glued or not out else " " + token.text
    return out.strip()


def _alike(a: Reading, b: Reading) -> bool:
    """Whether two readings say the same, whatever words they took it from."""
    return [replace(m, words="") for m in a.mentions] == [replace(m, words="") for m in b.mentions] and a.job == b.job


def _either(first: Reading, second: Reading) -> Doubt:
    """The first fact in which two readings differ, as a doubt with both values."""
    for a, b in zip(first.mentions, second.mentions, strict=False):
        for fact in sorted(a.facts.keys() | b.facts.keys()):
            if a.facts.get(fact) != b.facts.get(fact):
                return Doubt(
                    kind="either",
                    fact=fact,
                    options=[a.facts.get(fact), b.facts.get(fact)],
                    piece=a.kind,
                    words=a.words,
                )
    return Doubt(kind="either", words="")


def spoken(term: Term) -> str:
    """A term as it was typed."""
    return term.text
