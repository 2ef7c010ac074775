"""The shopping list for other programs, as RFC 4180 describes comma-separated values."""

import csv
import io

from assistant.sheets.files import MARK
from assistant.speech import spoken
from assistant.terminal import one_line
from rules import Estimate, shopping

COLUMNS = ("size in", "colour", "needed", "with spares", "at hand", "bags", "balloons in bags", "left over")
# A cell that begins so is worked out as a formula by spreadsheets; their wide forms are taken for the same.
FORMULA = tuple("=+-@\t\r＝＋－＠")


def as_csv(estimate: Estimate) -> str:
    """One row for each size and colour, after a line that says whose file it is."""
    out = io.StringIO()
    write = csv.writer(out).writerow
    write([f"# {spoken('shopping list')} {MARK}"])
    write(map(spoken, COLUMNS))
    for row in shopping(estimate):
        bags = spoken(" and ".join(f"{packs} of {holds}" for holds, packs in row.bags))
        colour = harmless(row.colour or spoken("any colour"))
        write([f"{row.size_in:g}", colour, row.need, row.with_spares, row.at_hand, bags, row.bought, row.left])
    return out.getvalue()


def harmless(text: str) -> str:
    """Text that no spreadsheet works out: with an apostrophe before it where it would."""
    text = one_line(text)
    return f"'{text}" if text.startswith(FORMULA) else text
