"""A figure asked for by name: told with its reason, and nothing else changes."""

import re

import pytest

from assistant import Conversation
from rules import load_book

BOOK = load_book()
ENOUGH = {
    "runner": "eight 6 ft tables, navy and gold",
    "garland": "three 12 ft garlands in sage and white",
    "arch": "an arch 10 ft wide and 8 ft high in red",
    "column": "two 7 ft columns in red and white",
    "wall": "an 8 by 8 ft balloon wall in white",
    "hoop": "a 5 ft hoop in gold",
    "swag": "a swag 12 ft wide with 2 ft of sag in blue",
    "bouquet": "six helium bouquets of 5 in white",
    "centerpiece": "ten centerpieces of 3 in silver",
}
ASKED = [(fact, pattern) for fact in BOOK.every_fact() for pattern in fact.asked]


def said(pattern: str) -> str:
    """The pattern as somebody would say it: of each choice the first, a gap as nothing."""
    words = [
        part.removesuffix("?").split("|")[0]
        for part in pattern.split()
        if part not in {"~", "^"} and not part.startswith("$")
    ]
    return " ".join(words)


def settled(text: str) -> str:
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize(
    ("fact", "pattern"), ASKED, ids=[f"{fact.file} {fact.id} {n}" for n, (fact, _) in enumerate(ASKED)]
)
def test_each_way_of_asking_in_the_book_is_answered_by_its_figure(fact, pattern: str) -> None:
    kinds = [kind for kind in fact.of if kind in ENOUGH] or ["bouquet" if "helium" in pattern else "garland"]
    talk = Conversation()
    held = talk.say(ENOUGH[kinds[0]]).heard
    told = talk.say(said(pattern))
    assert settled(told.text).startswith(f"{fact.name[:1].upper()}{fact.name[1:]}: ")
    assert told.heard.pieces == held.pieces
    assert told.unread == []


@pytest.mark.parametrize(
    ("first", "asked", "begins"),
    [
        (ENOUGH["garland"], "and how thick is it?", "Thickness: 22.9 in."),
        (ENOUGH["runner"], "how long is each runner", "Length covered: 6 ft."),
        (ENOUGH["garland"], "so how much is the deposit then", "Deposit due: $"),
        (ENOUGH["arch"], "can people walk under it", "Clear height: "),
        ("camino para ocho mesas de 6 pies, azul y dorado", "¿qué tan ancho queda?", "Ancho del camino: "),
        ("camino para ocho mesas de 6 pies, azul y dorado", "¿cuánto hilo necesito?", "Largo del hilo: "),
    ],
)
def test_people_ask_in_their_own_words(first: str, asked: str, begins: str) -> None:
    talk = Conversation()
    talk.say(first)
    told = talk.say(asked)
    assert settled(told.text).startswith(begins)
    assert told.unread == []


@pytest.mark.parametrize(
    "said", ["make it 10 ft", "how much is it", "how many tables can I do for 300", "how thick would 14 ft be"]
)
def test_what_is_more_than_that_question_is_answered_as_ever(said: str) -> None:
    talk = Conversation()
    talk.say(ENOUGH["garland"])
    assert not settled(talk.say(said).text).startswith(("Outer width", "Deposit due", "Balloons each"))
