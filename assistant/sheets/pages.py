"""Sheets as pages: one self-contained HTML file each, with no script and nothing loaded from elsewhere."""

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined, pass_context
from jinja2.runtime import Context
from markupsafe import Markup

from assistant.sheets import told
from assistant.sheets.build_card import build_card
from assistant.sheets.card_words import ANY, blow_text, clusters_of, how_to_join, how_to_read, section_rows, trust
from assistant.sheets.files import MARK
from assistant.sheets.scene import scene_of
from assistant.sheets.svg import svg
from assistant.speech import Said, language_spoken, spoken
from assistant.telling import shown
from assistant.terminal import clean, one_line
from rules import Estimate, shopping
from rules.record import record

TEMPLATES = Path(__file__).with_name("templates")


@record
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
        cautions=_cautions(estimate, told.setting(estimate, "client_sheet", "not_for_client")),
    )


def crew_page(estimate: Estimate) -> str:
    """The crew's sheet: pictures, the build card where there is one, tools, cautions."""
    return _page(
        "crew.html",
        estimate,
        "crew_sheet",
        pieces=_pieces(estimate),
        cards=[_build_card(estimate, piece) for piece in range(len(estimate.job.pieces))],
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
    key: list[tuple[str, str]] = [
        (one_line(swatch.name), Said(swatch.value)) for swatch in scene.key if swatch.name is not None
    ]
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


def _cautions(estimate: Estimate, without: Sequence[str] = ()) -> list[str]:
    return [caution.text for caution in estimate.cautions() if caution.id not in without]


def _build_card(estimate: Estimate, piece: int) -> dict[str, object] | None:
    """The build card of a piece, None where it has no line of clusters."""
    card = build_card(estimate, piece)
    if card is None:
        return None
    sized = groupby(card.blows, key=lambda blow: (blow.inflated_in, blow.held_in))
    return {
        "times": card.count,
        "blow": [blow_text(list(blows), metric=estimate.metric) for _, blows in sized],
        "tie": [f"{tie.count}: {' + '.join(c or ANY for c in tie.colours)} {tie.label}".rstrip() for tie in card.ties],
        "trust": trust(card, metric=estimate.metric),
        "read": how_to_read(card),
        "clusters": clusters_of(card.n),
        "sections": [
            {
                "name": f"Section {part.number}: {part.first} to {part.last}",
                "long": shown(round(part.length_in / 12, 1), "ft", metric=estimate.metric),
                "rows": section_rows(part),
                "join": how_to_join(card, part, estimate.metric),
            }
            for part in card.sections
        ],
    }


@pass_context  # so that the page's own words are put into the language before they are escaped
def _spoken(_: Context, value: object) -> object:
    """What stands in the page, in the language that is spoken; drawings are as they are."""
    return spoken(value) if isinstance(value, str) and not isinstance(value, Markup) else value


def _page(template: str, estimate: Estimate, sheet: str, **values: object) -> str:
    pages = Environment(
        loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
        lstrip_blocks=True, finalize=_spoken,
    )  # fmt: skip
    page = pages.get_template(template).render(
        mark=Said(MARK),
        language=Said(language_spoken()),
        heading=one_line(str(told.setting(estimate, sheet, "heading"))),
        business=one_line(str(told.setting(estimate, "client_sheet", "business"))),
        **values,
    )
    return clean(page)  # control characters and direction marks out of every text at once
