"""What else a piece takes: weights that hold it, the time that it floats or lasts, the gas and its cylinders."""

from collections.abc import Iterator

from assistant.asked import Asked, Blocks
from assistant.fitting import capital
from assistant.layout import paragraph
from assistant.naming import named_pieces
from assistant.telling import span, worth
from grammar.numbers.quantities import read_quantities
from rules import Figure

DEFER = "Ties as well outdoors; the venue, local codes and, for what stands, a licensed engineer decide."


def weights(asked: Asked) -> Blocks | None:
    """What holds each piece down, or what each bunch pulls, with the reason of the book."""
    made = asked.made
    lines: list[str] = []
    for place, name in named_pieces(asked.book, asked.now):
        figure = made.figure("weight_each", place) or made.figure("ballast", place)
        if figure is None:
            told = "no weight is worked out; it is tied to what it lies on or hangs from"
        else:
            told = f"{_each(asked, figure)} each. {capital(figure.why)}"
        lines += paragraph(f"- {name}: {told}.", asked.width, "  ")
    return [lines, paragraph(DEFER, asked.width)] if lines else None


def lasting(asked: Asked) -> Blocks | None:
    """How long each piece floats, and when the first balloons sink; or how long it looks well on air."""
    lines: list[str] = []
    for place, name in named_pieces(asked.book, asked.now):
        for figure in _lasts(asked, place):
            told = f"{_each(asked, figure)}. {capital(figure.why)}"
            row = paragraph(f"- {name}: {told}.", asked.width, "  ")
            lines += row if "\n".join(row) not in "\n".join(lines) else []
    last = "Heat, sun and rough handling shorten it; no one can promise it."
    return [lines, paragraph(last, asked.width)] if lines else None


def gas(asked: Asked) -> Blocks | None:
    """The helium to order and the cylinders that hold it; whether so many are enough."""
    order, cylinders = asked.made.figure("helium_to_order"), asked.made.figure("cylinders")
    if order is None or cylinders is None:
        return None
    if not order.value:
        return [paragraph('Nothing is filled with helium, so no gas is needed. Say "with helium".', asked.width)]
    said = [q.value for q in read_quantities(asked.reading.text) if q.kind == "number"]
    verdict = ""
    if said and not isinstance(cylinders.value, str | bool):
        enough = said[0] >= cylinders.value
        verdict = "Yes. " if enough != ("more than" in asked.reading.text.lower()) else "No. "
    head = f"{verdict}{_each(asked, order)} of helium to order: {worth(cylinders)} cylinder"
    head += "s." if cylinders.value != 1 else "."
    care = "Never breathe it in; a cylinder stands chained, upright and where there is air."
    return [
        paragraph(head, asked.width),
        paragraph(f"{capital(cylinders.why)}.", asked.width),
        paragraph(care, asked.width),
    ]


def _lasts(asked: Asked, place: int) -> Iterator[Figure]:
    floats, sinks = asked.made.figure("float_time", place), asked.made.figure("sure_float", place)
    if floats is not None and sinks is not None and floats.value:
        yield from (floats, sinks)
        return
    life = asked.made.figure("life", place)
    if life is not None:
        yield life


def _each(asked: Asked, figure: Figure) -> str:
    """A figure with its range: "2.9 oz (2.4 to 3.4 oz)"."""
    metric = asked.made.metric
    ends = f" ({span(figure, metric=metric)})" if figure.low != figure.high else ""
    return f"{worth(figure, metric=metric)}{ends}"
