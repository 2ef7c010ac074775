"""That every text a user can be shown can be given in another language by data alone, and is given in those there are.

Three ways to find one that cannot: the sentences of the modules and the book are looked up; talks that show every kind
of answer are counted; and the same talks are held in a third language, made for the test of the entries that another
has, in capitals: whatever is still in small letters never came past the catalogue.
"""

import ast
import re
import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import assistant.speech as speech
from assistant import Conversation
from assistant.house import HouseRules
from assistant.jobs import JobBook
from assistant.speech import REPLIES, Catalogue, Manner, catalogue, sentences
from grammar.tokens.ears import Heard
from rules import load_book
from rules.book import BOOK_FOLDER

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
TALKS: dict[str, list[Any]] = tomllib.loads((HERE / "everything.toml").read_text(encoding="utf-8"))
CONVERSATIONS = sorted((HERE.parent / "conversations").glob("*/*.txt"))
LANGUAGES = pytest.mark.parametrize("language", sorted(path.name for path in REPLIES.iterdir()))
GAP = re.compile(r"\{[^{}]*\}")
SMALL = re.compile(r"(?<![^\W\d_])[a-z]{3,}")
NAMED = re.compile(
    r"[^\s\"(]*[./][^\s\")]*|\"[^\"]*\"|festoon-|([a-z])\1+(?![a-z])"
)  # files, quoted words; the signs of a drawing

# Modules that show nothing, or only where no language is known yet: before the first turn, and to the shell.
WITHOUT = {"cache.py", "chat.py", "cli.py", "history.py", "job_schema.py", "job_words.py", "jobs.py", "stock.py"}
# Said by nobody: what a file is known by, and the head of a file that is written by hand as well.
MARKS = {"made by festoon", "festoon job, version 1", "festoon job, version "}
# Looked for in what is said.
LOOKED_FOR = {"how many balloons", "mark-up or", "mark up or"}
FILE_HEADS = ("# Your house rules",)
# In the book: what is shown, by key.
SHOWN = ("why", "text", "short", "ask", "source", "looks", "heading", "included", "terms", "tells")


# what is written ------------------------------------------------------------------------------------------------------


@cache
def known(language: str) -> str:
    """The English of every entry, the gaps as one sign."""
    words = catalogue(language)
    return "\n".join(GAP.sub("\0", entry.english) for entry in (*words.whole, *words.parts))


def prose(path: Path) -> Iterator[str]:
    """Pieces of sentences in a module's strings, three words or more; not what it raises, documents or searches for."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    skipped: set[ast.AST] = set()
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        if isinstance(body, list) and body and isinstance(body[0], ast.Expr):
            skipped.add(body[0].value)
        if isinstance(node, ast.Raise):
            skipped.update(ast.walk(node))
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in skipped:
            text = node.value
            if (
                not text.startswith(FILE_HEADS) and not re.search(r"[\\<>|_^]|\(\?|^[a-z ]+ [a-z ]+$", text)
            ) or re.fullmatch(r"[a-z]+( [a-z]+){2,6}", text):
                yield text


def is_said(text: str, language: str) -> bool:
    """Whether a text, or each piece of it, stands in an entry."""
    if in_full(text, language):
        return True
    for part in re.split(r"(?<=[.?!:;]) |\"", text):
        piece = part.strip(" .,;:-\n")
        low = piece[:1].lower() + piece[1:]
        if len(re.findall(r"[^\W\d_]{2,}", piece)) > 2 and not any(p in known(language) for p in (piece, low)):
            return False
    return True


@LANGUAGES
@pytest.mark.parametrize(
    "path",
    [path for path in sorted((ROOT / "assistant").rglob("*.py")) if path.name not in WITHOUT],
    ids=lambda path: str(path.relative_to(ROOT)),
)
def test_every_sentence_of_a_module_has_an_entry(path: Path, language: str) -> None:
    assert [text for text in prose(path) if text not in MARKS | LOOKED_FOR and not is_said(text, language)] == []


def texts_of_the_book() -> Iterator[str]:
    """Every text of the book that is shown, its places open."""
    for path in sorted(BOOK_FOLDER.glob("*.toml")):
        yield from _texts(tomllib.loads(path.read_text(encoding="utf-8")))


def _texts(block: Any, key: str = "") -> Iterator[str]:
    if isinstance(block, Mapping):
        for name, inner in block.items():
            yield from _texts(inner, name)
    elif isinstance(block, list):
        for inner in block:
            yield from _texts(inner, key)
    elif isinstance(block, str) and key in SHOWN and block:
        yield block


def filled(text: str, value: str) -> str:
    """A text of the book with each place and choice of words filled."""
    return re.sub(r"\{(?:[^{}|]*\|[^{}|]*\|([^{}|]*)|[^{}|]*)\}", lambda gap: value if gap[1] is None else gap[1], text)


@LANGUAGES
def test_every_text_of_the_book_has_an_entry(language: str) -> None:
    texts = list(texts_of_the_book())
    assert len(texts) > 1000
    assert [text for text in texts if not any(in_full(filled(text, one), language) for one in ("7 ft", "7"))] == []


def in_full(text: str, language: str) -> bool:
    """Whether each sentence of a text has an entry."""
    return all(said is not None for _, said in sentences(text, Manner(language)))


@LANGUAGES
def test_every_name_and_choice_of_the_book_has_an_entry(language: str) -> None:
    book = load_book()
    names = {fact.name for fact in book.every_fact()}
    names |= {words[0] for fact in book.every_fact() for words in fact.choices.values() if words}
    names |= {kind.words[0] for kind in book.pieces.values() if kind.words}
    names |= {str(raw["name"]) for kind in ("vehicle", "lever") for raw in book.others[kind].values() if "name" in raw}
    assert [name for name in sorted(names) for _, said in sentences(name, Manner(language)) if said is None] == []


@LANGUAGES
def test_no_entry_is_given_twice(language: str) -> None:
    tables = [tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted((REPLIES / language).glob("*.toml"))]
    given = Counter((name, english) for table in tables for name in ("say", "parts") for english in table.get(name, ()))
    twice = [english for (_, english), times in given.items() if times > 1]
    assert twice == []


# what is shown --------------------------------------------------------------------------------------------------------


def turns_of(path: Path) -> list[str]:
    return [line[2:] for line in path.read_text(encoding="utf-8").splitlines() if line.startswith("> ")]


def talks() -> Iterator[list[str]]:
    """Every recorded conversation, and one of each job with its share of the questions; then the whole talks."""
    yield from (turns_of(path) for path in CONVERSATIONS)
    jobs, questions = TALKS["jobs"], TALKS["questions"]
    for place, job in enumerate(jobs):
        for question in questions[place % 5 :: 5]:
            yield [job, question]
    yield from TALKS["talks"]


def hold(turns: list[str], language: str, folder: Path) -> Iterator[tuple[str, str]]:
    """Each turn with what is shown after it, answered in a language from the first on."""
    for path in folder.iterdir():
        path.unlink()
    jobs, house = JobBook(folder / "jobs.sqlite3"), HouseRules(folder / "house.toml")
    talk = Conversation(folder=folder, jobs=jobs, house=house)
    talk.heard = Heard("before", "before", answered=language)
    for turn in turns:
        talk.heard = replace(talk.heard, answered=language)
        reply = talk.say(turn)
        pages = "".join(path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.[hi][tc][ms]*")))
        yield turn, "\n".join([reply.text, *reply.cautions, _of_page(pages)])
    jobs.close()


def _of_page(page: str) -> str:
    """The words of a page or a calendar: no style, no element, no field's name."""
    page = re.sub(r"<style>.*?</style>|<!--.*?-->|<[^>]*>", " ", page, flags=re.DOTALL)
    return "\n".join(
        line.partition("SUMMARY:")[2] if ":" in line and "SUMMARY" in line else line
        for line in page.splitlines()
        if not re.match(r"[A-Z-]+[;:](?!\s)", line) or "SUMMARY" in line
    )


@LANGUAGES
def test_nothing_that_is_shown_lacks_an_entry(language: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    lacking: dict[str, str] = {}
    lines = 0

    def counted(text: str, manner: Manner) -> list[tuple[str, str | None]]:
        nonlocal lines
        found = sentences(text, manner)
        lines += len(found)
        lacking.update({english: text for english, said in found if said is None})
        return found

    monkeypatch.setattr(speech, "sentences", counted)
    for turns in talks():
        for _ in hold(turns, language, tmp_path):
            pass
    assert lines > 10_000
    assert lacking == {}


def capitals(text: str) -> str:
    """An English text in capitals, its gaps as they are, words that go with a number as well."""
    out, last = "", 0
    for gap in GAP.finditer(text):
        name, *forms = gap[0][1:-1].split("|")
        held = "{" + "|".join([name, *(form.upper() for form in forms)]) + "}"
        out += text[last : gap.start()].upper() + held
        last = gap.end()
    return out + text[last:].upper()


def in_capitals(words: Catalogue) -> Catalogue:
    """A language of nothing but entries: the English of another's, in capitals."""
    whole, parts = ({entry.english: capitals(entry.english) for entry in some} for some in (words.whole, words.parts))
    return Catalogue(whole, parts, {link: link.upper() for link in words.joins}, " ".join(words.same))


@LANGUAGES
def test_whatever_is_shown_can_be_given_in_a_third_language(
    language: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    third = in_capitals(catalogue(language))
    monkeypatch.setattr(speech, "catalogue", lambda _: third)
    left: dict[str, str] = {}
    for turns in talks():
        said = {word for turn in turns for word in re.findall(r"[a-z]+", turn.lower())}
        for turn, text in hold(turns, "third", tmp_path):
            for word in SMALL.findall(NAMED.sub(" ", text)):
                if word not in said | third.same and not any(word in one for one in said):
                    left.setdefault(word, f"{turn}: {text}")
    assert sorted(left) == []
