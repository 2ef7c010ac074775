"""Steps add up to the hands-on hours; the clock never beats hands, pumps or the one who packs the line."""

import pytest

from rules.crew import AFTER, VENUE, Task, clock_of, clock_time, tasks_of
from rules.engine import Job, Piece, work
from rules.timetable import DAY, Needs, back_from
from tests.rules.pieces import BOOK

TABLES = Piece("runner", {"count": 8, "table_length": 72, "coverage": "drop_both", "foliage": True})
PIECES = [
    TABLES,
    Piece("garland", {"length": 180}),
    Piece("arch", {"span": 96, "height": 84}),
    Piece("column", {"height": 72}),
    Piece("wall", {"span": 96, "height": 96}),
    Piece("bouquet", {"count": 5, "balloons_in_each": 6, "gas": "helium"}),
    Piece("drop", {"balloons": 300}),
]


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: piece.kind)
def test_the_steps_add_up_to_the_hands(piece: Piece) -> None:
    estimate = work(BOOK, Job([piece], {}))
    hours = estimate.figure("hours_hands_on")
    tasks = tasks_of(estimate)
    assert hours is not None
    assert sum(task.hours for task in tasks if task.place != AFTER) == pytest.approx(hours.value)
    assert all(task.hours > 0 for task in tasks)


def test_helium_is_filled_at_the_venue() -> None:
    tasks = tasks_of(work(BOOK, Job([PIECES[5]], {})))
    assert {task.place for task in tasks if task.name == "inflate and tie"} == {VENUE}


def test_every_step_of_a_runner_has_its_name() -> None:
    names = [task.name for task in tasks_of(work(BOOK, Job([TABLES], {})))]
    wanted = ["sort", "inflate and tie", "pair and quad", "string", "fill", "foliage", "install", "take down"]
    assert names == wanted


def test_hands_do_not_help_past_the_one_pump() -> None:
    tasks = [Task("inflate and tie", 6, "workshop", "pump"), Task("fill", 2, "workshop")]
    assert clock_time(tasks, 1).hours == 8
    assert clock_time(tasks, 2).hours == 6
    assert clock_time(tasks, 2).held_by == "pump"
    assert clock_time(tasks, 8).hours == clock_time(tasks, 2).hours
    assert clock_time(tasks, 2, inflators=2).hours == 4
    assert clock_time([Task("string", 5, "workshop", "packer")], 3).held_by == "packer"


def test_helpers_cost_a_little_and_rest_counts() -> None:
    tasks = [Task("fill", 10, "workshop")]
    assert clock_time(tasks, 2, loss=0.1).hours == pytest.approx(5.5)
    assert clock_time(tasks, 1, pauses=0.1).hours == pytest.approx(11)
    with pytest.raises(ValueError, match="one person"):
        clock_time(tasks, 0)


def test_skill_moves_the_hours_and_crew_the_clock() -> None:
    plain, slow, quick = (work(BOOK, Job([TABLES], said)) for said in ({}, {"beginners": True}, {"experts": True}))
    hours = [made.figure("hours_hands_on").value for made in (quick, plain, slow)]
    assert hours == sorted(hours)
    assert hours[2] > 2 * hours[1]
    crews = [work(BOOK, Job([TABLES], {"crew": crew})) for crew in (1, 2, 4)]
    clocks = [clock_of(tasks_of(made), made).hours for made in crews]
    assert clocks[0] > clocks[1] > clocks[2] > clocks[0] / 4


def times(**changes: int) -> Needs:
    plain = {"event": 18 * 60, "ready_before": 60, "install": 90, "unload": 15, "drive": 40, "load": 20, "build": 240}
    return Needs(**{**plain, **changes})


def test_back_from_the_party() -> None:
    day = back_from(times(opens=13 * 60))
    assert (day.ready, day.install, day.arrive, day.leave, day.load) == (1020, 930, 915, 875, 855)
    assert day.build_days == ((0, 615, 855),)
    assert (day.start, day.short, day.spare) == (615, 0, 135)


def test_a_late_door_is_told_in_minutes() -> None:
    day = back_from(times(opens=16 * 60))
    assert (day.short, day.spare) == (45, 0)


def test_a_party_past_midnight_begins_the_day_before() -> None:
    day = back_from(times(event=30, build=60))
    assert day.ready == -30
    assert day.arrive == -135
    assert day.build_days[0][0] == -1
    assert back_from(times(event=60, opens=22 * 60)).spare == max(0, -105 + 120)


def test_long_building_spreads_over_days_none_longer_than_a_working_day() -> None:
    day = back_from(times(build=25 * 60))
    assert sum(last - first for _, first, last in day.build_days) == 25 * 60
    assert all(last - first <= 8 * 60 for _, first, last in day.build_days)
    assert all(first % DAY >= 8 * 60 for _, first, _ in day.build_days)
    assert [place for place, _, _ in day.build_days] == sorted(place for place, _, _ in day.build_days)
