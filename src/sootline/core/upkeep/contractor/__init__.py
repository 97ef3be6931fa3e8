"""Contractors: what was sent, what came back, what was charged, and how long it took."""

from sootline.core.upkeep.contractor.facts import (
    Agreed,
    Charge,
    Disclosed,
    Invoice,
    Manifest,
    Receipt,
    Received,
    Sent,
    Service,
)
from sootline.core.upkeep.contractor.invoices import InvoiceCheck, Line, check_invoice
from sootline.core.upkeep.contractor.receipts import Arrival, Arrived, Reconciled, reconcile
from sootline.core.upkeep.contractor.shipments import (
    BrokenSet,
    ManifestSheet,
    list_broken_sets,
    say_shipment,
    write_manifest,
)
from sootline.core.upkeep.contractor.turnaround import (
    Stay,
    Turnaround,
    estimate_turnaround,
    stays_of,
)

__all__ = [
    "Agreed",
    "Arrival",
    "Arrived",
    "BrokenSet",
    "Charge",
    "Disclosed",
    "Invoice",
    "InvoiceCheck",
    "Line",
    "Manifest",
    "ManifestSheet",
    "Receipt",
    "Received",
    "Reconciled",
    "Sent",
    "Service",
    "Stay",
    "Turnaround",
    "check_invoice",
    "estimate_turnaround",
    "list_broken_sets",
    "reconcile",
    "say_shipment",
    "stays_of",
    "write_manifest",
]
