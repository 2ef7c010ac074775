"""The conversation's hand on the house rules: what is told of every job is kept, shown, changed and forgotten."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant import quotes
from assistant.aside import aside
from assistant.house import HouseError, HouseRules, Rule
from assistant.house_words import Kept, Rows, kept_rules, rows_told, rules_heard
from assistant.job_words import is_undo
from assistant.layout import join, listed, paragraph
from assistant.reply import Reply
from assistant.state import State
from grammar.reading import Context, Reading
from grammar.talk.habits import Habit, is_mine, is_of_a_rule, names_of, read_habit
from rules import Book, load_book
from rules.house import House

if TYPE_CHECKING:
    from assistant.conversation import Conversation

MOST_SHOWN = 40
NAMED = frozenset({"gas", "foliage", "made_of"})  # what a price may be of, though it is no size
LOOSE = NAMED | {"sizes", "count"}
MOST_WORDS = 25  # of a turn that tells a price by the way
NOTHING_KEPT = 'There are no house rules yet; say, for instance, "remember: my rate is 38 an hour".'
NO_RULE = 'That was no rule that I can keep; say, for instance, "remember: 5 inch balloons are 11 cents".'
NO_SUCH_RULE = 'There is no such house rule; "house rules" shows those there are.'
WHICH_SIZE = 'Of which size of balloon? Say "5 inch", for instance.'


class Habits:
    """The house rules of one conversation; `notice` is said once, with the next reply."""

    def __init__(self, talk: "Conversation", rules: HouseRules | None) -> None:
        self.talk = talk
        self._rules = rules
        self.before: str | None = None  # the file before the last turn, where that turn changed it
        self.answered = False  # whether that turn was answered as a turn of the job as well
        self.waiting: Rows | None = None
        self.notice: list[str] = []

    def book(self) -> Book:
        """The rule book with the house rules over it; what of them is not sound is noticed."""
        if self._rules is None:
            return load_book()
        house = self._rules.house
        self.notice = [f"Left out of your house file: {fault}" for fault in house.faults]
        return house.book

    @property
    def rules(self) -> HouseRules:
        """The rules; in memory where the conversation was given none."""
        self._rules = self._rules or HouseRules()
        return self._rules

    @property
    def text(self) -> str:
        """The rules that hold, as TOML."""
        return self._rules.house.text if self._rules is not None else ""

    def take(self, text: str) -> Reply | None:
        """The answer to a turn that is about the house rules alone; None where it is of the job."""
        before, self.before = self.before, None
        waiting, self.waiting = self.waiting, None
        if before is not None and is_undo(text):
            self._lay(self.rules.put_back(before))
            return None if self.answered else self._say("Taken back: your house rules are as they were.", "undo")
        if waiting is not None and (told := waiting.completed(text)) is not None:
            return self._keep([], told)
        habit = read_habit(text)
        if habit is None:
            return None
        match habit.act:
            case "show":
                self.before = before  # it changes nothing, so what was last changed can still be taken back
                return self._show()
            case "forget all":
                return self._forget_all()
            case "ask":
                self.before = before
                return self._asked_for(habit.rest)
            case "forget":
                return self._forget(habit)
            case "last":
                return self._last()
            case "keep":
                return self._asked_to_keep(habit.rest)
            case "habit":
                return self._of_a_kind(text)
            case "mine":
                return self._told(text)

    def also(self, text: str, reply: Reply) -> Reply:
        """The reply to a turn of the job; to one that only told what goes for every job, that this is kept."""
        notes = self.notice
        self.notice = []
        rules = self._in_passing(text)
        if rules:
            kept = self._keeping(rules, before=self.talk.past[-1] if self.talk.past else None)
            self.answered = True
            notes = [*kept, *notes]
        if self._rules is not None and self._rules.trouble:
            notes, self._rules.trouble = [*notes, self._rules.trouble], ""
        blocks = [line for note in notes for line in paragraph(note, self.talk.width, "  ")]
        if not blocks:
            return reply
        if rules and not reply.question:
            return replace(reply, text=join([blocks]), unread=[])
        return replace(reply, text=join([[reply.text], blocks]))

    def _in_passing(self, text: str) -> list[Rule]:
        """The rules of a turn that tells of the house in words of its own and says nothing else."""
        habit = read_habit(text)
        if habit is None or not (habit.act == "habit" or (habit.act == "mine" and is_mine(text))):
            return []
        reading = self.talk.reader.read(habit.rest, Context())
        rules, refused = rules_heard(self.talk.book, reading, text)
        if refused or reading.doubts or reading.orders or reading.unread:
            return []
        of_the_job = habit.act == "mine" and any(mention.facts for mention in reading.mentions)
        return [] if of_the_job else rules

    # keeping ---------------------------------------------------------------------------------------------------------

    def _asked_to_keep(self, rest: str) -> Reply | None:
        told, left = rows_told(self.talk.book, self.talk.vocabulary, rest)
        reading = self.talk.reader.read(left, Context()) if any(map(str.isalnum, left)) else Reading()
        if told.rows or any(map(str.isdigit, "".join(reading.unread))):
            _leave_loose(reading, LOOSE)  # "..., 17 for the 11s" is no rule about sizes
        rules, refused = rules_heard(self.talk.book, reading, rest)
        if not (told.rows or rules):
            if reading.doubts:
                question = self.talk.asking.doubt(reading.doubts[0], self.talk.state).text
                return self._say(f"{question.removesuffix(' What is it?')} No rule was changed.", "remember")
            of_a_job = bool(refused or reading.mentions or reading.job or reading.orders)
            return None if of_a_job else self._say(NO_RULE, "remember")
        notes = [f"Not kept: {listed(refused)}; that belongs to one job."] if refused else []
        notes += [f"Not used: {', '.join(reading.unread)}."] if reading.unread else []
        return self._keep(rules, told, notes, reading.unread)

    def _told(self, text: str) -> Reply | None:
        """A price or a bag size told by the way, in a turn that says nothing else."""
        if len(text.split()) > MOST_WORDS:
            return None
        told, left = rows_told(self.talk.book, self.talk.vocabulary, text)
        by_itself = told.has_price or not any(map(str.isalnum, left))
        if not told.rows or (told.lacks_size and not by_itself):
            return None
        whole = self.talk.reader.read(text, Context())
        if not told.has_price and any(mention.kind and mention.facts.get("count") for mention in whole.mentions):
            return None  # "10 tables at 1.5 m, 60 cm wide" asks for something
        reading = self.talk.reader.read(left, Context())
        _leave_loose(reading, NAMED)
        says_more = reading.job or reading.orders or reading.doubts or (reading.unread and told.lacks_size)
        if says_more or any(mention.kind or mention.facts for mention in reading.mentions):
            return None
        notes = [f"Not used: {', '.join(reading.unread)}."] if reading.unread else []
        return self._keep([], told, notes, reading.unread)

    def _of_a_kind(self, text: str) -> Reply | None:
        """A habit of one kind of piece: it asks for no such piece, so it is no turn of the job."""
        rules = self._in_passing(text)
        return self._keep(rules) if any(rule.of_a_piece for rule in rules) else None

    def _last(self) -> Reply:
        """Keep what the last turn said."""
        if not self.talk.said:
            return self._say(NO_RULE, "remember")
        said = self.talk.said[-1]
        rules, _ = rules_heard(self.talk.book, self.talk.reader.read(said, Context()), said)
        return self._keep(rules) if rules else self._say(NO_RULE, "remember")

    def _keep(
        self, rules: list[Rule], told: Rows | None = None, notes: Sequence[str] = (), unread: Sequence[str] = ()
    ) -> Reply:
        if told is not None and told.lacks_size:
            self.waiting = told
            return self._say(WHICH_SIZE, "remember")
        try:
            rules = [*(told.rules() if told is not None else ()), *rules]
        except HouseError as error:
            return self._say(f"That was not kept: {error}.", "remember")
        lines = [line for note in (*self._keeping(rules), *notes) for line in paragraph(note, self.talk.width, "  ")]
        return replace(aside(self.talk, lines, "remember"), unread=list(unread))

    def _keeping(self, rules: list[Rule], before: State | None = None) -> list[str]:
        """Keep rules, and say so: one note for each, then what it does to the job, whose state was `before`."""
        talk, text = self.talk, self.rules.text
        was = quotes.frozen(talk.estimates.of(before or talk.state))
        had = {(one.rule.path, one.rule.at) for one in kept_rules(talk.book, self.text)}
        told = [Kept(talk.book, rule, (rule.path, rule.at) in had) for rule in rules]
        try:
            house = self.rules.keep(rules)
        except HouseError as error:
            return [f"That was not kept: {error}."]
        self._lay(house)
        self.before, self.answered = text, False
        notes = ["Kept for every job:", *(f"- {one.told()}" for one in told)]
        moved = quotes.changes(was, talk.estimates.of(talk.state), talk.state.metric)[0] if was else []
        return [*notes, *(["In this job:", *(f"- {row}" for row in moved)] if moved else [])]

    def _lay(self, house: House) -> None:
        self.talk.use(house.book)

    # showing and forgetting ------------------------------------------------------------------------------------------

    def _show(self) -> Reply:
        rules = kept_rules(self.talk.book, self.text)
        if not rules:
            return self._say(NOTHING_KEPT, "rules")
        lines = ["Your house rules:"]
        lines += [
            line
            for rule in rules[:MOST_SHOWN]
            for line in paragraph(f"- {rule.told(was=False)}", self.talk.width, "  ")
        ]
        if len(rules) > MOST_SHOWN:
            lines += paragraph(f"and {len(rules) - MOST_SHOWN} more.", self.talk.width)
        last = f"They are in {self.rules.path}." if self.rules.path else "They are kept until you leave."
        return aside(self.talk, [*lines, "", *paragraph(f'{last} Say "forget" and a rule.', self.talk.width)], "rules")

    def _asked_for(self, rest: str) -> Reply | None:
        """What a rule says, or the rule book where there is no rule."""
        names = names_of(rest)
        own = [one.told(was=False) for one in kept_rules(self.talk.book, self.text) if names and one.is_called(names)]
        facts = [Kept(self.talk.book, Rule(fact.id, None)) for fact in self.talk.book.every_fact() if fact.assume]
        book = [f"{one.told_by_book()}, by the rule book" for one in facts if names and one.is_named(names)]
        lines = [line for text in (own or book[:1]) for line in paragraph(f"{text}.", self.talk.width)]
        return aside(self.talk, [_capital(lines[0]), *lines[1:]], "rules") if lines else None

    def _forget(self, habit: Habit) -> Reply | None:
        names = names_of(habit.rest)
        found = [rule for rule in kept_rules(self.talk.book, self.text) if names and rule.is_called(names)]
        if not found:
            return self._say(NO_SUCH_RULE, "forget") if is_of_a_rule(habit.rest) else None
        if len({(rule.rule.kind, rule.rule.id) for rule in found}) > 1:
            return self._say(f"Which of them: {listed((rule.name for rule in found), 'or')}?", "forget")
        return self._drop(found)

    def _forget_all(self) -> Reply:
        rules = kept_rules(self.talk.book, self.text)
        return self._drop(rules) if rules else self._say(NOTHING_KEPT, "forget")

    def _drop(self, rules: list[Kept]) -> Reply:
        before = self.rules.text
        try:
            house = self.rules.forget([(one.rule.path, one.rule.at) for one in rules])
        except HouseError as error:
            return self._say(f"That was not forgotten: {error}.", "forget")
        self._lay(house)
        self.before, self.answered = before, False
        names = listed(one.name for one in rules)
        return self._say(f'Forgotten: {names}; the rule book\'s own holds again. "undo" brings it back.', "forget")

    def _say(self, text: str, intent: str) -> Reply:
        return aside(self.talk, paragraph(text, self.talk.width), intent)


def _leave_loose(reading: Reading, facts: frozenset[str]) -> None:
    """Take these facts out of a reading: beside a price they are what the price is of."""
    for mention in reading.mentions:
        mention.facts = {id: value for id, value in mention.facts.items() if id not in facts}


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
