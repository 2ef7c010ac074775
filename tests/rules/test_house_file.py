"""House rules over the rule book: what is laid over, what is left out, and that the rest of the book stays."""

import pickle
from itertools import product

import pytest

from rules import load_book
from rules.book import BookError
from rules.house import read_house
from rules.units import from_base
from rules.values import look_up

SOUND = """
# mine
[labour_rate]
assume = "38 USD/hour"

[balloon_price]
rows = [{ at = 5, typical = 0.11 }]
"""

BROKEN = {
    "[spare]\nassume = 12 percent\n": "not valid TOML",
    "[nonsense]\nassume = 4\n": "no such block",
    '[markup]\nassume = "3 in"\n': "does not measure the same",
    "[tax]\nsane = [4, 3]\n": "write the lower first",
    "[tax]\nwood = 3\n": "key 'wood' is not known",
    "[deposit]\nassume = [1, 2\n": "not valid TOML",
    '[labour_rate]\nassume = "4 USD/hour"\n': "twice",
    "[pack_size]\nrows = [{ at = 5, typical = 0 }]\n": "outside what is sane",
    "[small_pack]\nrows = [{ typical = 3 }]\n": "row of the table cannot be read",
}


def test_what_is_sound_is_laid_over_the_book() -> None:
    house = read_house(SOUND)
    rate = house.book.fact("labour_rate")
    assert house.faults == ()
    assert rate is not None
    assert rate.from_house
    assert rate.assume is not None
    assert from_base(rate.assume.typical, "USD/hour") == pytest.approx(38)


@pytest.mark.parametrize(("text", "says"), BROKEN.items())
@pytest.mark.parametrize("first", [True, False])
def test_a_broken_block_is_left_out_and_named_with_its_line(text: str, says: str, first: bool) -> None:
    house = read_house(text + SOUND if first else SOUND + text)
    assert [says in str(fault) for fault in house.faults] == [True]
    (fault,) = house.faults
    whole = (text + SOUND if first else SOUND + text).splitlines()
    assert 1 <= fault.line <= len(whole)
    assert str(fault).startswith(f"line {fault.line}: ")
    load_book(house.text)  # what is left is sound as it stands


@pytest.mark.parametrize("both", list(product(BROKEN, BROKEN))[1::7])
def test_any_number_of_broken_blocks_leaves_the_chat_alive(both: tuple[str, str]) -> None:
    house = read_house("".join(both) + SOUND)
    assert house.faults
    load_book(house.text)


@pytest.mark.parametrize(
    "text", ["", "\n\n", "# nothing", "[", "]", "=", "\x00", "a = 3", "[[[", "[a.b.c.d]\ne = 1", "['x"]
)
def test_no_text_at_all_stops_it(text: str) -> None:
    assert read_house(text).book.fact("labour_rate") is not None


def test_a_row_of_a_table_leaves_the_other_rows() -> None:
    book, own = load_book(), read_house(SOUND).book
    was, now = (b.fact("balloon_price").assume.typical for b in (book, own))  # type: ignore[union-attr]
    assert look_up(now, 5.0) == pytest.approx(0.11)
    assert [look_up(now, at) for at in (11.0, 16.0, 36.0)] == [look_up(was, at) for at in (11.0, 16.0, 36.0)]


def test_a_bag_of_one_size_is_no_bag_of_another() -> None:
    own = read_house("[pack_size]\nrows = [{ at = 5, typical = 144 }]").book
    sizes = own.fact("pack_size").assume.typical  # type: ignore[union-attr]
    assert [look_up(sizes, at) for at in (5.0, 9.0, 11.0, 16.0, 18.0, 24.0)] == [144, 100, 100, 50, 50, 10]


def test_a_rule_of_one_kind_of_piece_leaves_the_others() -> None:
    own = read_house("[garland.sizes]\nassume = [11, 5]\n[garland.foliage]\nassume = true").book
    shipped = load_book()
    for id, kind in product(("sizes", "foliage"), ("arch", "wall", "runner", "bouquet")):
        assert (
            own.fact(id, kind) == shipped.fact(id, kind) or own.fact(id, kind).assume == shipped.fact(id, kind).assume
        )  # type: ignore[union-attr]
    assert own.fact("sizes", "garland").assume.typical == (5.0, 11.0)  # type: ignore[union-attr]
    assert own.fact("foliage", "garland").assume.typical is True  # type: ignore[union-attr]


def test_a_rule_of_all_pieces_is_beside_one_of_a_kind() -> None:
    own = read_house("[foliage]\nassume = true\n[garland.foliage]\nassume = false").book
    assert own.fact("foliage", "arch").assume.typical is True  # type: ignore[union-attr]
    assert own.fact("foliage", "garland").assume.typical is False  # type: ignore[union-attr]


def test_the_version_tells_house_from_house() -> None:
    versions = {
        load_book().version,
        *(read_house(f'[labour_rate]\nassume = "{n} USD/hour"').book.version for n in (30, 31)),
    }
    assert len(versions) == 3


def test_faults_can_be_kept_on_disk() -> None:
    faults = read_house("[nonsense]\nassume = 4\n").faults
    assert [str(f) for f in pickle.loads(pickle.dumps(faults))] == [str(f) for f in faults]  # noqa: S301


def test_a_book_error_still_names_the_file() -> None:
    with pytest.raises(BookError, match=r"house\.toml, \[nonsense\]"):
        load_book("[nonsense]\nassume = 4\n")
