"""What follows from an inspection, piece by piece, and what keeps it from counting."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.upkeep_gear import AT, DAY, INSPECTOR, bench, inspect, part

from sootline.core.basis import DateSpan, Quantity, UnreadableValueError
from sootline.core.exposure import Answer
from sootline.core.gear import CareStage, State
from sootline.core.rebuild import Flaw, FlawFound
from sootline.core.upkeep.inspections import (
    InspectionDay,
    InspectionKind,
    LinerTest,
    LinerTestDone,
    Result,
    judge_absent,
    judge_day,
    judge_inspection,
    list_points,
    list_tests,
)

SHELL, LINER = part("01-shell"), part("01-liner", "coat-liner")
ROUTINE, ADVANCED, COMPLETE = InspectionKind


@pytest.mark.parametrize(
    ("flaw", "result"),
    [
        (Flaw.SOILED, Result.WASH_FIRST),
        (Flaw.TORN, Result.BASIC_REPAIR),
        (Flaw.TRIM_LIFTED, Result.ADVANCED_REPAIR),
        (Flaw.CHARRED, Result.HOLD),
    ],
)
def test_what_a_flaw_of_a_shell_leads_to(flaw: Flaw, result: Result) -> None:
    """Wash, station, maker, or a person's decision (common practice, no published source)."""
    judged = judge_inspection(SHELL, inspect(SHELL, FlawFound(flaw=flaw)), bench())

    assert judged.result is result
    assert bool(judged.holds) == (result is Result.HOLD)


def test_a_flaw_in_a_routine_inspection_asks_for_a_closer_look() -> None:
    """The wearer sees; somebody trained looks closer. A routine one sets no day."""
    seen = inspect(SHELL, FlawFound(flaw=Flaw.TORN), kind=ROUTINE, by="m01")
    judged = judge_inspection(SHELL, seen, bench())

    assert (judged.result, judged.counts) == (Result.ADVANCED_INSPECTION, True)
    assert judged.next_due is None


def test_an_opened_liner_that_leaks_goes_to_repair() -> None:
    """In the complete inspection there is nothing left to open."""
    opened = inspect(LINER, FlawFound(flaw=Flaw.LEAK), kind=COMPLETE, by="Mendwell")
    judged = judge_inspection(LINER, opened, bench())

    assert judged.result is Result.ADVANCED_REPAIR


def test_soiled_gear_is_washed_before_it_is_inspected() -> None:
    """It does not count; a routine look at what was worn does."""
    worn = replace(SHELL, state=State(stage=CareStage.WORN))
    judged = judge_inspection(worn, inspect(worn), bench())
    routine = judge_inspection(worn, inspect(worn, kind=ROUTINE, by="m01"), bench())

    assert (judged.result, judged.counts) == (Result.WASH_FIRST, False)
    assert routine.counts


def test_a_point_nobody_looked_at_keeps_it_due() -> None:
    """Named point by point; a flaw at a point counts as having looked there."""
    points = list_points(SHELL.kind, ADVANCED)
    part_way = inspect(SHELL, FlawFound(flaw=Flaw.TORN, place=points[0]), looked=points[1:-1])
    judged = judge_inspection(SHELL, part_way, bench())

    assert (judged.to_look, judged.counts) == ((points[-1],), False)


def test_somebody_not_entitled_keeps_it_due() -> None:
    """A name without training on record."""
    judged = judge_inspection(SHELL, inspect(SHELL, by="999"), bench())

    assert (judged.result, judged.counts) == (Result.STILL_DUE, False)


@pytest.mark.parametrize(
    ("leakage", "counts"),
    [
        (LinerTestDone(test=LinerTest.LEAKAGE, passed=Answer.UNKNOWN), False),
        (LinerTestDone(test=LinerTest.LEAKAGE, passed=Answer.YES, water_parts=9,
                       waited=Quantity.parse("3 min")), False),
        (LinerTestDone(test=LinerTest.LEAKAGE, passed=Answer.YES, water_parts=6,
                       waited=Quantity.parse("1 min")), False),
        (LinerTestDone(test=LinerTest.LEAKAGE, passed=Answer.YES, water_parts=6), False),
    ],
)  # fmt: skip
def test_a_test_not_carried_out_as_asked_keeps_it_due(leakage: LinerTestDone, counts: bool) -> None:
    """Unknown outcome, another mixture, too short, nobody knows how long."""
    light = LinerTestDone(test=LinerTest.LIGHT, passed=Answer.YES)
    judged = judge_inspection(LINER, inspect(LINER, tests=(light, leakage)), bench())

    assert judged.counts is counts


def test_past_its_years_it_is_proposed_to_be_given_up() -> None:
    """By its dates, or in the inspector's words; a person decides."""
    old = replace(SHELL, made=DateSpan.parse("2015-01"), in_service=DateSpan.parse("2015-06"))
    by_dates = judge_inspection(old, inspect(old), bench())
    by_word = judge_inspection(SHELL, inspect(SHELL, retire="burnt through"), bench())

    assert by_dates.result is by_word.result is Result.RETIRE_PROPOSED


def test_a_complete_inspection_is_of_liners_only() -> None:
    """A shell has no such list; an inspection of nothing does not count."""
    assert list_points(SHELL.kind, COMPLETE) == ()
    assert not judge_inspection(SHELL, inspect(SHELL, kind=COMPLETE, by="Mendwell"), bench()).counts
    assert list_tests(SHELL, ADVANCED, bench().rulebook).tests == ()


def test_absent_without_a_known_day_stays_due() -> None:
    """A routine one has no day to show."""
    judged = judge_absent(SHELL, ROUTINE, "", bench())

    assert (judged.result, judged.reasons[0].value("first_day")) == (Result.STILL_DUE, "unknown")


def test_the_later_of_two_inspections_counts_and_the_unplanned_is_judged() -> None:
    """Seen again in the afternoon; a piece nobody planned is judged as well."""
    day = InspectionDay(kind=ADVANCED, on=DAY, planned=(SHELL.id,))
    loose = replace(LINER, set=None)
    later = replace(inspect(SHELL), at=AT + dt.timedelta(hours=2))
    made = [inspect(SHELL, FlawFound(flaw=Flaw.TORN)), later, inspect(loose)]
    found = judge_day(day, (SHELL, loose), made, bench())

    assert [one.result for one in found.pieces] == [Result.NOTHING_FOUND, Result.NOTHING_FOUND]
    assert found.unplanned == (loose.id,)


def test_an_edition_that_leaves_it_open_is_asked_about() -> None:
    """Which tests, and who may open a liner: asked; meanwhile only somebody verified counts."""
    iso = bench("iso-23616/2024")
    looked = judge_inspection(LINER, inspect(LINER), iso)
    opened = judge_inspection(LINER, inspect(LINER, kind=COMPLETE, by="118"), iso)

    assert "ask.inspect.advanced.tests" in {reason.message for reason in looked.reasons}
    assert not opened.counts


def test_where_no_text_says_who_may_only_somebody_verified_counts() -> None:
    """Neither edition nor practice speak: the strictest is asked for."""
    rules = bench("iso-23616/2024").rulebook
    silent = replace(rules, practice=replace(rules.practice, rules=()))
    judged = judge_inspection(SHELL, inspect(SHELL), replace(bench(), rulebook=silent))

    assert not judged.counts


@pytest.mark.parametrize(
    ("until", "counts"),
    [("2026-04-11", True), ("2026-04-10", False), ("2026", False), ("..2026-04-01", False)],
)
def test_training_counts_to_its_last_day(until: str, counts: bool) -> None:
    """At its earliest reading; the day itself still counts."""
    people = (replace(INSPECTOR, until=DateSpan.parse(until)),)
    judged = judge_inspection(SHELL, inspect(SHELL), replace(bench(), people=people))

    assert judged.counts is counts


def test_a_failed_test_counts_as_carried_out() -> None:
    """Light came through: nothing is lacking, the liner waits to be opened."""
    through = LinerTestDone(test=LinerTest.LIGHT, passed=Answer.NO, place="armpit")
    tests = (through, *inspect(LINER).tests[1:])
    judged = judge_inspection(LINER, inspect(LINER, tests=tests), bench())

    assert (judged.result, judged.counts) == (Result.LINER_INSPECTION, True)
    assert judged.holds[0].cause == "inspect.liner-inspection"


def test_water_pressure_is_held_against_what_is_asked() -> None:
    """The complete inspection of the 2020 edition: too little pressure is done again.

    Source: US care standard, 2020 edition, complete liner inspection (value from memory).
    """
    weak = LinerTestDone(
        test=LinerTest.HYDROSTATIC, passed=Answer.YES, waited=Quantity.parse("15 s"),
        pressure=Quantity.parse("0.1 psi"),
    )  # fmt: skip
    opened = inspect(LINER, kind=COMPLETE, by="Mendwell", tests=(weak,))
    judged = judge_inspection(LINER, opened, bench("nfpa-1851/2020"))

    assert "inspection.test.too_little" in {reason.message for reason in judged.reasons}


def test_an_inspection_by_nobody_is_none() -> None:
    """A name belongs to it."""
    with pytest.raises(UnreadableValueError):
        inspect(SHELL, by=" ")
