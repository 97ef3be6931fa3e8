"""At which minutes are prices set, and which minutes can a member be ready at?"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

MOST_MOMENTS, MOST_TICKS = 160, 800
LEAST_STEP = 4


@dataclass(frozen=True, kw_only=True)
class TimeGrid:
    """Moments with prices, and the finer ticks between which members become ready.

    Args:
        origin: minute 0 of both, moments: how many, step: between two [min].
        ticks: the last minute of each tick; the first tick is the origin and all before it.
    """

    origin: int
    moments: int
    step: int
    ticks: NDArray[np.int64]

    @property
    def minutes(self) -> NDArray[np.int64]:
        """Return the minute of every moment."""
        return self.origin + self.step * np.arange(self.moments, dtype=np.int64)

    @property
    def lengths(self) -> NDArray[np.int64]:
        """Return the minutes from the moment before to every moment; nothing before the first."""
        return np.append(0, np.full(self.moments - 1, self.step, dtype=np.int64))

    def before(self, minutes: NDArray[np.float64]) -> NDArray[np.float64]:
        """Return, per minute given and moment, how much of the time up to the moment it leaves."""
        since = self.minutes - self.lengths
        return np.asarray(np.clip(minutes[:, None] - since, 0, self.lengths), dtype=np.float64)

    def moment(self, minutes: NDArray[np.int64]) -> NDArray[np.int64]:
        """Return the first moment at or after each minute, `moments` where there is none."""
        at = -((self.origin - minutes) // self.step)
        return np.clip(at, 0, self.moments).astype(np.int64)


def make_grid(origin: int, end: int) -> TimeGrid:
    """Lay a grid from a minute to another, fine enough and not too large."""
    long = max(1, end - origin)
    tick = -(-long // MOST_TICKS)
    step = max(LEAST_STEP, -(-long // MOST_MOMENTS))
    return TimeGrid(
        origin=origin,
        moments=long // step + 1,
        step=step,
        ticks=origin + tick * np.arange(-(-long // tick) + 1, dtype=np.int64),
    )
