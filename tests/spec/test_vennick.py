"""What an officer expects of an inspection day (Vennick, invented): twenty coats on 2026-04-11.

Seventeen without findings, one lifted trim, one light through the liner, one on leave.
"""

from collections import Counter

import pytest
from tests.upkeep_gear import DAY, bench, inspect, part

from sootline.core.basis import ComponentId, DateSpan
from sootline.core.exposure import Answer
from sootline.core.gear import Component
from sootline.core.rebuild import Flaw, FlawFound
from sootline.core.upkeep.inspections import (
    Absent,
    DayResult,
    Inspection,
    InspectionDay,
    InspectionKind,
    Judged,
    LinerTest,
    LinerTestDone,
    Result,
    judge_day,
)

COATS = tuple(f"{number:02}" for number in range(1, 21))
TRIM, LIGHT, LEAVE = "05", "11", "20"
GEAR = tuple(
    part(f"{coat}-{layer}", f"coat-{layer}") for coat in COATS for layer in ("shell", "liner")
)
PLAN = InspectionDay(
    kind=InspectionKind.ADVANCED,
    on=DAY,
    planned=tuple(piece.id for piece in GEAR),
    absent=tuple(
        Absent(component=ComponentId(f"{LEAVE}-{layer}"), why="on leave")
        for layer in ("shell", "liner")
    ),
)


def found(piece: Component) -> Inspection:
    """Return what was found on a piece that day."""
    if piece.id == f"{TRIM}-shell":
        return inspect(piece, FlawFound(flaw=Flaw.TRIM_LIFTED, place="left cuff"))
    if piece.id == f"{LIGHT}-liner":
        through = LinerTestDone(test=LinerTest.LIGHT, passed=Answer.NO, place="left armpit")
        return inspect(piece, tests=(through, *inspect(piece).tests[1:]))
    return inspect(piece)


@pytest.fixture(scope="module")
def day() -> DayResult:
    """Judge the day."""
    made = [found(piece) for piece in GEAR if not piece.id.startswith(LEAVE)]
    return judge_day(PLAN, GEAR, made, bench())


def piece(day: DayResult, name: str) -> Judged:
    """Return what came of one piece."""
    return next(one for one in day.pieces if one.component == name)


def test_twenty_coats_come_out_as_they_were_found(day: DayResult) -> None:
    """17, 1, 1 and 1."""
    assert Counter(one.result for one in day.elements) == {
        Result.NOTHING_FOUND: 17,
        Result.ADVANCED_REPAIR: 1,
        Result.LINER_INSPECTION: 1,
        Result.STILL_DUE: 1,
    }


def test_seventeen_are_due_again_a_year_on(day: DayResult) -> None:
    """Each shell and each liner of them on 2027-04-11."""
    passed = [one for one in day.pieces if one.component[:2] not in (TRIM, LIGHT, LEAVE)]

    assert len(passed) == 34
    assert {one.next_due for one in passed} == {DateSpan.parse("2027-04-11")}


def test_lifted_trim_goes_to_advanced_repair_not_the_station(day: DayResult) -> None:
    """The edition lists trim as advanced."""
    trim = piece(day, f"{TRIM}-shell")

    assert trim.result is Result.ADVANCED_REPAIR
    assert "mend.advanced.not_here" in {reason.message for reason in trim.reasons}


def test_light_through_the_liner_holds_it_until_it_is_opened(day: DayResult) -> None:
    """A hold that a person ends; the place of the finding is kept."""
    liner = piece(day, f"{LIGHT}-liner")
    reason = next(one for one in liner.reasons if one.message == "inspection.flaw.open_liner")

    assert [hold.cause for hold in liner.holds] == ["inspect.liner-inspection"]
    assert reason.value("place") == "left armpit"


def test_the_shell_of_the_held_liner_has_passed(day: DayResult) -> None:
    """Only the liner is held; the coat as a whole does not pass."""
    assert piece(day, f"{LIGHT}-shell").result is Result.NOTHING_FOUND


def test_the_absent_coat_stays_due(day: DayResult) -> None:
    """As it was due before, with the reason it was not there."""
    absent = piece(day, f"{LEAVE}-shell")

    assert (absent.counts, absent.next_due) == (False, None)
    assert absent.reasons[0].value("why") == "on leave"
    assert absent.reasons[0].value("first_day") == "2026-04-11"


def test_nothing_passes_at_once() -> None:
    """A day's plan with no inspections leaves all forty pieces due, each with its points."""
    day = judge_day(PLAN, GEAR, (), bench())

    assert {one.result for one in day.pieces} == {Result.STILL_DUE}
    assert all(one.to_look for one in day.pieces)


def test_one_point_not_looked_at_keeps_a_piece_due() -> None:
    """Ticking nothing is not passing."""
    shell = GEAR[0]
    short = inspect(shell, looked=inspect(shell).looked[1:])
    day = judge_day(PLAN, GEAR, (short,), bench())

    assert piece(day, shell.id).to_look == ("inspection.point.soil",)
    assert not piece(day, shell.id).counts
