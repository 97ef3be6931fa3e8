"""What common practice asks for, contaminant by contaminant, against what is published about each.

Levels and holds are common practice, no published source, unless the docstring names one.
"""

import pytest

from sootline.core.rulebook import ContaminantRule, Decider, Knowledge, Level
from sootline.files.rules import RuleFiles

RULES = {str(rule.id): rule for rule in RuleFiles().contaminants()}
HELD = {
    "asbestos", "blood", "drug-powder", "bed-bugs", "fuel", "pesticide", "chemical",
    "radiological", "warfare-agent",
}  # fmt: skip


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_unknown_alone_holds_nothing(rule: ContaminantRule) -> None:
    """Not knowing is most fires; holding on it is a department's own policy."""
    assert Knowledge.UNKNOWN not in rule.holds_when


def test_what_holds_holds_when_known_and_when_suspected() -> None:
    """A suspicion is enough to stop, and nothing else stops by itself."""
    holding = {rule.id for rule in RULES.values() if rule.holds_when}

    assert holding == HELD
    assert all(len(RULES[each].holds_when) == 2 for each in HELD)


@pytest.mark.parametrize("each", ["smoke", "unknown-smoke", "battery-smoke", "blood", "foam"])
def test_never_below_advanced(each: str) -> None:
    """Products of combustion: NFPA 1851, 2020 edition (trade columns; high); others practice."""
    assert RULES[each].suspected.rank >= Level.ADVANCED.rank


def test_blood_is_bagged_leak_proof_washed_alone_and_never_rinsed_on_scene() -> None:
    """29 CFR 1910.1030(d)(4)(iv): bagged where used, not sorted or rinsed there (read; high)."""
    blood = RULES["blood"]

    assert {blood.disinfect, blood.seal, blood.alone} == {True}
    assert blood.decider is Decider.INFECTION_CONTROL
    assert {"hazard.caution.no_rinse_on_scene", "hazard.caution.leak_proof_bag"} <= set(
        blood.cautions
    )


def test_asbestos_is_sealed_and_whoever_launders_is_told() -> None:
    """29 CFR 1910.1001(h): sealed labelled bags, tell the launderer (value from memory)."""
    asbestos = RULES["asbestos"]

    assert asbestos.seal
    assert "hazard.caution.tell_whoever_launders" in asbestos.cautions


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_every_row_says_what_it_rests_on(rule: ContaminantRule) -> None:
    """A source, and a deputy where there is a decider."""
    assert rule.source
    assert rule.decider is not rule.deputy
