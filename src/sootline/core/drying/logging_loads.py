"""What do logged loads say of the model: measured time over modelled time, load by load?"""

from collections.abc import Iterable, Mapping

from sootline.core.basis import (
    Assumptions,
    Band,
    Bearing,
    Finding,
    PlaceId,
    UnreadableValueError,
    finding,
)
from sootline.core.drying.calibrating import Ratio
from sootline.core.drying.estimating import Surroundings, Wetness, estimate_drying
from sootline.core.drying.rates import Batch, Blown
from sootline.core.drying.readings import LoggedLoad
from sootline.core.drying.rooms import balance_room
from sootline.core.machines.grounds import as_entered

# Further off than this a load was left hanging, or something was written down wrong.
_MOST = 10.0


def compare_loads(
    loads: Iterable[LoggedLoad], places: Mapping[PlaceId, Blown], assumptions: Assumptions
) -> tuple[tuple[Ratio, ...], tuple[Finding, ...]]:
    """Compare every logged load with the model; return ratios, and why the rest is left out.

    Raises:
        UnreadableValueError: readings of air that no air has.
    """
    compared = [compare_load(load, places.get(load.place, Blown()), assumptions) for load in loads]
    ratios = tuple(one for one in compared if isinstance(one, Ratio))
    return ratios, tuple(one for one in compared if isinstance(one, Finding))


def compare_load(load: LoggedLoad, place: Blown, assumptions: Assumptions) -> Ratio | Finding:
    """Return measured over modelled time, or why the load is left out.

    Raises:
        UnreadableValueError: readings of air that no air has.
    """
    dry, start, end = (float(one.to("kg")) for one in (load.dry, load.start, load.end))
    room = balance_room(load.air, assumptions)
    values = {"place": load.place, "cloth": load.cloth.value, "lasted": str(load.lasted)}
    ground = as_entered("room.logged")
    if end <= dry:
        return finding(Bearing.NOTES, "drying.log.past_dry", ground, **values)
    wetness = Wetness(
        moisture=Band.exactly((start - dry) / dry),
        measured=True,
        end=Band.exactly((end - dry) / dry),
    )
    try:
        modelled = estimate_drying(
            Batch(cloth=load.cloth, dry_kg=dry),
            wetness,
            Surroundings(place=place, room=room),
            Band.exactly(1.0),
            assumptions,
        )
    except UnreadableValueError:
        return finding(Bearing.NOTES, "drying.log.impossible", ground, **values)
    ratio = float(load.lasted.to("min")) / modelled.minutes.likely
    if not 1 / _MOST <= ratio <= _MOST:
        return finding(Bearing.WARNS, "drying.log.far_off", ground, **values, ratio=f"{ratio:.1f}")
    return Ratio(place=load.place, cloth=load.cloth, ratio=ratio)
