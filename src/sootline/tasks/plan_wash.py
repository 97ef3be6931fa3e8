"""In which loads is the gear of a job washed, when, and when is each member back?"""

import datetime as dt
from dataclasses import dataclass, replace

from sootline.core.basis import Fault, Finding, SootlineError
from sootline.core.job.jobs import Job, Request
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.verify import verify
from sootline.core.washplan.bottleneck import Pressure, list_pressures
from sootline.core.washplan.build import Built, build_instance
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.engine import Engine
from sootline.core.washplan.facts import Member
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.question import Question
from sootline.core.washplan.search import FEWER_LOADS, Stop, solve
from sootline.core.washplan.spread import spread
from sootline.core.washplan.why import OrderReason, explain_order
from sootline.core.washplan.worksheet import Worksheet, lay_out
from sootline.tasks.estimate_drying import room_with_estimates
from sootline.tasks.form_loads import Loads, form_loads
from sootline.tasks.ports import Rules


class UnsoundPlanError(SootlineError):
    """A plan broke a hard rule; it is shown to nobody.

    Args:
        faults: what the verifier found.
    """

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        self.faults = faults
        super().__init__("; ".join(f"{fault.place}: {fault.message}" for fault in faults))


@dataclass(frozen=True, kw_only=True)
class Aim:
    """What a plan begins with and is for.

    Args:
        start: the plan's minute 0.
        by: the deadline of the goal deadline, in minutes from the start [min].
    """

    start: dt.datetime
    goal: Goal = Goal.SOONEST
    by: int | None = None


@dataclass(frozen=True, kw_only=True)
class PlanResult:
    """A verified plan, as the people in the wash room read it.

    Args:
        loads: the decisions and sorts it rests on, with what is kept out and refused.
        instance: the likely neutral problem.
        plan: the neutral plan, with bound and gap.
        pressures: the bottleneck first.
        why: why each load comes before the next one of its washer.
        rests_on: what the times rest on where nobody measured them here.
        refused: components nobody has a time for.
    """

    aim: Aim
    loads: Loads
    instance: Instance
    plan: Plan
    worksheet: Worksheet
    pressures: tuple[Pressure, ...]
    why: tuple[OrderReason, ...]
    rests_on: tuple[Finding, ...]
    refused: tuple[Finding, ...]


def plan_wash(
    rules: Rules,
    job: Job,
    *,
    planning: PlanningTimes,
    stop: Stop,
    seed: int = 0,
    aim: Aim | None = None,
    helps: Helps | None = None,
    known: Plan | None = None,
) -> PlanResult:
    """Plan the wash of a job.

    Args:
        planning: intervals for what the department has not measured.
        stop: asked again and again; True ends the search with the best so far.
        aim: instead of the job's own request.
        helps: what makes the search better on this machine.
        known: an earlier plan of the same job; the search begins from it too.

    Raises:
        BadInputError: the job names an edition or kind that does not exist, the helpers' hours
            end before the work does, or a deadline goal without its moment.
        UnsoundPlanError: our own mistake; the plan is not shown.
    """
    aim = aim or aim_of(job)
    loads = form_loads(rules, job)
    built = build_all(job, loads, planning)
    likely = built[Pace.LIKELY].instance
    helps = few_loads(helps)
    plan = solve(likely, goal=aim.goal, by=aim.by, stop=stop, seed=seed, known=known, helps=helps)
    return finish(job, loads, built, plan, aim, engine=helps.engine)


def few_loads(helps: Helps | None) -> Helps:
    """Let an officer's plan leave out a load that hardly anybody would be back sooner for."""
    return replace(helps or Helps(), tie=FEWER_LOADS)


def aim_of(job: Job) -> Aim:
    """Return what the job asks for; without a request, everybody back soonest from now."""
    request = job.request or Request(start=job.now)
    by = None if request.by is None else int((request.by - request.start) / dt.timedelta(minutes=1))
    return Aim(start=request.start, goal=Goal(request.goal.value), by=by)


def build_all(job: Job, loads: Loads, planning: PlanningTimes) -> dict[Pace, Built]:
    """Build the neutral problem at the earliest, likely and late end of every interval.

    Raises:
        UnreadableValueError: readings of the room that no air has.
    """
    room = job.wash_room
    if planning.assumptions is not None:
        room = room_with_estimates(job, loads, planning.assumptions)
    question = Question(
        name=job.title or job.department.name,
        sorting=loads.sorting,
        decisions=loads.decided.decisions,
        components=job.components,
        members=tuple(
            Member(id=member.id, crew=member.crew, priority=member.priority)
            for member in job.members
        ),
        room=room,
        planning=planning,
    )
    return {pace: build_instance(question, pace) for pace in Pace}


def finish(
    job: Job,
    loads: Loads,
    built: dict[Pace, Built],
    plan: Plan,
    aim: Aim,
    *,
    engine: Engine | None = None,
) -> PlanResult:
    """Verify a plan of the likely instance and lay it out with its intervals.

    Raises:
        UnsoundPlanError: the verifier found a broken rule.
    """
    likely = built[Pace.LIKELY]
    if faults := verify(likely.instance, plan):
        raise UnsoundPlanError(faults)
    early, late = built[Pace.EARLIEST].instance, built[Pace.LATE].instance
    spans = spread(early, likely.instance, late, plan)
    return PlanResult(
        aim=aim,
        loads=loads,
        instance=likely.instance,
        plan=plan,
        worksheet=lay_out(likely, plan, spans, loads.sorting, job.components),
        pressures=list_pressures(likely.instance, plan),
        why=explain_order(likely.instance, plan, goal=aim.goal, by=aim.by or 0, engine=engine),
        rests_on=likely.rests_on,
        refused=likely.refused,
    )
