"""What is due and would leave the hook together?

Whoever takes a coat's liner takes the coat: components that fill one place of an outfit go out as
one. What fills no place goes by itself. What cannot be taken stands apart: while a liner is away,
its shell is off the hook anyway, and can be seen to.
"""

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from sootline.core.basis import Bearing, ComponentId, MemberId, finding
from sootline.core.gear import CareStage, Component, Custody
from sootline.core.intervals import Due, Matter, Standing
from sootline.core.riding import Riding, Situation, Slot, Unit, who_rides
from sootline.core.upkeep.planning.facts import Cause
from sootline.core.upkeep.qualified import PRACTICE

MATTERS = (Matter.ADVANCED_CLEANING, Matter.ADVANCED_INSPECTION, Matter.LINER_INSPECTION)
_URGENT = (Standing.OVERDUE, Standing.TODAY, Standing.SOON, Standing.LATER)
_AWAY = (Custody.CONTRACTOR, Custody.REPAIR)
_ON_ITS_WAY = (Custody.BAG, Custody.WASH_ROOM)


@dataclass(frozen=True, kw_only=True)
class Bundle:
    """Due work on components that leave the hook together.

    Args:
        unit: the unit of an outfit they belong to; the component's own number where none.
        holder: who has it; None is on the rack.
        cause: why it cannot be taken at all; None when it can.
    """

    unit: str
    slot: Slot | None
    holder: MemberId | None
    dues: tuple[Due, ...]
    cause: Cause | None

    @property
    def components(self) -> tuple[ComponentId, ...]:
        """The components that have something due, each once."""
        return tuple(dict.fromkeys(due.component for due in self.dues))

    @property
    def urgency(self) -> tuple[int, dt.date, str]:
        """The most pressing first, then the earliest day, then by number."""
        return min((_URGENT.index(due.standing), _day(due), self.unit) for due in self.dues)


def bundle_dues(
    dues: Iterable[Due],
    components: Mapping[ComponentId, Component],
    situation: Situation,
    *,
    by: dt.date,
) -> tuple[Bundle, ...]:
    """Bundle everything due by a day, the most pressing first.

    Args:
        by: the last day to look ahead to.
    """
    unit_of = {part: unit for unit in situation.units for part in unit.components}
    grouped: dict[tuple[str, Cause | None], list[Due]] = {}
    for due in dues:
        if due.matter in MATTERS and due.standing in _URGENT and _day(due) <= by:
            unit = unit_of.get(due.component)
            cause = _cause(components[due.component])
            grouped.setdefault((unit.id if unit else due.component, cause), []).append(due)
    bundles = (
        _bundle(name, cause, tuple(group), components, unit_of)
        for (name, cause), group in grouped.items()
    )
    return tuple(sorted(bundles, key=lambda one: one.urgency))


def without(situation: Situation, taken: Iterable[Bundle]) -> Situation:
    """Return the situation with bundles off the hook for the day."""
    gone = {one.unit for one in taken}
    reason = finding(Bearing.FORBIDS, "upkeep.taken", PRACTICE)
    units = tuple(
        replace(unit, back=None, reasons=(*unit.reasons, reason)) if unit.id in gone else unit
        for unit in situation.units
    )
    return replace(situation, units=units)


def seats_kept(before: Riding, situation: Situation) -> Riding | None:
    """Return who rides in a situation, or None when anybody who rode before no longer does.

    A crew may not lose anybody who counts for interior work either.
    """
    after = who_rides(situation)
    riding = {one.member for one in after.now.can}
    if not riding >= {one.member for one in before.now.can}:
        return None
    interior = {crew.crew: crew.interior for crew in after.now.crews}
    kept = all(interior[crew.crew] >= crew.interior for crew in before.now.crews)
    return after if kept else None


def _bundle(
    name: str,
    cause: Cause | None,
    dues: tuple[Due, ...],
    components: Mapping[ComponentId, Component],
    unit_of: Mapping[ComponentId, Unit],
) -> Bundle:
    unit = unit_of.get(dues[0].component)
    return Bundle(
        unit=name,
        slot=unit.slot if unit else None,
        holder=unit.holder if unit else components[dues[0].component].owner,
        dues=dues,
        cause=cause,
    )


def _cause(component: Component) -> Cause | None:
    """Say why a component cannot be taken today, whatever spares and time there are."""
    state = component.state
    if state.custody in _AWAY:
        return Cause.CONTRACTOR
    if state.open_holds or state.custody is Custody.EVIDENCE:
        return Cause.DECISION
    if state.custody is Custody.NOT_SEEN or state.custody is Custody.LOAN:
        return Cause.NOT_SEEN
    moving = state.custody in _ON_ITS_WAY or state.stage is not CareStage.CHECKED
    return Cause.UNDER_WAY if moving else None


def _day(due: Due) -> dt.date:
    day = due.first_day.earliest or due.first_day.latest
    assert day is not None  # a standing that presses has its day
    return day
