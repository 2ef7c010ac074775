"""Height, heat and wind: growth, under-filling, push, ballast, lean, and when nothing should go up."""

import pytest

from rules import wind
from rules.engine import Job, Piece, work
from tests.rules.pieces import BOOK

RUNNER = Piece("runner", {"count": 1, "table_length": 72})
COLUMN = Piece("column", {"height": 72})
ARCH = Piece("arch", {"span": 96, "height": 96})
WALL = Piece("wall", {"span": 96, "height": 96})
BOUQUET = Piece("bouquet", {"count": 1, "balloons": 5, "gas": "helium"})


def job_of(piece: Piece, **said):
    return work(BOOK, Job([piece], said))


def cautions(piece: Piece, **said) -> dict[str, str]:
    return {one.id: one.text for one in job_of(piece, **said).cautions()}


def notes(piece: Piece, **said) -> dict[str, str]:
    return {one.id: one.text for one in job_of(piece, **said).notes()}


def test_growth_on_the_way_up() -> None:
    """Six thousand feet: about a quarter in volume, 8 % across; filled there none."""
    estimate = job_of(RUNNER, altitude=6000)
    assert estimate.figure("growth_of_volume").value == pytest.approx(25, abs=0.5)
    assert estimate.figure("growth_across").value == pytest.approx(7.8, abs=0.2)
    assert estimate.figure("fill_to").value == pytest.approx(92.8, abs=0.2)
    assert "up_the_hill" in notes(RUNNER, altitude=6000)
    there = job_of(RUNNER, altitude=6000, filled_on_site=True)
    assert there.figure("growth_of_volume").value == 0
    assert "filled_at_height" in notes(RUNNER, altitude=6000, filled_on_site=True)
    assert notes(RUNNER, altitude=300).keys() == notes(RUNNER).keys()


@pytest.mark.parametrize(("degrees", "factor"), [(32, 0.929), (100, 1.057), (110, 1.076), (130, 1.113)])
def test_growth_by_heat(degrees: float, factor: float) -> None:
    """The ideal gas law from 70 degrees F: absolute temperatures in proportion."""
    assert job_of(RUNNER, temperature=degrees).figure("growth").value == pytest.approx(factor, abs=0.001)
    assert job_of(RUNNER, temperature=degrees).figure("growth").value == pytest.approx((degrees + 459.67) / 529.67)


def test_heat_and_cold_are_named() -> None:
    assert {"heat", "closed_car"} <= cautions(ARCH, temperature=95).keys()
    assert "cold" in cautions(ARCH, temperature=45)
    assert not {"heat", "cold", "sun", "closed_car"} & cautions(ARCH, temperature=70).keys()
    assert "sun" in cautions(ARCH, outdoors=True)


@pytest.mark.parametrize(("mph", "pounds"), [(10, 9), (15, 21), (20, 37), (25, 58)])
def test_what_holds_a_column(mph: float, pounds: float) -> None:
    """A column 6 ft by 22 in on a 22 in base, drag 1.0, no safety factor (statics)."""
    push = wind.drag_lb(6 * 22 / 12, 1.0, mph)
    holds = wind.ballast_lb(wind.overturning_moment(push, 3.0), 11 / 12)
    assert holds == pytest.approx(pounds, abs=0.5)
    column = Piece("column", {"height": 72, "base_depth": 22, "sizes": [11]})
    figure = work(BOOK, Job([column], {"wind": mph})).figure("ballast", 0)
    across = work(BOOK, Job([column], {"wind": mph})).figure("outer_width", 0).value
    assert figure.value == pytest.approx(max(1.5 * holds * across / 22, 10))
    assert figure.low <= figure.value <= figure.high


def test_indoors_a_little_holds() -> None:
    for piece, low, high in ((COLUMN, 5, 15), (ARCH, 10, 30), (WALL, 15, 40)):
        figure = job_of(piece).figure("ballast", 0)
        assert (figure.low, figure.high) == (low, high)


@pytest.mark.parametrize("piece", [COLUMN, ARCH, WALL])
def test_more_wind_more_ballast_and_a_limit(piece: Piece) -> None:
    weights = [job_of(piece, wind=mph).figure("ballast", 0).value for mph in (8, 12, 16, 20)]
    assert weights == sorted(weights)
    assert weights[-1] > 2 * weights[0]
    assert "wind_ballast" in cautions(piece, wind=12)
    assert "too_windy" not in cautions(piece, wind=12)
    above = cautions(piece, wind=26)
    assert "do not put it up" in above["too_windy"]
    assert "wind_ballast" not in above


@pytest.mark.parametrize("piece", [COLUMN, ARCH, WALL, RUNNER, BOUQUET])
@pytest.mark.parametrize("mph", [None, 5, 18, 40])
def test_wind_never_gives_leave(piece: Piece, mph: float | None) -> None:
    said = {"outdoors": True} if mph is None else {"outdoors": True, "wind": mph}
    texts = [text for text in cautions(piece, **said).values() if text.startswith(("Wind:", "Too windy:"))]
    assert texts
    for text in texts:
        assert "venue" in text
        assert "safe" not in text


def test_care_ends_at_fifteen_miles_an_hour() -> None:
    assert "gusty" not in cautions(ARCH, wind=15)
    assert "gusty" in cautions(ARCH, wind=18)
    assert "gusty" not in cautions(ARCH, wind=25)


def test_wind_by_its_force() -> None:
    estimate = job_of(COLUMN, wind_force=4)
    assert estimate.figure("wind").value == pytest.approx(18)
    assert estimate.figure("beaufort").value == 4
    assert estimate.figure("wind_name").value == "moderate_breeze"
    assert "too_windy" in cautions(COLUMN, wind_force=6)


def test_lean_of_a_floating_balloon() -> None:
    """With 9 g of lift to spare an 11 in balloon leans 45 degrees at 5 mph, 76 at 10 (drag on a ball)."""
    for mph, degrees in ((5, 45), (10, 76)):
        figure = job_of(BOUQUET, wind=mph).figure("lean", 0)
        assert figure.unit == "degree"
        assert figure.value == pytest.approx(degrees, abs=4)
    assert "leaning_bunch" in cautions(BOUQUET, wind=5)


def test_sprinklers_and_ladders() -> None:
    assert "under_the_sprinklers" in cautions(ARCH, ceiling_height=9)
    assert "under_the_sprinklers" not in cautions(ARCH, ceiling_height=14)
    assert "ladders_for_tall_pieces" in cautions(ARCH)
    assert "ladders_for_tall_pieces" not in cautions(COLUMN)


def test_ways_are_kept_as_wide_as_the_codes_ask() -> None:
    """ADA 403.5 and 404.2.3: 36 in along a route, 32 in through a door; 307.4: 80 in of headroom."""
    assert "36 in" in cautions(COLUMN)["keep_ways_clear"]
    assert "32 in" in cautions(BOUQUET)["keep_ways_clear"]
    assert job_of(ARCH).figure("headroom_least").value == 80


def test_higher_up_helium_lifts_less() -> None:
    """Density ratio of the standard atmosphere at 1,609 m is 0.8544."""
    lost = job_of(BOUQUET, altitude=5280).figure("lift_lost_by_height").value
    assert lost == pytest.approx(100 - 85.44, abs=3.2)
    assert "less_lift" in notes(BOUQUET, altitude=5280)
