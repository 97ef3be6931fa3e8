"""What goes together: which components may share a load, where, and up to what limit?

A sort is not a load: the wash plan alone composes loads, within a sort and its limits.
"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding, MachineId, PlaceId, Quantity
from sootline.core.care.decisions import Separation
from sootline.core.gear.kinds import WashMethod
from sootline.core.laundry.rooms import Company


@dataclass(frozen=True, kw_only=True)
class Setting:
    """One washer and programme a sort may use, and the most it may hold there."""

    washer: MachineId
    programme: str
    limit: Quantity
    pieces: int | None
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class Sort:
    """Components that may share, and where they may go.

    Args:
        method: MACHINE in a drum, HAND or BRUSH or WIPE at a sink or bench.
        settings: washers and programmes permitted by every member of the sort.
        places: sinks or benches permitted.
        bagged: the components that go in a closed mesh bag.
        reasons: why these go together, and why others do not.
    """

    id: str
    method: WashMethod
    company: Company
    separation: Separation
    components: tuple[ComponentId, ...]
    bagged: tuple[ComponentId, ...] = ()
    settings: tuple[Setting, ...] = ()
    places: tuple[PlaceId, ...] = ()
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class Sorting:
    """All sorts of a call, what stays out, and what nobody can wash here."""

    sorts: tuple[Sort, ...]
    kept_out: tuple[tuple[ComponentId, Finding], ...] = ()
    refused: tuple[Finding, ...] = ()
