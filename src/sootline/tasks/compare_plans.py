"""How much sooner is everybody back with the plan than with what people do by hand?"""

from dataclasses import dataclass

from sootline.core.basis import Fault
from sootline.core.job.jobs import Job
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.verify import verify
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.rules import HandRule
from sootline.core.washplan.search import Stop, hand_plan, solve
from sootline.tasks.form_loads import form_loads
from sootline.tasks.plan_wash import UnsoundPlanError, build_all
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class ByHand:
    """What one hand rule leads to, and how many times the plan's sum that is."""

    rule: HandRule
    plan: Plan
    ratio: float


@dataclass(frozen=True, kw_only=True)
class Comparison:
    """The hand rules beside the plan, each verified; the bound stands in the plan."""

    instance: str
    by_hand: tuple[ByHand, ...]
    plan: Plan


def compare_plans(
    instance: Instance, *, stop: Stop, seed: int = 0, helps: Helps | None = None
) -> Comparison:
    """Plan a neutral instance, and as every hand rule would.

    Raises:
        BadInputError: the helpers' hours end before the work does.
        UnsoundPlanError: our own mistake; no plan is shown.
    """
    engine = helps.engine if helps else None
    ruled = [(rule, hand_plan(instance, rule, engine)) for rule in HandRule]
    plan = solve(instance, stop=stop, seed=seed, helps=helps)
    _hold([plan, *(one for _, one in ruled)], instance)
    return Comparison(
        instance=instance.name,
        by_hand=tuple(
            ByHand(rule=rule, plan=one, ratio=one.objective / max(1, plan.objective))
            for rule, one in ruled
        ),
        plan=plan,
    )


def _hold(plans: list[Plan], instance: Instance) -> None:
    """Show nothing that breaks a hard rule."""
    faults: tuple[Fault, ...] = tuple(fault for plan in plans for fault in verify(instance, plan))
    if faults:
        raise UnsoundPlanError(faults)


def instance_of(rules: Rules, job: Job, planning: PlanningTimes) -> Instance:
    """Return the likely neutral problem of a job.

    Raises:
        BadInputError: the job names an edition or kind that does not exist.
    """
    built = build_all(job, form_loads(rules, job), planning)
    return built[Pace.LIKELY].instance
