"""Every reason for an order is what really happens the other way round."""

from dataclasses import replace

import pytest
from tests.instances.generate import crews
from tests.instances.small import WASHER, piece, small
from tests.instances.stops import after

from sootline.core.basis import MemberId
from sootline.core.washplan import Goal, Instance, Member, Plan, solve
from sootline.core.washplan.why import OrderReason, explain_order


def two_loads(*sizes: int) -> Instance:
    """Make members whose pieces each fill a drum."""
    full = WASHER.programmes["S"].cap
    return small(
        members=tuple(Member(id=MemberId(f"m{m}")) for m in range(len(sizes))),
        pieces=tuple(
            piece(f"m{m}-{n}", member=MemberId(f"m{m}"), weight=full, prep=0, inspect=0, units=0,
                  dry_rack=40, dry_cab=None)
            for m, size in enumerate(sizes)
            for n in range(size)
        ),
    )  # fmt: skip


def why(instance: Instance, plan: Plan, goal: Goal = Goal.SOONEST) -> tuple[OrderReason, ...]:
    """Explain with a deadline that one of the loads meets."""
    return explain_order(instance, plan, goal=goal, by=120)


def test_the_short_order_comes_first_because_the_other_would_wait() -> None:
    """One drum against two: the other way round the one waits a cycle longer."""
    instance = two_loads(1, 2)
    plan = solve(instance, stop=after(60))
    first, second = why(instance, plan)

    assert (first.load, first.then) == (1, 2)
    assert first.message == "plan.why.first"
    assert (first.later, first.sooner, first.worse) == (1, 0, True)
    assert first.most == plan.loads[1].load_start - plan.loads[0].load_start
    assert second.message == "plan.why.either"


def test_equal_loads_may_change_places() -> None:
    """Two members with a drum each: one would win what the other loses."""
    instance = two_loads(1, 1)
    (reason,) = why(instance, solve(instance, stop=after(60)))

    assert reason.message == "plan.why.either"
    assert (reason.later, reason.sooner) == (1, 1)


def test_an_order_that_is_not_settled_says_so() -> None:
    """A plan with the long order first is told to be searched for longer."""
    instance = two_loads(1, 1)
    hurried = replace(instance.members[0], priority=3)
    instance = replace(instance, members=(hurried, *instance.members[1:]))
    plan = solve(instance, stop=after(60))
    one, other = plan.loads
    turned = replace(
        plan, loads=(replace(one, pieces=other.pieces), replace(other, pieces=one.pieces))
    )
    (reason,) = why(instance, turned)

    assert reason.message == "plan.why.unsettled"


def test_what_must_come_last_is_not_turned_round() -> None:
    """The load of a late family stays behind; among its own it may move."""
    instance = replace(two_loads(1, 1), late_families=("S",))
    plan = solve(instance, stop=after(20))

    assert len(why(instance, plan)) == 1

    mixed = crews(4, seed=2)
    late = replace(mixed, late_families=(mixed.pieces[0].family,))
    loads = solve(late, stop=after(20)).loads
    families = [load.family for load in sorted(loads, key=lambda load: load.load_start)]
    assert len(why(late, solve(late, stop=after(20)))) == len(families) - 2


@pytest.mark.parametrize("goal", list(Goal))
@pytest.mark.parametrize("seed", range(4))
def test_whoever_is_told_to_wait_longer_does(seed: int, goal: Goal) -> None:
    """A worse order makes somebody later, and every neighbour of a washer has its reason."""
    instance = crews(5, seed=seed, washers=1 + seed % 2, cabinets=seed % 2)
    plan = solve(instance, goal=goal, by=400, stop=after(40))
    reasons = explain_order(instance, plan, goal=goal, by=400)

    washers = {load.washer for load in plan.loads}
    assert len(reasons) == len(plan.loads) - len(washers)
    assert all(reason.most > 0 for reason in reasons if reason.worse and reason.later)
    assert all(reason.later for reason in reasons if reason.worse)
