"""Coming due: what to take today, who wears what meanwhile, what is overdue and why."""

from sootline.core.upkeep.planning.bundles import Bundle
from sootline.core.upkeep.planning.days import DayPlan, Left, Swap, check_swaps, plan_day
from sootline.core.upkeep.planning.facts import Cause, WorkToday
from sootline.core.upkeep.planning.overdue import (
    CauseRow,
    OverdueRow,
    OverdueSheet,
    sheet_overdue,
)

__all__ = [
    "Bundle",
    "Cause",
    "CauseRow",
    "DayPlan",
    "Left",
    "OverdueRow",
    "OverdueSheet",
    "Swap",
    "WorkToday",
    "check_swaps",
    "plan_day",
    "sheet_overdue",
]
