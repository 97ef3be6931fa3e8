"""What did somebody read off in the wash room: its air, its fans, loads weighed while drying?

And what washing there costs, at the prices the department gave.
"""

from dataclasses import dataclass

from sootline.core.basis import Moment, PlaceId, Quantity, UnreadableValueError, require_offset
from sootline.core.drying.cloths import Cloth
from sootline.core.machines import BathReading, CostSheet, Drum, LabResult, WeighedSpin

_MOST_CHANGES = 200
# Spun gear holds less than its own weight of water, dripping gear hardly twice.
_WETTEST = 3


@dataclass(frozen=True, kw_only=True)
class RoomAir:
    """The air of the room, read before the wet gear came in.

    Args:
        humidity: relative [%].
        volume: of the room; None leaves the room out of the estimate, which then says so.
        changes: how often an hour its air is replaced; None as for `volume`.
        supply_temp, supply_humidity: of the air that replaces it (outdoors); without them the
            room's own reading stands in.
        dehumidifier_kg_h: water a dehumidifier takes from the room [kg/h].
    """

    temp: Quantity
    humidity: Quantity
    altitude: Quantity = Quantity.parse("0 m")
    volume: Quantity | None = None
    changes: float | None = None
    supply_temp: Quantity | None = None
    supply_humidity: Quantity | None = None
    dehumidifier_kg_h: float = 0.0

    def __post_init__(self) -> None:
        if self.volume is not None and self.volume.to("m3") <= 0:
            raise UnreadableValueError("drying.room.amount", value=str(self.volume))
        for amount in (self.changes, self.dehumidifier_kg_h):
            if amount is not None and not 0 <= amount <= _MOST_CHANGES:
                raise UnreadableValueError("drying.room.amount", value=f"{amount:g}")
        if (self.supply_temp is None) != (self.supply_humidity is None):
            raise UnreadableValueError("drying.room.supply")


@dataclass(frozen=True, kw_only=True)
class Fan:
    """The fan of one rack or cabinet.

    Args:
        flow: of air through the gear.
        vented: whether the air leaves the building; otherwise its water stays in the room.
    """

    place: PlaceId
    flow: Quantity
    vented: bool = False

    def __post_init__(self) -> None:
        if self.flow.to("m3/h") <= 0:
            raise UnreadableValueError("drying.fan.flow", value=str(self.flow))


@dataclass(frozen=True, kw_only=True)
class LoggedLoad:
    """A load weighed wet and weighed again when it was taken down.

    Args:
        dry: stored dry weight.
        start: weight when drying began.
        end: weight when it was taken down.
        lasted: from the one weighing to the other.
        air: of the room meanwhile.
        felt_dry_by: who felt it dry at every point when it was taken down; empty is nobody.
    """

    place: PlaceId
    cloth: Cloth
    dry: Quantity
    start: Quantity
    end: Quantity
    lasted: Quantity
    air: RoomAir
    felt_dry_by: str = ""

    def __post_init__(self) -> None:
        dry, start, end = (one.to("kg") for one in (self.dry, self.start, self.end))
        if dry <= 0 or start <= dry or not dry / 2 < end < start:
            weights = f"{self.dry}, {self.start}, {self.end}"
            raise UnreadableValueError("drying.log.weights", value=weights)
        if self.lasted.to("min") <= 0:
            raise UnreadableValueError("drying.log.lasted", value=str(self.lasted))


@dataclass(frozen=True, kw_only=True)
class WeighedIn:
    """A batch that was weighed wet and hangs now.

    Args:
        id: a name that no other batch has.
        dry: stored dry weight of all that hangs there.
        start: weight when drying began.
        air: of the room when it was hung.
    """

    id: str
    place: PlaceId
    cloth: Cloth
    dry: Quantity
    start: Quantity
    began: Moment
    air: RoomAir

    def __post_init__(self) -> None:
        require_offset(self.began)
        if not 0 < self.dry.to("kg") < self.start.to("kg"):
            values = {"dry": str(self.dry), "start": str(self.start)}
            raise UnreadableValueError("drying.log.lighter", **values)
        if self.start.to("kg") > self.dry.to("kg") * _WETTEST:
            values = {"dry": str(self.dry), "start": str(self.start)}
            raise UnreadableValueError("drying.log.soaked", **values)


@dataclass(frozen=True, kw_only=True)
class TakenDown:
    """A batch that was weighed in is taken down: weighed again, felt dry by somebody, or both.

    Args:
        id: of the batch.
        end: weight when it was taken down; None is not weighed, and the model learns nothing.
        felt_dry: whether `by` felt it dry at every point.
    """

    id: str
    at: Moment
    by: str
    end: Quantity | None = None
    felt_dry: bool = False

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip() or (self.end is None and not self.felt_dry):
            raise UnreadableValueError("drying.log.no_end")


@dataclass(frozen=True, kw_only=True)
class Readings:
    """Everything read off and weighed in the wash room, as far as anybody did.

    Args:
        baths: what thermometer and strip read in a bath.
        scales: loads weighed dry and after the spin.
        laboratory: what a laboratory or a verification kit reported, as it was reported.
        hanging: batches that were weighed in and hang still.
        logged: loads weighed before and after drying.
        costs: what washing costs here, at the department's own dated prices; None is not entered.
    """

    drums: tuple[Drum, ...] = ()
    baths: tuple[BathReading, ...] = ()
    scales: tuple[WeighedSpin, ...] = ()
    air: RoomAir | None = None
    fans: tuple[Fan, ...] = ()
    hanging: tuple[WeighedIn, ...] = ()
    logged: tuple[LoggedLoad, ...] = ()
    laboratory: tuple[LabResult, ...] = ()
    costs: CostSheet | None = None

    def fan(self, place: PlaceId) -> Fan | None:
        """Return the fan of a place; None where there is none."""
        return next((one for one in self.fans if one.place == place), None)
