"""The job book: every job's turns in one SQLite file that its owner alone can read.

A job is its turns: said again in their order they give the same job. Nothing here knows what a turn means. Every change
is one transaction, on disk when the call returns; several programs may have the same book open.
"""

import os
import sqlite3
import time
from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path

from assistant.job_schema import NotAJobBook, bring_up
from assistant.terminal import one_line
from rules.record import record

FILE = "jobs.sqlite3"
LONGEST_NAME = 80  # letters
SEARCHED = 4000  # letters of a job's words that are searched
PATIENCE = 10.0  # seconds to wait for another chat that writes
POLL = 0.002  # seconds between tries
_COLUMNS = "id, name, made, changed, summary, deleted, (SELECT count(*) FROM turns WHERE job = jobs.id)"


class JobBookError(Exception):
    """The book cannot be read or written; str() says why in a few words."""


@record
class JobRow:
    """A job as it is listed; times are seconds since 1970 (POSIX)."""

    id: int
    name: str | None
    made: float
    changed: float
    summary: str
    deleted: float | None
    turns: int


@record
class Quote:
    """A quote given: when, its figures as JSON, and the book's version and house rules then in force."""

    at: float
    figures: str
    book: str
    house: str


@record
class UsedRow:
    """What a finished job used, of what the book expected, for one lesson of the rule book (rules/lessons.py)."""

    lesson: str
    kind: str
    used: float
    expected: float
    low: float
    high: float
    said: str
    job: int = 0
    id: int = 0


def name_of(text: str) -> str:
    """What was said as a name: one line without control codes or marks that turn the text, of at most 80 letters."""
    return one_line(text)[:LONGEST_NAME].strip()


class JobBook:
    """The book in that file; in memory, gone with the object, where `path` is None. JobBookError from every call."""

    def __init__(self, path: Path | None = None, trouble: str = "") -> None:
        self.path, self.trouble = path, trouble  # the latter: why it is in memory, where it should not be
        with _plainly():
            if path is not None:
                _make_private(path)
            self._db = sqlite3.connect(
                str(path) if path is not None else ":memory:",
                timeout=PATIENCE,
                isolation_level=None,  # transactions are begun and ended here alone
                check_same_thread=False,  # the chat loads in one thread and talks in another, never in both at once
            )
            try:
                self._db.execute("PRAGMA foreign_keys = ON")
                bring_up(self._db)  # first of all: what is no book of ours is not touched
                self._db.execute("PRAGMA journal_mode = WAL")
                self._db.execute("PRAGMA synchronous = FULL")
            except BaseException:
                self._db.close()
                raise

    def close(self) -> None:
        """End all use of the file."""
        self._db.close()

    def together(self) -> AbstractContextManager[None]:
        """All that is written within it is on disk at its end, in one go, or nothing of it."""
        return self._writing()

    # one job ---------------------------------------------------------------------------------------------------------

    def begin(self, name: str | None = None) -> int:
        """A new job; its number."""
        now = time.time()
        with self._writing():
            made = self._db.execute(
                "INSERT INTO jobs (name, made, changed, words) VALUES (?, ?, ?, ?)",
                (name, now, now, (name or "").casefold()),
            )
            return int(made.lastrowid or 0)

    def add(self, job: int, said: list[str], summary: str) -> int:
        """Add turns at the job's end; how many it has then. The job becomes the newest."""
        now = time.time()
        with self._writing():
            row = self._db.execute("SELECT coalesce(max(place), 0) FROM turns WHERE job = ?", (job,)).fetchone()
            last = int(row[0])
            for place, text in enumerate(said, last + 1):
                self._db.execute("INSERT INTO turns VALUES (?, ?, ?, ?)", (job, place, text, now))
            self._db.execute(
                "UPDATE jobs SET changed = ?, summary = ?, words = substr(words || ' ' || ?, 1, ?) WHERE id = ?",
                (now, summary, " ".join(said).casefold(), SEARCHED, job),
            )
        return last + len(said)

    def work_by(self, job: int, book: str, house: str) -> None:
        """Note by which version of the rule book and which house rules the job was last worked out."""
        with self._writing():
            self._db.execute("UPDATE jobs SET book = ?, house = ? WHERE id = ?", (book, house, job))

    def worked_by(self, job: int) -> tuple[str, str]:
        """Rule book's version and house rules by which the job was last worked out, "" where nothing is noted."""
        with _plainly():
            found = self._db.execute("SELECT book, house FROM jobs WHERE id = ?", (job,)).fetchone()
        return (str(found[0]), str(found[1])) if found else ("", "")

    def turns(self, job: int) -> list[str]:
        """What was said, in order."""
        with _plainly():
            rows = self._db.execute("SELECT said FROM turns WHERE job = ? ORDER BY place", (job,)).fetchall()
        return [str(row[0]) for row in rows]

    def row(self, job: int) -> JobRow | None:
        """The job as it is listed, put away or not."""
        with _plainly():
            found = self._db.execute(f"SELECT {_COLUMNS} FROM jobs WHERE id = ?", (job,)).fetchone()  # noqa: S608
        return JobRow(*found) if found else None

    def rename(self, job: int, name: str) -> None:
        """Give the job a name; it can be found by the old one, too."""
        with self._writing():
            self._db.execute(
                "UPDATE jobs SET name = ?, words = substr(? || ' ' || words, 1, ?) WHERE id = ?",
                (name, name.casefold(), SEARCHED, job),
            )

    def copy(self, job: int, name: str) -> int:
        """Another job of the same turns; quotes stay with the old one."""
        row = self.row(job)
        with self._writing():
            made = self.begin(name)
            self.add(made, self.turns(job), row.summary if row else "")
        return made

    def put_away(self, job: int, *, away: bool = True) -> None:
        """Take the job out of the lists, or bring it back."""
        with self._writing():
            self._db.execute("UPDATE jobs SET deleted = ? WHERE id = ?", (time.time() if away else None, job))

    # finding ---------------------------------------------------------------------------------------------------------

    def find(
        self,
        words: str = "",
        since: float | None = None,
        until: float | None = None,
        *,
        away: bool = False,
        most: int = 50,
        but_passing: Sequence[int] | None = None,
    ) -> list[JobRow]:
        """Jobs that hold all the words and were changed in that span of time, the newest first.

        Jobs without a name or a piece are left out; with `but_passing` also what was asked in passing, a single turn
        without a name, but for the jobs of these numbers.
        """
        where = ["deleted IS NOT NULL" if away else "deleted IS NULL", "(name IS NOT NULL OR summary != '')"]
        values: list[object] = []
        if but_passing is not None:
            places = ", ".join("?" * len(but_passing))
            more = "EXISTS (SELECT 1 FROM turns WHERE job = jobs.id AND place = 2)"
            where.append(f"(name IS NOT NULL OR id IN ({places}) OR {more})")
            values += but_passing
        for word in words.casefold().split():
            where.append("instr(words, ?)")
            values.append(word)
        if since is not None and until is not None:
            where.append("changed >= ? AND changed < ?")
            values += [since, until]
        query = f"SELECT {_COLUMNS} FROM jobs WHERE {' AND '.join(where)} ORDER BY changed DESC, id DESC LIMIT ?"  # noqa: S608
        with _plainly():
            return [JobRow(*row) for row in self._db.execute(query, (*values, most))]

    def called(self, name: str, *, away: bool = False) -> JobRow | None:
        """The newest job of exactly that name, whatever the case of its letters."""
        wanted = name.casefold()
        return next((row for row in self.find(name, away=away) if (row.name or "").casefold() == wanted), None)

    # what was really used ---------------------------------------------------------------------------------------------

    def keep_used(self, job: int, rows: Sequence[UsedRow]) -> None:
        """Keep what the job used."""
        with self._writing():
            self._db.executemany(
                "INSERT INTO used (job, at, lesson, kind, used, expected, low, high, said)"
                " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                [(job, time.time(), r.lesson, r.kind, r.used, r.expected, r.low, r.high, r.said) for r in rows],
            )

    def used(self) -> list[UsedRow]:
        """What all jobs used that were not put away, in the order told."""
        query = (
            "SELECT lesson, kind, used, expected, low, high, said, job, used.id FROM used"
            " JOIN jobs ON jobs.id = used.job WHERE jobs.deleted IS NULL ORDER BY used.id"
        )
        with _plainly():
            return [UsedRow(*row) for row in self._db.execute(query)]

    def drop_used(self, ids: Sequence[int]) -> None:
        """Forget what was told under these numbers."""
        with self._writing():
            self._db.executemany("DELETE FROM used WHERE id = ?", [(id,) for id in ids])

    # quotes and backup -----------------------------------------------------------------------------------------------

    def quote(self, job: int, figures: str, book: str, house: str, at: float | None = None) -> None:
        """Keep the figures that were quoted, now or at that time, for good."""
        with self._writing():
            self._db.execute(
                "INSERT INTO quotes (job, at, figures, book, house) VALUES (?, ?, ?, ?, ?)",
                (job, at or time.time(), figures, book, house),
            )

    def quoted(self, job: int) -> Quote | None:
        """The last quote of the job."""
        with _plainly():
            found = self._db.execute(
                "SELECT at, figures, book, house FROM quotes WHERE job = ? ORDER BY id DESC LIMIT 1", (job,)
            ).fetchone()
        return Quote(*found) if found else None

    def back_up(self, path: Path) -> None:
        """The whole book as a file of its own, by SQLite's VACUUM INTO; the file must not exist."""
        with _plainly():
            os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600))  # private; empty, which SQLite takes
            self._db.execute("VACUUM INTO ?", (str(path),))

    def _take_turn(self) -> None:
        """Begin to write, once no other program does.

        SQLite's own wait grows to 100 ms between tries, so that a busy writer can starve another; short tries cannot.
        """
        end = time.monotonic() + PATIENCE
        self._db.execute("PRAGMA busy_timeout = 0")
        try:
            while True:
                try:
                    self._db.execute("BEGIN IMMEDIATE")
                    return
                except sqlite3.OperationalError as error:
                    if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or time.monotonic() > end:
                        raise
                time.sleep(POLL)
        finally:
            self._db.execute(f"PRAGMA busy_timeout = {int(PATIENCE * 1000)}")

    @contextmanager
    def _writing(self) -> Iterator[None]:
        """One transaction: all of it is on disk afterwards, or nothing; within another it is a part of that."""
        with _plainly():
            within = self._db.in_transaction
            if within:
                yield
                return
            self._take_turn()
            try:
                yield
                self._db.execute("COMMIT")
            except BaseException:
                if self._db.in_transaction:
                    self._db.execute("ROLLBACK")
                raise


def users_job_book(folder: Path | None = None) -> JobBook:
    """The user's own book (in `folder` where given); one in memory that knows the trouble where that cannot be had."""
    try:
        return JobBook((folder or _data_folder()) / FILE)
    except JobBookError as error:
        return JobBook(trouble=str(error))


def in_memory(error: JobBookError) -> str:
    """What to say when the book cannot be used."""
    return f"Your job book cannot be used now, because {error}; until you leave, jobs are kept in memory only."


@contextmanager
def _plainly() -> Iterator[None]:
    """Whatever SQLite or the disk complains of as a JobBookError."""
    try:
        yield
    except NotAJobBook as error:
        what = "it was written by a newer festoon" if error.newer else "the file is another program's"
        raise JobBookError(what) from error
    except sqlite3.Error as error:
        raise JobBookError(_reason(str(error).lower())) from error
    except OSError as error:
        raise JobBookError(f"its place cannot be used ({one_line(error.strerror or str(error)).lower()})") from error


def _reason(message: str) -> str:
    for sign, reason in (
        ("full", "the disk is full"),
        ("readonly", "it may only be read"),
        ("locked", "another program holds it"),
        ("not a database", "the file is damaged or no job book"),
        ("malformed", "the file is damaged"),
        ("unable to open", "the file cannot be opened"),
        ("closed", "it was closed"),
    ):
        if sign in message:
            return reason
    return "the disk or the file failed"


def _make_private(path: Path) -> None:
    """Folder and file there, readable and writable by their owner alone; SQLite gives its side files the same mode."""
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    path.parent.chmod(0o700)
    os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))
    path.chmod(0o600)


def _data_folder() -> Path:
    from platformdirs import user_data_path

    return user_data_path("festoon", appauthor=False)
