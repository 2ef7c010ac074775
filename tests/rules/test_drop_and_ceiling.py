"""Ceiling drops and ceilings of loose balloons, by number and by area (common practice, no published source)."""

import pytest

from rules.buying import shopping
from rules.engine import Job, Piece, work
from tests.rules.pieces import BOOK


def estimate_of(kind: str, job: dict | None = None, **said):
    return work(BOOK, Job([Piece(kind, said)], job or {}))


def figure(kind: str, id: str, piece: int | None = 0, job: dict | None = None, **said):
    return estimate_of(kind, job, **said).figure(id, piece)


@pytest.mark.parametrize("kind", ["drop", "ceiling"])
@pytest.mark.parametrize("said", [{"balloons": 500}, {"length": 480, "span": 360}])
def test_a_number_or_an_area_is_enough(kind: str, said: dict) -> None:
    estimate = estimate_of(kind, **said)
    assert estimate.missing(0) == []
    for id in ("balloons_all", "balloons_to_buy", "hours_hands_on", "load_volume", "materials_cost", "price"):
        found = estimate.figure(id)
        assert 0 < found.low <= found.value <= found.high
    assert sum(row.need for row in shopping(estimate)) == estimate.figure("balloons", 0).value
    assert estimate_of(kind).missing(0) == ["length", "span"]


def test_net_for_five_hundred() -> None:
    """500 balloons of 9 in at 0.64: 172.6 cu ft, which is 2.90 to the cubic foot."""
    net = figure("drop", "net_volume", balloons=500)
    assert net.value == pytest.approx(172.6, abs=0.1)
    assert net.low < net.value < net.high <= 2 * net.low
    assert 500 / net.value == pytest.approx(2.90, abs=0.005)


@pytest.mark.parametrize(("size", "to_the_foot"), [(5, 16.9), (9, 2.90), (11, 1.59)])
def test_net_by_size(size: float, to_the_foot: float) -> None:
    net = figure("drop", "net_volume", balloons=1000, sizes=[size])
    assert 1000 / net.value == pytest.approx(to_the_foot, rel=0.005)


def test_a_drop_said_is_the_number_in_all() -> None:
    estimate = estimate_of("drop", count=2, balloons=1000)
    assert estimate.figure("balloons", 0).value == 1000
    assert estimate.figure("balloons_each", 0).value == 500
    assert estimate.figure("volume_of_piece", 0).value == pytest.approx(2 * estimate.figure("net_volume", 0).value)


def test_hours_of_a_drop_of_seven_hundred() -> None:
    """700 in a rig of 30 ft, 70 % blown before: three hours for one person at the venue (common practice)."""
    estimate = estimate_of("drop", balloons=700)
    at_the_venue = estimate.figure("hours_of_piece", 0).value - 0.7 * estimate.figure("hours_inflating", 0).value
    assert at_the_venue == pytest.approx(3, rel=0.05)


def test_a_drop_warns() -> None:
    ids = [said.id for said in estimate_of("drop", balloons=500).cautions()]
    for id in ("rigging_overhead", "balloons_underfoot", "keep_exits_clear", "sprinklers_overhead", "ladders"):
        assert id in ids


@pytest.mark.parametrize(
    ("cover", "a_square_metre"), [("unsaid", 7), ("fair", 5), ("good", 7), ("blanket", 10), ("blanket", 10.76)]
)
def test_ceiling_by_cover(cover: str, a_square_metre: float) -> None:
    """5, 7 and 10 for each square metre: fair, good, a blanket; others say one a square foot for a full one."""
    balloons = figure("ceiling", "balloons", length=984.25, span=236.22, cover=cover)  # 25 m by 6 m
    assert balloons.low <= 150 * a_square_metre <= balloons.high


def test_a_ceiling_twenty_by_twenty() -> None:
    balloons = figure("ceiling", "balloons", length=240, span=240)
    assert balloons.low <= 200 <= 260 <= 400 <= balloons.high
    assert balloons.high <= 2.1 * balloons.low


def test_bigger_balloons_go_further() -> None:
    eleven = figure("ceiling", "balloons", length=480, span=480).value
    sixteen = figure("ceiling", "balloons", length=480, span=480, sizes=[16]).value
    assert sixteen / eleven == pytest.approx((11 / 16) ** 2, rel=0.01)


def test_hours_of_a_ceiling_of_a_thousand() -> None:
    """Two people in under three hours: 167 an hour each (common practice)."""
    hours = figure("ceiling", "hours_of_piece", balloons=1000)
    assert hours.low <= 6 <= hours.high


def test_lift_of_a_ceiling_of_a_thousand() -> None:
    """1,000 balloons of 11 in lift about 22 lb (common practice: 0.35 oz each)."""
    lift = figure("ceiling", "net_lift", balloons=1000)
    assert lift.low <= 0.35 * 28.35 <= lift.high


def test_loose_air_does_not_rise() -> None:
    assert [clash.id for clash in estimate_of("ceiling", balloons=100, gas="air").clashes()] == ["air_stays_down"]
    assert estimate_of("ceiling", balloons=100).clashes() == []


def test_a_part_of_the_ceiling() -> None:
    whole = figure("ceiling", "area", length=240, span=240).value
    assert figure("ceiling", "area", length=240, span=240, coverage="two_thirds").value == pytest.approx(whole * 2 / 3)
    assert figure("ceiling", "area", length=240, span=240, coverage_fraction=0.5).value == pytest.approx(whole / 2)
