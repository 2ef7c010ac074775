"""The same wishes in other words, each with the pieces that a person would write down. Lengths are inches."""

import pytest

from tests.grammar.kinds_said import column, heard
from tests.grammar.test_traps import tables

M = 39.3701  # inches: the international yard is 0.9144 m
GARLAND = heard("garland", length_in=168)
ONE_EACH = [heard("garland", count=1, length_in=120), heard("garland", count=1, length_in=72)]
SQUARES = [{"kind": "runner", "count": 6, "table_shape": "square", "table_length_in": 36}]


def colours(*names: str) -> list[dict[str, str]]:
    return [{"name": name} for name in names]


def share(name: str, part: float) -> dict[str, object]:
    return {"name": name, "share": part}


ANYWAY = {
    "groups are told apart by a size or a colour, and make up the number that was said": {
        "two garlands, a 10 ft one and a 6 ft one": ONE_EACH,
        "two garlands: a 10 ft and a 6 ft": ONE_EACH,
        "two garlands, one's 10 ft and the other's 6 ft": ONE_EACH,
        "two garlands, one at 10 ft, the other 6 ft": ONE_EACH,
        "couple of garlands, one of 10 ft and another of 6": ONE_EACH,
        "five tables, three 6 footers and two 8 footers": [tables(3, 72), tables(2, 96)],
        "ten tables, a 6 ft one and nine 8 ft ones": [tables(1, 72), tables(9, 96)],
        "two columns, a gold one and a silver one, 6 ft": [
            {**column(1, 72), "colours": colours("gold")},
            {**column(1, 72), "colours": colours("silver")},
        ],
    },
    "of two that are weighed up the one that is said again is meant": {
        "a six foot hoop in organic or classic no yeah organic": [
            heard("hoop", count=1, diameter_in=72, style="organic")
        ],
        "a six foot hoop, classic or organic, actually organic": [
            heard("hoop", count=1, diameter_in=72, style="organic")
        ],
        "six or eight, no eight 6 ft tables": [tables(8, 72)],
        "a 10 ft garland in navy or black, let's say black": [
            heard("garland", count=1, length_in=120, colours=colours("black"))
        ],
    },
    "tables that are pushed together are one": {
        "we're putting four 6 ft tables together as one long top table": [tables(1, 288)],
        "four 6 ft tables lined up as a single long one": [tables(1, 288)],
        "we're pushing three 8 ft tables together, full length": [tables(1, 288, coverage="full")],
        "three 6 ft tables together with a single runner down them": [tables(1, 216)],
    },
    "but putting a job together pushes no tables": {
        "putting together a quote for eight 6 ft tables": [tables(8, 72)],
        "eight 6 ft tables and put it together for me": [tables(8, 72)],
    },
    "each way is every side": {
        "six squares, 3 ft each way": SQUARES,
        "six squares, 3 ft on each side": SQUARES,
        "a wall 8 ft each way": [heard("wall", count=1, span_in=96, height_in=96)],
    },
    "unless it is a road, or what hangs down": {
        "20 miles each way, four square tables 36 inches": [
            {"kind": "runner", "count": 4, "table_shape": "square", "table_length_in": 36}
        ],
        "ten 6 ft tables, 10 inches each side": [tables(10, 72, overhang_in=10)],
    },
    "both of some is two": {
        "full length on the six foot tables both of them": [tables(2, 72, coverage="full")],
        "both of the five foot hoops two thirds": [heard("hoop", count=2, diameter_in=60, coverage="two_thirds")],
    },
    "but both sides are no two tables": {
        "6 ft tables covered both sides, ten of them": [tables(10, 72)],
        "both of us, eight 6 ft tables": [tables(8, 72)],
    },
    "the two of them are all that was named": {
        "garland 10 ft, column 6 ft, the two of them in rust": [
            heard("garland", length_in=120, colours=colours("rust")),
            heard("column", height_in=72, colours=colours("rust")),
        ],
        "garland 10 ft, column 6 ft, all of it rust": [
            heard("garland", length_in=120, colours=colours("rust")),
            heard("column", height_in=72, colours=colours("rust")),
        ],
    },
    "a number is how many there are of what was named as several, and the size of one thing": {
        "hoops, 5 ft across / there'll be three": [heard("hoop", count=3, diameter_in=60)],
        "hoops, 5 ft across / three in all": [heard("hoop", count=3, diameter_in=60)],
        "hoops, 5 ft across / we want 3": [heard("hoop", count=3, diameter_in=60)],
        "a hoop 5 ft / 6": [heard("hoop", count=1, diameter_in=72)],
        "hoops, 5 ft / make it 6": [heard("hoop", diameter_in=72)],
    },
    "a wall that is there is no piece": {
        "a 15 foot garland hung on the church wall": [heard("garland", count=1, length_in=180)],
        "a 15 foot garland against the marquee wall": [heard("garland", count=1, length_in=180)],
        "a wedding arch 9 by 8": [heard("arch", count=1, span_in=108, height_in=96)],
    },
    "not sure how wide is no denial": {
        "two swags not sure how wide maybe nine foot": [heard("swag", count=2, span_in=108)],
        "two columns not sure how tall say seven foot": [column(2, 84)],
    },
    "tables against each other are one, and side by side they are as many as they were": {
        "two 8 footers butted up against each other, one runner over both": [tables(1, 192)],
        "two 6 ft tables side by side, full length": [tables(2, 72, coverage="full")],
    },
    "the unit of the first size holds for the others": {
        "four tables, two at six foot, one at eight and one at ten": [tables(2, 72), tables(1, 96), tables(1, 120)],
        "four tables, two are six foot, one's eight foot and one's ten foot": [
            tables(2, 72),
            tables(1, 96),
            tables(1, 120),
        ],
    },
    "what is covered completely is full": {
        "cover the hoop completely, it's 5 ft across": [heard("hoop", diameter_in=60, coverage="full")],
        "the whole hoop covered, it's 5 ft across": [heard("hoop", diameter_in=60, coverage="full")],
        "cover all of the hoop, it's 5 ft across": [heard("hoop", diameter_in=60, coverage="full")],
        "dress all of the tables, eight 6 ft": [tables(8, 72)],
    },
    "a word that sounds as two opens no conversation with a size": {
        "too 6 foot columns": [column(2, 72)],
        "to six foot columns": [column(2, 72)],
        "two 6 foot columns / to 8 foot": [column(2, 96)],
    },
    "five in is five in each, 11 in a size": {
        "twelve bouquets with five in": [heard("bouquet", count=12, balloons=5)],
        "twelve bouquets of 7, 11 in": [heard("bouquet", count=12, balloons=7, sizes_in=[11])],
    },
    "a number that is denied counts nothing": {
        "its eight tables not nine sorry i had nine in my head eight six footers": [tables(8, 72)],
        "eight tables, not nine like i said, six footers": [tables(8, 72)],
        "not nine but eight 6 ft tables": [tables(8, 72)],
    },
    "a wall of flowers is no balloon wall": {
        "six hoops, 5 ft, along with a flower wall": [heard("hoop", count=6, diameter_in=60)],
        "six hoops, 5 ft, and they have a shimmer wall too": [heard("hoop", count=6, diameter_in=60)],
        "a photo wall 8 by 8": [heard("wall", count=1, span_in=96, height_in=96)],
    },
    "a new job leaves nothing of the old one": {
        "two 8 by 8 walls / wipe that, new one / three swags, 9 ft": [heard("swag", count=3, span_in=108)],
        "two 8 by 8 walls / right, next job / three swags, 9 ft": [heard("swag", count=3, span_in=108)],
    },
    "the number of what was named without one may come late": {
        "bunches of 6, helium, fifteen bunches": [heard("bouquet", count=15, balloons=6, gas="helium")],
        "columns 6 ft, black, four columns": [{**column(4, 72), "colours": colours("black")}],
        "columns 6 ft, two columns 8 ft": [heard("column", height_in=72), column(2, 96)],
    },
    "tables tell how many stand on them, where that is asked": {
        "centrepieces, 3 balloons in each / there are 11 tables": [heard("centerpiece", count=11, balloons=3)],
        "bouquets of 5 / ten tables": [heard("bouquet", count=10, balloons=5)],
    },
    "five to six pumps are no time of day": {
        "two 8 ft columns in 11s, somewhere from five to six pumps": [
            {**column(2, 96), "sizes_in": [11], "strokes": [5, 6]}
        ],
    },
    "the others are round where these are": {
        "ten 60 inch rounds / set against eight 72 inch ones": [
            {"kind": "runner", "count": 10, "table_shape": "round", "table_diameter_in": 60},
            {"kind": "runner", "count": 8, "table_shape": "round", "table_diameter_in": 72},
        ],
    },
    "from one end right to the other is all of it": {
        "six of the eight foot tables, from one end right to the other": [tables(6, 96, coverage="full")],
    },
    "what hangs to the floor drops": {
        "eight 6 ft tables, let the runner hang to the floor at the two ends": [tables(8, 72, coverage="drop_both")],
    },
    "a ten-footer is a table": {
        "five ten-footers, full length": [tables(5, 120, coverage="full")],
        "six eight-footers": [tables(6, 96)],
    },
    "so many strokes to each balloon": {
        "two 6 ft columns, four pumps to a balloon": [{**column(2, 72), "strokes": [4, 4]}],
        "two 6 ft columns, 4 strokes apiece": [{**column(2, 72), "strokes": [4, 4]}],
    },
    "each side of a square is a size and no two": {
        "three square tables, each side 42 inches": [
            {"kind": "runner", "count": 3, "table_shape": "square", "table_length_in": 42}
        ],
    },
    "what was never there is only denied": {
        "forget columns, what she wants is a hoop, 5 foot six": [heard("hoop", count=1, diameter_in=66)],
        "scrap the columns idea, a hoop, 5 foot six": [heard("hoop", count=1, diameter_in=66)],
    },
    "four out of five is a share": {
        "a 10 ft garland in green and cream, four out of five balloons cream": [
            heard("garland", count=1, length_in=120, colours=[share("green", 0.2), share("cream", 0.8)])
        ],
        "a 10 ft garland in green and cream, four out of every five cream": [
            heard("garland", count=1, length_in=120, colours=[share("green", 0.2), share("cream", 0.8)])
        ],
    },
    "ferns are leaves, and fern among colours a colour": {
        "arch 9 by 8 with ferns in it": [heard("arch", span_in=108, height_in=96, foliage=True)],
        "arch 9 by 8 with fern leaves": [heard("arch", span_in=108, height_in=96, foliage=True)],
        "arch 9 by 8 in fern and white": [heard("arch", span_in=108, height_in=96, colours=colours("fern", "white"))],
    },
    "legs of a garland add up": {
        "garland round the doorway, seven foot up one side, four foot over the top, seven foot back down": [
            heard("garland", length_in=216, place="doorway")
        ],
        "garland round the doorway up 7 ft, across 4 ft, down 7 ft": [heard("garland", length_in=216, place="doorway")],
        "garland round the doorway 7 ft up each side and 4 across the top": [
            heard("garland", length_in=216, place="doorway")
        ],
    },
    "but what the door is, and a way alone, adds nothing": {
        "garland 10 ft long over a door 7 ft high": [heard("garland", length_in=120)],
        "garland 7 ft, going up the stairs": [heard("garland", length_in=84, place="stair")],
    },
    "a table with a name of its own is one": {
        "the cake table's 5 ft, full drop": [tables(1, 60, coverage="drop_both")],
        "her sweetheart table's five foot, full drop": [tables(1, 60, coverage="drop_both")],
    },
    "a curve is measured": {
        "organic arch, 6 metres measured round the curve": [
            heard("arch", length_in=pytest.approx(6 * M), style="organic")
        ],
        "organic arch, 6 metres following the curve": [heard("arch", length_in=pytest.approx(6 * M), style="organic")],
    },
    "a few of a size tell no number of pieces": {
        "twenty foot garland using 5s, 11s and a few 17s": [heard("garland", length_in=240, sizes_in=[5, 11, 17])],
        "twenty foot garland using 5 inch, 11 inch and a few 17 inch": [
            heard("garland", length_in=240, sizes_in=[5, 11, 17])
        ],
        "twenty foot garland using 5s, 11s, a couple of 17s": [heard("garland", length_in=240, sizes_in=[5, 11, 17])],
    },
    "so many a table are those in each centrepiece, once there are some, and seats with guests": {
        "eight centrepieces with 3 balloons / five a table would be better": [
            heard("centerpiece", count=8, balloons=5)
        ],
        "eight centrepieces with 3 balloons, 80 guests / ten per table": [
            heard("centerpiece", count=8, balloons=3, seats=10)
        ],
        "twelve bouquets of 5 / seats 8 per table": [heard("bouquet", count=12, balloons=5, seats=8)],
    },
    "a size said once more is no number": {
        "hoops are five foot not six theyre five four of them": [heard("hoop", count=4, diameter_in=60)],
    },
    "an ear writes another first letter": {
        "senterpieces of three, ten of them": [heard("centerpiece", count=10, balloons=3)],
        "two 6 ft kolumns": [column(2, 72)],
        "airfilled bouquets of three ten of them": [heard("bouquet", count=10, balloons=3, gas="air")],
    },
}
