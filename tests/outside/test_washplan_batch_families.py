"""One batch machine, incompatible families, weighted completion times: the known optimum.

Sources (citations from memory): R. Uzsoy, Scheduling batch processing machines with incompatible
job families, International Journal of Production Research 33 (1995) 2685-2708, for unit sizes:
full batches by falling weight, ordered by weight over time, are optimal; M. Azizoglu and
S. Webster, Scheduling a batch processing machine with incompatible job families, Computers and
Industrial Engineering 39 (2001) 325-335, for arbitrary sizes, where the optimum is found here by
trying every set of what is left. No data is taken over; the jobs are drawn here.
Tolerance: none.
"""

from dataclasses import replace

import pytest
from tests.instances.batch_machine import batch_machine, best_by_subsets, best_of_unit_sizes
from tests.instances.stops import paced

from sootline.core.verify import verify
from sootline.core.washplan import Goal, Instance, Plan, bound_of, solve
from sootline.core.washplan.helps import Helps
from sootline.wiring.engines import find_engine

TIMES, MOVES = 60, 20_000


def searched(instance: Instance) -> Plan:
    """Search with the compiled engine for a counted number of moves."""
    stop, share = paced(TIMES)
    engine = replace(find_engine(), steps=MOVES)
    plan = solve(instance, stop=stop, helps=Helps(engine=engine, share=share))
    assert verify(instance, plan) == ()
    return plan


@pytest.mark.parametrize("jobs", [10, 30, 60])
@pytest.mark.parametrize("seed", range(4))
def test_unit_sizes_reach_the_known_optimum(jobs: int, seed: int) -> None:
    """Full batches by falling weight, ordered by weight over time."""
    instance = batch_machine(jobs, seed=seed, most_size=1)
    best = best_of_unit_sizes(instance)
    plan = searched(instance)

    assert bound_of(instance, goal=Goal.SOONEST, by=0) <= best
    assert plan.objective == best


def test_the_two_ways_to_the_optimum_agree() -> None:
    """For unit sizes trying everything finds what the rule says."""
    for seed in range(10):
        instance = batch_machine(9, seed=seed, most_size=1)

        assert best_by_subsets(instance) == best_of_unit_sizes(instance)


@pytest.mark.parametrize("seed", range(10))
def test_arbitrary_sizes_reach_the_best_of_all(seed: int) -> None:
    """With ten jobs of sizes up to nine the search finds the optimum, and the bound is below."""
    instance = batch_machine(10, seed=seed, most_size=9)
    best = best_by_subsets(instance)
    plan = searched(instance)

    assert bound_of(instance, goal=Goal.SOONEST, by=0) <= best
    assert plan.objective == best
