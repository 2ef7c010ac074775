"""Requests made from the book's words are read as they were made; `--long` makes 20,000 of them.

Each floor stands a point under what was measured last; raise it when the reading improves.
"""

from collections import Counter

import pytest

from tests.grammar.generated import requests
from tests.phrases_score import verdict

SEED = 1
EXACT = 0.98
SILENT = 0.01


def test_made_requests_are_read_as_they_were_made(request: pytest.FixtureRequest) -> None:
    count = 20_000 if request.config.getoption("--long") else 300
    found = Counter(verdict(phrase) for phrase in requests(SEED, count))
    assert found["exact"] >= EXACT * count, found
    assert found["silent"] <= SILENT * count, found


def test_a_seed_makes_the_same_requests() -> None:
    assert list(requests(7, 20)) == list(requests(7, 20))
    assert list(requests(7, 20)) != list(requests(8, 20))
