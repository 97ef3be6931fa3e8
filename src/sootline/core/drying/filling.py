"""How full is each drying place tonight, and what could its gear give off into the room?"""

from collections.abc import Iterable
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


@dataclass(frozen=True, kw_only=True)
class Share:
    """What one place holds at once, and what that could give off into the room's air.

    Args:
        most_kg: dry mass it holds at the most [kg].
        into_room_kg_h: none where its air leaves the building [kg/h].
    """

    place: PlaceId
    most_kg: float
    into_room_kg_h: float


def share_out(
    places: dict[PlaceId, tuple[DryingPlace, Blown]],
    pieces: tuple[WetPiece, ...],
    air: MoistAir,
    assumptions: Assumptions,
) -> tuple[Share, ...]:
    """Return what racks and cabinets hold; places elsewhere count only where there are none."""
    short = [one for one in places.values() if one[0].method in (DryMethod.RACK, DryMethod.CABINET)]
    shares = []
    for place, one in short or places.values():
        batches = [batch for cloth in Cloth if (batch := fill(place, cloth, pieces)) is not None]
        rates = [free_rate_kg_h(batch, one, air, assumptions) for batch in batches]
        shares.append(
            Share(
                place=place.id,
                most_kg=max((batch.dry_kg for batch in batches), default=0.0),
                into_room_kg_h=0.0 if one.vented else max(rates, default=0.0),
            )
        )
    return tuple(shares)


def into_room_kg_h(shares: Iterable[Share], gear_kg: float) -> float:
    """Return what places give off into the room when so much gear hangs in them [kg/h].

    Args:
        gear_kg: dry mass of the gear there is for them; they hold it in proportion.
    """
    given = tuple(shares)
    most = sum(one.most_kg for one in given)
    held = min(1.0, max(0.0, gear_kg) / most) if most else 0.0
    return held * sum(one.into_room_kg_h for one in given)
