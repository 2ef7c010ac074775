"""What the sheets say: plain words and numbers of an estimate, made ready for the templates."""

from typing import Any

from assistant.layout import listed
from assistant.telling import Teller, worth
from assistant.terminal import one_line
from rules import Estimate
from rules.buying import Row
from rules.show import quantity

PRICE_LINES = (("price", "Price"), ("tax_due", "Tax"), ("price_with_tax", "Price with tax"), ("deposit_due", "Deposit"))
HIGH = 72.0  # inches: what is higher takes a ladder
STRUNG = frozenset({"runner", "garland", "arch", "wall", "hoop", "swag", "column"})


def setting(estimate: Estimate, sheet: str, name: str) -> Any:
    """A setting of a sheet: the house's own where it has one, else the book's."""
    return estimate.book.others["sheet"][sheet].get(name, "")


def what_they_get(estimate: Estimate, piece: int) -> list[str]:
    """A piece in the client's words, a line each: what and how big, colours, how many balloons."""
    words = estimate.book.others["client_words"]["client_words"]
    teller = Teller(estimate, piece, metric=estimate.metric)
    kind = estimate.job.pieces[piece].kind
    lines = [text for template in words.get(kind, ()) if (text := teller.tell(template))]
    coverage = estimate.figure("coverage", piece)
    draped = words.get(str(coverage.value), "") if coverage and kind == "runner" else ""
    foliage = estimate.figure("foliage", piece)
    more = [draped, words["foliage"] if foliage and foliage.value is True else ""]
    lines = [", ".join([lines[0], *filter(None, more)]), *lines[1:]] if lines else []
    colours = estimate.step("colours", piece)
    if colours is not None and colours.value:
        lines.append(f"in {listed(one_line(name) for name, _ in colours.value)}")
    if kind in STRUNG:
        lines += [text for template in words["any"] if (text := teller.tell(template))]
    return lines


def price_lines(estimate: Estimate) -> list[tuple[str, str]]:
    """Label and amount of what the client pays; no cost of ours."""
    tax = estimate.figure("tax_due")
    found = []
    for id, label in PRICE_LINES:
        figure = estimate.figure(id)
        if figure is None or (id in ("tax_due", "price_with_tax") and not (tax and tax.value)):
            continue
        found.append((label, worth(figure, metric=estimate.metric)))
    return found


def tools(estimate: Estimate) -> list[str]:
    """What to bring, each thing once."""
    lists = estimate.book.others["tools"]["tools"]
    found = list(lists["any"])
    for place, piece in enumerate(estimate.job.pieces):
        found += lists["strung"] if piece.kind in STRUNG else ()
        where = estimate.figure("place", place)
        found += lists["on_wall"] if where is not None and where.value == "wall" else ()
        tall = estimate.figure("height_overall", place)
        hung = piece.kind in ("swag", "garland", "drop")
        found += lists["high"] if hung or (tall is not None and float(tall.value) > HIGH) else ()
        gas = estimate.figure("gas", place)
        found += lists["helium"] if gas is not None and gas.value == "helium" else ()
        foliage = estimate.figure("foliage", place)
        found += lists["foliage"] if foliage is not None and foliage.value is True else ()
    return list(dict.fromkeys(found))


def bag_rows(rows: list[Row]) -> list[list[str]]:
    """Size, colour, balloons with spares, bags, left over: as a reader in a shop wants them."""
    return [
        [
            quantity(row.size_in, "in"),
            one_line(row.colour or "any colour"),
            f"{row.with_spares:,}",
            listed(f"{packs} of {holds}" for holds, packs in row.bags) or "none: at hand",
            f"{row.left:,}",
        ]
        for row in rows
    ]


def also_needed(estimate: Estimate) -> list[tuple[str, str]]:
    """Line, foliage, frames and the like: name and amount."""
    ids = estimate.book.others["also"]["also_needed"]
    asked: list[tuple[int | None, str, str]] = [(None, id, label) for id, label in ids["job"].items()]
    for piece in range(len(estimate.job.pieces)):
        asked += [(piece, id, label) for id, label in ids["piece"].items()]
    found = []
    for place, id, label in asked:
        figure = estimate.figure(id, place)
        if figure is not None and not isinstance(figure.value, str) and figure.value:
            kind = "" if place is None or len(estimate.job.pieces) == 1 else f", {estimate.job.pieces[place].kind}"
            found.append((label + kind, worth(figure, metric=estimate.metric)))
    return found
