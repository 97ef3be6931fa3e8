"""The due list of a job: the most pressing first, on the department's own civil day."""

import datetime as dt

from sootline.core.basis import ComponentId, DateSpan, EditionId, GuideId, KindId, SetId
from sootline.core.gear import Component
from sootline.core.gear.labels import Guide
from sootline.core.gear.records import Deed, Record
from sootline.core.intervals import Matter, Standing
from sootline.core.job.jobs import Department, Job
from sootline.tasks.list_due import civil_day, due_gear
from sootline.wiring.rules import RULES

COAT = (
    Component(
        id=ComponentId("shell"),
        kind=KindId("coat-shell"),
        set=SetId("S1"),
        made=DateSpan.parse("2018-05-20"),
        in_service=DateSpan.parse("2018-07-01"),
        records=(
            Record(deed=Deed.ADVANCED_INSPECTION, on=DateSpan.parse("2025-10-01")),
            Record(deed=Deed.ADVANCED_CLEANING, on=DateSpan.parse("2026-02-01")),
            Record(deed=Deed.ADVANCED_CLEANING, on=DateSpan.parse("2025-10-01")),
        ),
    ),
    Component(
        id=ComponentId("liner"),
        kind=KindId("coat-liner"),
        set=SetId("S1"),
        made=DateSpan.parse("2015-01-10"),
        in_service=DateSpan.parse("2018-07-01"),
        guide=GuideId("g"),
    ),
)


def job(*, zone: str = "America/Denver", edition: str = "nfpa-1851/2014") -> Job:
    """Return a job of one coat, early on 1 March in UTC."""
    return Job(
        version=1,
        now=dt.datetime(2026, 3, 1, 4, tzinfo=dt.UTC),
        department=Department(name="Sallowby", zone=zone, edition=EditionId(edition)),
        guides=(
            Guide(id=GuideId("g"), title="invented", months=(("inspect.advanced.months", 6),)),
        ),
        components=COAT,
    )


def test_the_civil_day_is_the_departments_own() -> None:
    """At four in the morning in UTC it is still the evening before in the mountains."""
    assert civil_day(job()) == dt.date(2026, 2, 28)
    assert civil_day(job(zone="UTC")) == dt.date(2026, 3, 1)


def test_the_most_pressing_comes_first() -> None:
    """What is out stands above what is overdue, and that above what is later."""
    result = due_gear(RULES, job())

    standings = [item.due.standing for item in result.items]
    assert standings[0] is Standing.OUT
    assert result.items[0].component.id == "liner"
    assert standings.index(Standing.OVERDUE) < standings.index(Standing.LATER)


def test_the_earliest_governing_part_rules_the_set() -> None:
    """The liner of 2015 takes its set out in 2025."""
    result = due_gear(RULES, job(), today=dt.date(2026, 3, 1))

    assert result.sets == (("S1", DateSpan.parse("2025-01-10")),)


def test_a_makers_guide_shortens_an_interval() -> None:
    """The guide says six months for the liner; the edition's twelve still count for the shell."""
    result = due_gear(RULES, job(), today=dt.date(2026, 3, 1))

    days = {
        item.component.id: item.due.first_day
        for item in result.items
        if item.due.matter is Matter.ADVANCED_INSPECTION
    }
    assert days == {"liner": DateSpan.parse("2019-01-01"), "shell": DateSpan.parse("2026-10-01")}
