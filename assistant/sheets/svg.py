"""A view as SVG: to scale, in the colours of its shapes, with no script, no outside reference and no text unescaped."""

from html import escape

from assistant.sheets.colours import BLACK, WHITE, edge, mixed
from assistant.sheets.shapes import Label, Patch, Round, Shape, Stroke, View
from assistant.speech import spoken

SHINY = frozenset({"balloon", "foil"})
PER_LABEL = 30  # labels are this part of the width high, so that they can be read on a phone


def svg(view: View, name: str, ids: str = "v") -> str:
    """The view as one <svg> element, inches as user units.

    name: what it shows, for those who cannot see it; ids: a prefix that no other drawing of the page has.
    """
    left, _, _, top = view.box
    colours = sorted({s.colour for s in view.shapes if isinstance(s, Round) and s.role in SHINY})
    shades = {colour: f"{ids}-{place}" for place, colour in enumerate(colours)}
    size = max(view.width, view.height) / PER_LABEL
    body = "".join(_drawn(shape, shades, size) for shape in view.shapes)
    title = escape(f"{spoken(name)}. {spoken(view.title)}", quote=True)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{_n(left)} {_n(-top)} {_n(view.width)} {_n(view.height)}" '
        f'role="img" aria-label="{title}" preserveAspectRatio="xMidYMid meet"><title>{title}</title>'
        f"<defs>{''.join(_shade(colour, id) for colour, id in shades.items())}</defs>{body}</svg>"
    )


def _shade(colour: str, id: str) -> str:
    """A balloon's light and shade; the ring between them is the colour itself."""
    return (
        f'<radialGradient id="{escape(id, quote=True)}" cx=".36" cy=".32" r=".78">'
        f'<stop offset="0" stop-color="{mixed(colour, WHITE, 0.55)}"/>'
        f'<stop offset=".3" stop-color="{colour}"/><stop offset=".72" stop-color="{colour}"/>'
        f'<stop offset="1" stop-color="{mixed(colour, BLACK, 0.22)}"/></radialGradient>'
    )


def _drawn(shape: Shape, shades: dict[str, str], size: float) -> str:
    if isinstance(shape, Round):
        place = f'cx="{_n(shape.x)}" cy="{_n(-shape.y)}" r="{_n(shape.radius)}"'
        if shape.role in SHINY:
            line = f'stroke="{edge(shape.colour)}" stroke-width="{_n(min(shape.radius * 0.07, 0.35))}"'
            return f'<circle {place} fill="url(#{escape(shades[shape.colour], quote=True)})" {line}/>'
        rim = f' stroke="{edge(shape.colour)}" stroke-width=".25"' if shape.role == "plate" else ""
        return f'<circle {place} fill="{shape.colour}"{rim}/>'
    if isinstance(shape, Patch):
        points = " ".join(f"{_n(x)},{_n(-y)}" for x, y in shape.points)
        rim = f' stroke="{mixed(shape.colour, BLACK, 0.35)}" stroke-width=".3"' if shape.role == "leaf" else ""
        return f'<polygon points="{points}" fill="{shape.colour}"{rim}/>'
    if isinstance(shape, Stroke):
        points = " ".join(f"{_n(x)},{_n(-y)}" for x, y in shape.points)
        return (
            f'<polyline points="{points}" fill="none" stroke="{shape.colour}" stroke-width="{_n(shape.width)}" '
            'stroke-linejoin="round"/>'
        )
    return _words(shape, size)


def _words(label: Label, size: float) -> str:
    place = f'x="{_n(label.x)}" y="{_n(-label.y)}" font-size="{_n(size)}"'
    return f'<text {place} text-anchor="middle" fill="#55524c">{escape(spoken(label.text))}</text>'


def _n(value: float) -> str:
    """A number as short as a hundredth of an inch allows; never "-0"."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
