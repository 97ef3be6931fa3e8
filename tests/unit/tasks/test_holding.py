"""Holds open, outlive everything, and end only by somebody entitled who says what was decided."""

from dataclasses import replace
from functools import cache

import pytest
from tests.unit.tasks.memory_book import COAT, act, book, last_about, state_of

from sootline.core.basis import (
    BadInputError,
    Bearing,
    Confidence,
    EditionId,
    Ground,
    MessageId,
    RuleId,
    finding,
)
from sootline.core.care import Decision
from sootline.core.gear import Hold
from sootline.core.ledger import read_payload
from sootline.core.rulebook.contaminants import Decider
from sootline.files.demo import demo_job
from sootline.files.rules import RuleFiles
from sootline.tasks.decide import decide_job
from sootline.tasks.holds import hold_by_hand, release_hold
from sootline.tasks.record_decisions import record_decisions
from sootline.tasks.recording import RefusedError

GROUND = Ground(
    rule=RuleId("hold.battery"), edition=EditionId("practice"), source="common practice",
    confidence=Confidence.PRACTICE,
)  # fmt: skip
HOLD = Hold(
    cause="battery",
    question=MessageId("care.ask.battery"),
    decider=Decider.SAFETY_OFFICER,
    deputy=Decider.CHIEF,
    escalate_after_h=12,
    reason=finding(Bearing.HOLDS, "care.hold.battery", GROUND),
)
SAFETY, OFFICER = Decider.SAFETY_OFFICER, Decider.GEAR_OFFICER


@cache
def _decided() -> Decision:
    rules = RuleFiles()
    return decide_job(rules, demo_job(rules)).decisions[0]


def _decision(*holds: Hold) -> Decision:
    return replace(_decided(), component=COAT, holds=holds)


def test_a_hold_by_hand_and_its_end() -> None:
    """The safety officer ends it; who decided and what was said stand in the state."""
    made = book()
    hold_by_hand(made, act("h", minute=1), COAT, HOLD)
    assert [hold.cause for hold in state_of(made).open_holds] == ["battery"]

    release_hold(
        made, act("e", minute=2), COAT, cause="battery", by="500", office=SAFETY, said="no contact"
    )

    assert state_of(made).open_holds == ()
    assert state_of(made).holds[0].released_by == "500: no contact"


def test_the_reason_of_a_hold_is_recorded() -> None:
    """Its ground stands in the entry."""
    made = book()

    hold_by_hand(made, act("h"), COAT, HOLD)

    said = read_payload(last_about(made).payload or "")
    assert said["finding"]["ground"]["rule"] == "hold.battery"  # type: ignore[index,call-overload]


def test_nobody_else_ends_a_hold() -> None:
    """An office that is neither decider nor deputy is refused, and the hold stays."""
    made = book()
    hold_by_hand(made, act("h", minute=1), COAT, HOLD)

    with pytest.raises(RefusedError) as raised:
        release_hold(
            made, act("e", minute=2), COAT, cause="battery", by="200", office=OFFICER, said="fine"
        )

    assert raised.value.refused[0][1].message == "gear.refused.not_entitled"
    assert len(state_of(made).open_holds) == 1


def test_what_was_decided_must_be_said() -> None:
    """Neither a name nor a reason may be blank."""
    with pytest.raises(BadInputError) as raised:
        release_hold(book(), act("e"), COAT, cause="battery", by="", office=SAFETY, said=" ")

    assert [fault.place for fault in raised.value.faults] == ["by", "said"]


def test_the_same_hold_twice_is_refused() -> None:
    """One cause is one hold; under the same key it is the same request."""
    made = book()
    hold_by_hand(made, act("h", minute=1), COAT, HOLD)

    with pytest.raises(RefusedError):
        hold_by_hand(made, act("i", minute=2), COAT, HOLD)

    assert hold_by_hand(made, act("h", minute=1), COAT, HOLD)[0].repeated


def test_an_end_asked_for_again() -> None:
    """The same decision under the same key is answered again."""
    made = book()
    hold_by_hand(made, act("h", minute=1), COAT, HOLD)
    for _ in range(2):
        (done,) = release_hold(
            made, act("e", minute=2), COAT, cause="battery", by="500", office=SAFETY, said="none"
        )

    assert done.repeated


def test_decisions_are_kept_with_their_reasons() -> None:
    """What was decided stands in the record, and its holds are open."""
    made = book()

    record_decisions(made, act("d"), [_decision(HOLD)])

    entries = [entry.read_header().kind for entry in made.ledger.entries(2)]
    assert entries == ["decided", "hold-opened"]
    assert len(state_of(made).open_holds) == 1


def test_a_hold_decided_again_stays_one() -> None:
    """Deciding twice asks for the same hold and leaves one."""
    made = book()
    record_decisions(made, act("d", minute=1), [_decision(HOLD)])

    record_decisions(made, act("f", minute=2), [_decision(HOLD)])

    assert len(state_of(made).holds) == 1


def test_no_decisions() -> None:
    """Nothing decided is nothing to record."""
    with pytest.raises(BadInputError):
        record_decisions(book(), act("d"), [])
