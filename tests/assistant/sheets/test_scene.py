"""Pictures are to scale, hold the balloons that the estimate counts, and fit in their views."""

import math

import pytest

from assistant.sheets.colours import contrast, edge, ink, letters, value_of
from assistant.sheets.curves import Curve, catenary, ellipse, loops, parabola, ring, round_top
from assistant.sheets.placing import on_line
from assistant.sheets.scene import scene_of
from assistant.sheets.shapes import Round, View, bounds
from rules import load_book
from rules.curves import catenary_swag, half_ellipse, parabola_arch, round_top_arch
from tests.assistant.sheets.demo_jobs import made

SAID = {
    "runner": "a 6 ft table, full drop, 30 in wide, navy, gold and white",
    "round": "two 60 inch round tables, full length, sage and ivory",
    "edge": "a 60 inch round table, around the edge, red and white",
    "one end": "a 6 ft table, drop at one end, navy",
    "arch": "an arch 8 ft wide and 7 ft high, dusty rose and ivory, with greenery",
    "column": "two columns 6 ft high in red and white",
    "wall": "a wall 8 by 8 ft in blush and gold",
    "hoop": "a 5 ft hoop, 60 % covered, teal and white",
    "swag": "a 12 ft swag with three loops in lilac",
    "garland": "a 10 ft garland in red and gold",
    "bouquet": "ten bouquets of five in red and silver",
    "centerpiece": "six centrepieces in black and gold",
    "drop": "a drop of 500 balloons in white and gold",
}


def balloons(view: View) -> list[Round]:
    return [shape for shape in view.shapes if isinstance(shape, Round) and shape.role == "balloon"]


def views(name: str) -> list[View]:
    scene = scene_of(made(SAID[name]), 0)
    assert scene is not None
    return scene.views


@pytest.mark.parametrize("name", SAID)
def test_every_kind_has_a_picture_that_fits_its_view(name: str) -> None:
    for view in views(name):
        assert balloons(view)
        left, bottom, right, top = bounds(view.shapes)
        assert view.box[0] <= left + 1
        assert view.box[1] <= bottom + 1
        assert view.box[2] >= right - 1
        assert view.box[3] >= top - 1


@pytest.mark.parametrize("name", ["runner", "arch", "hoop", "swag", "garland", "wall", "bouquet", "centerpiece"])
def test_as_many_balloons_as_the_estimate_counts(name: str) -> None:
    each = made(SAID[name]).figure("balloons_each", 0)
    assert each is not None
    assert len(balloons(views(name)[-1])) == each.value


def test_the_runner_lies_on_a_table_of_the_said_size_and_falls_to_the_floor() -> None:
    above, beside = views("runner")
    cloth = next(shape for shape in above.shapes if getattr(shape, "role", "") == "cloth")
    assert bounds([cloth]) == (-36, -15, 36, 15)
    lowest = min(ball.y - ball.radius for ball in balloons(beside))
    assert -1.5 < lowest < 2
    reach = max(ball.x for ball in balloons(beside)) - 36
    assert 18 < reach < 18 + 13  # what settles, and half the runner's thickness


def test_one_end_that_stays_has_no_drop() -> None:
    found = balloons(views("one end")[1])
    assert min(ball.x for ball in found) > -36 - 7
    assert max(ball.x for ball in found) > 36 + 15
    assert min(ball.y for ball in found if ball.x < 0) > 28


def test_plates_are_as_many_as_sit_there() -> None:
    scene = scene_of(made("a 60 inch round table that seats eight, full length, red"), 0)
    assert scene is not None
    assert sum(getattr(shape, "role", "") == "plate" for shape in scene.views[0].shapes) == 8


def test_an_arch_is_as_wide_and_high_as_its_figures_say() -> None:
    estimate = made("an arch 8 ft wide and 7 ft high, ivory")
    (view,) = (scene_of(estimate, 0) or pytest.fail("no picture")).views
    left, _, right, top = bounds(balloons(view))
    for seen, id in ((right - left, "width_overall"), (top, "height_overall")):
        figure = estimate.figure(id, 0)
        assert figure is not None
        assert seen == pytest.approx(float(figure.value), abs=6)


def test_the_picture_is_the_plan() -> None:
    estimate = made(SAID["runner"])
    counts: dict[str | None, int] = {}
    for placed in on_line(estimate, 0):
        counts[placed.colour] = counts.get(placed.colour, 0) + 1
    assert counts == {"navy": 84, "gold": 84, "white": 84}


@pytest.mark.parametrize(
    ("curve", "length"),
    [
        (ellipse(96, 84), half_ellipse(96, 84)),
        (parabola(96, 84), parabola_arch(96, 84)),
        (round_top(96, 84), round_top_arch(96, 84)),
        (catenary(144, -29), catenary_swag(144, 29)),
        (loops(144, 12, 3, 0, 90), 3 * catenary_swag(48, 12)),
        (ring(60), math.pi * 60),
    ],
)
def test_lines_are_as_long_as_the_geometry_says(curve: Curve, length: float) -> None:
    assert curve.length == pytest.approx(length, rel=1e-3)
    assert curve.part(0.5).length == pytest.approx(length / 2, rel=1e-3)


def test_a_point_of_a_line_and_its_left() -> None:
    point, left = Curve([(0, 0), (10, 0), (10, 10)]).at(15)
    assert point == pytest.approx((10, 5))
    assert left == pytest.approx((-1, 0))


def test_colours_by_name_by_value_and_mixed_of_words() -> None:
    book = load_book()
    assert value_of(book, "navy") == "#000080"
    assert value_of(book, "Dusty  Rose") == "#c99aa0"
    assert value_of(book, "light blue") == "#add8e6"
    assert value_of(book, "#1af") == "#11aaff"
    assert value_of(book, "pale burgundy") not in (None, value_of(book, "burgundy"))
    assert value_of(book, "unheard-of") is None


def test_every_colour_of_the_book_is_seen_on_paper_and_carries_a_readable_letter() -> None:
    for palette in load_book().others["palette"].values():
        for name, value in palette["names"].items():
            assert contrast(edge(value), "#ffffff") >= 3, name
            assert contrast(ink(value), value) >= 4.5, name


def test_each_colour_has_a_letter_of_its_own() -> None:
    found = list(letters(["white", "wine", "WHITE", "金", *["red"] * 40]))
    assert found[0] == "W"
    assert len({letter for letter in found if letter != "?"}) == sum(letter != "?" for letter in found)


def test_without_colours_nothing_is_promised() -> None:
    scene = scene_of(made("a 10 ft garland"), 0)
    assert scene is not None
    assert [swatch.name for swatch in scene.key] == [None]
    assert "No colours yet" in scene.notes[0]
