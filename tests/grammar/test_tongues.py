"""Other languages: which one a turn is in, what it comes to in the reader's words, and that one is data alone."""

import re
from pathlib import Path

import pytest

from assistant import Conversation, Reply, diary, job_words
from assistant.turns import LEAVING
from grammar.tokens.ears import Ears, Heard
from grammar.tokens.tongue import Tongue, bare, read_tongues, tongues
from grammar.word_files import load_words
from tests.phrases_score import FOLDER, read_phrases

SPANISH = next(tongue for tongue in tongues() if tongue.code == "es")

# A third language, small and whole: nothing but these files. Esperanto's numbers are regular, and num2words has them.
ESPERANTO = {
    "language.toml": """
name = "Esperanto"
called = ["en esperanto"]
[weights]
kaj = 2
[numbers]
decimal_comma = true
points = ["komo"]
[numbers.cardinals]
nul = 0
unu = 1
du = 2
tri = 3
kvar = 4
kvin = 5
ses = 6
sep = 7
ok = 8
"naŭ" = 9
dek = 10
dudek = 20
tridek = 30
kvardek = 40
cent = 100
ducent = 200
[numbers.scales]
mil = 1000
""",
    "everything.toml": """
[words]
"i need" = "mi bezonas"
"tables" = "tablo{,j,jn}"
"of" = "de"
"feet" = "futo{,j}"
"garland" = "girlando{,n}"
"full drop" = "ĝis la planko"
"and" = "kaj"
"the" = "la"
"# @ chairs" = "# @ seĝoj"
""",
    "colours.toml": """
[words]
"navy" = "marblua"
"gold" = "ora"
""",
}


def heard(*turns: str) -> tuple[Heard, Reply]:
    talk = Conversation()
    reply = [talk.say(turn) for turn in turns][-1]
    return talk.heard, reply


@pytest.mark.parametrize(
    ("turns", "language"),
    [
        (["eight 6 ft tables, full drop"], ""),
        (["necesito ocho tables de 6 pies, full drop, azul marino y dorado"], "es"),
        (["once mesas de 6 pies"], "es"),
        (["a once in a lifetime arch, 10 by 8 ft"], ""),
        (["ocho mesas de 6 pies", "son once"], "es"),
        (["eight 6 ft tables", "no"], ""),
        (["ocho mesas de 6 pies", "no"], "es"),
        (["ocho mesas de 6 pies", "in english"], ""),
        (["eight 6 ft tables", "en español"], "es"),
        (["eight 6 ft tables", "en español", "two thirds"], "es"),
        (["ocho mesas de 6 pies", "now make them ten tables of 8 feet please"], "es"),
        ([""], ""),
    ],
)
def test_the_words_tell_the_language_of_the_answer(turns: list[str], language: str) -> None:
    assert heard(*turns)[0].answered == language


def test_a_turn_in_the_readers_own_words_is_left_as_it_is() -> None:
    said = '  Eight 6\' tables -- "full drop", £600, 1,5 m, no once, 1e9  '
    assert heard(said)[0].text == said


@pytest.mark.parametrize("name", sorted({path.stem for path in FOLDER.glob("*.jsonl")} - {"spanish", "spanish_2"}))
def test_english_phrases_are_heard_as_they_are(name: str) -> None:
    ears = Conversation().reader.ears
    for phrase in read_phrases(FOLDER / f"{name}.jsonl"):
        if "es" in phrase.tags:
            continue  # said in another language on purpose
        before: Heard | None = None
        for turn in phrase.say:
            before = ears.hear(turn, before)
            assert (before.text, before.answered) == (turn, "")


@pytest.mark.parametrize(
    "text",
    ["Los Angeles party, 8 tables of 6 ft", "for Rosa at El Paso, arch 10 by 8 ft", "2m30", "1e9 tables", "A$190"],
)
def test_names_and_codes_are_left_alone(text: str) -> None:
    assert heard(text)[0].text == text


@pytest.mark.parametrize("word", ["mil", "uno", "y", "¿", "treinta y", "1,5", "cambia el rosa por", "cienn", "a, b"])
def test_a_long_turn_of_one_word_is_answered(word: str) -> None:
    talk = Conversation()
    talk.say("ocho mesas de 6 pies")
    assert talk.say(f"{word} " * 400).text


@pytest.mark.parametrize("language", ["", "es"])
def test_a_word_of_two_languages_is_of_the_sentences(language: str) -> None:
    first = {"": "eight 6 ft tables", "es": "ocho mesas de 6 pies"}[language]
    count = {"": 8, "es": 11}[language]
    assert heard(first, "son once")[1].heard.pieces[0]["count"] == count


@pytest.mark.parametrize("text", ["caída completa", "CAÍDA COMPLETA", "caida completa", "cai\u0301da completa"])
def test_accents_may_be_left_out(text: str) -> None:
    assert heard(f"ocho mesas de 6 pies, {text}")[1].heard.pieces[0]["coverage"] == "drop_both"


def test_what_was_not_used_is_named_in_the_words_said() -> None:
    reply = heard("8 mesas de 6 pies con 20 sillas doradas y un columpio")[1]
    assert reply.unread == ["20 sillas doradas", "columpio"]
    assert "colours" not in reply.heard.pieces[0]


def test_mended_spelling_is_read_back() -> None:
    assert "guirlanda" in heard("una guirlanda de 3 metros")[1].text


@pytest.mark.parametrize(
    ("said", "inches"), [("1,5 m", 59.06), ("1.5 m", 59.06), ("1,200 cm", 472.44), ("metro y medio", 59.06)]
)
def test_a_comma_is_a_decimal_sign_or_parts_thousands(said: str, inches: float) -> None:
    assert heard(f"una guirnalda de {said}")[1].heard.pieces[0]["length_in"] == pytest.approx(inches, rel=1e-3)


def test_commas_in_a_row_of_sizes_are_none() -> None:
    reply = heard("globos de 5,11 y 17 pulgadas para un arco de 10 por 8 pies")[1]
    assert reply.heard.pieces[0]["sizes_in"] == [5, 11, 17]


@pytest.mark.parametrize("tongue", tongues(), ids=lambda tongue: str(tongue.code))
def test_every_meaning_is_in_the_readers_words(tongue: Tongue) -> None:
    talk = Conversation()
    named = {word for fact in talk.book.every_fact() for word in [*fact.id.split("_"), *fact.name.split()]}  # "why gel"
    known = named | talk.reader.ears.known | talk.vocabulary.lent | {bare(word) for word in talk.vocabulary.lent}
    known |= LEAVING | words_of_orders()
    means = {means for phrases in tongue.phrases.values() for _, means in phrases}
    words = {word for text in means for word in re.findall(r"[^\W\d_]+", text)}
    assert {word for word in words if word not in known and bare(word) not in known} == set()


def words_of_orders() -> set[str]:
    """Words of the orders that are read letter by letter, to the job book and of the house, and of dates."""
    files = ("habits.toml", "used.toml", "orders.toml")
    texts = [
        *(said for _, said in job_words.ORDERS),
        *job_words.SPANS,
        *diary.MONTHS,
        *map(str, map(load_words, files)),
    ]
    return {word for text in texts for word in re.findall(r"[^\W\d_]+", text)}


def test_the_same_turns_said_again_give_the_same_job() -> None:
    turns = ["ocho mesas de 6 pies", "once", "in english", "two thirds", "no, son doce mesas de 8 pies"]
    talk, again = Conversation(), Conversation()
    for turn in turns:
        talk.say(turn)
    again.replay(talk.said)
    assert talk.said == turns
    assert again.state == talk.state
    assert again.heard == talk.heard


@pytest.fixture
def esperanto(tmp_path: Path) -> Tongue:
    folder = tmp_path / "eo"
    folder.mkdir()
    for name, text in ESPERANTO.items():
        (folder / name).write_text(text, encoding="utf-8")
    return read_tongues(tmp_path)[0]


def test_a_third_language_is_data_alone(esperanto: Tongue) -> None:
    talk = Conversation()
    ears = Ears((*tongues(), esperanto), talk.reader.lexicon.every_word)
    for said, language in (
        ("mi bezonas dek du tablojn de ses futoj ĝis la planko, marblua kaj ora", "eo"),
        ("necesito doce mesas de seis pies hasta el piso, navy y gold", "es"),
    ):
        now = ears.hear(said)
        assert now.language == language
        reading = talk.reader.read(now.text)
        assert reading.unread == []
        [mention] = reading.mentions
        assert (mention.kind, mention.facts["count"], mention.facts["table_length"]) == ("runner", 12, 72)
        assert mention.facts["coverage"] == "drop_both"
        assert [colour["name"] for colour in mention.facts["colours"]] == ["navy", "gold"]


def test_slots_of_a_third_language(esperanto: Tongue) -> None:
    ears = Ears([esperanto], Conversation().reader.lexicon.every_word)
    assert ears.hear("kvardek du oraj seĝoj kaj tri ora seĝoj").text == "42 oraj seĝoj and 3 gold chairs"
    assert ears.hear("girlando de 2,5 m").text == "garland of 2.5 m"


@pytest.mark.parametrize("word", ["calcular", "columpio", "garza", "redoma", "archivo"])
def test_an_unknown_word_of_another_language_is_no_slip_of_the_readers(word: str) -> None:
    reply = heard(f"ocho mesas de 6 pies, {word}")[1]
    assert [set(piece) for piece in reply.heard.pieces] == [{"kind", "count", "table_length_in"}]
    assert reply.unread in ([word], [])
