"""When does which step happen, when is each member ready, and how near is that to the best?"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from sootline.core.basis import ComponentId, MemberId
from sootline.core.washplan.steps import Drying, HandWash, Load, Task


class Goal(StrEnum):
    """What counts as better."""

    SOONEST = "soonest"
    DEADLINE = "deadline"
    ALL_DONE = "all-done"


@dataclass(frozen=True, kw_only=True)
class Plan:
    """A neutral plan.

    Args:
        instance: name of the instance it answers.
        spares: pieces that a loan piece stands in for; they are washed all the same.
        ready: minute at which each member is ready again.
        objective: sum over members of priority times ready minute, whatever the goal.
        makespan: minute at which the last piece is inspected, covered ones included.
        bound: what no plan can beat: at least this objective (soonest), at most this weight of
            members by the deadline, at least this makespan (all-done); None if not computed.
        gap: how far the plan may be from the best, as a share; None without a bound.
        seconds: computing time, filled in by who holds a clock.
    """

    instance: str
    loads: tuple[Load, ...] = ()
    prep: tuple[Task, ...] = ()
    hand: tuple[HandWash, ...] = ()
    dry: tuple[Drying, ...] = ()
    inspect: tuple[Task, ...] = ()
    spares: tuple[ComponentId, ...] = ()
    ready: Mapping[MemberId, int] = field(default_factory=dict)
    objective: int
    makespan: int
    bound: float | None = None
    gap: float | None = None
    seconds: float | None = None
