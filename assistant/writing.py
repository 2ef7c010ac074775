"""Replies in words: the answer first, then the numbers, what was taken, what to mind, and what to say next."""

from pathlib import Path

from assistant.asked import Asked, answer
from assistant.estimating import workable
from assistant.heard import export
from assistant.layout import join, labelled, listed, paragraph
from assistant.measured import measured
from assistant.reply import Reply
from assistant.speech import spoken
from assistant.state import HeardPiece, State
from assistant.stock import bags_of
from assistant.summary import summary
from assistant.telling import Teller, plain
from grammar.reading import Reading
from grammar.vocabulary import Vocabulary
from rules import Book, Estimate, shopping
from rules.buying import Row

MOST_ROWS = 4  # colours and sizes listed before the rest is summed up
MOST_TAKEN = 5


class Writer:
    """Lays replies out for a width."""

    def __init__(
        self,
        book: Book,
        vocabulary: Vocabulary,
        width: int,
        minded: frozenset[str] = frozenset(),
        folder: Path | None = None,
    ) -> None:
        self.book, self.vocabulary, self.width, self.minded, self.folder = book, vocabulary, width, minded, folder

    def reply(self, before: State, now: State, reading: Reading, made: Estimate, was: Estimate) -> Reply:
        """The whole reply to a turn."""
        question = now.pending.text if now.pending else None
        asked = Asked(self.book, self.width, before, now, reading, was, made, self.folder)
        answered = measured(asked) or answer(asked) or self._as_it_stands(before, now, reading, made)
        blocks = [self._read_as(reading), *(answered or self._estimate(before, now, made, was))]
        if answered and asked.is_beside:
            question = None  # it is still open, but no answer to what was asked
        after = paragraph(question, self.width) if question else [] if answered else self._hint(now, made)
        blocks += [self._unread(reading), after]
        return Reply(
            text=join(blocks),
            heard=export(now, self.vocabulary),
            unread=reading.unread,
            question=spoken(question) if question else None,
            cautions=[spoken(caution.text) for caution in made.cautions()],
            figures=made.figures,
        )

    def _as_it_stands(self, before: State, now: State, reading: Reading, made: Estimate) -> list[list[str]]:
        """A few words where nothing changed, and there is nothing to answer either."""
        same = now.pieces == before.pieces and now.job == before.job and now.compared == before.compared
        if not (same and now.pieces) or now.pending or now.intent not in {None, "change"}:
            return []
        if reading.asks:
            return []  # told so by those who answer
        balloons = made.typical("balloons_all")
        many = f", about {plain(*balloons, metric=made.metric)} balloons" if balloons and balloons[0] else ""
        lead = "Nothing changed" if reading.unread else "As it stands"
        text = f'{lead}: {summary(self.book, now)}{many}. Say "estimate" for all of it.'
        return [paragraph(text, self.width)]

    # the estimate ----------------------------------------------------------------------------------------------------

    def _estimate(self, before: State, now: State, made: Estimate, was: Estimate) -> list[list[str]]:
        if not now.pieces:
            return [paragraph(self._nothing(now), self.width)] if not now.pending else []
        if now.pending and before.pieces == now.pieces and before.job == now.job:
            return []  # the question is all that is new
        made.look_ahead()
        changed = self._difference(before, now, made, was) if before.pieces and now.intent != "estimate" else []
        heads = [line for place in range(len(now.pieces)) for line in self._piece(place, now.pieces[place], made)]
        ready = any(self._main(place, made) for place in range(len(now.pieces)))
        if not ready:
            return [heads]
        return [changed, heads, self._job(made, now), self._notes(made), self._taken(made, now), self._mind(made)]

    def _piece(self, place: int, piece: HeardPiece, made: Estimate) -> list[str]:
        """The headline of one piece."""
        kind = self.book.kind_of(piece.kind)
        teller = Teller(made, place, metric=made.metric)
        if not workable(self.book, piece.kind):
            return paragraph(f"{self._named(piece)}: kept; not worked out yet.", self.width)
        lines: list[str] = []
        for template in kind.extra.get(
            "tells", ["{count} " + piece.kind + "{count||s}: about {balloons} balloons ({balloons~})."]
        ):
            text = teller.tell(template)
            if text:
                lines += paragraph(text, self.width)
        return lines or paragraph(f"{self._named(piece)}: noted.", self.width)

    def _named(self, piece: HeardPiece) -> str:
        count = piece.facts.get("count")
        noun = self.book.kind_of(piece.kind).words[0] if self.book.kind_of(piece.kind).words else piece.kind
        return f"{count} {noun}{'s' if count != 1 else ''}" if count else noun.capitalize()

    def _main(self, place: int, made: Estimate) -> bool:
        main = made.book.kind_of(made.job.pieces[place].kind).main
        return bool(main) and made.step(main, place) is not None

    def _job(self, made: Estimate, now: State) -> list[str]:
        """The few numbers of the whole job."""
        lines = self._buy(shopping(made))
        teller = Teller(made, None, metric=made.metric)
        for label, template in self.book.job.extra.get("tells", ()):
            text = teller.tell(template)
            if text:
                lines += labelled(label, text, self.width)
        return lines + self._against_budget(made, now)

    def _against_budget(self, made: Estimate, now: State) -> list[str]:
        """The price beside what may be spent, where that was said."""
        budget = now.job.get("budget")
        price = made.typical("price") if budget else None
        if price is None or not budget or isinstance(price[0], bool | str):
            return []
        verdict = "within" if price[0] <= budget["amount"] else "over"
        text = f"about {plain(*price, metric=made.metric)}, {verdict} the {budget['amount']:,}"
        if verdict == "over":
            text += f': say "can I do it for {budget["amount"]}?"'
        return labelled("price", text, self.width)

    def _buy(self, rows: list[Row]) -> list[str]:
        if not rows:
            return []
        lines: list[str] = []
        for row in rows[:MOST_ROWS]:
            colour = f"{row.colour}, " if row.colour else ""
            text = f"{colour}{row.size_in:g} in: {bags_of(row)} ({row.left} left over)"
            lines += labelled("buy" if not lines else "", text, self.width)
        if len(rows) > MOST_ROWS:
            lines += labelled("", f'and {len(rows) - MOST_ROWS} more: "shopping list"', self.width)
        return lines

    def _notes(self, made: Estimate) -> list[str]:
        return [line for note in made.notes()[:2] for line in paragraph(note.text, self.width)]

    def _taken(self, made: Estimate, now: State) -> list[str]:
        """What was assumed, once and shortly."""
        words = list(dict.fromkeys(word for place in range(len(now.pieces)) for word in made.taken(place)))
        words = list(dict.fromkeys([*words, *made.taken(None)]))
        bare = [piece for piece in now.pieces if not piece.facts.get("colours")]
        if bare:
            kinds = dict.fromkeys(self._named(piece).lower() for piece in bare)
            words.insert(0, "no colours yet" if len(bare) == len(now.pieces) else f"no colours for the {listed(kinds)}")
        more = f" and {len(words) - MOST_TAKEN} more" if len(words) > MOST_TAKEN else ""
        return paragraph(f"I took: {', '.join(words[:MOST_TAKEN])}{more}.", self.width) if words else []

    def _mind(self, made: Estimate) -> list[str]:
        """Dangers by name, once; "cautions" tells them whole."""
        names = list(dict.fromkeys(caution.text.split(":")[0].lower() for caution in made.cautions()))
        fresh = [name for name in names if name not in self.minded]
        return paragraph(f'Mind: {listed(fresh)}; local rules decide ("cautions").', self.width) if fresh else []

    # what changed ----------------------------------------------------------------------------------------------------

    def _difference(self, before: State, now: State, made: Estimate, was: Estimate) -> list[str]:
        """What a change did: was, now."""
        pairs = []
        told = [("balloons_all", "balloons"), ("hours_hands_on", "hands"), ("line_length", "line")]
        if now.pieces == before.pieces and not now.job.get("budget"):
            told.append(("price", "price"))  # "make the margin 45"; where there is a budget it stands beside that
        for id, label in told:
            old, new = was.typical(id), made.typical(id)
            if old is not None and new is not None and old[0] and old[0] != new[0]:
                a, b = plain(*old, metric=made.metric), plain(*new, metric=made.metric)
                if a != b:
                    pairs.append(f"{label} {a}, now {b}")
        if not pairs:
            return ["No change in the numbers."] if now.pieces == before.pieces and now.job == before.job else []
        return paragraph("Was " + "; ".join(pairs) + ".", self.width)

    # around it -------------------------------------------------------------------------------------------------------

    def _read_as(self, reading: Reading) -> list[str]:
        """Numbers that were heard or run together, and mended spelling, read back."""
        said = [f'"{text}" as {read}' for text, read in reading.said_as if text.lower() != read]
        return paragraph(f"I read {listed(said)}.", self.width) if said else []

    def _unread(self, reading: Reading) -> list[str]:
        if not reading.unread:
            return []
        lines = paragraph(f"Not used: {', '.join(reading.unread[:6])}.", self.width)
        for word, known in list(reading.near.items())[:1]:
            lines += paragraph(f"For {word}, did you mean {listed(known, 'or')}?", self.width)
        return lines

    def _nothing(self, now: State) -> str:
        if now.job:
            return "Noted."
        return 'Tell me a piece, how many and how big, for example "eight 6 ft tables, full drop".'

    def _hint(self, now: State, made: Estimate) -> list[str]:
        """One hint of what to say next."""
        focused = now.focused
        if focused is None or not workable(self.book, focused.kind):
            return []
        hints = []
        step = made.step("balloons_each", now.focus) or made.step("balloons", now.focus)
        if step is not None:
            hints.append(f'"why {step.value:,.0f}"')
        if not focused.facts.get("colours"):
            hints.append('"navy, gold and white"')
        if focused.kind == "runner" and not focused.facts.get("coverage"):
            hints.append('"two thirds"')
        else:
            hints.append('"what did you assume"')
        return paragraph(f"Try {listed(hints, 'or')}.", self.width)
