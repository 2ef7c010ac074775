"""Vehicles' room against what is published of them."""

import pytest

from assistant.load import vehicle_named, vehicles
from tests.rules.pieces import BOOK


@pytest.mark.parametrize(
    ("words", "published"),
    [
        ("10 ft truck", (400, 402)),
        ("16 ft truck", (760, 800)),
        ("26 ft truck", (1400, 1411, 1600, 1680)),
    ],
)
def test_hired_trucks(words: str, published: tuple[int, ...]) -> None:
    """Size guides for hired box trucks: about 402 cu ft at 10 ft, 760 to 800 at 15 to 16, 1,400 to 1,680 at 26."""
    vehicle = vehicle_named(BOOK, f"will it fit in a {words}")
    assert vehicle is not None
    assert all(vehicle.low <= room <= vehicle.high for room in published)


def test_a_minivan_full_of_balloons() -> None:
    """122 balloons of 12 in and 2 of 36 in filled a minivan: balls over 0.64 (random close packing)."""
    balls = 122 * 3.14159265 / 6 + 2 * 3.14159265 / 6 * 27
    vehicle = vehicle_named(BOOK, "minivan")
    assert vehicle is not None
    assert balls / 0.64 == pytest.approx(vehicle.typical, rel=0.02)


def test_a_car_is_less_than_its_class() -> None:
    """EPA size classes: passengers and load of a mid-size car together are 110 to 119 cu ft."""
    rooms = {vehicle.name: vehicle for vehicle, _ in vehicles(BOOK)}
    assert rooms["a car's boot"].high < 110
    assert rooms["a hatchback, seats down"].high < 130


def test_words_name_one_vehicle_and_the_longest_wins() -> None:
    words = [word for _, names in vehicles(BOOK) for word in names]
    assert len(words) == len(set(words))
    assert vehicle_named(BOOK, "in a small van?") != vehicle_named(BOOK, "in a van?")
    assert vehicle_named(BOOK, "on a bicycle") is None
