"""What is asked about and not told: "how many gold do I need", "how long is each runner". It changes nothing."""

from collections.abc import Iterable, Sequence

from grammar.reading import Context, Mention, Reading
from grammar.terms import Term
from grammar.tokens.lexicon import Lexicon
from grammar.tokens.scan import Token
from grammar.word_files import placed

HOW_MANY = frozenset({"count", "balloons"})
NAMED = frozenset({"PIECE", "TABLE", "SHAPE"})


def asked_about(tokens: Sequence[Token], lexicon: Lexicon, context: Context) -> dict[int, bool]:
    """Where a colour begins that is asked about, and whether what is in hand has it; of nothing in hand nothing."""
    found: dict[int, bool] = {}
    at, behind = 0, False
    while context.kinds and at < len(tokens):
        end = lexicon.colour_end(tokens, at)
        if end == at:
            behind = behind and tokens[at].lower in placed("between_colours")
            at += 1
            continue
        held = _is_held(" ".join(token.lower for token in tokens[at:end]), context.colours)
        if behind or _asks(tokens, at, held=held):
            found[at], behind = held, True
        at = end
    return found


def left_alone(terms: Iterable[Term], asked: dict[int, bool]) -> tuple[Term, ...]:
    """The terms, colours that are asked about made filler, or words where nothing in hand has them.

    Where the turn names a piece, its colours are that one's: "how many gold and white balloons for a 10 ft garland".
    """
    row = tuple(terms)
    if not asked or any(term.type in NAMED for term in row):
        return row
    return tuple(
        term.moved("FILL" if asked[term.start] else "WORD", term.text)
        if term.type in {"COLOUR", "FLAG", "CHOICE"} and term.start in asked
        else term
        for term in row
    )


def _asks(tokens: Sequence[Token], at: int, *, held: bool) -> bool:
    """Whether the words before a colour ask how much there is of it, or which it is."""
    before = at - 1
    while before >= 0 and tokens[before].lower in placed("between_how_many"):
        before -= 1
    if before < 0:
        return False
    word, first = tokens[before].lower, tokens[before - 1].lower if before else ""
    if word in placed("how_many"):
        return first in placed("how")
    return held and (word in placed("asks_of") or (before == 0 and word in placed("asks_whether")))


def _is_held(colour: str, held: Iterable[str]) -> bool:
    return any(name == colour or name.split()[-1] == colour for name in held)


def asks_only(reading: Reading, tokens: Sequence[Token], context: Context) -> None:
    """Take out of a question what it only names, so that asking changes nothing.

    A piece that is in hand, and how that is, where nothing is put in; where no order is heard all that is not the
    size of something to be counted anew, as in "how many for a 20 ft garland".
    """
    words = [token.lower for token in tokens if token.kind in {"word", "number"}]
    while words and words[0] in placed("before_a_question"):
        words.pop(0)
    if not context.kinds or not words or "about" in words[:2]:
        return
    if words[0] in placed("asks") and not reading.changing:
        _drop_named(reading, words, context)
    if not _is_question(words):
        reading.asks = "supposing" if tokens[-1].lower == "?" else ""
        return
    reading.asks = "plain" if set(words).isdisjoint(placed("supposes")) else "supposing"
    if _is_when(reading):  # "can I make half of them on Friday"
        reading.mentions = [m for m in reading.mentions if m.part_of is None]
    if reading.asks == "supposing" or _is_wish(words) or context.asked:
        return
    whether = words[0] in placed("asks_if")
    if reading.orders and whether and "solve" not in reading.orders:  # "will a dozen fit"
        reading.mentions = [m for m in reading.mentions if m.kind or m.facts.keys() - HOW_MANY or m.steps]
    if reading.orders or (reading.changing and not whether):
        return
    anew = not set(words).isdisjoint(placed("sizes_for"))
    if whether or not any(_is_sized(mention, anew=anew) for mention in reading.mentions):
        reading.mentions, reading.doubts, reading.job, reading.job_drop, reading.changing = [], [], {}, [], False


def _is_when(reading: Reading) -> bool:
    return bool(reading.orders) and reading.orders[0] in {"schedule", "lasting", "transport", "weather"}


def _is_wish(words: list[str]) -> bool:
    """Whether the words ask somebody to do a thing: "can we have it in gold", "will you add two"."""
    if words[0] in placed("asks_will"):
        return words[1] == "you"
    return words[0] in placed("may_be_a_wish") and words[1] in placed("wishes_by")


def _drop_named(reading: Reading, words: list[str], context: Context) -> None:
    how = words[0] in placed("asks_whether") and words[1:] and words[1] in placed("that_one")
    if not set(words).isdisjoint(placed("supposes") - (placed("includes") if how else frozenset())):
        return  # "how many if it's all white"
    reading.mentions = [m for m in reading.mentions if not _is_named_alone(m, context)]
    if how and not reading.orders:  # "is that with greenery?"
        for mention in reading.mentions:
            mention.facts = {k: v for k, v in mention.facts.items() if not isinstance(v, bool | str)}


def _is_question(words: list[str]) -> bool:
    """Whether the words are a question by their form: "do they", but not "do two thirds"."""
    if words[0] in placed("asks_which"):
        return True
    if words[0] not in placed("asks_if") or not words[1:]:
        return False
    if words[0] in placed("may_be_a_wish") or (words[0] in placed("asks_will") and words[1] not in placed("told_will")):
        return True
    if words[0] in {"do", "have"}:
        return words[1] in placed("wishes_of") or (
            words[1] in placed("pointing") and words[2:3] != [] and words[2] in placed("they_do")
        )
    return words[1] in placed("asked_of") or words[1].isdigit()


def _is_sized(mention: Mention, *, anew: bool) -> bool:
    """Whether a mention tells a size of its own: a number of feet, or several of what is named."""
    sizes = {k for k, v in mention.facts.items() if isinstance(v, int | float) and not isinstance(v, bool)}
    return not mention.removed and bool(sizes if anew else sizes - {"count"})


def _is_named_alone(mention: Mention, context: Context) -> bool:
    """Whether a mention only names a kind of piece that is in hand."""
    said = mention.steps or mention.drop or mention.removed or mention.options or mention.like
    only = mention.facts.keys() <= {"count"} and mention.facts.get("count") in {None, 1}
    return mention.new and only and not said and mention.kind in context.kinds
