"""Which plan is the best that can be found until somebody says stop?

The pool starts with the hand rules, so no answer is worse than any of them; then loads are formed
over a grid of orders, and the best are annealed. Nothing here reads a clock: `stop` is handed in.
"""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import islice
from math import exp
from random import Random

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.washplan.bound import bound_of
from sootline.core.washplan.dispatch import Choice, Timetable, dispatch
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.moves import At, merged, neighbour
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.pool import as_choice, grid
from sootline.core.washplan.rules import HandRule, rule_choice
from sootline.core.washplan.score import Judge, Rank
from sootline.core.washplan.shop import Shop, open_shop
from sootline.core.washplan.writeout import write_plan

Stop = Callable[[], bool]
SINGLE_PIECES_UP_TO = 250
FIRST_CYCLE = 600
MOST_MERGES = 40
LONGEST_CYCLE = 20_000
HOT, COLD = 0.004, 0.0001  # shares of the cost that a step may be worse by, at the two ends


def solve(
    instance: Instance,
    *,
    goal: Goal = Goal.SOONEST,
    by: int | None = None,
    stop: Stop,
    seed: int = 0,
    known: Plan | None = None,
) -> Plan:
    """Find the best plan until `stop` says so, with a bound on what any plan can reach.

    Args:
        by: the deadline [min]; the goal deadline needs it.
        stop: asked again and again; True ends the search with the best so far. The hand rules
            are tried in any case.
        seed: the same seed and the same number of times asked give the same plan.
        known: an earlier plan whose decisions join the pool.

    Raises:
        BadInputError: no deadline is given, or the helpers' hours end before the work does.
    """
    if goal is Goal.DEADLINE and by is None:
        raise BadInputError([Fault(place="by", message=MessageId("washplan.no_deadline"))])
    search = _Search(instance, goal, by or 0, stop, seed)
    search.by_hand(known)
    search.bound = bound_of(instance, goal=goal, by=by or 0)
    search.improve()
    search.tidy()
    return search.plan()


def hand_plan(instance: Instance, rule: HandRule) -> Plan:
    """Plan as one hand rule does, everything but the loads by the search's own dispatcher.

    Raises:
        BadInputError: the helpers' hours end before the work does.
    """
    search = _Search(instance, Goal.SOONEST, 0, lambda: True, 0)
    search.by_rule(rule)
    return search.plan()


@dataclass(frozen=True, kw_only=True)
class _Found:
    """A choice with what it led to."""

    shop: Shop
    choice: Choice
    table: Timetable
    rank: Rank
    cost: float


class _Search:
    """The best so far, and the ways to better it."""

    def __init__(self, instance: Instance, goal: Goal, by: int, stop: Stop, seed: int) -> None:
        self.judge = Judge(
            priority=tuple(member.priority for member in instance.members), goal=goal, by=by
        )
        self.shop = open_shop(instance)
        self.stop = stop
        self.chance = Random(seed)  # noqa: S311 - a search, not a secret
        self.best: _Found | None = None
        self.bound: float | None = None

    def by_hand(self, known: Plan | None) -> None:
        """Try the hand rules and the known plan."""
        for rule in HandRule:
            self.by_rule(rule)
        if known is not None:
            self._settle(as_choice(self.shop, known))
            fine = open_shop(self.shop.instance, single=True)
            self._settle(as_choice(fine, known), fine)

    def by_rule(self, rule: HandRule) -> None:
        """Try one hand rule, with and without cabinet runs."""
        choice = rule_choice(self.shop, rule)
        self._settle(choice)
        if self.shop.cabinets:
            # A rack may be too small for some, or too slow for the helpers' hours.
            with suppress(BadInputError):
                self._settle(replace(choice, runs=((),) * len(self.shop.cabinets)))

    def improve(self) -> None:
        """Form loads over the grid, then anneal in ever longer cycles, then piece by piece."""
        for choice in grid(self.shop):
            if self._over():
                return
            with suppress(BadInputError):
                self._settle(choice)
        length = FIRST_CYCLE
        fine = len(self.shop.instance.pieces) <= SINGLE_PIECES_UP_TO
        while not self._over() and self.best is not None:
            self._anneal(self.best, length)
            if fine:
                self._anneal(self._single(self.best), length)
            length = min(2 * length, LONGEST_CYCLE)

    def tidy(self) -> None:
        """Wash fewer loads where that costs nobody anything."""
        tries = MOST_MERGES
        bettered = True
        while bettered and tries and self.best is not None:
            best, bettered = self.best, False
            for choice in islice(merged(best.shop, best.choice), tries):
                tries -= 1
                self._find(best.shop, choice)
                if self.best is not best:
                    bettered = True
                    break

    def plan(self) -> Plan:
        """Write the best out, with its bound and gap."""
        assert self.best is not None  # the hand rules come first
        best = self.best
        plan = write_plan(best.shop, best.choice, best.table)
        if self.bound is None:
            return plan
        return replace(plan, bound=self.bound, gap=self.judge.gap(best.table, self.bound))

    def _over(self) -> bool:
        """Say whether nothing better is wanted or possible."""
        best, bound = self.best, self.bound
        closed = best is not None and bound is not None and self.judge.gap(best.table, bound) <= 0
        # A closed gap settles the goal itself; its tie-break is worth no more of anybody's time.
        return closed or self.stop()

    def _find(self, shop: Shop, choice: Choice) -> _Found:
        table = dispatch(shop, choice)
        found = _Found(
            shop=shop,
            choice=replace(choice, target=self.judge.targets(table)),
            table=table,
            rank=self.judge.rank(table),
            cost=self.judge.cost(table),
        )
        if self.best is None or found.rank < self.best.rank:
            self.best = replace(found, choice=choice)
        return found

    def _settle(self, choice: Choice, shop: Shop | None = None) -> None:
        """Aim at what came out, some times over."""
        shop = shop or self.shop
        for _ in range(3):
            choice = self._find(shop, choice).choice

    def _single(self, found: _Found) -> _Found:
        """See a choice piece by piece."""
        plan = write_plan(found.shop, found.choice, found.table)
        shop = open_shop(found.shop.instance, single=True)
        return self._find(shop, as_choice(shop, plan))

    def _anneal(self, found: _Found, length: int) -> None:
        shop = found.shop
        found = self._find(shop, found.choice)
        for step in range(length):
            if self._over():
                return
            moved = neighbour(
                At(shop=shop, choice=found.choice, table=found.table, chance=self.chance)
            )
            if moved is None:
                continue
            try:
                tried = self._find(shop, moved)
            except BadInputError:
                continue
            heat = HOT * (COLD / HOT) ** (step / length) * found.cost
            if tried.cost <= found.cost or self.chance.random() < exp(
                (found.cost - tried.cost) / max(heat, 1e-9)
            ):
                found = tried
