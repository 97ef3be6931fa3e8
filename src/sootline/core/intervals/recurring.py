"""When is the next cleaning or inspection of a component due?

Only what is in use is due; a reserve component waits, and is due for inspection when it is issued.
Months are civil months, clamped to a month's last day.
"""

import datetime as dt
from dataclasses import dataclass

from sootline.core.basis import (
    Bearing,
    DateSpan,
    Finding,
    Ground,
    finding,
)
from sootline.core.gear.components import Component
from sootline.core.gear.records import Deed
from sootline.core.gear.state import Life
from sootline.core.gear.terms import ResolvedInterval
from sootline.core.intervals.dues import (
    Due,
    Matter,
    Standing,
    days_over,
    earliest_of,
    register_ground,
    stand,
)

_IN_USE = (Life.IN_SERVICE, Life.TRAINING_ONLY)
_YEAR = 12
_DEEDS = {
    Matter.ADVANCED_CLEANING: Deed.ADVANCED_CLEANING,
    Matter.ADVANCED_INSPECTION: Deed.ADVANCED_INSPECTION,
    Matter.LINER_INSPECTION: Deed.LINER_INSPECTION,
}


@dataclass(frozen=True, kw_only=True)
class CleaningTerms:
    """How often advanced cleaning is asked for at the least.

    Args:
        every: a fixed interval, where a text states one.
        count: how many in any twelve months, with its ground; None where no text counts.
        warn: when to warn after the last one, where a text says so.
    """

    every: ResolvedInterval
    count: tuple[int, Ground] | None
    warn: ResolvedInterval


def cleaning_due(component: Component, terms: CleaningTerms, today: dt.date) -> Due | None:
    """Return when the next advanced cleaning is due.

    Where a text asks for a number in any twelve months, the day is the one on which that many no
    longer lie within the last twelve; evenly spaced or not, events are counted, not intervals.
    """
    waits = _waits(component, Matter.ADVANCED_CLEANING)
    if waits or component.state.life not in _IN_USE:
        return waits
    done = _done(component, Deed.ADVANCED_CLEANING)
    anchors: list[tuple[DateSpan, Finding]] = []
    last = done[0] if done else _since(component)
    if terms.every.shortest:
        months, ground = terms.every.shortest
        anchors.append(_anchor(last, months, ground, "due.cleaning.every"))
    if terms.count:
        count, ground = terms.count
        counted = done[count - 1] if len(done) >= count else _since(component)
        anchors.append(_anchor(counted, _YEAR, ground, "due.cleaning.count", count=count))
    asked = _asked(terms.every, terms.warn)
    if not anchors:
        return _unknown(component, Matter.ADVANCED_CLEANING, asked)
    first_day = earliest_of(tuple(day for day, _ in anchors))
    warn = terms.warn.shortest
    warned = last.plus_months(warn[0]).earliest if warn else None
    return _due(
        component,
        Matter.ADVANCED_CLEANING,
        first_day,
        today,
        tuple(reason for _, reason in anchors) + asked,
        warn_from=warned,
    )


def inspection_due(component: Component, every: ResolvedInterval, today: dt.date) -> Due | None:
    """Return when the next advanced inspection is due; in reserve it waits for the issue."""
    matter = Matter.ADVANCED_INSPECTION
    waits = _waits(component, matter)
    if waits or component.state.life not in _IN_USE:
        return waits
    if not every.shortest:
        return _unknown(component, matter, _asked(every))
    months, ground = every.shortest
    done = _done(component, Deed.ADVANCED_INSPECTION)
    first_day, reason = _anchor(
        done[0] if done else _since(component), months, ground, "due.inspection.every"
    )
    return _due(component, matter, first_day, today, (reason, *_asked(every)))


def liner_inspection_due(
    component: Component, first: ResolvedInterval, repeat: ResolvedInterval, today: dt.date
) -> Due | None:
    """Return when the liner is next opened and inspected; the clock starts in service."""
    matter = Matter.LINER_INSPECTION
    waits = _waits(component, matter)
    if waits or component.state.life not in _IN_USE:
        return waits
    done = _done(component, Deed.LINER_INSPECTION)
    interval = repeat if done else first
    if not interval.shortest:
        return _unknown(component, matter, _asked(interval))
    months, ground = interval.shortest
    message = "due.liner.repeat" if done else "due.liner.first"
    first_day, reason = _anchor(done[0] if done else _since(component), months, ground, message)
    return _due(component, matter, first_day, today, (reason, *_asked(interval)))


def _done(component: Component, deed: Deed) -> tuple[DateSpan, ...]:
    """Return the days of a deed, the latest first, each at its earliest reading.

    What is recorded twice for one day was done once: two lists often carry the same wash.
    """
    days = {
        (record.on.earliest, record.on.latest): record.on
        for record in component.records
        if record.deed is deed
    }
    return tuple(sorted(days.values(), key=lambda span: span.earliest or dt.date.min, reverse=True))


def _since(component: Component) -> DateSpan:
    """Return since when it is in use: the recorded day, else its first issue."""
    if component.in_service != DateSpan():
        return component.in_service
    issues = [record.on for record in component.records if record.deed is Deed.ISSUED]
    return earliest_of(tuple(issues))


def _anchor(
    since: DateSpan, months: int, ground: Ground, message: str, **values: object
) -> tuple[DateSpan, Finding]:
    day = since.plus_months(months)
    if day == DateSpan():
        return day, finding(Bearing.ASKS, "due.nothing_recorded", ground, months=months)
    named = {"since": since, "months": months, "first_day": day, **values}
    return day, finding(Bearing.REQUIRES, message, ground, **named)


def _due(
    component: Component,
    matter: Matter,
    first_day: DateSpan,
    today: dt.date,
    reasons: tuple[Finding, ...],
    *,
    warn_from: dt.date | None = None,
) -> Due:
    return Due(
        component=component.id,
        matter=matter,
        first_day=first_day,
        standing=stand(first_day, today, warn_from=warn_from),
        days_over=days_over(first_day, today),
        reasons=reasons,
    )


def _waits(component: Component, matter: Matter) -> Due | None:
    if component.state.life is not Life.RESERVE:
        return None
    return Due(
        component=component.id,
        matter=matter,
        first_day=DateSpan(),
        standing=Standing.WAITS,
        reasons=(finding(Bearing.NOTES, "due.reserve", register_ground(component.id, "dates")),),
    )


def _unknown(component: Component, matter: Matter, asked: tuple[Finding, ...]) -> Due:
    no_rule = (finding(Bearing.ASKS, "due.no_rule", register_ground(component.id, "dates")),)
    return Due(
        component=component.id,
        matter=matter,
        first_day=DateSpan(),
        standing=Standing.NOT_KNOWN,
        reasons=asked or no_rule,
    )


def _asked(*intervals: ResolvedInterval) -> tuple[Finding, ...]:
    return tuple(
        finding(Bearing.ASKS, f"ask.{ground.rule}", ground)
        for interval in intervals
        for ground in interval.unset
    )
