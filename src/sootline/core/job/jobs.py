"""What does one task need to know? Everything, in one document.

The job is every deciding task's only input, whether read from a file or exported from a store.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from sootline.core.basis import EditionId, MappingForm, MemberId, Moment, require_offset
from sootline.core.care.policy import CarePolicy
from sootline.core.drying import Readings
from sootline.core.exposure.calls import Call
from sootline.core.gear.components import Component
from sootline.core.gear.labels import Guide
from sootline.core.laundry.rooms import WashRoom
from sootline.core.rebuild import AfterWashCheck, Built
from sootline.core.riding import RidingFacts
from sootline.core.rulebook import Rule, RuleForm
from sootline.core.upkeep.facts import UpkeepFacts

JOB_VERSION = 1


class Goal(StrEnum):
    """What the wash plan is to achieve first."""

    SOONEST = "soonest"
    DEADLINE = "deadline"
    ALL_DONE = "all-done"


@dataclass(frozen=True, kw_only=True)
class Member:
    """One person who wears gear.

    Args:
        crew: the crew or apparatus the member rides on.
        priority: how much an hour without gear weighs against others; 1 is usual.
        measures: by dimension, as measured.
    """

    id: MemberId
    crew: str = ""
    role: str = ""
    priority: int = 1
    measures: Annotated[tuple[tuple[str, str], ...], MappingForm()] = ()


@dataclass(frozen=True, kw_only=True)
class Department:
    """Which texts the department goes by, in which time zone, and its own choices.

    Args:
        edition: the adopted edition of the care standard ("nfpa-1851/2020").
        zone: IANA name of the time zone.
        policy: its own rules by topic, on top of label, guide and edition.
    """

    name: str
    zone: str = "UTC"
    edition: EditionId
    policy: tuple[Annotated[Rule, RuleForm()], ...] = ()
    care: CarePolicy = CarePolicy()


@dataclass(frozen=True, kw_only=True)
class Request:
    """When a plan begins and what it is for.

    Args:
        start: the plan's minute 0.
        by: the moment of a deadline goal.
    """

    start: Moment
    goal: Goal = Goal.SOONEST
    by: Moment | None = None

    def __post_init__(self) -> None:
        require_offset(self.start, self.by)


@dataclass(frozen=True, kw_only=True)
class Job:
    """The document: department, members, components, calls, wash room, request.

    Args:
        version: of the document's form; an unknown version is refused, not guessed.
        now: the moment the decisions are made for.
        checks: what named people felt and saw on components after drying.
        builds: which components were fitted together.
        riding: fit limits, duties, masks, loans, try-ons, exchanges.
        readings: what was read off and weighed in the wash room.
        upkeep: recalls, inspections, repairs, shipments, people's measures, stores.
    """

    version: int
    title: str = ""
    now: Moment
    department: Department
    members: tuple[Member, ...] = ()
    guides: tuple[Guide, ...] = ()
    components: tuple[Component, ...]
    calls: tuple[Call, ...] = ()
    wash_room: WashRoom = WashRoom()
    request: Request | None = None
    checks: tuple[AfterWashCheck, ...] = ()
    builds: tuple[Built, ...] = ()
    riding: RidingFacts = RidingFacts()
    readings: Readings = Readings()
    upkeep: UpkeepFacts = UpkeepFacts()

    def __post_init__(self) -> None:
        require_offset(self.now)
