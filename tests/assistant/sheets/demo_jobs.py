"""Three jobs of an invented evening, and one whose names are as hostile as names can be."""

from functools import cache

from assistant import Conversation
from assistant.estimating import estimate
from rules import Estimate, Job, Piece, load_book, work

DEMO = {
    "supper": "eight 6 ft tables, full drop, 30 in wide, navy, gold and white with greenery",
    "garden": "an arch 8 ft wide and 8 ft high in dusty rose and ivory, two columns 6 ft high in dusty rose and ivory",
    "foyer": "a wall 8 by 8 ft in teal and white, six centrepieces in black and gold, ten bouquets of five in red",
}
SCRIPT, MARKUP, FORMULA = "<script>alert(1)</script>", "\"><img src=x onerror='alert(2)'>", '=HYPERLINK("http://x","y")'
STEERING = "\x1b[2J\x1b]0;title\x07red\u202eder\r\nnext"
HOSTILE = (SCRIPT, MARKUP, FORMULA, STEERING)


@cache
def made(said: str) -> Estimate:
    """The estimate of what was said in one turn."""
    talk = Conversation()
    talk.say(said)
    return estimate(talk.book, talk.state)


def hostile() -> Estimate:
    """A runner and a bouquet in colours that are attacks."""
    colours = [(name, None) for name in HOSTILE]
    runner = Piece("runner", {"count": 1, "table_length": 72, "table_width": 30, "colours": colours})
    bouquet = Piece("bouquet", {"count": 3, "balloons": 5, "colours": colours})
    return work(load_book(), Job([runner, bouquet]))
