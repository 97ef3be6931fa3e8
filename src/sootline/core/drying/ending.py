"""Is it dry? By weight, or by a named person's hand; never by the clock."""

from fractions import Fraction

from sootline.core.basis import (
    Assumptions,
    Bearing,
    Finding,
    Quantity,
    UnreadableValueError,
    finding,
)
from sootline.core.machines.grounds import as_entered

# So much below its stored dry weight is a wrong weight, not a dry piece.
_FAR_BELOW = Fraction(95, 100)


def judge_weight(dry: Quantity | None, now: Quantity | None, assumptions: Assumptions) -> Finding:
    """Hold a weight against the stored dry weight.

    Args:
        dry: stored dry weight; None is not weighed.
        now: weight at this moment; None is not weighed.

    Raises:
        UnreadableValueError: no weight, or far below the stored one: the weights are asked about
            again.
    """
    ground = as_entered("room.end")
    if dry is None or now is None:
        return finding(Bearing.ASKS, "drying.end.touch_only", ground)
    stored, present = dry.to("kg"), now.to("kg")
    if stored <= 0 or present < stored * _FAR_BELOW:
        raise UnreadableValueError("drying.end.lighter", now=str(now), dry=str(dry))
    margin = assumptions.row("dry.end_margin")
    above = present / stored - 1
    values = {"now": str(now), "dry": str(dry), "percent": f"{float(above) * 100:.1f}"}
    if above <= Fraction(str(margin.band.low)):
        return finding(Bearing.NOTES, "drying.end.by_weight", margin.ground, **values)
    if above <= Fraction(str(margin.band.high)):
        return finding(Bearing.ASKS, "drying.end.near", margin.ground, **values)
    return finding(Bearing.WARNS, "drying.end.not_yet", margin.ground, **values)
