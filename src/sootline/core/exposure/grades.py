"""What met one component at one call, how well is that known, and who or what says so?"""

from dataclasses import dataclass

from sootline.core.basis import (
    Bearing,
    CallId,
    ComponentId,
    Confidence,
    ContaminantId,
    EditionId,
    Finding,
    Ground,
    MessageId,
    RuleId,
)
from sootline.core.exposure.calls import Answer, Call, Zone
from sootline.core.rulebook.contaminants import Knowledge

SMOKE = ContaminantId("smoke")
STATEMENT = EditionId("statement")
NOBODY = "nobody named"


@dataclass(frozen=True, kw_only=True)
class Exposure:
    """One reason to think that something is, or is not, on a component.

    Several may speak of the same contaminant; the strictest counts, and all are kept.

    Args:
        knowledge: ABSENT only where somebody named said so, or a survey did.
        zone: where its wearer came closest to it.
        reached_skin: whether it came through to the wearer's skin.
    """

    component: ComponentId
    contaminant: ContaminantId
    knowledge: Knowledge
    call: CallId
    zone: Zone
    reached_skin: Answer = Answer.UNKNOWN
    finding: Finding


@dataclass(frozen=True, kw_only=True)
class Statement:
    """What one source says about one contaminant, before it is put on components.

    Args:
        firm: whether a look at one component cannot answer it (a survey, smoke one stood in).
    """

    contaminant: ContaminantId
    knowledge: Knowledge
    finding: Finding
    firm: bool = False


def stated(fact: str, said_by: str | None) -> Ground:
    """Return the ground of something a person said; an inference names nobody."""
    return Ground(
        rule=RuleId(f"statement.{fact}"),
        edition=STATEMENT,
        source=said_by or NOBODY,
        confidence=Confidence.STATED,
    )


def tell(
    bearing: Bearing, message: str, ground: Ground, call: Call, **values: str | None
) -> Finding:
    """Build a finding about a call; a value nobody gave is left out."""
    named = tuple((name, str(value)) for name, value in values.items() if value is not None)
    values_of_call = (("call", str(call.id)), *named)
    return Finding(
        bearing=bearing, message=MessageId(message), ground=ground, values=values_of_call
    )


def bearing_of(knowledge: Knowledge) -> Bearing:
    """Say what a statement does: it asks while unknown, notes an absence, else requires."""
    if knowledge is Knowledge.UNKNOWN:
        return Bearing.ASKS
    return Bearing.NOTES if knowledge is Knowledge.ABSENT else Bearing.REQUIRES
