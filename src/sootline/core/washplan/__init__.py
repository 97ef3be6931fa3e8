"""Which pieces go into which drum, when, and when is every member ready again?"""

from sootline.core.washplan.bound import bound_of
from sootline.core.washplan.facts import (
    Begun,
    Cabinet,
    Changeover,
    Member,
    Piece,
    Programme,
    Spare,
    Washer,
)
from sootline.core.washplan.follow import StepKind
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.replan import (
    Changes,
    Down,
    DryerDown,
    LateLoad,
    LateRun,
    Replanned,
    StillDamp,
    carry_on,
    power_cut,
    replan,
)
from sootline.core.washplan.rules import HandRule
from sootline.core.washplan.search import Stop, hand_plan, solve
from sootline.core.washplan.spread import Spread, StepSpan, spread
from sootline.core.washplan.steps import RACK, Drying, HandWash, Load, Task

__all__ = [
    "RACK",
    "Begun",
    "Cabinet",
    "Changeover",
    "Changes",
    "Down",
    "DryerDown",
    "Drying",
    "Goal",
    "HandRule",
    "HandWash",
    "Instance",
    "LateLoad",
    "LateRun",
    "Load",
    "Member",
    "Piece",
    "Plan",
    "Programme",
    "Replanned",
    "Spare",
    "Spread",
    "StepKind",
    "StepSpan",
    "StillDamp",
    "Stop",
    "Task",
    "Washer",
    "bound_of",
    "carry_on",
    "hand_plan",
    "power_cut",
    "replan",
    "solve",
    "spread",
]
