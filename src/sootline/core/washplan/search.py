"""Which plan is the best that can be found until somebody says stop?

The pool starts with the hand rules, so no answer is worse than any of them; then loads are formed
over a grid of orders, and the best are annealed. Nothing here reads a clock: `stop` is handed in.
"""

from collections.abc import Callable
from dataclasses import replace
from itertools import islice

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.washplan.bench import Bench
from sootline.core.washplan.bound import bound_of
from sootline.core.washplan.choice import Choice
from sootline.core.washplan.engine import Engine
from sootline.core.washplan.found import Found, Judge
from sootline.core.washplan.helps import Beside, Helps
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.kernel.drawing import draw
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.pool import as_choice, grid
from sootline.core.washplan.rules import HandRule, rule_choice
from sootline.core.washplan.shop import Shop, open_shop
from sootline.core.washplan.tidy import merged
from sootline.core.washplan.writeout import write_plan

Stop = Callable[[], bool]
SINGLE_PIECES_UP_TO = 250
PROMISING = 1.2
FIRST_CYCLE = 600
MOST_MERGES = 40
LONGEST_CYCLE = 20_000
# Shares of the cost that a step may be worse by, at the two ends; with many pieces there is less
# time to cool down. Found by trying.
HOT, COLD, HOT_PIECES = 0.02, 0.0001, 100
LARGE_HOT, LARGE_COLD = 0.006, 0.00003
# With a clock: until which share of the time loads are formed, and where each annealing ends. Few
# pieces are seen singly from the start and started anew; many only at the end, piece by piece.
FORMING = 0.08
FEW, CYCLES, LARGE_CYCLES = 300, (0.4, 0.7, 1.0), (0.98, 1.0)
# A tie for an officer, who does not run a drum for two hoods: half a hundredth of the objective.
FEWER_LOADS = 0.005


def solve(
    instance: Instance,
    *,
    goal: Goal = Goal.SOONEST,
    by: int | None = None,
    stop: Stop,
    seed: int = 0,
    known: Plan | None = None,
    helps: Helps | None = None,
) -> Plan:
    """Find the best plan until `stop` says so, with a bound on what any plan can reach.

    Args:
        by: the deadline [min]; the goal deadline needs it.
        stop: asked again and again; True ends the search with the best so far. The hand rules
            are tried in any case.
        seed: the same seed and the same number of times asked give the same plan.
        known: an earlier plan whose decisions join the pool.
        helps: without it the kernel is interpreted and the bound is the plain one.

    Raises:
        BadInputError: no deadline is given, or the helpers' hours end before the work does.
    """
    if goal is Goal.DEADLINE and by is None:
        raise BadInputError([Fault(place="by", message=MessageId("washplan.no_deadline"))])
    search = _Search(instance, Judge(goal=goal, by=by or 0), stop, seed, helps or Helps())
    search.by_hand(known)
    search.bound = bound_of(instance, goal=goal, by=by or 0)
    search.with_bounds_beside()
    search.tidy()
    return search.plan()


def hand_plan(instance: Instance, rule: HandRule, engine: Engine | None = None) -> Plan:
    """Plan as one hand rule does, everything but the loads by the search's own dispatcher.

    Raises:
        BadInputError: the helpers' hours end before the work does.
    """
    judge = Judge(goal=Goal.SOONEST, by=0)
    helps = Helps(engine=engine) if engine else Helps()
    search = _Search(instance, judge, lambda: True, 0, helps)
    search.by_rule(rule)
    return search.plan()


class _Search:
    """The best so far, and the ways to better it."""

    def __init__(
        self, instance: Instance, judge: Judge, stop: Stop, seed: int, helps: Helps
    ) -> None:
        self.judge, self.stop, self.helps = judge, stop, helps
        self.bench = self._bench(open_shop(instance))
        self.chance = helps.engine.ints([1 + seed % 2_000_000_000])
        for _ in range(3):
            draw(self.chance, 2)
        self.best: Found | None = None
        self.bound: float | None = None
        self.beside: Beside | None = None

    def _bench(self, shop: Shop) -> Bench:
        return Bench(shop, self.helps.engine)

    def by_hand(self, known: Plan | None) -> None:
        """Try the hand rules and the known plan."""
        for rule in HandRule:
            self.by_rule(rule)
        if known is not None:
            for bench in (self.bench, self._single()):
                self._settle(as_choice(bench.shop, known), bench)

    def by_rule(self, rule: HandRule) -> None:
        """Try one hand rule, with and without cabinet runs."""
        for boxed in (True, False) if self.bench.shop.cabinets else (False,):
            self._settle(rule_choice(self.bench.shop, rule, boxed=boxed), self.bench)

    def with_bounds_beside(self) -> None:
        """Improve, and end what works beside whatever happens."""
        judge = self.judge
        # The last minute of all is bounded well enough by counting.
        if self.helps.bounder and judge.goal is not Goal.ALL_DONE:
            instance = self.bench.shop.instance
            self.beside = self.helps.bounder(instance, judge.goal, judge.by, self._best_plan)
        try:
            self.improve()
            self._newest_bound()
        finally:
            if self.beside:
                self.beside.end()

    def improve(self) -> None:
        """Form loads over the grid, then anneal, then piece by piece."""
        share = self.helps.share
        for choice in grid(self.bench.shop):
            if self._over() or (share and share() > FORMING):
                break
            self._settle(choice, self.bench)
        pieces = len(self.bench.shop.instance.pieces)
        if share:
            for end in CYCLES if pieces <= FEW else LARGE_CYCLES:
                best = self._best()
                fine = pieces <= FEW or end > LARGE_CYCLES[0]
                self._anneal_until(self._as_single(best) if fine else best, share, end)
            return
        length = FIRST_CYCLE
        while not self._over():
            self._anneal(self._best(), length)
            if pieces <= SINGLE_PIECES_UP_TO:
                self._anneal(self._as_single(self._best()), length)
            length = min(2 * length, LONGEST_CYCLE)

    def tidy(self) -> None:
        """Wash fewer loads where that costs nobody anything, or no more than the tie allows."""
        tries, bettered = MOST_MERGES, True
        while bettered:
            best, bettered = self._best(), False
            for choice in islice(merged(best.bench.shop, best.choice()), tries):
                tries -= 1
                found = self._find(choice, best.bench)
                if found and self.best is best and self._ties(found, best):
                    self.best = found
                bettered = self.best is not best
                if bettered:
                    break

    def _ties(self, found: Found, best: Found) -> bool:
        more = self.judge.value(found) - self.judge.value(best)
        return bool(self.helps.tie) and more <= self.helps.tie * self.judge.value(best)

    def plan(self) -> Plan:
        """Write the best out, with its bound and gap."""
        best = self._best()
        plan = write_plan(best)
        if self.bound is None:
            return plan
        gap = self.judge.gap(best, self.bound)
        proven = self.beside.plan() if self.beside else None
        if proven is not None and proven.objective < plan.objective:
            plan, gap = proven, (proven.objective - self.bound) / proven.objective
        return replace(plan, bound=self.bound, gap=gap)

    def _over(self) -> bool:
        """Say whether nothing better is wanted or possible."""
        best, bound = self.best, self._newest_bound()
        if best is not None and bound is not None and self.judge.goal is not Goal.DEADLINE:
            # With a deadline the members who miss it, and the tie-break, are worth going on for.
            proven = self.beside is not None and self.beside.plan() is not None
            return proven or self.judge.gap(best, bound) <= 0 or self.stop()
        return self.stop()

    def _newest_bound(self) -> float | None:
        other = self.beside.newest() if self.beside else None
        if other is not None and self.bound is not None:
            closer = min if self.judge.goal is Goal.DEADLINE else max
            self.bound = closer(self.bound, other)
        return self.bound

    def _best(self) -> Found:
        if self.best is None:
            place, message = "helpers", MessageId("washplan.helpers_run_out")
            raise BadInputError([Fault(place=place, message=message)])
        return self.best

    def _best_plan(self) -> Plan:
        """Write the best so far out; whoever works beside may ask at any time."""
        return write_plan(self._best())

    def _find(self, choice: Choice, bench: Bench) -> Found | None:
        """Run a choice through the wash room; None if the helpers' hours end before the work."""
        found = Found(bench=bench, picks=bench.picks(choice), times=bench.times())
        if not bench.engine.run_clock(bench.facts, found.picks, bench.room, found.times):
            return None
        if self.best is None or self.judge.better(found, self.best):
            self.best = found
        return found

    def _settle(self, choice: Choice, bench: Bench) -> None:
        """Aim at what came out, some times over, as long as it promises anything."""
        for _ in range(3):
            found = self._find(choice, bench)
            if found is None or self.judge.cost(found) > PROMISING * self.judge.cost(self._best()):
                return
            choice = replace(choice, target=self.judge.targets(found))

    def _single(self) -> Bench:
        return self._bench(open_shop(self.bench.shop.instance, single=True))

    def _as_single(self, found: Found) -> Found:
        """See a choice piece by piece."""
        shop = open_shop(found.bench.shop.instance, single=True)
        if len(shop.items) == len(found.bench.shop.items):
            return found
        return self._find(as_choice(shop, write_plan(found)), self._bench(shop)) or found

    def _heats(self) -> tuple[float, float]:
        """Return the heats at the two ends."""
        pieces = len(self.bench.shop.instance.pieces)
        hot, cold = (HOT, COLD) if pieces <= FEW else (LARGE_HOT, LARGE_COLD)
        return hot * min(1.0, HOT_PIECES / max(1, pieces)), cold

    def _anneal(self, found: Found, length: int) -> None:
        """Take so many random steps, ever less often one that makes it worse."""
        now, step = found.copy(), 0
        hot, cold = self._heats()
        while step < length and not self._over():
            steps = min(found.bench.steps, length - step)
            first, last = (hot * (cold / hot) ** (at / length) for at in (step, step + steps))
            self._steps(now, first, last, steps)
            step += steps

    def _anneal_until(self, found: Found, share: Callable[[], float], end: float) -> None:
        """Take random steps until a share of the time is over, colder and colder."""
        now, begin = found.copy(), share()
        hot, cold = self._heats()
        while not self._over() and (at := share()) < end:
            heat = hot * (cold / hot) ** max(0.0, (at - begin) / (end - begin))
            self._steps(now, heat, heat, found.bench.steps)

    def _steps(self, now: Found, hot: float, cold: float, steps: int) -> None:
        """Let the kernel take steps from `now`, which moves; keep the best."""
        bench, best = now.bench, self._best()
        top, new = (best if best.bench is bench else now).copy(), now.copy()
        bench.engine.anneal(
            bench.facts, self.judge.aim(bench), now.picks, now.times, top.picks, top.times,
            new.picks, new.times, bench.room, self.chance, hot, cold, steps,
        )  # fmt: skip
        if self.judge.better(top, best):
            self.best = top
