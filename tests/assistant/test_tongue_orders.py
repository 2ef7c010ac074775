"""Every order that is heard in the reader's own words is heard in each other language as well."""

from collections.abc import Iterator

import pytest

from assistant import job_words
from grammar.talk.habits import read_habit
from grammar.talk.orders import find_orders
from grammar.talk.used import is_said, read_reports
from grammar.tokens.scan import scan
from grammar.tokens.tongue import COLOUR, NUMBER, REST, Tongue, tongues
from grammar.word_files import load_words

LANGUAGES = pytest.mark.parametrize("tongue", tongues(), ids=lambda tongue: str(tongue.code))


def meanings(tongue: Tongue) -> Iterator[str]:
    """What the phrases of a language come to in the reader's words, each slot filled."""
    colour = min(tongue.colours)
    texts = {means for phrases in tongue.phrases.values() for _, means in phrases}
    for text in sorted(texts):
        yield text.replace(REST, "garden").replace(NUMBER, "12").replace(COLOUR, colour)


@LANGUAGES
def test_every_question_and_order_of_the_estimate_is_heard(tongue: Tongue) -> None:
    heard = {order.intent for text in meanings(tongue) for order in find_orders(scan(text))}
    assert set(load_words("orders.toml")) - heard == set()


@LANGUAGES
def test_every_order_to_the_job_book_is_heard(tongue: Tongue) -> None:
    orders = [job_words.read_order(text) for text in meanings(tongue)]
    assert {what for what, _ in job_words.ORDERS} - {order.what for order in orders if order} == set()


@LANGUAGES
def test_every_span_of_time_is_heard(tongue: Tongue) -> None:
    texts = set(meanings(tongue))
    assert [span for span in job_words.SPANS if f"jobs from {span}" not in texts] == []


@LANGUAGES
def test_every_act_about_house_rules_is_heard(tongue: Tongue) -> None:
    habits = [read_habit(said) for text in meanings(tongue) for said in (text, f"{text} 12 %")]
    acts = {"show", "ask", "forget", "forget all", "last", "keep", "habit", "mine"}
    assert acts - {habit.act for habit in habits if habit} == set()


@LANGUAGES
def test_every_report_of_a_finished_job_is_heard(tongue: Tongue) -> None:
    texts = list(meanings(tongue))
    reports = {report.measure for text in texts for report in read_reports(text, (5, 11))[0]}
    assert {"balloons", "hours", "lost", "left"} - reports == set()
    assert [
        said for said in ("show", "forget_all", "forget_last") if not any(is_said(said, text) for text in texts)
    ] == []
