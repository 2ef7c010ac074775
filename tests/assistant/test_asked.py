"""What is asked of an estimate in free speech: each question gets its own answer, and asking changes nothing."""

import re

import pytest

from assistant import Conversation
from rules import load_book

RUNNERS = "six 6 ft tables, full drop, teal and silver"
ARCH = "an arch 9 ft wide and 8 ft high outside, lilac and white"
BUNCHES = "ten centrepieces of 3 balloons floating on helium, 11 in, red and white"
SEVERAL = "a wall 8 ft by 8 ft and two 7 ft columns, black and gold"
GARLAND = "a 4 m garland with greenery, peach and cream"

QUESTIONS = [
    (RUNNERS, "does everything go for one price or is that per table", "a table: $"),
    (RUNNERS, "what do i clear on this", "Profit $"),
    (RUNNERS, "how much of that do i keep after my costs", "Profit $"),
    (RUNNERS, "if i charge 950 what do i make an hour", "At $950.00: profit $"),
    (RUNNERS, "where's my break even", "Break even is $"),
    (RUNNERS, "what's the lowest i could go", "Its goods and labour are $"),
    (RUNNERS, "how many bags of silver do i want", "- 5 in silver:"),
    (RUNNERS, "how many can one person inflate in an hour", "Pace: 150 an hour."),
    (RUNNERS, "is 252 a lot for one table", "Balloons each: 252."),
    (RUNNERS, "will the little ones be safe near it", "Choking:"),
    (RUNNERS, "what if somebody's allergic", "Latex: ask about allergies"),
    (RUNNERS, "can she have candles next to it", "Candles: keep flames well away"),
    (RUNNERS, "could somebody trip on the ends", "people trip"),
    (RUNNERS, "will they be limp by the next morning", "10 days (3 to 35 days)"),
    (RUNNERS, "any spares in that", "spares are in it"),
    (RUNNERS, "type it up for the client", "Hello! For your party"),
    (RUNNERS, "why is it so expensive", "Labour $"),
    (RUNNERS, "what did i tell you so far", "full drop, teal and silver"),
    (RUNNERS, "will it mark her good tablecloth", "Marks are not worked out"),
    (RUNNERS, "how far ahead could we make them", "up to 2 days before"),
    (ARCH, "which stand does it need", "5 rods of 5 ft and 2 bases"),
    (ARCH, "can i do it on my own", "take a second pair"),
    (ARCH, "will it go under a 2.5 m ceiling", "It would touch under 2.5 m: make it lower"),
    (ARCH, "is it quicker as a garland", "Nothing is changed"),
    (ARCH, "how many of each size", "of 16 in, blown to 14 in"),
    (ARCH, "how many of the small ones", "of 5 in, blown to 4 in"),
    (ARCH, "how high is it in metres", "height overall 2.7"),
    (ARCH, "can a pushchair get through", "Clear width:"),
    (ARCH, "will strong sun damage it", "shade, light colours"),
    (ARCH, "do we need permission from the council", "Permits and insurance are not worked out"),
    (ARCH, "is it ok standing on gravel", "a swept sheet under it"),
    (ARCH, "does it fit through the door", "goes through a door"),
    (ARCH, "what should i pack", "Bring the inflator"),
    (ARCH, "what do you recommend", "I have no taste"),
    (ARCH, "would a smaller arch work out much cheaper", "From the most saved to the least"),
    (ARCH, "what's the worst case", "about nine times in ten"),
    (BUNCHES, "should they be sealed so they last longer", "Gel inside makes them float 7 times as long"),
    (BUNCHES, "what is the helium costing me", "The gas comes to $"),
    (BUNCHES, "how long should the ribbons be", "Ribbon length: 30 in."),
    (BUNCHES, "which bottle do i hire", "1 cylinder"),
    (BUNCHES, "what happens if one gets away", "let none go outdoors"),
    (BUNCHES, "how much for each one", "a piece: $"),
    (BUNCHES, "are they ok with the aircon on", "A cool room suits them"),
    (BUNCHES, "can unopened bags go back to the shop", "A closed bag keeps"),
    (BUNCHES, "will they still be up at midnight", "12 hours (8 to 20 hours)"),
    (BUNCHES, "what size balloons float", "5 in latex does not float"),
    (SEVERAL, "which part takes longest", "The wall: 4.4 hours of hands of"),
    (SEVERAL, "what's the dearest bit", "The wall: $"),
    (SEVERAL, "what would it cost without the columns", "Without 2 columns: $"),
    (SEVERAL, "how much of it is the columns", "made alone, $"),
    (SEVERAL, "what's the wall on its own", "The wall: $"),
    (SEVERAL, "how many in the wall", "Balloons: "),
    (SEVERAL, "how many altogether", "Balloons in all: "),
    (SEVERAL, "how do the columns stay up", "with 10 lb on it"),
    (SEVERAL, "are we blocking the fire exit", "Exits: never cover"),
    (SEVERAL, "how long to take it all down", "Taking down: about"),
    (SEVERAL, "what deposit should i ask", "Deposit due: $"),
    (SEVERAL, "what did we say for the columns", "7 ft high, black and gold"),
    (SEVERAL, "is it cheaper in bulk", "the bags make no difference"),
    (GARLAND, "how would i hang it", "It hangs on line of"),
    (GARLAND, "can it go on a brick wall", "Which hook a wall takes is not worked out"),
    (GARLAND, "do i need somebody to help me", "one pair of hands does it"),
    (GARLAND, "how many stems is that", "Stems all: "),
    (GARLAND, "what is it in feet", "length covered 13.1 ft"),
    (GARLAND, "have you got delivery in that", "Delivery is not in the price"),
    (GARLAND, "is there vat on that", "No tax is in it"),
    (GARLAND, "is my time included", "every hour of hands is in it"),
    (GARLAND, "how many more for another metre", "Balloons a foot: "),
    (GARLAND, "do i need a ladder", "wants a stepladder"),
    (GARLAND, "what happens when it gets cold", "Say how cold"),
]


def text_of(said: str) -> str:
    return " ".join(said.split())


@pytest.mark.parametrize(("job", "question", "holds"), QUESTIONS, ids=[question for _, question, _ in QUESTIONS])
def test_a_question_gets_its_own_answer_and_changes_nothing(job: str, question: str, holds: str) -> None:
    talk = Conversation()
    held = talk.say(job).heard
    told = talk.say(question)
    assert holds.lower() in text_of(told.text).lower()
    assert told.heard.pieces == held.pieces
    assert {**told.heard.job, "intent": ""} == {**held.job, "intent": ""}
    assert told.question is None
    assert max(map(len, told.text.splitlines())) <= 40


@pytest.mark.parametrize(
    "question",
    [
        "who's bringing the cake", "where do we park", "do they come in tartan", "is the bride a vegetarian",
        "have they met before", "what's the band called", "is the cake any good", "how many boxes will that be",
    ],
)  # fmt: skip
def test_what_nothing_answers_is_said_in_a_sentence(question: str) -> None:
    talk = Conversation()
    held = talk.say(SEVERAL).heard
    told = talk.say(question)
    assert text_of(told.text).startswith("I have no answer to that")
    assert "No change" not in told.text
    assert told.heard.pieces == held.pieces


REMARKS = [(remark, pattern) for remark in load_book().remarks for pattern in remark.asked]
ENOUGH = {
    "runner": RUNNERS, "garland": GARLAND, "arch": "an arch 9 ft by 8 ft in red", "wall": "an 8 by 8 ft wall",
    "bouquet": "six helium bouquets of 5", "hoop": "a 5 ft hoop in gold", "any": SEVERAL, "job": BUNCHES,
    "centerpiece": BUNCHES, "swag": "a swag 12 ft wide with 2 ft of sag in blue",
}  # fmt: skip
KNOWN = {"delivery_known": "20 miles away", "tax_known": "tax 8 %"}


def spoken(pattern: str) -> str:
    """The pattern as somebody would say it: of each choice the first, a gap as nothing."""
    words = [part.removesuffix("?").split("|")[0] for part in pattern.split() if part not in {"~", "?|$", "$", "^"}]
    return f"is there any {words[0]}?" if len(words) == 1 else " ".join(words) + "?"


@pytest.mark.parametrize(("remark", "pattern"), REMARKS, ids=[f"{r.id} {n}" for n, (r, _) in enumerate(REMARKS)])
def test_each_way_of_asking_in_the_book_is_answered(remark, pattern: str) -> None:
    """By its own text, or by that of another order which takes as many of the words."""
    talk = Conversation()
    talk.say(ENOUGH[next(kind for kind in remark.of if kind in ENOUGH)])
    if remark.id in KNOWN:
        talk.say(KNOWN[remark.id])
    held = talk.say("no greenery").heard.pieces
    told = talk.say(spoken(pattern))
    assert told.heard.pieces == held
    opening = re.split(r"[{.:;]", remark.text)[0]
    assert text_of(opening) in text_of(told.text)


@pytest.mark.parametrize(
    ("job", "turn", "changed"),
    [
        (RUNNERS, "can we do ten tables instead", "count"),
        (RUNNERS, "could you make it 8 tables", "count"),
        (RUNNERS, "what if it was two thirds", "coverage"),
        (RUNNERS, "she's allergic to silver so teal and white", "colours"),
        (GARLAND, "could we go to 5 metres", "length_in"),
        (GARLAND, "can it be 5 metres long instead", "length_in"),
    ],
)
def test_what_supposes_or_wishes_is_still_a_change(job: str, turn: str, changed: str) -> None:
    talk = Conversation()
    held = talk.say(job).heard.pieces
    assert talk.say(turn).heard.pieces[0].get(changed) != held[0].get(changed)


def test_a_helper_that_is_supposed_is_one_hand_more() -> None:
    talk = Conversation()
    talk.say(RUNNERS)
    told = talk.say("what if i get my cousin to help")
    assert told.heard.job["crew"] == 2
    assert told.text.startswith("Two of you")
    assert talk.say("and a friend helping as well, how long then").heard.job["crew"] == 3


@pytest.mark.parametrize("between", [(), ("20 % spare",), ("make the wall 9 ft wide",)])
@pytest.mark.parametrize("back", ["put them back", "bring the columns back", "keep the columns after all"])
def test_pieces_that_were_taken_off_come_back(between: tuple[str, ...], back: str) -> None:
    """With what was changed since kept."""
    talk = Conversation()
    columns = talk.say(SEVERAL).heard.pieces[1]
    without = talk.say("take off the columns").heard.pieces
    for turn in between:
        without = talk.say(turn).heard.pieces
    assert talk.say(back).heard.pieces == [*without, columns]
    assert talk.say("undo").heard.pieces == without


@pytest.mark.parametrize(
    ("question", "holds"),
    [
        ("how long does it last", "10 days (3 to 35 days)"),
        ("what should i bring", "Bring the inflator"),
        ("is that with tax", "No tax is in it"),
        ("how long will it take", "by the clock"),
        ("how much would i make", "Profit $"),
    ],
)
@pytest.mark.parametrize(
    "compared",
    [
        ("a 12 ft garland in pink and white", "compare it with an arch"),
        ("six 6 ft tables, navy and gold", "compare two thirds and full drop"),
    ],
)
def test_while_ways_are_compared_another_question_is_answered_alone(
    compared: tuple[str, ...], question: str, holds: str
) -> None:
    talk = Conversation()
    for turn in compared:
        held = talk.say(turn)
    told = talk.say(question)
    assert holds in text_of(told.text)
    assert told.question is None
    assert not re.search(r"^1\. ", told.text, re.MULTILINE)
    assert told.heard.pieces == held.heard.pieces


def test_the_question_that_was_open_can_still_be_answered_after_another() -> None:
    talk = Conversation()
    for turn in ("a 12 ft garland in pink and white", "compare it with an arch", "what should i bring"):
        talk.say(turn)
    pieces = talk.say("9 ft wide and 8 ft high").heard.pieces
    assert (pieces[1]["span_in"], pieces[1]["height_in"]) == (108, 96)


@pytest.mark.parametrize("said", ["what would fifteen more cost", "how much would two more be"])
def test_what_more_of_them_would_cost_adds_none(said: str) -> None:
    talk = Conversation()
    talk.say("eight 6 ft tables")
    reply = talk.say(said)
    assert reply.heard.pieces[0]["count"] == 8
    assert "One more adds $" in " ".join(reply.text.split())


@pytest.mark.parametrize("size", [9, 11])
def test_hours_repeated_in_words_are_those_of_the_book(size: int) -> None:
    """The answer about sizes that float names hours: the same that the floating table gives for such a bunch."""
    talk = Conversation()
    talk.say(f"six helium bouquets of 5 with {size} inch balloons")
    figure = talk.estimates.of(talk.state).figure("float_time", 0)
    assert figure is not None
    assert figure.unit == "hour"
    text = " ".join(talk.say("what size balloon floats").text.split())
    ends = f"{figure.low:g} to {figure.high:g}"
    assert f"{size} in floats {ends}" in text or f"{size} in {ends}" in text
