"""How far has a plan come in truth, and what of it stands, so that the rest can be planned anew?

A plan says when each step begins; what was reported says which have. The minute of the plan at
which both agree is now: a wash that runs late is moved as a whole, what turns keeps its own end,
and what has not begun is planned again. What is through its check leaves the plan.
"""

import datetime as dt
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace

from sootline.core.basis import ComponentId
from sootline.core.gear import CareStage
from sootline.core.job.jobs import Job
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import RACK, Drying, Load, Task
from sootline.tasks.plan_wash import Aim, PlanResult

UNDER_WAY = (CareStage.IN_WASHER, CareStage.WASHED, CareStage.DRYING, CareStage.TO_CHECK)
_HANGS = (CareStage.DRYING, CareStage.TO_CHECK)
_MINUTE = dt.timedelta(minutes=1)


@dataclass(frozen=True, kw_only=True)
class AsBegun:
    """A plan as far as it was carried out.

    Args:
        plan: with the steps that have begun as they truly stand, and the rest as planned.
        minute: now, on the plan's own count [min].
        aim: what the plan is for; its start is moved by as much as the wash runs late.
    """

    plan: Plan
    minute: int
    aim: Aim


@dataclass(frozen=True, kw_only=True)
class _Now:
    """What is known of this moment.

    Args:
        minute: on the plan's own count [min].
        late: how many minutes the wash runs late [min].
        unload_min: how long a drum takes to be emptied [min].
    """

    stages: Mapping[ComponentId, CareStage]
    minute: int
    late: int
    unload_min: int


def as_begun(result: PlanResult, job: Job) -> AsBegun:
    """Lay a plan beside what was reported since it was made."""
    stages = {one.id: one.state.stage for one in job.components}
    plan, instance = result.plan, result.instance
    way = {one for one in _washed(plan) if stages.get(one) in UNDER_WAY}
    gone = {one for one in _known(plan) if one not in way and not _waits(stages.get(one))}
    left = without(plan, instance, gone)
    clock = int((job.now - result.aim.start) / _MINUTE)
    hangs = {one for one in way if stages.get(one) in _HANGS}
    minute = _minute(left, way, clock, _out_of_drum(left, hangs, instance.unload_min))
    late = clock - minute
    waiting = {one for one in _known(left) if one not in way}
    now = _Now(stages=stages, minute=minute, late=late, unload_min=instance.unload_min)
    kept = _stand(_planned_anew(left, instance, waiting, minute), now)
    by = result.aim.by
    aim = replace(
        result.aim,
        start=result.aim.start + late * _MINUTE,
        by=None if by is None else max(minute + 1, by - late),
    )
    return AsBegun(plan=kept, minute=minute, aim=aim)


def without(plan: Plan, instance: Instance, gone: Collection[ComponentId]) -> Plan:
    """Leave pieces out of a plan, their minutes at the bench too."""
    if not gone:
        return plan
    need = {piece.id: piece for piece in instance.pieces}

    def rest(pieces: tuple[ComponentId, ...]) -> tuple[ComponentId, ...]:
        return tuple(one for one in pieces if one not in gone)

    def tasks(found: tuple[Task, ...], minutes: Mapping[ComponentId, int]) -> Iterator[Task]:
        for task in found:
            left = rest(task.pieces)
            if left:
                end = task.start + sum(minutes[one] for one in left)
                yield replace(task, pieces=left, end=end)

    return replace(
        plan,
        loads=tuple(
            replace(load, pieces=rest(load.pieces)) for load in plan.loads if rest(load.pieces)
        ),
        prep=tuple(tasks(plan.prep, {one: piece.prep for one, piece in need.items()})),
        hand=tuple(step for step in plan.hand if step.piece not in gone),
        dry=tuple(step for step in plan.dry if step.piece not in gone),
        inspect=tuple(tasks(plan.inspect, {one: piece.inspect for one, piece in need.items()})),
        spares=rest(plan.spares),
    )


def _waits(stage: CareStage | None) -> bool:
    return stage in (CareStage.TO_WASH, CareStage.WORN)


def _known(plan: Plan) -> set[ComponentId]:
    return {step.piece for step in plan.dry}


def _washed(plan: Plan) -> set[ComponentId]:
    in_drums = {piece for load in plan.loads for piece in load.pieces}
    return in_drums | {step.piece for step in plan.hand}


def _begins(plan: Plan) -> Iterator[tuple[int, ComponentId]]:
    """List when each piece is washed."""
    for load in plan.loads:
        for piece in load.pieces:
            yield load.load_start, piece
    for step in plan.hand:
        yield step.start, step.piece


def _out_of_drum(plan: Plan, hangs: set[ComponentId], unload_min: int) -> int:
    """Return the first minute at which what hangs can have been out of its drum."""
    outs = (load.prog_start + unload_min for load in plan.loads if hangs & set(load.pieces))
    return max(outs, default=-1)


def _minute(plan: Plan, way: Collection[ComponentId], clock: int, out: int) -> int:
    """Return the plan's minute at which what has begun has begun, and as little else as may be."""
    begun = max(out, max((start for start, piece in _begins(plan) if piece in way), default=-1))
    next_one = min(
        (start for start, piece in _begins(plan) if piece not in way and start > begun),
        default=None,
    )
    least = max(clock, begun + 1, 0)
    return least if next_one is None else max(begun + 1, min(least, next_one))


def _planned_anew(
    plan: Plan, instance: Instance, waiting: Collection[ComponentId], minute: int
) -> Plan:
    """Leave out what was to have begun by now and has not."""
    missed = {piece for start, piece in _begins(plan) if piece in waiting and start < minute}
    loads = tuple(
        replace(load, pieces=tuple(one for one in load.pieces if one not in missed))
        for load in plan.loads
    )
    bare = without(plan, instance, missed)
    prepared = tuple(task for task in plan.prep if task.start < minute)
    return replace(
        bare,
        loads=tuple(load for load in loads if load.pieces),
        # They are prepared all the same, and the minutes of it are spent.
        prep=(*prepared, *(task for task in bare.prep if task.start >= minute)),
    )


def _stand(plan: Plan, now: _Now) -> Plan:
    """Put what has begun where it stands: still turning, wet in the drum, hanging, or down."""
    minute, stages = now.minute, now.stages
    hangs = {one for one in _known(plan) if stages.get(one) in _HANGS}
    begun = [load for load in plan.loads if load.load_start < minute]

    def turning(load: Load) -> Load:
        after = [one.load_start for one in begun
                 if one.washer == load.washer and one.load_start > load.load_start]  # fmt: skip
        out = min(after, default=None)
        return _turning(load, now, out)

    loads = tuple(turning(load) if load in begun else load for load in plan.loads)
    emptied = {piece: load.unload_end for load in loads for piece in load.pieces}
    dry = [
        _hanging(step, minute, emptied.get(step.piece, 0)) if step.piece in hangs else step
        for step in plan.dry
        if step.piece in hangs or step.start >= minute
    ]
    return replace(
        plan,
        loads=loads,
        dry=tuple(_one_run(dry)),
        inspect=tuple(task for task in plan.inspect if task.start >= minute),
    )


def _turning(load: Load, now: _Now, followed: int | None) -> Load:
    """Say when a drum that was started is done and empty.

    Args:
        followed: when the next load of the same drum began; by then it was empty.
    """
    found = {now.stages.get(piece) for piece in load.pieces}
    minute, unload_min = now.minute, now.unload_min
    if CareStage.IN_WASHER in found and followed is None:
        end = max(minute + 1, load.prog_end - max(0, now.late))
        return replace(load, prog_end=end, unload_start=end, unload_end=end + unload_min)
    if found & set(_HANGS) or followed is not None:
        out = min(load.unload_end, minute - 1, minute if followed is None else followed)
        # A drum is not emptied before it was full, however far ahead of its plan the wash is.
        out = max(out, load.prog_start + unload_min)
        end = min(load.prog_end, out - unload_min)
        return replace(load, prog_end=end, unload_start=out - unload_min, unload_end=out)
    end = min(load.prog_end, minute)
    return replace(load, prog_end=end, unload_start=minute, unload_end=minute + unload_min)


def _hanging(step: Drying, minute: int, emptied: int) -> Drying:
    """Say since when and until when a piece that hangs does, ahead of its plan too."""
    start = max(emptied, minute - 1)
    if step.start < minute or start >= step.start:
        return step
    return replace(step, start=start, end=start + step.end - step.start)


def _one_run(steps: list[Drying]) -> Iterator[Drying]:
    """Let everything of one run in a cabinet end together."""
    ends: dict[tuple[str, int], int] = {}
    for step in steps:
        key = (step.where, step.start)
        ends[key] = max(ends.get(key, 0), step.end)
    for step in steps:
        yield step if step.where == RACK else replace(step, end=ends[step.where, step.start])
