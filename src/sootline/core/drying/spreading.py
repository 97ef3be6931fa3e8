"""Between which figures does a result lie when what goes into it is only known as bands?

A fixed set of points in the space of all inputs stands for chance: the same for every question,
so that nothing is random, and a result that falls with an input at each point falls in every
quantile too.
"""

import math
from collections.abc import Callable, Sequence
from functools import cache
from statistics import NormalDist

POINTS = 64
_EDGE = 0.05


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
    normal = NormalDist()
    return tuple(
        tuple(normal.inv_cdf(_inside((0.5 + step * (point + 1)) % 1)) for step in steps)
        for point in range(POINTS)
    )


def spread(result: Callable[[Sequence[float]], float], dimensions: int) -> tuple[float, float]:
    """Return the figures below and above which one in twenty results lies.

    Args:
        result: for the deviations of the inputs; may be infinite.
    """
    values = sorted(result(point) for point in deviations(dimensions))
    return _quantile(values, _EDGE), _quantile(values, 1 - _EDGE)


def _quantile(values: Sequence[float], share: float) -> float:
    place = share * len(values) - 0.5
    lower = math.floor(place)
    upper = min(lower + 1, len(values) - 1)
    if values[upper] == values[lower]:
        return values[lower]
    return values[lower] + (place - lower) * (values[upper] - values[lower])


def _inside(share: float) -> float:
    """Keep a share off the ends, where a normal distribution has no figure."""
    return min(max(share, 0.5 / POINTS), 1 - 0.5 / POINTS)
