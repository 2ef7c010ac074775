"""`python -m tests.fuzz SEED SECONDS [TARGET ...]`: how many inputs each target took, what crashed, what was slow.

Not part of the default run. The same seed makes the same inputs; where the clock cuts them off differs.
"""

import random
import sys
import time
import traceback
from collections import Counter

from tests.fuzz.targets import Target, targets

SLOW = 0.05  # seconds of CPU time
SPOKEN = 1_000  # letters; reading takes time in proportion to the words, so a longer input may take as much longer
STRETCH = 2.0  # seconds that one target runs before the next has its turn, times its share
SHOWN = 5  # crashes of one place that are shown


class Run:
    """One run over all targets: counts, and the first inputs of each kind of trouble."""

    def __init__(self) -> None:
        self.taken: Counter[str] = Counter()
        self.crashed: Counter[str] = Counter()
        self.slow: Counter[str] = Counter()  # over SLOW, whatever their length
        self.dear: Counter[str] = Counter()  # over SLOW for each SPOKEN letters
        self.slowest: dict[str, tuple[float, int]] = {}
        self.places: Counter[str] = Counter()

    def one(self, target: Target, text: str) -> None:
        """Take one input and note how it went."""
        self.taken[target.name] += 1
        begun = time.thread_time()
        try:
            target.take(text)
        except Exception as error:
            last = traceback.extract_tb(error.__traceback__)[-1]
            place = f"{type(error).__name__} at {last.filename.rsplit('/', 2)[-1]}:{last.lineno}"
            self.crashed[target.name] += 1
            self.places[place] += 1
            if self.places[place] <= SHOWN:
                print(f"CRASH {target.name} {place} {error} {text[:600]!r}", flush=True)
            return
        spent = time.thread_time() - begun
        if spent > SLOW:
            run = target.again(text)
            begun = time.thread_time()
            run()  # what was slow by chance alone (garbage, a first use) is quick the second time
            spent = min(spent, time.thread_time() - begun)
        if spent > self.slowest.get(target.name, (0.0, 0))[0]:
            self.slowest[target.name] = spent, len(text)
        self.slow[target.name] += spent > SLOW
        if spent > SLOW * max(1.0, len(text) / SPOKEN):
            self.dear[target.name] += 1
            if self.dear[target.name] <= 50:
                print(f"SLOW {target.name} {spent:.3f} s, {len(text)} letters {text[:300]!r}", flush=True)

    def table(self) -> str:
        """A line a target."""
        rows = [f"{'target':10}{'inputs':>10}{'crashes':>9}{'>50ms':>7}{'dear':>6}  slowest"]
        for name, taken in self.taken.items():
            spent, size = self.slowest.get(name, (0.0, 0))
            row = f"{name:10}{taken:10,}{self.crashed[name]:9}{self.slow[name]:7}{self.dear[name]:6}"
            rows.append(f"{row}  {spent * 1000:.1f} ms ({size} letters)")
        return "\n".join([*rows, f"in all {self.taken.total():,} inputs, {self.crashed.total()} crashes"])


def main(seed: int, seconds: float, names: list[str]) -> int:
    """Run for so long; 1 where anything crashed."""
    run, chance = Run(), random.Random(seed)
    chosen = [target for target in targets(chance) if not names or target.name in names]
    for target in chosen:
        target.take("")
    begun = told = time.monotonic()
    while time.monotonic() < begun + seconds:
        for target in chosen:
            until = time.monotonic() + STRETCH * target.share
            while time.monotonic() < until:
                run.one(target, target.make())
        if time.monotonic() > told + 60:
            told = time.monotonic()
            print(f"after {told - begun:.0f} s, seed {seed}", run.table(), sep="\n", flush=True)
    print(f"the end, seed {seed}", run.table(), sep="\n", flush=True)
    return bool(run.crashed.total())


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), float(sys.argv[2]), sys.argv[3:]))
