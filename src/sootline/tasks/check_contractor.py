"""What is at a contractor, what came back, what was charged, and how long does it take?"""

from collections.abc import Mapping
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sootline.core.basis import ComponentId, Finding
from sootline.core.gear import Component
from sootline.core.job.jobs import Job
from sootline.core.upkeep.contractor import (
    Arrival,
    BrokenSet,
    InvoiceCheck,
    Manifest,
    ManifestSheet,
    Reconciled,
    Turnaround,
    check_invoice,
    estimate_turnaround,
    list_broken_sets,
    reconcile,
    say_shipment,
    stays_of,
    write_manifest,
)
from sootline.tasks.list_due import civil_day


@dataclass(frozen=True, kw_only=True)
class ShipmentResult:
    """One shipment, out and back.

    Args:
        said: what is missing, foreign, unidentified or probable.
    """

    sheet: ManifestSheet
    reconciled: Reconciled
    said: tuple[Finding, ...]
    broken: tuple[BrokenSet, ...]
    invoices: tuple[InvoiceCheck, ...]

    @property
    def settled(self) -> bool:
        """Whether all is back by its own number or a person's word, and no line is queried."""
        known = all(
            one.arrival in (Arrival.RETURNED, Arrival.CONFIRMED) for one in self.reconciled.arrived
        )
        paid = all(
            one.total_agrees and not any(line.queries for line in one.lines)
            for one in self.invoices
        )
        return known and paid and not self.reconciled.missing


@dataclass(frozen=True, kw_only=True)
class ProviderTime:
    """How long one provider keeps gear."""

    provider: str
    turnaround: Turnaround


@dataclass(frozen=True, kw_only=True)
class ContractorResult:
    """Every shipment, and how long each provider takes."""

    shipments: tuple[ShipmentResult, ...]
    providers: tuple[ProviderTime, ...]

    @property
    def settled(self) -> bool:
        """Whether every shipment is settled."""
        return all(one.settled for one in self.shipments)


def check_contractor(job: Job) -> ContractorResult:
    """Reconcile every shipment of a job.

    Raises:
        BadInputError: a kind is unknown.
    """
    pieces = {component.id: component for component in job.components}
    results = tuple(_shipment(one, job, pieces) for one in job.upkeep.manifests)
    zone = ZoneInfo(job.department.zone)
    days = tuple(receipt.at.astimezone(zone).date() for receipt in job.upkeep.receipts)
    providers = dict.fromkeys(one.provider for one in job.upkeep.manifests)
    return ContractorResult(
        shipments=results,
        providers=tuple(
            ProviderTime(
                provider=provider,
                turnaround=estimate_turnaround(
                    stays_of(
                        [
                            one.reconciled
                            for one in results
                            if one.reconciled.manifest.provider == provider
                        ],
                        days,
                        civil_day(job),
                    )
                ),
            )
            for provider in providers
        ),
    )


def _shipment(
    manifest: Manifest, job: Job, pieces: Mapping[ComponentId, Component]
) -> ShipmentResult:
    reconciled = reconcile(manifest, job.upkeep.receipts, job.components)
    return ShipmentResult(
        sheet=write_manifest(manifest, pieces),
        reconciled=reconciled,
        said=say_shipment(reconciled, civil_day(job)),
        broken=list_broken_sets(reconciled, job.components),
        invoices=tuple(
            check_invoice(one, reconciled, pieces)
            for one in job.upkeep.invoices
            if one.manifest == manifest.id
        ),
    )
