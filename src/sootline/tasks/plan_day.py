"""What to take today, what is overdue and why, who is measured again, what to order and to do?"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

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
from sootline.core.rulebook import assemble
from sootline.core.upkeep.people import Order, Refit, list_orders, list_refits
from sootline.core.upkeep.planning import DayPlan, OverdueSheet, plan_day, sheet_overdue
from sootline.core.upkeep.stores import ChoreDue, hold_readings, judge_supplies, list_chores
from sootline.tasks.list_due import due_gear
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


@dataclass(frozen=True, kw_only=True)
class Today:
    """Everything an officer looks at in the morning.

    Args:
        refits: who is due to be measured, today or before.
        stores: supplies to order and to take off the shelf, temperatures beyond a limit.
        calendar: every known due day, in order.
    """

    today: date
    plan: DayPlan
    overdue: OverdueSheet
    refits: tuple[Refit, ...]
    orders: tuple[Order, ...]
    stores: tuple[Finding, ...]
    chores: tuple[ChoreDue, ...]
    calendar: tuple[CalendarDay, ...]


def plan_today(rules: Rules, job: Job, *, ahead_days: int = AHEAD_DAYS) -> Today:
    """Plan a day from a job.

    Args:
        ahead_days: how far ahead work may be taken before it is due [d].

    Raises:
        BadInputError: the job names an edition, a kind, a member or a piece that does not exist.
    """
    listed = due_gear(rules, job)
    dues = tuple(item.due for item in listed.items)
    pieces = {component.id: component for component in job.components}
    situation = ride_situation(rules, job, dues)
    facts, today = job.upkeep, listed.today
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    ).rulebook
    members = tuple(member.id for member in job.members)
    refits = list_refits(members, facts.measured, facts.changed, book, today)
    by = today + timedelta(days=ahead_days)
    return Today(
        today=today,
        plan=plan_day(dues, pieces, situation, facts.work_today, by=by),
        overdue=sheet_overdue(dues, pieces, situation, today),
        refits=tuple(one for one in refits if one.standing is not Standing.LATER),
        orders=list_orders(
            tuple(_to_buy(situation)),
            dues,
            pieces,
            facts.lead_times,
            today=today,
            ahead=today + timedelta(days=_ORDER_AHEAD_DAYS),
        ),
        stores=(
            *judge_supplies(facts.supplies, today),
            *hold_readings(facts.machine_log, book),
        ),
        chores=list_chores(facts.routines, facts.machine_log, today),
        calendar=tuple(sorted(_calendar(job, dues), key=lambda one: (one.day, one.id))),
    )


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
