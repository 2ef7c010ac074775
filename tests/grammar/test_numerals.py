"""Every reading of a number that begins at a place."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from grammar.numbers.numerals import numerals_at
from grammar.tokens.scan import fold, scan


def readings(text: str) -> list[tuple[str, Fraction]]:
    """(words covered, value) of each reading at the beginning of the text."""
    tokens = scan(text)
    return [(text[: tokens[n.end - 1].end], n.value) for n in numerals_at(tokens, 0)]


def longest(text: str) -> Fraction | None:
    """The value of the longest reading, where it covers the whole text."""
    found = readings(text)
    return found[0][1] if found and found[0][0] == text else None


def test_tokens_keep_their_place_and_what_is_glued() -> None:
    text = "6ft x 5’4” — 1,234.5 lots, 3/8 of 2½"
    tokens = scan(text)
    assert [t.text for t in tokens] == [text[t.start : t.end] for t in tokens]
    assert [t.lower for t in tokens] == [
        "6", "ft", "x", "5", "'", "4", '"', "—", "1234.5", "lots", ",", "3/8", "of", "2½",
    ]  # fmt: skip
    assert [t.glued for t in tokens[:7]] == [False, True, False, False, True, True, True]
    assert [t.value for t in tokens if t.kind == "number"] == [
        6, 5, 4, Fraction(2469, 2), Fraction(3, 8), Fraction(5, 2),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("5s", ["number", "word"]),
        ("m37", ["word", "number"]),
        ("ft²", ["word", "mark"]),
        ("１２ ft", ["number", "word"]),
    ],
)
def test_kinds_of_tokens(text: str, kinds: list[str]) -> None:
    assert [t.kind for t in scan(text)] == kinds


@given(st.text())
def test_folding_keeps_the_length_and_scanning_every_visible_sign(text: str) -> None:
    folded = fold(text)
    assert len(folded) == len(text)
    assert "".join("".join(folded[t.start : t.end]) for t in scan(text)) == "".join(folded.split())


def test_all_readings_are_offered_longest_first() -> None:
    assert readings("twenty six foot") == [("twenty six", Fraction(26)), ("twenty", Fraction(20))]
    assert [str(value) for _, value in readings("one hundred and eight")] == ["108", "100", "1"]
    assert readings("half a dozen") == [("half a dozen", 6), ("half", Fraction(1, 2))]
    assert readings("two and a half feet") == [("two and a half", Fraction(5, 2)), ("two", 2)]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("twenty-two", "22"),
        ("a hundred fifty", "150"),
        ("fifteen hundred", "1500"),
        ("four thousand and one", "4001"),
        ("three million, two hundred and forty", "3000240"),
        ("one hundred and twenty-five thousand million", "125000000000"),
        ("6 hundred and 12", "612"),
        ("four sixty", "460"),
        ("nineteen oh five", "1905"),
        ("point five", "1/2"),
        ("nought point five", "1/2"),
        ("two point oh five", "41/20"),
        ("six point one million", "6100000"),
        ("six and a half", "13/2"),
        ("two-and-a-half", "5/2"),
        ("1 1/2", "3/2"),
        ("1-1/2", "3/2"),
        ("2½", "5/2"),
        ("2 ½", "5/2"),
        ("3/8ths", "3/8"),
        ("1 / 2", "1/2"),
        ("three quarters", "3/4"),
        ("two-thirds", "2/3"),
        ("two third", "2/3"),
        ("one thirty-fifth", "1/35"),
        ("seven hundredths", "7/100"),
        ("three over forty", "3/40"),
        ("a dozen and a half", "18"),
        ("two gross", "288"),
        ("three quarters of a million", "750000"),
        ("five million and a half", "5500000"),
        ("a pair of", "2"),
        ("a couple hundred", "200"),
        ("10 000", "10000"),
        ("1,29,999", "129999"),
        ("1.234,56", "30864/25"),
        ("1,3", "13/10"),
        ("2.4M", "2400000"),
        ("1.5e3", "1500"),
        ("-5", "-5"),
        ("minus two and a half", "-5/2"),
        ("ninty", "90"),
    ],
)
def test_longest_reading(text: str, value: str) -> None:
    assert longest(text) == Fraction(value)


@pytest.mark.parametrize("text", ["14th", "the first", "twenty-first", "first", "a", "and", "-", "hundredfold", "3/0"])
def test_no_number(text: str) -> None:
    assert readings(text) == []


@pytest.mark.parametrize(
    ("text", "covered"),
    [
        ("eleven six", "eleven"),
        ("million million", "million"),
        ("hundred hundred", "hundred"),
        ("forty nought", "forty"),
        ("thirty 2", "thirty"),
        ("5,11,17", "5"),
        ("fourteeb", ""),
    ],
)
def test_what_does_not_belong_together_is_not_joined(text: str, covered: str) -> None:
    assert [words for words, _ in readings(text)] == ([covered] if covered else [])


def test_open_numbers_say_so() -> None:
    for text in ("a few", "several", "a few dozen", "dozens"):
        assert numerals_at(scan(text), 0)[0].vague, text
    assert not numerals_at(scan("a couple of"), 0)[0].vague


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=64))
def test_mixed_numbers_come_back_as_printed(value: Fraction) -> None:
    whole, part = divmod(value, 1)
    text = f"{whole}" if not part else f"{whole} {part}" if whole else f"{part}"
    assert longest(text) == value


@given(st.decimals(min_value=0, max_value=10**9, places=3))
def test_decimals_come_back_with_and_without_groups(value: object) -> None:
    assert longest(f"{value}") == Fraction(str(value))
    assert longest(f"{value:,}") == Fraction(str(value))


WORDS = st.sampled_from(
    "one two twenty hundred thousand million and a an half quarter thirds of point oh dozen few - , / 1 2 3/4 ½ 000 "
    "over minus th k e ^ feet".split()
)


@given(st.lists(WORDS, max_size=12), st.sampled_from([" ", ""]))
def test_readings_are_in_order_within_the_text_and_each_once(words: list[str], gap: str) -> None:
    tokens = scan(gap.join(words))
    for i in range(len(tokens)):
        found = numerals_at(tokens, i)
        assert [n.end for n in found] == sorted((n.end for n in found), reverse=True)
        assert all(i < n.end <= len(tokens) for n in found)
        assert len({(n.end, n.value) for n in found}) == len(found)
