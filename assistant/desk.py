"""The conversation's hand on the job book: each turn kept before its answer is shown, and jobs kept, opened and found.

A book that fails in the middle is let go in one sentence; the talk goes on with a book in memory.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from assistant import job_text, quotes
from assistant.aside import aside
from assistant.job_words import Order, is_undo, read_order, span_said
from assistant.jobs import JobBook, JobBookError, JobRow, in_memory, name_of
from assistant.layout import join, paragraph
from assistant.reply import Reply
from assistant.sheets.files import write
from assistant.speech import Said, spoken
from assistant.state import State
from assistant.terminal import one_line

if TYPE_CHECKING:
    from assistant.conversation import Conversation

MOST_LISTED = 12
NONE_HERE = "There is no job in hand yet; say what you are making first."
NO_FOLDER = "There is no folder here to write files into or to read them from."
ANOTHER = 'Another chat has added to this job as well; say "open" and its name to see both.'
OTHER_RULES = "The rule book or your own rules have changed since; this is by today's."
NO_QUOTE = 'Nothing was quoted for this job yet; say "quote it" and the numbers are kept.'


class Desk:
    """One conversation's place in the book: the job in hand, the one before it, and what was listed last."""

    def __init__(self, talk: "Conversation", book: JobBook) -> None:
        self.talk, self.book = talk, book
        self.job: int | None = None
        self.before: int | None = None  # the job that was in hand before "start over"
        self.put_away: int | None = None  # the job deleted in the last turn, which "undo" brings back
        self.kept = 0  # turns of the job in the book, as far as this conversation knows
        self.listed: list[int] = []
        self.noted: tuple[int, str, str] | None = None  # the rules that were noted with a job last
        self.notice = in_memory(JobBookError(book.trouble)) if book.trouble else ""

    def take(self, text: str) -> Reply:
        """Answer one turn; an order to the book is carried out, any other turn is answered and kept."""
        put_away, self.put_away = self.put_away, None
        try:
            order = read_order(text)
            if order is None and put_away is not None and is_undo(text):
                order = Order("restore", f"#{put_away}")
            reply = self._order(order, text) if order is not None else None
        except JobBookError as error:
            self._let_go(error)
            reply = self._reply(["That was not done."], "save")
        if reply is None:
            reply = self.talk.aside(text) or self._turn(text)
        if self.notice:
            blocks = [[reply.text], paragraph(self.notice, self.talk.width)]
            reply, self.notice = replace(reply, text=join(blocks)), ""
        return reply

    # turns -----------------------------------------------------------------------------------------------------------

    def _turn(self, text: str) -> Reply:
        talk = self.talk
        empty = not talk.state.pieces and not talk.state.job
        reply = talk.habits.also(text, talk.answer(text))
        if talk.state.intent == "undo" and empty and self.before is not None and not self._holds():
            return self._back(self.before)
        if talk.state.intent == "reset":
            talk.past, talk.future, talk.said = [State()], [], []
            self.before, self.job, self.kept = self.job or self.before, None, 0
        talk.said.append(talk.heard.said)
        self._keep([talk.heard.said])
        return reply

    def _back(self, job: int) -> Reply:
        try:
            return self._open(job)
        except JobBookError as error:
            self._let_go(error)
            return self._reply(["That was not done."], "undo")

    def _holds(self) -> bool:
        return bool(self.talk.state.pieces or self.talk.state.job)

    def _keep(self, said: list[str]) -> None:
        """Commit turns; where the book fails, the whole job goes on in memory."""
        try:
            with self.book.together():
                job = self.book.begin() if self.job is None else self.job
                count = self.book.add(job, said, self.talk.status())
                self._note_rules(job)
            self.job = job
        except JobBookError as error:
            self._let_go(error)
            return
        if count != self.kept + len(said):
            self.notice = ANOTHER
        self.kept = count

    def _note_rules(self, job: int) -> None:
        """Keep with the job by which rules it is worked out, where these are new."""
        now = job, self.talk.book.version, self.talk.habits.text
        if now != self.noted:
            self.book.work_by(*now)
            self.noted = now

    def _let_go(self, error: JobBookError) -> None:
        """Go on with a book in memory that holds the job in hand."""
        self.notice = in_memory(error)
        self.book.close()
        self.book = JobBook()
        self.job, self.before, self.listed, self.kept, self.noted = None, None, [], 0, None
        if self.talk.said:
            self.job = self.book.begin()
            self.kept = self.book.add(self.job, self.talk.said, self.talk.status())

    # orders ----------------------------------------------------------------------------------------------------------

    def _order(self, order: Order, text: str) -> Reply | None:
        """Carry the order out; None where the words were meant for the estimate after all."""
        orders: dict[str, Callable[[Order], Reply | None]] = {
            "save": self._save,
            "rename": self._rename,
            "copy": self._copy,
            "list": self._list,
            "find": lambda order: self._list(order) if self.book.find(order.name, most=1) else None,
            "deleted": self._deleted,
            "open": self._find_and_open,
            "delete": self._delete,
            "restore": self._restore,
            "export": self._export,
            "import": self._import,
            "quoted": self._quoted,
            "changed": self._changed,
            "backup": self._back_up,
        }
        return self._quote(text) if order.what == "quote" else orders[order.what](order)

    def _save(self, order: Order) -> Reply:
        if self.job is None or not self._holds():
            return self._say(NONE_HERE, "save")
        name = name_of(order.name)
        if not name:
            row = self.book.row(self.job)
            called = f'as "{row.name}"' if row and row.name else 'already; say "keep this as" and a name to give it one'
            return self._say(f"Every turn is kept, {called}.", "save")
        others = [row for row in self.book.find(name) if (row.name or "").casefold() == name.casefold()]
        self.book.rename(self.job, name)
        also = " Another job has that name too; this one is the newer." if any(r.id != self.job for r in others) else ""
        cut = " The name was cut short." if len(name) < len(one_line(order.name)) else ""
        return self._say(f'Kept as "{name}".{cut}{also}', "save")

    def _rename(self, order: Order) -> Reply | None:
        job = self._meant(order.other) if order.other else self.job
        name = name_of(order.name)
        if job is None or not name:
            return self._no_job(order.other, "save") if order.other else self._say(NONE_HERE, "save")
        self.book.rename(job, name)
        return self._say(f'It is called "{name}" now.', "save")

    def _copy(self, order: Order) -> Reply | None:
        job = self._meant(order.other) if order.other else self.job
        name = name_of(order.name)
        if job is None or not name:
            return self._no_job(order.other, "save") if order.other else self._say(NONE_HERE, "save")
        made = self.book.copy(job, name)
        return self._open(made, f'A copy, "{name}", is in hand now; the other stays as it was.')

    def _list(self, order: Order) -> Reply:
        now = datetime.now().astimezone()
        span = span_said(order.name, now)
        in_hand = None if order.name else [job for job in (self.job, self.before) if job is not None]
        words, (since, until) = "" if span else order.name, span or (None, None)
        rows = self.book.find(words, since, until, most=MOST_LISTED + 1, but_passing=in_hand)
        passing = in_hand is not None and len(self.book.find(most=MOST_LISTED + 1)) > len(rows)
        if not rows and not passing:
            what = f' for "{name_of(order.name)}"' if order.name else ""
            return self._say(f"No job is kept{what} yet." if not order.name else f"No job found{what}.", "list")
        more = f"The newest {MOST_LISTED}; " if len(rows) > MOST_LISTED else ""
        hint = f'{more}say "open 1" or "open" and a name.' if rows else "No job has a name or a second turn."
        if passing:
            hint += ' What was asked in one turn is found by a word: "jobs with garland".'
        return self._reply([*self._rows(rows[:MOST_LISTED]), "", *self._lines(_capital(hint))], "list")

    def _deleted(self, order: Order) -> Reply:
        rows = self.book.find(away=True, most=MOST_LISTED)
        if not rows:
            return self._say("No job was deleted.", "list")
        return self._reply([*self._rows(rows), "", *self._lines('Say "bring back" and a name.')], "list")

    def _rows(self, rows: list[JobRow]) -> list[str]:
        self.listed = [row.id for row in rows]
        told = ([row.name, spoken(row.summary), spoken(_day(row.changed))] for row in rows)
        numbered = (Said(f"{number}. {', '.join(filter(None, one))}") for number, one in enumerate(told, 1))
        return [line for text in numbered for line in self._lines(text, "   ")]

    def _find_and_open(self, order: Order) -> Reply | None:
        if order.name.lower() in {"last one", "last job", "last", "latest", "newest"}:
            row = next((row for row in self.book.find(most=2) if row.id != self.job), None)
            return self._open(row.id) if row else self._no_job(order.name, "open")
        job = self._meant(order.name)
        if job is not None:
            return self._open(job)
        found = self.book.find(order.name, most=MOST_LISTED)
        if len(found) == 1:
            return self._open(found[0].id)
        if found:
            return self._reply([*self._rows(found), "", *self._lines('Which one? Say "open 1", for instance.')], "open")
        return self._no_job(order.name, "open")

    def _delete(self, order: Order) -> Reply | None:
        """Only a job called so word for word, or where "job" was said: "delete the arch" is meant for the estimate."""
        called = self.book.called(name_of(order.name)) if order.name else None
        job = called.id if called else self._meant(order.other) if order.other else None if order.name else self.job
        if job is None:
            if order.name:
                return None
            return self._no_job(order.other, "delete") if order.other else self._say(NONE_HERE, "delete")
        row = self.book.row(job)
        self.book.put_away(job)
        if job == self.job:
            self.talk.begin_again(self.talk.heard.answered)
            self.job, self.before, self.kept = None, None, 0
        self.put_away = job
        name = f'"{row.name}"' if row and row.name else "The job"
        return self._say(f'{name} is deleted; "undo" brings it back.', "delete")

    def _restore(self, order: Order) -> Reply | None:
        if order.name.startswith("#") and order.name[1:].isdecimal():
            job: int | None = int(order.name[1:])
        else:
            row = self.book.called(name_of(order.name), away=True)
            job = row.id if row else self._numbered(order.name)
        if job is None or (found := self.book.row(job)) is None or found.deleted is None:
            return None
        self.book.put_away(job, away=False)
        return self._open(job, "It is back.")

    # opening ---------------------------------------------------------------------------------------------------------

    def _meant(self, name: str) -> int | None:
        """The job of exactly that name, else of that number in what was listed last."""
        row = self.book.called(name_of(name))
        if row is not None:
            return row.id
        number = self._numbered(name)
        found = self.book.row(number) if number is not None else None
        return found.id if found and found.deleted is None else None

    def _numbered(self, name: str) -> int | None:
        digits = name.lower().removeprefix("number ").removeprefix("no. ").strip()
        at = int(digits) if digits.isdecimal() and len(digits) < 4 else 0
        return self.listed[at - 1] if 1 <= at <= len(self.listed) else None

    def _no_job(self, name: str, intent: str) -> Reply | None:
        if any(mention.kind for mention in self.talk.reader.read(name).mentions):
            return None  # "open air arch, 10 ft" is no name
        return self._say(f'No job is called "{name_of(name)}"; say "my jobs" to see them.', intent)

    def _open(self, job: int, head: str = "") -> Reply:
        """Say the job's turns again, and show what it comes to."""
        turns, row, quote = self.book.turns(job), self.book.row(job), self.book.quoted(job)
        self.before = self.job if self.job != job else self.before
        self.talk.replay(turns)
        self.job, self.kept = job, len(turns)
        before = self.book.worked_by(job)
        called = f'"{row.name}"' if row and row.name else "The job"
        lines = self._lines(head or f"{called} is in hand again, {_turns(turns)}.")
        if any(before) and before != (self.talk.book.version, self.talk.habits.text):
            lines += self._lines(OTHER_RULES)
        if quote is not None:
            lines += self._lines(f"Quoted on {_day(quote.at)}: {quotes.told(quote.figures, self.talk.state.metric)}.")
        return self._reply(lines, "open", estimate=True)

    # files -----------------------------------------------------------------------------------------------------------

    def _export(self, order: Order) -> Reply | None:
        job = self._meant(order.name) if order.name else self.job
        row = self.book.row(job) if job is not None else None
        if row is None:
            return self._no_job(order.name, "export") if order.name else self._say(NONE_HERE, "export")
        if self.talk.folder is None:
            return self._say(NO_FOLDER, "export")
        quote = self.book.quoted(row.id)
        told = quotes.rows(quote.figures, metric=self.talk.state.metric) if quote else []
        house = quote.house if quote else self.talk.habits.text
        text = job_text.written(row, self.book.turns(row.id), quote, told, self.talk.book.version, house)
        try:
            path = write(self.talk.folder, _stem(row.name), ".txt", text)
        except OSError as error:
            return self._say(f"That could not be written here ({_reason(error)}); go to another folder.", "export")
        return self._say(f'Written to {path.name}; "import {path.name}" brings it back in.', "export")

    def _import(self, order: Order) -> Reply:
        if self.talk.folder is None:
            return self._say(NO_FOLDER, "import")
        try:
            path = self.talk.folder / order.name
            if not path.is_file():
                return self._say(f'There is no file called "{name_of(order.name)}" here.', "import")
            with path.open("rb") as file:
                told = job_text.read(file.read(job_text.LARGEST + 1))
        except (OSError, ValueError) as error:
            reason = str(error) if isinstance(error, job_text.NotAJob) else "it cannot be read"
            return self._say(f'"{name_of(order.name)}" was not brought in: {reason}.', "import")
        self.talk.replay(told.turns)
        job = self.book.begin(told.name)
        self.book.add(job, told.turns, self.talk.status())
        if told.quote is not None:
            self.book.quote(job, told.quote.figures, told.quote.book, told.quote.house, told.quote.at)
        return self._open(job, f"Brought in, {_turns(told.turns)}.")

    def _back_up(self, order: Order) -> Reply:
        if self.talk.folder is None:
            return self._say(NO_FOLDER, "backup")
        path = self.talk.folder / f"festoon-jobs-{datetime.now().astimezone():%Y-%m-%d-%H%M%S}.sqlite3"
        try:
            self.book.back_up(path)
        except JobBookError as error:
            return self._say(f"No copy was written, because {error}.", "backup")
        return self._say(f"All jobs are copied to {path.name}, an SQLite file.", "backup")

    # quotes ----------------------------------------------------------------------------------------------------------

    def _quote(self, text: str) -> Reply:
        """Answer with the price as ever, and keep the numbers."""
        reply = self._turn(text)
        figures = quotes.frozen(self.talk.estimates.of(self.talk.state))
        if self.job is None or not figures:
            return reply
        self.book.quote(self.job, figures, self.talk.book.version, self.talk.habits.text)
        note = 'These numbers are kept as quoted; ask "what changed since I quoted" at any time.'
        return replace(reply, text=join([[reply.text], self._lines(note)]))

    def _quoted(self, order: Order) -> Reply:
        quote = self.book.quoted(self.job) if self.job is not None else None
        if quote is None:
            return self._say(NO_QUOTE, "price")
        return self._reply(
            [f"Quoted on {_day(quote.at)}:", *map(spoken, quotes.rows(quote.figures, self.talk.state.metric))], "price"
        )

    def _changed(self, order: Order) -> Reply:
        quote = self.book.quoted(self.job) if self.job is not None else None
        if quote is None:
            return self._say(NO_QUOTE, "change")
        made = self.talk.estimates.of(self.talk.state)
        results, causes = quotes.changes(quote.figures, made, self.talk.state.metric)
        if not results:
            return self._say(f"Nothing: the numbers are those of the quote of {_day(quote.at)}.", "change")
        lines = [line for row in results for line in self._lines(f"- {row}", "  ")]
        if causes:
            lines += ["", "Because of", *(line for row in causes for line in self._lines(f"- {row}", "  "))]
        elif quote.book != self.talk.book.version:
            lines += ["", *self._lines("The rule book has changed since.")]
        return self._reply([f"Since the quote of {_day(quote.at)}:", *lines], "change")

    # replies ---------------------------------------------------------------------------------------------------------

    def _lines(self, text: str, indent: str = "") -> list[str]:
        return paragraph(text, self.talk.width, indent)

    def _say(self, text: str, intent: str) -> Reply:
        return self._reply(self._lines(text), intent)

    def _reply(self, lines: list[str], intent: str, *, estimate: bool = False) -> Reply:
        return aside(self.talk, lines, intent, estimate=estimate)


def _stem(name: str | None) -> str:
    """A file's name made of a job's: letters and digits of ASCII alone, never a path."""
    words = "".join(char if char.isascii() and char.isalnum() else " " for char in name or "").lower().split()
    return "-".join(["job", *words])[:60].rstrip("-")


def _turns(said: list[str]) -> str:
    return f"{len(said)} {'turn' if len(said) == 1 else 'turns'}"


def _day(at: float) -> str:
    moment = datetime.fromtimestamp(at).astimezone()
    return f"{moment.day} {moment:%b %Y}"


def _reason(error: OSError) -> str:
    return one_line(error.strerror or str(error)).lower()


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
