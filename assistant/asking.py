"""When to ask, and what: only where there is no sensible default, or two readings are both sensible."""

from typing import Any

from assistant.estimating import Estimates
from assistant.heard import clock
from assistant.meant import meant
from assistant.state import HeardPiece, Pending, State
from assistant.which import which_of
from grammar.pieces.lengths import SIZES_OPEN
from grammar.reading import Doubt, Mention, Reading
from grammar.vocabulary import FactWords, Vocabulary
from rules import Book

SOLVED_FOR = frozenset({"count", "length", "span", "height", "diameter", "table_length"})
FAR = 1.6  # times the largest usual size: nobody means more
FEET = ("ft", "foot", "feet", "'")
SIZE_FACTS = ("table_length", "table_diameter", "length", "height", "diameter", "span")
FOOT = 12  # inches
MOST_INCHES = 48  # lengths from here on are told in feet where they come out even
NO_QUESTIONS = frozenset({"help", "undo", "redo", "reset", "save"})


class Asking:
    """Finds the one question that a state leaves open."""

    def __init__(self, book: Book, vocabulary: Vocabulary, estimates: Estimates) -> None:
        self.book = book
        self.vocabulary = vocabulary
        self.estimates = estimates

    def resolve(self, now: State, reading: Reading, pending: Pending | None) -> None:
        """An answer to "wide or high?": a bare role or choice settles the doubt that was open."""
        if pending is None or pending.doubt is None or pending.piece is None:
            return
        if isinstance(pending.doubt.value, dict):
            self._settle(now, reading, pending.doubt)
            return
        choice = next((o for o in pending.doubt.options if reading.answer and o == reading.answer), None)
        if choice is not None and pending.piece < len(now.pieces):
            now.pieces[pending.piece].facts[choice] = pending.doubt.value
            now.topic = choice

    def _settle(self, now: State, reading: Reading, doubt: Doubt) -> None:
        """ "The garland or the column?": the size is of what is named now, or of both."""
        kinds = [str(option) for option in doubt.options]
        for mention in reading.mentions:
            places = meant(mention.which, [HeardPiece(kind) for kind in kinds], -1) if mention.which != "it" else []
            for kind in {mention.kind, *(place.kind for place in places)} & {*kinds}:
                piece = next((p for p in reversed(now.pieces) if p.kind == kind), None)
                if piece is not None:
                    fact, value = doubt.value[kind]
                    piece.facts[fact] = value

    def which(self, mention: Mention | None, now: State) -> Pending | None:
        """Which of several pieces of one kind was meant."""
        return which_of(mention, now) if mention is not None else None

    def fewer(self, too_many: tuple[float, float] | None) -> Pending | None:
        """More taken away than there are."""
        if too_many is None:
            return None
        return Pending(
            f"There are {too_many[1]:g}, so {-too_many[0]:g} cannot be taken away. How many shall stay?", "count"
        )

    def next(self, now: State, reading: Reading, missed: list[Mention], had: bool) -> Pending | None:
        """The question to ask after a turn, if any."""
        if reading.blank:
            return Pending("There were no words in that. What shall I work out? For example: eight 6 ft tables.")
        for doubt in reading.doubts:
            if doubt.kind == "vague" and not doubt.fact and any(self._missing(piece, now) for piece in now.pieces):
                continue  # what is needed is asked for anyway
            return self.doubt(doubt, now)
        if [m for m in missed if not (m.removed and m.kind and now.pieces)] or (
            reading.changing and not now.pieces and not now.loose and not now.job
        ):
            return self._unknown(missed, now) or Pending(
                "I cannot tell which piece that is, so nothing of it was kept. Which one, by its name or size?"
                if now.pieces
                else "There is nothing to change yet. What shall I work out: which piece, how many, how big?"
            )
        clash = self._clash(now)
        if clash is not None:
            return clash
        for place, piece in enumerate(now.pieces):
            fact = self._missing(piece, now)
            if fact == SIZES_OPEN:
                return Pending(
                    str(self.book.kind_of(piece.kind).extra.get("ask_size", "How big is it?")), SIZES_OPEN, place
                )
            if fact is not None:
                return Pending(self._ask(fact, piece), fact, place)
        for mention in missed:
            if mention.removed and mention.kind:
                return Pending(f"There is no {mention.kind} to take away. What shall I change?")
        if not now.pieces and now.loose.get("gas") == "helium":
            return Pending("Helium balloons: bouquets, and how many in each, or loose under the ceiling?")
        if not now.pieces and self._nothing(now, reading):
            if reading.orders and reading.orders[0] not in NO_QUESTIONS:
                return Pending("Which piece is it for, how many and how big? For example: eight 6 ft tables.")
            if reading.unread or now.loose:
                return Pending(
                    "I have no piece yet. Which one is it, how many and how big? For example: eight 6 ft tables."
                )
        return None

    def _unknown(self, missed: list[Mention], now: State) -> Pending | None:
        """ "make the arch 8 ft" where there is none, "a foot wider" of what nobody knows how wide it is."""
        for mention in missed:
            if mention.which == "known" and now.pieces:
                return Pending(f"There is no {mention.kind} yet, so that was not kept. Which piece is it for?")
        step = next((step for mention in missed for step in mention.steps), None)
        if step is None or now.focused is None:
            return None
        name = self._name(step.fact, now.focused.kind)
        return Pending(f"I do not know {name} yet, so that was not kept. What shall it be?", step.fact, now.focus)

    def _nothing(self, now: State, reading: Reading) -> bool:
        return not now.pieces and (bool(reading.unread) or bool(now.loose) or bool(reading.orders))

    # doubts ----------------------------------------------------------------------------------------------------------

    def doubt(self, doubt: Doubt, now: State) -> Pending:
        """The question about something that was not kept or has two readings."""
        name = self._name(doubt.fact, doubt.piece)
        if doubt.kind == "impossible" and (inches := self._in_inches(doubt, now)):
            return inches
        if doubt.kind == "impossible":
            text = f"{doubt.words or doubt.value} cannot be {name}; that was not kept. What is it?"
        elif doubt.kind == "contradiction" and doubt.fact == "colours":
            text = "Those shares come to more than 100 %, so I kept none of them. What are they?"
        elif doubt.kind == "contradiction" and doubt.fact == "setup_from":
            setup, party = map(clock, doubt.options)
            text = f"Set-up from {setup} is not before the party at {party}; I kept neither. When are they?"
        elif doubt.kind == "contradiction":
            said = " or ".join(self._value(doubt.fact, o, doubt.piece) for o in doubt.options if o is not None)
            text = f"You said two things for {name}: {said}. Which one?"
        elif doubt.kind == "vague":
            if doubt.fact == "which":
                said = f"{doubt.words} balloons or a budget of {doubt.words}"
                return Pending(f"{doubt.words} of what? Say it with its word, for example {said}.", "", now.focus)
            if doubt.fact == "colours":
                return Pending(
                    f"How much {doubt.value} is that? Say its share, for example 60 % {doubt.value}.",
                    "",
                    now.focus,
                    doubt,
                )
            text = (
                f"How many is {doubt.words}?"
                if doubt.fact == "count"
                else f"How much {doubt.words}? Say a size, for example {self._example(doubt, now)}."
            )
        else:
            several = isinstance(doubt.value, dict)
            said = " or ".join(f"the {o}" if several else self._option(doubt, o) for o in doubt.options)
            text = f"{doubt.words}: {said}?"
        asked = str(doubt.value) if doubt.kind == "vague" and isinstance(doubt.value, str) else ""  # "how much taller?"
        return Pending(text, asked, now.focus, doubt if doubt.kind in {"either", "impossible"} else None)

    def _example(self, doubt: Doubt, now: State) -> str:
        """A size that is usual for what a doubt is about: "9 ft" of a piece, "12 in" of how wide a runner is."""
        kind = now.focused.kind if now.focused is not None else None
        spec = self.vocabulary.fact(str(doubt.value), kind) if doubt.value else None
        narrow = spec is not None and spec.usual and max(spec.usual) < FOOT * 3
        return f"{spec.usual[0]:g} in" if spec is not None and narrow else "9 ft"

    def _in_inches(self, doubt: Doubt, now: State) -> Pending | None:
        """ "60 foot rounds": a size that makes such a thing in inches only, so one short question settles it."""
        rounds = now.focused is not None and now.focused.facts.get("table_shape") == "round"
        fact = "table_diameter" if rounds and doubt.fact == "table_length" else doubt.fact
        spec = self.vocabulary.fact(fact, doubt.piece)
        feet = doubt.words.lower().endswith(FEET) and isinstance(doubt.value, (int, float))
        if spec is None or spec.unit != "in" or not feet or not _may_be(spec, float(str(doubt.value))):
            return None
        text = f"{doubt.words} cannot be {self._name(fact, doubt.piece)}. {doubt.value:g} inches?"
        return Pending(text, fact, now.focus, doubt)

    def _option(self, doubt: Doubt, option: Any) -> str:
        fact = self.vocabulary.fact(str(option), doubt.piece) if isinstance(option, str) else None
        if fact is not None:
            return {"span": "wide", "height": "high", "length": "along the curve"}.get(
                fact.id, fact.id.replace("_", " ")
            )
        return self._value(doubt.fact, option, doubt.piece)

    def _name(self, fact: str, piece: str | None) -> str:
        spec = self.vocabulary.fact(fact, piece)
        word = spec.words[0] if spec is not None and spec.words else fact.replace("_", " ")
        return "the number" if fact == "count" else f"the {word.split(' of the ')[0]}" if fact else "that"

    def _value(self, fact: str, value: Any, piece: str | None) -> str:
        spec = self.vocabulary.fact(fact, piece)
        if isinstance(value, list):
            return " by ".join(f"{part:g}" if isinstance(part, int | float) else str(part) for part in value)
        if fact == "coverage" and isinstance(value, float):
            return f"{value:.0%}".replace("%", " %")
        if spec is not None and value in spec.choices and spec.choices[value]:
            return spec.choices[value][0]
        if isinstance(value, (int, float)) and spec is not None and spec.unit == "in":
            return f"{value / 12:g} ft" if value % 6 == 0 and value >= MOST_INCHES else f"{value:g} in"
        return "something else" if value is None else str(value).replace("_", " ")

    # what is needed --------------------------------------------------------------------------------------------------

    def _clash(self, now: State) -> Pending | None:
        for clash in self.estimates.of(now).clashes():
            piece = now.pieces[clash.piece] if clash.piece is not None else None
            for fact in clash.drop:
                if piece is not None:
                    piece.facts.pop(fact, None)
                else:
                    now.job.pop(fact, None)
            choices = f"Which: {', or '.join(clash.choices)}?" if clash.choices else ""
            return Pending(f"{clash.text} {choices}".strip(), "", clash.piece)
        return None

    def _missing(self, piece: HeardPiece, now: State) -> str | None:
        """The first fact that is needed and not known: of the way to it that lacks least."""
        ways = self.book.kind_of(piece.kind).extra.get("needs", [])
        have = set(piece.facts)
        if now.job.get("guests") and piece.facts.get("seats"):
            have.add("count")
        limited = piece.facts.get("balloons") or any(now.job.get(fact) for fact in ("budget", "hours", "room"))
        if now.intent == "solve" and limited:
            have |= SOLVED_FOR
        lacking = [[fact for fact in way if fact not in have] for way in ways]
        if not lacking or any(not way for way in lacking):
            return None
        if not have & {fact for way in ways for fact in way} and len(ways) > 1:
            several = max(lacking, key=len)
            bare = str(self.book.kind_of(piece.kind).extra.get("bare", ""))
            return str(several[0]) if "count" in several else bare if [bare] in ways else SIZES_OPEN
        # Of ways that lack as little, the one of which most is known: an arch that is 10 ft wide has a height.
        fact = str(min(zip(lacking, ways, strict=True), key=lambda pair: (len(pair[0]), -len(pair[1])))[0][0])
        return "table_diameter" if fact == "table_length" and piece.facts.get("table_shape") == "round" else fact

    def _ask(self, fact: str, piece: HeardPiece) -> str:
        spec = self.book.fact(fact, piece.kind)
        ask = self.book.kind_of(piece.kind).extra.get("ask", {}).get(fact)
        return str(ask or (spec.ask if spec and spec.ask else f"What is the {fact.replace('_', ' ')}?"))


def _may_be(spec: FactWords, value: float) -> bool:
    """Whether a size of so many inches is near those that are usual."""
    return spec.fits(value) and value <= FAR * max(spec.usual, default=0.0)
