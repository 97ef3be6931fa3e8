"""Which points make up the pictures: a batch on its way to dry, and a room's limit by humidity?"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import Decimal

from sootline.core.basis import Assumptions, Quantity
from sootline.core.drying.estimating import DryingEstimate
from sootline.core.drying.falling import drying_hours
from sootline.core.drying.readings import RoomAir
from sootline.core.drying.rooms import balance_room

_POINTS = 24


@dataclass(frozen=True, kw_only=True)
class CurvePoint:
    """When a moisture is reached, at the earliest, likely and late [h].

    Args:
        percent: water over stored dry mass above what stays at the end [%].
    """

    percent: float
    earliest_h: float
    likely_h: float
    late_h: float


@dataclass(frozen=True, kw_only=True)
class LimitPoint:
    """What a room takes at one humidity [kg/h]."""

    humidity_percent: float
    limit_kg_h: float


def drying_curve(estimate: DryingEstimate) -> tuple[CurvePoint, ...]:
    """Lay out a batch's way from wet to dry, with the interval of its estimate at every point.

    The model's shape is stretched so that it ends where the estimate does.
    """
    points = estimate.moistures
    whole = drying_hours(1.0, 1.0, points)
    minutes = estimate.minutes
    fall = points.start - points.end
    curve = []
    for step in range(_POINTS + 1):
        reached = points.start - fall * step / _POINTS
        share = drying_hours(1.0, 1.0, replace(points, end=reached)) / whole if whole else 0.0
        curve.append(
            CurvePoint(
                percent=100 * (reached - points.end),
                earliest_h=share * minutes.earliest / 60,
                likely_h=share * minutes.likely / 60,
                late_h=share * minutes.late / 60,
            )
        )
    return tuple(curve)


def limit_by_humidity(
    room: RoomAir, humidities: Iterable[int], assumptions: Assumptions
) -> tuple[LimitPoint, ...]:
    """Lay out what a room takes if its own air and the supply's were of another humidity.

    Nothing where its volume or air changes are not known.

    Raises:
        UnreadableValueError: readings that no air has.
    """
    points = []
    for humidity in humidities:
        damp = Quantity(amount=Decimal(humidity), unit="%")
        supply = damp if room.supply_humidity is not None else None
        balance = balance_room(replace(room, humidity=damp, supply_humidity=supply), assumptions)
        if balance.limit_kg_h is not None:
            points.append(LimitPoint(humidity_percent=humidity, limit_kg_h=balance.limit_kg_h))
    return tuple(points)
