"""How long does each step of a piece take, and what does the estimate rest on?"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from sootline.core.basis import Bearing, EditionId, Finding, Ground, MinuteSpan, RuleId, finding
from sootline.core.gear.kinds import DryMethod, Kind
from sootline.core.laundry.goods import entered
from sootline.core.laundry.planning import PlannedDrying, PlannedWork, PlanningTimes
from sootline.core.laundry.rooms import DryingPlace, DryingTime, WashRoom, WorkTime

_Row = TypeVar("_Row", DryingTime, WorkTime)
NOT_MEASURED = "laundry.time.not_measured_here"


class Pace(StrEnum):
    """Which end of every interval a plan reckons with."""

    EARLIEST = "earliest"
    LIKELY = "likely"
    LATE = "late"

    def of(self, span: MinuteSpan) -> int:
        """Return this end of an interval [min]."""
        ends = {Pace.EARLIEST: span.earliest, Pace.LIKELY: span.likely, Pace.LATE: span.late}
        return ends[self]


@dataclass(frozen=True, kw_only=True)
class Work:
    """Handwork on one component [min], with what it rests on when nobody measured it here."""

    prepare: MinuteSpan
    hand: MinuteSpan
    check: MinuteSpan
    note: Finding | None = None


@dataclass(frozen=True, kw_only=True)
class Clock:
    """Looks up durations: the department's own rows first, then the planning table."""

    room: WashRoom
    planning: PlanningTimes

    def work(self, kind: Kind) -> Work | None:
        """Return the handwork on one kind; None when nobody gives a time."""
        row = _row(self.room.work_times, kind)
        if row:
            spans = (MinuteSpan.exactly(at) for at in (row.prepare, row.hand, row.check))
            prepare, hand, check = spans
            return Work(prepare=prepare, hand=hand, check=check)
        planned = self.planning.work_on(kind.layer)
        if planned is None:
            return None
        total = planned.prepare + planned.hand + planned.check
        note = _not_measured(planned, kind, "work", total)
        return Work(prepare=planned.prepare, hand=planned.hand, check=planned.check, note=note)

    def dry(self, place: DryingPlace, kind: Kind) -> tuple[MinuteSpan, Finding | None] | None:
        """Return the drying time of a kind at a place, and what it rests on."""
        rows = [row for row in self.room.drying_times if row.place == place.id]
        row = _row(rows, kind)
        if row:
            values = {"place": place.id, "kind": kind.id, "minutes": row.minutes}
            rests = row.minutes.rests_on or "laundry.time.entered"
            guess = finding(Bearing.NOTES, rests, entered("room.time"), **values)
            return row.minutes, None if row.measured else guess
        return self.planned(place.method, kind, place.id)

    def planned(
        self, method: DryMethod, kind: Kind, place: str
    ) -> tuple[MinuteSpan, Finding] | None:
        """Return the planning interval of a method; None when the table is silent."""
        planned = self.planning.dry(method, kind.layer)
        if planned is None:
            return None
        return planned.minutes, _not_measured(planned, kind, place, planned.minutes)


def _row(rows: Iterable[_Row], kind: Kind) -> _Row | None:
    """Return the row that names the kind, or else the one for every kind not named."""
    general = None
    for row in rows:
        if kind.id in row.kinds:
            return row
        general = general or (None if row.kinds else row)
    return general


def _not_measured(
    row: PlannedDrying | PlannedWork, kind: Kind, place: str, minutes: MinuteSpan
) -> Finding:
    ground = Ground(
        rule=RuleId("planning.times"),
        edition=EditionId("practice/drying"),
        source=row.source,
        confidence=row.confidence,
    )
    values = {"place": place, "kind": kind.id, "minutes": minutes}
    return finding(Bearing.NOTES, NOT_MEASURED, ground, **values)
