"""How large is a drum, and how full is it?"""

import math
from dataclasses import dataclass

from sootline.core.basis import Assumptions, MachineId, Quantity, UnreadableValueError

# A drum outside of this is a slip of the unit, and is asked about again.
_SMALLEST_M, _LARGEST_M = 0.2, 3.0
_MOST_ERROR_PERCENT = 50


@dataclass(frozen=True, kw_only=True)
class SpinSpeed:
    """The fastest spin of one programme [rpm]."""

    programme: str
    speed: Quantity

    def __post_init__(self) -> None:
        if self.speed.to("rpm") <= 0:
            raise UnreadableValueError("machine.drum.speed", value=str(self.speed))


@dataclass(frozen=True, kw_only=True)
class Drum:
    """A washer's drum as somebody measured it.

    Args:
        diameter: inside.
        depth: inside, from the back to the door; None is not measured.
        diameter_error: one standard deviation [%]; None takes the table's.
        speed_error: one standard deviation of the drive's speed [%]; None takes the table's.
        speeds: the spin speed of a programme, by the programme's id.
    """

    washer: MachineId
    diameter: Quantity
    depth: Quantity | None = None
    diameter_error: Quantity | None = None
    speed_error: Quantity | None = None
    speeds: tuple[SpinSpeed, ...] = ()

    def __post_init__(self) -> None:
        for length in (self.diameter, self.depth):
            if length is not None and not _SMALLEST_M <= length.to("m") <= _LARGEST_M:
                limit = f"{_SMALLEST_M} m, {_LARGEST_M} m"
                raise UnreadableValueError("machine.drum.size", value=str(length), limit=limit)
        for error in (self.diameter_error, self.speed_error):
            if error is not None and not 0 <= error.to("%") <= _MOST_ERROR_PERCENT:
                limit = f"{_MOST_ERROR_PERCENT} %"
                raise UnreadableValueError("machine.drum.error", value=str(error), limit=limit)

    @property
    def diameter_m(self) -> float:
        """The diameter [m]."""
        return float(self.diameter.to("m"))

    @property
    def volume_l(self) -> float | None:
        """What the drum holds [L]; None when its depth is not known."""
        if self.depth is None:
            return None
        return volume_l(self.diameter_m, float(self.depth.to("m")))

    def errors(self, assumptions: Assumptions) -> tuple[float, float]:
        """Return one standard deviation of diameter and of speed, each as a share."""
        return (
            _share(self.diameter_error, assumptions.band("wash.drum_tolerance").likely),
            _share(self.speed_error, assumptions.band("wash.speed_tolerance").likely),
        )

    def speed_of(self, programme: str) -> Quantity | None:
        """Return the spin speed of a programme; None when nobody entered it."""
        return next((one.speed for one in self.speeds if one.programme == programme), None)


def volume_l(diameter_m: float, depth_m: float) -> float:
    """Return what a cylindrical drum holds [L]."""
    return math.pi * diameter_m**2 * depth_m / 4 * 1000


def loading_lb_ft3(load: Quantity, volume: float) -> float:
    """Return how densely a drum is loaded [lb/ft3].

    Args:
        load: dry mass.
        volume: of the drum [L], above 0.
    """
    cubic_feet = Quantity.parse("1 ft3").to("L")
    return float(load.to("lb")) / (volume / float(cubic_feet))


def _share(given: Quantity | None, usual: float) -> float:
    return usual if given is None else float(given.to("%")) / 100
