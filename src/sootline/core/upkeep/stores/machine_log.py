"""What was done to a machine, and what is due on it by the department's own routine?"""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Bearing,
    Confidence,
    DateSpan,
    EditionId,
    Finding,
    Ground,
    Limit,
    MachineId,
    Quantity,
    RuleId,
    UnreadableValueError,
    finding,
)
from sootline.core.basis import Standing as Within
from sootline.core.intervals import Standing
from sootline.core.intervals.dues import stand
from sootline.core.rulebook import Rulebook, voices


class Chore(StrEnum):
    """Something done to a washer, dryer or cabinet."""

    TEMPERATURE_TAKEN = "temperature-taken"
    FLUSH = "flush"
    DRAIN_FILTER = "drain-filter"
    AIR_FILTER = "air-filter"
    DOOR_SEAL = "door-seal"
    DOSING_CHECK = "dosing-check"
    SERVICE = "service"


@dataclass(frozen=True, kw_only=True)
class LogEntry:
    """One chore as done.

    Args:
        reading: a temperature, where one was taken.
    """

    machine: MachineId
    chore: Chore
    on: DateSpan
    by: str
    reading: Quantity | None = None

    def __post_init__(self) -> None:
        if not self.by.strip():
            raise UnreadableValueError("stores.nobody", machine=self.machine)


@dataclass(frozen=True, kw_only=True)
class Routine:
    """How often a chore is due on a machine, by the maker's text or the department's choice.

    Args:
        days: from one time to the next [d].
        source: which text says so.
    """

    machine: MachineId
    chore: Chore
    days: int
    source: str

    def __post_init__(self) -> None:
        if self.days < 1:
            raise UnreadableValueError("stores.routine", machine=self.machine)

    @property
    def ground(self) -> Ground:
        """What rests on this routine."""
        return Ground(
            rule=RuleId(f"machine.{self.chore}"),
            edition=EditionId("policy"),
            source=self.source,
            confidence=Confidence.POLICY,
        )


@dataclass(frozen=True, kw_only=True)
class ChoreDue:
    """When one chore is due."""

    machine: MachineId
    chore: Chore
    last: DateSpan
    first_day: DateSpan
    standing: Standing
    reason: Finding


def list_chores(
    routines: Iterable[Routine], log: Sequence[LogEntry], today: dt.date
) -> tuple[ChoreDue, ...]:
    """List every routine's next day, the earliest first; one never done is due today."""
    dues = [_due(routine, log, today) for routine in routines]
    return tuple(sorted(dues, key=lambda one: one.first_day.earliest or dt.date.min))


def hold_readings(log: Iterable[LogEntry], rulebook: Rulebook) -> tuple[Finding, ...]:
    """Hold temperatures that were taken against the wash bath's limits; the label counts too."""
    said = []
    for entry in log:
        if entry.chore is not Chore.TEMPERATURE_TAKEN:
            continue
        for one in voices(rulebook, "wash.bath_temp", frozenset()):
            limit = one.rule.value
            if isinstance(limit, Limit) and limit.stand(entry.reading) is not Within.WITHIN:
                known = entry.reading is not None
                message = "stores.too_hot" if known else "stores.no_reading"
                named = {
                    "machine": entry.machine,
                    "reading": entry.reading or "?",
                    "limit": limit,
                    "on": entry.on,
                }
                said.append(
                    finding(Bearing.WARNS if known else Bearing.ASKS, message, one.ground, **named)
                )
    return tuple(said)


def _due(routine: Routine, log: Sequence[LogEntry], today: dt.date) -> ChoreDue:
    done = [
        entry.on
        for entry in log
        if (entry.machine, entry.chore) == (routine.machine, routine.chore)
    ]
    last = max(done, key=lambda span: span.earliest or dt.date.min, default=DateSpan())
    since = last.earliest
    first = today if since is None else since + dt.timedelta(days=routine.days)
    first_day = DateSpan.day(first)
    reason = finding(
        Bearing.REQUIRES,
        "stores.chore" if since is not None else "stores.never_done",
        routine.ground,
        machine=routine.machine,
        chore=routine.chore,
        last=last,
        first_day=first_day,
        days=routine.days,
    )
    return ChoreDue(
        machine=routine.machine,
        chore=routine.chore,
        last=last,
        first_day=first_day,
        standing=stand(first_day, today),
        reason=reason,
    )
