"""What is said to the job book: keep, open, list, copy, rename, delete, bring back, export, import, quote, back up.

A name may be any words at all, so these turns are read by themselves, letter for letter, before the reader would look
for tables in them.
"""

import re
from datetime import datetime, timedelta
from functools import cache

from grammar.talk.orders import find_orders
from grammar.tokens.scan import scan
from rules.record import record

FEW_WORDS = 4  # of a turn that only takes back

_THIS = r"(?:this|that|it|the job|this job|that job)"
_NAME = r"[\"'“‘]?(?P<name>.+?)[\"'”’]?"
_OTHER = r"[\"'“‘]?(?P<other>.+?)[\"'”’]?"
_ABOUT = "with|about|called|named|for|from|of|in|on|since"
_PLEASE = r"^(?:(?:ok|okay|right|so|now|and|please|can you|could you|let's|lets)[, ]+)*"
_END = r"(?:,? please)?$"

# What is meant, and how it is said; the first that fits is taken.
ORDERS = (
    ("save", rf"(?:keep|save|file|store|remember) {_THIS}(?: job)? (?:as|under|for the name) {_NAME}"),
    ("save", rf"(?:save|keep|store|file) {_THIS}(?: for later| job)?|save|remember this job|save for later"),
    ("rename", rf"rename (?:{_THIS}|(?:the )?(?:job )?{_OTHER}) (?:to|as) {_NAME}"),
    ("rename", rf"(?:call|name) (?:this|the) job {_NAME}"),
    ("copy", rf"(?:copy|duplicate) (?:{_THIS}|(?:the )?(?:job )?{_OTHER}) (?:as|to|into) {_NAME}"),
    ("copy", rf"make a copy (?:of {_THIS} )?(?:called|named|as) {_NAME}"),
    ("list", r"(?:(?:list|show|show me|what are|which are|see) )?(?:all )?(?:my|the|saved|kept)(?: saved| kept)? jobs"),
    ("list", r"list (?:all )?jobs|what (?:jobs )?have i (?:kept|saved)|job book|(?:open |show )?(?:my|the) job book"),
    (
        "list",
        rf"(?:(?:find|list|show|show me|search)(?: for)? )?(?:my |the |all )*jobs? (?:{_ABOUT}) {_NAME}",
    ),
    ("find", rf"find (?:my |the )?{_NAME}"),
    ("deleted", r"(?:list|show|show me|what are) (?:my |the )?(?:deleted|removed) jobs|(?:my |the )?deleted jobs"),
    ("open", rf"(?:open|reopen|re-open|load job|show job) (?:up )?(?:the )?(?:job )?{_NAME}"),
    ("delete", r"(?:delete|bin|remove|throw away) (?:this job|the job|this whole job)"),
    ("delete", rf"(?:delete|remove|bin) (?:the )?job {_OTHER}"),
    ("delete", rf"delete {_NAME}"),
    ("restore", rf"(?:bring back|restore|undelete) (?:the )?(?:job )?{_NAME}"),
    ("export", rf"export (?:{_THIS}|job {_NAME})(?: (?:to|as) (?:a )?(?:text )?file)?"),
    ("import", rf"import (?:the )?(?:job |file )?(?:from )?{_NAME}"),
    ("quote", r"quote (?:it|this|that)|(?:i|we)(?: have|'ve)? quoted (?:it|this|that)|that's (?:the|my) quote"),
    ("quoted", r"what did (?:i|we) quote(?: (?:them|her|him))?|(?:show|show me) the quote"),
    ("changed", r"what(?:'s| is| has)? (?:changed|different|new) since (?:i|we|the) quoted?(?: (?:it|that|them))?"),
    ("changed", r"work (?:it|this|that) out (?:again|afresh|anew)"),
    ("backup", r"(?:back up|backup) (?:my |the |all )*(?:job ?book|jobs)"),
)
# One of these stands in every such turn; most turns have none, and then no pattern is even made.
_TELLING = frozenset(
    "keep save file store remember rename call name copy duplicate job jobs find open load show delete remove bin throw"
    " reopen bring restore undelete export import quote quoted work back backup".split()
)
_DAY = re.compile(r"^(?:the )?(\d{1,2})(?:st|nd|rd|th)?(?: of)? ([a-z]+)$|^([a-z]+) (\d{1,2})(?:st|nd|rd|th)?$")
WEEK = timedelta(days=7)
SPANS = ("today", "yesterday", "this week", "last week", "this month", "last month", "this year", "last year")


@record
class Order:
    """What the job book is asked for; `name` and `other` as they were said."""

    what: str
    name: str = ""
    other: str = ""


def read_order(text: str) -> Order | None:
    """The order to the job book that the turn is, None where it is none."""
    line = " ".join(text.replace("’", "'").split()).rstrip(".!?")
    if _TELLING.isdisjoint(re.split(r"\W+", line.lower())):
        return None
    for what, pattern in _patterns():
        found = pattern.match(line)
        if found:
            groups = found.groupdict()
            return Order(what, (groups.get("name") or "").strip(), (groups.get("other") or "").strip())
    return None


@cache
def _patterns() -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((what, re.compile(f"{_PLEASE}(?:{said}){_END}", re.IGNORECASE)) for what, said in ORDERS)


def is_undo(text: str) -> bool:
    """Whether the turn takes back the last one and says nothing else."""
    orders = find_orders(scan(text))
    return bool(orders) and orders[0].intent in {"undo", "redo"} and len(text.split()) <= FEW_WORDS


def span_said(text: str, now: datetime) -> tuple[float, float] | None:
    """The span of time that the words name, as POSIX seconds from and up to; None where they name none.

    today, yesterday, this or last week, month or year, a month, a day with or without its year. `now` knows its zone.
    """
    low = text.lower().strip()
    today = now.replace(hour=0, minute=0, second=0, microsecond=0)
    monday = today - timedelta(days=today.weekday())
    first = today.replace(day=1)
    before = (first - timedelta(days=1)).replace(day=1)
    year = today.replace(month=1, day=1)
    ends = (
        (today, today + timedelta(days=1)),
        (today - timedelta(days=1), today),
        (monday, monday + WEEK),
        (monday - WEEK, monday),
        (first, _next_month(first)),
        (before, first),
        (year, year.replace(year=year.year + 1)),
        (year.replace(year=year.year - 1), year),
    )
    spans = dict(zip(SPANS, ends, strict=True))
    span = spans.get(low) or _month_span(low, today) or _day_span(low, today)
    return (span[0].timestamp(), span[1].timestamp()) if span else None


def _month_span(low: str, today: datetime) -> tuple[datetime, datetime] | None:
    """The last month of that name that has begun; "november 2030" is that of the year."""
    name, _, year = low.partition(" ")
    month = _month(name)
    if month is None or (year and not re.fullmatch(r"2\d{3}", year)):
        return None
    wanted = int(year) if year else today.year - (month > today.month)
    first = today.replace(year=wanted, month=month, day=1)
    return first, _next_month(first)


def _day_span(low: str, today: datetime) -> tuple[datetime, datetime] | None:
    from assistant.diary import date_said

    said = date_said(low)
    if said is not None:
        day = today.replace(year=said.year, month=said.month, day=said.day)
        return day, day + timedelta(days=1)
    found = _DAY.match(low)
    month = _month(found[2] or found[3]) if found else None
    if found is None or month is None:
        return None
    try:
        day = today.replace(month=month, day=int(found[1] or found[4]))
        day = day if day <= today else day.replace(year=day.year - 1)
    except ValueError:
        return None
    return day, day + timedelta(days=1)


def _month(word: str) -> int | None:
    from assistant.diary import MONTHS

    fits = [place for place, name in enumerate(MONTHS, 1) if len(word) > 2 and name.startswith(word)]
    return fits[0] if len(fits) == 1 else None


def _next_month(first: datetime) -> datetime:
    return (first + timedelta(days=32)).replace(day=1)
