"""Facts of the whole job: money, people, times, weather, distance."""

import math
from typing import Any

from grammar.phrases import Figure, Phrase
from grammar.pieces.draft import outside
from grammar.pieces.slots import Slots
from grammar.reading import Context, Doubt
from grammar.terms import Amount
from grammar.word_files import placed

NOON, DAY = 12 * 60, 24 * 60
SMALL_HOURS = 6 * 60  # a party that begins before it begins in the night after its day
SIGNS = {"USD": "$", "GBP": "£", "EUR": "€"}
LEAST_BUDGET = 20  # below it a bare number is no budget, and money only after "under" or when a budget was asked for
ALONE = {"crew": 1}  # who says nothing of a crew is one
MONEY_ORDERS = frozenset({"solve", "price"})
HIGH_GROUND_FT = 500
PERCENT = 100  # of a whole: "half deposit"
MOST_HANDS = 10


class JobFacts:
    """Job facts of one turn; `facts` holds values in the unit of each fact, clocks in minutes after midnight."""

    def __init__(self, slots: Slots, context: Context, orders: list[str]) -> None:
        self.slots = slots
        self.context = context
        self.orders = orders
        self.facts: dict[str, Any] = {}
        self.dropped: list[str] = []
        self.doubts: list[Doubt] = []
        self.unused: list[Phrase] = []
        self.cost = 0.0
        self.clocks: dict[str, tuple[int, bool]] = {}

    def owns(self, label: str) -> bool:
        """Whether the label is a fact of the job."""
        if label == "round_trip":
            return True
        fact = self.slots.vocabulary.fact(label, "job")
        return fact is not None and "job" in fact.of

    def set(self, name: str, value: Any, words: str) -> None:
        """Keep a fact unless it is outside all sense."""
        fact = self.slots.vocabulary.fact(name, "job")
        if isinstance(value, float) and not math.isfinite(value):
            self.cost += 6.0
            return
        if isinstance(value, float):
            value = int(value) if value == int(value) else round(value, 4)
        if fact is not None and outside(fact, value):
            self.doubts.append(Doubt(kind="impossible", fact=name, value=value, words=words, piece="job"))
            self.cost += 3.0
            return
        self.facts[name] = value

    def named(self, at: int, phrase: Phrase, phrases: list[Phrase]) -> bool:
        """An amount with a label of the job; False where the two do not go together."""
        label, figure = phrase.label, phrase.amounts[-1]
        if label == "crew" and figure.type == "NUM" and phrase.text.lower().endswith("of us"):
            return self._of_us(at, phrase, phrases)
        if label == "guests" and "schedule" in self.orders and _hands(figure, phrase):
            label = "crew"
        if label in {"event_time", "setup_from"}:
            return self.shift(label, figure, at, phrases) or self._clock(label, figure, phrase)
        before = phrases[at - 1] if at else None
        if before is not None and before.kind == "add" and self.more(label, figure):
            return True
        if label == "budget":
            return self._budget(figure, phrase)
        if label == "round_trip" and isinstance(figure.high, Amount):
            label = "drive_distance"
            figure = _halved(figure)
        if label == "labour_rate" and figure.type not in {"NUM", "MONEY"}:
            return False
        if not isinstance(figure.high, Amount):
            return False
        if label == "temperature":
            return self._temperature(figure.high, phrase)
        fact = self.slots.vocabulary.fact(label, "job")
        if fact is None:
            return False
        if label == "labour_rate":
            self.set(label, figure.high.number, phrase.text)
            return True
        unit = figure.high.unit
        if unit and figure.type in {"LEN", "FAR", "SPEED", "DUR"}:
            value = self.slots.convert(figure.high.number, unit, fact.unit)
        else:
            value = figure.high.number * (PERCENT if figure.type == "FRAC" and fact.unit == "percent" else 1)
            if label == "wind" and self.context.metric:
                value = self.slots.convert(value, "km/h", fact.unit)
        if label == "altitude" and value < HIGH_GROUND_FT:
            return False
        self.set(label, value, phrase.text)
        return True

    def more(self, label: str, figure: Figure, *, sign: int = 1) -> bool:
        """ "ten more guests", "plus two helpers": as many more of what is known of the job, or fewer."""
        known = self.context.job.get(label, ALONE.get(label))
        if figure.type != "NUM" or not isinstance(known, (int, float)):
            return False
        self.set(label, known + sign * figure.high.number, label)
        return True

    def high_ground(self, figure: Figure) -> bool:
        """ "it's at 5500 feet": a length that no piece has is how high the place is."""
        fact = self.slots.vocabulary.fact("altitude", "job")
        if fact is None or not isinstance(figure.high, Amount) or not figure.high.unit:
            return False
        value = self.slots.convert(figure.high.number, figure.high.unit, fact.unit)
        if value < HIGH_GROUND_FT:
            return False
        self.set("altitude", value, "")
        return True

    def shift(self, label: str, figure: Figure, at: int, phrases: list[Phrase]) -> bool:
        """ "the party's an hour later": a time that is known, moved."""
        after = phrases[at + 1] if at + 1 < len(phrases) else None
        known = self.context.job.get(label)
        if figure.type != "DUR" or after is None or after.value not in {"later", "earlier"} or known is None:
            return False
        by = self.slots.convert(figure.high.number, figure.high.unit, "min")
        self.facts[label] = int(known + (by if after.value == "later" else -by)) % DAY
        return True

    def _of_us(self, at: int, phrase: Phrase, phrases: list[Phrase]) -> bool:
        """ "three of us": hands where it goes with work, guests where it goes with the party."""
        rest = " ".join(p.text.lower() for p in phrases[at + 1 : at + 3])
        party = any(
            word in rest
            for word in ("coming", "eating", "for dinner", "at the party", "sitting", "attending", "celebrating")
        )
        value = phrase.amounts[-1].high.number
        self.set("guests" if party or value > 12 else "crew", value, phrase.text)
        return True

    def amount(self, at: int, phrase: Phrase, phrases: list[Phrase]) -> bool:
        """An amount without a label that only the job can mean."""
        figure = phrase.amounts[0]
        if figure.type == "MONEY":
            if at and phrases[at - 1].kind == "word":
                return False  # "delivery is $45"
            if figure.high.number < LEAST_BUDGET and not self._wants_budget(at, phrases):
                return False  # "balloons are 11 cents": a price of something
            after = phrases[at + 1] if at + 1 < len(phrases) else None
            if {p.text.lower() for p in phrases[at + 1 : at + 3] if p.kind == "word"} & placed("paid_for"):
                return False  # "$40 for delivery", "a $40 toll"
            each = after is not None and (after.kind in {"each_holds", "per_row"} or after.value in {"each", "one"})
            return not each and self._budget(figure, phrase)
        if figure.type == "DUR":
            return self.shift("event_time", figure, at, phrases)
        if figure.type == "TEMP":
            return self._temperature(figure.high, phrase)
        if figure.type == "SPEED":
            self.set("wind", self.slots.convert(figure.high.number, figure.high.unit, "mph"), phrase.text)
            return True
        if figure.type == "PCT":
            return self.percent(at, phrase, phrases)
        return figure.type == "CLOCK" and "event_time" not in self.clocks and self._clock("event_time", figure, phrase)

    def percent(self, at: int, phrase: Phrase, phrases: list[Phrase]) -> bool:
        """ "10 % more": spares, where nothing else takes it."""
        nxt = phrases[at + 1] if at + 1 < len(phrases) else None
        if nxt is not None and nxt.kind == "more" and nxt.value == "more":
            self.set("spare", phrase.amounts[0].high.number, phrase.text)
            return True
        return False

    def number(self, at: int, phrase: Phrase, phrases: list[Phrase]) -> bool:
        """A bare number that is a budget ("under 600", "do it for 300")."""
        figure = phrase.amounts[0]
        before = phrases[at - 1] if at else None
        after = phrases[at + 1] if at + 1 < len(phrases) else None
        value = figure.high.number
        capped = after is not None and after.kind == "limit" and after.value == "most" and value >= LEAST_BUDGET
        if capped and (at + 2 >= len(phrases) or phrases[at + 2].kind in {"sep", "and"}):
            return self._budget(figure, phrase)  # "250 tops"
        alone = after is None or after.kind in {"sep", "and", "word", "whatif", "neg", "add"}
        if before is None or value < LEAST_BUDGET or not alone:
            return False
        asked = before.kind == "prep" and before.value == "for" and bool(MONEY_ORDERS & set(self.orders))
        if asked or self._wants_budget(at, phrases):
            return self._budget(figure, phrase)
        return False

    def budget_of(self, phrase: Phrase) -> bool:
        """Keep a bare number as the budget, in the money of the budget in hand."""
        known = (self.context.budget or {}).get("currency")
        kept = self._budget(phrase.amounts[0], phrase)
        if known and "budget" in self.facts:
            self.facts["budget"].setdefault("currency", known)
        return kept

    def _wants_budget(self, at: int, phrases: list[Phrase]) -> bool:
        """Whether what is at `at` was asked for as a budget, or stands after "under"."""
        return self.context.asked == "budget" or (at > 0 and phrases[at - 1].kind == "limit")

    def _budget(self, figure: Figure, phrase: Phrase) -> bool:
        amount = figure.high
        if not isinstance(amount, Amount) or figure.type not in {"MONEY", "NUM"}:
            return False
        if amount.number <= 0:
            self.doubts.append(
                Doubt(kind="impossible", fact="budget", value=amount.number, words=phrase.text, piece="job")
            )
            return True
        number = int(amount.number) if amount.number == int(amount.number) else amount.number
        budget: dict[str, Any] = {"amount": number}
        if amount.unit:
            budget["currency"] = SIGNS.get(amount.unit, amount.unit)
        self.facts["budget"] = budget
        return True

    def _temperature(self, amount: Any, phrase: Phrase) -> bool:
        if not isinstance(amount, Amount):
            return False
        unit = amount.unit
        if unit in {"", "deg"}:
            unit = "degC" if self.context.metric and amount.number <= 55 else "degF"
        self.set("temperature", self.slots.convert(amount.number, unit, "degF"), phrase.text)
        return True

    # clock -----------------------------------------------------------------------------------------------------------

    def _clock(self, label: str, figure: Figure, phrase: Phrase) -> bool:
        """Keep a time of day; whether it is before or after noon is settled at the end."""
        if figure.type == "CLOCK" and isinstance(figure.high, tuple):
            self.clocks[label] = figure.low if isinstance(figure.low, tuple) else _until(figure.low.number, figure.high)
            return True
        if figure.type == "NUM" and isinstance(figure.high, Amount):
            hour, minutes = divmod(round(figure.low.number * 100), 100)  # "starts 7.45"
            if 1 <= hour <= 24 and minutes < 60 and (minutes == 0 or phrase.text[-3:-2] == "."):
                self.clocks[label] = (hour % 24 * 60 + minutes, hour > 12)
                return True
        return False

    def settle(self) -> None:
        """Clocks to times of day; a markup and a margin at once are two prices."""
        if "markup" in self.facts and "margin" in self.facts:
            options = [self.facts.pop("markup"), self.facts.pop("margin")]
            self.doubts.append(Doubt(kind="contradiction", fact="markup or margin", options=options, piece="job"))
        self._settle_clocks()

    def _settle_clocks(self) -> None:
        """Turn the clocks into times of day that make a party day, set-up before the party."""
        event = self.clocks.get("event_time")
        setup = self.clocks.get("setup_from")
        known = self.context.event_minutes
        event_at = _afternoon(event) if event else known
        if event:
            self.facts["event_time"] = event_at
        if setup:
            self.facts["setup_from"] = _before(setup, event_at)
        small_hours = event is not None and self.facts["event_time"] < SMALL_HOURS
        if small_hours and setup and self.facts["setup_from"] >= NOON:
            return  # "party at 1 am, set-up from 10 pm": the evening before
        if setup and event and self.facts["setup_from"] >= self.facts["event_time"]:
            self.doubts.append(
                Doubt(
                    kind="contradiction",
                    fact="setup_from",
                    options=[self.facts.pop("setup_from"), self.facts.pop("event_time")],
                    piece="job",
                )
            )
            self.cost += 1.0


def _hands(figure: Figure, phrase: Phrase) -> bool:
    """ "how long will it take two people": those who work."""
    people = phrase.text.lower().split()[-1] in {"people", "persons", "ppl", "friends", "mates"}
    return people and isinstance(figure.high, Amount) and figure.high.number <= MOST_HANDS


def _afternoon(clock: tuple[int, bool]) -> int:
    """Minutes after midnight of a party: one to nine is the afternoon or evening."""
    minutes, sure = clock
    return minutes if sure or not 60 <= minutes < 10 * 60 else minutes + NOON


def _until(hour: float, end: tuple[int, bool]) -> tuple[int, bool]:
    """The last such hour before the end: two in "2 to 4 pm", eleven in the morning in "11 to 2 pm"."""
    minutes, sure = end
    begin = int(hour * 60) % NOON
    return max((at for at in (begin, begin + NOON) if at <= minutes), default=begin + NOON), sure


def _before(clock: tuple[int, bool], event: int | None) -> int:
    """Minutes after midnight of a set-up: seven to eleven is morning, one to six afternoon if before the party."""
    minutes, sure = clock
    if sure:
        return minutes
    later = minutes + NOON if minutes < NOON else minutes
    if minutes < 7 * 60 and (event is None or later < event):
        return later
    return minutes


def _halved(figure: Figure) -> Figure:
    half = Amount(figure.high.value / 2, figure.high.unit)
    return Figure(figure.type, half, half)
