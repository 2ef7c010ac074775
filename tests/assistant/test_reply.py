"""A reply in its two forms: as it goes about inside, and as it is handed out."""

import copy
import dataclasses
import pickle
import subprocess
import sys
from pathlib import Path

from assistant import Conversation, outside
from rules import Figure

ROOT = Path(__file__).parents[2]


def test_a_figure_handed_out_has_the_fields_of_a_figure() -> None:
    assert [field.name for field in dataclasses.fields(Figure)] == list(outside.Figure.model_fields)


def test_what_is_handed_out_holds_all_that_went_about() -> None:
    talk, other = Conversation(), Conversation()
    made, plain = talk.say("three 6 ft tables in navy, flibber"), other.reply_to("three 6 ft tables in navy, flibber")
    assert (made.text, made.unread, made.question, made.cautions) == (
        plain.text,
        plain.unread,
        plain.question,
        plain.cautions,
    )
    assert (made.heard.pieces, made.heard.job) == (plain.heard.pieces, plain.heard.job)
    assert [figure.model_dump() for figure in made.figures] == [dataclasses.asdict(one) for one in plain.figures()]
    assert made.unread == ["flibber"]


def test_a_reply_can_be_copied_and_pickled_with_its_figures() -> None:
    made = Conversation().say("a 10 ft garland")
    assert pickle.loads(pickle.dumps(made)) == made == copy.deepcopy(made)  # noqa: S301 - our own
    assert made != Conversation().say("a 12 ft garland")


def test_an_answer_on_the_command_line_waits_for_neither_pint_nor_pydantic(tmp_path: Path) -> None:
    script = (
        "import sys; from assistant.cli import run\n"
        "print(run(['eight', '6', 'ft', 'tables'], None, sys.stderr))\n"
        "print(sorted(set(sys.modules) & {'pint', 'pydantic', 'prompt_toolkit'}))\n"
    )
    home = dict.fromkeys(("HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME"), str(tmp_path))
    argv = [sys.executable, "-c", script]
    first, second = (
        subprocess.run(argv, cwd=ROOT, env=home, capture_output=True, text=True, check=True) for _ in range(2)
    )
    assert second.stdout == "0\n[]\n"
    assert first.stderr == second.stderr
    assert first.stdout == "0\n['pint']\n"
