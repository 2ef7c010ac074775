"""Whatever goes wrong in a turn, a sentence comes back, the turn is not kept and the talk goes on."""

import json

import pytest

from assistant.turns import BEGUN_ANEW, BROKEN, LONGEST_TURN, NOT_TEXT, TOO_LONG, Turns
from tests.assistant.fake_talk import FakeTalk


def kept(turns: Turns) -> list[str]:
    talk = turns.load()
    assert isinstance(talk, FakeTalk)
    return talk.turns


def test_a_turn_that_fails_half_way_is_not_kept_and_the_talk_goes_on() -> None:
    turns = Turns(FakeTalk)
    turns.take("one")
    failed = turns.take("crash")
    assert (failed.text, failed.answered, failed.reply) == (BROKEN, False, None)
    assert kept(turns) == ["one"]
    assert turns.take("two").text == "2 at 40: two"


def test_an_interrupted_turn_is_not_kept() -> None:
    turns = Turns(FakeTalk)
    turns.take("one")
    with pytest.raises(KeyboardInterrupt):
        turns.take("stop")
    assert kept(turns) == ["one"]


def test_where_going_back_fails_too_the_talk_begins_anew_and_says_so() -> None:
    made: list[FakeTalk] = []

    class Once(FakeTalk):
        def __init__(self, width: int) -> None:
            super().__init__(width)
            made.append(self)
            if len(made) == 2:
                raise MemoryError

    turns = Turns(Once)
    turns.take("one")
    assert turns.take("crash").text == BEGUN_ANEW
    assert turns.take("two").text == "1 at 40: two"


def test_a_conversation_that_cannot_be_made_is_a_sentence() -> None:
    def broken(width: int) -> FakeTalk:
        raise RuntimeError(width)

    assert Turns(broken).take("one").reply is None


def test_a_mistake_is_shown_whole_to_a_developer_who_asks(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FESTOON_DEBUG", "1")
    with pytest.raises(ZeroDivisionError):
        Turns(FakeTalk).take("crash")


@pytest.mark.parametrize(
    ("said", "sentence"),
    [("caf\udce9", NOT_TEXT), ("x" * (LONGEST_TURN + 1), TOO_LONG), ("\udce9" * 100_000, TOO_LONG)],
)
def test_what_is_no_text_or_too_long_never_reaches_the_conversation(said: str, sentence: str) -> None:
    turns = Turns(FakeTalk)
    assert turns.take(said).text == sentence
    assert kept(turns) == []


def test_the_longest_turn_is_taken() -> None:
    assert Turns(FakeTalk).take("x" * LONGEST_TURN).answered


@pytest.mark.parametrize(("said", "answered"), [("tables", True), ("ask", False), ("gibberish", False), ("...", False)])
def test_answered_is_something_held_some_word_used_and_no_question(said: str, answered: bool) -> None:
    turns = Turns(FakeTalk)
    turns.take("garland")
    assert turns.take(said).answered is answered


def test_nothing_held_is_not_answered() -> None:
    assert not Turns(FakeTalk).take("gibberish").answered


def test_what_was_said_and_the_reply_are_safe_to_print() -> None:
    turns = Turns(FakeTalk)
    assert turns.take("\x1b[31mred\u202e\n  gold\x9b0m").text == "1 at 40: red gold"


def test_json_is_one_line_of_ascii_and_an_error_where_there_is_no_reply() -> None:
    turns = Turns(FakeTalk)
    line = turns.take("navy – gold").as_json()
    assert line.isascii()
    assert "\n" not in line
    assert json.loads(line)["text"] == "1 at 40: navy – gold"
    assert json.loads(turns.take("crash").as_json()) == {"error": BROKEN}


def test_help_with_typing_fails_silently_and_is_empty_before_loading() -> None:
    class Broken(FakeTalk):
        def complete(self, before: str, /) -> list[str]:
            raise ValueError(before)

        def status(self) -> str:
            raise ValueError

    turns = Turns(Broken)
    assert (turns.complete("g"), turns.status()) == ([], "")
    turns.load()
    assert (turns.complete("g"), turns.status()) == ([], "")
