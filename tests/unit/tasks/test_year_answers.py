"""What the tasks of the year answer from a whole job: shipments, repairs, inspections, the day."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

import pytest
from tests.unit.tasks.test_year import (
    COAT,
    DELIVERY,
    HOOD,
    JOB,
    LINER,
    NOTICE,
    NOW,
    REPAIR,
    SHIPMENT,
    inspection,
)

from sootline.core.basis import BadInputError, ComponentId, DateSpan, GuideId, SetId
from sootline.core.gear import Custody, Guide, Life, State
from sootline.core.job.jobs import Job
from sootline.core.rebuild import Flaw, FlawFound
from sootline.core.upkeep.contractor import Agreed, Charge, Invoice, Received, Service
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.inspections import Absent, InspectionDay, InspectionKind, Result
from sootline.core.upkeep.repairs import Price
from sootline.tasks.check_contractor import check_contractor
from sootline.tasks.inspect_gear import inspect_gear, list_checks
from sootline.tasks.inspection_sheet import (
    list_inspections,
    rows_of,
    type_in_inspections,
    with_typed,
)
from sootline.tasks.match_recall import match_recalls, with_notice
from sootline.tasks.plan_day import plan_today
from sootline.tasks.weigh_repairs import weigh_repairs
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES

ROUTINE, ADVANCED, COMPLETE = InspectionKind


def job(**facts: object) -> Job:
    """Return the department with facts of its year."""
    return replace(JOB, upkeep=replace(JOB.upkeep, **facts))  # type: ignore[arg-type]


USD = Price(amount=Decimal(28), currency="USD")
AGREED = replace(SHIPMENT, agreed=(Agreed(service=Service.ADVANCED_CLEANING, price=USD),))
INVOICE = Invoice(
    manifest="26-01",
    number="A1",
    total=USD,
    charges=(Charge(read="0412", service=Service.ADVANCED_CLEANING, price=USD),),
)
ALL_BACK = replace(DELIVERY, pieces=(Received(read="0412"), Received(read="0612")))


@pytest.mark.parametrize(
    ("receipts", "invoices", "settled"),
    [
        ((), (), False),
        ((DELIVERY,), (), False),
        ((ALL_BACK,), (), True),
        ((ALL_BACK,), (INVOICE,), True),
        ((ALL_BACK,), (replace(INVOICE, total=replace(USD, amount=Decimal(30))),), False),
        ((ALL_BACK,), (replace(INVOICE, manifest="26-09"),), True),
    ],
)
def test_a_shipment_is_settled_when_nothing_is_open(
    receipts: tuple[object, ...], invoices: tuple[object, ...], settled: bool
) -> None:
    """All back by number or word, and no line of an invoice asked about."""
    result = check_contractor(job(manifests=(AGREED,), receipts=receipts, invoices=invoices))

    assert result.settled is settled


def test_turnaround_is_told_for_each_provider() -> None:
    """Two providers, each by its own shipments."""
    other = replace(AGREED, id="26-02", provider="Nobler")
    result = check_contractor(job(manifests=(AGREED, other), receipts=(ALL_BACK,)))

    assert [(one.provider, one.turnaround.n, one.turnaround.out) for one in result.providers] == [
        ("Mendwell", 2, 0),
        ("Nobler", 2, 2),
    ]


def test_a_repair_is_weighed_by_the_life_of_its_own_piece() -> None:
    """Ten years from manufacture by the edition; made in April of 2021, so out in April of 2031.

    By hand: 1,816 to 1,845 days of 365.25 to a year, for 100 USD.

    Source: US care standard, 2014 edition, topic retirement.
    """
    quoted = replace(REPAIR, quote=replace(USD, amount=Decimal(100)))
    (result,) = weigh_repairs(RULES, job(repairs=(quoted,)))

    assert result.worth.per_year == (Decimal("19.80"), Decimal("20.11"))


def test_a_guide_speaks_for_a_new_piece_too() -> None:
    """A piece with a maker's guide, and one already out of service."""
    guide = Guide(id=GuideId("g"), title="user guide, invented")
    pieces = tuple(
        replace(one, guide=guide.id, state=replace(one.state, life=Life.RETIRED))
        for one in JOB.components
    )
    retired = replace(job(repairs=(REPAIR,)), components=pieces, guides=(guide,))
    found = weigh_repairs(RULES, retired)

    assert found[0].worth.per_year is None


def test_a_day_takes_its_own_inspections_and_leaves_the_others() -> None:
    """One of that kind and day; one of another day stands by itself."""
    day = InspectionDay(
        kind=ADVANCED, on=NOW.date(), planned=(COAT, LINER),
        absent=(Absent(component=LINER, why="on leave"),),
    )  # fmt: skip
    early = inspection(HOOD, FlawFound(flaw=Flaw.TORN))
    early = replace(early, at=NOW - dt.timedelta(days=3))
    result = inspect_gear(RULES, job(inspection_days=(day,), inspections=(inspection(COAT), early)))

    assert [one.result for one in result.days[0].pieces] == [
        Result.NOTHING_FOUND,
        Result.STILL_DUE,
    ]
    assert [one.component for one in result.single] == [HOOD]
    assert not result.quiet
    assert inspect_gear(RULES, job(inspections=(inspection(COAT),))).quiet


def test_check_lists_of_a_piece() -> None:
    """Two of a shell, three of a liner with the tests asked; none of what is not there."""
    assert [one.kind for one in list_checks(RULES, JOB, COAT)] == [ROUTINE, ADVANCED]
    assert [len(one.tests) for one in list_checks(RULES, JOB, LINER)] == [0, 2, 1]
    with pytest.raises(BadInputError):
        list_checks(RULES, JOB, ComponentId("9"))


def test_a_notice_is_held_against_the_register_of_a_job() -> None:
    """One affected, by style; a notice of no such name is refused; one of that name too."""
    with_one = with_notice(JOB, NOTICE)
    result = match_recalls(with_one)

    assert [one.match.component for one in result.notices[0].concerned] == [LINER]
    assert result.notices[0].tell == ("Vennick", "118")
    with pytest.raises(BadInputError):
        match_recalls(with_one, only="n9")
    with pytest.raises(BadInputError):
        with_notice(with_one, NOTICE)


def test_the_sheet_lists_what_is_due_and_here() -> None:
    """All due in May of 2026 (in service 2025-05, yearly); what is away is not on the sheet."""
    late = replace(JOB, now=NOW + dt.timedelta(days=14))
    away = tuple(
        replace(one, state=State(custody=Custody.CONTRACTOR)) if one.id == HOOD else one
        for one in JOB.components
    )
    rows = rows_of(list_inspections(RULES, late, ADVANCED))

    assert [one.component for one in rows] == [COAT, "0413", LINER, HOOD]
    assert rows_of(list_inspections(RULES, JOB, ADVANCED)) == ()
    gone = rows_of(list_inspections(RULES, replace(late, components=away), ADVANCED))
    assert HOOD not in {one.component for one in gone}


def test_a_planned_day_is_the_sheet_of_that_day() -> None:
    """In the plan's own choice, whatever is due."""
    day = InspectionDay(kind=COMPLETE, on=NOW.date(), planned=(LINER, COAT))

    groups = list_inspections(RULES, job(inspection_days=(day,)), COMPLETE)
    assert [one.id for group in groups for one in group.components] == [LINER]
    assert len(groups[0].tests) == 1


def test_a_routine_sheet_lists_what_is_worn() -> None:
    """Reserve gear and gear that is out is not."""
    lives = {COAT: Life.RESERVE, LINER: Life.RETIRED}
    pieces = tuple(
        replace(one, state=replace(one.state, life=lives.get(one.id, one.state.life)))
        for one in JOB.components
    )
    rows = rows_of(list_inspections(RULES, replace(JOB, components=pieces), ROUTINE))

    assert [one.component for one in rows] == ["0413", HOOD]


def test_a_typed_day_stands_in_the_job_with_what_follows() -> None:
    """The coat passed and is due in a year; the torn hood as found; the liner stays due."""
    day = InspectionDay(kind=ADVANCED, on=NOW.date(), planned=(COAT, LINER, HOOD))
    planned = job(inspection_days=(day,))
    text = "0412 ABCDEFGHIJKLMNO\n0612 ABCDEFGH 5C\n0512 absent on leave\n"
    typed = type_in_inspections(RULES, planned, text, ADVANCED, by="118", at=NOW)
    after = with_typed(RULES, planned, typed)
    (result,) = inspect_gear(RULES, after).days

    assert {one.component: one.result for one in result.pieces} == {
        COAT: Result.NOTHING_FOUND,
        LINER: Result.STILL_DUE,
        HOOD: Result.ADVANCED_REPAIR,
    }
    assert result.pieces[0].next_due == DateSpan.parse("2027-04-11")
    assert len(after.upkeep.inspection_days) == 1


def test_the_demo_departments_morning() -> None:
    """Plan, sheet, refits, orders, stores, chores and a calendar in the order of its days."""
    today = plan_today(RULES, demo_job())

    assert today.refits
    assert today.orders
    assert today.chores
    assert list(today.calendar) == sorted(today.calendar, key=lambda one: (one.day, one.id))
    named = {one.component for one in today.calendar}
    assert {row.component for row in today.overdue.rows} <= named


def test_a_piece_without_an_owner_is_in_the_calendar_too() -> None:
    """A spare's dates are known as well; a day nobody knows is no day."""
    spare = replace(JOB.components[0], owner=None, set=SetId("spare"))
    undated = replace(JOB.components[3], made=DateSpan(), in_service=DateSpan())
    small = replace(JOB, components=(spare, undated), upkeep=UpkeepFacts())
    found = plan_today(RULES, small).calendar

    assert {(one.component, one.owner) for one in found if one.component == COAT} == {(COAT, "")}
