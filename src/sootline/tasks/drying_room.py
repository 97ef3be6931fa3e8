"""What can the drying room do tonight, what holds it up, and what would change that?"""

from dataclasses import dataclass, replace

from sootline.core.basis import Assumptions, Finding, UnreadableValueError
from sootline.core.drying import LoggedLoad, RoomAir
from sootline.core.drying.calibrating import Ratio
from sootline.core.drying.filling import blown
from sootline.core.drying.for_plans import DryingOutlook
from sootline.core.drying.logging_loads import compare_each
from sootline.core.drying.rooms import Remedy, balance_room, remedied
from sootline.core.job.jobs import Job
from sootline.core.machines import Moisture
from sootline.tasks.estimate_drying import outlook, wettest
from sootline.tasks.form_loads import form_loads
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class Remedied:
    """The same night with one remedy."""

    remedy: Remedy
    outlook: DryingOutlook


@dataclass(frozen=True, kw_only=True)
class Learned:
    """One logged load against the model.

    Args:
        against: measured over modelled time, or why the load says nothing.
    """

    load: LoggedLoad
    against: Ratio | Finding


@dataclass(frozen=True, kw_only=True)
class DryingRoom:
    """The room as it is and as it could be.

    Args:
        remedied: none where the room's limit is not known.
        learned: every logged load, the newest first.
    """

    air: RoomAir
    moisture: Moisture
    outlook: DryingOutlook
    remedied: tuple[Remedied, ...]
    learned: tuple[Learned, ...]


def look_into_drying_room(rules: Rules, job: Job, assumptions: Assumptions) -> DryingRoom | None:
    """Look into the drying room; None while nobody read its air.

    Raises:
        BadInputError: the job names an edition or kind that does not exist.
        UnreadableValueError: readings that no air has.
    """
    air = job.readings.air
    if air is None:
        return None
    loads = form_loads(rules, job)
    found = outlook(job, loads, assumptions)
    known = found.room.limit_kg_h is not None
    return DryingRoom(
        air=air,
        moisture=wettest(job, assumptions),
        outlook=found,
        remedied=tuple(
            Remedied(
                remedy=remedy,
                outlook=outlook(_with(job, remedied(air, remedy, assumptions)), loads, assumptions),
            )
            for remedy in (Remedy if known else ())
        ),
        learned=_learned(job, assumptions),
    )


def question_air(air: RoomAir, assumptions: Assumptions) -> UnreadableValueError | None:
    """Return what must be asked about a reading before it is kept; None when nothing."""
    try:
        balance_room(air, assumptions)
    except UnreadableValueError as error:
        return error
    return None


def _with(job: Job, air: RoomAir) -> Job:
    return replace(job, readings=replace(job.readings, air=air))


def _learned(job: Job, assumptions: Assumptions) -> tuple[Learned, ...]:
    places = {place.id: blown(place, job.readings) for place in job.wash_room.drying}
    compared = compare_each(job.readings.logged, places, assumptions)
    each = zip(job.readings.logged, compared, strict=True)
    return tuple(Learned(load=load, against=against) for load, against in each)[::-1]
