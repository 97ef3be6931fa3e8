"""How much water does gear still hold after the spin?

Only a weighing is an answer: no table for structural gear was found in print. One weighing may be
scaled to another spin within a range of G; otherwise a wide default stands in and says so.
"""

import math
from dataclasses import dataclass

from sootline.core.basis import (
    Assumptions,
    Band,
    MachineId,
    MessageId,
    Quantity,
    UnreadableValueError,
)
from sootline.core.basis.bands import EDGE

DEFAULT = MessageId("machine.moisture.default")
WEIGHED = MessageId("machine.moisture.weighed")
SCALED = MessageId("machine.moisture.scaled")


@dataclass(frozen=True, kw_only=True)
class WeighedSpin:
    """One load weighed dry and again after the spin.

    Args:
        scale_error: one standard deviation of the scale.
        at: the G of that spin; None is not known, and then not scaled to another.
    """

    washer: MachineId
    dry: Quantity
    wet: Quantity
    scale_error: Quantity
    at: Quantity | None = None

    def __post_init__(self) -> None:
        dry, wet, error = (one.to("kg") for one in (self.dry, self.wet, self.scale_error))
        if dry <= 0 or wet <= dry:
            raise UnreadableValueError(
                "machine.moisture.lighter", wet=str(self.wet), dry=str(self.dry)
            )
        if not 0 <= error < dry:
            raise UnreadableValueError("machine.moisture.scale", value=str(self.scale_error))
        if self.at is not None and self.at.to("G") <= 0:
            raise UnreadableValueError("machine.moisture.spin", value=str(self.at))


@dataclass(frozen=True, kw_only=True)
class Moisture:
    """Water over dry mass, and what the figure rests on."""

    band: Band
    rests_on: MessageId


def weighed_share(weighed: WeighedSpin) -> tuple[float, float]:
    """Return the remaining moisture and one standard deviation of it [kg/kg].

    Source: propagation of the scale's error through (wet - dry) / dry.
    """
    dry, wet = float(weighed.dry.to("kg")), float(weighed.wet.to("kg"))
    error = float(weighed.scale_error.to("kg"))
    deviation = math.hypot(error / dry, wet * error / dry**2)
    return (wet - dry) / dry, deviation


def moisture_after(
    weighed: WeighedSpin | None, spin: Quantity | None, assumptions: Assumptions
) -> Moisture:
    """Return the moisture to reckon with after a spin.

    Args:
        weighed: a weighing at this washer; None takes the default of the table.
        spin: the spin to reckon for; None takes the weighing as it is.

    Raises:
        UnreadableValueError: a spin outside the range of G over which a weighing is scaled.
    """
    if weighed is None:
        return Moisture(band=assumptions.band("wash.moisture_left"), rests_on=DEFAULT)
    share, deviation = weighed_share(weighed)
    band = _around(share, EDGE * deviation / share)
    if spin is None or weighed.at is None or spin.to("G") == weighed.at.to("G"):
        return Moisture(band=band, rests_on=WEIGHED)
    return Moisture(band=scale_moisture(band, weighed.at, spin, assumptions), rests_on=SCALED)


def scale_moisture(
    band: Band, measured_at: Quantity, spin: Quantity, assumptions: Assumptions
) -> Band:
    """Scale a measured moisture to another spin by (G2 / G1) to a negative power.

    Raises:
        UnreadableValueError: either spin is outside the range of the power law.
    """
    valid = assumptions.band("wash.spin_scaling_g")
    for given in (measured_at, spin):
        if not valid.low <= given.to("G") <= valid.high:
            limit = f"{valid.low:g} G, {valid.high:g} G"
            raise UnreadableValueError("machine.moisture.range", value=str(given), limit=limit)
    exponent = assumptions.band("wash.spin_exponent")
    ratio = float(spin.to("G")) / float(measured_at.to("G"))
    own = max(math.log(band.high / band.likely), math.log(band.likely / band.low))
    law = abs(math.log(ratio)) * max(
        exponent.high - exponent.likely, exponent.likely - exponent.low
    )
    likely = band.likely * ratio**-exponent.likely
    edge = math.hypot(own, law)
    return Band(low=likely * math.exp(-edge), likely=likely, high=likely * math.exp(edge))


def _around(likely: float, share: float) -> Band:
    """Make a band on a ratio scale from a share at the edge."""
    return Band(low=likely / (1 + share), likely=likely, high=likely * (1 + share))
