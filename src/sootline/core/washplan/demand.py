"""What do members need to be ready by a minute, and which minute is cheapest at given prices?"""

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.curves import (
    IMPOSSIBLE,
    Curves,
    Numbers,
    Prices,
    Way,
    draw_curves,
)
from sootline.core.washplan.earliest import Book
from sootline.core.washplan.items import Stage
from sootline.core.washplan.routes import Lot, Route, list_routes, merged
from sootline.core.washplan.supply import Places
from sootline.core.washplan.timegrid import TimeGrid

Indices = NDArray[np.int64]


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
        numbers: dict[Route, int] = {}
        lots: list[Lot] = []
        for i, item in enumerate(shop.items):
            given = item.pieces[0].id in shop.given
            if given or item.stage is Stage.DONE or not shop.priority[item.member]:
                continue
            ways = list(list_routes(book, i, item, places))
            lots.append(
                Lot(
                    member=item.member,
                    weight=item.weight if ways[0].family >= 0 else 0,
                    count=item.count,
                    routes=tuple(numbers.setdefault(route, len(numbers)) for route in ways),
                    kind=kinds.index(item.kind) if item.kind in kinds else -1,
                )
            )
        self.ways = [Way(route, grid, places) for route in numbers]
        self._lay_out(sorted(merged(lots), key=lambda lot: lot.member))
        chain = np.array(book.chains(), dtype=float)
        self.cost = _costs(np.array(shop.priority, dtype=float), chain, grid, by)

    def _lay_out(self, lots: list[Lot]) -> None:
        """Put lots into arrays, by member; what costs the same is computed once."""
        curves: dict[tuple[int, int], int] = {}
        pairs = [
            [curves.setdefault((way, lot.weight), len(curves)) for way in lot.routes]
            for lot in lots
        ]
        self.weights = list(curves)
        self.owner = np.array([lot.member for lot in lots], dtype=np.int64)
        self.count = np.array([lot.count for lot in lots], dtype=float)
        self.first = np.array([pair[0] for pair in pairs], dtype=np.int64)
        self.other = np.array([pair[-1] for pair in pairs], dtype=np.int64)
        self.kind = np.array([lot.kind for lot in lots], dtype=np.int64)
        self.members, self.begins = np.unique(self.owner, return_index=True)

    def cheapest(self, prices: Prices) -> tuple[float, Numbers, Numbers]:
        """Return the least cost of all members, and what they use by moment and of spares."""
        curves = draw_curves(self.ways, self.weights, prices)
        total = self.cost.copy()
        if len(self.owner):
            least = curves.least
            paid = np.minimum(least[self.first], least[self.other]) * self.count[:, None]
            loaned = self.kind >= 0
            if loaned.any():
                covers = prices.covers[self.kind[loaned], None] * self.count[loaned, None]
                paid[loaned] = np.minimum(paid[loaned], covers)
            total[self.members, :-1] += np.add.reduceat(paid, self.begins, axis=0)
        best = total.argmin(axis=1)
        cost = float(total[np.arange(len(total)), best].sum())
        used, covered = self._uses(best, curves, prices.covers)
        return cost, used, covered

    def _uses(self, best: Indices, curves: Curves, covers: Numbers) -> tuple[Numbers, Numbers]:
        """Add up what the cheapest minutes use."""
        covered = np.zeros(len(covers))
        uses = _Uses(self.grid, self.places)
        tick = best[self.owner]
        for lot in np.flatnonzero(tick < len(self.grid.ticks)):
            at, kind, least = int(tick[lot]), int(self.kind[lot]), curves.least
            c = min((int(self.first[lot]), int(self.other[lot])), key=lambda c: least[c, at])
            if kind >= 0 and covers[kind] < least[c, at]:
                covered[kind] += self.count[lot]
                continue
            k, weight = self.weights[c]
            way = self.ways[k]
            start = int(way.starts[0][at])
            if curves.chosen[c, at] < curves.exact[c, at]:
                known = curves.by_start[c][: way.newest[at] + 1]
                start = int(way.starts[1][known.argmin()])
            uses.add(way.route, start, int(self.grid.ticks[at]), weight, float(self.count[lot]))
        return uses.by_moment(), covered


class _Uses:
    """Adds up what is used of every row by every moment."""

    def __init__(self, grid: TimeGrid, places: Places) -> None:
        self.grid, self.places = grid, places
        self.cells: list[tuple[int, int, float]] = []
        self.hung: list[tuple[int, int, float]] = []

    def add(self, route: Route, start: int, ready: int, weight: int, count: float) -> None:
        """Add pieces that start to dry at one minute and are ready by another."""
        places, cells = self.places, self.cells
        cells += [
            (places.helpers, ready, count * route.inspect),
            (places.helpers, start - route.chain, count * route.prep),
        ]
        if route.station >= 0:
            row = places.stations + route.station
            cells += [(one, start, count * route.hand) for one in (places.helpers, row)]
        if route.family >= 0:
            cells.append((places.families + route.family, start, count * weight))
            if places.pieces >= 0:
                cells.append((places.pieces + route.family, start, count))
        units = count * route.units
        if route.rack:
            self.hung.append((start, start + route.drying, units))
        cells += [(places.boxes + row, start, units) for row in range(route.boxes)]

    def by_moment(self) -> Numbers:
        """Return cumulated uses, and for rack and cabinets those of each interval."""
        grid, places = self.grid, self.places
        used = np.zeros((places.count, grid.moments + 1))
        if self.cells:
            rows, minutes, amounts = (np.array(one) for one in zip(*self.cells, strict=True))
            np.add.at(used, (rows, grid.moment(minutes)), amounts)
        used[: places.rack] = np.cumsum(used[: places.rack], axis=1)
        if self.hung:
            hung = np.array(self.hung, dtype=float)
            used[places.rack, :-1] = hung[:, 2] @ (
                grid.before(hung[:, 1]) - grid.before(hung[:, 0])
            )
        return used[:, :-1]


def _costs(priority: Numbers, chain: Numbers, grid: TimeGrid, by: int | None) -> Numbers:
    """Return what each member pays for being ready in each tick, and last for later.

    A tick's own minutes count from the one after the tick before, and never before the chain.
    """
    first = np.concatenate([[-np.inf], grid.ticks[:-1] + 1.0, [grid.ticks[-1] + 1.0]])
    minute = np.maximum(first[None, :], chain[:, None])
    cost: Numbers = priority[:, None] * (minute if by is None else (minute > by).astype(float))
    cost[:, :-1][grid.ticks[None, :] < chain[:, None]] = IMPOSSIBLE
    return cost
