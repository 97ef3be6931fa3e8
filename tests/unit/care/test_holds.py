"""Holds: opened by a rule, a building or a ceiling; ended only by somebody entitled."""

import datetime as dt

import pytest
from tests.care_facts import (
    NOW,
    bystander,
    causes,
    contaminant,
    decide_one,
    fire,
    hazard,
    hold,
    person,
    piece,
    remark,
    said,
)  # fmt: skip

from sootline.core.basis import ContaminantId, DateSpan
from sootline.core.care import Appointment, BuildingHold, CarePolicy, Fate
from sootline.core.exposure import Answer, Building, Presence, Survey, Zone
from sootline.core.gear import Act, CareText, State, WashMethod
from sootline.core.rulebook import Decider, Knowledge, Level

SHELL = piece("coat-shell")
ASBESTOS = ContaminantId("asbestos")
POWDER = "drug-powder.suspected/c1"


@pytest.mark.parametrize("name", ["drug-powder", "asbestos", "bed-bugs", "fuel", "chemical"])
def test_a_hold_names_who_decides_who_stands_in_and_when_it_goes_up(name: str) -> None:
    """As the practice file says for the contaminant."""
    rule = contaminant(name)
    opened = decide_one(SHELL, fire(person(), hazards=(hazard(name),))).open_holds[0]

    assert (opened.decider, opened.deputy) == (rule.decider, rule.deputy)
    assert opened.escalate_after_h == rule.escalate_after_h


@pytest.mark.parametrize(("hours", "expected"), [(2, 2), (48, 12), (None, 12)])
def test_tonights_names_stand_with_the_hold(hours: int | None, expected: int) -> None:
    """The office's own hours only shorten."""
    tonight = Appointment(office=Decider.SAFETY_OFFICER, person="L. Brandt", deputy="P. Ito",
                          escalate_after_h=hours)  # fmt: skip
    call = fire(person(), hazards=(hazard("drug-powder"),))
    opened = decide_one(SHELL, call, policy=CarePolicy(appointments=(tonight,))).open_holds[0]

    assert opened.reason is not None
    assert opened.reason.value("person") == "L. Brandt"
    assert opened.reason.value("stand_in") == "P. Ito"
    assert opened.escalate_after_h == expected


def test_an_office_nobody_holds_tonight_is_named_without_a_person() -> None:
    """The office still decides."""
    vacant = CarePolicy(appointments=(Appointment(office=Decider.SAFETY_OFFICER),))
    call = fire(person(), hazards=(hazard("drug-powder"),))
    opened = decide_one(SHELL, call, policy=vacant).open_holds[0]

    assert opened.decider is Decider.SAFETY_OFFICER
    assert opened.reason is not None
    assert "person" not in dict(opened.reason.values)


def test_a_recorded_hold_stands_whatever_the_calls_say() -> None:
    """Nobody released it: held, though nothing else speaks for it."""
    held = piece("coat-shell", state=State(holds=(hold("by hand"),)))

    assert decide_one(held).fate is Fate.HOLD


def test_an_ended_hold_is_not_opened_again_for_the_same_cause() -> None:
    """The safety officer decided on the suspicion; it is shown with the name."""
    released = hold(POWDER, released_by="safety officer")
    held = piece("coat-shell", state=State(holds=(released,)))
    call = fire(person(), hazards=(hazard("drug-powder", Knowledge.SUSPECTED),))
    decision = decide_one(held, call)

    assert (decision.fate, decision.holds) == (Fate.WASH, (released,))
    assert decision.separation.hazards == ("drug-powder",)


def test_a_suspicion_that_becomes_known_is_a_new_cause() -> None:
    """What was decided on a suspicion does not decide on the fact."""
    released = hold(POWDER, released_by="safety officer")
    held = piece("coat-shell", state=State(holds=(released,)))
    decision = decide_one(held, fire(person(), hazards=(hazard("drug-powder"),)))

    assert causes(decision) == ["drug-powder.known/c1"]


@pytest.mark.parametrize(("hours", "is_open"), [(-1, False), (1, True)])
def test_a_recorded_suspicion_ends_with_the_signed_survey(hours: int, is_open: bool) -> None:
    """Recorded yesterday, surveyed since: shown with who signed; not before it is signed."""
    held = piece("coat-shell", state=State(holds=(hold("asbestos.suspected/c1"), hold("other"))))
    signed = Survey(contaminant=ASBESTOS, found=Knowledge.ABSENT, signed_by="surveyor",
                    signed_at=NOW + dt.timedelta(hours=hours))  # fmt: skip
    decision = decide_one(held, fire(person(), building=Building(surveys=(signed,))))
    by_cause = {one.cause: one for one in decision.holds}

    assert by_cause["asbestos.suspected/c1"].open is is_open
    assert by_cause["other"].open


def test_a_survey_does_not_rewrite_who_ended_a_hold_before() -> None:
    """An ended hold keeps its own release."""
    ended = hold("asbestos.suspected/c1", released_by="safety officer")
    signed = Survey(contaminant=ASBESTOS, found=Knowledge.ABSENT, signed_by="surveyor",
                    signed_at=NOW)  # fmt: skip
    held = piece("coat-shell", state=State(holds=(ended,)))
    decision = decide_one(held, fire(person(), building=Building(surveys=(signed,))))

    assert decision.holds == (ended,)


def test_no_way_to_wash_it_is_a_hold_of_the_gear_officer() -> None:
    """The floor is above the ceiling: who decides is named, and the label is cited."""
    never = piece("coat-shell", care=CareText(forbids=(Act.ANY_WASH,)))
    opened = decide_one(never, fire(person())).open_holds[0]

    assert (opened.cause, opened.decider) == ("no-method", Decider.GEAR_OFFICER)
    assert opened.reason is not None
    assert opened.reason.ground.edition == "label"


def test_a_mask_goes_to_its_technician_without_a_hold() -> None:
    """Its washing is somebody else's programme; its records stay there."""
    decision = decide_one(piece("mask"), fire(person()))

    assert (decision.fate, decision.wash, decision.holds) == (Fate.WASH, WashMethod.NONE, ())
    assert decision.preparation[0].act == "gear.prep.to_technician"


@pytest.mark.parametrize("name", ["asbestos", "chemical"])
def test_what_goes_to_a_specialist_asks_one_question(name: str) -> None:
    """The contaminant's own hold covers it; nothing is washed here meanwhile or after."""
    decision = decide_one(SHELL, fire(person(), hazards=(hazard(name),)))

    assert (decision.level, decision.wash) == (Level.SPECIALISED, WashMethod.NONE)
    assert causes(decision) == [f"{name}.known/c1"]


def building(built: str, opened: Answer) -> Building:
    """Return what is known of a house."""
    return Building(built=DateSpan.parse(built), opened=opened)


YES, NO, UNKNOWN = Answer.YES, Answer.NO, Answer.UNKNOWN


@pytest.mark.parametrize(
    ("built", "opened", "there", "held", "apart"),
    [
        ("1962", YES, YES, True, True),
        ("1962", YES, UNKNOWN, True, True),
        ("1962", YES, NO, False, True),
        ("1962", NO, YES, True, True),
        ("1962", NO, UNKNOWN, False, False),
        ("1962", UNKNOWN, UNKNOWN, False, True),
        ("1962", UNKNOWN, NO, False, True),
        ("1975..1985", YES, YES, True, True),
        ("..1990", YES, YES, True, True),
        ("1979", YES, YES, True, True),
        ("1980", YES, YES, False, False),
        ("1980..", YES, YES, False, False),
        ("unknown", YES, YES, False, True),
        ("unknown", YES, NO, False, False),
        ("unknown", UNKNOWN, UNKNOWN, False, False),
        ("unknown", NO, NO, False, False),
    ],
)
def test_the_buildings_age_the_opening_and_who_was_there_decide(
    built: str, opened: Answer, there: Answer, held: bool, apart: bool
) -> None:
    """Before 1980 and opened: act on the earliest reading; an unknown age holds nothing."""
    policy = CarePolicy(building_holds=(BuildingHold(contaminant=ASBESTOS, built_before=1980),))
    call = fire(person(opened=there), building=building(built, opened))
    decision = decide_one(SHELL, call, policy=policy)

    assert (decision.fate is Fate.HOLD) is held
    assert (ASBESTOS in decision.separation.hazards) is apart


@pytest.mark.parametrize(
    ("presence", "held"),
    [
        (person("A", Zone.OUTSIDE, smoke=YES), False),
        (person("A", Zone.OUTSIDE, smoke=YES, opened=YES), True),
        (person("A", Zone.ROOF, smoke=YES), True),
        (person("A", zones=(), smoke=YES), True),
        (bystander(), False),
    ],
)
def test_who_stayed_outdoors_was_not_there_when_it_was_opened(
    presence: Presence, held: bool
) -> None:
    """Unless somebody says so; an unknown place is taken as there."""
    policy = CarePolicy(building_holds=(BuildingHold(contaminant=ASBESTOS, built_before=1980),))
    decision = decide_one(SHELL, fire(presence, building=building("1962", YES)), policy=policy)

    assert (decision.fate is Fate.HOLD) is held


@pytest.mark.parametrize(("built", "held"), [("1962", True), ("unknown", False)])
def test_a_policy_may_hold_whatever_was_opened(built: str, held: bool) -> None:
    """Without the condition of an opening the age alone decides; left before or not."""
    always = BuildingHold(contaminant=ContaminantId("lead-paint"), built_before=1980, opened=False)
    call = fire(person(opened=NO), building=building(built, NO))
    decision = decide_one(SHELL, call, policy=CarePolicy(building_holds=(always,)))

    assert (decision.fate is Fate.HOLD) is held


def test_a_component_only_remarked_on_counts_as_there() -> None:
    """Nobody says who wore it in the opened house, and nothing more is claimed of it."""
    policy = CarePolicy(building_holds=(BuildingHold(contaminant=ASBESTOS, built_before=1980),))
    call = fire(remarks=(remark(SHELL, "smoke"),), building=building("1962", YES))
    decision = decide_one(SHELL, call, policy=policy)

    assert causes(decision) == ["building.asbestos/c1"]
    assert "care.building.held_unsaid" in said(decision.reasons)
