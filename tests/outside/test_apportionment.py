"""Whole shares against the apportionments of history and textbooks."""

from fractions import Fraction

from rules.apportion import largest_remainder

# Census of 1790 (apportionment populations) and the bill of 1792 for 120 seats by Hamilton's method, the first
# bill to be vetoed; U.S. National Archives for the seats.
CENSUS_1790 = {
    "New Hampshire": (141_822, 5),
    "Massachusetts": (475_327, 16),
    "Vermont": (85_533, 3),
    "Rhode Island": (68_446, 2),
    "Connecticut": (236_841, 8),
    "New York": (331_589, 11),
    "New Jersey": (179_570, 6),
    "Pennsylvania": (432_879, 14),
    "Delaware": (55_540, 2),
    "Maryland": (278_514, 9),
    "Virginia": (630_560, 21),
    "Kentucky": (68_705, 2),
    "North Carolina": (353_523, 12),
    "South Carolina": (206_236, 7),
    "Georgia": (70_835, 2),
}


def test_the_apportionment_of_1792() -> None:
    """All fifteen states of the vetoed bill."""
    populations = [population for population, _ in CENSUS_1790.values()]
    assert sum(populations) == 3_615_920
    assert largest_remainder(120, populations) == [seats for _, seats in CENSUS_1790.values()]


def test_the_alabama_paradox_of_a_textbook() -> None:
    """For All Practical Purposes, chapter 14: five parties, houses of 89, 90 and 91."""
    votes = [5_576_330, 1_387_342, 3_334_241, 7_512_860, 310_968]
    assert largest_remainder(89, votes) == [27, 7, 16, 37, 2]
    assert largest_remainder(90, votes) == [28, 7, 17, 37, 1]
    assert largest_remainder(91, votes) == [28, 7, 17, 38, 1]


def test_chairs_for_offices_of_a_textbook() -> None:
    """A textbook exercise: 148 chairs for offices of 757, 295, 636 and 976 people; quota rule and whole sum."""
    employees = [757, 295, 636, 976]
    chairs = largest_remainder(148, employees)
    assert sum(chairs) == 148
    assert chairs == [42, 17, 35, 54]
    for people, given in zip(employees, chairs, strict=True):
        assert abs(Fraction(148 * people, 2664) - given) < 1
