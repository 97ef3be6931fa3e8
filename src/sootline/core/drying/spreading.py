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
_STEPS = 40
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
    widest = 6 * max(factor.high / factor.likely, factor.likely / factor.low, 1.5)
    low = math.log(min(_reach(one, factor) for one in outcomes) / widest)
    high = math.log(max(_reach(one, factor) for one in outcomes) * widest)
    for _ in range(_STEPS):
        middle = (low + high) / 2
        figure = math.exp(middle)
        below = math.fsum(_below(figure, one, factor) for one in outcomes) / len(outcomes)
        low, high = (middle, high) if below < share else (low, middle)
    return math.exp((low + high) / 2)


def _reach(one: Outcome, factor: Band) -> float:
    return max(one.result * factor.likely, one.least, 1e-9)


def _below(figure: float, one: Outcome, factor: Band) -> float:
    """Return how likely this outcome, multiplied by the factor, lies below a figure."""
    if figure < one.least:
        return 0.0
    ratio = figure / max(one.result * factor.likely, 1e-9)
    edge = factor.likely / factor.low if ratio < 1 else factor.high / factor.likely
    if edge <= 1:
        return 0.0 if ratio < 1 else 1.0
    return 0.5 * (1 + math.erf(EDGE * math.log(ratio) / math.log(edge) / math.sqrt(2)))
