"""The build card: what it counts is what is planned and bought, its sections make up the line, its words hold."""

import re
from collections import Counter

import pytest

from assistant import Conversation
from assistant.sheets.build_card import Card, build_card, read_off
from assistant.sheets.card_words import loose_text, run_text, section_rows, trust
from rules import Estimate, Job, Piece, load_book, shopping, work
from rules.layout_plan import angle
from rules.touch import same_touches, touching

BOOK = load_book()
THREE = [("navy", 0.4), ("gold", 0.3), ("white", 0.3)]
STRUNG = {
    "runner": {"table_length": 72},
    "garland": {"length": 144},
    "arch": {"span": 96, "height": 96},
    "column": {"height": 84},
    "hoop": {"diameter": 60},
    "swag": {"span": 240, "sag": 36},
}


def made(kind: str, **said: object) -> Estimate:
    return work(BOOK, Job([Piece(kind, {"count": 1, "colours": THREE, **STRUNG[kind], **said})], {}))


def card_of(kind: str, **said: object) -> Card:
    card = build_card(made(kind, **said), 0)
    assert card is not None
    return card


@pytest.mark.parametrize("kind", STRUNG)
@pytest.mark.parametrize("style", ["organic", "classic"])
def test_every_strung_piece_has_a_card_that_adds_up(kind: str, style: str) -> None:
    estimate = made(kind, style=style, foliage=True)
    card = build_card(estimate, 0)
    assert card is not None
    strung = sum(part.count for part in estimate.parts(0) if part.pairs)
    quads, pairs = (estimate.figure(id, 0) for id in ("quads_each", "loose_pairs_each"))
    assert quads is not None
    assert pairs is not None
    assert len(card.layout.clusters) == quads.value
    assert sum(blow.count for blow in card.blows) == strung
    assert sum(blow.loose for blow in card.blows) == 2 * int(pairs.value)
    assert 2 * sum(tie.count for tie in card.ties) == 4 * int(quads.value)
    assert [section.first for section in card.sections] == [
        1,
        *(section.last + 1 for section in card.sections[:-1]),
    ]
    assert card.sections[-1].last == quads.value
    assert sum(len(section.loose) for section in card.sections) == pairs.value
    assert sum(len(section.stems) for section in card.sections) == len(card.layout.stems) > 0


@pytest.mark.parametrize("kind", STRUNG)
def test_one_piece_is_blown_in_the_colours_that_are_bought(kind: str) -> None:
    estimate = made(kind)
    card = build_card(estimate, 0)
    assert card is not None
    blown: Counter[tuple[float, str | None]] = Counter()
    for balloon, count in card.layout.counts.items():
        blown[balloon.nominal_in, balloon.colour] += count
    assert blown == Counter({(row.size_in, row.colour): row.need for row in shopping(estimate)})


@pytest.mark.parametrize("kind", ["bouquet", "centerpiece", "drop", "wall"])
def test_what_is_not_strung_has_no_card(kind: str) -> None:
    said = {"count": 2, "length": 120, "span": 96, "height": 96}
    assert build_card(work(BOOK, Job([Piece(kind, said)], {})), 0) is None


def test_reading_the_runs_aloud_gives_the_plan_back() -> None:
    card = card_of("runner")
    rebuilt = []
    for section in card.sections:
        for run in section.runs:
            for k in range(run.first - 1, run.last):
                # Clockwise from the top right is in order of angle; put each colour back in its place.
                places = sorted(range(4), key=lambda place: angle(k, place))
                cluster = dict(zip(places, run.colours, strict=True))
                rebuilt += [cluster[place] for place in range(4)]
    names = sorted({str(name) for name in rebuilt})
    same = same_touches(touching(len(rebuilt) // 4), [names.index(str(name)) for name in rebuilt])
    assert same == card.layout.measures.same


def test_clusters_alike_are_told_as_one_run() -> None:
    card = card_of("column", style="classic", colours=[("red", 0.5), ("white", 0.5)])
    assert [run_text(run) for section in card.sections for run in section.runs] == [
        "1-5: red, red, white, white",
        "6-11: red, red, white, white",
    ]
    plain = card_of("runner", style="classic", colours=[("red", None)])
    assert run_text(plain.sections[0].runs[0]) == "1-10: all red"


@pytest.mark.parametrize("pattern", ["spiral", "stripes"])
def test_a_pattern_by_name_reads_alike_all_along(pattern: str) -> None:
    card = card_of("runner", style="classic", pattern=pattern, colours=[("red", 0.5), ("white", 0.5)])
    assert {read_off(card.layout, k) for k in range(20)} == {read_off(card.layout, 0)}
    assert len({run.colours for section in card.sections for run in section.runs}) == 1


def test_sizes_are_told_by_strokes_and_a_letter_or_by_inches() -> None:
    runner = card_of("runner")
    assert {(blow.label, blow.strokes) for blow in runner.blows} == {("L", 2), ("S", 1)}
    garland = card_of("garland")
    assert {(blow.label, blow.strokes) for blow in garland.blows} == {("L", None), ("M", None), ("S", None)}
    held = card_of("runner", sizes=[5, 11])
    assert {blow.held_in for blow in held.blows} == {0, 11}


def test_a_section_can_be_carried_and_its_length_is_the_houses_to_say() -> None:
    long = made("garland", length=600)
    card = build_card(long, 0)
    assert card is not None
    step = 600 / len(card.layout.clusters)
    assert all(section.length_in <= 1.05 * 48 + step for section in card.sections)
    assert sum(section.length_in for section in card.sections) == pytest.approx(600)
    piece = Piece("garland", {"length": 600})
    longer = build_card(work(BOOK, Job([piece], {"section_length": 12})), 0)
    assert longer is not None
    assert len(longer.sections) < len(card.sections) / 2


def test_strands_are_told_apart_and_not_joined() -> None:
    card = card_of("runner", strands=2)
    assert {section.strand for section in card.sections} == {1, 2}
    firsts = [next(s for s in card.sections if s.strand == strand) for strand in (1, 2)]
    assert firsts[0].length_in == pytest.approx(firsts[1].length_in, rel=0.1)


def test_a_loose_pair_across_a_joint_waits_for_it() -> None:
    card = card_of("runner")
    for section in card.sections:
        for loose in section.loose:
            assert loose.joins == (loose.second > section.last)
            assert ("once joined" in loose_text(loose)) == loose.joins
        assert len(section_rows(section)) == len(section.runs) + len(section.loose)


@pytest.mark.parametrize("kind", STRUNG)
@pytest.mark.parametrize("length", [24, 72, 400])
def test_no_bow_of_nothing_is_promised(kind: str, length: float) -> None:
    said = {
        "runner": "length",
        "garland": "length",
        "column": "height",
        "hoop": "diameter",
        "swag": "span",
        "arch": "span",
    }
    card = card_of(kind, **{said[kind]: length})
    for metric in (False, True):
        words = " ".join(trust(card, metric=metric))
        aside = re.search(r"within about (an inch|half an inch|[\d.]+ (?:in|cm))", words)
        assert aside is not None, words
        number = re.match(r"[\d.]+", aside[1])
        assert number is None or float(number[0]) > 0


def test_what_is_said_of_a_runner_is_what_was_measured() -> None:
    card = card_of("runner")
    measures = card.layout.measures
    touch, bow = trust(card)
    numbers = [int(found) for found in re.findall(r"(\d+) %", touch)]
    told = [measures.same_share, measures.least_share, measures.blind_share]
    assert numbers == [round(100 * share) for share in told]
    assert bow == ("Sized within 1/8 in it stays within about an inch over 6 ft; press it straight on the table.")
    assert "3 mm" in trust(card, metric=True)[1]


def pages(talk: Conversation, *turns: str) -> list[str]:
    return [talk.say(turn).text for turn in turns]


def test_the_chat_leafs_through_the_sections() -> None:
    talk = Conversation()
    talk.say("one 6 ft table, full length, navy, gold and white")
    cover, one, two, still, back, third = pages(
        talk, "build card", "next section", "next section", "next section", "previous section", "section 2"
    )
    assert cover.startswith("Build card for the runner: 20 quads and\n14 loose pairs.")
    assert one.startswith("Section 1 of 2: quads 1 to 10")
    assert two == still == third
    assert two.startswith("Section 2 of 2: quads 11 to 20")
    assert back == one
    assert "1/8 in" in cover
    assert pages(talk, "the last section", "build card") == [two, cover]


def test_the_card_changes_nothing_and_follows_what_is_changed() -> None:
    talk = Conversation()
    talk.say("eight 6 ft tables, full drop, navy, gold and white")
    before = talk.state.pieces
    reply = talk.say("section 3")
    assert reply.heard.pieces[0]["count"] == 8
    assert reply.heard.job["intent"] == "build"
    assert talk.state.pieces == before
    talk.say("two thirds")
    assert talk.say("build card").text.startswith("Build card for one of 8 table runners:\n13 quads")


def test_a_job_without_a_line_says_so() -> None:
    talk = Conversation()
    talk.say("ten bouquets of five")
    assert "no build card" in " ".join(talk.say("build card").text.split())
