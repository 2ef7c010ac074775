"""The build card in the chat: what to blow and tie first, then the line section by section."""

from assistant.asked import Asked, Blocks
from assistant.layout import labelled, listed, paragraph
from assistant.sheets.build_card import QUAD, Blow, Card, Loose, Run, Section, build_card
from assistant.state import State
from assistant.telling import shown
from grammar.numbers.quantities import read_quantities
from grammar.reading import Reading
from rules.layout_plan import Measures
from rules.show import number as written
from rules.touch import LARGEST_RING

ANY = "any colour"
ON_A_TABLE = "runner"
FEW = 12.0  # inches of section below which it is told in inches
BACK = ("previous", "back", "before")
BEYOND = 10**6  # the last section, whatever its number
CM = 2.54


def turn_to(now: State, reading: Reading) -> None:
    """Leaf to the section that the turn names: the next, the one before, or by number; "build card" shows the cover."""
    said = reading.text.lower()
    words = "".join(char if char.isalpha() else " " for char in said).split()
    here = now.section
    if any(word in words for word in BACK):
        now.section = max(0, here - 1)
    elif "next" in words:
        now.section = here + 1
    elif "section" in words or "sections" in words:
        numbers = [round(q.value) for q in read_quantities(said) if q.kind == "number" and q.value >= 1]
        now.section = numbers[0] if numbers else BEYOND if "last" in words else 1
    else:
        now.section = 0


def show_card(asked: Asked) -> Blocks | None:
    """The card's cover or the section turned to, of the piece in focus, else of the first that has a line."""
    card = _card(asked)
    if card is None:
        return [
            paragraph("There is no line of clusters to string in this job, so there is no build card.", asked.width)
        ]
    turn_to(asked.now, asked.reading)
    asked.now.section = min(asked.now.section, len(card.sections))
    if asked.now.section:
        return _section(asked, card, card.sections[asked.now.section - 1])
    return _cover(asked, card)


def _card(asked: Asked) -> Card | None:
    focus = asked.now.focus
    places = sorted(range(len(asked.now.pieces)), key=lambda place: place != focus)
    return next((card for place in places if (card := build_card(asked.made, place)) is not None), None)


# the cover ---------------------------------------------------------------------------------------------------------


def _cover(asked: Asked, card: Card) -> Blocks:
    """What to blow for one piece, the pairs to tie, the order of work, and what may be expected of it."""
    width, metric = asked.width, asked.made.metric
    kind = card.kind
    which = f"the {kind}" if card.count == 1 else f"one of {card.count} {asked.book.kind_of(kind).words[0]}s"
    head = f"Build card for {which}: "
    pairs = len({filler.pair for filler in card.layout.fillers})
    head += f"{len(card.layout.clusters)} {clusters_of(card.n)}"
    head += f" and {pairs} loose pair{'s' if pairs != 1 else ''}." if pairs else "."
    blow: list[str] = []
    for sized in _by_size(card):
        blow += labelled("blow" if not blow else "", blow_text(sized, metric=metric), width)
    if card.count > 1:
        blow += labelled("", f"all of it {card.count} times", width)
    tie = labelled("tie", listed(f"{t.count} {_pair(t.colours, t.label)}" for t in card.ties), width)
    sections = len(card.sections)
    order = "sort, inflate, pair, "
    order += "quad (two pairs twisted), string" if card.n == QUAD else f"twist to clusters of {card.n}, string"
    work = labelled("order", order, width)
    work += labelled("line", f"{sections} section{'s' if sections != 1 else ''} of {_lengths(card, metric)}", width)
    trusted = [line for text in trust(card, metric=metric) for line in paragraph(text, width)]
    hint = paragraph('Say "next section" for the line, cluster by cluster.', width)
    return [paragraph(head, width), blow, tie if card.n == QUAD else [], work, trusted, hint]


def clusters_of(n: int) -> str:
    """What clusters of n balloons are called."""
    return "quads" if n == QUAD else f"clusters of {n}"


def _by_size(card: Card) -> list[list[Blow]]:
    sizes: dict[tuple[float, float], list[Blow]] = {}
    for blow in card.blows:
        sizes.setdefault((blow.inflated_in, blow.held_in), []).append(blow)
    return list(sizes.values())


def blow_text(sized: list[Blow], *, metric: bool) -> str:
    """ "L, 4.3 in, 2 strokes: 63 navy, 62 gold" for balloons of one size."""
    one = sized[0]
    strokes = one.strokes
    told = [one.label, shown(one.inflated_in, "in", metric=metric)]
    if one.held_in:
        told.append(f"{shown(one.held_in, 'in', metric=metric)} ones held to it")
    elif strokes:
        told.append(f"{written(strokes)} stroke{'s' if strokes != 1 else ''}")
    return f"{', '.join(filter(None, told))}: {', '.join(f'{blow.count} {blow.colour or ANY}' for blow in sized)}"


def _pair(colours: tuple[str | None, ...], label: str) -> str:
    return f"{' + '.join(colour or ANY for colour in colours)}{f' {label}' if label else ''}"


def _lengths(card: Card, metric: bool) -> str:
    lengths = [section.length_in for section in card.sections]
    return f"{'about ' if len(lengths) > 1 else ''}{_length(sum(lengths) / len(lengths), metric)}"


def _length(inches: float, metric: bool) -> str:
    return shown(round(inches / 12, 1), "ft", metric=metric) if inches >= FEW else shown(inches, "in", metric=metric)


# what may be promised ----------------------------------------------------------------------------------------------


def trust(card: Card, *, metric: bool = False) -> list[str]:
    """How good the plan is, in sentences that promise no more than it can hold."""
    measures, found = card.layout.measures, []
    colours = {balloon.colour for cluster in card.layout.clusters for balloon in cluster}
    if len(colours) > 1 and card.layout.style == "organic":
        same, least, blind = (_percent(x) for x in (measures.same_share, measures.least_share, measures.blind_share))
        fewest = measures.same_share <= measures.least_share
        tail = ", the least these shares allow" if fewest else f", the least these shares allow is {least} %"
        known = tail if card.n <= LARGEST_RING else ""
        found.append(f"Same colours touch in {same} % of places{known}; picking blind gives {blind} %.")
    close, aside, stretch = _tolerance(measures.within_in, metric), *_bow(measures, metric)
    press = "press it straight on the table" if card.kind == ON_A_TABLE else "pull it straight as you fix it"
    found.append(f"Sized within {close} it stays within about {aside} over {stretch}; {press}.")
    return found


def _percent(share: float) -> int:
    return round(100 * share)


def _tolerance(inches: float, metric: bool) -> str:
    if metric:
        return f"{max(1, round(inches * CM * 10))} mm"
    eighths = max(1, round(inches * 8))
    for whole, name in ((8, "in"), (4, "1/2 in"), (2, "1/4 in"), (1, "1/8 in")):
        if eighths % whole == 0:
            times = eighths // whole
            return f"{times} in" if whole == 8 else name if times == 1 else f"{times}/{8 // whole} in"
    return f"{inches:g} in"


def _bow(measures: Measures, metric: bool) -> tuple[str, str]:
    """How far aside, and over what length, in words; never nothing."""
    aside = measures.wander_in + measures.bow_in
    if metric:
        return f"{max(1, round(aside * CM))} cm", f"{measures.stretch_in * CM / 100:.1f} m"
    halves = max(1, round(2 * aside))
    told = "half an inch" if halves == 1 else "an inch" if halves == 2 else f"{written(halves / 2)} in"
    return told, f"{written(round(measures.stretch_in / 12, 1))} ft"


# a section ---------------------------------------------------------------------------------------------------------


def _section(asked: Asked, card: Card, section: Section) -> Blocks:
    """One section, cluster by cluster, its loose pairs where they go in, and how it is joined."""
    width = asked.width
    name = "quad" if card.n == QUAD else "cluster"
    strand = f", strand {section.strand}" if card.strands > 1 else ""
    of = f"Section {section.number} of {len(card.sections)}{strand}: {name}s {section.first} to {section.last}"
    rows = [line for text in section_rows(section) for line in _row(text, width)]
    metric = asked.made.metric
    notes = [how_to_read(card) if section.number == 1 else "", how_to_join(card, section, metric)]
    said = [line for note in notes if note for line in paragraph(note, width)]
    last = section.number == len(card.sections)
    hint = 'Say "previous section" or "build card".' if last else 'Say "next section".'
    return [paragraph(f"{of}, {_length(section.length_in, metric)}.", width), rows, said, paragraph(hint, width)]


def _row(text: str, width: int) -> list[str]:
    """A line of the section, wrapped; what goes in beside a cluster stands further in."""
    head = " " * (len(text) - len(text.lstrip()))
    first, *rest = paragraph(text, width - len(head), "   ")
    return [head + first, *(head + line for line in rest)]


def section_rows(section: Section) -> list[str]:
    """A line for each run of clusters, each loose pair and each stem, in the order they are come to."""
    keyed: list[tuple[int, int, str]] = [(run.first, 0, run_text(run)) for run in section.runs]
    keyed += [(loose.cluster, 1, loose_text(loose)) for loose in section.loose]
    for cluster in dict.fromkeys(at for at, _ in section.stems):
        sides = [side for at, side in section.stems if at == cluster]
        keyed.append((cluster, 2, f"  greenery at {cluster} {listed(dict.fromkeys(sides))}"))
    return [text for _, _, text in sorted(keyed, key=lambda row: row[:2])]


def run_text(run: Run) -> str:
    """ "1-4 L: navy, gold, navy, white"."""
    at = f"{run.first}" if run.first == run.last else f"{run.first}-{run.last}"
    label = f" {run.labels[0]}" if len(set(run.labels)) == 1 and run.labels[0] else ""
    if len(set(run.colours)) == 1 and len(set(run.labels)) == 1:
        return f"{at}{label}: all {run.colours[0] or ANY}"
    mixed = len(set(run.labels)) > 1
    named = (f"{c or ANY}{f' {size}' if mixed else ''}" for c, size in zip(run.colours, run.labels, strict=True))
    return f"{at}{label}: {', '.join(named)}"


def loose_text(loose: Loose) -> str:
    """ "  pair at 3-4 right: gold, white"."""
    at = f"{loose.cluster}-{loose.second}" if loose.second != loose.cluster else f"{loose.cluster}"
    when = ", once joined" if loose.joins else ""
    return f"  pair at {at} {loose.side}: {', '.join(c or ANY for c in loose.colours)}{when}"


def how_to_read(card: Card) -> str:
    """From where a cluster's balloons are named."""
    name = "quad" if card.n == QUAD else "cluster"
    seen = f"looking along the line from {name} 1"
    half = "an eighth of a turn" if card.n == QUAD else "half a step"
    if card.layout.style == "spiral":
        return f"Clockwise, {seen}; begin each {name} {half} further round than the last."
    front = "top" if card.kind == ON_A_TABLE else "front"
    return f"Clockwise from the {front} right, {seen}; each {name} sits in the hollows of the last."


def how_to_join(card: Card, section: Section, metric: bool) -> str:
    """How the section is tied to the next."""
    following = next((s for s in card.sections if s.number == section.number + 1), None)
    if following is None or following.strand != section.strand:
        return ""
    tail = shown(card.tail_in, "in", metric=metric)
    return f"Leave {tail} of line at the end; tie it to section {following.number} and push the two together."
