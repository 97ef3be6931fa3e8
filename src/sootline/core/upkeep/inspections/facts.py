"""What did a named person look at on a component, and what was found?"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    Confidence,
    EditionId,
    Ground,
    MessageId,
    Moment,
    Quantity,
    RuleId,
    UnreadableValueError,
    require_offset,
)
from sootline.core.exposure.calls import Answer
from sootline.core.rebuild import FlawFound
from sootline.core.upkeep.qualified import Scope


class InspectionKind(StrEnum):
    """The three inspections."""

    ROUTINE = "routine"
    ADVANCED = "advanced"
    LINER = "liner"


SCOPE_OF = {
    InspectionKind.ROUTINE: Scope.ROUTINE_INSPECTION,
    InspectionKind.ADVANCED: Scope.ADVANCED_INSPECTION,
    InspectionKind.LINER: Scope.LINER_INSPECTION,
}


class LinerTest(StrEnum):
    """A test of a liner within an inspection."""

    LIGHT = "light"
    LEAKAGE = "leakage"
    HYDROSTATIC = "hydrostatic"


@dataclass(frozen=True, kw_only=True)
class LinerTestDone:
    """One test as it was carried out.

    Args:
        passed: whether nothing came through (light, liquid, water).
        water_parts: parts of water to one of alcohol, in the leakage evaluation.
        waited: how long it stood, or stood under pressure.
        pressure: in the water pressure evaluation.
        place: where something came through.
    """

    test: LinerTest
    passed: Answer
    water_parts: int | None = None
    waited: Quantity | None = None
    pressure: Quantity | None = None
    place: str = ""


@dataclass(frozen=True, kw_only=True)
class Inspection:
    """One component as one named person inspected it; there is no inspection of many at once.

    Args:
        looked: the points of the kind's list that were looked at, each by itself; what is not
            among them was not looked at.
        flaws: what was found, with its place.
        photos: names of pictures kept with it.
        retire: why the inspector would give it up, in the inspector's words.
    """

    component: ComponentId
    kind: InspectionKind
    by: str
    at: Moment
    looked: tuple[MessageId, ...] = ()
    flaws: tuple[FlawFound, ...] = ()
    tests: tuple[LinerTestDone, ...] = ()
    photos: tuple[str, ...] = ()
    retire: str = ""

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("inspection.nobody", component=self.component)

    @property
    def ground(self) -> Ground:
        """What rests on this inspection."""
        return Ground(
            rule=RuleId(f"inspect.{self.kind}"),
            edition=EditionId("statement"),
            source=f"{self.by}, {self.at.isoformat(timespec='minutes')}",
            confidence=Confidence.STATED,
        )


@dataclass(frozen=True, kw_only=True)
class Absent:
    """One component that was not there, and why; it stays due."""

    component: ComponentId
    why: str = ""


@dataclass(frozen=True, kw_only=True)
class InspectionDay:
    """Many components in a row, each inspected by itself.

    Args:
        planned: what was to be inspected.
        absent: what was not there.
    """

    kind: InspectionKind
    on: dt.date
    planned: tuple[ComponentId, ...]
    absent: tuple[Absent, ...] = ()
