"""Slips of the fingers are mended where one word alone can be meant, told in the reply, never in a number."""

import pytest

from assistant import Conversation
from grammar.tokens.scan import scan


def mended(word: str) -> str:
    """What a word in the middle of a turn is read as."""
    return Conversation().reader.lexicon.spelt(scan(f"a {word}"))[1].lower


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("garlnad", "garland"),  # swapped
        ("eucallyptus", "eucalyptus"),  # doubled
        ("trestls", "trestles"),  # left out
        ("organuc", "organic"),  # the key beside
        ("swsgs", "swags"),  # the same in a short word
        ("atbles", "tables"),  # the first two letters swapped
        ("olumns", "columns"),  # the first letter left out
        ("grlnd", "garland"),  # no vowels
        ("shoping", "shopping"),  # a plain word, though one of the trade ("shaping") is as near
        ("inhces", "inches"),
        ("plaese", "please"),
    ],
)
def test_one_word_alone_can_be_meant(typed: str, meant: str) -> None:
    assert mended(typed) == meant


@pytest.mark.parametrize("word", ["sevn", "twelev", "thre", "fout", "Thommas", "quinceañera", "harriet", "tow", "rch"])
def test_numbers_names_and_words_of_two_meanings_stay(word: str) -> None:
    assert mended(word) == word.lower()


def test_what_was_mended_is_told() -> None:
    reply = Conversation().say("eight 6 ft tabels in nvay, organuc")
    assert 'read "nvay" as navy' in " ".join(reply.text.split())
    assert reply.unread == []


def test_a_slip_in_a_filler_is_passed_over_in_silence() -> None:
    reply = Conversation().say("plaese eight 6 ft tables")
    assert "please" not in reply.text
    assert reply.unread == []
