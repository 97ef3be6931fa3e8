"""The rules that real plans add to the neutral problem are checked as well."""

from dataclasses import replace
from typing import Any

import pytest
from tests.instances.small import GLOVES, SHELL, piece, small
from tests.instances.stops import after

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.verify import verify
from sootline.core.washplan import (
    Begun,
    Changeover,
    Changes,
    Instance,
    Load,
    Plan,
    Programme,
    Washer,
    carry_on,
    solve,
)

W0 = MachineId("w0")
TWO_RUNS = (
    Washer(
        id=W0,
        programmes={
            "S": Programme(cap=100, min=60, temp=40),
            "X": Programme(cap=50, min=60, temp=40),
        },
    ),
)
TWO_FAMILIES: dict[str, Any] = {
    "pieces": (SHELL, piece("soiled", family="X"), GLOVES),
    "washers": TWO_RUNS,
}


def messages(instance: Instance, plan: Plan) -> set[str]:
    """Name what is found."""
    return {fault.message for fault in verify(instance, plan)}


def plan_of(instance: Instance) -> Plan:
    """Plan with a handful of tries."""
    plan = solve(instance, stop=after(5))
    assert verify(instance, plan) == ()
    return plan


def test_a_washer_must_stand_idle_between_two_families() -> None:
    """A plan without the drum flush is refused where one is needed, in its own direction."""
    plan = plan_of(small(**TWO_FAMILIES))
    first, second = (load.family for load in plan.loads)
    flush = small(**TWO_FAMILIES, changeover=(Changeover(before=first, after=second, minutes=15),))
    other = small(**TWO_FAMILIES, changeover=(Changeover(before=second, after=first, minutes=15),))

    assert "verify.washer.busy" in messages(flush, plan)
    assert messages(other, plan) == set()


def test_the_planner_leaves_room_for_the_flush() -> None:
    """The second family's loading starts no sooner than 15 minutes after the first is out."""
    both_ways = tuple(
        Changeover(before=a, after=b, minutes=15) for a, b in (("S", "X"), ("X", "S"))
    )
    one, two = plan_of(small(**TWO_FAMILIES, changeover=both_ways)).loads

    assert two.load_start >= one.unload_end + 15


def test_the_most_dangerous_family_comes_last() -> None:
    """The planner does it, and a plan that does not is refused."""
    for late in ("S", "X"):
        instance = small(**TWO_FAMILIES, late_families=(late,))
        other = small(**TWO_FAMILIES, late_families=("X" if late == "S" else "S",))
        plan = plan_of(instance)

        assert plan.loads[-1].family == late
        assert "verify.washer.late_family" in messages(other, plan)


def test_a_late_family_waits_for_what_is_still_to_come() -> None:
    """A family that comes last waits even for gear released later."""
    members = (
        replace(small().members[0], release=500),
        replace(small().members[0], id=MemberId("m2")),
    )
    pieces = (SHELL, piece("soiled", family="X", member=MemberId("m2")))
    instance = small(members=members, pieces=pieces, washers=TWO_RUNS, late_families=("X",))

    assert [load.family for load in plan_of(instance).loads] == ["S", "X"]


def test_a_washer_is_not_used_before_it_is_free() -> None:
    """A plan that loads a busy machine is refused; the planner waits."""
    busy = small(washer_free={W0: 50})

    assert "verify.load.washer_free" in messages(busy, plan_of(small()))
    assert plan_of(busy).loads[0].load_start == 50


def test_a_drum_has_a_limit_in_pieces() -> None:
    """Two light pieces need two loads where one piece is the limit."""
    washers = (Washer(id=W0, programmes={"S": Programme(cap=100, min=60, temp=40, max_pieces=1)}),)
    pieces = (piece("a"), piece("b"))
    together = plan_of(small(pieces=pieces))

    assert len(together.loads) == 1
    assert "verify.load.pieces" in messages(small(pieces=pieces, washers=washers), together)
    assert len(plan_of(small(pieces=pieces, washers=washers)).loads) == 2


def test_a_load_is_no_warmer_than_its_most_delicate_piece() -> None:
    """A plan whose drum is too warm is refused."""
    warm = Washer(id=MachineId("w1"), programmes={"S": Programme(cap=100, min=60, temp=60)})
    instance = small(washers=(*small().washers, warm))
    plan = plan_of(instance)
    moved = replace(plan, loads=(replace(plan.loads[0], washer=MachineId("w1")),))

    assert "verify.load.temp" in messages(instance, moved)


def test_washing_by_hand_waits_for_preparation() -> None:
    """A piece that has to be prepared is not scrubbed before."""
    instance = small(pieces=(replace(GLOVES, prep=4),))
    plan = plan_of(instance)
    early = replace(plan.hand[0], start=0, end=8)

    assert "verify.hand.early" in messages(instance, replace(plan, hand=(early,)))


def test_steps_of_no_minutes_may_be_left_out() -> None:
    """Preparation, hand wash and inspection of no minutes need no entry."""
    quick = replace(GLOVES, prep=0, hand_min=0, inspect=0)
    instance = small(pieces=(quick,))
    plan = plan_of(instance)

    assert (plan.prep, plan.hand, plan.inspect) == ((), (), ())
    assert plan.ready[GLOVES.member] == GLOVES.dry_rack


def test_a_release_counts_for_steps_that_are_not_listed() -> None:
    """Drying before the release is refused though nothing before it is listed."""
    quick = replace(GLOVES, prep=0, hand_min=0, inspect=0)
    plan = plan_of(small(pieces=(quick,)))
    later = small(pieces=(quick,), members=(replace(small().members[0], release=30),))

    assert "verify.dry.early" in messages(later, plan)


@pytest.fixture
def running() -> tuple[Instance, Plan]:
    """Return a plan in the middle of its first load."""
    instance = small(**TWO_FAMILIES)
    plan = plan_of(instance)
    return carry_on(instance, plan, minute=30, changes=Changes()), plan


def test_a_plan_that_keeps_what_is_begun_holds(running: tuple[Instance, Plan]) -> None:
    """The plan that was followed is still a plan."""
    instance, plan = running

    assert messages(instance, plan) == set()


def test_begun_steps_may_not_change(running: tuple[Instance, Plan]) -> None:
    """A begun preparation or load that stands elsewhere is refused."""
    instance, plan = running
    task = plan.prep[0]
    moved = replace(task, start=task.start + 1, end=task.end + 1)
    load = replace(plan.loads[0], load_start=plan.loads[0].load_start + 1)

    assert "verify.begun.changed" in messages(instance, replace(plan, prep=(moved, *plan.prep[1:])))
    assert "verify.begun.changed" in messages(
        instance, replace(plan, loads=(load, *plan.loads[1:]))
    )


def test_nothing_new_starts_in_the_past(running: tuple[Instance, Plan]) -> None:
    """Steps and loads that are not begun may not start before now."""
    instance, plan = running
    forgotten = replace(instance, begun=Begun(minute=30))

    assert "verify.begun.past" in messages(forgotten, plan)
    past = [
        fault.place for fault in verify(forgotten, plan) if fault.message == "verify.begun.past"
    ]
    assert any(place.startswith("loads") for place in past)
    assert any(place.startswith("prep") for place in past)


def test_a_spare_handed_out_is_not_taken_back() -> None:
    """A plan without it is refused."""
    instance = small(begun=Begun(minute=1, spares=(SHELL.id,)))
    plan = plan_of(small())

    assert "verify.begun.changed" in messages(instance, plan)


def test_unloading_of_a_finished_load_is_open() -> None:
    """Only what has started is fixed: the unloading may come later."""
    load = Load(
        washer=W0, family="S", load_start=3, prog_start=8, prog_end=68, unload_start=68,
        unload_end=73, pieces=(SHELL.id,),
    )  # fmt: skip
    prepared = plan_of(small()).prep
    instance = small(begun=Begun(minute=20, prep=prepared, loads=(load,)))
    plan = plan_of(instance)
    later = replace(plan, loads=(replace(load, unload_start=80, unload_end=85),))

    assert plan.loads == (load,)
    assert "verify.begun.changed" not in messages(instance, later)


def test_a_place_that_is_not_the_instances_is_named() -> None:
    """The station a plan invents is found before anything else is looked at."""
    instance = small(pieces=(GLOVES,))
    plan = plan_of(instance)
    invented = replace(plan, hand=(replace(plan.hand[0], station=PlaceId("kitchen")),))

    assert [dict(fault.values)["value"] for fault in verify(instance, invented)] == ["kitchen"]


def test_a_piece_is_not_listed_under_two_names() -> None:
    """Unknown pieces are named one by one."""
    plan = replace(plan_of(small()), spares=(ComponentId("x"), ComponentId("y")))

    assert [dict(fault.values)["value"] for fault in verify(small(), plan)] == ["x", "y"]
