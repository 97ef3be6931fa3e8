"""What would every plan cost at least, if each minute of each resource had a price?

Resources are taken out of the rules and priced instead (Lagrange multipliers, one for each
resource and moment of a grid). Then every member alone chooses the cheapest minute to be ready,
every piece the rack, a cabinet or a spare and when it hangs there, and every washer and cabinet the
sequence of loads or runs that earns most, by exact dynamic programming. Whatever the prices, the
sum is at most the objective of any plan; better prices are found step by step (subgradients), so
the bound may be taken at any time.

A piece that starts to dry has used hands and drums by then, minus the least that lies between. All
uses are at the grain of single pieces; changeovers, late families and what begun steps hold only
take away, so leaving them out keeps the bound valid.

Source: A. M. Geoffrion, Lagrangean relaxation for integer programming, Mathematical Programming
Study 2 (1974) 82-114; steps after J. Duchi, E. Hazan and Y. Singer, Adaptive subgradient methods,
Journal of Machine Learning Research 12 (2011) 2121-2159 (both from memory).
"""

from collections.abc import Callable
from math import ceil

import numpy as np

from sootline.core.washplan.columns import best_columns
from sootline.core.washplan.curves import Numbers, make_prices
from sootline.core.washplan.demand import Demand
from sootline.core.washplan.earliest import Book
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal
from sootline.core.washplan.shop import open_shop
from sootline.core.washplan.supply import Supplies, find_places, list_supplies
from sootline.core.washplan.timegrid import make_grid

# Found by trying; prices are per unit of a resource that is there in about one programme.
STEP, MOMENTUM, TINY = 100.0, 0.9, 1e-12
# It is enough when the bound has not grown by so much in so many steps.
GROWN, PATIENCE = 1.0002, 300
# What float arithmetic may have lost, as a share.
SAFETY = 1e-7


class Pricing:
    """Prices that get better step by step.

    Args:
        demand: what members need, supplies: what there is, both on one grid.
        aim: an objective that a plan is known to reach.
    """

    def __init__(self, demand: Demand, supplies: Supplies, aim: float) -> None:
        self.demand, self.supplies, self.aim = demand, supplies, aim
        self.scale = supplies.scale[:, None]
        self.prices = np.zeros((len(supplies.scale), demand.grid.moments))
        self.covers = np.zeros(len(supplies.spares))
        self.best = 0.0

    def improve(self, stop: Callable[[], bool], tell: Callable[[float], None]) -> float:
        """Take steps until `stop`, or until nothing grows any more; tell every better bound."""
        ways = _Way(self.prices), _Way(self.covers)
        waited, mark = 0, 0.0
        while not stop() and self.best < self.aim and waited < PATIENCE:
            bound, *wishes = self.value()
            if bound > self.best:
                self.best = bound
                tell(bound)
            waited, mark = (0, self.best) if self.best > GROWN * mark else (waited + 1, mark)
            for way, wish in zip(ways, wishes, strict=True):
                way.go(wish)
        return self.best

    def value(self) -> tuple[float, Numbers, Numbers]:
        """Return the bound at these prices, and how much more of each resource is wished for."""
        flat = self.prices / self.scale
        prices = make_prices(flat, self.covers, self.demand.grid)
        cost, used, covered = self.demand.cheapest(prices)
        earned, offered = best_columns(self.supplies, prices.flat, prices.tails)
        held = float((flat * self.supplies.fixed).sum())
        bound = cost - earned - held - float((self.covers * self.supplies.spares).sum())
        wish = (used - offered - self.supplies.fixed) / self.scale
        return bound - SAFETY * abs(cost), wish, covered - self.supplies.spares


class _Way:
    """Prices on their way: each moves by its own step, shorter the more it was pushed about."""

    def __init__(self, prices: Numbers) -> None:
        self.prices = prices
        self.pushed = np.zeros_like(prices)
        self.newest = np.zeros_like(prices)

    def go(self, wish: Numbers) -> None:
        """Take one step; what costs nothing and is not wished for stays so."""
        wish = np.where((self.prices <= 0) & (wish < 0), 0.0, wish)
        self.pushed += wish * wish
        self.newest = MOMENTUM * self.newest + (1 - MOMENTUM) * wish
        self.prices += STEP * self.newest / np.sqrt(self.pushed + TINY)
        np.maximum(self.prices, 0.0, out=self.prices)


def price_out(
    instance: Instance, *, goal: Goal, by: int, known: tuple[int, int], stop: Callable[[], bool],
    tell: Callable[[float], None],
) -> float:  # fmt: skip
    """Bound what any plan can reach, better and better until `stop`.

    Args:
        by: the deadline [min]; only the goal deadline reads it.
        known: value under the goal and makespan of a plan there is.
        tell: hears of every better bound, in the goal's own measure.
    """
    book = Book(open_shop(instance, single=True))
    grid = make_grid(book.shop.now, max(known[1], book.shop.now + 1))
    kinds = [kind for kind, count in book.shop.stock.items() if count > 0]
    missed = goal is Goal.DEADLINE
    demand = Demand(book, grid, find_places(book), kinds, by if missed else None)
    supplies = list_supplies(book, grid, kinds)
    total = sum(book.shop.priority)
    pricing = Pricing(demand, supplies, float(total - known[0] if missed else known[0]))

    def as_goal(bound: float) -> float:
        return float(total - ceil(bound)) if missed else float(ceil(bound))

    return as_goal(pricing.improve(stop, lambda bound: tell(as_goal(bound))))
