"""How long a plan of clusters takes to make, and how near it comes to the least that its shares allow.

    python tests/bench/bench_pattern.py [--runs N]

Nothing is asserted. Aimed at: 20 quads in 10 ms, 1,000 in half a second.
"""

import argparse
import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))  # so that this file can be run by itself

from rules.pattern import plan

PALETTES = {
    "40/30/30": [("a", 0.4), ("b", 0.3), ("c", 0.3)],
    "40/30/20/10": [("a", 0.4), ("b", 0.3), ("c", 0.2), ("d", 0.1)],
    "60/40": [("a", 0.6), ("b", 0.4)],
}


def main() -> None:
    """Print a row for each length and palette."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--runs", type=int, default=3)
    runs = parser.parse_args().runs
    print(f"{'quads':>6}  {'palette':<12}{'same %':>8}{'least %':>9}{'blind %':>9}{'ms':>8}")
    for clusters in (20, 100, 1000):
        small, big = 4 * (clusters // 5), 4 * (clusters // 10)
        sizes = [(3.4, small), (4.28, 4 * clusters - small - big), (4.9, big)]
        for name, colours in PALETTES.items():
            took, shares = [], []
            for seed in range(runs):
                began = time.perf_counter()
                measures = plan(clusters, sizes, colours, [(3.4, clusters)], seed=seed).measures
                took.append(1000 * (time.perf_counter() - began))
                shares.append(100 * measures.same_share)
            least, blind = 100 * measures.least_share, 100 * measures.blind_share
            row = f"{statistics.mean(shares):8.1f}{least:9.1f}{blind:9.1f}{statistics.median(took):8.1f}"
            print(f"{clusters:>6}  {name:<12}{row}")


if __name__ == "__main__":
    main()
