"""Whether gear was in smoke: known, assumed or denied, the strongest fact first."""

import pytest
from tests.care_facts import fire, grade, hazard, person, piece

from sootline.core.exposure import SMOKE, Answer, Call, Exposure, Hazard, Presence, Zone
from sootline.core.rulebook import Knowledge

YES, NO, UNKNOWN = Answer.YES, Answer.NO, Answer.UNKNOWN


def smoke_on(call: Call) -> Exposure:
    """Return the grade of smoke on the one hood of a call."""
    return next(one for one in grade([piece("hood")], call) if one.contaminant == SMOKE)


@pytest.mark.parametrize(
    ("zones", "smoke", "on_air", "knowledge", "message"),
    [
        ((Zone.OUTSIDE,), YES, UNKNOWN, Knowledge.KNOWN, "stated"),
        ((Zone.PUMP,), NO, YES, Knowledge.KNOWN, "on_air"),
        ((Zone.INSIDE,), UNKNOWN, UNKNOWN, Knowledge.KNOWN, "inside"),
        ((Zone.PUMP, Zone.OVERHAUL), NO, NO, Knowledge.KNOWN, "inside"),
        ((), NO, NO, Knowledge.SUSPECTED, "zone_unknown"),
        ((Zone.UNKNOWN, Zone.PUMP), NO, NO, Knowledge.SUSPECTED, "zone_unknown"),
        ((Zone.ROOF,), UNKNOWN, NO, Knowledge.SUSPECTED, "unknown"),
        ((Zone.PUMP,), UNKNOWN, NO, Knowledge.SUSPECTED, "unknown"),
        ((Zone.PUMP,), NO, UNKNOWN, Knowledge.ABSENT, "none"),
        ((Zone.ROOF, Zone.OUTSIDE), NO, NO, Knowledge.ABSENT, "none"),
    ],
)
def test_zone_smoke_and_air_decide(
    zones: tuple[Zone, ...], smoke: Answer, on_air: Answer, knowledge: Knowledge, message: str
) -> None:
    """Inside, in smoke or on air is known; unknown is taken as exposed; a denial counts outside."""
    found = smoke_on(fire(person("A", zones=zones, smoke=smoke, on_air=on_air)))

    assert (found.knowledge, found.finding.message) == (knowledge, f"exposure.smoke.{message}")


INSIDE = person("A", Zone.INSIDE)
IN_SMOKE = person("A", Zone.INSIDE, smoke=YES)


@pytest.mark.parametrize(
    ("presence", "hazards", "knowledge"),
    [
        (INSIDE, (hazard("smoke", Knowledge.ABSENT),), Knowledge.ABSENT),
        (INSIDE, (hazard("smoke", Knowledge.ABSENT, None),), Knowledge.KNOWN),
        (INSIDE, (hazard("smoke", Knowledge.ABSENT), hazard("smoke", Knowledge.SUSPECTED)),
         Knowledge.KNOWN),
        (IN_SMOKE, (hazard("smoke", Knowledge.ABSENT),), Knowledge.KNOWN),
    ],
)  # fmt: skip
def test_only_a_name_that_nobody_contradicts_denies_the_fire(
    presence: Presence, hazards: tuple[Hazard, ...], knowledge: Knowledge
) -> None:
    """An unnamed denial counts for nothing; a member's own statement outranks the call's."""
    assert smoke_on(fire(presence, hazards=hazards)).knowledge is knowledge


def test_a_training_burn_is_a_call() -> None:
    """The grade is the same, and the finding says that it was training."""
    found = smoke_on(fire(IN_SMOKE, training=True))

    assert found.knowledge is Knowledge.KNOWN
    assert found.finding.value("training") == "training"


def test_the_zone_shown_is_the_closest_one() -> None:
    """Somebody at the pump who also went inside was inside."""
    found = smoke_on(fire(person("A", Zone.PUMP, Zone.INSIDE)))

    assert found.zone is Zone.INSIDE
