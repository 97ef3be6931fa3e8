"""Out of everybody's hands: evidence, a casualty's gear, torn and soiled gloves, retired gear."""

import pytest
from tests.care_facts import (
    causes,
    decide,
    decide_one,
    fire,
    hazard,
    hold,
    person,
    piece,
    remark,
    said,
)  # fmt: skip

from sootline.core.basis import MemberId
from sootline.core.care import Decision, Fate
from sootline.core.gear import Custody, Life, State, WashMethod
from sootline.core.rulebook import Decider, Knowledge

SHELL = piece("coat-shell")


def is_secured(decision: Decision) -> bool:
    """Whether nothing may be done to it and an investigator decides."""
    held = [one.decider for one in decision.open_holds]
    return (
        decision.fate is Fate.EVIDENCE
        and decision.wash is WashMethod.NONE
        and decision.sealed
        and Decider.INVESTIGATOR in held
    )


def test_evidence_is_not_washed() -> None:
    """Secured by an investigator at the call."""
    assert is_secured(decide_one(SHELL, fire(person(), evidence=(SHELL.id,))))


def test_evidence_on_record_is_not_washed() -> None:
    """The record says so, no call need repeat it."""
    taken = piece("coat-shell", state=State(custody=Custody.EVIDENCE))
    decision = decide_one(taken)

    assert is_secured(decision)
    assert causes(decision) == ["evidence.custody"]


def test_evidence_named_by_call_and_record_is_one_hold() -> None:
    """The call says it better."""
    taken = piece("coat-shell", state=State(custody=Custody.EVIDENCE))

    assert causes(decide_one(taken, fire(person(), evidence=(taken.id,)))) == ["evidence/c1"]


def test_everything_of_a_casualty_is_secured() -> None:
    """What was worn and what hung on the hook, and what was borrowed; nobody else's."""
    borrowed, spare, other = piece("hood", "B"), piece("gloves"), piece("coat-shell", "B")
    people = (person("A", worn=(SHELL.id, borrowed.id)), person("B", worn=(other.id,)))
    call = fire(*people, casualties=(MemberId("A"),))
    found = decide([SHELL, borrowed, spare, other], [call])

    assert [is_secured(one) for one in found] == [True, True, True, False]


def test_evidence_goes_before_every_other_hold() -> None:
    """Powder on it: still the investigator's."""
    call = fire(person(), evidence=(SHELL.id,), hazards=(hazard("drug-powder"),))

    assert is_secured(decide_one(SHELL, call))


def test_evidence_that_was_released_goes_its_way() -> None:
    """The investigator gave it back in writing: it is washed like the rest."""
    released = hold("evidence/c1", decider=Decider.INVESTIGATOR, released_by="investigator")
    back = piece("coat-shell", state=State(holds=(released,)))

    assert decide_one(back, fire(person(), evidence=(back.id,))).fate is Fate.WASH


@pytest.mark.parametrize(
    ("kind", "name", "torn", "fate"),
    [
        ("gloves", "blood", True, Fate.OUT),
        ("gloves", "blood", False, Fate.HOLD),
        ("gloves", "smoke", True, Fate.WASH),
        ("hood", "blood", True, Fate.HOLD),
    ],
)
def test_a_torn_glove_with_body_fluids_is_not_used_again(
    kind: str, name: str, torn: bool, fate: Fate
) -> None:
    """Only torn, only with fluids, only gloves."""
    component = piece(kind)
    call = fire(person(), remarks=(remark(component, name, torn=torn),))

    assert decide_one(component, call).fate is fate


def test_a_tear_at_another_call_is_another_matter() -> None:
    """Torn last week and mended, blood tonight: held, not out."""
    gloves = piece("gloves")
    before = fire(person(), id="c0", remarks=(remark(gloves, torn=True),))
    tonight = fire(person(), remarks=(remark(gloves, "blood"),))

    assert decide_one(gloves, before, tonight).fate is Fate.HOLD


def test_whatever_is_torn_is_inspected() -> None:
    """The caution stands where the work is done."""
    call = fire(person(), remarks=(remark(SHELL, torn=True),))

    assert "care.warn.torn" in said(decide_one(SHELL, call).cautions)


@pytest.mark.parametrize("life", [Life.RETIRED, Life.DISPOSED])
def test_retired_gear_is_refused_with_its_reason(life: Life) -> None:
    """Nothing is washed for use any more; what was on it is still told."""
    gone = piece("coat-shell", state=State(life=life))
    decision = decide_one(gone, fire(person(), hazards=(hazard("asbestos", Knowledge.KNOWN),)))

    assert (decision.fate, decision.wash) == (Fate.OUT, WashMethod.NONE)
    assert decision.reasons[0].message == f"care.out.{life}"
    assert causes(decision) == ["asbestos.known/c1"]
