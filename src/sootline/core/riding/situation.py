"""Who would ride, what is there for them, and when? What the matching rests on."""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    Finding,
    MemberId,
    MinuteSpan,
    UnreadableValueError,
    require_offset,
)
from sootline.core.gear import Element
from sootline.core.riding.facts import CrewMinimum, FitRule

HORIZON_MIN = 24 * 60


class Slot(StrEnum):
    """One place of an outfit, filled by own gear or by one spare as a whole."""

    SET = "set"
    COAT = "coat"
    TROUSERS = "trousers"
    HOOD = "hood"
    GLOVES = "gloves"
    BOOTS = "boots"
    HELMET = "helmet"
    MASK = "mask"
    ESCAPE = "escape"


@dataclass(frozen=True, kw_only=True)
class Rider:
    """One person who would ride.

    Args:
        interior: whether the person is known to be qualified for interior work.
        needs: the places of the outfit without which the person does not ride.
        measures: by dimension, as measured.
    """

    id: MemberId
    crew: str = ""
    priority: int = 1
    interior: bool = False
    away: bool = False
    needs: tuple[Slot, ...]
    measures: tuple[tuple[str, str], ...] = ()

    def __post_init__(self) -> None:
        if self.priority < 1:
            raise UnreadableValueError(
                "riding.priority", member=self.id, priority=str(self.priority)
            )


@dataclass(frozen=True, kw_only=True)
class Unit:
    """What fills one place of the outfit as a whole: a set, a pair, a helmet with all its parts.

    Args:
        elements: whose fit limits apply.
        holder: who has it, as own gear or handed out; None is on the rack.
        own: whether it is the holder's own.
        lender: the department that lends it; None is ours.
        back: when it can be worn; None is not known, or never.
        reasons: why it cannot be worn now; empty when it can.
        first: what to do before it is worn.
        untried: whether a try-on is still to be signed, so that it is not for interior work.
    """

    id: str
    slot: Slot
    elements: tuple[Element, ...]
    components: tuple[ComponentId, ...] = ()
    size: tuple[tuple[str, str], ...] = ()
    holder: MemberId | None = None
    own: bool = False
    lender: str | None = None
    back: MinuteSpan | None
    reasons: tuple[Finding, ...] = ()
    first: tuple[Finding, ...] = ()
    untried: bool = False

    def there_by(self, minute: int) -> bool:
        """Whether it can be worn at a minute, by the late end of what is promised."""
        return self.back is not None and self.back.late <= minute


@dataclass(frozen=True, kw_only=True)
class HandOut:
    """A spare given to a person."""

    member: MemberId
    unit: str


@dataclass(frozen=True, kw_only=True)
class Situation:
    """Everything the question "who can ride" rests on.

    Args:
        now: minute 0, in the department's zone.
        one_size: elements that fit everybody.
        crews: how many interior-qualified people each crew needs.
    """

    now: dt.datetime
    riders: tuple[Rider, ...]
    units: tuple[Unit, ...]
    fit: tuple[FitRule, ...] = ()
    one_size: tuple[Element, ...] = ()
    crews: tuple[CrewMinimum, ...] = ()

    def __post_init__(self) -> None:
        require_offset(self.now)

    @property
    def present(self) -> tuple[Rider, ...]:
        """Those who are not away, in the order of the roster."""
        return tuple(rider for rider in self.riders if not rider.away)

    def arrivals(self, after: int = 0) -> tuple[int, ...]:
        """List the minutes of the next 24 hours at which spares or loans come, in order."""
        return later((unit for unit in self.units if unit.holder is None), after)


def later(units: Iterable[Unit], after: int) -> tuple[int, ...]:
    """List the minutes after one, within 24 hours, at which units can be worn, in order."""
    late = {unit.back.late for unit in units if unit.back is not None}
    return tuple(sorted(minute for minute in late if after < minute <= HORIZON_MIN))


def minutes_until(moment: dt.datetime, now: dt.datetime) -> int:
    """Count whole minutes from now to a moment, begun ones in full; 0 when it has passed."""
    return max(0, -((now - moment) // dt.timedelta(minutes=1)))


def clock(now: dt.datetime, minute: int) -> str:
    """Read a minute from now on the zone's clock; with its day when it is a day or more away."""
    moment = (now.astimezone(dt.UTC) + dt.timedelta(minutes=minute)).astimezone(now.tzinfo)
    return moment.strftime("%H:%M" if minute < HORIZON_MIN else "%Y-%m-%d %H:%M")
