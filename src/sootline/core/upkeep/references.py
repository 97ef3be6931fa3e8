"""Which components, people and shipments do the facts of the year name?"""

from collections.abc import Iterator

from sootline.core.upkeep.facts import UpkeepFacts


def named_components(facts: UpkeepFacts) -> Iterator[tuple[str, str]]:
    """List every component that is named, with its place; what was read off a piece is no name."""
    for n, sighting in enumerate(facts.sightings):
        yield f"sightings[{n}].component", sighting.component
    for n, action in enumerate(facts.actions):
        yield f"actions[{n}].component", action.component
    for n, inspection in enumerate(facts.inspections):
        yield f"inspections[{n}].component", inspection.component
    for n, day in enumerate(facts.inspection_days):
        for planned in day.planned:
            yield f"inspection_days[{n}].planned", planned
        for absent in day.absent:
            yield f"inspection_days[{n}].absent", absent.component
    for n, repair in enumerate(facts.repairs):
        yield f"repairs[{n}].component", repair.component
    for n, manifest in enumerate(facts.manifests):
        for sent in manifest.pieces:
            yield f"manifests[{n}].pieces", sent.component
        for hazard in manifest.hazards:
            for component in hazard.components:
                yield f"manifests[{n}].hazards", component


def named_members(facts: UpkeepFacts) -> Iterator[tuple[str, str]]:
    """List every member that is named, with its place."""
    for n, measured in enumerate(facts.measured):
        yield f"measured[{n}].member", measured.member
    for n, changed in enumerate(facts.changed):
        yield f"changed[{n}].member", changed.member


def named_shipments(facts: UpkeepFacts) -> Iterator[tuple[str, str]]:
    """List every shipment that a receipt or an invoice names, with its place."""
    for n, receipt in enumerate(facts.receipts):
        yield f"receipts[{n}].manifest", receipt.manifest
    for n, invoice in enumerate(facts.invoices):
        yield f"invoices[{n}].manifest", invoice.manifest


def named_notices(facts: UpkeepFacts) -> Iterator[tuple[str, str]]:
    """List every notice that a sighting or an action names, with its place."""
    for n, sighting in enumerate(facts.sightings):
        yield f"sightings[{n}].notice", sighting.notice
    for n, action in enumerate(facts.actions):
        yield f"actions[{n}].notice", action.notice
    for n, closed in enumerate(facts.closed):
        yield f"closed[{n}].notice", closed.notice
