"""How do many questions about drying stand side by side, one column for each thing given?"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sootline.core.basis import Assumptions, Band
from sootline.core.drying.arrays.air import Array
from sootline.core.drying.estimating import Surroundings, Wetness
from sootline.core.drying.faces import AREA, BARRIERS
from sootline.core.drying.rates import Batch


@dataclass(frozen=True, kw_only=True)
class Question:
    """What `estimate_drying` is asked: one batch, how wet, where, and how far off the model is."""

    batch: Batch
    wetness: Wetness
    around: Surroundings
    factor: Band


@dataclass(frozen=True, kw_only=True)
class Columns:
    """Questions as columns, each of one figure to a row.

    Args:
        area_share: faces to a kilogram of this cloth.
        flow_m3h: 0 is still air.
        heated_c: what the air is warmed to; at most the room's own where it is not warmed.
        behind, closed, vented: 0 or 1; `behind` where one face is behind a barrier.
        vent_kg_h: infinite where the room is left out.
        moisture, end, factor: low, likely and high beside each other.
    """

    dry_kg: Array
    area_share: Array
    behind: Array
    flow_m3h: Array
    heated_c: Array
    closed: Array
    vented: Array
    temp_c: Array
    ratio: Array
    pressure: Array
    vent_kg_h: Array
    dehumidifier_kg_h: Array
    others_kg_h: Array
    end: Array
    moisture: Array
    factor: Array


_SINGLE = 14


def columns_of(asked: Sequence[Question], assumptions: Assumptions) -> Columns:
    """Lay questions out as columns."""
    margin = assumptions.band("dry.end_margin").likely
    rows = np.array([_row(one, margin) for one in asked])
    single = [np.ascontiguousarray(rows[:, at : at + 1]) for at in range(_SINGLE)]
    return Columns(
        dry_kg=single[0], area_share=single[1], behind=single[2], flow_m3h=single[3],
        heated_c=single[4], closed=single[5], vented=single[6], temp_c=single[7],
        ratio=single[8], pressure=single[9], vent_kg_h=single[10], dehumidifier_kg_h=single[11],
        others_kg_h=single[12], end=single[13], moisture=rows[:, 14:17], factor=rows[:, 17:20],
    )  # fmt: skip


def _row(one: Question, margin: float) -> tuple[float, ...]:
    place, room, cloth = one.around.place, one.around.room, one.batch.cloth
    air, wet, factor = room.air, one.wetness.moisture, one.factor
    return (
        one.batch.dry_kg,
        AREA[cloth],
        BARRIERS[cloth],
        place.flow_m3h or 0.0,
        air.temp_c if place.heated_to_c is None else place.heated_to_c,
        place.closed,
        place.vented,
        air.temp_c,
        air.ratio,
        air.pressure_pa,
        float("inf") if room.vent_kg_h is None else room.vent_kg_h,
        room.dehumidifier_kg_h,
        one.around.others_kg_h,
        margin if one.wetness.end is None else one.wetness.end.likely,
        wet.low,
        wet.likely,
        wet.high,
        factor.low,
        factor.likely,
        factor.high,
    )


def cut(asked: Columns, begin: int, end: int) -> Columns:
    """Return some of the rows."""
    names = Columns.__dataclass_fields__
    return Columns(**{name: getattr(asked, name)[begin:end] for name in names})
