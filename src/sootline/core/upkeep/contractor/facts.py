"""What was sent to a contractor, what came back, and what was charged for it?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    ContaminantId,
    DateSpan,
    KindId,
    Moment,
    UnreadableValueError,
    require_offset,
)
from sootline.core.exposure.calls import Answer
from sootline.core.upkeep.repairs.facts import Price


class Service(StrEnum):
    """What a contractor is asked to do with a component."""

    ADVANCED_CLEANING = "advanced-cleaning"
    SPECIALISED_CLEANING = "specialised-cleaning"
    ADVANCED_INSPECTION = "advanced-inspection"
    LINER_INSPECTION = "liner-inspection"
    ADVANCED_REPAIR = "advanced-repair"


@dataclass(frozen=True, kw_only=True)
class Sent:
    """One component on a manifest."""

    component: ComponentId
    services: tuple[Service, ...]
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Disclosed:
    """One hazard the contractor's people must know of.

    Args:
        contaminant: what it is or may be; None is nothing anybody could name.
        present: whether it is known to be there; unknown is said as unknown.
        components: on which of the sent components; none is on all.
        words: in plain words, as told.
    """

    contaminant: ContaminantId | None = None
    present: Answer = Answer.UNKNOWN
    components: tuple[ComponentId, ...] = ()
    words: str = ""


@dataclass(frozen=True, kw_only=True)
class Agreed:
    """What one service on one component costs by agreement."""

    service: Service
    price: Price
    kind: KindId | None = None


@dataclass(frozen=True, kw_only=True)
class Manifest:
    """One shipment, as it left.

    Args:
        provider: to whom.
        promised: by when all of it is promised back; unknown is no promise.
        agreed: prices by service; one for a kind counts before one for all.
    """

    id: str
    provider: str
    at: Moment
    by: str
    pieces: tuple[Sent, ...]
    hazards: tuple[Disclosed, ...] = ()
    promised: DateSpan = DateSpan()
    agreed: tuple[Agreed, ...] = ()

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("contractor.nobody", manifest=self.id)


@dataclass(frozen=True, kw_only=True)
class Received:
    """One piece that came out of the van, as somebody read it.

    Args:
        read: its identity as it stands on it; "" is none, or none that can be read.
        kind, size: what it looks like, where that was written down.
        marked: another department's name on it; "" is none.
        confirmed: which sent component a named person says it is; None is nobody has.
        confirmed_by: who says so.
    """

    read: str = ""
    kind: KindId | None = None
    size: str = ""
    marked: str = ""
    note: str = ""
    confirmed: ComponentId | None = None
    confirmed_by: str = ""

    def __post_init__(self) -> None:
        if (self.confirmed is not None) != bool(self.confirmed_by.strip()):
            raise UnreadableValueError("contractor.confirmed", read=self.read)


@dataclass(frozen=True, kw_only=True)
class Receipt:
    """One delivery back, or a part of it."""

    manifest: str
    at: Moment
    by: str
    pieces: tuple[Received, ...]

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("contractor.nobody", manifest=self.manifest)


@dataclass(frozen=True, kw_only=True)
class Charge:
    """One line of an invoice, as it is written there."""

    read: str
    service: Service
    price: Price


@dataclass(frozen=True, kw_only=True)
class Invoice:
    """An invoice for one shipment.

    Args:
        total: as it is written at the bottom.
    """

    manifest: str
    number: str
    total: Price
    charges: tuple[Charge, ...] = ()
