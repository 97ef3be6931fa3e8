"""Judging what changed comes to the same as judging everything, whatever happened in between."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from sootline.core.basis import CallId, ComponentId, ContaminantId, MemberId
from sootline.core.exposure import Answer, Call, Presence, Remark
from sootline.core.gear import CareStage, Component
from sootline.core.job.jobs import Job
from sootline.tasks.decide import decide_job
from sootline.tasks.judge_gear import judge
from sootline.tasks.list_due import due_gear
from sootline.tasks.who_can_ride import who_can_ride
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES

NIGHT = demo_job()
PIECES = st.sampled_from([one.id for one in NIGHT.components])
MEMBERS = st.sampled_from([one.id for one in NIGHT.members])


def _changed(job: Job, piece: ComponentId, change: Callable[[Component], Component]) -> Job:
    changed = (change(one) if one.id == piece else one for one in job.components)
    return replace(job, components=tuple(changed))


def _staged(job: Job, piece: ComponentId, stage: CareStage) -> Job:
    return _changed(job, piece, lambda one: replace(one, state=replace(one.state, stage=stage)))


def _washed(job: Job, piece: ComponentId, count: int) -> Job:
    return _changed(job, piece, lambda one: replace(one, wash_count=count))


def _owned(job: Job, piece: ComponentId, owner: MemberId) -> Job:
    return _changed(job, piece, lambda one: replace(one, owner=owner))


def _without(job: Job, piece: ComponentId) -> Job:
    return replace(job, components=tuple(one for one in job.components if one.id != piece))


def _called(job: Job, member: MemberId, worn: tuple[ComponentId, ...] | None, *, skin: bool) -> Job:
    remarks = [
        Remark(component=one, contaminant=ContaminantId("blood"), reached_skin=Answer.YES)
        for one in (worn or () if skin else ())
    ]
    call = Call(
        id=CallId(f"c{len(job.calls)}"),
        at=job.now,
        people=(Presence(member=member, worn=worn),),
        remarks=tuple(remarks),
        casualties=() if worn else (member,),
    )
    return replace(job, calls=(*job.calls, call))


CHANGES = st.one_of(
    st.builds(lambda p, s: lambda job: _staged(job, p, s), PIECES, st.sampled_from(CareStage)),
    st.builds(lambda p, n: lambda job: _washed(job, p, n), PIECES, st.integers(0, 60)),
    st.builds(lambda p, m: lambda job: _owned(job, p, m), PIECES, MEMBERS),
    st.builds(lambda p: lambda job: _without(job, p), PIECES),
    st.builds(
        lambda m, worn, skin: lambda job: _called(job, m, worn, skin=skin),
        MEMBERS, st.none() | st.lists(PIECES, max_size=3, unique=True).map(tuple), st.booleans(),
    ),
    st.just(lambda job: replace(job, calls=job.calls[1:])),
    st.builds(
        lambda hours: lambda job: replace(job, now=job.now + dt.timedelta(hours=hours)),
        st.integers(1, 30),
    ),
    st.just(lambda job: replace(job, department=replace(job.department, policy=()))),
)  # fmt: skip


@given(st.lists(CHANGES, min_size=1, max_size=6))
@settings(max_examples=25, deadline=None)
def test_what_is_carried_over_equals_what_is_judged_anew(
    changes: list[Callable[[Job], Job]],
) -> None:
    """After any change, decisions, due list and riders are those of a first look."""
    job, judged = NIGHT, judge(RULES, NIGHT)
    for change in changes:
        job = change(job)
        judged = judge(RULES, job, judged)
        assert judged.decided == decide_job(RULES, job)
        assert judged.due_list == due_gear(RULES, job)
        assert who_can_ride(RULES, job, judged=judged) == who_can_ride(RULES, job)
