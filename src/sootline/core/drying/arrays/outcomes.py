"""How long do many batches dry at every point of what is only known as bands?

Follows `estimating`, `rates` and `falling` line by line; a row is a question, a column a point.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.basis import Assumptions
from sootline.core.basis.bands import EDGE
from sootline.core.drying.arrays.air import Array
from sootline.core.drying.arrays.columns import Columns
from sootline.core.drying.arrays.meeting import Meeting, at_points, meet, points
from sootline.core.drying.estimating import LEAST_GAP
from sootline.core.drying.streams import LEWIS

_NEVER = 1e-9


@dataclass(frozen=True, kw_only=True)
class Outcomes:
    """What comes out; the last two columns are the likely point, and the air as it was read.

    Args:
        hours, least: before the factor, and what no factor undercuts [h].
        rate, free, stream: in the constant period, if the room's air stayed, and what no load
            exceeds [kg/h].
        start, end, equilibrium: water over bone-dry mass.
        bone_kg: bone-dry mass.
        answered: whether it gets dry at all, and freezing is not near.
    """

    hours: Array
    least: Array
    rate: Array
    free: Array
    stream: Array
    start: Array
    end: Array
    equilibrium: Array
    bone_kg: Array
    answered: NDArray[np.bool_]


def outcomes(asked: Columns, assumptions: Assumptions) -> Outcomes:
    """Answer every question at every point."""
    wet, _, vent = points().T
    air = meet(asked, assumptions)
    free, stream = _free(asked, air, assumptions)
    carried = air.left * asked.vent_kg_h * at_points(assumptions.band("room.changes_reading"), vent)
    rate = free * _share(asked, free, carried)
    usual = assumptions.band("dry.equilibrium_humidity").likely / 100
    stored = assumptions.band("dry.equilibrium_moisture").likely
    equilibrium = stored * air.humidity / usual
    end = (1 + asked.end) * (1 + stored) - 1
    start = (1 + _moisture(asked.moisture, wet)) * (1 + stored) - 1
    kept = np.minimum(equilibrium, end - LEAST_GAP)
    bone = asked.dry_kg / (1 + stored)
    critical = assumptions.band("dry.critical_moisture").likely
    most = _most(asked, stream, carried)
    water = bone * np.maximum(0, start - end)
    return Outcomes(
        hours=bone / np.maximum(rate, _NEVER) * _way(start, kept, end, critical),
        least=water / np.maximum(most, _NEVER),
        rate=rate,
        free=free,
        stream=stream,
        start=start,
        end=end,
        equilibrium=equilibrium,
        bone_kg=bone,
        answered=(rate[:, -1] > 0) & (equilibrium[:, -1] < end[:, 0]) & ~air.cold,
    )


def _free(asked: Columns, air: Meeting, assumptions: Assumptions) -> tuple[Array, Array]:
    """Return the rate if the room's air stayed, and what no load exceeds in the stream."""
    area = assumptions.band("dry.area_per_kg").likely * asked.dry_kg * asked.area_share
    forced = assumptions.band("dry.convection_forced").likely
    blown, shut = asked.flow_m3h > 0, asked.closed > 0
    dry = np.maximum(asked.flow_m3h, _NEVER) * air.dry_kg_m3
    limit = dry * air.takes
    conductance = forced * area * air.share
    picked = limit * -np.expm1(-conductance / (dry / 3600 * air.heat * LEWIS))
    hung = area * air.still
    free = np.where(blown, np.where(shut, picked, np.maximum(picked, hung)), hung)
    most = limit * assumptions.band("dry.flow_share").high
    return free, np.where(blown & shut, most, np.inf)


def _share(asked: Columns, free: Array, carried: Array) -> Array:
    """Return how much of what the gear could give off it does give off in its room."""
    own = np.where(asked.vented > 0, 0.0, free)
    into = own + asked.others_kg_h
    known = np.isfinite(asked.vent_kg_h)
    held = np.where(known, carried, 1.0)
    limit = held + asked.dehumidifier_kg_h
    return np.where(known, np.minimum(1.0, limit / np.maximum(held + into, 1e-12)), 1.0)


def _most(asked: Columns, stream: Array, carried: Array) -> Array:
    """Return what neither the stream nor the room exceeds [kg/h]."""
    bound = np.isfinite(asked.vent_kg_h) & (asked.vented == 0)
    limit = np.where(bound, carried, 0.0) + asked.dehumidifier_kg_h
    return np.where(bound, np.minimum(stream, limit), stream)


def _way(start: Array, equilibrium: Array, end: Array, critical: float) -> Array:
    """Return the time over dry mass and rate: the constant period, then the falling one."""
    constant = np.maximum(0.0, start - np.maximum(critical, end))
    span = critical - equilibrium
    begin = np.minimum(start, critical)
    ratio = (begin - equilibrium) / (end - equilibrium)
    falling = np.where(end < critical, span * np.log(np.maximum(ratio, 1.0)), 0.0)
    return np.where(start <= end, 0.0, constant + falling)


def _moisture(band: Array, wet: Array) -> Array:
    low, likely, high = (band[:, at : at + 1] for at in range(3))
    edge = np.where(wet < 0, np.log(low / likely), np.log(high / likely))
    return np.asarray(likely * np.exp(edge * (np.abs(wet) / EDGE)))
