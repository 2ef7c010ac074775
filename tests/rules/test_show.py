"""Values as people read them, and as they are read."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules.book import load_book
from rules.show import clock, number, quantity, value_text
from rules.texts import places
from rules.units import UnitError, from_base
from rules.values import frozen, look_up, read_quantity, read_table, read_value

BOOK = load_book()


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (14.0, "ft", "14 ft"),
        (3.5978, "in", "3.6 in"),
        (252.0, "count", "252"),
        (2016.0, "count", "2,016"),
        (10.0, "percent", "10 %"),
        (0.336, "litre", "0.34 L"),
        (13.44, "hour", "13.4 hours"),
        (1.0, "hour", "1 hour"),
        (18.045, "count/ft", "18 a foot"),
        (120.0, "USD", "$120"),
        (0.1, "USD", "$0.10"),
        (1517.42, "USD", "$1,517"),
        (-4.5, "GBP", "-£4.50"),
        (25.0, "USD/hour", "$25 an hour"),
        (4.0, "CHF", "CHF 4"),
        (3.2, "ft**3", "3.2 cu ft"),
        (85.0, "degF", "85 °F"),
        (0.0, "in", "0 in"),
        (-0.0001, "in", "0 in"),
    ],
)
def test_quantity(value: float, unit: str, text: str) -> None:
    assert quantity(value, unit) == text


def test_number_of_places() -> None:
    assert number(3.14159, 3) == "3.142"
    assert number(12.0, 2) == "12"


@pytest.mark.parametrize(
    ("id", "kind", "raw", "text", "metric"),
    [
        ("table_height", "runner", 30, "30 in", "76.2 cm"),
        ("length", "runner", 168, "14 ft", "4.3 m"),
        ("foliage", "runner", True, "yes", "yes"),
        ("style", "runner", "organic", "organic", "organic"),
        ("strokes", "runner", [1, 2], "1 to 2", "1 to 2"),
        ("strokes", "runner", 3, "3", "3"),
        ("sizes", "runner", [11, 5], "5, 11 in", "5, 11 in"),
        ("colours", "runner", ["navy", {"name": "gold", "share": 0.2}], "navy, gold", "navy, gold"),
        ("event_time", "job", "18:30", "18:30", "18:30"),
        ("spare", "job", 10, "10 %", "10 %"),
        ("temperature", "job", 86, "86 °F", "30 °C"),
        ("count", "runner", 8, "8", "8"),
    ],
)
def test_values(id: str, kind: str, raw: object, text: str, metric: str) -> None:
    fact = BOOK.fact(id, kind)
    assert fact is not None
    value = read_value(raw, fact.type, fact.unit)
    assert value_text(value, fact) == text
    assert value_text(value, fact, metric=True) == metric


@pytest.mark.parametrize(
    ("hours", "text"),
    [(18.5, "18:30"), (-1, "23:00 the day before"), (25.25, "01:15 the next day"), (23.9999, "00:00 the next day")],
)
def test_clock(hours: float, text: str) -> None:
    assert clock(hours) == text


def test_a_written_quantity() -> None:
    assert read_quantity("2 ft", "in") == 24
    assert read_quantity(2, "ft") == 24
    assert read_quantity("-3", "in") == -3
    assert read_quantity("50 percent", "count") == 0.5
    with pytest.raises(UnitError, match="'2 lb' does not measure the same as in"):
        read_quantity("2 lb", "in")
    with pytest.raises(ValueError, match="is not a number"):
        read_quantity(True, "in")


@pytest.mark.parametrize(
    ("raw", "kind"),
    [
        ("many", "quantity"),
        ([3, 2], "range"),
        ([1, 2, 3], "range"),
        ("yes", "flag"),
        (3, "choice"),
        ("25", "clock"),
        ([3], "colours"),
    ],
)
def test_what_does_not_fit_its_type(raw: object, kind: str) -> None:
    with pytest.raises(ValueError, match=r"\S"):
        read_value(raw, kind, "count")


ROWS = [{"at": 11, "low": 8, "typical": 9.5, "high": 10}, {"at": 5, "typical": 4}]


def test_a_table_is_read_in_order_and_looked_up_along_straight_lines() -> None:
    table = read_table(ROWS, "typical", "in", "in")
    assert table == ((5, 4), (11, 9.5))
    assert read_table(ROWS, "low", "in", "in") == ((5, 4), (11, 8))
    assert [look_up(table, at) for at in (1, 5, 8, 11, 40)] == [4, 4, 6.75, 9.5, 9.5]


@given(st.floats(-10, 50), st.floats(0, 10))
def test_a_rising_table_never_falls(at: float, more: float) -> None:
    table = read_table(ROWS, "typical", "in", "in")
    assert look_up(table, at) <= look_up(table, at + more) + 1e-9


def test_places_of_a_text() -> None:
    assert list(places("{a} by {b_c:ft}, {not this}")) == [("a", None), ("b_c", "ft")]


def test_frozen_values_can_be_keys() -> None:
    assert hash(frozen({"a": [1, {"b": [2]}]})) == hash(frozen({"a": (1, {"b": (2,)})}))


@given(st.floats(0.5, 600))
def test_a_said_length_is_shown_as_it_was_said(inches: float) -> None:
    fact = BOOK.fact("table_height", "runner")
    assert fact is not None
    assert from_base(read_value(inches, fact.type, fact.unit), fact.unit) == inches
