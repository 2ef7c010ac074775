"""Every sheet in a real browser, as wide as a phone and as A4: nothing runs over, no colour is missing."""

import html
import json
import re
import shutil
import subprocess
import zlib
from pathlib import Path
from typing import Any

import pytest

from assistant.sheets.pages import client_page, crew_page, shopping_page
from assistant.sheets.scene import scene_of
from tests.assistant.sheets.demo_jobs import DEMO, hostile, made

BROWSER = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
pytestmark = pytest.mark.skipif(BROWSER is None, reason="no browser")

FLAGS = ("--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run")
PHONE, PAPER = 360, 680  # CSS pixels: a small phone; A4's 210 mm less 15 mm on each side
A4 = (594, 842)  # points, ISO 216
LEAST_SEEN = 25  # dots of its own colour that a picture 800 dots wide must show of each colour
# Measured from outside: the sheet lies in a frame, where it can neither run a script nor be told that it is measured.
LOOK = """
async function look(frame) {
  const page = frame.contentDocument, root = page.documentElement, found = {};
  found.over = root.scrollWidth - root.clientWidth;
  found.cut = [...page.body.querySelectorAll("*")].filter(e => !e.closest("svg") &&
    (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 ||
     e.getBoundingClientRect().right > root.clientWidth + 1)).map(e => e.tagName + ": " + e.textContent.slice(0, 60));
  found.height = root.scrollHeight;
  found.small = Math.min(...[...page.querySelectorAll("p, li, td, figcaption")].map(e =>
    parseFloat(getComputedStyle(e).fontSize)));
  found.pictures = [];
  for (const drawing of page.querySelectorAll("figure > svg")) {
    const box = drawing.viewBox.baseVal, copy = drawing.cloneNode(true);
    copy.setAttribute("width", 800); copy.setAttribute("height", Math.ceil(800 * box.height / box.width));
    const image = new Image();
    image.src = "data:image/svg+xml," + encodeURIComponent(new XMLSerializer().serializeToString(copy));
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = image.width; canvas.height = image.height;
    const brush = canvas.getContext("2d");
    brush.drawImage(image, 0, 0);
    const dots = brush.getImageData(0, 0, canvas.width, canvas.height).data, seen = {};
    for (let i = 0; i < dots.length; i += 4) {
      const value = "#" + [0, 1, 2].map(n => dots[i + n].toString(16).padStart(2, "0")).join("");
      if (dots[i + 3] === 255) seen[value] = (seen[value] || 0) + 1;
    }
    found.pictures.push(seen);
  }
  return found;
}
window.onload = async () => {
  let text;
  try {
    const all = {};
    for (const frame of document.querySelectorAll("iframe")) all[frame.id] = await look(frame);
    text = JSON.stringify(all);
  } catch (error) { text = JSON.stringify({error: String(error)}); }
  const out = document.createElement("pre");
  out.id = "out"; out.textContent = text; document.body.replaceChildren(out);
};
"""


def browse(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    assert BROWSER is not None
    profile = f"--user-data-dir={folder / 'profile'}"
    return subprocess.run(
        [BROWSER, *FLAGS, profile, *arguments], capture_output=True, text=True, check=True, timeout=120
    )


def sheets() -> dict[str, str]:
    jobs = {**{job: made(said) for job, said in DEMO.items()}, "hostile": hostile()}
    pages = {}
    for job, estimate in jobs.items():
        pages[f"{job} client"] = client_page(estimate, priced=True)
        pages[f"{job} crew"] = crew_page(estimate)
        pages[f"{job} shopping"] = shopping_page(estimate)
    return pages


@pytest.fixture(scope="module")
def looked(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What the browser saw: "phone ..." and "paper ..." for each sheet; on paper the print styles hold."""
    frames = []
    for name, page in sheets().items():
        assert "@media print" in page
        printed = page.replace("@media print", "@media all")
        for medium, width, text in (("phone", PHONE, page), ("paper", PAPER, printed)):
            shown = f'style="width:{width}px;height:900px;border:0" srcdoc="{html.escape(text)}"'
            frames.append(f'<iframe id="{medium} {name}" {shown}></iframe>')
    folder = tmp_path_factory.mktemp("browser")
    page = folder / "look.html"
    page.write_text(f"<!doctype html><meta charset=utf-8><body>{''.join(frames)}<script>{LOOK}</script>")
    dom = browse(folder, "--virtual-time-budget=60000", "--dump-dom", page.as_uri()).stdout
    out = re.search(r'<pre id="out">(.*?)</pre>', dom, re.DOTALL)
    assert out, "the browser told nothing"
    found = json.loads(html.unescape(out[1]))
    assert "error" not in found, found["error"]
    return dict(found)


def test_every_sheet_was_looked_at(looked: dict[str, Any]) -> None:
    assert set(looked) == {f"{medium} {name}" for medium in ("phone", "paper") for name in sheets()}
    assert all(seen["height"] > 200 for seen in looked.values())


def test_nothing_runs_over_the_edge(looked: dict[str, Any]) -> None:
    assert {name: (seen["over"], seen["cut"]) for name, seen in looked.items() if seen["over"] > 0 or seen["cut"]} == {}


def test_words_are_large_enough_to_read(looked: dict[str, Any]) -> None:
    assert {name: seen["small"] for name, seen in looked.items() if seen["small"] < 12} == {}


@pytest.mark.parametrize("medium", ["phone", "paper"])
@pytest.mark.parametrize("sheet", ["client", "crew"])
@pytest.mark.parametrize("job", DEMO)
def test_every_colour_is_seen_in_every_picture(looked: dict[str, Any], job: str, sheet: str, medium: str) -> None:
    estimate = made(DEMO[job])
    pictures = iter(looked[f"{medium} {job} {sheet}"]["pictures"])
    for piece in range(len(estimate.job.pieces)):
        scene = scene_of(estimate, piece)
        assert scene is not None
        for view in scene.views:
            seen = next(pictures)
            missing = [swatch.name for swatch in scene.key if seen.get(swatch.value, 0) < LEAST_SEEN]
            assert missing == [], (view.title, missing)
    assert list(pictures) == []


@pytest.mark.parametrize("sheet", ["client", "crew", "shopping"])
def test_a_sheet_prints_on_a4_without_complaint(tmp_path: Path, sheet: str) -> None:
    page, paper = tmp_path / "sheet.html", tmp_path / "sheet.pdf"
    page.write_text(sheets()[f"supper {sheet}"], encoding="utf-8")
    done = browse(
        tmp_path, "--enable-logging=stderr", "--no-pdf-header-footer", f"--print-to-pdf={paper}", page.as_uri()
    )
    assert [line for line in done.stderr.splitlines() if "CONSOLE" in line] == []
    assert {tuple(round(part) for part in size) for size in page_sizes(paper.read_bytes())} <= {A4, (595, 842)}


def page_sizes(pdf: bytes) -> list[tuple[float, float]]:
    """Width and height of each page, in points, also where the pages' objects are packed (PDF 32000-1, 7.5.7)."""
    packed = [
        zlib.decompressobj().decompress(part)
        for part in re.findall(rb"/ObjStm.*?stream\r?\n(.*?)endstream", pdf, re.DOTALL)
    ]
    found = re.findall(rb"/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]", b"\n".join([pdf, *packed]))
    assert found
    return [(float(wide), float(high)) for wide, high in found]
