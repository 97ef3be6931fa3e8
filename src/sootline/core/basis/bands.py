"""Between which figures does an estimate lie?"""

import re
from dataclasses import dataclass
from typing import ClassVar

from sootline.core.basis.errors import UnreadableValueError
from sootline.core.basis.text import TextForm

_FIGURE = r"\d{1,9}(?:\.\d{1,9})?"
_FORM = re.compile(rf"({_FIGURE})(?:-({_FIGURE})-({_FIGURE}))?", re.ASCII)
# Distance of the 5 % and 95 % points of a normal distribution from its middle, in deviations.
EDGE = 1.6448536


@dataclass(frozen=True, kw_only=True)
class Band(TextForm):
    """A positive figure that is only known as an interval.

    Args:
        low: one in twenty lies below.
        likely: the one to expect.
        high: one in twenty lies above.
    """

    low: float
    likely: float
    high: float
    text_example: ClassVar[str] = "0.35-0.55-0.80"

    def __post_init__(self) -> None:
        if not 0 < self.low <= self.likely <= self.high:
            raise UnreadableValueError("basis.band.order", text=str(self))

    @classmethod
    def parse(cls, text: str) -> "Band":
        """Read "0.55" (certain) or "0.35-0.55-0.80" (low, likely, high).

        Raises:
            UnreadableValueError: neither form, or not in order.
        """
        match = _FORM.fullmatch(text.strip())
        if not match:
            raise UnreadableValueError("basis.band.unreadable", text=text)
        low, likely, high = (float(group or match[1]) for group in match.groups())
        return cls(low=low, likely=likely, high=high)

    @classmethod
    def exactly(cls, figure: float) -> "Band":
        """Make the interval of a figure that is certain."""
        return cls(low=figure, likely=figure, high=figure)

    def at(self, deviations: float) -> float:
        """Return the figure so many deviations from the likely one, on a ratio scale."""
        edge = self.low if deviations < 0 else self.high
        return float(self.likely * (edge / self.likely) ** (abs(deviations) / EDGE))

    def scaled(self, factor: float) -> "Band":
        """Return the interval of the figure times a certain positive factor."""
        return Band(low=self.low * factor, likely=self.likely * factor, high=self.high * factor)

    def __str__(self) -> str:
        return f"{self.low:.4g}-{self.likely:.4g}-{self.high:.4g}"
