"""From scanned tokens to terms: one row of terms for each way that the numbers can sensibly be read apart."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import chain, islice

from grammar.numbers.amounts import MASHED, Amounts, Choice
from grammar.record import record
from grammar.terms import AMOUNTS, Amount, Term
from grammar.tokens.lexicon import HYPHENS, Lexicon, Match, owner
from grammar.tokens.scan import Token
from grammar.word_files import load_words, placed, word_list

CONTENT = frozenset({"FLAG", "CHOICE", "PIECE", "TABLE", "COLOUR", "DET", "LIMIT"})
NUMBER_FOLLOWS = frozenset({"event_time", "setup_from"})  # "party at 2", never "sixteen party"
KEPT = frozenset(
    {"crew", "guests", "seats", "for", "balloon"}
)  # words that mean something beside the order that they stand in
SHIFTS = frozenset({"later", "earlier"})
SIDES = frozenset({"width", "height", "length", "across", "depth"})
HOURS = 24
MOST_ROWS = 24  # rows of terms that are tried for one turn
MOST_TERMS = 600  # of all rows of a turn together: a long text is read in fewer ways
TIES_TO_AMOUNT = frozenset({"LABEL", "CHOICE", "PRON", "ONHAND"})


@record
class Row:
    """One way to read the turn: its terms, what the choices cost, where other choices were open, and which it took."""

    terms: tuple[Term, ...]
    cost: float
    open: frozenset[int]
    plan: frozenset[tuple[int, int]]

    def differs(self, other: "Row") -> bool:
        """Whether the other row differs in a choice that is open."""
        return any(place in self.open for place, _ in self.plan ^ other.plan)


class Lexer:
    """Makes rows of terms; `orders` are token indices that an order has used up."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon

    def rows(self, amounts: Amounts, orders: frozenset[int]) -> Iterator[Row]:
        """The plain row first, then those that differ in one choice, then in two; each once."""
        counts: dict[int, int] = {}
        first = self._row(amounts, orders, {}, counts)
        yield first
        seen = {first.terms}
        singles = [(i, k) for i, n in sorted(counts.items()) for k in range(1, n)]
        # Made one by one: there are as many pairs as the square of what may be read in two ways.
        plans: Iterator[dict[int, int]] = chain(
            ({i: k} for i, k in singles), ({i: k, j: m} for i, k in singles for j, m in singles if i < j)
        )
        most = max(2, min(MOST_ROWS, MOST_TERMS // max(1, len(first.terms))))
        for plan in islice(plans, most * 2):
            row = self._row(amounts, orders, plan, {})
            if row.terms not in seen:
                seen.add(row.terms)
                yield row
            if len(seen) >= most:
                return

    def _row(self, amounts: Amounts, orders: frozenset[int], plan: dict[int, int], counts: dict[int, int]) -> Row:
        terms: list[Term] = []
        cost, at, open_at = 0.0, 0, []
        while at < len(amounts.tokens):
            found, choices = self._term(amounts, at, orders, terms, plan.get(at, 0))
            if choices > 1:
                counts[at] = choices
            if any(choice.open for choice in amounts.at(at)):
                open_at.append(at)
            cost += sum(term.cost for term in found)
            terms += found
            at = found[-1].end
        return Row(tuple(terms), cost, frozenset(open_at), frozenset(plan.items()))

    def _term(
        self, amounts: Amounts, at: int, orders: frozenset[int], before: list[Term], pick: int
    ) -> tuple[list[Term], int]:
        """The term at `at` for choice number `pick`, and how many choices there were."""
        tokens = amounts.tokens
        token = tokens[at]
        # "each one point five metres", "navy one third gold"
        measured = any(choice.end > at + 1 for choice in amounts.at(at))
        if token.lower == "one" and at and tokens[at - 1].lower in placed("before_one") and not measured:
            return [Term("FILL", "one", at, at + 1, token.text)], 1
        if token.lower == "one" and before and before[-1].type in {"LEN", "COLOUR", "SHAPE", "CMP"} and not measured:
            return [Term("ONES", "ones", at, at + 1, token.text)], 1
        word = self._word(amounts, at, orders, before)
        if at in orders and (word is None or (word.type not in CONTENT and word.value not in KEPT)):
            return [Term("USED", None, at, at + 1, token.text)], 1
        choices = amounts.at(at)
        sized = self._sized_noun(tokens, at, choices)
        if sized is not None:
            return [sized], 1
        if choices and (word is None or self._amount_wins(word, choices)):
            choice = choices[min(pick, len(choices) - 1)]
            if choice.type != "SKIP":
                return _amount_terms(tokens, at, choice), len(choices)
            rest = word or self._plain(tokens, at)
            return [rest], len(choices)
        return [word or self._plain(tokens, at)], 1

    def _amount_wins(self, word: Term, choices: list[Choice]) -> bool:
        if choices[0].type == "NUM" and choices[0].note:
            return True  # a number written as it sounds
        if choices[0].type == "SKIP":
            return True
        longest = max(c.end for c in choices if c.type != "SKIP")
        return longest >= word.end if word.type in TIES_TO_AMOUNT else longest > word.end

    def _sized_noun(self, tokens: Sequence[Token], at: int, choices: list[Choice]) -> Term | None:
        """ "8 footers", "six-footers", "8s" and "fives": a size that stands for the thing of that size."""
        plural = load_words("places.toml")["sizes"].get(tokens[at].lower)
        if plural:
            return Term("NOMINALS", Amount(Fraction(plural)), at, at + 1, tokens[at].text)
        for choice in choices:
            if choice.type == "LEN" and tokens[choice.end - 1].lower in placed("footers"):
                text = " ".join(t.text for t in tokens[at : choice.end])
                return Term("FOOTER", choice.value, at, choice.end, text)  # "seven eight foots"
            if choice.type != "NUM":
                continue
            after = choice.end
            if after < len(tokens) and tokens[after].lower in HYPHENS:
                after += 1
            shorter = any(c.type == "NUM" and c.end < choice.end for c in choices)
            if choice.cost >= MASHED and shorter:
                continue  # "five ten-footers"
            if after < len(tokens) and tokens[after].lower in placed("footers"):
                text = " ".join(t.text for t in tokens[at : after + 1])
                return Term("FOOTER", choice.amount(unit="ft"), at, after + 1, text)
            if (
                after == choice.end
                and after < len(tokens)
                and tokens[after].lower in {"s", "'s"}
                and tokens[after].glued
            ):
                text = tokens[at].text + tokens[after].text
                return Term("NOMINALS", choice.amount(), at, after + 1, text)
        return None

    def _plain(self, tokens: Sequence[Token], at: int) -> Term:
        token = tokens[at]
        if token.kind == "mark":
            if token.lower in ",;.:?!()\n" or token.lower in {"--", "—", "…", "..."}:
                return Term("SEP", token.lower, at, at + 1, token.text)
            return Term("FILL", token.lower, at, at + 1, token.text)
        if token.kind == "word" and (token.lower in placed("links") or self.lexicon.is_filler(token.lower)):
            return Term("FILL", token.lower, at, at + 1, token.text)
        kind = "PROP" if token.lower in word_list("props") else "WORD"
        return Term(kind, token.lower, at, at + 1, token.text)

    def _word(self, amounts: Amounts, at: int, orders: frozenset[int], before: list[Term]) -> Term | None:
        """The longest entry of the lexicon that may stand here."""
        tokens = amounts.tokens
        colour = self._colour_end(amounts, at)
        if colour == at + 1 and at and tokens[at - 1].lower in placed("before_midnight") and amounts.at(at):
            return None  # "at midnight"
        plant = colour == at + 1 and not self._among_colours(tokens, at, before)
        green = next((m for m in self._matches(amounts, at) if m.entry.type == "FLAG"), None) if plant else None
        if green is not None:
            return Term("FLAG", green.entry.value, at, green.end, tokens[at].text)  # "with eucalyptus": greenery
        # There is no colour in "cherry picker".
        if colour > at and not any(m.entry.type == "ASIDE" and m.end > colour for m in self._matches(amounts, at)):
            text = " ".join(t.text for t in tokens[at:colour])
            return Term("COLOUR", " ".join(t.lower for t in tokens[at:colour]), at, colour, text)
        gone = tokens[at + 1].lower if at + 1 < len(tokens) else ""
        if gone in placed("gone") | {"a"} and self.lexicon.names.get(owner(tokens[at].lower)) == "COLOUR":
            return Term("COLOUR", owner(tokens[at].lower), at, at + 1, tokens[at].text)  # "the gold's gone"
        for match in self._matches(amounts, at):
            kept = match.entry.type in CONTENT or match.entry.value in KEPT
            if not kept and any(i in orders for i in range(at, match.end)):
                continue
            if match.entry.type == "PRON" and _begins_amount(match, amounts, at):
                continue
            if match.entry.type == "REMOVE" and not self._removes(amounts, at, match.end, before):
                continue
            if self._may_stand(match, amounts, before):
                text = " ".join(t.text for t in tokens[at : match.end])
                value = match.entry.value
                if match.entry.type == "COLOUR":
                    value = " ".join(match.entry.words)
                if match.entry.type == "ASIDE":
                    return Term("FILL", "aside", at, match.end, text)
                return Term(match.entry.type, value, at, match.end, text)
        return None

    def _matches(self, amounts: Amounts, at: int) -> list[Match]:
        """The entries at a token, looked up once a turn, however often it is read apart."""
        found = amounts.entries.get(at)
        if found is None:
            found = amounts.entries[at] = self.lexicon.matches(amounts.tokens, at)
        return found

    def _colour_end(self, amounts: Amounts, at: int) -> int:
        """The end of a colour at a token, looked up once a turn."""
        end = amounts.colours.get(at)
        if end is None:
            end = amounts.colours[at] = self.lexicon.colour_end(amounts.tokens, at)
        return end

    def _among_colours(self, tokens: Sequence[Token], at: int, before: list[Term]) -> bool:
        """Whether a word that is a colour and a plant stands in a row of colours."""
        said = [t for t in before[-2:] if t.type not in {"AND", "SEP", "FILL"}]
        leads = tokens[at - 1].lower if at else ""
        if said and said[-1].type == "COLOUR":
            return leads not in placed("before_plant")
        after = at + 1
        closed = after < len(tokens) and tokens[after].lower == ","
        if leads in placed("before_plant") and (leads != "with" or closed):
            return False  # "without eucalyptus, navy and gold"
        while after < len(tokens) and tokens[after].lower in {",", "and", "&"}:
            after += 1
        return after > at + 1 and after < len(tokens) and self.lexicon.colour_end(tokens, after) > after

    def _removes(self, amounts: Amounts, at: int, end: int, before: list[Term]) -> bool:
        """Words such as "drop" and "cut" take something away only where something to take follows."""
        if before and (before[-1].type in {"DET", "NUM", "LEN"} or before[-1].text.lower() in {"full", "half"}):
            return False
        if end >= len(amounts.tokens):
            return False
        if amounts.tokens[end].lower in placed("pointing"):
            return True
        kinds = {m.entry.type for m in self._matches(amounts, end)}
        things = {"COLOUR", "FLAG", "PRON"}
        if amounts.tokens[at].lower != "drop":
            things |= {"PIECE", "TABLE"}
        named = bool(kinds & things) and "CHOICE" not in kinds
        return (
            named
            or self.lexicon.colour_end(amounts.tokens, end) > end
            or (bool(amounts.at(end)) and at == 0 and amounts.tokens[at].lower != "drop")
        )

    def _may_stand(self, match: Match, amounts: Amounts, before: list[Term]) -> bool:
        entry = match.entry
        near = self.lexicon.near.get(f"{entry.type}.{entry.value}") or self.lexicon.near.get(entry.type)
        if near is None:
            if entry.type in {"BY", "TO"}:
                return (not before and entry.type == "BY") or (
                    bool(before)
                    and before[-1].type in AMOUNTS | {"FOOTER"}
                    and _next_amount(amounts, match.end, 0) is not None
                )
            return True
        if str(entry.value) in NUMBER_FOLLOWS:
            if _next_amount(amounts, match.end, 3, frozenset({"DUR"})) and self._shifts(amounts, match.end):
                return True  # "the party's an hour later"
            choice = _next_amount(amounts, match.end, 3, frozenset({"NUM", "CLOCK"}))
            hour = choice is not None and (choice.type == "CLOCK" or 1 <= choice.value.value <= HOURS)
            noun = match.entry.words[-1] not in placed("of_the_clock")
            things = choice is not None and bool(amounts.at(choice.end) or amounts.names(choice.end))
            if hour and noun and things and choice is not None and choice.type == "NUM" and amounts.at(match.end):
                return False  # "party ten six foot tables"
            if choice is not None and choice.type == "NUM" and noun and self._is_side(amounts, choice.end):
                return False  # "for a birthday 8 wide 7 high"
            return hour or _last_amount(before, frozenset({"CLOCK"}))
        if entry.type == "EACH_HOLDS":
            return _last_amount(before, frozenset({"NUM", "BALLOON"}))  # "7 a bunch", never "a bunch of 7"
        wanted = frozenset(near)  # type: ignore[call-overload]
        after = match.end
        while after < len(amounts.tokens) and amounts.tokens[after].lower in placed("moving"):
            after += 1  # "the guest list has gone up by 16"
        if after > match.end and amounts.tokens[after - 1].lower == "by":
            return any(choice.type in wanted for choice in amounts.at(after))
        return _last_amount(before, wanted) or _next_amount(amounts, match.end, 3, wanted) is not None

    def _is_side(self, amounts: Amounts, at: int) -> bool:
        """Whether what stands at a token makes the number before it a side of a piece, or of guests: "wide", "kids"."""
        found = self._matches(amounts, at) if at < len(amounts.tokens) else []
        return any(m.entry.type == "BY" or m.entry.value in SIDES | {"guests"} for m in found)

    def _shifts(self, amounts: Amounts, at: int) -> bool:
        """Whether a duration that begins within three words is how much later or earlier something is."""
        for first in range(at, min(at + 4, len(amounts.tokens))):
            end = next((choice.end for choice in amounts.at(first) if choice.type == "DUR"), 0)
            if 0 < end < len(amounts.tokens):
                return any(m.entry.value in SHIFTS for m in self._matches(amounts, end))
        return False


def _begins_amount(match: Match, amounts: Amounts, at: int) -> bool:
    """Whether the "one" of "each one" begins an amount: "each one point five metres long"."""
    last = match.end - 1
    return match.entry.words[-1] == "one" and last > at and any(c.end > match.end for c in amounts.at(last)[:1])


def _last_amount(before: list[Term], wanted: frozenset[str]) -> bool:
    """Whether the last terms, links left out, end in an amount of a wanted type."""
    for term in reversed(before[-3:]):
        if term.type in wanted:
            return True
        if term.type == "ADD" and term.value == "another":
            return "NUM" in wanted
        if term.type != "MORE" and (term.type != "FILL" or term.value not in placed("links")):
            return False
    return False


def _next_amount(amounts: Amounts, at: int, links: int, wanted: frozenset[str] | None = None) -> Choice | None:
    """The first choice of an amount at `at`, past at most `links` link words, of a wanted type."""
    for _ in range(links + 1):
        if at >= len(amounts.tokens):
            return None
        for choice in amounts.at(at):
            if choice.type != "SKIP" and (wanted is None or choice.type in wanted):
                return choice
        if amounts.tokens[at].lower not in placed("links"):
            return None
        at += 1
    return None


def _amount_terms(tokens: Sequence[Token], at: int, choice: Choice) -> list[Term]:
    text = " ".join(t.text for t in tokens[at : choice.end])
    first = Term(choice.type, choice.value, at, choice.end, text, choice.cost, choice.note)
    return [first, *(_amount_terms(tokens, at, choice.then) if choice.then else ())]
