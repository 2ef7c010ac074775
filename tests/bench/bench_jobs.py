"""How long a book of 10,000 jobs takes to list and to search: python -m tests.bench.bench_jobs"""

import tempfile
import time
from pathlib import Path

from assistant.jobs import FILE, JobBook

JOBS, TURNS, ROUNDS = 10_000, 20, 30
COLOURS = ("navy", "gold", "sage green", "white", "blush")


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        book = JobBook(Path(folder) / FILE)
        with book._writing():
            for n in range(JOBS):
                said = [
                    f"{n % 30} 6 ft tables, full drop, {COLOURS[n % 5]}",
                    *("make that ten, no greenery" for _ in range(TURNS - 1)),
                ]
                book._db.execute(
                    "INSERT INTO jobs (name, made, changed, summary, words) VALUES (?, ?, ?, ?, ?)",
                    (f"party {n}", n, n, "8 runners", f"party {n} {' '.join(said)}"),
                )
                book._db.executemany(
                    "INSERT INTO turns VALUES (?, ?, ?, 0)", [(n + 1, k, t) for k, t in enumerate(said)]
                )
        for what, words, span in (
            ("list", "", (None, None)),
            ("one word", "gold", (None, None)),
            ("a rare name", "party 77", (None, None)),
            ("none found", "zebra", (None, None)),
            ("a day", "", (100.0, 200.0)),
        ):
            took = []
            for _ in range(ROUNDS):
                start = time.perf_counter()
                book.find(words, *span)
                took.append(time.perf_counter() - start)
            took.sort()
            print(f"{what:12} median {1000 * took[ROUNDS // 2]:6.2f} ms, slowest {1000 * took[-1]:6.2f} ms")
        book.close()


if __name__ == "__main__":
    main()
