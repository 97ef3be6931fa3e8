"""When is something due, and how does that stand today?

A date known only in part is acted on at its earliest reading and shown with its latest. A due day
is the first day on which the thing is due; a retirement date is the first day out.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    Finding,
    Ground,
    RuleId,
)


class Matter(StrEnum):
    """What is due."""

    RETIREMENT = "retirement"
    ADVANCED_CLEANING = "advanced-cleaning"
    ADVANCED_INSPECTION = "advanced-inspection"
    LINER_INSPECTION = "liner-inspection"


class Standing(StrEnum):
    """How a due day stands today."""

    LATER = "later"
    SOON = "soon"
    TODAY = "today"
    OVERDUE = "overdue"
    OUT = "out"
    NOT_KNOWN = "not-known"
    WAITS = "waits"


@dataclass(frozen=True, kw_only=True)
class Due:
    """One matter of one component.

    Args:
        first_day: the first day due, or the first day out; unknown where nothing bounds it.
        days_over: days since the first day at its earliest reading [d]; None unless overdue.
        reasons: from which dates and rules it follows.
    """

    component: ComponentId
    matter: Matter
    first_day: DateSpan
    standing: Standing
    days_over: int | None = None
    reasons: tuple[Finding, ...]


def stand(first_day: DateSpan, today: dt.date, *, warn_from: dt.date | None = None) -> Standing:
    """Say how a due day stands, at its earliest reading.

    Args:
        warn_from: from when a matter that is not yet due is called soon.
    """
    if first_day.earliest is None:
        past = first_day.latest is not None and first_day.latest <= today
        return Standing.OVERDUE if past else Standing.NOT_KNOWN
    if first_day.earliest == today:
        return Standing.TODAY
    if first_day.earliest < today:
        return Standing.OVERDUE
    return Standing.SOON if warn_from is not None and warn_from <= today else Standing.LATER


def days_over(first_day: DateSpan, today: dt.date) -> int | None:
    """Count the days since a due day's earliest reading; None when it has not passed."""
    day = first_day.earliest or first_day.latest
    return (today - day).days if day is not None and day < today else None


def earliest_of(spans: tuple[DateSpan, ...]) -> DateSpan:
    """Return the span of the first of several events.

    Empty is unknown; one event without a lower bound leaves the first without one.
    """
    if not spans:
        return DateSpan()
    lows = [span.earliest for span in spans]
    highs = [span.latest for span in spans if span.latest is not None]
    known = [day for day in lows if day is not None]
    return DateSpan(
        earliest=min(known) if len(known) == len(lows) else None,
        latest=min(highs) if highs else None,
    )


def register_ground(component: ComponentId, field: str) -> Ground:
    """Return the ground of what the register says, or fails to say, of a component."""
    return Ground(
        rule=RuleId(f"register.{field}"),
        edition=EditionId("register"),
        source=str(component),
        confidence=Confidence.STATED,
    )
