"""Numbers that are the shares of the colours in hand: "60 40" after navy and gold."""

from grammar.phrases import Phrase
from grammar.pieces.ground import Ground
from grammar.pieces.heads import is_count
from grammar.word_files import placed

WHOLE = 100
LINKS = frozenset({"and", "sep", "to", "by"})


class HeldShares(Ground):
    """Bare numbers that add up to a hundred, as many as there are colours in hand."""

    def _shares_of_held(self, at: int, number: float, phrase: Phrase) -> bool:
        """ "60 40", "60/40", "make it 50, 30 and 20": the shares of the colours in hand, in the order said."""
        held = self.context.values.get("colours", ())
        if len(held) < len("ab") or at in self.starts or any(p.kind == "colour" for p in self.phrases):
            return False
        shares, end = self._row_of_numbers(at)
        if self._kind_at(end) == "word" and self.phrases[end].text.lower() in placed("shares"):
            end += 1  # "a 60 40 split"
        if len(shares) != len(held) or sum(shares) != WHOLE or self._kind_at(end) not in {"", "sep", "prep"}:
            return False
        self.current.colours = [
            {"name": colour["name"], "share": share / WHOLE} for colour, share in zip(held, shares, strict=True)
        ]
        self.skip |= set(range(at + 1, end))
        self.topic = ("colours", None)
        self.changing = True
        return True

    def _split_from(self, at: int, first: str) -> bool:
        """ "mostly blue, 70 30": the first share is that of the colour named, the other that of the other one."""
        held = [colour["name"] for colour in self.context.values.get("colours", ())]
        shares, end = self._row_of_numbers(at)
        if len(held) != len("ab") or len(shares) != len(held) or sum(shares) != WHOLE or end < len(self.phrases):
            return False
        names = sorted(held, key=lambda name: name != first)
        self.current.colours = [{"name": n, "share": s / WHOLE} for n, s in zip(names, shares, strict=True)]
        self.topic = ("colours", None)
        self.changing = True
        return True

    def _answers_share(self, at: int, share: float) -> bool:
        """ "more cream" "how much?" "like 50 percent": the share of the colour that was asked about."""
        coloured = any(p.kind == "colour" for p in self.phrases)
        if not self.context.sharing or coloured or self._kind_at(at + 1) not in {"", "sep"}:
            return False
        self.current.colours.append({"name": self.context.sharing, "share": share})
        self.topic = ("colours", None)
        return True

    def _even_of_held(self, parts: int, phrase: Phrase) -> bool:
        """ "half and half" after white and gold: equal shares of the colours in hand, where there are as many."""
        held = self.context.values.get("colours", ())
        if not held or any(p.kind == "colour" for p in self.phrases):
            return False
        if len(held) != parts:
            self.unused.append(phrase)
            return True
        self.current.colours = [{"name": colour["name"], "share": round(1 / parts, 4)} for colour in held]
        self.topic = ("colours", None)
        self.changing = True
        return True

    def _row_of_numbers(self, at: int) -> tuple[list[float], int]:
        """The numbers of a row that begins at a phrase, and where it ends."""
        shares: list[float] = []
        while at < len(self.phrases):
            phrase = self.phrases[at]
            if phrase.kind == "amount" and phrase.amounts[0].type == "NUM":
                shares += _numbers(phrase)
            elif not (phrase.kind in LINKS and self._kind_at(at + 1) == "amount" and is_count(self.phrases[at + 1])):
                break
            at += 1
        return shares, at


def _numbers(phrase: Phrase) -> list[float]:
    """ "60" is one number, "60/40" and "60 to 40" are two."""
    parts = phrase.text.split("/")
    if len(parts) > 1 and all(part.strip().isdigit() for part in parts):
        return [float(part) for part in parts]
    figure = phrase.amounts[0]
    ends = (figure.high,) if figure.single else (figure.low, figure.high)
    return [end.number for end in ends]
