"""The fixed list of functions that a formula may call, each with a signature of units.

A signature names what goes in and what comes out: "in, count -> in".  A single letter stands for any one dimension,
the same wherever it is repeated ("a, a -> a"); "range a" is a range of it, "sizes" a list of lengths, "colours" a list
of colours, "flag" a truth.  A function gets its arguments in the units that its signature names and its answer is
taken in the unit named, so the mathematics modules are registered as they are, by one line each.
"""

import math
from collections.abc import Callable, Sequence
from functools import cache
from importlib import import_module
from typing import Any

from rules.record import record
from rules.units import from_base, read_unit, to_base

OVER_PIECES = ("total", "most", "least")  # the calls by which a fact of the job looks at its pieces
SLACK = 1e-9  # float arithmetic may miss the whole number it should reach by this much


@record
class Function:
    """One function: its signature, whether it only rounds its argument, and the Python function or its module."""

    name: str
    takes: tuple[str, ...]
    gives: str
    rounding: bool
    home: Callable[..., Any] | str

    def load(self) -> Callable[..., Any]:
        """The Python function in the units of its signature; a mathematics module is imported on first use."""
        if isinstance(self.home, str):
            found: Callable[..., Any] = getattr(import_module(self.home), self.name)
            return found
        return self.home


FUNCTIONS: dict[str, Function] = {}


def register(signature: str, name: str, home: Callable[..., Any] | str, rounding: bool = False) -> None:
    """Let formulas call `name`; `home` is the function or the module that holds it under the same name.

    `rounding` marks a function of one argument that only rounds it: it is left out where ranges are worked out.
    """
    takes, _, gives = signature.partition("->")
    parts = tuple(part.strip() for part in takes.split(",") if part.strip())
    FUNCTIONS[name] = Function(name, parts, gives.strip(), rounding, home)


def is_free(part: str) -> bool:
    """Whether a part of a signature rests on a letter for any dimension: "a", "range a", "half of a"."""
    return part.rpartition(" ")[2] in ("a", "b", "c")


def is_list(part: str) -> bool:
    """Whether a part of a signature is no single quantity."""
    return part in ("sizes", "colours", "flag")


@cache
def callable_in_base_units(name: str) -> Callable[..., Any]:
    """The function `name` taking and giving base units (inch, gram, hour, kelvin, count)."""
    function = FUNCTIONS[name]
    bare = function.load()
    units = [*function.takes, function.gives]
    if all(is_free(unit) or is_list(unit) or _is_base(unit) for unit in units):
        return bare

    def in_base_units(*values: Any) -> Any:
        given = [
            value if is_free(unit) or is_list(unit) else from_base(value, unit)
            for value, unit in zip(values, function.takes, strict=True)
        ]
        answer = bare(*given)
        return answer if is_free(function.gives) else to_base(answer, function.gives)

    return in_base_units


def _is_base(unit: str) -> bool:
    read = read_unit(unit)
    return read.factor == 1 and read.offset == 0


def up_to_whole(x: float) -> int:
    """The least whole number not below `x`, forgiving float noise: 3.0000000001 gives 3."""
    return math.ceil(x - SLACK)


def down_to_whole(x: float) -> int:
    """The greatest whole number not above `x`, forgiving float noise: 2.9999999999 gives 3."""
    return math.floor(x + SLACK)


def to_nearest(x: float) -> int:
    """The nearest whole number; a half goes up, as people round, not to the even neighbour."""
    return math.floor(x + 0.5 + SLACK)


def whole_pairs(x: float) -> int:
    """The nearest even number: balloons that are tied two and two."""
    return 2 * to_nearest(x / 2)


def _mean(span: tuple[float, float]) -> float:
    return (span[0] + span[1]) / 2


def _first(span: Sequence[float]) -> float:
    return span[0]


def _last(span: Sequence[float]) -> float:
    return span[-1]


register("a, a -> a", "min", min)
register("a, a -> a", "max", max)
register("a -> a", "abs", abs)
register("a -> half of a", "sqrt", math.sqrt)
register("-> count", "pi", lambda: math.pi)
register("count -> count", "cos", math.cos)
register("count -> count", "sin", math.sin)
register("count -> count", "cube_root", math.cbrt)

register("count -> count", "floor", down_to_whole, rounding=True)
register("count -> count", "ceil", up_to_whole, rounding=True)
register("count -> count", "up_to_whole", up_to_whole, rounding=True)
register("count -> count", "round", to_nearest, rounding=True)
register("count -> count", "whole_pairs", whole_pairs, rounding=True)

register("range a -> a", "first", _first)
register("range a -> a", "last", _last)
register("range a -> a", "mean", _mean)
register("sizes -> in", "smallest", min)
register("sizes -> in", "largest", max)
register("sizes -> count", "how_many_sizes", len)
register("colours -> count", "how_many_colours", len)

register("count, in -> in", "nested_pitch", "rules.clusters")
register("in, in -> in", "filler_reach", "rules.clusters")
register("count, in, in -> count", "fillers_a_cluster", "rules.clusters")
register("count, count, in -> count/ft", "balloons_a_foot", "rules.clusters")
register("in -> in", "resting_width", "rules.clusters")
register("count, in -> in", "strands_width", "rules.clusters")
register("count, litre -> in", "stroke_diameter", "rules.inflation")
register("count, in -> litre", "stroke_litres", "rules.inflation")
register("in -> in**3", "sphere_volume", "rules.inflation")
register("ft -> Pa", "standard_pressure", "rules.air")
register("kelvin, Pa, kelvin, Pa -> count", "volume_growth", "rules.air")
register("count, degF, ft -> g/ft**3", "lift_a_cubic_foot", "rules.gas")
register("in -> ft**3", "balloon_gas", "rules.gas")
register("in -> in", "foil_diameter", "rules.gas")
register("ft**3, ft**3, count -> count", "cylinders_needed", "rules.gas")
register("in -> ft**3", "foil_volume", "rules.gas")
register("g, in, mph -> count", "lean_angle", "rules.gas")  # radians
register("count, in, count -> in**3", "net_volume", "rules.packing")
register("mph -> psf", "velocity_pressure_psf", "rules.wind")
register("ft**2, count, mph -> lbf", "drag_lb", "rules.wind")
register("lbf, ft -> lbf*ft", "overturning_moment", "rules.wind")
register("lbf*ft, ft, count -> lb", "ballast_lb", "rules.wind")
register("mph -> count", "beaufort_force", "rules.wind")
register("count -> mph", "beaufort_top", "rules.wind")
register("sizes, count -> in", "size_at", "rules.mixes")
register("sizes -> in", "body_size", "rules.mixes")
register("sizes, count, count, count, count -> count", "share_up_to", "rules.mixes")
register("sizes, count -> count", "alike_up_to", "rules.mixes")
register("sizes, count -> count", "filler_part", "rules.mixes")
register("sizes, count, in, in, in -> in", "blown_size", "rules.mixes")
register("count, in -> in", "free_width", "rules.clusters")
register("in -> count/ft**2", "square_layer_density", "rules.clusters")
register("in -> count/ft**2", "hexagonal_layer_density", "rules.clusters")
register("in, in -> in", "half_ellipse", "rules.curves")
register("in, in -> in", "quarter_ellipse", "rules.curves")
register("in, in -> in", "parabola_arch", "rules.curves")
register("in, in -> in", "catenary_arch", "rules.curves")
register("in, in -> in", "round_top_arch", "rules.curves")
register("in, in -> in", "folk_arch", "rules.curves")
register("in, in -> in", "arch_shortest", "rules.curves")
register("in, in -> in", "arch_longest", "rules.curves")
register("in, in -> in", "arch_height_for", "rules.curves")
register("in, in -> in", "arch_span_for", "rules.curves")
register("in, in -> in", "stair", "rules.curves")
register("in, in, in -> in", "uneven_swag", "rules.curves")
register("in, in -> in", "catenary_sag", "rules.curves")
