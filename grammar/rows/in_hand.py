"""What is said of those in hand without pointing at them: "she might want four bunches", "with 11s only"."""

from grammar.reading import Context
from grammar.terms import Term
from grammar.word_files import placed

MORE = frozenset({"ADD", "MORE", "SAME"})
NOUNS = frozenset({"PIECE", "TABLE", "SHAPE", "FOOTER", "ONES", "PRON", "COLOUR"})
TABLES = "runner"  # what tables in hand are dressed with


def of_those_in_hand(row: tuple[Term, ...], context: Context) -> tuple[Term, ...]:
    """The terms with what is wanted of a kind in hand told from more of it, and balloons only of a size said of all."""
    if not context.kinds:
        return row
    return _of_all(_colours_of_all(_wants(row, context), context), context)


def _wants(row: tuple[Term, ...], context: Context) -> tuple[Term, ...]:
    """ "she might want 4 bunches" of six: four in all, unless more, another or "also" is said."""
    words = [t.text.lower() for t in row]
    more = any(t.type in MORE for t in row) or placed("says_more") & {*" ".join(words).split()}
    if more or context.asked:
        return row
    for at in range(len(row) - 2):
        if words[at] not in placed("wants_so_many") or row[at + 1].type != "NUM":
            continue
        kind = TABLES if row[at + 2].type == "TABLE" else str(row[at + 2].value)
        behind = row[at + 3 :]
        alone = all(t.type in {"FILL", "SEP", "PREP", "DET", "WORD"} for t in behind)
        if row[at + 2].type in {"PIECE", "TABLE"} and context.kinds.count(kind) == 1 and alone:
            return (*row[:at], row[at].moved("ONHAND", "theirs"), *row[at + 1 :])
    return row


def _colours_of_all(row: tuple[Term, ...], context: Context) -> tuple[Term, ...]:
    """ "coral and white", right after what was said of all tables of two sizes: of all of them, where none has any."""
    alike = len(context.kinds) > 1 and len({*context.kinds}) == 1 and len(context.recent) == len(context.kinds)
    bare = row and all(t.type in {"COLOUR", "AND", "SEP"} for t in row) and not context.asked
    if not (alike and bare) or context.colours or row[0].type != "COLOUR":
        return row
    here = row[0].start
    return (Term("PRON", "all", here, here, ""), *row)


def _of_all(row: tuple[Term, ...], context: Context) -> tuple[Term, ...]:
    """ "can I get away with 11s only", of two walls: of both."""
    only = any(t.text.lower() in placed("alone") for t in row)
    sizes = [t for t in row if t.type == "NOMINALS"]
    one_kind = len(context.kinds) > 1 and len({*context.kinds}) == 1
    if not (only and sizes and one_kind) or any(t.type in NOUNS for t in row):
        return row
    here = row[0].start
    return (Term("PRON", "all", here, here, ""), *row)
