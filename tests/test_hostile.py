"""What nobody means well by: each is answered or refused in a plain sentence, and nothing of it reaches the screen.

The cases under "found by fuzzing" broke something once; tests/fuzz looks for more of them.
"""

import json
import re
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant import Conversation
from assistant.jobs import JobBook
from assistant.turns import LONGEST_TURN, Turns
from rules.formula import DEEPEST, LONGEST, FormulaError, parse
from rules.house import read_house
from rules.nodes import walk
from tests.rules.small_books import BASE

STEERING = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")
TALL = "eight 6 ft tables, full drop"

HOSTILE = {
    "a billion tables": "a billion 6 ft tables",
    "more digits than a float has": f"{'9' * 400} 6 ft tables",
    "the largest float": "1e308 6 ft tables, 1e308 in wide",
    "beyond the largest float": f"a garland {10**309} ft long",
    "no number": "nan tables, inf ft long",
    "a number of itself": "nan nan nan inf -inf 1/0 0/0 tables",
    "half a word": "tables \ud800 and \udfff",
    "letters joined to nothing": "\u0300\u0301 mesas de 6 pies \u0301",
    "control codes": "\x1b[2J\x1b]0;title\x07 eight\x00 6 ft\x08 tables \x9b31m in \u202edlog",
    "a page": "<script>alert(1)</script> <img src=x onerror=alert(1)> 8 tables 6 ft",
    "a path": "keep this as ../../../../etc/passwd",
    "a question to a database": "keep this as '); DROP TABLE jobs; --",
    "a formula of a spreadsheet": "=HYPERLINK(1) tables, @SUM(A1) garlands",
    "a template": "{{ 7 * 7 }} {% raw %} ${HOME} %s %n {0.__class__} tables",
    "ten thousand pieces": "an arch and " * 800,
    "marks alone": "(" * 5_000,
    "one word": "a" * 10_000,
    "all numbers": "2 6 " * 2_400,
}


@pytest.mark.parametrize("said", HOSTILE.values(), ids=HOSTILE.keys())
def test_anything_is_answered_in_plain_text(said: str, tmp_path: Path) -> None:
    turns = Turns(lambda _: Conversation(folder=tmp_path, jobs=JobBook()))
    for turn in (said, TALL, said):
        taken = turns.take(turn)
        assert taken.text.strip()
        assert not STEERING.search(taken.text)
        assert "Traceback" not in taken.text
        assert "had to stop" not in taken.text
        json.loads(taken.as_json(), parse_constant=pytest.fail)  # no NaN and no Infinity, which JSON has not
    assert not list(tmp_path.iterdir())


def test_a_line_of_a_hundred_thousand_letters_is_refused_and_the_talk_goes_on() -> None:
    turns = Turns(lambda _: Conversation())
    turn = turns.take("eight tables " * 8_000)
    assert turn.reply is None
    assert f"{LONGEST_TURN:,}" in turn.text
    assert turns.take(TALL).reply is not None


@pytest.mark.parametrize(
    ("said", "fact"),
    [("a billion 6 ft tables", "count"), ("eight tables 1000000000 ft long", "table_length_in")],
)
def test_what_is_beyond_all_sense_is_asked_about_and_not_kept(said: str, fact: str) -> None:
    reply = Conversation().say(said)
    assert reply.question
    assert all(fact not in piece for piece in reply.model_dump(mode="json")["heard"]["pieces"])


def test_a_name_is_no_place_and_no_order_to_the_database(tmp_path: Path) -> None:
    folder = tmp_path / "inner"
    folder.mkdir()
    names = ("../../outside", "'; DROP TABLE jobs; --", "<b>x</b>", "\x1b[31mred", "con", ".")
    for name in names:
        talk = Conversation(folder=folder, jobs=JobBook(tmp_path / "jobs.db"))
        for turn in (TALL, f"keep this as {name}", "export this"):
            assert not STEERING.search(talk.say(turn).text)
    assert {path.name.partition(".db")[0] for path in tmp_path.iterdir()} == {"inner", "jobs"}
    assert len(list(folder.glob("*.txt"))) == len(list(folder.iterdir())) == len(names)
    assert "DROP TABLE" in talk.say("my jobs").text


def test_a_page_in_the_words_is_text_on_every_sheet(tmp_path: Path) -> None:
    talk = Conversation(folder=tmp_path, jobs=JobBook())
    talk.say("eight 6 ft tables, full drop, navy and <script>alert()</script>")
    talk.say("keep this as <img src=x onerror=alert(1)>")
    for sheet in ("make the client sheet", "make the crew sheet", "make the shopping list file"):
        talk.say(sheet)
    pages = [path.read_text() for path in tmp_path.glob("*.html")]
    assert len(pages) == 3
    assert not any("<script>alert" in page or "<img src=x" in page for page in pages)


# found by fuzzing -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    [
        "not " * 400 + "true",
        "-" * 1_500 + "1",
        "1" + "+1" * 900,
        "ceil(" * 300 + "1" + ")" * 300,
        "if true then " * 120 + "1" + " else 1" * 120,
        "1 +" * LONGEST + "1",
        "(" * 5_000,
    ],
    ids=["not", "minus", "sum", "calls", "choices", "long", "brackets"],
)
def test_a_formula_too_deep_or_too_long_is_refused(text: str) -> None:
    with pytest.raises(FormulaError, match=r"share it out among facts|cannot be read"):
        parse(text)


def test_a_formula_of_many_levels_is_read() -> None:
    assert len(list(walk(parse("1" + "+1" * (DEEPEST // 2))))) == DEEPEST + 1


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "base.toml").write_text(BASE)
    return tmp_path


@pytest.mark.parametrize(
    "block",
    [
        '[runner]\nkind = "piece"\nwords = ["runner"]\nmain = 7',
        '[runner]\nkind = "piece"\nmain = ["runner"]',
        '[runner]\nkind = "piece"\nshows = [3]',
        '[new]\nof = ["runner", 3]\nassume = 1\nwhy = "a reason"\nsource = "mine"',
        '[new]\nof = [["runner"]]\nassume = 1\nwhy = "a reason"\nsource = "mine"',
        '[new]\nof = ["runner"]\nunit = true\nis = "1"\nwhy = "a reason"\nsource = "mine"',
        '[new]\nof = ["runner"]\nunit = "in"\ntype = []\nwhy = "a reason"\nsource = "mine"',
        '[table_length]\nsane = [0.5, 60]\nassume = [1, 2]',
        '[table_length]\nof = false',
        '[table_length]\nwhy = 3',
        '[table_length]\nis = true',
        f'[table_length]\nis = "{"not " * 300}true"',
        '[shape]\nchoices = { round = [1] }',
        '[new]\nkind = "note"\nof = ["runner"]\nwhen = 3\ntext = "a text"',
    ],
)  # fmt: skip
def test_a_value_of_the_wrong_kind_in_the_house_file_is_named(block: str, folder: Path) -> None:
    house = read_house(block, folder)
    assert [str(fault)[:7] for fault in house.faults] == ["line 1:"]
    assert house.text == ""


def test_half_a_letter_in_the_house_file_is_no_fault(folder: Path) -> None:
    assert read_house('[table_length]\nwhy = "\ud800"\n', folder).faults == ()


def test_a_size_after_strange_words_is_still_how_far_balloons_are_blown() -> None:
    reply = Conversation().say("five 6 ft tables, 5 inch balloons blown up zork to 4 inches")
    assert reply.model_dump(mode="json")["heard"]["pieces"][0]["inflated_in"] == [4, 4]
    assert reply.unread == ["zork"]


GROWING: list[Callable[[int], str]] = [
    lambda n: "white and golld tables, " * n,
    lambda n: "2 6 " * n,
    lambda n: "10 personas de 6 pies" * n,
    lambda n: "11  tall, " * n,
    lambda n: "(" * n,
]


@pytest.mark.parametrize("made", GROWING)
def test_reading_takes_steps_in_proportion_to_the_words(made: Callable[[int], str]) -> None:
    """Calls are counted, not seconds, so that a busy machine changes nothing."""
    few, many = (_calls(made(n)) for n in (40, 160))
    assert many < 6 * few


def _calls(text: str) -> int:
    """How many calls and generator steps a first reading takes."""
    count = 0

    def step(*_: object) -> None:
        nonlocal count
        count += 1

    reader = Conversation().reader
    reader.read("eight 6 ft tables")
    sys.setprofile(step)
    try:
        reader.read(text)
    finally:
        sys.setprofile(None)
    return count


def test_a_number_of_pieces_beyond_all_reckoning_is_asked_about_however_it_is_said() -> None:
    said = f"What should I charge for 22 ft of garland with 18% spare and  {10**29} 8 ft, ivory"
    reply = Conversation().say(said)
    assert all(piece.get("count", 1) < 100_000 for piece in reply.heard.pieces)
    assert reply.question is not None
