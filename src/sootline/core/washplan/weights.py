"""In which unit of weight does a plan count, so that sums neither round a load in nor out?"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from sootline.core.basis import Quantity
from sootline.core.washplan.instance import MOST_AMOUNT

_FINEST = 3


@dataclass(frozen=True, kw_only=True)
class Scale:
    """A unit of weight: so many of a sign ("0.01 lb").

    Args:
        step: the size of one unit, in the sign's own measure.
    """

    sign: str
    step: Fraction

    @property
    def name(self) -> str:
        """How the unit is written in the instance."""
        return f"{float(self.step):g} {self.sign}"

    def up(self, mass: Quantity) -> int:
        """Count a mass, never lower than it is."""
        return ceil(mass.to(self.sign) / self.step)

    def down(self, limit: Quantity) -> int:
        """Count a limit, never higher than it is."""
        return floor(limit.to(self.sign) / self.step)


def choose_scale(masses: Iterable[Quantity]) -> Scale:
    """Choose the unit in which all these masses are whole; in mixed units, the gram.

    In grams pieces count up and limits down, so that a load can only come out lighter.
    """
    given = list(masses)
    signs = {mass.unit for mass in given}
    places = max((_places(mass) for mass in given), default=0)
    top = max((mass.amount for mass in given), default=0)
    if len(signs) == 1 and places <= _FINEST and top * 10**places <= MOST_AMOUNT:
        return Scale(sign=signs.pop(), step=Fraction(1, 10**places))
    return Scale(sign="g", step=Fraction(1))


def _places(mass: Quantity) -> int:
    """How many decimals an amount really has."""
    exponent = mass.amount.normalize().as_tuple().exponent
    assert isinstance(exponent, int)  # amounts are finite
    return max(0, -exponent)
