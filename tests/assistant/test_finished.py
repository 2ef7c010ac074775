"""What finished jobs used: told, compared, learned from, shown, forgotten; kept over restarts."""

from pathlib import Path

import pytest

from assistant import Conversation
from assistant.house import HouseRules
from assistant.jobs import FILE, JobBook
from grammar.talk.used import read_reports

TABLES = "eight 6 ft tables"


def say(talk: Conversation, *turns: str) -> str:
    return [" ".join(talk.say(turn).text.split()) for turn in turns][-1]


def figure(talk: Conversation, id: str, piece: int | None = None) -> tuple[float, float, float]:
    found = talk.estimates.of(talk.state).figure(id, piece)
    assert found is not None
    assert isinstance(found.value, int | float)
    assert found.low is not None
    assert found.high is not None
    return found.value, found.low, found.high


@pytest.mark.parametrize(
    ("said", "measure", "value"),
    [
        ("the runner took 121", "balloons", 121),
        ("used 121 on the runner", "balloons", 121),
        ("we got through 900 balloons", "balloons", 900),
        ("it ended up with 180 balloons", "balloons", 180),
        ("we used all 200", "balloons", 200),
        ("we needed 6 and a half hours for two", "hours", 13),
        ("two of us took four hours", "hours", 8),
        ("it took two of us 4 hours", "hours", 8),
        ("it took 90 minutes", "hours", 1.5),
        ("eleven popped", "lost", 11),
        ("lost 11 of 200", "lost", 11),
        ("11 of the 200 popped", "lost", 11),
        ("no balloons popped", "lost", 0),
        ("we had 30 left over", "left", 30),
        ("30 left", "left", 30),
        ("runner: 121 used", "balloons", 121),
        ("it took the two of us five hours", "hours", 10),
        ("with three people it took 4 hours", "hours", 12),
        ("we were two and took 5 hours", "hours", 10),
        ("finished in 5 hours with two of us", "hours", 10),
        ("it took 13 man-hours", "hours", 13),
        ("took us an hour and a half", "hours", 1.5),
    ],
)
def test_reports_are_heard(said: str, measure: str, value: float) -> None:
    reports, _ = read_reports(said, ())
    assert [(report.measure, float(report.value)) for report in reports] == [(measure, value)]


@pytest.mark.parametrize(
    "said",
    [
        "sorry I needed ten",
        "we needed ten tables",
        "we lost two tables",
        "put 30 left",
        "how many popped",
        "it takes 8 hours",
        "we need 10 hours",
        "make it 12",
        "12 spare",
        "eight 6 ft tables, 5 inch balloons",
        "could 11 have popped?",
    ],
)
def test_wishes_and_questions_are_no_reports(said: str) -> None:
    assert read_reports(said, ()) == ([], said)


def test_a_report_changes_nothing_that_was_said() -> None:
    talk = Conversation()
    say(talk, TABLES)
    before = talk.state.copy()
    reply = talk.say("the runners took 1000")
    assert talk.state.pieces == before.pieces
    assert talk.state.job == before.job
    assert talk.said == [TABLES]
    assert reply.heard.job["intent"] == "used"
    assert reply.question is None


def test_one_job_moves_the_next_a_little_and_more_move_it_more() -> None:
    talk = Conversation()
    say(talk, TABLES)
    book = figure(talk, "balloons", 0)[0]
    counts = []
    for tables in ("eight", "nine", "ten", "eleven"):
        say(talk, "start over", f"{tables} 6 ft tables", "each table took 124")
        say(talk, "start over", TABLES)
        counts.append(figure(talk, "balloons", 0)[0])
    assert book < counts[0] <= counts[1] <= counts[-1] <= book * 124 / 108
    assert counts[0] < counts[-1]
    assert "The book about 108, your last 4 jobs about 12" in say(talk, f"why {counts[-1] // 8:.0f}")


def test_each_or_all_whichever_is_nearer() -> None:
    for said in ("the runner took 121", "the runners took 968"):
        talk = Conversation()
        say(talk, TABLES)
        assert "runner: 968, the book 864" in say(talk, said)


@pytest.mark.parametrize(
    "said", ["the navy runner took 121", "the 6 ft runners took 121 each", "used 121 on the navy runners"]
)
def test_a_piece_may_be_named_by_what_was_said_of_it(said: str) -> None:
    talk = Conversation()
    say(talk, "eight 6 ft tables, navy and gold")
    assert "runner: 968, the book 864" in say(talk, said)


@pytest.mark.parametrize(
    "said", ["the white runner took 121", "the arch took 400", "the runner took 121, next time white"]
)
def test_what_fits_no_piece_is_neither_kept_nor_done(said: str) -> None:
    talk = Conversation()
    say(talk, "eight 6 ft tables, navy and gold")
    before = talk.state.copy()
    assert say(talk, said).startswith("No piece of this job is that")
    assert talk.state.pieces == before.pieces
    assert "Nothing is learned yet" in say(talk, "what have you learned")


@pytest.mark.parametrize(
    "said",
    [
        "the garland took 200, the runners 900",
        "the garland took 200 and the runners took 900",
        "used 200 on the garland and 900 on the runners",
    ],
)
def test_each_number_goes_with_the_piece_beside_it(said: str) -> None:
    talk = Conversation()
    say(talk, f"{TABLES} and a 20 ft organic garland")
    reply = say(talk, said)
    assert "garland: 200, the book" in reply
    assert "runner: 900, the book 864" in reply
    say(talk, "forget the last one")
    assert "Nothing is learned yet" in say(talk, "what have you learned")


def test_one_or_all_is_asked_where_both_are_likely() -> None:
    for answer, kept in (("each", "garland: 900"), ("for all", "garland: 300")):
        talk = Conversation()
        say(talk, "three 20 ft organic garlands")
        assert say(talk, "the garland took 300") == "Is 300 for one of them, or for all?"
        reply = say(talk, answer)
        assert kept in reply


def test_what_is_in_no_unit_of_ours_changes_nothing() -> None:
    talk = Conversation()
    say(talk, TABLES)
    before = talk.state.copy()
    assert say(talk, "the runner took 1 bag").startswith("Say that in balloons")
    assert say(talk, "it took two days").startswith("Say that in hours")
    assert talk.state.pieces == before.pieces
    assert "losses: 5 %" in say(talk, "5 % popped")
    assert "Not used: weather" in say(talk, "we used 900 and it was lovely weather")


def test_all_of_a_turn_waits_for_what_it_lacks() -> None:
    talk = Conversation()
    say(talk, TABLES)
    assert say(talk, "it took us five hours and eleven popped").startswith("For how many of you?")
    reply = say(talk, "two")
    assert "hours hands on: 10 hours" in reply
    assert "losses: 1.2" in reply


def test_hours_ask_for_whom_unless_it_was_said() -> None:
    talk = Conversation()
    say(talk, TABLES)
    assert say(talk, "it took us 5 hours").startswith("For how many of you?")
    assert "hours hands on: 10 hours" in say(talk, "two")
    say(talk, "start over", TABLES, "two helpers")
    assert "hours hands on: 10 hours" in say(talk, "it took 5 hours")


def test_what_is_far_off_is_asked_about_and_not_swallowed() -> None:
    talk = Conversation()
    say(talk, TABLES)
    book = figure(talk, "balloons", 0)
    assert "far off" in say(talk, "the runners took 3000")
    assert figure(talk, "balloons", 0) == book
    assert say(talk, "no") == "That was not kept."
    assert figure(talk, "balloons", 0) == book
    say(talk, "the runners took 3000")
    assert "Kept with this job" in say(talk, "yes")
    assert figure(talk, "balloons", 0)[0] > book[0]


def test_telling_again_takes_the_place_of_what_was_told_of_that_job() -> None:
    talk = Conversation()
    say(talk, TABLES, "the runners took 1000")
    assert "this one job 10 % more" in say(talk, "the runners took 950")
    assert "Taken back" in say(talk, "undo")
    assert "this one job 16 % more" in say(talk, "what have you learned?")


def test_one_word_forgets_it() -> None:
    talk = Conversation()
    say(talk, TABLES)
    book = figure(talk, "balloons", 0)
    say(talk, "the runners took 1000", "eleven popped")
    say(talk, "forget the last one")
    assert "loss rate" not in say(talk, "what have you learned")
    assert say(talk, "forget what you learned") == "Forgotten."
    assert figure(talk, "balloons", 0) == book
    assert "Nothing is learned yet" in say(talk, "what have you learned")


def test_undo_brings_back_what_was_forgotten_with_its_job(tmp_path: Path) -> None:
    for jobs in (None, JobBook(tmp_path / FILE)):
        talk = Conversation(jobs=jobs)
        say(talk, TABLES, "the runners took 1000")
        say(talk, "start over", "nine 6 ft tables", "the runners took 1100", "eleven popped")
        learned = say(talk, "what have you learned")
        say(talk, "forget what you learned", "undo")
        assert say(talk, "what have you learned") == learned
        assert talk.state.pieces
    talk = Conversation(jobs=JobBook(tmp_path / FILE))
    assert say(talk, "what have you learned") == learned


def test_losses_move_the_spares() -> None:
    talk = Conversation()
    say(talk, TABLES)
    before = figure(talk, "spare")[0]
    assert "losses: 1.2" in say(talk, "eleven popped")
    assert before / 2 < figure(talk, "spare")[0] < before


def test_what_is_left_over_is_what_was_bought_less_it() -> None:
    talk = Conversation()
    say(talk, TABLES)
    bought = figure(talk, "balloons_to_buy")[0]
    assert f"runner: {bought - 30:.0f}, the book 864" in say(talk, "we had 30 left over")


def test_a_rule_of_the_house_stands_over_it() -> None:
    talk = Conversation()
    say(talk, TABLES, "the runners took 1000", "remember I add 15 % spare", "eleven popped")
    assert figure(talk, "spare")[0] == 15
    shown = say(talk, "house rules")
    assert "spare: 15 %" in shown
    assert "tightness" not in shown
    say(talk, "forget the spare")
    assert figure(talk, "spare")[0] < 10


def test_it_is_kept_with_the_job_over_restarts_and_goes_with_it(tmp_path: Path) -> None:
    def open_again() -> Conversation:
        return Conversation(jobs=JobBook(tmp_path / FILE), house=HouseRules(tmp_path / "house.toml"))

    talk = open_again()
    say(talk, TABLES, "keep this as linden hall")
    book = figure(talk, "balloons", 0)
    say(talk, "the runners took 1000")
    learned = figure(talk, "balloons", 0)
    assert learned[0] > book[0]
    later = open_again()
    say(later, TABLES)
    assert figure(later, "balloons", 0) == learned
    assert "this one job 16 % more" in say(later, "what have you learned")
    assert not (tmp_path / "house.toml").exists()
    say(later, "delete job linden hall")
    say(open_again(), TABLES)
    assert "Nothing is learned" in say(open_again(), "what have you learned")


def test_what_went_with_a_job_is_gone_in_the_same_chat_and_told_in_another(tmp_path: Path) -> None:
    talk, other = (Conversation(jobs=JobBook(tmp_path / FILE)) for _ in range(2))
    say(talk, TABLES, "keep this as linden hall", "the runners took 1000")
    assert "this one job 16 % more" in say(other, "what have you learned")
    say(talk, "delete job linden hall")
    assert "Nothing is learned" in say(talk, "what have you learned")


def test_opening_a_job_says_that_its_rules_have_changed(tmp_path: Path) -> None:
    talk = Conversation(jobs=JobBook(tmp_path / FILE))
    say(talk, TABLES, "keep this as linden hall")
    assert "by today's" not in say(talk, "start over", "open linden hall")
    assert "by today's" in say(talk, "start over", "remember my rate is 38 an hour", "open linden hall")


def test_without_a_job_it_is_asked_which() -> None:
    assert say(Conversation(), "the runner took 121").startswith("Which job was that?")


def test_reports_and_rules_are_heard_in_spanish() -> None:
    talk = Conversation()
    say(talk, "ocho mesas de 6 pies")
    assert "900" in say(talk, "usamos 900 globos")
    say(talk, "se reventaron once", "tardamos 5 horas", "dos", "mi tarifa es 25 la hora")
    assert [row.lesson for row in talk.finished._memory] == ["runner_count", "losses", "hours"]
    assert "labour_rate" in talk.habits.text
    say(talk, "olvida mi tarifa")
    assert "labour_rate" not in talk.habits.text
    assert [piece["count"] for piece in talk.say("olvida lo que aprendiste").heard.pieces] == [8]


def test_what_was_used_by_colours_is_all_of_it() -> None:
    talk = Conversation()
    by_colours = say(talk, "eight 6 ft tables, navy and gold", "we used 410 navy and 450 gold")
    other = Conversation()
    assert by_colours == say(other, "eight 6 ft tables, navy and gold", "we used 860 balloons")
