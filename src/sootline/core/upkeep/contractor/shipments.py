"""What may go on a manifest, what must be said with it, and what lacks while it is away?"""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from sootline.core.basis import Bearing, ComponentId, Finding, MemberId, SetId, finding
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Component, Custody, Element, view_sets
from sootline.core.intervals.dues import register_ground
from sootline.core.upkeep.contractor.facts import Disclosed, Manifest, Sent, Service
from sootline.core.upkeep.contractor.receipts import Arrival, Reconciled
from sootline.core.upkeep.qualified import PRACTICE

_SPOKEN = {Answer.YES: "present", Answer.UNKNOWN: "perhaps", Answer.NO: "denied"}


@dataclass(frozen=True, kw_only=True)
class ManifestRow:
    """One line a reader without the program can count and tick."""

    sent: Sent
    component: Component
    hazards: tuple[Disclosed, ...]


@dataclass(frozen=True, kw_only=True)
class ManifestSheet:
    """A manifest as it travels.

    Args:
        said: hazards and what is not known, to be printed with it.
        against: what speaks against sending something as it is.
    """

    manifest: Manifest
    rows: tuple[ManifestRow, ...]
    said: tuple[Finding, ...]
    against: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class BrokenSet:
    """A set that lacks what did not come back.

    Args:
        elements: what is not whole without it.
    """

    set: SetId
    owner: MemberId | None
    missing: tuple[ComponentId, ...]
    elements: tuple[Element, ...]


def write_manifest(
    manifest: Manifest, components: Mapping[ComponentId, Component]
) -> ManifestSheet:
    """Write a manifest out; a component that is not in the register is left to the job's check.

    Raises:
        KeyError: a component is not in the register.
    """
    rows = tuple(
        ManifestRow(
            sent=sent,
            component=components[sent.component],
            hazards=tuple(
                one
                for one in manifest.hazards
                if not one.components or sent.component in one.components
            ),
        )
        for sent in manifest.pieces
    )
    said = tuple(_say(one) for one in manifest.hazards)
    not_known = finding(Bearing.WARNS, "contractor.hazard.not_all_known", PRACTICE)
    against = tuple(reason for row in rows for reason in _against(row))
    return ManifestSheet(manifest=manifest, rows=rows, said=(*said, not_known), against=against)


def list_broken_sets(
    reconciled: Reconciled, components: Iterable[Component]
) -> tuple[BrokenSet, ...]:
    """List the sets that are not whole because something is missing of this shipment.

    Raises:
        BadInputError: a component's kind is unknown.
    """
    gone = frozenset(reconciled.missing)
    every = tuple(components)
    hit = {one.set for one in every if one.id in gone and one.set is not None}
    here = [_without(one, gone) for one in every if one.set in hit]
    return tuple(
        BrokenSet(
            set=view.id,
            owner=next((one.owner for one in here if one.set == view.id and one.owner), None),
            missing=tuple(one.id for one in here if one.set == view.id and one.id in gone),
            elements=tuple(one.element for one in view.elements if one.lacking),
        )
        for view in view_sets(here)
    )


def say_shipment(reconciled: Reconciled, today: dt.date) -> tuple[Finding, ...]:
    """Say what is not back, since when, and what each piece that came without being sent is."""
    said = [_out(one, reconciled.manifest, today) for one in reconciled.missing]
    for one in reconciled.arrived:
        if one.arrival is not Arrival.RETURNED:
            said.append(
                finding(
                    Bearing.NOTES if one.arrival is Arrival.CONFIRMED else Bearing.ASKS,
                    f"contractor.arrived.{one.arrival}",
                    PRACTICE,
                    read=one.read or "-",
                    line=one.line + 1,
                    component=one.component or "-",
                    candidates=", ".join(one.candidates) or "-",
                    by=one.by or "-",
                )
            )
    return tuple(said)


def _out(component: ComponentId, manifest: Manifest, today: dt.date) -> Finding:
    """Say of one piece that it is not back: late, in time, or with no promise to hold it to."""
    promised, ground = manifest.promised, register_ground(component, "contractor")
    if promised.latest is None:
        named = {"component": component, "n": (today - manifest.at.date()).days}
        return finding(Bearing.WARNS, "contractor.missing.unpromised", ground, **named)
    days = (today - promised.latest).days
    late = {"component": component, "promised": promised, "n": days}
    if days > 0:
        return finding(Bearing.WARNS, "contractor.missing.late", ground, **late)
    return finding(Bearing.NOTES, "contractor.missing.out", ground, **late)


def _say(hazard: Disclosed) -> Finding:
    everywhere = "" if hazard.components else ".all"
    return finding(
        Bearing.WARNS,
        f"contractor.hazard.{_SPOKEN[hazard.present]}{everywhere}",
        PRACTICE,
        contaminant=hazard.contaminant or "-",
        words=hazard.words or "-",
        pieces=", ".join(hazard.components),
    )


def _against(row: ManifestRow) -> Iterator[Finding]:
    """Say what speaks against sending a piece: a hold, evidence, a label nobody can read."""
    component, state = row.component, row.component.state
    ground = register_ground(component.id, "state")
    special = Service.SPECIALISED_CLEANING in row.sent.services
    for hold in state.open_holds:
        bearing = Bearing.ASKS if special else Bearing.FORBIDS
        message = "contractor.held_special" if special else "contractor.held"
        named = {"component": component.id, "decider": hold.decider, "cause": hold.cause}
        yield finding(bearing, message, ground, **named)
    if state.custody is Custody.EVIDENCE:
        yield finding(Bearing.FORBIDS, "contractor.evidence", ground, component=component.id)
    if not component.label.readable:
        yield finding(Bearing.ASKS, "contractor.no_label", ground, component=component.id)


def _without(component: Component, gone: frozenset[ComponentId]) -> Component:
    if component.id not in gone:
        return component
    return replace(component, state=replace(component.state, custody=Custody.NOT_SEEN))
