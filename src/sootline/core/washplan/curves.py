"""What does a way from raw to inspected cost, by the minute a piece is through?

A member who is ready at t has every piece inspected by t; before that each piece has dried in some
interval, and was washed before the interval began. Washing, hands and helpers are counted as late
as that allows, because what is needed later is never dearer. The interval itself is chosen: the
price of the rack and of the cabinets rises and falls.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.routes import Route
from sootline.core.washplan.supply import Places
from sootline.core.washplan.timegrid import TimeGrid

Numbers = NDArray[np.float64]
IMPOSSIBLE = 1e15


@dataclass(frozen=True, kw_only=True)
class Prices:
    """Prices of everything at every moment, in several forms.

    Args:
        flat: per row and moment; tails: summed from a moment on; both with a last column of
            nothing.
        paid: per row and moment, what a unit of it costs from the first moment until then.
        covers: per kind of spare.
    """

    flat: Numbers
    tails: Numbers
    paid: Numbers
    covers: Numbers


def make_prices(flat: Numbers, covers: Numbers, grid: TimeGrid) -> Prices:
    """Sum prices up in the ways they are asked for."""
    none = np.zeros((len(flat), 1))
    tails = np.hstack([np.cumsum(flat[:, ::-1], axis=1)[:, ::-1], none])
    paid = np.cumsum(flat * grid.lengths, axis=1)
    return Prices(flat=np.hstack([flat, none]), tails=tails, paid=paid, covers=covers)


class Way:
    """One route on the grid: which moments its steps fall into.

    Everything is there twice: for the latest start of drying that each tick allows, and for the
    starts to choose from. Between two moments prices change linearly or not at all, so a few starts
    stand for all.
    """

    def __init__(self, route: Route, grid: TimeGrid, places: Places) -> None:
        self.route, self.grid, self.places = route, grid, places
        latest = grid.ticks - route.tail
        starts = np.unique(np.concatenate([
            grid.minutes, grid.minutes + 1, grid.minutes - route.drying,
            grid.minutes + route.chain + 1, [route.early],
        ]))  # fmt: skip
        starts = starts[starts >= route.early] if route.limited else starts[:0]
        self.starts = latest, starts
        self.newest = np.searchsorted(starts, latest, side="right") - 1
        self.inspected = grid.moment(grid.ticks)
        self.wet = grid.moment(latest), grid.moment(starts)
        self.prepared = tuple(grid.moment(one - route.chain) for one in self.starts)

    def before_drying(self, prices: Prices, which: int) -> tuple[Numbers, Numbers]:
        """Return what all before drying costs a piece, and each unit of its weight."""
        route, places, tails = self.route, self.places, prices.tails
        wet, helper = self.wet[which], prices.tails[self.places.helpers]
        base = route.prep * helper[self.prepared[which]]
        weighed = np.zeros(len(wet))
        if route.station >= 0:
            base += route.hand * (helper[wet] + tails[places.stations + route.station, wet])
        if route.family >= 0:
            weighed = tails[places.families + route.family, wet]
            if places.pieces >= 0:
                base += tails[places.pieces + route.family, wet]
        return base, weighed

    def hanging(self, prices: Prices, which: int) -> Numbers:
        """Return what a piece pays for the place it dries in."""
        route, grid, places = self.route, self.grid, self.places
        start = self.starts[which]
        if route.rack:
            paid = prices.paid[places.rack]
            end = np.interp(start + route.drying, grid.minutes, paid)
            return np.asarray(route.units * (end - np.interp(start, grid.minutes, paid)))
        rows = prices.flat[places.boxes : places.boxes + route.boxes, self.wet[which]]
        return np.asarray(route.units * rows.sum(axis=0))


@dataclass(frozen=True, kw_only=True)
class Curves:
    """What each way with a weight costs.

    Args:
        exact: by tick, hanging as late as can be; chosen: at the best of the starts up to then.
        by_start: by start, where one is chosen.
        inspecting: by tick; the others leave it out.
    """

    exact: Numbers
    chosen: Numbers
    by_start: tuple[Numbers, ...]
    inspecting: Numbers

    @cached_property
    def least(self) -> Numbers:
        """What a piece pays in each tick at least."""
        return np.asarray(np.minimum(self.exact, self.chosen) + self.inspecting)


def draw_curves(ways: Sequence[Way], weights: Sequence[tuple[int, int]], prices: Prices) -> Curves:
    """Return what each pair of a way's number and a weight costs."""
    ticks = len(ways[0].inspected) if ways else 0
    exact = np.empty((len(weights), ticks))
    chosen, inspecting = np.full_like(exact, IMPOSSIBLE), np.empty_like(exact)
    by_start: list[Numbers] = []
    before = [[way.before_drying(prices, which) for which in (0, 1)] for way in ways]
    hanging = [[way.hanging(prices, which) for which in (0, 1)] for way in ways]
    for c, (k, weight) in enumerate(weights):
        way = ways[k]
        (base, weighed), (bases, weigheds) = before[k]
        exact[c] = base + weight * weighed + hanging[k][0]
        exact[c][way.starts[0] < way.route.early] = IMPOSSIBLE
        at_start = bases + weight * weigheds + hanging[k][1]
        by_start.append(at_start)
        if len(at_start):
            chosen[c] = np.append(np.minimum.accumulate(at_start), IMPOSSIBLE)[way.newest]
        helper = prices.tails[way.places.helpers]
        inspecting[c] = way.route.inspect * helper[way.inspected]
    return Curves(exact=exact, chosen=chosen, by_start=tuple(by_start), inspecting=inspecting)
