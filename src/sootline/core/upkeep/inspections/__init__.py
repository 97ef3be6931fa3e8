"""Inspections: routine, advanced, complete liner; one component at a time."""

from sootline.core.upkeep.inspections.checklists import list_points
from sootline.core.upkeep.inspections.days import DayResult, ElementJudged, judge_day
from sootline.core.upkeep.inspections.facts import (
    Absent,
    Inspection,
    InspectionDay,
    InspectionKind,
    LinerTest,
    LinerTestDone,
)
from sootline.core.upkeep.inspections.judging import (
    Bench,
    Judged,
    Result,
    judge_absent,
    judge_inspection,
)
from sootline.core.upkeep.inspections.testing import list_tests

__all__ = [
    "Absent",
    "Bench",
    "DayResult",
    "ElementJudged",
    "Inspection",
    "InspectionDay",
    "InspectionKind",
    "Judged",
    "LinerTest",
    "LinerTestDone",
    "Result",
    "judge_absent",
    "judge_day",
    "judge_inspection",
    "list_points",
    "list_tests",
]
