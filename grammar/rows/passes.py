"""What is settled in a row of terms before the grammar reads it, pass by pass.

Each pass gets the terms that the one before it left. It drops none, but makes it filler, or a word that is named as not
used. It runs only where its stage begins with one of the types of terms that the pass is about.
"""

from collections.abc import Callable

from grammar.rows.bare_tables import bare, dressed_alone
from grammar.rows.bearing import at_a_side, bearing, on_each, ring_round, top_table, weighted
from grammar.rows.binding import alone, between, bind, drop_links, gaps, props
from grammar.rows.called import called_ones
from grammar.rows.falling import falling
from grammar.rows.giants import giants, of_the_pieces
from grammar.rows.here_and_there import here_and_there
from grammar.rows.hinted import cleared, colours_counted, gone, greens, hints, left_open, placed_colours, put_in
from grammar.rows.hundreds import adding_up, hundreds
from grammar.rows.labelled import blown_to, degrees, in_all, of_things, telling, too_low, unit_ahead, winds
from grammar.rows.last_time import last_time
from grammar.rows.legs import legs
from grammar.rows.occasions import clauses, hours, names, occasion
from grammar.rows.one_there import one_is_there
from grammar.rows.place_sizes import coming_down, floor_ahead, one_for_each, part_of_it, sticks_out, wrapped
from grammar.rows.portions import (
    as_many,
    every_other,
    for_every,
    half_of,
    half_of_it,
    half_of_them,
    parts,
    portions,
    ratios,
    wholly,
)
from grammar.rows.put_up import digits_to_stand, letters
from grammar.rows.setting import around, led_by_tables
from grammar.rows.several import (
    bags,
    both_ends,
    colours_on_some,
    crowds,
    first_and_second,
    groups,
    left,
    matching,
    matching_one,
    one_and_one,
    one_is,
    one_of_each,
    sizes_in_turn,
    so_many_of,
    some,
    tall_at,
    the_other_two,
    two_of,
    two_people,
)
from grammar.rows.shapes import as_wide_as_high, by_so_much, rounded
from grammar.rows.taken_back import (
    counted_aloud,
    denied,
    is_better,
    left_off,
    lowered,
    more_like,
    not_that,
    of_the_job,
    so_many_go,
    taken_back,
    than_thought,
    things,
    weighed_up,
)
from grammar.terms import Term

Pass = Callable[[list[Term]], list[Term]]
Stage = tuple[tuple[frozenset[str], Pass], ...]


def _about(types: str, *passes: Pass) -> Stage:
    """Passes about some types of terms; about every row where none is named."""
    return tuple((frozenset(types.split()), step) for step in passes)


# First what is told beside the pieces; then sayings are put into the order that the grammar reads; then what only
# names, dates or is taken back; at last shares and small words.
STAGES: tuple[Stage, ...] = (
    (
        *_about("ONES", led_by_tables),
        *_about("BALLOON", weighted),
        *_about("TABLE", top_table, every_other),
        *_about("DET PRON", bare),
        *_about("TABLE SHAPE FOOTER ONES PRON", dressed_alone),
    ),
    (
        *_about("", occasion),
        *_about("NUM LEN", digits_to_stand),
        *_about("NUM", here_and_there),
        *_about("PROP", letters),
        *_about("COLOUR", cleared, put_in),
        *_about("COLOUR NOMINALS VAGUE", hints),
        *_about("COLOUR", greens),
        *_about("LABEL", left_open),
        *_about("", ring_round),
        *_about("BALLOON", coming_down),
        *_about("BY", floor_ahead),
        *_about("PIECE", one_for_each, wrapped, sticks_out),
        *_about("", part_of_it),
        *_about("PIECE", bearing, on_each, at_a_side),
        *_about("FOOTER NOMINALS LEN", giants),
        *_about("FOOTER", of_the_pieces),
        *_about("MONEY NUM SAME LEN PRON", last_time),
    ),
    _about("LEN", legs, falling),
    (
        *_about("PARTS", parts),
        *_about("ALL FILL WORD", wholly),
        *_about("SAME", matching_one, matching),
        *_about("FRAC", half_of, half_of_them, half_of_it),
        *_about("CHOICE COLOUR FLAG NUM LEN", weighed_up),
        *_about("SEP", than_thought),
        *_about("NEG", is_better, denied),
        *_about("CORR NEG", not_that),
        *_about("SHAPE", rounded),
        *_about("LEN", by_so_much),
        *_about("TABLE", one_is_there),
        *_about("NUM", two_people, sizes_in_turn, first_and_second, the_other_two),
        *_about("PRON", both_ends),
        *_about("COLOUR", colours_on_some),
        *_about("DET", one_of_each),
        *_about("OPS", two_of),
        *_about("FLAG FILL", called_ones),
        *_about("OF", crowds),
        *_about("ONES", one_and_one, one_is),
        *_about("", colours_counted, as_wide_as_high, so_many_of),
        *_about("NUM", tall_at, groups),
    ),
    (
        *_about("NUM", counted_aloud, things, unit_ahead, some, left),
        *_about("NUM TEMP", degrees),
        *_about("REMOVE", so_many_go),
        *_about("", lowered, more_like, left_off, gone, of_the_job),
        *_about("LABEL", winds, of_things, too_low, telling, in_all),
        *_about("", blown_to),
        *_about("COLOUR", placed_colours),
        *_about("", clauses, taken_back, names, hours),
    ),
    _about("NUM LEN", around),
    (
        *_about("", alone, bags, props, between, ratios, hundreds, as_many, for_every),
        *_about("", portions, adding_up, drop_links, gaps, bind),
    ),
)


def settled(terms: tuple[Term, ...]) -> list[Term]:
    """The terms that the grammar reads."""
    row = [term for term in terms if term.type != "USED"]
    for stage in STAGES:
        types = {term.type for term in row}
        for wanted, step in stage:
            if not wanted or not types.isdisjoint(wanted):
                row = step(row)
    return [term for term in row if term.type != "FILL"]
