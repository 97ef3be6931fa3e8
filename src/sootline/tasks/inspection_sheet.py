"""Which pieces are inspected in a row, at which points, and what do the typed rows come to?"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sootline.core.basis import ComponentId, MessageId
from sootline.core.gear import KINDS, Component, Custody, Life
from sootline.core.intervals import Matter
from sootline.core.job.jobs import Job
from sootline.core.rebuild.sheet_rows import SheetRow
from sootline.core.upkeep.inspections import InspectionKind, LinerTest, list_points, list_tests
from sootline.core.upkeep.inspections.judging import MATTER_OF
from sootline.core.upkeep.inspections.rows import TypedDay, read_inspections
from sootline.tasks.inspect_gear import bench_of
from sootline.tasks.list_due import civil_day, due_gear
from sootline.tasks.ports import Rules
from sootline.tasks.take_year import take_year

AHEAD_DAYS = 14
_HERE = (Custody.HOOK, Custody.MEMBER, Custody.SPARE_RACK, Custody.WASH_ROOM)
_OUT = (Life.RETIRED, Life.DISPOSED)


@dataclass(frozen=True, kw_only=True)
class InspectionGroup:
    """Pieces of one kind, the points looked at on each, and the tests the edition asks for."""

    kind: str
    points: tuple[MessageId, ...]
    tests: tuple[LinerTest, ...]
    components: tuple[Component, ...]


def list_inspections(
    rules: Rules, job: Job, kind: InspectionKind, *, ahead_days: int = AHEAD_DAYS
) -> tuple[InspectionGroup, ...]:
    """List what to inspect, kind by kind: what the day was planned for, or what is due.

    A routine inspection is of everything that is worn and here.

    Args:
        ahead_days: how far ahead what falls due is taken along [d].

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    wanted = _planned(job, kind) or frozenset(_due(rules, job, kind, ahead_days))
    book = bench_of(rules, job).rulebook
    groups: dict[str, list[Component]] = defaultdict(list)
    for component in job.components:
        if component.id in wanted and list_points(component.kind, kind):
            groups[component.kind].append(component)
    order = {one.id: place for place, one in enumerate(KINDS)}
    return tuple(
        InspectionGroup(
            kind=name,
            points=list_points(there[0].kind, kind),
            tests=tuple(test for test, _ in list_tests(there[0], kind, book).tests),
            components=tuple(there),
        )
        for name, there in sorted(groups.items(), key=lambda item: order[item[1][0].kind])
    )


def rows_of(groups: tuple[InspectionGroup, ...]) -> tuple[SheetRow, ...]:
    """Return the rows of the sheet as it is printed from these groups."""
    listed = [(component.id, group.points) for group in groups for component in group.components]
    return tuple(
        SheetRow(number=number, component=component, points=points)
        for number, (component, points) in enumerate(listed, 1)
    )


def type_in_inspections(
    rules: Rules, job: Job, text: str, kind: InspectionKind, *, by: str, at: dt.datetime
) -> TypedDay:
    """Read the typed rows of the sheet that was printed from this job.

    Raises:
        BadInputError: with every fault by line, or of the job.
        UnreadableValueError: nobody's name is given, or a moment without its offset.
    """
    rows = rows_of(list_inspections(rules, job, kind))
    on = at.astimezone(ZoneInfo(job.department.zone)).date()
    return read_inspections(text, rows, kind, by=by, at=at, on=on)


def with_typed(rules: Rules, job: Job, typed: TypedDay) -> Job:
    """Return the job with an inspection day in it, and what it does to gear.

    Raises:
        BadInputError: an inspection cannot be so as things stand.
    """
    job = take_year(rules, job, typed.day)
    for inspection in typed.inspections:
        job = take_year(rules, job, inspection)
    return job


def _planned(job: Job, kind: InspectionKind) -> frozenset[ComponentId]:
    today = civil_day(job)
    days = [day for day in job.upkeep.inspection_days if (day.kind, day.on) == (kind, today)]
    return frozenset(name for day in days for name in day.planned)


def _due(rules: Rules, job: Job, kind: InspectionKind, ahead_days: int) -> Iterator[ComponentId]:
    if kind is InspectionKind.ROUTINE:
        yield from (one.id for one in job.components if _is_worn(one))
        return
    matter: Matter = MATTER_OF[kind][0]
    by = civil_day(job) + dt.timedelta(days=ahead_days)
    for item in due_gear(rules, job).items:
        day = item.due.first_day.earliest or item.due.first_day.latest
        here = item.component.state.custody in _HERE
        if item.due.matter is matter and here and day is not None and day <= by:
            yield item.component.id


def _is_worn(component: Component) -> bool:
    state = component.state
    return state.custody in _HERE and state.life not in (*_OUT, Life.RESERVE)
