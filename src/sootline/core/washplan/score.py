"""Which of two timetables is better under a goal?"""

from dataclasses import dataclass

from sootline.core.washplan.dispatch import Timetable
from sootline.core.washplan.plan import Goal

Rank = tuple[int, int, int]


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
        """Return what is compared, the less the better, ties broken as the goal says, then by fewer loads."""
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
        """Return what members aim at next: for all-done everybody at the common end."""
        if self.goal is Goal.ALL_DONE:
            return (table.makespan,) * len(table.ready)
        return tuple(table.ready)

    def gap(self, table: Timetable, bound: float) -> float:
        """Return how far this may be from the best, as a share; 0 is proven best."""
        if self.goal is Goal.DEADLINE:
            return (bound - self.ready_weight(table)) / bound if bound else 0.0
        value = table.makespan if self.goal is Goal.ALL_DONE else table.objective
        return (value - bound) / value if value else 0.0
