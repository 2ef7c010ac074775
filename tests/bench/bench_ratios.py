"""How long one waits: start, prompt, answer, warm turns, a pipe, a great job; times as multiples of a bare Python.

    python tests/bench/bench_ratios.py [--runs N] [--lines 100 1000 10000]

The starts are medians of the runs, the bare Python timed in turn with the others, so that a busy machine slows all
alike; the turns are those of tests/phrases. Nothing is asserted: machines differ, and only the ratios travel.
"""

import argparse
import json
import os
import pty
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from itertools import chain, cycle, islice
from pathlib import Path

ROOT = Path(__file__).parents[2]
WORDS = "eight 6 ft tables, full drop, 30 in wide"
PIECES, TURNS = 50, 200  # of the great job
# What is said here keeps house rules and jobs: in a home of its own, which goes at the end.
HOME = tempfile.TemporaryDirectory()
os.environ |= dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"), HOME.name)
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # a start that compiles every module anew is not what people wait for


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


def phrases() -> list[list[str]]:
    """The conversations of tests/phrases."""
    lines = (
        line for path in sorted(ROOT.glob("tests/phrases/*.jsonl")) for line in path.read_text("utf-8").split("\n")
    )
    return [json.loads(line)["say"] for line in lines if line]


def warm_turns(*conversations: list[str]) -> list[float]:
    """Seconds for each turn of the conversations, one after the other in this process, which has answered before."""
    sys.path.insert(0, str(ROOT))
    from assistant import Conversation

    Conversation().say(WORDS)
    seconds: list[float] = []
    for turns in conversations:
        talk = Conversation()
        seconds.extend(timed(lambda turn=turn, talk=talk: talk.say(turn)) for turn in turns)  # type: ignore[misc]
    return seconds


def great_job() -> list[str]:
    """Pieces one by one, then changes to the last and to the job."""
    pieces = [f"and a {6 + n} ft garland in navy" for n in range(PIECES)]
    return [*pieces, *islice(cycle(["make it 10 ft", "outdoors", "make it 12 ft", "20 % spare"]), TURNS - PIECES)]


def piped(lines: int) -> float:
    """Seconds that a pipe of so many lines takes, start and all; a blank line ends each conversation."""
    said = list(islice(cycle(chain.from_iterable([*turns, ""] for turns in phrases())), lines))
    text = "\n".join(turn.replace("\n", " ") for turn in said).encode()
    command = [sys.executable, "-m", "assistant"]
    return timed(lambda: subprocess.run(command, cwd=ROOT, input=text, stdout=subprocess.DEVNULL, check=False))


def main() -> None:
    """Time everything in turn and print one line a figure."""
    arguments = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    arguments.add_argument("--runs", type=int, default=15)
    arguments.add_argument("--lines", type=int, nargs="*", default=[100, 1000, 10_000])
    asked = arguments.parse_args()
    works: dict[str, Callable[[], object]] = {
        "bare Python": python("-c", "pass"),
        "festoon --version": python("-m", "assistant", "--version"),
        "prompt drawn": until_prompt,
        "one answer": python("-m", "assistant", WORDS),
    }
    python("-m", "assistant", WORDS)()  # lays down what later starts find
    taken: dict[str, list[float]] = {name: [] for name in works}
    for _ in range(asked.runs):
        for name, work in works.items():
            taken[name].append(timed(work))
    bare = statistics.median(taken["bare Python"])

    def row(name: str, seconds: float) -> None:
        print(f"{name:<24}{seconds * 1e3:9.1f} ms {seconds / bare:8.2f} x bare Python", flush=True)

    print(f"median of {asked.runs}")
    for name, seconds in taken.items():
        row(name, statistics.median(seconds))
    for lines in asked.lines:
        seconds = piped(lines)
        row(f"pipe of {lines} lines", seconds)
        print(f"{lines / seconds:33.0f} lines a second")
    # kB on Linux, of the greatest child. A child begins with the size of its parent, so nothing was answered here yet.
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
    print(f"peak memory of a start or a pipe {peak / 1024:9.1f} MB")
    warm = statistics.quantiles(warm_turns(*phrases()), n=100)
    row("warm turn, median", warm[49])
    row("warm turn, 99 of 100", warm[98])
    row(f"turn {TURNS} of {PIECES} pieces", statistics.median(warm_turns(great_job())[-20:]))


if __name__ == "__main__":
    main()
