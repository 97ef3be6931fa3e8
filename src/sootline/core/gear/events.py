"""What may happen to a component, and how is it said when it may not?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Finding, MemberId, PlaceId
from sootline.core.gear.state import Assembly, Hold
from sootline.core.rulebook.contaminants import Decider


class EventKind(StrEnum):
    """One thing that happened to a component, as somebody reports it."""

    ISSUED = "issued"
    WORN = "worn"
    LOOKED_OVER = "looked-over"
    RETURNED_SOILED = "returned-soiled"
    BAGGED = "bagged"
    SORTED = "sorted"
    PUT_IN_WASHER = "put-in-washer"
    WASHER_ENDED = "washer-ended"
    WASHER_FAILED = "washer-failed"
    WASHED_BY_HAND = "washed-by-hand"
    HUNG = "hung"
    DRIED = "dried"
    TOUCH_CHECKED = "touch-checked"
    REBUILT = "rebuilt"
    BACK_ON_HOOK = "back-on-hook"
    BACK_ON_SPARE_RACK = "back-on-spare-rack"
    HOLD_OPENED = "hold-opened"
    HOLD_RELEASED = "hold-released"
    SENT_TO_CONTRACTOR = "sent-to-contractor"
    RECEIVED_WASHED = "received-washed"
    RECEIVED_UNWASHED = "received-unwashed"
    SENT_TO_REPAIR = "sent-to-repair"
    BACK_FROM_REPAIR = "back-from-repair"
    LENT = "lent"
    CAME_BACK = "came-back"
    HANDED_BACK = "handed-back"
    EVIDENCE_TAKEN = "evidence-taken"
    EVIDENCE_RETURNED = "evidence-returned"
    LOST_SIGHT = "lost-sight"
    FOUND = "found"
    TRAINING_MARKED = "training-marked"
    RETIRED = "retired"
    DISPOSED = "disposed"


@dataclass(frozen=True, kw_only=True)
class Event:
    """One event, with what was said about it.

    Args:
        by: who did it, by name or number; some events count only with a name.
        office: in which office a hold or evidence is released.
        holder: who has the component now.
        place: where it is now (a washer, a rack, a hook).
        hold: the hold to open.
        cause: the cause of the hold to release.
        assembly: how it stands to its set after sorting or rebuilding.
        said: what was said, in the person's own words.
        at: when, as recorded.
    """

    kind: EventKind
    by: str | None = None
    office: Decider | None = None
    holder: MemberId | None = None
    place: PlaceId | None = None
    hold: Hold | None = None
    cause: str | None = None
    assembly: Assembly | None = None
    said: str | None = None
    at: str | None = None


@dataclass(frozen=True, kw_only=True)
class Refusal:
    """An event that changes nothing, and why; the report of it stays in the history."""

    event: Event
    reason: Finding
