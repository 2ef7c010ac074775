"""Time: hours by step, the clock for a crew, the day back from the party, what may be built before, when to order."""

import math
import re
from itertools import pairwise

from assistant.asked import Asked, Blocks
from assistant.layout import labelled, paragraph
from assistant.limits import used
from assistant.naming import named_pieces
from assistant.state import State
from assistant.telling import span, worth
from assistant.trying import tried, with_pieces
from grammar.numbers.quantities import read_quantities
from grammar.reading import Reading
from grammar.word_files import placed
from rules import Book, Estimate
from rules.crew import AFTER, VENUE, WORKSHOP, Clock, Task, clock_of, tasks_of, value
from rules.record import record
from rules.show import clock
from rules.timetable import DAY, Needs, Timetable, back_from
from rules.units import convert

STEP = 5  # minutes that times are told to
HELD = {"pump": "one pump at work", "packer": "one packing the line"}
EARLY = re.compile(
    r"\b(night|day|evening|week|morning) before|\bahead\b|\bin advance\b|\bbeforehand\b|days? early\b"
    r"|\b(mon|tues|wednes|thurs|fri|satur|sun)day for\b"
)
TAKES = re.compile(r"\b(tak(e|es|ing)|pack(ing)?|clear(ing)?)\b")
DOWN = re.compile(r"\b(down|away|strik(e|ing))\b")
HELPS = re.compile(r"\b(help|helps|helped|helping|got|get|bring|with|have)\b")
ASKS_WHEN = re.compile(
    r"\b(when|what time|how early|how soon|arrive|leave|start|begin|timeline|schedule|timings?|running order|in time)\b"
)
LIMITS = re.compile(r"\b(enough|in|within|under|only|got|have)\b")
HANDS = re.compile(r"\bhow many (more )?(helpers?|people|hands|of us|do i need)\b|\bmore (hands|people|helpers)\b")
MOST_HANDS = 12
OWN = 'Paces are from memory; time a job and say yours, such as "balloons an hour by machine 220".'
FAMILY = frozenset({"schedule", "price", "labour"})


@record
class Plan:
    """The work of a job: its steps, the clock at the workshop and at the venue, and the day where the party's time is
    known."""

    tasks: list[Task]
    build: Clock
    install: Clock
    strike: Clock
    day: Timetable | None


def plan_of(estimate: Estimate) -> Plan:
    """The plan of a job with what was said of its times."""
    tasks = tasks_of(estimate)
    build, install, strike = (
        clock_of([task for task in tasks if task.place == place], estimate) for place in (WORKSHOP, VENUE, AFTER)
    )
    event = estimate.step("event_time")
    opens = estimate.step("setup_from")
    day = None
    if event is not None:
        needs = Needs(
            event=round(event.value * 60),
            ready_before=_minutes(value(estimate, "ready_before")),
            install=_minutes(install.hours),
            unload=_minutes(value(estimate, "time_to_unload")),
            drive=_minutes(value(estimate, "drive_time")),
            load=_minutes(value(estimate, "time_to_load")),
            build=_minutes(build.hours),
            opens=_opens(opens.value, event.value) if opens is not None else None,
            day_begins=_minutes(value(estimate, "day_begins")),
            working_day=_minutes(value(estimate, "working_day")),
        )
        day = back_from(needs)
    return Plan(tasks, build, install, strike, day)


def _opens(opens: float, event: float) -> int:
    """Minutes from midnight of the party's day; set-up from a later hour than the party's is the evening before."""
    return round((opens - 24 if opens > event else opens) * 60)


def hear(_book: Book, now: State, reading: Reading) -> None:
    """Somebody who would help is one more of the crew; the hours that there are count as read."""
    hands = _helpers(reading.text.lower())
    if hands and "crew" not in reading.job:
        now.job["crew"] = now.job.get("crew", 1) + hands
    if _hours_given(reading.text) is not None:
        for quantity in read_quantities(reading.text):
            if quantity.kind == "duration":
                used(reading, quantity.text)


def _helpers(text: str) -> int:
    """How many people a turn names that would help: "my mum and my aunt" are two."""
    words = re.findall(r"[a-z]+", text)
    named = (word for before, word in pairwise(words) if before in {"my", "a", "another"} and word in placed("helpers"))
    return sum(1 for _ in named) if HELPS.search(text) else 0


def schedule(asked: Asked) -> Blocks | None:
    """How long, when, or whether it may be built before: as asked."""
    if not asked.now.pieces or not value(asked.made, "hours_hands_on"):
        return None
    text = asked.reading.text.lower()
    if EARLY.search(text):
        return built_before(asked)
    plan = plan_of(asked.made)
    if plan.day is not None and (ASKS_WHEN.search(text) or not re.search(r"\bhow (long|many|much)\b", text)):
        return _when(asked, plan.day)
    return _how_long(asked, plan, lacking=bool(ASKS_WHEN.search(text)))


# how long ------------------------------------------------------------------------------------------------------------


def _how_long(asked: Asked, plan: Plan, *, lacking: bool) -> Blocks:
    """The hours by step and by the clock; where a time was wanted, what is missing for it."""
    figure = asked.made.figure("hours_hands_on")
    hands = f"{worth(figure)} of hands ({span(figure)})" if figure is not None else ""
    by_the_clock = plan.build.hours + plan.install.hours
    crew = round(value(asked.made, "crew"))
    head = f"{_for(crew)}: about {hours_text(by_the_clock)} by the clock. {hands[:1].upper()}{hands[1:]}."
    given = _hours_given(asked.reading.text)
    text = asked.reading.text.lower()
    if DOWN.search(text) and (TAKES.search(text) or "strik" in text) and plan.strike.hours:
        head = f"Taking down: about {hours_text(plan.strike.hours)} by the clock. {head}"
    elif given is not None and HANDS.search(asked.reading.text.lower()):
        head = f"{_hands_for(asked, given)} {head}"
    elif given is not None:
        head = f"{_enough(by_the_clock, given)} {head}"
    steps = [f"{task.name} {hours_text(task.hours)}" for task in plan.tasks if task.place != AFTER]
    rows = labelled("steps", "; ".join(steps), asked.width)
    rows += labelled("there", f"{hours_text(plan.install.hours)} of it at the venue", asked.width)
    if plan.strike.hours:
        paid = "in the price" if value(asked.made, "strike") else "not in the price"
        rows += labelled("after", f"taking down {hours_text(plan.strike.hours)}, {paid}", asked.width)
    held = [HELD[clock.held_by] for clock in (plan.build, plan.install) if clock.held_by]
    limit = [f"More hands do not help: {held[0]} sets the pace."] if held and crew > 1 else []
    ask = "When does the party start? Then I work back to when to begin." if lacking else ""
    own = "" if ask or _told(asked) else OWN
    return [paragraph(head, asked.width), rows, paragraph(" ".join([*limit, ask or own]).strip(), asked.width)]


def _hands_for(asked: Asked, given: float) -> str:
    """The fewest hands that do it by the clock in the hours given."""
    for crew in range(1, MOST_HANDS + 1):
        plan = plan_of(tried(asked.book, with_pieces(asked.now, asked.now.pieces, crew=crew)))
        if plan.build.hours + plan.install.hours <= given:
            return f"In {hours_text(given)}: {crew} in all, you among them."
    return f"Not in {hours_text(given)}, with {MOST_HANDS} of you or fewer: build more before."


def _enough(needed: float, given: float) -> str:
    left = given - needed
    if left < 0:
        return f"No, {hours_text(-left)} too little."
    return "Only just." if left < given / 10 else "Yes."


def _hours_given(text: str) -> float | None:
    found = [q for q in read_quantities(text.lower()) if q.kind == "duration"]
    return convert(float(found[0].value), found[0].unit, "hour") if found and LIMITS.search(text.lower()) else None


# when ----------------------------------------------------------------------------------------------------------------


def _when(asked: Asked, day: Timetable) -> Blocks:
    """The day in order, the answer first: when to start, and whether the venue's door allows it."""
    start = at(day.start, day.event)
    if day.short:
        head = (
            f"It does not fit: the venue opens {minutes_text(day.short)} too late for {_for(_crew(asked), low=True)}. "
            f"More hands, earlier access, or build more before."
        )
    else:
        head = f"Start by {start}; arrive by {at(day.arrive, day.event)}."
        if day.spare is not None:
            hand = f", with {minutes_text(day.spare)} in hand" if day.spare else ", only just"
            head += f" The venue allows it{hand}."
    rows: list[str] = []
    for _, begins, ends in day.build_days:
        rows += labelled("build" if not rows else "", f"{at(begins, day.event)} to {clock_only(ends)}", asked.width)
    drive = value(asked.made, "drive_time")
    rows += labelled("load", f"{at(day.load, day.event)}, leave {clock_only(day.leave)}", asked.width)
    far = f"{minutes_text(_minutes(drive))} on the road" if drive else "how far is it? I took no drive"
    rows += labelled("drive", far, asked.width)
    rows += labelled("put up", f"{at(day.install, day.event)}, ready {clock_only(day.ready)}", asked.width)
    before = "An hour in hand is in it. " if round(value(asked.made, "ready_before") * 60) == 60 else ""
    opens = "" if day.spare is not None or day.short else "When may you come in? "
    return [paragraph(head, asked.width), rows, paragraph(f"{before}{opens}{order_by(asked)}", asked.width)]


def _crew(asked: Asked) -> int:
    return max(1, round(value(asked.made, "crew")))


def order_by(asked: Asked) -> str:
    """The note on ordering."""
    lead = asked.made.figure("order_lead")
    return f"Order balloons {worth(lead)} before ({span(lead)})." if lead is not None else ""


# before --------------------------------------------------------------------------------------------------------------


def built_before(asked: Asked) -> Blocks:
    """Which pieces may be built the day before and which not, by gas and place."""
    outdoors = bool(value(asked.made, "outdoors"))
    rows: list[str] = []
    early: list[str] = []
    late: list[str] = []
    for place, name in named_pieces(asked.book, asked.now):
        lead = asked.made.figure("build_lead", place)
        if lead is None:
            continue
        gas = asked.made.figure("gas", place)
        floating = gas is not None and gas.value == "helium"
        (late if floating else early).append(name)
        if floating:
            text = f"- {name}, helium: on the day, no more than {worth(lead)} before the party"
            rows += paragraph(text, asked.width, "  ")
        else:
            where = "built late, put out last" if outdoors else "indoors, cool and dark, bagged"
            days = hours_text(float(lead.value))
            rows += paragraph(f"- {name}, air: yes, up to {days} before; {where}", asked.width, "  ")
    if not rows:
        return [paragraph("Tell me the piece and its gas; air may be built before, helium not.", asked.width)]
    head = "Yes, the night before is fine." if not late else "No: helium goes limp." if not early else "In part."
    if outdoors and early:
        head = "Yes, but kept indoors overnight." if not late else "In part, kept indoors overnight."
    tail = "Leave joining, small balloons and foliage for the site; expect a little shrinking and less shine."
    return [[head], rows, paragraph(tail if early else "Have ribbons, weights and cylinder ready.", asked.width)]


# words ---------------------------------------------------------------------------------------------------------------


def at(minutes: int, event: int) -> str:
    """A time of day, with the day where it is not the party's own: "13:05", "08:00 two days before"."""
    days = math.floor(minutes / DAY) - math.floor(event / DAY)
    which = {0: "", -1: " the day before", 1: " the next day"}.get(days, f" {-days} days before")
    return f"{clock_only(minutes)}{which}"


def clock_only(minutes: int) -> str:
    """HH:MM, whatever the day."""
    return clock((minutes % DAY) / 60)


def hours_text(hours: float) -> str:
    """ "40 min", "1 h 30", "9.5 h"."""
    if hours < 1:
        return f"{max(1, round(hours * 60))} min"
    if hours >= 48:
        return f"{hours / 24:.0f} days"
    text = f"{hours:.1f}".removesuffix(".0")
    return f"{text} h"


def minutes_text(minutes: int) -> str:
    """ "55 min", "2 h 10 min"."""
    hours, rest = divmod(minutes, 60)
    return f"{rest} min" if not hours else f"{hours} h {rest} min" if rest else f"{hours} h"


def _for(crew: int, *, low: bool = False) -> str:
    words = {1: "one person", 2: "two of you", 3: "three of you", 4: "four of you"}.get(crew, f"{crew} of you")
    return words if low else words[:1].upper() + words[1:]


def _minutes(hours: float) -> int:
    return math.ceil(hours * 60 / STEP - 1e-9) * STEP


def _told(asked: Asked) -> bool:
    """Whether the decorator's own pace was asked for a turn ago, or was said."""
    paces = ("pace_by_hand", "pace_by_machine", "time_a_quad", "time_a_loose_pair", "time_a_table")
    return asked.before.intent in FAMILY or any(id in asked.now.job for id in paces)
