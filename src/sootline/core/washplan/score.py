"""Which of two timetables is better under a goal?"""

from dataclasses import dataclass

from sootline.core.washplan.dispatch import Timetable
from sootline.core.washplan.plan import Goal

Rank = tuple[int, int, int]
GIVE_WAY = 240  # minutes


@dataclass(frozen=True, kw_only=True)
class Judge:
    """A goal with what it needs.

    Args:
        priority: of every member.
        by: the deadline [min]; only the goal deadline reads it.
    """

    priority: tuple[int, ...]
    goal: Goal
    by: int

    def ready_weight(self, table: Timetable) -> int:
        """Return the priority of all members ready by the deadline."""
        pairs = zip(self.priority, table.ready, strict=True)
        return sum(priority for priority, minute in pairs if minute <= self.by)

    def rank(self, table: Timetable) -> Rank:
        """Return what is compared, the less the better; the last tie goes to fewer loads."""
        if self.goal is Goal.DEADLINE:
            return -self.ready_weight(table), table.objective, len(table.drums)
        if self.goal is Goal.ALL_DONE:
            return table.makespan, table.objective, len(table.drums)
        return table.objective, table.makespan, len(table.drums)

    def cost(self, table: Timetable) -> float:
        """Return one number for annealing: the goal first, its tie-break as a slope towards it."""
        people = max(1, sum(self.priority))
        mean = table.objective / people
        if self.goal is Goal.DEADLINE:
            late = sum(
                priority * min(1.0, max(0, minute - self.by) / 240)
                for priority, minute in zip(self.priority, table.ready, strict=True)
            )
            return 1000 * (late - self.ready_weight(table)) / people + mean / 4
        if self.goal is Goal.ALL_DONE:
            return table.makespan + mean / 50
        return mean + table.makespan / 5000

    def targets(self, table: Timetable) -> tuple[int, ...]:
        """Return what members aim at next.

        For all-done everybody aims at the common end. For a deadline those in time, and the next
        one, aim at the deadline itself and whoever is late gives way to them.
        """
        if self.goal is Goal.ALL_DONE:
            return (table.makespan,) * len(table.ready)
        if self.goal is Goal.SOONEST:
            return tuple(table.ready)
        target = [max(minute, self.by) + GIVE_WAY for minute in table.ready]
        late = sorted(minute for minute in table.ready if minute > self.by)
        for member, minute in enumerate(table.ready):
            if minute <= max([self.by, *late[:1]]):
                target[member] = self.by
        return tuple(target)

    def gap(self, table: Timetable, bound: float) -> float:
        """Return how far this may be from the best, as a share; 0 is proven best."""
        if self.goal is Goal.DEADLINE:
            return (bound - self.ready_weight(table)) / bound if bound else 0.0
        value = table.makespan if self.goal is Goal.ALL_DONE else table.objective
        return (value - bound) / value if value else 0.0
