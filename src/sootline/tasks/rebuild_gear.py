"""What happens to each component after its check, and is each element whole again?"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import ComponentId, DateSpan
from sootline.core.gear import Component
from sootline.core.intervals import Due, Matter
from sootline.core.job.jobs import Job
from sootline.core.rebuild import (
    Build,
    BuildVerdict,
    Built,
    Next,
    Verdict,
    judge_after_wash,
    judge_build,
)
from sootline.tasks.list_due import due_gear
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class Rebuilt:
    """One element as recorded, and what is right or missing in it."""

    built: Built
    verdict: BuildVerdict
    ready: bool


@dataclass(frozen=True, kw_only=True)
class RebuildResult:
    """Every checked component and every rebuilt element."""

    pieces: tuple[Verdict, ...]
    elements: tuple[Rebuilt, ...]


def rebuild_gear(rules: Rules, job: Job) -> RebuildResult:
    """Judge every component that was checked or fitted, and every element that was rebuilt.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    listed = due_gear(rules, job)
    retirements = {
        item.component.id: item.due for item in listed.items if item.due.matter is Matter.RETIREMENT
    }
    checks = {check.component: check for check in job.checks}
    pieces = tuple(
        judge_after_wash(
            component,
            checks.get(component.id),
            first_day_out=_first_day(retirements.get(component.id)),
            today=listed.today,
        )
        for component in _concerned(job)
    )
    nexts = {piece.component: piece.next for piece in pieces}
    dues = tuple(retirements.values())
    elements = tuple(_rebuilt(built, job, dues, nexts) for built in job.builds)
    return RebuildResult(pieces=pieces, elements=elements)


def _concerned(job: Job) -> Iterator[Component]:
    named = {check.component for check in job.checks}
    named.update(part for built in job.builds for part in built.parts)
    return (component for component in job.components if component.id in named)


def _rebuilt(built: Built, job: Job, dues: tuple[Due, ...], nexts: dict[ComponentId, Next]) -> Rebuilt:
    parts = tuple(component for component in job.components if component.id in built.parts)
    build = Build(element=built.element, parts=parts, routed_by=built.routed_by)
    verdict = judge_build(build, {guide.id: guide for guide in job.guides}, dues)
    back = all(nexts[part.id] is Next.BACK for part in parts)
    return Rebuilt(built=built, verdict=verdict, ready=verdict.complete and back)


def _first_day(due: Due | None) -> DateSpan:
    return due.first_day if due else DateSpan()
