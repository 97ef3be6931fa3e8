"""When is a batch dry at the earliest, likely, and at the latest?

An estimate is a plan's interval and nothing more: drying ends by weight or by a named person's
touch check.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Assumptions,
    Band,
    MinuteSpan,
    UnreadableValueError,
)
from sootline.core.drying.falling import Moistures, drying_hours
from sootline.core.drying.moist_air import MoistAir, moist_air
from sootline.core.drying.rates import Batch, Blown, free_rate_kg_h, highest_rate_kg_h
from sootline.core.drying.rooms import RoomBalance
from sootline.core.drying.spreading import Outcome, spread

WEIGHED = "drying.rests.weighed"
DEFAULT = "drying.rests.default"
DIMENSIONS = 3
DAMPEST = 0.995
# Closer to equilibrium than this a balance on a wash-room scale tells nothing [kg/kg].
LEAST_GAP = 0.002


class Bound(StrEnum):
    """What sets the pace of drying."""

    AIR_STREAM = "air-stream"
    CLOTH = "cloth"
    ROOM = "room"


@dataclass(frozen=True, kw_only=True)
class Wetness:
    """How wet a batch is.

    Args:
        measured: whether somebody weighed that here.
        moisture: water over stored dry mass after the spin [kg/kg].
        end: water over stored dry mass at which it counts as dry [kg/kg]; None takes the margin
            of the table.
    """

    moisture: Band
    measured: bool
    end: Band | None = None


@dataclass(frozen=True, kw_only=True)
class Surroundings:
    """Where a batch hangs.

    Args:
        others_kg_h: what other gear could give off into the same room [kg/h].
    """

    place: Blown
    room: RoomBalance
    others_kg_h: float = 0.0


@dataclass(frozen=True, kw_only=True)
class DryingEstimate:
    """How long drying takes, and on what that rests.

    Args:
        minutes: nine in ten loads are expected between its ends.
        water_kg: what has to leave [kg].
        rate_kg_h: in the constant period [kg/h].
        highest_kg_h: what no load exceeds in this air stream [kg/h]; None in still air.
        bound: what sets the pace.
        moistures: the likely points of the drying curve.
    """

    minutes: MinuteSpan
    water_kg: float
    rate_kg_h: float
    highest_kg_h: float | None
    bound: Bound
    moistures: Moistures


def estimate_drying(
    batch: Batch, wetness: Wetness, around: Surroundings, factor: Band, assumptions: Assumptions
) -> DryingEstimate:
    """Estimate how long a batch dries.

    Args:
        factor: of the true time over the model's; from the table, or from logged loads.

    Raises:
        UnreadableValueError: it never gets as dry as that in this air, or the air takes nothing.
    """
    case = _Case(batch, wetness, around, assumptions)
    rate, free = case.rates(case.air, 0.0)
    if rate <= 0:
        raise UnreadableValueError("drying.no_taker", value=f"{case.air.humidity * 100:.0f} %")
    moistures = case.moistures(case.air, 0.0, strict=True)
    expected = case.outcome((0.0,) * DIMENSIONS)
    likely = max(expected.result * factor.likely, expected.least)
    low, high = spread(case.outcome, DIMENSIONS, factor)
    stream = highest_rate_kg_h(around.place, case.air, assumptions)
    return DryingEstimate(
        minutes=MinuteSpan(
            earliest=max(1, math.floor(min(low, likely) * 60)),
            likely=max(1, round(likely * 60)),
            late=max(1, math.ceil(max(high, likely) * 60)),
            rests_on=WEIGHED if wetness.measured else DEFAULT,
        ),
        water_kg=case.bone_kg * (moistures.start - moistures.end),
        rate_kg_h=rate,
        highest_kg_h=None if math.isinf(stream) else stream,
        bound=bound_of(rate, free, stream),
        moistures=moistures,
    )


def bound_of(rate: float, free: float, stream: float) -> Bound:
    """Say what sets the pace: the room, the stream through the place, or the cloth [kg/h]."""
    if rate < free / 2:
        return Bound.ROOM
    return Bound.AIR_STREAM if rate > stream / 2 else Bound.CLOTH


class _Case:
    """One question, asked again at every point of the inputs."""

    def __init__(
        self,
        batch: Batch,
        wetness: Wetness,
        around: Surroundings,
        assumptions: Assumptions,
    ) -> None:
        self.batch, self.wetness, self.around = batch, wetness, around
        self.table = assumptions
        self.air = around.room.air
        self.stored = assumptions.band("dry.equilibrium_moisture").likely
        self.bone_kg = batch.dry_kg / (1 + self.stored)
        self.margin = wetness.end or assumptions.band("dry.end_margin")

    def outcome(self, point: Sequence[float]) -> Outcome:
        """Return the modelled time at one point of moisture, humidity and air changes [h]."""
        wet, damp, vent = point
        air = self._air(damp)
        moistures = self.moistures(air, wet, strict=False)
        rate, _ = self.rates(air, vent)
        modelled = drying_hours(self.bone_kg, max(rate, 1e-9), moistures)
        return Outcome(modelled, self._least(air, vent, moistures))

    def rates(self, air: MoistAir, vent: float) -> tuple[float, float]:
        """Return the rate in the room, and the one the gear could have if its air stayed."""
        place = self.around.place
        free = free_rate_kg_h(self.batch, place, air, self.table)
        own = 0.0 if place.vented else free
        return free * self._room(air, vent).share_of(own + self.around.others_kg_h), free

    def moistures(self, air: MoistAir, wet: float, *, strict: bool) -> Moistures:
        """Return the points of the curve, over bone-dry mass.

        Args:
            strict: raise where it never gets dry; otherwise take it to the last that a scale
                tells.
        """
        usual = self.table.band("dry.equilibrium_humidity").likely / 100
        equilibrium = self.stored * self.around.place.entering(air).humidity / usual
        end = _over_bone_dry(self.margin.likely, self.stored)
        return Moistures(
            start=_over_bone_dry(self.wetness.moisture.at(wet), self.stored),
            critical=self.table.band("dry.critical_moisture").likely,
            equilibrium=equilibrium if strict else min(equilibrium, end - LEAST_GAP),
            end=end,
        )

    def _least(self, air: MoistAir, vent: float, moistures: Moistures) -> float:
        """Return the time below which neither the stream nor the room could take the water."""
        water = self.bone_kg * max(0.0, moistures.start - moistures.end)
        most = highest_rate_kg_h(self.around.place, air, self.table)
        limit = self._room(air, vent).limit_kg_h
        if limit is not None and not self.around.place.vented:
            most = min(most, limit)
        return water / max(most, 1e-9)

    def _air(self, damp: float) -> MoistAir:
        """Return the air if the reading of its humidity is off by so many deviations."""
        off = self.table.band("dry.humidity_reading").at(damp)
        humidity = min(DAMPEST, self.air.humidity * off)
        return moist_air(self.air.temp_c, humidity, self.air.pressure_pa)

    def _room(self, air: MoistAir, vent: float) -> RoomBalance:
        room = self.around.room
        changes = self.table.band("room.changes_reading").at(vent)
        return RoomBalance(
            air=air,
            vent_kg_h=None if room.vent_kg_h is None else room.vent_kg_h * changes,
            dehumidifier_kg_h=room.dehumidifier_kg_h,
        )


def _over_bone_dry(over_stored: float, stored: float) -> float:
    """Turn water over stored dry mass, which holds some itself, into water over bone-dry mass."""
    return (1 + over_stored) * (1 + stored) - 1
