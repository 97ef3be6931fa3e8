"""How far off is the model at this place for this kind of gear, by loads that were weighed?

The logarithm of measured over modelled time is taken as a sum of what all of the department's
loads share, what one place adds, what one kind of gear at that place adds, and chance. Few loads
are drawn towards what is known of the rest, and none at all leaves the table's wide factor.
"""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import (
    Assumptions,
    Band,
    Bearing,
    Finding,
    PlaceId,
    finding,
)
from sootline.core.basis.bands import EDGE
from sootline.core.drying.cloths import Cloth
from sootline.core.machines.grounds import as_entered

# How the doubt about the model is shared out: to the department, to a place, to a kind there.
_SHARES = (0.5, 0.25, 0.25)
# So many loads' worth of trust stands behind the table's scatter.
_PRIOR_LOADS = 4
_ENOUGH = 6


@dataclass(frozen=True, kw_only=True)
class Ratio:
    """One load: measured time over modelled time."""

    place: PlaceId
    cloth: Cloth
    ratio: float


@dataclass(frozen=True, kw_only=True)
class Calibration:
    """What to multiply the model by, and how far to trust that.

    Args:
        factor: for one more load; nine in ten are expected inside.
        here: loads of this kind at this place.
        elsewhere: the department's other loads.
    """

    factor: Band
    here: int
    elsewhere: int
    trust: Finding


@dataclass(frozen=True, kw_only=True)
class _Group:
    place: PlaceId
    cloth: Cloth
    count: int
    mean: float


def calibrate(
    ratios: Sequence[Ratio], place: PlaceId, cloth: Cloth, assumptions: Assumptions
) -> Calibration:
    """Return the factor for one more load at a place.

    Source: best linear prediction in a model of nested random effects; scatter pooled over all
    groups with the table's.
    """
    groups = _grouped(ratios)
    scatter = _scatter_variance(ratios, groups, assumptions)
    doubt = _doubt(assumptions)
    mean, variance = _predict(groups, place, cloth, scatter, doubt)
    edge = EDGE * math.sqrt(max(variance, 0.0) + scatter)
    likely = math.exp(mean)
    here = sum(group.count for group in groups if (group.place, group.cloth) == (place, cloth))
    factor = Band(low=likely * math.exp(-edge), likely=likely, high=likely * math.exp(edge))
    return Calibration(
        factor=factor,
        here=here,
        elsewhere=len(ratios) - here,
        trust=_trust(factor, here, len(ratios) - here, (place, cloth)),
    )


def _grouped(ratios: Sequence[Ratio]) -> tuple[_Group, ...]:
    logs: dict[tuple[PlaceId, Cloth], list[float]] = defaultdict(list)
    for one in ratios:
        logs[one.place, one.cloth].append(math.log(one.ratio))
    return tuple(
        _Group(place=place, cloth=cloth, count=len(values), mean=math.fsum(values) / len(values))
        for (place, cloth), values in sorted(logs.items())
    )


def _scatter_variance(
    ratios: Sequence[Ratio], groups: tuple[_Group, ...], assumptions: Assumptions
) -> float:
    """Pool how loads of a group scatter with what the table takes for it."""
    means = {(group.place, group.cloth): group.mean for group in groups}
    squares = math.fsum((math.log(one.ratio) - means[one.place, one.cloth]) ** 2 for one in ratios)
    usual = (math.log(assumptions.band("dry.load_scatter").high) / EDGE) ** 2
    free = len(ratios) - len(groups)
    return (_PRIOR_LOADS * usual + squares) / (_PRIOR_LOADS + free)


def _doubt(assumptions: Assumptions) -> tuple[float, float, float]:
    """Share out the table's doubt about the model, less the scatter that is in it."""
    whole = (math.log(assumptions.band("dry.time_factor").high) / EDGE) ** 2
    scatter = (math.log(assumptions.band("dry.load_scatter").high) / EDGE) ** 2
    department, place, kind = (share * (whole - scatter) for share in _SHARES)
    return department, place, kind


def _predict(
    groups: tuple[_Group, ...],
    place: PlaceId,
    cloth: Cloth,
    scatter: float,
    doubt: tuple[float, float, float],
) -> tuple[float, float]:
    """Return mean and variance of this group's logarithm, given all groups' means."""

    def shared(one: tuple[PlaceId, Cloth], other: tuple[PlaceId, Cloth]) -> float:
        department, of_place, of_kind = doubt
        if one == other:
            return department + of_place + of_kind
        return department + of_place if one[0] == other[0] else department

    keys = [(group.place, group.cloth) for group in groups]
    among = [
        [shared(one, other) + (scatter / group.count if one == other else 0.0) for other in keys]
        for one, group in zip(keys, groups, strict=True)
    ]
    towards = [shared((place, cloth), key) for key in keys]
    weights = _solve(among, towards)
    mean = math.fsum(w * group.mean for w, group in zip(weights, groups, strict=True))
    explained = math.fsum(w * t for w, t in zip(weights, towards, strict=True))
    return mean, sum(doubt) - explained


def _solve(matrix: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    """Solve a small symmetric positive definite system by elimination."""
    rows = [[*row, value] for row, value in zip(matrix, right, strict=True)]
    size = len(rows)
    for at in range(size):
        for below in range(at + 1, size):
            share = rows[below][at] / rows[at][at]
            for column in range(at, size + 1):
                rows[below][column] -= share * rows[at][column]
    result = [0.0] * size
    for at in reversed(range(size)):
        known = math.fsum(rows[at][column] * result[column] for column in range(at + 1, size))
        result[at] = (rows[at][size] - known) / rows[at][at]
    return result


def _trust(factor: Band, here: int, elsewhere: int, where: tuple[PlaceId, Cloth]) -> Finding:
    place, cloth = where
    values = {
        "place": place,
        "cloth": cloth.value,
        "here": here,
        "elsewhere": elsewhere,
        "low": f"{factor.low:.2f}",
        "high": f"{factor.high:.2f}",
    }
    ground = as_entered("room.logged")
    if not here + elsewhere:
        return finding(Bearing.WARNS, "drying.trust.none", ground, **values)
    message = "drying.trust.own" if here >= _ENOUGH else "drying.trust.few"
    return finding(Bearing.NOTES, message, ground, **values)
