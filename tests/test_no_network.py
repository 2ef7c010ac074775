"""Nothing listens and nothing phones out: the command runs with every use of a socket forbidden, and answers the same.

The events are those of Python's audit hooks (PEP 578); each function of the socket module raises one.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
FORBID = """
import sys

def forbid(event, arguments):
    if event.startswith("socket."):
        raise RuntimeError(f"{event} {arguments}")

sys.addaudithook(forbid)
"""
RUN = "import sys\nfrom assistant.cli import main\nsys.exit(main())\n"
TALK = b"""eight 6 ft tables, full drop, navy and gold
how much is that
why 252
compare two thirds and full drop
the party is on 12 june 2030 at 4
keep this as smith
make the client sheet
make the crew sheet
make the shopping list file
show me a picture
calendar file
will it hold in a 15 mph wind
remember my rate is 25 an hour
my jobs
the runners took 2100
export this
undo

ocho mesas de 6 pies
"""


def festoon(home: Path, *argv: str, fed: bytes = b"", first: str = FORBID) -> tuple[int, bytes, bytes]:
    """Exit status, what was written and complained of, of a command that has this folder, new, for all its own."""
    shutil.rmtree(home, ignore_errors=True)
    home.mkdir()
    places = {name: str(home / "own") for name in ("HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME")}
    done = subprocess.run(
        [sys.executable, "-c", first + RUN, *argv],
        cwd=home,
        input=fed,
        capture_output=True,
        timeout=120,
        check=False,
        env={**os.environ, **places, "PYTHONPATH": str(ROOT), "FESTOON_DEBUG": "1"},
    )
    return done.returncode, done.stdout, done.stderr


@pytest.mark.parametrize(
    "argv",
    [
        ("--version",),
        ("eight 6 ft tables, full drop",),
        ("--json", "an arch 10 ft wide and 8 ft high"),
        (),
    ],
    ids=["version", "one answer", "json", "pipe"],
)
def test_the_command_answers_the_same_without_a_network(argv: tuple[str, ...], tmp_path: Path) -> None:
    fed = b"" if argv else TALK
    open_, banned = (festoon(tmp_path / "home", *argv, fed=fed, first=first) for first in ("", FORBID))
    assert open_[1]
    assert banned == open_


def test_the_ban_holds() -> None:
    done = subprocess.run(
        [sys.executable, "-c", FORBID + "import socket\nsocket.socket()"], capture_output=True, text=True, check=False
    )
    assert "RuntimeError: socket.__new__" in done.stderr
