"""The conversation: turns in, replies out; what was said is the state."""

import gc
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import replace
from functools import cache, lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from assistant import remarked
from assistant.apply import Apply
from assistant.asked import ONLY_ASKED, prepare
from assistant.asking import Asking
from assistant.estimating import Estimates
from assistant.finished import Finished
from assistant.habits import Habits
from assistant.reply import Reply
from assistant.speech import speaking, spoken
from assistant.state import Pending, State, restored
from assistant.stock import read_stock
from assistant.summary import summary
from assistant.turns import LEAVING
from assistant.vocabulary import make_vocabulary
from assistant.which import answered
from assistant.writing import Writer
from grammar.numbers.quantities import read_quantities
from grammar.reader import Reader
from grammar.reading import Context, Reading
from grammar.tokens.ears import Heard
from grammar.vocabulary import Vocabulary
from rules import Book
from rules.units import convert

if TYPE_CHECKING:
    from assistant.desk import Desk
    from assistant.house import HouseRules
    from assistant.jobs import JobBook
    from assistant.outside import Reply as Outside

FIRST = frozenset({"first", "original", "beginning"})  # "go back to the first"
MOST_UNDONE = 20
LONGEST = 10_000  # letters of one turn
WALKS = frozenset({"why", "explain", "sure", "matters", "assumed", "sources", "cautions"})
LIMITS = frozenset({"budget", "crew"})  # facts of the job that a question of what fits goes on with
KEEPS_NOTHING = frozenset({"undo", "restore", "redo", "reset", "help"})


class Conversation:
    """One consult. `width` is the number of columns that replies are laid out for.

    `folder` is where sheets are written when they are asked for, `jobs` the book in which every turn is kept before it
    is answered, `house` the rules that hold for every job; without them nothing is read or written.

    Same words, same answers: chance plays no part.
    """

    def __init__(
        self,
        book: Book | None = None,
        *,
        width: int = 40,
        folder: Path | None = None,
        jobs: "JobBook | None" = None,
        house: "HouseRules | None" = None,
    ) -> None:
        self.width = width
        self.folder = folder
        self.habits = Habits(self, house)
        self.finished = Finished(self, jobs)
        self.use(book or self.habits.book())
        self.begin_again()
        self.desk = _desk(self, jobs) if jobs is not None else None

    def use(self, book: Book) -> None:
        """Work with this book from now on; what was said stays."""
        self.book = book
        self.vocabulary, self.reader = _reading_of(book)
        self.estimates = Estimates(book)
        self.asking = Asking(book, self.vocabulary, self.estimates)

    def begin_again(self, answered: str = "") -> None:
        """As if nothing had been said, and go on answering in a language."""
        self.state = State()
        self.past: list[State] = []
        self.future: list[State] = []
        self.minded: set[str] = set()  # dangers named so far, which need not be named again
        self.heard = Heard("", "", answered=answered)  # the last turn, as said and in the reader's words
        self.said: list[str] = []  # the turns that, said again, give the job in hand

    def say(self, text: str) -> "Outside":
        """Take one turn and answer it. Any text is answered; what is not kept is named."""
        return self.reply_to(text).outside()

    def reply_to(self, text: str) -> Reply:
        """The same answer, for the command and the chat."""
        with _no_collecting():
            words = self.hear(text[:LONGEST])
            with self._in_its_language():
                return self._answered(words)

    def _in_its_language(self) -> AbstractContextManager[None]:
        return speaking(self.heard.answered, self.reader.lexicon.colour_words)

    def _answered(self, words: str) -> Reply:
        """The answer to a turn, kept as said where there is a job book."""
        if self.desk is not None:
            return self.desk.take(words)
        reply = self.aside(words)
        if reply is None:
            reply = self.habits.also(words, self.answer(words))
            self.said.append(self.heard.said)
        return reply

    def hear(self, text: str) -> str:
        """A turn in the reader's own words, whatever language it was said in; the next turn goes on in that one."""
        before = self.heard
        self.heard = self.reader.ears.hear(text, before if before.said else None)
        if not before.said and not self.heard.answered and self.heard.text == text:
            self.heard = replace(self.heard, answered=before.answered)
        return self.heard.text

    def aside(self, text: str) -> Reply | None:
        """The answer to a turn that is about house rules or finished jobs, and none of the job in hand."""
        return self.habits.take(text) or self.finished.take(text)

    def replay(self, turns: list[str]) -> None:
        """Begin again and say these turns; nothing is written, no sheet and no turn. Where one fails, all stays."""
        before = self.state, self.past, self.future, self.minded, self.said, self.heard
        folder, self.folder = self.folder, None
        try:
            self.begin_again()
            for text in turns:
                self.answer(self.hear(text))
                self.said.append(text)
        except BaseException:
            self.state, self.past, self.future, self.minded, self.said, self.heard = before
            raise
        finally:
            self.folder = folder

    def take_up(self, other: "Conversation") -> None:
        """Go on where another conversation stood after its last whole turn, with its job book."""
        self.habits = other.habits
        self.habits.talk = self
        self.finished = other.finished
        self.finished.talk = self
        self.use(other.book)
        self.replay(other.said if other.desk is None else other.said[: other.desk.kept])
        self.desk = other.desk
        if self.desk is not None:
            self.desk.talk = self

    def answer(self, text: str) -> Reply:
        """The answer to a turn, which is not kept anywhere but in the state."""
        before = self.state
        stock = read_stock(text, self.vocabulary, self.book, before)
        reading = self.heard.told(stock or self.reader.read(text, self._context()))
        if not stock:
            remarked.hear(self.book, before, reading)
        if "again" in reading.orders:
            reading.orders = [before.intent] if before.intent in {"undo", "redo"} else []
        now = before.copy()
        now.intent = None
        now.metric = now.metric or reading.metric
        if reading.orders and reading.orders[0] in KEEPS_NOTHING:
            now = self._order(reading.orders[0], reading, before)
        else:
            now = self._take(now, reading)
        self.state = now
        made, was = self.estimates.of(now), self.estimates.of(before, now.metric)
        reply = self.writer().reply(before, now, reading, made, was)
        made.let_go()
        self.minded |= {caution.split(":")[0].lower() for caution in reply.cautions}
        return reply

    def writer(self) -> Writer:
        """Who writes replies for this width."""
        return Writer(self.book, self.vocabulary, self.width, frozenset(self.minded), self.folder)

    # a turn ----------------------------------------------------------------------------------------------------------

    def _take(self, now: State, reading: Reading) -> State:
        """The state after a turn that says something."""
        before = self.state
        if reading.orders and reading.orders[0] in WALKS and before.pieces:
            reading.mentions, reading.doubts, reading.unread, reading.job = [], [], [], {}  # "why 2016" tells nothing
        if reading.orders and reading.orders[0] in ONLY_ASKED and before.pieces:
            reading.mentions, reading.doubts, reading.unread, reading.job = [], [], [], {}
        open_question = before.pending
        now.pending = None
        if open_question is not None and open_question.mention is not None:
            mention = answered(reading, open_question.mention, now.pieces)
            if mention is not None:
                reading.mentions, reading.changing = [mention], True
        apply = Apply(now, self.vocabulary)
        apply.run(reading)
        now.topic = reading.topic or now.topic
        self.asking.resolve(now, reading, open_question)
        changed = now.pieces != before.pieces or now.job != before.job
        now.intent = self._intent(before, reading, changed, open_question is not None)
        now.priced = now.priced or now.intent == "price"
        now.solved = reading.text if now.intent == "solve" else "" if changed else now.solved
        left_open = prepare(self.book, now, reading)
        changed = now.pieces != before.pieces or now.job != before.job
        now.pending = (
            left_open
            or self.asking.which(apply.unclear, now)
            or self.asking.fewer(apply.too_many)
            or self.asking.next(now, reading, apply.missed, bool(before.pieces or before.job))
        )
        now.moved = changed and bool(before.pieces)
        now.idle = not (changed or now.pending or reading.orders) and bool(before.pieces) and bool(reading.unread)
        if changed or now.pending:
            self.past.append(before)
            self.future.clear()
        return now

    def _intent(self, before: State, reading: Reading, changed: bool, answering: bool) -> str | None:
        if reading.orders:
            return reading.orders[0]
        others = set(reading.job) - LIMITS or any(mention.removed or mention.new for mention in reading.mentions)
        if before.intent == "solve" and changed and (answering or not others):
            return "solve"
        if before.intent == "schedule" and set(reading.job) == {"crew"} and not any(m.facts for m in reading.mentions):
            return "schedule"  # "and with three of us?"
        complete = bool(before.pieces) and not answering
        again = not reading.asks and any(
            mention.facts for mention in reading.mentions
        )  # what stands already, said once more
        if complete and (changed or again or reading.changing or reading.doubts):
            return "change"
        if reading.changing and not before.pieces and not changed:
            return "change"
        if answering and not changed and reading.changing:
            return "change"
        return None

    def _order(self, order: str, reading: Reading, before: State) -> State:
        """Undo, restore, redo, reset and help leave or bring back whole states."""
        back = restored(before, self.past) if order == "restore" else None
        if back is not None:
            self.past.append(before)
            self.future.clear()
            now = back
        elif order in ("undo", "restore"):
            if before.idle and not FIRST & {*reading.text.lower().replace(",", " ").split()}:
                return replace(before.copy(), idle=False, intent=order)
            now, here = State(), before
            for _ in range(self._how_far_back(reading.text)):
                now = self.past.pop().copy() if self.past else State()
                if self.past or here.pieces or here.job:
                    self.future.append(here)
                here = now
        elif order == "redo":
            now = self.future.pop().copy() if self.future else before.copy()
            self.past.append(before)
        elif order == "reset":
            self.past.append(before)
            now = State()
        else:
            now = before.copy()
        now.intent = order
        if order == "reset":
            rest = Reading(mentions=[m for m in reading.mentions if m.facts and m.kind], job=reading.job)
            if rest.mentions or rest.job:
                Apply(now, self.vocabulary).run(rest)
                now.pending = self.asking.next(now, rest, [], False)
        return now

    def _how_far_back(self, text: str) -> int:
        """How many changes are taken back: those named, or all since the first estimate."""
        if not FIRST & {*text.lower().replace(",", " ").split()}:
            return _how_often(text)
        whole = (at for at, state in enumerate(self.past) if state.pieces and state.pending is None)
        return len(self.past) - next(whole, len(self.past) - 1)

    def _changed_last(self) -> list[int]:
        """The places of the pieces that came or changed in the last turn that changed anything."""
        before = self.past[-1].pieces if self.past else []
        return [at for at, piece in enumerate(self.state.pieces) if piece not in before]

    def _context(self) -> Context:
        """What the reader has to know of what is in hand."""
        state = self.state
        focused = state.focused
        pending = state.pending
        return Context(
            kinds=[piece.kind for piece in state.pieces],
            held=[dict(piece.facts) for piece in state.pieces],
            called=[piece.called for piece in state.pieces],
            recent=self._changed_last(),
            focus=focused.kind if focused else None,
            asked=pending.fact if pending and pending.fact else None,
            options=[str(o) for o in pending.doubt.options] if pending and pending.doubt else [],
            metric=state.metric,
            refused=_refused(pending),
            known=list(focused.facts) if focused else [],
            topic=state.topic,
            event_minutes=state.job.get("event_time"),
            intent=state.intent,
            priced=state.priced,
            sharing=_sharing(pending),
            values=dict(focused.facts) if focused else {},
            budget=state.job.get("budget"),
            job=dict(state.job),
            count=focused.facts.get("count") if focused else None,
            several=bool(focused and focused.several and "count" not in focused.facts),
            foreign=self.heard.foreign,
            draped=bool(focused and str(focused.facts.get("coverage")).startswith("drop")),
            colours=frozenset(c["name"] for piece in state.pieces for c in piece.facts.get("colours", ())),
        )

    # the screen's questions ------------------------------------------------------------------------------------------

    def complete(self, before: str) -> list[str]:
        """Words that may go on from what is typed, as whole words in place of the last one."""
        word = before.rsplit(" ", maxsplit=1)[-1].lower() if before else ""
        if len(word) < 2:
            return []
        return [w for w in self.reader.lexicon.mendable if w.startswith(word) and w != word][:8]

    def painted(self, text: str, depth: int = 24) -> str:
        """The text of the last reply with its picture, if it holds one, in so many bits of colour, 8 or 24."""
        if self.state.intent != "picture":
            return text
        from assistant.sheets.answers import painted

        with self._in_its_language():
            return painted(text, self.state, self.estimates.of(self.state), self.width, depth)

    def told(self, sentence: str) -> str:
        """A sentence of the screen's own, in the language of the last turn."""
        with self._in_its_language():
            return spoken(sentence)

    def leaves(self, text: str) -> bool:
        """Whether the words ask to end the talk; they are no turn of it."""
        return self.reader.ears.hear(text).text.strip(" .!").lower() in LEAVING

    def status(self) -> str:
        """The job so far, in one line."""
        return summary(self.book, self.state)


def _desk(talk: Conversation, jobs: "JobBook") -> "Desk":
    from assistant.desk import Desk

    return Desk(talk, jobs)


@lru_cache(maxsize=2)  # the shipped book, and that of the house
def _reading_of(book: Book) -> tuple[Vocabulary, Reader]:
    """The words of a book and their reader, which all conversations over that book share."""
    vocabulary = make_vocabulary(book)
    made = vocabulary, Reader(vocabulary, convert)
    _settle()
    return made


@contextmanager
def _no_collecting() -> Iterator[None]:
    """No looking for garbage within a turn, in which much is made that goes by itself."""
    wanted = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if wanted:
            gc.enable()


@cache
def _settle() -> None:
    """Once: what was made so far stays, and looking for garbage in it would hold up a turn every now and then."""
    gc.freeze()


def _how_often(text: str) -> int:
    """ "undo the last two" is two."""
    numbers = [q.value for q in read_quantities(text) if q.kind == "number" and q.value == int(q.value)]
    return int(numbers[0]) if numbers and 1 <= numbers[0] <= MOST_UNDONE else 1


def _refused(pending: Pending | None) -> tuple[str, float] | None:
    """The fact and the number of a size that could not be, where the open question is about it."""
    doubt = pending.doubt if pending is not None else None
    if doubt is None or doubt.kind != "impossible" or not isinstance(doubt.value, int | float):
        return None
    return doubt.fact, doubt.value


def _sharing(pending: Pending | None) -> str:
    """The colour of which the open question asks how much it is."""
    doubt = pending.doubt if pending is not None else None
    return str(doubt.value) if doubt is not None and (doubt.kind, doubt.fact) == ("vague", "colours") else ""
