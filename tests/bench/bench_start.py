"""How long one waits: start, prompt, one answer, a warm turn, as multiples of a bare Python on the same machine.

    python tests/bench/bench_start.py [--runs N]

Each figure is the median of the runs; the bare Python is timed in turn with the others, so that a busy machine slows
all alike. Nothing is asserted: machines differ, and only the ratios travel.
"""

import argparse
import os
import pty
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).parents[2]
WORDS = "eight 6 ft tables, full drop, 30 in wide"
TURNS = ("navy, gold and white", "two thirds", "ten tables", "full drop", "why so many")


def timed(work: Callable[[], object]) -> float:
    """Seconds that the work takes by the wall clock."""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def python(*argv: str) -> Callable[[], object]:
    """A run of a fresh interpreter to its end."""
    return lambda: subprocess.run(
        [sys.executable, *argv], cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False
    )


def until_prompt() -> None:
    """A start of the chat in a pseudo-terminal, until its prompt is drawn."""
    with tempfile.TemporaryDirectory() as home:
        place = {**os.environ, "TERM": "xterm", "HOME": home, "XDG_DATA_HOME": home}
        master, slave = pty.openpty()
        child = subprocess.Popen([sys.executable, "-m", "assistant"], cwd=ROOT, env=place, stdin=slave, stdout=slave)
        os.close(slave)
        try:
            drawn = b""
            while b">" not in drawn.partition(b"leaves.")[2]:
                drawn += os.read(master, 4096)
        finally:
            child.kill()
            child.wait()
            os.close(master)


def warm_turns(runs: int) -> list[float]:
    """Seconds for each turn of a conversation that is under way, in this process."""
    sys.path.insert(0, str(ROOT))
    from assistant import Conversation

    seconds: list[float] = []
    for _ in range(runs):
        talk = Conversation()
        talk.say(WORDS)
        seconds.extend(timed(lambda turn=turn, talk=talk: talk.say(turn)) for turn in TURNS)  # type: ignore[misc]
    return seconds


def main() -> None:
    """Time everything in turn and print one line a figure."""
    arguments = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    arguments.add_argument("--runs", type=int, default=15)
    runs: int = arguments.parse_args().runs
    works: dict[str, Callable[[], object]] = {
        "bare Python": python("-c", "pass"),
        "festoon --version": python("-m", "assistant", "--version"),
        "prompt drawn": until_prompt,
        "one answer": python("-m", "assistant", WORDS),
    }
    taken: dict[str, list[float]] = {name: [] for name in works}
    for _ in range(runs):
        for name, work in works.items():
            taken[name].append(timed(work))
    taken["warm turn"] = warm_turns(runs)
    bare = statistics.median(taken["bare Python"])
    print(f"median of {runs}")
    for name, seconds in taken.items():
        middle = statistics.median(seconds)
        print(f"{name:<18} {middle * 1e3:8.1f} ms {middle / bare:8.2f} x bare Python")


if __name__ == "__main__":
    main()
