"""`python -m tests.fuzz.guided SECONDS [TARGET ...]`: inputs grown after the code that they reach, by atheris.

atheris is not among what the tests need (`pip install atheris`; it comes for Linux).  Each target has a process of its
own, with the phrases of the tests to begin from and the words of the lexicon to put in.  1 where anything crashed.
"""

import random
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["assistant", "grammar", "rules"]):
    from tests.fuzz import targets as them

LONGEST = 600  # bytes of an input
SLOW = 0.05  # seconds of CPU time, with what the counting of branches adds
NAMES = ("reader", "turns", "formulas", "house", "import", "words")


def grow(name: str, seconds: int) -> None:
    """Run one target for so long in this process, which libFuzzer then ends."""
    target = next(one for one in them.targets(random.Random(0)) if one.name == name)
    slow: list[tuple[float, str]] = []
    taken = 0

    def take(data: bytes) -> None:
        nonlocal taken
        taken += 1
        text = data.decode("utf-8", "ignore")
        begun = time.thread_time()
        target.take(text)
        spent = time.thread_time() - begun
        if spent > SLOW and (not slow or spent > slow[-1][0]):
            slow.append((spent, text))
            print(f"SLOW {name} {spent:.3f} s, {len(text)} letters {text[:200]!r}", flush=True)

    with tempfile.TemporaryDirectory(prefix="festoon-guided-") as folder:
        seeds, words = Path(folder, "seeds"), Path(folder, "words")
        seeds.mkdir()
        for number in range(300):
            (seeds / str(number)).write_text(target.make()[:LONGEST], encoding="utf-8", errors="ignore")
        plain = [word for word in them.Conversation().reader.lexicon.mendable if word.isascii() and word.isalpha()]
        words.write_text("".join(f'"{word}"\n' for word in plain), encoding="ascii")
        settings = {"max_total_time": seconds, "max_len": LONGEST, "dict": words, "artifact_prefix": f"{folder}/"}
        options = [f"-{key}={value}" for key, value in settings.items()]
        atheris.Setup([sys.argv[0], *options, "-print_final_stats=1", "-verbosity=0", str(seeds)], take)
        atheris.Fuzz()


def main(seconds: int, names: list[str]) -> int:
    """Run each target in turn, and say how each ended."""
    failed = 0
    for name in names or NAMES:
        done = subprocess.run(
            [sys.executable, "-m", "tests.fuzz.guided", "one", name, str(seconds)],
            capture_output=True,
            text=True,
            errors="replace",
            check=False,
        )
        lines = [line for line in (done.stdout + done.stderr).splitlines() if line.startswith(("SLOW", "stat::number"))]
        if done.returncode:
            failed += 1
            said = (done.stdout + done.stderr).splitlines()
            begun = next((n for n, line in enumerate(said) if "Uncaught Python exception" in line), len(said))
            lines += said[begun:]
        print(f"{name}: {'crashed' if done.returncode else 'no crash'}", *lines, sep="\n  ", flush=True)
    return min(failed, 1)


if __name__ == "__main__":
    if sys.argv[1] == "one":
        grow(sys.argv[2], int(sys.argv[3]))
    else:
        sys.exit(main(int(sys.argv[1]), sys.argv[2:]))
