"""Replies in another language: whole sentences or none, the gaps kept, and how much of what is shown is said."""

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

import assistant.speech
from assistant import Conversation
from assistant.speech import REPLIES, Manner, catalogue, gaps_of, sentences, speaking, spoken
from rules import load_book

CONVERSATIONS = Path(__file__).parents[1] / "conversations"
LANGUAGES = sorted(path.name for path in REPLIES.iterdir())
# The share of the letters shown in the recorded conversations, said again with the replies in Spanish, that have an
# entry; what the sources say is not translated and counts as shown.
SAID = 0.96


def entries(language: str) -> Iterator[tuple[str, str]]:
    words = catalogue(language)
    yield from ((entry.english, entry.said) for entry in (*words.whole, *words.parts))


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_entry_has_the_gaps_of_its_key(language: str) -> None:
    assert [english for english, said in entries(language) if gaps_of(english) != gaps_of(said)] == []


def test_a_wrong_entry_would_be_seen() -> None:
    assert gaps_of("{n} bags of {what}") != gaps_of("{n} bolsas")


def turns_of(path: Path) -> list[str]:
    return [line[2:] for line in path.read_text(encoding="utf-8").splitlines() if line.startswith("> ")]


def test_most_of_what_is_shown_is_said_in_spanish(monkeypatch: pytest.MonkeyPatch) -> None:
    said = shown = 0

    def counted(text: str, manner: Manner) -> list[tuple[str, str | None]]:
        nonlocal said, shown
        found = sentences(text, manner)
        shown += sum(len(english) for english, _ in found)
        said += sum(len(english) for english, other in found if other is not None)
        return found

    monkeypatch.setattr(assistant.speech, "sentences", counted)
    for path in sorted(CONVERSATIONS.glob("*/*.txt")):
        talk = Conversation()
        talk.say("en español")
        for turn in turns_of(path):
            talk.say(turn)
    assert shown > 10_000
    assert said / shown >= SAID


def test_every_caution_and_clash_of_the_book_is_said_in_spanish() -> None:
    manner = Manner("es")
    texts = [text for remark in load_book().remarks for text in (remark.text, *remark.choices)]
    filled = [re.sub(r"\{[^{}]*\}", "7 ft", text) for text in texts]
    assert [text for text in filled for _, said in sentences(text.rstrip(","), manner) if said is None] == []


def test_the_same_figures_are_told_in_both_languages() -> None:
    turns = ["eight 6 ft tables, full drop, navy and gold", "how much does it cost", "two thirds", "shopping list"]
    english, spanish = Conversation(), Conversation()
    spanish.say("en español")
    for turn in turns:
        one, other = english.say(turn), spanish.say(turn)
        assert other.figures == one.figures
        assert other.heard == one.heard
        assert re.findall(r"\d+", other.text) == re.findall(r"\d+", one.text)
        assert other.text != one.text


def test_a_spanish_turn_is_answered_in_spanish_until_english_is_asked_for() -> None:
    talk = Conversation()
    assert "caminos de mesa" in talk.say("ocho mesas de 6 pies").text
    assert "caminos de mesa" in talk.say("full drop").text
    reply = talk.say("cautions")
    assert reply.cautions[0].startswith("Asfixia: ")
    assert "runners" in talk.say("in english").text
    assert "runners" in talk.say("two thirds").text
    assert "caminos" in talk.say("en español").text


def test_a_question_is_asked_in_spanish() -> None:
    reply = Conversation().say("ocho mesas")
    assert reply.question == "¿Cuánto mide cada mesa de largo?"
    assert reply.question.split()[0] in reply.text


def test_the_text_for_the_client_is_spanish_to_the_last_word() -> None:
    talk = Conversation()
    talk.say("ocho mesas de 6 pies, caída completa, azul marino y dorado, con follaje")
    text = " ".join(talk.say("mensaje para la clienta").text.split())
    assert text.startswith(
        "¡Hola! Para tu fiesta: 8 caminos de mesa de 14 pies de largo cada uno, con caída hasta el piso"
    )
    assert "azul marino y dorado" in text
    assert not re.search(r"\b(the|and|with|of|before|be|is|at)\b", text)


@pytest.mark.parametrize("text", ["A sentence that nobody wrote.", "I took: something of the moon.", "5 zorkmids", ""])
def test_what_has_no_entry_stays_whole_in_english(text: str) -> None:
    with speaking("es"):
        assert spoken(text) == text


# Said alone, these mean another thing.
MEAN_MORE = {"foliage", "style", "hours hands on", "built", "place", "stands", "weights"}


def test_a_name_in_a_reply_can_be_said_back() -> None:
    ears = Conversation().reader.ears
    tables = tomllib.loads((REPLIES / "es" / "names.toml").read_text(encoding="utf-8"))["parts"]
    names = {english: said for english, said in tables.items() if not english.startswith("the ")}
    heard = {english: ears.hear(f"¿por qué {said}?").text for english, said in names.items()}
    assert {english for english, text in heard.items() if text != f"why {english}?"} == MEAN_MORE


def test_no_language_changes_nothing() -> None:
    assert spoken("I took: no colours yet.") == "I took: no colours yet."
    with speaking("xx"):
        assert spoken("I took: no colours yet.") == "I took: no colours yet."
    with speaking("es"):
        assert spoken("I took: no colours yet.") == "Supuse: sin colores todavía."


def test_a_third_language_is_a_catalogue_alone(tmp_path: Path) -> None:
    (tmp_path / "eo").mkdir()
    (tmp_path / "eo" / "all.toml").write_text(
        'same = "m"\n[say]\n"I took: {taken}." = "Mi supozis: {taken}."\n'
        '"{n} {n|table|tables}" = "{n} {n|tablo|tabloj}"\n'
        '[parts]\n"no greenery" = "sen verdaĵo"\n[joins]\n" and " = " kaj "\n',
        encoding="utf-8",
    )
    words = catalogue("eo", tmp_path)
    none: frozenset[str] = frozenset()
    assert words.say("I took: no greenery and 3 m.", none) == "Mi supozis: sen verdaĵo kaj 3 m."
    assert words.say("I took: no greenery and no topper.", none) is None
    assert [words.say(text, none) for text in ("1 table", "8 tables")] == ["1 tablo", "8 tabloj"]
