"""Nothing that was typed steers the terminal."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.terminal import clean, is_readable, one_line, shorten


@pytest.mark.parametrize(
    ("dirty", "safe"),
    [
        ("eight 6 ft tables", "eight 6 ft tables"),
        ("£2½ – “navy” ü", "£2½ – “navy” ü"),
        ("\x1b[31mred\x1b[0m gold", "red gold"),
        ("\x1b[2J\x1b[1;1Htables", "tables"),
        ("\x9b31mred", "red"),
        ("\x1b]0;a title\x07tables", "tables"),
        ("\x1b]8;;there\x1b\\tables\x1b]8;;\x1b\\", "tables"),
        ("\x1bP1$r\x1b\\tables", "tables"),
        ("\x1b]0;no end to it tables", "0;no end to it tables"),
        ("\x1b(Btables", "tables"),
        ("tables\x1b", "tables"),
        ("ta\x08b\x00l\x7fe\x85s", "table\ns"),
        ("a\tb\r\nc\rd\u2028e", "a b\nc\nd\ne"),
        ("gold\u202edlog\u202c \u2066x\u2069\u200e\u200f\ufeff", "golddlog x"),
        ("\U0001f469\u200d\U0001f3a8", "\U0001f469\u200d\U0001f3a8"),
        ("caf\udce9", "caf\N{REPLACEMENT CHARACTER}"),
    ],
)
def test_only_what_is_text_is_left(dirty: str, safe: str) -> None:
    assert clean(dirty) == safe


@given(st.text(alphabet=st.sampled_from("\x1b[]P^\\;0m \x9b\x9d\x9c\x07\u202eab\n\t\r\x85")) | st.text())
def test_any_text_comes_out_harmless_and_cleaning_again_changes_nothing(text: str) -> None:
    safe = clean(text)
    assert clean(safe) == safe
    assert all(
        char in "\n\u200c\u200d" or unicodedata.category(char) not in {"Cc", "Cf", "Cs", "Zl", "Zp"} for char in safe
    )


def test_text_with_nothing_to_clean_is_the_same_text() -> None:
    text = "ten 60 in rounds, navy and gold"
    assert clean(text) is text


@pytest.mark.parametrize("part", ["\x1b[", "\x9d", "\x1b]", "\x1b[0", "\x1b ", "\u202e"])
def test_a_long_broken_line_leaves_nothing_that_steers(part: str) -> None:
    assert not set(clean(part * 50_000)) & set("\x1b\x9d\x9b\u202e")


def test_one_line_has_no_breaks_and_no_runs_of_spaces() -> None:
    assert one_line(" a\n\tb \x1b[1m c ") == "a b c"


def test_a_line_too_long_is_cut_with_an_ellipsis() -> None:
    assert shorten("8 runners, 14 ft", 40) == "8 runners, 14 ft"
    assert shorten("8 runners, 14 ft", 11) == "8 runners,…"


def test_bytes_that_are_no_utf_8_are_known() -> None:
    assert is_readable("café")
    assert not is_readable(b"caf\xe9".decode("utf-8", errors="surrogateescape"))
