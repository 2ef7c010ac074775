"""What a picture takes from an estimate: plain numbers in inches, and the measures of things drawn for scale."""

from typing import Any

from rules import Estimate
from rules.units import convert

# The measures of things drawn for scale are blocks of this kind in the book.
YARDSTICK = "yardstick"
LENGTHS = frozenset({"in", "ft", "cm", "m", "yd", "mm"})


def value(estimate: Estimate, piece: int | None, id: str) -> Any:
    """A figure's value in its own unit, None where it is not known."""
    figure = estimate.figure(id, piece)
    return None if figure is None else figure.value


def number(estimate: Estimate, piece: int | None, id: str) -> float:
    """A figure as a number, lengths in inches; 0 where it is not known."""
    figure = estimate.figure(id, piece)
    if figure is None or isinstance(figure.value, bool | str):
        return 0.0
    return convert(float(figure.value), figure.unit, "in") if figure.unit in LENGTHS else float(figure.value)


def yardstick(estimate: Estimate, id: str) -> float:
    """The measure of a thing drawn for scale, in."""
    raw = estimate.book.others[YARDSTICK][id]
    return convert(float(raw["value"]), str(raw["unit"]), "in")


def share_covered(estimate: Estimate, piece: int) -> float:
    """The share of the piece that carries balloons, 0 to 1."""
    percent = number(estimate, piece, "covered_share")
    return min(percent / 100, 1.0) if percent else 1.0


def tall(estimate: Estimate) -> str:
    """How tall the person in the picture is, in words, in the speaker's units."""
    inches = yardstick(estimate, "person")
    if estimate.metric:
        return f"{convert(inches, 'in', 'cm'):.0f} cm"
    return f"{inches // 12:.0f} ft {inches % 12:g} in"
