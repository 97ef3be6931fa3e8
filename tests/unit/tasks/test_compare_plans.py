"""The plan beside what people do by hand."""

import pytest
from tests.instances.generate import crews
from tests.instances.stops import after

from sootline.core.basis import MachineId
from sootline.core.verify import verify
from sootline.core.washplan import HandRule, Instance, solve
from sootline.tasks.compare_plans import compare_plans


@pytest.fixture(scope="module")
def instance() -> Instance:
    """Return a small call."""
    return crews(3, seed=4)


def test_every_hand_rule_stands_beside_the_plan(instance: Instance) -> None:
    """Each is a plan that holds, and none is better than the plan."""
    compared = compare_plans(instance, stop=after(20))

    assert tuple(one.rule for one in compared.by_hand) == tuple(HandRule)
    assert all(verify(instance, one.plan) == () for one in compared.by_hand)
    assert all(one.ratio >= 1 for one in compared.by_hand)
    assert compared.instance == instance.name


def test_the_ratio_is_the_rule_s_sum_over_the_plan_s(instance: Instance) -> None:
    """As many times as long is waited, priorities counted."""
    compared = compare_plans(instance, stop=after(20))

    for one in compared.by_hand:
        assert one.ratio == one.plan.objective / compared.plan.objective
    assert compared.plan.objective == solve(instance, stop=after(20)).objective
    assert {load.washer for load in compared.plan.loads} == {MachineId("w0")}
