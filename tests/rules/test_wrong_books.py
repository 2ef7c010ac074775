"""Every mistake a book can hold gives the message its file names in its first line."""

from pathlib import Path

import pytest

from rules.book import build_book, read_blocks
from rules.check import check_book
from rules.errors import BookError
from tests.rules.small_books import BASE

WRONG = sorted((Path(__file__).parent / "wrong").glob("*.toml"))
EXPECT = "# expect: "


def first_message(path: Path) -> str:
    """What is said first of the base book with the file beside it."""
    try:
        blocks = [*read_blocks("base.toml", BASE), *read_blocks(path.name, path.read_text(encoding="utf-8"))]
        found = check_book(build_book(blocks))
    except BookError as error:
        return str(error)
    return str(found[0]) if found else "nothing"


def test_the_corpus_is_there() -> None:
    assert len(WRONG) >= 25


def test_the_base_book_alone_is_sound() -> None:
    assert check_book(build_book(read_blocks("base.toml", BASE))) == []


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_message(path: Path) -> None:
    expected = path.read_text(encoding="utf-8").splitlines()[0].removeprefix(EXPECT)
    said = first_message(path)
    assert said == expected
    assert said.startswith(path.name)
    assert said.endswith(".")
    assert "\n" not in said


def test_an_error_names_its_parts() -> None:
    error = BookError("tables.toml", "table_height", "the range runs 30, 29, 30", "write low <= typical <= high")
    assert (error.file, error.block, error.what) == ("tables.toml", "table_height", "the range runs 30, 29, 30")
    assert error.mend == "write low <= typical <= high"
    assert str(error) == "tables.toml, [table_height]: the range runs 30, 29, 30; write low <= typical <= high."
