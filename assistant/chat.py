"""The chat at a terminal: one line typed, one reply, and what was said stays in view below the line.

The prompt is on the screen before grammar, book and models are loaded; they load while the first line is typed.
"""

import contextlib
import os
import re
import sys
import textwrap
import threading
from collections.abc import Iterable
from pathlib import Path
from typing import TextIO

from prompt_toolkit import PromptSession
from prompt_toolkit.application import Application
from prompt_toolkit.auto_suggest import AutoSuggest, AutoSuggestFromHistory, Suggestion
from prompt_toolkit.buffer import Buffer
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.output import ColorDepth, Output, create_output
from prompt_toolkit.output.vt100 import Vt100_Output
from prompt_toolkit.styles import Style

from assistant.history import open_history
from assistant.terminal import clean, colour_depth, columns_of, shorten
from assistant.turns import STOPPED, MakeTalk, Turns

PROMPT = "> "
GREETING = (
    'Say what you are making, for instance "eight 6 ft tables, full drop, 30 in wide". '
    "Tab completes a word, Ctrl-D leaves."
)
# A menu needs room below the line; on a telephone with its keyboard up there is little.
MENU_LINES = 5

STYLE = {"prompt": "bold", "bottom-toolbar": "noreverse"}
# Without colour what is suggested must still look different from what was typed.
STYLE_WITHOUT_COLOUR = {**STYLE, "auto-suggestion": "underline"}


class SafeOutput(Vt100_Output):
    """A terminal that what was typed, pasted, suggested or completed cannot steer."""

    def write(self, data: str) -> None:
        # The layout's own moves to another line come alone; a line break within a text never does.
        super().write(data if not data.strip("\r\n") else clean(data))


class WordCompleter(Completer):
    """Tab: the conversation's own words in place of the unfinished one."""

    def __init__(self, turns: Turns) -> None:
        self._turns = turns

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterable[Completion]:
        before = document.text_before_cursor
        unfinished = _unfinished(before)
        for word in self._turns.complete(before):
            yield Completion(word, start_position=-len(unfinished))


class LineSuggester(AutoSuggest):
    """Grey text ahead of the cursor: a line said before that began so, else the one way to end the word."""

    def __init__(self, turns: Turns) -> None:
        self._turns = turns
        self._history = AutoSuggestFromHistory()

    def get_suggestion(self, buffer: Buffer, document: Document) -> Suggestion | None:
        before = self._history.get_suggestion(buffer, document)
        if before is not None:
            return before
        unfinished = _unfinished(document.text)
        if not unfinished or not document.is_cursor_at_the_end:
            return None
        ways = self._turns.complete(document.text)
        if len(ways) != 1 or not ways[0].lower().startswith(unfinished.lower()):
            return None
        return Suggestion(ways[0][len(unfinished) :])


def chat(
    stdin: TextIO, stdout: TextIO, make: MakeTalk, output: Output | None = None, data_folder: Path | None = None
) -> int:
    """Talk until Ctrl-D or "quit"; the exit status, always 0.

    `output` is where the line is edited (that of `stdout` where None); replies go to `stdout`. The history lies in
    `data_folder`, the user's own where None. A terminal that cannot move its cursor gets plain lines.
    """
    if output is None and os.environ.get("TERM", "").lower() in ("", "dumb", "unknown") and sys.platform != "win32":
        return _plain_chat(stdin, stdout, make)
    turns = Turns(make)
    colourless = bool(os.environ.get("NO_COLOR"))
    history, problem = open_history(data_folder)
    session = PromptSession[str](
        [("class:prompt", PROMPT)],
        history=history,
        completer=WordCompleter(turns),
        auto_suggest=LineSuggester(turns),
        complete_while_typing=False,
        reserve_space_for_menu=MENU_LINES,
        style=Style.from_dict(STYLE_WITHOUT_COLOUR if colourless else STYLE),
        color_depth=ColorDepth.DEPTH_1_BIT if colourless else None,
        output=output or _output_for(stdout),
    )
    _load_once_drawn(session, turns)
    _write(stdout, _wrapped(GREETING, _columns(session)))
    if problem is not None:
        _write(stdout, _wrapped(problem, _columns(session)))
    while True:
        # No job, no bar: an empty one would take a line of a small screen.
        session.bottom_toolbar = (lambda: shorten(turns.status(), _columns(session))) if turns.status() else None
        try:
            said = session.prompt()
        except KeyboardInterrupt:
            continue
        except EOFError:
            return 0
        turns.width = _columns(session)
        if not _answer(said, turns, stdout):
            return 0


def _plain_chat(stdin: TextIO, stdout: TextIO, make: MakeTalk) -> int:
    """The same talk with nothing but lines: the terminal itself echoes what is typed."""
    turns = Turns(make, columns_of(stdout))
    _write(stdout, _wrapped(GREETING.replace("Tab completes a word, ", ""), turns.width))
    while True:
        try:
            stdout.write(PROMPT)
            stdout.flush()
            said = stdin.readline()
        except KeyboardInterrupt:
            stdout.write("\n")
            continue
        except UnicodeDecodeError:
            said = "\udcff"  # what was unreadable is refused by the turn, in the turn's own words
        if not said:
            stdout.write("\n")
            return 0
        if not _answer(said, turns, stdout):
            return 0


def _answer(said: str, turns: Turns, stdout: TextIO) -> bool:
    """Answer each line of what was typed or pasted; False where one of them asks to leave."""
    lines = [line for line in re.split("\r\n|[\r\n]", said) if line.strip()]
    for line in lines:
        try:
            if turns.leaves(line):
                return False
            if len(lines) > 1:
                _write(stdout, PROMPT + clean(line), gap=False)
            reply = turns.painted(turns.take(line).text, colour_depth(stdout))
        except KeyboardInterrupt:
            _write(stdout, "\n" + _wrapped(turns.told(STOPPED), turns.width))  # the terminal has drawn ^C on this line
            return True
        _write(stdout, reply if "\n" in reply else _wrapped(reply, turns.width))
    return True


def _load_once_drawn(session: PromptSession[str], turns: Turns) -> None:
    """Load the conversation in a thread of its own as soon as the first prompt is on the screen."""

    def load() -> None:
        # What fails here fails again in the first turn, which has words for it.
        with contextlib.suppress(Exception):
            turns.load()

    def drawn(app: Application[str]) -> None:
        app.after_render -= drawn
        threading.Thread(target=load, name="load").start()

    session.app.after_render += drawn


def _output_for(stdout: TextIO) -> Output:
    if sys.platform == "win32":
        return create_output(stdout)
    return SafeOutput.from_pty(stdout, term=os.environ.get("TERM"))


def _columns(session: PromptSession[str]) -> int:
    return session.output.get_size().columns


def _unfinished(before: str) -> str:
    return "" if not before or before[-1].isspace() else before.rsplit(maxsplit=1)[-1]


def _wrapped(sentence: str, columns: int) -> str:
    return textwrap.fill(clean(sentence), max(min(columns - 1, 100), 20))


def _write(stdout: TextIO, text: str, gap: bool = True) -> None:
    stdout.write(text + ("\n\n" if gap else "\n"))
    stdout.flush()
