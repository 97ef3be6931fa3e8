"""What is overdue, and by which cause? One table with written definitions for the chief.

Each overdue matter of each component counts once, under the first cause that holds in the order
of the table: away at a contractor, waiting for a decision, not seen or lent, under way, no spare
(taking it would leave a seat empty now), no time (it could have been taken).
"""

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MemberId, MessageId
from sootline.core.gear import Component
from sootline.core.intervals import Due, Matter, Standing
from sootline.core.riding import Riding, Situation, who_rides
from sootline.core.upkeep.planning.bundles import Bundle, bundle_dues, seats_kept, without
from sootline.core.upkeep.planning.facts import Cause
from sootline.core.upkeep.planning.seats import Seats, is_worn


@dataclass(frozen=True, kw_only=True)
class OverdueRow:
    """One overdue matter of one component."""

    component: ComponentId
    holder: MemberId | None
    matter: Matter
    days_over: int
    cause: Cause


@dataclass(frozen=True, kw_only=True)
class CauseRow:
    """One cause with its written definition.

    Args:
        matters: how many overdue matters have it.
        components: on how many components.
        longest: the most days over among them [d].
    """

    cause: Cause
    definition: MessageId
    matters: int
    components: int
    longest: int


@dataclass(frozen=True, kw_only=True)
class OverdueSheet:
    """The table of a day: causes first, then each overdue matter."""

    on: dt.date
    causes: tuple[CauseRow, ...]
    rows: tuple[OverdueRow, ...]


def sheet_overdue(
    dues: Iterable[Due],
    components: Mapping[ComponentId, Component],
    situation: Situation,
    today: dt.date,
) -> OverdueSheet:
    """Write the table of what is overdue by cause."""
    late = tuple(due for due in dues if due.standing is Standing.OVERDUE)
    before, seats = who_rides(situation), Seats(situation)
    rows = []
    for bundle in bundle_dues(late, components, situation, by=today):
        cause = bundle.cause
        if cause is None:
            cause = Cause.NO_TIME if _kept(bundle, situation, before, seats) else Cause.NO_SPARE
        rows += [
            OverdueRow(
                component=due.component,
                holder=bundle.holder,
                matter=due.matter,
                days_over=due.days_over or 0,
                cause=cause,
            )
            for due in bundle.dues
        ]
    return OverdueSheet(on=today, causes=tuple(_count(c, rows) for c in Cause), rows=tuple(rows))


def _kept(bundle: Bundle, situation: Situation, before: Riding, seats: Seats) -> bool:
    """Whether everybody who rides now still would without a bundle."""
    if not is_worn(before, bundle):
        return True
    if not seats.may_keep(before, bundle, ()):
        return False
    return seats_kept(before, without(situation, (bundle,))) is not None


def _count(cause: Cause, rows: list[OverdueRow]) -> CauseRow:
    mine = [row for row in rows if row.cause is cause]
    return CauseRow(
        cause=cause,
        definition=MessageId(f"upkeep.definition.{cause}"),
        matters=len(mine),
        components=len({row.component for row in mine}),
        longest=max((row.days_over for row in mine), default=0),
    )
