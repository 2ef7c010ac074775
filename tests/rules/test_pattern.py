"""Plans of clusters: counts kept, colours apart, sizes in whole clusters, pockets, patterns by name."""

import os
import subprocess
import sys
from collections import Counter
from itertools import pairwise
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rules.layout_plan import STYLES, Layout, Sort, Style, angle, pocket_angle
from rules.pattern import plan
from rules.touch import same_touches, touching
from tests.rules.test_touch import arrangements

PALETTES = {
    "three": [("navy", 0.4), ("gold", 0.3), ("white", 0.3)],
    "four": [("navy", 0.4), ("gold", 0.3), ("white", 0.2), ("blush", 0.1)],
    "alike": [("navy", 0.25), ("gold", 0.25), ("white", 0.25), ("blush", 0.25)],
    "two": [("navy", 0.6), ("gold", 0.4)],
}


def mixed(clusters: int) -> list[tuple[float, int]]:
    """A fifth small, a tenth big, in whole clusters."""
    small, big = 4 * round(clusters / 5), 4 * round(clusters / 10)
    return [(3.4, small), (4.9, big), (4.28, 4 * clusters - small - big)]


def same(layout: Layout) -> float:
    return layout.measures.same_share


@given(
    clusters=st.integers(1, 30),
    n=st.integers(2, 6),
    weights=st.lists(st.integers(1, 9), min_size=1, max_size=5),
    cuts=st.lists(st.floats(0, 1), max_size=3),
    loose=st.integers(0, 40),
    stems=st.integers(0, 20),
    style=st.sampled_from(STYLES),
    seed=st.integers(0, 5),
)
@settings(max_examples=60, deadline=None)
def test_counts_are_kept_exactly(
    clusters: int, n: int, weights: list[int], cuts: list[float], loose: int, stems: int, style: Style, seed: int
) -> None:
    total = clusters * n
    ends = sorted({0, total, *(round(total * cut) for cut in cuts)})
    sorts = [Sort(4.0 + place, end - start, 11.0) for place, (start, end) in enumerate(pairwise(ends))]
    colours = [(f"colour {place}", float(weight)) for place, weight in enumerate(weights)]
    layout = plan(clusters, sorts, colours, [Sort(3.0, loose, 5.0)], style, seed, n=n, stems=stems)
    assert [len(cluster) for cluster in layout.clusters] == [n] * clusters
    by_size = Counter(balloon.size_in for cluster in layout.clusters for balloon in cluster)
    assert by_size == Counter({sort.size_in: sort.count for sort in sorts})
    assert len(layout.fillers) == loose
    assert len(layout.stems) == stems
    for nominal, number in ((11.0, total), (5.0, loose)):
        found: Counter[str | None] = Counter()
        for balloon, count in layout.counts.items():
            found[balloon.colour] += count * (balloon.nominal_in == nominal)
        for name, weight in colours:
            assert abs(found[name] - number * weight / sum(weights)) <= 2  # whole pairs, by largest remainder


@pytest.mark.parametrize(
    ("clusters", "weights"),
    [
        (2, (4, 4)),
        (2, (3, 3, 2)),
        (2, (2, 2, 2, 2)),
        (2, (6, 2)),
        (3, (6, 6)),
        (3, (4, 4, 4)),
        (3, (6, 4, 2)),
        (3, (3, 3, 3, 3)),
        (3, (8, 4)),
    ],
)
def test_small_plans_are_as_good_as_exhaustive_search(clusters: int, weights: tuple[int, ...]) -> None:
    layout = plan(clusters, [(4.28, 4 * clusters)], [(str(hue), w) for hue, w in enumerate(weights)])
    counts = Counter(balloon.colour for cluster in layout.clusters for balloon in cluster)
    touches = touching(clusters)
    best = min(same_touches(touches, row) for row in arrangements(tuple(counts[str(h)] for h in range(len(weights)))))
    assert layout.measures.same == best


@pytest.mark.parametrize("clusters", [4, 5])
def test_four_or_five_quads_come_within_a_touch_of_the_least(clusters: int) -> None:
    # Optimum proved elsewhere by integer programming: 10.0 %, 0 % and 34.62 % of touches.
    if clusters == 4:
        assert same(plan(4, [(4.28, 16)], PALETTES["three"])) <= (4 + 1) / 40
        assert same(plan(4, [(4.28, 16)], PALETTES["alike"])) == 0
    else:
        assert same(plan(5, [(4.28, 20)], PALETTES["two"])) <= (18 + 1) / 52


@pytest.mark.parametrize("palette", PALETTES)
@pytest.mark.parametrize("clusters", [20, 100])
def test_colours_touch_their_own_hardly_more_than_they_must(palette: str, clusters: int) -> None:
    # Reference figures: at most 2.1 points above the bound, 11, 9 and 35 % where blind picking has 34, 30 and 52.
    shares = [same(plan(clusters, mixed(clusters), PALETTES[palette], seed=seed)) for seed in range(3)]
    measures = plan(clusters, mixed(clusters), PALETTES[palette]).measures
    mean = sum(shares) / len(shares)
    assert measures.least_share <= min(shares)
    assert mean - measures.least_share <= 0.025
    limit = {"three": 1 / 2.7, "four": 1 / 3, "alike": 1 / 8, "two": 1 / 1.4}[palette]
    assert mean <= measures.blind_share * limit


def test_the_blind_share_is_what_shuffling_gives() -> None:
    layout = plan(100, [(4.28, 400)], PALETTES["three"])
    hues = [balloon.colour for cluster in layout.clusters for balloon in cluster]
    names = sorted({str(hue) for hue in hues})
    touches, chance, found = touching(100), Random(3), []  # noqa: S311  no secret
    for _ in range(10):
        chance.shuffle(hues)
        found.append(same_touches(touches, [names.index(str(hue)) for hue in hues]) / layout.measures.touches)
    assert sum(found) / len(found) == pytest.approx(layout.measures.blind_share, abs=0.02)


def test_each_quad_is_of_one_size_and_the_odd_ones_lie_at_the_ends() -> None:
    layout = plan(20, [(3.4, 18), (4.28, 55), (4.9, 7)], PALETTES["three"])
    kinds = [sorted({balloon.size_in for balloon in cluster}) for cluster in layout.clusters]
    assert layout.measures.mixed_share == pytest.approx(2 / 20)
    assert all(len(kind) == 1 for kind in kinds[1:-1])
    # Facing places hold one size, but for the very last quad, which takes the odd ones.
    first = [balloon.size_in for balloon in layout.clusters[0]]
    assert first[:2] == first[2:]
    assert layout.measures.bow_in == 0
    assert plan(20, mixed(20), PALETTES["three"]).measures.bow_in == 0


def test_sizes_vary_without_a_rhythm_and_stay_spread() -> None:
    layout = plan(100, mixed(100), [("navy", 1)])
    small = [k for k, cluster in enumerate(layout.clusters) if cluster[0].size_in == 3.4]
    gaps = [b - a for a, b in pairwise(small)]
    assert len(set(gaps)) >= 3
    assert max(gaps) <= 12
    for lag in range(1, 30):
        alike = sum(layout.clusters[k] == layout.clusters[k + lag] for k in range(100 - lag))
        assert alike < 0.85 * (100 - lag)


def test_colours_keep_to_their_share_all_along() -> None:
    for palette in PALETTES.values():
        assert plan(100, mixed(100), palette).measures.drift <= 6


def test_bigger_balloons_held_to_the_size_of_the_rest_are_spread_among_them() -> None:
    layout = plan(20, [Sort(4.28, 72, 5), Sort(4.28, 8, 11)], PALETTES["two"])
    held = [k for k, cluster in enumerate(layout.clusters) for balloon in cluster if balloon.nominal_in == 11]
    assert len(held) == 8
    assert min(held) < 7
    assert max(held) > 12
    assert layout.measures.mixed_share == 0


def test_loose_pairs_lie_evenly_in_different_pockets_that_face_out() -> None:
    layout = plan(20, [(4.28, 80)], PALETTES["three"], [(3.4, 28)])
    taken = Counter((filler.cluster, filler.place) for filler in layout.fillers)
    assert max(taken.values()) == 1
    pairs = [[f for f in layout.fillers if f.pair == pair] for pair in range(14)]
    for pair, (one, other) in enumerate(pairs):
        assert other.cluster == one.cluster + 1
        assert abs(one.cluster - (pair + 0.5) / 14 * 19) <= 2
    for filler in layout.fillers:
        degrees = pocket_angle(filler.cluster, filler.place)
        assert not 112.6 < degrees < 247.4  # none faces the table
    assert layout.measures.filler_same / layout.measures.filler_touches < layout.measures.blind_share / 2


def test_loose_pairs_go_where_balloons_are_biggest() -> None:
    layout = plan(30, mixed(30), [("navy", 1)], [(3.4, 8)])
    sizes = [layout.clusters[filler.cluster][0].size_in for filler in layout.fillers]
    everywhere = [cluster[0].size_in for cluster in layout.clusters]
    assert sum(sizes) / len(sizes) > sum(everywhere) / len(everywhere)


def test_foliage_is_even_and_faces_out_to_either_side() -> None:
    stems = plan(20, [(4.28, 80)], stems=10).stems
    assert [stem.cluster for stem in stems] == list(range(1, 20, 2))
    assert {stem.side for stem in stems[::2]} == {1}
    assert {stem.side for stem in stems[1::2]} == {-1}


def places_of(layout: Layout, colour: str) -> set[tuple[int, int]]:
    rows = enumerate(layout.clusters)
    return {(k, j) for k, cluster in rows for j, balloon in enumerate(cluster) if balloon.colour == colour}


def test_a_spiral_winds_stripes_run_straight_and_rings_go_round() -> None:
    four = PALETTES["alike"]
    spiral, stripes, rings = (plan(20, [(4.28, 80)], four, (), style) for style in ("spiral", "stripes", "rings"))
    for name, _ in four:
        turned = [angle(k, j) for k, j in sorted(places_of(spiral, name))]
        assert {(b - a) % 360 for a, b in pairwise(turned)} == {45}
        straight = {angle(k, j) for k, j in places_of(stripes, name)}
        assert len(straight) == 2
        assert max(straight) - min(straight) in (45, 315)
        assert {k for k, _ in places_of(rings, name)} == {k for k in range(20) if places_of(rings, name) >= {(k, 0)}}
    assert all(len({balloon.colour for balloon in cluster}) == 1 for cluster in rings.clusters)
    assert rings.measures.change_share == 0


def test_the_same_words_give_the_same_plan_under_any_hash_seed() -> None:
    script = (
        "from rules.pattern import plan; import zlib;"
        "print(zlib.crc32(repr(plan(30, [(3.4, 20), (4.28, 100)], [('navy', .4), ('gold', .3), (None, .3)],"
        " [(3.4, 28)], seed=7, stems=5)).encode()))"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "1", "77")
    }
    assert len(runs) == 1


def test_another_seed_gives_another_plan_as_good() -> None:
    one, other = (plan(20, mixed(20), PALETTES["three"], seed=seed) for seed in (0, 1))
    assert one.clusters != other.clusters
    assert abs(same(one) - same(other)) < 0.05


@pytest.mark.parametrize(
    ("clusters", "sizes", "words"),
    [
        (20, [(4.28, 79)], "20 clusters of 4 take 80 balloons; sizes for 79 were given."),
        (0, [(4.28, 0)], "number of clusters must be a whole number"),
        (1, [(0.0, 4)], "Each size needs inches above 0"),
    ],
)
def test_what_cannot_be_planned_is_said_in_a_sentence(
    clusters: int, sizes: list[tuple[float, int]], words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        plan(clusters, sizes)
