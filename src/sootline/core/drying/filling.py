"""How full is each drying place tonight, and what could its gear give off into the room?"""

from dataclasses import dataclass

from sootline.core.basis import Assumptions, KindId, PlaceId, Quantity
from sootline.core.drying.cloths import Cloth
from sootline.core.drying.moist_air import MoistAir
from sootline.core.drying.rates import Batch, Blown, free_rate_kg_h
from sootline.core.drying.readings import Readings
from sootline.core.gear.kinds import DryMethod
from sootline.core.laundry.rooms import DryingPlace, Hanging

# A set's layer is a coat's and a pair of trousers' together.
_PIECES_A_SET = 2


@dataclass(frozen=True, kw_only=True)
class WetPiece:
    """One piece that is to be dried.

    Args:
        cloth: how it hangs.
        mass: dry; weighed, or the heaviest of its kind.
    """

    kind: KindId
    cloth: Cloth
    mass: Quantity


def blown(place: DryingPlace, readings: Readings) -> Blown:
    """Return a place as the gear meets it: its fan, and the warmth it reaches."""
    fan = readings.fan(place.id)
    closed = place.method is DryMethod.CABINET
    if fan is None:
        return Blown(closed=closed)
    return Blown(
        flow_m3h=float(fan.flow.to("m3/h")),
        heated_to_c=float(place.air_temp.to("°C")) if place.air_temp else None,
        vented=fan.vented,
        closed=closed,
    )


def fill(place: DryingPlace, cloth: Cloth, pieces: tuple[WetPiece, ...]) -> Batch | None:
    """Return what of one cloth a place takes tonight at once; None when there is nothing.

    Pieces are taken at their mean mass, and no more of them than there are.
    """
    masses = [
        float(piece.mass.to("kg"))
        for piece in pieces
        if piece.cloth is cloth and (not place.kinds or piece.kind in place.kinds)
    ]
    if not masses:
        return None
    room_for = place.places * (_PIECES_A_SET if place.holds is Hanging.SET else 1)
    mean = sum(masses) / len(masses)
    return Batch(cloth=cloth, dry_kg=mean * min(len(masses), room_for))


def given_off_kg_h(
    places: dict[PlaceId, tuple[DryingPlace, Blown]],
    pieces: tuple[WetPiece, ...],
    air: MoistAir,
    assumptions: Assumptions,
) -> dict[PlaceId, float]:
    """Return what each place could give off into the room's air, as full as it gets [kg/h]."""
    result = {}
    for place, one in places.values():
        rates = [
            free_rate_kg_h(batch, one, air, assumptions)
            for cloth in Cloth
            if (batch := fill(place, cloth, pieces)) is not None
        ]
        result[place.id] = 0.0 if one.vented else max(rates, default=0.0)
    return result
