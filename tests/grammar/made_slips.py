"""Slips of the fingers in made requests: letters swapped, dropped, doubled or hit beside, that still tell the word.

A word of five letters or more is spoilt only where what comes out is no known word and no other known word is as near:
so what was meant stays known. Words for numbers are left alone, for a guess at a number is worse than a question.
"""

import random
from functools import cache

from grammar.tokens.lexicon import Lexicon
from grammar.tokens.spelling import distance
from grammar.word_files import load_words
from tests.grammar.made_words import VOCABULARY

ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
PLAIN = """please thanks morning evening client budget because wedding birthday saturday actually everything
    inches metres meters centimetres percent pounds dollars guests degrees shopping change colours balloons"""
SHORTEST, LONG = 5, 8


@cache
def known() -> frozenset[str]:
    """Every word that means something."""
    return frozenset(w for w in Lexicon(VOCABULARY).every_word() if len(w) > 1)


@cache
def slippable() -> frozenset[str]:
    """The words that are spoilt: those of the trade, of the colours, and a few plain ones."""
    texts = [*VOCABULARY.colours, PLAIN]
    for piece in VOCABULARY.pieces:
        texts += piece.words
    for item in VOCABULARY.furniture:
        texts += item.words
    for fact in VOCABULARY.facts:
        if fact.type in {"choice", "flag"}:
            texts += [*fact.words, *(phrase for phrases in fact.choices.values() for phrase in phrases)]
    numbers = {word for table in load_words("numbers.toml").values() for word in table} | {"thirds", "halves"}
    words = {word for text in texts for word in text.split()}
    return frozenset(w for w in words - numbers if len(w) >= SHORTEST and w.isascii() and w.isalpha())


def spoil(word: str, chance: random.Random) -> str:
    """One slip; the first letter is seldom hit wrong."""
    at = chance.randrange(1, len(word)) if chance.random() < 0.95 else 0
    how = chance.choice(("swap", "drop", "double", "beside"))
    if how == "swap" and at + 1 < len(word):
        return word[:at] + word[at + 1] + word[at] + word[at + 2 :]
    if how == "drop":
        return word[:at] + word[at + 1 :]
    if how == "double":
        return word[:at] + word[at] + word[at:]
    return word[:at] + chance.choice(_beside(word[at])) + word[at + 1 :]


def _beside(letter: str) -> str:
    row = next(r for r in ROWS if letter in r)
    at = row.index(letter)
    return row[max(at - 1, 0) : at] + row[at + 1 : at + 2]


def tells(typo: str, word: str, slips: int) -> bool:
    """Whether a spoilt word can be nothing but the one that was meant."""
    if typo == word or typo in known() or len(typo) < SHORTEST - 1:
        return False
    others = (w for w in known() if abs(len(w) - len(typo)) <= slips and w.rstrip("s") != word.rstrip("s"))
    return all(distance(typo, other, slips) > slips for other in others)


def with_slips(text: str, chance: random.Random) -> str:
    """The text with one or two of its words spoilt, as it is where none can be."""
    words = text.split(" ")
    places = [i for i, w in enumerate(words) if w.strip(",.;?!") in slippable()]
    chance.shuffle(places)
    for at in places[: chance.choice((1, 1, 2))]:
        word = words[at].strip(",.;?!")
        slips = 2 if len(word) >= LONG and chance.random() < 0.25 else 1
        typo = word
        for _ in range(slips):
            typo = spoil(typo, chance)
        if tells(typo, word, slips):
            words[at] = words[at].replace(word, typo)
    return " ".join(words)
