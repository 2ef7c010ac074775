"""What a turn that asks something hands to those who answer, and who answers what."""

from collections.abc import Callable
from dataclasses import replace
from importlib import import_module
from pathlib import Path

from assistant.state import Pending, State
from grammar.reading import Reading
from rules import Book, Estimate
from rules.record import record

Blocks = list[list[str]]  # groups of lines, an empty line between groups


@record
class Asked:
    """One turn: the states and estimates before and after it, what was read, and the columns to write for."""

    book: Book
    width: int
    before: State
    now: State
    reading: Reading
    was: Estimate
    made: Estimate
    folder: Path | None = None  # where files may be written; None: nowhere

    @property
    def main(self) -> tuple[str, int | None]:
        """The figure that a question without a name is about: the focused piece's main one, else the job's."""
        if self.now.focused is not None and len(self.now.pieces) == 1:
            return self.book.kind_of(self.now.focused.kind).main or "balloons", self.now.focus
        return "balloons_all", None

    @property
    def same(self) -> bool:
        """Whether the turn left pieces and job as they were."""
        return (self.now.pieces, self.now.job) == (self.before.pieces, self.before.job)

    @property
    def is_new(self) -> bool:
        """Whether the question that is open now was not open before."""
        before, now = self.before.pending, self.now.pending
        return now is not None and (before is None or before.text != now.text)

    @property
    def is_beside(self) -> bool:
        """Whether alternatives stand and the turn asks for something else than them: what is open waits."""
        return self.now.compared and self.same and not self.is_new and self.now.intent not in COMPARES


COMPARES = frozenset({None, "compare", "choices", "change", "pick"})

Answer = Callable[[Asked], Blocks | None]

# intent -> module of assistant/ and function; a function gives None where the plain estimate is the answer.
ANSWERS = {
    "help": ("answers", "help_with"),
    "undo": ("answers", "undone"),
    "restore": ("answers", "undone"),
    "reset": ("answers", "begun_anew"),
    "why": ("why", "why"),
    "explain": ("why", "why"),
    "sure": ("sure", "how_sure"),
    "matters": ("answers", "what_matters"),
    "assumed": ("answers", "what_was_taken"),
    "sources": ("answers", "sources"),
    "cautions": ("answers", "cautions"),
    "told": ("remarked", "told"),
    "shopping": ("stock", "shopping_list"),
    "picture": ("sheets.answers", "picture"),
    "sheet": ("sheets.answers", "sheet"),
    "compare": ("options", "side_by_side"),
    "choices": ("options", "choices"),
    "change": ("options", "still_compared"),
    "pick": ("options", "still_compared"),
    "instead": ("options", "instead"),
    "shares": ("shares", "shares"),
    "earnings": ("earnings", "earnings"),
    "recap": ("recap", "recap"),
    "sizes": ("recap", "sizes"),
    "units": ("recap", "in_units"),
    "least": ("levers", "least"),
    "solve": ("backwards", "solve"),
    "cheaper": ("levers", "cheaper"),
    "resize": ("levers", "resized"),
    "drape": ("levers", "to_the_floor"),
    "each_table": ("levers", "per_table"),
    "spares": ("spares", "spares"),
    "recolour": ("spares", "recoloured"),
    "build": ("sheets.card_words", "show_card"),
    "schedule": ("schedule", "schedule"),
    "calendar": ("diary", "diary"),
    "transport": ("load", "transport"),
    "price": ("price", "price"),
    "labour": ("price", "why_labour"),
    "client": ("client_text", "client_text"),
    "brief": ("client_text", "decorator_text"),
    "weather": ("weather", "weather"),
    "bursts": ("keeping", "bursts"),
    "colour_keeps": ("keeping", "colours"),
    "floating": ("keeping", "helium"),
    "sight": ("around", "sight"),
    "seats": ("around", "seats"),
    "overhead": ("around", "overhead"),
    "weights": ("needed", "weights"),
    "lasting": ("needed", "lasting"),
    "gas": ("needed", "gas"),
}

# intent -> module and function that takes from the turn what only this order needs, before anything is asked back.
PREPARES = {
    "choices": ("options", "lay_out"),
    "resize": ("levers", "ask_size"),
    "solve": ("limits", "hear"),
    "pick": ("picking", "pick"),
    "schedule": ("schedule", "hear"),
}
# Asked of a single job: while alternatives stand, of the one in focus.
OF_ONE = frozenset(
    "cheaper resize each_table spares recolour drape price labour schedule transport client brief solve "
    "earnings sizes units least".split()
)
# Questions of "what if" that change nothing: what is named in them is not kept.
ONLY_ASKED = frozenset(
    "cheaper resize each_table spares recolour "
    "calendar client brief labour bursts colour_keeps floating sight seats overhead "
    "weights lasting gas pick keep told "
    "instead shares earnings recap sizes units least".split()
)


ALWAYS = frozenset({"help", "undo", "restore", "redo", "reset"})  # answered with nothing in hand, too


OWN_WORDS = ALWAYS | {"save", "keep"}  # what is no question, whatever its form


def prepare(book: Book, now: State, reading: Reading) -> Pending | None:
    """Let the turn's order, if any, take from the reading what it needs; the question that it leaves open."""
    if now.intent in PREPARES and now.pieces:
        module, name = PREPARES[now.intent]
        take: Callable[[Book, State, Reading], None] = getattr(import_module(f"assistant.{module}"), name)
        take(book, now, reading)
    return now.pending


def answer(asked: Asked) -> Blocks | None:
    """The answer to the turn's order, or None."""
    intent = asked.now.intent or ("change" if asked.now.compared and not asked.reading.asks else None)
    found = _answer_to(intent, asked) if intent is not None else None
    if found is None and asked.now.pieces and intent not in OWN_WORDS:
        from assistant.remarked import unanswered

        return unanswered(asked, lambda hint: _answer_to(hint, asked))
    return found


def _answer_to(intent: str, asked: Asked) -> Blocks | None:
    if intent not in ANSWERS or not (asked.now.pieces or intent in ALWAYS):
        return None
    if asked.now.compared and intent in OF_ONE:
        asked = _of_the_focused(asked)
    module, name = ANSWERS[intent]
    write: Answer = getattr(import_module(f"assistant.{module}"), name)
    return write(asked)


def _of_the_focused(asked: Asked) -> Asked:
    """While alternatives stand, what is asked of a job is asked of the one in focus or the first worked out."""
    from assistant.estimating import estimate

    focus = asked.now.focus or 0
    places = sorted(range(len(asked.now.pieces)), key=lambda place: place != focus)
    known = (p for p in places if asked.made.step(asked.book.kind_of(asked.now.pieces[p].kind).main or "balloons", p))
    alone = asked.now.copy()
    alone.pieces = [alone.pieces[next(known, focus)]]
    alone.focus, alone.compared = 0, False
    made = estimate(asked.book, alone)
    made.metric = alone.metric
    return replace(asked, now=alone, made=made)
