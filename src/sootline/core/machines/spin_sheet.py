"""For one drum: what does a speed come to, and which speed is the highest to set?"""

from dataclasses import dataclass

from sootline.core.basis import Assumptions, MachineId, Quantity, UnreadableValueError
from sootline.core.machines.drums import Drum
from sootline.core.machines.spin import force_g, highest_speed_rpm, set_point_g, spread_of_g


@dataclass(frozen=True, kw_only=True)
class SpinAsked:
    """A drum and what is wanted of it; errors are one standard deviation [%]."""

    diameter: Quantity
    limit: Quantity
    speed: Quantity | None = None
    diameter_error: Quantity | None = None
    speed_error: Quantity | None = None


@dataclass(frozen=True, kw_only=True)
class SpinSheet:
    """The answer.

    Args:
        reached_g: at the drum's wall at the speed asked for [G]; None without a speed.
        spread: one standard deviation of G, as a share of it.
        set_g: the most to set so that two deviations above are within the limit [G].
        set_rpm: the highest whole speed for that; never rounded up [rpm].
        bare_rpm: the highest whole speed for the limit itself, without any margin [rpm].
    """

    limit: Quantity
    speed: Quantity | None
    reached_g: float | None
    spread: float
    set_g: int
    set_rpm: int
    bare_rpm: int

    @property
    def too_fast(self) -> bool:
        """Whether the speed asked for may go beyond the limit."""
        if self.reached_g is None:
            return False
        return self.reached_g * (1 + 2 * self.spread) > float(self.limit.to("G"))


def reckon_spin(asked: SpinAsked, assumptions: Assumptions) -> SpinSheet:
    """Turn a drum's diameter and a limit into speeds.

    Raises:
        UnreadableValueError: a drum or a speed that cannot be, or other units.
    """
    drum = Drum(
        washer=MachineId(""),
        diameter=asked.diameter,
        diameter_error=asked.diameter_error,
        speed_error=asked.speed_error,
    )
    limit = float(asked.limit.to("G"))
    speed = None if asked.speed is None else float(asked.speed.to("rpm"))
    if limit <= 0 or (speed is not None and speed <= 0):
        given = asked.limit if limit <= 0 else asked.speed
        raise UnreadableValueError("machine.setting.amount", value=str(given))
    spread = spread_of_g(*drum.errors(assumptions))
    most = set_point_g(limit, spread)
    return SpinSheet(
        limit=asked.limit,
        speed=asked.speed,
        reached_g=None if speed is None else force_g(drum.diameter_m, speed),
        spread=spread,
        set_g=most,
        set_rpm=highest_speed_rpm(drum.diameter_m, most),
        bare_rpm=highest_speed_rpm(drum.diameter_m, limit),
    )
