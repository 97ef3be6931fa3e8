"""The least a component must undergo: the strictest reason wins and none is lost."""

import pytest
from tests.care_facts import (
    book,
    bystander,
    causes,
    decide_one,
    due,
    fire,
    hazard,
    person,
    piece,
    remark,
    rule,
    said,
)  # fmt: skip

from sootline.core.care import Fate
from sootline.core.exposure import Answer, Zone
from sootline.core.gear import CareStage, State, WashMethod
from sootline.core.rulebook import Edition, EditionStatus, Knowledge, Level, Rulebook, RuleKind

SHELL = piece("coat-shell")


def test_what_no_call_names_goes_on_the_hook() -> None:
    """Not used, nothing due: nothing to do, and that is said."""
    decision = decide_one(SHELL)

    assert (decision.fate, decision.level) == (Fate.HOOK, Level.LOOK)
    assert said(decision.reasons) == ["care.floor.not_used"]


def test_what_was_used_far_from_smoke_gets_a_look() -> None:
    """The wearer looks it over after use; the edition is cited."""
    decision = decide_one(SHELL, fire(bystander()))
    look = next(one for one in decision.reasons if one.message == "care.floor.look")

    assert (decision.fate, look.ground.edition) == (Fate.LOOK, "nfpa-1851/2020")


def silent() -> Rulebook:
    """Return a rulebook in which no text says anything."""
    shipped = book()
    empty = Edition(id=shipped.practice.id, title="", body="", status=EditionStatus.PRACTICE,
                    in_force=shipped.practice.in_force, rules=())  # fmt: skip
    return Rulebook(adopted=empty, policy=empty, practice=empty)


@pytest.mark.parametrize(
    ("soiled", "message"), [(Answer.NO, "care.floor.look"), (Answer.YES, "care.floor.soiled")]
)
def test_where_every_text_is_silent_practice_asks(soiled: Answer, message: str) -> None:
    """A look after use, an advanced cleaning for dirt that is seen: both are habit, and say so."""
    muddy = fire(bystander(), remarks=(remark(SHELL, soiled=soiled),))
    decision = decide_one(SHELL, muddy, rulebook=silent())
    ground = next(one.ground for one in decision.reasons if one.message == message)

    assert ground.edition == "practice/care"


@pytest.mark.parametrize(
    ("name", "knowledge", "level"),
    [
        ("smoke", Knowledge.KNOWN, Level.ADVANCED),
        ("gas", Knowledge.KNOWN, Level.ROUTINE),
        ("salt-dirt", Knowledge.SUSPECTED, Level.ROUTINE),
        ("fibreglass", Knowledge.SUSPECTED, Level.ROUTINE),
        ("fibreglass", Knowledge.KNOWN, Level.ADVANCED),
        ("heat-damage", Knowledge.KNOWN, Level.LOOK),
        ("chemical", Knowledge.SUSPECTED, Level.SPECIALISED),
        ("chemical", Knowledge.UNKNOWN, Level.LOOK),
    ],
)
def test_each_contaminant_asks_for_its_own_least(
    name: str, knowledge: Knowledge, level: Level
) -> None:
    """As the practice file says; what is not known asks for nothing by itself."""
    decision = decide_one(
        SHELL, fire(bystander(), remarks=(remark(SHELL, name, knowledge=knowledge),))
    )

    assert decision.level is level


def test_the_strictest_of_several_wins_and_the_others_are_kept() -> None:
    """Salt, smoke and a chemical on one shell: specialised, three reasons."""
    seen = tuple(remark(SHELL, name) for name in ("salt-dirt", "smoke", "chemical"))
    decision = decide_one(SHELL, fire(bystander(), remarks=seen))

    assert decision.level is Level.SPECIALISED
    assert said(decision.reasons).count("care.floor.contaminant") == 3


def test_heat_damage_asks_for_an_inspection() -> None:
    """Char is damage rather than dirt: a look, and the caution that it is inspected."""
    decision = decide_one(SHELL, fire(bystander(), remarks=(remark(SHELL, "heat-damage"),)))

    assert decision.fate is Fate.LOOK
    assert "hazard.caution.advanced_inspection" in said(decision.cautions)


@pytest.mark.parametrize("level", [Level.ROUTINE, Level.ADVANCED])
def test_a_due_cleaning_is_a_reason_by_itself(level: Level) -> None:
    """Nothing happened, but the year is over."""
    decision = decide_one(SHELL, due=[due(SHELL, level=level)])

    assert (decision.fate, decision.level) == (Fate.WASH, level)
    assert "due.cleaning" in said(decision.reasons)


def test_a_due_specialised_cleaning_is_held_for_somebody_who_can() -> None:
    """What is not done here names who decides where it is done."""
    decision = decide_one(SHELL, due=[due(SHELL, level=Level.SPECIALISED)])

    assert (decision.wash, causes(decision)) == (WashMethod.NONE, ["specialised"])


def test_what_waits_for_a_wash_on_record_is_washed() -> None:
    """Somebody set it aside to be washed; no call need say so again."""
    waiting = piece("coat-shell", state=State(stage=CareStage.TO_WASH))

    assert decide_one(waiting).level is Level.ADVANCED


def test_what_is_on_its_way_back_is_looked_at() -> None:
    """Washed and drying, named by no call: not on the hook before somebody looked."""
    drying = piece("coat-shell", state=State(stage=CareStage.DRYING))

    assert decide_one(drying).fate is Fate.LOOK


def test_a_policy_may_ask_for_more_after_smoke() -> None:
    """The department asks for specialised cleaning after smoke: held until somebody does it."""
    more = rule("clean.smoke_level", RuleKind.CHOICE, "specialised")
    decision = decide_one(SHELL, fire(person()), rulebook=book(policy=(more,)))

    assert (decision.level, causes(decision)) == (Level.SPECIALISED, ["specialised"])


def test_an_edition_nobody_has_read_is_asked() -> None:
    """Its trigger is unset: the question is listed, and practice decides meanwhile."""
    decision = decide_one(SHELL, fire(person()), rulebook=book("nfpa-1850/2026"))

    assert decision.level is Level.ADVANCED
    assert "ask.clean.advanced.trigger" in said(decision.unknowns)


def test_something_on_no_list_is_held_and_never_below_advanced() -> None:
    """Nobody here knows what it needs: the safety officer decides."""
    decision = decide_one(SHELL, fire(bystander(), remarks=(remark(SHELL, "glue"),)))

    assert (decision.level, decision.sealed) == (Level.ADVANCED, True)
    assert causes(decision) == ["glue.known/c1"]
    assert "care.floor.unlisted" in said(decision.reasons)


def test_an_unlisted_don_t_know_holds_nothing() -> None:
    """It is listed as not known, and no more."""
    call = fire(person(), hazards=(hazard("glue", Knowledge.UNKNOWN),))
    decision = decide_one(SHELL, call)

    assert (decision.fate, decision.holds) == (Fate.WASH, ())
    assert "exposure.hazard.unknown" in said(decision.unknowns)


def test_routine_cleaning_is_done_by_hand() -> None:
    """A light wash by the wearer, not the machine."""
    salted = fire(bystander(), remarks=(remark(SHELL, "salt-dirt"),))

    assert decide_one(SHELL, salted).wash is WashMethod.HAND


def test_a_person_outside_in_no_smoke_lowers_nothing_that_was_seen() -> None:
    """Where somebody stood does not take the dirt off."""
    seen = (remark(SHELL, "smoke"),)
    decision = decide_one(SHELL, fire(person("A", Zone.OUTSIDE, smoke=Answer.NO), remarks=seen))

    assert decision.level is Level.ADVANCED
