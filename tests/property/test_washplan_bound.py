"""No bound is ever beyond the best, and no plan better than the best: against trying everything."""

import pytest
from tests.instances.solved import BLOCK, BY, SEEDS, solved
from tests.instances.stops import after

from sootline.core.verify import verify
from sootline.core.washplan import Goal, Instance, Plan, bound_of, solve


def _value(instance: Instance, plan: Plan, goal: Goal) -> int:
    if goal is Goal.DEADLINE:
        ready = (m.priority for m in instance.members if plan.ready[m.id] <= BY)
        return sum(ready)
    return plan.makespan if goal is Goal.ALL_DONE else plan.objective


@pytest.mark.parametrize("first", range(0, SEEDS, BLOCK))
def test_no_bound_is_beyond_the_best(first: int) -> None:
    """Bound, exhaustive best and found plan never cross, for all three goals."""
    for instance, best in solved(first):
        for goal, value in (
            (Goal.SOONEST, best.soonest),
            (Goal.DEADLINE, best.by_deadline),
            (Goal.ALL_DONE, best.all_done),
        ):
            bound = bound_of(instance, goal=goal, by=BY)

            assert bound >= value if goal is Goal.DEADLINE else bound <= value, instance.name


@pytest.mark.parametrize("goal", list(Goal))
def test_no_plan_is_better_than_the_best(goal: Goal) -> None:
    """A plan that beat everything would break a rule that the check does not see."""
    for instance, best in solved(0):
        plan = solve(instance, goal=goal, by=BY, stop=after(30))
        found = _value(instance, plan, goal)

        assert verify(instance, plan) == (), instance.name
        if goal is Goal.DEADLINE:
            assert found <= best.by_deadline, instance.name
        else:
            least = best.soonest if goal is Goal.SOONEST else best.all_done
            assert found >= least, instance.name
