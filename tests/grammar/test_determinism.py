"""The same words give the same bytes, whatever the order in which Python keeps its sets."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SENTENCES = """\
eight 6 ft tables, full drop, 30 in wide
navy, gold and white, a third each
why 252
two of those are 8 ft
compare two thirds and full drop

a dozen 60 inch rounds, right round, sage green and cream
what did you assume
shopping list

two columns 7 ft high and an arch 10 ft by 8 ft, gold
zquid frobnication tabel runers
how sure are you

six 180 cm tables, two thirds of it, tables 76 cm high
86 foot tables
remove the hoop
"""
SEEDS = ("0", "1", "2", "42")


def replies(seed: str) -> bytes:
    """All replies as JSON lines, from a process of its own under that seed."""
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "--json"],
        cwd=ROOT,
        env={**os.environ, "PYTHONHASHSEED": seed},
        input=SENTENCES.encode(),
        capture_output=True,
        check=False,
    )
    assert done.stderr == b""
    return done.stdout


@pytest.fixture(scope="module")
def first() -> bytes:
    return replies(SEEDS[0])


def test_every_turn_is_answered(first: bytes) -> None:
    said = [line for line in SENTENCES.splitlines() if line]
    assert len(said) >= 12
    assert len(first.splitlines()) == len(said)
    assert b'{"error"' not in first


@pytest.mark.parametrize("seed", SEEDS[1:])
def test_replies_are_the_same_under_every_hash_seed(seed: str, first: bytes) -> None:
    assert replies(seed) == first
