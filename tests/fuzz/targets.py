"""What is fuzzed: each target makes inputs from a generator with a seed and takes one; a crash is any other error."""

import json
import random
import re
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from assistant import Conversation, job_text
from assistant.job_words import is_undo, read_order
from assistant.jobs import JobRow
from grammar.reading import Context
from grammar.talk.habits import read_habit
from grammar.talk.used import answer_said, read_reports
from rules.book import BOOK_FOLDER
from rules.compiled import compile_node
from rules.dimensions import Measurer, Mismatch
from rules.formula import FormulaError, parse
from rules.functions import FUNCTIONS
from rules.house import read_house
from tests.fuzz.mutate import HOSTILE, mutator
from tests.rules.small_books import BASE

PHRASES = Path(__file__).parent.parent / "phrases"
NOMINAL = (5.0, 11.0, 16.0, 24.0, 36.0)
ORDERS = """
keep this as smith; open 1; my jobs; jobs with garland; rename this to lee; copy this as two; delete job lee;
bring back lee; export this; import lee.txt; quote it; what did we quote; what changed since the quote; back up
my jobs; jobs from last week; jobs on 3 may; jobs since november 2030; remember my rate is 25 an hour; I always
add 12 % spare; from now on two strokes; forget the rate; forget everything; what are my rules; what do I
charge; the runner took 121; eleven popped; it took us 4 hours; we used 560 balloons; 3 of 60 burst; two of us
took three hours; yes; no
"""


@dataclass(slots=True)
class Target:
    """`make` gives an input, `take` takes it; `again` takes it once more as it was taken, for the clock."""

    name: str
    share: float  # of the time
    make: Callable[[], str]
    take: Callable[[str], object]
    again: Callable[[str], Callable[[], object]]


def phrases() -> list[str]:
    """All turns of the tests' own phrases."""
    rows = [json.loads(line) for file in sorted(PHRASES.glob("*.jsonl")) for line in file.open(encoding="utf-8")]
    return [turn for row in rows for turn in ([row["say"]] if isinstance(row["say"], str) else row["say"])]


def targets(chance: random.Random) -> list[Target]:
    """All targets, cheap ones with less of the time."""
    said = phrases()
    words = sorted({word for text in said for word in text.split()})
    words += [*Conversation().reader.lexicon.mendable, *HOSTILE * 8]
    speech = mutator(said, words, chance)
    orders = [order.strip() for order in ORDERS.split(";")]
    return [
        _reader(speech, said),
        _turns(speech, chance),
        _formulas(chance),
        _house(chance),
        _job_import(chance, said),
        _of_text("words", 0.15, mutator([*orders * 20, *said], words, chance), _words),
    ]


def _of_text(name: str, share: float, make: Callable[[], str], take: Callable[[str], object]) -> Target:
    return Target(name, share, make, take, lambda text: lambda: take(text))


def _reader(make: Callable[[], str], said: list[str]) -> Target:
    reader = Conversation().reader
    contexts = [Context()]
    for first in said[:: max(1, len(said) // 12)]:
        talk = Conversation()
        talk.say(first)
        contexts.append(talk._context())

    def take(text: str) -> object:
        return reader.read(reader.ears.hear(text, None).text, contexts[len(text) % len(contexts)])

    return _of_text("reader", 0.3, make, take)


def _turns(make: Callable[[], str], chance: random.Random) -> Target:
    talks = [Conversation()]

    def take(text: str) -> object:
        if chance.random() < 0.2:
            talks[0] = Conversation()
        reply = talks[0].say(text)
        assert reply.text.strip(), "an empty reply"
        return reply

    def again(text: str) -> Callable[[], object]:
        before = Conversation()
        for turn in talks[0].said[:-1]:
            before.say(turn)
        return lambda: before.say(text)

    return Target("turns", 0.2, make, take, again)


def _formulas(chance: random.Random) -> Target:
    seeds = sorted(
        {
            text
            for file in BOOK_FOLDER.glob("*.toml")
            for _, text in re.findall(r'(\bis|\bwhen) = "([^"]+)"', file.read_text())
        }
    )
    words = sorted({part for text in seeds for part in re.findall(r"\w+|[^\w\s]+", text)} | set(FUNCTIONS))
    book = Conversation().book
    every = {fact.id: fact for fact in book.every_fact()}

    def find(id: str):  # type: ignore[no-untyped-def]
        if id not in every:
            raise Mismatch(f"{id} is not known", "name a fact")
        return every[id]

    def take(text: str) -> object:
        parse.cache_clear()
        try:
            node = parse(text)
            Measurer(find).measure(node)
            return compile_node(node, "slot")
        except (FormulaError, Mismatch) as error:
            return str(error)

    return _of_text("formulas", 0.12, mutator(seeds, [*words, *HOSTILE], chance), take)


def _house(chance: random.Random) -> Target:
    """Over a small book: what is measured is the file, not the book."""
    folder = Path(tempfile.mkdtemp(prefix="festoon-fuzz-"))
    (folder / "base.toml").write_text(BASE)
    blocks = [block for block in re.split(r"\n(?=\[)", BASE) if block.strip()]
    blocks += [block for f in sorted(BOOK_FOLDER.glob("*.toml")) for block in re.split(r"\n(?=\[)", f.read_text())][::5]
    blocks += [
        '[table_length]\nassume = { low = "60 in", typical = "72 in", high = "96 in" }\n',
        '[job_hours]\nassume = "3 hours"',
    ]
    words = sorted({word for block in blocks for word in re.findall(r"\w+|[^\w\s]+", block)})
    return _of_text("house", 0.15, mutator(blocks, [*words, *HOSTILE], chance), lambda text: read_house(text, folder))


def _job_import(chance: random.Random, said: list[str]) -> Target:
    row = JobRow(1, "smith", 0.0, 0.0, "", None, 3)
    whole = [job_text.written(row, said[at : at + 3], None, [], "1", "[x]\na = 1\n") for at in range(0, len(said), 40)]
    made = mutator(whole, [*said[:50], job_text.HEAD, "name:", ">", "| eJw=", *HOSTILE], chance)

    def take(text: str) -> object:
        try:
            return job_text.read(text.encode("utf-8", errors="surrogatepass"))
        except job_text.NotAJob as error:
            return str(error)

    return _of_text("import", 0.08, made, take)


def _words(text: str) -> object:
    return read_order(text), is_undo(text), read_habit(text), read_reports(text, NOMINAL), answer_said(text)
