"""What does one contaminant ask for, when it is known, suspected or cannot be excluded?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Confidence,
    ContaminantId,
    EditionId,
    Ground,
    MessageId,
    RuleId,
)


class Level(StrEnum):
    """What a component must undergo at the least, from a look to specialised cleaning."""

    LOOK = "look"
    ROUTINE = "routine"
    ADVANCED = "advanced"
    SPECIALISED = "specialised"

    @property
    def rank(self) -> int:
        """The place in the order; a higher floor includes the lower ones."""
        return list(Level).index(self)


class Knowledge(StrEnum):
    """How much is known about the presence of something."""

    KNOWN = "known"
    SUSPECTED = "suspected"
    UNKNOWN = "unknown"
    ABSENT = "absent"


class Decider(StrEnum):
    """Who may end a hold."""

    SAFETY_OFFICER = "safety-officer"
    INFECTION_CONTROL = "infection-control"
    INVESTIGATOR = "investigator"
    GEAR_OFFICER = "gear-officer"
    CHIEF = "chief"


@dataclass(frozen=True, kw_only=True)
class ContaminantRule:
    """What common practice asks for one contaminant.

    Args:
        known: the least level when it is known to be on the component.
        suspected: the least level when it is suspected.
        disinfect: whether disinfection or sanitisation is asked for on top.
        holds_when: the states of knowledge that by themselves hold the component.
        decider: who ends that hold.
        deputy: who stands in for the decider.
        escalate_after_h: after how many hours an undecided hold goes up [h].
        own_load: whether such components are washed apart from all other gear.
        alone: whether each one is washed alone.
        seal: whether it is bagged leak-proof, sealed and not opened.
        cautions: messages to show where the work is done.
        not_known: messages on what nobody can say about it.
        source: where this was read; a citation.
    """

    id: ContaminantId
    known: Level
    suspected: Level
    disinfect: bool = False
    holds_when: tuple[Knowledge, ...] = ()
    decider: Decider = Decider.SAFETY_OFFICER
    deputy: Decider = Decider.CHIEF
    escalate_after_h: int = 12
    own_load: bool = False
    alone: bool = False
    seal: bool = False
    cautions: tuple[MessageId, ...] = ()
    not_known: tuple[MessageId, ...] = ()
    source: str
    confidence: Confidence

    def floor(self, knowledge: Knowledge) -> Level | None:
        """Return the least level for this state of knowledge; None asks for nothing itself."""
        levels = {Knowledge.KNOWN: self.known, Knowledge.SUSPECTED: self.suspected}
        return levels.get(knowledge)

    @property
    def ground(self) -> Ground:
        """Return what a finding cites when it rests on this rule."""
        return Ground(
            rule=RuleId(f"contaminant.{self.id}"),
            edition=EditionId("practice/contaminants"),
            source=self.source,
            confidence=self.confidence,
        )
