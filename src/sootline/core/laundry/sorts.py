"""What goes together: which components may share a load, where, and up to what limit?

A sort is not a load: the wash plan alone composes loads, within a sort and its limits.
"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding, MachineId, PlaceId, Quantity
from sootline.core.care.decisions import Separation
from sootline.core.gear.kinds import DryMethod, WashMethod
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
class DryingChoice:
    """Where one component may dry.

    Args:
        places: racks and cabinets of the room that it bears.
        elsewhere: how it dries when no rack or cabinet takes it (hung up, laid flat); such
            places are never short.
        reasons: why these places, and why not the others.
    """

    component: ComponentId
    places: tuple[PlaceId, ...]
    elsewhere: DryMethod | None = None
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class Sorting:
    """All sorts of a call, where each component dries, what stays out, and what is refused.

    Args:
        kept_out: what is not washed now, each with its reason.
        refused: what nobody can wash or dry here, and places that are never used; a finding on a
            component names it as "component".
    """

    sorts: tuple[Sort, ...]
    drying: tuple[DryingChoice, ...] = ()
    kept_out: tuple[tuple[ComponentId, Finding], ...] = ()
    refused: tuple[Finding, ...] = ()
