"""What now, when something comes in between: which steps stay, and when is each member back?"""

from collections.abc import Collection
from dataclasses import dataclass, replace

from sootline.core.basis import Bearing, ComponentId, Finding, finding
from sootline.core.job.jobs import Job
from sootline.core.laundry.goods import entered
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.washplan.build import Built
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.replan import Changes, carry_on
from sootline.core.washplan.search import Stop, solve
from sootline.tasks.form_loads import Loads, form_loads
from sootline.tasks.plan_wash import Aim, PlanResult, aim_of, build_all, few_loads, finish
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class Running:
    """A plan that is being carried out.

    Args:
        plan: the neutral plan as it was.
        minute: now, on the plan's own count [min].
    """

    plan: Plan
    minute: int


@dataclass(frozen=True, kw_only=True)
class Replan:
    """The new plan, and what left or joined the running one.

    Args:
        withdrawn: pieces of the old plan that the job no longer lets into the wash.
        joined: components the old plan did not know.
    """

    result: PlanResult
    withdrawn: tuple[Finding, ...]
    joined: tuple[ComponentId, ...]


def replan_wash(
    rules: Rules,
    job: Job,
    running: Running,
    changes: Changes,
    *,
    planning: PlanningTimes,
    stop: Stop,
    seed: int = 0,
    aim: Aim | None = None,
    helps: Helps | None = None,
    loads: Loads | None = None,
) -> Replan:
    """Plan the rest of a running plan again from the job as it is now.

    What has begun stays as it is. Gear of a second call joins because the job has it; gear that
    is held meanwhile leaves what has not begun with it.

    Args:
        job: as it is now, with the same request as when the plan was made.
        changes: machines down or late, and helpers.
        helps: what makes the search better on this machine.
        loads: what is washed, where more than the job's decisions say it.

    Raises:
        BadInputError: as `plan_wash`; or a change names what is not there, or leaves a piece
            without a washer.
        UnsoundPlanError: our own mistake; the plan is not shown.
    """
    aim = aim or aim_of(job)
    loads = loads or form_loads(rules, job)
    fresh = build_all(job, loads, planning)
    pieces = {piece.id for piece in fresh[Pace.LIKELY].instance.pieces}
    kept = _only(running.plan, pieces)
    now = {pace: _from_now(one, kept, running.minute, changes) for pace, one in fresh.items()}
    likely = now[Pace.LIKELY].instance
    helps = few_loads(helps)
    plan = solve(likely, goal=aim.goal, by=aim.by, stop=stop, seed=seed, known=kept, helps=helps)
    known = _named(running.plan)
    carried = fresh[Pace.LIKELY].carried
    return Replan(
        result=finish(job, loads, now, plan, aim, engine=helps.engine),
        withdrawn=tuple(_withdrawn(piece) for piece in sorted(known - pieces)),
        joined=tuple(name for one in carried if one.piece not in known for name in one.components),
    )


def _from_now(built: Built, plan: Plan, minute: int, changes: Changes) -> Built:
    now = carry_on(built.instance, plan, minute=minute, changes=changes)
    return replace(built, instance=now)


def _named(plan: Plan) -> set[ComponentId]:
    """List every piece a plan knows; each has a drying entry."""
    return {step.piece for step in plan.dry}


def _withdrawn(piece: ComponentId) -> Finding:
    ground = entered("wash.running_plan")
    return finding(Bearing.WARNS, "plan.replan.withdrawn", ground, component=piece)


def _only(plan: Plan, pieces: Collection[ComponentId]) -> Plan:
    """Leave out of a plan what the job no longer lets into the wash.

    A load that holds nothing else any more is left out too: the drum can be emptied and used.
    """
    if _named(plan) <= set(pieces):
        return plan

    def rest(named: tuple[ComponentId, ...]) -> tuple[ComponentId, ...]:
        return tuple(piece for piece in named if piece in pieces)

    return replace(
        plan,
        loads=tuple(
            replace(load, pieces=rest(load.pieces)) for load in plan.loads if rest(load.pieces)
        ),
        prep=tuple(replace(one, pieces=rest(one.pieces)) for one in plan.prep if rest(one.pieces)),
        hand=tuple(step for step in plan.hand if step.piece in pieces),
        dry=tuple(step for step in plan.dry if step.piece in pieces),
        inspect=tuple(
            replace(one, pieces=rest(one.pieces)) for one in plan.inspect if rest(one.pieces)
        ),
        spares=rest(plan.spares),
    )
