"""The table runner worked out, against the trade's own figures and geometry.

The field fact (common practice, no published source): 18 balloons to the foot of 5 in ones at one to two strokes, and
a 6 ft runner is 108 balloons, 20 quads and 14 loose pairs.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules.book import load_book
from rules.buying import shopping
from rules.engine import Job, Piece, work
from rules.units import convert

BOOK = load_book()


def estimate_of(job=None, **said):
    return work(BOOK, Job([Piece("runner", {"count": 1, "table_length": 72, **said})], job or {}))


def value(id: str, piece: int | None = 0, job=None, **said):
    figure = estimate_of(job, **said).figure(id, piece)
    return None if figure is None else figure.value


@pytest.mark.parametrize(
    ("said", "feet", "quads", "pairs", "balloons"),
    [
        ({}, 6, 20, 14, 108),
        ({"coverage": "drop_both", "extra_drop": 0}, 11, 37, 25, 198),
        ({"coverage": "drop_both"}, 14, 47, 32, 252),
    ],
)
def test_make_up(said: dict, feet: float, quads: int, pairs: int, balloons: int) -> None:
    estimate = estimate_of(**said)
    found = [estimate.figure(id, 0).value for id in ("decor_length", "quads_each", "loose_pairs_each", "balloons_each")]
    assert found == [feet, quads, pairs, balloons]


@pytest.mark.parametrize(
    ("said", "feet"),
    [
        ({"coverage": "two_thirds"}, 4),
        ({"coverage": "full"}, 6),
        ({"coverage": "drop_one", "extra_drop": 12}, 6 + 42 / 12),
        ({"coverage_fraction": 0.75}, 4.5),
        ({"overhang": 9}, 7.5),
        ({"length": 100}, 100 / 12),
        ({"length": 100, "coverage": "drop_both"}, 100 / 12),
        ({"table_length": None, "table_diameter": 60}, 5),
        ({"table_length": None, "table_diameter": 60, "coverage": "drop_both", "extra_drop": 0}, 10),
        ({"table_length": None, "table_diameter": 60, "ring": True}, math.pi * 5),
        ({"table_length": 48, "table_width": 30, "ring": True}, 13),
        ({"table_shape": "square", "table_length": 36}, 3),
        ({"table_length": 96, "coverage": "drop_both", "extra_drop": 0, "table_height": 30}, 13),
    ],
)
def test_decor_length(said: dict, feet: float) -> None:
    assert value("decor_length", **said) == pytest.approx(feet)


@pytest.mark.parametrize(("feet", "cloth"), [(4, 108), (6, 132), (8, 156)])
def test_full_drop_agrees_with_full_drop_cloth_sizes(feet: int, cloth: int) -> None:
    """Linen charts: full-drop cloths for 4, 6 and 8 ft tables 30 in high are 90 x 108, 90 x 132 and 90 x 156 in."""
    length = value("decor_length", table_length=feet * 12, coverage="drop_both", extra_drop=0, table_height=30)
    assert convert(length, "ft", "in") == pytest.approx(cloth)


def test_size_and_pitch() -> None:
    assert value("quad_diameter") == pytest.approx(4.28, abs=0.005)
    assert value("pair_diameter") == pytest.approx(3.40, abs=0.005)
    assert value("cluster_pitch") == pytest.approx(3.60, abs=0.005)
    assert value("runner_width") == pytest.approx(3.03 * 4.2785, abs=0.02)
    assert value("runner_width", style="classic") == pytest.approx(2.3066 * 4.2785, abs=0.002)


def test_strokes_sizes_and_sizes_said() -> None:
    assert value("quad_diameter", strokes=[1, 1]) == pytest.approx(value("quad_diameter") / 2 ** (1 / 3))
    assert value("quad_diameter", strokes=[1, 1]) == pytest.approx(value("pair_diameter", strokes=[1, 1]))
    assert value("quad_diameter", strokes=[20, 20]) == 5, "never above nominal"
    assert value("quad_diameter", inflated=[4, 4.5]) == 4.5
    assert value("pair_diameter", inflated=[4, 4.5]) == 4
    assert value("quad_diameter", sizes=[11]) == 9.5
    assert value("quad_diameter", sizes=[16]) == 14
    assert value("quad_diameter", sizes=[11], strokes=[3, 3]) == pytest.approx(4.898, abs=0.001)
    assert value("pair_diameter", sizes=[11]) == pytest.approx(9.5 * 0.5 ** (1 / 3))


def test_a_classic_runner_has_no_loose_pairs() -> None:
    estimate = estimate_of(style="classic")
    assert estimate.figure("loose_pairs_each", 0).value == 0
    assert estimate.figure("balloons_each", 0).value == 80


def test_the_rule_of_thumb_stands_beside_the_count() -> None:
    why = estimate_of().figure("balloons_each", 0).why
    assert why == "20 quads and 14 loose pairs; the rule of thumb of 18 a foot would give 108"


def test_the_range_holds_the_trades_figure() -> None:
    figure = estimate_of().figure("balloons_each", 0)
    assert figure.low <= 99
    assert figure.high >= 117
    assert estimate_of().matters("balloons_each", 0)[0].id == "stroke"


def test_a_runner_held_to_a_width() -> None:
    assert value("runner_width", max_width=14) == value("runner_width")
    assert value("runner_width", max_width=10) == pytest.approx(10)
    assert value("quads_each", max_width=10) > 20
    assert estimate_of(max_width=10).figure("quad_diameter", 0).why == (
        "blown smaller than 4.3 in so that the runner is no wider than 10 in"
    )


def test_room_beside_the_runner() -> None:
    assert value("side_room") == pytest.approx((30 - value("runner_width")) / 2)
    assert value("clear_strip", table_width=48) == 18
    assert value("clear_strip") == 0
    assert value("clear_strip", one_sided=True) == 15
    assert value("clear_strip", table_length=None, table_diameter=60) == 30


def test_the_room_note() -> None:
    (note,) = estimate_of().notes()
    assert note.text == "Room: a 13 in runner leaves 8.5 in on each side; a place setting wants 15 in."
    (tight,) = estimate_of(table_width=42).notes()
    assert tight.text.endswith("Balloons of 4 in would fit.")
    fitting = value("fitting_diameter", table_width=42)
    assert value("runner_width", table_width=42, inflated=[fitting * 2 ** (-1 / 3), fitting]) == pytest.approx(12)
    assert estimate_of(table_width=48).notes() == []


def test_clashes() -> None:
    (clash,) = estimate_of(max_width=36, table_width=30).clashes()
    assert (clash.text, clash.drop) == ("A 36 in runner is wider than the 30 in table.", ["max_width"])
    assert [clash.id for clash in estimate_of(overhang=8, coverage="drop_both").clashes()] == ["overhang_and_drop"]
    assert [clash.id for clash in estimate_of(coverage_fraction=0.5, coverage="two_thirds").clashes()] == [
        "two_coverages"
    ]
    assert estimate_of(coverage="drop_both", max_width=14).clashes() == []


def test_cautions() -> None:
    ids = [said.id for said in estimate_of(coverage="drop_both", foliage=True).cautions()]
    assert [id for id in ("choking", "latex_allergy", "flame", "trip", "wire_picks") if id in ids] == [
        "choking",
        "latex_allergy",
        "flame",
        "trip",
        "wire_picks",
    ]
    plain = [said.id for said in estimate_of().cautions()]
    assert "trip" not in plain
    assert "wire_picks" not in plain


def test_what_must_be_asked() -> None:
    def gaps(said, job=None):
        return work(BOOK, Job([Piece("runner", said)], job or {})).missing(0)

    assert gaps({}) == ["count", "table_length"]
    assert gaps({"count": 8}) == ["table_length"]
    assert gaps({"count": 8, "table_shape": "round"}) == ["table_diameter"]
    assert gaps({"count": 8, "length": 100}) == []
    assert gaps({"seats": 8, "table_length": 72}, {"guests": 100}) == []
    assert gaps({"seats": 8, "table_length": 72}) == ["count"]


def test_tables_from_guests() -> None:
    estimate = work(BOOK, Job([Piece("runner", {"seats": 8, "table_length": 72})], {"guests": 100}))
    assert (estimate.figure("count", 0).value, estimate.figure("count", 0).why) == (13, "100 guests at 8 to a table")


def test_the_job_adds_up() -> None:
    pieces = [
        Piece("runner", {"count": 8, "table_length": 72, "coverage": "drop_both"}),
        Piece("runner", {"count": 2, "table_length": 96, "foliage": True}),
    ]
    estimate = work(BOOK, Job(pieces, {}))
    each = [estimate.figure("balloons", place).value for place in (0, 1)]
    assert each[0] == 8 * 252
    assert estimate.figure("balloons_all").value == sum(each)
    assert estimate.figure("balloons_to_buy").value == math.ceil(sum(each) * 1.1 - 1e-9)
    assert estimate.figure("line_length").value == pytest.approx(8 * 17 + 2 * 11)
    assert estimate.figure("stems_all").value == 2 * 16
    hours = [estimate.figure("hours_of_piece", place).value for place in (0, 1)]
    assert estimate.figure("hours_hands_on").value == pytest.approx(sum(hours))
    assert estimate.figure("materials_cost").unit == "USD"


def test_hours_agree_with_the_best_all_in_figure() -> None:
    """20 outdoor arches of 216 balloons took 4 people 10 h: 108 balloons an hour all in (common practice)."""
    estimate = estimate_of(count=8, coverage="drop_both")
    pace = estimate.figure("balloons_all").value / estimate.figure("hours_hands_on").value
    assert pace == pytest.approx(108, rel=0.1)


def test_price_by_markup_and_by_margin() -> None:
    by_margin = estimate_of({"margin": 60})
    by_markup = estimate_of({"markup": 150})
    assert by_margin.figure("price").value == by_markup.figure("price").value
    assert by_markup.figure("margin_made").value == pytest.approx(60)
    assert by_markup.figure("price").value == pytest.approx(by_markup.figure("cost").value * 2.5, abs=0.02)
    assert [clash.id for clash in estimate_of({"margin": 50, "markup": 50}).clashes()] == ["markup_and_margin"]
    assert estimate_of({"margin": 60, "markup": 150}).clashes() == []


def test_driving_is_there_and_back() -> None:
    assert value("travel_cost", None, {"drive_distance": 10}) == pytest.approx(14)
    assert value("travel_cost", None) == 0


def test_what_was_taken_is_said_shortly() -> None:
    taken = estimate_of(coverage="drop_both").taken(0)
    assert "18 in settling at each end" in taken
    assert "tables 30 in high" in taken
    assert "no greenery" in taken


def test_metric_and_imperial_say_the_same() -> None:
    inches = estimate_of(table_length=convert(180, "cm", "in"))
    feet = estimate_of(table_length=convert(1.8, "m", "in"))
    assert inches.figure("quads_each", 0).value == feet.figure("quads_each", 0).value


COUNTS = st.integers(1, 60)
LENGTHS = st.floats(24, 240)
COVERAGES = st.sampled_from(["two_thirds", "full", "drop_both", "drop_one"])


@given(COUNTS, LENGTHS, COVERAGES)
def test_more_tables_never_fewer_balloons(count: int, length: float, coverage: str) -> None:
    fewer = estimate_of(count=count, table_length=length, coverage=coverage)
    more = estimate_of(count=count + 1, table_length=length, coverage=coverage)
    for id in ("balloons", "line_of_piece", "hours_of_piece", "volume_of_piece"):
        assert more.figure(id, 0).value > fewer.figure(id, 0).value


@given(LENGTHS, st.floats(0.5, 60))
def test_a_longer_table_never_fewer_quads(length: float, more: float) -> None:
    assert value("quads_each", table_length=length + more) >= value("quads_each", table_length=length)


@given(COUNTS, LENGTHS, COVERAGES, st.sampled_from(["organic", "classic"]))
def test_ranges_hold_their_value_and_pieces_add_up(count: int, length: float, coverage: str, style: str) -> None:
    estimate = estimate_of(count=count, table_length=length, coverage=coverage, style=style)
    for figure in estimate.figures():
        if figure.low is not None:
            assert figure.low <= figure.value <= figure.high, figure
    quads, pairs, each = (estimate.figure(id, 0).value for id in ("quads_each", "loose_pairs_each", "balloons_each"))
    assert each == 4 * quads + 2 * pairs
    assert sum(part.count for part in estimate.parts(0)) == each * count


@given(
    COUNTS,
    LENGTHS,
    st.lists(
        st.tuples(st.sampled_from(["navy", "gold", "white", "sage"]), st.none() | st.floats(0.05, 0.5)), max_size=4
    ),
    st.sampled_from([[5], [11], [5, 11]]),
    st.integers(0, 40),
)
def test_packs_cover_the_need(count: int, length: float, colours: list, sizes: list[int], spare: int) -> None:
    colours = list({name: (name, share) for name, share in colours}.values())
    estimate = estimate_of({"spare": spare}, count=count, table_length=length, colours=colours, sizes=sizes)
    rows = shopping(estimate)
    assert sum(row.need for row in rows) == estimate.figure("balloons", 0).value
    for row in rows:
        assert row.bought >= row.with_spares >= row.need * (1 + spare / 100) - 1e-6
        assert 0 <= row.left < 25, "the smallest bag of these sizes holds 25"
        assert row.need % 2 == 0, "pairs are kept whole"


def test_shopping_by_colour() -> None:
    rows = shopping(estimate_of(count=8, coverage="drop_both", colours=[("navy", 0.5), "gold", "white"]))
    assert [(row.size_in, row.colour, row.need, row.with_spares, row.bags, row.left) for row in rows] == [
        (5, "navy", 1008, 1109, ((100, 11), (25, 1)), 16),
        (5, "gold", 504, 555, ((100, 5), (50, 1), (25, 1)), 20),
        (5, "white", 504, 555, ((100, 5), (50, 1), (25, 1)), 20),
    ]


def test_shopping_without_colours_is_one_row() -> None:
    (row,) = shopping(estimate_of(count=8, coverage="drop_both"))
    assert (row.colour, row.need, row.with_spares, row.bags, row.left) == (None, 2016, 2218, ((100, 22), (25, 1)), 7)


def test_nothing_to_buy_while_nothing_can_be_counted() -> None:
    assert shopping(work(BOOK, Job([Piece("runner", {})], {}))) == []


def test_every_use_is_a_figure() -> None:
    estimate = estimate_of(coverage="drop_both")
    known = {("job" if figure.piece is None else str(figure.piece), figure.id) for figure in estimate.figures()}
    for figure in estimate.figures():
        for use in figure.uses:
            where, _, id = use.rpartition(".")
            scope = where or ("job" if figure.piece is None else str(figure.piece))
            assert (scope, id) in known, (figure.id, use)
