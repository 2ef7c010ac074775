"""Number words of other languages, written by num2words (its own rules for each), come back as the number."""

import random
from pathlib import Path

import pytest
from num2words import num2words  # type: ignore[import-untyped]

from grammar.tokens.scan import scan
from grammar.tokens.tongue import Tongue, bare, read_tongues, tongues
from tests.grammar.test_tongues import ESPERANTO

STEPS = [*range(10_001), *random.Random(7).sample(range(10_001, 1_000_001), 2_000), 1_000_000, 21_021_021]  # noqa: S311


def read(tongue: Tongue, text: str) -> str | None:
    """The digits of a number, where it covers the whole text."""
    tokens = scan(text)
    run = tongue.number_at(tokens, [bare(token.lower) for token in tokens], 0)
    return run.digits if run is not None and run.end == len(tokens) else None


def test_spanish() -> None:
    spanish = next(tongue for tongue in tongues() if tongue.code == "es")
    assert [n for n in STEPS if read(spanish, num2words(n, lang="es")) != str(n)] == []


@pytest.mark.parametrize("text", ["dos tres", "treinta y", "y tres", "uno cien", "treinta y diez"])
def test_spanish_that_is_no_one_number(text: str) -> None:
    assert read(next(tongue for tongue in tongues() if tongue.code == "es"), text) is None


def test_esperanto_as_the_test_of_a_third_language_has_it(tmp_path: Path) -> None:
    (tmp_path / "eo").mkdir()
    (tmp_path / "eo" / "language.toml").write_text(ESPERANTO["language.toml"], encoding="utf-8")
    esperanto = read_tongues(tmp_path)[0]
    steps = [n for n in range(50_000) if set(num2words(n, lang="eo").split()) <= esperanto.words]
    assert len(steps) > 500
    assert [n for n in steps if read(esperanto, num2words(n, lang="eo")) != str(n)] == []
