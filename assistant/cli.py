"""The command `festoon`: the chat, one answer, or a conversation by pipe.

Little is imported until it is needed, even of the standard library, so that --help and --version answer at once.
"""

from __future__ import annotations

import gc
import os
import sys
from types import SimpleNamespace

TYPE_CHECKING = False  # that of `typing`, which takes longer to import than the version takes to print
if TYPE_CHECKING:
    from collections.abc import Iterator
    from typing import Literal, TextIO

    from assistant.turns import MakeTalk, Talk

VERSION = "0.1.0"  # the one place: the package is built with it
ANSWERED, UNANSWERED, WRONG_USE = 0, 1, 2
INTERRUPTED, PIPE_CLOSED = 130, 141  # 128 + the signal's number, as a shell reports it (POSIX, 2.8.2)

HELP = """\
festoon works out balloon decor: say
what you make, in your own words.

  festoon              the chat
  festoon WORDS ...    one answer
  ... | festoon        a turn a line; a
                       blank one starts
                       a conversation

  --json      (before the words) replies
              as JSON, one a line;
              {"error": ...} where a
              turn was not taken
  --version   the version
  -h, --help  this text
  --          what follows is words

For instance:

  festoon eight 6 ft tables, full drop

Exit status: 0 answered; 1 a question or
nothing understood; 2 wrong use.
"""

_OPTIONS = ("--json", "--version", "--help", "-h")


class Request(SimpleNamespace):
    """What the command line asks for; `problem` is a sentence where it asks for nothing that can be done."""

    def __init__(
        self,
        *,
        action: Literal["talk", "help", "version"] = "talk",
        json: bool = False,
        words: str | None = None,
        problem: str | None = None,
    ) -> None:
        super().__init__(action=action, json=json, words=words, problem=problem)


def main() -> int:
    """The entry point of the command: the process's own arguments and streams in, the exit status out."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a sign that the terminal cannot show must not end the talk
    gc.disable()  # nearly all that a start makes stays, so looking for garbage in it is time lost
    return run(sys.argv[1:], sys.stdin, sys.stdout, sys.stderr)


def _make_and_settle(width: int) -> Talk:
    """A conversation; from the first on, garbage is collected again, but not looked for in what was made till then."""
    from assistant.turns import make_conversation

    talk = make_conversation(width)
    if not gc.isenabled():
        gc.freeze()
        gc.set_threshold(5_000, 5, 2)  # a turn leaves little behind it, and much is made in it
        gc.enable()
    return talk


def run(
    argv: list[str],
    stdin: TextIO | None,
    stdout: TextIO | None,
    stderr: TextIO | None = None,
    make_conversation: MakeTalk | None = None,
) -> int:
    """The whole command: arguments without the program's name, streams (None where closed); the exit status.

    `stdin` is read as bytes, through its buffer. Never raises; what goes wrong is one plain line on `stderr`.
    """
    with open(os.devnull, "r+", encoding="utf-8") as nowhere:  # noqa: PTH123 - pathlib would slow each start
        stdin, stdout, stderr = stdin or nowhere, stdout or nowhere, stderr or nowhere
        try:
            status = _obey(read_arguments(argv), stdin, stdout, stderr, make_conversation or _make_and_settle)
            stdout.flush()
        except BrokenPipeError:
            # Whoever read has read enough: no fault, so no line, and nothing more may be flushed at the end.
            _silence(stdout)
            return PIPE_CLOSED
        except KeyboardInterrupt:
            return INTERRUPTED
        except OSError as error:
            _silence(stdout)
            return _complain(stderr, f"Reading or writing failed: {error.strerror or error}.", UNANSWERED)
        except Exception:  # no traceback reaches a user
            if os.environ.get("FESTOON_DEBUG"):
                raise
            return _complain(stderr, "festoon could not go on and had to stop; is it installed whole?", UNANSWERED)
        return status


def read_arguments(argv: list[str]) -> Request:
    """Options, then words. From the first word on, and after "--", all is words, whatever it looks like."""
    asked: set[str] = set()
    words = list(argv)
    while words and _looks_like_option(words[0]):
        option = words.pop(0)
        if option == "--":
            break
        if option not in _OPTIONS:
            import difflib

            from assistant.terminal import one_line

            near = difflib.get_close_matches(option, _OPTIONS, n=1)
            hint = f'did you mean "{near[0]}"?' if near else 'see "festoon --help".'
            return Request(problem=f'There is no option "{one_line(option)[:40]}"; {hint}')
        asked.add(option)
    if asked & {"-h", "--help"}:
        return Request(action="help")
    if "--version" in asked:
        return Request(action="version")
    if not words:
        return Request(json="--json" in asked)
    said = " ".join(words)
    if not said.strip():
        return Request(problem='Nothing was said; say what you are making, or see "festoon --help".')
    return Request(json="--json" in asked, words=said)


def _looks_like_option(word: str) -> bool:
    """A dash and a letter, no space: "-5", "-" and a quoted "- ten tables" are words."""
    return word == "--" or (word.startswith("-") and word.lstrip("-")[:1].isalpha() and " " not in word)


def _obey(request: Request, stdin: TextIO, stdout: TextIO, stderr: TextIO, make: MakeTalk) -> int:
    if request.problem is not None:
        return _complain(stderr, request.problem, WRONG_USE)
    if request.action == "help":
        stdout.write(HELP)
        return ANSWERED
    if request.action == "version":
        stdout.write(f"festoon {VERSION}\n")
        return ANSWERED
    if request.words is not None:
        return _say_once(request.words, request.json, stdout, stderr, make)
    if stdin.isatty() and stdout.isatty() and not request.json:
        from assistant.chat import chat

        return chat(stdin, stdout, make)
    return _converse(request.json, stdin, stdout, stderr, make)


def _say_once(words: str, as_json: bool, stdout: TextIO, stderr: TextIO, make: MakeTalk) -> int:
    from assistant.terminal import colour_depth, columns_of
    from assistant.turns import Turns

    turns = Turns(make, columns_of(stdout))
    turn = turns.take(words)
    if as_json:
        stdout.write(turn.as_json() + "\n")
    else:
        (stderr if turn.reply is None else stdout).write(turns.painted(turn.text, colour_depth(stdout)) + "\n")
    return ANSWERED if turn.answered else UNANSWERED


def _converse(as_json: bool, stdin: TextIO, stdout: TextIO, stderr: TextIO, make: MakeTalk) -> int:
    """One turn a line. Answered means that no line was refused and no conversation ended on an open question."""
    from assistant.turns import Turns

    turns = Turns(make)
    spoken, answered, failed = False, True, False
    for line in lines_of(stdin):
        if not line.strip():
            failed, answered = failed or not answered, True
            turns = Turns(make)
            continue
        turn = turns.take(line)
        failed, answered, spoken = failed or turn.reply is None, turn.answered, True
        stdout.write(turn.as_json() + "\n" if as_json else turn.text + "\n\n")
        stdout.flush()
    if not spoken:
        return _complain(stderr, 'Nothing was said; give one turn a line, or see "festoon --help".', UNANSWERED)
    return ANSWERED if answered and not failed else UNANSWERED


def lines_of(stdin: TextIO) -> Iterator[str]:
    """The lines, without their ends. Bytes that are no UTF-8 become lone surrogates (PEP 383).

    Of a line longer than a turn may be, only enough is held to show that it is too long, however long it is.
    """
    from assistant.turns import LONGEST_TURN

    enough = 4 * (LONGEST_TURN + 1)  # bytes: a character takes four at most
    encoding = "utf-8-sig"
    while raw := stdin.buffer.readline(enough):
        rest = raw
        while rest and not rest.endswith(b"\n"):
            rest = stdin.buffer.readline(enough)
        yield raw.decode(encoding, errors="surrogateescape").rstrip("\r\n")
        encoding = "utf-8"


def _complain(stderr: TextIO, sentence: str, status: int) -> int:
    from assistant.terminal import one_line

    stderr.write(one_line(sentence) + "\n")
    return status


def _silence(stdout: TextIO) -> None:
    """Point a stream that can take no more at nothing, so that the interpreter's last flush does not fail."""
    import contextlib

    with contextlib.suppress(OSError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stdout.fileno())
