"""In which unit of weight does a plan count, so that no sum rounds a load in?"""

from collections import Counter
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
    """Choose the unit most of these masses are entered in, as fine as they are entered.

    What is entered in it counts exactly. Of anything else, pieces count up and limits down, so
    that a load can only come out lighter. Amounts too fine or too large for it count in grams.
    """
    given = list(masses)
    signs = Counter(mass.unit for mass in given).most_common(1)
    for sign, _ in signs:
        places = max(_places(mass) for mass in given if mass.unit == sign)
        top = max(mass.to(sign) for mass in given)
        if places <= _FINEST and top * 10**places <= MOST_AMOUNT:
            return Scale(sign=sign, step=Fraction(1, 10**places))
    return Scale(sign="g", step=Fraction(1))


def _places(mass: Quantity) -> int:
    """How many decimals an amount really has."""
    exponent = mass.amount.normalize().as_tuple().exponent
    assert isinstance(exponent, int)  # amounts are finite
    return max(0, -exponent)
