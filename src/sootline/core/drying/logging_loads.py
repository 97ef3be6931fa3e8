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
from sootline.core.drying.arrays.columns import Question
from sootline.core.drying.arrays.estimates import estimate_many
from sootline.core.drying.calibrating import Ratio
from sootline.core.drying.estimating import DryingEstimate, Surroundings, Wetness
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
    compared = compare_each(loads, places, assumptions)
    ratios = tuple(one for one in compared if isinstance(one, Ratio))
    return ratios, tuple(one for one in compared if isinstance(one, Finding))


def compare_each(
    loads: Iterable[LoggedLoad], places: Mapping[PlaceId, Blown], assumptions: Assumptions
) -> tuple[Ratio | Finding, ...]:
    """Return, load by load, measured over modelled time, or why the load says nothing.

    Raises:
        UnreadableValueError: readings of air that no air has.
    """
    given = tuple(loads)
    asked = [_question(load, places.get(load.place, Blown()), assumptions) for load in given]
    found = iter(estimate_many([one for one in asked if one is not None], assumptions))
    return tuple(
        _compared(load, None if one is None else next(found))
        for load, one in zip(given, asked, strict=True)
    )


def _question(load: LoggedLoad, place: Blown, assumptions: Assumptions) -> Question | None:
    """Return what the model is asked of a load; None where it was dry on the way already."""
    dry, start, end = (float(one.to("kg")) for one in (load.dry, load.start, load.end))
    room = balance_room(load.air, assumptions)
    if end <= dry:
        return None
    wetness = Wetness(
        moisture=Band.exactly((start - dry) / dry),
        measured=True,
        end=Band.exactly((end - dry) / dry),
    )
    return Question(
        batch=Batch(cloth=load.cloth, dry_kg=dry),
        wetness=wetness,
        around=Surroundings(place=place, room=room),
        factor=Band.exactly(1.0),
    )


def _compared(
    load: LoggedLoad, modelled: DryingEstimate | UnreadableValueError | None
) -> Ratio | Finding:
    """Return measured over modelled time, or why the load is left out."""
    values = {"place": load.place, "cloth": load.cloth.value, "lasted": str(load.lasted)}
    ground = as_entered("room.logged")
    if modelled is None:
        return finding(Bearing.NOTES, "drying.log.past_dry", ground, **values)
    if isinstance(modelled, UnreadableValueError):
        return finding(Bearing.NOTES, "drying.log.impossible", ground, **values)
    ratio = float(load.lasted.to("min")) / modelled.minutes.likely
    if not 1 / _MOST <= ratio <= _MOST:
        return finding(Bearing.WARNS, "drying.log.far_off", ground, **values, ratio=f"{ratio:.1f}")
    return Ratio(place=load.place, cloth=load.cloth, ratio=ratio)
