"""Who can ride over the next 24 hours, as own gear, spares and loans come back?

Promises are made on the late end. A spare stays with whoever got it until the member's own gear is
back; then it is on the rack again and may cover somebody else.
"""

from dataclasses import dataclass, replace

from sootline.core.basis import MemberId
from sootline.core.riding.answers import CannotRide, CanRide, Coverage, CrewStatus
from sootline.core.riding.asking import hold_of, worn_at
from sootline.core.riding.coverage import who_rides
from sootline.core.riding.situation import Situation, later


@dataclass(frozen=True, kw_only=True)
class Step:
    """A moment from which the coverage is another.

    Args:
        minute: from now, by the late end.
        gained: who can ride from here on.
    """

    minute: int
    gained: tuple[MemberId, ...]
    can: tuple[CanRide, ...]
    cannot: tuple[CannotRide, ...]
    crews: tuple[CrewStatus, ...]


def timeline(situation: Situation) -> tuple[Step, ...]:
    """List the moments of the next 24 hours at which who can ride changes, now first."""
    steps: list[Step] = []
    for minute in (0, *later(situation.units, 0)):
        situation = _freed(situation, minute)
        coverage = who_rides(situation, minute).now
        situation = _kept(situation, coverage)
        before = {one.member for one in steps[-1].can} if steps else set()
        gained = tuple(one.member for one in coverage.can if one.member not in before)
        if gained or not steps:
            steps.append(_step(coverage, gained))
    return tuple(steps)


def _step(coverage: Coverage, gained: tuple[MemberId, ...]) -> Step:
    return Step(
        minute=coverage.minute,
        gained=gained,
        can=coverage.can,
        cannot=coverage.cannot,
        crews=coverage.crews,
    )


def _freed(situation: Situation, minute: int) -> Situation:
    """Take back the spares of those who wear something else in their place by now."""
    worn = {
        unit.id
        for units in hold_of(situation).values()
        if (unit := worn_at(units, minute)) is not None
    }
    return replace(
        situation,
        units=tuple(
            replace(unit, holder=None)
            if unit.holder is not None
            and not unit.own
            and unit.there_by(minute)
            and unit.id not in worn
            else unit
            for unit in situation.units
        ),
    )


def _kept(situation: Situation, coverage: Coverage) -> Situation:
    """Leave what was given out with those who got it."""
    given = {worn.unit.id: one.member for one in coverage.can for worn in one.outfit if worn.handed}
    return replace(
        situation,
        units=tuple(
            replace(unit, holder=given[unit.id])
            if unit.id in given and unit.holder is None
            else unit
            for unit in situation.units
        ),
    )
