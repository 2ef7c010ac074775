"""Replies in another language: whole sentences or none, the gaps kept, and how much of what is shown is said."""

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant import Conversation
from assistant.jobs import JobBook
from assistant.speech import REPLIES, Catalogue, Said, catalogue, gaps_of, speaking, spoken
from assistant.turns import Turns

LANGUAGES = sorted(path.name for path in REPLIES.iterdir())


def entries(language: str) -> Iterator[tuple[str, str]]:
    words = catalogue(language)
    yield from ((entry.english, entry.said) for entry in (*words.whole, *words.parts))


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_entry_has_the_gaps_of_its_key(language: str) -> None:
    assert [english for english, said in entries(language) if gaps_of(english) != gaps_of(said)] == []


def test_a_wrong_entry_would_be_seen() -> None:
    assert gaps_of("{n} bags of {what}") != gaps_of("{n} bolsas")


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


NONE: frozenset[str] = frozenset()


@pytest.mark.parametrize(
    ("english", "said"),
    [
        ('Kept as "a. b: c".', 'Konservita kiel "a. b: c".'),
        ("six or seven: wide or high?", "six or seven: larĝa aŭ alta?"),
        ("Not this. Which: wide or high?", None),
        ("ball: arithmetic: wide", "pilko: aritmetiko: larĝa"),
        ("the wide", "tiu larĝa"),
        ("the wide or high", "tiu larĝa aŭ alta"),
    ],
)
def test_what_a_gap_may_hold(english: str, said: str | None) -> None:
    entries = {
        "Kept as {said}.": "Konservita kiel {said}.",
        "{words}: {choices}?": "{words}: {choices}?",
        "{source}: {names}": "{source}: {names}",
    }
    parts = {"wide": "larĝa", "high": "alta", "the {one}": "tiu {one}", "ball: arithmetic": "pilko: aritmetiko"}
    assert Catalogue(entries, parts, {" or ": " aŭ "}, "").say(english, NONE) == said


def test_what_is_said_already_is_left_as_it_is() -> None:
    with speaking("es"):
        assert spoken(Said("No colours yet: drawn in a neutral tone.")) == "No colours yet: drawn in a neutral tone."


def test_a_deleted_job_leaves_the_language(tmp_path: Path) -> None:
    talk = Conversation(jobs=JobBook(tmp_path / "jobs.sqlite3"))
    for turn in ("ocho mesas de 6 pies", "borra este trabajo"):
        talk.say(turn)
    assert "camino" in talk.say("10 ft garland, 5 runners 6 ft").text
    talk.say("delete this job")
    assert "runner" in talk.say("in english, one 6 ft table").text


def test_sheets_are_written_in_the_language_that_is_spoken(tmp_path: Path) -> None:
    talk = Conversation(folder=tmp_path)
    for turn in ("ocho mesas de 6 pies, azul marino y dorado", "haz las hojas", "fiesta a las 5 de la tarde"):
        talk.say(turn)
    talk.say("archivo de calendario para el 14 de junio de 2031")
    page = (tmp_path / "client-sheet.html").read_text(encoding="utf-8")
    assert '<html lang="es">' in page
    assert "<h1>Tu decoración con globos</h1>" in page
    assert "<h2>Herramienta</h2>" in (tmp_path / "crew-sheet.html").read_text(encoding="utf-8")
    assert "tamaño pulg" in (tmp_path / "shopping-list.csv").read_text(encoding="utf-8")
    assert "SUMMARY:Montar: 8 caminos de mesa" in (tmp_path / "calendar.ics").read_text(encoding="utf-8")


def test_a_picture_is_painted_in_any_language() -> None:
    talk = Conversation()
    talk.say("ocho mesas de 6 pies, azul marino y dorado")
    text = talk.say("dibújalo").text
    assert "Desde arriba" in text
    assert "\x1b[" in talk.painted(text)


@pytest.mark.parametrize(
    ("words", "leaves"), [("salir", True), ("¡Adiós!", True), ("quit", True), ("salir a las 5", False)]
)
def test_the_talk_is_left_in_any_language(words: str, leaves: bool) -> None:
    assert Conversation().leaves(words) is leaves


def test_the_fronts_own_sentences_are_said_in_the_language_of_the_talk() -> None:
    turns = Turns(lambda width: Conversation(width=width))
    turns.take("ocho mesas de 6 pies")
    assert turns.take("\udcff").text.startswith("Eso no era texto legible")
    assert turns.status() == "8 caminos de mesa"


def test_a_third_language_is_a_catalogue_alone(tmp_path: Path) -> None:
    (tmp_path / "eo").mkdir()
    (tmp_path / "eo" / "all.toml").write_text(
        'same = "m"\n[say]\n"I took: {taken}." = "Mi supozis: {taken}."\n'
        '"{n} {n|table|tables}" = "{n} {n|tablo|tabloj}"\n'
        '[parts]\n"no greenery" = "sen verdaĵo"\n[joins]\n" and " = " kaj "\n',
        encoding="utf-8",
    )
    words = catalogue("eo", tmp_path)
    assert words.say("I took: no greenery and 3 m.", NONE) == "Mi supozis: sen verdaĵo kaj 3 m."
    assert words.say("I took: no greenery and no topper.", NONE) is None
    assert [words.say(text, NONE) for text in ("1 table", "8 tables")] == ["1 tablo", "8 tabloj"]
