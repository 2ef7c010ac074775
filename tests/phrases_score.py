"""Which phrases of a file are heard exactly.

A line of tests/phrases/*.jsonl is one conversation: `say` the turns, `heard` what must be held after the last (the
names and units of `Reply.heard`), `unread` the words that must be named as not used, `ask` whether a question must come
back.  `tags` may allow more than one answer: "ask-ok" a question, "inferred-one" a count of 1 that was not said,
"ok-intent-X" the intent X.  A phrase is exact when nothing is wrong, missing, extra or needlessly asked; "missed" tags
one that is not yet.
"""

import json
import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from assistant import Conversation, Reply

FOLDER = Path(__file__).with_name("phrases")
CLOSE = 0.005  # relative: 183 cm is as good as 6 ft
SIGNS = {"usd": "$", "dollars": "$", "gbp": "£", "pounds": "£", "eur": "€", "euros": "€"}

# The fields that are compared; a reply may hold others beside them.
PIECE = frozenset(
    """kind count table_shape table_length_in table_width_in table_height_in table_diameter_in coverage
    coverage_fraction overhang_in extra_drop_in length_in height_in span_in sag_in diameter_in max_width_in seats
    colours sizes_in strokes inflated_in foliage style gas balloons""".split()
)
JOB = frozenset(
    """intent budget guests crew outdoors wind_mph altitude_ft temperature_f event_time setup_from drive_miles spare_pct
    markup_pct margin_pct labour_rate deposit_pct tax_pct""".split()
)


@dataclass(frozen=True, slots=True)
class Phrase:
    """One line of a file of phrases."""

    id: str
    say: tuple[str, ...]
    pieces: tuple[dict[str, Any], ...]
    job: dict[str, Any]
    unread: tuple[str, ...]
    ask: bool
    tags: frozenset[str]

    @property
    def intents(self) -> set[str]:
        """Every intent that is as good as the one written; "" stands for none."""
        allowed = {tag.removeprefix("ok-intent-") for tag in self.tags if tag.startswith("ok-intent-")}
        return {"" if intent == "estimate" else intent for intent in {self.job.get("intent", ""), *allowed}}


def read_phrases(path: Path) -> list[Phrase]:
    """The phrases of a file, in order."""
    lines = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    return [
        Phrase(
            id=line["id"],
            say=tuple(line["say"]),
            pieces=tuple(line["heard"].get("pieces", ())),
            job=dict(line["heard"].get("job", {})),
            unread=tuple(line["unread"]),
            ask=line["ask"],
            tags=frozenset(line["tags"]),
        )
        for line in lines
    ]


def verdict(phrase: Phrase) -> str:
    """ "exact", "asked" where it asked or named words as not used, or "silent": the worst."""
    talk = Conversation()
    reply = [talk.say(turn) for turn in phrase.say][-1]
    if not any(_faults(phrase, reply)) and (phrase.unread or not reply.unread):
        return "exact"
    return "asked" if reply.question is not None or reply.unread else "silent"


def faults(phrase: Phrase) -> list[str]:
    """What is wrong with the reply to a phrase, a line each; none where it is exact."""
    talk = Conversation()
    reply = [talk.say(turn) for turn in phrase.say][-1]
    return list(_faults(phrase, reply))


def _faults(phrase: Phrase, reply: Reply) -> Iterator[str]:
    asked = reply.question is not None or (not phrase.pieces and bool(reply.unread))
    if phrase.ask:
        # While it asks, what it holds is a proposal and does not count.
        if not asked:
            yield "no question came back"
    else:
        if reply.question is not None and "ask-ok" not in phrase.tags:
            yield f"a needless question: {reply.question}"
        yield from _fields(phrase, reply.heard.pieces, reply.heard.job)
    told = _words(" ".join([*reply.unread, *reply.cautions]))
    for words in phrase.unread:
        if not _words(words) <= told:
            yield f"not named as unused: {words}"


def _fields(phrase: Phrase, pieces: list[dict[str, Any]], job: dict[str, Any]) -> Iterator[str]:
    if not phrase.intents & {str(job.get("intent", "")).replace("estimate", "")}:
        yield f"intent {job.get('intent')}, not {phrase.job.get('intent')}"
    yield from _differences("job", _without(phrase.job, "intent"), _without(job, "intent"), JOB)
    if len(pieces) != len(phrase.pieces):
        if "compare" not in phrase.intents or job.get("intent") != "compare":
            yield f"{len(pieces)} pieces, not {len(phrase.pieces)}"
        return
    for place, (want, got) in enumerate(zip(phrase.pieces, pieces, strict=True)):
        want, got = _counted(phrase, want, got, job)
        yield from _differences(f"piece {place + 1}", want, got, PIECE)


def _counted(phrase: Phrase, want: Mapping[str, Any], got: Mapping[str, Any], job: Mapping[str, Any]) -> Any:
    """Both pieces without a count that is no more than what the other fields, or a lone piece, imply."""
    if "count" in want and "count" in got:
        return want, got
    implied = {1}
    if job.get("guests") and got.get("seats"):
        implied.add(math.ceil(job["guests"] / got["seats"]))
    count = want.get("count", got.get("count"))
    free = count in implied and ("count" not in want or "inferred-one" in phrase.tags)
    return (_without(want, "count"), _without(got, "count")) if free else (want, got)


def _without(fields: Mapping[str, Any], name: str) -> dict[str, Any]:
    return {key: value for key, value in fields.items() if key != name}


def _differences(where: str, want: Mapping[str, Any], got: Mapping[str, Any], known: frozenset[str]) -> Iterator[str]:
    for key in sorted((want.keys() | got.keys()) & known):
        wanted, found = _plain(key, want.get(key)), _plain(key, got.get(key))
        if not _same(wanted, found):
            yield f"{where} {key}: {found!r}, not {wanted!r}"


def _plain(key: str, value: Any) -> Any:
    """One form of a value: nothing for what is empty, sizes and colours in order, no share of a colour alone."""
    if value in (None, [], {}):
        return None
    if key == "sizes_in":
        return sorted(value)
    if key == "colours":
        alone = len(value) == 1
        colours = [
            {k: v for k, v in colour.items() if v is not None and not (alone and k == "share")} for colour in value
        ]
        return sorted(colours, key=lambda colour: str(_same_text(colour["name"])))
    return value


def _same(want: Any, got: Any) -> bool:
    if isinstance(want, bool) or isinstance(got, bool):
        return want is got
    if isinstance(want, (int, float)) and isinstance(got, (int, float)):
        return math.isclose(want, got, rel_tol=CLOSE)
    if isinstance(want, str) and isinstance(got, str):
        return _same_text(want) == _same_text(got)
    if isinstance(want, (list, tuple)) and isinstance(got, (list, tuple)):
        return len(want) == len(got) and all(map(_same, want, got))
    if isinstance(want, dict) and isinstance(got, dict):
        return want.keys() == got.keys() and all(_same(value, got[key]) for key, value in want.items())
    return bool(want == got)


def _same_text(text: str) -> str:
    plain = text.lower().replace("-", " ").strip()
    return SIGNS.get(plain, plain)


def _words(text: str) -> set[str]:
    return set(re.findall(r"[^\W_]+", text.lower()))
