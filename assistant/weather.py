"""Outdoors: a verdict with conditions for wind, heat, sun and height.  Never permission: others have the last word."""

import re

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.naming import asks, named_pieces
from assistant.state import State
from assistant.telling import worth
from assistant.trying import tried, value, with_pieces
from rules import Estimate

STANDING = ("arch", "column", "wall")
HOT_F, COLD_F, CARE_MPH = 84, 50, 15
WINDY = re.compile(r"\bwind|\bgust|\bbreez|\bblow|\bmph\b|\bknots\b")
DEFER = "The venue, local codes and, for what stands, a licensed engineer have the last word."
LAST = "The venue and local codes have the last word."


def weather(asked: Asked) -> Blocks | None:
    """The verdict for what was asked: height above the sea, wind, or being outdoors as such."""
    if not asked.now.pieces:
        return None
    if asks(asked, "altitude", "elevation", "feet up", "above sea") or (
        "altitude" in asked.reading.job and not WINDY.search(asked.reading.text.lower())
    ):
        return _height(asked)
    made = _outside(asked)
    if WINDY.search(asked.reading.text.lower()) or "wind" in asked.reading.job:
        return _wind(asked, made)
    return _outdoors(asked, made)


def _outside(asked: Asked) -> Estimate:
    """The job taken outdoors, whatever was said, since that is what is asked."""
    state: State = with_pieces(asked.now, asked.now.pieces, outdoors=True)
    return tried(asked.book, state)


def _outdoors(asked: Asked, made: Estimate) -> Blocks:
    """Sun, heat, wind, rain and ground, with the conditions under which it may go."""
    wind, limit, heat = value(made, "wind"), value(made, "wind_limit") or 0, value(made, "venue_temperature") or 0
    said_heat = "temperature" in asked.now.job
    verdict = "Yes, with conditions; some hours to a day, no promise of life."
    if wind is not None and wind > limit:
        verdict = f"No: {_told(made, 'wind')} is above the limit of {_told(made, 'wind_limit')}. Indoors."
    elif said_heat and heat >= HOT_F:
        verdict = f"Only in shade, put out late: at {_told(made, 'temperature')} they swell and pop, in sun in an hour."
    elif said_heat and heat <= COLD_F:
        verdict = "Yes, but they shrink and look limp in the cold; filled on the warm side."
    risks = ["sun and heat: shade, light colours, filled 10 to 20 % under, built late"]
    risks.append(f"wind: {_held(asked, made)}, nothing up above {_told(made, 'wind_limit')} in gusts")
    risks.append("rain and rough ground: sheets, a swept floor, an indoor place ready")
    if _floating(made):
        risks.append("helium: best not outdoors; it leans, tangles and leaks faster; air on stands instead")
    lines = [line for risk in risks for line in paragraph(f"- {risk}", asked.width, "  ")]
    return [paragraph(verdict, asked.width), lines, paragraph(_last(asked), asked.width)]


def _wind(asked: Asked, made: Estimate) -> Blocks:
    """Whether the wind is too much, what holds the piece down, the limit, and the way indoors."""
    wind, limit = value(made, "wind"), value(made, "wind_limit") or 0
    planned = _told(made, "wind_planned")
    if wind is None:
        head = f"How much? I took gusts of {planned}: up with ballast and ties."
    elif wind > limit:
        head = f"No: {planned} is too much; above {_told(made, 'wind_limit')} nothing goes up. Take it indoors."
    elif wind > CARE_MPH:
        head = (
            f"Better not: {planned} is past {CARE_MPH} mph, where care ends. More anchors and someone by, or indoors."
        )
    else:
        head = f"Yes at {planned}, {_told(made, 'wind_name')}, if it is held down."
    lines = [line for text in _holds(asked, made) for line in paragraph(f"- {text}", asked.width, "  ")]
    limits = f"Limit {_told(made, 'wind_limit')}, from memory; have an indoor place ready."
    tail = f"Gusts count, not the mean. {limits} {_last(asked)}"
    return [paragraph(head, asked.width), lines, paragraph(tail, asked.width)]


def _holds(asked: Asked, made: Estimate) -> list[str]:
    """Each piece with its ballast, or what it is tied to, or how far it leans."""
    found = []
    for place, name in named_pieces(asked.book, asked.now):
        ballast, lean = made.figure("ballast", place), made.figure("lean", place)
        if ballast is not None:
            found.append(f"{name}: {worth(ballast, metric=made.metric)} on the base of each, and tied off as well")
        elif lean is not None and _is_floating(made, place):
            found.append(f"{name}: floating it leans {worth(lean)} and tangles; air on stands instead")
        elif asked.now.pieces[place].kind == "runner":
            found.append(f"{name}: tied to the table at both ends and every 2 ft; ends off the floor")
        else:
            found.append(f"{name}: tied down at close spacing to something that does not move")
    return found


def _held(asked: Asked, made: Estimate) -> str:
    """In a few words what holds the pieces."""
    weights = [
        f"{worth(ballast, metric=made.metric)} on each {asked.now.pieces[place].kind}"
        for place, _ in named_pieces(asked.book, asked.now)
        if (ballast := made.figure("ballast", place)) is not None
    ]
    return f"{listed(weights)} at {_told(made, 'wind_planned')}, and ties" if weights else "tied down at close spacing"


def _height(asked: Asked) -> Blocks:
    """What height does to what is filled below, and how to avoid it."""
    made = asked.made
    if value(made, "altitude") is None:
        return [paragraph("How high is the venue? Say it in feet or metres above the sea.", asked.width)]
    up = _told(made, "altitude")
    if value(made, "filled_on_site"):
        return [paragraph(f"Filled up there, at {up}, they do not grow; size them there with a sizer.", asked.width)]
    head = (
        f"Yes: filled low and driven up to {up} they grow {_told(made, 'growth_of_volume')} in volume, "
        f"{_told(made, 'growth_across')} across. Filled there they do not."
    )
    what = f"So fill to {_told(made, 'fill_to')} of the size, or inflate up there with a sizer."
    lift = made.figure("lift_lost_by_height")
    gas = (
        f"Helium lifts {worth(lift)} less there; foil, which cannot stretch, is left slack."
        if _floating(made) and lift
        else ""
    )
    why = "By the ideal gas law and the U.S. Standard Atmosphere, 1976, from where you fill: "
    return [
        paragraph(head, asked.width),
        paragraph(f"{what} {gas}".strip(), asked.width),
        paragraph(f"{why}{_told(made, 'workshop_altitude')} taken; say yours.", asked.width),
    ]


def _told(made: Estimate, id: str) -> str:
    figure = made.figure(id)
    return worth(figure, metric=made.metric) if figure is not None else "an unknown number"


def _is_floating(made: Estimate, place: int) -> bool:
    step = made.step("gas", place)
    return step is not None and step.value == "helium"


def _floating(made: Estimate) -> bool:
    return any(_is_floating(made, place) for place in range(len(made.job.pieces)))


def _last(asked: Asked) -> str:
    return DEFER if any(piece.kind in STANDING for piece in asked.now.pieces) else LAST
