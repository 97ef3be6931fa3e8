"""At which rate does a batch give off its water at a place, in air of one state?"""

import math
from dataclasses import dataclass

from sootline.core.basis import Assumptions
from sootline.core.drying.cloths import Cloth
from sootline.core.drying.faces import area_m2, hanging_flux, open_share
from sootline.core.drying.moist_air import MoistAir
from sootline.core.drying.streams import Stream, exchanged_kg_h, stream_limit_kg_h


@dataclass(frozen=True, kw_only=True)
class Blown:
    """A place as the gear meets it.

    Args:
        flow_m3h: air through it [m3/h]; None is still air.
        heated_to_c: what the air is warmed to [°C]; None is not warmed.
        vented: whether its air leaves the building.
        closed: whether only the fan's air reaches the gear (a cabinet); a rack also has the room's.
    """

    flow_m3h: float | None = None
    heated_to_c: float | None = None
    vented: bool = False
    closed: bool = False

    def stream(self, air: MoistAir) -> Stream | None:
        """Return the stream through the place in this air; None in still air."""
        if self.flow_m3h is None:
            return None
        warmer = self.heated_to_c is not None and self.heated_to_c > air.temp_c
        heated = self.heated_to_c if warmer else None
        return Stream(air=air, flow_m3h=self.flow_m3h, heated_to_c=heated)

    def entering(self, air: MoistAir) -> MoistAir:
        """Return the air that meets the gear."""
        stream = self.stream(air)
        return stream.entering if stream else air


@dataclass(frozen=True, kw_only=True)
class Batch:
    """Gear that dries together.

    Args:
        dry_kg: stored dry mass [kg], above 0.
    """

    cloth: Cloth
    dry_kg: float


def free_rate_kg_h(batch: Batch, place: Blown, air: MoistAir, assumptions: Assumptions) -> float:
    """Return the rate of the constant period while the room's air stays as it is [kg/h]."""
    area = area_m2(batch.cloth, batch.dry_kg, assumptions)
    stream = place.stream(air)
    if stream is None:
        return _still_kg_h(batch, area, air, assumptions)
    forced = assumptions.band("dry.convection_forced").likely
    share = open_share(stream.entering, batch.cloth, forced, assumptions)
    blown = exchanged_kg_h(stream, forced * area * share)
    return blown if place.closed else max(blown, _still_kg_h(batch, area, air, assumptions))


def highest_rate_kg_h(place: Blown, air: MoistAir, assumptions: Assumptions) -> float:
    """Return the rate no load exceeds in a closed place, at the most its fan may move [kg/h]."""
    stream = place.stream(air)
    if stream is None or not place.closed:
        return math.inf
    return stream_limit_kg_h(stream) * assumptions.band("dry.flow_share").high


def _still_kg_h(batch: Batch, area: float, air: MoistAir, assumptions: Assumptions) -> float:
    still = assumptions.band("dry.convection_still").likely
    return area * hanging_flux(air, batch.cloth, still, assumptions)
