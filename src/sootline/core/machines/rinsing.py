"""How many rinses at the least until little of the detergent's own liquor is left?

The model mixes perfectly and follows one component that the cloth does not hold. It bounds the
rinses from below, its residual is known to about a factor of two a rinse, and it says nothing
whatever about soot or what came with it.
"""

import math
from dataclasses import dataclass

from sootline.core.basis import Assumptions, Band, UnreadableValueError

MOST_RINSES = 20


@dataclass(frozen=True, kw_only=True)
class RinseCount:
    """The least number of rinses by the model, and what it then leaves.

    Args:
        carry_over: the share that one rinse leaves, without sorption.
        left: the share left after the last rinse; one in twenty lies outside at either end.
    """

    rinses: int
    carry_over: float
    left: Band


def carry_over(kept: float, liquor: float, sorbed: float = 0.0) -> float:
    """Return the share that one rinse leaves.

    Args:
        kept: water kept after drain or spin [L/kg], above 0.
        liquor: all liquor in the rinse [L/kg], above `kept`.
        sorbed: linear sorption of the component [L/kg]; 0 is held by nothing.

    Raises:
        UnreadableValueError: more is kept than there is.
    """
    if not (0 < kept < liquor and sorbed >= 0):
        raise UnreadableValueError("machine.rinse.liquor", value=f"{kept:g}", limit=f"{liquor:g}")
    return (kept + sorbed) / (liquor + sorbed)


def count_rinses(share: float, target: float, assumptions: Assumptions) -> RinseCount:
    """Return the least number of rinses to a target share.

    Args:
        share: carry-over of one rinse, between 0 and 1.
        target: share wanted after the last, between 0 and 1.

    Raises:
        UnreadableValueError: the target is no share, or takes more than 20 rinses.
    """
    if not 0 < target < 1:
        raise UnreadableValueError("machine.rinse.target", value=f"{target:g}")
    # A target met to the last digit needs no rinse more for a rounding error.
    rinses = math.ceil(math.log(target) / math.log(share) - 1e-9)
    if rinses > MOST_RINSES:
        raise UnreadableValueError("machine.rinse.many", value=str(rinses), limit=str(MOST_RINSES))
    factor = assumptions.band("rinse.residual")
    left = Band(
        low=(share * factor.low) ** rinses,
        likely=share**rinses,
        high=min(1.0, (share * factor.high) ** rinses),
    )
    return RinseCount(rinses=rinses, carry_over=share, left=left)
