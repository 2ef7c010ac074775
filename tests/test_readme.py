"""What the README shows is what happens."""

import doctest
import re
from pathlib import Path

import pytest

from assistant.cli import ANSWERED, UNANSWERED, WRONG_USE
from tests.dialogues import WIDTH, dialogues_in, with_dialogues_anew

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "README.md").read_text(encoding="utf-8")
PAGES = ("README.md", "DEVELOPERS.md", "CHANGELOG.md")


def test_every_dialogue_is_real() -> None:
    assert len(dialogues_in(TEXT)) >= 6
    assert with_dialogues_anew(TEXT) == TEXT


def test_every_reply_fits_the_narrow_screen() -> None:
    lines = [line for talk in dialogues_in(TEXT) for turn in talk.turns for line in turn.reply.splitlines()]
    assert [line for line in lines if len(line) > WIDTH] == []


def test_the_python_shown_does_what_it_shows() -> None:
    (shown,) = re.findall(r"^```python\n(.*?)^```$", TEXT, re.MULTILINE | re.DOTALL)
    runner = doctest.DocTestRunner(verbose=False)
    runner.run(doctest.DocTestParser().get_doctest(shown, {}, "README.md", "README.md", 0))
    assert runner.summarize(verbose=False).attempted > 0
    assert runner.failures == 0


@pytest.mark.parametrize("command", ["python3 -m venv .venv", ".venv/bin/pytest"])
def test_a_set_up_command_stands_there_once(command: str) -> None:
    assert len([line for line in TEXT.splitlines() if command in line]) == 1


def test_the_exit_statuses_are_the_commands() -> None:
    rows = dict(re.findall(r"^\| (\d+) \| (\w+)", TEXT, re.MULTILINE))
    assert rows == {str(ANSWERED): "answered", str(UNANSWERED): "a", str(WRONG_USE): "the"}


@pytest.mark.parametrize("page", PAGES)
def test_links_lead_somewhere(page: str) -> None:
    text = (ROOT / page).read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#]+)\)", text):
        assert (ROOT / target).exists(), target
