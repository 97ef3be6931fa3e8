"""How long does a job's gear take to dry in tonight's air, and does the room keep up?"""

from dataclasses import replace

from sootline.core.basis import (
    Assumptions,
    BadInputError,
    ComponentId,
    Fault,
    MessageId,
    UnreadableValueError,
)
from sootline.core.drying import Cloth
from sootline.core.drying.cloths import cloth_of
from sootline.core.drying.estimating import Wetness
from sootline.core.drying.filling import WetPiece
from sootline.core.drying.for_plans import DryingOutlook, estimate_drying_times
from sootline.core.gear import CareStage, Component, find_kind
from sootline.core.job.jobs import Job
from sootline.core.laundry.rooms import WashRoom
from sootline.core.machines import Moisture, WeighedSpin, moisture_after, resolved
from sootline.core.machines.moisture import DEFAULT
from sootline.tasks.form_loads import Loads, form_loads
from sootline.tasks.ports import Rules

_WET = (CareStage.IN_WASHER, CareStage.WASHED, CareStage.DRYING)


def estimate_drying_of(rules: Rules, job: Job, assumptions: Assumptions) -> DryingOutlook:
    """Estimate how long what is washed tonight takes to dry at each place.

    Raises:
        BadInputError: nobody read the room's air, or the job names an edition or kind that does
            not exist.
        UnreadableValueError: readings that no air has.
    """
    return outlook(job, form_loads(rules, job), assumptions)


def outlook(job: Job, loads: Loads, assumptions: Assumptions) -> DryingOutlook:
    """Estimate drying for gear that is sorted already.

    Raises:
        BadInputError: nobody read the room's air.
        UnreadableValueError: readings that no air has.
    """
    if job.readings.air is None:
        raise BadInputError([Fault(place="readings.air", message=MessageId("drying.no_air"))])
    moisture = wettest(job, assumptions)
    return estimate_drying_times(
        room=job.wash_room,
        air=job.readings.air,
        readings=job.readings,
        pieces=wet_pieces(job, loads),
        wetness=Wetness(moisture=moisture.band, measured=moisture.rests_on != DEFAULT),
        heat_limit=resolved(loads.decided.rulebook, "dry.air_temp"),
        assumptions=assumptions,
    )


def room_with_estimates(job: Job, loads: Loads, assumptions: Assumptions) -> WashRoom:
    """Return the wash room with estimates behind the rows that the department entered.

    A room whose air nobody read stays as it is.

    Raises:
        UnreadableValueError: readings that no air has.
    """
    if job.readings.air is None:
        return job.wash_room
    rows = outlook(job, loads, assumptions).rows
    return replace(job.wash_room, drying_times=(*job.wash_room.drying_times, *rows))


def wet_pieces(job: Job, loads: Loads) -> tuple[WetPiece, ...]:
    """List what is washed tonight or wet already and dries as cloth, each as heavy as it may be.

    What its label wants dried with the liner in its shell counts as hanging so.
    """
    washed = {one for sort in loads.sorting.sorts for one in sort.components}
    washed |= {one.id for one in job.components if one.state.stage in _WET}
    together = {
        decision.component
        for decision in loads.decided.decisions
        if decision.terms.assembled.value is True
    }
    return tuple(
        piece
        for component in job.components
        if component.id in washed and (piece := _wet(component, together)) is not None
    )


def wettest(job: Job, assumptions: Assumptions) -> Moisture:
    """Return the wettest that a load may come out: weighed here, or the default of the table.

    A weighing counts for its washer's gentlest spin, scaled where it was weighed at another.
    """
    usual = moisture_after(None, None, assumptions)
    weighed = [_after_gentlest(job, one, usual, assumptions) for one in job.readings.scales]
    return max(weighed, key=lambda one: one.band.likely, default=usual)


def _after_gentlest(
    job: Job, weighed: WeighedSpin, usual: Moisture, assumptions: Assumptions
) -> Moisture:
    spins = [
        programme.extraction
        for washer in job.wash_room.washers
        if washer.id == weighed.washer
        for programme in washer.programmes
        if programme.extraction is not None
    ]
    gentlest = min(spins, key=lambda spin: spin.to("G"), default=None)
    try:
        return moisture_after(weighed, gentlest, assumptions)
    except UnreadableValueError:
        # Too far from the weighing to scale it: the wide default says more than a wrong figure.
        return usual


def _wet(component: Component, together: set[ComponentId]) -> WetPiece | None:
    kind = find_kind(component.kind)
    cloth = cloth_of(kind.layer)
    mass = component.mass or (kind.mass[1] if kind.mass else None)
    if cloth is None or mass is None:
        return None
    hangs = Cloth.ASSEMBLED if component.id in together else cloth
    return WetPiece(kind=kind.id, cloth=hangs, mass=mass)
