"""Number words written by num2words (its own rules for English) come back as the number."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words  # type: ignore[import-untyped]

from grammar.numbers.numerals import numerals_at
from grammar.tokens.scan import scan


def read(text: str) -> Fraction | None:
    """The longest reading, where it covers the whole text."""
    tokens = scan(text)
    found = numerals_at(tokens, 0)
    return found[0].value if found and found[0].end == len(tokens) else None


STEPS = [*range(2101), *range(2101, 100_001, 37), 99_999, 100_000]


@pytest.mark.parametrize("lang", ["en", "en_GB"])
def test_whole_numbers_to_a_hundred_thousand(lang: str) -> None:
    wrong = [n for n in STEPS if read(num2words(n, lang=lang)) != n]
    assert not wrong


def test_without_and_without_hyphens_and_commas() -> None:
    said = [(n, num2words(n)) for n in STEPS]
    spoken = [(n, text) for n, words in said for text in (words.replace(" and ", " "), words.replace("-", " "))]
    typed = [(n, text) for n, words in said for text in (words.replace(",", ""), words.upper())]
    assert [(n, text) for n, text in spoken + typed if read(text) != n] == []


@given(st.integers(100_000, 10**15 - 1))
def test_large_numbers(n: int) -> None:
    assert read(num2words(n)) == n


@given(st.integers(0, 99_999), st.integers(1, 999))
def test_decimals(whole: int, thousandths: int) -> None:
    value = Fraction(whole) + Fraction(thousandths, 1000)
    assert read(num2words(float(value))) == value


@given(st.integers(1, 9_999))
def test_negative_numbers(n: int) -> None:
    assert read(num2words(-n)) == -n


@given(st.integers(1100, 2099))
def test_years_said_in_pairs(year: int) -> None:
    words = num2words(year, to="year")
    if "-" not in words.split(" ")[0]:
        assert read(words) == year


@given(st.integers(1, 99))
def test_ordinals_are_no_numbers(n: int) -> None:
    assert read(num2words(n, to="ordinal")) is None
    assert read(num2words(n, to="ordinal_num")) is None
