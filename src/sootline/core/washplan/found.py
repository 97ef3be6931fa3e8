"""Which of two timetables is better under a goal, and what is aimed at next?"""

from dataclasses import dataclass

from sootline.core.washplan.bench import Bench
from sootline.core.washplan.choice import Choice
from sootline.core.washplan.kernel import arrays as at
from sootline.core.washplan.kernel.anneal import cost_of, ready_weight, retarget
from sootline.core.washplan.kernel.arrays import Ints
from sootline.core.washplan.plan import Goal

_NUMBER = {Goal.SOONEST: at.SOONEST, Goal.DEADLINE: at.DEADLINE, Goal.ALL_DONE: at.ALL_DONE}


@dataclass(frozen=True, kw_only=True)
class Found:
    """A choice with what it led to, both in the arrays of its bench."""

    bench: Bench
    picks: Ints
    times: Ints

    def copy(self) -> "Found":
        """Return one whose arrays may be written to."""
        ints = self.bench.engine.ints
        return Found(bench=self.bench, picks=ints(self.picks), times=ints(self.times))

    def choice(self) -> Choice:
        """Return what was decided."""
        return self.bench.choice(self.picks)

    @property
    def sums(self) -> tuple[int, int, int]:
        """Objective, makespan, number of loads."""
        objective, makespan, loads = self.bench.section(self.times, at.SUMS)
        return objective, makespan, loads


@dataclass(frozen=True, kw_only=True)
class Judge:
    """A goal with what it needs.

    Args:
        by: the deadline [min]; only the goal deadline reads it.
    """

    goal: Goal
    by: int

    def aim(self, bench: Bench) -> Ints:
        """Return the goal as the kernel reads it."""
        people = max(1, sum(bench.shop.priority))
        return bench.engine.ints([_NUMBER[self.goal], self.by, people])

    def better(self, found: Found, than: Found) -> bool:
        """Say whether one is better; the last tie goes to fewer loads."""
        return self._rank(found) < self._rank(than)

    def _rank(self, found: Found) -> tuple[int, int, int]:
        objective, makespan, loads = found.sums
        if self.goal is Goal.DEADLINE:
            return -self.value(found), objective, loads
        if self.goal is Goal.ALL_DONE:
            return makespan, objective, loads
        return objective, makespan, loads

    def cost(self, found: Found) -> float:
        """Return one number to go by: the goal first, its tie-break as a slope towards it."""
        return cost_of(found.bench.facts, self.aim(found.bench), found.times)

    def targets(self, found: Found) -> tuple[int, ...]:
        """Return what members aim at next."""
        bench = found.bench
        new = bench.engine.ints(found.picks)
        retarget(bench.facts, self.aim(bench), found.times, new, False)
        return tuple(bench.section(new, at.TARGET))

    def value(self, found: Found) -> int:
        """Return what the goal counts: priority in time, the last minute, or the objective."""
        objective, makespan, _ = found.sums
        if self.goal is Goal.DEADLINE:
            return ready_weight(found.bench.facts, self.aim(found.bench), found.times)
        return makespan if self.goal is Goal.ALL_DONE else objective

    def gap(self, found: Found, bound: float) -> float:
        """Return how far this may be from the best, as a share; 0 is proven best."""
        value = self.value(found)
        if self.goal is Goal.DEADLINE:
            return (bound - value) / bound if bound else 0.0
        return (value - bound) / value if value else 0.0
