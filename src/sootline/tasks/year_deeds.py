"""What can somebody write down between calls? One fact of the year at a time."""

from dataclasses import dataclass
from typing import TypeAlias

from sootline.core.basis import ComponentId
from sootline.core.upkeep.contractor import Invoice, Manifest, Receipt
from sootline.core.upkeep.inspections import Inspection, InspectionDay
from sootline.core.upkeep.people import Changed, Measured
from sootline.core.upkeep.recalls import Action, Notice, NoticeClosed, Sighting
from sootline.core.upkeep.repairs import Repair
from sootline.core.upkeep.stores import LogEntry, Supply


@dataclass(frozen=True, kw_only=True)
class Confirmed:
    """A named person says which sent component a piece of a delivery is.

    Args:
        receipt: the delivery as it stands.
        line: which of its pieces, counted from 0.
    """

    receipt: Receipt
    line: int
    component: ComponentId
    by: str


Fact: TypeAlias = (
    "Inspection | InspectionDay | Repair | Manifest | Receipt | Confirmed | Invoice | Notice"
    " | Sighting | Action | NoticeClosed | Measured | Changed | Supply | LogEntry"
)


@dataclass(frozen=True, kw_only=True)
class YearFact:
    """One fact of the year is written down; it may take the place of an earlier one.

    A day, a notice, a shipment and a supply are known by their names; a repair takes the place of
    the component's last one while that is not over.
    """

    fact: Fact
