"""Brackenfold (invented): R07, blood through the cuff onto a cut wrist, rinsed on scene already.

Leather boots splashed, one glove torn; the disinfectant at hand names fabric, none names leather.
"""

from functools import cache

import pytest
from tests.care_facts import (
    EDITION,
    book,
    causes,
    decide,
    fire,
    hold,
    person,
    piece,
    remark,
    said,
)  # fmt: skip

from sootline.core.basis import Bearing, ContaminantId, MessageId
from sootline.core.care import CarePolicy, Decision, Disinfection, Fate, Product, ProductUse
from sootline.core.exposure import Answer, Call, Decon, DeconMethod, Done
from sootline.core.gear import Component, State
from sootline.core.rulebook import Decider
from sootline.words import say

KINDS = ("coat-shell", "coat-liner", "trouser-shell", "trouser-liner", "gloves",
         "boots-leather")  # fmt: skip
FABRIC_ONLY = CarePolicy(
    products=(
        Product(
            name="product F",
            use=ProductUse.DISINFECTANT,
            materials=("fabric",),
            against=(ContaminantId("blood"),),
            contact_min=10,
        ),
    )
)
GEAR = {kind: piece(kind, "R07") for kind in KINDS}


def brackenfold() -> Call:
    """Tell what is known of the call."""
    washed_down = Decon(done=Done.DONE, method=DeconMethod.WATER)
    cuff = {"reached_skin": Answer.YES, "rinsed": Answer.YES}
    return fire(
        person("R07", decon=washed_down),
        remarks=(
            remark(GEAR["coat-shell"], "blood", **cuff, detail="right cuff, cut wrist"),
            remark(GEAR["gloves"], "blood", torn=True),
            remark(GEAR["boots-leather"], "blood", detail="splashed"),
        ),
    )


@cache
def decided() -> dict[str, Decision]:
    """Decide on all of R07's gear."""
    decisions = decide(tuple(GEAR.values()), [brackenfold()], policy=FABRIC_ONLY)
    return dict(zip(GEAR, decisions, strict=True))


def released(kind: str) -> Component:
    """Return the component once infection control has put the disinfection on record."""
    noted = hold("blood.disinfect/c1", decider=Decider.INFECTION_CONTROL,
                 released_by="infection control, product F, 10 min")  # fmt: skip
    return piece(kind, "R07", state=State(holds=(noted,)))


def everything_said(decision: Decision) -> list[str]:
    """Every message a decision carries, its steps and questions included."""
    steps = [message for step in decision.preparation for message in (step.act, step.skipped)]
    asked = [hold.question for hold in decision.holds]
    found = (decision.first, decision.reasons, decision.unknowns, decision.cautions)
    return [*steps, *asked, *(message for part in found for message in said(part))]


@pytest.mark.parametrize("kind", ["coat-shell", "coat-liner", "gloves", "boots-leather"])
def test_infection_control_is_called_first(kind: str) -> None:
    """It reached skin: the call comes before anybody touches any of the soiled gear."""
    first = decided()[kind].first

    assert [(one.bearing, one.message) for one in first] == [
        (Bearing.REQUIRES, "care.first.infection_control")
    ]


@pytest.mark.parametrize("kind", KINDS)
def test_no_rinse_is_ever_offered(kind: str) -> None:
    """No step and no question proposes water on scene, and the caution forbids it.

    Source: 29 CFR 1910.1030(d)(4)(iv): contaminated laundry is not rinsed where it was used.
    """
    decision = decided()[kind]

    assert [one for one in everything_said(decision) if "rinse" in one.split(".")[-1]] in (
        [],
        ["hazard.caution.no_rinse_on_scene"],
    )
    assert all("rinse" not in say(step.act).lower() for step in decision.preparation)


def test_the_past_rinse_is_kept_as_a_fact() -> None:
    """What was done on scene stays in the reasons as a note that changes nothing."""
    notes = {one.message: one.bearing for one in decided()["coat-shell"].reasons}

    assert notes[MessageId("care.rinsed.already")] is Bearing.NOTES
    assert notes[MessageId("care.rinsed.by_reduction")] is Bearing.NOTES


@pytest.mark.parametrize("kind", ["coat-shell", "coat-liner"])
def test_shell_and_liner_are_bagged_leak_proof_and_held(kind: str) -> None:
    """What reached the wrist went through the liner: both are bagged, sealed and held."""
    decision = decided()[kind]

    assert (decision.fate, decision.sealed) == (Fate.HOLD, True)
    assert decision.preparation[0].act == "care.prep.leak_proof"
    assert [hold.decider for hold in decision.open_holds] == [Decider.INFECTION_CONTROL]


@pytest.mark.parametrize(
    ("edition", "word"),
    [(EDITION, Disinfection.SANITISE), ("nfpa-1851/2014", Disinfection.DISINFECT)],
)
def test_the_word_is_the_editions(edition: str, word: Disinfection) -> None:
    """The 2020 edition sanitises soft goods; 2014's word was not read, so practice speaks.

    Source: NFPA 1851, 2020 edition, sanitization of porous soft goods (read in a trade column).
    """
    gear = tuple(GEAR.values())
    shell = decide(gear, [brackenfold()], policy=FABRIC_ONLY, rulebook=book(edition))[0]

    assert (shell.disinfection, shell.product, shell.contact_min) == (word, "product F", 10)
    assert ("ask.blood.soft_word" in said(shell.unknowns)) is (edition != EDITION)


@pytest.mark.parametrize("kind", ["coat-shell", "coat-liner"])
def test_each_is_washed_alone_once_that_is_recorded(kind: str) -> None:
    """After the record it is washed, each alone; before it, nothing shares drum or cabinet."""
    gear = tuple(released(one) for one in KINDS)
    after = decide(gear, [brackenfold()], policy=FABRIC_ONLY)[KINDS.index(kind)]

    assert (after.fate, after.sealed, after.separation.alone) == (Fate.WASH, False, True)
    assert decided()[kind].separation.alone
    assert "care.disinfection.before_sharing" in said(decided()[kind].reasons)


def test_the_boots_are_held_because_no_product_names_leather() -> None:
    """No product at hand is for leather: infection control decides, nothing is tried."""
    boots = decided()["boots-leather"]

    assert (boots.fate, boots.sealed, boots.product) == (Fate.HOLD, True, None)
    assert [(one.decider, one.question) for one in boots.open_holds] == [
        (Decider.INFECTION_CONTROL, "care.hold.no_product")
    ]


def test_the_torn_glove_is_not_used_again() -> None:
    """Torn with blood on it: out, sealed, infection control decides how it goes."""
    gloves = decided()["gloves"]

    assert (gloves.fate, gloves.sealed) == (Fate.OUT, True)
    assert "torn/c1" in causes(gloves)


@pytest.mark.parametrize("kind", ["trouser-shell", "trouser-liner"])
def test_trousers_without_blood_go_their_usual_way(kind: str) -> None:
    """Blood on the coat does not hold the trousers."""
    decision = decided()[kind]

    assert (decision.fate, decision.separation.alone, decision.first) == (Fate.WASH, False, ())
