"""How much water can the room's air take, and what would opening up or a dehumidifier change?

Air that leaves the room carries off what it took up since it came in. Drying slows down in
proportion as the room's air nears saturation, which puts the room's limit and the gear's free rate
in series.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from sootline.core.basis import (
    Assumptions,
    Bearing,
    Finding,
    Quantity,
    UnreadableValueError,
    finding,
)
from sootline.core.drying.moist_air import MoistAir, moist_air, pressure_pa, saturated_ratio
from sootline.core.drying.readings import RoomAir
from sootline.core.machines.grounds import as_entered, by_physics

_LAW = "balance of the water in a ventilated room"
# Half of what the gear could give off is where the room rules.
_RULES = 0.5
# Below this share it is worth saying what would change that.
_HELPED = 0.8


class Remedy(StrEnum):
    """What can be done about the air of a room."""

    OPEN_UP = "open-up"
    DEHUMIDIFY = "dehumidify"


@dataclass(frozen=True, kw_only=True)
class RoomBalance:
    """A room as a taker of water.

    Args:
        air: what the gear meets before it gives off anything: the room's warmth with the water
            of the supply.
        vent_kg_h: dry air that leaves [kg/h]; None is not known, and the room is left out.
        dehumidifier_kg_h: water taken from the air [kg/h].
    """

    air: MoistAir
    vent_kg_h: float | None
    dehumidifier_kg_h: float = 0.0

    @property
    def limit_kg_h(self) -> float | None:
        """The most water the room takes before its air is saturated [kg/h]; None is not known."""
        if self.vent_kg_h is None:
            return None
        left = saturated_ratio(self.air.temp_c, self.air.pressure_pa) - self.air.ratio
        return self.vent_kg_h * max(0.0, left) + self.dehumidifier_kg_h

    def share_of(self, free_kg_h: float) -> float:
        """Return how much of what the gear could give off it does give off, 0 to 1.

        Args:
            free_kg_h: all that would leave the gear into this room's air if it stayed as it is.
        """
        limit = self.limit_kg_h
        if limit is None:
            return 1.0
        carried = limit - self.dehumidifier_kg_h
        return min(1.0, limit / max(carried + free_kg_h, 1e-12))


@dataclass(frozen=True, kw_only=True)
class RoomChange:
    """What a remedy makes of the room [kg/h]: its limit, and what then leaves the gear."""

    remedy: Remedy
    limit_kg_h: float
    rate_kg_h: float


@dataclass(frozen=True, kw_only=True)
class RoomDiagnosis:
    """Whether the room holds up the drying, and what would change that.

    Args:
        free_kg_h: what the gear could give off.
        rate_kg_h: what it does give off in this room.
    """

    limit_kg_h: float | None
    free_kg_h: float
    rate_kg_h: float
    bottleneck: bool
    changes: tuple[RoomChange, ...]
    findings: tuple[Finding, ...]


def read_air(
    temp: Quantity, humidity: Quantity, altitude: Quantity, assumptions: Assumptions
) -> MoistAir:
    """Turn readings into air.

    Raises:
        UnreadableValueError: an impossible humidity, or a temperature no room has; it may have
            been read in the other unit.
    """
    plausible = assumptions.band("plausible.air_temp")
    celsius = float(temp.to("°C"))
    if not plausible.low <= celsius <= plausible.high:
        limit = f"{plausible.low:g} °C, {plausible.high:g} °C"
        raise UnreadableValueError("drying.air_temp", value=str(temp), limit=limit)
    pressure = pressure_pa(float(altitude.to("m")))
    return moist_air(celsius, float(humidity.to("%")) / 100, pressure)


def balance_room(room: RoomAir, assumptions: Assumptions) -> RoomBalance:
    """Turn what was read in a room into its balance of water.

    Raises:
        UnreadableValueError: readings that no air has; see read_air.
    """
    inside = read_air(room.temp, room.humidity, room.altitude, assumptions)
    supply = inside
    if room.supply_temp is not None and room.supply_humidity is not None:
        cold = moist_air_outdoors(room.supply_temp, room.supply_humidity, inside.pressure_pa)
        supply = cold.heated_to(inside.temp_c)
    vent = None
    if room.volume is not None and room.changes is not None:
        vent = float(room.volume.to("m3")) * room.changes * inside.dry_kg_m3
    return RoomBalance(
        air=inside if vent is None else supply,
        vent_kg_h=vent,
        dehumidifier_kg_h=room.dehumidifier_kg_h,
    )


def moist_air_outdoors(temp: Quantity, humidity: Quantity, pressure: float) -> MoistAir:
    """Turn a reading outdoors into air; frost is possible there.

    Raises:
        UnreadableValueError: an impossible humidity or a temperature nobody has outdoors.
    """
    celsius = float(temp.to("°C"))
    if not -45 <= celsius <= 55:
        raise UnreadableValueError("drying.air_temp", value=str(temp), limit="-45 °C, 55 °C")
    return moist_air(celsius, float(humidity.to("%")) / 100, pressure)


def diagnose_room(room: RoomAir, free_kg_h: float, assumptions: Assumptions) -> RoomDiagnosis:
    """Say whether the room holds up the drying and what would change that.

    Args:
        free_kg_h: what the gear could give off in the air as it was read [kg/h].

    Raises:
        UnreadableValueError: readings that no air has; see read_air.
    """
    balance = balance_room(room, assumptions)
    limit = balance.limit_kg_h
    share = balance.share_of(free_kg_h)
    bottleneck = limit is not None and share < _RULES
    changes = tuple(_changes(room, free_kg_h, assumptions)) if limit is not None else ()
    return RoomDiagnosis(
        limit_kg_h=limit,
        free_kg_h=free_kg_h,
        rate_kg_h=share * free_kg_h,
        bottleneck=bottleneck,
        changes=changes,
        findings=_findings(limit, share * free_kg_h, free_kg_h, changes, bottleneck=bottleneck),
    )


def remedied(room: RoomAir, remedy: Remedy, assumptions: Assumptions) -> RoomAir:
    """Return the room with one remedy: windows and doors opened, or one more dehumidifier.

    What comes in by opening up is the supply as it was read; warmth that is lost by it is not
    reckoned with.
    """
    if remedy is Remedy.OPEN_UP:
        opened = assumptions.band("room.changes_opened").likely
        return replace(room, changes=max(opened, room.changes or 0.0))
    taken = room.dehumidifier_kg_h + assumptions.band("room.dehumidifier").likely
    return replace(room, dehumidifier_kg_h=taken)


def _changes(room: RoomAir, free_kg_h: float, assumptions: Assumptions) -> Iterator[RoomChange]:
    for remedy in Remedy:
        changed = balance_room(remedied(room, remedy, assumptions), assumptions)
        yield RoomChange(
            remedy=remedy,
            limit_kg_h=changed.limit_kg_h or 0.0,
            rate_kg_h=changed.share_of(free_kg_h) * free_kg_h,
        )


def _findings(
    limit: float | None,
    rate: float,
    free: float,
    changes: tuple[RoomChange, ...],
    *,
    bottleneck: bool,
) -> tuple[Finding, ...]:
    if limit is None:
        return (finding(Bearing.ASKS, "drying.room.not_known", as_entered("room.air")),)
    ground = by_physics("room.air", _LAW)
    values = {"limit": f"{limit:.2f}", "free": f"{free:.2f}", "rate": f"{rate:.2f}"}
    message = "drying.room.bottleneck" if bottleneck else "drying.room.takes"
    bearing = Bearing.WARNS if bottleneck else Bearing.NOTES
    said = [finding(bearing, message, ground, **values)]
    for one in changes if rate < _HELPED * free else ():
        helps = "helps" if one.rate_kg_h > rate * 1.1 else "little"
        now = {"rate": f"{rate:.2f}", "after": f"{one.rate_kg_h:.2f}"}
        said.append(
            finding(Bearing.NOTES, f"drying.room.{one.remedy.value}_{helps}", ground, **now)
        )
    return tuple(said)
