"""One root finder for every inverse: bisection, because it cannot miss and needs no slope."""

from collections.abc import Callable


def increasing_root(function: Callable[[float], float], target: float, low: float, high: float) -> float:
    """Return the x in low..high at which an increasing function reaches the target.

    The answer is as near as floats allow. A target outside function(low)..function(high) gives the nearer
    end, so that a bracket which is exact on paper survives the rounding of its own arithmetic.
    """
    while True:
        middle = low + (high - low) / 2
        if not low < middle < high:
            return low if abs(function(low) - target) <= abs(function(high) - target) else high
        if function(middle) < target:
            low = middle
        else:
            high = middle
