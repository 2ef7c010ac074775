"""Learning from finished jobs against posteriors worked out by other means, and over whole careers.

The posterior of a normal mean with known variance is textbook (Gelman and others, Bayesian Data Analysis, 2.5, from
memory); here it is integrated numerically by scipy from prior and likelihood, without the closed form.
"""

import math
import random

import numpy as np
import pytest
from scipy import integrate, stats

from rules import Job, Piece, load_book, work
from rules.learning import NINETY, Done, Way, way_of
from rules.lessons import Used, as_blocks, lesson_for, lessons, ways

CAREERS, JOBS = 500, 20
BOOK = (100.0, 87.0, 118.0)  # what the book expects: typical, low, high


def done(ratio: float, expected: float = 100.0) -> Done:
    scale = expected / BOOK[0]
    return Done(ratio * expected, expected, BOOK[1] * scale, BOOK[2] * scale)


def test_ninety_is_what_scipy_says() -> None:
    assert pytest.approx(stats.norm.ppf(0.95), abs=1e-12) == NINETY


@pytest.mark.parametrize("ratios", [[1.12], [0.8, 0.9], [1.3, 1.2, 1.25, 1.1], [1.05] * 10, [0.7, 1.4, 1.0]])
@pytest.mark.parametrize("scatter", [0.03, 0.06, 0.15])
def test_the_posterior_is_that_of_a_direct_integration(ratios: list[float], scatter: float) -> None:
    way = way_of([done(ratio) for ratio in ratios], scatter)
    prior = math.log(BOOK[2] / BOOK[1]) / (2 * stats.norm.ppf(0.95))

    def density(mean: float) -> float:
        likelihood = np.prod(stats.norm.pdf(np.log(ratios), mean, scatter))
        return float(stats.norm.pdf(mean, 0, prior) * likelihood)

    grid = np.linspace(-1, 1, 4001)
    likely = np.array([density(mean) for mean in grid])
    likely /= likely.max()
    whole = integrate.simpson(likely, x=grid)
    mean = integrate.simpson(grid * likely, x=grid) / whole
    square = integrate.simpson((grid - mean) ** 2 * likely, x=grid) / whole
    ends = np.interp(math.log(way.range[0]), grid, integrate.cumulative_trapezoid(likely, grid, initial=0))
    below = ends / whole
    assert way.mean == pytest.approx(mean, abs=1e-6)
    assert way.deviation == pytest.approx(math.sqrt(square), rel=1e-4)
    assert below == pytest.approx(0.05, abs=1e-4)


def careers(scatter: float, spread: float, seed: int) -> list[tuple[float, list[Way]]]:
    """True factors drawn as the book's range says, and what was learned after each job of each career."""
    chance = random.Random(seed)  # noqa: S311 - a study, no secret
    found = []
    for _ in range(CAREERS):
        truth = chance.gauss(0.0, spread)
        jobs = [done(math.exp(chance.gauss(truth, scatter)), chance.uniform(50, 3000)) for _ in range(JOBS)]
        found.append((math.exp(truth), [way_of(jobs[: n + 1], scatter) for n in range(JOBS)]))
    return found


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_over_500_careers_the_range_holds_the_truth_nine_times_in_ten(seed: int) -> None:
    spread = done(1.0).spread
    lived = careers(0.06, spread, seed)
    for after in (1, 4, 20):
        held = sum(way[after - 1].range[0] <= truth <= way[after - 1].range[1] for truth, way in lived)
        assert 0.85 <= held / CAREERS <= 0.95


def test_after_twenty_jobs_a_decorators_rate_is_within_three_percent() -> None:
    off = sorted(abs(way[-1].factor / truth - 1) for truth, way in careers(0.06, done(1.0).spread, 7))
    assert off[int(0.95 * CAREERS)] < 0.03  # 19 careers of 20; the mean of 20 jobs is that uncertain by itself
    assert off[CAREERS // 2] < 0.012


def test_one_job_moves_it_a_little_and_ten_a_lot() -> None:
    one, ten = way_of([done(1.2)], 0.15), way_of([done(1.2)] * 10, 0.15)
    assert 1.0 < one.factor < 1.06
    assert 1.12 < ten.factor < 1.2
    assert one.left > 0.8
    assert ten.left < 0.55


def test_the_order_of_jobs_tells_nothing() -> None:
    jobs = [done(ratio) for ratio in (1.1, 0.9, 1.3, 1.0)]
    assert way_of(jobs, 0.06) == way_of(jobs[::-1], 0.06)


# over the book ----------------------------------------------------------------------------------------------------

PIECES = {
    "runner_count": Piece("runner", {"count": 20, "table_length": 96}),
    "classic_count": Piece("garland", {"length": 1200, "style": "classic"}),
    "organic_count": Piece("garland", {"length": 1200, "style": "organic"}),
    "wall_count": Piece("wall", {"span": 480, "height": 480, "style": "classic"}),
}


@pytest.mark.parametrize("ratio", [0.85, 1.0, 1.15])
@pytest.mark.parametrize("id", PIECES)
def test_what_was_learned_moves_the_count_by_what_was_used(id: str, ratio: float) -> None:
    book, job = load_book(), Job([PIECES[id]], {})
    before = work(book, job)
    figure = before.figure("balloons", 0)
    assert figure is not None
    assert figure.low is not None
    assert figure.high is not None
    lesson = lesson_for(book, before, "balloons", 0)
    assert lesson is not None
    assert lesson.id == id
    expected = float(figure.value)
    used = [Used(id, PIECES[id].kind, Done(expected * ratio, expected, figure.low, figure.high))] * 10
    learned = ways(book, used)
    after = work(load_book(as_blocks(book, learned)), job).figure("balloons", 0)
    assert after is not None
    assert after.low is not None
    assert after.high is not None
    assert after.value == pytest.approx(expected * learned[id, PIECES[id].kind].factor, rel=0.03)
    assert after.high / after.low < figure.high / figure.low


def test_hours_go_by_what_they_took_and_their_range_shrinks() -> None:
    book, job = load_book(), Job([PIECES["runner_count"]], {})
    figure = work(book, job).figure("hours_hands_on")
    assert figure is not None
    assert figure.low is not None
    assert figure.high is not None
    hours = Done(float(figure.value) * 1.3, float(figure.value), figure.low, figure.high)
    learned = ways(book, [Used("hours", "job", hours)] * 10)
    after = work(load_book(as_blocks(book, learned)), job).figure("hours_hands_on")
    assert after is not None
    assert after.low is not None
    assert after.high is not None
    assert after.value == pytest.approx(float(figure.value) * learned["hours", "job"].factor, rel=0.01)
    assert after.how == "worked out"
    assert after.high / after.low < figure.high / figure.low


def test_a_rule_of_the_house_stands_over_what_was_learned() -> None:
    book = load_book()
    learned = ways(book, [Used("runner_count", "runner", done(1.2))])
    assert as_blocks(book, learned, [("tightness",)]) == ""
    assert as_blocks(book, learned, [("runner", "tightness")]) == ""
    assert "[runner.tightness]" in as_blocks(book, learned, [("labour_rate",)])


def test_every_lesson_of_the_book_names_what_the_book_has() -> None:
    book = load_book()
    for lesson in lessons(book):
        for kind in lesson.of:
            assert book.fact(lesson.measure, kind) is not None, lesson.id
            lever = book.fact(lesson.lever, kind)
            assert lever is not None, lesson.id
            assert lesson.scatter > 0


def test_what_makes_no_sense_is_refused() -> None:
    with pytest.raises(ValueError, match="scatter"):
        way_of([done(1.1)], 0)
    with pytest.raises(ValueError, match="nothing to learn"):
        way_of([], 0.06)
