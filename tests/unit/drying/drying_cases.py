"""Rooms, places and batches in few words, for tests of drying."""

from sootline.core.basis import Band, KindId, MinuteSpan, PlaceId, quantity
from sootline.core.drying import Cloth, Fan, LoggedLoad, Readings, RoomAir
from sootline.core.drying.estimating import DryingEstimate, Surroundings, Wetness, estimate_drying
from sootline.core.drying.filling import WetPiece
from sootline.core.drying.rates import Batch, Blown
from sootline.core.drying.rooms import balance_room
from sootline.core.gear.kinds import DryMethod
from sootline.core.laundry.rooms import DryingPlace, Hanging
from sootline.files.practice_tables import load_assumptions

TABLE = load_assumptions()
WEIGHED = Wetness(moisture=Band(low=0.5, likely=0.55, high=0.6), measured=True)
CABINET = Blown(flow_m3h=1700.0, vented=True, closed=True)
STILL = Blown()


def room(
    temp: str = "20 °C",
    humidity: str = "50 %",
    *,
    volume: str = "",
    changes: float | None = None,
    supply: tuple[str, str] | None = None,
    dehumidifier: float = 0.0,
) -> RoomAir:
    """Read a room's air."""
    return RoomAir(
        temp=quantity(temp),
        humidity=quantity(humidity),
        volume=quantity(volume) if volume else None,
        changes=changes,
        supply_temp=quantity(supply[0]) if supply else None,
        supply_humidity=quantity(supply[1]) if supply else None,
        dehumidifier_kg_h=dehumidifier,
    )


def estimate(
    *,
    kg: float = 10.0,
    cloth: Cloth = Cloth.SHELL,
    place: Blown = CABINET,
    air: RoomAir | None = None,
    wetness: Wetness = WEIGHED,
    factor: Band | None = None,
    others: float = 0.0,
) -> DryingEstimate:
    """Estimate one batch."""
    around = Surroundings(place=place, room=balance_room(air or room(), TABLE), others_kg_h=others)
    batch = Batch(cloth=cloth, dry_kg=kg)
    return estimate_drying(batch, wetness, around, factor or TABLE.band("dry.time_factor"), TABLE)


def spans(minutes: MinuteSpan) -> tuple[int, int, int]:
    """Return the ends of an interval [min]."""
    return minutes.earliest, minutes.likely, minutes.late


def place(
    name: str,
    method: DryMethod = DryMethod.RACK,
    *,
    places: int = 10,
    holds: Hanging = Hanging.PIECE,
    kinds: tuple[str, ...] = (),
    air_temp: str = "",
) -> DryingPlace:
    """Make a rack, cabinet or line."""
    return DryingPlace(
        id=PlaceId(name), method=method, places=places, holds=holds,
        kinds=tuple(KindId(kind) for kind in kinds),
        air_temp=quantity(air_temp) if air_temp else None,
    )  # fmt: skip


def fan(name: str, flow: str = "1000 cfm", *, vented: bool = True) -> Fan:
    """Make a fan."""
    return Fan(place=PlaceId(name), flow=quantity(flow), vented=vented)


def pieces(
    *masses: str, kind: str = "coat-shell", cloth: Cloth = Cloth.SHELL
) -> tuple[WetPiece, ...]:
    """Make pieces of one kind."""
    return tuple(WetPiece(kind=KindId(kind), cloth=cloth, mass=quantity(mass)) for mass in masses)


def logged(
    lasted: str,
    *,
    at: str = "cabinet",
    cloth: Cloth = Cloth.SHELL,
    start: str = "15.5 kg",
    end: str = "10.3 kg",
    air: RoomAir | None = None,
) -> LoggedLoad:
    """Log a load of 10 kg."""
    return LoggedLoad(
        place=PlaceId(at), cloth=cloth, dry=quantity("10 kg"), start=quantity(start),
        end=quantity(end), lasted=quantity(lasted), air=air or room(),
    )  # fmt: skip


def readings(*fans: Fan, logs: tuple[LoggedLoad, ...] = ()) -> Readings:
    """Put fans and logged loads together."""
    return Readings(fans=fans, logged=logs)
