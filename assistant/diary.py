"""The day as a calendar file (RFC 5545): building, loading, driving, putting up, the party, and when to order."""

import hashlib
import re
from datetime import UTC, date, datetime, timedelta, tzinfo
from zoneinfo import ZoneInfo

from assistant.asked import Asked, Blocks
from assistant.layout import listed, paragraph
from assistant.naming import named_pieces
from assistant.schedule import at, plan_of
from assistant.sheets.files import MARK, write
from assistant.speech import spoken
from assistant.terminal import one_line
from rules.crew import value
from rules.timetable import Timetable

NO_FOLDER = "A calendar file is written by the chat and the command festoon, into the folder where it was started."
NO_DATE = 'Which day, with its year? Say "calendar file for 14 June 2031", perhaps with its zone, America/Chicago.'
NO_TIME = "When does the party start? Without that there is no day to lay out."
MONTHS = "january february march april may june july august september october november december".split()
_ISO = re.compile(r"\b(\d{4})-(\d{2})-(\d{2})\b")
_DAY_FIRST = re.compile(r"\b(\d{1,2})(?:st|nd|rd|th)?(?: of)? ([a-z]{3,9}),? (\d{4})\b")
_MONTH_FIRST = re.compile(r"\b([a-z]{3,9}) (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})\b")
_ZONE = re.compile(r"\b(?:UTC|[A-Z][A-Za-z_]+(?:/[A-Z][A-Za-z_-]+)+)\b")


def diary(asked: Asked) -> Blocks | None:
    """Write the job's calendar file into the conversation's folder, or say what is lacking."""
    if not asked.now.pieces:
        return None
    day = plan_of(asked.made).day
    if day is None:
        return [paragraph(NO_TIME, asked.width)]
    when = date_said(asked.reading.text)
    if when is None:
        return [paragraph(NO_DATE, asked.width)]
    zone, unknown = zone_said(asked.reading.text)
    if unknown:
        text = f"There is no time zone {unknown}; nothing was written. Say one such as Europe/Paris."
        return [paragraph(text, asked.width)]
    if asked.folder is None:
        return [paragraph(NO_FOLDER, asked.width)]
    what = listed(name for _, name in named_pieces(asked.book, asked.now))
    order_days = round(value(asked.made, "order_lead") / 24)
    text = calendar_of(day, when, what, zone=zone, order_days=order_days)
    try:
        name = write(asked.folder, "calendar", ".ics", text).name
    except OSError as error:
        reason = one_line(error.strerror or str(error)).lower()
        return [paragraph(f"That could not be written here ({reason}); go to another folder.", asked.width)]
    where = f"in {zone.key}" if zone is not None else "in local time, whatever the zone"
    head = f"The calendar: {name}, {where}. Work begins {at(day.start, day.event)}."
    return [paragraph(head, asked.width), paragraph(f"In {one_line(str(asked.folder))}", asked.width)]


def calendar_of(day: Timetable, when: date, what: str, *, zone: ZoneInfo | None = None, order_days: int = 7) -> str:
    """The text of the file, its lines ended as RFC 5545 asks (CRLF).

    Times are of the zone's clocks; of no zone ("floating", section 3.3.5) where none is given.  Stretches of work are
    reckoned back in hours that pass, so a night on which the clocks change takes none away.
    """
    from icalendar import Calendar, Event

    calendar = Calendar()
    calendar.add("prodid", f"-//festoon//{MARK}//EN")
    calendar.add("version", "2.0")
    # No clock is read, so that the same words give the same file: its stamp is the party's own day.
    stamp = datetime(when.year, when.month, when.day, tzinfo=UTC)
    party = _party(day, when, zone)
    rows = [("Build", first, last) for _, first, last in day.build_days]
    rows += [("Load", day.load, day.leave), ("Drive", day.leave, day.arrive), ("Carry in", day.arrive, day.install)]
    rows += [("Put up", day.install, day.ready)]
    for name, first, last in [*rows, ("Party begins", day.event, day.event)]:
        if first == last and name != "Party begins":
            continue
        event = Event()
        start, end = (_moment(party, minutes - day.event) for minutes in (first, last))
        event.add("summary", spoken(f"{name}: {what}"))
        event.add("dtstart", start)
        if last > first:
            event.add("dtend", end)
        _finish(event, stamp, what)
        calendar.add_component(event)
    order = Event()
    order.add("summary", spoken(f"Order balloons by today: {what}"))
    order.add("dtstart", when - timedelta(days=order_days))
    _finish(order, stamp, what)
    calendar.add_component(order)
    if zone is not None:
        calendar.add_missing_timezones()
    return str(calendar.to_ical().decode())


def _party(day: Timetable, when: date, zone: ZoneInfo | None) -> datetime:
    hours, minutes = divmod(day.event, 60)
    return datetime(when.year, when.month, when.day, tzinfo=zone) + timedelta(hours=hours, minutes=minutes)


def _moment(party: datetime, minutes: int) -> datetime:
    """So many minutes from the party's beginning, as they pass, on the clocks of its zone."""
    zone: tzinfo | None = party.tzinfo
    if zone is None:
        return party + timedelta(minutes=minutes)
    return (party.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(zone)


def _finish(event: object, stamp: datetime, what: str) -> None:
    """What every event must have: a stamp and an id of its own that is the same for the same words."""
    add = event.add  # type: ignore[attr-defined]
    key = f"{event['summary']}{event['dtstart'].to_ical()!r}{what}"  # type: ignore[index]
    add("uid", f"{hashlib.sha256(key.encode()).hexdigest()[:24]}@festoon")
    add("dtstamp", stamp)


def date_said(text: str) -> date | None:
    """The day that the text names with its year: 2031-06-14, 14 June 2031, June 14th, 2031."""
    low = text.lower()
    if found := _ISO.search(low):
        return _date(int(found[1]), int(found[2]), int(found[3]))
    for match in _DAY_FIRST.finditer(low):
        if month := _month(match[2]):
            return _date(int(match[3]), month, int(match[1]))
    for match in _MONTH_FIRST.finditer(low):
        if month := _month(match[1]):
            return _date(int(match[3]), month, int(match[2]))
    return None


def _month(word: str) -> int | None:
    fits = [place for place, name in enumerate(MONTHS, 1) if name.startswith(word)]
    return fits[0] if len(fits) == 1 else None


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def zone_said(text: str) -> tuple[ZoneInfo | None, str]:
    """The time zone that the text names, and its name where there is no such zone."""
    found = _ZONE.search(text)
    if found is None:
        return None, ""
    try:
        return ZoneInfo(found[0]), ""
    except (KeyError, ValueError, OSError):
        return None, found[0]
