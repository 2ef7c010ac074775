"""Bouquets, centrepieces and drops: balloons on ribbons or a stand, over a table or the floor, and a net overhead."""

import math

from assistant.sheets import props
from assistant.sheets.placing import by_diameter, deal
from assistant.sheets.shapes import Patch, Round, Shape, Stroke, View, box
from assistant.sheets.strung import Paint
from assistant.sheets.wanted import number, tall, value, yardstick
from rules import Estimate

IN_A_LAYER = 3
WEIGHT = 3.0  # how wide the weight or base is drawn, in


def bunch_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """One bouquet on the floor, or one centrepiece on its table, beside a person."""
    sizes = by_diameter(estimate, piece)
    if not sizes:
        return None
    on_table = estimate.job.pieces[piece].kind == "centerpiece"
    base = yardstick(estimate, "table_top") if on_table else 0.0
    person = yardstick(estimate, "person")
    across = yardstick(estimate, "table_for_centrepiece") if on_table else 0.0
    balloons = _bunch(estimate, piece, base, paint)
    half = max([across / 2, *(abs(b.x) + b.radius for b in balloons)])
    stands = number(estimate, piece, "stands") > 0 and value(estimate, piece, "gas") != "helium"
    back: list[Shape] = props.table_foot(0, across, base) if on_table else []
    back += _held(balloons, base, stands)
    x = half + 12 + person * 0.18
    ends = -half - 8, x + person * 0.18 + 4
    top = max(*(b.y + b.radius for b in balloons), person) + 4
    shapes = [props.floor(*ends), *props.person(x, person), *back, *balloons]
    return View(f"From the side; the person is {tall(estimate)}", (ends[0], -3, ends[1], top), shapes)


def _bunch(estimate: Estimate, piece: int, base: float, paint: Paint) -> list[Round]:
    """Balloons in layers of three from the top of the ribbon or stand up to the height that the estimate gives."""
    diameters = [d for d, n in by_diameter(estimate, piece) for _ in range(n)]
    low, high = base + number(estimate, piece, "clear_under"), base + number(estimate, piece, "top_height")
    largest = diameters[0]
    layers = [
        list(range(start, min(start + IN_A_LAYER, len(diameters)))) for start in range(0, len(diameters), IN_A_LAYER)
    ]
    room = max(high - low - largest, 0.0)
    spots: list[tuple[float, float, float]] = []
    for level, layer in enumerate(layers):
        y = low + largest / 2 + (room * level / (len(layers) - 1) if len(layers) > 1 else 0.0)
        for place, index in sorted(enumerate(layer), key=lambda pair: pair[0] == 1):  # the middle one is in front
            spread = (place - (len(layer) - 1) / 2) * largest * 0.62
            turned = (largest * 0.18 if level % 2 else 0.0) if len(layer) < IN_A_LAYER else 0.0
            down = largest * 0.16 if len(layer) == IN_A_LAYER and place == 1 else 0.0
            spots.append((spread + turned, y - down, diameters[index]))
    colours = deal(estimate, piece, spots)
    return [Round(x, y, d / 2, paint(colour)) for (x, y, d), colour in zip(spots, colours, strict=True)]


def _held(balloons: list[Round], base: float, stands: bool) -> list[Shape]:
    """A stand with a foot, or a ribbon from each balloon to a weight."""
    lowest = min(b.y - b.radius for b in balloons)
    weight = Patch(box(-WEIGHT / 2, base, WEIGHT / 2, base + WEIGHT), props.STAND, "weight")
    if stands:
        foot = Stroke(((-4, base + 0.6), (4, base + 0.6)), props.STAND, 1.2, "base")
        return [Stroke(((0, base), (0, lowest + 2)), props.STAND, 1.0, "stand"), foot]
    ribbons = [Stroke(((0, base + WEIGHT), (b.x, b.y - b.radius)), props.RIBBON, 0.35, "ribbon") for b in balloons]
    return [*ribbons, weight]


def drop_view(estimate: Estimate, piece: int, paint: Paint) -> View | None:
    """The net under the ceiling, as long and deep as the estimate makes it, over a person."""
    sizes = by_diameter(estimate, piece)
    long, deep = number(estimate, piece, "net_length"), number(estimate, piece, "net_across")
    if not sizes or long <= 0 or deep <= 0:
        return None
    room, person = number(estimate, None, "drop_height"), yardstick(estimate, "person")
    diameter = sizes[0][0]
    top = room - 6
    columns, rows = max(int(long / diameter), 1), max(int(deep / diameter), 1)
    shapes: list[Shape] = [
        props.floor(-long / 2 - 20, long / 2 + 20),
        props.ceiling(-long / 2 - 20, long / 2 + 20, room),
    ]
    for n in range(4):
        x = long * (n / 3 - 0.5)
        shapes.append(Stroke(((x, top), (x, room)), props.RIBBON, 1.0, "string"))
    most = sum(count for _, count in sizes)  # no more are drawn than there are
    spots = [
        (((column + 0.5 + (0.25 if row % 2 else -0.25)) / columns - 0.5) * (long - diameter / 2),
         top - (row + 0.5) / rows * deep, diameter)
        for row in range(rows) for column in range(columns)
    ][:most]  # fmt: skip
    for (x, y, d), colour in zip(spots, deal(estimate, piece, spots), strict=True):
        shapes.append(Round(x, y, d / 2, paint(colour)))
    shapes.append(_net(long, deep, top))
    shapes += props.person(0, person)
    return View(f"In its net; the person is {tall(estimate)}", (-long / 2 - 20, -3, long / 2 + 20, room + 4), shapes)


def _net(long: float, deep: float, top: float) -> Stroke:
    outline = [
        (math.copysign(abs(math.cos(t)) ** 0.4, math.cos(t)) * long / 2, top - deep / 2 + math.sin(t) * deep / 2)
        for t in (n * math.pi / 24 for n in range(49))
    ]
    return Stroke(tuple(outline), props.STAND, 0.8, "net")
