"""The picture of a piece, before anything is drawn: views in inches, colours, and the key to them."""

from collections.abc import Callable

from assistant.sheets.bunches import bunch_view, drop_view
from assistant.sheets.colours import NEUTRALS, letters, value_of
from assistant.sheets.fronts import arch_view, column_view, garland_view, hoop_view, swag_view, wall_view
from assistant.sheets.runners import runner_views
from assistant.sheets.shapes import Scene, Swatch, View
from assistant.sheets.strung import Paint
from assistant.sheets.wanted import number
from rules import Estimate
from rules.buying import colour_shares

MAKERS: dict[str, Callable[[Estimate, int, Paint], View | None]] = {
    "arch": arch_view,
    "column": column_view,
    "wall": wall_view,
    "hoop": hoop_view,
    "swag": swag_view,
    "garland": garland_view,
    "bouquet": bunch_view,
    "centerpiece": bunch_view,
    "drop": drop_view,
}


def scene_of(estimate: Estimate, piece: int) -> Scene | None:
    """The picture of one of the pieces alike, None while it cannot be drawn."""
    kind = estimate.job.pieces[piece].kind
    key, notes = _key(estimate, piece)
    values = {swatch.name: swatch.value for swatch in key}

    def paint(name: str | None) -> str:
        return values.get(name, NEUTRALS[0])

    if kind == "runner":
        views = runner_views(estimate, piece, paint)
    else:
        view = MAKERS[kind](estimate, piece, paint) if kind in MAKERS else None
        views = [view] if view else []
    if not views:
        return None
    return Scene(_title(estimate, piece), views, key, notes)


def _title(estimate: Estimate, piece: int) -> str:
    kind = estimate.book.kind_of(estimate.job.pieces[piece].kind)
    noun = kind.words[0] if kind.words else kind.id
    count = round(number(estimate, piece, "count"))
    return f"{noun.capitalize()}, one of {count:,}" if count > 1 else noun.capitalize()


def _key(estimate: Estimate, piece: int) -> tuple[list[Swatch], list[str]]:
    """The colours in the order said, and a note for those whose look is not known."""
    names = list(colour_shares(estimate, piece))
    if names == [None]:
        return [Swatch(None, NEUTRALS[0], "B")], ["No colours yet: drawn in a neutral tone."]
    unknown = [name for name in names if name and value_of(estimate.book, name) is None]
    spare = iter(NEUTRALS * (len(unknown) // len(NEUTRALS) + 1))
    key = [
        Swatch(name, value_of(estimate.book, name) or next(spare), letter)
        for name, letter in zip((name or "" for name in names), letters(name or "" for name in names), strict=True)
    ]
    notes = [f"No picture of the colour {name} here: a neutral tone stands for it." for name in unknown]
    return key, notes
