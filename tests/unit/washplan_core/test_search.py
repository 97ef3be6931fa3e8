"""The search: never worse than people by hand, repeatable, and honest about what cannot be."""

from dataclasses import replace

import pytest
from tests.instances.generate import crews
from tests.instances.small import GLOVES, SHELL, piece, small
from tests.instances.stops import after

from sootline.core.basis import BadInputError, ComponentId, MachineId, MemberId, PlaceId
from sootline.core.verify import verify
from sootline.core.washplan import (
    Cabinet,
    Changes,
    Goal,
    HandRule,
    Instance,
    Member,
    Programme,
    Spare,
    Washer,
    hand_plan,
    replan,
    solve,
)

INSTANCES = [
    crews(4, seed=1),
    crews(9, seed=2, washers=2),
    crews(6, seed=3, cabinets=1),
    crews(30, seed=4, washers=2, cabinets=2),
]


@pytest.mark.parametrize("instance", INSTANCES, ids=lambda one: str(one.name))
def test_no_answer_is_worse_than_a_hand_rule(instance: Instance) -> None:
    """Even when stopped at once."""
    plan = solve(instance, stop=after(0))

    for rule in HandRule:
        by_hand = hand_plan(instance, rule)
        assert verify(instance, by_hand) == ()
        assert plan.objective <= by_hand.objective


@pytest.mark.parametrize("instance", INSTANCES[0:3:2], ids=lambda one: str(one.name))
def test_longer_search_is_better_and_holds(instance: Instance) -> None:
    """Some thousand tries with every kind of change give a better plan that keeps every rule."""
    plan = solve(instance, stop=after(1600))

    assert verify(instance, plan) == ()
    assert plan.objective < solve(instance, stop=after(0)).objective
    assert plan.bound is not None
    assert plan.bound <= plan.objective


def test_a_large_call_is_searched_in_whole_items() -> None:
    """Beyond 250 pieces a member's alike pieces stay together; the plan holds all the same."""
    instance = INSTANCES[3]
    plan = solve(instance, stop=after(330))

    assert verify(instance, plan) == ()
    assert plan.objective < solve(instance, stop=after(0)).objective


def test_the_same_seed_gives_the_same_plan() -> None:
    """Nothing depends on a clock or on unseeded chance."""
    one, two = (solve(INSTANCES[0], stop=after(400), seed=7) for _ in range(2))

    assert one == two


def test_a_proven_best_plan_ends_the_search() -> None:
    """One piece: the chain is the bound, and nobody has to say stop."""
    plan = solve(small(), stop=lambda: False)

    assert (plan.objective, plan.bound, plan.gap) == (175, 175, 0)


@pytest.mark.parametrize("goal", list(Goal))
def test_every_goal_has_its_own_bound(goal: Goal) -> None:
    """The gap is never below nothing."""
    plan = solve(INSTANCES[1], goal=goal, by=400, stop=after(200))

    assert verify(INSTANCES[1], plan) == ()
    assert plan.gap is not None
    assert 0 <= plan.gap < 1


def test_nobody_can_be_ready_by_minute_nought() -> None:
    """A deadline that cannot be kept by anybody has bound 0 and no gap."""
    plan = solve(small(), goal=Goal.DEADLINE, by=0, stop=after(5))

    assert (plan.bound, plan.gap) == (0, 0)


def test_a_deadline_goal_needs_a_deadline() -> None:
    """Without a minute it is refused."""
    with pytest.raises(BadInputError) as refused:
        solve(small(), goal=Goal.DEADLINE, stop=after(0))

    assert [fault.message for fault in refused.value.faults] == ["washplan.no_deadline"]


def test_helpers_who_leave_too_early_are_named() -> None:
    """The work cannot be finished: that is said, not planned around."""
    with pytest.raises(BadInputError) as refused:
        solve(small(helpers=((0, 60, 2),)), stop=after(0))

    assert [fault.message for fault in refused.value.faults] == ["washplan.helpers_run_out"]


def test_a_task_does_not_run_into_the_next_shift_without_its_helper() -> None:
    """Three minutes of preparation do not start two minutes before everybody leaves."""
    instance = small(helpers=((1, 3, 1), (50, 1_000_000, 1)))
    plan = solve(instance, stop=after(5))

    assert plan.prep[0].start == 50
    assert verify(instance, plan) == ()


def test_a_fall_in_the_head_count_is_kept() -> None:
    """With one of two helpers leaving at minute 4, the second preparation waits its turn."""
    pieces = tuple(piece(name, prep=5, dry_rack=n) for n, name in enumerate("abc", 90))
    instance = small(pieces=pieces, helpers=((0, 4, 2), (4, 1_000_000, 1)))
    plan = solve(instance, stop=after(50))

    assert verify(instance, plan) == ()


def test_what_is_too_big_for_the_rack_goes_into_a_cabinet() -> None:
    """Without any rack everything hangs in cabinets, in every rule."""
    cabinets = (Cabinet(id=PlaceId("d0"), units=1), Cabinet(id=PlaceId("d1"), units=4))
    pieces = (piece("a"), piece("b"), piece("c"))
    instance = small(pieces=pieces, rack_units=0, cabinets=cabinets)
    plan = solve(instance, stop=after(300))

    assert verify(instance, plan) == ()
    assert {step.where for step in plan.dry} == {"d1"}
    assert verify(instance, hand_plan(instance, HandRule.ALTERNATE)) == ()


def test_a_group_too_heavy_for_one_drum_is_parted() -> None:
    """Three shells of one member of 40 each, a drum of 100: two loads."""
    pieces = tuple(piece(name, weight=40) for name in "abc")
    plan = solve(small(pieces=pieces), stop=after(20))

    assert sorted(len(load.pieces) for load in plan.loads) == [1, 2]


def test_a_group_with_too_many_pieces_is_parted() -> None:
    """A drum that takes two pieces gets two, whatever they weigh."""
    washers = (
        Washer(
            id=MachineId("w0"), programmes={"S": Programme(cap=100, min=60, temp=40, max_pieces=2)}
        ),
    )
    pieces = tuple(piece(name, weight=4) for name in "abc")
    plan = solve(small(pieces=pieces, washers=washers), stop=after(20))

    assert sorted(len(load.pieces) for load in plan.loads) == [1, 2]


def test_a_member_covered_by_spares_is_ready_at_release() -> None:
    """Both pieces are stood in for; they are washed all the same."""
    stock = (Spare(type="coat shell", size="M", count=1), Spare(type="gloves", size="M", count=1))
    instance = small(pieces=(SHELL, GLOVES), spares=stock)
    plan = solve(instance, stop=after(5))

    assert plan.ready == {SHELL.member: 0}
    assert plan.makespan > 0
    assert len(plan.loads) == 1
    assert verify(instance, plan) == ()


def test_the_spare_goes_to_whom_it_helps_most() -> None:
    """Of two members with the same coat the one of higher priority gets the loan piece."""
    members = (Member(id=MemberId("m1")), Member(id=MemberId("m2"), priority=5))
    pieces = (piece("a"), piece("b", member=MemberId("m2")))
    stock = (Spare(type="coat shell", size="M", count=1),)
    instance = small(members=members, pieces=pieces, spares=stock)
    plan = solve(instance, stop=after(50))

    assert plan.spares == ("b",)
    assert verify(instance, plan) == ()


def test_nothing_to_do_is_a_plan_as_well() -> None:
    """No pieces: everybody is ready at release."""
    instance = small(pieces=(), members=(Member(id=MemberId("m1"), release=7),))
    plan = solve(instance, stop=after(50))

    assert plan.ready == {"m1": 7}
    assert verify(instance, plan) == ()


def test_only_gear_washed_by_hand_needs_no_washer() -> None:
    """Hand pieces alone are planned without a single load."""
    gloves = tuple(replace(GLOVES, id=ComponentId(f"gloves {n}")) for n in range(4))
    instance = small(pieces=gloves, washers=(), cabinets=(Cabinet(id=PlaceId("d"), units=4),))
    plan = solve(instance, stop=after(60))

    assert plan.loads == ()
    assert verify(instance, plan) == ()


def test_gear_released_later_is_not_touched_before() -> None:
    """The second member's gear comes in at minute 300."""
    members = (Member(id=MemberId("m1")), Member(id=MemberId("m2"), release=300))
    pieces = (SHELL, piece("late", member=MemberId("m2")))
    instance = small(members=members, pieces=pieces)
    plan = solve(instance, stop=after(50))

    assert plan.ready[MemberId("m2")] == 475
    assert verify(instance, plan) == ()


def test_a_hot_small_washer_takes_only_what_suits_it() -> None:
    """Heavy pieces and delicate ones go to the other machine."""
    hot = Washer(id=MachineId("hot"), programmes={"S": Programme(cap=40, min=30, temp=60)})
    pieces = (piece("a"), piece("b", max_temp=60), piece("c", weight=60, max_temp=60))
    instance = small(pieces=pieces, washers=(*small().washers, hot))
    plan = solve(instance, stop=after(60))

    assert {p for load in plan.loads if load.washer == "hot" for p in load.pieces} <= {"b"}
    assert verify(instance, plan) == ()


def test_two_preparations_side_by_side_end_with_the_shift() -> None:
    """A preparation starts only if its helper is there until it ends."""
    pieces = (piece("a", prep=4), piece("b", prep=6, dry_rack=90))
    instance = small(pieces=pieces, helpers=((0, 5, 2), (5, 1_000_000, 1)))
    plan = solve(instance, stop=after(30))

    assert verify(instance, plan) == ()


def test_hours_beyond_all_counting_have_a_bound_as_well() -> None:
    """Gear released after two weeks: exact sums of cycles are given up, the bound holds."""
    instance = small(members=(Member(id=MemberId("m1")), Member(id=MemberId("m2"), release=30_000)),
                     pieces=(SHELL, piece("late", member=MemberId("m2"))))  # fmt: skip
    plan = solve(instance, stop=after(10))

    assert plan.bound is not None
    assert plan.bound <= plan.objective


def test_gear_whose_washing_has_begun_has_nothing_left_to_rearrange() -> None:
    """With every piece in the drum or dry the search has nothing to move, and ends as told."""
    cabinets = (Cabinet(id=PlaceId("d"), units=4),)
    instance = small(pieces=(replace(SHELL, dry_cab=None),), cabinets=cabinets)
    plan = solve(instance, stop=after(0))
    late = replan(instance, plan, minute=30, changes=Changes(), goal=Goal.DEADLINE, by=170,
                  stop=after(300))  # fmt: skip

    assert verify(late.instance, late.plan) == ()
    assert late.plan.loads == plan.loads


def test_a_load_that_cannot_take_more_stays_as_it_is() -> None:
    """Pieces that each fill half a drum and one that fills it all cannot be mixed."""
    pieces = (piece("a", weight=50), piece("b", weight=50), piece("full", weight=100),
              piece("most", weight=70))  # fmt: skip
    instance = small(pieces=pieces, members=(Member(id=MemberId("m1"), priority=2),))
    plan = solve(instance, stop=after(900))

    assert len(plan.loads) == 3
    assert verify(instance, plan) == ()
