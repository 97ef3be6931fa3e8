"""What must every component of a job undergo, by which texts, and what do those leave open?"""

from collections.abc import Iterator
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sootline.core.basis import Finding
from sootline.core.care import Decision, Due, decide_care
from sootline.core.intervals import cleaning_reasons, list_due
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Rulebook, assemble
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class Decided:
    """Every decision of a job, and the texts it was made by.

    Args:
        decisions: one for each component, in the order of the job.
        findings: what was found while laying the department's policy over its edition.
    """

    rulebook: Rulebook
    decisions: tuple[Decision, ...]
    findings: tuple[Finding, ...]


def decide_job(rules: Rules, job: Job) -> Decided:
    """Decide on every component of a job, after its calls and by what is due anyway.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    )
    decisions = decide_care(
        components=job.components,
        guides=job.guides,
        calls=job.calls,
        rulebook=book.rulebook,
        contaminants=rules.contaminants(),
        policy=job.department.care,
        now=job.now,
        due=_due(job, book.rulebook),
    )
    return Decided(rulebook=book.rulebook, decisions=decisions, findings=book.findings)


def _due(job: Job, rulebook: Rulebook) -> Iterator[Due]:
    """Hand on the cleanings that are due whatever happened at a call."""
    today = job.now.astimezone(ZoneInfo(job.department.zone)).date()
    guides = {guide.id: guide for guide in job.guides}
    for component in job.components:
        guide = guides.get(component.guide) if component.guide else None
        dues = list_due(component, guide, rulebook, today)
        for reason in cleaning_reasons(dues):
            yield Due(component=component.id, finding=reason)
