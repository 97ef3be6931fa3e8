"""What was done against soil on each component, beside what is published of such steps?"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sootline.core.basis import ComponentId, DateSpan, Finding
from sootline.core.exposure import DeconMethod, Done, Wearing, find_wearings
from sootline.core.gear import Component
from sootline.core.gear.records import Deed
from sootline.core.job.jobs import Job
from sootline.core.machines import (
    Act,
    Method,
    ReductionEvent,
    ReductionRecord,
    Reductions,
    lay_out_reductions,
    mark_washes,
)
from sootline.core.rulebook import Rulebook, assemble
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class ComponentRecord:
    """The steps recorded on one component, and its wash count beside the published marker."""

    component: ComponentId
    record: ReductionRecord
    washes: tuple[Finding, ...]


def record_reductions(
    rules: Rules, job: Job, table: Reductions, *, component: ComponentId | None = None
) -> tuple[ComponentRecord, ...]:
    """Lay out what was recorded, component by component.

    Args:
        component: only this one; None is every component with a step or a wash count.

    Raises:
        BadInputError: the job names an edition that does not exist.
    """
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    ).rulebook
    wearings = defaultdict(list)
    for wearing in find_wearings(job.components, job.calls):
        wearings[wearing.component.id].append(wearing)
    found = []
    for one in job.components:
        if component is not None and one.id != component:
            continue
        zone = job.department.zone
        on_scene = (step for worn in wearings[one.id] for step in _on_scene(worn, zone))
        events = (*_cleanings(one), *on_scene)
        if component is None and not events and one.wash_count is None:
            continue
        record = lay_out_reductions(events, job.readings.laboratory, table)
        washes = washes_of(one, book)
        found.append(ComponentRecord(component=one.id, record=record, washes=washes))
    return tuple(found)


def washes_of(component: Component, rulebook: Rulebook) -> tuple[Finding, ...]:
    """Put a component's washes, as far as anybody counted or recorded them, beside the marker."""
    recorded = sum(1 for _ in _cleanings(component))
    return mark_washes(component.id, component.wash_count, rulebook, recorded=recorded)


def _cleanings(component: Component) -> Iterator[ReductionEvent]:
    for record in component.records:
        if record.deed is Deed.ADVANCED_CLEANING:
            yield ReductionEvent(
                act=Act.LAUNDERING, method=Method.MACHINE_WASH, on=record.on, who=record.by or ""
            )


def _on_scene(wearing: Wearing, zone: str) -> Iterator[ReductionEvent]:
    """List what was done on scene to whoever wore it; an unknown method is no step."""
    day = DateSpan.day(wearing.call.at.astimezone(ZoneInfo(zone)).date())
    for person in wearing.people:
        known = person.decon.method is not DeconMethod.UNKNOWN
        if known and person.decon.done in (Done.DONE, Done.PART):
            method = Method(person.decon.method.value)
            yield ReductionEvent(act=Act.ON_SCENE, method=method, on=day, who=person.member)
