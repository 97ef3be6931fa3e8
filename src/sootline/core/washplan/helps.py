"""What makes a search better where it is there: a faster engine, a clock, bounds beside it?"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Protocol

from sootline.core.washplan.engine import Engine, interpreted
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan


class Beside(Protocol):
    """A bound that is worked on beside the search."""

    def newest(self) -> float | None:
        """Return the best bound so far, None for none yet."""
        ...

    def plan(self) -> Plan | None:
        """Return a plan better than the known one, once one is proven best."""
        ...

    def end(self) -> None:
        """Stop working on it."""
        ...


# Begins to bound: instance, goal, deadline, and what says the best plan so far.
Bounder = Callable[[Instance, Goal, int, Callable[[], Plan]], Beside]


@dataclass(frozen=True, kw_only=True)
class Helps:
    """What makes a search better where it is there.

    Args:
        engine: runs the kernel.
        share: how much of the time is over, from 0 to 1; None where nobody knows.
        bounder: begins to bound beside the search.
        tie: a plan with fewer loads is taken if it costs at most this share of the objective.
    """

    engine: Engine = field(default_factory=interpreted)
    share: Callable[[], float] | None = None
    bounder: Bounder | None = None
    tie: float = 0.0
