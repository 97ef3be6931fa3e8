"""How far has a plan come, by what was reported, and is the rest planned from there?"""

import datetime as dt
from dataclasses import replace
from itertools import count

import pytest

from sootline.core.basis import BadInputError, PlaceId
from sootline.core.gear import CareStage
from sootline.core.job.jobs import Job
from sootline.core.verify import verify
from sootline.tasks.as_begun import as_begun
from sootline.tasks.change_wash import Changed, What, change_wash
from sootline.tasks.deeds import Washed, WashStep
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.tasks.take_reports import take
from sootline.wiring.demo import demo_job
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES

JOB = demo_job()
PLANNING = load_planning_times()
S, E, H = WashStep.STARTED, WashStep.ENDED, WashStep.HUNG


@pytest.fixture(scope="module")
def plan() -> PlanResult:
    """Plan the wash of the demonstration's night."""
    tries = count()
    return plan_wash(RULES, JOB, planning=PLANNING, stop=lambda: next(tries) >= 200)


def _after(plan: PlanResult, minutes: int, *done: tuple[int, WashStep]) -> Job:
    """Return the job so many minutes into the plan, with steps of loads reported."""
    job = JOB
    sheets = {load.number: load for load in plan.worksheet.loads}
    for number, step in done:
        sheet = sheets[number]
        deed = Washed(step=step, load=number, pieces=sheet.components, place=PlaceId(sheet.washer))
        job = take(RULES, job, deed, by="118")
    return replace(job, now=plan.aim.start + dt.timedelta(minutes=minutes))


def _changed(plan: PlanResult, job: Job, changed: Changed) -> PlanResult:
    tries = count()
    made = change_wash(RULES, job, plan, changed, planning=PLANNING, stop=lambda: next(tries) >= 60)
    assert verify(made.result.instance, made.result.plan) == ()
    return made.result


def test_a_wash_nobody_began_starts_now(plan: PlanResult) -> None:
    """An hour and a half late, the whole plan moves; nothing of it has begun."""
    begun = as_begun(plan, _after(plan, 90))

    assert begun.plan.loads == plan.plan.loads or all(
        load.load_start >= begun.minute for load in begun.plan.loads
    )
    assert begun.aim.start >= plan.aim.start


def test_what_turns_keeps_its_end_when_the_rest_is_late(plan: PlanResult) -> None:
    """The first load began in time; that the second is late does not slow the drum."""
    first = min(plan.plan.loads, key=lambda load: load.load_start)
    begun = as_begun(plan, _after(plan, first.prog_end - 1, (1, S)))
    kept = next(load for load in begun.plan.loads if load.pieces == first.pieces)
    shift = int((begun.aim.start - plan.aim.start) / dt.timedelta(minutes=1))

    assert kept.prog_end + shift <= first.prog_end + 1
    assert kept.unload_start >= begun.minute


def test_a_drum_that_ended_waits_to_be_emptied(plan: PlanResult) -> None:
    """Wet in the drum: its unloading is open, and nothing of it hangs."""
    first = min(plan.plan.loads, key=lambda load: load.load_start)
    begun = as_begun(plan, _after(plan, first.prog_end + 40, (1, S), (1, E)))
    kept = next(load for load in begun.plan.loads if set(load.pieces) == set(first.pieces))

    assert kept.unload_start >= begun.minute
    assert all(step.start >= begun.minute for step in begun.plan.dry if step.piece in first.pieces)


def test_what_hangs_ahead_of_its_plan_hangs(plan: PlanResult) -> None:
    """Hung twenty minutes in: it has begun to dry, whatever the plan said."""
    begun = as_begun(plan, _after(plan, 20, (1, S), (1, E), (1, H)))
    pieces = set(plan.worksheet.loads[0].components)

    assert all(step.start < begun.minute for step in begun.plan.dry if step.piece in pieces)


def test_what_is_through_its_check_leaves_the_plan(plan: PlanResult) -> None:
    """Nothing is left to do for it."""
    job = _after(plan, 200, (1, S), (1, E), (1, H))
    pieces = set(plan.worksheet.loads[0].components)
    done = replace(
        job,
        components=tuple(
            replace(one, state=replace(one.state, stage=CareStage.CHECKED))
            if one.id in pieces
            else one
            for one in job.components
        ),
        calls=(),
    )
    begun = as_begun(plan, done)

    assert not pieces & {step.piece for step in begun.plan.dry}


_NIGHTS = (
    (0, ()),
    (90, ()),
    (20, ((1, S),)),
    (140, ((1, S), (1, E))),
    (30, ((2, S),)),
    (20, ((1, S), (1, E), (1, H))),
    (200, ((1, S), (1, E), (1, H), (2, S))),
)


@pytest.mark.parametrize("night", range(len(_NIGHTS)))
@pytest.mark.parametrize(
    "changed",
    [Changed(what=What.AS_IT_STANDS), Changed(what=What.POWER, minutes=45),
     Changed(what=What.DOWN, where="drum 2")],
    ids=["as it stands", "power", "drum 2 down"],
)  # fmt: skip
def test_the_plan_from_here_keeps_every_rule(
    plan: PlanResult, night: int, changed: Changed
) -> None:
    """Early, late, out of order: the new plan is verified, and begun loads keep their numbers."""
    minutes, done = _NIGHTS[night]
    job = _after(plan, minutes, *done)
    made = _changed(plan, job, changed)
    before = {load.number: set(load.components) for load in plan.worksheet.loads}
    kept = {load.number: set(load.components) for load in made.worksheet.loads}

    for number in {number for number, _ in done}:
        if changed.what is What.DOWN and plan.worksheet.loads[number - 1].washer == "drum 2":
            continue
        assert kept[number] == before[number]
    assert len(kept) == len(made.worksheet.loads)


def test_a_late_load_and_a_power_cut_say_for_how_long(plan: PlanResult) -> None:
    """Without minutes there is nothing to plan by; an unknown machine is named."""
    job = _after(plan, 20, (1, S))

    for what, where in ((What.LATE, "drum 1"), (What.POWER, ""), (What.DRYER_LATE, "cabinet")):
        with pytest.raises(BadInputError) as refused:
            _changed(plan, job, Changed(what=what, where=where))
        assert [one.place for one in refused.value.faults] == ["minutes"]
    for what in (What.LATE, What.DOWN, What.DRYER_DOWN, What.DRYER_LATE):
        with pytest.raises(BadInputError):
            _changed(plan, job, Changed(what=what, where="none", minutes=5))
