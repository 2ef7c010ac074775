"""The drawing at a terminal: narrow enough, the same in letters and in colour, and plain where it has to be."""

import io
import re

import pytest

from assistant import Conversation
from assistant.sheets.drawing import coloured, plain
from assistant.sheets.scene import scene_of
from assistant.terminal import clean, colour_depth
from tests.assistant.sheets.demo_jobs import DEMO, hostile, made
from tests.assistant.sheets.test_scene import SAID

CONTROL = re.compile(r"\x1b\[[0-9;]*m")


@pytest.mark.parametrize("width", [40, 100])
@pytest.mark.parametrize("name", SAID)
def test_it_fits_and_has_one_line_in_colour_for_each_in_letters(name: str, width: int) -> None:
    scene = scene_of(made(SAID[name]), 0)
    assert scene is not None
    letters = plain(scene, width)
    assert max(map(len, letters)) <= width
    assert len(letters) <= 60
    for depth in (8, 24):
        painted = coloured(scene, width, depth)
        assert len(painted) == len(letters)
        assert max(len(CONTROL.sub("", line)) for line in painted) <= width
        assert all(line.endswith("\x1b[0m") or "\x1b" not in line or line.count("\x1b[0m") for line in painted)


def test_letters_stand_for_the_colours() -> None:
    scene = scene_of(made(SAID["column"]), 0)
    assert scene is not None
    drawn = "\n".join(plain(scene, 40))
    assert "R red  W white" in drawn
    assert drawn.count("R") > 10
    assert drawn.count("W") > 10


def test_colour_is_that_of_the_balloons() -> None:
    scene = scene_of(made(SAID["column"]), 0)
    assert scene is not None
    assert "38;2;255;0;0m" in "\n".join(coloured(scene, 40))
    assert "38;5;196m" in "\n".join(coloured(scene, 40, 8))


def test_names_cannot_steer_the_terminal() -> None:
    scene = scene_of(hostile(), 0)
    assert scene is not None
    drawn = "\n".join(plain(scene, 40))
    assert clean(drawn) == drawn
    bare = CONTROL.sub("", "\n".join(coloured(scene, 40)))
    assert clean(bare) == bare


class Screen(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("environ", "depth"),
    [
        ({"TERM": "xterm-256color"}, 8),
        ({"TERM": "xterm-256color", "COLORTERM": "truecolor"}, 24),
        ({"TERM": "xterm-256color", "COLORTERM": "truecolor", "NO_COLOR": "1"}, 0),
        ({"TERM": "xterm-256color", "NO_COLOR": ""}, 8),
        ({"TERM": "dumb", "COLORTERM": "truecolor"}, 0),
        ({}, 0),
    ],
)
def test_how_much_colour_a_screen_may_have(environ: dict[str, str], depth: int) -> None:
    assert colour_depth(Screen(), environ) == depth
    assert colour_depth(io.StringIO(), environ) == 0


def test_the_chat_can_have_its_picture_in_colour() -> None:
    talk = Conversation()
    talk.say(DEMO["garden"])
    reply = talk.say("draw the arch")
    assert "\x1b" not in reply.text
    painted = talk.painted(reply.text)
    assert "▀" in painted
    assert painted.splitlines()[0] == "Arch"
    plain_again = talk.say("why")
    assert talk.painted(plain_again.text) == plain_again.text
