"""In what state is a component? A product of five facts, never one status."""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Finding, MemberId, MessageId, PlaceId
from sootline.core.rulebook.contaminants import Decider


class Custody(StrEnum):
    """Where or with whom a component is."""

    HOOK = "hook"
    MEMBER = "member"
    SPARE_RACK = "spare-rack"
    BAG = "bag"
    WASH_ROOM = "wash-room"
    CONTRACTOR = "contractor"
    REPAIR = "repair"
    LOAN = "loan"
    EVIDENCE = "evidence"
    NOT_SEEN = "not-seen"


class CareStage(StrEnum):
    """How far a component has come from the call back to the hook."""

    CHECKED = "checked"
    WORN = "worn"
    TO_WASH = "to-wash"
    IN_WASHER = "in-washer"
    WASHED = "washed"
    DRYING = "drying"
    TO_CHECK = "to-check"


class Assembly(StrEnum):
    """How a component stands to the set it belongs to."""

    ASSEMBLED = "assembled"
    APART = "apart"
    MISMATCHED = "mismatched"
    INCOMPLETE = "incomplete"
    UNKNOWN = "unknown"


class Life(StrEnum):
    """Whether a component is in use at all."""

    IN_SERVICE = "in-service"
    RESERVE = "reserve"
    TRAINING_ONLY = "training-only"
    RETIRED = "retired"
    DISPOSED = "disposed"


@dataclass(frozen=True, kw_only=True)
class Hold:
    """Nobody uses, opens or washes it until somebody entitled decides.

    Args:
        cause: which rule or fact opened it; one hold per cause.
        question: the message asking what the decider must answer.
        decider: who ends it.
        deputy: who stands in.
        escalate_after_h: hours until an undecided hold goes up [h].
        reason: the finding that opened it; None for one recorded by hand.
        released_by: who ended it, with what was said; None while open.
        released_at: when, as recorded.
    """

    cause: str
    question: MessageId
    decider: Decider
    deputy: Decider
    escalate_after_h: int
    reason: Finding | None = None
    released_by: str | None = None
    released_at: str | None = None

    @property
    def open(self) -> bool:
        """Whether nobody entitled has ended it yet."""
        return self.released_by is None


@dataclass(frozen=True, kw_only=True)
class State:
    """The product: custody and place, care stage, holds, assembly, life."""

    custody: Custody = Custody.MEMBER
    place: PlaceId | None = None
    holder: MemberId | None = None
    stage: CareStage = CareStage.CHECKED
    holds: tuple[Hold, ...] = ()
    assembly: Assembly = Assembly.ASSEMBLED
    life: Life = Life.IN_SERVICE

    @property
    def open_holds(self) -> tuple[Hold, ...]:
        """The holds nobody entitled has ended."""
        return tuple(hold for hold in self.holds if hold.open)
