"""The sheets: what they say and leave out, that names in them are harmless, and that files are only ever our own."""

import csv
import io
import os
import re
import xml.etree.ElementTree as ET
from html.parser import HTMLParser
from pathlib import Path

import pytest

from assistant import Conversation
from assistant.sheets.files import MARK, write
from assistant.sheets.pages import client_page, crew_page, shopping_page
from assistant.sheets.scene import scene_of
from assistant.sheets.shopping_file import as_csv, harmless
from assistant.sheets.svg import svg
from assistant.sheets.told import price_lines
from assistant.turns import Turns
from rules import load_book, shopping, work
from tests.assistant.sheets.demo_jobs import DEMO, FORMULA, SCRIPT, hostile, made

PAGES = {"client": lambda e: client_page(e, priced=True), "crew": crew_page, "shopping": shopping_page}
JARGON = re.compile(r"\b(?:quads?|loose pairs?|markup|margin|wages?|labour|strokes?|pitch)\b", re.IGNORECASE)


class Seen(HTMLParser):
    """Tags, attributes and text of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str]] = []
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(name, value or "") for name, value in attrs]

    def handle_data(self, data: str) -> None:
        self.text += data if self.tags[-1:] != ["style"] else ""


@pytest.mark.parametrize("sheet", PAGES)
@pytest.mark.parametrize("job", [*DEMO, "hostile"])
def test_a_page_runs_nothing_and_loads_nothing(sheet: str, job: str) -> None:
    seen = Seen(PAGES[sheet](hostile() if job == "hostile" else made(DEMO[job])))
    assert not {"script", "img", "iframe", "object", "embed", "link", "form", "base"} & set(seen.tags)
    assert [pair for pair in seen.attributes if pair[0].startswith("on") or pair[0] in ("href", "src", "style")] == []


@pytest.mark.parametrize("sheet", ["client", "crew", "shopping"])
def test_hostile_names_are_shown_as_they_are(sheet: str) -> None:
    page = PAGES[sheet](hostile())
    assert SCRIPT in Seen(page).text
    assert SCRIPT not in page
    assert "\x1b" not in page
    assert "\u202e" not in page


@pytest.mark.parametrize("job", [*DEMO, "hostile"])
def test_drawings_are_well_formed(job: str) -> None:
    estimate = hostile() if job == "hostile" else made(DEMO[job])
    for piece in range(len(estimate.job.pieces)):
        scene = scene_of(estimate, piece)
        assert scene is not None
        for view in scene.views:
            ET.fromstring(svg(view, SCRIPT))  # noqa: S314  made a moment ago, by us


@pytest.mark.parametrize("job", DEMO)
def test_the_client_reads_no_costs_of_ours_and_no_jargon(job: str) -> None:
    estimate = made(DEMO[job])
    text = Seen(client_page(estimate, priced=False)).text
    assert not JARGON.search(text)
    assert "$" not in text
    for told in ("What is included", "Terms", "Please mind", "14 days"):
        assert told in text


def test_prices_are_what_the_client_pays() -> None:
    estimate = made(DEMO["supper"])
    labels = dict(price_lines(estimate))
    assert list(labels) == ["Price", "Deposit"]
    text = Seen(client_page(estimate, priced=True)).text
    assert labels["Price"] in text
    for id in ("labour_cost", "materials_cost", "cost"):
        figure = estimate.figure(id)
        assert figure is not None
        assert f"${float(figure.value):,.0f}" not in text


def test_the_house_has_its_own_terms() -> None:
    house = '[client_sheet]\nbusiness = "Corner & Co"\nterms = ["Ours alone <b>"]\nshow_price = true\n'
    estimate = work(load_book(house), made(DEMO["supper"]).job)
    page = client_page(estimate, priced=False)
    assert "Corner &amp; Co" in page
    assert "Ours alone &lt;b&gt;" in page
    assert "A deposit" not in page
    assert "$" in Seen(page).text


def test_the_crew_has_tools_and_cautions_and_the_shop_all_bags() -> None:
    crew = Seen(crew_page(made(DEMO["supper"]))).text
    assert "Build card, for one of 8" in crew
    assert "Section 1" in crew
    assert "balloon pump" in crew
    assert "Ladders" in Seen(crew_page(made(DEMO["garden"]))).text
    rows = shopping(made(DEMO["supper"]))
    text = Seen(shopping_page(made(DEMO["supper"]))).text
    for row in rows:
        assert f"{row.with_spares:,}" in text
        assert str(row.colour) in text
    assert "stems of greenery" in text


# the table for other programs ----------------------------------------------------------------------------------------


def test_the_table_holds_the_list() -> None:
    estimate = made(DEMO["supper"])
    mark, head, *rows = csv.reader(io.StringIO(as_csv(estimate)))
    assert mark == [f"# shopping list {MARK}"]
    assert len(head) == 8
    wanted = [[f"{r.size_in:g}", r.colour, str(r.need), str(r.with_spares)] for r in shopping(estimate)]
    assert [row[:4] for row in rows] == wanted


def test_no_cell_is_a_formula() -> None:
    for row in csv.reader(io.StringIO(as_csv(hostile()))):
        assert [cell for cell in row if cell[:1] in "=+-@\t\r" and cell] == []
    assert FORMULA.replace('"', '""') in as_csv(hostile())


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1", "\x1b[0m=1"])
def test_a_formula_is_text(text: str) -> None:
    assert harmless(text)[0] == "'"
    assert harmless("dusty rose") == "dusty rose"


# files ---------------------------------------------------------------------------------------------------------------

OURS = f"<!-- {MARK} -->"


def test_our_own_file_is_written_anew_and_anothers_never(tmp_path: Path) -> None:
    assert write(tmp_path, "sheet", ".html", OURS + "1").name == "sheet.html"
    assert write(tmp_path, "sheet", ".html", OURS + "2").name == "sheet.html"
    (tmp_path / "sheet.html").write_text("my own notes")
    assert write(tmp_path, "sheet", ".html", OURS + "3").name == "sheet-2.html"
    assert (tmp_path / "sheet.html").read_text() == "my own notes"
    assert (tmp_path / "sheet-2.html").read_text() == OURS + "3"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["sheet-2.html", "sheet.html"]


def test_links_and_folders_of_that_name_are_anothers(tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.write_text(OURS + "kept")
    (tmp_path / "sheet.html").symlink_to(elsewhere)
    (tmp_path / "sheet-2.html").mkdir()
    (tmp_path / "sheet-3.html").symlink_to(tmp_path / "nowhere")
    assert write(tmp_path, "sheet", ".html", OURS).name == "sheet-4.html"
    assert elsewhere.read_text() == OURS + "kept"
    assert not (tmp_path / "nowhere").exists()


def test_whole_or_not_at_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, "sheet", ".html", OURS + "before")

    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        write(tmp_path, "sheet", ".html", OURS + "after")
    assert [path.read_text() for path in tmp_path.iterdir()] == [OURS + "before"]


def test_a_file_that_does_not_say_it_is_ours_is_not_written(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="ours"):
        write(tmp_path, "sheet", ".html", "anything")
    assert list(tmp_path.iterdir()) == []


# in the conversation -------------------------------------------------------------------------------------------------


def test_sheets_are_written_where_the_chat_was_started(tmp_path: Path) -> None:
    talk = Conversation(folder=tmp_path)
    talk.say(DEMO["supper"])
    said = {
        "make the client sheet": {"client-sheet.html"},
        "make the crew sheet": {"crew-sheet.html"},
        "make the shopping list file": {"shopping-list.html", "shopping-list.csv"},
    }
    found: set[str] = set()
    for turn, names in said.items():
        text = talk.say(turn).text
        found |= names
        assert {path.name for path in tmp_path.iterdir()} == found
        assert all(name in text for name in names)
    for path in tmp_path.iterdir():
        assert MARK in path.read_text()[:300]
    assert "$" not in Seen((tmp_path / "client-sheet.html").read_text()).text


def test_a_price_asked_for_is_on_the_sheet(tmp_path: Path) -> None:
    talk = Conversation(folder=tmp_path)
    for turn in (DEMO["supper"], "what do I charge", "make the client sheet"):
        talk.say(turn)
    assert "Price" in (tmp_path / "client-sheet.html").read_text()


def test_a_folder_that_cannot_be_written_in_is_told(tmp_path: Path) -> None:
    talk = Conversation(folder=tmp_path / "gone")
    talk.say(DEMO["supper"])
    assert "could not be written" in talk.say("make the client sheet").text
    assert list(tmp_path.iterdir()) == []


def test_a_turn_that_fails_writes_no_sheet_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    turns = Turns(lambda width: Conversation(width=width, folder=tmp_path))
    turns.take(DEMO["supper"])
    turns.take("make the client sheet")
    (tmp_path / "client-sheet.html").unlink()
    monkeypatch.setattr(turns.load(), "reply_to", lambda text: 1 / 0)
    assert turns.take("anything").reply is None
    assert list(tmp_path.iterdir()) == []
    turns.take("make the client sheet")
    assert [path.name for path in tmp_path.iterdir()] == ["client-sheet.html"]


def test_what_is_too_much_to_draw_is_told() -> None:
    talk = Conversation()
    talk.say("a wall 90 ft wide and 20 ft high")
    assert "too much to be drawn" in " ".join(talk.say("draw it").text.split())


def test_a_conversation_by_itself_writes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    talk = Conversation()
    talk.say(DEMO["supper"])
    assert "here nothing is" in " ".join(talk.say("make the client sheet").text.split())
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("turn", ["show me the picture", "draw it", "draw the columns", "what does it look like"])
def test_a_picture_changes_nothing(turn: str) -> None:
    talk = Conversation()
    talk.say(DEMO["garden"])
    before = talk.state.copy()
    reply = talk.say(turn)
    assert "D dusty rose" in reply.text
    assert reply.heard.job["intent"] == "picture"
    assert talk.state.pieces == before.pieces
