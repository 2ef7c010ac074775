"""Answers to "show me the picture" and "make the client sheet"."""

import re
from collections.abc import Callable

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.sheets.drawing import coloured, plain
from assistant.sheets.files import write
from assistant.sheets.scene import scene_of
from assistant.sheets.shopping_file import as_csv
from assistant.state import State
from assistant.terminal import one_line
from rules import Estimate

WHICH = {
    "client": re.compile(r"\b(?:client|customer)", re.IGNORECASE),
    "crew": re.compile(r"\b(?:crew|helpers?|team)", re.IGNORECASE),
    "shopping": re.compile(r"\b(?:shopping|buying|csv|spreadsheet)", re.IGNORECASE),
}
PRICED = re.compile(r"\b(?:price|cost|quote)", re.IGNORECASE)
NAMES = {"client": "client-sheet", "crew": "crew-sheet", "shopping": "shopping-list"}
SPOKEN = {"client": "The client sheet", "crew": "The crew sheet", "shopping": "The shopping list"}
NO_FOLDER = (
    "Sheets are written by the chat and the command festoon, into the folder where it was started; here nothing is."
)


def picture(asked: Asked) -> Blocks | None:
    """The piece in focus, drawn in letters."""
    if asked.now.focus is None or not asked.made.parts(asked.now.focus):
        return None
    scene = scene_of(asked.made, asked.now.focus)
    if scene is None:
        return [paragraph("That is too much to be drawn balloon by balloon; draw a part of it.", asked.width)]
    others = [piece.kind for place, piece in enumerate(asked.now.pieces) if place != asked.now.focus]
    hint = f'Say "draw the {others[0]}" for another piece.' if others else 'Try "make the client sheet".'
    return [[scene.title], plain(scene, asked.width), paragraph(hint, asked.width)]


def painted(text: str, now: State, made: Estimate, width: int, depth: int) -> str:
    """A picture's reply with its drawing in colour; any other text as it is. depth: bits of a colour, 8 or 24."""
    scene = None if now.focus is None else scene_of(made, now.focus)
    if now.intent != "picture" or scene is None:
        return text
    return text.replace("\n".join(plain(scene, width)), "\n".join(coloured(scene, width, depth)), 1)


def sheet(asked: Asked) -> Blocks | None:
    """The sheets asked for, written into the conversation's folder; where they are."""
    if not any(asked.made.parts(place) for place in range(len(asked.now.pieces))):
        return None
    if asked.folder is None:
        return [paragraph(NO_FOLDER, asked.width)]
    text = asked.reading.text
    kinds = [kind for kind, said in WHICH.items() if said.search(text)] or list(NAMES)
    blocks: Blocks = []
    names: list[str] = []
    try:
        for kind in kinds:
            for suffix, make in _files(asked, kind).items():
                names.append(write(asked.folder, NAMES[kind], suffix, make()).name)
    except OSError as error:
        reason = one_line(error.strerror or str(error)).lower()
        blocks.append(paragraph(f"That could not be written here ({reason}); go to another folder.", asked.width))
    if names:
        what = listed(SPOKEN[kind] if place == 0 else SPOKEN[kind].lower() for place, kind in enumerate(kinds))
        where = paragraph(f"In {one_line(str(asked.folder))}", asked.width)
        # A name on a line of its own: it is not broken at a hyphen.
        blocks.insert(0, [*paragraph(f"{what}:", asked.width), *(f"  {name}" for name in names), *where])
    return blocks


def _files(asked: Asked, kind: str) -> dict[str, Callable[[], str]]:
    """Ending -> what makes the text, for one kind of sheet."""
    from assistant.sheets.pages import client_page, crew_page, shopping_page

    made = asked.made
    if kind == "client":
        priced = asked.now.priced or bool(PRICED.search(asked.reading.text))
        return {".html": lambda: client_page(made, priced=priced)}
    if kind == "crew":
        return {".html": lambda: crew_page(made)}
    table = {".csv": lambda: as_csv(made)}
    only = re.search(r"\b(?:csv|spreadsheet)\b", asked.reading.text, re.IGNORECASE)
    return table if only else {".html": lambda: shopping_page(made), **table}
