"""How much of each kind of work can be done today?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import UnreadableValueError
from sootline.core.intervals import Matter


@dataclass(frozen=True, kw_only=True)
class WorkToday:
    """How long one kind of work takes, and how much time there is for it today.

    Args:
        minutes: of washer, or of people entitled, that are free today [min].
        each: for one component [min].
    """

    matter: Matter
    minutes: int
    each: int

    def __post_init__(self) -> None:
        if self.minutes < 0 or self.each < 1:
            raise UnreadableValueError("upkeep.work_today", matter=self.matter)


class Cause(StrEnum):
    """Why something due was not done: one cause for each, the first that holds."""

    CONTRACTOR = "contractor"
    DECISION = "decision"
    NOT_SEEN = "not-seen"
    UNDER_WAY = "under-way"
    NO_SPARE = "no-spare"
    NO_TIME = "no-time"
