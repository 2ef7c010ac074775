"""The job book as a file: what is written stays, whatever becomes of the program, the disk or the file."""

import json
import os
import random
import sqlite3
import stat
import subprocess
import sys
import time
from datetime import datetime
from pathlib import Path

import pytest

from assistant import job_schema
from assistant.job_words import span_said
from assistant.jobs import FILE, JobBook, JobBookError, name_of, users_job_book

ROOT = Path(__file__).parents[2]


@pytest.fixture
def book(tmp_path: Path) -> JobBook:
    return JobBook(tmp_path / "festoon" / FILE)


def test_turns_come_back_in_order_after_closing(book: JobBook) -> None:
    job = book.begin("garden christening")
    assert book.add(job, ["eight tables"], "8 runners") == 1
    assert book.add(job, ["full drop", "navy"], "8 runners") == 3
    book.close()
    assert book.path is not None
    again = JobBook(book.path)
    assert again.turns(job) == ["eight tables", "full drop", "navy"]


def test_only_the_owner_can_read_the_book(book: JobBook) -> None:
    book.begin("a")
    assert book.path is not None
    files = [book.path, *book.path.parent.glob(f"{FILE}-*")]
    assert len(files) == 3
    assert {stat.S_IMODE(path.stat().st_mode) for path in files} == {0o600}
    assert stat.S_IMODE(book.path.parent.stat().st_mode) == 0o700


def test_jobs_are_listed_newest_first_and_found_by_every_word(book: JobBook) -> None:
    first, second = book.begin("Garden Christening"), book.begin("garden fête")
    book.add(second, ["two arches"], "2 arches")
    book.add(first, ["eight tables, navy"], "8 runners")
    assert [row.id for row in book.find()] == [first, second]
    assert [row.id for row in book.find("NAVY garden")] == [first]
    assert [row.id for row in book.find("fête")] == [second]
    assert book.find("100% _") == []


def test_a_job_without_name_or_piece_is_not_listed(book: JobBook) -> None:
    book.add(book.begin(), ["hello"], "")
    assert book.find() == []


def test_what_is_put_away_comes_back(book: JobBook) -> None:
    job = book.begin("a")
    book.put_away(job)
    assert (book.find(), [row.id for row in book.find(away=True)]) == ([], [job])
    book.put_away(job, away=False)
    assert [row.id for row in book.find()] == [job]


@pytest.mark.parametrize("name", ["../../etc/x", "'; DROP TABLE jobs; --", '"', "🎈🎉", "%", "_", "שלום", "a\\b"])
def test_a_name_is_data(book: JobBook, tmp_path: Path, name: str) -> None:
    job = book.begin(name_of(name))
    row = book.called(name)
    assert row is not None
    assert (row.id, row.name) == (job, name)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["festoon"]


def test_a_name_holds_no_control_codes_and_is_not_endless() -> None:
    assert name_of("\x1b[31mred\u202e\n  gold") == "red gold"
    assert len(name_of("x" * 10_000)) == 80


def test_a_backup_is_a_whole_book_of_its_own(book: JobBook, tmp_path: Path) -> None:
    job = book.begin("a")
    book.add(job, ["eight tables"], "8 runners")
    book.back_up(tmp_path / "copy.sqlite3")
    assert JobBook(tmp_path / "copy.sqlite3").turns(job) == ["eight tables"]
    with pytest.raises(JobBookError):
        book.back_up(tmp_path / "copy.sqlite3")


# files of other versions, and files that are no book ------------------------------------------------------------------


@pytest.mark.parametrize("version", range(1, job_schema.NEWEST + 1))
def test_a_book_of_every_version_opens_with_all_it_held(tmp_path: Path, version: int) -> None:
    old = sqlite3.connect(tmp_path / FILE, isolation_level=None)
    job_schema.bring_up(old, version)
    old.execute("INSERT INTO jobs (name, made, changed, words) VALUES ('old one', 1, 2, 'old one')")
    old.execute("INSERT INTO turns VALUES (1, 1, 'eight tables', 2)")
    old.close()
    book = JobBook(tmp_path / FILE)
    assert book.turns(1) == ["eight tables"]
    assert [row.name for row in book.find("old")] == ["old one"]
    book.put_away(1)
    book.quote(1, "[]", "v", "")
    assert book.quoted(1) is not None


def test_a_step_that_fails_leaves_the_older_version_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    steps = (job_schema.STEPS[0], "CREATE TABLE extra (a); CREATE TABLE jobs (a)")
    monkeypatch.setattr(job_schema, "STEPS", steps)
    monkeypatch.setattr(job_schema, "NEWEST", 2)
    made = sqlite3.connect(tmp_path / FILE, isolation_level=None)
    with pytest.raises(sqlite3.OperationalError):
        job_schema.bring_up(made, 2)
    tables = {row[0] for row in made.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    assert tables == {"jobs", "turns"}
    assert made.execute("PRAGMA user_version").fetchone() == (1,)
    made.close()


def newer(path: Path) -> None:
    JobBook(path).close()
    with sqlite3.connect(path) as made:
        made.execute("PRAGMA user_version = 999")
    made.close()


def anothers(path: Path) -> None:
    with sqlite3.connect(path) as made:
        made.execute("CREATE TABLE recipes (a)")
    made.close()


def damaged(path: Path) -> None:
    path.write_bytes(b"this is no book at all, " * 200)


@pytest.mark.parametrize(
    ("spoil", "reason"),
    [(newer, "a newer festoon"), (anothers, "another program's"), (damaged, "damaged"), (Path.mkdir, "cannot be used")],
)
def test_a_file_that_is_no_book_of_ours_is_left_as_it_is(tmp_path: Path, spoil: object, reason: str) -> None:
    path = tmp_path / FILE
    assert callable(spoil)
    spoil(path)
    held = path.read_bytes() if path.is_file() else b""
    book = users_job_book(tmp_path)
    assert reason in book.trouble
    job = book.begin("in memory")
    assert book.add(job, ["a"], "") == 1
    assert (path.read_bytes() if path.is_file() else b"") == held


def test_a_folder_that_cannot_be_made_is_a_book_in_memory(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    assert "cannot be used" in users_job_book(tmp_path / "file" / "festoon").trouble


def test_a_full_disk_and_a_read_only_file_are_told_apart_and_lose_nothing(book: JobBook) -> None:
    job = book.begin("a")
    book.add(job, ["one"], "")
    pages = book._db.execute("PRAGMA page_count").fetchone()[0]
    book._db.execute(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(JobBookError, match="full"):
        book.add(job, ["x" * 100_000], "")
    book._db.execute("PRAGMA query_only = ON")
    with pytest.raises(JobBookError, match="only be read"):
        book.add(job, ["two"], "")
    assert book.turns(job) == ["one"]


# many jobs, many programs ---------------------------------------------------------------------------------------------


def test_ten_thousand_jobs_list_and_search_without_sorting_them_all(book: JobBook) -> None:
    rows = [
        (f"job {n}", n, n, "8 runners", f"job {n} eight tables navy {'gold' if n % 1000 == 0 else ''}")
        for n in range(10_000)
    ]
    with book._writing():
        book._db.executemany("INSERT INTO jobs (name, made, changed, summary, words) VALUES (?, ?, ?, ?, ?)", rows)
    assert [row.name for row in book.find("gold", most=3)] == ["job 9000", "job 8000", "job 7000"]
    plan = book._db.execute(
        "EXPLAIN QUERY PLAN SELECT id FROM jobs WHERE deleted IS NULL ORDER BY changed DESC, id DESC LIMIT 50"
    ).fetchall()
    assert "newest" in str(plan)
    assert "TEMP B-TREE" not in str(plan)


WRITER = """
import sys, time
from pathlib import Path
from assistant.jobs import JobBook
book, who, shared = JobBook(Path(sys.argv[1])), sys.argv[2], int(sys.argv[3])
own, n, end = book.begin(who), 0, time.monotonic() + float(sys.argv[4])
while time.monotonic() < end:
    n += 1
    book.add(own, [f"{who} {n}"], "")
    book.add(shared, [f"{who} {n}"], "")
print(own, n)
"""


def test_two_programs_write_at_once_and_lose_nothing(book: JobBook, request: pytest.FixtureRequest) -> None:
    seconds = "60" if request.config.getoption("--long") else "1.5"
    shared = book.begin("shared")
    both = [
        subprocess.Popen(
            [sys.executable, "-c", WRITER, str(book.path), who, str(shared), seconds], cwd=ROOT, stdout=subprocess.PIPE
        )
        for who in ("ann", "bob")
    ]
    turns = book.turns
    total = 0
    for who, writer in zip(("ann", "bob"), both, strict=True):
        out, _ = writer.communicate()
        assert writer.returncode == 0
        own, count = map(int, out.split())
        wanted = [f"{who} {n}" for n in range(1, count + 1)]
        assert turns(own) == wanted
        assert [said for said in turns(shared) if said.startswith(who)] == wanted
        total += count
    assert len(turns(shared)) == total > 2


def test_every_turn_that_was_answered_outlives_a_kill(tmp_path: Path, request: pytest.FixtureRequest) -> None:
    rounds = 200 if request.config.getoption("--long") else 4
    chance = random.Random(20260)  # noqa: S311 - when to kill, not a secret
    answered_in_all = 0
    for number in range(rounds):
        home = tmp_path / str(number)
        said = ["eight 6 ft tables", *(f"make that {n} tables" for n in range(10, 400))]
        with subprocess.Popen(
            [sys.executable, "-m", "assistant", "--json"],
            cwd=ROOT,
            env={"XDG_DATA_HOME": str(home), "XDG_CONFIG_HOME": str(home), "FESTOON_DEBUG": "1", **_cache()},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        ) as festoon:
            assert festoon.stdin is not None
            assert festoon.stdout is not None
            festoon.stdin.write("\n".join(said) + "\n")
            festoon.stdin.flush()
            answered = 0
            lines = iter(festoon.stdout.readline, "")
            for _ in range(chance.randint(1, 6)):
                answered += bool(json.loads(next(lines)))
            time.sleep(chance.uniform(0, 0.05))
            festoon.kill()
            answered += sum(line.endswith("}\n") for line in lines)
        book = JobBook(home / "festoon" / FILE)
        kept = book.turns(book.find()[0].id)
        book.close()
        assert kept == said[: len(kept)]
        assert answered <= len(kept)
        answered_in_all += answered
    assert answered_in_all >= rounds


def _cache() -> dict[str, str]:
    return {"XDG_CACHE_HOME": os.environ["XDG_CACHE_HOME"], "PATH": os.environ["PATH"]}


# when ----------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "since", "until"),
    [
        ("today", "2026-11-25", "2026-11-26"),
        ("yesterday", "2026-11-24", "2026-11-25"),
        ("last week", "2026-11-16", "2026-11-23"),
        ("last month", "2026-10-01", "2026-11-01"),
        ("december", "2025-12-01", "2026-01-01"),
        ("june 2025", "2025-06-01", "2025-07-01"),
        ("3 November", "2026-11-03", "2026-11-04"),
        ("december 24th", "2025-12-24", "2025-12-25"),
        ("2026-02-03", "2026-02-03", "2026-02-04"),
    ],
)
def test_days_are_said_in_the_ways_people_do(said: str, since: str, until: str) -> None:
    now = datetime.fromisoformat("2026-11-25T10:00:00+00:00")
    span = span_said(said, now)
    assert span == tuple(datetime.fromisoformat(f"{day}T00:00:00+00:00").timestamp() for day in (since, until))


@pytest.mark.parametrize("said", ["navy", "31 february", "", "garden in june", "june 99999"])
def test_what_is_no_day_is_no_span(said: str) -> None:
    assert span_said(said, datetime.fromisoformat("2026-11-25T10:00:00+00:00")) is None
