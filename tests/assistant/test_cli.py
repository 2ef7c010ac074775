"""The command: arguments, pipes, exit status, and what happens when streams misbehave."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from assistant.cli import VERSION, Request, read_arguments, run
from assistant.turns import BROKEN, NOT_TEXT, TOO_LONG
from tests.assistant.fake_talk import FakeTalk

ROOT = Path(__file__).parents[2]


def festoon(*argv: str, fed: bytes = b"") -> tuple[int, str, str]:
    """The exit status, what was written, and what was complained of."""
    stdin, stdout, stderr = io.TextIOWrapper(io.BytesIO(fed)), io.StringIO(), io.StringIO()
    status = run(list(argv), stdin, stdout, stderr, FakeTalk)
    return status, stdout.getvalue(), stderr.getvalue()


def python(*argv: str, **options: Any) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, *argv], cwd=ROOT, capture_output=True, text=True, timeout=60, check=False, **options
    )


@pytest.mark.parametrize(
    ("argv", "words"),
    [
        (["eight", "6", "ft", "tables"], "eight 6 ft tables"),
        (["eight tables", "-", "full drop"], "eight tables - full drop"),
        (["eight tables", "--", "full drop"], "eight tables -- full drop"),
        (["eight", "tables", "--full", "drop", "-h"], "eight tables --full drop -h"),
        (["-", "eight tables"], "- eight tables"),
        (["- eight tables"], "- eight tables"),
        (["--full drop"], "--full drop"),
        (["-5"], "-5"),
        (["--", "--json"], "--json"),
        (["--", "-h"], "-h"),
    ],
)
def test_options_eat_no_words(argv: list[str], words: str) -> None:
    assert read_arguments(argv) == Request(words=words)
    assert read_arguments(["--json", *argv]) == Request(words=words, json=True)


@pytest.mark.parametrize("option", ["--jsn", "-j", "--json=1", "--JSON", "--versions", "--x\x1b[31m"])
def test_an_unknown_option_is_one_plain_sentence(option: str) -> None:
    status, said, complaint = festoon(option, "eight", "tables")
    assert (status, said, complaint.count("\n")) == (2, "", 1)
    assert complaint.startswith('There is no option "-')
    assert "\x1b" not in complaint


def test_a_near_option_is_offered() -> None:
    assert 'did you mean "--json"?' in festoon("--jsn", "tables")[2]


@pytest.mark.parametrize("argv", [[""], ["   "], ["--json", ""], ["", "\t"]])
def test_saying_nothing_is_wrong_use(argv: list[str]) -> None:
    assert festoon(*argv)[0] == 2


@pytest.mark.parametrize(
    ("words", "status"), [("eight tables", 0), ("ask me", 1), ("gibberish", 1), ("crash", 1), ("caf\udce9", 1)]
)
def test_one_answer_and_its_exit_status(words: str, status: int) -> None:
    assert festoon(words)[0] == status
    assert festoon("--json", words)[0] == status


def test_an_answer_goes_out_and_a_refusal_goes_to_the_error_stream() -> None:
    assert festoon("eight", "tables") == (0, "1 at 40: eight tables\n", "")
    assert festoon("crash") == (1, "", BROKEN + "\n")


def test_json_is_one_document() -> None:
    status, said, _ = festoon("--json", "eight tables")
    assert status == 0
    assert json.loads(said)["heard"] == {"pieces": ["eight tables"]}
    assert json.loads(festoon("--json", "crash")[1]) == {"error": BROKEN}


def test_by_pipe_one_turn_a_line_and_a_blank_line_begins_anew() -> None:
    status, said, _ = festoon(fed=b"one\ntwo\r\n\n  \nthree")
    assert status == 0
    assert said == "1 at 40: one\n\n2 at 40: two\n\n1 at 40: three\n\n"


def test_by_pipe_json_is_one_document_a_line() -> None:
    status, said, _ = festoon("--json", fed=b"one\ncrash\ntwo\n")
    documents = [json.loads(line) for line in said.splitlines()]
    assert [document.get("text") for document in documents] == ["1 at 40: one", None, "2 at 40: two"]
    assert status == 1


@pytest.mark.parametrize(
    ("fed", "status"),
    [
        (b"ask\nthirty\n", 0),
        (b"one\nask\n", 1),
        (b"ask\n\none\n", 1),
        (b"crash\none\n", 1),
        (b"one\ngibberish\n", 1),
        (b"", 1),
        (b"\n\n", 1),
    ],
)
def test_by_pipe_the_status_says_whether_all_was_answered(fed: bytes, status: int) -> None:
    assert festoon(fed=fed)[0] == status


def test_bytes_that_are_no_text_are_one_plain_line_and_the_rest_is_read() -> None:
    status, said, _ = festoon(fed=b"\xef\xbb\xbfone\n\xff\xfe\x00t\ntwo\n")
    assert said == f"1 at 40: one\n\n{NOT_TEXT}\n\n2 at 40: two\n\n"
    assert status == 1


@pytest.mark.parametrize("char", [b"x", b"\xf0\x9f\x8e\x88", b"\xff"])
def test_a_very_long_line_is_one_plain_line_and_the_rest_is_read(char: bytes) -> None:
    status, said, _ = festoon(fed=char * 100_000 + b"\ntwo\n")
    assert said == f"{TOO_LONG}\n\n1 at 40: two\n\n"
    assert status == 1


def test_what_was_typed_never_steers_the_terminal() -> None:
    fed = b"\x1b[31mred\x1b]0;title\x07 \xc2\x9b0m gold \xe2\x80\xaeback\n"
    assert festoon(fed=fed)[1] == "1 at 40: red gold back\n\n"


def test_closed_streams_are_no_crash() -> None:
    assert run(["eight tables"], None, None, None, FakeTalk) == 0
    assert run([], None, None, None, FakeTalk) == 1


def test_ctrl_c_ends_quietly() -> None:
    assert festoon("stop") == (130, "", "")


class Failing(io.StringIO):
    def __init__(self, error: OSError) -> None:
        super().__init__()
        self.error = error

    def write(self, text: str) -> int:
        raise self.error


def test_a_closed_pipe_ends_quietly_and_a_full_disk_is_one_plain_line() -> None:
    stderr = io.StringIO()
    stdin = io.TextIOWrapper(io.BytesIO(b"one\n"))
    assert run([], stdin, Failing(BrokenPipeError()), stderr, FakeTalk) == 141
    assert stderr.getvalue() == ""
    assert run(["one"], stdin, Failing(OSError(28, "No space left on device")), stderr, FakeTalk) == 1
    assert stderr.getvalue() == "Reading or writing failed: No space left on device.\n"


def test_a_pipe_really_closed_leaves_no_traceback() -> None:
    reading, writing = os.pipe()
    os.close(reading)
    with os.fdopen(writing, "w") as closed:
        done = subprocess.run(
            [sys.executable, "-m", "assistant", "--help"],
            cwd=ROOT,
            stdout=closed,
            stderr=subprocess.PIPE,
            timeout=60,
            check=False,
        )
    assert (done.returncode, done.stderr) == (141, b"")


@pytest.mark.parametrize("option", ["--version", "--help", "-h"])
def test_help_and_version_load_no_library(option: str) -> None:
    script = (
        "import sys, assistant.cli\n"
        f"status = assistant.cli.run([{option!r}], None, sys.stderr)\n"
        "print(status, sorted(set(sys.modules) & {'lark', 'pint', 'pydantic', 'prompt_toolkit', 'rules', 'grammar'}))\n"
    )
    done = python("-c", script)
    assert done.stdout == "0 []\n"
    assert done.stderr.startswith("festoon ")


def test_the_version_is_one_line() -> None:
    assert festoon("--version") == (0, f"festoon {VERSION}\n", "")


def test_help_fits_a_telephone() -> None:
    status, said, _ = festoon("--help")
    assert status == 0
    assert max(map(len, said.splitlines())) <= 40


def test_the_module_is_the_command() -> None:
    done = python("-m", "assistant", "--jsn")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == 'There is no option "--jsn"; did you mean "--json"?\n'


def test_a_terminal_that_cannot_show_a_sign_still_shows_the_rest() -> None:
    done = python("-m", "assistant", "--é", env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"})
    assert done.returncode == 2
    assert done.stderr.startswith('There is no option "--?"')
