"""What happened on a call: who was where, in what, and what may be on the gear?

Every fact may be "unknown"; who said a thing is kept with it.
"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    BagId,
    CallId,
    ComponentId,
    ContaminantId,
    DateSpan,
    MemberId,
    Moment,
    require_offset,
)
from sootline.core.rulebook.contaminants import Knowledge


class Answer(StrEnum):
    """An answer somebody gave, or could not give."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


class Zone(StrEnum):
    """Where a person was, in the words people use on the floor."""

    INSIDE = "inside"
    ROOF = "roof"
    OVERHAUL = "overhaul"
    OUTSIDE = "outside"
    PUMP = "pump"
    STAGING = "staging"
    UNKNOWN = "unknown"


class Done(StrEnum):
    """How far something was done."""

    DONE = "done"
    PART = "part"
    NOT_DONE = "not-done"
    UNKNOWN = "unknown"


class DeconMethod(StrEnum):
    """How the on-scene reduction was made; none of them is a wash."""

    WET_SOAP = "wet-soap"
    WATER = "water"
    DRY_BRUSH = "dry-brush"
    AIR = "air"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True)
class Decon:
    """The on-scene reduction of one person; a reason when it was not done, without blame."""

    done: Done = Done.UNKNOWN
    method: DeconMethod = DeconMethod.UNKNOWN
    reason: str | None = None


@dataclass(frozen=True, kw_only=True)
class Hazard:
    """Something that was, or may have been, at the call.

    Args:
        said_by: who said so; None is an inference nobody stands for.
    """

    contaminant: ContaminantId
    knowledge: Knowledge = Knowledge.UNKNOWN
    said_by: str | None = None
    detail: str | None = None


@dataclass(frozen=True, kw_only=True)
class Survey:
    """What a survey found about asbestos or another building hazard, and who signed it."""

    contaminant: ContaminantId
    found: Knowledge
    signed_by: str
    signed_at: Moment

    def __post_init__(self) -> None:
        require_offset(self.signed_at)


@dataclass(frozen=True, kw_only=True)
class Building:
    """What is known of the place.

    Args:
        built: when; a year is a span.
        opened: whether ceilings or walls were opened at this call.
    """

    built: DateSpan = DateSpan()
    opened: Answer = Answer.UNKNOWN
    surveys: tuple[Survey, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Presence:
    """One person at the call.

    Args:
        zones: where the person was; empty is not known.
        on_air: whether breathing apparatus was in use.
        smoke: whether the person was in smoke.
        opened: whether the person was there when ceilings or walls were opened.
        worn: the components worn; None is everything the person owns.
    """

    member: MemberId
    zones: tuple[Zone, ...] = ()
    role: str | None = None
    on_air: Answer = Answer.UNKNOWN
    smoke: Answer = Answer.UNKNOWN
    opened: Answer = Answer.UNKNOWN
    minutes: int | None = None
    decon: Decon = Decon()
    bags: tuple[BagId, ...] = ()
    worn: tuple[ComponentId, ...] | None = None


@dataclass(frozen=True, kw_only=True)
class Remark:
    """What somebody noticed on one component.

    Args:
        reached_skin: whether it came through to the wearer's skin.
        torn: whether the component is torn, cut or burned through.
        rinsed: whether it was rinsed on scene; a fact of the past, never a proposal.
        soiled: whether dirt can be seen.
    """

    component: ComponentId
    contaminant: ContaminantId | None = None
    knowledge: Knowledge = Knowledge.KNOWN
    reached_skin: Answer = Answer.UNKNOWN
    torn: bool = False
    rinsed: Answer = Answer.UNKNOWN
    soiled: Answer = Answer.UNKNOWN
    said_by: str | None = None
    detail: str | None = None


@dataclass(frozen=True, kw_only=True)
class Call:
    """One call or training burn, as far as it is known.

    Args:
        at: when it began, with its offset from UTC.
        code: an incident code (three digits or the joined form); it only raises questions.
        evidence: components an investigator has secured.
        casualties: members killed or seriously hurt; everything of theirs is secured, unwashed.
    """

    id: CallId
    at: Moment
    back_at: Moment | None = None
    code: str | None = None
    title: str = ""
    training: bool = False
    building: Building = Building()
    hazards: tuple[Hazard, ...] = ()
    people: tuple[Presence, ...] = ()
    remarks: tuple[Remark, ...] = ()
    evidence: tuple[ComponentId, ...] = ()
    casualties: tuple[MemberId, ...] = ()

    def __post_init__(self) -> None:
        require_offset(self.at, self.back_at)
