"""Every kind of damage to a good plan is refused."""

import pytest
from tests.instances.chance import seeded
from tests.instances.generate import crews
from tests.instances.stops import after
from tests.property.washplan_damage import DAMAGES, Damage

from sootline.core.verify import verify
from sootline.core.washplan import Instance, Plan, solve

Case = tuple[Instance, Plan]


@pytest.fixture(scope="module")
def good() -> list[Case]:
    """Plans of several instances, with one and two washers, with and without cabinets."""
    instances = [
        crews(members, seed=seed, washers=1 + seed % 2, cabinets=seed % 3)
        for seed, members in enumerate((4, 5, 6, 4, 8, 6))
    ]
    return [(instance, solve(instance, stop=after(30))) for instance in instances]


def test_the_undamaged_plans_hold(good: list[Case]) -> None:
    """What the damage starts from has no fault."""
    assert [verify(instance, plan) for instance, plan in good] == [()] * len(good)


@pytest.mark.parametrize(
    ("damage", "message"), DAMAGES, ids=[damage.__name__ for damage, _ in DAMAGES]
)
def test_damage_is_refused(good: list[Case], damage: Damage, message: str) -> None:
    """Up to sixty plans damaged in one way are all refused, for the reason that was broken."""
    refused = 0
    for seed in range(60):
        instance, plan = good[seed % len(good)]
        damaged = damage(instance, plan, seeded(seed))
        if damaged is None:
            continue
        faults = verify(instance, damaged)

        assert f"verify.{message}" in {fault.message for fault in faults}, (instance.name, seed)
        assert all(fault.place for fault in faults)
        refused += 1
    assert refused >= 10
