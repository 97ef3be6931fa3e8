"""What is due on the department's gear today, the most pressing first?"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from zoneinfo import ZoneInfo

from sootline.core.basis import DateSpan, Finding, SetId
from sootline.core.gear import Component, find_kind
from sootline.core.intervals import Due, Matter, Standing, list_due, set_first_day_out
from sootline.core.job.jobs import Job
from sootline.core.rulebook import assemble
from sootline.tasks.ports import Rules

_PRESSING = (
    Standing.OUT,
    Standing.OVERDUE,
    Standing.TODAY,
    Standing.SOON,
    Standing.NOT_KNOWN,
    Standing.LATER,
    Standing.WAITS,
)


@dataclass(frozen=True, kw_only=True)
class DueItem:
    """One matter of one component, with the component it belongs to."""

    component: Component
    due: Due


@dataclass(frozen=True, kw_only=True)
class DueList:
    """Everything due on a civil day of the department.

    Args:
        items: the most pressing first, then by day.
        sets: the first day out of each set, by its earliest governing part.
        findings: what a policy looser than the edition came to.
    """

    today: date
    items: tuple[DueItem, ...]
    sets: tuple[tuple[SetId, DateSpan], ...]
    findings: tuple[Finding, ...]


def civil_day(job: Job) -> date:
    """Return the department's civil day at the job's moment."""
    return job.now.astimezone(ZoneInfo(job.department.zone)).date()


def due_gear(rules: Rules, job: Job, *, today: date | None = None) -> DueList:
    """List what is due.

    Args:
        today: the civil day to list for; the job's own day when None.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    day = today or civil_day(job)
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    )
    guides = {guide.id: guide for guide in job.guides}
    listed = (
        (one, list_due(one, guides.get(one.guide) if one.guide else None, book.rulebook, day))
        for one in job.components
    )
    return in_order_of_pressing(listed, day, book.findings)


def in_order_of_pressing(
    listed: Iterable[tuple[Component, Iterable[Due]]], today: date, findings: tuple[Finding, ...]
) -> DueList:
    """Put what is due on components into one list, the most pressing first."""
    items = [DueItem(component=component, due=due) for component, dues in listed for due in dues]
    return DueList(
        today=today,
        items=tuple(sorted(items, key=_order)),
        sets=_sets(items),
        findings=findings,
    )


def _order(item: DueItem) -> tuple[int, date, str]:
    first = item.due.first_day.earliest or item.due.first_day.latest or date.max
    return _PRESSING.index(item.due.standing), first, item.component.id


def _sets(items: list[DueItem]) -> tuple[tuple[SetId, DateSpan], ...]:
    parts = defaultdict(list)
    for item in items:
        if item.component.set is not None and item.due.matter is Matter.RETIREMENT:
            parts[item.component.set].append((find_kind(item.component.kind), item.due))
    return tuple((name, set_first_day_out(dues)) for name, dues in sorted(parts.items()))
