"""The calendar file against RFC 5545: read back by the icalendar library, and its raw lines looked at."""

from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import icalendar
import pytest

from assistant import Conversation
from assistant.diary import calendar_of, date_said, zone_said
from rules.timetable import Needs, Timetable, back_from

WHEN = date(2031, 6, 14)
CHICAGO = ZoneInfo("America/Chicago")


def day_of(**changes: int) -> Timetable:
    plain = {"event": 18 * 60, "ready_before": 60, "install": 90, "unload": 15, "drive": 40, "load": 20, "build": 900}
    return back_from(Needs(**{**plain, **changes}))


def events(text: str) -> dict[str, icalendar.Event]:
    found = icalendar.Calendar.from_ical(text).walk("VEVENT")
    return {str(event["summary"]).split(":")[0]: event for event in found}


def test_what_every_file_must_have() -> None:
    """Sections 3.6, 3.6.1, 3.7.3 and 3.7.4: PRODID and VERSION 2.0; each event UID, DTSTAMP and DTSTART, ids unique."""
    text = calendar_of(day_of(), WHEN, "8 runners")
    calendar = icalendar.Calendar.from_ical(text)
    assert calendar["version"] == "2.0"
    assert "festoon" in calendar["prodid"]
    found = calendar.walk("VEVENT")
    assert len({str(event["uid"]) for event in found}) == len(found) >= 7
    for event in found:
        assert event["dtstamp"].dt.utcoffset() == timedelta(0)
        assert "dtstart" in event
        assert "dtend" not in event or event["dtend"].dt > event["dtstart"].dt


def test_lines_are_folded_and_ended_as_asked() -> None:
    """Section 3.1: CRLF ends, no line over 75 octets; text escaped, section 3.3.11."""
    what = "8 runners, a très long arch; and more\nof it " * 4
    text = calendar_of(day_of(), WHEN, what)
    assert text.endswith("\r\n")
    assert "\n" not in text.replace("\r\n", "")
    assert max(len(line.encode()) for line in text.split("\r\n")) <= 75
    assert str(events(text)["Party begins"]["summary"]) == f"Party begins: {what}"


def test_floating_times_have_no_zone() -> None:
    """Section 3.3.5, form 1: local time without a zone."""
    party = events(calendar_of(day_of(), WHEN, "x"))["Party begins"]["dtstart"].dt
    assert party == datetime(2031, 6, 14, 18, 0)  # noqa: DTZ001 - floating is what is tested


def test_a_zone_is_named_and_described() -> None:
    """Sections 3.2.19 and 3.6.5: a TZID that is used has its VTIMEZONE."""
    text = calendar_of(day_of(), WHEN, "x", zone=CHICAGO)
    calendar = icalendar.Calendar.from_ical(text)
    assert [str(zone["tzid"]) for zone in calendar.walk("VTIMEZONE")] == ["America/Chicago"]
    party = events(text)["Party begins"]["dtstart"].dt
    assert party.astimezone(UTC) == datetime(2031, 6, 14, 23, 0, tzinfo=UTC)


def test_work_keeps_its_length_when_clocks_change() -> None:
    """At 2:00 on 9 March 2031 clocks in Chicago go to 3:00 (second Sunday of March, 15 U.S.C. 260a)."""
    text = calendar_of(day_of(event=9 * 60, build=0), date(2031, 3, 9), "x", zone=CHICAGO)
    found = events(text)
    assert found["Party begins"]["dtstart"].dt - found["Load"]["dtstart"].dt.astimezone(UTC) == timedelta(minutes=225)
    early = calendar_of(day_of(event=5 * 60, build=0), date(2031, 3, 9), "x", zone=CHICAGO)
    load = events(early)["Load"]["dtstart"].dt
    assert load.strftime("%H:%M") == "00:15"  # 225 minutes before 5:00, of which one hour of the clock never was


def test_midnight_is_crossed() -> None:
    found = events(calendar_of(day_of(event=30, build=60), WHEN, "x"))
    assert found["Party begins"]["dtstart"].dt.date() == WHEN
    assert found["Put up"]["dtstart"].dt.date() == WHEN - timedelta(days=1)
    assert found["Order balloons by today"]["dtstart"].dt == WHEN - timedelta(days=7)


@pytest.mark.parametrize("text", ["for 2031-06-14", "on 14 June 2031", "June 14th, 2031", "14th of Jun 2031"])
def test_days_are_read(text: str) -> None:
    assert date_said(text) == WHEN


def test_days_without_a_year_and_zones_that_are_none() -> None:
    assert date_said("14 June") is None
    assert date_said("31 February 2031") is None
    assert zone_said("in Europe/Paris") == (ZoneInfo("Europe/Paris"), "")
    assert zone_said("in Atlantis/Nowhere") == (None, "Atlantis/Nowhere")


def test_it_is_written_only_into_a_folder_that_was_given(tmp_path: Path) -> None:
    turns = ["eight 6 ft tables", "party at 6 pm", "calendar file for 2031-06-14"]
    without = Conversation()
    for turn in turns:
        reply = without.say(turn)
    assert "folder" in reply.text
    (tmp_path / "calendar.ics").write_text("someone else's")
    talk = Conversation(folder=tmp_path)
    for turn in turns:
        reply = talk.say(turn)
    assert "calendar-2.ics" in reply.text
    assert (tmp_path / "calendar.ics").read_text() == "someone else's"
    again = Conversation(folder=tmp_path)
    for turn in turns:
        again.say(turn)
    written = (tmp_path / "calendar-2.ics").read_bytes().decode()
    assert events(written)["Party begins"]["dtstart"].dt.hour == 18
    assert sorted(path.name for path in tmp_path.iterdir()) == ["calendar-2.ics", "calendar.ics"]
