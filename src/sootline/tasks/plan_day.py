"""What to take today, what is overdue and why, who is measured again, what to order and to do?"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from sootline.core.basis import ComponentId, Finding, MemberId
from sootline.core.intervals import Due, Matter, Standing
from sootline.core.job.jobs import Job
from sootline.core.riding import (
    Purchase,
    Rider,
    Situation,
    Slot,
    check_fit,
    failures,
    list_purchases,
    who_rides,
)
from sootline.core.rulebook import Rulebook, assemble
from sootline.core.upkeep.people import Order, Refit, list_orders, list_refits
from sootline.core.upkeep.planning import DayPlan, OverdueSheet, plan_day, sheet_overdue
from sootline.core.upkeep.stores import ChoreDue, hold_readings, judge_supplies, list_chores
from sootline.tasks.judge_gear import Judged
from sootline.tasks.list_due import civil_day, due_gear
from sootline.tasks.ports import Rules
from sootline.tasks.who_can_ride import ride_situation

AHEAD_DAYS = 14
_ORDER_AHEAD_DAYS = 366
_QUIET = (Standing.NOT_KNOWN, Standing.WAITS)


@dataclass(frozen=True, kw_only=True)
class CalendarDay:
    """One entry of the calendar feed: what is due on one component from a day on.

    Args:
        id: the same for the same matter of the same component, whatever its day.
        day: the first day at its earliest reading.
    """

    id: str
    day: date
    component: ComponentId
    kind: str
    owner: str
    matter: Matter


class Today:
    """Everything an officer looks at in the morning; each answer is made when it is asked for.

    Args:
        judged: what was judged of the job already, where somebody did.
        ahead_days: how far ahead work may be taken before it is due [d].

    Raises:
        BadInputError: the job names an edition, a kind, a member or a piece that does not exist.
    """

    def __init__(
        self,
        rules: Rules,
        job: Job,
        *,
        judged: Judged | None = None,
        ahead_days: int = AHEAD_DAYS,
    ) -> None:
        self._rules, self._job = rules, job
        self._judged, self._ahead = judged, timedelta(days=ahead_days)
        self._pieces = {component.id: component for component in job.components}
        self.today: date = civil_day(job)

    @cached_property
    def plan(self) -> DayPlan:
        """What to take, and who wears what meanwhile."""
        by, work = self.today + self._ahead, self._job.upkeep.work_today
        return plan_day(self._dues, self._pieces, self._situation, work, by=by)

    @cached_property
    def overdue(self) -> OverdueSheet:
        """What is overdue, by cause."""
        return sheet_overdue(self._dues, self._pieces, self._situation, self.today)

    @cached_property
    def refits(self) -> tuple[Refit, ...]:
        """Who is due to be measured, today or before."""
        members = tuple(member.id for member in self._job.members)
        facts = self._job.upkeep
        refits = list_refits(members, facts.measured, facts.changed, self._book, self.today)
        return tuple(one for one in refits if one.standing is not Standing.LATER)

    @cached_property
    def orders(self) -> tuple[Order, ...]:
        """What to order in which size, by when."""
        return list_orders(
            tuple(_to_buy(self._situation)),
            self._dues,
            self._pieces,
            self._job.upkeep.lead_times,
            today=self.today,
            ahead=self.today + timedelta(days=_ORDER_AHEAD_DAYS),
        )

    @cached_property
    def stores(self) -> tuple[Finding, ...]:
        """Supplies to order and to take off the shelf, temperatures beyond a limit."""
        facts = self._job.upkeep
        return (
            *judge_supplies(facts.supplies, self.today),
            *hold_readings(facts.machine_log, self._book),
        )

    @cached_property
    def chores(self) -> tuple[ChoreDue, ...]:
        """What is due on the machines."""
        return list_chores(self._job.upkeep.routines, self._job.upkeep.machine_log, self.today)

    @cached_property
    def calendar(self) -> tuple[CalendarDay, ...]:
        """Every known due day, in order."""
        days = _calendar(self._job, self._dues)
        return tuple(sorted(days, key=lambda one: (one.day, one.id)))

    @cached_property
    def _dues(self) -> tuple[Due, ...]:
        listed = self._judged.due_list if self._judged else due_gear(self._rules, self._job)
        return tuple(item.due for item in listed.items)

    @cached_property
    def _situation(self) -> Situation:
        return ride_situation(self._rules, self._job, self._dues, judged=self._judged)

    @cached_property
    def _book(self) -> Rulebook:
        return assemble(
            adopted=self._rules.edition(self._job.department.edition),
            policy=self._job.department.policy,
            practice=self._rules.practice(),
        ).rulebook


def plan_today(
    rules: Rules, job: Job, *, judged: Judged | None = None, ahead_days: int = AHEAD_DAYS
) -> Today:
    """Plan a day from a job.

    Args:
        judged: what was judged of the job already, where somebody did.
        ahead_days: how far ahead work may be taken before it is due [d].

    Raises:
        BadInputError: the job names an edition, a kind, a member or a piece that does not exist.
    """
    return Today(rules, job, judged=judged, ahead_days=ahead_days)


def _to_buy(situation: Situation) -> Iterator[Purchase]:
    """List for each member who sits out the pieces nobody has for that member.

    A piece of the member's own that fits and is only away or wet is waited for, not bought.
    """
    seen: set[MemberId] = set()
    riders = {rider.id: rider for rider in situation.riders}
    for purchase in list_purchases(situation, who_rides(situation)):
        for member in purchase.covers:
            if member in seen:
                continue
            seen.add(member)
            rider = riders[member]
            pieces = tuple(one for one in purchase.pieces if not _has(situation, rider, one.slot))
            yield Purchase(pieces=pieces, covers=(member,))


def _has(situation: Situation, rider: Rider, slot: Slot) -> bool:
    return any(
        unit.holder == rider.id
        and unit.slot is slot
        and not failures(check_fit(situation, rider, unit))
        for unit in situation.units
    )


def _calendar(job: Job, dues: tuple[Due, ...]) -> Iterator[CalendarDay]:
    pieces = {component.id: component for component in job.components}
    for due in dues:
        day = due.first_day.earliest or due.first_day.latest
        if day is not None and due.standing not in _QUIET:
            component = pieces[due.component]
            yield CalendarDay(
                id=f"{due.component}.{due.matter}",
                day=day,
                component=due.component,
                kind=component.kind,
                owner=component.owner or "",
                matter=due.matter,
            )
