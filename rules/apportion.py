"""Sharing a whole number out by shares, so that the parts are whole and add up: Hamilton's method."""

from collections.abc import Sequence
from fractions import Fraction
from math import floor

from rules.domain import require_not_negative, require_whole


def largest_remainder(total: int, shares: Sequence[float], step: int = 1) -> list[int]:
    """Return whole parts of total, one for each share, in the order given, which add up to total.

    total: 0 or more. shares: 0 or more each, not all 0, of any sum; each is taken as the decimal it prints
    as, so 0.1 is a tenth. Every part is its quota rounded down, and the largest remainders get what is
    left; a tie goes to the share named first. step: parts are whole steps (2 keeps pairs together); what
    total leaves after its last whole step is then given, in one piece, to the share still furthest below
    its quota. Source: Hamilton's method of largest remainders.
    """
    require_whole("number to share out", total, 0)
    require_whole("step", step, 1)
    for share in shares:
        require_not_negative("share", share, "")
    exact = [Fraction(str(share)) for share in shares]
    whole = sum(exact)
    if not whole:
        raise ValueError("There is nothing to share by; at least one share must be more than 0.")
    quotas = [total * share / whole for share in exact]
    steps_in_all, rest = divmod(total, step)
    ideal = [steps_in_all * share / whole for share in exact]
    steps = [floor(steps_wanted) for steps_wanted in ideal]
    left_over = [wanted - given for wanted, given in zip(ideal, steps, strict=True)]
    for index in sorted(range(len(steps)), key=lambda i: (-left_over[i], i))[: steps_in_all - sum(steps)]:
        steps[index] += 1
    parts = [step * given for given in steps]
    if rest:
        parts[max(range(len(parts)), key=lambda i: (quotas[i] - parts[i], -i))] += rest
    return parts
