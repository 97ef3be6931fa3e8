"""What runs out, what has expired, and what is due on a machine."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.upkeep_gear import book

from sootline.core.basis import DateSpan, MachineId, Quantity, UnreadableValueError
from sootline.core.intervals import Standing
from sootline.core.upkeep.stores import (
    Chore,
    LogEntry,
    Routine,
    Supply,
    hold_readings,
    judge_supplies,
    list_chores,
)

TODAY = dt.date(2026, 3, 1)
SOAP = Supply(id="1", name="detergent", count=3, minimum=2, unit="jug")
WASHER = MachineId("drum")


@pytest.mark.parametrize(
    ("supply", "messages"),
    [
        (SOAP, []),
        (replace(SOAP, count=1), ["stores.below"]),
        (replace(SOAP, expires=DateSpan.parse("2026-03-01")), ["stores.expired", "stores.below"]),
        (replace(SOAP, expires=DateSpan.parse("2026")), ["stores.expired", "stores.below"]),
        (replace(SOAP, expires=DateSpan.parse("2026-03-20")), ["stores.expires_soon"]),
        (replace(SOAP, expires=DateSpan.parse("2026-06")), []),
    ],
)
def test_what_runs_out_is_said(supply: Supply, messages: list[str]) -> None:
    """What has expired at its earliest reading counts for nothing."""
    assert [one.message for one in judge_supplies((supply,), TODAY)] == messages


def test_rows_of_one_name_are_one_stock() -> None:
    """One row each expiry; the minimum is for all together."""
    rows = (replace(SOAP, count=1), replace(SOAP, id="2", count=1))

    assert judge_supplies(rows, TODAY) == ()


def test_a_count_below_nought_is_none() -> None:
    """Nor a minimum."""
    with pytest.raises(UnreadableValueError):
        replace(SOAP, count=-1)


def entry(chore: Chore, on: str, reading: str | None = None) -> LogEntry:
    """Return one line of the log."""
    taken = Quantity.parse(reading) if reading else None
    return LogEntry(machine=WASHER, chore=chore, on=DateSpan.parse(on), by="118", reading=taken)


def routine(chore: Chore, days: int) -> Routine:
    """Return one routine."""
    return Routine(machine=WASHER, chore=chore, days=days, source="manual, invented")


def test_a_chore_is_due_its_days_after_the_last_time() -> None:
    """The last time counts; one never done is due today; the earliest comes first."""
    log = (entry(Chore.DRAIN_FILTER, "2026-02-01"), entry(Chore.DRAIN_FILTER, "2026-02-20"))
    service, drain = list_chores(
        (routine(Chore.DRAIN_FILTER, 14), routine(Chore.SERVICE, 365)), log, TODAY
    )

    assert (service.chore, service.standing) == (Chore.SERVICE, Standing.TODAY)
    assert (drain.first_day, drain.standing) == (DateSpan.parse("2026-03-06"), Standing.LATER)
    assert [service.reason.message, drain.reason.message] == ["stores.never_done", "stores.chore"]


@pytest.mark.parametrize(
    ("reading", "message"),
    [("104 °F", None), ("112 °F", "stores.too_hot"), (None, "stores.no_reading")],
)
def test_a_temperature_is_held_against_the_limit(reading: str | None, message: str | None) -> None:
    """A reading beyond the bath's limit, or none at all where one was to be taken."""
    log = (entry(Chore.TEMPERATURE_TAKEN, "2026-02-01", reading), entry(Chore.FLUSH, "2026-02-01"))
    said = {one.message for one in hold_readings(log, book())}

    assert said == ({message} if message else set())


def test_nobody_does_no_chore_and_a_routine_takes_a_day() -> None:
    """A name, and at least one day."""
    with pytest.raises(UnreadableValueError):
        LogEntry(machine=WASHER, chore=Chore.FLUSH, on=DateSpan(), by=" ")
    with pytest.raises(UnreadableValueError):
        routine(Chore.FLUSH, 0)
