"""Acts of a reading, carried out on the state."""

from dataclasses import replace
from typing import Any

from assistant.changes import Changes
from assistant.gone import brought_back, put_by
from assistant.meant import CALLED, EVERY, PLACES, SIZES, meant
from assistant.state import HeardPiece
from grammar.reading import Mention, Reading

ORDINALS = frozenset({"first", "second", "third", "middle", "last", "biggest", "smallest"})
DISTINCT = frozenset({"coverage", "coverage_fraction", "table_length", "length", "span", "height", "diameter", "count"})


class Apply(Changes):
    """Carries out one reading: finds the pieces that are meant."""

    def run(self, reading: Reading) -> None:
        """All mentions, then the job's facts."""
        compared = self._begin_compare(reading)
        if self.state.compared and compared is None:
            self._choose(reading)
        fresh: list[HeardPiece] = []
        self.refused = any(doubt.kind == "impossible" for doubt in reading.doubts)
        for mention in reading.mentions:
            if mention.options:
                self._options(mention, compared, fresh)
            elif compared is not None and not mention.removed:
                self._alternative(mention, compared, fresh)
            else:
                self._mention(mention, fresh)
        if reading.alternatives and compared is None and len(fresh) == len(self.state.pieces) > 1:
            self.state.compared = True  # "a 5 ft hoop or a 6 ft hoop, which is cheaper?"
        for fact in reading.job_drop:
            self.state.job.pop(fact, None)
        for fact, value in reading.job.items():
            self._exclude(self.state.job, fact)
            self.state.job[fact] = value

    # which piece -----------------------------------------------------------------------------------------------------

    def _begin_compare(self, reading: Reading) -> HeardPiece | None:
        """The piece that others are put beside, where the turn compares and something is in hand."""
        if not reading.alternatives or not self.state.pieces:
            return None
        named = [p for m in reading.mentions if m.facts or m.options for p in [self._existing(m.kind or "")] if p]
        return named[0] if named else self.state.focused or self.state.pieces[-1]

    def _choose(self, reading: Reading) -> None:
        """After a comparison: the alternative that the turn names stays, the others go."""
        pieces = self.state.pieces
        for mention in reading.mentions:
            kept = None
            if mention.which in ORDINALS and len(pieces) > 1:
                kept = next(iter(meant(mention.which, pieces, self.state.focus or 0)), None)
                mention.which, mention.removed = "it", False  # "take the first" keeps it
            elif reading.changing and mention.kind and len([p for p in pieces if p.kind == mention.kind]) == 1:
                kept = next(p for p in pieces if p.kind == mention.kind)
            elif mention.facts and (reading.changing or (mention.kind is None and not reading.orders)):
                fits = [
                    p for p in pieces if all(p.facts.get(k) == v for k, v in mention.facts.items() if k in DISTINCT)
                ]
                named = any(k in DISTINCT for k in mention.facts)
                kept = fits[0] if named and len(fits) == 1 else None
            if kept is not None:
                self.state.pieces = [kept]
                self.state.focus = 0
                self.state.compared = False
                self.chosen = True
                return

    def _alternative(self, mention: Mention, base: HeardPiece, fresh: list[HeardPiece]) -> None:
        if mention.kind and not mention.new and not mention.facts and self._existing(mention.kind) is not None:
            return
        facts = dict(base.facts) if mention.kind in (None, base.kind) else {}
        piece = HeardPiece(mention.kind or base.kind, facts)
        if facts and mention.facts.get("count") == 1:  # "a two thirds runner" beside eight of them
            left = {k: v for k, v in mention.facts.items() if k != "count"}
            mention = replace(mention, facts=left)
        self._change(piece, mention)
        self.state.pieces.append(piece)
        self.state.focus = len(self.state.pieces) - 1
        self.state.compared = True
        fresh.append(piece)

    def _options(self, mention: Mention, base: HeardPiece | None, fresh: list[HeardPiece]) -> None:
        """ "two thirds or full": one piece for each value, in the order named."""
        fact, values = next(iter(mention.options.items()))
        start = HeardPiece(
            mention.kind or (base.kind if base else ""),
            dict(base.facts) if base and mention.kind in (None, base.kind) else {},
        )
        if not start.kind:
            self.missed.append(mention)
            return
        place = len(self.state.pieces)
        if base is not None:
            place = self.state.pieces.index(base)
            self._drop_piece(base)
        for value in values:
            piece = HeardPiece(start.kind, dict(start.facts))
            name = "coverage_fraction" if fact == "coverage" and isinstance(value, float) else fact
            others = {
                k: v
                for k, v in mention.facts.items()
                if (k not in {"coverage", "coverage_fraction"} or fact != "coverage")
                and not (base is not None and k == "count" and v == 1)  # "a two thirds runner" beside eight of them
            }
            self._change(piece, replace(mention, facts={**others, name: value}))
            self.state.pieces.insert(place, piece)
            self.state.focus = place
            place += 1
            fresh.append(piece)
        self.state.compared = True

    def _existing(self, kind: str) -> HeardPiece | None:
        focused = self.state.focused
        if focused is not None and focused.kind == kind:
            return focused
        return next((p for p in reversed(self.state.pieces) if p.kind == kind), None)

    def _mention(self, mention: Mention, fresh: list[HeardPiece]) -> None:
        if mention.kind is None:
            self._unnamed(mention)
            return
        alike = [p for p in self.state.pieces if p.kind == mention.kind and p not in fresh]
        unclear = len(alike) > 1 and not mention.new and not mention.removed and mention.part_of is None
        if mention.which.startswith("called ") and mention.removed:
            for piece in meant(mention.which, alike, 0):
                self._drop_piece(piece)
            return
        if mention.which.startswith("called ") or (unclear and mention.which in {*EVERY, *PLACES}):
            for piece in meant(mention.which, alike, 0):
                self._change(piece, mention)
                self._look_at(piece)
            return
        if unclear and self.state.focused not in fresh and any(f in SIZES for f in mention.facts):
            self.unclear = mention
            return
        existing = self._existing(mention.kind)
        if mention.removed:
            self._remove(mention, existing)
        elif mention.part_of is not None and not mention.new and existing is not None:
            existing = next((p for p in alike if p.facts.get("count", 0) > 0), existing)  # what is not split off yet
            self._split(mention, existing, fresh)
        elif mention.which == "known" and existing is None:
            self.missed.append(mention)
        elif existing is None and (back := brought_back(self.state, mention)) is not None:
            self._change(back, mention)
            self._look_at(back)
        elif mention.new or existing is None or existing in fresh:
            self._add(mention, fresh)
        else:
            self._change(existing, mention)
            self._look_at(existing)

    def _swap_colours(self, mention: Mention) -> None:
        """The colours of two pieces change places, or the shares of two colours of one."""
        dressed = [piece for piece in self.state.pieces if piece.facts.get("colours")]
        if len(dressed) == len("ab"):
            one, other = dressed
            one.facts["colours"], other.facts["colours"] = other.facts["colours"], one.facts["colours"]
        elif len(dressed) == 1 and len(dressed[0].facts["colours"]) == len("ab"):
            first, second = dressed[0].facts["colours"]
            dressed[0].facts["colours"] = [{**second, "name": first["name"]}, {**first, "name": second["name"]}]
        else:
            self.missed.append(mention)

    def _unnamed(self, mention: Mention) -> None:
        pieces = self.state.pieces
        if not pieces:
            if mention.facts:
                self.state.loose.update(mention.facts)
            if mention.steps or mention.drop or mention.removed or mention.like:
                self.missed.append(mention)
            return
        focus = self.state.focus or 0
        sized = any(fact in SIZES for fact in mention.facts)
        chosen = meant(mention.which, pieces, focus, sized=sized)
        if not chosen:
            self.missed.append(mention)
            return
        if mention.removed:
            for piece in chosen:
                self._take_away(piece)
            return
        if mention.new:
            copy = HeardPiece(pieces[focus].kind, {k: v for k, v in pieces[focus].facts.items() if k != "count"})
            self._change(copy, mention)
            self._join_or_add(copy, [])
            return
        if mention.like == "swapped":
            self._swap_colours(mention)
            return
        if mention.like == "all":
            copy = HeardPiece(pieces[focus].kind, dict(pieces[focus].facts))
            self._change(copy, mention)
            self._join_or_add(copy, [])
            return
        if mention.like == "colours":
            self._same_colours(mention, chosen)
        for piece in chosen:
            piece.called = piece.called or (mention.which if mention.which in CALLED else "")
            self._change(piece, self._fitting(mention, piece))
        if chosen:
            self._look_at(chosen[0])

    def _same_colours(self, mention: Mention, chosen: list[HeardPiece]) -> None:
        """ "same colours" after an arch was added: those of the pieces that have some, where they all have the same."""
        rows = [p.facts["colours"] for p in self.state.pieces if p.facts.get("colours") and p not in chosen]
        if not rows or any(row != rows[0] for row in rows):
            self.missed.append(mention)
            return
        for piece in chosen:
            piece.facts["colours"] = [dict(colour) for colour in rows[0]]

    def _fitting(self, mention: Mention, piece: HeardPiece) -> Mention:
        """Only those facts that a piece of this kind can have."""
        facts = {}
        for name, value in mention.facts.items():
            fact = self.vocabulary.fact(name, piece.kind)
            chosen = fact is None or fact.type != "choice" or value in fact.choices
            if fact is None or (fact.belongs(piece.kind) and chosen):  # no arch drops to the floor
                facts[name] = value
        return replace(mention, facts=facts)

    def _split(self, mention: Mention, existing: HeardPiece, fresh: list[HeardPiece]) -> None:
        part = mention.facts.get("count", 1)
        left = existing.facts.get("count", 0) - part
        piece = HeardPiece(existing.kind, dict(existing.facts), mention.called)
        self._change(piece, mention)
        if left <= 0 and fresh and existing in self.state.pieces:
            self.state.pieces = [*(p for p in self.state.pieces if p is not existing), piece]  # in the order named
        elif left > 0:
            existing.facts["count"] = left
            self.state.pieces.append(piece)
        else:
            self.state.pieces[self.state.pieces.index(existing)] = piece
        fresh.append(piece)
        self._look_at(piece)

    def _add(self, mention: Mention, fresh: list[HeardPiece]) -> None:
        kind = mention.kind or ""
        if self.refused and not mention.facts and self._existing(kind) is not None:
            return  # "zero tables": nothing of it was kept, so there is no piece either
        piece = HeardPiece(kind, called=mention.called, several=mention.several)
        model = self.state.focused or (self.state.pieces[-1] if self.state.pieces else None)
        if mention.like == "all" and (same := self._existing(kind)) is not None:
            piece.facts = {k: v for k, v in same.facts.items() if k != "count"}
        elif mention.like == "colours" and model is not None and "colours" in model.facts:
            piece.facts["colours"] = model.facts["colours"]
        loose, self.state.loose = self._loose_for(kind, mention), {}
        piece.facts.update(loose)
        if mention.like == "sizes":
            self._same_sizes(piece, self._replaced(mention) or model)
        self._change(piece, mention)
        self._share_out(piece, mention, loose.get("balloons"))
        model = self._replaced(mention) or model
        if mention.instead and model is not None and model in self.state.pieces:
            put_by(self.state, model, piece.kind)
            self.state.pieces[self.state.pieces.index(model)] = piece
            fresh.append(piece)
            self._look_at(piece)
            return
        self._join_or_add(piece, fresh)

    def _replaced(self, mention: Mention) -> HeardPiece | None:
        """The piece in hand that a new one takes the place of, where it was named."""
        if mention.which.startswith("kind "):
            return self._existing(mention.which.removeprefix("kind "))
        sized = mention.instead and mention.which.startswith("size ")
        return next(iter(meant(mention.which, self.state.pieces, 0)), None) if sized else None

    def _same_sizes(self, piece: HeardPiece, model: HeardPiece | None) -> None:
        """ "an arch the same size": those sizes of another piece that such a piece can have."""
        for name in SIZES if model is not None else ():
            fact = self.vocabulary.fact(name, piece.kind)
            if model is not None and name in model.facts and fact is not None and fact.belongs(piece.kind):
                piece.facts[name] = model.facts[name]

    def _loose_for(self, kind: str, mention: Mention) -> dict[str, Any]:
        """What was said before any piece, without sizes where the piece has all of its own: those were a place's."""
        words = self.vocabulary.kinds.get(kind)
        said = {*mention.facts} & {*SIZES}
        if words is None or not (words.bare in said or (words.by and {*words.by} <= said)):
            return self.state.loose
        return {fact: value for fact, value in self.state.loose.items() if fact not in SIZES}

    def _share_out(self, piece: HeardPiece, mention: Mention, total: float | None) -> None:
        """ "60 helium balloons", then "bouquets of 5": balloons said before the pieces are those of all of them."""
        words = self.vocabulary.kinds.get(piece.kind)
        if not total or words is None or words.number != "balloons" or "count" not in words.needs:
            return
        said = mention.facts.get("balloons"), mention.facts.get("count")
        if said[0] and not said[1] and total % said[0] == 0:
            piece.facts["count"] = int(total // said[0])
        elif said[1] and not said[0] and total % said[1] == 0:
            piece.facts["balloons"] = int(total // said[1])
        elif not said[0]:
            piece.facts.pop("balloons", None)

    def _join_or_add(self, piece: HeardPiece, fresh: list[HeardPiece]) -> None:
        """A piece alike in every field raises the count of the one that stands."""
        for old in self.state.pieces:
            if old.kind == piece.kind and self._alike(old, piece) and not self.state.compared:
                old.facts["count"] = old.facts.get("count", 1) + piece.facts.get("count", 1)
                self._look_at(old)
                return
        self.state.pieces.append(piece)
        fresh.append(piece)
        self._look_at(piece)

    def _alike(self, old: HeardPiece, new: HeardPiece) -> bool:
        a = {k: v for k, v in old.facts.items() if k != "count"}
        b = {k: v for k, v in new.facts.items() if k != "count"}
        if a == b:
            return bool(a)
        return len(b) < len(a) and all(a.get(k) == v for k, v in b.items()) and "count" in new.facts

    def _look_at(self, piece: HeardPiece) -> None:
        at = next((i for i, p in enumerate(self.state.pieces) if p is piece), None)
        if at is not None:  # it may just have been taken away
            self.state.focus = at

    def _remove(self, mention: Mention, existing: HeardPiece | None) -> None:
        if existing is None:
            self.missed.append(mention)
        else:
            self._take_away(existing)

    def _take_away(self, piece: HeardPiece) -> None:
        put_by(self.state, piece)
        self._drop_piece(piece)
