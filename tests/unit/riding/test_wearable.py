"""Why a component cannot be worn now, and from when it can."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.riding_gear import NOW, READY, piece, rider, situation

from sootline.core.basis import ComponentId, DateSpan, Finding, MemberId, MessageId, MinuteSpan
from sootline.core.care import Decision, Fate
from sootline.core.gear import (
    Assembly,
    CareStage,
    Component,
    Custody,
    Element,
    Hold,
    Life,
    State,
    find_kind,
)
from sootline.core.intervals import Due, Matter, Standing
from sootline.core.job.jobs import Department, Job, Member
from sootline.core.riding import Back, Loan, RidingFacts, Slot, Unit
from sootline.core.rulebook import Decider
from sootline.tasks.decide import decide_job
from sootline.wiring.rules import RULES

HOLD = Hold(
    cause="powder",
    question=MessageId("care.ask.powder"),
    decider=Decider.SAFETY_OFFICER,
    deputy=Decider.CHIEF,
    escalate_after_h=4,
)
BACK = MinuteSpan(earliest=300, likely=400, late=500)
HOOD_ONLY = (Slot.HOOD,)
NO_FACTS = RidingFacts()


def hood(state: State = READY) -> Component:
    """Return M1's hood."""
    return piece("H1", "hood", "M1", state)


def unit_of(component: Component, facts: RidingFacts = NO_FACTS, **found: object) -> Unit:
    """Return what the component comes to."""
    (unit,) = situation([component], [rider("M1", needs=HOOD_ONLY)], facts, **found).units
    return unit


def messages(found: tuple[Finding, ...]) -> list[str]:
    """Return the message ids."""
    return [one.message for one in found]


@pytest.mark.parametrize(
    ("state", "message"),
    [
        (State(stage=CareStage.WASHED, custody=Custody.WASH_ROOM), "riding.piece.stage"),
        (State(stage=CareStage.WORN), "riding.piece.stage"),
        (State(custody=Custody.WASH_ROOM), "riding.piece.custody"),
        (State(assembly=Assembly.APART), "riding.piece.apart"),
    ],
)
def test_what_washing_and_checking_end_is_back_by_the_plan(state: State, message: str) -> None:
    """In the wash room, worn or apart: not now, but by the plan's time, if there is a plan."""
    planned = unit_of(hood(state), backs=(Back(component=ComponentId("H1"), when=BACK),))

    assert messages(planned.reasons) == [message]
    assert planned.back == BACK
    assert unit_of(hood(state)).back is None


@pytest.mark.parametrize(
    ("state", "message"),
    [
        (State(holds=(HOLD,)), "riding.piece.hold"),
        (State(life=Life.RESERVE), "riding.piece.life"),
        (State(custody=Custody.CONTRACTOR), "riding.piece.custody"),
        (State(assembly=Assembly.MISMATCHED), "riding.piece.assembly"),
    ],
)
def test_no_plan_ends_a_hold_a_repair_or_a_mismatch(state: State, message: str) -> None:
    """Somebody must decide first, so no time is known, whatever the plan says."""
    unit = unit_of(hood(state), backs=(Back(component=ComponentId("H1"), when=BACK),))

    assert messages(unit.reasons) == [message]
    assert unit.back is None


def test_a_released_hold_is_no_reason() -> None:
    """A hold that somebody entitled has ended keeps nobody off."""
    released = replace(HOLD, released_by="Capt. 4", released_at="2026-03-01T02:00Z")

    assert unit_of(hood(State(holds=(released,)))).reasons == ()


def test_a_date_that_has_come_keeps_it_off_and_one_to_come_does_not() -> None:
    """Only a first day out that has come, as the intervals say, counts."""
    due = Due(
        component=ComponentId("H1"),
        matter=Matter.RETIREMENT,
        first_day=DateSpan.parse("2026-02-28"),
        standing=Standing.OUT,
        reasons=(),
    )

    assert messages(unit_of(hood(), dues=(due,)).reasons) == ["riding.piece.out"]
    assert unit_of(hood(), dues=(replace(due, standing=Standing.LATER),)).reasons == ()


def decision(fate: Fate) -> Decision:
    """Return a decision on the hood with another fate."""
    job = Job(
        version=1,
        now=NOW,
        department=Department(name="Here", edition="nfpa-1851/2020"),  # type: ignore[arg-type]
        members=(Member(id=MemberId("M1")),),
        components=(hood(),),
    )
    (made,) = decide_job(RULES, job).decisions
    return replace(made, fate=fate)


@pytest.mark.parametrize(
    ("fate", "message"),
    [
        (Fate.WASH, "riding.piece.needs_wash"),
        (Fate.EVIDENCE, "riding.piece.fate"),
        (Fate.OUT, "riding.piece.fate"),
    ],
)
def test_what_care_asks_for_keeps_it_off(fate: Fate, message: str) -> None:
    """A wash, evidence or gear out after the call: not to be worn."""
    assert messages(unit_of(hood(), decisions=(decision(fate),)).reasons) == [message]


@pytest.mark.parametrize("stage", [CareStage.CHECKED, CareStage.WORN])
def test_what_only_needs_a_look_rides_once_looked_over(stage: CareStage) -> None:
    """A look is the wearer's own, minutes before; it is said and keeps nobody off."""
    unit = unit_of(hood(State(stage=stage)), decisions=(decision(Fate.LOOK),))

    assert unit.reasons == ()
    assert messages(unit.first) == ["riding.piece.look_first"]


def test_a_loan_is_there_from_its_late_end() -> None:
    """Promised in 30 to 50 minutes: not now, by 50; in the past it is here."""
    lent = replace(piece("L1", "hood"), guest="Ashby Mill")
    loan = Loan(
        components=(ComponentId("L1"),),
        lender="Ashby Mill",
        arrives=NOW + dt.timedelta(minutes=30),
        latest=NOW + dt.timedelta(minutes=50),
    )
    coming = unit_of(lent, RidingFacts(loans=(loan,)))
    here = unit_of(lent, RidingFacts(loans=(replace(loan, arrives=NOW, latest=NOW),)))

    assert coming.back is not None
    assert (coming.back.earliest, coming.back.late) == (30, 50)
    assert messages(coming.reasons) == ["riding.piece.on_loan_later"]
    assert (here.reasons, here.lender) == ((), "Ashby Mill")


def test_another_departments_gear_is_no_spare_unless_it_is_lent() -> None:
    """Mutual-aid gear in our wash room is handed to nobody."""
    guest = replace(piece("G1", "hood"), guest="Ashby Mill")

    assert situation([guest], [rider("M1", needs=HOOD_ONLY)], RidingFacts()).units == ()


def test_a_hood_is_its_own_element() -> None:
    """The kind says which place it fills."""
    assert find_kind(hood().kind).element is Element.HOOD
    assert unit_of(hood()).slot is Slot.HOOD
