"""The shipped book is sound, loads the same every time, and a house file is laid over it."""

import subprocess
import sys
import tomllib
from pathlib import Path

import pint
import pytest

from rules.book import BOOK_FOLDER, HOUSE_FILE, build_book, load_book, read_blocks
from rules.check import check_book
from rules.errors import BookError
from rules.formula import parse
from rules.units import from_base, read_unit
from tests.rules.small_books import BASE, REASON, book_of, fact, runner

BOOK = load_book()
PIECES = ("runner", "garland", "arch", "column", "wall", "hoop", "swag", "bouquet", "centerpiece", "drop")
HEARD_OF_RUNNER = (
    "count table_shape table_length table_width table_height table_diameter coverage coverage_fraction overhang "
    "extra_drop length max_width seats colours sizes strokes inflated foliage style"
).split()
HEARD_OF_JOB = (
    "guests crew outdoors wind altitude temperature event_time setup_from drive_distance spare markup margin "
    "labour_rate deposit tax budget"
).split()


def test_the_shipped_book_is_sound() -> None:
    assert [str(error) for error in check_book(BOOK)] == []


@pytest.mark.parametrize("kind", PIECES)
def test_every_kind_of_piece_is_there(kind: str) -> None:
    assert kind in BOOK.pieces
    assert BOOK.pieces[kind].words


@pytest.mark.parametrize("id", HEARD_OF_RUNNER)
def test_what_is_heard_of_a_runner(id: str) -> None:
    assert BOOK.fact(id, "runner") is not None


@pytest.mark.parametrize("id", HEARD_OF_JOB)
def test_what_is_heard_of_the_job(id: str) -> None:
    found = BOOK.fact(id)
    assert found is not None
    assert found.of == ("job",)


def test_every_unit_is_plain_pint_but_money() -> None:
    plain = pint.UnitRegistry()
    for found in BOOK.every_fact():
        if not any(name.startswith("currency_") for name, _ in read_unit(found.unit).powers):
            assert plain.Unit(found.unit) is not None


def test_every_source_is_a_source() -> None:
    """Each says where it comes from: published, common practice, memory, arithmetic, geometry or the speaker."""
    telling = (
        "common practice, from memory, arithmetic, geometry, decorator, CFR, Code, handbook, Journal, "
        "volume of a ball, random close packing, conservation of air, one stroke against two, tables are, IRS"
    ).split(", ")
    for found in BOOK.every_fact():
        for source in (found.source, *(rule.source for rule in found.rules)):
            assert source
    runner_files = ["runner", "tables", "inflation", "job", "labour", "materials", "price"]
    for found in BOOK.every_fact():
        if found.file.removesuffix(".toml") in runner_files:
            assert any(word in found.source for word in telling), (found.file, found.id, found.source)


def test_every_sum_of_money_is_in_one_currency() -> None:
    assert {found.unit.partition("/")[0] for found in BOOK.every_fact() if "USD" in found.unit} == {"USD"}


def test_loading_does_not_parse_a_formula() -> None:
    code = (
        "import sys; from rules import load_book; load_book(); print(sorted({'lark', 'pydantic'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_what_an_earlier_run_made_is_worked_with_without_waiting_for_pint(tmp_path: Path) -> None:
    code = (
        "import pickle, sys; from pathlib import Path; from rules.warm import warm; "
        "file = lambda name: Path(sys.argv[1] + name); "
        "warm(lambda name, make: pickle.loads(file(name).read_bytes()) if file(name).exists() else "
        "file(name).write_bytes(pickle.dumps(made := make())) and made); "
        "from rules import Job, Piece, load_book, work; "
        "estimate = work(load_book(), Job([Piece('runner', {'count': 1, 'table_length': 72})], {})); "
        "print([repr(f) for f in estimate.figures()], file=sys.stderr); "
        "print(estimate.figure('balloons', 0).value, 'pint' in sys.modules)"
    )
    argv = [sys.executable, "-c", code, str(tmp_path / "made")]
    first, second = (subprocess.run(argv, capture_output=True, text=True, check=True) for _ in range(2))
    assert (first.stdout, second.stdout) == ("108 True\n", "108 False\n")
    assert first.stderr == second.stderr


def test_the_same_under_any_hash_seed() -> None:
    code = (
        "from rules import Job, Piece, load_book, work; "
        "e = work(load_book(), Job([Piece('runner', {'count': 3, 'table_length': 72, 'coverage': 'drop_both'})], {})); "
        "print([repr(f) for f in e.figures()], e.assumed(0), e.matters('balloons', 0), e.cautions())"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"PYTHONHASHSEED": seed}
        ).stdout
        for seed in ("0", "1", "77")
    }
    assert len(said) == 1


def test_the_version_follows_the_contents() -> None:
    assert BOOK.version == load_book().version
    assert len(BOOK.version) == 12
    assert load_book(house_text='[stroke]\nassume = "0.3 litre"\n').version != BOOK.version


def test_every_formula_reads() -> None:
    assert len([parse(rule.text) for found in BOOK.every_fact() for rule in found.rules]) > 60


def test_topic_files_are_small_and_have_a_heading() -> None:
    for path in BOOK_FOLDER.glob("*.toml"):
        text = path.read_text(encoding="utf-8")
        assert text.startswith("# "), path.name
        assert tomllib.loads(text)


def test_a_house_value_goes_before_the_books() -> None:
    book = load_book(house_text='[stroke]\nassume = "0.3 litre"\n')
    estimate = runner(book, {"count": 1, "table_length": 72})
    figure = estimate.figure("stroke")
    assert (figure.value, figure.low, figure.high, figure.how, figure.source) == (
        0.3,
        0.3,
        0.3,
        "house",
        "the house file",
    )
    assert estimate.figure("quads_each", 0).value == 21
    assert "stroke" not in [one.id for one in estimate.assumed(0)]


def test_a_house_rule_takes_the_place_of_the_books() -> None:
    rule = '[quads_each]\nof = ["runner"]\nis = "up_to_whole(decor_length / 3 in)"\nwhy = "a quad every 3 in"\n'
    book = load_book(house_text=rule)
    figure = runner(book, {"count": 1, "table_length": 72}).figure("quads_each", 0)
    assert (figure.value, figure.why, figure.source) == (24, "a quad every 3 in", "the house file")


def test_a_house_file_may_add_a_fact_and_a_caution() -> None:
    text = fact("bow_count", "count", whole=True, is_="count * 2") + (
        '[glitter]\nkind = "caution"\nof = ["runner"]\ntext = "Glitter."\nsource = "the house"\nrank = 1\n'
    )
    estimate = runner(load_book(house_text=text), {"count": 4, "table_length": 72})
    assert estimate.figure("bow_count", 0).value == 8
    assert estimate.cautions()[0].text == "Glitter."


def test_house_words_alone_leave_the_value_the_books() -> None:
    book = load_book(house_text='[stroke]\nwords = ["puff"]\n')
    assert book.fact("stroke").words == ("puff",)
    assert runner(book, {"count": 1, "table_length": 72}).figure("stroke").how == "assumed"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            '[strok]\nassume = "0.3 litre"\n',
            "house.toml, [strok]: the book has no such block; the nearest are stroke, strokes",
        ),
        ('[stroke]\nassume = "0.3 lb"\n', "house.toml, [stroke]: '0.3 lb' does not measure the same as litre"),
        ("[stroke]\nassume = { low = 3, typical = 2, high = 4 }\n", "house.toml, [stroke]: the range runs 3, 2, 4"),
        (
            '[stroke]\nassume = "9 litre"\n',
            "house.toml, [stroke]: the range runs 9, 9, 9, outside what is sane, 0.05, 2",
        ),
        ("[stroke", "house.toml: the file is not valid TOML"),
        ('[quads_each]\nis = "decor_length"\n', "house.toml, [quads_each]: 'decor_length' gives [length]"),
        ('[table_length]\nis = "decor_length"\n', "it needs itself: "),
    ],
)
def test_a_wrong_house_file_is_one_plain_sentence(text: str, said: str) -> None:
    with pytest.raises(BookError) as caught:
        load_book(house_text=text)
    assert said in str(caught.value)
    assert str(caught.value).endswith(".")


def test_a_house_file_of_values_alone_needs_no_more_than_the_short_check() -> None:
    facts = [fact for fact in BOOK.every_fact() if fact.is_number and fact.assume is not None and not fact.learned]
    values = {fact.id: from_base(fact.assume.typical, fact.unit) for fact in facts if fact.assume is not None}
    assert len(values) > 100
    text = "".join(f"[{id}]\nassume = {value!r}\n" for id, value in values.items())
    blocks = [block for path in BOOK_FOLDER.glob("*.toml") for block in read_blocks(path.name, path.read_text("utf-8"))]
    book = build_book([*blocks, *read_blocks(HOUSE_FILE, text, from_house=True)])
    assert check_book(book, over=BOOK) == check_book(book) == []


@pytest.mark.parametrize(
    "text",
    [
        '[quads_each]\nis = "decor_length"\n',
        '[labour_rate]\nassume = 30\nwhy = "as {nobody} says"\n',
        '[garland]\nkind = "piece"\nwords = ["garland"]\nshows = ["nothing_at_all"]\n',
    ],
)
def test_a_house_file_that_says_more_is_checked_as_a_whole_book_is(text: str) -> None:
    blocks = [block for path in BOOK_FOLDER.glob("*.toml") for block in read_blocks(path.name, path.read_text("utf-8"))]
    book = build_book([*blocks, *read_blocks(HOUSE_FILE, text, from_house=True)])
    assert [*map(str, check_book(book, over=BOOK))] == [*map(str, check_book(book))] != []


def test_one_id_for_several_kinds() -> None:
    text = f'[table_length]\nof = ["arch"]\nunit = "ft"\nassume = 9\n{REASON}'
    book = book_of(text)
    assert check_book(book) == []
    assert book.fact("table_length", "arch").unit == "ft"
    assert book.fact("table_length", "runner").unit == "in"
    assert book.fact("table_length") is None


def test_other_kinds_are_kept_whole() -> None:
    book = build_book(read_blocks("base.toml", BASE + '[navy]\nkind = "colour"\ncss = "#000080"\nwords = ["navy"]\n'))
    assert book.others["colour"]["navy"]["css"] == "#000080"
