"""From which day on is a component out, by its years?

The clock starts at manufacture and runs in reserve too. Where the date is missing, what else is
known bounds it: nothing was issued, worn or washed before it was made.
"""

import datetime as dt
from collections.abc import Iterable

from sootline.core.basis import (
    Bearing,
    DateSpan,
    Finding,
    Ground,
    UnreadableValueError,
    finding,
)
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Kind
from sootline.core.gear.state import Life
from sootline.core.gear.terms import ResolvedInterval
from sootline.core.intervals.dues import Due, Matter, Standing, earliest_of, register_ground

_GONE = (Life.RETIRED, Life.DISPOSED)


def made_when(component: Component) -> tuple[DateSpan, tuple[Finding, ...]]:
    """Narrow the day of manufacture by everything known, and name what contradicts itself."""
    stated = component.made
    findings: list[Finding] = []
    try:
        stated = stated.intersect(component.label.made)
    except UnreadableValueError:
        findings.append(_contradiction(component, str(component.label.made)))
        stated = earliest_of((component.made, component.label.made))
    used = [component.in_service.latest, *(record.on.latest for record in component.records)]
    ceiling = min((day for day in used if day is not None), default=None)
    if ceiling is None:
        return stated, tuple(findings)
    if stated.earliest is not None and stated.earliest > ceiling:
        findings.append(_contradiction(component, str(ceiling)))
        return stated, tuple(findings)
    if stated.latest is None or ceiling < stated.latest:
        stated = DateSpan(earliest=stated.earliest, latest=ceiling)
    return stated, tuple(findings)


def retirement_due(
    component: Component, intervals: Iterable[ResolvedInterval], today: dt.date
) -> Due | None:
    """Return the first day out; None when the component is already out of service.

    Args:
        intervals: the life in months from manufacture, by every topic that applies; the shortest
            counts.
    """
    if component.state.life in _GONE:
        return None
    made, findings = made_when(component)
    months, ground, unset = _shortest(intervals)
    asked = [finding(Bearing.ASKS, f"ask.{one.rule}", one) for one in unset]
    if months is None or ground is None:
        reasons = (*findings, *asked) or (_no_rule(component),)
        return _due(component, DateSpan(), Standing.NOT_KNOWN, reasons)
    first_day = made.plus_months(months)
    reason = finding(
        Bearing.LIMITS, "due.retirement", ground, made=made, months=months, first_day=first_day
    )
    standing = _standing(first_day, today)
    return _due(component, first_day, standing, (reason, *findings, *asked))


def set_first_day_out(dues: Iterable[tuple[Kind, Due]]) -> DateSpan:
    """Return a set's first day out: the earliest among the parts whose date governs it."""
    return earliest_of(tuple(due.first_day for kind, due in dues if kind.governs_set))


def _standing(first_day: DateSpan, today: dt.date) -> Standing:
    day = first_day.earliest or first_day.latest
    if day is not None and day <= today:
        return Standing.OUT
    return Standing.NOT_KNOWN if first_day.earliest is None else Standing.LATER


def _shortest(
    intervals: Iterable[ResolvedInterval],
) -> tuple[int | None, Ground | None, tuple[Ground, ...]]:
    every = tuple(intervals)
    stated = [one.shortest for one in every if one.shortest]
    unset = tuple(ground for one in every for ground in one.unset)
    if not stated:
        return None, None, unset
    return *min(stated, key=lambda pair: pair[0]), unset


def _due(
    component: Component, first_day: DateSpan, standing: Standing, reasons: tuple[Finding, ...]
) -> Due:
    return Due(
        component=component.id,
        matter=Matter.RETIREMENT,
        first_day=first_day,
        standing=standing,
        reasons=reasons,
    )


def _contradiction(component: Component, other: str) -> Finding:
    return finding(
        Bearing.ASKS,
        "due.made_contradicts",
        register_ground(component.id, "made"),
        made=component.made,
        other=other,
    )


def _no_rule(component: Component) -> Finding:
    return finding(Bearing.ASKS, "due.no_rule", register_ground(component.id, "made"))
