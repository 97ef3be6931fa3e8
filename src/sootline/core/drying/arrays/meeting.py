"""What does each air do to wet cloth, at every point of chance? Asked once for every air.

Follows `rates`, `streams` and `faces`; nothing here depends on how much gear hangs there, so that
all batches of a night share it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.basis import Assumptions, Band
from sootline.core.drying.arrays import air as airs
from sootline.core.drying.arrays.air import Array
from sootline.core.drying.arrays.columns import Columns
from sootline.core.drying.estimating import DAMPEST, DIMENSIONS
from sootline.core.drying.spreading import deviations

# Nearer to freezing than this the readable code answers: the cloth may be iced [°C].
_COLDEST_C = 0.5
_DRY_AIR, _VAPOUR = 1006.0, 1860.0


@dataclass(frozen=True, kw_only=True)
class Meeting:
    """The room's air and what it does to cloth; a column is a point of chance.

    Args:
        ratio: of the room's air.
        left: water a kilogram of it could take more.
        humidity: of the air that meets the gear, 1 is saturated.
        takes: water a kilogram of the stream could carry off.
        dry_kg_m3: dry air in a cubic metre of the room's.
        heat: humid heat of the stream [J/kgK].
        still: water off a square metre in still air, through both faces [kg/m2h].
        share: what the stream draws off this cloth against one without a barrier.
        cold: whether freezing is so near that these figures do not count.
    """

    ratio: Array
    left: Array
    humidity: Array
    takes: Array
    dry_kg_m3: Array
    heat: Array
    still: Array
    share: Array
    cold: NDArray[np.bool_]


def points() -> Array:
    """Return the points of chance, then the likely one twice: for the reckoning and as read."""
    middle = (0.0,) * DIMENSIONS
    return np.array([*deviations(DIMENSIONS), middle, middle])


def at_points(band: Band, given: Array) -> Array:
    """Return the figures of a band at so many deviations."""
    return np.array([band.at(float(one)) for one in given])


def meet(asked: Columns, assumptions: Assumptions) -> Meeting:
    """Return what each row's air does; rows with the same air are reckoned once."""
    blown = (asked.flow_m3h > 0).astype(float)
    entering = np.where(blown > 0, np.maximum(asked.temp_c, asked.heated_c), asked.temp_c)
    parts = (asked.temp_c, asked.ratio, asked.pressure, entering, blown, asked.closed, asked.behind)
    each, which = np.unique(np.hstack(parts), axis=0, return_inverse=True)
    found = _meet(each, assumptions)
    return _rows(found, which.reshape(-1))


def _rows(one: Meeting, which: NDArray[np.intp]) -> Meeting:
    return Meeting(
        ratio=one.ratio[which], left=one.left[which], humidity=one.humidity[which],
        takes=one.takes[which], dry_kg_m3=one.dry_kg_m3[which], heat=one.heat[which],
        still=one.still[which], share=one.share[which], cold=one.cold[which],
    )  # fmt: skip


def _meet(each: Array, assumptions: Assumptions) -> Meeting:
    temp, ratio, pressure, entering, blown, closed, behind = (
        each[:, at : at + 1] for at in range(7)
    )
    full = airs.saturation_pa(temp)
    read = airs.vapour_pa(ratio, pressure) / full
    damp = at_points(assumptions.band("dry.humidity_reading"), points()[:, 1])
    humidity = np.minimum(DAMPEST, read * damp)
    humidity[:, -1:] = read
    vapour = humidity * full
    ratios = airs.ratio_of(vapour, pressure)
    bulb, held = airs.wet_bulb(entering, ratios, pressure)
    still, share = np.zeros_like(ratios), np.ones_like(ratios)
    hangs = ((blown == 0) | (closed == 0))[:, 0]
    shut = ((blown > 0) & (behind > 0))[:, 0]
    still[hangs], coldest = _both_faces(
        temp[hangs], vapour[hangs], behind[hangs], "dry.convection_still", assumptions
    )
    cold = np.minimum(bulb.min(axis=1), temp[:, 0]) < _COLDEST_C
    cold[hangs] |= coldest < _COLDEST_C
    forced = "dry.convection_forced"
    through, coldest = _both_faces(entering[shut], vapour[shut], behind[shut], forced, assumptions)
    open_, _ = _both_faces(
        entering[shut], vapour[shut], np.zeros_like(behind[shut]), forced, assumptions
    )
    share[shut] = through / open_
    cold[shut] |= coldest < _COLDEST_C
    return Meeting(
        ratio=ratios,
        left=np.maximum(0, airs.ratio_of(full, pressure) - ratios),
        humidity=vapour / airs.saturation_pa(entering),
        takes=np.maximum(0, held - ratios),
        dry_kg_m3=airs.dry_kg_m3(temp, ratios, pressure),
        heat=_DRY_AIR + _VAPOUR * ratios,
        still=still,
        share=share,
        cold=cold,
    )


def _both_faces(
    temp_c: Array, vapour: Array, behind: Array, moving: str, assumptions: Assumptions
) -> tuple[Array, Array]:
    """Return what leaves through both faces [kg/m2h], and the coldest surface of each row [°C]."""
    convection = assumptions.band(moving).likely
    radiation = assumptions.band("dry.radiation").likely
    barrier = assumptions.band("dry.barrier_resistance").likely
    free, surface = airs.flux_kg_m2h(temp_c, vapour, convection, radiation, 0.0)
    both = 2 * free
    backed = behind[:, 0] > 0
    if backed.any():
        other, _ = airs.flux_kg_m2h(temp_c[backed], vapour[backed], convection, radiation, barrier)
        both[backed] = free[backed] + other
    return both, surface.min(axis=1, initial=100.0)
