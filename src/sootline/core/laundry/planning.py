"""How long may drying and handwork take where the department has not measured it?

Wide intervals to plan with, handed in as data; a measured row of the department always wins.
"""

from dataclasses import dataclass

from sootline.core.basis import Assumptions, Confidence, MinuteSpan
from sootline.core.gear.kinds import DryMethod, Layer


@dataclass(frozen=True, kw_only=True)
class PlannedDrying:
    """One interval to plan drying with.

    Args:
        layers: for which goods; empty is every other.
        minutes: how long [min]; it says that it is not measured here.
        source: where it was read; a citation.
    """

    method: DryMethod
    layers: tuple[Layer, ...] = ()
    minutes: MinuteSpan
    source: str
    confidence: Confidence


@dataclass(frozen=True, kw_only=True)
class PlannedWork:
    """Intervals to plan handwork on one component with [min]: prepare, clean by hand, check."""

    layers: tuple[Layer, ...] = ()
    prepare: MinuteSpan
    hand: MinuteSpan
    check: MinuteSpan
    source: str
    confidence: Confidence


@dataclass(frozen=True, kw_only=True)
class PlanningTimes:
    """The table of planning intervals, for what the department has not measured.

    Args:
        assumptions: with them, drying is estimated from the room's air where somebody read it.
    """

    drying: tuple[PlannedDrying, ...] = ()
    work: tuple[PlannedWork, ...] = ()
    assumptions: Assumptions | None = None

    def dry(self, method: DryMethod, layer: Layer) -> PlannedDrying | None:
        """Return the row for a method and layer; one that names the layer comes first."""
        rows = [row for row in self.drying if row.method is method]
        named = [row for row in rows if layer in row.layers]
        return next(iter([*named, *(row for row in rows if not row.layers)]), None)

    def work_on(self, layer: Layer) -> PlannedWork | None:
        """Return the row for a layer; one that names the layer comes first."""
        named = [row for row in self.work if layer in row.layers]
        return next(iter([*named, *(row for row in self.work if not row.layers)]), None)
