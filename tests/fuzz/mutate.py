"""Inputs made from good ones: words and letters struck, doubled, swapped and put in, by a generator with a seed."""

import random
from collections.abc import Callable, Sequence

HOSTILE = (
    "", "0", "-0", "-1", "1e308", "1e999", "nan", "inf", "-inf", "999999999999999999999", "1/0", "0/0", "\xbd",
    "\u0663", "\xb2", "\U0001d7d7", "1,000,000", "1.2.3", "1-2-3", '5\'6"', "'", '"', "\u2019", "%", "$", "\xa3",
    "\u20ac", "(", ")", "[", "]", "{", "}", "\\", "/", "//", "../..", "<b>", "&amp;", "'; --", "=1+1", "\x00", "\x07",
    "\x1b[31m", "\x9b2J", "\u202e", "\u200b", "\ufeff", "\ud800", "\xe9", "e\u0301", "\xdf", "\ufb01", "\U0001f388",
    "\U0001f469\u200d\U0001f469\u200d\U0001f467", "\u0627", "\u4e2d", "\t", "\r", "\n", "\u2028", "\xa0", "...", "?!",
    "!!!!", ";", ":", "-", "\u2014", "+", "*", "^", "=", "@", "#", "~", "|", "`", "_",
)  # fmt: skip
LONGEST = 10_000


def mutator(seeds: Sequence[str], words: Sequence[str], chance: random.Random, between: str = " ") -> Callable[[], str]:
    """A function that gives one input after another: a seed, or a piece of one, changed one to six times."""

    def again() -> str:
        text = chance.choice(seeds)
        for _ in range(chance.choice((1, 1, 2, 2, 3, 4, 6))):
            text = chance.choice(_CHANGES)(text, seeds, words, between, chance)
        return text[:LONGEST]

    return again


Seeds = Sequence[str]


def _word(text: str, seeds: Seeds, words: Seeds, between: str, chance: random.Random) -> str:
    parts = text.split(between)
    at = chance.randrange(len(parts))
    match chance.randrange(5):
        case 0:
            parts[at] = chance.choice(words)
        case 1:
            parts.insert(at, chance.choice(words))
        case 2:
            del parts[at]
        case 3:
            other = chance.randrange(len(parts))
            parts[at], parts[other] = parts[other], parts[at]
        case _:
            parts[at] = f"{parts[at]}{chance.choice(words)}"
    return between.join(parts)


def _letter(text: str, seeds: Seeds, words: Seeds, between: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    match chance.randrange(4):
        case 0:
            return text[:at] + text[at + 1 :]
        case 1:
            return text[:at] + text[at : at + 1] * chance.choice((2, 3, 8)) + text[at + 1 :]
        case 2:
            return text[:at] + chr(chance.choice((chance.randrange(32, 127), chance.randrange(0x3000)))) + text[at:]
        case _:
            return text[:at] + text[at : at + 2][::-1] + text[at + 2 :]


def _hostile(text: str, seeds: Seeds, words: Seeds, between: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + chance.choice(HOSTILE) + text[at:]


def _number(text: str, seeds: Seeds, words: Seeds, between: str, chance: random.Random) -> str:
    number = chance.choice((str(chance.randrange(200)), str(10 ** chance.randrange(30)), f"{chance.random() * 99:.3f}"))
    parts = text.split(between)
    parts[chance.randrange(len(parts))] = number
    return between.join(parts)


def _splice(text: str, seeds: Seeds, words: Seeds, between: str, chance: random.Random) -> str:
    other = chance.choice(seeds)
    return text[: chance.randrange(len(text) + 1)] + between + other[chance.randrange(len(other) + 1) :]


def _repeat(text: str, seeds: Seeds, words: Seeds, between: str, chance: random.Random) -> str:
    start = chance.randrange(len(text) + 1)
    stop = min(len(text), start + chance.choice((1, 3, 10, 30)))
    many = chance.choice((2, 2, 3, 5)) if chance.random() < 0.97 else 300
    return text[:start] + text[start:stop] * many + text[stop:]


_CHANGES = (_word, _word, _word, _letter, _letter, _hostile, _number, _splice, _repeat)
