"""Whatever comes in between, the new plan holds, and what was begun stands."""

from dataclasses import replace
from random import Random

import pytest
from tests.instances.chance import seeded
from tests.instances.generate import crews
from tests.instances.stops import after

from sootline.core.basis import BadInputError, ComponentId, MachineId, MemberId, PlaceId
from sootline.core.verify import verify
from sootline.core.washplan import (
    RACK,
    Changes,
    Down,
    DryerDown,
    Drying,
    Goal,
    Instance,
    LateLoad,
    LateRun,
    Member,
    Plan,
    Replanned,
    StillDamp,
    carry_on,
    power_cut,
    replan,
    solve,
)

W0, W1, CABINET = MachineId("w0"), MachineId("w1"), PlaceId("d0")
MINUTES = (0, 7, 40, 64, 90, 150, 300, 420)


@pytest.fixture(scope="module")
def instance() -> Instance:
    """Six members, two washers, a cabinet."""
    return crews(6, seed=3, washers=2, cabinets=1)


@pytest.fixture(scope="module")
def plan(instance: Instance) -> Plan:
    """Return the plan that was being followed."""
    return solve(instance, stop=after(40))


def _second_call(chance: Random) -> Changes:
    """Two more members' gear comes in."""
    more = crews(2, seed=chance.randrange(99))
    names = {member.id: MemberId(f"second {member.id}") for member in more.members}
    return Changes(
        members=tuple(Member(id=names[m.id], priority=2, release=200) for m in more.members),
        pieces=tuple(
            replace(p, id=ComponentId(f"second {p.id}"), member=names[p.member])
            for p in more.pieces
        ),
    )


CHANGES = {
    "nothing": Changes(),
    "washer down": Changes(down=(Down(washer=W0, until=500),)),
    "washer gone": Changes(down=(Down(washer=W1),)),
    "late load": Changes(late=(LateLoad(washer=W0, minutes=33),)),
    "cabinet down": Changes(dryers=(DryerDown(cabinet=CABINET, until=400),)),
    "cabinet gone": Changes(dryers=(DryerDown(cabinet=CABINET),)),
    "late run": Changes(late_runs=(LateRun(cabinet=CABINET, minutes=25),)),
    "second call": _second_call(seeded(1)),
    "one helper": Changes(helpers=((0, 100, 2), (100, 1_000_000, 1))),
    "all at once": replace(
        _second_call(seeded(2)),
        down=(Down(washer=W1, until=250),),
        late=(LateLoad(washer=W0, minutes=5),),
    ),
}


@pytest.mark.parametrize("minute", MINUTES)
@pytest.mark.parametrize("name", CHANGES)
def test_the_new_plan_holds(instance: Instance, plan: Plan, name: str, minute: int) -> None:
    """At any minute and after any change the new plan keeps every rule, begun steps included."""
    helpers_fall = name == "one helper" and minute > 100
    changes = CHANGES[name]
    if helpers_fall:
        # A head count cannot change before now.
        changes = Changes(helpers=((0, minute + 30, 2), (minute + 30, 1_000_000, 1)))

    new = replan(instance, plan, minute=minute, changes=changes, stop=after(8))

    assert verify(new.instance, new.plan) == ()


@pytest.fixture(scope="module")
def broken(instance: Instance, plan: Plan) -> Replanned:
    """Disturb a disturbed plan."""
    first = replan(instance, plan, minute=80, changes=CHANGES["late load"], stop=after(8))
    return replan(
        first.instance, first.plan, minute=160, changes=CHANGES["washer gone"], stop=after(8)
    )


def test_a_second_disturbance_is_planned_on_top_of_the_first(broken: Replanned) -> None:
    """Replanning a replanned plan holds as well."""
    assert verify(broken.instance, broken.plan) == ()


def test_nothing_new_runs_in_a_washer_that_is_gone(broken: Replanned) -> None:
    """Only what it had finished is there."""
    late = [load for load in broken.plan.loads if load.washer == W1 and load.load_start >= 160]

    assert late == []


def test_an_interrupted_load_is_washed_again(instance: Instance, plan: Plan) -> None:
    """The pieces that turned when the washer stopped are in a later load."""
    stopped = next(load for load in plan.loads if load.washer == W0)
    minute = stopped.prog_start + 18

    new = replan(
        instance, plan, minute=minute, changes=Changes(down=(Down(washer=W0, until=300),)),
        stop=after(4),
    )  # fmt: skip

    again = {piece for load in new.plan.loads if load.load_start >= minute for piece in load.pieces}
    assert set(stopped.pieces) <= again
    assert verify(new.instance, new.plan) == ()


def test_what_is_washed_stays_washed_when_the_washer_stops(instance: Instance, plan: Plan) -> None:
    """A load whose programme is over is unloaded, not washed again."""
    done = next(load for load in plan.loads if load.washer == W0)

    now = carry_on(
        instance, plan, minute=done.prog_end, changes=Changes(down=(Down(washer=W0, until=400),))
    )

    assert done.pieces in [load.pieces for load in now.begun.loads]


def test_without_a_change_the_rest_is_no_worse(instance: Instance, plan: Plan) -> None:
    """The old order is in the pool, so looking again costs nobody anything."""
    new = replan(instance, plan, minute=90, changes=Changes(), stop=after(0))

    assert new.plan.objective <= plan.objective


def test_spares_handed_out_stay_handed_out(instance: Instance, plan: Plan) -> None:
    """What members already have on is not asked back."""
    new = replan(instance, plan, minute=50, changes=Changes(), stop=after(4))

    assert set(plan.spares) <= set(new.plan.spares)


def test_the_bound_of_a_plan_in_the_middle_is_not_beyond_it(instance: Instance, plan: Plan) -> None:
    """Bounds take what is begun into account, for every goal."""
    for goal in Goal:
        new = replan(
            instance, plan, minute=200, changes=Changes(), goal=goal, by=600, stop=after(4)
        )

        assert new.plan.gap is not None
        assert new.plan.gap >= 0


@pytest.mark.parametrize(
    "changes", [Changes(down=(Down(washer=MachineId("w7")),)),
                Changes(late=(LateLoad(washer=MachineId("w7"), minutes=4),)),
                Changes(dryers=(DryerDown(cabinet=PlaceId("d7")),)),
                Changes(late_runs=(LateRun(cabinet=PlaceId("rack"), minutes=4),)),
                Changes(damp=(StillDamp(piece=ComponentId("nobody's"), minutes=4),))],
)  # fmt: skip
def test_what_is_not_there_is_refused(instance: Instance, plan: Plan, changes: Changes) -> None:
    """The fault names it."""
    with pytest.raises(BadInputError) as refused:
        carry_on(instance, plan, minute=10, changes=changes)

    assert [fault.message for fault in refused.value.faults] == ["washplan.unknown"]


def test_pieces_left_without_a_washer_are_named(instance: Instance, plan: Plan) -> None:
    """With both washers gone the answer is what cannot be washed, not a plan."""
    with pytest.raises(BadInputError) as refused:
        carry_on(
            instance, plan, minute=10, changes=Changes(down=(Down(washer=W0), Down(washer=W1)))
        )

    assert {fault.message for fault in refused.value.faults} == {"washplan.no_programme"}


def _running_run(plan: Plan) -> Drying:
    """Return something that dries in the cabinet."""
    return next(step for step in plan.dry if step.where == CABINET)


def test_what_hung_in_a_cabinet_that_stops_is_dried_anew(instance: Instance, plan: Plan) -> None:
    """Its minutes so far count for nothing, and nothing more goes into a cabinet that is gone."""
    hung = _running_run(plan)
    new = replan(
        instance, plan, minute=hung.start + 1,
        changes=Changes(dryers=(DryerDown(cabinet=CABINET),)),
        stop=after(8),
    )  # fmt: skip

    again = {step.piece: step for step in new.plan.dry}
    assert again[hung.piece].where == RACK
    assert again[hung.piece].start > hung.start
    assert verify(new.instance, new.plan) == ()


def test_a_plan_that_uses_a_stopped_cabinet_is_refused(instance: Instance, plan: Plan) -> None:
    """The independent check knows when a cabinet is there."""
    for until in (None, 10_000):
        shut = replace(instance, dryer_free={CABINET: until})

        assert {fault.message for fault in verify(shut, plan)} == {"verify.cabinet.free"}


def test_a_damp_piece_hangs_again_and_is_looked_at_again(instance: Instance, plan: Plan) -> None:
    """The touch check decides when it is dry, not the plan."""
    done = min(plan.inspect, key=lambda task: task.start)
    piece, minute = done.pieces[0], done.start + 1
    new = replan(
        instance, plan, minute=minute, changes=Changes(damp=(StillDamp(piece=piece, minutes=45),)),
        stop=after(8),
    )  # fmt: skip

    hung = next(step for step in new.plan.dry if step.piece == piece)
    looked = next(task for task in new.plan.inspect if piece in task.pieces)
    assert hung.start >= minute
    assert hung.end - hung.start >= 1
    assert looked.start >= hung.end
    assert verify(new.instance, new.plan) == ()


@pytest.mark.parametrize("minute", MINUTES)
def test_a_power_cut_moves_what_runs_by_its_length(
    instance: Instance, plan: Plan, minute: int
) -> None:
    """Programmes and cabinet runs go on where they stopped; nothing is begun meanwhile."""
    changes = power_cut(instance, plan, minute=minute, minutes=50)
    new = replan(instance, plan, minute=minute, changes=changes, stop=after(8))
    running = [load for load in plan.loads if load.load_start < minute < load.prog_end]

    ends = {(load.washer, load.load_start): load.prog_end for load in new.plan.loads}
    assert all(ends[load.washer, load.load_start] == load.prog_end + 50 for load in running)
    assert not any(minute <= load.load_start < minute + 50 for load in new.plan.loads)
    assert verify(new.instance, new.plan) == ()
