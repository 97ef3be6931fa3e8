"""Below which figures lie one in twenty, and nineteen in twenty, of many questions' results?

The equation of `spreading`, solved by Newton's steps for all questions at once, in single
precision: what is asked for is a chance of one in twenty, not of 0.0500000.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.basis.bands import EDGE
from sootline.core.drying.arrays.air import Array

Single = NDArray[np.float32]
TAIL = 0.05
_SMALLEST = 1e-9
_STEPS, _HALVINGS = 8, 24
# So far out, in the error function's measure, nothing is left.
_FAR = 4
# Newton's next step would be this one's square: less than a thousandth of a percent.
_SETTLED = 1e-3
# Stands in for a spread of nothing; where both sides have none the rows are ranked.
_STEEP = 1e-6
# Weights of a five-term approximation of the error function, at most 1.5e-7 off.
_ERF = (1.061405429, -1.453152027, 1.421413741, -0.284496736, 0.254829592)
_ERF_PACE = 0.3275911


@dataclass(frozen=True, kw_only=True)
class _Rows:
    """Questions that are still to be settled.

    Args:
        middles: logarithm of each point's result at the likely factor.
        floors: of what it cannot fall below.
        down, up: one over the logarithm that the error function counts in, on either side.
    """

    middles: Single
    floors: Single
    down: Single
    up: Single

    def only(self, which: NDArray[np.bool_]) -> "_Rows":
        """Return some of them."""
        return _Rows(
            middles=self.middles[which],
            floors=self.floors[which],
            down=self.down[which],
            up=self.up[which],
        )

    def chance(self, at: Single) -> tuple[Single, Single]:
        """Return how likely each point's result lies below a figure, and the density there."""
        distance = at[:, None] - self.middles
        return erf_below(distance, np.where(distance < 0, self.down, self.up))


def tails(hours: Array, least: Array, factor: Array) -> tuple[Array, Array]:
    """Return the figures below and above which one in twenty results lies [h].

    Args:
        hours, least: a row to a question, a column to a point of chance.
        factor: low, likely and high beside each other.
    """
    low, likely, high = (factor[:, at : at + 1] for at in range(3))
    rows = _Rows(
        middles=_log(hours * likely),
        floors=_log(least),
        down=_over(likely / low),
        up=_over(high / likely),
    )
    exact = (low == high)[:, 0]
    ends = (_settle(rows, exact, share) for share in (TAIL, 1 - TAIL))
    low_end, high_end = (np.exp(at.astype(np.float64)) for at in ends)
    return low_end, high_end


def _settle(rows: _Rows, exact: NDArray[np.bool_], share: float) -> Single:
    """Solve the rows in which no floor is in the way, then the others among their floors."""
    nowhere = np.full(len(exact), np.inf, dtype=np.float32)
    at, settled = _newton(rows, _guess(rows, share), -nowhere, nowhere, share)
    rest = ~exact & ~(settled & (rows.floors.max(axis=1) <= at))
    if rest.any():
        at[rest] = _among_floors(rows.only(rest), at[rest], share)
    if exact.any():
        at[exact] = _ranked(rows.only(exact), share)
    return at


def _log(hours: Array) -> Single:
    return np.log(np.maximum(hours, _SMALLEST)).astype(np.float32)


def _over(edge: Array) -> Single:
    """Turn the ratio at an edge into one over the logarithm that the error function counts in."""
    spread = np.log(edge) / EDGE * math.sqrt(2)
    return (1 / np.maximum(spread, _STEEP)).astype(np.float32)


def _ranked(rows: _Rows, share: float) -> Single:
    """Return the figure of the rank, where the factor is certain and there is nothing to spread."""
    rank = math.ceil(share * rows.middles.shape[1]) - 1
    return np.asarray(np.sort(np.maximum(rows.middles, rows.floors), axis=1)[:, rank])


def erf_below(distance: Single, over: Single) -> tuple[Single, Single]:
    """Return how likely a factor lies below a distance from its middle, and the density there.

    Args:
        over: one over the logarithm that the error function counts in.

    Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26.
    """
    scaled = np.abs(distance * over)
    inner = 1 / (1 + np.float32(_ERF_PACE) * scaled)
    scaled *= scaled
    bell = np.exp(np.negative(scaled, out=scaled), out=scaled)
    tail = inner * np.float32(_ERF[0])
    for weight in _ERF[1:]:
        tail += np.float32(weight)
        tail *= inner
    tail *= bell
    tail *= np.float32(0.5)
    below = np.where(distance < 0, tail, 1 - tail)
    bell *= over
    bell *= np.float32(1 / math.sqrt(math.pi))
    return below, bell


def _guess(rows: _Rows, share: float) -> Single:
    """Take the points for normally spread."""
    side, edge = (rows.down, -EDGE) if share < 0.5 else (rows.up, EDGE)
    wide = np.sqrt(rows.middles.var(axis=1) + 0.5 / (side[:, 0] * side[:, 0]))
    return np.asarray(rows.middles.mean(axis=1) + np.float32(edge) * wide)


def _newton(
    rows: _Rows, at: Single, low: Single, high: Single, share: float
) -> tuple[Single, NDArray[np.bool_]]:
    """Solve between two figures, floors beyond the lower one left out; say what is settled."""
    held = None if np.isinf(low).all() else rows.floors <= low[:, None]
    moved = np.ones_like(at)
    for _ in range(_STEPS):
        below, density = rows.chance(at)
        if held is not None:
            below, density = below * held, density * held
        step = (below.mean(axis=1) - share) / np.maximum(density.mean(axis=1), _SMALLEST)
        after = np.clip(at - np.clip(step, -1, 1), low, high).astype(np.float32)
        moved, at = np.abs(after - at), after
        if moved.max() < _SETTLED:
            break
    return at, moved < _SETTLED


def _among_floors(rows: _Rows, at: Single, share: float) -> Single:
    """Solve rows in which results pile up on what they cannot fall below.

    At a floor the chance leaps, between two it is smooth: the floors on either side are found
    first, by halving their ranks.
    """
    low, high = _between(rows, share)
    at, settled = _newton(rows, np.clip(at, low, high), low, high, share)
    if not settled.all():
        rest = ~settled
        at[rest] = _halve(rows.only(rest), low[rest], high[rest], share)
    return at


def _between(rows: _Rows, share: float) -> tuple[Single, Single]:
    """Return the floors on either side of the figure; beyond the last one, what none exceeds."""
    count = rows.floors.shape[1]
    edges = np.empty((len(rows.floors), count + 1), dtype=np.float32)
    edges[:, :count] = np.sort(rows.floors, axis=1)
    far = rows.middles.max(axis=1) + _FAR / rows.up[:, 0]
    edges[:, count] = np.maximum(far, edges[:, count - 1])
    each = np.arange(len(edges))
    low, high = np.full(len(edges), -1), np.full(len(edges), count)
    for _ in range(count.bit_length()):
        apart = high - low > 1
        middle = np.maximum((low + high) // 2, 0)
        reached = _reached(rows, edges[each, middle]) >= share
        low = np.where(apart & ~reached, middle, low)
        high = np.where(apart & reached, middle, high)
    return edges[each, np.maximum(low, 0)], edges[each, high]


def _reached(rows: _Rows, at: Single) -> Single:
    """Return how likely a result lies at or below a figure."""
    below, _ = rows.chance(at)
    return np.asarray((below * (rows.floors <= at[:, None])).mean(axis=1))


def _halve(rows: _Rows, low: Single, high: Single, share: float) -> Single:
    """Solve what Newton's steps do not settle: a factor hardly spread."""
    for _ in range(_HALVINGS):
        at = (low + high) / np.float32(2)
        reached = _reached(rows, at) >= share
        low, high = np.where(reached, low, at), np.where(reached, at, high)
    return high
