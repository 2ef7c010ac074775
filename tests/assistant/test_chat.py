"""The screen, driven by key presses through a pipe; the terminal it draws on is one that forgets."""

import io
import stat
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.buffer import Buffer
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.data_structures import Size
from prompt_toolkit.document import Document
from prompt_toolkit.history import InMemoryHistory
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.chat import GREETING, LineSuggester, SafeOutput, WordCompleter, chat
from assistant.history import open_history
from assistant.turns import BROKEN, STOPPED, MakeTalk, Turns
from tests.assistant.fake_talk import FakeReply, FakeTalk

CTRL_C, CTRL_D, UP, TAB = "\x03", "\x04", "\x1b[A", "\t"


class Screen(DummyOutput):
    """A terminal of so many columns that keeps the text that was drawn, and a hand that types when it sees a prompt."""

    def __init__(self, columns: int = 40) -> None:
        self.columns = columns
        self.drawn = ""
        self.hand: Callable[[], None] = lambda: None
        self.type: Callable[[str], None] = lambda keys: None
        self._new_prompt = False

    def get_size(self) -> Size:
        return Size(rows=24, columns=self.columns)

    def write(self, data: str) -> None:
        self.drawn += data

    def enable_bracketed_paste(self) -> None:
        self._new_prompt = True  # asked for once in the first drawing of each prompt

    def flush(self) -> None:
        if self._new_prompt:
            self._new_prompt = False
            self.hand()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "data" / "festoon"


def talk(folder: Path, *keys: str, make: MakeTalk = FakeTalk, screen: Screen | None = None) -> list[str]:
    """The replies to those key presses, one string of them at each prompt and then Ctrl-D, without the greeting."""
    screen, stdout, left = screen or Screen(), io.StringIO(), list(keys)
    with create_pipe_input() as pipe:
        screen.type = pipe.send_text
        screen.hand = lambda: pipe.send_text(left.pop(0) if left else CTRL_D)
        with create_app_session(input=pipe, output=screen):
            assert chat(io.StringIO(), stdout, make, screen, folder) == 0
    greeting, *replies = stdout.getvalue().removesuffix("\n\n").split("\n\n")
    assert greeting.split() == GREETING.split()
    return replies


def test_each_line_is_answered_for_the_width_of_the_screen(folder: Path) -> None:
    assert talk(folder, "one\r", "two\r") == ["1 at 40: one", "2 at 40: two"]
    assert talk(folder, "one\r", screen=Screen(100)) == ["1 at 100: one"]


def test_a_screen_made_wider_is_used_from_the_next_line(folder: Path) -> None:
    screen = Screen(40)

    class Widening(FakeTalk):
        def reply_to(self, text: str, /) -> FakeReply:
            screen.columns = 80
            return super().reply_to(text)

    assert talk(folder, "one\r", "two\r", make=Widening, screen=screen) == ["1 at 40: one", "2 at 80: two"]


def test_the_job_so_far_stands_below_the_line(folder: Path) -> None:
    screen = Screen()
    talk(folder, "one\r", "two\r", screen=screen)
    assert "2 turns" in screen.drawn


def test_the_prompt_is_drawn_before_anything_is_loaded(folder: Path) -> None:
    screen, seen = Screen(), []

    def make(width: int) -> FakeTalk:
        seen.append(">" in screen.drawn)
        return FakeTalk(width)

    assert talk(folder, "one\r", make=make, screen=screen) == ["1 at 40: one"]
    assert seen == [True]


def test_a_blank_line_is_no_turn_and_quit_leaves(folder: Path) -> None:
    assert talk(folder, "\r", "  \r", "one\r", "quit\r", "two\r") == ["1 at 40: one"]


def test_ctrl_c_clears_the_line(folder: Path) -> None:
    assert talk(folder, f"not this{CTRL_C}", "one\r") == ["1 at 40: one"]


def test_a_paste_of_many_lines_is_as_many_turns(folder: Path) -> None:
    assert talk(folder, "\x1b[200~one\r\ntwo\n\nthree\n\x1b[201~\r") == [
        "> one\n1 at 40: one",
        "> two\n2 at 40: two",
        "> three\n3 at 40: three",
    ]


def test_a_turn_that_fails_is_a_sentence_and_the_talk_goes_on(folder: Path) -> None:
    first, failed, second = talk(folder, "one\r", "crash\r", "two\r")
    assert (first, second) == ("1 at 40: one", "2 at 40: two")
    assert failed.split() == BROKEN.split()
    assert max(map(len, failed.splitlines())) < 40


def test_an_interrupted_paste_stops_at_that_line(folder: Path) -> None:
    replies = talk(folder, "\x1b[200~one\nstop\ntwo\x1b[201~\r", "three\r")
    assert replies[:2] == ["> one\n1 at 40: one", "> stop"]
    assert replies[2].split() == STOPPED.split()
    assert replies[3] == "2 at 40: three"


def test_tab_completes_the_word_with_the_conversations_own(folder: Path) -> None:
    class Waiting(Screen):
        """Types on when the menu is on the screen (or, so that no mistake can hang the tests, after ten seconds)."""

        def flush(self) -> None:
            super().flush()
            if "garland" in self.drawn:
                self.drawn = ""
                self.type(TAB + "\r")

    screen = Waiting()
    rescue = threading.Timer(10, lambda: screen.type("\r"))
    rescue.start()
    try:
        assert talk(folder, "one\r", f"a g{TAB}", screen=screen) == ["1 at 40: one", "2 at 40: a garland"]
    finally:
        rescue.cancel()


def test_completions_stand_in_place_of_the_unfinished_word() -> None:
    turns = Turns(FakeTalk)
    completer, event = WordCompleter(turns), CompleteEvent(completion_requested=True)
    assert list(completer.get_completions(Document("a g"), event)) == []
    turns.load()
    found = list(completer.get_completions(Document("a g"), event))
    assert [(one.text, one.start_position) for one in found] == [("garland", -1), ("gold", -1)]
    found = list(completer.get_completions(Document("a "), event))
    assert {one.start_position for one in found} == {0}


def test_a_suggestion_is_what_was_said_before_or_the_one_way_to_end_the_word() -> None:
    turns = Turns(FakeTalk)
    turns.load()
    history = InMemoryHistory()
    history.append_string("ten tables, full drop")
    buffer = Buffer(history=history)
    suggester = LineSuggester(turns)

    def suggested(text: str) -> str | None:
        suggestion = suggester.get_suggestion(buffer, Document(text))
        return None if suggestion is None else suggestion.text

    assert suggested("a tab") == "le"
    assert suggested("a g") is None
    assert suggested("a x") is None
    assert suggested("a ") is None
    assert suggested("") is None


def test_lines_are_kept_in_a_file_that_only_its_owner_reads(folder: Path) -> None:
    talk(folder, "one\r")
    assert stat.S_IMODE((folder / "history").stat().st_mode) == 0o600
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert talk(folder, f"{UP}\r") == ["1 at 40: one"]


def test_a_history_open_to_all_is_closed_and_what_it_holds_is_cleaned(folder: Path) -> None:
    folder.mkdir(parents=True, mode=0o755)
    file = folder / "history"
    file.write_text("\n# then\n+red \x1b[31mgold\u202e\n")
    file.chmod(0o644)
    history, problem = open_history(folder)
    assert problem is None
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert list(history.load_history_strings()) == ["red gold"]


def test_where_history_cannot_be_kept_one_plain_line_says_so(tmp_path: Path) -> None:
    folder = tmp_path / "festoon"
    folder.write_text("a file, where a folder should be")
    problem, *replies = talk(folder, "one\r", f"{UP}\r")
    assert "cannot be written (File exists)" in " ".join(problem.split())
    assert replies == ["1 at 40: one", "2 at 40: one"]


def test_a_disk_that_fails_later_does_not_stop_the_talk(folder: Path) -> None:
    def failing(width: int) -> FakeTalk:
        (folder / "history").unlink()
        (folder / "history").mkdir()
        return FakeTalk(width)

    assert talk(folder, "one\r", "two\r", make=failing)[-1] == "2 at 40: two"


def test_nothing_typed_steers_the_terminal_that_the_line_is_drawn_on() -> None:
    drawn = io.StringIO()
    output = SafeOutput(drawn, lambda: Size(rows=24, columns=40))
    output.write("red \x1b[31mgold \u202eback\x9b0m")
    output.write("\r\n\r\n")  # how the layout moves down
    output.flush()
    assert drawn.getvalue() == "red gold back\r\n\r\n"


@pytest.mark.parametrize("term", ["dumb", "", "unknown"])
def test_a_dumb_terminal_gets_plain_lines(term: str, monkeypatch: pytest.MonkeyPatch, folder: Path) -> None:
    monkeypatch.setenv("TERM", term)
    stdin, stdout = io.StringIO("one\n\ncrash\nexit\ntwo\n"), io.StringIO()
    assert chat(stdin, stdout, FakeTalk, data_folder=folder) == 0
    assert "> 1 at 40: one\n\n> > Something went wrong" in stdout.getvalue()
    assert "two" not in stdout.getvalue().split("kept", 1)[1]
    assert "\x1b" not in stdout.getvalue()
    assert not folder.exists()
