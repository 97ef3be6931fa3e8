"""What can somebody report from a screen? One thing done at a time, with what it needs."""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from sootline.core.basis import CallId, ComponentId, PlaceId
from sootline.core.exposure.calls import Call, Hazard, Presence
from sootline.core.rebuild import AfterWashCheck, Built
from sootline.tasks.answer_question import Answered
from sootline.tasks.floor_deeds import FloorDeed
from sootline.tasks.hold_said import HoldSaid
from sootline.tasks.people_deeds import PeopleDeed
from sootline.tasks.plan_wash import PlanResult
from sootline.tasks.reading_deeds import ReadingTaken
from sootline.tasks.year_deeds import YearFact


class WashStep(StrEnum):
    """How far a load or a batch by hand has come."""

    STARTED = "started"
    ENDED = "ended"
    FAILED = "failed"
    BY_HAND = "by-hand"
    HUNG = "hung"


@dataclass(frozen=True, kw_only=True)
class CallCame:
    """A call is written down, with who rode."""

    call: Call


@dataclass(frozen=True, kw_only=True)
class PersonSaid:
    """It is known where one person was at a call."""

    call: CallId
    presence: Presence


@dataclass(frozen=True, kw_only=True)
class HazardsSaid:
    """It is known what was, or may have been, at a call."""

    call: CallId
    hazards: tuple[Hazard, ...]


@dataclass(frozen=True, kw_only=True)
class Washed:
    """A load or a batch by hand came one step further, as a whole.

    Args:
        load: the number of its card.
        place: the washer, the sink, or where it dries.
        said: what went wrong, where something did.
    """

    step: WashStep
    load: int
    pieces: tuple[ComponentId, ...]
    place: PlaceId
    said: str = ""


@dataclass(frozen=True, kw_only=True)
class LookedOver:
    """A wearer looked own gear over after a call, and found nothing."""

    pieces: tuple[ComponentId, ...]


@dataclass(frozen=True, kw_only=True)
class Checked:
    """A named person felt and saw one piece after its wash."""

    check: AfterWashCheck


@dataclass(frozen=True, kw_only=True)
class PutTogether:
    """Somebody fitted parts together into one element."""

    built: Built
    by: str


@dataclass(frozen=True, kw_only=True)
class Planned:
    """The wash was planned.

    Args:
        station: whose wash room; None is the department's.
        because: what had changed, where it is not the first plan.
    """

    plan: PlanResult
    station: str | None = None
    because: str = ""


Deed: TypeAlias = (
    "CallCame | PersonSaid | HazardsSaid | Washed | LookedOver | Checked | PutTogether | Planned"
    " | YearFact | ReadingTaken | Answered | HoldSaid | FloorDeed | PeopleDeed"
)
