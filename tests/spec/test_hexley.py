"""Hexley (invented): a house of 1962 without survey; policy: built before 1980 and ceiling opened.

A and B pulled ceiling, D left before, C stood at the pump and in no smoke.
"""

import datetime as dt

import pytest
from tests.care_facts import (
    bystander,
    causes,
    contaminant,
    contaminants,
    decide,
    fire,
    hazard,
    person,
    piece,
    said,
)  # fmt: skip

from sootline.core.basis import ContaminantId, DateSpan
from sootline.core.care import BuildingHold, CarePolicy, Decision, Fate
from sootline.core.exposure import Answer, Building, Call, Survey, Zone
from sootline.core.rulebook import Decider, Knowledge, Level

ASBESTOS = ContaminantId("asbestos")
POLICY = CarePolicy(building_holds=(BuildingHold(contaminant=ASBESTOS, built_before=1980),))
SIGNED = dt.datetime(2026, 3, 3, 9, 20, tzinfo=dt.UTC)
LATER = dt.datetime(2026, 3, 3, 10, 0, tzinfo=dt.UTC)
GEAR = tuple(piece("coat-shell", member) for member in "ABCD")


def hexley(*surveys: Survey) -> Call:
    """Tell what is known of the house fire."""
    return fire(
        person("A", opened=Answer.YES),
        person("B", opened=Answer.YES),
        bystander("C"),
        person("D", opened=Answer.NO),
        building=Building(built=DateSpan.parse("1962"), opened=Answer.YES, surveys=surveys),
        hazards=(hazard("asbestos", Knowledge.UNKNOWN, None),),
    )


def survey(found: Knowledge) -> Survey:
    """Return a survey signed the next morning."""
    return Survey(
        contaminant=ASBESTOS, found=found, signed_by="M. Osei, surveyor", signed_at=SIGNED
    )


def decided(call: Call, now: dt.datetime = LATER) -> dict[str, Decision]:
    """Decide on the four coats."""
    return dict(zip("ABCD", decide(GEAR, [call], policy=POLICY, now=now), strict=True))


@pytest.mark.parametrize("member", ["A", "B"])
def test_who_pulled_ceiling_is_sealed_and_held(member: str) -> None:
    """An old house, opened while they were there: sealed, held by the safety officer."""
    decision = decided(hexley())[member]

    assert (decision.fate, decision.sealed) == (Fate.HOLD, True)
    held = decision.open_holds[0]
    assert (held.cause, held.decider, held.deputy) == (
        "building.asbestos/c1", Decider.SAFETY_OFFICER, Decider.CHIEF,
    )  # fmt: skip


def test_who_left_before_is_washed_apart_and_the_question_stays() -> None:
    """D: advanced cleaning, a separate load, the question open."""
    decision = decided(hexley())["D"]

    assert (decision.fate, decision.level) == (Fate.WASH, Level.ADVANCED)
    assert decision.separation.hazards == (ASBESTOS,)
    assert "care.building.left_before" in said(decision.unknowns)


def test_who_stood_at_the_pump_has_a_routine_look() -> None:
    """C: no smoke, far from it all: a look."""
    decision = decided(hexley())["C"]

    assert (decision.fate, decision.level) == (Fate.LOOK, Level.LOOK)
    assert (decision.holds, decision.separation.hazards) == ((), ())


@pytest.mark.parametrize("member", ["A", "B"])
def test_a_signed_negative_survey_ends_the_hold_and_the_history_stays(member: str) -> None:
    """Signed 09:20, nothing found: advanced cleaning; the hold is shown with who ended it."""
    decision = decided(hexley(survey(Knowledge.ABSENT)))[member]

    assert (decision.fate, decision.level, decision.sealed) == (
        Fate.WASH, Level.ADVANCED, False,
    )  # fmt: skip
    assert [(one.released_by, one.released_at) for one in decision.holds] == [
        ("M. Osei, surveyor", "2026-03-03T09:20+00:00")
    ]
    assert "care.building.survey_negative" in said(decision.reasons)


def test_a_negative_survey_closes_the_question_of_who_left_before() -> None:
    """D shares an ordinary load again."""
    decision = decided(hexley(survey(Knowledge.ABSENT)))["D"]

    assert decision.separation.hazards == ()
    assert "care.building.left_before" not in said(decision.unknowns)


def test_before_the_survey_is_signed_the_hold_stands() -> None:
    """At 09:00 nobody knows what is signed at 09:20."""
    early = SIGNED - dt.timedelta(minutes=20)

    assert decided(hexley(survey(Knowledge.ABSENT)), early)["A"].fate is Fate.HOLD


@pytest.mark.parametrize(("member", "knowledge"), [("A", "known"), ("D", "suspected")])
def test_a_survey_that_found_it_holds_everybody_who_was_inside(member: str, knowledge: str) -> None:
    """Found: the hold stays and is sealed, for a specialist; who left before is suspected."""
    decision = decided(hexley(survey(Knowledge.KNOWN)))[member]

    assert (decision.fate, decision.level, decision.sealed) == (
        Fate.HOLD, Level.SPECIALISED, True,
    )  # fmt: skip
    assert f"asbestos.{knowledge}/c1" in causes(decision)


@pytest.mark.parametrize("member", "ABCD")
def test_a_dumpster_fire_of_unknowns_is_four_advanced_cleanings_without_a_hold(
    member: str,
) -> None:
    """All four exposed, every hazard "don't know": advanced cleaning each, and no hold."""
    unknown = tuple(hazard(rule.id, Knowledge.UNKNOWN, None) for rule in contaminants())
    people = (person(one, Zone.OUTSIDE, smoke=Answer.YES) for one in "ABCD")
    decision = decided(fire(*people, hazards=unknown))[member]

    assert (decision.fate, decision.level) == (Fate.WASH, Level.ADVANCED)
    assert (decision.holds, decision.separation.hazards) == ((), ())
    assert said(decision.unknowns).count("exposure.hazard.unknown") == len(unknown) - 1


@pytest.mark.parametrize("member", ["A", "B"])
def test_whoever_handles_the_held_gear_is_warned_of_asbestos(member: str) -> None:
    """Held on suspicion is handled as if it were there: not opened, not shaken, not washed here."""
    cautions = said(decided(hexley())[member].cautions)

    assert set(contaminant("asbestos").cautions) <= set(cautions)


def test_nobody_is_told_not_to_wash_what_is_washed() -> None:
    """D's gear is washed apart, so the cautions on sealed gear are not given for it."""
    cautions = said(decided(hexley())["D"].cautions)

    assert "hazard.caution.do_not_wash_here" not in cautions


@pytest.mark.parametrize("member", ["A", "B"])
def test_a_negative_survey_ends_those_cautions(member: str) -> None:
    """What may be washed again is not called sealed."""
    cautions = said(decided(hexley(survey(Knowledge.ABSENT)))[member].cautions)

    assert "hazard.caution.do_not_open" not in cautions


@pytest.mark.parametrize(("member", "open_"), [("A", True), ("C", False), ("D", True)])
def test_what_nobody_knows_of_the_ceiling_is_said(member: str, open_: bool) -> None:
    """Whether there was asbestos is among what is not known, until a survey is signed."""
    before, after = decided(hexley()), decided(hexley(survey(Knowledge.ABSENT)))

    assert ("hazard.unknown.asbestos_present" in said(before[member].unknowns)) is open_
    assert "hazard.unknown.asbestos_present" not in said(after[member].unknowns)
