"""Priced bounds and proofs against trying everything: never beyond the best, and it is found."""

import pytest
from tests.instances.solved import BLOCK, BY, SEEDS, solved
from tests.instances.stops import after

from sootline.core.verify import verify
from sootline.core.washplan import Goal, solve
from sootline.core.washplan.exact import Proof
from sootline.core.washplan.priced import price_out


@pytest.mark.parametrize("first", range(0, SEEDS, BLOCK))
def test_prices_never_go_beyond_the_best(first: int) -> None:
    """Neither for everybody soonest nor for a deadline, whatever step they are at."""
    for instance, best in solved(first):
        plan = solve(instance, stop=after(3))
        for goal, known in ((Goal.SOONEST, plan.objective), (Goal.DEADLINE, 0)):
            told: list[float] = []
            price_out(
                instance, goal=goal, by=BY, known=(known, plan.makespan), stop=after(60),
                tell=told.append,
            )  # fmt: skip

            if goal is Goal.SOONEST:
                assert max(told, default=0) <= best.soonest, instance.name
            else:
                assert min(told, default=best.by_deadline) >= best.by_deadline, instance.name


@pytest.mark.parametrize("first", range(0, SEEDS, BLOCK))
def test_the_exact_model_finds_and_proves_the_best(first: int) -> None:
    """Plan and bound meet at the exhaustive best, and the plan holds."""
    for instance, best in solved(first):
        known, told = solve(instance, stop=after(3)), [0.0]
        found = Proof(instance, known).run(told.append) or known

        assert verify(instance, found) == (), instance.name
        assert (found.objective, max(told)) == (best.soonest,) * 2, instance.name
