"""One washer, one family, a drum per piece, equal weights: the smallest order first is best.

Source: the rule of the shortest first for the sum of completion times on one machine, W. E. Smith,
Various optimizers for single-stage production, Naval Research Logistics Quarterly 3 (1956) 59-66;
with an order for a job it is a classical result of customer-order scheduling (citation from
memory). With priorities the rule orders by size over priority. No tolerance: minutes are whole.
"""

import pytest
from tests.instances.chance import seeded
from tests.instances.small import WASHER, piece, small
from tests.instances.stops import after

from sootline.core.basis import MemberId
from sootline.core.verify import verify
from sootline.core.washplan import Instance, Member, bound_of, solve
from sootline.core.washplan.plan import Goal

CYCLE, DRYING = 70, 40


def orders(sizes: list[int], priorities: list[int]) -> Instance:
    """Make members whose pieces each fill a drum."""
    return small(
        members=tuple(
            Member(id=MemberId(f"m{m}"), priority=priority) for m, priority in enumerate(priorities)
        ),
        pieces=tuple(
            piece(
                f"m{m}-{n}", member=MemberId(f"m{m}"), weight=WASHER.programmes["S"].cap, prep=0,
                inspect=0, units=0, dry_rack=DRYING, dry_cab=None,
            )
            for m, size in enumerate(sizes)
            for n in range(size)
        ),
    )  # fmt: skip


def by_the_rule(sizes: list[int], priorities: list[int]) -> int:
    """Sum priority times readiness when orders are washed by size over priority."""
    total = washed = 0
    for size, priority in sorted(
        zip(sizes, priorities, strict=True), key=lambda pair: pair[0] / pair[1]
    ):
        washed += size
        total += priority * (washed * CYCLE + DRYING)
    return total


@pytest.mark.parametrize("seed", range(8))
def test_the_smallest_order_first_is_found(seed: int) -> None:
    """Equal priorities: the plan reaches the classical optimum and the bound does not pass it."""
    chance = seeded(seed)
    sizes = [chance.randrange(1, 5) for _ in range(5)]
    instance = orders(sizes, [1] * 5)
    plan = solve(instance, stop=after(300))

    assert verify(instance, plan) == ()
    assert bound_of(instance, goal=Goal.SOONEST, by=0) <= plan.objective
    assert plan.objective == by_the_rule(sizes, [1] * 5)


@pytest.mark.parametrize("seed", range(8))
def test_size_over_priority_first_is_found(seed: int) -> None:
    """With priorities the order is by size over priority."""
    chance = seeded(seed)
    sizes = [chance.randrange(1, 5) for _ in range(5)]
    priorities = [chance.randrange(1, 4) for _ in range(5)]
    instance = orders(sizes, priorities)
    plan = solve(instance, stop=after(600))

    assert plan.objective == by_the_rule(sizes, priorities)
