"""What would every plan cost at least, if each minute of each resource had a price?

Resources are taken out of the rules and priced instead (Lagrange multipliers, one for each
resource and moment of a grid). Then every member alone chooses the cheapest minute to be ready,
every piece the rack, a cabinet or a spare, and every washer the sequence of loads that earns most
by exact dynamic programming. Whatever the prices, the sum is at most the objective of any plan;
better prices are found step by step (subgradients), so the bound may be taken at any time.

A piece of a member who is ready at t has used a resource by t minus the least it still needs
after that. All uses are at the grain of single pieces; changeovers, late families and what begun
steps hold only take away, so leaving them out keeps the bound valid.

Source: A. M. Geoffrion, Lagrangean relaxation for integer programming, Mathematical Programming
Study 2 (1974) 82-114; step length after B. T. Polyak (both from memory).
"""

from collections.abc import Callable
from math import ceil

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.demand import Demand
from sootline.core.washplan.earliest import Book
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal
from sootline.core.washplan.shop import open_shop
from sootline.core.washplan.supply import Supplies, best_loads, find_places, list_supplies
from sootline.core.washplan.timegrid import make_grid

Numbers = NDArray[np.float64]
# Part of the wish that a step takes up, how long nothing better is waited for, and the share of
# the newest direction in the next step. Found by trying.
FIRST_PART, LEAST_PART, PATIENCE, NEWEST = 1.0, 0.002, 12, 0.35
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
        """Take steps until `stop`; tell every better bound; return the best."""
        part, waited = FIRST_PART, 0
        top = self.prices.copy(), self.covers.copy()
        way, cover_way = np.zeros_like(self.prices), np.zeros_like(self.covers)
        while not stop() and part > LEAST_PART and self.best < self.aim:
            bound, wish, cover_wish = self.value()
            if bound > self.best:
                grown = bound > self.best * (1 + 1e-4)
                self.best, top = bound, (self.prices.copy(), self.covers.copy())
                tell(bound)
                waited = 0 if grown else waited + 1
            else:
                waited += 1
            if waited >= PATIENCE:
                part, waited = part / 2, 0
                self.prices, self.covers = top[0].copy(), top[1].copy()
                way[:], cover_way[:] = 0, 0
                continue
            way = NEWEST * wish + (1 - NEWEST) * way
            cover_way = NEWEST * cover_wish + (1 - NEWEST) * cover_way
            size = float((way**2).sum() + (cover_way**2).sum())
            step = part * (self.aim - bound) / max(size, 1e-12)
            self.prices = np.maximum(0, self.prices + step * way)
            self.covers = np.maximum(0, self.covers + step * cover_way)
        return self.best

    def value(self) -> tuple[float, Numbers, Numbers]:
        """Return the bound at these prices, and how much more of each resource is wished for."""
        tails = np.cumsum((self.prices / self.scale)[:, ::-1], axis=1)[:, ::-1]
        tails = np.hstack([tails, np.zeros((len(tails), 1))])
        cost, used, covered = self.demand.cheapest(tails, self.prices / self.scale, self.covers)
        earned, offered = best_loads(self.supplies, tails)
        held = float((self.prices / self.scale * self.supplies.fixed).sum())
        bound = cost - earned - held - float((self.covers * self.supplies.spares).sum())
        wish = (used - offered - self.supplies.fixed) / self.scale
        return bound - SAFETY * abs(cost), wish, covered - self.supplies.spares


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
