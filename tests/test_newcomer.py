"""What DEVELOPERS.md tells a newcomer to write is enough: the files shown are laid beside the book and work."""

import re
import shutil
from pathlib import Path

import pytest

from rules import Book, load_book
from rules.book import BOOK_FOLDER
from rules.check import check_book
from tests.worked_cases import Case, faults, read_cases

PAGE = (Path(__file__).parents[1] / "DEVELOPERS.md").read_text(encoding="utf-8")
BOOK, CASES = "rules/book/", "tests/cases/"
# Path -> text of every file that the page shows whole.
SHOWN: dict[str, str] = dict(re.findall(r"^```toml (\S+)\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL))
TAUGHT = [
    pytest.param(case, id=f"{Path(path).stem}: {case}")
    for path, text in SHOWN.items()
    if path.startswith(CASES)
    for case in read_cases(text)
]


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """The shipped book with the files shown beside it."""
    folder = tmp_path_factory.mktemp("newcomer") / "book"
    shutil.copytree(BOOK_FOLDER, folder)
    for path, text in SHOWN.items():
        if path.startswith(BOOK):
            place = folder / path.removeprefix(BOOK)
            assert not place.exists()
            place.write_text(text, encoding="utf-8")
    return load_book(folder=folder)


def test_a_whole_piece_is_one_book_file_and_one_cases_file() -> None:
    assert {BOOK + "curtain.toml", CASES + "curtain.toml"} <= set(SHOWN)
    assert all(path.startswith((BOOK, CASES)) for path in SHOWN)


def test_the_book_with_them_is_sound(book: Book) -> None:
    assert [str(error) for error in check_book(book)] == []


@pytest.mark.parametrize("case", TAUGHT)
def test_the_figures_are_those_of_the_cases(case: Case, book: Book) -> None:
    assert case.figures
    assert faults(case, book) == []


@pytest.mark.parametrize("case", TAUGHT)
def test_without_the_new_files_the_cases_fail(case: Case) -> None:
    assert faults(case) != []
