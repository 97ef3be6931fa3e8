"""What does a job say of the time between calls?"""

from dataclasses import dataclass

from sootline.core.upkeep.contractor.facts import Invoice, Manifest, Receipt
from sootline.core.upkeep.inspections.facts import Inspection, InspectionDay
from sootline.core.upkeep.people.facts import Changed, LeadTime, Measured
from sootline.core.upkeep.planning.facts import WorkToday
from sootline.core.upkeep.qualified import Qualified
from sootline.core.upkeep.recalls.notices import Action, Notice, NoticeClosed, Sighting
from sootline.core.upkeep.repairs.facts import Repair
from sootline.core.upkeep.stores.machine_log import LogEntry, Routine
from sootline.core.upkeep.stores.supplies import Supply


@dataclass(frozen=True, kw_only=True)
class UpkeepFacts:
    """Everything a job says beyond gear, people and calls; each part may be left out.

    Args:
        qualified: who is trained or verified for what.
        notices, sightings, actions, closed: recalls, what was read by eye, what was done, and which
            notices a person closed.
        inspections, inspection_days: what was looked at, and what was planned.
        manifests, receipts, invoices: contractors.
        work_today: how much of each work can be done today.
        measured, changed, lead_times: people's measures, and how long sizes take to come.
        supplies, machine_log, routines: the store and the machines.
    """

    qualified: tuple[Qualified, ...] = ()
    notices: tuple[Notice, ...] = ()
    sightings: tuple[Sighting, ...] = ()
    actions: tuple[Action, ...] = ()
    closed: tuple[NoticeClosed, ...] = ()
    inspections: tuple[Inspection, ...] = ()
    inspection_days: tuple[InspectionDay, ...] = ()
    repairs: tuple[Repair, ...] = ()
    manifests: tuple[Manifest, ...] = ()
    receipts: tuple[Receipt, ...] = ()
    invoices: tuple[Invoice, ...] = ()
    work_today: tuple[WorkToday, ...] = ()
    measured: tuple[Measured, ...] = ()
    changed: tuple[Changed, ...] = ()
    lead_times: tuple[LeadTime, ...] = ()
    supplies: tuple[Supply, ...] = ()
    machine_log: tuple[LogEntry, ...] = ()
    routines: tuple[Routine, ...] = ()
