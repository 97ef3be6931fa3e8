"""No bound is ever beyond the best, and no plan better than the best: against trying everything."""

import pytest
from tests.instances.exhaustive import Optimum, optimum
from tests.instances.generate import tiny
from tests.instances.stops import after

from sootline.core.basis import BadInputError
from sootline.core.verify import verify
from sootline.core.washplan import Goal, Instance, Plan, bound_of, solve

BY = 9
SEEDS = range(200)
BLOCK = 20


def _instances(first: int) -> list[Instance]:
    """Make a block of tiny instances; a draw whose pieces fit no drum or place is passed over."""
    made = []
    for seed in range(first, first + BLOCK):
        try:
            made.append(tiny(seed))
        except BadInputError:
            continue
    return made


def _value(instance: Instance, plan: Plan, goal: Goal) -> int:
    if goal is Goal.DEADLINE:
        ready = (m.priority for m in instance.members if plan.ready[m.id] <= BY)
        return sum(ready)
    return plan.makespan if goal is Goal.ALL_DONE else plan.objective


@pytest.mark.parametrize("first", range(0, len(SEEDS), BLOCK))
def test_bound_best_and_plan_stand_in_order(first: int) -> None:
    """Bound, exhaustive best and found plan never cross, for all three goals."""
    for instance in _instances(first):
        best: Optimum = optimum(instance, BY)
        for goal, value in (
            (Goal.SOONEST, best.soonest),
            (Goal.DEADLINE, best.by_deadline),
            (Goal.ALL_DONE, best.all_done),
        ):
            plan = solve(instance, goal=goal, by=BY, stop=after(10))
            bound = bound_of(instance, goal=goal, by=BY)
            found = _value(instance, plan, goal)

            assert verify(instance, plan) == (), instance.name
            if goal is Goal.DEADLINE:
                assert found <= value <= bound, instance.name
            else:
                assert bound <= value <= found, instance.name
