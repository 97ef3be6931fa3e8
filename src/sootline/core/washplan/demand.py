"""What do members need to be ready by a minute, and which minute is cheapest at given prices?"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.earliest import Book
from sootline.core.washplan.items import HAND, NEVER, Item, Stage
from sootline.core.washplan.supply import Places
from sootline.core.washplan.timegrid import TimeGrid

Numbers = NDArray[np.float64]
IMPOSSIBLE = 1e15


@dataclass(frozen=True, kw_only=True)
class Route:
    """One way for a piece from raw to inspected, whatever it weighs.

    Args:
        family: number of the family where it is still to be washed in a drum, else -1.
        early: the earliest minute it can be through.
        drying: minutes from wet to dry; tail: from wet to inspected; chain: from prepared on.
        place: the row of what it dries in, -1 where that is never short.
    """

    family: int
    station: int
    early: int
    prep: int
    hand: int
    inspect: int
    units: int
    drying: int
    chain: int
    place: int

    @property
    def tail(self) -> int:
        """Least minutes from wet to inspected."""
        return self.drying + self.inspect


class Demand:
    """Everything that members need, on one grid.

    Args:
        kinds: the kinds of spares, in the order of their prices.
        by: the deadline, where missing it is all that counts [min].
    """

    def __init__(
        self, book: Book, grid: TimeGrid, places: Places, kinds: list[tuple[str, str]],
        by: int | None,
    ) -> None:  # fmt: skip
        self.grid, self.places = grid, places
        shop = book.shop
        self.routes: list[Route] = []
        self.numbers: dict[Route, int] = {}
        kind_of = {kind: k for k, kind in enumerate(kinds)}
        lots: list[tuple[int, int, int, tuple[int, ...], int]] = []
        for i, item in enumerate(shop.items):
            given = item.pieces[0].id in shop.given
            if given or item.stage is Stage.DONE or not shop.priority[item.member]:
                continue
            ways = tuple(self._number(route) for route in _routes(book, i, item, places))
            lots.append((item.member, item.weight, item.count, ways, kind_of.get(item.kind, -1)))
        self._lay_out(_merged(lots))
        chain = np.array(book.chains(), dtype=float)
        self.cost = _costs(np.array(shop.priority, dtype=float), chain, grid, by)

    def _number(self, route: Route) -> int:
        if route not in self.numbers:
            self.numbers[route] = len(self.routes)
            self.routes.append(route)
        return self.numbers[route]

    def _lay_out(self, lots: list[tuple[int, int, int, tuple[int, ...], int]]) -> None:
        """Put lots into arrays, by member."""
        lots.sort(key=lambda lot: lot[0])
        self.owner = np.array([lot[0] for lot in lots], dtype=np.int64)
        self.weight = np.array([lot[1] for lot in lots], dtype=float)
        self.count = np.array([lot[2] for lot in lots], dtype=float)
        self.first = np.array([lot[3][0] for lot in lots], dtype=np.int64)
        self.other = np.array([lot[3][-1] for lot in lots], dtype=np.int64)
        self.kind = np.array([lot[4] for lot in lots], dtype=np.int64)
        self.two = np.flatnonzero(self.first != self.other)
        ticks, grid = self.grid.ticks, self.grid
        by = [
            (ticks, ticks - route.tail, ticks - route.tail - route.chain) for route in self.routes
        ]
        self.at = [tuple(grid.moment(minutes) for minutes in three) for three in by]
        self.begin = [np.minimum(ticks - route.tail, ticks) for route in self.routes]

    def cheapest(
        self, tails: Numbers, prices: Numbers, covers: Numbers
    ) -> tuple[float, Numbers, Numbers]:
        """Return the least cost of all members, and what they use by moment and of spares."""
        base, weighed = self._route_costs(tails, prices)
        lots = self.weight[:, None] * weighed[self.first] + self._counted(base, self.first)
        if len(self.two):
            other = self.weight[self.two, None] * weighed[self.other[self.two]]
            other += self._counted(base, self.other, self.two)
            lots[self.two] = np.minimum(lots[self.two], other)
        loaned = self.kind >= 0
        if loaned.any():
            lots[loaned] = np.minimum(lots[loaned], covers[self.kind[loaned], None])
        total = self.cost.copy()
        np.add.at(total[:, :-1], self.owner, lots)
        best = total.argmin(axis=1)
        cost = float(total[np.arange(len(total)), best].sum())
        used, covered = self._uses(best, base, weighed, covers)
        return cost, used, covered

    def _counted(
        self, base: Numbers, route: NDArray[np.int64],
        only: NDArray[np.int64] | None = None,
    ) -> Numbers:  # fmt: skip
        count = self.count if only is None else self.count[only]
        return count[:, None] * base[route if only is None else route[only]]

    def _route_costs(self, tails: Numbers, prices: Numbers) -> tuple[Numbers, Numbers]:
        """Return, per route and tick, what a piece pays, and what it pays for each unit weight."""
        ticks, places, minutes = self.grid.ticks, self.places, self.grid.minutes
        base = np.zeros((len(self.routes), len(ticks)))
        weighed = np.zeros_like(base)
        energy = np.cumsum((prices * minutes)[:, ::-1], axis=1)[:, ::-1]
        energy = np.hstack([energy, np.zeros((len(energy), 1))])
        for k, route in enumerate(self.routes):
            ready, wet, prepared = self.at[k]
            helper = tails[places.helpers]
            base[k] = route.inspect * helper[ready] + route.prep * helper[prepared]
            if route.station >= 0:
                base[k] += route.hand * (helper[wet] + tails[places.stations + route.station, wet])
            if route.family >= 0:
                weighed[k] = tails[places.families + route.family, wet]
                if places.pieces >= 0:
                    base[k] += tails[places.pieces + route.family, wet]
            if route.place >= 0:
                for begin, sign in ((ticks - route.tail, 1), (ticks - route.inspect, -1)):
                    at = self.grid.moment(begin)
                    paid = energy[route.place, at] - begin * tails[route.place, at]
                    base[k] += sign * route.units * paid
            base[k][ticks < route.early] = IMPOSSIBLE
        return base, weighed

    def _uses(
        self, best: NDArray[np.int64], base: Numbers, weighed: Numbers, covers: Numbers
    ) -> tuple[Numbers, Numbers]:
        """Add up what the cheapest minutes use."""
        grid, places = self.grid, self.places
        used = np.zeros((places.count, grid.moments + 1))
        slope = np.zeros_like(used)
        covered = np.zeros(len(covers))
        tick = best[self.owner]
        for lot in np.flatnonzero(tick < len(grid.ticks)):
            at, w, n = tick[lot], self.weight[lot], self.count[lot]
            ways = {int(self.first[lot]), int(self.other[lot])}
            k = min(ways, key=lambda way: w * weighed[way, at] + n * base[way, at])
            pays = w * weighed[k, at] + n * base[k, at]
            if self.kind[lot] >= 0 and covers[self.kind[lot]] < pays:
                covered[self.kind[lot]] += 1
                continue
            self._use(used, slope, self.routes[k], k, int(at), w, n)
        minutes = np.append(grid.minutes, 0.0)
        sums = np.cumsum(used, axis=1)
        sums += np.cumsum(slope, axis=1) * minutes
        return sums[:, :-1], covered

    def _use(  # noqa: PLR0917 - one lot's place in the arrays
        self, used: Numbers, slope: Numbers, route: Route, k: int, at: int, weight: float, n: float
    ) -> None:
        places, grid = self.places, self.grid
        ready, wet, prepared = (moments[at] for moments in self.at[k])
        used[places.helpers, ready] += n * route.inspect
        used[places.helpers, prepared] += n * route.prep
        if route.station >= 0:
            used[places.helpers, wet] += n * route.hand
            used[places.stations + route.station, wet] += n * route.hand
        if route.family >= 0:
            used[places.families + route.family, wet] += weight
            if places.pieces >= 0:
                used[places.pieces + route.family, wet] += n
        if route.place >= 0:
            tick = int(grid.ticks[at])
            for begin, sign in ((tick - route.tail, 1), (tick - route.inspect, -1)):
                moment = int(grid.moment(np.array([begin]))[0])
                slope[route.place, moment] += sign * n * route.units
                used[route.place, moment] -= sign * n * route.units * begin


def _merged(
    lots: list[tuple[int, int, int, tuple[int, ...], int]],
) -> list[tuple[int, int, int, tuple[int, ...], int]]:
    """Put pieces of one member that have a single, equal way into one lot."""
    whole: dict[tuple[int, tuple[int, ...]], tuple[int, int]] = {}
    apart = []
    for member, weight, count, ways, kind in lots:
        if len(ways) > 1 or kind >= 0:
            apart.append((member, weight, count, ways, kind))
        else:
            so_far = whole.get((member, ways), (0, 0))
            whole[member, ways] = so_far[0] + weight, so_far[1] + count
    return apart + [(m, weight, n, ways, -1) for (m, ways), (weight, n) in whole.items()]


def _routes(book: Book, i: int, item: Item, places: Places) -> list[Route]:
    """List the ways a piece can go: over the rack, through a cabinet."""
    shop = book.shop
    washed = item.stage <= Stage.PREPARED
    drum = washed and item.family != HAND
    common = {
        "family": item.family if drum else -1,
        "station": item.station if washed and item.family == HAND else -1,
        "prep": item.prep if item.stage is Stage.RAW else 0,
        "hand": item.hand if washed else 0,
        "inspect": item.inspect,
        "units": item.units,
        "chain": book.wash_minutes(item) if washed else 0,
    }
    if item.stage is Stage.DRY:
        return [Route(**common, early=book.done(i), drying=0, place=-1)]
    ways = []
    for drying, row, most in (
        (item.rack, places.rack, book.instance.rack_units),
        (item.cab, places.boxes, max(shop.cabinets, default=-1)),
    ):
        if drying < NEVER and item.units <= most:
            early = book.wet[i] + drying + item.inspect
            place = row if item.units else -1
            ways.append(Route(**common, early=early, drying=drying, place=place))
    return ways


def _costs(priority: Numbers, chain: Numbers, grid: TimeGrid, by: int | None) -> Numbers:
    """Return what each member pays for being ready in each tick, and last for later.

    A tick's own minutes count from the one after the tick before, and never before the chain.
    """
    first = np.concatenate([[-np.inf], grid.ticks[:-1] + 1.0, [grid.ticks[-1] + 1.0]])
    minute = np.maximum(first[None, :], chain[:, None])
    cost: Numbers = priority[:, None] * (minute if by is None else (minute > by).astype(float))
    cost[:, :-1][grid.ticks[None, :] < chain[:, None]] = IMPOSSIBLE
    return cost
