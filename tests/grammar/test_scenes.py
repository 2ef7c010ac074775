"""What a client tells of the scene: where pieces go, what bears them, what comes down, and what nobody counts."""

from typing import Any

import pytest

from assistant import Conversation, Reply


def heard(*turns: str) -> Reply:
    """The reply to the last of some turns."""
    talk = Conversation()
    return [talk.say(turn) for turn in turns][-1]


def pieces(reply: Reply) -> list[dict[str, Any]]:
    """The pieces held, without a lone count of one and the place that a garland lies at."""
    return [{k: v for k, v in held.items() if k != "place" and (k, v) != ("count", 1)} for held in reply.heard.pieces]


@pytest.mark.parametrize(
    ("said", "held"),
    [
        ("garland along the gift table, the table's 4 ft", [{"kind": "garland", "length_in": 48}]),
        ("swag behind the top table, that table is 20 ft", [{"kind": "swag", "span_in": 240}]),
        ("the sweets table is 6 ft, a garland over it", [{"kind": "garland", "length_in": 72}]),
        ("something over the bar table, a garland, table's 9 ft long", [{"kind": "garland", "length_in": 108}]),
        ("the shelf is 8 ft and we want a garland along it", [{"kind": "garland", "length_in": 96}]),
        ("two columns either side of the cake table, 6 ft", [{"kind": "column", "count": 2, "height_in": 72}]),
        (
            "garland 10 ft and 8 tables, 6 ft",
            [{"kind": "garland", "length_in": 120}, {"kind": "runner", "count": 8, "table_length_in": 72}],
        ),
        (
            "a 10 ft garland and 15 round tables, 60 in",
            [
                {"kind": "garland", "length_in": 120},
                {"kind": "runner", "count": 15, "table_shape": "round", "table_diameter_in": 60},
            ],
        ),
        (
            "a 5 ft garland and a runner on the head table, 12 ft",
            [{"kind": "garland", "length_in": 60}, {"kind": "runner", "table_length_in": 144}],
        ),
    ],
)
def test_a_table_that_another_piece_goes_along_is_no_piece(said: str, held: list[dict[str, Any]]) -> None:
    assert pieces(heard(said)) == held


def test_the_size_of_what_bears_a_piece_with_a_size_of_its_own_is_named_as_not_used() -> None:
    reply = heard("an arch behind the head table, 8 ft wide and 7 high, table is 12 ft")
    assert pieces(reply) == [{"kind": "arch", "span_in": 96, "height_in": 84}]
    assert reply.unread == ["12 ft"]


@pytest.mark.parametrize(
    ("turns", "held"),
    [
        (["14 tables need centrepieces, 5 balloons each"], {"kind": "centerpiece", "count": 14, "balloons": 5}),
        (["a bunch of three on each of 8 tables"], {"kind": "bouquet", "count": 8, "balloons": 3}),
        (["just bouquets of 7, 9 tables"], {"kind": "bouquet", "count": 9, "balloons": 7}),
        (["11 tables", "only centrepieces, 3 balloons each"], {"kind": "centerpiece", "count": 11, "balloons": 3}),
        (["9 tables with a bunch of 3 on each", "actually 10 tables"], {"kind": "bouquet", "count": 10, "balloons": 3}),
        (["80 guests tables of 10 centrepieces of 3"], {"kind": "centerpiece", "seats": 10, "balloons": 3}),
        (["90 guests, tables of 9, a centrepiece on each"], {"kind": "centerpiece", "seats": 9}),
    ],
)
def test_tables_give_their_number_to_what_stands_on_them(turns: list[str], held: dict[str, Any]) -> None:
    assert pieces(heard(*turns)) == [held]


def test_all_that_stands_on_the_same_tables_is_counted_by_them() -> None:
    reply = heard("9 tables with a bunch of 3 on each, an arch 10 by 8 and a bouquet of 7 for the bar")
    assert [held.get("count") for held in reply.heard.pieces if held["kind"] == "bouquet"] == [9, 1]
    assert [held["kind"] for held in reply.heard.pieces].count("runner") == 0


def test_tables_that_have_a_size_are_dressed_beside_what_stands_on_them() -> None:
    both = heard("eight 6 ft tables, two thirds, and a centrepiece on each")
    assert [held["kind"] for held in both.heard.pieces] == ["runner", "centerpiece"]


def test_guests_and_seats_give_the_number_of_centrepieces() -> None:
    reply = heard("90 guests, tables of 9, a centrepiece on each, 3 balloons")
    assert next(f.value for f in reply.figures if f.id == "balloons") == 90 / 9 * 3  # arithmetic


@pytest.mark.parametrize(
    ("turns", "feet"),
    [
        (["5 ft garland, and it drops 3 ft each side"], 5 + 3 + 3),
        (["garland on the mantel, 5 ft, hanging 2 ft down one end"], 5 + 2),
        (["6 ft garland with a 2 ft drop on the left and 3 on the right"], 6 + 2 + 3),
        (["garland 8 ft with 2 ft tails on both ends"], 8 + 2 + 2),
        (["garland trailing 3 ft down each side of a 6 ft mantel"], 6 + 3 + 3),
        (["a 10 ft garland", "let it fall 2 ft at either end"], 10 + 2 + 2),
    ],
)
def test_what_comes_down_at_the_ends_is_of_the_length(turns: list[str], feet: float) -> None:
    reply = heard(*turns)
    assert [held["length_in"] for held in reply.heard.pieces] == [pytest.approx(12 * feet)]
    assert reply.unread == []


def test_a_fall_said_in_place_of_another_is_named_as_not_used() -> None:
    reply = heard("garland 5 ft, drops 3 ft each side", "make it 2 ft each side")
    assert (reply.heard.pieces[0]["length_in"], reply.unread) == (132, ["2 ft each side"])


def test_what_hangs_off_a_runner_stays_an_overhang() -> None:
    assert pieces(heard("six 6 ft tables", "let it hang down 10 inches each end"))[0]["overhang_in"] == 10


@pytest.mark.parametrize(
    "turns",
    [
        ["10 ft garland, navy and gold, 70 30"],
        ["10 ft garland, 70/30 navy gold"],
        ["10 ft garland, navy and gold", "make it 70-30"],
        ["10 ft garland, 70 percent navy and 30 gold"],
    ],
)
def test_numbers_that_make_a_hundred_are_shares(turns: list[str]) -> None:
    (held,) = heard(*turns).heard.pieces
    assert held["colours"] == [{"name": "navy", "share": 0.7}, {"name": "gold", "share": 0.3}]
    assert "count" not in held


def test_fifty_fifty_is_of_the_two_colours_in_hand() -> None:
    (held,) = heard("10 ft garland navy and gold, 60 40", "50 50").heard.pieces
    assert [colour["share"] for colour in held["colours"]] == [0.5, 0.5]


@pytest.mark.parametrize("turns", [["two 6 ft columns", "60 40"], ["arch 10 by 8", "60 40"]])
def test_such_numbers_without_colours_are_named_as_not_used(turns: list[str]) -> None:
    reply = heard(*turns)
    assert reply.unread == ["60 40"]
    assert reply.heard.pieces[0].get("count", 2) == 2


@pytest.mark.parametrize(
    ("said", "unread"),
    [
        ("8 ft garland and a number 4 on top", ["number 4"]),
        ("8 ft garland with a giant 21 beside it", ["giant 21"]),
        ("8 ft garland with a 4 and a 0 on top", ["4", "0"]),
        ("8 ft garland and the letters A and B", ["letters A and B"]),
        ("8 ft garland round the numbers, a 5 and a 0", ["5", "0"]),
        ("8 ft garland, mainly white", ["mainly"]),
        ("8 ft garland, white with a bit of gold", ["bit"]),
        ("same as last time, 8 ft garland", ["last time"]),
        ("8 ft garland, the price was 550 last time", ["550 last time"]),
        ("last year she paid 300 for 6 ft, this year it's an 8 ft garland", ["last year", "300", "6 ft"]),
    ],
)
def test_what_is_told_of_the_scene_counts_nothing_and_is_named(said: str, unread: list[str]) -> None:
    reply = heard(said)
    assert [held["length_in"] for held in reply.heard.pieces] == [96]
    assert reply.heard.pieces[0].get("count", 1) == 1
    assert "budget" not in reply.heard.job
    assert {word for words in unread for word in words.split()} <= {w for u in reply.unread for w in u.split()}


@pytest.mark.parametrize("said", ["it's a 50th", "for her 18th", "my son's 1st birthday", "their 25th", "it's an 80th"])
def test_an_ordinal_is_the_occasion(said: str) -> None:
    reply = heard(f"{said}, 8 ft garland")
    assert pieces(reply) == [{"kind": "garland", "length_in": 96}]
    assert reply.unread == []


def test_a_date_is_named_as_not_used() -> None:
    assert heard("on the 21st, 8 ft garland").unread == ["21"] or heard("on the 21st, 8 ft garland").unread == ["21st"]


@pytest.mark.parametrize(
    ("said", "feet"),
    [
        ("two garlands, one for the bar 10 ft one for the mantel 5 ft", [10, 5]),
        ("three garlands, one on the stairs 12 ft, one at the bar 8 ft and one by the door 6 ft", [12, 8, 6]),
    ],
)
def test_one_here_and_one_there_have_each_a_size(said: str, feet: list[float]) -> None:
    assert [held["length_in"] / 12 for held in heard(said).heard.pieces] == feet


def test_giants_are_sizes_where_no_table_is_spoken_of() -> None:
    assert pieces(heard("12 ft garland with some 3 footers in it")) == [
        {"kind": "garland", "length_in": 144, "sizes_in": [36]}
    ]
    assert pieces(heard("12 ft garland with three 36 inch ones"))[0]["sizes_in"] == [36]
    assert pieces(heard("eight 6 footers")) == [{"kind": "runner", "count": 8, "table_length_in": 72}]


def test_the_size_of_a_topper_is_not_that_of_the_column() -> None:
    assert pieces(heard("two 7 ft columns with a 3 ft topper")) == [
        {"kind": "column", "count": 2, "height_in": 84, "topper": "round", "topper_size_in": 36}
    ]
    assert pieces(heard("two columns 7 ft", "toppers 2 ft"))[0]["height_in"] == 84


def test_greens_are_leaves_unless_they_stand_among_colours() -> None:
    assert pieces(heard("10 ft garland", "with greens?"))[0]["foliage"] is True
    assert pieces(heard("10 ft garland, whites and greens"))[0]["colours"] == [{"name": "white"}, {"name": "green"}]


def test_to_clear_a_door_is_no_colour() -> None:
    reply = heard("arch 7 ft wide 9 ft high, it has to clear the door by a foot")
    assert pieces(reply) == [{"kind": "arch", "span_in": 84, "height_in": 108}]
    assert "clear" in " ".join(reply.unread)
    assert pieces(heard("arch 10 by 8, clear and gold"))[0]["colours"] == [{"name": "clear"}, {"name": "gold"}]


def test_a_ring_round_a_table_is_no_hoop() -> None:
    (held,) = pieces(heard("six 60 inch rounds, just a ring round the middle"))
    assert (held["kind"], held["count"]) == ("runner", 6)
    assert pieces(heard("a ring 4 ft across")) == [{"kind": "hoop", "diameter_in": 48}]


def test_a_room_told_beside_a_ceiling_is_its_size() -> None:
    assert pieces(heard("balloons for a ceiling, room is 30 by 20")) == [
        {"kind": "ceiling", "length_in": 360, "span_in": 240}
    ]
