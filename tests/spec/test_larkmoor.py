"""Larkmoor (invented): on 2026-09-01 P5 returns coat shell X1 and takes X2, try-on not signed."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.riding_gear import piece

from sootline.core.basis import (
    BadInputError,
    Bearing,
    ComponentId,
    DateSpan,
    EditionId,
    MemberId,
)
from sootline.core.gear import CareStage, Custody, Life, State
from sootline.core.job.jobs import Department, Job, Member
from sootline.core.riding import ExchangeAnswer, ExchangeFacts, RidingFacts, TryOn
from sootline.tasks.who_can_ride import who_can_ride
from sootline.wiring.rules import RULES

NOW = dt.datetime(2026, 9, 1, 9, tzinfo=dt.UTC)
SWAP = ExchangeFacts(
    member=MemberId("P5"),
    returns=ComponentId("X1"),
    takes=ComponentId("X2"),
    worn=DateSpan.parse("2026-08-05"),
    washed=DateSpan.parse("2026-08-02"),
)
TAKEN = State(custody=Custody.SPARE_RACK)


def larkmoor(
    *,
    swap: ExchangeFacts = SWAP,
    signed_by: str | None = None,
    made: str = "2017-08",
    x2: State = TAKEN,
) -> Job:
    """Return the job: X1 is P5's, X2 stands on the rack; ten years from manufacture."""
    worn = piece("X1", "coat-shell", "P5")
    taken = replace(piece("X2", "coat-shell", state=x2), made=DateSpan.parse(made))
    try_on = TryOn(component=ComponentId("X2"), member=MemberId("P5"), signed_by=signed_by)
    return Job(
        version=1,
        now=NOW,
        department=Department(name="Larkmoor", edition=EditionId("nfpa-1851/2020")),
        members=(Member(id=MemberId("P5")),),
        components=(worn, taken),
        riding=RidingFacts(exchanges=(swap,), try_ons=(try_on,), warn_months_left=12),
    )


def answered(job: Job) -> ExchangeAnswer:
    """Return the answer to the one exchange."""
    (answer,) = who_can_ride(RULES, job).exchanges
    return answer


def messages(answer: ExchangeAnswer) -> set[str]:
    """Return what was found, by message."""
    return {one.message for one in answer.findings}


def test_x1_needs_a_wash_and_is_not_issuable() -> None:
    """Worn on 5 August, washed on the 2nd: no wash since it was worn."""
    answer = answered(larkmoor())

    (found,) = [one for one in answer.findings if one.message == "riding.exchange.wash_first"]
    assert found.bearing is Bearing.REQUIRES
    assert (found.value("component"), found.value("worn")) == ("X1", "2026-08-05")
    assert not answer.issuable


def test_x2_warns_of_eleven_months_left_and_its_first_day_out() -> None:
    """Made "2017-08", ten years: out from 2027-08-01 at the earliest, eleven months away."""
    answer = answered(larkmoor())

    (found,) = [one for one in answer.findings if one.message == "riding.exchange.months_left"]
    assert found.bearing is Bearing.WARNS
    assert (found.value("n"), found.value("first_day")) == ("11", "2027-08-01")
    assert answer.months_left == 11


def test_x2_is_not_for_interior_work_until_the_try_on_is_signed() -> None:
    """Unsigned it may be taken, not worn inside; signed it may."""
    unsigned, signed = answered(larkmoor()), answered(larkmoor(signed_by="Lt. 31"))

    assert not unsigned.interior
    assert "riding.exchange.try_on" in messages(unsigned)
    assert signed.interior
    assert "riding.exchange.try_on" not in messages(signed)


def test_both_moves_are_made_in_one_step() -> None:
    """X1 goes to the wash room to be washed, X2 to P5."""
    first, second = answered(larkmoor()).moves

    assert (first.component.id, first.after.stage) == ("X1", CareStage.TO_WASH)
    assert first.after.custody is Custody.WASH_ROOM
    assert (second.component.id, second.after.holder) == ("X2", "P5")


@pytest.mark.parametrize(
    ("job", "reason"),
    [
        (larkmoor(made="2016-09-01"), "riding.exchange.out"),
        (larkmoor(x2=State(holder=MemberId("P6"))), "riding.exchange.taken"),
        (larkmoor(x2=State(life=Life.RETIRED)), "riding.piece.life"),
        (larkmoor(x2=State(stage=CareStage.DRYING)), "riding.piece.stage"),
    ],
)
def test_neither_move_is_made_when_x2_may_not_be_taken(job: Job, reason: str) -> None:
    """Out by its date, somebody else's, retired or wet: P5 keeps X1."""
    answer = answered(job)

    assert answer.moves == ()
    assert not answer.interior
    assert reason in messages(answer)


@pytest.mark.parametrize(
    ("worn", "washed", "issuable"),
    [
        ("2026-08-05", "2026-08-20", True),
        ("2026-08-05", "2026-08-05", False),
        ("2026-08", "2026-08-20", False),
        ("unknown", "2026-08-20", False),
        ("2026-08-05", "unknown", False),
    ],
)
def test_x1_is_issuable_only_when_the_wash_is_known_to_be_the_later(
    worn: str, washed: str, *, issuable: bool
) -> None:
    """The same day or an unknown one counts as worn since the wash."""
    swap = replace(SWAP, worn=DateSpan.parse(worn), washed=DateSpan.parse(washed))

    assert answered(larkmoor(swap=swap)).issuable is issuable


def test_a_piece_nobody_recorded_is_refused() -> None:
    """An exchange of something the job does not hold is bad input, with its place."""
    job = larkmoor(swap=replace(SWAP, takes=ComponentId("X9")))

    with pytest.raises(BadInputError) as refused:
        who_can_ride(RULES, job)

    (fault,) = refused.value.faults
    assert (fault.place, fault.message) == ("riding.exchanges[0]", "riding.stranger")
