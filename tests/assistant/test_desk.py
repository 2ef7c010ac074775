"""Jobs kept, opened, found, copied, put away, mailed and quoted, by saying so."""

import base64
import zlib
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant import Conversation
from assistant.desk import ANOTHER
from assistant.job_text import NotAJob, read
from assistant.job_words import read_order
from assistant.jobs import FILE, JobBook
from assistant.turns import Turns

TABLES = "eight 6 ft tables, full drop"


def talk_in(folder: Path) -> Conversation:
    return Conversation(folder=folder, jobs=JobBook(folder / "book" / FILE))


def balloons(talk: Conversation) -> object:
    figure = talk.estimates.of(talk.state).figure("balloons_all")
    return figure.value if figure else None


def say(talk: Conversation, *turns: str) -> str:
    return [" ".join(talk.say(turn).text.split()) for turn in turns][-1]


def test_alone_a_conversation_has_no_book_and_takes_the_words_for_the_estimate() -> None:
    talk = Conversation()
    talk.say(TABLES)
    assert talk.say("keep this as garden christening").heard.job["intent"] == "save"
    assert talk.desk is None


def test_a_turn_is_in_the_book_before_it_is_answered(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "navy and gold")
    other = JobBook(tmp_path / "book" / FILE)
    assert other.turns(other.find()[0].id) == [TABLES, "navy and gold"]


def test_a_job_kept_by_name_opens_in_another_chat_and_undo_reaches_back(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    assert '"garden christening"' in say(talk, TABLES, "make that ten", "keep this as garden christening")
    later = talk_in(tmp_path)
    reply = later.say("open Garden Christening")
    assert reply.heard.pieces[0]["count"] == 10
    assert reply.heard.job["intent"] == "open"
    assert later.say("undo").heard.pieces[0]["count"] == 8
    assert talk_in(tmp_path).say("open garden christening").heard.pieces[0]["count"] == 8


def test_opening_a_job_writes_no_sheet_again(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "make a client sheet", "keep this as a")
    written = [path for path in tmp_path.iterdir() if path.is_file()]
    assert written
    for path in written:
        path.unlink()
    say(talk_in(tmp_path), "open a")
    assert [path for path in tmp_path.iterdir() if path.is_file()] == []


def test_start_over_keeps_the_last_job_and_undo_goes_back_to_it(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "start over")
    assert talk.state.pieces == []
    assert talk.say("undo").heard.pieces[0]["count"] == 8
    say(talk, "start over", "a 10 ft garland")
    assert say(talk, "my jobs").startswith("1. 1 garland")
    assert "2. 8 table runners" in say(talk, "my jobs")
    assert talk.say("open 2").heard.pieces[0]["count"] == 8


def test_copies_and_new_names(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "keep this as a", "copy this as b", "make that four", "rename a to c")
    assert talk_in(tmp_path).say("open c").heard.pieces[0]["count"] == 8
    assert talk_in(tmp_path).say("open b").heard.pieces[0]["count"] == 4


def test_a_job_deleted_comes_back_by_undo_at_once_and_by_name_later(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "keep this as a", "delete this job")
    assert talk.state.pieces == []
    assert talk.say("undo").heard.pieces[0]["count"] == 8
    say(talk, "delete a")
    later = talk_in(tmp_path)
    assert "No job is kept" in say(later, "my jobs")
    assert "1. a" in say(later, "deleted jobs")
    assert later.say("bring back a").heard.pieces[0]["count"] == 8


def test_delete_of_a_piece_is_meant_for_the_estimate(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "and a 10 ft garland", "delete the garland")
    assert [piece.kind for piece in talk.state.pieces] == ["runner"]


def test_a_job_goes_out_as_text_and_comes_back_in(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "make that ten", "keep this as ../../etc/x")
    assert "job-etc-x.txt" in say(talk, "export it")
    path = tmp_path / "job-etc-x.txt"
    path.write_text("".join(f"> {line}\r\n" for line in path.read_text().splitlines()))  # as an answered mail has it
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    path.rename(elsewhere / "job.txt")
    reply = talk_in(elsewhere).say("import job.txt")
    assert reply.heard.pieces[0]["count"] == 10
    assert "../../etc/x" in say(talk_in(elsewhere), "my jobs")


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", "no line in it"),
        (b"festoon job, version 2\n\n> a", "newer"),
        (b"festoon job, version 1\nname: a\n", "no turn"),
        (b"festoon job, version 1\n> caf\xe9", "not plain text"),
        (b"x" * 3_000_000, "too large"),
    ],
)
def test_what_is_no_job_is_refused_in_a_sentence(tmp_path: Path, data: bytes, reason: str) -> None:
    with pytest.raises(NotAJob, match=reason):
        read(data)
    (tmp_path / "job.txt").write_bytes(data)
    talk = talk_in(tmp_path)
    say(talk, TABLES)
    assert reason in say(talk, "import job.txt")
    assert balloons(talk)


def test_a_quote_keeps_its_numbers_and_what_changed_is_told_with_its_cause(tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    assert "Nothing was quoted" in say(talk, TABLES, "what changed since I quoted")
    price = talk.estimates.of(talk.state).figure("price")
    say(talk, "quote it", "keep this as a")
    assert say(talk, "what changed since I quoted").startswith("Nothing")
    changed = say(talk, "make that ten", "what changed since I quoted")
    assert "tables: 8, now 10, said" in changed
    assert price is not None
    shown = f"${float(price.value):,.0f}"
    assert f"price: {shown}, now" in changed
    assert shown in say(talk_in(tmp_path), "open a")
    assert f"price: {shown}" in say(talk, "what did I quote")


def test_two_chats_on_one_job_keep_both_and_say_so(tmp_path: Path) -> None:
    one = talk_in(tmp_path)
    say(one, TABLES, "keep this as a")
    two = talk_in(tmp_path)
    say(two, "open a", "navy")
    assert " ".join(ANOTHER.split()) in say(one, "make that ten")
    assert ANOTHER not in say(one, "no greenery")
    assert JobBook(tmp_path / "book" / FILE).turns(1) == [TABLES, "navy", "make that ten", "no greenery"]


def test_a_book_that_fails_is_named_once_and_the_talk_goes_on_in_memory(tmp_path: Path) -> None:
    book = JobBook(tmp_path / FILE)
    talk = Conversation(jobs=book)
    say(talk, TABLES)
    book._db.execute("PRAGMA query_only = ON")
    assert "kept in memory only" in say(talk, "make that ten")
    assert "memory" not in say(talk, "keep this as a")
    assert talk.say("open a").heard.pieces[0]["count"] == 10
    assert JobBook(tmp_path / FILE).turns(1) == [TABLES]


def test_an_order_that_fails_is_not_done_and_the_job_in_hand_stays(tmp_path: Path) -> None:
    book = JobBook(tmp_path / FILE)
    talk = Conversation(jobs=book)
    say(talk, TABLES)
    book._db.close()
    assert say(talk, "keep this as a").startswith("That was not done.")
    assert balloons(talk)
    assert "Kept as" in say(talk, "keep this as a")


def test_a_turn_that_breaks_is_not_kept_and_the_book_goes_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    turns = Turns(lambda width: Conversation(width=width, jobs=JobBook(tmp_path / FILE)))
    turns.take(TABLES)
    answer = Conversation.answer

    def broken(talk: Conversation, text: str) -> object:
        if text == "break":
            raise ZeroDivisionError
        return answer(talk, text)

    monkeypatch.setattr(Conversation, "answer", broken)
    assert turns.take("break").reply is None
    turns.take("make that ten")
    assert JobBook(tmp_path / FILE).turns(1) == [TABLES, "make that ten"]
    assert "in memory" not in turns.take("my jobs").text


@pytest.mark.parametrize(
    ("said", "order"),
    [
        ("Keep this as Garden christening.", ("save", "Garden christening", "")),
        ("please save it as 'x'", ("save", "x", "")),
        ("show me my jobs", ("list", "", "")),
        ("jobs with navy", ("list", "navy", "")),
        ("find my jobs from last week", ("list", "last week", "")),
        ("rename a b to c", ("rename", "c", "a b")),
        ("copy that as c", ("copy", "c", "")),
        ("work it out again", ("changed", "", "")),
        ("what's changed since I quoted it?", ("changed", "", "")),
        ("delete job a", ("delete", "", "a")),
    ],
)
def test_orders_are_read(said: str, order: tuple[str, str, str]) -> None:
    found = read_order(said)
    assert found is not None
    assert (found.what, found.name, found.other) == order


@pytest.mark.parametrize(
    "said",
    [TABLES, "keep it simple", "remove the arch", "make that ten", "quote me for ten tables", "save money", "copy"],
)
def test_other_turns_are_not_for_the_book(said: str) -> None:
    assert read_order(said) is None


def test_a_quote_goes_with_the_job_that_is_mailed(tmp_path: Path) -> None:
    (tmp_path / "here").mkdir()
    talk = talk_in(tmp_path / "here")
    say(talk, TABLES, "quote it", "keep this as orchard supper", "export it")
    file = next((tmp_path / "here").glob("job-*.txt"))
    mailed = "".join(f"> {line}\n" for line in file.read_text(encoding="utf-8").splitlines())  # as an answer quotes it
    (tmp_path / "there").mkdir()
    (tmp_path / "there" / "mailed.txt").write_text(mailed, encoding="utf-8")
    other = talk_in(tmp_path / "there")
    assert "Quoted on" in say(other, "import mailed.txt")
    assert "the numbers are those of the quote" in say(other, "what changed since I quoted")
    assert other.said == talk.said


@pytest.mark.parametrize("spoil", [lambda line: "| " + "A" * 60, lambda line: "| ....", lambda line: "| " + line[3:]])
def test_a_quote_that_came_to_harm_costs_no_turn(spoil: Callable[[str], str], tmp_path: Path) -> None:
    talk = talk_in(tmp_path)
    say(talk, TABLES, "quote it", "keep this as orchard supper", "export it")
    file = next(tmp_path.glob("job-*.txt"))
    lines = [spoil(line) if line.startswith("| ") else line for line in file.read_text(encoding="utf-8").splitlines()]
    told = read("\n".join(lines).encode())
    assert told.quote is None
    assert told.turns == [TABLES, "quote it"]


def test_a_packed_quote_cannot_fill_the_memory() -> None:
    bomb = base64.b64encode(zlib.compress(b"[" * 50_000_000)).decode()
    told = read(f"festoon job, version 1\n> {TABLES}\n| {bomb}\n".encode())
    assert told.quote is None


def test_what_was_asked_in_passing_is_not_in_the_list_but_is_found(tmp_path: Path) -> None:
    for said in ("a 12 ft garland", "six bouquets of five"):
        say(talk_in(tmp_path), said)
    talk = talk_in(tmp_path)
    say(talk, TABLES, "navy and gold", "start over", "a 20 ft garland")
    listed = say(talk, "my jobs")
    assert "12 ft" not in listed
    assert "2. " in listed  # the one of two turns, and the one in hand
    assert "3. " not in listed
    assert "1. " in say(talk, "jobs with bouquets")
