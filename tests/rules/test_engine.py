"""The engine on small books: order of facts, choices of rules, gaps, traces, totals, remarks."""

import json
import math
from dataclasses import FrozenInstanceError, asdict
from typing import Any

import pytest

from rules.book import build_book, read_blocks
from rules.engine import KEPT_WORLDS, Job, Piece, work
from tests.rules.small_books import BASE, book_of, fact, runner

BASE_SHOWING_A = BASE.replace('shows = ["table_length"]', 'shows = ["a_width"]').replace(
    'main = "table_length"', 'main = "a_width"'
)


def test_said_goes_before_all() -> None:
    book = book_of(fact("a_width", is_="table_length / 2", assume=9))
    assert runner(book, {"table_length": 72, "a_width": 5}).figure("a_width", 0).value == 5
    figure = runner(book, {"table_length": 72}).figure("a_width", 0)
    assert (figure.value, figure.how, figure.uses) == (36, "worked out", ["table_length"])


def test_assumed_comes_last_and_a_gap_gives_no_figure() -> None:
    book = book_of(fact("a_width", assume=9) + fact("b_width", is_="table_length / 2"))
    figure = runner(book, {}).figure("a_width", 0)
    assert (figure.value, figure.how, figure.why) == (9, "assumed", "a reason")
    assert runner(book, {}).figure("b_width", 0) is None
    assert runner(book, {}).trouble("b_width", 0) == "length of table is not known"
    assert runner(book, {}).figure("no_such_thing", 0) is None


EXCEPTIONS = (
    fact("a_width", is_="table_length")
    + """
    [[a_width.except]]
    name = "round"
    when = "shape is round"
    is   = "table_length / 2"
    why  = "half of {table_length}"
    source = "geometry"
    [[a_width.except]]
    name = "green"
    when = "greenery is true"
    is   = "table_length / 3"
"""
)


def test_the_first_exception_that_holds_wins() -> None:
    book = book_of(EXCEPTIONS)
    assert runner(book, {"table_length": 72}).figure("a_width", 0).value == 72
    assert runner(book, {"table_length": 72, "greenery": True}).figure("a_width", 0).value == 24
    both = runner(book, {"table_length": 72, "greenery": True, "shape": "round"}).figure("a_width", 0)
    assert (both.value, both.why, both.source) == (36, "half of 72 in", "geometry")
    assert both.uses == ["table_length", "shape"]


def test_known_guards_a_gap() -> None:
    book = book_of(fact("a_width", is_="if known(table_length) then table_length else 3 in"))
    assert runner(book, {}).figure("a_width", 0).value == 3
    assert runner(book, {"table_length": 40}).figure("a_width", 0).value == 40


def test_an_assumed_fact_is_not_known() -> None:
    book = book_of(fact("b_width", assume=4) + fact("a_width", is_="if known(b_width) then 1 in else 2 in"))
    assert runner(book, {}).figure("a_width", 0).value == 2
    assert runner(book, {"b_width": 4}).figure("a_width", 0).value == 1


def test_house_goes_before_rules_and_after_said() -> None:
    book = book_of(fact("a_width", is_="table_length / 2"))
    house = build_book([*book.blocks, *read_blocks("house.toml", "[a_width]\nassume = 7", from_house=True)])
    figure = runner(house, {"table_length": 72}).figure("a_width", 0)
    assert (figure.value, figure.how, figure.source) == (7, "house", "the house file")
    assert runner(house, {"table_length": 72, "a_width": 3}).figure("a_width", 0).how == "said"


def test_missing_names_every_gap_in_order() -> None:
    text = (
        fact("a_width", is_="b_width * c_width / table_length")
        + fact("b_width")
        + fact("c_width", is_="b_width + d_width")
    )
    book = book_of(text + fact("d_width"), base=BASE_SHOWING_A)
    assert runner(book, {}).missing(0) == ["b_width", "d_width", "table_length"]
    assert runner(book, {"b_width": 1, "table_length": 2}).missing(0) == ["d_width"]
    assert runner(book, {"b_width": 1, "table_length": 2, "d_width": 3}).missing(0) == []


def test_missing_follows_only_the_way_taken() -> None:
    text = fact("a_width", is_="if shape is round then b_width else table_length") + fact("b_width")
    book = book_of(text, base=BASE_SHOWING_A)
    assert runner(book, {}).missing(0) == ["table_length"]
    assert runner(book, {"shape": "round"}).missing(0) == ["b_width"]


def test_missing_when_no_exception_holds_and_no_general_rule_stands() -> None:
    text = fact("a_width") + '[[a_width.except]]\nname = "r"\nwhen = "shape is round"\nis = "1 in"\n'
    assert runner(book_of(text, base=BASE_SHOWING_A), {}).missing(0) == ["a_width"]


TOO_FAR = "a number in it is outside what can be reckoned with"


@pytest.mark.parametrize(
    ("formula", "trouble"),
    [
        ("table_length / 0", "a width cannot be worked out: it divides by nothing"),
        ("table_length * (0 - 1) ^ 0.5", f"a width cannot be worked out: {TOO_FAR}"),
        ("table_length * 10 ^ 400", f"a width cannot be worked out: {TOO_FAR}"),
        ("table_length * 10 ^ 308 * 10", "a width cannot be worked out: it has no end"),
        ("table_length * sqrt(0 - 4)", f"a width cannot be worked out: {TOO_FAR}"),
        (
            "nested_pitch(4, 0 in)",
            "a width cannot be worked out: the balloon diameter must be more than 0 in; 0 in was given",
        ),
    ],
)
def test_impossible_arithmetic_leaves_the_figure_out(formula: str, trouble: str) -> None:
    estimate = runner(book_of(fact("a_width", is_=formula) + fact("b_width", is_="a_width * 2")), {"table_length": 72})
    assert estimate.figure("a_width", 0) is None
    assert estimate.trouble("a_width", 0) == trouble
    assert estimate.figure("b_width", 0) is None
    assert estimate.figure("table_length", 0).value == 72


def test_a_value_that_cannot_be_read_is_no_traceback() -> None:
    estimate = runner(book_of(""), {"table_length": "long"})
    assert estimate.figure("table_length", 0) is None
    assert estimate.trouble("table_length", 0) == "length of table cannot be read: 'long' is not a number with a unit"


JOB_FACTS = (
    fact("all_length", "in", "job", is_="total(table_length)")
    + fact("longest", "in", "job", is_="most(table_length)")
    + fact("shortest", "in", "job", is_="least(table_length)")
    + fact("green_ones", "count", "job", whole=True, is_="total(greenery)")
    + fact("share", "count", "job", assume=0.5)
    + fact("a_width", is_="table_length * share")
)


def test_the_job_looks_over_its_pieces() -> None:
    pieces = [
        Piece("runner", {"table_length": 72}),
        Piece("runner", {}),
        Piece("runner", {"table_length": 96, "greenery": True}),
    ]
    estimate = work(book_of(JOB_FACTS), Job(pieces, {}))
    assert [estimate.figure(id).value for id in ("all_length", "longest", "shortest", "green_ones")] == [168, 96, 72, 1]
    assert estimate.figure("all_length").uses == ["0.table_length", "2.table_length"]
    figure, inputs = estimate.explain("all_length")
    assert (figure.piece, [(used.piece, used.value) for used in inputs]) == (None, [(0, 72), (2, 96)])


def test_no_pieces_total_nothing_and_have_no_most() -> None:
    estimate = work(book_of(JOB_FACTS), Job([], {}))
    assert estimate.figure("all_length").value == 0
    assert estimate.figure("longest") is None


def test_a_piece_falls_through_to_the_job() -> None:
    estimate = runner(book_of(JOB_FACTS), {"table_length": 72}, {"share": 0.25})
    figure = estimate.figure("a_width", 0)
    assert (figure.value, figure.uses) == (18, ["table_length", "job.share"])
    assert estimate.figure("share", 0) == estimate.figure("share")
    assert estimate.figure("share").how == "said"


def test_an_unchanged_piece_is_not_worked_out_again() -> None:
    book = book_of(JOB_FACTS)
    first = work(book, Job([Piece("runner", {"table_length": 72})], {}))
    again = work(book, Job([Piece("runner", {"table_length": 90}), Piece("runner", {"table_length": 72})], {}))
    assert first.step("a_width", 0) is again.step("a_width", 1)
    assert again.figure("a_width", 0).value == 45


def test_the_store_of_pieces_stays_small() -> None:
    book = book_of("")
    for length in range(KEPT_WORLDS + 50):
        runner(book, {"table_length": 20 + length})
    assert len(book.worlds) <= KEPT_WORLDS


def test_a_heard_name_may_mean_another_fact() -> None:
    base = BASE_SHOWING_A.replace('main = "a_width"', 'hears = { balloons = "table_length" }')
    assert runner(book_of(fact("a_width", assume=1), base=base), {"balloons": 12}).figure("table_length", 0).value == 12


REMARKS = """
[low]
kind = "caution"
of = ["any"]
text = "Mind {table_length}."
source = "common practice, no published source"
rank = 2
[high]
kind = "caution"
of = ["any"]
when = "table_length > 6 ft"
text = "Long."
source = "common practice, no published source"
rank = 1
[hint]
kind = "note"
of = ["job"]
text = "Ask the venue."
[both]
kind = "clash"
of = ["runner"]
when = "shape is round and known(table_length)"
text = "A round table has no length, {table_length:ft}."
choices = ["a diameter of {table_length}"]
drop = ["table_length"]
"""


def test_remarks() -> None:
    pieces = [
        Piece("runner", {"table_length": 72}),
        Piece("runner", {"table_length": 72}),
        Piece("runner", {"table_length": 96, "shape": "round"}),
    ]
    estimate = work(book_of(REMARKS), Job(pieces, {}))
    assert [(said.piece, said.text) for said in estimate.cautions()] == [
        (2, "Long."),
        (0, "Mind 72 in."),
        (2, "Mind 96 in."),
    ]
    assert [said.text for said in estimate.notes()] == ["Ask the venue."]
    (clash,) = estimate.clashes()
    assert (clash.piece, clash.text, clash.choices) == (
        2,
        "A round table has no length, 8 ft.",
        ["a diameter of 96 in"],
    )
    assert clash.drop == ["table_length"]


def test_a_remark_that_reads_a_gap_is_not_made() -> None:
    assert [said.id for said in runner(book_of(REMARKS), {}).cautions()] == ["low"]
    assert runner(book_of(REMARKS), {}).cautions()[0].text == "Mind unknown."


def test_reasons_in_metric() -> None:
    book = book_of(fact("a_width", is_="table_length / 2", digits=0) + 'show = "ft"\n' + fact("b_width", is_="a_width"))
    estimate = runner(book, {"table_length": 100})
    estimate.metric = True
    assert estimate.figure("table_length", 0).why == "you said 254 cm"
    assert estimate.figure("table_length", 0).unit == "in"


def test_figures_are_frozen_and_plain_json() -> None:
    figure = runner(book_of(""), {"table_length": 72}).figure("table_length", 0)
    with pytest.raises(FrozenInstanceError):
        figure.value = 3
    assert json.loads(json.dumps(asdict(figure)))["value"] == 72


def base_showing(*shown: str) -> str:
    """The base book whose runner shows these, the first of them the main one."""
    listed = ", ".join(f'"{id}"' for id in shown)
    return BASE.replace('shows = ["table_length"]\nmain = "table_length"', f'shows = [{listed}]\nmain = "{shown[0]}"')


def assumed(text: str, *shown: str) -> list[str]:
    estimate = runner(book_of(text, base=base_showing(*shown)), {})
    return [figure.id for figure in estimate.assumed(0)]


def test_what_moves_the_main_figure_is_told_first_however_far_another_moves_the_rest() -> None:
    text = fact("far", assume=(1, 100, 200)) + fact("near", assume=(9.9, 10, 10.1)) + fact("wide", assume=(8, 10, 12))
    text += fact("side", is_="far") + fact("main", is_="near + wide")
    assert assumed(text, "main", "side") == ["wide", "near", "far"]
    assert assumed(text, "side", "main") == ["far", "wide", "near"]


def test_how_far_an_input_moves_a_figure_is_a_share_of_that_figure() -> None:
    """5 of 1000 is less than 1 of 10."""
    text = fact("five", assume=(5, 10, 15)) + fact("one", assume=(9, 10, 11)) + fact("main", is_="1 in")
    text += fact("long", is_="five + 990 in") + fact("short", is_="one")
    assert assumed(text, "main", "long", "short") == ["one", "five"]


def test_an_input_counts_where_it_moves_most_and_to_the_side_on_which_it_moves_most() -> None:
    text = fact("up", assume=(10, 10, 14)) + fact("down", assume=(7, 10, 10)) + fact("both", assume=(8, 10, 12))
    text += fact("main", is_="up + down + both") + fact("again", is_="both")
    assert assumed(text, "main", "again") == ["up", "down", "both"]


def test_inputs_of_a_figure_that_is_nothing_are_told_by_how_far_they_move_it() -> None:
    text = fact("some", assume=(9, 10, 11)) + fact("more", assume=(7, 10, 13)) + fact("main", is_="some - more")
    assert assumed(text, "main") == ["more", "some"]


def test_a_range_that_only_a_condition_reads_is_not_told() -> None:
    gated = fact("main", is_="wide") + '[[main.except]]\nname = "gate"\nwhen = "gate > 5 in"\nis = "wide * 2"\n'
    text = fact("gate", assume=(1, 2, 3)) + fact("wide", assume=(8, 10, 12)) + gated
    assert assumed(text, "main") == ["wide"]


def test_a_range_that_moves_nothing_is_not_told_and_a_plain_assumption_is_told_last() -> None:
    text = fact("idle", assume=(1, 2, 3)) + fact("plain", assume=4) + fact("wide", assume=(8, 10, 12))
    text += fact("main", is_="plain + wide + 0 * idle")
    assert assumed(text, "main") == ["wide", "plain"]


def test_what_was_taken_leaves_out_the_quiet_and_says_the_rest_in_the_book_s_words() -> None:
    text = fact("hush", assume=(1, 2, 3), quiet=True) + fact("high", assume=(28, 30, 32), short="tables {high} high")
    text += fact("wide", assume=4) + fact("main", is_="hush + high + wide")
    estimate = runner(book_of(text, base=base_showing("main")), {})
    assert estimate.taken(0) == ["tables 30 in high", "wide 4 in"]


def ranges(formula: str, said: dict[str, Any] | None = None, of: str = "hours") -> dict[str, Any]:
    """Low and high of figures, where jobs that are done left half of the range of `hours`, which `formula` gives."""
    learned = (
        f'learned = {{ jobs = 3, of = "{of}", of_piece = "hours", factor = 1.0, jobs_factor = 1.0, left = 0.5 }}\n'
    )
    text = fact("wide", assume=(8, 10, 12)) + fact("apart", assume=(4, 5, 6)) + fact("hours", is_=formula)
    text += fact("pace", "count", assume=(0.9, 1, 1.1)) + learned + fact("beside", is_="apart * pace")
    figures = {id: runner(book_of(text), said or {}).figure(id, 0) for id in ("hours", "beside")}
    return {id: (figure.low, figure.high) for id, figure in figures.items()}


def test_what_jobs_told_of_a_figure_narrows_the_inputs_it_rests_on_and_no_others() -> None:
    """10 +- 2 with half of it left is 10 +- 1; the learned pace keeps its own +- 1, and 5 apart its +- 1."""
    found = ranges("wide * pace")
    assert found["hours"] == pytest.approx((10 - math.sqrt(1 + 1), 10 + math.sqrt(1 + 1)))
    assert found["beside"] == pytest.approx((5 - math.sqrt(1 + 0.25), 5 + math.sqrt(1 + 0.25)))


def test_a_range_that_was_said_stays_as_it_was_said() -> None:
    found = ranges("wide * pace", {"wide": (6, 14)})
    assert found["hours"] == pytest.approx((10 - math.sqrt(16 + 1), 10 + math.sqrt(16 + 1)))


def test_nothing_is_narrowed_where_what_was_learned_is_not_used() -> None:
    assert ranges("wide * 2")["hours"] == pytest.approx((16, 24))


def test_a_figure_of_the_piece_is_enough_where_that_of_the_job_is_not_at_hand() -> None:
    found = ranges("wide * pace", of="hours_of_all")
    assert found["hours"] == pytest.approx((10 - math.sqrt(2), 10 + math.sqrt(2)))
    assert found["beside"] == pytest.approx((5 - math.sqrt(1.25), 5 + math.sqrt(1.25)))
