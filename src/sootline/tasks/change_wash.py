"""What happened in the wash room that the plan did not know, and what is the plan from here?"""

import datetime as dt
from collections.abc import Collection
from dataclasses import dataclass, replace
from enum import StrEnum

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    MachineId,
    MemberId,
    MessageId,
    PlaceId,
)
from sootline.core.gear import CareStage, Component
from sootline.core.job.jobs import Job
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.laundry.sorting import sort_components
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.replan import (
    Changes,
    Down,
    DryerDown,
    LateLoad,
    LateRun,
    power_cut,
)
from sootline.core.washplan.search import Stop
from sootline.tasks.as_begun import UNDER_WAY, AsBegun, as_begun
from sootline.tasks.decide import decide_job
from sootline.tasks.form_loads import Loads
from sootline.tasks.plan_wash import PlanResult
from sootline.tasks.ports import Rules
from sootline.tasks.replan_wash import Running, replan_wash

_MINUTE = dt.timedelta(minutes=1)


class What(StrEnum):
    """What became different."""

    AS_IT_STANDS = "as-it-stands"
    LATE = "late"
    DOWN = "down"
    DRYER_DOWN = "dryer-down"
    DRYER_LATE = "dryer-late"
    POWER = "power"


@dataclass(frozen=True, kw_only=True)
class Changed:
    """One thing that became different.

    Args:
        where: the washer or cabinet; empty where it is about none.
        minutes: for how long [min]; None is not within this plan.
    """

    what: What
    where: str = ""
    minutes: int | None = None


@dataclass(frozen=True, kw_only=True)
class Moved:
    """How much later or sooner somebody's gear is likely back; negative is sooner [min]."""

    member: MemberId
    minutes: int


@dataclass(frozen=True, kw_only=True)
class ChangedPlan:
    """The plan from here, and whom it moves.

    Args:
        moved: the most delayed first; who stays within a minute is left out.
    """

    result: PlanResult
    moved: tuple[Moved, ...]


def change_wash(
    rules: Rules,
    job: Job,
    before: PlanResult,
    changed: Changed,
    *,
    planning: PlanningTimes,
    stop: Stop,
    helps: Helps | None = None,
) -> ChangedPlan:
    """Plan the rest again: what runs keeps running, new gear joins, what is done leaves.

    Raises:
        BadInputError: a machine that is not there, minutes left out, or a piece without a washer.
        UnsoundPlanError: our own mistake; the plan is not shown.
    """
    begun = as_begun(before, job)
    loads, planned = _loads(rules, job, before, begun)
    changes = _changes(changed, before, begun)
    plan = _families(begun, loads)
    result = replan_wash(
        rules, planned, Running(plan=plan, minute=begun.minute), changes,
        planning=planning, stop=stop, aim=begun.aim, helps=helps, loads=loads,
    ).result  # fmt: skip
    numbered = _numbered(result, before, job)
    return ChangedPlan(result=numbered, moved=tuple(_moved(before, numbered)))


def _loads(rules: Rules, job: Job, before: PlanResult, begun: AsBegun) -> tuple[Loads, Job]:
    """Decide today, with what is under way decided as when it was begun."""
    decided = decide_job(rules, job)
    known = {step.piece for step in begun.plan.dry} | {
        piece for load in begun.plan.loads for piece in load.pieces
    }
    way = {one.id for one in job.components if _is_under_way(one) and one.id in known}
    then = {one.component: one for one in before.loads.decided.decisions}
    decisions = tuple(
        then[one.component] if one.component in way and one.component in then else one
        for one in decided.decisions
    )
    components = tuple(_soiled(one) if one.id in way else one for one in job.components)
    planned = replace(job, components=components)
    decided = replace(decided, decisions=decisions)
    sorting = sort_components(
        decisions=decisions,
        components=components,
        room=job.wash_room,
        rulebook=decided.rulebook,
    )
    return Loads(decided=decided, sorting=sorting), planned


def _is_under_way(component: Component) -> bool:
    return component.state.stage in UNDER_WAY


def _soiled(component: Component) -> Component:
    """Return a piece as it was before its wash, as the plan knows it."""
    return replace(component, state=replace(component.state, stage=CareStage.TO_WASH))


def _families(begun: AsBegun, loads: Loads) -> Plan:
    """Call what runs by the sorts there are now."""
    sorts = {piece: sort.id for sort in loads.sorting.sorts for piece in sort.components}
    return replace(
        begun.plan,
        loads=tuple(
            replace(load, family=sorts.get(load.pieces[0], load.family))
            for load in begun.plan.loads
        ),
    )


def _changes(changed: Changed, before: PlanResult, begun: AsBegun) -> Changes:
    minute, where = begun.minute, changed.where
    until = None if changed.minutes is None else minute + changed.minutes
    match changed.what:
        case What.AS_IT_STANDS:
            return Changes()
        case What.LATE:
            return Changes(late=(LateLoad(washer=MachineId(where), minutes=_minutes(changed)),))
        case What.DOWN:
            return Changes(down=(Down(washer=MachineId(where), until=until),))
        case What.DRYER_DOWN:
            return Changes(dryers=(DryerDown(cabinet=PlaceId(where), until=until),))
        case What.DRYER_LATE:
            return Changes(late_runs=(LateRun(cabinet=PlaceId(where), minutes=_minutes(changed)),))
        case What.POWER:
            return power_cut(before.instance, begun.plan, minute=minute, minutes=_minutes(changed))


def _minutes(changed: Changed) -> int:
    if changed.minutes is None:
        raise BadInputError([Fault(place="minutes", message=MessageId("tasks.blank"))])
    return changed.minutes


def _numbered(result: PlanResult, before: PlanResult, job: Job) -> PlanResult:
    """Let a load that has begun keep the number on its card; new ones go on from the last."""
    stages = {one.id: one.state.stage for one in job.components}
    began = {
        frozenset(load.components): load.number
        for load in before.worksheet.loads
        if any(stages.get(one) in UNDER_WAY for one in load.components)
    }
    last = max((load.number for load in before.worksheet.loads), default=0)
    used = max(began.values(), default=0)
    fresh = iter(range(used + 1, used + last + len(result.worksheet.loads) + 2))
    loads = []
    for load in result.worksheet.loads:
        kept = _kept(began, load.components)
        loads.append(replace(load, number=next(fresh) if kept is None else kept))
    ordered = tuple(sorted(loads, key=lambda load: load.number))
    numbers = {
        old.number: new.number for old, new in zip(result.worksheet.loads, loads, strict=True)
    }
    why = tuple(replace(one, load=numbers[one.load], then=numbers[one.then]) for one in result.why)
    return replace(result, worksheet=replace(result.worksheet, loads=ordered), why=why)


def _kept(began: dict[frozenset[ComponentId], int], inside: Collection[ComponentId]) -> int | None:
    """Return the number of the begun load that holds these pieces, all or the last of them."""
    held = set(inside)
    return next((number for pieces, number in began.items() if held <= pieces), None)


def _moved(before: PlanResult, after: PlanResult) -> list[Moved]:
    shift = int((after.aim.start - before.aim.start) / _MINUTE)
    old = {one.member: one.at.likely for one in before.worksheet.back if one.at}
    found = [
        Moved(member=one.member, minutes=one.at.likely + shift - old[one.member])
        for one in after.worksheet.back
        if one.at and one.member in old
    ]
    return sorted((one for one in found if one.minutes), key=lambda one: -one.minutes)
