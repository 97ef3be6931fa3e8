"""What happens to each component after its check, and is each element whole again?"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from sootline.core.basis import BadInputError, CallId, ComponentId, DateSpan, Fault, MessageId
from sootline.core.exposure import find_wearings
from sootline.core.gear import Component
from sootline.core.intervals import Due, Matter
from sootline.core.job.jobs import Job
from sootline.core.rebuild import (
    AfterWashCheck,
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

_WornSince = dict[ComponentId, tuple[CallId, ...]]


@dataclass(frozen=True, kw_only=True)
class Rebuilt:
    """One element as recorded, and what is right or missing in it."""

    built: Built
    verdict: BuildVerdict
    ready: bool


@dataclass(frozen=True, kw_only=True)
class RebuildResult:
    """Every checked component and every rebuilt element, on a civil day of the department."""

    today: date
    pieces: tuple[Verdict, ...]
    elements: tuple[Rebuilt, ...]


def rebuild_gear(rules: Rules, job: Job) -> RebuildResult:
    """Judge every component that was checked or fitted, and every element that was rebuilt.

    Where several people checked a component the latest check counts.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist, or has one part in
            two places.
    """
    _refuse_twice(job)
    concerned = tuple(_concerned(job))
    listed = due_gear(rules, replace(job, components=concerned))
    retirements = {
        item.component.id: item.due for item in listed.items if item.due.matter is Matter.RETIREMENT
    }
    in_order = sorted(job.checks, key=lambda check: check.at)
    checks = {check.component: check for check in in_order}
    worn_since = _worn_since(job, checks)
    pieces = tuple(
        judge_after_wash(
            component,
            checks.get(component.id),
            first_day_out=_first_day(retirements.get(component.id)),
            today=listed.today,
            worn_since=worn_since.get(component.id, ()),
        )
        for component in concerned
    )
    nexts = {piece.component: piece.next for piece in pieces}
    dues = tuple(retirements.values())
    elements = tuple(_rebuilt(built, job, dues, nexts) for built in job.builds)
    return RebuildResult(today=listed.today, pieces=pieces, elements=elements)


def _refuse_twice(job: Job) -> None:
    """Refuse a part that is said to be fitted in two places; a named person saw it in one."""
    first: dict[ComponentId, int] = {}
    faults = []
    for index, built in enumerate(job.builds):
        for part in built.parts:
            if part in first:
                values = (("part", part), ("first", f"builds[{first[part]}]"))
                message = MessageId("rebuild.part_twice")
                place = f"builds[{index}].parts"
                faults.append(Fault(place=place, message=message, values=values))
            first.setdefault(part, index)
    if faults:
        raise BadInputError(faults)


def _concerned(job: Job) -> Iterator[Component]:
    named = {check.component for check in job.checks}
    named.update(part for built in job.builds for part in built.parts)
    return (component for component in job.components if component.id in named)


def _worn_since(job: Job, checks: Mapping[ComponentId, AfterWashCheck]) -> _WornSince:
    """List, by component, the calls after its check at which it was worn."""
    found: dict[ComponentId, tuple[CallId, ...]] = {}
    for one in find_wearings(job.components, job.calls):
        check = checks.get(one.component.id)
        if check is not None and one.call.at > check.at:
            found[check.component] = (*found.get(check.component, ()), one.call.id)
    return found


def _rebuilt(
    built: Built, job: Job, dues: tuple[Due, ...], nexts: dict[ComponentId, Next]
) -> Rebuilt:
    parts = tuple(component for component in job.components if component.id in built.parts)
    build = Build(
        element=built.element,
        parts=parts,
        routed_by=built.routed_by,
        routed_right=built.routed_right,
    )
    verdict = judge_build(build, {guide.id: guide for guide in job.guides}, dues)
    back = all(nexts[part.id] is Next.BACK for part in parts)
    return Rebuilt(built=built, verdict=verdict, ready=verdict.complete and back)


def _first_day(due: Due | None) -> DateSpan:
    return due.first_day if due else DateSpan()
