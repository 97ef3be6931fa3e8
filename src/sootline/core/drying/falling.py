"""How long does it take from wet to dry: first at a constant rate, then ever slower?

The falling rate is taken in proportion to the moisture above equilibrium. Measured curves of
cloth bend the other way, so the law is on the slow side.
"""

import math
from dataclasses import dataclass

from sootline.core.basis import UnreadableValueError


@dataclass(frozen=True, kw_only=True)
class Moistures:
    """Water over dry mass at the points of a drying curve [kg/kg].

    Args:
        start: when drying begins.
        critical: where the constant rate ends.
        equilibrium: what stays for ever in this air.
        end: where it counts as dry; above `equilibrium`.
    """

    start: float
    critical: float
    equilibrium: float
    end: float

    def __post_init__(self) -> None:
        if self.end <= self.equilibrium:
            raise UnreadableValueError(
                "drying.never", end=_percent(self.end), equilibrium=_percent(self.equilibrium)
            )


def drying_hours(dry_kg: float, rate_kg_h: float, moistures: Moistures) -> float:
    """Return the time from start to end [h].

    Args:
        dry_kg: dry mass [kg].
        rate_kg_h: water that leaves in the constant period [kg/h], above 0.
    """
    one = moistures
    corner = max(one.critical, one.end)
    constant = max(0.0, one.start - corner)
    if one.start <= one.end:
        return 0.0
    falling = 0.0
    if one.end < one.critical:
        span = one.critical - one.equilibrium
        begin = min(one.start, one.critical)
        left = (begin - one.equilibrium) / (one.end - one.equilibrium)
        falling = span * math.log(left)
    return dry_kg / rate_kg_h * (constant + falling)


def moisture_after_hours(
    hours: float, dry_kg: float, rate_kg_h: float, moistures: Moistures
) -> float:
    """Return the moisture left after so many hours, for drawing the curve [kg/kg]."""
    one = moistures
    pace = rate_kg_h / dry_kg
    constant = max(0.0, one.start - one.critical) / pace
    if hours <= constant:
        return one.start - pace * hours
    begin = min(one.start, one.critical) - one.equilibrium
    span = one.critical - one.equilibrium
    return one.equilibrium + begin * math.exp(-pace * (hours - constant) / span)


def _percent(share: float) -> str:
    return f"{share * 100:.1f} %"
