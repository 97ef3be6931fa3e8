"""Intervals of a plan: early is never after likely, likely never after late."""

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.instances.chance import seeded
from tests.instances.generate import crews
from tests.instances.small import SHELL, piece, small
from tests.instances.stops import after

from sootline.core.basis import BadInputError
from sootline.core.washplan import (
    Changeover,
    Changes,
    Instance,
    LateLoad,
    Plan,
    Programme,
    StepKind,
    replan,
    solve,
    spread,
)

LIKELY = crews(5, seed=8, washers=2, cabinets=1)
PLAN = solve(LIKELY, stop=after(30))


def stretched(instance: Instance, chance: Random, sign: int) -> Instance:
    """Change every duration in one direction by a drawn amount."""

    def other(minutes: int) -> int:
        return max(0, minutes + sign * chance.randrange(1 + minutes // 3))

    return replace(
        instance,
        load_min=other(instance.load_min),
        unload_min=other(instance.unload_min),
        pieces=tuple(
            replace(
                one, prep=other(one.prep), inspect=other(one.inspect), hand_min=other(one.hand_min),
                dry_rack=other(one.dry_rack),
                dry_cab=None if one.dry_cab is None else other(one.dry_cab),
            )
            for one in instance.pieces
        ),
        washers=tuple(
            replace(
                washer,
                programmes={
                    family: replace(run, min=max(1, other(run.min)))
                    for family, run in washer.programmes.items()
                },
            )
            for washer in instance.washers
        ),
    )  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(seed=st.integers(0, 10_000))
def test_spans_are_in_order_and_grow(seed: int) -> None:
    """A MinuteSpan cannot be built out of order, so building all of them is the proof."""
    chance = seeded(seed)
    result = spread(stretched(LIKELY, chance, -1), LIKELY, stretched(LIKELY, chance, 1), PLAN)

    assert set(result.ready) == {member.id for member in LIKELY.members}
    for member, span in result.ready.items():
        assert span.likely <= PLAN.ready[member]


def test_certain_durations_give_the_plan_or_better() -> None:
    """With nothing uncertain the three readings agree, and none is after the plan's own."""
    result = spread(LIKELY, LIKELY, LIKELY, PLAN)

    for member, span in result.ready.items():
        assert span.earliest == span.likely == span.late <= PLAN.ready[member]


def test_every_load_has_its_three_steps() -> None:
    """Loading, programme and unloading of each load are there."""
    result = spread(LIKELY, LIKELY, LIKELY, PLAN)

    for kind in (StepKind.LOAD, StepKind.PROGRAMME, StepKind.UNLOAD):
        assert len([step for step in result.steps if step.kind is kind]) == len(PLAN.loads)


def test_one_piece_by_hand_of_arithmetic() -> None:
    """3 prepare, 5 load, 60 wash, 5 unload, 100 dry, 2 inspect: 175; slow drying 130: 205."""
    likely = small()
    late = small(pieces=(replace(SHELL, dry_rack=130),))
    early = small(pieces=(replace(SHELL, dry_rack=80),))

    span = spread(early, likely, late, solve(likely, stop=after(0))).ready[SHELL.member]

    assert (span.earliest, span.likely, span.late) == (155, 175, 205)


def test_a_washer_passes_a_delay_on() -> None:
    """Two loads in one washer: twenty minutes more each make the second end forty later."""
    pieces = (piece("a", weight=90), piece("b", weight=90))
    slow = (replace(small().washers[0], programmes={"S": Programme(cap=100, min=80, temp=40)}),)
    likely, late = small(pieces=pieces), small(pieces=pieces, washers=slow)

    result = spread(likely, likely, late, solve(likely, stop=after(0)))
    ends = [step.end for step in result.steps if step.kind is StepKind.UNLOAD]

    assert sorted(end.late - end.likely for end in ends) == [20, 40]


def test_a_later_shift_is_not_brought_forward() -> None:
    """However quick everything is, nobody inspects before somebody is there."""
    shifts = ((0, 100, 1), (300, 1_000_000, 1))
    likely = small(helpers=shifts)
    early = small(helpers=shifts, pieces=(replace(SHELL, dry_rack=10),))

    span = spread(early, likely, likely, solve(likely, stop=after(0))).ready[SHELL.member]

    assert span.earliest == 302


def test_what_is_over_is_a_fact_in_every_reading() -> None:
    """After a replan, begun steps that ended keep their minutes; running ones end from now on."""
    late_load = LateLoad(washer=LIKELY.washers[0].id, minutes=9)
    new = replan(LIKELY, PLAN, minute=200, changes=Changes(late=(late_load,)), stop=after(4))
    chance = seeded(5)
    early, late = (stretched(new.instance, chance, sign) for sign in (-1, 1))

    result = spread(early, new.instance, late, new.plan)

    for step in result.steps:
        if step.end.late < 200:
            assert step.end.earliest == step.end.late
        assert step.end.earliest == step.end.likely == step.end.late or step.end.earliest >= 200


def test_minutes_out_of_order_are_refused() -> None:
    """An early reading that is longer than the likely one is named."""
    with pytest.raises(BadInputError) as refused:
        spread(small(load_min=6), small(), small(), Plan(instance="small", objective=0, makespan=0))

    assert [(f.place, f.message) for f in refused.value.faults] == [
        ("earliest.load_min", "washplan.spread_order")
    ]


def test_the_drum_flush_passes_a_delay_on() -> None:
    """A changeover that may take ten minutes more makes the second family ten minutes later."""
    run = Programme(cap=100, min=60, temp=40)
    washers = (replace(small().washers[0], programmes={"S": run, "X": run}),)
    pieces = (SHELL, piece("soiled", family="X"))

    def flushed(minutes: int) -> Instance:
        change = Changeover(before="S", after="X", minutes=minutes)
        return small(pieces=pieces, washers=washers, changeover=(change,), late_families=("X",))

    likely = flushed(15)
    result = spread(likely, likely, flushed(25), solve(likely, stop=after(0)))
    loading = [step for step in result.steps if step.kind is StepKind.LOAD]

    assert sorted(step.start.late - step.start.likely for step in loading) == [0, 10]


def test_a_smaller_shift_afterwards_is_no_new_start() -> None:
    """Only when more helpers come does a step wait for them."""
    shifts = ((0, 50, 2), (50, 1_000_000, 1))
    likely = small(helpers=shifts)
    early = small(helpers=shifts, pieces=(replace(SHELL, dry_rack=10),))

    span = spread(early, likely, likely, solve(likely, stop=after(0))).ready[SHELL.member]

    assert span.earliest == 85
