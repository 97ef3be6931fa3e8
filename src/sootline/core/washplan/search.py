"""Which plan is the best that can be found until somebody says stop?

The pool starts with the hand rules, so no answer is worse than any of them; then loads are formed
over a grid of orders, and the best are annealed. Nothing here reads a clock: `stop` is handed in.
"""

from collections.abc import Callable
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
RETARGET = 0.3
PROMISING = 1.2
FIRST_CYCLE = 600
MOST_MERGES = 40
LONGEST_CYCLE = 20_000
# Shares of the cost that a step may be worse by, at the two ends; with many pieces there is less
# time to cool down. Found by trying.
HOT, COLD, HOT_PIECES = 0.02, 0.0001, 100


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
        for boxed in (True, False) if self.shop.cabinets else (False,):
            self._settle(rule_choice(self.shop, rule, boxed=boxed))

    def improve(self) -> None:
        """Form loads over the grid, then anneal in ever longer cycles, then piece by piece."""
        for choice in grid(self.shop):
            if self._over():
                return
            self._settle(choice)
        length = FIRST_CYCLE
        fine = len(self.shop.instance.pieces) <= SINGLE_PIECES_UP_TO
        while not self._over():
            self._anneal(self._best(), length)
            if fine:
                self._anneal(self._single(self._best()), length)
            length = min(2 * length, LONGEST_CYCLE)

    def tidy(self) -> None:
        """Wash fewer loads where that costs nobody anything."""
        tries, bettered = MOST_MERGES, True
        while bettered:
            best, bettered = self._best(), False
            for choice in islice(merged(best.shop, best.choice), tries):
                tries -= 1
                self._find(best.shop, choice)
                bettered = self.best is not best
                if bettered:
                    break

    def plan(self) -> Plan:
        """Write the best out, with its bound and gap."""
        best = self._best()
        plan = write_plan(best.shop, best.choice, best.table)
        if self.bound is None:
            return plan
        return replace(plan, bound=self.bound, gap=self.judge.gap(best.table, self.bound))

    def _over(self) -> bool:
        """Say whether nothing better is wanted or possible."""
        best, bound = self.best, self.bound
        if best is not None and bound is not None and self.judge.goal is not Goal.DEADLINE:
            # With a deadline the members who miss it, and the tie-break, are worth going on for.
            return self.judge.gap(best.table, bound) <= 0 or self.stop()
        return self.stop()

    def _best(self) -> _Found:
        if self.best is None:
            place, message = "helpers", MessageId("washplan.helpers_run_out")
            raise BadInputError([Fault(place=place, message=message)])
        return self.best

    def _find(self, shop: Shop, choice: Choice) -> _Found | None:
        """Run a choice through the wash room; None if the helpers' hours end before the work."""
        table = dispatch(shop, choice)
        if table is None:
            return None
        rank, cost = self.judge.rank(table), self.judge.cost(table)
        found = _Found(shop=shop, choice=choice, table=table, rank=rank, cost=cost)
        if self.best is None or rank < self.best.rank:
            self.best = found
        return found

    def _settle(self, choice: Choice, shop: Shop | None = None) -> None:
        """Aim at what came out, some times over, as long as it promises anything."""
        for _ in range(3):
            found = self._find(shop or self.shop, choice)
            if found is None or found.cost > PROMISING * self._best().cost:
                return
            choice = replace(choice, target=self.judge.targets(found.table))

    def _single(self, found: _Found) -> _Found:
        """See a choice piece by piece."""
        shop = open_shop(found.shop.instance, single=True)
        if len(shop.items) == len(found.shop.items):
            return found
        plan = write_plan(found.shop, found.choice, found.table)
        return self._find(shop, as_choice(shop, plan)) or found

    def _anneal(self, found: _Found, length: int) -> None:
        """Take random steps, ever less often one that makes it worse."""
        hot = HOT * min(1.0, HOT_PIECES / len(self.shop.instance.pieces))
        for step in range(length):
            if self._over():
                return
            tried = self._step(found)
            if tried is not None:
                heat = hot * (COLD / hot) ** (step / length) * found.cost
                worse = (tried.cost - found.cost) / max(heat, 1e-9)
                if worse <= 0 or self.chance.random() < exp(-worse):
                    found = tried

    def _step(self, found: _Found) -> _Found | None:
        """Try a neighbour, now and then with the members' targets set to what came out."""
        at = At(shop=found.shop, choice=found.choice, table=found.table, chance=self.chance)
        moved = neighbour(at)
        if moved is None:
            return None
        if self.chance.random() < RETARGET:
            aims = self.judge.targets(found.table), tuple(found.table.ready)
            moved = replace(moved, target=self.chance.choice(aims))
        return self._find(found.shop, moved)
