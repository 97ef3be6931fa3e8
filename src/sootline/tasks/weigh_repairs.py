"""What does each repair cost against the years that are left, who may do it, and who decides?"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, DateSpan
from sootline.core.gear import Component, resolve_months
from sootline.core.intervals import Matter
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Rulebook, assemble
from sootline.core.upkeep.repairs import Repair, Weighing, Worth, weigh_repair
from sootline.tasks.list_due import civil_day, due_gear
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class RepairResult:
    """One repair and what it comes to."""

    repair: Repair
    worth: Worth


def weigh_repairs(rules: Rules, job: Job) -> tuple[RepairResult, ...]:
    """Weigh every repair of a job.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    ).rulebook
    days = {
        item.component.id: item.due.first_day
        for item in due_gear(rules, job).items
        if item.due.matter is Matter.RETIREMENT
    }
    pieces = {component.id: component for component in job.components}
    return tuple(
        RepairResult(
            repair=repair,
            worth=weigh_repair(
                pieces[repair.component],
                repair,
                _weighing(pieces[repair.component], book, job, days),
            ),
        )
        for repair in job.upkeep.repairs
    )


def _weighing(
    component: Component, book: Rulebook, job: Job, days: dict[ComponentId, DateSpan]
) -> Weighing:
    guide = next((one for one in job.guides if one.id == component.guide), None)
    life = resolve_months("retire.months", component, guide, book).shortest
    return Weighing(
        rulebook=book,
        first_day_out=days.get(component.id, DateSpan()),
        life_months=life[0] if life else None,
        people=job.upkeep.qualified,
        today=civil_day(job),
    )
