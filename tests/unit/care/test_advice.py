"""Cautions, questions and facts kept: what is watched for and what nobody knows."""

import pytest
from tests.care_facts import (
    bystander,
    contaminant,
    decide_one,
    fire,
    hazard,
    person,
    piece,
    remark,
    said,
)  # fmt: skip

from sootline.core.exposure import Answer, Call, Decon, DeconMethod, Done, Presence, Zone
from sootline.core.gear import Life, State
from sootline.core.rulebook import Knowledge

SHELL = piece("coat-shell")


def test_the_contaminants_cautions_stand_with_the_decision_each_once() -> None:
    """Two statements on one powder give its cautions once."""
    call = fire(person(), hazards=(hazard("drug-powder"), hazard("drug-powder", said_by="B")))
    cautions = said(decide_one(SHELL, call).cautions)

    assert set(contaminant("drug-powder").cautions) <= set(cautions)
    assert len(cautions) == len(set(cautions))


def test_the_label_is_read_before_anything_gets_wet() -> None:
    """The label goes before this program."""
    assert "care.warn.label_first" in said(decide_one(SHELL, fire(person())).cautions)


@pytest.mark.parametrize(("training", "warned"), [(True, False), (False, True)])
def test_training_gear_at_a_real_call_is_remarked_on(training: bool, warned: bool) -> None:
    """At a training burn it is where it belongs."""
    old = piece("coat-shell", state=State(life=Life.TRAINING_ONLY))
    cautions = said(decide_one(old, fire(person(), training=training)).cautions)

    assert ("care.warn.training_only" in cautions) is warned


def test_what_nobody_knows_about_a_contaminant_is_listed() -> None:
    """As the practice file says it."""
    unknowns = said(decide_one(SHELL, fire(person())).unknowns)

    assert set(contaminant("smoke").not_known) <= set(unknowns)


def test_an_assumed_exposure_is_among_what_is_not_known() -> None:
    """Nobody said whether A was in smoke: taken as exposed, and asked."""
    decision = decide_one(SHELL, fire(person("A", Zone.ROOF)))

    assert "exposure.smoke.unknown" in said(decision.unknowns)


def test_the_terms_own_questions_are_listed() -> None:
    """What label and edition leave open is asked with the rest."""
    decision = decide_one(SHELL, fire(person()))

    assert set(decision.terms.questions) <= set(decision.unknowns)


INSIDE, AWAY = person("A", worn=(SHELL.id,)), bystander("A", worn=(SHELL.id,))
SOMEWHERE = person("A", zones=())


@pytest.mark.parametrize(
    ("call", "asked"),
    [
        (fire(SOMEWHERE, code="111"), {"smoke"}),
        (fire(INSIDE, code="111"), set()),
        (fire(AWAY, code="111"), set()),
        (fire(INSIDE, code="321"), {"blood"}),
        (fire(INSIDE, code="321", hazards=(hazard("blood", Knowledge.ABSENT),)), set()),
        (fire(INSIDE, code="321", hazards=(hazard("blood", Knowledge.UNKNOWN),)), {"blood"}),
        (fire(INSIDE, code="422"), {"hazardous"}),
        (fire(INSIDE, code="651"), set()),
        (fire(SOMEWHERE, code="651"), {"worn"}),
        (fire(SOMEWHERE, code="141"), {"ensemble", "smoke"}),
        (fire(SOMEWHERE), set()),
    ],
)
def test_a_code_asks_what_nobody_has_answered(call: Call, asked: set[str]) -> None:
    """A member's statement outranks the code."""
    found = said(decide_one(SHELL, call).unknowns)
    questions = {one.removeprefix("exposure.ask.") for one in found if "exposure.ask" in one}

    assert questions == asked


@pytest.mark.parametrize("code", ["111", "321", "422", "651", "999", "nothing known"])
def test_a_code_decides_nothing(code: str) -> None:
    """With it and without it the decision is the same, questions apart."""
    with_code = decide_one(SHELL, fire(INSIDE, code=code))
    without = decide_one(SHELL, fire(INSIDE))

    assert (with_code.fate, with_code.level, with_code.holds, with_code.reasons) == (
        without.fate, without.level, without.holds, without.reasons,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("decon", "message"),
    [
        (Decon(done=Done.DONE), "care.reduction.done"),
        (Decon(done=Done.PART, method=DeconMethod.WATER), "care.reduction.part"),
        (Decon(done=Done.NOT_DONE, reason="frozen line"), "care.reduction.not-done"),
        (Decon(), None),
    ],
)
def test_what_was_done_on_scene_is_kept_without_blame(decon: Decon, message: str | None) -> None:
    """Done, in part, or not, with its reason; it lowers nothing."""
    decision = decide_one(SHELL, fire(person(decon=decon)))
    kept = [one for one in said(decision.reasons) if "reduction" in one]

    assert kept == ([message] if message else [])


@pytest.mark.parametrize(
    ("method", "message"),
    [
        (DeconMethod.WET_SOAP, "care.rinsed.by_reduction"),
        (DeconMethod.DRY_BRUSH, "care.reduction.done"),
    ],
)
def test_water_on_gear_with_blood_is_kept_as_a_rinse(method: DeconMethod, message: str) -> None:
    """A fact that happened; a dry brush is no rinse."""
    presence: Presence = person(decon=Decon(done=Done.DONE, method=method))
    decision = decide_one(SHELL, fire(presence, remarks=(remark(SHELL, "blood"),)))

    assert message in said(decision.reasons)


@pytest.mark.parametrize(("rinsed", "kept"), [(Answer.YES, True), (Answer.UNKNOWN, False)])
def test_a_rinse_that_happened_stays_a_fact(rinsed: Answer, kept: bool) -> None:
    """Only where somebody said so."""
    decision = decide_one(SHELL, fire(person(), remarks=(remark(SHELL, "blood", rinsed=rinsed),)))

    assert ("care.rinsed.already" in said(decision.reasons)) is kept


def test_a_guests_gear_is_decided_like_our_own_and_marked() -> None:
    """The neighbour's coat gets the same care, and goes back."""
    guest = piece("coat-shell", guest="Eastmarch")
    decision = decide_one(guest, fire(person()))
    note = next(one for one in decision.reasons if one.message == "care.note.guest")

    assert decision.level == decide_one(SHELL, fire(person())).level
    assert note.value("department") == "Eastmarch"


def test_what_is_sealed_without_fluids_goes_in_any_shut_bag() -> None:
    """Bagged, marked, kept shut; no step opens it."""
    decision = decide_one(SHELL, fire(person(), hazards=(hazard("drug-powder"),)))

    assert [step.act for step in decision.preparation] == [
        "care.prep.bag", "care.prep.mark", "care.prep.keep_shut",
    ]  # fmt: skip


def test_what_is_held_without_a_seal_has_no_steps() -> None:
    """Fuel on it: kept from flame, aired, nothing bagged shut."""
    decision = decide_one(SHELL, fire(person(), hazards=(hazard("fuel"),)))

    assert (decision.sealed, decision.preparation) == (False, ())
