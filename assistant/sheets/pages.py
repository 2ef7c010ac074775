"""Sheets as pages: one self-contained HTML file each, with no script and nothing loaded from elsewhere."""

from dataclasses import dataclass
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from assistant.sheets import told
from assistant.sheets.files import MARK
from assistant.sheets.scene import scene_of
from assistant.sheets.svg import svg
from assistant.terminal import one_line
from rules import Estimate, shopping

TEMPLATES = Path(__file__).with_name("templates")
BUILD_CARD = "assistant.sheets.build_card"


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawn view, its caption, and the key: name and value of each colour, notes."""

    caption: str
    drawing: str  # SVG, in which every text is escaped
    key: list[tuple[str, str]]
    notes: list[str]


def client_page(estimate: Estimate, *, priced: bool) -> str:
    """The client's sheet: picture, what they get, what is included, prices where asked for, terms, cautions."""
    show = priced or told.setting(estimate, "client_sheet", "show_price") is True
    return _page(
        "client.html",
        estimate,
        "client_sheet",
        pieces=_pieces(estimate),
        prices=told.price_lines(estimate) if show else [],
        included=told.setting(estimate, "client_sheet", "included"),
        terms=told.setting(estimate, "client_sheet", "terms"),
        valid_days=told.setting(estimate, "client_sheet", "valid_days"),
        cautions=_cautions(estimate),
    )


def crew_page(estimate: Estimate) -> str:
    """The crew's sheet: pictures, the build card where there is one, tools, cautions."""
    return _page(
        "crew.html",
        estimate,
        "crew_sheet",
        pieces=_pieces(estimate),
        card=_build_card(estimate),
        tools=told.tools(estimate),
        cautions=_cautions(estimate),
    )


def shopping_page(estimate: Estimate) -> str:
    """The shopping list: bags by size and colour, and what else the job takes."""
    return _page(
        "shopping.html",
        estimate,
        "shopping_sheet",
        rows=told.bag_rows(shopping(estimate)),
        also=told.also_needed(estimate),
    )


def pictures(estimate: Estimate, piece: int) -> list[Picture]:
    """The views of a piece, drawn."""
    scene = scene_of(estimate, piece)
    if scene is None:
        return []
    key = [(one_line(swatch.name), swatch.value) for swatch in scene.key if swatch.name is not None]
    last = len(scene.views) - 1
    return [
        Picture(
            view.title,
            svg(view, scene.title, f"p{piece}v{place}"),
            key if place == last else [],
            [one_line(note) for note in scene.notes] if place == last else [],
        )
        for place, view in enumerate(scene.views)
    ]


def _pieces(estimate: Estimate) -> list[dict[str, object]]:
    """For each piece its lines and pictures."""
    return [
        {"lines": told.what_they_get(estimate, piece), "pictures": pictures(estimate, piece)}
        for piece in range(len(estimate.job.pieces))
    ]


def _cautions(estimate: Estimate) -> list[str]:
    return [caution.text for caution in estimate.cautions()]


def _build_card(estimate: Estimate) -> list[list[str]]:
    """The build card's lines of each piece, [] where there is no card."""
    if find_spec(BUILD_CARD) is None:
        return []
    lines = getattr(import_module(BUILD_CARD), "card_lines", None)
    return [lines(estimate, piece) for piece in range(len(estimate.job.pieces))] if lines is not None else []


def _page(template: str, estimate: Estimate, sheet: str, **values: object) -> str:
    pages = Environment(
        loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
        lstrip_blocks=True,
    )  # fmt: skip
    return pages.get_template(template).render(
        mark=MARK,
        heading=one_line(str(told.setting(estimate, sheet, "heading"))),
        business=one_line(str(told.setting(estimate, "client_sheet", "business"))),
        **values,
    )
