"""What published rules say on the care of exposed gear, beside the decisions that must follow.

Each check names its source and how well it is known; what no source publishes is left to the unit
tests. Confidence: high = source read; memory = value from memory.
"""

import pytest
from tests.care_facts import (
    book,
    bystander,
    causes,
    contaminant,
    decide_one,
    fire,
    grade,
    hazard,
    person,
    piece,
    remark,
    said,
)  # fmt: skip

from sootline.core.basis import ContaminantId, Quantity, Standing
from sootline.core.care import CarePolicy, Decision, Disinfection, Fate, Product, ProductUse
from sootline.core.exposure import Answer, Decon, DeconMethod, Done, Zone, read_code
from sootline.core.exposure.code_table import NFIRS_SERIES
from sootline.core.rulebook import Knowledge, Level

YEARS = {"2014": "nfpa-1851/2014", "2020": "nfpa-1851/2020"}
HARD = ContaminantId("blood")
ANY_SURFACE = CarePolicy(
    products=(
        Product(
            name="product H",
            use=ProductUse.DISINFECTANT,
            materials=("fabric", "leather", "hard-surface"),
            against=(HARD,),
            contact_min=5,
        ),
    )
)


def editions_behind(decision: Decision, message: str) -> set[str]:
    """Return the editions that a decision cites for a message."""
    return {one.ground.edition for one in decision.reasons if one.message == message}


def test_2020_counts_any_exposure_to_products_of_combustion() -> None:
    """NFPA 1851, 2020 edition, advanced cleaning: when (trade columns; high)."""
    decision = decide_one(piece("hood"), fire(person(smoke=Answer.YES)))

    assert decision.level is Level.ADVANCED
    assert editions_behind(decision, "care.floor.smoke_counts") == {"nfpa-1851/2020"}


@pytest.mark.parametrize(("year", "edition"), [("2020", "nfpa-1851/2020"), ("2014", "statement")])
def test_entering_where_air_is_required_counts_by_itself_in_2020(year: str, edition: str) -> None:
    """NFPA 1851, 2020 edition, advanced cleaning: when (trade columns; high); 2014 is silent."""
    inside = person("A", Zone.INSIDE, smoke=Answer.NO, on_air=Answer.NO)
    found = grade([piece("hood")], fire(inside), rulebook=book(YEARS[year]))

    assert (found[0].knowledge, found[0].finding.ground.edition) == (Knowledge.KNOWN, edition)


@pytest.mark.parametrize("edition", YEARS.values())
def test_soil_that_is_seen_counts_in_both_editions(edition: str) -> None:
    """NFPA 1851, 2014 and 2020 editions, when soiled or contaminated (trade column; high)."""
    shell = piece("coat-shell")
    muddy = fire(bystander(), remarks=(remark(shell, soiled=Answer.YES),))
    decision = decide_one(shell, muddy, rulebook=book(edition))

    assert decision.level is Level.ADVANCED
    assert editions_behind(decision, "care.floor.soiled") == {edition}


def test_2014_leaves_smoke_alone_to_common_practice() -> None:
    """NFPA 1851, 2014 edition names soil and contamination only (trade column; high)."""
    decision = decide_one(piece("hood"), fire(person()), rulebook=book(YEARS["2014"]))

    assert decision.level is Level.ADVANCED
    assert editions_behind(decision, "care.floor.smoke_counts") == set()
    assert editions_behind(decision, "care.floor.contaminant") == {"practice/contaminants"}


@pytest.mark.parametrize("method", [DeconMethod.WET_SOAP, DeconMethod.WATER, DeconMethod.DRY_BRUSH])
def test_on_scene_reduction_is_no_cleaning(method: DeconMethod) -> None:
    """NFPA 1851, 2020 edition, preliminary exposure reduction is not a cleaning (high)."""
    reduced = person(decon=Decon(done=Done.DONE, method=method))

    assert decide_one(piece("hood"), fire(reduced)).level is Level.ADVANCED


@pytest.mark.parametrize(
    ("kind", "word"),
    [("coat-shell", Disinfection.SANITISE), ("helmet-shell", Disinfection.DISINFECT)],
)
def test_2020_sanitises_soft_goods_and_disinfects_hard_surfaces(
    kind: str, word: Disinfection
) -> None:
    """NFPA 1851, 2020 edition, sanitization and disinfection (trade column; high)."""
    component = piece(kind)
    call = fire(person(), remarks=(remark(component, "blood"),))

    assert decide_one(component, call, policy=ANY_SURFACE).disinfection is word


def test_gear_with_body_fluids_is_bagged_leak_proof_where_it_was_used() -> None:
    """29 CFR 1910.1030(d)(4)(iv): bagged where used, leak-proof if wet, little handling (high)."""
    shell = piece("coat-shell")
    call = fire(person(), remarks=(remark(shell, "blood"),))
    first = decide_one(shell, call, policy=ANY_SURFACE).preparation[0]

    assert first.act == "care.prep.leak_proof"
    assert "1910.1030(d)(4)(iv)" in first.reason.ground.source


def test_it_is_never_rinsed_at_the_place_of_use() -> None:
    """29 CFR 1910.1030(d)(4)(iv): not rinsed there (high); the caution says so, no step does."""
    shell = piece("coat-shell")
    call = fire(person(), remarks=(remark(shell, "blood"),))
    decision = decide_one(shell, call, policy=ANY_SURFACE)

    assert "hazard.caution.no_rinse_on_scene" in said(decision.cautions)
    assert not [step.act for step in decision.preparation if "rinse" in step.act]


def test_body_fluids_ask_for_disinfection_and_advanced_cleaning_both() -> None:
    """NFPA 1851, body fluids: isolate, sanitize plus advanced clean (outline of an SOP; high)."""
    shell = piece("coat-shell")
    call = fire(bystander(), remarks=(remark(shell, "blood"),))
    decision = decide_one(shell, call, policy=ANY_SURFACE)

    assert (decision.level, decision.disinfection) == (Level.ADVANCED, Disinfection.SANITISE)


def test_suspected_asbestos_is_sealed_and_not_washed_here() -> None:
    """29 CFR 1910.1001(h): sealed, labelled, the launderer told (value from memory)."""
    decision = decide_one(piece("coat-shell"), fire(person(), hazards=(
        hazard("asbestos", Knowledge.SUSPECTED),)))  # fmt: skip

    assert (decision.fate, decision.sealed) == (Fate.HOLD, True)
    assert "hazard.caution.tell_whoever_launders" in said(decision.cautions)


def test_bed_bugs_need_more_heat_than_the_edition_lets_gear_bear() -> None:
    """Killed near 50 °C (pest-control guides; low) against 40 °C (NFPA 1851; high): a hold."""
    decision = decide_one(piece("coat-shell"), fire(person(), hazards=(hazard("bed-bugs"),)))
    bath = decision.terms.limit("wash.bath_temp")

    assert bath.stand(Quantity.parse("50 °C")) is Standing.BEYOND
    assert causes(decision) == ["bed-bugs.known/c1"]
    assert "hazard.caution.ask_maker_heat_or_cold" in said(decision.cautions)


def test_drug_powder_is_sealed_until_somebody_has_named_it() -> None:
    """NIOSH on illicit drugs: bag apart, labelled, no hand rub or bleach on skin (high)."""
    decision = decide_one(piece("coat-shell"), fire(person(), hazards=(hazard("drug-powder"),)))

    assert (decision.fate, decision.sealed) == (Fate.HOLD, True)
    assert "hazard.caution.identify_first" in said(decision.cautions)


def test_firefighting_counts_as_exposure_whatever_burned() -> None:
    """IARC Monograph 132, firefighting as an occupation, Group 1 (high): training burns too."""
    decision = decide_one(piece("hood"), fire(person(), training=True))

    assert decision.level is Level.ADVANCED
    assert "IARC" in contaminant("smoke").source


def test_the_old_code_list_has_178_codes_and_one_kept_for_conversion() -> None:
    """NFIRS 5.0: 178 three-digit codes counted in a public table (high); 110 from memory."""
    codes = frozenset().union(*NFIRS_SERIES)

    assert len(codes - {"110"}) == 178
    assert "110" in codes


@pytest.mark.parametrize(
    "code",
    [
        "100",
        "251",
        "311",
        "331",
        "340",
        "341",
        "342",
        "343",
        "362",
        "462",
        "463",
        "561",
        "900",
        "911",
    ],
)
def test_codes_without_a_successor_are_known_all_the_same(code: str) -> None:
    """The 14 NFIRS codes that the NERIS crosswalk of July 2025 leaves out (counted there; high)."""
    assert read_code(code).recognised
