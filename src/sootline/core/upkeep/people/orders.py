"""What must be ordered, in which size, for whom, and by when?

For everybody who sits out now: what riding finds lacking. For everybody whose gear comes to its
first day out: the same size again. An order that takes months is due months before.
"""

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import Bearing, ComponentId, DateSpan, Finding, MemberId, finding
from sootline.core.gear import Component
from sootline.core.intervals import Due, Matter
from sootline.core.riding import Purchase
from sootline.core.upkeep.people.facts import LeadTime
from sootline.core.upkeep.qualified import PRACTICE

_WEEK = dt.timedelta(weeks=1)


@dataclass(frozen=True, kw_only=True)
class Order:
    """One thing to order in one size.

    Args:
        what: a place of the outfit or a kind.
        members: for whom; empty is for the rack.
        needed: from when; today for whoever sits out.
        order_by: the last day to order it, by the longest time it takes; None is not known.
        comes: between which days it comes if ordered today; unknown where nobody said.
    """

    what: str
    size: tuple[tuple[str, str], ...]
    count: int
    members: tuple[MemberId, ...]
    needed: dt.date
    order_by: dt.date | None
    comes: DateSpan
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class _Need:
    what: str
    size: tuple[tuple[str, str], ...]
    member: MemberId | None
    needed: dt.date


def list_orders(
    purchases: Iterable[Purchase],
    dues: Iterable[Due],
    components: Mapping[ComponentId, Component],
    lead_times: Sequence[LeadTime],
    *,
    today: dt.date,
    ahead: dt.date,
) -> tuple[Order, ...]:
    """List what to order, by the day it must be ordered; what is already late comes first.

    Args:
        purchases: what riding finds lacking for those who sit out.
        ahead: the last first day out to look ahead to.
    """
    needs = [
        _Need(what=piece.slot.value, size=piece.size, member=member, needed=today)
        for purchase in purchases
        for member in purchase.covers
        for piece in purchase.pieces
    ]
    for due in dues:
        day = due.first_day.earliest or due.first_day.latest
        if due.matter is Matter.RETIREMENT and day is not None and day <= ahead:
            one = components[due.component]
            needs.append(_Need(what=one.kind, size=one.size, member=one.owner, needed=day))
    times = {one.what: one for one in lead_times}
    grouped: dict[tuple[str, tuple[tuple[str, str], ...], dt.date], list[_Need]] = {}
    for need in dict.fromkeys(needs):
        grouped.setdefault((need.what, need.size, need.needed), []).append(need)
    orders = (_order(tuple(group), times.get(key[0]), today) for key, group in grouped.items())
    return tuple(sorted(orders, key=lambda one: (one.order_by or one.needed, one.what, one.size)))


def _order(needs: tuple[_Need, ...], takes: LeadTime | None, today: dt.date) -> Order:
    first = needs[0]
    if takes is None:
        order_by, comes = None, DateSpan()
        said = finding(Bearing.ASKS, "fitting.no_lead_time", PRACTICE, what=first.what)
    else:
        order_by = first.needed - takes.longest * _WEEK
        comes = DateSpan(
            earliest=today + takes.shortest * _WEEK, latest=today + takes.longest * _WEEK
        )
        late = order_by < today
        said = finding(
            Bearing.WARNS if late else Bearing.NOTES,
            "fitting.order_late" if late else "fitting.order_by",
            PRACTICE,
            what=first.what,
            order_by=order_by,
            comes=comes,
            source=takes.source or "?",
        )
    return Order(
        what=first.what,
        size=first.size,
        count=len(needs),
        members=tuple(one.member for one in needs if one.member is not None),
        needed=first.needed,
        order_by=order_by,
        comes=comes,
        reasons=(said,),
    )
