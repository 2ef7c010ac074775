"""Quantities with units: one place at a time, and along a text."""

from fractions import Fraction

import pint
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from grammar.numbers.quantities import quantities_at, read_quantities
from grammar.numbers.unit_words import money_words, unit_words
from grammar.tokens.scan import scan


def first(text: str) -> list[tuple[str, str, str]]:
    """(kind, value, unit) of every reading at the beginning, longest first."""
    return [(q.kind, str(q.value), q.unit) for q in quantities_at(scan(text), 0)]


def along(text: str) -> list[tuple[str, str, str]]:
    """(kind, value, unit) of what is read along the text."""
    return [(q.kind, str(q.value), q.unit) for q in read_quantities(text)]


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("6'", "6", "ft"),
        ("6'4\"", "76", "in"),
        ("6’4”", "76", "in"),
        ("6'4", "76", "in"),
        ("6ft", "6", "ft"),
        ("6-foot", "6", "ft"),
        ("six-foot", "6", "ft"),
        ("72 inches", "72", "in"),
        ("180cm", "180", "cm"),
        ("1.8 m", "9/5", "m"),
        ("6 ft 4", "76", "in"),
        ("6ft6", "78", "in"),
        ("six foot four", "76", "in"),
        ("6 ft. 4 in.", "76", "in"),
        ("5'-6-1/2\"", "133/2", "in"),
        ("2 1/2 ft", "5/2", "ft"),
        ("five and a half feet", "11/2", "ft"),
        ("a foot and a half", "3/2", "ft"),
        ("half an inch", "1/2", "in"),
        ("three quarters of a mile", "3/4", "mi"),
        ("1 m 80", "180", "cm"),
        ("three yards, 2 ft and 5 inches", "137", "in"),
        ("-3 ft", "-3", "ft"),
        ("-6'4\"", "-76", "in"),
        ("2 metres and 1 foot", "2881/381", "ft"),
    ],
)
def test_lengths(text: str, value: str, unit: str) -> None:
    assert along(text) == [("length", value, unit)]


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("an hour and a half", "3/2", "hour"),
        ("4h10min", "250", "min"),
        ("3 hours forty", "220", "min"),
        ("three and a quarter hours", "13/4", "hour"),
        ("2 weeks, plus 3 days", "17", "day"),
        ("minute 45s", "105", "s"),
        ("1 day, 3:20:05", "98405", "s"),
        ("whole-week", "1", "week"),
        ("another working week", "1", "week"),
        ("a couple of months", "60", "day"),
    ],
)
def test_durations(text: str, value: str, unit: str) -> None:
    assert along(text) == [("duration", value, unit)]


@pytest.mark.parametrize(
    ("text", "value", "code"),
    [
        ("$1,234.50", "2469/2", "USD"),
        ("€1.299", "1299", "EUR"),
        ("29,99 €", "2999/100", "EUR"),
        ("$50 CAD", "50", "CAD"),
        ("a$260", "260", "AUD"),
        ("us$9 and twelve", "228/25", "USD"),
        ("18 dollars 75", "75/4", "USD"),
        ("six euros ten cents", "61/10", "EUR"),
        ("50p", "1/2", "GBP"),
        ("a penny", "1/100", "GBP"),
        ("seven dimes", "7/10", "USD"),
        ("half a million pounds", "500000", "GBP"),
        ("$5m", "5000000", "USD"),
        ("-$15", "-15", "USD"),
        ("ten canadian dollars", "10", "CAD"),
    ],
)
def test_money(text: str, value: str, code: str) -> None:
    assert along(text) == [("money", value, code)]


@pytest.mark.parametrize(
    ("text", "reading"),
    [
        ("95°F", ("temperature", "95", "degF")),
        ("35 degrees", ("temperature", "35", "")),
        ("minus 5 celsius", ("temperature", "-5", "degC")),
        ("25 km/h", ("speed", "25", "km/h")),
        ("fifteen miles an hour", ("speed", "15", "mph")),
        ("12 knots", ("speed", "12", "knot")),
        ("ten per cent", ("percent", "10", "percent")),
        ("14 cubic feet", ("volume", "14", "ft**3")),
        ("2.5 litres", ("volume", "5/2", "liter")),
        ("20 m²", ("area", "20", "m**2")),
        ("12 lb", ("mass", "12", "lb")),
        ("two pounds", ("money", "2", "GBP")),
    ],
)
def test_other_kinds(text: str, reading: tuple[str, str, str]) -> None:
    assert first(text)[0] == reading


@pytest.mark.parametrize(
    ("text", "clock", "unit"),
    [
        ("14:30", "14:30", "24 h"),
        ("2pm", "14:00", "24 h"),
        ("12am", "00:00", "24 h"),
        ("2.30 p.m.", "14:30", "24 h"),
        ("half seven", "07:30", "12 h"),
        ("quarter past two", "02:15", "12 h"),
        ("a quarter to one", "12:45", "12 h"),
        ("twenty minutes to five in the afternoon", "16:40", "24 h"),
        ("six thirty", "06:30", "12 h"),
        ("ten o'clock", "10:00", "12 h"),
        ("noon", "12:00", "24 h"),
    ],
)
def test_times_of_day(text: str, clock: str, unit: str) -> None:
    best = quantities_at(scan(text), 0)[0]
    assert (best.kind, best.clock, best.unit, best.text) == ("clock", clock, unit, text)


def test_both_readings_are_offered_where_there_are_two() -> None:
    assert first("six foot six tables") == [("length", "78", "in"), ("length", "6", "ft"), ("number", "6", "")]
    assert [q.doubt for q in quantities_at(scan("6 ft 4 tables"), 0)] == ["tail", "", ""]
    assert along("six foot six tables") == [("length", "6", "ft"), ("number", "6", "")]


def test_ranges_of_counts_are_no_times() -> None:
    assert along("8 to 10 balloons") == [("number", "8", ""), ("number", "10", "")]
    assert along("10 to 12 balloons") == [("number", "10", ""), ("number", "12", "")]


@pytest.mark.parametrize(
    "text",
    ["seconds the motion", "minuet", "minutes", "all of them", "on the 9th", "this one", "m37", ",250", "50 %", "2pm"],
)
def test_nothing_is_read(text: str) -> None:
    assert along(text) == []


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        ("8 in the hall", [("number", "8", "")]),
        ("8 in 4 colours", [("number", "8", ""), ("number", "4", "")]),
        ("$18 an hour", [("money", "18", "USD")]),
        ("three quarters navy", [("number", "3/4", "")]),
        ("6 ft 30 in", [("length", "6", "ft"), ("length", "30", "in")]),
        ("from 6 ft to 8 ft", [("length", "6", "ft"), ("length", "8", "ft")]),
        ("AB-42m", [("number", "42", "")]),
    ],
)
def test_the_words_around_decide(text: str, readings: list[tuple[str, str, str]]) -> None:
    assert along(text) == readings


def test_places_point_into_the_text() -> None:
    text = "Eight 6 ft  tables for £250, by an hour and a half"
    found = read_quantities(text)
    assert [text[q.start : q.end] for q in found] == ["Eight", "6 ft", "£250", "an hour and a half"]


def test_unit_sizes_agree_with_pint() -> None:
    """Against pint's own default registry."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    for kind, sizes in unit_words().sizes.items():
        if kind != "temperature":
            base = next(iter(sizes))
            for unit, size in sizes.items():
                assert registry.Quantity(1.0, unit).to(base).magnitude == pytest.approx(float(size)), unit


def test_every_currency_has_a_code_of_three_capitals() -> None:
    words = money_words()
    assert set(words.currencies) <= words.codes
    assert all(len(code) == 3 and code.isupper() for code in words.codes)


@given(
    st.integers(1, 40),
    st.integers(0, 11),
    st.sampled_from(["{}'{}\"", "{} ft {} in", "{}ft{}", "{} feet and {} inches"]),
)
def test_feet_and_inches_come_back_as_printed(feet: int, inches: int, shape: str) -> None:
    assert along(shape.format(feet, inches)) == [("length", str(feet * 12 + inches), "in")]


@given(st.integers(0, 10**7), st.sampled_from(["${}", "{} USD", "USD {}", "{} dollars", "us$ {}", "{}$"]))
def test_cents_come_back_as_printed(cents: int, shape: str) -> None:
    amount = f"{cents // 100:,}.{cents % 100:02d}"
    assert along(shape.format(amount)) == [("money", str(Fraction(cents, 100)), "USD")]


PIECES = st.sampled_from(
    "1 12 000 3/4 ½ .5 one six twenty half a an and , . - ' \" : / $ € c ft in foot m s h hour day min °F % pm past to "
    "of more in the tables dollars quarter 50 cents USD x k".split()
)


@given(st.one_of(st.text(), st.lists(PIECES, max_size=14).map(" ".join), st.lists(PIECES, max_size=14).map("".join)))
@example("1/1")
def test_any_text_is_read_in_order_without_overlap(text: str) -> None:
    found = read_quantities(text)
    places = [place for q in found for place in (q.start, q.end)]
    assert places == sorted(places)
    assert all(q.start < q.end <= len(text) for q in found)
    tokens = scan(text)
    for i in range(len(tokens)):
        stops = [q.stop for q in quantities_at(tokens, i)]
        assert stops == sorted(stops, reverse=True)
        assert all(i < stop <= len(tokens) for stop in stops)
        assert all(float(q.value) == float(q.value) for q in quantities_at(tokens, i))
