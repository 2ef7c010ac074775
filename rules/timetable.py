"""A day back from the party: ready, put up, carry in, drive, load, build; in minutes of the party's own day.

Minutes below nought fall on the days before: -60 is 23:00 the day before.
"""

import math

from rules.record import record

DAY = 24 * 60


@record
class Needs:
    """Minutes that each stretch takes, and what binds it: when the party begins, when one may come in."""

    event: int
    ready_before: int
    install: int
    unload: int
    drive: int
    load: int
    build: int
    opens: int | None = None
    day_begins: int = 8 * 60
    working_day: int = 8 * 60


@record
class Timetable:
    """When each stretch begins at the latest.

    build_days: (day, first minute of that day's work, its last), the first day first, days counted back from nought,
    the party's own; short: minutes that are lacking at the venue (0 where there is time); spare: minutes that one may
    come later than the venue opens, None where it is not known when that is.
    """

    event: int
    ready: int
    install: int
    arrive: int
    leave: int
    load: int
    build_days: tuple[tuple[int, int, int], ...]
    short: int
    spare: int | None

    @property
    def start(self) -> int:
        """The first minute of work."""
        return self.build_days[0][1] if self.build_days else self.load


def back_from(needs: Needs) -> Timetable:
    """The latest times that still make it; who may come in only later than that is short of time, and is told so."""
    ready = needs.event - needs.ready_before
    install = ready - needs.install
    arrive = install - needs.unload
    opens = needs.opens if needs.opens is None or needs.opens < needs.event else needs.opens - DAY
    leave = arrive - needs.drive
    load = leave - needs.load
    return Timetable(
        event=needs.event,
        ready=ready,
        install=install,
        arrive=arrive,
        leave=leave,
        load=load,
        build_days=_days(load, needs),
        short=max(0, opens - arrive) if opens is not None else 0,
        spare=max(0, arrive - opens) if opens is not None else None,
    )


def _days(load: int, needs: Needs) -> tuple[tuple[int, int, int], ...]:
    """The building laid out before the loading, no day longer than a working day, none begun before it dawns."""
    found: list[tuple[int, int, int]] = []
    left = needs.build
    day = math.floor(load / DAY)
    end = load
    while left > 0:
        begins = day * DAY + needs.day_begins
        room = min(max(end - begins, 0), needs.working_day)
        work = min(left, room)
        if work > 0:
            found.append((day, end - work, end))
        left -= work
        day -= 1
        end = day * DAY + min(needs.day_begins + needs.working_day, DAY)
    return tuple(reversed(found))
