"""Between which figures does a result lie when what goes into it is only known as bands?

A fixed set of points in the space of the inputs stands for chance: the same for every question, so
that nothing is random, and a result that falls with an input at each point falls in every quantile
too. The factor that every result is multiplied by is not drawn but reckoned with exactly.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from statistics import NormalDist

from sootline.core.basis import Band
from sootline.core.basis.bands import EDGE

# Half of the points; each has a mirror image, so that no side is favoured.
_POINTS = 24
_TAIL = 0.05
_STEPS = 26
_SMALLEST = 1e-9
_NORMAL = NormalDist()


@dataclass(frozen=True)
class Outcome:
    """A result before the factor, and what it cannot fall below after it."""

    result: float
    least: float = 0.0


@cache
def deviations(dimensions: int) -> tuple[tuple[float, ...], ...]:
    """Return the points, each input in standard deviations from its likely figure.

    Source: additive recurrence by the powers of the root of x^(d+1) = x + 1, an even cover of the
    unit cube that lattice methods of numerical integration use.
    """
    root = 1.5
    for _ in range(60):
        root = (1 + root) ** (1 / (dimensions + 1))
    steps = [root ** -(axis + 1) for axis in range(dimensions)]
    half = [
        tuple(_NORMAL.inv_cdf((0.5 + step * (point + 1)) % 1) for step in steps)
        for point in range(_POINTS)
    ]
    return (*half, *(tuple(-one for one in point) for point in half))


def spread(
    outcome: Callable[[Sequence[float]], Outcome], dimensions: int, factor: Band
) -> tuple[float, float]:
    """Return the figures below and above which one in twenty results lies.

    Args:
        outcome: for the deviations of the inputs.
        factor: that every result is multiplied by.
    """
    outcomes = [outcome(point) for point in deviations(dimensions)]
    return _quantile(outcomes, factor, _TAIL), _quantile(outcomes, factor, 1 - _TAIL)


def _quantile(outcomes: Sequence[Outcome], factor: Band, share: float) -> float:
    """Find by halving the figure below which this share of all results lies."""
    middles = [math.log(max(one.result * factor.likely, _SMALLEST)) for one in outcomes]
    floors = [math.log(max(one.least, _SMALLEST)) for one in outcomes]
    down = _per_deviation(factor.likely / factor.low)
    up = _per_deviation(factor.high / factor.likely)
    margin = 4 * max(down, up)
    low = max(min(middles) - margin, min(floors))
    high = max(max(middles) + margin, *floors)
    wanted = share * len(outcomes)
    for _ in range(_STEPS):
        at = (low + high) / 2
        below = 0.0
        for middle, floor in zip(middles, floors, strict=True):
            if at >= floor:
                below += _below(at - middle, down, up)
        low, high = (at, high) if below < wanted else (low, at)
    return math.exp((low + high) / 2)


def _below(distance: float, down: float, up: float) -> float:
    """Return how likely the factor's logarithm lies below this distance from its middle."""
    edge = down if distance < 0 else up
    if edge == 0:
        return 0.0 if distance < 0 else 1.0
    return 0.5 + 0.5 * math.erf(distance / edge)


def _per_deviation(edge: float) -> float:
    """Turn the ratio at an edge into the logarithm that erf counts in."""
    return math.log(edge) / EDGE * math.sqrt(2)
