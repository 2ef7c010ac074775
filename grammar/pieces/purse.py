"""Bare numbers that are of money or of nothing in hand: "she's only got 250", "350" beside one arch."""

from grammar.phrases import Phrase
from grammar.pieces.ground import MOST_COUNT, Ground
from grammar.pieces.heads import is_count
from grammar.pieces.jobfacts import LEAST_BUDGET
from grammar.reading import Doubt

MONEY_TALK = frozenset({"price", "cheaper", "choices", "drape", "each_table", "labour"})
FEW = 30  # so many pieces may be wanted where there was one
TIMES_MORE = 10  # and so many times as many as there are
ENDS = frozenset({"", "sep", "and", "word", "limit", "all", "add", "corr", "neg", "whatif", "gap"})
OWNERS = frozenset({"ours", "theirs"})


class Purse(Ground):
    """What the client can spend, said as a number alone; a number that is too great for pieces."""

    def _of_the_purse(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "she's only got 250", "we've 300 for it": money, where it is the topic or a third person has it."""
        if self._is_offer(at, number):
            self.orders.append("solve")
            return self.job.budget_of(phrase)
        had = self._before(at, "onhand") and str(self.phrases[at - 1].value)
        if had not in OWNERS or number < LEAST_BUDGET or self._owned(at) or not self._ends(at):
            return False
        told = "budget" in self.context.job or self.context.priced or bool({*self.orders} & MONEY_TALK)
        theirs = had == "theirs" and not self._asks_for_balloons()
        if not (self.context.kinds or self.drafts):
            return False
        if not (theirs and (told or self._absurd(number))) and not (told and self._talks_money()):
            return False
        return self.job.budget_of(phrase)

    def _is_offer(self, at: int, number: float) -> bool:
        """ "how much is that?" "can you do 500?": a number alone, too great for pieces, right after a price."""
        alone = all(p.kind in {"sep", "neg"} for p in (*self.phrases[:at], *self.phrases[at + 1 :]))
        told = self.context.intent in MONEY_TALK and not self.orders
        return alone and told and self._absurd(number) and not self._asks_for_balloons()

    def _talks_money(self) -> bool:
        """Whether the turn before or this one is about what it costs."""
        return self.context.intent in MONEY_TALK or self.context.topic == "budget" or bool({*self.orders} & MONEY_TALK)

    def _asks_for_balloons(self) -> bool:
        return self.context.intent == "solve" and "balloons" in self.context.known

    def _ends(self, at: int) -> bool:
        """Whether nothing follows that the number may be of."""
        kind, words = self._kind_at(at + 1), self.phrases[at + 1].text.lower() if at + 1 < len(self.phrases) else ""
        if kind == "amount":
            return is_count(self.phrases[at + 1])
        if kind == "prep":
            return self.phrases[at + 1].value == "for" and self._kind_at(at + 2) in {"pron", "all", "word"}
        return kind in ENDS or (kind == "pron" and not words.startswith("of "))

    def _absurd(self, number: float) -> bool:
        """Whether nobody wants so many pieces beside those in hand."""
        held = self.context.count or 1
        return bool(self.context.kinds) and number > max(FEW, TIMES_MORE * held)

    def _no_count(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "350" beside one arch: of money, of balloons? One short question, and nothing is kept."""
        alone = not self._owned(at) and not self.current.new and self._ends(at)
        answers = self.context.asked == "count" or self._needs_many()
        if not alone or answers or number > MOST_COUNT or not self._absurd(number):
            return False
        self.doubts.append(Doubt(kind="vague", fact="which", value=number, words=phrase.text))
        self.changing = True
        return True

    def _needs_many(self) -> bool:
        """Whether such pieces are made by the dozen."""
        words = self.slots.vocabulary.kinds.get(self._kind() or "")
        return words is not None and words.number != "count"
