"""Files of phrases: each phrase must be heard exactly, but for those tagged "missed".

Take the tag away when the reading improves. So that not all are tagged, a file has a share that must be exact: a floor
two points under what was measured last.
"""

from dataclasses import replace
from typing import Any

import pytest

from tests.phrases_score import FOLDER, Phrase, faults, read_phrases

FLOORS = {
    "spanish": 0.97,
    "spanish_2": 0.92,
    "one_turn": 0.98,
    "one_turn_2": 0.94,
    "talk": 0.97,
    "talk_2": 0.95,
    "mixed": 0.96,
    "busy": 0.92,
    "nothing": 0.98,
    "fresh": 0.93,
    "fresh_2": 0.98,
    "talk_3": 0.98,
    "free": 0.97,
    "free_talk": 0.94,
    "siblings": 0.96,
    "consult": 0.98,
    "consult_2": 0.80,
}


@pytest.mark.parametrize("name", FLOORS)
def test_as_much_is_heard_exactly_as_before(name: str) -> None:
    phrases = read_phrases(FOLDER / f"{name}.jsonl")
    wrong = [phrase for phrase in phrases if faults(phrase)]
    assert [(phrase.id, faults(phrase)) for phrase in wrong if "missed" not in phrase.tags] == []
    assert len(wrong) <= (1 - FLOORS[name]) * len(phrases)


def test_every_file_of_phrases_has_a_floor() -> None:
    assert {path.stem for path in FOLDER.glob("*.jsonl")} == set(FLOORS)


def test_ids_are_given_once() -> None:
    ids = [phrase.id for path in FOLDER.glob("*.jsonl") for phrase in read_phrases(path)]
    assert len(ids) == len(set(ids))


RIGHT = Phrase(
    id="right",
    say=("eight 6 ft tables, navy",),
    pieces=({"kind": "runner", "count": 8, "table_length_in": 72, "colours": [{"name": "navy"}]},),
    job={},
    unread=(),
    ask=False,
    tags=frozenset(),
)


def test_a_right_reading_has_no_faults() -> None:
    assert faults(RIGHT) == []


@pytest.mark.parametrize(
    ("wrong", "fault"),
    [
        ({"pieces": ({**RIGHT.pieces[0], "count": 9},)}, "piece 1 count: 8, not 9"),
        ({"pieces": ({**RIGHT.pieces[0], "seats": 6},)}, "piece 1 seats: None, not 6"),
        ({"pieces": ({"kind": "runner", "count": 8, "table_length_in": 72},)}, "colours: [{'name': 'navy'}], not None"),
        ({"pieces": (*RIGHT.pieces, {"kind": "arch"})}, "1 pieces, not 2"),
        ({"job": {"intent": "undo"}}, "intent None, not undo"),
        ({"ask": True}, "no question came back"),
        ({"unread": ("tables",)}, "not named as unused: tables"),
        ({"say": ("eight tables, navy",)}, "a needless question: How long is each table?"),
    ],
)
def test_each_sort_of_fault_is_seen(wrong: dict[str, Any], fault: str) -> None:
    assert any(fault in found for found in faults(replace(RIGHT, **wrong)))
